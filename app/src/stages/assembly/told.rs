//! The toy in words: what parts are called, and where they sit.

use plumpline_core::Project;
use plumpline_core::project::toy::attachment::{Attachment, CordHold, CordSpot};
use plumpline_core::project::toy::part::{
    Copies, EdgeHow, Part, PartEdge, PartEnd, PartForm, Thing,
};
use plumpline_core::toy::footprint::Span;
use plumpline_core::toy::{PartFigures, Point};
use plumpline_core::words::Writer;
use plumpline_core::{Unit, toy};

use crate::work::toy::ToyMade;

/// What a part is called at the start of a line: `Ear`, `Eyes, 9 mm`.
pub(super) fn title(project: &Project, index: usize, unit: Unit) -> String {
    let name = capital(&toy::steps::part_name(project, index, &Writer::bench()));
    let form = project.toy.parts.get(index).and_then(|part| match &part.what {
        Thing::Small(small) => Some(small.form),
        Thing::Piece(_) => None,
    });
    match form {
        Some(PartForm::Eye(button) | PartForm::Nose(button)) => {
            format!("{name}, {}", length(unit, button.diameter_mm))
        }
        Some(PartForm::Block(..)) | None => name,
    }
}

/// A length of a bought thing.
fn length(unit: Unit, mm: f64) -> String {
    format!("{} {}", unit.short_number(mm), unit.symbol())
}

/// What a part is called within a sentence, told from others that are called the same.
pub(super) fn called(project: &Project, index: usize) -> String {
    let name = toy::steps::part_name(project, index, &Writer::bench());
    let same = |&i: &usize| toy::steps::part_name(project, i, &Writer::bench()) == name;
    let all: Vec<usize> = (0..project.toy.parts.len()).filter(same).collect();
    match all.iter().position(|&i| i == index) {
        Some(place) if all.len() > 1 => format!("{name}, {} of {}", place + 1, all.len()),
        _ => name,
    }
}

/// `× 2, mirrored`; nothing for one.
pub(super) fn copies(copies: Copies) -> String {
    match copies {
        Copies::One => String::new(),
        Copies::Mirrored => "× 2, mirrored".into(),
        Copies::Around(n) => format!("× {n}, around"),
    }
}

/// Where a part sits: `on Head, Rnds 5–9, 8 sts apart`.
pub(super) fn where_it_sits(
    project: &Project,
    index: usize,
    figures: Option<&PartFigures>,
) -> String {
    let Some(part) = project.toy.parts.get(index) else { return String::new() };
    let Some(seat) = part.on else {
        return match project.toy.parts.iter().position(|part| part.on.is_none()) {
            Some(first) if first == index => "the body".into(),
            _ => "a body of its own".into(),
        };
    };
    let on = toy::steps::part_name(project, seat.part, &Writer::bench());
    let place = match figures {
        Some(PartFigures { span: Some(span), .. }) => covered(span),
        Some(PartFigures { point: Some(point), .. }) => beside(point),
        _ => String::new(),
    };
    if place.is_empty() { format!("on {on}") } else { format!("on {on}, {place}") }
}

/// `Rnds 5–9, 8 sts apart`.
pub(super) fn covered(span: &Span) -> String {
    let (first, last) = span.rounds;
    let place = match (span.around, first.cmp(&last)) {
        (true, std::cmp::Ordering::Less) => format!("all around, Rnds {first}–{last}"),
        (true, _) => format!("all around Rnd {first}"),
        (false, std::cmp::Ordering::Less) => format!("Rnds {first}–{last}"),
        (false, std::cmp::Ordering::Equal) => format!("Rnd {first}"),
        (false, std::cmp::Ordering::Greater) => format!("between Rnds {last} and {first}"),
    };
    match span.apart {
        Some(apart) => format!("{place}, {}", apart_words(apart.stitches)),
        None => place,
    }
}

/// `between Rnds 12 and 13, 7 sts apart`.
fn beside(point: &Point) -> String {
    let place = format!("between Rnds {} and {}", point.round, point.round + 1);
    match point.apart {
        Some(apart) => format!("{place}, {}", apart_words(f64::from(apart))),
        None => place,
    }
}

fn apart_words(stitches: f64) -> String {
    let n = stitches.round();
    if n < 0.0 {
        return "over one another".into();
    }
    if n == 1.0 { "1 st apart".into() } else { format!("{n:.0} sts apart") }
}

/// Stitches that a part is sewn with.
pub(super) fn sewn(figures: Option<&PartFigures>) -> Option<String> {
    let print = figures?.footprint.as_ref()?;
    print.edge_mm?;
    Some(format!("{:.0} sts", print.edge_stitches))
}

/// What a seam of a part that fits is like, in a line.
pub(super) fn fits(part: &Part, figures: &PartFigures) -> Option<String> {
    let (print, span) = (figures.footprint.as_ref()?, figures.span.as_ref()?);
    let place = covered(&Span { apart: None, ..span.clone() });
    let around = if span.around { place } else { format!("along {place}") };
    Some(match (print.edge_mm, part.on.map(|seat| seat.by.how)) {
        (None, _) => format!("Sunk in: sewn where the two meet, {around}"),
        (_, Some(EdgeHow::Flat)) => {
            format!(
                "Pressed flat: {:.0} sts through both layers, {around}",
                print.edge_stitches
            )
        }
        _ => format!("Sews on with {:.0} sts, {around}", print.edge_stitches),
    })
}

/// How near copies come to one another, in a line.
pub(super) fn apart(figures: &PartFigures) -> Option<String> {
    let apart = figures.span.as_ref()?.apart?;
    let words = capital(&apart_words(apart.stitches));
    Some(format!("{words} at Rnd {}", apart.round))
}

/// An edge in words: `last edge, open`.
pub(super) const fn edge_words(edge: PartEdge) -> &'static str {
    match (edge.how, edge.end) {
        (EdgeHow::Open, PartEnd::Last) => "its open end",
        (EdgeHow::Open, PartEnd::Start) => "its open start",
        (EdgeHow::Closed, PartEnd::Last) => "its end, sunk in",
        (EdgeHow::Closed, PartEnd::Start) => "its start, sunk in",
        (EdgeHow::Flat, PartEnd::Last) => "its end, pressed flat",
        (EdgeHow::Flat, PartEnd::Start) => "its start, pressed flat",
    }
}

/// The words for an attachment in a list, and where it is.
pub(super) fn attached(
    project: &Project,
    made: Option<&ToyMade>,
    index: usize,
) -> (String, String) {
    let Some(attachment) = project.toy.attachments.get(index) else {
        return Default::default();
    };
    let at = |hold: CordHold| hold_words(project, made, hold);
    match attachment {
        Attachment::Cord(cord) => match cord.to {
            Some(to) => ("Cord".into(), format!("{}, down to {}", at(cord.from), at(to))),
            None => ("Cord to hang by".into(), at(cord.from)),
        },
        Attachment::Loop(hanger) => ("Loop".into(), at(hanger.on)),
        Attachment::Wire(wire) => {
            ("Wire".into(), format!("{}, into {}", at(wire.carries), at(wire.stands_in)))
        }
        Attachment::Joint(joint) => {
            ("Joint".into(), format!("{} turns on a thread", called(project, joint.part)))
        }
    }
}

/// Where something is held: `Head, at its start`.
fn hold_words(project: &Project, made: Option<&ToyMade>, hold: CordHold) -> String {
    let name = toy::steps::part_name(project, hold.part, &Writer::bench());
    let round = made.and_then(|made| {
        let solid = made.solid(hold.part)?;
        toy::narrow::find(solid, hold.at).map(|round| solid.number(round))
    });
    let place = match (hold.at, round) {
        (CordSpot::End(PartEnd::Start), _) => "at its start".into(),
        (CordSpot::End(PartEnd::Last), _) => "at its end".into(),
        (CordSpot::Neck, Some(round)) => format!("at its neck, Rnd {round}"),
        (CordSpot::Neck, None) => "at its neck, which it has not".into(),
        (CordSpot::Lip, Some(round)) => format!("at its lip, Rnd {round}"),
        (CordSpot::Lip, None) => "at its lip, which it has not".into(),
        (CordSpot::Share(_), Some(round)) => format!("at Rnd {round}"),
        (CordSpot::Share(_), None) => String::new(),
    };
    format!("{name} {place}")
}

/// With a capital.
pub(super) fn capital(words: &str) -> String {
    let mut chars = words.chars();
    chars.next().map_or_else(String::new, |first| first.to_uppercase().chain(chars).collect())
}
