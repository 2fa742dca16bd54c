//! Sheets: every form says the same rounds, pages are sound in the eyes of other programs,
//! and nothing a person types can break or run anything.

use std::path::Path;

use plumpline_core::pattern::write::Writer;
use plumpline_core::sheet::{self, Sheet, Step};
use plumpline_core::{Band, Gauge, Knot, Outline, Piece, Project, Yarn, file, plan, words};
use plumpline_tests::paper::{Stated, asked, html_words, rounds_in};
use plumpline_tests::shapes::numbered;
use plumpline_typeset::{Columns, Options, Pages, Paper, Press};

const SAMPLES: [&str; 6] = ["acorn", "cushion", "float", "mushroom", "pear", "pebble"];

fn sample(name: &str) -> Project {
    let folder = Path::new(env!("CARGO_MANIFEST_DIR")).join("../sample-projects");
    file::load(&folder.join(format!("{name}.ron"))).expect("the sample loads")
}

fn ball(diameter: f64) -> Piece {
    let r = diameter / 2.0;
    let outline =
        Outline { knots: vec![Knot::new(0.0, 0.0), Knot::new(r, r), Knot::new(0.0, diameter)] };
    Piece::new("Ball", outline, Gauge::default())
}

fn sheet_of(project: &Project) -> Sheet {
    sheet::sheet(project).expect("a sheet")
}

fn pages(press: &Press, sheet: &Sheet) -> Pages {
    press.pages(sheet, Options::default()).expect("it is typeset")
}

/// The rounds as planned.
fn planned(project: &Project) -> Vec<Stated> {
    let worded = |p| words(&plan(p).expect("a plan"), p, &Writer::bench());
    let lines = project.pieces.iter().flat_map(|p| worded(p).lines);
    lines.map(|l| (l.first, l.last, l.text, l.count)).collect()
}

/// `pdftotext` in the order of the page's content, as a screen reader has it.
fn pdf_words(pdf: &[u8]) -> String {
    asked("pdftotext", &["-raw", "-"], pdf).0
}

#[test]
fn every_size_of_a_piece_is_on_the_sheet() {
    let project = sample("pebble");
    let sheet = sheet_of(&project);
    let piece = &sheet.pieces[0];
    let names: Vec<&str> = piece.sizes.iter().map(|s| s.name.as_str()).collect();
    assert_eq!(names, ["S", "M", "L"]);
    let text = sheet::text_of(&sheet);
    for name in names {
        let at = plumpline_core::sizes::at_size(&project, name).expect("a size");
        let plan = at.made[0].as_ref().map(|made| &made.plan).expect("made");
        let total = format!("{} stitches in all", plan.estimate.stitches);
        assert!(text.contains(&total), "{name}: {total}");
    }
}

#[test]
fn every_form_says_the_same_rounds() {
    let press = Press::new();
    for name in SAMPLES {
        // One size at a time: several stand in one line, where forms cannot be compared so.
        let mut project = sample(name);
        for piece in &mut project.pieces {
            piece.sizes.clear();
        }
        let wanted = planned(&project);
        let sheet = sheet_of(&project);
        let set: Vec<Stated> = sheet
            .pieces
            .iter()
            .flat_map(|p| &p.steps)
            .filter_map(|step| match step {
                Step::Rounds(l) => Some((l.first, l.last, l.text.clone(), l.stitches)),
                Step::Yarn(_) | Step::Stuff(_) | Step::Inside(_) => None,
            })
            .collect();
        assert_eq!(set, wanted, "{name}: content");
        assert_eq!(rounds_in(&sheet::text_of(&sheet)), wanted, "{name}: text");
        assert_eq!(rounds_in(&sheet::markdown_of(&sheet)), wanted, "{name}: Markdown");
        assert_eq!(rounds_in(&html_words(&sheet::html_of(&sheet))), wanted, "{name}: HTML");
        for columns in [Columns::One, Columns::Two] {
            let options = Options { columns, ..Options::default() };
            let pdf = press.pages(&sheet, options).expect("pages").pdf().expect("a file");
            assert_eq!(rounds_in(&pdf_words(&pdf)), wanted, "{name}: PDF, {columns:?}");
        }
    }
}

#[test]
fn other_programs_find_the_pdf_sound() {
    let press = Press::new();
    for name in SAMPLES {
        let sheet = sheet_of(&sample(name));
        for paper in [Paper::A4, Paper::Letter] {
            let options = Options { paper, ..Options::default() };
            let pdf = press.pages(&sheet, options).expect("pages").pdf().expect("a file");
            let (said, sound) = asked("qpdf", &["--check"], &pdf);
            assert!(sound, "{name}: {said}");
            let (fonts, _) = asked("pdffonts", &[], &pdf);
            let faces: Vec<&str> = fonts.lines().skip(2).collect();
            assert!(faces.len() >= 3, "{name}: {fonts}");
            for face in faces {
                let columns: Vec<&str> = face.split_whitespace().rev().collect();
                // …, embedded, subset, to Unicode, object and generation, from the right.
                assert_eq!(&columns[2..5], ["yes"; 3], "{name}: {face}");
            }
            let (info, _) = asked("pdfinfo", &[], &pdf);
            let field = |key: &str| {
                let line = info.lines().find(|l| l.starts_with(key)).unwrap_or_default();
                line.split_once(':').map_or("", |(_, value)| value).trim().to_owned()
            };
            assert_eq!(field("Title"), sheet.title, "{info}");
            assert_eq!(field("Tagged"), "yes", "{info}");
            let wide = if paper == Paper::A4 { "595.276 x 841.89" } else { "612 x 792" };
            assert!(field("Page size").starts_with(wide), "{info}");
            let text = String::from_utf8_lossy(&pdf);
            assert!(text.contains("/Lang"), "{name}: its language");
            assert!(text.contains("/Outlines"), "{name}: its bookmarks");
            assert!(text.contains("pdfuaid:part"), "{name}: PDF/UA");
        }
    }
}

#[test]
fn titles_print_as_typed_or_say_what_was_replaced() {
    let press = Press::new();
    let titles = [
        "#1 *best* $x$ \\alpha _under_ `code` <label> @ref",
        "#read(\"/etc/passwd\") #panic()",
        "\"quotes\" 'single' \\\\ {braces} [brackets] ~ // /* */",
        "A <b>bold</b> &amp; <script>alert(1)</script>",
        "= Heading",
        "- item",
    ];
    for title in titles {
        let mut project = Project::of_piece(ball(40.0));
        project.title = title.into();
        project.designer = title.into();
        project.notes = title.into();
        project.assembly = title.into();
        project.licence = title.into();
        project.pieces[0].name = title.into();
        project.yarns[0].name = title.into();
        let sheet = sheet_of(&project);
        let set = pages(&press, &sheet);
        assert_eq!(set.replaced(), None, "{title}");
        let words = pdf_words(&set.pdf().expect("a file"));
        let plain = |t: &str| t.split_whitespace().collect::<String>();
        assert!(plain(&words).matches(&plain(title)).count() >= 5, "{title}: {words}");
        let html = sheet::html_of(&sheet);
        assert!(!html.contains("<script>alert"), "{title} is markup");
        assert!(plain(&html_words(&html)).contains(&plain(title)), "{title}");
    }
    for (title, missing) in [
        ("חתול קטן", 7),
        ("Hat 🎩 and 🧶", 2),
        ("猫の帽子", 4),
        ("\u{202e}backwards\u{202c} e\u{301}toile", 0),
    ] {
        let mut project = Project::of_piece(ball(40.0));
        project.title = title.into();
        project.pieces[0].name = "Ball".into();
        let set = pages(&press, &sheet_of(&project));
        let said = set.replaced().unwrap_or_default().to_owned();
        assert_eq!(said.is_empty(), missing == 0, "{title}: {said}");
        if missing > 0 {
            assert!(said.starts_with(&missing.to_string()), "{title}: {said}");
            let words = pdf_words(&set.pdf().expect("a file"));
            let flowed = words.split_whitespace().collect::<Vec<_>>().join(" ");
            assert!(flowed.contains(&said), "the page says so: {flowed}");
        }
    }
}

/// Nothing set may lie outside its page: no word's box does, as `pdftotext` finds them.
fn nothing_leaves_the_page(pdf: &[u8], what: &str) {
    let (boxes, _) = asked("pdftotext", &["-bbox", "-"], pdf);
    let number = |line: &str, key: &str| -> Option<f64> {
        let rest = line.split_once(&format!("{key}=\""))?.1;
        rest.split_once('"')?.0.parse().ok()
    };
    let mut words = 0;
    for line in boxes.lines().filter(|l| l.contains("<word")) {
        let at = |key| number(line, key).expect("a number");
        words += 1;
        assert!(at("xMin") > 20.0 && at("xMax") < 576.0, "{what}: {line}");
        assert!(at("yMin") > 15.0 && at("yMax") < 835.0, "{what}: {line}");
    }
    assert!(words > 50, "{what}: {words} words");
}

#[test]
fn extremes_give_readable_pages() {
    let press = Press::new();
    let mut long_title = Project::of_piece(ball(60.0));
    long_title.title = "A plump and patient little ball of wool ".repeat(10);
    let mut one_word = Project::of_piece(ball(60.0));
    one_word.title = "plump".repeat(80);
    one_word.pieces[0].name = "ball".repeat(60);
    one_word.yarns[0].name = "wool".repeat(60);
    one_word.notes = "note".repeat(300);
    let mut tall = ball(60.0);
    tall.outline = Outline {
        knots: vec![
            Knot::new(0.0, 0.0),
            Knot::new(40.0, 120.0),
            Knot::new(25.0, 600.0),
            Knot::new(35.0, 1000.0),
            Knot::new(0.0, 1450.0),
        ],
    };
    let tall = Project::of_piece(tall);
    let rounds = plan(&tall.pieces[0]).expect("a plan").rounds.len();
    assert!(rounds >= 290, "{rounds} rounds");
    let mut striped = Project::of_piece(ball(140.0));
    striped.yarns = (0..30)
        .map(|i| Yarn { name: format!("Colour number {i}"), ..Yarn::plain(i) })
        .collect();
    striped.pieces[0].bands =
        (0..30_u32).map(|i| Band { from_round: 1 + i, yarn: i as usize }).collect();
    let mut wide = Project::of_piece(ball(420.0));
    wide.pieces[0].name = "Floor cushion".into();
    let mut many = Project::of_piece(ball(30.0));
    let berry = |i: u32| Piece { name: format!("Berry {i}"), copies: 1 + i % 3, ..ball(30.0) };
    many.pieces = numbered(&(0..24).map(berry).collect::<Vec<_>>());
    for (what, project) in [
        ("a long title", long_title),
        ("one long word", one_word),
        ("300 rounds", tall),
        ("30 colours", striped),
        ("very wide", wide),
        ("24 pieces", many),
    ] {
        let sheet = sheet_of(&project);
        let wanted = planned(&project);
        for columns in [Columns::One, Columns::Two] {
            let options = Options { columns, ..Options::default() };
            let set = press.pages(&sheet, options).expect("pages");
            let pdf = set.pdf().expect("a file");
            assert_eq!(rounds_in(&pdf_words(&pdf)), wanted, "{what}, {columns:?}");
            nothing_leaves_the_page(&pdf, what);
            let picture = set.picture(set.count() - 1, 0.5).expect("a picture");
            assert_eq!(picture.rgba.len() as u32, 4 * picture.width * picture.height);
        }
        let text = sheet::text_of(&sheet);
        assert!(text.lines().all(|l| l.chars().count() <= 78), "{what}: the text is too wide");
        assert_eq!(rounds_in(&html_words(&sheet::html_of(&sheet))), wanted, "{what}: HTML");
    }
}

#[test]
fn every_house_style_and_language_is_set() {
    let press = Press::new();
    for (lexicon, style) in
        [("en-uk", "stars"), ("de", "teaching"), ("fr", "compact"), ("es", "ledger")]
    {
        let mut project = sample("cushion");
        project.wording.lexicon = lexicon.into();
        project.wording.style = style.into();
        let sheet = sheet_of(&project);
        let set = pages(&press, &sheet);
        assert_eq!(set.replaced(), None, "{lexicon}, {style}");
        let words = pdf_words(&set.pdf().expect("a file"));
        let flowed: String = words.split_whitespace().collect();
        for step in &sheet.pieces[0].steps {
            if let Step::Rounds(line) = step {
                let text: String = line.text.split_whitespace().collect();
                assert!(flowed.contains(&text), "{lexicon}, {style}: {}", line.text);
            }
        }
    }
}

#[test]
fn the_sheet_as_text_proofreads_clean() {
    use plumpline_core::pattern::proofread::proofread;
    use plumpline_core::pattern::read::{TermsWish, read};
    for name in SAMPLES {
        let text = sheet::text_of(&sheet_of(&sample(name)));
        let reading = read(&text, TermsWish::Infer);
        let findings = proofread(&text, &reading);
        assert!(findings.is_empty(), "{name}: {findings:?}\n{text}");
    }
}

#[test]
fn sizes_are_told_together_or_one_after_the_other() {
    use plumpline_core::sheet::{SizedPlan, sheet_of};
    let press = Press::new();
    let (small, large) = (ball(50.0), ball(80.0));
    let project = Project::of_piece(small.clone());
    let (small_plan, large_plan) = (plan(&small).expect("a plan"), plan(&large).expect("one"));
    let sized = |plan, name, piece| SizedPlan { name, piece, plan };
    let stated = |plan: &plumpline_core::Plan, piece| -> Vec<Stated> {
        let lines = words(plan, piece, &Writer::bench()).lines.into_iter();
        lines.map(|l| (l.first, l.last, l.text, l.count)).collect()
    };
    // Worded differently: a list a size, each under its name.
    let sizes = [sized(&small_plan, "S", &small), sized(&large_plan, "L", &large)];
    let sheet = sheet_of(&project, &[&sizes], Default::default()).expect("a sheet");
    assert_eq!(sheet.pieces[0].lists().len(), 2);
    let both = [stated(&small_plan, &small), stated(&large_plan, &large)].concat();
    assert_eq!(rounds_in(&sheet::text_of(&sheet)), both);
    assert_eq!(rounds_in(&sheet::markdown_of(&sheet)), both);
    assert_eq!(rounds_in(&html_words(&sheet::html_of(&sheet))), both);
    let pdf = pages(&press, &sheet).pdf().expect("a file");
    assert_eq!(rounds_in(&pdf_words(&pdf)), both);
    // Alike but for what they weigh: one list.
    let finer = Piece { habits: Default::default(), copies: 2, ..small.clone() };
    let sizes = [sized(&small_plan, "S", &small), sized(&small_plan, "M", &finer)];
    let sheet = sheet_of(&project, &[&sizes], Default::default()).expect("a sheet");
    assert_eq!(sheet.pieces[0].lists().len(), 1);
    assert_eq!(rounds_in(&sheet::text_of(&sheet)), stated(&small_plan, &small));
}

/// A browser runs the page's own script and nothing that a name might bring (W3C, Content
/// Security Policy Level 3, 6.7.3: the digest is of the script's text, in base 64).
#[test]
fn a_browser_is_told_to_run_no_script_but_the_pages_own() {
    let mut project = sample("pebble");
    project.title = "<script>alert(1)</script>".into();
    let page = sheet::html_of(&sheet_of(&project));
    let (_, script) = page.split_once("<script>").expect("a script");
    let (script, rest) = script.split_once("</script>").expect("its end");
    assert!(!rest.contains("<script"), "one script");
    let (hex, _) = asked("sha256sum", &[], script.as_bytes());
    let digit = |i: usize| u8::from_str_radix(&hex[2 * i..2 * i + 2], 16).expect("a digest");
    let digest: Vec<u8> = (0..32).map(digit).collect();
    let (base64, _) = asked("base64", &["-w0"], &digest);
    assert!(page.contains(&format!("script-src 'sha256-{}'", base64.trim())), "{base64}");
    let (head, _) = page.split_once("<title>").expect("a head");
    assert!(head.contains("default-src 'none'"), "{head}");
}

/// A toy of parts is put together on its sheet, with what its maker must mind, in every form.
#[test]
fn a_toy_is_put_together_on_its_sheet_in_every_form() {
    use plumpline_core::toy::{assembled, steps};
    let mut project = sample("moor-cob");
    project.seams.clear();
    let sheet = sheet_of(&project);
    let toy = assembled(&project).expect("a toy");
    let steps = steps(&project, &toy, &Writer::bench());
    assert!(steps.len() >= 7 && sheet.assembly.len() >= steps.len());
    // Where lines and pages break is no part of the words.
    let plain =
        |t: &str| t.replace(['\\', '-', '\u{ad}'], "").split_whitespace().collect::<String>();
    let pdf = pages(&Press::new(), &sheet).pdf().expect("a file");
    let forms = [
        ("text", sheet::text_of(&sheet)),
        ("Markdown", sheet::markdown_of(&sheet)),
        ("HTML", html_words(&sheet::html_of(&sheet))),
        ("PDF", pdf_words(&pdf)),
    ];
    for (form, words) in forms {
        let words = plain(&words);
        for (n, step) in (1..).zip(&steps) {
            assert!(
                words.contains(&plain(&format!("{n}. {}", step.text))),
                "{form}: {}",
                step.text
            );
        }
        assert!(words.contains(&plain("Count your pins before you close it")), "{form}");
    }
    let last = sheet.cautions.last().expect("cautions");
    assert!(last.contains("accredited laboratory decide"), "{last}");
    let mut twice = sheet.cautions.clone();
    twice.sort_unstable();
    twice.dedup();
    assert_eq!(twice.len(), sheet.cautions.len(), "each is said once");
    // Every size has places of its own.
    let float = sample("float-on-a-wire");
    let names = plumpline_core::sizes::size_names(&float);
    let told = sheet_of(&float).assembly.join("\n");
    for name in names {
        assert!(told.contains(&format!("{name}, 1. ")), "{name}: {told}");
    }
}

/// The toy stands on the cover, every step has its picture, and what is not yarn is listed.
#[test]
fn the_whole_toy_is_on_its_sheet() {
    let press = Press::new();
    for (name, needs) in [
        ("moor-cob", vec!["embroider the eyes", "embroider the nose", "Pins"]),
        ("drifting-float", vec!["Cord, 1.5 mm thick", "Ring or loop", "a disc"]),
        ("float-on-a-wire", vec!["Wire, steel, 1.6 mm thick", "eye protection", "Pebble"]),
    ] {
        let sheet = sheet_of(&sample(name));
        let toy = sheet.toy.as_ref().expect("a toy");
        assert_eq!(toy.pictures.steps(), toy.steps, "{name}");
        for need in needs {
            assert!(sheet.materials.lines.iter().any(|l| l.contains(need)), "{name}: {need}");
        }
        let page = sheet::html_of(&sheet);
        assert_eq!(page.matches("class=\"step\"").count(), toy.steps, "{name}");
        assert!(page.contains("From the side"), "{name}");
        assert!(pages(&press, &sheet).count() > 1, "{name}");
    }
}
