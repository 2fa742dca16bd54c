//! The Assembly stage: the pieces put together. The parts in a list, the toy itself, what is in
//! hand with the map of what carries it; along the foot the steps in working order, and what
//! the toy weighs and how it stands.

mod attach_card;
mod attach_rows;
mod attached;
mod balance;
mod body_rows;
mod cells;
mod drag;
mod empty;
mod figures;
mod ground;
mod here;
pub mod layout;
mod map;
mod menus;
mod part_card;
mod parts;
mod picture;
mod placing;
mod prints;
mod side;
mod sling_card;
mod small_rows;
mod steps;
mod stitching;
mod surface;
mod told;

use egui::Ui;

use crate::bench::Bench;
use crate::bench::action::Actions;
use crate::view::look::Look;
use here::ToyBench;
use layout::AssemblyLayout;

/// Draws the stage and does what the hand asks for.
pub fn show(ui: &mut Ui, bench: &Bench<'_>, layout: &AssemblyLayout, actions: &mut Actions) {
    let project = bench.document.project();
    let here =
        ToyBench { bench, project, toy: &project.toy, made: bench.toy.made(bench.document) };
    if project.toy.parts.is_empty() {
        empty::show(ui, &here, layout, actions);
        return;
    }
    let mut next = bench.view.toy.clone();
    next.hovered = None;
    parts::show(ui, &here, layout.parts, &mut next, actions);
    picture::show(ui, &here, layout, &mut next, actions);
    side::show(ui, &here, layout.side, &mut next, actions);
    steps::show(ui, &here, layout.steps, &mut next);
    figures::show(ui, &here, layout.figures, actions);
    if next != bench.view.toy {
        // What is done to the toy may take another part in hand: that comes after.
        let done = actions.take();
        actions.look(Look::Toy(Box::new(next)));
        done.into_iter().for_each(|action| actions.push(action));
    }
}
