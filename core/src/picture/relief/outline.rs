//! The outline of a still as lines: marching squares over how much of each pixel is covered
//! (Lorensen and Cline, Computer Graphics 21, 1987, in the plane), then fewer points.

use std::collections::HashMap;

/// How far a line may be moved where points are left out, pixels.
const SLACK: f32 = 0.2;
/// Rings of fewer points are specks.
const LEAST: usize = 8;

/// Cover of a pixel, 0 to 1; none beyond the picture.
fn cover(size: [u32; 2], pixels: &[[u8; 4]], x: i64, y: i64) -> f32 {
    let [wide, tall] = size.map(i64::from);
    if x < 0 || y < 0 || x >= wide || y >= tall {
        return 0.0;
    }
    pixels.get((y * wide + x) as usize).map_or(0.0, |p| f32::from(p[3]) / 255.0)
}

/// An edge between the middles of two pixels: the first, and whether the other lies below it
/// or to its right.
type Edge = (i64, i64, bool);

/// The rings around what `pixels` of a picture of this size cover by half and more.
pub(super) fn rings(size: [u32; 2], pixels: &[[u8; 4]]) -> Vec<Vec<[f32; 2]>> {
    let [wide, tall] = size.map(i64::from);
    let cover = |x: i64, y: i64| cover(size, pixels, x, y);
    // From the edge by which the outline comes into a square to that by which it leaves,
    // what is covered on its right; a square has at most two such ways.
    let mut ways: HashMap<Edge, Edge> = HashMap::new();
    let mut begins: Vec<Edge> = Vec::new();
    for y in -1..tall {
        for x in -1..wide {
            let at = |dx: i64, dy: i64| cover(x + dx, y + dy) >= 0.5;
            let corners = [at(0, 0), at(1, 0), at(1, 1), at(0, 1)];
            if corners.iter().all(|&c| c == corners[0]) {
                continue;
            }
            let edges: [Edge; 4] =
                [(x, y, false), (x + 1, y, true), (x, y + 1, false), (x, y, true)];
            // Going around the square, the outline leaves where cover begins.
            for i in 0..4 {
                if !corners[i] && corners[(i + 1) % 4] {
                    let comes = (1..4)
                        .map(|k| (i + k) % 4)
                        .find(|&j| corners[j] && !corners[(j + 1) % 4]);
                    if let Some(j) = comes {
                        ways.insert(edges[j], edges[i]);
                        begins.push(edges[j]);
                    }
                }
            }
        }
    }
    let place = |&(x, y, below): &Edge| {
        let (a, b) = (cover(x, y), cover(x + i64::from(!below), y + i64::from(below)));
        let part = if a == b { 0.5 } else { (0.5 - a) / (b - a) };
        let (x, y) = (x as f32 + 0.5, y as f32 + 0.5);
        if below { [x, y + part] } else { [x + part, y] }
    };
    let mut rings = Vec::new();
    for begin in begins {
        let mut ring = Vec::new();
        let mut at = begin;
        while let Some(next) = ways.remove(&at) {
            ring.push(place(&at));
            at = next;
        }
        if ring.len() >= LEAST {
            rings.push(fewer(&ring));
        }
    }
    rings
}

/// A closed ring with the points left out that a straight line does without (Douglas and
/// Peucker, Cartographica 10, 1973).
fn fewer(ring: &[[f32; 2]]) -> Vec<[f32; 2]> {
    let half = ring.len() / 2;
    let mut kept = vec![false; ring.len() + 1];
    let at = |i: usize| ring[i % ring.len()];
    let mut open = vec![(0, half), (half, ring.len())];
    (kept[0], kept[half]) = (true, true);
    while let Some((from, to)) = open.pop() {
        let (a, b) = (at(from), at(to));
        let (dx, dy) = (b[0] - a[0], b[1] - a[1]);
        let long = (dx * dx + dy * dy).sqrt();
        let off = |i: usize| {
            let (x, y) = (at(i)[0] - a[0], at(i)[1] - a[1]);
            if long > 1e-6 { (x * dy - y * dx).abs() / long } else { (x * x + y * y).sqrt() }
        };
        let farthest = (from + 1..to).max_by(|&i, &j| off(i).total_cmp(&off(j)));
        if let Some(i) = farthest.filter(|&i| off(i) > SLACK) {
            kept[i] = true;
            open.extend([(from, i), (i, to)]);
        }
    }
    (0..ring.len()).filter(|&i| kept[i]).map(at).collect()
}
