//! The toy in words: what parts are called, and where they sit.

use plumpline_core::Project;
use plumpline_core::project::toy::attachment::{Attachment, CordHold, CordSpot};
use plumpline_core::project::toy::part::{
    Copies, EdgeHow, Part, PartEdge, PartEnd, PartForm, Thing,
};
use plumpline_core::toy::footprint::Span;
use plumpline_core::toy::{PartFigures, Point};
use plumpline_core::words::Writer;
use plumpline_core::{Units, toy};

use crate::work::toy::ToyMade;

/// What a part is called at the start of a line: `Ear`, `Eyes, 9 mm`.
pub(super) fn title(project: &Project, index: usize, unit: Units) -> String {
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
fn length(unit: Units, mm: f64) -> String {
    unit.short_text(mm)
}

/// What a part is called within a sentence, told from others that are called the same.
pub(super) fn called(project: &Project, index: usize) -> String {
    let name = toy::steps::part_name(project, index, &Writer::bench());
    let same = |&i: &usize| toy::steps::part_name(project, i, &Writer::bench()) == name;
    let all: Vec<usize> = (0..project.toy.parts.len()).filter(same).collect();
    match all.iter().position(|&i| i == index) {
        Some(place) if all.len() > 1 => {
            say!("placed-name-place-of-all", name = name, place = place + 1, all = all.len())
        }
        _ => name,
    }
}

/// `× 2, mirrored`; nothing for one.
pub(super) fn copies(copies: Copies) -> String {
    match copies {
        Copies::One => String::new(),
        Copies::Mirrored => say!("placed-2-mirrored").into(),
        Copies::Around(n) => say!("placed-n-around", n = n),
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
            Some(first) if first == index => say!("placed-the-body").into(),
            _ => say!("placed-a-body-of-its-own").into(),
        };
    };
    let on = toy::steps::part_name(project, seat.part, &Writer::bench());
    let place = match figures {
        Some(PartFigures { span: Some(span), .. }) => covered(span),
        Some(PartFigures { point: Some(point), .. }) => beside(point),
        _ => String::new(),
    };
    if place.is_empty() {
        say!("placed-on-on", on = on)
    } else {
        say!("placed-on-at", on = on, place = place)
    }
}

/// `Rnds 5–9, 8 sts apart`.
pub(super) fn covered(span: &Span) -> String {
    let (first, last) = span.rounds;
    let place = match (span.around, first.cmp(&last)) {
        (true, std::cmp::Ordering::Less) => {
            say!("placed-all-around-rnds-first-last", first = first, last = last)
        }
        (true, _) => say!("placed-all-around-rnd-first", first = first),
        (false, std::cmp::Ordering::Less) => {
            say!("placed-rnds-first-last", first = first, last = last)
        }
        (false, std::cmp::Ordering::Equal) => say!("placed-rnd-first", first = first),
        (false, std::cmp::Ordering::Greater) => {
            say!("placed-between-apart", last = last, first = first)
        }
    };
    match span.apart {
        Some(apart) => format!("{place}, {}", apart_words(apart.stitches)),
        None => place,
    }
}

/// `between Rnds 12 and 13, 7 sts apart`.
fn beside(point: &Point) -> String {
    let place = say!("placed-between", from = point.round, to = point.round + 1);
    match point.apart {
        Some(apart) => format!("{place}, {}", apart_words(f64::from(apart))),
        None => place,
    }
}

fn apart_words(stitches: f64) -> String {
    let n = stitches.round();
    if n < 0.0 {
        return say!("placed-over-one-another").into();
    }
    if n == 1.0 {
        say!("placed-1-st-apart").into()
    } else {
        say!("placed-sts-apart", n = format!("{:.0}", n))
    }
}

/// Stitches that a part is sewn with.
pub(super) fn sewn(figures: Option<&PartFigures>) -> Option<String> {
    let print = figures?.footprint.as_ref()?;
    print.edge_mm?;
    Some(say!("placed-n-sts", n = format!("{:.0}", print.edge_stitches)))
}

/// What a seam of a part that fits is like, in a line.
pub(super) fn fits(part: &Part, figures: &PartFigures) -> Option<String> {
    let (print, span) = (figures.footprint.as_ref()?, figures.span.as_ref()?);
    let place = covered(&Span { apart: None, ..span.clone() });
    let around = if span.around { place } else { say!("placed-along-place", place = place) };
    Some(match (print.edge_mm, part.on.map(|seat| seat.by.how)) {
        (None, _) => say!("placed-sunk-in-sewn-where-the-two-meet-around", around = around),
        (_, Some(EdgeHow::Flat)) => {
            say!(
                "placed-pressed-flat-n-sts-through-both-layers",
                n = format!("{:.0}", print.edge_stitches),
                around = around
            )
        }
        _ => say!(
            "placed-sews-on-with-n-sts-around",
            n = format!("{:.0}", print.edge_stitches),
            around = around
        ),
    })
}

/// How near copies come to one another, in a line.
pub(super) fn apart(figures: &PartFigures) -> Option<String> {
    let apart = figures.span.as_ref()?.apart?;
    let words = capital(&apart_words(apart.stitches));
    Some(say!("placed-words-at-rnd-round", words = words, round = apart.round))
}

/// An edge in words: `last edge, open`.
pub(super) fn edge_words(edge: PartEdge) -> &'static str {
    match (edge.how, edge.end) {
        (EdgeHow::Open, PartEnd::Last) => say!("placed-its-open-end"),
        (EdgeHow::Open, PartEnd::Start) => say!("placed-its-open-start"),
        (EdgeHow::Closed, PartEnd::Last) => say!("placed-its-end-sunk-in"),
        (EdgeHow::Closed, PartEnd::Start) => say!("placed-its-start-sunk-in"),
        (EdgeHow::Flat, PartEnd::Last) => say!("placed-its-end-pressed-flat"),
        (EdgeHow::Flat, PartEnd::Start) => say!("placed-its-start-pressed-flat"),
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
            Some(to) => (
                say!("placed-cord").into(),
                say!("placed-cord-down", from = at(cord.from), to = at(to)),
            ),
            None => (say!("placed-cord-to-hang-by").into(), at(cord.from)),
        },
        Attachment::Loop(hanger) => (say!("placed-loop").into(), at(hanger.on)),
        Attachment::Wire(wire) => (
            say!("placed-wire").into(),
            say!("placed-wire-into", from = at(wire.carries), to = at(wire.stands_in)),
        ),
        Attachment::Sling(sling) => {
            let mut names: Vec<String> = Vec::new();
            for leg in &sling.legs {
                let name = toy::steps::part_name(project, leg.part, &Writer::bench());
                if !names.contains(&name) {
                    names.push(name);
                }
            }
            let below =
                say!("placed-from-places-on", n = sling.legs.len(), names = names.join(", "));
            (say!("placed-cords-that-meet").into(), below)
        }
        Attachment::Joint(joint) => (
            say!("placed-joint").into(),
            say!("placed-part-turns-on-a-thread", part = called(project, joint.part)),
        ),
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
        (CordSpot::End(PartEnd::Start), _) => say!("placed-at-its-start").into(),
        (CordSpot::End(PartEnd::Last), _) => say!("placed-at-its-end").into(),
        (CordSpot::Neck, Some(round)) => say!("placed-at-its-neck-rnd-round", round = round),
        (CordSpot::Neck, None) => say!("placed-at-its-neck-which-it-does-not-have").into(),
        (CordSpot::Lip, Some(round)) => say!("placed-at-its-lip-rnd-round", round = round),
        (CordSpot::Lip, None) => say!("placed-at-its-lip-which-it-does-not-have").into(),
        (CordSpot::Share(_), Some(round)) => say!("placed-at-rnd-round", round = round),
        (CordSpot::Share(_), None) => String::new(),
    };
    format!("{name} {place}")
}

/// With a capital.
pub(super) fn capital(words: &str) -> String {
    let mut chars = words.chars();
    chars.next().map_or_else(String::new, |first| first.to_uppercase().chain(chars).collect())
}
