//! The stuffed surface: the forecast's profile turned about the axis, or for an oval drawn
//! along a stadium.

use std::f32::consts::{PI, TAU};

use super::vector::{V3, unit};
use crate::piece::outline::Rz;

/// A place of a surface, mm, and the unit normal there.
pub(super) type SurfacePoint = (V3, V3);

/// The surface of a body. A place on it is named by how far along the profile it lies, in
/// rounds from the start, and by the part of a full turn around it.
#[derive(Debug, Clone)]
pub(super) struct Surface {
    /// Profile nodes (r, z), z counted from the middle, mm.
    nodes: Vec<(f32, f32)>,
    /// Unit normal (r, z) at each node.
    normals: Vec<(f32, f32)>,
    /// How much light reaches each node past its neighbours, 0 to 1.
    openness: Vec<f32>,
    /// Straight part of an oval's side, mm.
    straight: f32,
    /// −1 where the work runs the other way round: left-handed.
    hand: f32,
}

impl Surface {
    pub(super) fn new(forecast: &[Rz], straight_mm: f64, left_handed: bool) -> Self {
        let (low, high) = forecast
            .iter()
            .fold((f64::INFINITY, f64::NEG_INFINITY), |(l, h), n| (l.min(n.z), h.max(n.z)));
        let middle = 0.5 * (low + high);
        let nodes: Vec<(f32, f32)> =
            forecast.iter().map(|n| (n.r as f32, (n.z - middle) as f32)).collect();
        let steps: Vec<(f32, f32)> = nodes.windows(2).map(|p| step(p[0], p[1])).collect();
        let (normals, openness) = (0..nodes.len()).map(|k| at_node(&steps, k)).unzip();
        let mut surface = Self {
            nodes,
            normals,
            openness,
            straight: straight_mm as f32,
            hand: if left_handed { -1.0 } else { 1.0 },
        };
        surface.spread_shade();
        surface
    }

    /// A crevice shades its neighbours too.
    fn spread_shade(&mut self) {
        let was = self.openness.clone();
        for (k, open) in self.openness.iter_mut().enumerate() {
            let beside = |j: Option<usize>| j.and_then(|j| was.get(j)).copied().unwrap_or(1.0);
            let (before, after) = (beside(k.checked_sub(1)), beside(Some(k + 1)));
            *open = open.min(0.4 * *open + 0.3 * (before + after));
        }
    }

    pub(super) fn nodes(&self) -> &[(f32, f32)] {
        &self.nodes
    }

    pub(super) fn straight(&self) -> f32 {
        self.straight
    }

    /// Half the height, mm.
    pub(super) fn half_height(&self) -> f32 {
        self.nodes.iter().fold(0.0, |most, n| most.max(n.1))
    }

    fn between<T>(&self, list: &[T], along: f32, mix: impl Fn(&T, &T, f32) -> T) -> T {
        let last = list.len() - 1;
        let along = along.clamp(0.0, last as f32);
        let k = (along as usize).min(last - 1);
        mix(&list[k], &list[k + 1], along - k as f32)
    }

    /// Circumference at `along`, mm.
    pub(super) fn around(&self, along: f32) -> f32 {
        TAU * self.profile(along).0 + 2.0 * self.straight
    }

    /// Radius and height of the profile at `along` rounds from the start, mm.
    pub(super) fn profile(&self, along: f32) -> (f32, f32) {
        self.between(&self.nodes, along, |a, b, u| {
            (a.0 + u * (b.0 - a.0), a.1 + u * (b.1 - a.1))
        })
    }

    /// How much light reaches the surface at `along` past what stands around it, 0 to 1.
    pub(super) fn openness(&self, along: f32) -> f32 {
        self.between(&self.openness, along, |a, b, u| a + u * (b - a))
    }

    /// The place `along` rounds from the start and `turn` of the way around, and the unit
    /// normal there.
    pub(super) fn at(&self, along: f32, turn: f32) -> SurfacePoint {
        let (r, z) = self.profile(along);
        let (foot, angle) = self.stadium(r, turn.rem_euclid(1.0));
        let (out_x, out_y) = self.out(angle);
        let place = [r.mul_add(out_x, -self.hand * foot), r * out_y, z];
        (place, self.tilted(along, (out_x, out_y)))
    }

    /// The unit normal there.
    pub(super) fn normal(&self, along: f32, turn: f32) -> V3 {
        let (_, angle) = self.stadium(self.profile(along).0, turn.rem_euclid(1.0));
        self.tilted(along, self.out(angle))
    }

    /// Away from the axis at `angle`. Rounds begin at the back, −Y, and run to the right as
    /// the viewer sees the front.
    fn out(&self, angle: f32) -> (f32, f32) {
        let (sin, cos) = angle.sin_cos();
        (-self.hand * sin, -cos)
    }

    /// The normal at `along` where `out` is away from the axis.
    fn tilted(&self, along: f32, out: (f32, f32)) -> V3 {
        let (nr, nz) = self.between(&self.normals, along, |a, b, u| {
            (a.0 + u * (b.0 - a.0), a.1 + u * (b.1 - a.1))
        });
        unit([nr * out.0, nr * out.1, nz])
    }

    /// Where the half round or the side that holds `turn` has its centre along the straight
    /// part, and the angle there. Two half rounds, each before its straight side.
    fn stadium(&self, r: f32, turn: f32) -> (f32, f32) {
        if self.straight <= 0.0 {
            return (0.0, TAU * turn);
        }
        let (arc, half) = (PI * r, 0.5 * self.straight);
        let mut run = turn * 2.0 * (arc + self.straight);
        let second = run >= arc + self.straight;
        if second {
            run -= arc + self.straight;
        }
        let (sign, from) = if second { (-1.0, PI) } else { (1.0, 0.0) };
        if run < arc {
            (sign * half, from + run / r.max(1e-6))
        } else {
            (sign * (half - (run - arc)), from + PI)
        }
    }
}

/// From one node to the next, at length 1.
fn step(a: (f32, f32), b: (f32, f32)) -> (f32, f32) {
    let (dr, dz) = (b.0 - a.0, b.1 - a.1);
    let length = dr.hypot(dz).max(1e-6);
    (dr / length, dz / length)
}

/// Normal and openness at node `k`. Where the profile turns towards the outside it makes a
/// crevice, which less light reaches.
fn at_node(steps: &[(f32, f32)], k: usize) -> ((f32, f32), f32) {
    let before = steps[k.saturating_sub(1).min(steps.len() - 1)];
    let after = steps[k.min(steps.len() - 1)];
    let (nr, nz) = (before.1 + after.1, -(before.0 + after.0));
    let length = nr.hypot(nz);
    // Folded right back: either side's normal will do.
    let normal = if length > 1e-3 { (nr / length, nz / length) } else { (after.1, -after.0) };
    let turned = (before.0 * after.1 - before.1 * after.0)
        .atan2(before.0 * after.0 + before.1 * after.1);
    (normal, 1.0 - (-0.55 * turned).clamp(0.0, 0.5))
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn an_oval_goes_once_around_its_stadium() {
        let profile = [Rz::new(0.0, 0.0), Rz::new(10.0, 5.0), Rz::new(0.0, 10.0)];
        let surface = Surface::new(&profile, 20.0, false);
        let steps = 400;
        let mut length = 0.0;
        let mut at = surface.at(1.0, 0.0).0;
        for i in 1..=steps {
            let next = surface.at(1.0, i as f32 / steps as f32).0;
            length += ((next[0] - at[0]).powi(2) + (next[1] - at[1]).powi(2)).sqrt();
            assert!(next[0].abs() <= 20.001 && next[1].abs() <= 10.001, "{next:?}");
            at = next;
        }
        assert!((length / surface.around(1.0) - 1.0).abs() < 1e-3, "{length}");
    }

    #[test]
    fn a_crevice_is_darker_than_a_belly() {
        let neck = [(0.0, 0.0), (10.0, 5.0), (4.0, 10.0), (10.0, 15.0), (0.0, 20.0)];
        let profile: Vec<Rz> = neck.iter().map(|&(r, z)| Rz::new(r, z)).collect();
        let surface = Surface::new(&profile, 0.0, false);
        assert!(surface.openness(2.0) < surface.openness(3.0));
        assert!(surface.openness(2.0) < 0.8);
    }
}
