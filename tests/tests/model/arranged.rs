//! Sheets as designers arrange them: sections in their order, pictures of their own, a form for
//! testers; on pages and in every other form.

use std::path::Path;

use plumpline_core::pattern::lexicon;
use plumpline_core::project::sheet_design::{SheetDetail, SheetSection};
use plumpline_core::sheet::{self, Sheet, SheetPhoto};
use plumpline_core::{Project, file};
use plumpline_tests::paper::{asked, html_words};
use plumpline_typeset::{Options, Pages, Press};

fn sample(name: &str) -> Project {
    let folder = Path::new(env!("CARGO_MANIFEST_DIR")).join("../sample-projects");
    file::load(&folder.join(format!("{name}.ron"))).expect("the sample loads")
}

fn set(press: &Press, sheet: &Sheet) -> Pages {
    press.pages(sheet, Options::default()).expect("it is typeset")
}

/// The words of the pages, in the order of their content.
fn words_of(pages: &Pages) -> String {
    asked("pdftotext", &["-raw", "-"], &pages.pdf().expect("a file")).0
}

/// A JPEG of one grey, this large.
fn photo(wide: u32, tall: u32) -> SheetPhoto {
    let mut bytes = std::io::Cursor::new(Vec::new());
    let grey = image::RgbImage::from_pixel(wide, tall, image::Rgb([120, 130, 140]));
    grey.write_to(&mut bytes, image::ImageFormat::Jpeg).expect("a JPEG");
    SheetPhoto {
        caption: format!("Grey {wide} by {tall}"),
        bytes: bytes.into_inner().into(),
        size: [wide, tall],
    }
}

#[test]
fn sections_stand_in_the_designers_order_in_every_form() {
    use SheetSection::{Assembly, Cautions, Changes, Pieces, Tester, Words};
    let mut project = sample("acorn");
    project.assembly = "Sew the parts.".into();
    project.sheet.changes = "Changes since version 7\nHook is new.".into();
    project.sheet.sections = vec![Cautions, Changes, Pieces, Assembly, Words, Tester];
    let sheet = sheet::sheet(&project).expect("a sheet");
    let heads = [
        sheet.label("cautions").to_owned(),
        "Changes since version 7".into(),
        sheet.pieces[0].opening[0].chars().take(24).collect::<String>(),
        sheet.label("together").to_owned(),
        sheet.label("abbreviations").to_owned(),
        sheet.tester.title.clone(),
    ];
    let pages = words_of(&set(&Press::new(), &sheet));
    for (form, text) in [
        ("text", sheet::text_of(&sheet)),
        ("Markdown", sheet::markdown_of(&sheet)),
        ("pages", pages.replace('\n', " ")),
    ] {
        let at: Vec<usize> = heads
            .iter()
            .map(|head| text.find(head.as_str()).unwrap_or_else(|| panic!("{form}: {head}")))
            .collect();
        assert!(at.is_sorted(), "{form}: {at:?}\n{text}");
    }
    // On a page for a browser abbreviations stand beside the materials, where they are read.
    let html = html_words(&sheet::html_of(&sheet));
    let at: Vec<usize> =
        [0, 1, 2, 3, 5].iter().filter_map(|&i| html.find(heads[i].as_str())).collect();
    assert!(at.len() == 5 && at.is_sorted(), "{at:?}");
}

#[test]
fn what_is_left_out_is_nowhere() {
    let mut project = sample("mushroom");
    project.sheet.show(SheetSection::Words, false);
    for detail in SheetDetail::ALL {
        project.sheet.draw(detail, false);
    }
    let sheet = sheet::sheet(&project).expect("a sheet");
    assert!(sheet.pieces[0].pictures.charts.charts.is_empty());
    let pages = words_of(&set(&Press::new(), &sheet));
    let html = sheet::html_of(&sheet);
    for label in ["abbreviations", "charts", "measures", "symbols"] {
        let label = sheet.label(label);
        for (form, text) in [
            ("pages", &pages),
            ("page for a browser", &html),
            ("text", &sheet::text_of(&sheet)),
        ] {
            assert!(!text.contains(label), "{form}: {label}");
        }
    }
    assert!(!html.contains("<svg"), "nothing is drawn");
}

#[test]
fn photographs_and_a_logo_stand_on_sound_pages() {
    let press = Press::new();
    for name in ["mushroom", "acorn"] {
        let mut sheet = sheet::sheet(&sample(name)).expect("a sheet");
        let photos = [(300, 200), (200, 300), (400, 100), (100, 400)];
        sheet.photos = photos.map(|(wide, tall)| photo(wide, tall)).into();
        sheet.logo = Some(SheetPhoto { caption: String::new(), ..photo(90, 30) });
        let pages = set(&press, &sheet);
        let pdf = pages.pdf().expect("a file");
        let words = words_of(&pages).replace('\n', " ");
        let html = sheet::html_of(&sheet);
        for photo in &sheet.photos {
            assert!(words.contains(&photo.caption), "{name}: {}", photo.caption);
            assert!(html_words(&html).contains(&photo.caption), "{name}");
        }
        assert_eq!(html.matches("data:image/jpeg;base64,").count(), 5, "{name}");
        let (listed, sound) = asked("pdfimages", &["-list"], &pdf);
        assert!(sound && listed.matches("jpeg").count() == 5, "{name}: {listed}");
        let (_, sound) = asked("qpdf", &["--check"], &pdf);
        assert!(sound, "{name}: it is sound in the eyes of another program");
    }
}

#[test]
fn the_form_for_testers_is_a_page_in_every_language() {
    let press = Press::new();
    let mut project = sample("mushroom");
    for lexicon in lexicon::all() {
        project.wording.lexicon.clone_from(&lexicon.code);
        let sheet = sheet::sheet(&project).expect("a sheet");
        let form = press.tester_form(&sheet, Options::default()).expect("it is set");
        assert_eq!(form.count(), 1, "{}", lexicon.code);
        let words = words_of(&form).replace('\n', " ");
        for (what, _) in &sheet.tester.pieces[0].rows {
            let first = what.split(' ').next().unwrap_or_default();
            assert!(words.contains(first), "{}: {what} in {words}", lexicon.code);
        }
        assert!(words.contains(sheet.pieces[0].sizes[0].tall.split(' ').next().unwrap_or("?")));
    }
}
