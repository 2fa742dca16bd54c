//! The profile of a part, laid out as short straight segments: the forecast's nodes joined
//! smoothly, and where an end is open its rim, the cloth within it and the stuffing.

use std::f32::consts::PI;

use crate::piece::outline::Rz;

/// Pieces that a round is drawn in.
pub(super) const PIECES: usize = 4;
/// Pieces of a rim, half round.
const RIM_PIECES: usize = 8;
/// How far the loops of a rim stand out beyond the cloth, in thicknesses.
const RIM_HEIGHT: f32 = 0.38;
/// How deep the stuffing lies in an opening, in radii of it. By eye: as far as fingers pack it.
const STUFFED_DEPTH: f32 = 0.75;
/// How far the stuffing swells in the middle, in radii.
const DOME: f32 = 0.2;
/// Pieces of the stuffing from cloth to axis.
const DOME_PIECES: usize = 4;

/// What a stretch of the profile is.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub(super) enum ProfileStretch {
    /// The rounds, seen from outside, and the loops that a thread draws shut.
    Outside,
    /// The loops of an open edge; whether at the start.
    Rim {
        /// Whether at the start.
        start: bool,
    },
    /// The cloth seen from within.
    Within,
    /// Stuffing in an opening.
    Stuffing,
}

/// A corner of the profile.
#[derive(Debug, Clone, Copy)]
pub(super) struct Corner {
    pub(super) at: [f32; 2],
    /// Unit vector along the profile, in working order.
    pub(super) way: [f32; 2],
}

/// One straight piece, with all that a look-up needs.
#[derive(Debug, Clone, Copy)]
pub(super) struct ProfileSegment {
    pub(super) from: Corner,
    pub(super) to: Corner,
    /// Rounds from the start at either end, or how much of a rim.
    pub(super) along: (f32, f32),
    pub(super) stretch: ProfileStretch,
    /// Rounds a millimetre; negative where the profile runs back inside the cloth.
    pub(super) per_mm: f32,
    /// How the profile turns away from its tangent, a mm; negative in a hollow.
    pub(super) bend: f32,
    /// Whether it is an end of the whole profile.
    pub(super) first: bool,
    pub(super) last: bool,
}

fn finite(value: f64) -> f32 {
    if value.is_finite() { value.clamp(-1e5, 1e5) as f32 } else { 0.0 }
}

pub(super) fn long(a: [f32; 2]) -> f32 {
    (a[0] * a[0] + a[1] * a[1]).sqrt()
}

pub(super) fn minus(a: [f32; 2], b: [f32; 2]) -> [f32; 2] {
    [a[0] - b[0], a[1] - b[1]]
}

/// `a` at length 1; upwards if it has no length.
pub(super) fn unit(a: [f32; 2]) -> [f32; 2] {
    let length = long(a);
    if length > 1e-9 { [a[0] / length, a[1] / length] } else { [0.0, 1.0] }
}

/// How far `at` lies ahead of a corner.
pub(super) fn ahead(corner: &Corner, at: [f32; 2]) -> f32 {
    (at[0] - corner.at[0]) * corner.way[0] + (at[1] - corner.at[1]) * corner.way[1]
}

/// The whole profile of `forecast`, whose nodes are the edges of rounds and perhaps a pole,
/// in cloth `thick` mm thick: from axis to axis, or from stuffing to stuffing. Never empty.
pub(super) fn lay(forecast: &[Rz], thick: f32) -> Vec<ProfileSegment> {
    let mut nodes: Vec<[f32; 2]> =
        forecast.iter().map(|n| [finite(n.r).max(0.0), finite(n.z)]).collect();
    // No plan has fewer than two rounds; a profile of none would have nothing to be near.
    while nodes.len() < 2 {
        nodes.push([1.0, nodes.len() as f32]);
    }
    let last = nodes.len() - 1;
    let open = [nodes[0][0] > 1e-3, nodes[last][0] > 1e-3];
    // The loops of a rim stand above the cloth, which ends so much sooner.
    for (is_open, end, beside) in [(open[0], 0, 1), (open[1], last, last - 1)] {
        if is_open {
            let chord = minus(nodes[end], nodes[beside]);
            let far = (RIM_HEIGHT * thick).min(0.5 * long(chord));
            let way = unit(chord);
            nodes[end] =
                [(nodes[end][0] - far * way[0]).max(0.05), nodes[end][1] - far * way[1]];
        }
    }
    let corners = smoothed(&nodes);
    let outside: Vec<ProfileSegment> = corners
        .windows(2)
        .zip(0..)
        .map(|(pair, k)| {
            let along = |k: i32| k as f32 / PIECES as f32;
            ProfileSegment::new(
                pair[0],
                pair[1],
                (along(k), along(k + 1)),
                ProfileStretch::Outside,
            )
        })
        .collect();
    let mut all = Vec::with_capacity(outside.len() + 64);
    if open[0] {
        // A start is an end seen in a mirror.
        let seen: Vec<ProfileSegment> =
            outside.iter().rev().map(ProfileSegment::mirrored).collect();
        all.extend(ending(&seen, thick).iter().rev().map(ProfileSegment::mirrored));
    }
    all.extend_from_slice(&outside);
    if open[1] {
        all.extend(ending(&outside, thick));
    }
    if let Some(first) = all.first_mut() {
        first.first = true;
    }
    if let Some(last) = all.last_mut() {
        last.last = true;
    }
    all
}

/// From the end of `outside` over the rim, down the inside of the cloth and over the stuffing
/// to the axis.
fn ending(outside: &[ProfileSegment], thick: f32) -> Vec<ProfileSegment> {
    let edge = outside.len() - 1;
    let corner = outside[edge].to;
    let (way, out) = (corner.way, [corner.way[1], -corner.way[0]]);
    let mut row: Vec<ProfileSegment> = Vec::new();
    let mut from = corner;
    for i in 1..=RIM_PIECES {
        let part = |i: usize| i as f32 / RIM_PIECES as f32;
        let (sin, cos) = (PI * part(i)).sin_cos();
        let (up, over) = (RIM_HEIGHT * thick * sin, 0.5 * thick * (cos - 1.0));
        let at = [0, 1].map(|j| corner.at[j] + up * way[j] + over * out[j]);
        let turned = unit([0, 1].map(|j| RIM_HEIGHT * cos * way[j] - 0.5 * sin * out[j]));
        let to = Corner { at: [at[0].max(0.02), at[1]], way: turned };
        let along = (part(i - 1), part(i));
        row.push(ProfileSegment::new(from, to, along, ProfileStretch::Rim { start: false }));
        from = to;
    }
    let deep = (STUFFED_DEPTH * corner.at[0]).max(1.5 * thick);
    let mut gone = 0.0;
    for segment in outside[outside.len() / 2..].iter().rev() {
        let c = segment.from;
        let at = [c.at[0] - thick * c.way[1], c.at[1] + thick * c.way[0]];
        // Where the cloth is too narrow it has no inside to be seen.
        if at[0] < 0.3 * thick || gone > deep {
            break;
        }
        gone += long(minus(c.at, segment.to.at));
        let to = Corner { at, way: c.way.map(|w| -w) };
        let along = (segment.along.1, segment.along.0);
        row.push(ProfileSegment::new(from, to, along, ProfileStretch::Within));
        from = to;
    }
    let (wide, floor) = (from.at[0].max(1e-3), from.at[1]);
    // Only an end that faces away from the rest shows stuffing as a dome.
    let dome = if way[1] > 0.2 { DOME * wide } else { 0.0 };
    for i in 1..=DOME_PIECES {
        let part = 1.0 - i as f32 / DOME_PIECES as f32;
        let at = [wide * part, floor + dome * (1.0 - part * part)];
        let to = Corner { at, way: unit([-wide, 2.0 * dome * part]) };
        if i == 1 {
            // A corner: its way is half that of the cloth and half that of the stuffing.
            let on = unit(minus(to.at, from.at));
            from.way = unit([from.way[0] + on[0], from.way[1] + on[1]]);
            if let Some(cloth) = row.last_mut() {
                cloth.to.way = from.way;
            }
        }
        row.push(ProfileSegment::new(from, to, (0.0, 0.0), ProfileStretch::Stuffing));
        from = to;
    }
    row
}

impl ProfileSegment {
    fn new(from: Corner, to: Corner, along: (f32, f32), stretch: ProfileStretch) -> Self {
        let length = long(minus(to.at, from.at)).max(1e-4);
        let bend = (from.way[0] * to.way[1] - from.way[1] * to.way[0]) / length;
        let per_mm = (along.1 - along.0) / length;
        Self { from, to, along, stretch, per_mm, bend, first: false, last: false }
    }

    /// As a mirror in the plane z = 0 shows it, run the other way.
    fn mirrored(&self) -> Self {
        let corner = |c: Corner| Corner { at: [c.at[0], -c.at[1]], way: [-c.way[0], c.way[1]] };
        let stretch = match self.stretch {
            ProfileStretch::Rim { start } => ProfileStretch::Rim { start: !start },
            other => other,
        };
        Self {
            from: corner(self.to),
            to: corner(self.from),
            along: (self.along.1, self.along.0),
            per_mm: -self.per_mm,
            stretch,
            ..*self
        }
    }
}

/// A curve through `nodes`, [`PIECES`] from one to the next: cubic in the round number, with
/// the tangents that the chords on either side suggest, square to the axis where it meets it.
fn smoothed(nodes: &[[f32; 2]]) -> Vec<Corner> {
    let last = nodes.len() - 1;
    let chord = |k: usize| minus(nodes[k + 1], nodes[k]);
    let way = |k: usize| -> [f32; 2] {
        let before = (k > 0).then(|| chord(k - 1));
        let after = (k < last).then(|| chord(k));
        match (before, after) {
            (None, _) if nodes[k][0] <= 1e-3 => [1.0, 0.0],
            (_, None) if nodes[k][0] <= 1e-3 => [-1.0, 0.0],
            // Each chord counts by the length of the other: the circle through all three.
            (Some(a), Some(b)) => {
                let (la, lb) = (long(a).max(1e-6), long(b).max(1e-6));
                unit([0, 1].map(|j| a[j] / la * lb + b[j] / lb * la))
            }
            (Some(c), None) | (None, Some(c)) => unit(c),
            (None, None) => [0.0, 1.0],
        }
    };
    let mut corners = Vec::with_capacity(last * PIECES + 1);
    for k in 0..last {
        let (p, q, length) = (nodes[k], nodes[k + 1], long(chord(k)));
        let (s, t) = (way(k).map(|w| w * length), way(k + 1).map(|w| w * length));
        for i in 0..PIECES + usize::from(k + 1 == last) {
            let u = i as f32 / PIECES as f32;
            let (u2, u3) = (u * u, u * u * u);
            let on =
                [2.0 * u3 - 3.0 * u2 + 1.0, u3 - 2.0 * u2 + u, 3.0 * u2 - 2.0 * u3, u3 - u2];
            let d =
                [6.0 * (u2 - u), 3.0 * u2 - 4.0 * u + 1.0, 6.0 * (u - u2), 3.0 * u2 - 2.0 * u];
            let sum = |w: [f32; 4]| {
                [0, 1].map(|j| w[0] * p[j] + w[1] * s[j] + w[2] * q[j] + w[3] * t[j])
            };
            let at = sum(on);
            corners.push(Corner { at: [at[0].max(0.0), at[1]], way: unit(sum(d)) });
        }
    }
    corners
}

impl ProfileSegment {
    /// Square of the distance of a place.
    pub(super) fn far_sq(&self, at: [f32; 2]) -> f32 {
        let (chord, from) = (minus(self.to.at, self.from.at), minus(at, self.from.at));
        let square = (chord[0] * chord[0] + chord[1] * chord[1]).max(1e-12);
        let part = ((from[0] * chord[0] + from[1] * chord[1]) / square).clamp(0.0, 1.0);
        let off = [from[0] - part * chord[0], from[1] - part * chord[1]];
        off[0] * off[0] + off[1] * off[1]
    }

    /// Whether a place lies outside of it.
    pub(super) fn is_outside(&self, at: [f32; 2]) -> bool {
        let middle = [0, 1].map(|j| 0.5 * (self.from.at[j] + self.to.at[j]));
        let way = [0, 1].map(|j| self.from.way[j] + self.to.way[j]);
        (at[0] - middle[0]) * way[1] - (at[1] - middle[1]) * way[0] >= 0.0
    }
}
