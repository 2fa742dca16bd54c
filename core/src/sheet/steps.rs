//! Steps: the rounds, and what is done between them, in order.

use serde::Serialize;

use super::length::amount;
use crate::extent::Bounds;
use crate::piece::Yarn;
use crate::piece::cloth::Working;
use crate::plan::Plan;
use crate::project::Project;
use crate::words::wording::{InsideLine, Wording};
use crate::words::write::Fill::Words;
use crate::words::write::Writer;

/// One line of rounds.
#[derive(Debug, Clone, PartialEq, Eq, Serialize)]
pub struct RoundsLine {
    /// First round, counted from 1.
    pub first: u32,
    /// Last round.
    pub last: u32,
    /// Their number alone: `9`, `12–16`.
    pub number: String,
    /// The round or range as the house names it, with what stands after it: `Rnd 4:`.
    pub heading: String,
    /// What to work.
    pub text: String,
    /// The count at the end, in the house's form: `[24]`.
    pub count: String,
    /// The count itself.
    pub stitches: u32,
    /// Boxes to tick: one a round, of the size that has most.
    pub boxes: u32,
    /// The yarn, an index into the project's.
    pub yarn: usize,
    /// Its colour, sRGB.
    pub colour: [u8; 3],
}

/// A yarn taken up.
#[derive(Debug, Clone, PartialEq, Eq, Serialize)]
pub struct YarnStep {
    /// Its letter.
    pub letter: String,
    /// Its name.
    pub name: String,
    /// Its colour, sRGB.
    pub colour: [u8; 3],
    /// What to do, in a sentence.
    pub text: String,
}

/// One thing to do.
#[derive(Debug, Clone, PartialEq, Eq, Serialize)]
#[serde(tag = "step", content = "what", rename_all = "lowercase")]
pub enum Step {
    /// Work these rounds.
    Rounds(RoundsLine),
    /// Take up this yarn.
    Yarn(YarnStep),
    /// Stuff the piece.
    Stuff(String),
    /// Do this inside it: card, a thread.
    Inside(String),
}

pub(super) fn steps(
    project: &Project,
    working: Working,
    plan: &Plan,
    wording: &Wording,
    writer: &Writer<'_>,
) -> Vec<Step> {
    let mut steps = Vec::new();
    let several = plan.estimate.yarn.len() > 1;
    let mut yarn = None;
    for line in &wording.lines {
        if several && yarn != Some(line.yarn) {
            let how = match (yarn, working) {
                (None, _) => "yarn_start",
                (Some(_), Working::Spiral) => "yarn_change",
                (Some(_), Working::Joined { .. }) => "yarn_change_joined",
            };
            steps.push(Step::Yarn(taken_up(project, line.yarn, how, writer)));
            yarn = Some(line.yarn);
        }
        let number = match line.first == line.last {
            true => line.first.to_string(),
            false => format!("{}{}{}", line.first, writer.style().heading.dash, line.last),
        };
        steps.push(Step::Rounds(RoundsLine {
            first: line.first,
            last: line.last,
            number,
            heading: writer.heading(line.first, line.last),
            text: line.text.clone(),
            count: writer.count(line.count),
            stitches: line.count,
            boxes: line.last - line.first + 1,
            yarn: line.yarn,
            colour: project.yarns[line.yarn].colour,
        }));
        let inside = |under: bool| {
            let here = move |i: &&InsideLine| i.after == line.last && i.under_stuffing == under;
            wording.inside.iter().filter(here).map(|i| Step::Inside(i.text.clone()))
        };
        steps.extend(inside(true));
        let stops = wording.stuffing.iter().enumerate();
        for (i, stop) in stops.filter(|(_, stop)| stop.after == line.last) {
            // What it takes is said once.
            let text = match (i, wording.stuffing.len()) {
                (0, 1) => format!("{} {}", stop.text, grams("grams", plan, writer)),
                (0, _) => format!("{} {}", stop.text, grams("grams_all", plan, writer)),
                _ => stop.text.clone(),
            };
            steps.push(Step::Stuff(text));
        }
        steps.extend(inside(false));
    }
    steps
}

fn grams(name: &str, plan: &Plan, writer: &Writer<'_>) -> String {
    let Bounds { low, high } = plan.estimate.stuffing_g;
    let (low, high) = (amount(low, writer), amount(high, writer));
    writer.say_of(name, &[("low", Words(&low)), ("high", Words(&high))])
}

fn taken_up(project: &Project, index: usize, how: &str, writer: &Writer<'_>) -> YarnStep {
    let yarn = &project.yarns[index];
    let letter = Yarn::letter(index);
    let named = format!("{letter} ({})", yarn.name);
    let text = writer.say_of(how, &[("named", Words(&named))]);
    YarnStep { letter, name: yarn.name.clone(), colour: yarn.colour, text }
}
