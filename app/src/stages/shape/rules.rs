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
    form::heading(ui, say!("rules-ends"));
    ends(ui, bench, actions);
    form::heading(ui, say!("rules-counts"));
    counts(ui, bench, actions);
    form::heading(ui, say!("rules-placement"));
    placement(ui, bench, actions);
    form::heading(ui, say!("rules-plain-rounds"));
    faces(ui, bench, actions);
    form::heading(ui, say!("rules-start"));
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
    let why = say!("rules-how-many-stitches-the-foundation-ring");
    let rect = form::row(ui, say!("rules-foundation-ring"), why);
    if !piece.outline.starts_closed() {
        form::instead(ui, rect, say!("rules-this-piece-starts-open"));
    } else if is_oval(piece) {
        form::instead(ui, rect, say!("rules-an-oval-starts-on-a-chain"));
    } else {
        let span = Counted { ends: (3, 24), none: Some((say!("rules-automatic"), first)) };
        if let Some(ring) = form::stepper(
            ui,
            rect,
            say!("rules-foundation-ring"),
            piece.rules.ring,
            span,
            actions,
        ) {
            set(bench, actions, |rules| rules.ring = ring);
        }
    }
    let why = say!("rules-how-many-stitches-are-left-to-close");
    let rect = form::row(ui, say!("rules-last-round"), why);
    if piece.outline.finishes_closed() {
        let span = Counted { ends: (3, 200), none: Some((say!("rules-automatic"), last)) };
        let now = piece.rules.last;
        if let Some(last) =
            form::stepper(ui, rect, say!("rules-last-round"), now, span, actions)
        {
            set(bench, actions, |rules| rules.last = last);
        }
    } else {
        form::instead(ui, rect, say!("rules-this-piece-ends-open"));
    }
}

fn counts(ui: &mut Ui, bench: &Bench<'_>, actions: &mut Actions) {
    let rules = bench.document.piece().rules;
    let why = say!("rules-fewest-stitches-a-round-in-the-middle");
    let rect = form::row(ui, say!("rules-smallest-neck"), why);
    let span = Counted { ends: (3, 200), none: None };
    let now = Some(rules.smallest_neck);
    let neck = form::stepper(ui, rect, say!("rules-smallest-neck"), now, span, actions);
    if let Some(neck) = neck.flatten() {
        set(bench, actions, |rules| rules.smallest_neck = neck);
    }
    let why = say!("rules-counts-that-share-a-divisor-keep-one");
    let rect = form::row(ui, say!("rules-in-multiples-of"), why);
    let span = Counted { ends: (2, 24), none: Some((say!("rules-any-count"), 1)) };
    let now = Some(rules.multiple_of).filter(|&n| n > 1);
    if let Some(of) = form::stepper(ui, rect, say!("rules-in-multiples-of"), now, span, actions)
    {
        set(bench, actions, |rules| rules.multiple_of = of.unwrap_or(1));
    }
    let why = say!("rules-most-stitches-a-round-may-gain-or-lose");
    let rect = form::row(ui, say!("rules-largest-change"), why);
    let most = bench
        .plan
        .and_then(|p| p.bends.iter().skip(1).map(|b| b.gained.unsigned_abs()).max())
        .unwrap_or(6)
        .clamp(1, 200);
    let span = Counted { ends: (1, 200), none: Some((say!("rules-off"), most)) };
    let now = rules.largest_change;
    if let Some(most) =
        form::stepper(ui, rect, say!("rules-largest-change"), now, span, actions)
    {
        set(bench, actions, |rules| rules.largest_change = most);
    }
    let why = say!("rules-the-second-half-repeats-the-first");
    if let Some(on) = form::tick(ui, say!("rules-both-halves-alike"), why, rules.symmetric) {
        set(bench, actions, |rules| rules.symmetric = on);
    }
    let why = say!("rules-more-stitches-than-lie-flat-make-the");
    let words = say!("rules-rounds-may-gain-more-than-lies-flat");
    if let Some(on) = form::tick(ui, words, why, rules.frills) {
        set(bench, actions, |rules| rules.frills = on);
    }
    let why = say!("rules-plain-rounds-come-together-so-that");
    if let Some(on) =
        form::tick(ui, say!("rules-plain-rounds-together"), why, rules.plain_together)
    {
        set(bench, actions, |rules| rules.plain_together = on);
    }
}

fn placement(ui: &mut Ui, bench: &Bench<'_>, actions: &mut Actions) {
    let piece = bench.document.piece();
    let why = say!("rules-staggered-increases-do-not-show");
    let rect = form::row(ui, say!("rules-increases"), why);
    let now = usize::from(piece.spread == Spread::Stacked);
    if let Some(i) = form::pick(
        ui,
        rect,
        say!("rules-increases"),
        &[say!("rules-staggered"), say!("rules-stacked")],
        now,
    ) {
        actions.choose(Choice::Spread(if i == 0 { Spread::Turned } else { Spread::Stacked }));
    }
    let why = say!("rules-how-far-each-round-leans-against-the");
    let rect = form::row(ui, say!("rules-spiral-drift"), why);
    let mut drift = piece.rules.spiral_drift;
    let drag = DragValue::new(&mut drift)
        .range(-1.0..=1.0)
        .speed(0.01)
        .max_decimals(2)
        .suffix(format!(" {}", say!("fabric-suffix-stitches")));
    let at = Rect::from_min_size(rect.right_center() - vec2(74.0, 13.0), vec2(74.0, 26.0));
    if form::field(ui, at, say!("rules-spiral-drift"), drag, actions).changed() {
        let drift = (drift * 100.0).round() / 100.0;
        set(bench, actions, |rules| rules.spiral_drift = drift);
    }
}

/// A line a face: from, to, and a button that lets it go.
fn faces(ui: &mut Ui, bench: &Bench<'_>, actions: &mut Actions) {
    let faces = &bench.document.piece().faces;
    let rounds = bench.plan.map_or(1, |p| p.rounds.len() as u32).max(1);
    let why = say!("rules-an-embroidered-face-or-eyes-sit-best");
    for (i, face) in faces.iter().enumerate() {
        let number = i + 1;
        let rect = form::row(ui, &say!("rules-plain-zone-number", number = number), why);
        let most = rounds.max(face.to_round);
        let mut new = *face;
        let spot = |from_right: f32, width: f32| {
            let min = pos2(rect.right() - from_right, rect.center().y - 13.0);
            Rect::from_min_size(min, vec2(width, 26.0))
        };
        let from = DragValue::new(&mut new.from_round).range(1..=most).speed(0.08);
        let name = say!("rules-plain-zone-number-first-round", number = number);
        let moved_from = form::field(ui, spot(148.0, 48.0), &name, from, actions).changed();
        let to = DragValue::new(&mut new.to_round).range(1..=most).speed(0.08);
        let name = say!("rules-plain-zone-number-last-round", number = number);
        let moved_to = form::field(ui, spot(80.0, 48.0), &name, to, actions).changed();
        form::instead(ui, spot(98.0, 14.0), say!("rules-to"));
        if moved_from {
            new.to_round = new.to_round.max(new.from_round);
        } else if moved_to {
            new.from_round = new.from_round.min(new.to_round);
        }
        let name = say!("rules-remove-plain-zone-number", number = number);
        let at = spot(24.0, 24.0);
        let gone = controls::button(ui, at, ButtonFace::Icon(Icon::Close), &name, true)
            .on_hover_text(say!("rules-let-these-rounds-be-shaped"))
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
    let words = selected.map_or(say!("rules-add-a-plain-zone").to_owned(), |r| {
        say!("rules-add-one-from-round-r", r = r)
    });
    let width = controls::words_width(ui, &words);
    let at = Rect::from_min_size(rect.left_center() - vec2(0.0, 13.0), vec2(width, 26.0));
    let button = controls::button(
        ui,
        at,
        ButtonFace::Words(&words),
        say!("rules-add-a-plain-zone"),
        selected.is_some(),
    );
    if selected.is_none() {
        form::instead(ui, rect, say!("rules-select-a-round-first"));
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
        let why = say!("rules-worked-along-both-sides-of-a-chain-two");
        let rect = form::row(ui, say!("rules-oval-start-straight-side"), why);
        let at = Rect::from_min_size(rect.right_center() - vec2(74.0, 13.0), vec2(74.0, 26.0));
        let (name, now) =
            (say!("rules-oval-start-straight-side"), (piece.straight_mm, bench.unit()));
        let new = length_field::show_or(
            ui,
            at,
            name,
            now,
            0.0..=1000.0,
            Some(say!("rules-round")),
            actions,
        );
        if let Some(straight) = new {
            actions.choose(Choice::Straight(straight));
        }
    }
    let size = vec2(ui.available_width(), form::ROW + 4.0);
    let (rect, _) = ui.allocate_exact_size(size, egui::Sense::hover());
    let words = say!("rules-start-from-the-other-end");
    let width = controls::words_width(ui, words);
    let at = Rect::from_min_size(rect.left_center() - vec2(0.0, 13.0), vec2(width, 26.0));
    let rounds = bench.plan.filter(|_| bench.error.is_none()).map(|p| p.rounds.len() as u32);
    let button = controls::button(ui, at, ButtonFace::Words(words), words, rounds.is_some())
        .on_hover_text(say!("rules-work-the-piece-the-other-way-up-pins"));
    if let (true, Some(rounds)) = (button.clicked(), rounds) {
        actions.choose(Choice::Reverse { rounds });
    }
}
