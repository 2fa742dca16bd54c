//! Where a straight line goes through the cloth of one round: a cone, or the flat sides of an
//! oval.

use super::vector::V3;
use crate::piece::outline::Rz;

/// A place where a line goes through.
#[derive(Debug, Clone, Copy, PartialEq)]
pub(super) struct Through {
    /// How far along the line, in lengths of its direction.
    pub(super) s: f64,
    /// Whether the line leaves the body there.
    pub(super) leaving: bool,
    /// How far along the profile, in rounds.
    pub(super) round: f64,
    /// Radius there, mm.
    pub(super) r: f64,
    /// The place, mm.
    pub(super) at: V3,
}

/// One round's cloth.
#[derive(Debug, Clone, Copy)]
pub(super) struct SolidBand {
    /// Its index, from 0.
    pub(super) k: usize,
    /// Its lower edge.
    pub(super) a: Rz,
    /// Its upper edge.
    pub(super) b: Rz,
}

impl SolidBand {
    /// Crossings with the cone about the line x = `centre`, where x is as `kept` asks.
    pub(super) fn cone(
        &self,
        p: V3,
        d: V3,
        centre: f64,
        kept: impl Fn(f64) -> bool,
        found: &mut Vec<Through>,
    ) {
        let (dz, dr) = (self.b.z - self.a.z, self.b.r - self.a.r);
        let x = p[0] - centre;
        let mut put = |s: f64| {
            let at = [d[0].mul_add(s, x), d[1].mul_add(s, p[1]), d[2].mul_add(s, p[2])];
            if kept(at[0] + centre) {
                let r = at[0].hypot(at[1]);
                let out = if r > 1e-12 { (at[0] / r, at[1] / r) } else { (0.0, 0.0) };
                self.put(s, r, [at[0] + centre, at[1], at[2]], out, d, found);
            }
        };
        if dz.abs() < 1e-9 {
            if d[2].abs() > 1e-12 {
                put((self.a.z - p[2]) / d[2]);
            }
            return;
        }
        // x² + y² = (r₀ + k (z − z₀))².
        let slope = dr / dz;
        let (r, dr) = (slope.mul_add(p[2] - self.a.z, self.a.r), slope * d[2]);
        let a = d[0] * d[0] + d[1] * d[1] - dr * dr;
        let b = x * d[0] + p[1] * d[1] - r * dr;
        let c = x * x + p[1] * p[1] - r * r;
        if a.abs() < 1e-12 {
            if b.abs() > 1e-12 {
                put(-0.5 * c / b);
            }
            return;
        }
        let under = b * b - a * c;
        if under < 0.0 {
            return;
        }
        // The form that does not cancel.
        let q = -(b + under.sqrt().copysign(b));
        put(q / a);
        if q.abs() > 1e-12 {
            put(c / q);
        }
    }

    /// Crossings with an oval's straight sides.
    pub(super) fn sides(&self, p: V3, d: V3, half: f64, found: &mut Vec<Through>) {
        let (dz, dr) = (self.b.z - self.a.z, self.b.r - self.a.r);
        let mut put = |s: f64, side: f64| {
            let at = [d[0].mul_add(s, p[0]), d[1].mul_add(s, p[1]), d[2].mul_add(s, p[2])];
            if at[0].abs() <= half && at[1] * side >= 0.0 {
                self.put(s, at[1].abs(), at, (0.0, side), d, found);
            }
        };
        for side in [1.0, -1.0] {
            if dz.abs() < 1e-9 {
                if d[2].abs() > 1e-12 {
                    put((self.a.z - p[2]) / d[2], side);
                }
                continue;
            }
            let slope = dr / dz;
            let speed = side * d[1] - slope * d[2];
            if speed.abs() > 1e-12 {
                let r = slope.mul_add(p[2] - self.a.z, self.a.r);
                put((r - side * p[1]) / speed, side);
            }
        }
    }

    /// Notes the crossing at `s`, if it lies on this band.
    fn put(&self, s: f64, r: f64, at: V3, out: (f64, f64), d: V3, found: &mut Vec<Through>) {
        let (dz, dr) = (self.b.z - self.a.z, self.b.r - self.a.r);
        let long = dz.hypot(dr);
        if !s.is_finite() || long < 1e-9 {
            return;
        }
        let u = ((r - self.a.r) * dr + (at[2] - self.a.z) * dz) / (long * long);
        // The other half of the double cone has its radius turned over.
        let on_it = (lerp(self.a.r, self.b.r, u) - r).abs() < 1e-6 * (1.0 + r);
        if !on_it || !(-1e-9..=1.0 + 1e-9).contains(&u) {
            return;
        }
        let outward = dz * (out.0 * d[0] + out.1 * d[1]) - dr * d[2];
        let round = self.k as f64 + u.clamp(0.0, 1.0);
        found.push(Through { s, leaving: outward > 0.0, round, r, at });
    }
}

/// The number `u` of the way from `a` to `b`.
pub(super) fn lerp(a: f64, b: f64, u: f64) -> f64 {
    u.mul_add(b - a, a)
}
