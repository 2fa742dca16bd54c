//! What belongs to the chosen tile: its dimensions, what it comes to, and the button that
//! begins with it.

use egui::{Align2, Key, Modifiers, Rect, Sense, Stroke, StrokeKind, Ui, pos2, vec2};
use plumpline_core::starter::{LEAST_MM, MOST_MM, Starter, Third};
use plumpline_core::{Gauge, Project, Unit, Units};
use plumpline_trace::formula::FormulaPlace;

use super::choice::{BeginFrom, StartChoice, StartFault, StartPiece};
use super::{formula_field, freehand};
use crate::bench::Bench;
use crate::bench::action::{Action, Actions};
use crate::document::edit::Edit;
use crate::document::pieces::{MOST_PIECES, PieceEdit};
use crate::fields::{form, length_field};
use crate::kit::controls::{self, ButtonFace};
use crate::kit::tokens::CARD_RADIUS;
use crate::kit::words::decimal;
use crate::kit::words::terms;
use crate::kit::{Tokens, type_faces};
use crate::work::home::DeskAction;
use crate::work::shape_file::ShapeKind;
use crate::work::shape_reading::ShapeFound;

/// Less than this is no room for a picture.
const LEAST_PICTURE: f32 = 60.0;

/// Draws the column.
pub(super) fn show(
    ui: &mut Ui,
    bench: &Bench<'_>,
    card: &mut StartChoice,
    actions: &mut Actions,
) {
    let area = ui.max_rect();
    let foot =
        Rect::from_min_max(pos2(area.left(), area.bottom() - 37.0), area.max - vec2(0.0, 3.0));
    // Over it, what is made comes to the project that is open.
    let adds = foot.translate(vec2(0.0, -foot.height() - 8.0)).with_max_y(foot.top() - 10.0);
    let button = foot;
    title(ui, bench.t, card.from);
    ui.add_space(26.0);
    ui.spacing_mut().item_spacing.y = 2.0;
    let gauge = bench.document.piece().gauge;
    match card.from {
        BeginFrom::Starter(starter) => dimensions(ui, bench.unit(), card, starter),
        BeginFrom::Formula => formula(ui, bench, card, gauge),
        BeginFrom::Freehand => freehand(ui, bench, card),
        BeginFrom::File => file(ui, bench, card, actions),
    }
    ui.add_space(6.0);
    let told = told(bench, card);
    let traced = card.is_picture();
    let unchosen = card.from == BeginFrom::File && card.file.path.is_none();
    told.iter().for_each(|line| form::remark(ui, line));
    let made = card.made(gauge);
    match made {
        Some(Ok(StartPiece { rounds, widest, .. })) if !traced => {
            let words = say!("start-makes", rounds = *rounds, widest = *widest);
            form::remark(ui, &words);
        }
        Some(Err(fault)) => form::trouble(ui, &fault.line),
        _ => {}
    }
    let top = ui.cursor().top() + 6.0;
    let room = Rect::from_min_max(pos2(area.left(), top), adds.right_top() - vec2(0.0, 10.0));
    if room.height() >= LEAST_PICTURE && !traced {
        let instead = match (unchosen, made) {
            (true, None) => say!("start-or-drop-it-on-the-window"),
            _ => say!("start-its-profile-is-shown-here"),
        };
        picture(ui, bench, room, made, instead);
    }
    let ready = matches!(made, Some(Ok(_)));
    let words = match card.from {
        _ if traced => say!("start-trace-it").to_owned(),
        BeginFrom::Starter(starter) => terms::create(starter).to_owned(),
        _ => say!("start-create-the-piece").to_owned(),
    };
    let pressed = controls::primary(ui, button, &words, say!("start-create"), ready);
    let entered = ui.input_mut(|i| i.consume_key(Modifiers::COMMAND, Key::Enter));
    if ready && (pressed.clicked() || entered) {
        create(card, gauge, actions);
    }
    pressed.on_hover_text(say!("start-start-with-this-piece-ctrl-enter"));
    let room = bench.document.project().pieces.len() < MOST_PIECES;
    let words = say!("start-add");
    let face = ButtonFace::Words(words);
    let add = controls::button(ui, adds, face, words, ready && room && !traced);
    if add.on_hover_text(say!("start-add-does")).clicked()
        && let Some(Ok(made)) = card.made(gauge)
    {
        let piece = Box::new(made.piece.clone());
        actions.edit(Edit::Piece(PieceEdit::Bring(piece)));
        actions.push(Action::Desk(DeskAction::HideStart));
    }
}

/// Begins with what the card makes.
pub(super) fn create(card: &mut StartChoice, gauge: Gauge, actions: &mut Actions) {
    if let Some(Ok(made)) = card.made(gauge) {
        let project = Box::new(Project::of_piece(made.piece.clone()));
        actions.push(Action::Desk(DeskAction::Create(project)));
    }
}

fn title(ui: &Ui, t: &Tokens, from: BeginFrom) {
    let (name, about) = match from {
        BeginFrom::Starter(starter) => (terms::starter(starter), terms::about_starter(starter)),
        BeginFrom::Formula => (say!("start-formula"), say!("start-a-radius-for-every-height")),
        BeginFrom::Freehand => (say!("start-freehand"), say!("start-freehand-about")),
        BeginFrom::File => {
            (say!("start-from-a-file"), say!("start-you-see-it-before-it-is-used"))
        }
    };
    let area = ui.max_rect();
    let at = pos2(area.left(), area.top() + 10.0);
    let font = type_faces::drafting(type_faces::TITLE);
    let word = ui.painter().text(at, Align2::LEFT_CENTER, name, font, t.ink);
    let small = type_faces::regular(type_faces::SMALL);
    let beside = pos2(word.right() + 10.0, at.y + 1.0);
    ui.painter().text(beside, Align2::LEFT_CENTER, about, small, t.soft_ink);
}

fn dimensions(ui: &mut Ui, unit: Units, card: &mut StartChoice, starter: Starter) {
    length(
        ui,
        unit,
        say!("start-height"),
        say!("start-along-the-axis"),
        &mut card.size.height_mm,
    );
    let across = if starter == Starter::Bean {
        say!("start-the-short-way-across")
    } else {
        say!("start-across-the-axis-at-the-widest")
    };
    length(ui, unit, say!("start-width"), across, &mut card.size.width_mm);
    let usual = starter.thirds_mm(card.size.width_mm).map_or(0.0, |(_, usual, _)| usual);
    let mut third = |field: &mut Option<f64>, name: &str, why: &str| {
        let mut value = field.unwrap_or(usual);
        if length(ui, unit, name, why, &mut value) {
            *field = Some(value);
        }
    };
    match starter.third() {
        Some(Third::Neck) => third(
            &mut card.size.neck_mm,
            say!("start-neck"),
            say!("start-across-the-neck-at-its-narrowest"),
        ),
        Some(Third::Length) => third(
            &mut card.size.length_mm,
            say!("start-length"),
            say!("start-the-long-way-across"),
        ),
        None => {}
    }
    if starter == Starter::Dome {
        let why = say!("start-of-the-superellipse-2-is-half-a-ball");
        let rect = form::place(form::row(ui, say!("start-exponent"), why), 0.0, 100.0);
        let drag = egui::DragValue::new(&mut card.exponent)
            .range(0.8..=12.0)
            .speed(0.02)
            .custom_formatter(|value, _| form::short(value))
            .custom_parser(|text| text.trim().replace(',', ".").parse().ok());
        form::field(ui, rect, say!("start-exponent"), drag, &mut Actions::default());
    }
}

fn freehand(ui: &mut Ui, bench: &Bench<'_>, card: &mut StartChoice) {
    let (name, why) = (say!("start-height"), say!("start-along-the-axis"));
    length(ui, bench.unit(), name, why, &mut card.freehand_height_mm);
    let size = vec2(ui.available_width(), 150.0);
    let (rect, _) = ui.allocate_exact_size(size, Sense::hover());
    freehand::show(ui, bench.t, rect, &mut card.freehand);
}

fn formula(ui: &mut Ui, bench: &Bench<'_>, card: &mut StartChoice, gauge: Gauge) {
    form::caption(ui, say!("start-radius-in-mm-by-z-height-mm-t-0-to-1"));
    let place = match card.made(gauge) {
        Some(Err(fault)) => fault.place.clone(),
        _ => FormulaPlace::Whole,
    };
    formula_field::show(ui, bench.t, &mut card.formula, &place);
    let height = &mut card.formula_height_mm;
    length(
        ui,
        bench.unit(),
        say!("start-height"),
        say!("start-of-the-whole-along-the-axis-h"),
        height,
    );
}

fn file(ui: &mut Ui, bench: &Bench<'_>, card: &mut StartChoice, actions: &mut Actions) {
    let Some(path) = card.file.path.clone() else {
        let words = say!("start-a-photo-or-a-drawing-of-a-thing-seen");
        form::remark(ui, words);
        choose(ui, bench, actions);
        return;
    };
    form::remark(ui, &path.file_name().unwrap_or_default().to_string_lossy());
    choose(ui, bench, actions);
    let kind = ShapeKind::of(&path);
    if matches!(kind, ShapeKind::Drawing | ShapeKind::Solid(_)) {
        let found = match card.file.reading.found() {
            Some(Ok(ShapeFound::Profile(read))) => read.outline().profile(400).height_mm(),
            _ => 90.0,
        };
        let mut height = card.file.height_mm.unwrap_or(found);
        let why = say!("start-along-the-axis-as-the-file-says-until");
        if length(ui, bench.unit(), say!("start-height"), why, &mut height) {
            card.file.height_mm = Some(height);
        }
    }
    if matches!(kind, ShapeKind::Solid(_)) && card.file.height_mm.is_none() {
        let rect = form::row(
            ui,
            say!("start-one-unit-is"),
            say!("start-a-mesh-does-not-say-which-unit-it-is"),
        );
        let on = Unit::ALL.iter().position(|&unit| unit == card.file.unit).unwrap_or(0);
        let words = Unit::ALL.map(Unit::symbol);
        if let Some(i) = form::pick(ui, rect, say!("start-one-unit-is"), &words, on) {
            card.file.unit = Unit::ALL[i];
        }
    }
    if let Some(share) = card.file.reading.share() {
        form::progress(ui, say!("start-reading"), share);
        if form::wide(ui, 34.0, say!("notice-stop"), true, false).clicked() {
            card.file.stopped = true;
        }
    } else if card.file.stopped {
        form::remark(ui, say!("start-stopped"));
        if form::wide(ui, 34.0, say!("start-read-it-again"), true, false).clicked() {
            card.file.stopped = false;
        }
    }
}

fn choose(ui: &mut Ui, bench: &Bench<'_>, actions: &mut Actions) {
    let (row, _) = ui.allocate_exact_size(vec2(ui.available_width(), 34.0), Sense::hover());
    let place = row.shrink2(vec2(0.0, 3.0));
    let words = say!("start-choose-a-file");
    if controls::button(
        ui,
        place,
        ButtonFace::Words(words),
        say!("start-choose-a-file-name"),
        !bench.busy,
    )
    .clicked()
    {
        actions.push(Action::Desk(DeskAction::ChooseShape));
    }
}

/// What a file is judged by.
fn told(bench: &Bench<'_>, card: &StartChoice) -> Vec<String> {
    if card.from != BeginFrom::File {
        return Vec::new();
    }
    match card.file.reading.found() {
        Some(Ok(ShapeFound::Profile(read))) => read.told(bench.unit().unit),
        Some(Ok(ShapeFound::Picture((width, height)))) => vec![
            say!("start-width-height-pixels", width = width, height = height),
            say!("start-its-outline-is-traced-on-the-next-card").to_owned(),
        ],
        _ => Vec::new(),
    }
}

/// The profile with its knots, or the height at which a formula has none, or words `instead`.
fn picture(
    ui: &Ui,
    bench: &Bench<'_>,
    rect: Rect,
    made: Option<&Result<StartPiece, StartFault>>,
    instead: &str,
) {
    let t = bench.t;
    let painter = ui.painter_at(rect);
    let edge = Stroke::new(1.0, t.edge);
    painter.rect(rect, CARD_RADIUS, t.well, edge, StrokeKind::Inside);
    let inside = rect.shrink2(vec2(14.0, 12.0));
    match made {
        Some(Ok(made)) => made.picture.paint(&painter, t, inside, true),
        Some(Err(StartFault { place: FormulaPlace::Height(share), .. })) => {
            let axis = [inside.center_top(), inside.center_bottom()];
            painter.extend(egui::Shape::dashed_line(
                &axis,
                Stroke::new(1.0, t.soft_ink),
                6.0,
                4.0,
            ));
            let y = egui::lerp(inside.y_range(), f32::from(*share) / 1000.0);
            painter.hline(inside.x_range(), y, Stroke::new(2.0, t.warning));
            let words = say!("start-here-at-t-t", t = decimal(f64::from(*share) / 1000.0, 2));
            let font = type_faces::semibold(type_faces::SMALL);
            let low = y > rect.center().y;
            let (at, anchor) = match low {
                true => (pos2(inside.left(), y - 4.0), Align2::LEFT_BOTTOM),
                false => (pos2(inside.left(), y + 4.0), Align2::LEFT_TOP),
            };
            painter.text(at, anchor, words, font, t.ink);
        }
        _ => {
            let font = type_faces::regular(type_faces::SMALL);
            painter.text(rect.center(), Align2::CENTER_CENTER, instead, font, t.soft_ink);
        }
    }
}

/// A row with a length, typed in any unit; returns whether it is another.
fn length(ui: &mut Ui, unit: Units, name: &str, why: &str, mm: &mut f64) -> bool {
    let place = form::place(form::row(ui, name, why), 0.0, 100.0);
    let range = LEAST_MM.min(2.0)..=MOST_MM;
    // Nothing of the project changes here: its steps need not know.
    let none = &mut Actions::default();
    // A field takes what lies out of its range for typed.
    let shown = mm.clamp(*range.start(), *range.end());
    let new = length_field::show(ui, place, name, (shown, unit), range, none);
    *mm = new.unwrap_or(*mm);
    new.is_some()
}
