//! Where the stitches of a round part, each round standing on the one below.

use crate::plan::placement::Stitch;

/// How much of a shift a stitch passes on to the one above: between shaping, columns lean
/// gradually rather than jump. By eye, no source.
const STIFF: f32 = 0.6;

/// `count` stitches of one width around, from `begin`, in turns.
pub(super) fn even(begin: f32, count: u32) -> Vec<f32> {
    (0..=count).map(|i| begin + i as f32 / count as f32).collect()
}

/// The turn `at` stitches into a round.
pub(super) fn between(seams: &[f32], at: f32) -> f32 {
    let last = seams.len() - 2;
    let i = (at.max(0.0) as usize).min(last);
    seams[i] + (at - i as f32) * (seams[i + 1] - seams[i])
}

/// Where the stitches of a round part: partly straight above what they are worked into,
/// `lean` turns on, partly evenly around, as stuffing pulls them.
pub(super) fn seams(
    lower: &[f32],
    worked: impl Iterator<Item = Stitch>,
    count: u32,
    lean: f32,
) -> Vec<f32> {
    let mut seams = even(lower[0] + lean, count);
    let (mut below, mut above) = (0, 0);
    for stitch in worked {
        let many = stitch.produces();
        for i in 1..=many {
            let part = below as f32 + (stitch.consumes() * i) as f32 / many as f32;
            let straight = between(lower, part) + lean;
            let seam = &mut seams[above + i as usize];
            *seam += STIFF * (straight - *seam);
        }
        below += stitch.consumes() as usize;
        above += many as usize;
    }
    seams
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::piece::Spread;
    use crate::plan::placement::Placer;

    #[test]
    fn stitches_stand_in_order_once_around_above_those_they_are_worked_into() {
        let mut placer = Placer::new(Spread::Turned, 0.17);
        let mut lower = even(0.3, 6);
        for pair in [6_u32, 12, 18, 24, 30, 30, 25, 20, 10, 5].windows(2) {
            let (below, count) = (pair[0], pair[1]);
            let round = placer.place(below, count);
            let upper = seams(&lower, round.stitches(), count, 0.17 / below as f32);
            assert_eq!(upper.len(), count as usize + 1);
            assert!(upper.windows(2).all(|p| p[1] > p[0]), "{upper:?}");
            assert!((upper[count as usize] - upper[0] - 1.0).abs() < 1e-5);
            // No stitch is further from its foot than one and a half of its own widths.
            let mut at = 0;
            let mut foot = 0.0;
            for stitch in round.stitches() {
                let taken = stitch.consumes() as f32;
                let made = stitch.produces() as usize;
                let head = between(&upper, at as f32 + 0.5 * made as f32);
                let shift = (head - between(&lower, foot + 0.5 * taken)) * count as f32;
                assert!(shift.abs() < 1.5, "{below} to {count}: {shift}");
                at += made;
                foot += taken;
            }
            lower = upper;
        }
    }
}
