//! What a hand does at any stage: the movements that tests of all of them share.

use egui::{Key, Modifiers, Vec2};
use egui_kittest::kittest::Queryable as _;

use crate::bench::Bench;

pub(crate) fn click(bench: &mut Bench<'_>, name: &str) {
    bench.get_by_label(name).click();
    bench.run();
}

/// Goes to it by key, which brings it into sight, and clicks it.
pub(crate) fn go_and_click(bench: &mut Bench<'_>, name: &str) {
    bench.get_by_label(name).focus();
    bench.run();
    click(bench, name);
}

pub(crate) fn press(bench: &mut Bench<'_>, key: Key) {
    bench.key_press(key);
    bench.run();
}

pub(crate) fn undo(bench: &mut Bench<'_>) {
    bench.key_press_modifiers(Modifiers::COMMAND, Key::Z);
    bench.run();
}

/// Drags the control called `name`, in so many steps.
pub(crate) fn drag_control(bench: &mut Bench<'_>, name: &str, by: Vec2, steps: u8) {
    let from = bench.get_by_label(name).rect().center();
    bench.hover_at(from);
    bench.step();
    bench.drag_at(from);
    bench.step();
    for i in 1..=steps {
        bench.hover_at(from + by * (f32::from(i) / f32::from(steps)));
        bench.step();
    }
    bench.drop_at(from + by);
    bench.run();
}
