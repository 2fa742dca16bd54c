//! More about the cloth, behind a button of the gauge card: a ball to check it by, how rounds
//! are worked, the hand, swatches of other kinds of stitch, and the stuffing.

use egui::{DragValue, Popup, Rect, Response, ScrollArea, Ui, pos2, vec2};
use plumpline_core::piece::Packing;
use plumpline_core::{Gauge, Hand, Kind, Swatches, Working};

use super::ball_check;
use crate::bench::Bench;
use crate::bench::action::Actions;
use crate::document::choice::Choice;
use crate::fields::form::{self, short};
use crate::fields::length_field;
use crate::kit::controls::{self, ButtonFace};
use crate::kit::icons::Icon;

/// Width of the popover.
const WIDTH: f32 = 316.0;

/// Height of a window that the popover leaves to its own edges and to air around it.
const AROUND: f32 = 48.0;

/// Opens the popover beside what was clicked.
pub(super) fn open(ui: &Ui, on: &Response, bench: &Bench<'_>, actions: &mut Actions) {
    Popup::menu(on)
        .close_behavior(egui::PopupCloseBehavior::CloseOnClickOutside)
        .align(egui::RectAlign::RIGHT_START)
        .gap(10.0)
        .frame(form::frame(ui))
        .width(WIDTH)
        .show(|ui| {
            ui.set_width(WIDTH);
            // A menu's own style hides the edges of fields.
            ui.reset_style();
            controls::scroll_colours(ui);
            let most = ui.ctx().content_rect().height() - AROUND;
            // A popover would else be as high as egui likes.
            let area = ScrollArea::vertical().min_scrolled_height(most).max_height(most);
            area.show(ui, |ui| {
                ui.set_width(WIDTH - ui.spacing().scroll.allocated_width());
                content(ui, bench, actions);
                controls::follow_focus(ui);
            });
        });
}

fn content(ui: &mut Ui, bench: &Bench<'_>, actions: &mut Actions) {
    ui.spacing_mut().item_spacing.y = 2.0;
    form::heading(ui, say!("fabric-a-ball-you-made"));
    ball_check::show(ui, bench, actions);
    form::heading(ui, say!("fabric-working"));
    working(ui, bench, actions);
    form::heading(ui, say!("fabric-swatches-in-other-stitches"));
    swatch(ui, bench, Kind::HalfDouble, actions);
    swatch(ui, bench, Kind::Double, actions);
    loops(ui, bench, actions);
    ui.add_space(2.0);
    form::remark(ui, say!("fabric-heights-from-memory-marked-assumed"));
    form::heading(ui, say!("fabric-stuffing-grams-per-liter"));
    packing(ui, bench, actions);
}

/// What a litre of the finished piece takes, soft, medium and firm.
fn packing(ui: &mut Ui, bench: &Bench<'_>, actions: &mut Actions) {
    let packing = bench.document.piece().habits.stuffing_g_per_litre;
    let Packing { soft, medium, firm } = packing;
    let size = vec2(ui.available_width(), form::ROW);
    let (rect, _) = ui.allocate_exact_size(size, egui::Sense::hover());
    let third = rect.width() / 3.0;
    let mut new = packing;
    let fields = [
        (say!("firmness-soft"), &mut new.soft, 0.1..=medium),
        (say!("firmness-medium"), &mut new.medium, soft..=firm),
        (say!("firmness-firm"), &mut new.firm, medium..=500.0),
    ];
    for (i, (name, value, range)) in fields.into_iter().enumerate() {
        let left = rect.left() + third * i as f32;
        let at =
            Rect::from_min_size(pos2(left, rect.center().y - 13.0), vec2(third - 6.0, 26.0));
        let drag = DragValue::new(value)
            .range(range)
            .speed(0.2)
            .custom_formatter(|v, _| short(v))
            .prefix(format!("{name} "));
        form::field(
            ui,
            at,
            &say!("fabric-stuffing-per-liter-name", name = name),
            drag,
            actions,
        );
    }
    if new != packing {
        actions.choose(Choice::Packing(new));
    }
    form::remark(ui, say!("fabric-common-practice-no-source-weigh-what-a"));
}

fn working(ui: &mut Ui, bench: &Bench<'_>, actions: &mut Actions) {
    let piece = bench.document.piece();
    let why = say!("fabric-a-spiral-has-no-seam-but-climbs-joined");
    let rect = form::row(ui, say!("fabric-rounds"), why);
    let joined = piece.working != Working::Spiral;
    let picked = form::pick(
        ui,
        rect,
        say!("fabric-rounds"),
        &[say!("fabric-spiral"), say!("fabric-joined")],
        usize::from(joined),
    );
    if let Some(i) = picked {
        let joined = Working::Joined { chain_counts: false };
        actions.choose(Choice::Working(if i == 0 { Working::Spiral } else { joined }));
    }
    if let Working::Joined { chain_counts } = piece.working {
        let why = say!("fabric-whether-the-chain-a-joined-round");
        if let Some(on) =
            form::tick(ui, say!("fabric-the-chain-counts-as-a-stitch"), why, chain_counts)
        {
            actions.choose(Choice::Working(Working::Joined { chain_counts: on }));
        }
    }
    let why = say!("fabric-the-hand-that-holds-the-hook-a-left");
    let rect = form::row(ui, say!("fabric-hand"), why);
    let now = usize::from(piece.hand == Hand::Left);
    if let Some(i) = form::pick(
        ui,
        rect,
        say!("fabric-hand"),
        &[say!("fabric-right"), say!("fabric-left")],
        now,
    ) {
        actions.choose(Choice::Hand(if i == 0 { Hand::Right } else { Hand::Left }));
    }
    let why = say!("fabric-yarn-under-makes-a-tighter-crossed");
    let rect = form::row(ui, say!("fabric-single-crochet"), why);
    let now = usize::from(piece.swatches.yarn_under);
    let picked = form::pick(
        ui,
        rect,
        say!("fabric-single-crochet"),
        &[say!("fabric-yarn-over"), say!("fabric-yarn-under")],
        now,
    );
    if let Some(i) = picked {
        actions.choose(Choice::Swatches(Swatches { yarn_under: i == 1, ..piece.swatches }));
    }
}

fn with(swatches: Swatches, kind: Kind, gauge: Option<Gauge>) -> Swatches {
    match kind {
        Kind::HalfDouble => Swatches { half_double: gauge, ..swatches },
        Kind::Double => Swatches { double: gauge, ..swatches },
        Kind::Single => swatches,
    }
}

/// A kind's swatch as it was counted, or the height that is assumed for want of one.
fn swatch(ui: &mut Ui, bench: &Bench<'_>, kind: Kind, actions: &mut Actions) {
    let piece = bench.document.piece();
    let counted = match kind {
        Kind::HalfDouble => piece.swatches.half_double,
        _ => piece.swatches.double,
    };
    let name = match kind {
        Kind::HalfDouble => say!("fabric-half-double"),
        _ => say!("fabric-double"),
    };
    let why = say!("fabric-a-swatch-in-this-kind-of-stitch-worked");
    let rect = form::row(ui, name, why);
    let right = |width: f32| {
        let min = pos2(rect.right() - width, rect.center().y - 13.0);
        Rect::from_min_size(min, vec2(width, 26.0))
    };
    let Some(gauge) = counted else {
        let words = say!("fabric-counted");
        let at = right(controls::words_width(ui, words));
        let full = say!("fabric-name-count-a-swatch", name = name);
        let button = controls::button(ui, at, ButtonFace::Words(words), &full, true)
            .on_hover_text(say!("fabric-give-the-stitches-and-rounds-of-a"));
        let assumed =
            say!("fabric-times-as-high-assumed", times = short(kind.default_height()));
        form::instead(ui, rect.with_max_x(at.left() - 10.0), &assumed);
        if button.clicked() {
            // Begin from what is assumed, so that nothing moves until it is counted.
            let rounds = piece.gauge.rounds / kind.default_height();
            let gauge = Gauge { rounds: (2.0 * rounds).round() / 2.0, ..piece.gauge };
            let swatches = with(piece.swatches, kind, Some(gauge));
            actions.choose(Choice::Swatches(swatches));
        }
        return;
    };
    let remove = controls::button(
        ui,
        right(24.0),
        ButtonFace::Icon(Icon::Close),
        &say!("fabric-name-no-swatch", name = name),
        true,
    );
    if remove.on_hover_text(say!("fabric-back-to-the-assumed-height")).clicked() {
        actions.choose(Choice::Swatches(with(piece.swatches, kind, None)));
    }
    if let Some(gauge) = counts(ui, bench, name, gauge, actions)
        && gauge.validate().is_ok()
    {
        actions.choose(Choice::Swatches(with(piece.swatches, kind, Some(gauge))));
    }
}

/// Stitches, rounds and the length they were counted over, on one line.
fn counts(
    ui: &mut Ui,
    bench: &Bench<'_>,
    name: &str,
    gauge: Gauge,
    actions: &mut Actions,
) -> Option<Gauge> {
    let size = vec2(ui.available_width(), form::ROW);
    let (rect, _) = ui.allocate_exact_size(size, egui::Sense::hover());
    let mut new = gauge;
    let third = rect.width() / 3.0;
    let spot = |i: usize| {
        let left = rect.left() + third * i as f32;
        Rect::from_min_size(pos2(left, rect.center().y - 13.0), vec2(third - 6.0, 26.0))
    };
    let number = |value, suffix: &str, low| {
        DragValue::new(value)
            .speed(0.1)
            .range(low..=2000.0)
            .custom_formatter(|v, _| short(v))
            .suffix(format!(" {suffix}"))
    };
    let full = say!("fabric-name-stitches", name = name);
    form::field(
        ui,
        spot(0),
        &full,
        number(&mut new.stitches, say!("fabric-suffix-stitches"), 0.5),
        actions,
    );
    let full = say!("fabric-name-rounds", name = name);
    form::field(
        ui,
        spot(1),
        &full,
        number(&mut new.rounds, say!("fabric-suffix-rounds"), 0.5),
        actions,
    );
    let full = say!("fabric-name-over", name = name);
    let over = (gauge.along_mm, bench.unit());
    if let Some(mm) = length_field::show(ui, spot(2), &full, over, 1.0..=2000.0, actions) {
        (new.across_mm, new.along_mm) = (mm, mm);
    }
    (new != gauge).then_some(new)
}

fn loops(ui: &mut Ui, bench: &Bench<'_>, actions: &mut Actions) {
    let swatches = bench.document.piece().swatches;
    let why = say!("fabric-how-high-a-round-is-that-is-worked");
    let rect = form::row(ui, say!("fabric-one-loop-only"), why);
    let mut height = swatches.loop_only_height.unwrap_or(1.0);
    let measured = swatches.loop_only_height.is_some();
    let drag = DragValue::new(&mut height)
        .speed(0.01)
        .range(0.5..=2.0)
        .custom_formatter(|v, _| short(v))
        .suffix(format!(" {}", say!("fabric-times-as-high")));
    let width = 100.0;
    let left = rect.right() - width - if measured { 28.0 } else { 0.0 };
    let at = Rect::from_min_size(pos2(left, rect.center().y - 13.0), vec2(width, 26.0));
    if form::field(ui, at, say!("fabric-one-loop-only-height"), drag, actions).changed() {
        let loop_only_height = Some((height * 100.0).round() / 100.0);
        actions.choose(Choice::Swatches(Swatches { loop_only_height, ..swatches }));
    }
    if measured {
        let at = at.translate(vec2(width + 4.0, 0.0)).with_max_x(rect.right());
        let name = say!("fabric-one-loop-only-not-measured");
        let button = controls::button(ui, at, ButtonFace::Icon(Icon::Close), name, true);
        if button.on_hover_text(say!("fabric-back-to-the-assumed-height")).clicked() {
            actions.choose(Choice::Swatches(Swatches { loop_only_height: None, ..swatches }));
        }
    } else {
        form::instead(ui, rect.with_max_x(at.left() - 8.0), say!("fabric-assumed"));
    }
}
