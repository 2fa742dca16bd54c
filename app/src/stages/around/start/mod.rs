//! The start card: a piece from a starter and a few dimensions, or a project from a file.

mod tile;

use egui::{Align2, Context, Id, Key, Modifiers, Rect, Sense, Stroke, StrokeKind, Ui};
use egui::{UiBuilder, pos2, vec2};
use plumpline_core::starter::{Dimensions, LEAST_MM, MOST_MM, Starter, Third};
use plumpline_core::{Gauge, Piece, Project, Unit, plan};

use super::recent;
use crate::bench::Bench;
use crate::bench::action::{Action, Actions};
use crate::bench::command::Command;
use crate::fields::over::{self, Head};
use crate::fields::{form, length_field};
use crate::kit::controls::{self, ButtonFace};
use crate::kit::{Tokens, type_faces};
use crate::work::home::DeskAction;

const HEAD: Head = Head {
    title: "Begin a piece",
    hint: "from a starter; every knot can be dragged afterwards",
    width: 752.0,
};
/// Width of the column of dimensions.
const COLUMN: f32 = 256.0;
/// Projects last worked on that are listed.
const RECENT: usize = 4;

/// What has been chosen on the card so far.
#[derive(Debug)]
pub struct StartChoice {
    starter: Starter,
    size: Dimensions,
    pictures: Vec<tile::TilePicture>,
    made: Option<MadePiece>,
}

/// The piece the card would make, worked out once for every choice.
#[derive(Debug)]
struct MadePiece {
    of: (Starter, Dimensions, Gauge),
    /// The piece with its rounds and widest round, or why there is none.
    piece: Result<(Piece, usize, u32), String>,
}

impl Default for StartChoice {
    fn default() -> Self {
        let starter = Starter::Ball;
        let pictures = Starter::ALL.map(tile::TilePicture::of).into();
        Self { starter, size: starter.usual(), pictures, made: None }
    }
}

impl StartChoice {
    fn take(&mut self, starter: Starter) {
        if self.starter != starter {
            (self.starter, self.size) = (starter, starter.usual());
        }
    }

    fn made(&mut self, gauge: Gauge) -> &Result<(Piece, usize, u32), String> {
        let of = (self.starter, self.size, gauge);
        let made = self.made.take().filter(|made| made.of == of).unwrap_or_else(|| {
            let piece = self.starter.piece(&self.size, gauge).and_then(|piece| {
                let counts = plan(&piece)?.counts();
                Ok((piece, counts.len(), counts.into_iter().max().unwrap_or(0)))
            });
            MadePiece { of, piece: piece.map_err(|e| e.to_string()) }
        });
        &self.made.insert(made).piece
    }
}

/// Draws the card over the window.
pub fn show(ctx: &Context, bench: &Bench<'_>, card: &mut StartChoice, actions: &mut Actions) {
    let mut asked = Actions::default();
    let closed = over::show(
        ctx,
        HEAD,
        |_| {},
        |ui| {
            let width = ui.available_width();
            let height = tile::SIZE.y * 2.0 + 8.0;
            let (rect, _) = ui.allocate_exact_size(vec2(width, height), Sense::hover());
            tiles(ui, bench, rect.with_max_x(rect.right() - COLUMN - 24.0), card, &mut asked);
            let column = rect.with_min_x(rect.right() - COLUMN);
            let mut ui_column = ui.new_child(UiBuilder::new().max_rect(column));
            dimensions(&mut ui_column, bench, card, &mut asked);
            below(ui, bench, &mut asked);
        },
    );
    for action in asked.take() {
        actions.push(action);
    }
    if closed {
        actions.push(Action::Desk(DeskAction::HideStart));
    }
}

/// The starters, four in a row.
fn tiles(
    ui: &Ui,
    bench: &Bench<'_>,
    rect: Rect,
    card: &mut StartChoice,
    actions: &mut Actions,
) {
    let gauge = bench.document.piece().gauge;
    for (i, starter) in Starter::ALL.into_iter().enumerate() {
        let corner = vec2((i % 4) as f32, (i / 4) as f32) * (tile::SIZE + vec2(8.0, 8.0));
        let place = Rect::from_min_size(rect.min + corner, tile::SIZE);
        let on = card.starter == starter;
        let tile = tile::show(ui, bench.t, place, starter, &card.pictures[i], on);
        if tile.clicked() {
            card.take(starter);
        }
        if tile.double_clicked() {
            create(card, gauge, actions);
        }
    }
}

/// The chosen starter: what it is, its dimensions, and the button that makes it.
fn dimensions(ui: &mut Ui, bench: &Bench<'_>, card: &mut StartChoice, actions: &mut Actions) {
    let t = bench.t;
    let area = ui.max_rect();
    let title = pos2(area.left(), area.top() + 10.0);
    let font = type_faces::drafting(type_faces::TITLE);
    let painter = ui.painter();
    let word = painter.text(title, Align2::LEFT_CENTER, card.starter.name(), font, t.ink);
    let small = type_faces::regular(type_faces::SMALL);
    let beside = pos2(word.right() + 10.0, title.y + 1.0);
    painter.text(beside, Align2::LEFT_CENTER, card.starter.about(), small, t.soft_ink);
    ui.add_space(26.0);
    ui.spacing_mut().item_spacing.y = 2.0;
    let unit = bench.unit();
    row(ui, unit, "Height", "Along the axis", &mut card.size.height_mm);
    let across = if card.starter == Starter::Bean {
        "The short way across"
    } else {
        "Across the axis, at the widest"
    };
    row(ui, unit, "Width", across, &mut card.size.width_mm);
    let usual = card.starter.thirds_mm(card.size.width_mm).map_or(0.0, |(_, usual, _)| usual);
    let mut third = |field: &mut Option<f64>, name: &str, why: &str| {
        let mut value = field.unwrap_or(usual);
        if row(ui, unit, name, why, &mut value) {
            *field = Some(value);
        }
    };
    match card.starter.third() {
        Some(Third::Neck) => {
            third(&mut card.size.neck_mm, "Neck", "Across the neck, at its narrowest")
        }
        Some(Third::Length) => third(&mut card.size.length_mm, "Length", "The long way across"),
        None => {}
    }
    ui.add_space(6.0);
    let gauge = bench.document.piece().gauge;
    let ready = match card.made(gauge) {
        Ok((_, rounds, widest)) => {
            let words = format!("{rounds} rounds of {widest} stitches at most, at this gauge");
            form::remark(ui, &words);
            true
        }
        Err(why) => {
            trouble(ui, t, why);
            false
        }
    };
    let button =
        Rect::from_min_max(pos2(area.left(), area.bottom() - 34.0), area.max - vec2(0.0, 3.0));
    let words = format!("Create {}", card.starter.name().to_lowercase());
    let pressed = controls::primary(ui, button, &words, "Create", ready);
    let entered = ui.input_mut(|i| i.consume_key(Modifiers::COMMAND, Key::Enter));
    if ready && (pressed.clicked() || entered) {
        create(card, gauge, actions);
    }
    pressed.on_hover_text("Begin with this piece (Ctrl+Enter)");
}

fn create(card: &mut StartChoice, gauge: Gauge, actions: &mut Actions) {
    if let Ok((piece, ..)) = card.made(gauge) {
        let project = Box::new(Project::of_piece(piece.clone()));
        actions.push(Action::Desk(DeskAction::Create(project)));
    }
}

/// A row with a length, typed in any unit; returns whether it is another.
fn row(ui: &mut Ui, unit: Unit, name: &str, why: &str, mm: &mut f64) -> bool {
    let row = form::row(ui, name, why);
    let place = Rect::from_center_size(row.right_center() - vec2(50.0, 0.0), vec2(100.0, 26.0));
    let range = LEAST_MM.min(2.0)..=MOST_MM;
    // Nothing of the project changes here: its steps need not know.
    let none = &mut Actions::default();
    let new = length_field::show(ui, place, name, (*mm, unit), range, none);
    *mm = new.unwrap_or(*mm);
    new.is_some()
}

fn trouble(ui: &mut Ui, t: &Tokens, why: &str) {
    let font = type_faces::regular(type_faces::SMALL);
    let galley = ui.painter().layout(why.to_owned(), font, t.ink, ui.available_width() - 16.0);
    let size = vec2(ui.available_width(), galley.size().y + 10.0);
    let (rect, response) = ui.allocate_exact_size(size, Sense::hover());
    response.widget_info(|| egui::WidgetInfo::labeled(egui::Role::Label, true, why));
    let painter = ui.painter();
    painter.rect(rect, 6.0, t.warn_wash, Stroke::new(1.2, t.warning), StrokeKind::Inside);
    painter.galley(rect.min + vec2(8.0, 5.0), galley, t.ink);
}

/// Projects there are already.
fn below(ui: &mut Ui, bench: &Bench<'_>, actions: &mut Actions) {
    ui.add_space(4.0);
    form::heading(ui, "Or go on with");
    let lines = bench.desk.recent.len().clamp(1, RECENT);
    let size = vec2(ui.available_width(), (lines as f32 * 30.0).max(38.0));
    let (rect, _) = ui.allocate_exact_size(size, Sense::hover());
    let left = rect.with_max_x(rect.right() - COLUMN - 24.0);
    let mut list = ui.new_child(UiBuilder::new().max_rect(left));
    list.spacing_mut().item_spacing.y = 2.0;
    if bench.desk.recent.is_empty() {
        form::remark(
            &mut list,
            "Projects you save or open are listed here. A project file can also be dropped on the window.",
        );
    }
    recent::lines(&mut list, bench, RECENT, actions);
    let button =
        Rect::from_min_size(pos2(rect.right() - COLUMN, rect.top() + 2.0), vec2(COLUMN, 30.0));
    let enabled = Command::Open.enabled(bench);
    if controls::button(ui, button, ButtonFace::Words("Open a file…"), "Open a file", enabled)
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
    let words = "Drop a project file to open it";
    let galley = painter.layout_no_wrap(words.into(), font, t.on_highlight);
    let rect = Rect::from_center_size(window.center(), galley.size() + vec2(40.0, 24.0));
    let edge = Stroke::new(1.6, t.highlight_edge);
    painter.rect(rect, 8.0, t.highlight, edge, StrokeKind::Inside);
    painter.galley(rect.min + vec2(20.0, 12.0), galley, t.on_highlight);
}
