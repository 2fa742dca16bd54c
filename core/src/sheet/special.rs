//! Special stitches: how the less usual things that a pattern asks for are done.
//!
//! Common practice, no source; the words are Plumpline's own.

use serde::Serialize;

use super::SizedPlan;
use crate::piece::cloth::{Kind, Loop, Working};
use crate::plan::counts::Start;
use crate::plan::placement::Stitch;
use crate::words::StitchKind;
use crate::words::write::Writer;

/// Something to know how to do.
#[derive(Debug, Clone, PartialEq, Eq, Serialize)]
pub struct Special {
    /// What it is called.
    pub name: String,
    /// How it is done.
    pub how: String,
}

/// What `plans` ask for, in the order in which it is met.
pub(super) fn specials(plans: &[SizedPlan<'_>], writer: &Writer<'_>) -> Vec<Special> {
    let lexicon = writer.lexicon();
    let single = lexicon.kind(StitchKind::Single).brief(1).to_owned();
    let any = |of: &dyn Fn(&SizedPlan<'_>) -> bool| plans.iter().any(of);
    let works = |kind: Kind, stitch: Stitch| {
        any(&|s| {
            s.plan.rounds.iter().any(|r| r.kind == kind && r.placement.number_of(stitch) > 0)
        })
    };
    let loops = |only: Loop| any(&|s| s.piece.loops.values().any(|l| *l == only));
    let mut list = Vec::new();
    let mut put = |asked: bool, name: &str, how: &str| {
        if asked {
            list.push(Special { name: name.into(), how: how.replace("{sc}", &single) });
        }
    };
    put(
        any(&|s| s.plan.start == Start::Ring),
        lexicon.ring.brief(1),
        "Wrap the yarn once around two fingers and draw a loop through; ch 1 to hold it. Work \
         round 1 over both strands, then pull the tail until the middle closes.",
    );
    put(
        any(&|s| matches!(s.plan.start, Start::Chain(_))),
        "Chain ring",
        "Make the chain loosely, see that it lies untwisted, and join it with a slip stitch in \
         the first chain. Round 1 goes into one loop of each chain.",
    );
    put(
        any(&|s| matches!(s.plan.start, Start::Oval(_))),
        "Both sides of a chain",
        "Work along the top loops of the chain, turn the end with the stitches named, and come \
         back along the loops left on its other side.",
    );
    put(
        works(Kind::Single, Stitch::Decrease),
        lexicon.decrease.brief(1),
        "Put the hook through the front loop of each of the next 2 stitches, draw one loop \
         through both, then finish as one {sc}. Worked so it shows least.",
    );
    for (kind, stitch) in
        [(Kind::HalfDouble, StitchKind::HalfDouble), (Kind::Double, StitchKind::Double)]
    {
        let name = lexicon.kind(stitch).brief(1);
        let rest = if kind == Kind::HalfDouble {
            "yarn over, draw through all 3 loops."
        } else {
            "then yarn over and draw through 2 loops, twice."
        };
        let how = format!("Yarn over, hook into the stitch, draw up a loop; {rest}");
        put(works(kind, Stitch::Plain), name, &how);
    }
    put(
        loops(Loop::Back),
        lexicon.back_loop.brief(1),
        "Work that round under the far loop of each stitch alone; the near loops stay as a line.",
    );
    put(
        loops(Loop::Front),
        lexicon.front_loop.brief(1),
        "Work that round under the near loop of each stitch alone.",
    );
    let joined = |counts| any(&|s| s.piece.working == Working::Joined { chain_counts: counts });
    put(
        joined(false),
        "Joining a round",
        "Slip stitch into the first stitch, not into the chain; then chain up for the next \
         round.",
    );
    put(
        joined(true),
        "Joining a round",
        "Slip stitch into the top of the chain that began it; then chain up for the next round.",
    );
    put(
        any(&|s| s.plan.estimate.yarn.len() > 1),
        "Changing yarn",
        "Leave the last stitch of the old yarn with 2 loops on the hook and finish it with the \
         new one. Tie the ends inside.",
    );
    list
}
