//! Whether rounds read as a designer writes them, judged from the finished plan alone: its
//! stitches, its forecast, its warnings.

use std::f64::consts::TAU;

use plumpline_core::placement::Stitch;
use plumpline_core::warning::WarningKind;
use plumpline_core::{Piece, Plan};

/// A body this wide has no room for a lone increase: it shows as a bump.
const BODY: u32 = 24;

/// Rounds so small are shaped singly by anyone.
const SMALL: u32 = 12;

/// Rounds up to this may be doubled.
const MAY_DOUBLE: u32 = 8;

/// Slack that shows, unless it is said.
const SHOWING: f64 = 0.05;

/// Slack that nobody accepts, even where it is said.
const RIPPLES: f64 = 0.15;

/// Rings below a close that its gathering pleats anyway.
const PLEATED: usize = 3;

/// How one plan reads.
#[derive(Debug, Clone, Default)]
pub struct Reading {
    /// Rounds that shape, the ring apart.
    pub shaping: usize,
    /// Those of them that are so many full repeats of one or two shapings each.
    pub full: usize,
    /// The numbers of repeats used, growing.
    pub numbers: Vec<usize>,
    /// Rounds that add more than lies flat.
    pub above_flat: Vec<usize>,
    /// Rounds with a single increase or decrease in a body of 24 or more.
    pub lone: Vec<usize>,
    /// Rings slacker than shows, with no word on them: the round and its slack.
    pub slack: Vec<(usize, f64)>,
    /// Rings slacker than anybody accepts: the round and its slack.
    pub ripples: Vec<(usize, f64)>,
    /// Rounds that a warning calls slack.
    pub flagged: usize,
    /// Where it is drawn shut: whether by full repeats to six or to what it started with.
    pub closes: Option<bool>,
    /// Whether N_k = N_{M+1−k}.
    pub mirrored: bool,
}

/// How often the shortest stretch of `stitches` that repeats all the way round does so.
pub fn repeats(stitches: &[Stitch]) -> usize {
    let n = stitches.len();
    let goes = |k: &usize| {
        let period = n / k;
        n.is_multiple_of(*k) && (period..n).all(|i| stitches[i] == stitches[i - period])
    };
    (1..=n).rev().find(goes).unwrap_or(1)
}

/// The number of full repeats a round is written in, each with one or two shapings; `None`
/// where it is not, and 0 for a plain round.
pub fn written(stitches: &[Stitch]) -> Option<usize> {
    let shaped = stitches.iter().filter(|&&s| s != Stitch::Plain).count();
    if shaped == 0 {
        return Some(0);
    }
    let k = repeats(stitches);
    (k > 1 && (shaped == k || shaped == 2 * k)).then_some(k)
}

impl Reading {
    /// Reads `plan`, which is of `piece`.
    pub fn of(piece: &Piece, plan: &Plan) -> Self {
        let mut reading = Self::default();
        let counts = plan.counts();
        let flat = (TAU * piece.gauge.round_height_mm() / piece.gauge.stitch_width_mm()).ceil();
        let widest = counts.iter().copied().max().unwrap_or(0);
        let mut below = plan.chain;
        for (number, round) in (1..).zip(&plan.rounds) {
            let Some(below) = below.replace(round.count) else { continue };
            let stitches: Vec<Stitch> = round.placement.stitches().collect();
            let shaped = stitches.iter().filter(|&&s| s != Stitch::Plain).count();
            if shaped == 0 {
                continue;
            }
            reading.shaping += 1;
            if let Some(k) = written(&stitches) {
                reading.full += 1;
                reading.numbers.push(k);
            }
            let most = if below <= MAY_DOUBLE { below.max(flat as u32) } else { flat as u32 };
            if round.count > below + most {
                reading.above_flat.push(number);
            }
            if widest >= BODY && round.count >= SMALL && shaped == 1 {
                reading.lone.push(number);
            }
        }
        reading.numbers.sort_unstable();
        reading.numbers.dedup();
        reading.slack(piece, plan, &counts);
        if piece.outline.finishes_closed() {
            let last = &plan.rounds[counts.len() - 1];
            let tip = piece.outline.knots.last().is_some_and(|k| k.corner);
            let full = written(&last.placement.stitches().collect::<Vec<_>>());
            let six = if tip {
                (4..=8).contains(&last.count)
            } else {
                last.count == 6 || last.count == counts[0]
            };
            reading.closes = Some(six && full.is_some());
        }
        let start = if piece.outline.starts_closed() { None } else { plan.chain };
        let all: Vec<u32> = start.into_iter().chain(counts.iter().copied()).collect();
        reading.mirrored = all.iter().eq(all.iter().rev());
        reading
    }

    fn slack(&mut self, piece: &Piece, plan: &Plan, counts: &[u32]) {
        let (width, height) = (piece.gauge.stitch_width_mm(), piece.gauge.round_height_mm());
        let flat = TAU * height / width;
        let said = |round: usize| {
            let spoken = |w: &&plumpline_core::warning::Warning| {
                w.kind == WarningKind::Slack
                    && w.rounds.first().is_some_and(|&f| f as usize <= round)
                    && w.rounds.last().is_some_and(|&l| l as usize >= round)
            };
            plan.warnings.iter().any(|w| spoken(&w))
        };
        let free = if piece.outline.finishes_closed() { PLEATED + 1 } else { 0 };
        // A base is flat from the start pole as long as rounds rise by less than a fifth.
        let mut level = piece.outline.starts_closed();
        for k in 1..=counts.len() {
            let (node, before) = (plan.forecast[k], plan.forecast[k - 1]);
            level &= (node.z - before.z).abs() < 0.2 * node.distance(before);
            self.flagged += usize::from(said(k));
            if k > counts.len().saturating_sub(free) {
                continue;
            }
            let slack = 1.0 - TAU * node.r / (f64::from(counts[k - 1]) * width);
            let bound = if level { SHOWING.max(flat.ceil() / flat - 1.0) } else { SHOWING };
            if slack > RIPPLES {
                self.ripples.push((k, slack));
            } else if slack > bound + 1e-9 && !said(k) {
                self.slack.push((k, slack));
            }
        }
    }

    /// Share of the shaping rounds that are full repeats; 1 where nothing is shaped.
    pub fn share(&self) -> f64 {
        if self.shaping == 0 { 1.0 } else { self.full as f64 / self.shaping as f64 }
    }

    /// What is wrong with it at the default, in words; `mirrored` where the outline is.
    pub fn faults(&self, mirrored: bool) -> Vec<String> {
        let mut faults = Vec::new();
        if self.share() < 0.9 && self.shaping - self.full > 1 {
            faults.push(format!("{} of {} in full repeats", self.full, self.shaping));
        }
        if self.numbers.len() > 4 {
            faults.push(format!("numbers of repeats {:?}", self.numbers));
        }
        if !self.above_flat.is_empty() {
            faults.push(format!("above flat in {:?}", self.above_flat));
        }
        if !self.lone.is_empty() {
            faults.push(format!("a lone shaping in {:?}", self.lone));
        }
        for (rings, word) in [(&self.slack, "slack unsaid"), (&self.ripples, "ripples")] {
            if let Some((round, slack)) = rings.iter().max_by(|a, b| a.1.total_cmp(&b.1)) {
                faults.push(format!("{word}: {:.0} % in {round}", 100.0 * slack));
            }
        }
        if self.closes == Some(false) {
            faults.push("does not close on six by full repeats".to_owned());
        }
        if mirrored && !self.mirrored {
            faults.push("halves differ".to_owned());
        }
        faults
    }
}
