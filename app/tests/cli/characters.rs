//! Names of every kind of character on every kind of sheet and picture.

use plumpline_core::picture::chart::SingleSymbol;
use plumpline_core::sheet::{drawing_svg, html_of, markdown_of, sheet_with, text_of};
use plumpline_core::{Band, LONGEST_NAME, Project, Size, SizeBy, Yarn, file};
use plumpline_typeset::{Options, Press};
use resvg::usvg;

/// Every character of the scripts below U+3000 with all marks and controls among them, some of
/// each block beyond, the last ones, and those that are no character (Unicode 16, chapter 23).
fn every_kind() -> Vec<char> {
    let near = 0..0x3000;
    let beyond = (0x3000..0x11_0000).step_by(251);
    let special =
        [0xfdd0, 0xfe0f, 0xfeff, 0xfff9, 0xfffc, 0xfffe, 0xffff, 0x1_fffe, 0xe0001, 0x10_ffff];
    near.chain(beyond).chain(special).filter_map(char::from_u32).collect()
}

/// The acorn with these names.
fn named(names: &mut impl Iterator<Item = String>) -> Project {
    let sample = concat!(env!("CARGO_MANIFEST_DIR"), "/../sample-projects/acorn.ron");
    let mut project = file::load(sample.as_ref()).expect("it loads");
    let mut name = || names.next().unwrap_or_else(|| "Moor".into());
    project.making = Default::default();
    project.title = name();
    project.designer = name();
    project.licence = name();
    project.notes = name();
    project.assembly = name();
    let first = project.yarns[0].clone();
    project.yarns = (0..12).map(|_| Yarn { name: name(), ..first.clone() }).collect();
    for piece in &mut project.pieces {
        piece.name = name();
        piece.sizes = vec![Size::new(name(), SizeBy::Factor(1.2))];
        let band = |yarn: usize| Band { from_round: 1 + yarn as u32, yarn };
        piece.bands = (0..12).map(band).collect();
    }
    project
}

/// What a terminal obeys.
fn is_obeyed(c: char) -> bool {
    c.is_control() && c != '\n'
}

#[test]
fn names_of_every_kind_of_character_stand_on_every_sheet_and_picture() {
    let all = every_kind();
    let mut names = all.chunks(LONGEST_NAME).map(|chunk| chunk.iter().collect::<String>());
    let press = Press::new();
    let mut sheets = 0;
    loop {
        let mut project = named(&mut names);
        // A page of a script that no face has: each character prints as a box.
        project.notes += &"編み物の本。".repeat(500);
        // What is saved is read again as it is.
        let text = file::write(&project).expect("it is written");
        assert_eq!(file::parse(&text).as_ref(), Ok(&project));
        let sheet = sheet_with(&project, SingleSymbol::default()).expect("a sheet");
        let page = html_of(&sheet);
        for (form, text) in
            [("text", &text_of(&sheet)), ("Markdown", &markdown_of(&sheet)), ("HTML", &page)]
        {
            let odd = text.chars().find(|&c| is_obeyed(c));
            assert!(odd.is_none(), "{form}: {odd:?}");
        }
        // What no document may hold (XML 1.0, 2.2; the same in HTML).
        assert!(!page.contains(['\u{fffe}', '\u{ffff}']));
        // Every picture of the page is a document by itself, whole and sound.
        let mut pictures = 0;
        for part in page.split("<svg").skip(1) {
            let end = part.find("</svg>").expect("its end");
            let svg = format!("<svg{}</svg>", &part[..end]);
            usvg::Tree::from_str(&svg, &usvg::Options::default()).expect("a sound picture");
            pictures += 1;
        }
        assert!(pictures > 2, "{pictures}");
        let piece = &sheet.pieces[0];
        for title in [&project.title, &project.pieces[0].name] {
            let svg = drawing_svg(&piece.pictures.schematic, title, title, "a-");
            usvg::Tree::from_str(&svg, &usvg::Options::default()).expect("a sound picture");
        }
        let pages = press.pages(&sheet, Options::default()).expect("pages");
        assert!(pages.pdf().expect("a file").starts_with(b"%PDF"));
        sheets += 1;
        if sheets > all.len() / LONGEST_NAME / 19 {
            break;
        }
    }
    assert!(names.next().is_none(), "every name was used");
}
