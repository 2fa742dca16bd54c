//! Companions: pieces that meet at a seam.
//!
//! A [`Seam`] is saved in the project: a round or an open edge of one piece, a round or an
//! open edge of another, whether the two are sewn stitch to stitch or one goes over the other
//! with room to spare, and which of them may give way. [`report()`] says how a seam stands,
//! [`meet()`] makes it hold by the smallest change of the side that may move, and
//! [`match_toy`] makes a piece as large as a finished thing, from one measure of it.

mod edge;
mod keep;
mod meet;
mod report;
mod toy;

use crate::project::Project;

pub use crate::project::seam::{
    At, Edge, Held, MOST_CLEARANCE_MM, MOST_SEAMS, Seam, SeamKind, Side,
};
pub use edge::{EdgeFacts, edge};
pub(crate) use keep::carry;
pub(crate) use meet::meet_as;
pub use meet::{Change, ChangeKind, Met, meet, meet_all};
pub use report::{SeamReport, instructions, report, reports};
pub use toy::{Matched, Spot, ToyMeasure, match_toy, scale_to_match};

/// Adds `seam` to `project`, in place of one that joins the same two edges; its index.
pub fn join(project: &mut Project, seam: Seam) -> usize {
    let same = |s: &Seam| (s.a, s.b) == (seam.a, seam.b) || (s.b, s.a) == (seam.a, seam.b);
    match project.seams.iter().position(same) {
        Some(i) => {
            let held = project.seams[i].held;
            project.seams[i] = Seam { held, ..seam };
            i
        }
        None => {
            project.seams.push(seam);
            project.seams.len() - 1
        }
    }
}
