//! Where the stitches of a round stand: along a circle, or along a stadium for an oval.

use std::f32::consts::{PI, TAU};

/// The line a round is drawn on.
#[derive(Debug, Clone, Copy, PartialEq)]
pub(super) struct Track {
    /// Radius of the circle, or of the half rounds of a stadium, mm.
    pub(super) radius: f32,
    /// Length of a stadium's straight side, mm; 0 for a circle.
    pub(super) straight: f32,
    /// Part of the round's stitches that its two half rounds take.
    pub(super) bent: f32,
}

/// A place on a track and the way out from there.
#[derive(Debug, Clone, Copy, PartialEq)]
pub(super) struct TrackPlace {
    pub(super) at: [f32; 2],
    pub(super) out: [f32; 2],
}

impl TrackPlace {
    /// This place moved `along` the track, clockwise, and `out`, mm.
    pub(super) fn moved(self, along: f32, out: f32) -> [f32; 2] {
        let [ox, oy] = self.out;
        [self.at[0] - oy * along + ox * out, self.at[1] + ox * along + oy * out]
    }
}

impl Track {
    /// Length of the whole line, mm.
    pub(super) fn length(&self) -> f32 {
        TAU * self.radius + 2.0 * self.straight
    }

    /// The place `turn` of a turn on, clockwise: from the top of a circle, from the start of
    /// the right half round of a stadium.
    pub(super) fn spot(&self, turn: f32) -> TrackPlace {
        if self.straight <= 0.0 {
            return bend([0.0, 0.0], self.radius, TAU * turn);
        }
        let half = 0.5 * self.straight;
        let turn = turn.rem_euclid(1.0);
        let (second, within) = (turn >= 0.5, 2.0 * turn.rem_euclid(0.5));
        let spot = if within < self.bent {
            bend([half, 0.0], self.radius, PI * within / self.bent)
        } else {
            let run = (within - self.bent) / (1.0 - self.bent).max(1e-6);
            TrackPlace { at: [half - run * self.straight, self.radius], out: [0.0, 1.0] }
        };
        let turned = |p: [f32; 2]| if second { [-p[0], -p[1]] } else { p };
        TrackPlace { at: turned(spot.at), out: turned(spot.out) }
    }

    /// The line as points, `from` to `to` of a turn.
    pub(super) fn points(&self, from: f32, to: f32) -> Vec<[f32; 2]> {
        let steps = ((to - from).abs() * self.length() / 1.2).ceil().clamp(2.0, 720.0) as u32;
        (0..=steps)
            .map(|i| self.spot(from + (to - from) * i as f32 / steps as f32).at)
            .collect()
    }
}

fn bend(middle: [f32; 2], radius: f32, angle: f32) -> TrackPlace {
    let (sin, cos) = angle.sin_cos();
    let out = [sin, -cos];
    TrackPlace { at: [middle[0] + radius * sin, middle[1] - radius * cos], out }
}

#[cfg(test)]
mod tests {
    use super::*;

    fn near(a: [f32; 2], b: [f32; 2]) -> bool {
        (a[0] - b[0]).hypot(a[1] - b[1]) < 1e-3
    }

    #[test]
    fn a_circle_runs_clockwise_from_its_top() {
        let circle = Track { radius: 10.0, straight: 0.0, bent: 1.0 };
        assert!(near(circle.spot(0.0).at, [0.0, -10.0]));
        assert!(near(circle.spot(0.25).at, [10.0, 0.0]));
        assert!(near(circle.spot(0.25).moved(2.0, 1.0), [11.0, 2.0]));
    }

    #[test]
    fn a_stadium_goes_round_its_right_end_first() {
        let oval = Track { radius: 5.0, straight: 20.0, bent: 0.5 };
        assert!(near(oval.spot(0.0).at, [10.0, -5.0]));
        assert!(near(oval.spot(0.125).at, [15.0, 0.0]));
        assert!(near(oval.spot(0.25).at, [10.0, 5.0]));
        assert!(near(oval.spot(0.375).at, [0.0, 5.0]));
        assert!(near(oval.spot(0.625).at, [-15.0, 0.0]));
    }
}
