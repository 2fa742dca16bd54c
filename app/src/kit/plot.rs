//! Plots that stay as they are put: nothing in them is dragged or zoomed.

use egui::{Rect, RichText, Vec2b};
use egui_plot::{AxisHints, HoverPosition, Plot};

use super::{Tokens, type_faces};

/// An axis with its label.
pub fn axis<'a>(axis: AxisHints<'a>, label: &str, t: &Tokens) -> AxisHints<'a> {
    let small = || type_faces::regular(type_faces::SMALL);
    axis.label(RichText::new(label).font(small()).color(t.soft_ink))
        .tick_label_color(t.soft_ink)
        .tick_label_font(small())
}

/// A plot in `rect` from `x[0]` to `x[1]` across and `y[0]` to `y[1]` up.
pub fn fixed<'a>(
    name: &'static str,
    rect: Rect,
    x: [f64; 2],
    y: [f64; 2],
    t: &Tokens,
) -> Plot<'a> {
    Plot::new(name)
        .width(rect.width())
        .height(rect.height())
        .allow_drag(false)
        .allow_zoom(false)
        .allow_scroll(false)
        .allow_boxed_zoom(false)
        .allow_axis_zoom_drag(false)
        .allow_double_click_reset(false)
        .auto_bounds(Vec2b::FALSE)
        .default_x_bounds(x[0], x[1])
        .default_y_bounds(y[0], y[1])
        // Bounds follow what is shown, not what was looked at before.
        .reset()
        .show_x(false)
        .show_y(false)
        .show_background(false)
        .grid_color(t.edge)
        .grid_fade(0.0)
        .label_formatter(|_: &HoverPosition<'_>| None)
}
