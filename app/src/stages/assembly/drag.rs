//! A part dragged over what carries it: the place of the cloth that lies under the hand,
//! whatever is before it, in whole rounds and stitches.

use egui::Pos2;
use plumpline_core::project::toy::part::{Copies, Place};
use plumpline_core::toy::solid::OnCloth;

use super::here::ToyBench;
use super::placing::counted_by;
use crate::bench::action::{Action, Actions};
use crate::document::toy::PartTrait;
use crate::view::toy::{PartDrag, ToyView};

/// Takes hold of copy `pose` of part `part`, which the hand has at `at`; none of a body.
pub(super) fn hold(
    here: &ToyBench<'_>,
    part: usize,
    pose: usize,
    at: Pos2,
) -> Option<PartDrag> {
    let seated = here.made?.assembled.poses.get(pose)?;
    let (middle, _) = here.bench.toy.on_cloth(seated.on?, seated.seat?)?;
    Some(PartDrag { part, pose, off: middle - at })
}

/// Begins to drag.
pub(super) fn begin(next: &mut ToyView, drag: PartDrag, actions: &mut Actions) {
    next.drag = Some(drag);
    actions.push(Action::Begin);
}

/// Moves the part that is held to where the hand is.
pub(super) fn go(here: &ToyBench<'_>, drag: PartDrag, at: Pos2, actions: &mut Actions) {
    let under = || {
        let carrier = here.made?.assembled.poses.get(drag.pose)?.on?;
        here.bench.toy.under(carrier, at + drag.off)
    };
    if let Some(on) = under() {
        put(here, drag.part, drag.pose, on, actions);
    }
}

/// Puts copy `pose` of a part at the whole place nearest to `on`.
pub(super) fn put(
    here: &ToyBench<'_>,
    part: usize,
    pose: usize,
    on: OnCloth,
    actions: &mut Actions,
) {
    let place = || {
        let made = here.made?;
        let seated = made.assembled.poses.get(pose)?;
        let own = here.part(part)?;
        let step = match own.copies {
            Copies::Around(n) => f64::from(seated.copy) / f64::from(n.max(1)),
            Copies::One | Copies::Mirrored => 0.0,
        };
        let flip = if seated.mirrored { -1.0 } else { 1.0 };
        let place =
            counted_by(own).nearest(made.carrier(part)?, on.round, flip * on.turn - step);
        Some((place, own.on?.at))
    };
    let differs = |(new, old): &(Place, Place)| {
        (new.along - old.along).abs() > 1e-9 || (new.around - old.around).abs() > 1e-9
    };
    if let Some((at, _)) = place().filter(differs) {
        here.reseat(part, PartTrait::Place, actions, |seat| seat.at = at);
    }
}

/// Lets go.
pub(super) fn end(next: &mut ToyView, actions: &mut Actions) {
    next.drag = None;
    actions.push(Action::Commit);
}
