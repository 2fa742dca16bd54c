//! What is sought further where the first search leaves no pattern near enough.
//!
//! The first search trusts the form near the ideal shape. Where patterns stray from that
//! shape, cloth goes slack or a corner bulges, and the form misjudges them. So here a pattern
//! is bettered step by step on its true forecast: each pass asks the form near the best one
//! which few changes promise most, and tries those. How near is enough goes by the nearest
//! counts that are found, so free ones are gone down a little first.

use std::collections::HashSet;

use super::answer::{CountsAnswer, best, judged};
use super::candidate::{Candidate, Near};
use super::descent;
use super::family::{Family, is_pattern, trouble};
use super::model::RunChange;
use super::repeats::Prices;
use super::search::Sought;

/// Prices at which is sought, one after the other while nothing is near enough, squared
/// stitches a new number of repeats.
const UNITS: [f64; 3] = [1.5e-3, 4e-4, 1e-4];

/// What a round costs that changes where whole patterns are sought anew, squared stitches: from
/// anywhere to close by, where the form can be trusted.
const CHANGES: [f64; 3] = [0.0, 3e-4, 1.5e-3];

/// Changes forecast in each pass, the most promising first.
const TRIED: usize = 20;

/// Most passes at one price.
const PASSES: usize = 12;

/// Rounds forecast in finding how near free counts come.
const FREE_ROUNDS: usize = 1_200;

/// Rounds forecast in all, and rounds of all passes: what may be waited for when an edit ends.
const ROUNDS_FORECAST: usize = 4_000;
const ROUNDS_PASSED: usize = 800;

/// Rounds of the longest piece that is sought further: in a longer one a stitch is little, and a
/// forecast takes long.
const LONGEST: usize = 160;

/// Longest run of rounds that change together.
const RUN: usize = 12;

/// Most stitches by which they do.
const BY: i32 = 6;

/// Cost that a change must save, squared stitches.
const LEAST_GAIN: f64 = 1e-5;

/// Adds further patterns of each number of rounds that was `sought` to `answers` while none is
/// near enough. Returns how many were forecast.
pub(super) fn seek(sought: &[Sought<'_>], answers: &mut Vec<CountsAnswer>) -> usize {
    let mut forecasts = 0;
    if sought.iter().any(|one| one.candidate.widths.len() > LONGEST) {
        return forecasts;
    }
    let closest =
        answers.iter().min_by(|a, b| a.likely_rms_stitches.total_cmp(&b.likely_rms_stitches));
    let Some(closest) = closest.cloned() else { return 0 };
    let one = &sought[closest.of];
    let free = descent::descend(&one.candidate, closest.stuffed, FREE_ROUNDS, &mut forecasts);
    answers.push(judged(one, closest.of, free));
    let mut passes = 0;
    for (of, one) in sought.iter().enumerate() {
        let rounds = one.candidate.widths.len();
        for unit in UNITS {
            for _ in 0..PASSES {
                let best = best(sought, answers);
                let spent =
                    forecasts * rounds > ROUNDS_FORECAST || passes * rounds > ROUNDS_PASSED;
                if spent || answers.iter().any(|a| a.is_near(best)) {
                    return forecasts;
                }
                let patterns = answers.iter().filter(|a| a.of == of && a.is_pattern);
                let from = patterns.min_by(|a, b| a.cost(unit).total_cmp(&b.cost(unit)));
                let Some(from) = from.cloned() else { break };
                passes += 1;
                let better = pass(one, &from, unit, &mut forecasts);
                let Some(better) = better else { break };
                answers.push(better);
            }
        }
    }
    forecasts
}

/// The first of the most promising changes to `from` that is cheaper at `unit` in truth.
fn pass(
    sought: &Sought<'_>,
    from: &CountsAnswer,
    unit: f64,
    forecasts: &mut usize,
) -> Option<CountsAnswer> {
    let Sought { candidate, family, .. } = sought;
    let mut near = candidate.near_stuffed(&from.stuffed, &family.rounds);
    promising(candidate, family, &mut near, from, unit).into_iter().find_map(|counts| {
        *forecasts += 1;
        let one = judged(sought, from.of, candidate.stuff(counts, &from.stuffed.shape));
        let settled = one.stuffed.shape.settled.is_settled();
        let better = one.cost(unit) < from.cost(unit) - LEAST_GAIN;
        (settled && one.is_pattern && better).then_some(one)
    })
}

/// Patterns near `from` that promise most at `unit`: whole ones sought anew, and those in which
/// one run of rounds has some stitches more or fewer.
fn promising(
    candidate: &Candidate<'_>,
    family: &Family,
    near: &mut Near,
    from: &CountsAnswer,
    unit: f64,
) -> Vec<Vec<u32>> {
    let rounds = &family.rounds;
    let old = &from.stuffed.counts;
    let mut all: Vec<Vec<u32>> = Vec::new();
    for change in CHANGES {
        let found = family.changed_best(near, unit, change);
        all.extend(found.map(|(counts, _)| counts));
        if !rounds.is_mirrored() {
            let prices = Prices { change, ..Prices::at(unit, family.together) };
            let found = near.best(&candidate.rounds, &candidate.steps, prices);
            all.extend(found.map(|(counts, _)| counts));
        }
    }
    let runs = near.model.runs();
    let stays = RunChange { run: 0..0, by: 0 };
    let most = runs.predicted(&stays) + from.stuffed.slack + unit * from.trouble;
    let mut ranked: Vec<(f64, Vec<u32>)> = Vec::new();
    for change in changes(rounds.searched()) {
        let misfit = runs.predicted(&change);
        if misfit > most {
            continue; // Whatever it saves of slack and trouble, it does not pay.
        }
        let step = change.run.clone().map(|i| (i, change.by));
        let Some(counts) = descent::moved(&old[..rounds.searched()], step) else { continue };
        let counts = rounds.unfold(&counts);
        if rounds.allows_all(&counts) && is_pattern(rounds, &counts) {
            let cost = misfit
                + near.slack_of(&counts)
                + unit * trouble(rounds, &counts, family.together);
            ranked.push((cost, counts));
        }
    }
    ranked.sort_by(|a, b| a.0.total_cmp(&b.0));
    let mut seen = HashSet::from([old.clone()]);
    let all = all.into_iter().chain(ranked.into_iter().map(|(_, counts)| counts));
    all.filter(|counts| seen.insert(counts.clone())).take(TRIED).collect()
}

/// Every few stitches more or fewer in a run of `rounds` rounds.
fn changes(rounds: usize) -> impl Iterator<Item = RunChange> {
    let runs = (0..rounds).flat_map(move |first| {
        (first + 1..=rounds.min(first + RUN)).map(move |last| first..last)
    });
    runs.flat_map(|run| {
        let by = (-BY..=BY).filter(|&by| by != 0);
        by.map(move |by| RunChange { run: run.clone(), by })
    })
}
