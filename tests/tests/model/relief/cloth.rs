//! The stitches on the cloth: as many columns as stitches, shaping where placement has it.

use std::collections::BTreeSet;

use plumpline_core::picture::relief::Relief;
use plumpline_core::placement::Stitch;

use super::samples;

/// Places of the crests of a latitude, as parts of it: of stretches that rise above their
/// surroundings by `least` mm.
fn crests(heights: &[f32], least: f32) -> Vec<f32> {
    let n = heights.len();
    // From the deepest place, so that no crest is cut in two.
    let lowest = (0..n).min_by(|&a, &b| heights[a].total_cmp(&heights[b])).unwrap_or(0);
    let (mut crests, mut top, mut valley) = (Vec::new(), None::<(f32, usize)>, heights[lowest]);
    for i in 0..=n {
        let at = (lowest + i) % n;
        let high = heights[at];
        match top {
            Some((best, place)) => {
                if high > best {
                    top = Some((high, at));
                } else if high < best - least {
                    crests.push(place as f32 / n as f32);
                    (top, valley) = (None, high);
                }
            }
            None => {
                valley = valley.min(high);
                if high > valley + least {
                    top = Some((high, at));
                }
            }
        }
    }
    crests.sort_by(f32::total_cmp);
    crests
}

#[test]
fn every_round_has_as_many_columns_as_stitches() {
    for (name, piece, plan) in samples() {
        let relief = Relief::new(&piece, &plan);
        let stitch = plan.stitch_mm.width as f32;
        for (number, round) in (1..).zip(&plan.rounds) {
            // In the upper half the two legs of a stitch stand apart.
            let latitude = relief.latitude(number, 0.62, 96 * round.count);
            let heights: Vec<f32> = latitude.iter().map(|l| l.0).collect();
            let legs = crests(&heights, 0.045 * stitch).len();
            // The first round of a spiral begins lower than it ends, with its heads in the round
            // above: there the legs of a stitch may lie too close to be told apart.
            let lost = if number == 1 { 2 } else { 0 };
            let wanted = 2 * round.count as usize;
            assert!((wanted - lost..=wanted).contains(&legs), "{name}, round {number}: {legs}");
            let stitches: BTreeSet<u32> =
                latitude.iter().filter(|l| l.1 == number).map(|l| l.2).collect();
            assert!(stitches.into_iter().eq(1..=round.count), "{name}, round {number}");
        }
    }
}

/// The first and the last crest of every stitch on a latitude, turns from where the round
/// begins; none of a stitch whose legs are hidden there.
fn legs(relief: &Relief, round: u32, count: u32, up: f32, least: f32) -> Vec<Option<[f32; 2]>> {
    let places = 400 * count;
    let latitude = relief.latitude(round, up, places);
    let heights: Vec<f32> = latitude.iter().map(|l| l.0).collect();
    let mut found = vec![None; count as usize];
    for crest in crests(&heights, least) {
        let (_, own, stitch) = latitude[(crest * places as f32) as usize];
        if own == round {
            // The first stitch may begin before its round does.
            let turn = if stitch == 1 && crest > 0.5 { crest - 1.0 } else { crest };
            let legs: &mut Option<[f32; 2]> = &mut found[stitch as usize - 1];
            *legs = Some(legs.map_or([turn; 2], |l| [l[0].min(turn), l[1].max(turn)]));
        }
    }
    found
}

#[test]
fn shaping_is_where_placement_has_it() {
    let (mut increases, mut decreases) = (0, 0);
    for (name, piece, plan) in samples() {
        let relief = Relief::new(&piece, &plan);
        for (number, round) in (1..).zip(&plan.rounds).skip(2) {
            let count = round.count as usize;
            let below = plan.rounds[number as usize - 2].count;
            if count < 12 || below < 12 {
                // About a pole everything is drawn together.
                continue;
            }
            let least = 0.02 * plan.stitch_mm.width as f32;
            let feet = legs(&relief, number, round.count, 0.34, least);
            let one = 1.0 / round.count as f32;
            let worked: Vec<Stitch> = round
                .placement
                .stitches()
                .flat_map(|s| std::iter::repeat_n(s, s.produces() as usize))
                .collect();
            // From one foot come the two stitches of an increase; a decrease has a leg in each
            // of two stitches below.
            let middle = |i: usize| feet[i].map(|l| 0.5 * (l[0] + l[1]));
            for at in 0..count {
                let before = worked[..at].iter().rev().take_while(|&&s| s == Stitch::Increase);
                let first = worked[at] == Stitch::Increase && before.count() % 2 == 0;
                let Some(legs) = feet[at] else { continue };
                let astride = legs[1] - legs[0] > 0.46 * one;
                let is_decrease = worked[at] == Stitch::Decrease;
                assert_eq!(astride, is_decrease, "{name}, round {number}, stitch {}", at + 1);
                decreases += usize::from(is_decrease);
                if at + 1 < count
                    && let (Some(own), Some(next)) = (middle(at), middle(at + 1))
                {
                    let close = next - own < 0.86 * one;
                    assert_eq!(close, first, "{name}, round {number}, stitch {}", at + 1);
                    increases += usize::from(first);
                }
            }
        }
    }
    assert!(increases > 50 && decreases > 50, "{increases} increases, {decreases} decreases");
}
