//! What files and hands may bring, each as a function of any bytes whatever: it returns, or
//! panics where a promise is broken. A fuzzing harness can call them as they are.

use std::sync::OnceLock;

use plumpline::document::Document;
use plumpline::document::edit::Edit;
use plumpline_core::pattern::proofread::{LineIndex, listing, proofread, summary};
use plumpline_core::pattern::read::{TermsWish, read};
use plumpline_core::pattern::{HouseStyle, write::Writer};
use plumpline_core::project::shape::shape;
use plumpline_core::sheet::{markdown_of, sheet, text_of};
use plumpline_core::{Firmness, Gauge, Outline, Plan, Project, Unit, file, plan, words};
use plumpline_trace::{drawing, formula, table};

use super::drive::most_memory_mb;

/// A target and what it is called.
pub(crate) type Target = (&'static str, fn(&[u8]));

/// All of them.
pub(crate) const TARGETS: [Target; 6] = [
    ("project", project),
    ("pattern", pattern),
    ("table", measured),
    ("drawing", drawn),
    ("formula", told),
    ("drags", drags),
];

/// Pieces of a file that are planned: enough for every branch, soon done.
const MOST_PLANNED: usize = 6;

fn one_line(said: &str) {
    assert!(said.lines().count() == 1 && said.len() < 3000, "no single line: {said:.3000}");
    assert!(!said.contains(char::is_control), "a terminal would obey it: {said:?}");
}

/// A project file: refused in one line, or sound, saved and read again as it is.
pub(crate) fn project(bytes: &[u8]) {
    let text = String::from_utf8_lossy(bytes);
    match file::parse(&text) {
        Err(error) => one_line(&error.to_string()),
        Ok(project) => sound(&project),
    }
}

fn sound(project: &Project) {
    let text = file::write(project).expect("what was read can be written");
    assert_eq!(file::parse(&text).as_ref(), Ok(project), "what was written is another");
    for piece in project.pieces.iter().take(MOST_PLANNED) {
        match plan(piece) {
            Ok(plan) => {
                finite(&plan);
                let worded = words(&plan, piece, &Writer::bench());
                assert_eq!(worded.lines.is_empty(), plan.rounds.is_empty());
            }
            Err(error) => one_line(&error.to_string()),
        }
    }
    if project.pieces.len() <= MOST_PLANNED && project.pieces.iter().all(|p| p.sizes.len() < 4)
    {
        match sheet(project) {
            Ok(sheet) => {
                assert!(!text_of(&sheet).is_empty() && !markdown_of(&sheet).is_empty());
            }
            Err(error) => one_line(&error.to_string()),
        }
    }
}

fn finite(plan: &Plan) {
    assert!(plan.forecast.iter().all(|node| node.r.is_finite() && node.z.is_finite()));
    assert!(plan.size_mm.height.is_finite() && plan.size_mm.width.is_finite());
}

/// A written pattern: every place that is told lies in the text, and what is made of it is
/// sound.
pub(crate) fn pattern(bytes: &[u8]) {
    let text = String::from_utf8_lossy(bytes);
    let reading = read(&text, TermsWish::Infer);
    let places = LineIndex::new(&text);
    for finding in proofread(&text, &reading) {
        assert!(text.get(finding.at.clone()).is_some(), "{:?} is no place", finding.at);
        let (line, column) = places.of(finding.at.start);
        assert!(line >= 1 && column >= 1 && !finding.message.is_empty());
    }
    let _ = (listing(&text, &reading, HouseStyle::bench()), summary(&reading));
    let made =
        shape(&reading.pattern, &reading.unread, "Any", Gauge::default(), Firmness::default());
    match made {
        Ok(made) => {
            for shaped in made.pieces.iter().take(MOST_PLANNED) {
                shaped.piece.validate().expect("what is made of a pattern is sound");
                if let Ok(plan) = plan(&shaped.piece) {
                    finite(&plan);
                }
            }
        }
        Err(error) => one_line(&error.to_string()),
    }
}

fn fitted(outline: &Outline) {
    outline.validate().expect("what is fitted is sound");
}

/// A table of radii and heights.
pub(crate) fn measured(bytes: &[u8]) {
    let text = String::from_utf8_lossy(bytes);
    match table::read(&text).and_then(|t| Outline::through_points(&t.points, 0.1)) {
        Ok(outline) => fitted(&outline),
        Err(error) => one_line(&error.to_string()),
    }
}

/// A drawing of a profile.
pub(crate) fn drawn(bytes: &[u8]) {
    let text = String::from_utf8_lossy(bytes);
    match drawing::read(&text, Some(80.0), 0.1) {
        Ok(line) => fitted(&line.outline),
        Err(error) => one_line(&error.to_string()),
    }
}

/// A formula of a radius.
pub(crate) fn told(bytes: &[u8]) {
    let text = String::from_utf8_lossy(bytes);
    if text.len() < 400
        && let Ok(line) = formula::outline(&text, 80.0, 0.1)
    {
        fitted(&line.outline);
    }
}

/// What all drags together may add to the memory in use, MB: so no outline that a hand makes
/// takes more.
const DRAGS_MB: u64 = 100;

/// What a hand does on the board, two bytes an act: which knot and what, how far. Whatever
/// comes of it is refused, or planned.
pub(crate) fn drags(bytes: &[u8]) {
    static BEFORE: OnceLock<Option<u64>> = OnceLock::new();
    let before = *BEFORE.get_or_init(most_memory_mb);
    let mut document = Document::blank();
    for act in bytes.chunks_exact(2).take(25) {
        let knots = document.piece().outline.knots.len();
        let (knot, far) = (usize::from(act[0] & 15) % knots, f64::from(act[1] as i8));
        let edit = match act[0] >> 4 {
            // Arrows: a step of half a millimetre, and with Shift of five.
            0..=3 => moved(&document, knot, 0.5 * far, 0.0),
            4..=7 => moved(&document, knot, 0.0, 0.5 * far),
            8 => moved(&document, knot, 5.0 * far, 0.0),
            9 => moved(&document, knot, 0.0, 5.0 * far),
            10 => Edit::ToggleCorner(knot),
            11 => Edit::AddKnot { knot, radius_mm: far.abs(), height_mm: 0.5 * far },
            12 if knots > 3 && knot > 0 && knot + 1 < knots => Edit::RemoveKnot(knot),
            13 => Edit::ToggleEnd(if knot == 0 { 0 } else { knots - 1 }),
            14 => Edit::Pin { round: knot as u32 + 1, count: (far.abs() as u32 * 9).max(1) },
            _ => {
                document.undo();
                continue;
            }
        };
        document.edit(edit, Unit::Mm.into());
        // The board plans while a hand drags.
        match plan(document.piece()) {
            Ok(plan) => finite(&plan),
            Err(error) => one_line(&error.to_string()),
        }
    }
    // And whatever stands at the end can be kept.
    if let Some(kept) = document.soundest() {
        file::write(&kept).expect("it can be saved");
    }
    if let (Some(before), Some(now)) = (before, most_memory_mb()) {
        assert!(now - before <= DRAGS_MB, "{} MB for what a hand did", now - before);
    }
}

/// The knot elsewhere, as the board moves it: an end that is closed stays on the axis.
fn moved(document: &Document, knot: usize, right: f64, down: f64) -> Edit {
    let mut outline = document.piece().outline.clone();
    let last = outline.knots.len() - 1;
    let moved = &mut outline.knots[knot];
    let stays = moved.is_pole() && (knot == 0 || knot == last);
    moved.radius_mm = if stays { 0.0 } else { (moved.radius_mm + right).clamp(0.0, 3000.0) };
    moved.height_mm = (moved.height_mm + down).clamp(-3000.0, 3000.0);
    Edit::MoveKnots { lead: knot, outline }
}
