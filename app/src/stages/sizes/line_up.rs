//! The sizes standing side by side on one line, at one scale.

use egui::{Align2, Color32, Mesh, Painter, Pos2, Rect, Shape, Stroke, Ui, pos2};
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
    for (row, made) in made {
        let wide = taken(made, scale);
        let foot = pos2(x + 0.5 * wide, ground);
        draw(&painter, bench, row, made, foot, scale);
        x += wide + APART;
    }
}

fn taken(made: &MadeSize, scale: f32) -> f32 {
    (made.width_mm as f32 * scale).max(LEAST)
}

fn draw(
    painter: &Painter,
    bench: &Bench<'_>,
    row: &SizeRow,
    made: &MadeSize,
    foot: Pos2,
    scale: f32,
) {
    let t = bench.t;
    let piece = bench.document.piece();
    let fill = t.body(bench.yarn_of(piece.yarn_of_round(1)));
    silhouette(painter, made, foot, scale, fill, Stroke::new(1.3, t.forecast_edge));
    let top = foot.y - made.height_mm as f32 * scale;
    let name = row.name.as_deref().unwrap_or("as drawn");
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
fn silhouette(
    painter: &Painter,
    made: &MadeSize,
    foot: Pos2,
    scale: f32,
    fill: Color32,
    pen: Stroke,
) {
    let low = made.profile.iter().fold(f64::INFINITY, |l, n| n.z.min(l));
    let half = 0.5 * made.straight_mm;
    let points: Vec<(f32, f32)> = made
        .profile
        .iter()
        .map(|n| ((n.r + half) as f32 * scale, (n.z - low) as f32 * scale))
        .collect();
    let top = foot.y - made.height_mm as f32 * scale;
    let mut mesh = Mesh::default();
    let side = |sign: f32| {
        points.iter().map(move |&(r, z)| pos2(foot.x + sign * r, top + z)).collect::<Vec<_>>()
    };
    let (left, right) = (side(-1.0), side(1.0));
    for (&a, &b) in left.iter().zip(&right) {
        mesh.colored_vertex(a, fill);
        mesh.colored_vertex(b, fill);
    }
    for i in 0..points.len().saturating_sub(1) as u32 {
        mesh.add_triangle(2 * i, 2 * i + 1, 2 * i + 2);
        mesh.add_triangle(2 * i + 1, 2 * i + 3, 2 * i + 2);
    }
    painter.add(Shape::mesh(mesh));
    for (&a, &b) in left.iter().zip(&right).skip(1) {
        let shade = Stroke::new(0.8, pen.color.gamma_multiply(0.3));
        painter.line_segment([a, b], shade);
    }
    for line in [left, right] {
        painter.add(Shape::line(line, pen));
    }
    for end in [points.first(), points.last()].into_iter().flatten() {
        let y = top + end.1;
        painter.line_segment([pos2(foot.x - end.0, y), pos2(foot.x + end.0, y)], pen);
    }
}
