//! When a piece is stuffed.

/// A place between rounds where stuffing goes in.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub struct StuffingStop {
    /// The round after which it goes in, counted from 1.
    pub after: u32,
    /// How.
    pub how: StuffHow,
}

/// How stuffing goes in at a stop.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum StuffHow {
    /// All that is worked so far.
    Filled,
    /// Little by little from here on: what follows is too narrow for a hand.
    AsYouGo,
}

/// Least stitches and least width all around, mm, of an opening that a hand reaches through.
/// Common practice, no source.
const HAND_STITCHES: u32 = 18;
const HAND_MM: f64 = 60.0;
/// Two wide stretches are two chambers where the cloth between them narrows to this share.
const NECK: f64 = 0.85;
/// A narrow stretch of more rounds than this cannot be stuffed from its end.
const REACH: usize = 8;
/// Rounds of a narrow stretch that are worked before the first stuffing goes in.
const BEGUN: usize = 3;

/// The stops, in working order: one for each chamber, at the last round whose opening still
/// lets a hand in (a neck further on has to be passed, so what comes before it is stuffed
/// before it), and one from which a long narrow stretch is stuffed little by little.
pub(super) fn stuffing_stops(counts: &[u32], stitch_width_mm: f64) -> Vec<StuffingStop> {
    let last = counts.len();
    let wide = |n: u32| n >= HAND_STITCHES && f64::from(n) * stitch_width_mm >= HAND_MM;
    let filled = |after: usize| StuffingStop { after: after as u32, how: StuffHow::Filled };
    let as_you_go = |after: usize| {
        let after = after.clamp(1, (last - 1).max(1)) as u32;
        StuffingStop { after, how: StuffHow::AsYouGo }
    };
    if last == 0 {
        return Vec::new();
    }
    let chambers = chambers(counts, wide);
    let Some(&(_, end)) = chambers.last() else {
        // Narrow throughout.
        if last > REACH {
            let most = counts.iter().max().copied().unwrap_or(0);
            let widest = counts.iter().position(|&n| n == most).unwrap_or(0);
            return vec![as_you_go(widest + BEGUN)];
        }
        let narrows = last > 1 && counts[last - 1] < counts[last - 2];
        return vec![filled(if narrows { last - 1 } else { last })];
    };
    let mut stops: Vec<StuffingStop> =
        chambers.iter().map(|&(_, end)| filled(end + 1)).collect();
    if last - (end + 1) > REACH {
        stops.push(as_you_go(end + 1 + BEGUN));
    }
    stops
}

/// The first and the last round (from 0) of every wide stretch, those without a neck between
/// them joined.
fn chambers(counts: &[u32], wide: impl Fn(u32) -> bool) -> Vec<(usize, usize)> {
    let mut found: Vec<(usize, usize)> = Vec::new();
    for (k, &count) in counts.iter().enumerate().filter(|(_, n)| wide(**n)) {
        let widest = |(a, b): (usize, usize)| counts[a..=b].iter().max().copied().unwrap_or(0);
        match found.last_mut() {
            Some(run) if run.1 + 1 == k => run.1 = k,
            Some(run) => {
                let between = counts[run.1 + 1..k].iter().min().copied().unwrap_or(0);
                let rest = counts[k..].iter().take_while(|n| wide(**n)).max().copied();
                let narrower = widest(*run).min(rest.unwrap_or(count));
                if f64::from(between) > NECK * f64::from(narrower) {
                    run.1 = k;
                } else {
                    found.push((k, k));
                }
            }
            None => found.push((k, k)),
        }
    }
    found
}

#[cfg(test)]
mod tests {
    use super::*;

    fn told(counts: &[u32], width: f64) -> Vec<(u32, StuffHow)> {
        stuffing_stops(counts, width).into_iter().map(|stop| (stop.after, stop.how)).collect()
    }

    #[test]
    fn stuffing_comes_while_the_opening_is_wide_enough() {
        use StuffHow::Filled;
        assert_eq!(told(&[6, 12, 18, 24, 18, 12, 6], 4.6), [(5, Filled)]);
        assert_eq!(told(&[6, 12, 18, 24, 30, 24, 18, 12, 6], 2.4), [(5, Filled)]);
        assert_eq!(told(&[6, 10, 12, 12, 6], 4.0), [(4, Filled)]);
        // A round that is a stitch narrower is no neck.
        assert_eq!(told(&[6, 12, 18, 17, 18, 12, 6], 4.6), [(5, Filled)]);
    }

    #[test]
    fn each_chamber_has_a_stop_of_its_own() {
        use StuffHow::Filled;
        assert_eq!(told(&[6, 12, 24, 24, 14, 20, 24], 4.6), [(4, Filled), (7, Filled)]);
    }

    #[test]
    fn a_narrow_limb_is_stuffed_as_it_grows() {
        use StuffHow::{AsYouGo, Filled};
        let limb: Vec<u32> = [6, 12].into_iter().chain([12; 20]).chain([6]).collect();
        assert_eq!(told(&limb, 4.6), [(4, AsYouGo)]);
        let stalk: Vec<u32> = [6, 12, 18, 24, 18].into_iter().chain([12; 15]).collect();
        assert_eq!(told(&stalk, 4.6), [(5, Filled), (8, AsYouGo)]);
    }
}
