//! The sizes standing side by side on one line, at one scale.

use egui::{Align2, Color32, Painter, Pos2, Rect, Shape, Stroke, Ui, pos2, vec2};
use plumpline_core::Rz;
use plumpline_core::sizes::{MadeSize, SizeRow};

use crate::bench::Bench;
use crate::kit::{paint, type_faces};

/// Room for the name and the measures above a size, points.
const WORDS: f32 = 40.0;
/// Least room from one size to the next.
const APART: f32 = 26.0;
/// Least width a size takes: that of its words.
const LEAST: f32 = 92.0;
/// Largest scale, points a millimetre.
const LARGEST: f32 = 4.0;

/// Draws the sizes there are in `rect`.
pub(super) fn show(ui: &Ui, bench: &Bench<'_>, rect: Rect) {
    let painter = ui.painter_at(rect);
    let ground = rect.bottom() - 12.0;
    let line = Stroke::new(1.0, bench.t.soft_ink);
    painter.hline(rect.x_range(), ground, line);
    let rows = bench.sizing.found().map_or(&[][..], |found| &found.rows);
    let made: Vec<(&SizeRow, &MadeSize)> =
        rows.iter().filter_map(|row| Some((row, row.made.as_ref().ok()?))).collect();
    if made.is_empty() {
        return;
    }
    let high = made.iter().fold(1.0, |most, (_, m)| m.height_mm.max(most)) as f32;
    let room = ground - rect.top() - WORDS - 8.0;
    // As large as the tallest allows; then as the widths do.
    let mut scale = (room / high).min(LARGEST);
    let width =
        |scale: f32| made.iter().map(|(_, m)| taken(m, scale) + APART).sum::<f32>() - APART;
    for _ in 0..40 {
        if width(scale) <= rect.width() {
            break;
        }
        scale *= 0.94;
    }
    let mut x = rect.center().x - 0.5 * width(scale).min(rect.width());
    for (index, (row, made)) in made.into_iter().enumerate() {
        let wide = taken(made, scale);
        let foot = pos2(x + 0.5 * wide, ground);
        draw(&painter, bench, (index, row, made), foot, scale);
        x += wide + APART;
    }
}

fn taken(made: &MadeSize, scale: f32) -> f32 {
    (made.width_mm as f32 * scale).max(LEAST)
}

fn draw(
    painter: &Painter,
    bench: &Bench<'_>,
    (index, row, made): (usize, &SizeRow, &MadeSize),
    foot: Pos2,
    scale: f32,
) {
    let t = bench.t;
    match bench.line_up.picture(index) {
        Some(picture) => {
            let size = picture.size_mm * scale;
            let middle = foot - vec2(0.0, 0.5 * made.height_mm as f32 * scale);
            let place = Rect::from_center_size(middle, size);
            let whole = Rect::from_min_max(Pos2::ZERO, pos2(1.0, 1.0));
            if let Some(texture) = picture.texture(size.y * painter.pixels_per_point()) {
                painter.image(texture.id(), place, whole, Color32::WHITE);
            }
        }
        // Until it is drawn.
        None => profile(painter, made, foot, scale, Stroke::new(1.3, t.forecast_edge)),
    }
    let top = foot.y - made.height_mm as f32 * scale;
    let name = row.name.as_deref().unwrap_or(say!("sizes-as-designed"));
    let ink = if made.met { t.ink } else { t.warning };
    let bold = type_faces::bold(type_faces::BODY);
    let at = pos2(foot.x, top - 28.0);
    paint::text(painter, at, Align2::CENTER_CENTER, name, bold, ink);
    let unit = bench.unit();
    let size =
        format!("{} × {}", unit.rough_number(made.height_mm), unit.rough_text(made.width_mm));
    let small = type_faces::regular(type_faces::SMALL);
    let at = pos2(foot.x, top - 12.0);
    paint::text(painter, at, Align2::CENTER_CENTER, &size, small, t.soft_ink);
}

/// The stuffed profile, its start on top as it hangs from the hook.
fn profile(painter: &Painter, made: &MadeSize, foot: Pos2, scale: f32, pen: Stroke) {
    let nodes = &made.plan.forecast;
    let half = made.plan.depth_mm.map_or(0.0, |_| 0.5 * made.piece.straight_mm);
    let low = nodes.iter().fold(f64::INFINITY, |low, n| n.z.min(low));
    let top = foot.y - made.height_mm as f32 * scale;
    let side = |sign: f32| {
        let at = move |n: &Rz| {
            let (x, y) = ((n.r + half) as f32 * scale, (n.z - low) as f32 * scale);
            pos2(foot.x + sign * x, top + y)
        };
        nodes.iter().map(at)
    };
    let around = side(-1.0).chain(side(1.0).rev()).collect();
    painter.add(Shape::closed_line(around, pen));
}
