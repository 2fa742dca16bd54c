//! What surrounds a published pattern: its spoken script and captions, what a shop says of it,
//! what has changed since a version before, and what testers return.

use std::path::Path;

use plumpline_core::pattern::lexicon;
use plumpline_core::project::testers::{read_returns, spreads};
use plumpline_core::sheet::{self, BlurbForm, ScriptPace, Sheet};
use plumpline_core::{
    Gauge, Kind, KindFrom, Knot, Outline, Piece, Project, Working, file, plan,
};

fn sample(name: &str) -> Project {
    let folder = Path::new(env!("CARGO_MANIFEST_DIR")).join("../sample-projects");
    file::load(&folder.join(format!("{name}.ron"))).expect("the sample loads")
}

fn in_words_of(project: &Project, code: &str) -> Sheet {
    let mut project = project.clone();
    project.wording.lexicon = code.into();
    sheet::sheet(&project).expect("a sheet")
}

fn one_size(name: &str) -> Project {
    let mut project = sample(name);
    for piece in &mut project.pieces {
        piece.sizes.clear();
    }
    project
}

fn ball(kind: Kind, working: Working, straight_mm: f64) -> Piece {
    let knots = vec![Knot::new(0.0, 0.0), Knot::new(36.0, 40.0), Knot::new(14.0, 76.0)];
    let mut piece = Piece::new("Ball", Outline { knots }, Gauge::per(22.0, 24.0, 100.0));
    piece.kinds = vec![KindFrom { from_round: 1, kind }];
    piece.working = working;
    piece.straight_mm = straight_mm;
    piece
}

#[test]
fn a_script_says_every_round_once_with_its_count() {
    for name in ["acorn", "mushroom", "cushion"] {
        let project = one_size(name);
        for lexicon in lexicon::all() {
            let sheet = in_words_of(&project, &lexicon.code);
            let rounds = sheet.script.lines.iter().filter_map(|line| line.rounds);
            let mut wanted = project.pieces.iter().flat_map(|piece| {
                let plan = plan(piece).expect("a plan");
                (1..=plan.rounds.len() as u32).collect::<Vec<_>>()
            });
            for (first, last) in rounds {
                for round in first..=last {
                    assert_eq!(wanted.next(), Some(round), "{name}, {}", lexicon.code);
                }
            }
            assert_eq!(wanted.next(), None, "{name}, {}", lexicon.code);
            for line in &sheet.script.lines {
                assert!(line.said_s >= 1.5 && line.worked_s >= line.said_s, "{line:?}");
                // Numbers are said in words; names are the maker's.
                let said =
                    line.rounds.is_none() || !line.text.contains(|c: char| c.is_ascii_digit());
                assert!(said, "{name}, {}: {}", lexicon.code, line.text);
                assert!(!line.text.contains("  ") && !line.text.contains(['{', '}']));
            }
        }
    }
}

#[test]
fn a_round_is_said_as_one_would_say_it() {
    let text = |code| {
        let sheet = in_words_of(&one_size("mushroom"), code);
        sheet.script.lines.iter().map(|line| line.text.clone()).collect::<Vec<_>>().join("\n")
    };
    for (code, said) in [
        ("en-us", "Round one: six single crochets in a magic ring. That makes six stitches."),
        ("en-us", "single crochet in each of the fifty stitches."),
        ("en-uk", "double crochet in each of the fifty stitches."),
        ("de", "eine feste Masche in jede der fünfzig Maschen."),
        ("fr", "une maille serrée dans chacune des cinquante mailles."),
        ("es", "un punto bajo en cada uno de los cincuenta puntos."),
    ] {
        let text = text(code);
        assert!(text.contains(said), "{code}: {text}");
    }
}

/// `00:02:05,250` as milliseconds.
fn stamp(text: &str) -> u64 {
    let (time, ms) = text.trim().split_once([',', '.']).expect("milliseconds");
    let parts: Vec<u64> = time.split(':').map(|n| n.parse().expect("a number")).collect();
    let ms: u64 = ms.parse().expect("a number");
    ((parts[0] * 60 + parts[1]) * 60 + parts[2]) * 1000 + ms
}

/// Captions follow one another without a gap, in rows that fit on a picture (SubRip; WebVTT:
/// The Web Video Text Tracks Format, W3C).
#[test]
fn captions_are_well_formed() {
    let mut project = one_size("acorn");
    project.pieces[0].name = "A --> <b>&".into();
    let sheet = in_words_of(&project, "en-us");
    for pace in [ScriptPace::Said, ScriptPace::Worked] {
        let srt = sheet::captions_srt(&sheet.script, pace);
        let vtt = sheet::captions_vtt(&sheet.script, pace);
        let vtt = vtt.strip_prefix("WEBVTT\n\n").expect("its signature");
        assert!(!vtt.contains("<b>") && vtt.contains("&lt;b&gt;&amp;"), "{vtt}");
        for text in [srt.as_str(), vtt] {
            let mut at = 0;
            for (n, cue) in (1..).zip(text.trim_end().split("\n\n")) {
                let mut lines = cue.lines();
                assert_eq!(lines.next(), Some(n.to_string().as_str()), "{cue}");
                let times = lines.next().expect("times");
                let (from, to) = times.split_once(" --> ").expect("two times");
                let (from, to) = (stamp(from), stamp(to));
                assert!(from == at && to > from, "{cue}");
                at = to;
                let rows: Vec<&str> = lines.collect();
                assert!((1..=2).contains(&rows.len()), "{cue}");
                assert!(rows.iter().all(|row| !row.contains("-->")), "{cue}");
            }
            let whole: f64 = sheet.script.lines.iter().map(|line| line.seconds(pace)).sum();
            assert!((at as f64 / 1000.0 - whole).abs() < 0.01, "{at} of {whole}");
        }
        let rows = srt.lines().map(|row| row.chars().count());
        assert!(rows.max().is_some_and(|most| most <= 42), "a row is too wide");
    }
}

#[test]
fn a_shop_is_told_size_level_materials_and_what_is_included() {
    for lexicon in lexicon::all() {
        let sheet = in_words_of(&sample("acorn"), &lexicon.code);
        for form in [BlurbForm::Plain, BlurbForm::Markdown] {
            let text = sheet::blurb(&sheet, form).replace('\\', "");
            let size = &sheet.pieces[0].sizes[0].finished;
            for said in [&sheet.title, &sheet.level.name, size, &sheet.materials.hooks[0]] {
                assert!(text.contains(said.as_str()), "{}: {said} in {text}", lexicon.code);
            }
            assert!(sheet.included.len() >= 4);
            assert!(text.contains(&sheet.unchecked), "{text}");
        }
    }
}

#[test]
fn what_changed_is_told_round_by_round() {
    let mut old = one_size("mushroom");
    old.version = "1".into();
    let same = sheet::changes(&old, &old).expect("they compare");
    assert!(same.lines.is_empty() && same.text().contains("Nothing that a maker reads"));
    // Another language is no change.
    let mut german = old.clone();
    german.wording.lexicon = "de".into();
    assert!(sheet::changes(&old, &german).expect("they compare").lines.is_empty());
    let mut new = old.clone();
    let plan = plan(&new.pieces[0]).expect("a plan");
    let (round, count) = (9, plan.rounds[8].count);
    new.pieces[0].pins.insert(round, count + 1);
    new.pieces[0].name = "Toadstool".into();
    new.pieces[0].gauge.hook_mm = 4.0;
    let changes = sheet::changes(&old, &new).expect("they compare");
    assert_eq!(changes.heading, "Changes since version 1");
    let text = changes.text();
    assert!(text.contains("Toadstool, Rnd 9 now reads: "), "{text}");
    assert!(text.contains(&format!("[{}]", count + 1)), "{text}");
    assert!(text.contains("Toadstool, Hook now reads: 4 mm"), "{text}");
    assert!(!text.contains("Rnd 1 now reads"), "{text}");
    // A piece more, and one less.
    let mut more = new.clone();
    more.add(ball(Kind::Single, Working::Spiral, 0.0));
    let text = sheet::changes(&new, &more).expect("they compare").text();
    assert!(text.contains("The piece “Ball” is new."), "{text}");
    let text = sheet::changes(&more, &new).expect("they compare").text();
    assert!(text.contains("The piece “Ball” is left out."), "{text}");
}

#[test]
fn testers_fill_in_a_form_and_what_they_got_is_told() {
    let project = one_size("mushroom");
    for lexicon in lexicon::all() {
        let sheet = in_words_of(&project, &lexicon.code);
        let mut project = project.clone();
        project.wording.lexicon.clone_from(&lexicon.code);
        let form = sheet::tester_form(&sheet, BlurbForm::Markdown);
        assert!(form.contains(&sheet.pieces[0].sizes[0].tall), "{form}");
        assert!(form.lines().count() < 45, "one page");
    }
    let table = "tester,height_mm,minutes\nAda,112,70\nBo,120,95\nCy,116,\n";
    let returns = read_returns(&project, table).expect("it is read");
    let spreads = spreads(&project, &returns).expect("it plans");
    let text = sheet::testers_got(&project, &spreads).expect("it is told");
    assert!(text.contains("Height: Testers got 11.2–12.0 cm (3); the pattern says"), "{text}");
    let plot = sheet::testers_plot(&project, &spreads).expect("it is drawn");
    let svg = sheet::drawing_svg(&plot, "Testers", &text, "");
    assert!(svg.matches("<path").count() + svg.matches("<polygon").count() >= 5, "{svg}");
}

/// Taller stitches: the chain of an oval is as much longer as its first stitch is tall (common
/// practice, no source), and a joined round ends where its chain says.
#[test]
fn beginnings_and_joins_are_those_of_the_stitch() {
    for (kind, chains, nth) in
        [(Kind::Single, 1, "2nd"), (Kind::HalfDouble, 2, "3rd"), (Kind::Double, 3, "4th")]
    {
        let project = Project::of_piece(ball(kind, Working::Spiral, 20.0));
        let sheet = sheet::sheet(&project).expect("a sheet");
        let text = sheet::text_of(&sheet);
        let plan = plan(&project.pieces[0]).expect("a plan");
        let plumpline_core::counts::Start::Oval(n) = plan.start else { panic!("an oval") };
        assert!(text.contains(&format!("Ch {}.", n + chains)), "{kind:?}: {text}");
        assert!(text.contains(&format!("in {nth} ch from hook")), "{kind:?}: {text}");
    }
    for (counts, end) in [(true, "top of the beginning ch"), (false, "in the first dc")] {
        let working = Working::Joined { chain_counts: counts };
        let project = Project::of_piece(ball(Kind::Double, working, 0.0));
        let text = sheet::text(&project).expect("a sheet");
        let flowed = text.split_whitespace().collect::<Vec<_>>().join(" ");
        assert!(flowed.contains(end), "{flowed}");
        assert!(!flowed.contains("Sl st in the next st"), "{flowed}");
    }
}
