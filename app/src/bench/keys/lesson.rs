//! Keys of the Lesson stage: Left and Right turn the cloth, Up and Down change its rounds.

use egui::{Context, Key, Modifiers};

use crate::bench::Bench;
use crate::bench::action::Actions;
use crate::view::look::Look;

/// How far an arrow turns the cloth, degrees.
const TURN_DEG: f32 = 5.0;

/// Reads them.
pub(super) fn read(ctx: &Context, bench: &Bench<'_>, actions: &mut Actions) {
    let (mut right, mut down, mut more) = (0.0, 0.0, 0);
    ctx.input_mut(|i| {
        let mut presses = |with: Modifiers, key: Key| i.count_and_consume_key(with, key) as i32;
        // With Shift first: without it a key is taken whatever else is held.
        let (up, low) = (
            presses(Modifiers::SHIFT, Key::ArrowUp),
            presses(Modifiers::SHIFT, Key::ArrowDown),
        );
        down = (low - up) as f32;
        let plain = Modifiers::NONE;
        right = (presses(plain, Key::ArrowRight) - presses(plain, Key::ArrowLeft)) as f32;
        more = presses(plain, Key::ArrowUp) - presses(plain, Key::ArrowDown);
    });
    let mut next = bench.view.lesson.clone();
    let step = bench.lesson.course().steps.get(next.step);
    if right != 0.0 || down != 0.0 {
        let [now, _] = next.sights(step.map(|step| step.sample));
        next.turned = Some(now.moved(TURN_DEG * right, TURN_DEG * down));
    }
    if let Some(step) = step.filter(|_| more != 0 && next.guess().is_some()) {
        let gauge = bench.document.piece().gauge;
        let sample = next.set(step.sample);
        let knob = sample.knob(gauge);
        let now = knob.value.unwrap_or(sample.flat(gauge).round() as u32);
        next.knob = Some(now.saturating_add_signed(more).clamp(knob.low, knob.high));
        next.stopped = false;
    }
    if next != bench.view.lesson {
        actions.look(Look::Lesson(Box::new(next)));
    }
}
