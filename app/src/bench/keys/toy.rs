//! Keys of the Assembly stage: arrows move the part in hand by a stitch or a round, or turn the
//! toy where none is in hand; Del removes.

use egui::{Context, Key, Modifiers};
use plumpline_core::project::toy::part::Part;
use plumpline_core::toy::counted::CountedBy;
use plumpline_core::toy::steps::part_name;
use plumpline_core::words::Writer;

use crate::bench::Bench;
use crate::bench::action::Actions;
use crate::document::edit::Edit;
use crate::document::toy::{PartTrait, ToyEdit};
use crate::view::look::Look;
use crate::view::toy::{ToyPick, ToyView};

/// How far an arrow turns the toy, degrees.
const TURN_DEG: f32 = 5.0;
/// With Shift a part goes so many times as far.
const FAR: i32 = 5;

/// Reads them.
pub(super) fn read(ctx: &Context, bench: &Bench<'_>, actions: &mut Actions) {
    if bench.view.is_dragging() {
        return;
    }
    let (mut right, mut up, mut removed) = (0, 0, false);
    ctx.input_mut(|i| {
        let mut presses = |key: Key| {
            let far = i.count_and_consume_key(Modifiers::SHIFT, key) as i32;
            FAR * far + i.count_and_consume_key(Modifiers::NONE, key) as i32
        };
        right += presses(Key::ArrowRight) - presses(Key::ArrowLeft);
        up += presses(Key::ArrowUp) - presses(Key::ArrowDown);
        removed = i.count_and_consume_key(Modifiers::NONE, Key::Delete) > 0;
    });
    if removed {
        remove(bench, actions);
    } else if right != 0 || up != 0 {
        match bench.view.toy.part() {
            Some(index) => step(bench, index, right, up, actions),
            None => turn(bench, right as f32, up as f32, actions),
        }
    }
}

/// Moves the part in hand as far right and up as it is seen on the map of what carries it.
fn step(bench: &Bench<'_>, index: usize, right: i32, up: i32, actions: &mut Actions) {
    let toy = &bench.document.project().toy;
    let Some(part) = toy.parts.get(index) else { return };
    let Some(seat) = part.on else { return };
    let Some(made) = bench.toy.made(bench.document) else { return };
    let Some(solid) = made.solid(seat.part) else { return };
    let by = if part.piece().is_some() { CountedBy::Round } else { CountedBy::Gap };
    let rounds = if made.grows_up(seat.part) { up } else { -up };
    let stitches = if made.runs_right(seat.part) { right } else { -right };
    let at = by.stepped(solid, seat.at, rounds, stitches);
    if at == seat.at {
        return;
    }
    let called = part_name(bench.document.project(), index, &Writer::bench());
    let counted = by.count(solid, at);
    let round = match by {
        CountedBy::Round => say!("told-in-round", round = counted.round),
        CountedBy::Gap => say!("told-after-round", round = counted.round),
    };
    actions.look(Look::Tell(format!("{called}: {round}, {}", from_front(counted.stitch))));
    let moved = plumpline_core::project::toy::part::Seat { at, ..seat };
    let part = Box::new(Part { on: Some(moved), ..part.clone() });
    let change = ToyEdit::Change { index, what: PartTrait::Place, part, called };
    actions.edit(Edit::Toy(change));
}

/// `7 stitches from the front`.
fn from_front(stitch: i32) -> String {
    match stitch.abs() {
        0 => say!("told-front-line").into(),
        n => say!("told-from-front", n = n),
    }
}

fn turn(bench: &Bench<'_>, right: f32, up: f32, actions: &mut Actions) {
    let toy = &bench.view.toy;
    let turned = toy.turned.moved(TURN_DEG * right, -TURN_DEG * up);
    actions.look(Look::Toy(Box::new(ToyView { turned, ..toy.clone() })));
}

fn remove(bench: &Bench<'_>, actions: &mut Actions) {
    let project = bench.document.project();
    match bench.view.toy.taken {
        Some(ToyPick::Part(index)) => {
            let called = part_name(project, index, &Writer::bench());
            actions.look(Look::Tell(say!(
                "told-removed-called-and-what-it-carries",
                called = called
            )));
            actions.edit(Edit::Toy(ToyEdit::Remove { index, called }));
        }
        Some(ToyPick::Attachment(index)) => {
            actions.look(Look::Tell(say!("told-removed-what-holds-it").into()));
            actions.edit(Edit::Toy(ToyEdit::Detach(index)));
        }
        None => {}
    }
}
