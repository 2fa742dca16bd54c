//! What a sheet tells of the whole toy: how it is put together and what to mind.

use serde::Serialize;

use super::toy_pictures::ToyPictures;
use crate::plan::Plan;
use crate::project::Project;
use crate::toy::{Assembled, AssemblyStep, assembled_of, cautions};
use crate::words::write::Fill::Words;
use crate::words::write::Writer;

/// The whole toy on its sheet; of its first size.
#[derive(Debug, Clone, Serialize)]
pub struct ToySheet {
    /// Which line of [`Sheet::assembly`](super::Sheet::assembly) is its first step, from 0.
    pub first_step: usize,
    /// How many steps there are, one line each, each with a picture.
    pub steps: usize,
    /// What is drawn of it.
    #[serde(skip)]
    pub pictures: ToyPictures,
}

impl ToySheet {
    /// The step that line `line` of the assembly is, from 0; none for another line.
    pub fn step_of(&self, line: usize) -> Option<usize> {
        line.checked_sub(self.first_step).filter(|&step| step < self.steps)
    }
}

/// The toy of `project`, planned as `plans`; none where no part has been put in its place.
pub(super) fn toy_of(project: &Project, plans: &[Plan]) -> Option<Assembled> {
    assembled_of(project, plans).ok()
}

/// How it is put together, a numbered sentence a step, in working order; of a size, where the
/// places are its own, under its name.
pub(super) fn put_together(steps: &[AssemblyStep], size: &str) -> Vec<String> {
    let of_size = if size.is_empty() { String::new() } else { format!("{size}, ") };
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

/// Lines of materials with what a toy takes, before the line that tells the time.
pub(super) fn with_needed(lines: &mut Vec<String>, needed: Vec<String>, time: &str) {
    let at = lines.iter().position(|line| line == time).unwrap_or(lines.len());
    lines.splice(at..at, needed);
}

/// The line that tells the time.
pub(super) fn time_line(time: &str, writer: &Writer<'_>) -> String {
    writer.say_of("time_line", &[("time", Words(time))])
}
