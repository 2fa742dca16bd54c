//! What a sheet tells of the whole toy: how it is put together, and what to mind.

use crate::plan::Plan;
use crate::project::Project;
use crate::toy::{Assembled, assembled_of, cautions, steps};
use crate::words::write::Writer;

/// The toy of `project`, planned as `plans`; none where no part has been put in its place.
pub(super) fn toy_of(project: &Project, plans: &[Plan]) -> Option<Assembled> {
    assembled_of(project, plans).ok()
}

/// How it is put together, a numbered sentence a step, in working order; of a size, where the
/// places are its own, under its name.
pub(super) fn put_together(
    project: &Project,
    toy: &Assembled,
    size: &str,
    writer: &Writer<'_>,
) -> Vec<String> {
    let of_size = if size.is_empty() { String::new() } else { format!("{size}, ") };
    let steps = steps(project, toy, writer).into_iter();
    (1..).zip(steps).map(|(n, step)| format!("{of_size}{n}. {}", step.text)).collect()
}

/// What to mind, each once, with where it is written. The last word is the rules'.
pub(super) fn minded(project: &Project, toy: &Assembled, writer: &Writer<'_>) -> Vec<String> {
    let mut list: Vec<String> = Vec::new();
    for caution in cautions(project, toy, writer) {
        let text = match caution.source {
            "" => caution.text,
            source => format!("{} ({source})", caution.text),
        };
        if !list.contains(&text) {
            list.push(text);
        }
    }
    list
}
