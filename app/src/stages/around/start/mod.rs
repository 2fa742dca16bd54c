//! The start card: a piece from a starter and a few dimensions, from a formula or from a file
//! with a shape in it, or a project from a file.

mod choice;
mod column;
mod formula_field;
mod freehand;
mod tile;

use std::path::PathBuf;

use egui::{Context, Id, Painter, Rect, Sense, Stroke, StrokeKind, Ui};
use egui::{UiBuilder, Vec2, vec2};
use plumpline_core::starter::Starter;

use super::recent;
use crate::bench::Bench;
use crate::bench::action::{Action, Actions};
use crate::bench::command::Command;
use crate::fields::form;
use crate::fields::over::{self, Head};
use crate::kit::controls::{self, ButtonFace};
use crate::kit::{Tokens, type_faces};
use crate::work::home::DeskAction;
use crate::work::home::desk::Desk;
use crate::work::small_pictures::Pictured;
use choice::BeginFrom;
pub use choice::StartChoice;

fn head() -> Head {
    Head { title: say!("start-title"), hint: say!("start-hint"), width: 752.0 }
}
/// Width of the column beside the tiles.
const COLUMN: f32 = 256.0;
/// Between it and the tiles.
const APART: f32 = 24.0;
/// Tiles in a row.
const ACROSS: usize = 4;
/// Projects last worked on that are listed.
const RECENT: usize = 4;
/// Height of the button under them.
const OPEN: f32 = 38.0;

/// The small pictures that the card shows, each with its size in points.
pub(crate) fn wanted(desk: &Desk) -> impl Iterator<Item = (Pictured, Vec2)> {
    let starters = Starter::ALL.into_iter().map(Pictured::Starter);
    let there = |path: &&PathBuf| desk.is_there(path);
    let recent = desk.recent.iter().take(RECENT).filter(there).cloned();
    let size = |i: usize| if i == 0 { recent::LARGE } else { recent::PICTURE };
    let recent = recent.enumerate().map(move |(i, path)| (Pictured::Project(path), size(i)));
    starters.map(|starter| (starter, tile::PICTURE)).chain(recent)
}

/// Draws the card over the window.
pub fn show(ctx: &Context, bench: &Bench<'_>, card: &mut StartChoice, actions: &mut Actions) {
    let mut asked = Actions::default();
    card.read_on(ctx, bench.document.piece().gauge);
    let closed = over::show(
        ctx,
        head(),
        |_| {},
        |ui| {
            let rows = (Starter::ALL.len() / ACROSS + 1) as f32;
            let tiles_high = rows * tile::SIZE.y + (rows - 1.0) * tile::APART;
            let first = goes_on_with(bench);
            let head = if first.is_some() { recent::CONTINUE + 10.0 } else { 0.0 };
            let height = head + tiles_high + 38.0 + projects_high(bench) + OPEN;
            let size = vec2(ui.available_width(), height);
            let (whole, _) = ui.allocate_exact_size(size, Sense::hover());
            if let Some(path) = first {
                let row = whole.with_max_y(whole.top() + recent::CONTINUE);
                recent::go_on(ui, bench, row, path, &mut asked);
            }
            let rect = whole.with_min_y(whole.top() + head);
            let left = rect.with_max_x(rect.right() - COLUMN - APART);
            tiles(ui, bench, left, card, &mut asked);
            let mut column =
                ui.new_child(UiBuilder::new().max_rect(rect.with_min_x(left.right() + APART)));
            column::show(&mut column, bench, card, &mut asked);
            let below = left.with_min_y(left.top() + tiles_high + 8.0);
            let mut list = ui.new_child(UiBuilder::new().max_rect(below));
            projects(&mut list, bench, &mut asked);
        },
    );
    for action in asked.take() {
        actions.push(action);
    }
    if closed {
        actions.push(Action::Desk(DeskAction::HideStart));
    }
}

/// The project that was worked on last, if it is still there.
fn goes_on_with<'a>(bench: &'a Bench<'_>) -> Option<&'a PathBuf> {
    bench.desk.recent.first().filter(|path| bench.desk.is_there(path))
}

/// The starters, four in a row, and below them the other ways to begin.
fn tiles(
    ui: &Ui,
    bench: &Bench<'_>,
    rect: Rect,
    card: &mut StartChoice,
    actions: &mut Actions,
) {
    let t = bench.t;
    let gauge = bench.document.piece().gauge;
    let place = |i: usize, across: usize| {
        let step = tile::SIZE + vec2(tile::APART, tile::APART);
        let corner = vec2((i % ACROSS) as f32, (i / ACROSS) as f32) * step;
        let wide = across as f32 * step.x - tile::APART;
        Rect::from_min_size(rect.min + corner, vec2(wide, tile::SIZE.y))
    };
    let mut pressed = None;
    for (i, starter) in Starter::ALL.into_iter().enumerate() {
        let from = BeginFrom::Starter(starter);
        let name = say!("start-starter-shape", shape = starter.name());
        let names = (name.as_str(), starter.name());
        let shown = &card.pictures[i];
        let tile = tile::show(ui, t, place(i, 1), names, card.from == from, |painter, rect| {
            match bench.small_pictures.starter(starter) {
                Some(texture) => tile::picture(painter, texture, rect),
                // Until its stitches are drawn.
                None => shown.paint(painter, t, rect, false),
            }
        });
        if tile.clicked() || tile.double_clicked() {
            pressed = Some((from, tile.double_clicked()));
        }
    }
    let more = Starter::ALL.len();
    let mut other = |from, place, names, paint: &dyn Fn(&Painter, Rect)| {
        let on = card.from == from;
        if tile::show(ui, t, place, names, on, |painter, rect| paint(painter, rect)).clicked() {
            pressed = Some((from, false));
        }
    };
    let names = (say!("start-from-formula"), "r = f(z)");
    other(BeginFrom::Formula, place(more, 1), names, &|painter, rect| {
        card.curve.paint(painter, t, rect, false);
    });
    let names = (say!("start-drawn-freehand"), say!("start-freehand"));
    other(BeginFrom::Freehand, place(more + 1, 1), names, &|painter, rect| {
        tile::pencil(painter, t, rect);
    });
    let names = (say!("start-from-a-file"), say!("start-a-file"));
    other(BeginFrom::File, place(more + 2, 2), names, &|painter, rect| {
        tile::plates(
            painter,
            t,
            rect,
            [
                say!("start-photo"),
                say!("start-drawing"),
                say!("start-table"),
                say!("start-solid"),
            ],
        );
    });
    if let Some((from, at_once)) = pressed {
        card.take(from);
        if at_once {
            column::create(card, gauge, actions);
        }
    }
}

/// Height of the list of projects.
fn projects_high(bench: &Bench<'_>) -> f32 {
    (others(bench).len().max(1) as f32 * 30.0).max(38.0)
}

/// The projects beside the one that is gone on with, which has its own button.
fn others<'a>(bench: &'a Bench<'_>) -> &'a [PathBuf] {
    let recent = bench.desk.recent.as_slice();
    let listed = &recent[..recent.len().min(RECENT)];
    &listed[usize::from(goes_on_with(bench).is_some())..]
}

/// Projects there are already.
fn projects(ui: &mut Ui, bench: &Bench<'_>, actions: &mut Actions) {
    if !others(bench).is_empty() || bench.desk.recent.is_empty() {
        form::heading(ui, say!("start-or-continue-with"));
    }
    ui.spacing_mut().item_spacing.y = 2.0;
    let area = ui.max_rect();
    if bench.desk.recent.is_empty() {
        form::remark(ui, say!("start-projects-you-save-or-open-are-listed"));
    }
    recent::lines(ui, bench, others(bench), true, actions);
    let row = area.with_min_y(area.bottom() - OPEN);
    let button = Rect::from_min_size(row.min + vec2(0.0, 5.0), vec2(160.0, 28.0));
    let enabled = Command::Open.enabled(bench);
    let words = say!("start-open-a-project");
    if controls::button(
        ui,
        button,
        ButtonFace::Words(words),
        say!("start-open-a-project-name"),
        enabled,
    )
    .clicked()
    {
        actions.command(Command::Open);
    }
}

/// While files hang over the window: where they may fall.
pub fn catch_files(ctx: &Context) {
    if ctx.input(|i| i.raw.hovered_files.is_empty()) {
        return;
    }
    let t = Tokens::now(ctx);
    let layer = egui::LayerId::new(egui::Order::Foreground, Id::unique("falling files"));
    let painter = ctx.layer_painter(layer);
    let window = ctx.content_rect();
    let ring = Stroke::new(4.0, t.highlight_edge);
    painter.rect_stroke(window.shrink(3.0), 10.0, ring, StrokeKind::Inside);
    let font = type_faces::semibold(type_faces::TITLE);
    let words = say!("start-drop-a-project-a-picture-or-a-shape-to");
    let galley = painter.layout_no_wrap(words.into(), font, t.on_highlight);
    let rect = Rect::from_center_size(window.center(), galley.size() + vec2(40.0, 24.0));
    let edge = Stroke::new(1.6, t.highlight_edge);
    painter.rect(rect, 8.0, t.highlight, edge, StrokeKind::Inside);
    painter.galley(rect.min + vec2(20.0, 12.0), galley, t.on_highlight);
}
