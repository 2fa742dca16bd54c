//! The project level: how much a maker must be able to do.

use serde::Serialize;

use super::SizedPlan;
use crate::piece::cloth::Working;
use crate::plan::counts::Start;
use crate::project::Project;

/// A level and why.
#[derive(Debug, Clone, PartialEq, Eq, Serialize)]
pub struct Level {
    /// `Basic`, `Easy`, `Intermediate` or `Complex`: the Craft Yarn Council's names for the
    /// levels of projects.
    pub name: &'static str,
    /// What there is to it beyond plain rounds with increases and decreases, in a few words.
    pub why: String,
}

/// The level of a project. The names are the Craft Yarn Council's, which says what each
/// means in words only; the rule here is Plumpline's own, no source: a thing worked in one
/// yarn, one kind of stitch and a spiral from a ring is basic; each further skill counts one;
/// one or two make it easy, three or four intermediate, more complex.
pub(super) fn level(project: &Project, plans: &[SizedPlan<'_>]) -> Level {
    let any = |of: &dyn Fn(&SizedPlan<'_>) -> bool| plans.iter().any(of);
    let uneven = |sized: &SizedPlan<'_>| {
        let simple = |r: &&crate::plan::Round| !r.placement.is_single_repeat();
        4 * sized.plan.rounds.iter().filter(simple).count() > sized.plan.rounds.len()
    };
    let skills = [
        (any(&|s| s.plan.estimate.yarn.len() > 1), "colour changes"),
        (project.pieces.len() > 1, "several pieces"),
        (
            any(&|s| s.piece.kinds.iter().any(|k| k.kind != Default::default())),
            "taller stitches",
        ),
        (any(&|s| !s.piece.loops.is_empty()), "rounds in one loop"),
        (any(&|s| s.piece.working != Working::Spiral), "joined rounds"),
        (any(&|s| matches!(s.plan.start, Start::Oval(_))), "an oval start"),
        (any(&|s| matches!(s.plan.start, Start::Chain(_))), "a chain start"),
        (any(&uneven), "rounds of more than one repeat"),
    ];
    let asked: Vec<&str> = skills.iter().filter(|(asks, _)| *asks).map(|(_, s)| *s).collect();
    let name = match asked.len() {
        0 => "Basic",
        1..=2 => "Easy",
        3..=4 => "Intermediate",
        _ => "Complex",
    };
    let why = match asked.split_last() {
        None => "single crochet in a spiral, increases and decreases".to_owned(),
        Some((last, [])) => (*last).to_owned(),
        Some((last, others)) => format!("{} and {last}", others.join(", ")),
    };
    Level { name, why }
}
