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
    form::heading(ui, "A ball you made");
    ball_check::show(ui, bench, actions);
    form::heading(ui, "Working");
    working(ui, bench, actions);
    form::heading(ui, "Other swatches");
    swatch(ui, bench, Kind::HalfDouble, actions);
    swatch(ui, bench, Kind::Double, actions);
    loops(ui, bench, actions);
    ui.add_space(2.0);
    form::remark(
        ui,
        "Heights from memory, marked assumed, make a forecast less sure. A swatch in the round \
         settles them.",
    );
    form::heading(ui, "Stuffing, grams a litre");
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
        ("soft", &mut new.soft, 0.1..=medium),
        ("medium", &mut new.medium, soft..=firm),
        ("firm", &mut new.firm, medium..=500.0),
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
        form::field(ui, at, &format!("Stuffing a litre, {name}"), drag, actions);
    }
    if new != packing {
        actions.choose(Choice::Packing(new));
    }
    form::remark(ui, "Common practice, no source. Weigh what a sample takes to know your own.");
}

fn working(ui: &mut Ui, bench: &Bench<'_>, actions: &mut Actions) {
    let piece = bench.document.piece();
    let why = "A spiral has no seam but climbs; joined rounds end where they began, with a \
               seam that shows";
    let rect = form::row(ui, "Rounds", why);
    let joined = piece.working != Working::Spiral;
    let picked = form::pick(ui, rect, "Rounds", &["spiral", "joined"], usize::from(joined));
    if let Some(i) = picked {
        let joined = Working::Joined { chain_counts: false };
        actions.choose(Choice::Working(if i == 0 { Working::Spiral } else { joined }));
    }
    if let Working::Joined { chain_counts } = piece.working {
        let why = "Whether the chain a joined round begins with is its first stitch";
        if let Some(on) = form::tick(ui, "The chain counts as a stitch", why, chain_counts) {
            actions.choose(Choice::Working(Working::Joined { chain_counts: on }));
        }
    }
    let why = "The hand that holds the hook: a left hand works its rounds clockwise";
    let rect = form::row(ui, "Hand", why);
    let now = usize::from(piece.hand == Hand::Left);
    if let Some(i) = form::pick(ui, rect, "Hand", &["right", "left"], now) {
        actions.choose(Choice::Hand(if i == 0 { Hand::Right } else { Hand::Left }));
    }
    let why = "Yarn under makes a tighter, crossed stitch. Only noted: your swatch has the \
               height it gives already";
    let rect = form::row(ui, "Single crochet", why);
    let now = usize::from(piece.swatches.yarn_under);
    let picked = form::pick(ui, rect, "Single crochet", &["yarn over", "yarn under"], now);
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
        Kind::HalfDouble => "Half double",
        _ => "Double",
    };
    let why = "A swatch in this kind of stitch, worked in the round and counted like that of \
               single crochet";
    let rect = form::row(ui, name, why);
    let right = |width: f32| {
        let min = pos2(rect.right() - width, rect.center().y - 13.0);
        Rect::from_min_size(min, vec2(width, 26.0))
    };
    let Some(gauge) = counted else {
        let words = "Counted…";
        let at = right(controls::words_width(ui, words));
        let full = format!("{name}, count a swatch");
        let button = controls::button(ui, at, ButtonFace::Words(words), &full, true)
            .on_hover_text("Give the stitches and rounds of a swatch");
        let assumed = format!("{} × as high, assumed", short(kind.default_height()));
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
        &format!("{name}, no swatch"),
        true,
    );
    if remove.on_hover_text("Back to the assumed height").clicked() {
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
            .suffix(suffix.to_owned())
    };
    let full = format!("{name}, stitches");
    form::field(ui, spot(0), &full, number(&mut new.stitches, " st", 0.5), actions);
    let full = format!("{name}, rounds");
    form::field(ui, spot(1), &full, number(&mut new.rounds, " rnds", 0.5), actions);
    let full = format!("{name}, over");
    let over = (gauge.along_mm, bench.unit());
    if let Some(mm) = length_field::show(ui, spot(2), &full, over, 1.0..=2000.0, actions) {
        (new.across_mm, new.along_mm) = (mm, mm);
    }
    (new != gauge).then_some(new)
}

fn loops(ui: &mut Ui, bench: &Bench<'_>, actions: &mut Actions) {
    let swatches = bench.document.piece().swatches;
    let why = "How high a round is that is worked into one loop only, against one worked \
               into both";
    let rect = form::row(ui, "One loop only", why);
    let mut height = swatches.loop_only_height.unwrap_or(1.0);
    let measured = swatches.loop_only_height.is_some();
    let drag = DragValue::new(&mut height)
        .speed(0.01)
        .range(0.5..=2.0)
        .custom_formatter(|v, _| short(v))
        .suffix(" × as high");
    let width = 100.0;
    let left = rect.right() - width - if measured { 28.0 } else { 0.0 };
    let at = Rect::from_min_size(pos2(left, rect.center().y - 13.0), vec2(width, 26.0));
    if form::field(ui, at, "One loop only, height", drag, actions).changed() {
        let loop_only_height = Some((height * 100.0).round() / 100.0);
        actions.choose(Choice::Swatches(Swatches { loop_only_height, ..swatches }));
    }
    if measured {
        let at = at.translate(vec2(width + 4.0, 0.0)).with_max_x(rect.right());
        let name = "One loop only, not measured";
        let button = controls::button(ui, at, ButtonFace::Icon(Icon::Close), name, true);
        if button.on_hover_text("Back to the assumed height").clicked() {
            actions.choose(Choice::Swatches(Swatches { loop_only_height: None, ..swatches }));
        }
    } else {
        form::instead(ui, rect.with_max_x(at.left() - 8.0), "assumed");
    }
}
