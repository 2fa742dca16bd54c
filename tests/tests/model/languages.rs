//! Every sheet in every language and set of terms: no word of another is on it.

use std::collections::BTreeSet;
use std::path::Path;

use plumpline_core::pattern::lexicon;
use plumpline_core::project::toy::part::{Small, Thing};
use plumpline_core::sheet::{self, BlurbForm, ScriptPace, Sheet, SizedPlan};
use plumpline_core::{
    Band, Gauge, Hand, Kind, KindFrom, Knot, Loop, Outline, Piece, Plan, Project, Working,
    Yarn, file, plan,
};
use plumpline_tests::paper::html_words;

/// Words of English that none of the other languages has.
const ENGLISH: &[&str] = &[
    "the", "and", "of", "with", "your", "stitch", "stitches", "round", "rounds", "yarn",
    "hook", "gauge", "tension", "stuffing", "stuff", "stuffed", "sew", "sewn", "work",
    "worked", "high", "wide", "deep", "each", "next", "around", "chain", "chains", "loop",
    "loops", "right", "side", "weight", "about", "needle", "scissors", "marker", "increase",
    "decrease", "chart", "charts", "size", "sizes", "make", "before", "after", "from", "into",
    "start", "not", "ball", "balls", "first", "last", "level", "easy", "time", "hours",
    "every", "it", "is", "are", "then", "between", "along", "thread", "wire", "eye", "eyes",
    "nose", "sc", "hdc", "inc", "dec", "sts", "rnd", "rnds", "sl", "blo", "flo", "magic",
    "join", "turn", "fasten", "leaving", "tail", "double", "half", "single",
];
const GERMAN: &[&str] = &[
    "und",
    "der",
    "das",
    "mit",
    "runde",
    "runden",
    "rd",
    "masche",
    "maschen",
    "häkeln",
    "garn",
    "füllwatte",
    "größe",
    "breit",
    "hoch",
    "oder",
    "nicht",
    "eine",
    "einer",
    "jede",
    "fm",
    "lm",
    "km",
    "zunahme",
    "zunahmen",
    "abnahme",
    "abnahmen",
    "wie",
    "aus",
    "zum",
    "für",
];
const FRENCH: &[&str] = &[
    "les",
    "une",
    "maille",
    "mailles",
    "tours",
    "avec",
    "chaque",
    "dans",
    "fil",
    "taille",
    "rembourrage",
    "rembourrer",
    "ms",
    "mc",
    "aug",
    "dim",
    "chacune",
    "suivante",
    "suivantes",
    "et",
    "pour",
    "sur",
];
const SPANISH: &[&str] = &[
    "punto",
    "puntos",
    "vuelta",
    "vueltas",
    "hilo",
    "relleno",
    "tamaño",
    "cada",
    "para",
    "con",
    "los",
    "las",
    "del",
    "tejer",
    "pb",
    "aum",
    "dism",
    "siguiente",
    "siguientes",
];
/// Words of one set of English terms that the other has not.
const US: &[&str] =
    &["sc", "hdc", "skip", "sk", "gauge", "color", "colors", "aluminum", "single"];
const UK: &[&str] =
    &["tension", "colour", "colours", "htr", "dtr", "miss", "aluminium", "trebles"];

/// The lists of all but `code`; of US and UK terms, the other's.
fn foreign(code: &str) -> BTreeSet<&'static str> {
    let lists: Vec<&[&str]> = match code {
        "en-us" => vec![GERMAN, FRENCH, SPANISH, UK],
        "en-uk" => vec![GERMAN, FRENCH, SPANISH, US],
        "de" => vec![ENGLISH, FRENCH, SPANISH],
        "fr" => vec![ENGLISH, GERMAN, SPANISH],
        _ => vec![ENGLISH, GERMAN, FRENCH],
    };
    lists.into_iter().flatten().copied().collect()
}

/// What a person named, as letters that are no word.
fn nameless(mut project: Project) -> Project {
    project.title = "Qx".into();
    for text in [
        &mut project.designer,
        &mut project.notes,
        &mut project.licence,
        &mut project.assembly,
        &mut project.version,
        &mut project.sheet.changes,
    ] {
        text.clear();
    }
    for (i, piece) in project.pieces.iter_mut().enumerate() {
        piece.name = format!("Qx{i}");
    }
    for yarn in &mut project.yarns {
        yarn.name = "Qx".into();
    }
    project.toy.cautions.clear();
    for part in &mut project.toy.parts {
        if let Thing::Small(Small { name, .. }) = &mut part.what {
            name.clear();
        }
    }
    project
}

fn samples() -> Vec<(String, Project)> {
    let folder = Path::new(env!("CARGO_MANIFEST_DIR")).join("../sample-projects");
    let mut found: Vec<(String, Project)> = std::fs::read_dir(folder)
        .expect("the samples")
        .filter_map(|entry| {
            let path = entry.expect("a file").path();
            let name = path.file_stem()?.to_string_lossy().into_owned();
            Some((name, file::load(&path).expect("the sample loads")))
        })
        .collect();
    found.sort_by(|a, b| a.0.cmp(&b.0));
    found
}

/// Pieces of every manner of working, which the samples have not.
fn manners() -> Vec<(String, Project)> {
    let ball = |open_start: bool, open_end: bool| {
        let (a, b) = (if open_start { 14.0 } else { 0.0 }, if open_end { 14.0 } else { 0.0 });
        let knots = vec![Knot::new(a, 0.0), Knot::new(36.0, 40.0), Knot::new(b, 80.0)];
        Piece::new("Ball", Outline { knots }, Gauge::per(22.0, 24.0, 100.0))
    };
    let striped = |piece: Piece| {
        let mut project = Project::of_piece(piece);
        project.yarns = vec![Yarn::plain(0), Yarn::plain(1)];
        project.yarns[0].ball_grams = Some(50.0);
        project.pieces[0].bands =
            vec![Band { from_round: 1, yarn: 0 }, Band { from_round: 6, yarn: 1 }];
        project
    };
    let mut all = Vec::new();
    for (i, kind) in [Kind::Single, Kind::HalfDouble, Kind::Double].into_iter().enumerate() {
        for (j, working) in [
            Working::Spiral,
            Working::Joined { chain_counts: false },
            Working::Joined { chain_counts: true },
        ]
        .into_iter()
        .enumerate()
        {
            // A Latin square: each shape with each kind and each way of working.
            let shapes = [
                (false, false, 0.0, Hand::Right),
                (true, true, 0.0, Hand::Left),
                (false, true, 20.0, Hand::Right),
            ];
            let (a, b, straight, hand) = shapes[(i + j) % 3];
            {
                let mut piece = ball(a, b);
                piece.working = working;
                piece.hand = hand;
                piece.straight_mm = straight;
                piece.kinds = vec![KindFrom { from_round: 1, kind }];
                piece.loops.insert(4, Loop::Back);
                piece.loops.insert(5, Loop::Front);
                piece.copies = 2;
                all.push((format!("{kind:?}, {working:?}, {straight}"), striped(piece)));
            }
        }
    }
    let knots = vec![Knot::new(0.0, 0.0), Knot::new(8.0, 8.0), Knot::new(8.0, 120.0)];
    let limb = Piece::new("Limb", Outline { knots }, Gauge::per(22.0, 24.0, 100.0));
    all.push(("a limb".into(), Project::of_piece(limb)));
    all
}

/// All that the sheet says in any form, with what is read out of pictures and labels.
fn all_words(sheet: &Sheet) -> String {
    let html = sheet::html_of(sheet);
    let labels = html.split("aria-label=\"").skip(1).filter_map(|part| part.split('"').next());
    let labels: Vec<&str> = labels.collect();
    let (_, body) = html.split_once("<body").expect("a body");
    let (body, _) = body.rsplit_once("<script").expect("a script");
    let charts = sheet.pieces.iter().flat_map(|piece| {
        let charts = &piece.pictures.charts;
        charts.said().chain(charts.key.iter().map(|entry| entry.text.as_str()))
    });
    let charts: Vec<&str> = charts.collect();
    let mut texts = vec![
        sheet::text_of(sheet),
        sheet::markdown_of(sheet),
        html_words(&format!("<body{body}")),
        labels.join("\n"),
        charts.join("\n"),
        sheet::script(&sheet.script, ScriptPace::Worked),
        sheet::captions_vtt(&sheet.script, ScriptPace::Said).replace("WEBVTT", ""),
        sheet::blurb(sheet, BlurbForm::Plain),
        sheet::blurb(sheet, BlurbForm::Markdown),
        sheet::tester_form(sheet, BlurbForm::Plain),
    ];
    texts.extend(sheet.labels.values().cloned());
    // Names in braces are filled in where a label is used.
    let bare = |text: &String| {
        let mut parts = text.split('{');
        let head = parts.next().unwrap_or_default().to_owned();
        head + &parts
            .filter_map(|p| p.split_once('}'))
            .map(|(_, rest)| rest)
            .collect::<String>()
    };
    texts.iter().map(bare).collect::<Vec<_>>().join("\n")
}

/// The sheet of pieces in one size each.
fn sheet_of(project: &Project, plans: &[Plan]) -> plumpline_core::Result<Sheet> {
    let sized: Vec<[SizedPlan<'_>; 1]> = project
        .pieces
        .iter()
        .zip(plans)
        .map(|(piece, plan)| [SizedPlan { name: "", piece, plan }])
        .collect();
    let pieces: Vec<&[SizedPlan<'_>]> = sized.iter().map(<[_; 1]>::as_slice).collect();
    sheet::sheet_of(project, &pieces, Default::default())
}

#[test]
fn no_sheet_has_a_word_of_another_language() {
    let mut leaks: BTreeSet<String> = BTreeSet::new();
    for (name, project) in samples().into_iter().chain(manners()) {
        let sized = project.pieces.iter().any(|piece| !piece.sizes.is_empty());
        let whole = sized || !project.seams.is_empty() || !project.toy.parts.is_empty();
        let plans: Vec<Plan> =
            project.pieces.iter().map(|piece| plan(piece).expect("a plan")).collect();
        for lexicon in lexicon::all() {
            let mut project = nameless(project.clone());
            project.wording.lexicon.clone_from(&lexicon.code);
            // What is put together is planned by itself; the others are planned once.
            let sheet = match whole {
                true => sheet::sheet(&project),
                false => sheet_of(&project, &plans),
            };
            let sheet =
                sheet.unwrap_or_else(|error| panic!("{name}, {}: {error}", lexicon.code));
            let words = all_words(&sheet);
            // What it is called in itself, and published texts by their names.
            let words = words
                .replace(&lexicon.name, "")
                .replace("CPSC small parts guidance", "")
                .replace("CPSC", "");
            let foreign = foreign(&lexicon.code);
            for line in words.lines() {
                for word in line.split(|c: char| !c.is_alphanumeric()) {
                    let low = word.to_lowercase();
                    if foreign.contains(low.as_str()) {
                        leaks
                            .insert(format!("{}: “{word}” in “{line}” ({name})", lexicon.code));
                    }
                }
                assert!(!line.contains(['{', '}']), "{name}, {}: {line}", lexicon.code);
            }
        }
    }
    let told: Vec<&str> = leaks.iter().map(String::as_str).take(60).collect();
    assert!(leaks.is_empty(), "{} in all:\n{}", leaks.len(), told.join("\n"));
}

/// The lists are of use: every language has words of its own list on its sheets.
#[test]
fn every_list_is_of_words_that_its_language_uses() {
    let (_, project) = samples().swap_remove(0);
    for (code, own) in [
        ("en-us", ENGLISH),
        ("de", GERMAN),
        ("fr", FRENCH),
        ("es", SPANISH),
        ("en-uk", ENGLISH),
    ] {
        let mut project = nameless(project.clone());
        project.wording.lexicon = code.into();
        let words = all_words(&sheet::sheet(&project).expect("a sheet")).to_lowercase();
        let said: BTreeSet<&str> = words.split(|c: char| !c.is_alphanumeric()).collect();
        let used = own.iter().filter(|word| said.contains(*word)).count();
        assert!(2 * used > own.len(), "{code}: {used} of {}", own.len());
    }
}
