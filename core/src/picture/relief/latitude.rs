//! A round of the cloth laid flat, to be measured.

use super::body::Relief;
use super::cloth::{Care, LayerAsk};
use super::curve::NearCurve;

impl Relief {
    /// A latitude of the cloth laid flat: from where round `round` (counted from 1) begins
    /// once around it, `up` of its height (0 at its lower edge, 1 at its upper), at `places`
    /// even places. Height of the relief there, mm, 0 at the crests; and the round and stitch
    /// that lie uppermost, counted from 1. Empty for a round there is not.
    pub fn latitude(&self, round: u32, up: f32, places: u32) -> Vec<(f32, u32, u32)> {
        if round == 0 || round > self.fabric.rounds() {
            return Vec::new();
        }
        let care = Care::new(0.0, self.stitch);
        let ask = LayerAsk { ahead: 0.0, lift: 1.0, alone: false };
        (0..places)
            .filter_map(|i| {
                let on = (i as f32 + 0.5) / places as f32;
                let (along, turn) = self.fabric.place(round - 1, up, on);
                let ([r, z], _) = self.curve.at(along);
                let near = NearCurve { along, ..self.curve.near(r, z) };
                let layers = self.layers(&near, (turn, self.girth(r)), r, ask)?;
                let top = layers.top([0.0; 2], care)?;
                Some((layers.high([0.0; 2], care), top.round + 1, top.stitch + 1))
            })
            .collect()
    }
}
