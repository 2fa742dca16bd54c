//! How a part lies that is pressed flat: every cross-section an ellipse, as long around as the
//! circle was.

use std::f32::consts::PI;

use super::body::Relief;
use super::space::{Turned, V3, mix, unit};

/// Half of its thickness at the widest, in thicknesses of the cloth: two layers, one on the
/// other, that do not quite lie close. By eye, no source.
const HALF_THICK: f32 = 1.3;
/// Thinner and thicker than so many radii nothing is pressed.
const LEAST: f32 = 0.16;
const MOST: f32 = 0.75;
/// How much higher the relief of a pressed part may be reckoned to be kept as high as it is.
const MOST_LIFT: f32 = 1.7;

/// Places around at which it is known how long the ellipse is up to there.
const PLACES: usize = 64;

/// By how much places of a part are scaled along its own axes for it to be round again.
#[derive(Debug, Clone, Copy, PartialEq)]
pub(super) struct Pressed {
    by: V3,
    /// Share of the way around at even turns of the circle.
    way: [f32; PLACES + 1],
}

impl Pressed {
    /// Not at all.
    pub(super) const NOT: Self = Self { by: [1.0; 3], way: [0.0; PLACES + 1] };

    /// As `relief` lies without stuffing.
    pub(super) fn of(relief: &Relief) -> Self {
        let (_, _, widest) = relief.extent();
        let thin = (HALF_THICK * relief.thick / widest.max(1e-3)).clamp(LEAST, MOST);
        let mut pressed =
            Self { by: [1.0 / half_width(thin), 1.0 / thin, 1.0], way: [0.0; PLACES + 1] };
        let mut gone = 0.0;
        for i in 0..PLACES {
            gone += pressed.longer((i as f32 + 0.5) / PLACES as f32) / PLACES as f32;
            pressed.way[i + 1] = gone;
        }
        pressed.way = pressed.way.map(|way| way / gone.max(1e-6));
        pressed
    }

    pub(super) fn is_none(&self) -> bool {
        self.by == Self::NOT.by
    }

    /// How much longer the ellipse is than the circle, at a turn of the circle counted from
    /// the y axis.
    fn longer(&self, turn: f32) -> f32 {
        let (sin, cos) = (2.0 * PI * turn).sin_cos();
        (cos / self.by[0]).hypot(sin / self.by[1])
    }

    /// The turn by length of cloth at a turn of the circle, and how much longer it is there:
    /// pressing moves stitches, it does not stretch them.
    pub(super) fn turn(&self, turn: f32) -> (f32, f32) {
        if self.is_none() {
            return (turn, 1.0);
        }
        let at = turn.clamp(0.0, 1.0) * PLACES as f32;
        let i = (at as usize).min(PLACES - 1);
        (mix(self.way[i], self.way[i + 1], at - i as f32), self.longer(turn))
    }

    /// A place or a direction where the part is round again.
    pub(super) fn round(&self, own: V3) -> V3 {
        [own[0] * self.by[0], own[1] * self.by[1], own[2]]
    }

    pub(super) fn rounds(&self, own: &Turned) -> Turned {
        own.map(|way| self.round(way))
    }

    /// How much farther places come to lie from one another, at most.
    pub(super) fn most(&self) -> f32 {
        self.by[1].max(1.0)
    }

    /// How much farther a place comes to lie off a surface whose normal is `out`.
    pub(super) fn lift(&self, out: V3) -> f32 {
        if self.is_none() {
            return 1.0;
        }
        let [x, y, z] = self.round(out);
        (x * x + y * y + z * z).sqrt().min(MOST_LIFT)
    }

    /// About how much nearer to it a place `own`, outside, lies than where it is round.
    pub(super) fn nearer(&self, own: V3) -> f32 {
        if self.is_none() {
            return 1.0;
        }
        let [x, y, _] = self.round(own);
        (own[0].hypot(own[1]) / x.hypot(y).max(1e-6)).min(1.0)
    }

    /// A place where the part is round, and the normal of the surface there, as they lie.
    pub(super) fn back(&self, place: V3, out: V3) -> (V3, V3) {
        if self.is_none() {
            return (place, out);
        }
        ([place[0] / self.by[0], place[1] / self.by[1], place[2]], unit(self.round(out)))
    }

    /// How much wider it is than it was.
    pub(super) fn wider(&self) -> f32 {
        1.0 / self.by[0]
    }
}

/// Half the width of the ellipse whose other half axis is `thin` and that is as long around as
/// the unit circle.
fn half_width(thin: f32) -> f32 {
    // Ramanujan's first approximation, Modular equations and approximations to π, 1914.
    let long = |a: f32| PI * (3.0 * (a + thin) - ((3.0 * a + thin) * (a + 3.0 * thin)).sqrt());
    let (mut low, mut high) = (1.0, 1.7);
    for _ in 0..20 {
        let middle = 0.5 * (low + high);
        if long(middle) < 2.0 * PI { low = middle } else { high = middle }
    }
    0.5 * (low + high)
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn what_is_pressed_stays_as_long_around() {
        assert!((half_width(1.0) - 1.0).abs() < 1e-4);
        // Half an ellipse of half axes 1.4322 and 0.3 is π long: by numbers, 20,000 chords.
        for thin in [0.16_f32, 0.3, 0.6] {
            let wide = half_width(thin);
            let place = |i: i32| {
                let (sin, cos) = (std::f32::consts::TAU * i as f32 / 20_000.0).sin_cos();
                [f64::from(wide * cos), f64::from(thin * sin)]
            };
            let long: f64 = (0..20_000)
                .map(|i| {
                    let (a, b) = (place(i), place(i + 1));
                    (a[0] - b[0]).hypot(a[1] - b[1])
                })
                .sum();
            let off = long / std::f64::consts::TAU - 1.0;
            assert!(off.abs() < 0.01, "{thin}: {off}");
        }
    }
}
