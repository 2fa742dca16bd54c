//! The project level: how much a maker must be able to do.

use serde::Serialize;

use super::SizedPlan;
use crate::piece::cloth::Working;
use crate::plan::counts::Start;
use crate::project::Project;
use crate::project::toy::attachment::Attachment;
use crate::words::write::Writer;

/// A level and why.
#[derive(Debug, Clone, PartialEq, Eq, Serialize)]
pub struct Level {
    /// Easy, intermediate or complex, in the words of the sheet: the Craft Yarn Council's
    /// names for the levels of projects.
    pub name: String,
    /// What there is to it beyond plain rounds with increases and decreases, in a few words.
    pub why: String,
}

/// The level of a project. The names are the Craft Yarn Council's, which says what each
/// means in words only and counts simple things in the round as easy; the rule here is
/// Plumpline's own, no source: whatever is worked in the round is easy at least; three small
/// skills beyond that, or a hard one, make it intermediate; two hard ones and three small ones
/// make it complex.
pub(super) fn level(project: &Project, plans: &[SizedPlan<'_>], writer: &Writer<'_>) -> Level {
    let any = |of: &dyn Fn(&SizedPlan<'_>) -> bool| plans.iter().any(of);
    let uneven = |sized: &SizedPlan<'_>| {
        let simple = |r: &&crate::plan::Round| !r.placement.is_single_repeat();
        4 * sized.plan.rounds.iter().filter(simple).count() > sized.plan.rounds.len()
    };
    let small = [
        (any(&|s| s.plan.estimate.yarn.len() > 1), "skill_colors"),
        (project.pieces.len() > 1, "skill_pieces"),
        (any(&|s| s.piece.kinds.iter().any(|k| k.kind != Default::default())), "skill_taller"),
        (any(&|s| !s.piece.loops.is_empty()), "skill_loops"),
        (any(&|s| s.piece.working != Working::Spiral), "skill_joined"),
        (any(&|s| matches!(s.plan.start, Start::Oval(_))), "skill_oval"),
        (any(&|s| matches!(s.plan.start, Start::Chain(_))), "skill_chain"),
    ];
    let held = |a: &Attachment| matches!(a, Attachment::Wire(_) | Attachment::Joint(_));
    let hard = [
        (any(&uneven), "skill_uneven"),
        (project.toy.attachments.iter().any(held), "skill_wire"),
    ];
    let asked = |skills: &[(bool, &str)]| -> Vec<String> {
        skills.iter().filter(|(asks, _)| *asks).map(|(_, name)| writer.say(name)).collect()
    };
    let (small, hard) = (asked(&small), asked(&hard));
    let name = match (hard.len(), small.len()) {
        (0, 0..=2) => "level_easy",
        (2.., 3..) => "level_complex",
        _ => "level_intermediate",
    };
    let why = match [small, hard].concat() {
        none if none.is_empty() => writer.say("skill_plain"),
        asked => writer.listed(&asked),
    };
    Level { name: writer.say(name), why }
}
