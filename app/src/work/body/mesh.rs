//! A scene as one mesh, its edges feathered as the rest of the window's are.

use egui::epaint::Vertex;
use egui::{Color32, Mesh, Pos2, Vec2, pos2, vec2};
use plumpline_core::picture::{Rgb, Rim, Scene};

/// The scene with its origin at `middle`; `feather` is the width of an edge, points.
pub fn mesh(scene: &Scene, middle: Pos2, feather: f32) -> Mesh {
    let mut mesh = Mesh::default();
    fill(&mut mesh, scene, middle, feather);
    mesh
}

/// As [`mesh()`], in the place of what `mesh` showed, whose memory it keeps.
pub(crate) fn fill(mesh: &mut Mesh, scene: &Scene, middle: Pos2, feather: f32) {
    // Mesh::clear would give the memory of its corners away.
    mesh.indices.clear();
    mesh.vertices.clear();
    let mut ring = Vec::with_capacity(16);
    for polygon in scene.polygons() {
        let colour = colour(polygon.colour);
        let corners = scene.corners(polygon).iter().map(|c| middle + vec2(c[0], c[1]));
        match polygon.rim {
            Rim::Seen => {
                ring.clear();
                ring.extend(corners);
                soft(mesh, &ring, colour, feather);
            }
            Rim::Lost => plain(mesh, corners, colour),
        }
    }
}

fn colour([r, g, b]: Rgb) -> Color32 {
    crate::kit::Tokens::yarn([r, g, b])
}

/// A convex polygon: a fan.
fn plain(mesh: &mut Mesh, ring: impl Iterator<Item = Pos2>, colour: Color32) {
    let first = mesh.vertices.len() as u32;
    mesh.vertices.extend(ring.map(|corner| Vertex::untextured(corner, colour)));
    let last = mesh.vertices.len() as u32;
    mesh.indices.extend((first + 2..last).flat_map(|i| [first, i - 1, i]));
}

/// A convex polygon: a fan of full colour within a rim that fades out.
fn soft(mesh: &mut Mesh, ring: &[Pos2], colour: Color32, feather: f32) {
    let n = ring.len() as u32;
    if n < 3 {
        return;
    }
    let turned = |a: Pos2, b: Pos2| a.x * b.y - a.y * b.x;
    let around = ring.iter().zip(ring[1..].iter().chain(&ring[..1]));
    let area: f32 = around.map(|(&a, &b)| turned(a, b)).sum();
    let outward = if area > 0.0 { 0.5 * feather } else { -0.5 * feather };
    let first = mesh.vertices.len() as u32;
    let mut before = normal(ring[ring.len() - 1], ring[0]);
    for (i, &at) in ring.iter().enumerate() {
        let after = normal(at, ring[if i + 1 < ring.len() { i + 1 } else { 0 }]);
        let out = outward * miter(before, after);
        before = after;
        let rim = [(at - out, colour), (at + out, Color32::TRANSPARENT)];
        mesh.vertices.extend(rim.map(|(at, colour)| Vertex::untextured(at, colour)));
    }
    let fan = (1..n - 1).flat_map(|i| [first, first + 2 * i, first + 2 * (i + 1)]);
    mesh.indices.extend(fan);
    let last = first + 2 * (n - 1);
    let rim = |a: u32, b: u32| [a, a + 1, b + 1, a, b + 1, b];
    mesh.indices.extend((first..last).step_by(2).flat_map(|a| rim(a, a + 2)));
    mesh.indices.extend_from_slice(&rim(last, first));
}

/// Square to the edge from `a` to `b`, at length 1.
fn normal(a: Pos2, b: Pos2) -> Vec2 {
    let along = b - a;
    // Not `length`: its `hypot` takes three times as long.
    let length = along.length_sq().sqrt();
    vec2(along.y, -along.x) / length.max(1e-6)
}

/// From a corner to where its two edges, of these normals and each moved out by one, meet;
/// never far out at a sharp one.
fn miter(a: Vec2, b: Vec2) -> Vec2 {
    let sum = a + b;
    let square = sum.length_sq();
    if square > 0.25 { 2.0 * sum / square } else { sum }
}

/// The leftmost place of a round, where its thread is tied.
pub(crate) fn leftmost(scene: &Scene, round: u32, middle: Pos2) -> Option<Pos2> {
    let of_round = scene.polygons().iter().filter(|p| p.round == Some(round));
    let corners = of_round.flat_map(|p| scene.corners(p));
    let [x, y] = corners.min_by(|a, b| a[0].total_cmp(&b[0]))?;
    Some(pos2(middle.x + x, middle.y + y))
}
