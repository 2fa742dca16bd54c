//! Bend: what each round's increases or decreases do to the curvature of the cloth.

use crate::piece::outline::Rz;

/// The bend of one round.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Bend {
    /// Stitches gained (negative: lost) against the round below.
    pub gained: i32,
    /// Turn of the forecast's side at the round's top edge, degrees; positive where it
    /// turns towards the axis. 0 at the last round.
    pub turn_deg: f64,
    /// What the round does to flat cloth.
    pub word: BendWord,
}

/// What a round does, against the gain at which cloth lies flat.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum BendWord {
    /// More than flat: the edge is too long and waves.
    Ruffle,
    /// As many as lie flat, within three quarters of a stitch.
    Flat,
    /// Fewer: the cloth cups.
    Cup,
    /// None: a tube.
    Straight,
    /// Stitches lost: the cloth draws in.
    DrawIn,
}

impl BendWord {
    /// What a round does that gains `gained` stitches where `flat` lie flat, or rounds that do
    /// so on average.
    pub fn of(gained: f64, flat: f64) -> Self {
        match gained {
            g if g > flat + FLAT_BAND => Self::Ruffle,
            g if g >= flat - FLAT_BAND => Self::Flat,
            g if g > 0.0 => Self::Cup,
            g if g < 0.0 => Self::DrawIn,
            _ => Self::Straight,
        }
    }

    /// The word on screen.
    pub fn text(self) -> &'static str {
        match self {
            Self::Ruffle => "ruffle",
            Self::Flat => "flat",
            Self::Cup => "cup",
            Self::Straight => "straight",
            Self::DrawIn => "draw in",
        }
    }
}

/// Half-width of the band around 2πh/w in which a round counts as flat, stitches.
pub const FLAT_BAND: f64 = 0.75;

/// The bend of every round. `start` is the foundation chain, 0 for a magic ring, whose first
/// round is gained out of nothing; `flat` is [`crate::piece::gauge::Gauge::flat_increase`].
pub fn bends(start: u32, counts: &[u32], forecast: &[Rz], flat: f64) -> Vec<Bend> {
    let mut below = start;
    counts
        .iter()
        .enumerate()
        .map(|(i, &count)| {
            let gained = count as i32 - below as i32;
            below = count;
            let word = BendWord::of(f64::from(gained), flat);
            Bend { gained, turn_deg: turn(forecast, i + 1), word }
        })
        .collect()
}

/// Turn of the polyline at node `k`, degrees.
fn turn(nodes: &[Rz], k: usize) -> f64 {
    let (Some(before), Some(at), Some(after)) =
        (nodes.get(k - 1), nodes.get(k), nodes.get(k + 1))
    else {
        return 0.0;
    };
    let (ar, az) = (at.r - before.r, at.z - before.z);
    let (br, bz) = (after.r - at.r, after.z - at.z);
    (ar * bz - az * br).atan2(ar * br + az * bz).to_degrees()
}
