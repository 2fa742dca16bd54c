//! What a ray shows, and what several of them come to.

use super::view::Seen;

/// What one ray shows.
#[derive(Debug, Clone, Copy, Default)]
pub(super) struct RaySample {
    /// Premultiplied RGBA, 0 to 255.
    pub(super) colour: [f32; 4],
    pub(super) of: Seen,
    /// How far towards the eye, mm.
    pub(super) depth: f32,
}

impl RaySample {
    pub(super) fn new([r, g, b]: [f32; 3], cover: f32, of: Seen, depth: f32) -> Self {
        Self { colour: [r * cover, g * cover, b * cover, 255.0 * cover], of, depth }
    }

    /// The mean of several; what is seen is that of the first.
    pub(super) fn mean<const N: usize>(of: &[Self; N]) -> Self {
        let sum = |c: usize| of.iter().map(|s| s.colour[c]).sum::<f32>();
        Self { colour: [0, 1, 2, 3].map(|c| sum(c) / N as f32), ..of[0] }
    }

    /// The most by which one of their channels differs.
    pub(super) fn spread<const N: usize>(of: &[Self; N]) -> f32 {
        let one = |c: usize| {
            let (low, high) = of.iter().fold((f32::MAX, f32::MIN), |(low, high), s| {
                (low.min(s.colour[c]), high.max(s.colour[c]))
            });
            high - low
        };
        [0, 1, 2, 3].map(one).into_iter().fold(0.0, f32::max)
    }

    pub(super) fn pixel(&self) -> [u8; 4] {
        self.colour.map(|channel| (channel + 0.5).clamp(0.0, 255.0) as u8)
    }

    /// What is seen there: nothing where less than half of it is covered.
    pub(super) fn seen(&self) -> Seen {
        if self.colour[3] >= 127.0 { self.of } else { Seen::default() }
    }
}
