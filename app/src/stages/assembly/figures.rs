//! What the toy weighs, how it stands and hangs, who it is made for, and what its maker should
//! know.

use egui::{
    Align2, Rect, Role, ScrollArea, Sense, Stroke, StrokeKind, Ui, UiBuilder, WidgetInfo,
};
use egui::{pos2, vec2};
use plumpline_core::project::toy::MadeFor;
use plumpline_core::toy::Caution;

use super::cells::list;
use super::here::ToyBench;
use crate::bench::action::Actions;
use crate::document::edit::Edit;
use crate::document::toy::ToyEdit;
use crate::fields::form;
use crate::kit::tokens::PAD;
use crate::kit::words::MessageKey;
use crate::kit::{controls, icons, paint, type_faces};
use crate::work::toy::ToyMade;

/// Who toys are made for, in words.
const MADE_FOR: [(MadeFor, MessageKey); 4] = [
    (MadeFor::Baby, message!("toy-for-a-baby")),
    (MadeFor::SoftToy, message!("toy-for-a-child")),
    (MadeFor::ThreeAndOver, message!("toy-for-three-and-over")),
    (MadeFor::Ornament, message!("toy-for-ornament")),
];

/// Draws the figures in `panel`.
pub(super) fn show(ui: &mut Ui, here: &ToyBench<'_>, panel: Rect, actions: &mut Actions) {
    let t = here.bench.t;
    let head = panel.left_top() + vec2(PAD, 20.0);
    let end = paint::title(ui.painter(), head, say!("toy-measurements"), "", t);
    made_for(ui, here, panel, end, actions);
    let inner = Rect::from_min_max(
        pos2(panel.left() + PAD, panel.top() + 38.0),
        pos2(panel.right() - 6.0, panel.bottom() - 8.0),
    );
    let Some(made) = here.made else { return };
    let mut child = ui.new_child(UiBuilder::new().max_rect(inner).id_salt("figures"));
    controls::scroll_colours(&mut child);
    ScrollArea::vertical().auto_shrink(false).show(&mut child, |ui| {
        ui.reset_style();
        form::beside_the_bar(ui);
        ui.spacing_mut().item_spacing.y = 6.0;
        columns(ui, here, made);
        let (refused, others): (Vec<&Caution>, Vec<&Caution>) =
            made.cautions.iter().partition(|caution| caution.refused);
        for one in refused.into_iter().chain(others) {
            caution(ui, here, one);
        }
        controls::follow_focus(ui);
    });
}

fn made_for(ui: &Ui, here: &ToyBench<'_>, panel: Rect, left: f32, actions: &mut Actions) {
    let now = MADE_FOR.iter().position(|(who, _)| *who == here.toy.made_for).unwrap_or(0);
    let words = MADE_FOR.map(|(_, words)| words.text());
    let right = panel.right() - 12.0;
    let wide = (right - left - 70.0).min(130.0);
    let rect = Rect::from_min_size(pos2(right - wide, panel.top() + 8.0), vec2(wide, 25.0));
    let font = type_faces::regular(type_faces::SMALL);
    let at = rect.left_center() - vec2(6.0, 0.0);
    ui.painter().text(
        at,
        Align2::RIGHT_CENTER,
        say!("toy-made-for"),
        font,
        here.bench.t.soft_ink,
    );
    if let Some(new) = list(ui, rect, say!("toy-made-for-name"), (&words, now)) {
        actions.edit(Edit::Toy(ToyEdit::MadeFor(MADE_FOR[new].0)));
    }
}

/// Weight, how it stands, how it hangs.
fn columns(ui: &mut Ui, here: &ToyBench<'_>, made: &ToyMade) {
    let t = here.bench.t;
    let list = figures(made);
    let (rect, _) = ui.allocate_exact_size(vec2(ui.available_width(), 38.0), Sense::hover());
    let wide = rect.width() / list.len() as f32;
    for (i, (name, value, why)) in list.into_iter().enumerate() {
        let left = rect.left() + i as f32 * wide;
        let place = Rect::from_min_size(pos2(left, rect.top()), vec2(wide, rect.height()));
        let response = ui.interact(place, ui.scope_id().with(name), Sense::hover());
        let said = format!("{name}: {value}");
        response.widget_info(|| WidgetInfo::labeled(Role::Label, true, &said));
        let painter = ui.painter();
        let small = type_faces::regular(type_faces::SMALL);
        painter.text(
            place.left_top() + vec2(0.0, 2.0),
            Align2::LEFT_TOP,
            name,
            small,
            t.soft_ink,
        );
        let bold = type_faces::bold(type_faces::BODY);
        painter.text(place.left_top() + vec2(0.0, 17.0), Align2::LEFT_TOP, value, bold, t.ink);
        response.on_hover_text(why);
    }
}

fn figures(made: &ToyMade) -> [(&'static str, String, String); 3] {
    let toy = &made.assembled;
    let (low, high) = toy.grams;
    let weight = format!("{:.0} g", toy.mass.grams);
    let stands = match &toy.standing {
        None => say!("toy-hangs").into(),
        Some(standing) => match (standing.tips, standing.rocks) {
            (Some((deg, _)), _) => say!("toy-tips-at", deg = format!("{:.0}", deg)),
            (None, Some(true)) => say!("toy-rocks-upright").into(),
            (None, Some(false)) => say!("toy-rolls-over").into(),
            (None, None) => say!("toy-falls-over").into(),
        },
    };
    let hangs = match toy.hangings.first() {
        None => "–".into(),
        Some(hanging) if hanging.lean_deg < 0.5 => say!("toy-upright").into(),
        Some(hanging) => {
            let ahead: f64 = hanging.towards.iter().zip(toy.ahead).map(|(a, b)| a * b).sum();
            let way = match ahead {
                a if a > 0.5 => say!("toy-forward"),
                a if a < -0.5 => say!("toy-back"),
                _ => say!("toy-aside"),
            };
            format!("{:.0}° {way}", hanging.lean_deg)
        }
    };
    [
        (
            say!("toy-weight"),
            weight,
            say!(
                "toy-between-low-and-high-g-makers-differ",
                low = format!("{:.0}", low),
                high = format!("{:.0}", high)
            ),
        ),
        (say!("toy-stands"), stands, say!("toy-how-far-it-can-be-tilted-before-it").into()),
        (
            say!("toy-hangs-large"),
            hangs,
            say!("toy-how-far-its-top-leans-as-if-it-were").into(),
        ),
    ]
}

/// A caution with where it is written.
fn caution(ui: &mut Ui, here: &ToyBench<'_>, caution: &Caution) {
    let t = here.bench.t;
    let width = ui.available_width();
    let font = type_faces::regular(type_faces::SMALL);
    let words = match caution.source {
        "" => caution.text.clone(),
        source => format!("{} ({source})", caution.text),
    };
    let ink = if caution.refused { t.warning } else { t.ink };
    let galley = ui.painter().layout(words.clone(), font, ink, width - 40.0);
    let (rect, response) =
        ui.allocate_exact_size(vec2(width, galley.size().y + 12.0), Sense::hover());
    response.widget_info(|| WidgetInfo::labeled(Role::Label, true, &words));
    let painter = ui.painter();
    if caution.refused {
        let edge = Stroke::new(1.2, t.warning);
        painter.rect(rect, 6.0, t.warn_wash, edge, StrokeKind::Inside);
        icons::warning(painter, rect.left_center() + vec2(15.0, 0.0), 15.0, t.warning);
    } else {
        painter.circle_stroke(
            rect.left_top() + vec2(14.0, 13.0),
            3.0,
            Stroke::new(1.4, t.soft_ink),
        );
    }
    painter.galley(rect.min + vec2(30.0, 6.0), galley, ink);
}
