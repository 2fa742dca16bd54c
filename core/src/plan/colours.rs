//! Changes of yarn inside a round, and the strands that are carried behind.

use crate::piece::{Piece, Yarn};
use crate::plan::placement::{Placement, Stitch};
use crate::plan::warning::{Warning, WarningKind, named};
use crate::sentence::Sentence;

/// Longest strand that may lie loose behind the cloth, stitches: a longer one catches fingers
/// and pulls. Common practice, no source.
pub const LONGEST_FLOAT: u32 = 4;

/// Steps of a round that are worked one after another in one yarn: plain stitches, increases
/// and decreases, each one.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub struct ColourRun {
    /// How many.
    pub steps: u32,
    /// The yarn, an index into the project's.
    pub yarn: usize,
}

/// A strand that is carried behind stitches of other yarns, in one round.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub struct Float {
    /// The round, counted from 1.
    pub round: u32,
    /// The yarn that is carried.
    pub yarn: usize,
    /// Over how many stitches, at its longest.
    pub stitches: u32,
}

/// The yarns of round `number` of `piece`, worked as `placement`, in order; none where it is
/// all in one. Both stitches of an increase are worked in the yarn of the first. Round 1 is
/// worked in one yarn.
pub fn colour_runs(piece: &Piece, number: u32, placement: &Placement) -> Vec<ColourRun> {
    let Some(painted) = piece.paint.round(number).filter(|_| number > 1) else {
        return Vec::new();
    };
    let (own, count) = (piece.yarn_of_round(number), placement.produced());
    let mut runs: Vec<ColourRun> = Vec::new();
    let mut made = 0;
    for stitch in placement.stitches() {
        let yarn = painted.yarn(made, count).unwrap_or(own);
        made += stitch.produces();
        match runs.last_mut() {
            Some(run) if run.yarn == yarn => run.steps += 1,
            _ => runs.push(ColourRun { steps: 1, yarn }),
        }
    }
    match runs[..] {
        [only] if only.yarn == own => Vec::new(),
        _ => runs,
    }
}

/// The steps of a round with the yarn of each, in working order.
pub fn coloured_steps<'a>(
    placement: &'a Placement,
    runs: &'a [ColourRun],
    own: usize,
) -> impl Iterator<Item = (Stitch, usize)> + 'a {
    let yarns = runs.iter().flat_map(|run| std::iter::repeat_n(run.yarn, run.steps as usize));
    placement.stitches().zip(yarns.chain(std::iter::repeat(own)))
}

/// The yarn of each stitch that a round leaves, in working order.
pub fn stitch_yarns<'a>(
    placement: &'a Placement,
    runs: &'a [ColourRun],
    own: usize,
) -> impl Iterator<Item = usize> + 'a {
    let steps = coloured_steps(placement, runs, own);
    steps.flat_map(|(stitch, yarn)| std::iter::repeat_n(yarn, stitch.produces() as usize))
}

/// The strands of round `number` that lie loose over more stitches than
/// [`LONGEST_FLOAT`]: behind what comes between two runs of their yarn. The longest of each
/// yarn.
pub(super) fn floats(number: u32, placement: &Placement, runs: &[ColourRun]) -> Vec<Float> {
    let mut found: Vec<Float> = Vec::new();
    // Where each yarn was last used: stitches made by then.
    let mut used: Vec<(usize, u32)> = Vec::new();
    let mut made = 0;
    let mut steps = placement.stitches();
    for run in runs {
        let wide: u32 = steps.by_ref().take(run.steps as usize).map(Stitch::produces).sum();
        let last = used.iter().position(|(yarn, _)| *yarn == run.yarn);
        if let Some(at) = last {
            let stitches = made - used[at].1;
            let longest = found.iter_mut().find(|float| float.yarn == run.yarn);
            match longest {
                Some(float) => float.stitches = float.stitches.max(stitches),
                None if stitches > LONGEST_FLOAT => {
                    found.push(Float { round: number, yarn: run.yarn, stitches });
                }
                None => {}
            }
            used[at].1 = made + wide;
        } else {
            used.push((run.yarn, made + wide));
        }
        made += wide;
    }
    found
}

/// What is said of strands that lie loose too long, once a yarn.
pub(super) fn long_floats(floats: &[Float]) -> Vec<Warning> {
    let mut told: Vec<Warning> = Vec::new();
    let mut yarns: Vec<usize> = floats.iter().map(|float| float.yarn).collect();
    yarns.sort_unstable();
    yarns.dedup();
    for yarn in yarns {
        let of = || floats.iter().filter(move |float| float.yarn == yarn);
        let (Some(first), Some(last)) = (of().next(), of().next_back()) else { continue };
        let longest = of().map(|float| float.stitches).max().unwrap_or(0);
        told.push(Warning {
            kind: WarningKind::Float,
            rounds: vec![first.round, last.round],
            what: Sentence::note(
                "float",
                [
                    ("rounds", named(first.round, last.round).into()),
                    ("yarn", Sentence::from(Yarn::letter(yarn)).into()),
                    ("longest", longest.into()),
                    ("every", LONGEST_FLOAT.into()),
                ],
            ),
        });
    }
    told
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn strands_are_as_long_as_what_they_pass_behind() {
        let plain = Placement::plain(20);
        let run = |steps, yarn| ColourRun { steps, yarn };
        let runs = [run(4, 1), run(9, 0), run(2, 1), run(5, 0)];
        let told = floats(7, &plain, &runs);
        assert_eq!(told, [Float { round: 7, yarn: 1, stitches: 9 }]);
        assert!(floats(7, &plain, &[run(16, 0), run(4, 1)]).is_empty());
    }

    #[test]
    fn an_increase_is_in_one_yarn_and_runs_come_to_the_round() {
        let mut piece = crate::piece::starter::Starter::Ball
            .piece(&crate::piece::starter::Starter::Ball.usual(), crate::Gauge::default())
            .expect("a ball");
        let once = [Stitch::Plain, Stitch::Increase];
        let work = Placement::of_stitches(&once.repeat(6)).expect("stitches");
        // Stitches 2 and 3 are one increase: painting the first of them paints it.
        piece.paint.put(3, 18, (2, 2), Some(1));
        let runs = colour_runs(&piece, 3, &work);
        let told: Vec<(u32, usize)> = runs.iter().map(|r| (r.steps, r.yarn)).collect();
        assert_eq!(told, [(1, 0), (1, 1), (10, 0)]);
        piece.paint.put(3, 18, (2, 2), None);
        piece.paint.put(3, 18, (3, 3), Some(1));
        assert!(colour_runs(&piece, 3, &work).is_empty(), "the second of an increase alone");
    }
}
