//! The axis of symmetry of a shape in a picture.

use crate::mask::{Field, Mask};

/// Tilt that is looked for, either way, degrees; a little more than is promised.
const MOST_TILT: f64 = 36.0;

/// A line about which both sides of a shape are alike.
#[derive(Debug, Clone, Copy, PartialEq)]
pub(crate) struct Axis {
    /// A place on it, pixels.
    pub(crate) at: (f64, f64),
    /// How far its lower end leans to the left, radians: 0 for an upright one.
    pub(crate) tilt: f64,
    /// Share of the edge that has its mirror image on the edge, 0 … 1.
    pub(crate) alike: f64,
}

impl Axis {
    /// The direction along it, downwards in the picture.
    pub(crate) fn along(self) -> (f64, f64) {
        (-self.tilt.sin(), self.tilt.cos())
    }

    /// The direction across it, to the right in the picture.
    pub(crate) fn across(self) -> (f64, f64) {
        (self.tilt.cos(), self.tilt.sin())
    }

    /// The place in the picture that lies so far along it and so far across, pixels.
    pub(crate) fn place(self, along: f64, across: f64) -> (f64, f64) {
        let ((ax, ay), (cx, cy)) = (self.along(), self.across());
        (self.at.0 + along * ax + across * cx, self.at.1 + along * ay + across * cy)
    }

    /// How far along it and across it a place in the picture lies, pixels.
    pub(crate) fn measure(self, (x, y): (f64, f64)) -> (f64, f64) {
        let (dx, dy) = (x - self.at.0, y - self.at.1);
        let ((ax, ay), (cx, cy)) = (self.along(), self.across());
        (dx * ax + dy * ay, dx * cx + dy * cy)
    }
}

/// The axis of `mask`, whose distances are `field`; `None` for a shape of no extent.
///
/// Every candidate is judged by how much of the edge has its mirror image on the edge, so
/// that a handle on one side does not draw the axis to itself. Where several are as good, as
/// in a ball, the most upright is taken.
pub(crate) fn find(mask: &Mask, field: &Field) -> Option<Axis> {
    let rim = mask.rim(600);
    if rim.len() < 8 {
        return None;
    }
    let count = rim.len() as f64;
    let middle = rim.iter().fold((0.0, 0.0), |m, p| (m.0 + p.0 / count, m.1 + p.1 / count));
    let size = rim.iter().map(|p| (p.0 - middle.0).hypot(p.1 - middle.1)).fold(0.0, f64::max);
    if size < 2.0 {
        return None;
    }
    let scored = |tilt: f64, off: f64, near: f64, every: usize| {
        let axis = moved(middle, tilt, off);
        let alike = |p: &(f64, f64)| {
            let (along, across) = axis.measure(*p);
            let (x, y) = axis.place(along, -across);
            // The rim's pixels lie half a pixel within the edge.
            let off = (field.at(x, y) - 0.5) / near;
            // Beyond that it is less than a hundredth of a percent, as most are.
            if off.abs() > 3.1 { 0.0 } else { (-off * off).exp() }
        };
        let some = rim.iter().step_by(every);
        let count = some.len() as f64;
        some.map(alike).sum::<f64>() / count
    };
    let score = |tilt: f64, off: f64, near: f64| scored(tilt, off, near, 1);
    // Coarsely everywhere, then ever finer about the best.
    let near = 0.03 * size;
    let mut best = (f64::MIN, 0.0, 0.0);
    for i in -18_i32..=18 {
        let tilt = (f64::from(i) * MOST_TILT / 18.0).to_radians();
        for j in -20_i32..=20 {
            let off = f64::from(j) * 0.02 * size;
            // A tenth of the tilt's share of its bound is what a better likeness must beat.
            let found = scored(tilt, off, near, 3) - 0.02 * (f64::from(i) / 18.0).powi(2);
            if found > best.0 {
                best = (found, tilt, off);
            }
        }
    }
    let (mut tilt, mut off) = (best.1, best.2);
    let (mut turn, mut step) = (1.0_f64.to_radians(), 0.01 * size);
    for near in [0.02, 0.012, 0.008, 0.005].map(|share: f64| (share * size).max(1.0)) {
        let mut now = score(tilt, off, near);
        for _ in 0..24 {
            // What lies further off was judged worse before.
            if (tilt - best.1).abs() > 3.0_f64.to_radians() {
                break;
            }
            let tries = [(turn, 0.0), (-turn, 0.0), (0.0, step), (0.0, -step)];
            let tried = tries.map(|(t, o)| (score(tilt + t, off + o, near), tilt + t, off + o));
            let better = tried.into_iter().max_by(|a, b| a.0.total_cmp(&b.0));
            match better {
                // Less is noise, and would turn a ball.
                Some(found) if found.0 > now + 2e-4 => (now, tilt, off) = found,
                _ => {
                    turn *= 0.5;
                    step *= 0.5;
                }
            }
            if turn < 1e-4 {
                break;
            }
        }
        (turn, step) = (turn.max(0.2_f64.to_radians()), step.max(0.002 * size));
    }
    let alike = score(tilt, off, 0.02 * size);
    Some(Axis { alike, ..moved(middle, tilt, off) })
}

fn moved(middle: (f64, f64), tilt: f64, off: f64) -> Axis {
    let axis = Axis { at: middle, tilt, alike: 0.0 };
    Axis { at: axis.place(0.0, off), ..axis }
}

impl Axis {
    /// Whether it leans as far as any that is looked for: there may be a better one beyond.
    pub(crate) fn leans_to_the_bound(self) -> bool {
        self.tilt.abs() > (MOST_TILT - 3.0).to_radians()
    }
}
