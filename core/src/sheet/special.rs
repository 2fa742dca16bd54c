//! Special stitches: how the less usual things that a pattern asks for are done.
//!
//! Common practice, no source; the words are Plumpline's own.

use serde::Serialize;

use super::SizedPlan;
use crate::piece::cloth::{Kind, Loop, Working};
use crate::plan::counts::Start;
use crate::plan::placement::Stitch;
use crate::words::StitchKind;
use crate::words::write::Fill::Words;
use crate::words::write::{Writer, capitalised};

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
    let any = |of: &dyn Fn(&SizedPlan<'_>) -> bool| plans.iter().any(of);
    let works = |kind: Kind, stitch: Stitch| {
        any(&|s| {
            s.plan.rounds.iter().any(|r| r.kind == kind && r.placement.number_of(stitch) > 0)
        })
    };
    let loops = |only: Loop| any(&|s| s.piece.loops.values().any(|l| *l == only));
    let mut list = Vec::new();
    let mut put = |asked: bool, name: &str, how: String| {
        if asked {
            list.push(Special { name: capitalised(name), how });
        }
    };
    let say = |name: &str| writer.say(name);
    put(any(&|s| s.plan.start == Start::Ring), lexicon.ring.brief(1), say("ring_how"));
    put(
        any(&|s| matches!(s.plan.start, Start::Chain(_))),
        &say("chain_ring"),
        say("chain_ring_how"),
    );
    put(
        any(&|s| matches!(s.plan.start, Start::Oval(_))),
        &say("both_sides"),
        say("both_sides_how"),
    );
    let back_decrease = any(&|s| {
        (1..).zip(&s.plan.rounds).any(|(number, round)| {
            s.piece.loops.get(&number) == Some(&Loop::Back)
                && round.placement.number_of(Stitch::Decrease) > 0
        })
    });
    let decrease = match back_decrease {
        true => format!("{} {}", say("decrease_how"), say("decrease_back")),
        false => say("decrease_how"),
    };
    let named = lexicon.decrease.short.as_deref().unwrap_or(&lexicon.decrease.one);
    put(works(Kind::Single, Stitch::Decrease), named, decrease);
    for (kind, stitch, how) in [
        (Kind::HalfDouble, StitchKind::HalfDouble, "half_double_how"),
        (Kind::Double, StitchKind::Double, "double_how"),
    ] {
        let any_of = works(kind, Stitch::Plain) || works(kind, Stitch::Increase);
        put(any_of, lexicon.kind(stitch).brief(1), say(how));
    }
    for (kind, stitch, how) in [
        (Kind::HalfDouble, StitchKind::HalfDouble, "decrease_half_double_how"),
        (Kind::Double, StitchKind::Double, "decrease_double_how"),
    ] {
        let brief = lexicon.kind(stitch).brief(2);
        let together = writer.say_of("decrease_tall", &[("kind", Words(brief))]);
        let name = format!("{named} ({together})");
        put(works(kind, Stitch::Decrease), &name, say(how));
    }
    put(loops(Loop::Back), lexicon.back_loop.brief(1), say("back_how"));
    put(loops(Loop::Front), lexicon.front_loop.brief(1), say("front_how"));
    let joined = |counts| any(&|s| s.piece.working == Working::Joined { chain_counts: counts });
    put(joined(false), &say("joining"), say("joining_first_how"));
    put(joined(true), &say("joining"), say("joining_top_how"));
    let changes = any(&|s| s.plan.estimate.yarn.len() > 1);
    let in_joins = any(&|s| s.piece.working != Working::Spiral);
    let how = match (in_joins, works(Kind::HalfDouble, Stitch::Plain)) {
        (true, _) => "changing_joined_how",
        (false, true) => "changing_tall_how",
        (false, false) => "changing_how",
    };
    put(changes, &say("changing"), say(how));
    list
}
