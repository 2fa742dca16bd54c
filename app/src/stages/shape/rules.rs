//! Rules: what every round must keep to, each with its reason.

use egui::{DragValue, Rect, Ui, pos2, vec2};
use plumpline_core::{Face as Plain, Piece, Rules, Spread};

use crate::bench::Bench;
use crate::bench::action::Actions;
use crate::document::choice::Choice;
use crate::fields::form::{self, Counted};
use crate::fields::length_field;
use crate::kit::controls::{self, ButtonFace};
use crate::kit::icons::Icon;

/// Draws the rules of the selected piece.
pub(super) fn show(ui: &mut Ui, bench: &Bench<'_>, actions: &mut Actions) {
    ui.spacing_mut().item_spacing.y = 2.0;
    form::heading(ui, "Ends");
    ends(ui, bench, actions);
    form::heading(ui, "Counts");
    counts(ui, bench, actions);
    form::heading(ui, "Placement");
    placement(ui, bench, actions);
    form::heading(ui, "No shaping between rounds");
    faces(ui, bench, actions);
    form::heading(ui, "Start");
    start(ui, bench, actions);
}

fn set(bench: &Bench<'_>, actions: &mut Actions, change: impl FnOnce(&mut Rules)) {
    let mut rules = bench.document.piece().rules;
    change(&mut rules);
    actions.choose(Choice::Rules(rules));
}

fn is_oval(piece: &Piece) -> bool {
    piece.straight_mm > 0.0 && piece.outline.starts_closed()
}

fn ends(ui: &mut Ui, bench: &Bench<'_>, actions: &mut Actions) {
    let piece = bench.document.piece();
    let count = |round: Option<&plumpline_core::Round>| round.map_or(6, |r| r.count);
    let first = count(bench.plan.and_then(|p| p.rounds.first()));
    let last = count(bench.plan.and_then(|p| p.rounds.last()));
    let why = "How many stitches the magic ring begins with: fewer make a finer point, more \
               a flatter start";
    let rect = form::row(ui, "Ring", why);
    if !piece.outline.starts_closed() {
        form::instead(ui, rect, "this piece starts open");
    } else if is_oval(piece) {
        form::instead(ui, rect, "an oval starts on a chain");
    } else {
        let span = Counted { ends: (3, 24), none: Some(("automatic", first)) };
        if let Some(ring) = form::stepper(ui, rect, "Ring", piece.rules.ring, span, actions) {
            set(bench, actions, |rules| rules.ring = ring);
        }
    }
    let why = "How many stitches are left to gather: the fewer, the smaller the knot they \
               draw into";
    let rect = form::row(ui, "Last round", why);
    if piece.outline.finishes_closed() {
        let span = Counted { ends: (3, 200), none: Some(("automatic", last)) };
        let now = piece.rules.last;
        if let Some(last) = form::stepper(ui, rect, "Last round", now, span, actions) {
            set(bench, actions, |rules| rules.last = last);
        }
    } else {
        form::instead(ui, rect, "this piece ends open");
    }
}

fn counts(ui: &mut Ui, bench: &Bench<'_>, actions: &mut Actions) {
    let rules = bench.document.piece().rules;
    let why = "Fewest stitches a round in the middle may have: a neck must still let a \
               finger and the stuffing through";
    let rect = form::row(ui, "Smallest neck", why);
    let span = Counted { ends: (3, 200), none: None };
    let now = Some(rules.smallest_neck);
    let neck = form::stepper(ui, rect, "Smallest neck", now, span, actions);
    if let Some(neck) = neck.flatten() {
        set(bench, actions, |rules| rules.smallest_neck = neck);
    }
    let why = "Counts that share a divisor keep one repeat all the way, and let a motif go \
               round without a jog";
    let rect = form::row(ui, "In multiples of", why);
    let span = Counted { ends: (2, 24), none: Some(("any count", 1)) };
    let now = Some(rules.multiple_of).filter(|&n| n > 1);
    if let Some(of) = form::stepper(ui, rect, "In multiples of", now, span, actions) {
        set(bench, actions, |rules| rules.multiple_of = of.unwrap_or(1));
    }
    let why = "Most stitches a round may gain or lose: small steps show less and are easier \
               to count";
    let rect = form::row(ui, "Largest change", why);
    let most = bench
        .plan
        .and_then(|p| p.bends.iter().skip(1).map(|b| b.gained.unsigned_abs()).max())
        .unwrap_or(6)
        .clamp(1, 200);
    let span = Counted { ends: (1, 200), none: Some(("off", most)) };
    let now = rules.largest_change;
    if let Some(most) = form::stepper(ui, rect, "Largest change", now, span, actions) {
        set(bench, actions, |rules| rules.largest_change = most);
    }
    let why = "The second half repeats the first backwards, so one half need only be learnt";
    if let Some(on) = form::tick(ui, "Both halves alike", why, rules.symmetric) {
        set(bench, actions, |rules| rules.symmetric = on);
    }
    let why = "More stitches than lie flat make the cloth stand in folds: a skirt, a wavy lip. \
               Without it no round gains so many";
    let words = "Rounds may gain more than lies flat";
    if let Some(on) = form::tick(ui, words, why, rules.frills) {
        set(bench, actions, |rules| rules.frills = on);
    }
    let why = "Plain rounds stand together, so that long stretches need no counting";
    if let Some(on) = form::tick(ui, "Plain rounds together", why, rules.plain_together) {
        set(bench, actions, |rules| rules.plain_together = on);
    }
}

fn placement(ui: &mut Ui, bench: &Bench<'_>, actions: &mut Actions) {
    let piece = bench.document.piece();
    let why = "Turned increases do not show; stacked ones line up into corners, for those \
               who want them";
    let rect = form::row(ui, "Increases", why);
    let now = usize::from(piece.spread == Spread::Stacked);
    if let Some(i) = form::pick(ui, rect, "Increases", &["turned", "stacked"], now) {
        actions.choose(Choice::Spread(if i == 0 { Spread::Turned } else { Spread::Stacked }));
    }
    let why = "How far each round leans against the one below, in stitches: measure it on a \
               swatch in the round. 0.17 is assumed";
    let rect = form::row(ui, "Spiral drift", why);
    let mut drift = piece.rules.spiral_drift;
    let drag =
        DragValue::new(&mut drift).range(-1.0..=1.0).speed(0.01).max_decimals(2).suffix(" st");
    let at = Rect::from_min_size(rect.right_center() - vec2(74.0, 13.0), vec2(74.0, 26.0));
    if form::field(ui, at, "Spiral drift", drag, actions).changed() {
        let drift = (drift * 100.0).round() / 100.0;
        set(bench, actions, |rules| rules.spiral_drift = drift);
    }
}

/// A line a face: from, to, and a button that lets it go.
fn faces(ui: &mut Ui, bench: &Bench<'_>, actions: &mut Actions) {
    let faces = &bench.document.piece().faces;
    let rounds = bench.plan.map_or(1, |p| p.rounds.len() as u32).max(1);
    let why = "A face to embroider, or eyes to set, sit best where no stitch is added or \
               taken away";
    for (i, face) in faces.iter().enumerate() {
        let number = i + 1;
        let rect = form::row(ui, &format!("Face {number}"), why);
        let most = rounds.max(face.to_round);
        let mut new = *face;
        let spot = |from_right: f32, width: f32| {
            let min = pos2(rect.right() - from_right, rect.center().y - 13.0);
            Rect::from_min_size(min, vec2(width, 26.0))
        };
        let from = DragValue::new(&mut new.from_round).range(1..=most).speed(0.08);
        let name = format!("Face {number}, first round");
        let moved_from = form::field(ui, spot(148.0, 48.0), &name, from, actions).changed();
        let to = DragValue::new(&mut new.to_round).range(1..=most).speed(0.08);
        let name = format!("Face {number}, last round");
        let moved_to = form::field(ui, spot(80.0, 48.0), &name, to, actions).changed();
        form::instead(ui, spot(98.0, 14.0), "to");
        if moved_from {
            new.to_round = new.to_round.max(new.from_round);
        } else if moved_to {
            new.from_round = new.from_round.min(new.to_round);
        }
        let name = format!("Remove face {number}");
        let at = spot(24.0, 24.0);
        let gone = controls::button(ui, at, ButtonFace::Icon(Icon::Close), &name, true)
            .on_hover_text("Let these rounds be shaped")
            .clicked();
        if gone || new != *face {
            let mut list: Vec<Plain> = faces.clone();
            if gone {
                list.remove(i);
            } else {
                list[i] = new;
            }
            actions.choose(Choice::Faces(list));
        }
    }
    add_face(ui, bench, rounds, actions);
}

fn add_face(ui: &mut Ui, bench: &Bench<'_>, rounds: u32, actions: &mut Actions) {
    let size = vec2(ui.available_width(), form::ROW);
    let (rect, _) = ui.allocate_exact_size(size, egui::Sense::hover());
    let selected = bench.view.selected;
    let words = selected.map_or("Add a face".to_owned(), |r| format!("Add one from round {r}"));
    let width = controls::words_width(ui, &words);
    let at = Rect::from_min_size(rect.left_center() - vec2(0.0, 13.0), vec2(width, 26.0));
    let button =
        controls::button(ui, at, ButtonFace::Words(&words), "Add a face", selected.is_some());
    if selected.is_none() {
        form::instead(ui, rect, "take a round in hand first");
    }
    if let (true, Some(from_round)) = (button.clicked(), selected) {
        let to_round = (from_round + 2).min(rounds).max(from_round);
        let mut faces = bench.document.piece().faces.clone();
        faces.push(Plain { from_round, to_round });
        actions.choose(Choice::Faces(faces));
    }
}

fn start(ui: &mut Ui, bench: &Bench<'_>, actions: &mut Actions) {
    let piece = bench.document.piece();
    if piece.outline.starts_closed() {
        let why = "Worked along both sides of a chain: two half rounds and two straight \
                   sides this long. 0 is round";
        let rect = form::row(ui, "Oval, straight side", why);
        let at = Rect::from_min_size(rect.right_center() - vec2(74.0, 13.0), vec2(74.0, 26.0));
        let (name, now) = ("Oval, straight side", (piece.straight_mm, bench.unit()));
        let new =
            length_field::show_or(ui, at, name, now, 0.0..=1000.0, Some("round"), actions);
        if let Some(straight) = new {
            actions.choose(Choice::Straight(straight));
        }
    }
    let size = vec2(ui.available_width(), form::ROW + 4.0);
    let (rect, _) = ui.allocate_exact_size(size, egui::Sense::hover());
    let words = "Start from the other end";
    let width = controls::words_width(ui, words);
    let at = Rect::from_min_size(rect.left_center() - vec2(0.0, 13.0), vec2(width, 26.0));
    let rounds = bench.plan.filter(|_| bench.error.is_none()).map(|p| p.rounds.len() as u32);
    let button = controls::button(ui, at, ButtonFace::Words(words), words, rounds.is_some())
        .on_hover_text("Work the piece the other way up; pins, faces and yarns go along");
    if let (true, Some(rounds)) = (button.clicked(), rounds) {
        actions.choose(Choice::Reverse { rounds });
    }
}
