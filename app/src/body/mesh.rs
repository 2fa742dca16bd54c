//! A scene as one mesh, its edges feathered as the rest of the window's are.

use egui::{Color32, Mesh, Pos2, Vec2, pos2, vec2};
use plumpline_core::picture::{Rgb, Scene};

/// The scene with its origin at `middle`; `feather` is the width of an edge, points.
pub fn mesh(scene: &Scene, middle: Pos2, feather: f32) -> Mesh {
    let mut mesh = Mesh::default();
    let corners = 7 * scene.polygons().len();
    mesh.reserve_vertices(2 * corners);
    mesh.reserve_triangles(3 * corners);
    let mut ring = Vec::with_capacity(16);
    for polygon in scene.polygons() {
        ring.clear();
        ring.extend(scene.corners(polygon).iter().map(|c| middle + vec2(c[0], c[1])));
        add(&mut mesh, &ring, colour(polygon.colour), feather);
    }
    mesh
}

fn colour([r, g, b]: Rgb) -> Color32 {
    crate::ui_kit::Tokens::yarn([r, g, b])
}

/// A convex polygon: a fan of full colour within a rim that fades out.
fn add(mesh: &mut Mesh, ring: &[Pos2], colour: Color32, feather: f32) {
    let n = ring.len() as u32;
    if n < 3 {
        return;
    }
    let area: f32 = (0..ring.len())
        .map(|i| {
            let (a, b) = (ring[i], ring[(i + 1) % ring.len()]);
            a.x * b.y - a.y * b.x
        })
        .sum();
    let outward = if area > 0.0 { 0.5 * feather } else { -0.5 * feather };
    let first = mesh.vertices.len() as u32;
    for i in 0..ring.len() {
        let (before, at) = (ring[(i + ring.len() - 1) % ring.len()], ring[i]);
        let after = ring[(i + 1) % ring.len()];
        let out = outward * miter(at - before, after - at);
        mesh.colored_vertex(at - out, colour);
        mesh.colored_vertex(at + out, Color32::TRANSPARENT);
    }
    for i in 1..n - 1 {
        mesh.add_triangle(first, first + 2 * i, first + 2 * (i + 1));
    }
    for i in 0..n {
        let (a, b) = (first + 2 * i, first + 2 * ((i + 1) % n));
        mesh.add_triangle(a, a + 1, b + 1);
        mesh.add_triangle(a, b + 1, b);
    }
}

/// From a corner to where its two edges, each moved out by one, meet; never far out at a
/// sharp one.
fn miter(into: Vec2, out_of: Vec2) -> Vec2 {
    let normal = |v: Vec2| {
        let length = v.length().max(1e-6);
        vec2(v.y / length, -v.x / length)
    };
    let (a, b) = (normal(into), normal(out_of));
    let sum = a + b;
    let square = sum.length_sq();
    if square > 0.25 { 2.0 * sum / square } else { sum }
}

/// The leftmost place of a round, where its thread is tied.
pub(super) fn leftmost(scene: &Scene, round: u32, middle: Pos2) -> Option<Pos2> {
    let of_round = scene.polygons().iter().filter(|p| p.round == Some(round));
    let corners = of_round.flat_map(|p| scene.corners(p));
    let [x, y] = corners.min_by(|a, b| a[0].total_cmp(&b[0]))?;
    Some(pos2(middle.x + x, middle.y + y))
}
