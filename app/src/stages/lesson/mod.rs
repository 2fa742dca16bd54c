//! The Lesson stage: why an increase bends cloth. The cloth itself, let go and seen from two
//! sides; the question and its answer; the angles its rounds miss, added up; what each round
//! gains. Along the foot the steps, and after them the piece that is selected.

mod chart;
mod choices;
mod gains;
mod here;
pub mod layout;
mod picture;
mod plot;
mod question;
mod steps;
mod sum;

use egui::Ui;

use crate::bench::Bench;
use crate::bench::action::Actions;
use crate::view::look::Look;

use here::LessonBench;
use layout::LessonLayout;

/// Draws the stage, and asks for what the hand wants.
pub fn show(ui: &mut Ui, bench: &Bench<'_>, layout: &LessonLayout, actions: &mut Actions) {
    let here = LessonBench::new(bench, layout.larger);
    let mut next = bench.view.lesson.clone();
    picture::show(ui, &here, layout, &mut next, actions);
    question::show(ui, &here, layout.question, &mut next, actions);
    if let Some(panel) = layout.sum {
        sum::show(ui, &here, panel);
    }
    chart::show(ui, &here, layout.chart, &mut next, actions);
    steps::show(ui, &here, layout.steps, &mut next, actions);
    if next != bench.view.lesson {
        // What is done may say more of the lesson: that comes after.
        let done = actions.take();
        actions.look(Look::Lesson(Box::new(next)));
        done.into_iter().for_each(|action| actions.push(action));
    }
}
