//! Companions: where pieces meet, how, and which may give way.

use egui::{Popup, Rect, Sense, Stroke, Ui, vec2};
use plumpline_core::companion::{At, Edge, SeamKind, SeamReport, Side};
use plumpline_core::{Piece, Seam};

use super::answers;
use crate::bench::Bench;
use crate::bench::action::Actions;
use crate::document::edit::Edit;
use crate::document::sizes::SizeEdit;
use crate::fields::{form, length_field};
use crate::kit::controls::{self, ButtonFace};
use crate::kit::icons::Icon;
use crate::kit::letters;

/// Room a seam that slips over begins with, mm.
const ROOM_MM: f64 = 2.0;

/// Draws the seams of the project.
pub(super) fn show(ui: &mut Ui, bench: &Bench<'_>, actions: &mut Actions) {
    let project = bench.document.project();
    if project.pieces.len() < 2 {
        form::remark(ui, say!("seam-a-seam-joins-two-pieces-a-cap-and-a"));
        return;
    }
    for (i, seam) in project.seams.iter().enumerate() {
        let found = bench.sizing.found();
        let stands = found.and_then(|found| found.seams.get(i));
        ui.push_id(i, |ui| one(ui, bench, (i, seam), stands, actions));
        ui.add_space(8.0);
    }
    if project.seams.is_empty() {
        form::remark(ui, say!("seam-no-seams-yet-a-seam-makes-two-pieces"));
    }
    if form::wide(ui, 30.0, say!("seam-add-a-seam"), true, false).clicked() {
        actions.edit(Edit::Sizes(SizeEdit::AddSeam(usual(bench))));
    }
}

/// A seam between the selected piece and the next, at their open ends where they have them.
fn usual(bench: &Bench<'_>) -> Seam {
    let pieces = &bench.document.project().pieces;
    let here = bench.document.place();
    let there = if here + 1 < pieces.len() { here + 1 } else { here.saturating_sub(1) };
    let (one, other) = (here.min(there), here.max(there));
    let edge = |place: usize| Edge { piece: pieces[place].id, at: open_at(&pieces[place]) };
    Seam::new(edge(one), edge(other), SeamKind::SewnEqual)
}

fn open_at(piece: &Piece) -> At {
    match (piece.outline.finishes_closed(), piece.outline.starts_closed()) {
        (false, _) => At::OpenEnd,
        (true, false) => At::OpenStart,
        (true, true) => At::Round(1),
    }
}

fn one(
    ui: &mut Ui,
    bench: &Bench<'_>,
    (i, seam): (usize, &Seam),
    stands: Option<&Result<SeamReport, String>>,
    actions: &mut Actions,
) {
    let number = i + 1;
    form::numbered_heading(ui, &say!("seam-numbered", number = number));
    let mut new = *seam;
    edge(ui, bench, &say!("seam-seam-number-first", number = number), &mut new.a, actions);
    edge(ui, bench, &say!("seam-seam-number-second", number = number), &mut new.b, actions);
    let rect = form::row(
        ui,
        say!("seam-the-two-are"),
        say!("seam-sewn-stitch-to-stitch-or-the-second"),
    );
    let over = usize::from(matches!(seam.kind, SeamKind::Clearance { .. }));
    let name = say!("seam-seam-number-is", number = number);
    if let Some(kind) =
        form::pick(ui, rect, &name, &[say!("seam-sewn"), say!("seam-slipped-over")], over)
    {
        new.kind = match kind {
            0 => SeamKind::SewnEqual,
            _ => SeamKind::Clearance { mm: ROOM_MM, stuffed: false },
        };
    }
    if let SeamKind::Clearance { mm, stuffed } = new.kind {
        room(ui, bench, number, (mm, stuffed), &mut new.kind, actions);
    }
    let rect =
        form::row(ui, say!("seam-may-change"), say!("seam-which-of-the-two-is-fitted-to-the"));
    let sides = [Side::Either, Side::A, Side::B];
    let now = sides.iter().position(|&s| s == seam.moves).unwrap_or(0);
    let name = say!("seam-seam-number-may-change", number = number);
    if let Some(side) = form::pick(
        ui,
        rect,
        &name,
        &[say!("seam-either"), say!("seam-first"), say!("seam-second")],
        now,
    ) {
        new.moves = sides[side];
    }
    if new != *seam {
        actions.edit(Edit::Sizes(SizeEdit::ChangeSeam(i, new)));
    }
    let met = told(ui, bench, stands);
    let can = bench.sizing.is_current() && met == Some(false);
    let (rect, _) = ui.allocate_exact_size(vec2(ui.available_width(), 32.0), Sense::hover());
    let (left, right) = rect.split_left_right_at_x(rect.right() - 90.0);
    let name = say!("seam-match-seam-number", number = number);
    let left = left.with_max_x(left.right() - 6.0).shrink2(vec2(0.0, 2.0));
    if controls::button(ui, left, ButtonFace::Words(say!("seam-match-them")), &name, can)
        .clicked()
    {
        actions.edit(Edit::Sizes(SizeEdit::Meet(i)));
    }
    let name = say!("seam-remove-seam-number", number = number);
    let right = right.shrink2(vec2(0.0, 2.0));
    if controls::button(ui, right, ButtonFace::Words(say!("seam-remove")), &name, true)
        .clicked()
    {
        actions.edit(Edit::Sizes(SizeEdit::RemoveSeam(i)));
    }
    let line = Stroke::new(1.0, bench.t.edge);
    let y = ui.cursor().top() + 4.0;
    ui.painter().hline(rect.x_range(), y, line);
}

/// Room to spare, and whether what goes over is stuffed.
fn room(
    ui: &mut Ui,
    bench: &Bench<'_>,
    number: usize,
    (mm, stuffed): (f64, bool),
    kind: &mut SeamKind,
    actions: &mut Actions,
) {
    let why = say!("seam-how-much-wider-the-second-is-than-the");
    let rect = form::row(ui, say!("seam-room-to-spare"), why);
    let field = form::place(rect, 0.0, 92.0);
    let name = say!("seam-room-of-seam-number", number = number);
    let unit = bench.unit();
    let at = (mm, unit);
    if let Some(mm) = length_field::show_or(
        ui,
        field,
        &name,
        at,
        0.0..=200.0,
        Some(say!("seam-none")),
        actions,
    ) {
        *kind = SeamKind::Clearance { mm, stuffed };
    }
    let why = say!("seam-whether-the-second-is-stuffed-when");
    if let Some(stuffed) = form::tick(ui, say!("seam-the-second-is-stuffed"), why, stuffed) {
        *kind = SeamKind::Clearance { mm, stuffed };
    }
}

/// One side of a seam: which piece, and where on it.
fn edge(ui: &mut Ui, bench: &Bench<'_>, name: &str, edge: &mut Edge, actions: &mut Actions) {
    let project = bench.document.project();
    let (rect, _) =
        ui.allocate_exact_size(vec2(ui.available_width(), form::ROW), Sense::hover());
    let (left, right) = rect.split_left_right_at_fraction(0.48);
    let left = left.with_max_x(left.right() - 6.0).shrink2(vec2(0.0, 2.0));
    let words = project.name_of(edge.piece);
    let label = format!("{name}: {words}");
    let button =
        controls::button(ui, left, ButtonFace::WordsThen(words, Icon::Down), &label, true);
    Popup::menu(&button).show(|ui| {
        for piece in &project.pieces {
            let item = ui.selectable_label(piece.id == edge.piece, &piece.name);
            if letters::noted(item, &piece.name).clicked() {
                *edge = Edge { piece: piece.id, at: open_at(piece) };
            }
        }
    });
    let Some(piece) = project.piece(edge.piece) else { return };
    place(ui, piece, name, right.shrink2(vec2(0.0, 2.0)), edge, actions);
}

/// Where on the piece: an open end, or a round.
fn place(
    ui: &mut Ui,
    piece: &Piece,
    name: &str,
    rect: Rect,
    edge: &mut Edge,
    actions: &mut Actions,
) {
    let round = match edge.at {
        At::Round(round) => Some(round),
        _ => None,
    };
    let words = match edge.at {
        At::OpenStart => say!("seam-open-start"),
        At::OpenEnd => say!("seam-open-end"),
        At::Round(_) => say!("seam-round"),
    };
    let (left, right) = match round {
        Some(_) => rect.split_left_right_at_x(rect.right() - 58.0),
        None => (rect, Rect::NOTHING),
    };
    let label = say!("seam-name-at-where", name = name, place = words);
    let button =
        controls::button(ui, left, ButtonFace::WordsThen(words, Icon::Down), &label, true);
    Popup::menu(&button).show(|ui| {
        let mut options = vec![(say!("seam-round"), At::Round(round.unwrap_or(1)))];
        if !piece.outline.finishes_closed() {
            options.push((say!("seam-open-end"), At::OpenEnd));
        }
        if !piece.outline.starts_closed() {
            options.push((say!("seam-open-start"), At::OpenStart));
        }
        for (words, at) in options {
            let item = ui.selectable_label(at == edge.at, words);
            if letters::noted(item, words).clicked() {
                edge.at = at;
            }
        }
    });
    if let Some(mut new) = round {
        let drag = egui::DragValue::new(&mut new).range(1..=1200).speed(0.1);
        let label = say!("seam-name-at-round", name = name);
        let field = right.with_min_x(right.left() + 6.0);
        if form::field(ui, field, &label, drag, actions).changed() {
            edge.at = At::Round(new);
        }
    }
}

/// How the seam stands, in a sentence with its sign; whether it holds, where that is known.
fn told(
    ui: &mut Ui,
    bench: &Bench<'_>,
    stands: Option<&Result<SeamReport, String>>,
) -> Option<bool> {
    let (words, met) = match stands? {
        Ok(report) => (report.sentence(), Some(report.met)),
        Err(error) => (error.as_str().into(), None),
    };
    answers::sentence(ui, bench, &words, met == Some(true));
    met
}
