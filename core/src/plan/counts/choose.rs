//! The answer that a piece's simplicity asks for.

use std::collections::BTreeMap;

use super::answer::CountsAnswer;
use super::answers::Front;
use super::candidate::Wish;
use super::effort::Effort;
use super::family;
use super::holds::{Holds, skin_of};
use super::likely;
use super::misfit::NodeMisfit;
use super::rules::{self, Start};
use super::shape::SettledShape;
use crate::piece::Piece;
use crate::piece::outline::Profile;
use crate::plan::forecast::fit::{Fit, Trail};
use crate::plan::forecast::settle::{Settled, stuffed};
use crate::plan::forecast::{Skin, pressure_for_skin};
use crate::plan::skin::RestSkin;

/// The counts chosen for a piece and the forecast they were judged by.
#[derive(Debug, Clone)]
pub struct Chosen {
    /// How the piece begins.
    pub start: Start,
    /// Stitches of each round.
    pub counts: Vec<u32>,
    /// Stitches the closed-form skin would have, per round.
    pub ideal: Vec<f64>,
    /// The settled forecast.
    pub settled: Settled,
    /// Its distance from the outline.
    pub fit: Fit,
    /// Expected RMS distance over hands, stitch widths.
    pub likely_rms_stitches: f64,
    /// What its pattern costs the maker, in new numbers of repeats.
    pub trouble: f64,
    /// Hoop strain of each round's top edge, stuffed against at rest; negative where the cloth
    /// is slack. `None` at a gathered round.
    pub hoop_strains: Vec<Option<f64>>,
    /// Forecasts solved on the way.
    pub forecasts: usize,
    /// Rules that had to give way.
    pub gave_way: Vec<rules::GaveWay>,
}

impl Chosen {
    /// Most stitches that `round` may gain on `below` and lie flat; as many again in a small
    /// round.
    pub fn most_gain(&self, piece: &Piece, round: u32, below: u32) -> u32 {
        if self.start.side().is_some() {
            return u32::MAX;
        }
        rules::most_gain(rules::flat_of_round(piece, round), below, self.counts[0])
    }
}

/// Whole stitches for `piece`, whose outline is `profile` and whose closed-form skin is
/// `rest`: the answer that its simplicity asks for.
pub fn choose(piece: &Piece, profile: &Profile, rest: &RestSkin, effort: Effort) -> Chosen {
    let trail = Trail::new(profile.places());
    if !piece.pins.is_empty() {
        // Pins at the counts the rounds have anyway change nothing, but that a rule may be kept
        // with them which gave way without.
        let free = Piece { pins: BTreeMap::new(), ..piece.clone() };
        let chosen = chosen(&free, profile, rest, &trail, effort);
        let count = |round: u32| chosen.counts.get(round as usize - 1);
        let has = |(&round, pin): (&u32, &u32)| count(round) == Some(pin);
        if chosen.gave_way.is_empty() && piece.pins.iter().all(has) {
            return chosen;
        }
    }
    chosen(piece, profile, rest, &trail, effort)
}

fn chosen(
    piece: &Piece,
    profile: &Profile,
    rest: &RestSkin,
    trail: &Trail,
    effort: Effort,
) -> Chosen {
    let wish = Wish { piece, profile, rest, trail };
    let (front, answer) = Front::of(&wish, effort).take();
    front.chosen(answer)
}

/// The rounds of `counts`, begun as `start`, in `piece`'s cloth: their skin and what a choice
/// of them would be, were their forecast the outline.
pub(crate) fn worked(piece: &Piece, start: Start, counts: &[u32]) -> (Skin, Chosen) {
    let skin = skin_of(piece, start, counts, &Holds::default());
    let pressure = pressure_for_skin(piece.firmness.0, skin.largest_radius_mm());
    let settled = stuffed(&skin, pressure);
    let width = piece.gauge.stitch_width_mm();
    let trail = Trail::new(skin.closed(&settled.nodes));
    let misfit = NodeMisfit::of(&settled.nodes, &trail, width);
    let shape = SettledShape { skin, pressure, settled, misfit };
    let likely_rms_stitches = likely::likely_rms(&shape, &piece.variation, 0.0, 0.0, width);
    let chosen = Chosen {
        start,
        counts: counts.to_vec(),
        ideal: counts.iter().map(|&n| f64::from(n)).collect(),
        fit: Fit { rms_stitches: 0.0, max_stitches: 0.0, shift_mm: 0.0 },
        likely_rms_stitches,
        trouble: family::trouble_of(start, counts),
        hoop_strains: shape.hoop_strains(),
        settled: shape.settled,
        forecasts: 1,
        gave_way: Vec::new(),
    };
    (shape.skin, chosen)
}

/// Every answer to `piece` worth choosing, from the most faithful to the simplest, each with
/// the simplicity that takes it: none is beaten by another in both likely fit and trouble.
pub fn answers(piece: &Piece, profile: &Profile, rest: &RestSkin) -> Vec<(f64, Chosen)> {
    let trail = Trail::new(profile.places());
    let piece = &Piece { simplicity: Some(0.0), accepted: None, ..piece.clone() };
    let wish = Wish { piece, profile, rest, trail: &trail };
    let mut front = Front::of(&wish, Effort::Full);
    let simplicities = front.simplicities();
    let answers = std::mem::take(&mut front.answers);
    simplicities.into_iter().zip(answers).map(|(s, answer)| (s, front.chosen(answer))).collect()
}

impl Front<'_> {
    /// `answer`, measured along the whole curve.
    fn chosen(&self, answer: CountsAnswer) -> Chosen {
        let answer = self.afresh(answer);
        let sought = &self.sought[answer.of];
        let targets = &sought.candidate.rounds.targets;
        let (fit, likely_rms_stitches) = answer.measured(sought);
        Chosen {
            start: targets.start,
            hoop_strains: answer.stuffed.shape.hoop_strains(),
            counts: answer.stuffed.counts,
            ideal: targets.ideal.clone(),
            settled: answer.stuffed.shape.settled,
            fit,
            likely_rms_stitches,
            trouble: answer.trouble,
            forecasts: self.forecasts + 1,
            gave_way: sought.candidate.gave_way.clone(),
        }
    }
}
