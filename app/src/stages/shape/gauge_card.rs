//! The gauge card: the swatch as it was counted, the hook, and two choices, firmness and
//! simplicity, each with what it costs.

use egui::{Align2, DragValue, Rect, ScrollArea, Sense, Ui, UiBuilder, pos2, vec2};
use plumpline_core::{Firmness, Gauge};

use super::more_card;
use crate::bench::Bench;
use crate::bench::action::Actions;
use crate::document::edit::Edit;
use crate::fields::{form, length_field};
use crate::kit::controls::{self, ButtonFace};
use crate::kit::icons::{self, Icon};
use crate::kit::words::decimal;
use crate::kit::words::terms;
use crate::kit::{Tokens, paint, type_faces};

/// Padding inside the card.
const INSIDE: f32 = 12.0;
/// Height of a row with a field.
const ROW: f32 = 28.0;

/// Shaft sizes hooks are made in, mm.
const HOOKS_MM: [f64; 22] = [
    0.75, 1.0, 1.25, 1.5, 1.75, 2.0, 2.25, 2.5, 2.75, 3.0, 3.25, 3.5, 3.75, 4.0, 4.5, 5.0, 5.5,
    6.0, 6.5, 8.0, 10.0, 12.0,
];

/// Draws the card at the top of `column`; returns the place it takes.
pub(crate) fn show(
    ui: &mut Ui,
    bench: &Bench<'_>,
    column: Rect,
    actions: &mut Actions,
) -> Rect {
    let apart = counted_apart(&bench.document.piece().gauge);
    let height = 410.0 + SPIRAL + if apart { ROW } else { 0.0 };
    let card = Rect::from_min_size(column.min, vec2(column.width(), height));
    if height <= column.height() {
        draw(ui, bench, card, actions);
        return card;
    }
    // A window this low, or text this large: the card scrolls in what there is.
    // Its bar stands in the gap beside it.
    let place = column.with_max_x(column.right() + 9.0);
    let mut child = ui.new_child(UiBuilder::new().max_rect(place).id_salt("gauge"));
    controls::scroll_colours(&mut child);
    child.spacing_mut().scroll.bar_width = 6.0;
    child.spacing_mut().scroll.bar_inner_margin = 2.0;
    ScrollArea::vertical().auto_shrink(false).show(&mut child, |ui| {
        ui.reset_style();
        let size = vec2(ui.available_width(), height);
        let (card, _) = ui.allocate_exact_size(size, Sense::hover());
        draw(ui, bench, card, actions);
        controls::follow_focus(ui);
    });
    column
}

/// Draws the card in `card`.
fn draw(ui: &mut Ui, bench: &Bench<'_>, card: Rect, actions: &mut Actions) {
    paint::well(ui.painter(), card, bench.t);
    let inner = card.shrink(INSIDE);
    let title = inner.left_top() + vec2(0.0, 8.0);
    paint::title(ui.painter(), title, say!("gauge-gauge"), "", bench.t);
    more(ui, bench, inner, actions);
    let mut y = inner.top() + 24.0;
    swatch(ui, bench, Rect::from_min_size(pos2(inner.left(), y), vec2(inner.width(), 40.0)));
    y += 47.0;
    y = counted(ui, bench, inner, y, actions);
    y = spiral(ui, bench, inner, y);
    y = rule(ui, bench, inner, y + 4.0);
    y = hook(ui, bench, inner, y, actions);
    y = rule(ui, bench, inner, y + 4.0);
    y = firmness(ui, bench, inner, y, actions);
    simplicity(ui, bench, inner, y + 6.0, actions);
}

/// The button that opens the rest of what there is to say about the cloth.
fn more(ui: &Ui, bench: &Bench<'_>, inner: Rect, actions: &mut Actions) {
    let width = controls::words_width(ui, say!("gauge-more")) - 4.0;
    let at = pos2(inner.right() - width, inner.top() - 5.0);
    let rect = Rect::from_min_size(at, vec2(width, 24.0));
    let button = controls::button(
        ui,
        rect,
        ButtonFace::Words(say!("gauge-more")),
        say!("gauge-more-about-the-fabric"),
        true,
    );
    more_card::open(ui, &button, bench, actions);
    button.on_hover_text(say!("gauge-a-ball-you-made-to-check-it-by-spiral"));
}

fn rule(ui: &Ui, bench: &Bench<'_>, inner: Rect, y: f32) -> f32 {
    ui.painter().hline(inner.x_range(), y, egui::Stroke::new(1.0, bench.t.edge));
    y + 5.0
}

fn swatch(ui: &Ui, bench: &Bench<'_>, rect: Rect) {
    let gauge = &bench.document.piece().gauge;
    let yarn = bench.yarn_of(bench.document.piece().yarn_of_round(1));
    // So many stitches across that they keep the gauge's own proportions.
    let up = 3;
    let cell = rect.height() / up as f32;
    let wide = gauge.stitch_width_mm() / gauge.round_height_mm();
    let across = (rect.width() / (cell * wide as f32)).round().clamp(2.0, 20.0) as usize;
    let strand = crate::kit::tokens::mix(Tokens::yarn(yarn), bench.t.body_light, 0.45);
    let colours = [Tokens::yarn(yarn), strand];
    icons::swatch(ui.painter(), rect, across, up, colours);
}

fn counted_apart(gauge: &Gauge) -> bool {
    (gauge.across_mm - gauge.along_mm).abs() > 1e-9
}

/// Stitches and rounds, and the length they were counted over.
fn counted(
    ui: &mut Ui,
    bench: &Bench<'_>,
    inner: Rect,
    mut y: f32,
    actions: &mut Actions,
) -> f32 {
    let gauge = bench.document.piece().gauge;
    let mut place = || {
        let rect = Rect::from_min_size(pos2(inner.left(), y), vec2(inner.width(), ROW));
        y += ROW;
        rect
    };
    let set = |gauge: Gauge, actions: &mut Actions| {
        if gauge.validate().is_ok() {
            actions.edit(Edit::Gauge(gauge));
        }
    };
    let apart = counted_apart(&gauge);
    if let Some(stitches) =
        number(ui, bench, place(), say!("gauge-stitches"), gauge.stitches, actions)
    {
        set(Gauge { stitches, ..gauge }, actions);
    }
    if apart {
        let row = (place(), say!("gauge-over"), say!("gauge-stitches-over"));
        if let Some(across_mm) = over(ui, bench, row, gauge.across_mm, actions) {
            set(Gauge { across_mm, ..gauge }, actions);
        }
    }
    if let Some(rounds) =
        number(ui, bench, place(), say!("gauge-rounds"), gauge.rounds, actions)
    {
        set(Gauge { rounds, ..gauge }, actions);
    }
    let row = (
        place(),
        say!("gauge-over"),
        if apart { say!("gauge-rounds-over") } else { say!("gauge-over") },
    );
    if let Some(mm) = over(ui, bench, row, gauge.along_mm, actions) {
        let across_mm = if apart { gauge.across_mm } else { mm };
        set(Gauge { across_mm, along_mm: mm, ..gauge }, actions);
    }
    y
}

/// Room for what is said of the swatch.
const SPIRAL: f32 = 62.0;

/// How to work the swatch, and what hangs on it.
fn spiral(ui: &Ui, bench: &Bench<'_>, inner: Rect, y: f32) -> f32 {
    let words = say!("gauge-count-it-in-the-spiral-rounds-1-higher");
    let small = type_faces::regular(type_faces::SMALL);
    let t = bench.t;
    let galley = ui.painter().layout(words.to_owned(), small, t.soft_ink, inner.width());
    ui.painter().galley(pos2(inner.left(), y + 2.0), galley, t.soft_ink);
    y + SPIRAL
}

/// The label of a row and the place of its field.
fn labelled(ui: &Ui, bench: &Bench<'_>, row: Rect, label: &str) -> Rect {
    let field = Rect::from_min_max(
        pos2(row.right() - 70.0, row.top() + 1.0),
        pos2(row.right(), row.bottom() - 3.0),
    );
    let small = type_faces::regular(type_faces::SMALL);
    let words = pos2(row.left(), field.center().y);
    ui.painter().text(words, Align2::LEFT_CENTER, label, small, bench.t.soft_ink);
    field
}

/// A labelled number that can be typed or dragged; returns a new value.
fn number(
    ui: &mut Ui,
    bench: &Bench<'_>,
    row: Rect,
    label: &str,
    value: f64,
    actions: &mut Actions,
) -> Option<f64> {
    let mut changed = value;
    let field = labelled(ui, bench, row, label);
    let drag = DragValue::new(&mut changed)
        .speed(0.1)
        .range(0.5..=1000.0)
        .custom_formatter(|value, _| form::short(value));
    let response = form::field(ui, field, label, drag, actions);
    (response.changed() && changed != value).then_some(changed)
}

/// The length a swatch was counted over; returns a new one.
fn over(
    ui: &mut Ui,
    bench: &Bench<'_>,
    (row, label, name): (Rect, &str, &str),
    mm: f64,
    actions: &mut Actions,
) -> Option<f64> {
    let field = labelled(ui, bench, row, label);
    length_field::show(ui, field, name, (mm, bench.unit()), 1.0..=2000.0, actions)
}

/// The hook, in the sizes hooks are made in.
fn hook(ui: &Ui, bench: &Bench<'_>, inner: Rect, y: f32, actions: &mut Actions) -> f32 {
    let t = bench.t;
    let gauge = bench.document.piece().gauge;
    let small = type_faces::regular(type_faces::SMALL);
    let painter = ui.painter();
    let at = pos2(inner.left(), y + 8.0);
    painter.text(at, Align2::LEFT_CENTER, say!("gauge-hook"), small, t.soft_ink);
    let value = format!("{} mm", form::short(gauge.hook_mm));
    let body = type_faces::semibold(type_faces::BODY);
    painter.text(at + vec2(0.0, 16.0), Align2::LEFT_CENTER, value, body, t.ink);
    let below = HOOKS_MM.iter().rev().find(|&&mm| mm < gauge.hook_mm - 1e-9);
    let above = HOOKS_MM.iter().find(|&&mm| mm > gauge.hook_mm + 1e-9);
    let steps = [
        (Icon::Less, say!("gauge-a-smaller-hook"), below, 56.0),
        (Icon::More, say!("gauge-a-larger-hook"), above, 26.0),
    ];
    for (icon, name, size, from_right) in steps {
        let rect =
            Rect::from_min_size(pos2(inner.right() - from_right, y + 4.0), vec2(26.0, 26.0));
        let button = controls::button(ui, rect, ButtonFace::Icon(icon), name, size.is_some());
        let clicked = button
            .on_hover_text(say!("gauge-name-the-swatch-stays-as-counted", name = name))
            .clicked();
        if let (true, Some(&hook_mm)) = (clicked, size) {
            actions.edit(Edit::Gauge(Gauge { hook_mm, ..gauge }));
        }
    }
    y + 34.0
}

/// A slider with its name and its value in words over it.
struct NamedSlider<'a> {
    name: &'a str,
    shown: &'a str,
    /// Its value, and whether it was set.
    value: (f64, bool),
    /// Least, largest and step.
    span: (f64, f64, f64),
}

/// A name and a value over a slider, from `y` on down; returns the value it was moved to.
fn slider(
    ui: &mut Ui,
    (inner, y): (Rect, f32),
    row: &NamedSlider<'_>,
    actions: &mut Actions,
) -> Option<f64> {
    let t = Tokens::now(ui.ctx());
    let &NamedSlider { name, shown, value, span } = row;
    let head = pos2(inner.left(), y + 8.0);
    let small = type_faces::regular(type_faces::SMALL);
    ui.painter().text(head, Align2::LEFT_CENTER, name, small, t.soft_ink);
    let right = pos2(inner.right(), y + 8.0);
    let body = type_faces::semibold(type_faces::SMALL);
    ui.painter().text(right, Align2::RIGHT_CENTER, shown, body, t.ink);
    let rect = Rect::from_min_size(pos2(inner.left(), y + 15.0), vec2(inner.width(), 24.0));
    // The card of simplicity is called so too.
    let full = say!("gauge-name-of-the-piece", name = name);
    let (response, moved) = controls::slider(ui, rect, &full, value, span);
    form::gesture(&response, actions);
    moved
}

fn firmness(ui: &mut Ui, bench: &Bench<'_>, inner: Rect, y: f32, actions: &mut Actions) -> f32 {
    let firmness = bench.document.piece().firmness;
    let span = (Firmness::SOFT.0, Firmness::FIRM.0, 0.005);
    let (name, shown, value) =
        (say!("gauge-firmness"), terms::firmness(firmness), (firmness.0, true));
    let row = NamedSlider { name, shown, value, span };
    let moved = slider(ui, (inner, y), &row, actions);
    if let Some(strain) = moved {
        actions.edit(Edit::Firmness(Firmness((strain * 1000.0).round() / 1000.0)));
    }
    y + 42.0
}

/// The stops of simplicity between faithful and simple.
const STOPS: f64 = 20.0;
/// Where the knob waits until one is chosen: about where the default answers lie.
const UNSET: f64 = 0.5;

/// Simplicity from faithful to simple, the way back to the default, and the price of the
/// answer in use.
fn simplicity(ui: &mut Ui, bench: &Bench<'_>, inner: Rect, y: f32, actions: &mut Actions) {
    let chosen = bench.document.piece().simplicity;
    let shown = match chosen {
        None => say!("simplicity-default").to_owned(),
        Some(s) if s <= 0.0 => say!("simplicity-faithful").to_owned(),
        Some(s) if s >= 1.0 => say!("simplicity-simple").to_owned(),
        Some(s) => form::short((100.0 * s).round() / 100.0),
    };
    let span = (0.0, 1.0, 1.0 / STOPS);
    let value = (chosen.unwrap_or(UNSET), chosen.is_some());
    let row = NamedSlider { name: say!("card-simplicity"), shown: &shown, value, span };
    let moved = slider(ui, (inner, y), &row, actions);
    if let Some(s) = moved {
        actions.edit(Edit::Simplicity(Some((s * STOPS).round() / STOPS)));
    }
    let small = type_faces::regular(type_faces::SMALL);
    let ends = [
        (inner.left(), Align2::LEFT_CENTER, say!("simplicity-faithful")),
        (inner.right(), Align2::RIGHT_CENTER, say!("simplicity-simple")),
    ];
    for (x, align, word) in ends {
        ui.painter().text(pos2(x, y + 44.0), align, word, small.clone(), bench.t.soft_ink);
    }
    let at = Rect::from_min_size(pos2(inner.left(), y + 54.0), vec2(inner.width(), 26.0));
    let on = chosen.is_none();
    let button = controls::toggle(
        ui,
        at,
        ButtonFace::Words(say!("simplicity-default-button")),
        say!("step-default-simplicity"),
        true,
        Some(on),
    );
    let why = say!("gauge-the-simplest-rounds-whose-likely-fit");
    if button.on_hover_text(why).clicked() && !on {
        actions.edit(Edit::Simplicity(None));
    }
    let (Some(plan), Some(words)) = (bench.plan, bench.words) else { return };
    let share = 100.0 * plan.simple_share();
    let likely = plan.likely_rms_stitches;
    let price = [
        match plan.fit {
            Some(_) => say!("gauge-likely-off", likely = decimal(likely, 2)),
            None => say!("gauge-given-by-its-rounds").into(),
        },
        say!("gauge-in-one-repeat", share = format!("{:.0}", share)),
        say!("gauge-lines-different-lines", lines = words.distinct_lines()),
    ];
    for (i, line) in price.iter().enumerate() {
        let at = pos2(inner.left(), y + 93.0 + 15.0 * i as f32);
        let painter = ui.painter();
        painter.text(at, Align2::LEFT_CENTER, line, small.clone(), bench.t.soft_ink);
    }
}
