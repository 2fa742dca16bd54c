//! What holds the toy, in hand: where, how long, how thick, and what follows.

use egui::{Rect, Sense, Ui, pos2, vec2};
use plumpline_core::project::toy::attachment::{
    Attachment, Cord, CordHold, CordSpot, CordWay, Hanger, Joint, Metal, Wire,
};
use plumpline_core::project::toy::part::PartEnd;
use plumpline_core::toy::held::HeldPart;
use plumpline_core::toy::solid::Solid;

use super::attach_rows::{
    after_round, from_front, half, knots, millimetres, thickness, which_part,
};
use super::cells::{CellGrid, NumberCell, list};
use super::here::ToyBench;
use super::part_card::check;
use super::sling_card;
use crate::bench::action::Actions;
use crate::document::edit::Edit;
use crate::document::toy::{ToyEdit, attachment_word};
use crate::fields::form;
use crate::kit::controls::{self, ButtonFace};
use crate::kit::words::decimal;

/// Draws the card of attachment `index`.
pub(super) fn show(ui: &mut Ui, here: &ToyBench<'_>, index: usize, actions: &mut Actions) {
    let Some(attachment) = here.toy.attachments.get(index) else { return };
    let mut new = attachment.clone();
    match &mut new {
        Attachment::Cord(cord) => of_cord(ui, here, cord, actions),
        Attachment::Loop(hanger) => ring(ui, here, hanger, actions),
        Attachment::Wire(wire) => of_wire(ui, here, wire, actions),
        Attachment::Joint(joint) => of_joint(ui, here, joint, actions),
        Attachment::Sling(sling) => sling_card::show(ui, here, sling, actions),
    }
    if new != *attachment {
        actions.edit(Edit::Toy(ToyEdit::ChangeAttachment(index, new)));
    }
    comes_to(ui, here, index);
    let (rect, _) = ui.allocate_exact_size(vec2(ui.available_width(), 34.0), Sense::hover());
    let words = say!("attach-remove");
    let size = vec2(controls::words_width(ui, words), 26.0);
    let place = Rect::from_min_size(pos2(rect.right() - size.x, rect.top() + 4.0), size);
    let name = say!("attach-remove-one", what = attachment_word(attachment));
    if controls::button(ui, place, ButtonFace::Words(words), &name, true).clicked() {
        actions.edit(Edit::Toy(ToyEdit::Detach(index)));
    }
}

fn whole<'a>(
    (caption, name, why): (&'a str, &'a str, &'a str),
    value: u32,
    most: f64,
) -> NumberCell<'a> {
    let span = (1.0, most, 1.0);
    NumberCell { caption, name, why, value: f64::from(value), span, decimals: 0, unit: "" }
}

fn of_cord(ui: &mut Ui, here: &ToyBench<'_>, cord: &mut Cord, actions: &mut Actions) {
    hold(ui, here, say!("attach-held-by"), &mut cord.from, actions);
    if let Some(to) = &mut cord.to {
        hold(ui, here, say!("attach-down-to"), to, actions);
    }
    let rect =
        form::row(ui, say!("attach-goes"), say!("attach-around-it-or-pulled-through-it"));
    let ways = [CordWay::Around, CordWay::Through];
    let now = usize::from(cord.way == CordWay::Through);
    if let Some(new) = form::pick(
        ui,
        rect,
        say!("attach-cord-goes"),
        &[say!("attach-around"), say!("attach-through")],
        now,
    ) {
        cord.way = ways[new];
    }
    knots(ui, &mut cord.knots);
    let mut grid = CellGrid::new();
    let (caption, why) = match cord.to {
        Some(_) => (say!("attach-drop"), say!("attach-how-far-below-the-other-end-hangs")),
        None => (say!("attach-free-loop"), say!("attach-how-long-the-free-loop-above-is")),
    };
    let words = (caption, say!("attach-drop-of-the-cord"), why);
    millimetres(ui, &mut grid, words, &mut cord.drop_mm, (0.0, 3000.0, 5.0), actions);
    let name = say!("attach-thickness-of-the-cord");
    thickness(ui, &mut grid, name, &mut cord.thickness_mm, actions);
    let words = (
        say!("attach-strands"),
        say!("attach-strands-of-the-cord"),
        say!("attach-how-many-cords-go-down"),
    );
    if let Some(n) = grid.number(ui, &whole(words, cord.strands, 24.0), actions) {
        cord.strands = n as u32;
    }
}

fn ring(ui: &mut Ui, here: &ToyBench<'_>, hanger: &mut Hanger, actions: &mut Actions) {
    hold(ui, here, say!("attach-on"), &mut hanger.on, actions);
    let rect = form::row(
        ui,
        say!("attach-sits"),
        say!("attach-on-the-axis-or-on-the-fabric-beside-it"),
    );
    let now = usize::from(hanger.around.is_some());
    if let Some(new) = form::pick(
        ui,
        rect,
        say!("attach-loop-sits"),
        &[say!("attach-on-the-axis"), say!("attach-aside")],
        now,
    ) {
        hanger.around = [None, Some(0.0)][new];
    }
    let mut grid = CellGrid::new();
    if let Some(around) = &mut hanger.around {
        from_front(ui, &mut grid, say!("attach-turn-of-the-loop"), around, actions);
    }
    let words = (
        say!("attach-around-large"),
        say!("attach-length-of-the-loop"),
        say!("attach-length-of-the-loop-all-around"),
    );
    millimetres(ui, &mut grid, words, &mut hanger.around_mm, (1.0, 3000.0, 5.0), actions);
    let words = (
        say!("attach-stands-off"),
        say!("attach-how-far-the-loop-stands-off"),
        say!("attach-from-the-fabric-to-where-it-hangs"),
    );
    millimetres(ui, &mut grid, words, &mut hanger.stands_off_mm, (0.0, 3000.0, 1.0), actions);
    let name = say!("attach-thickness-of-the-loop");
    thickness(ui, &mut grid, name, &mut hanger.thickness_mm, actions);
}

fn of_wire(ui: &mut Ui, here: &ToyBench<'_>, wire: &mut Wire, actions: &mut Actions) {
    hold(ui, here, say!("attach-carries"), &mut wire.carries, actions);
    hold(ui, here, say!("attach-stands-in"), &mut wire.stands_in, actions);
    let rect = form::row(ui, say!("attach-metal"), say!("attach-what-it-is-made-of"));
    let now = Metal::ALL.iter().position(|&m| m == wire.metal).unwrap_or(0);
    let words = Metal::ALL.map(Metal::word);
    if let Some(new) = list(ui, half(rect), say!("attach-metal"), (&words, now)) {
        wire.metal = Metal::ALL[new];
    }
    let mut grid = CellGrid::new();
    let words = (
        say!("attach-free"),
        say!("attach-free-length-of-the-wire"),
        say!("attach-between-the-two-bodies"),
    );
    millimetres(ui, &mut grid, words, &mut wire.free_mm, (0.0, 3000.0, 5.0), actions);
    let words = (
        say!("attach-thick"),
        say!("attach-thickness-of-the-wire"),
        say!("attach-how-thick-one-strand-is"),
    );
    millimetres(ui, &mut grid, words, &mut wire.diameter_mm, (0.1, 20.0, 0.1), actions);
    let words = (
        say!("attach-strands"),
        say!("attach-strands-of-the-wire"),
        say!("attach-how-many-are-side-by-side"),
    );
    if let Some(n) = grid.number(ui, &whole(words, wire.strands, 24.0), actions) {
        wire.strands = n as u32;
    }
}

fn of_joint(ui: &mut Ui, here: &ToyBench<'_>, joint: &mut Joint, actions: &mut Actions) {
    let words = (
        say!("attach-turns"),
        say!("attach-the-part-that-turns-on-it-with-its"),
        say!("attach-part-that-turns"),
    );
    which_part(ui, here, words, &mut joint.part, |_, part| {
        part.on.is_some() && part.piece().is_some()
    });
    let mut grid = CellGrid::new();
    let words = (
        say!("attach-passes"),
        say!("attach-passes-of-the-thread"),
        say!("attach-how-often-the-thread-goes-through"),
    );
    if let Some(n) = grid.number(ui, &whole(words, joint.passes, 20.0), actions) {
        joint.passes = n as u32;
    }
}

/// A place on a crocheted part: which, and where.
fn hold(
    ui: &mut Ui,
    here: &ToyBench<'_>,
    name: &str,
    hold: &mut CordHold,
    actions: &mut Actions,
) {
    let words = (name, say!("attach-which-part"), name);
    which_part(ui, here, words, &mut hold.part, |_, part| part.piece().is_some());
    let solid = here.made.and_then(|made| made.solid(hold.part));
    let spots = [
        say!("attach-its-end"),
        say!("attach-its-start"),
        say!("attach-its-neck"),
        say!("attach-its-lip"),
        say!("attach-a-round"),
    ];
    let now = match hold.at {
        CordSpot::End(PartEnd::Last) => 0,
        CordSpot::End(PartEnd::Start) => 1,
        CordSpot::Neck => 2,
        CordSpot::Lip => 3,
        CordSpot::Share(_) => 4,
    };
    let rect =
        form::row(ui, say!("attach-at"), say!("attach-a-neck-and-a-lip-are-found-by-its"));
    let at = say!("attach-name-at", name = name);
    if let Some(new) = list(ui, half(rect), &at, (&spots, now)) {
        hold.at = [
            CordSpot::End(PartEnd::Last),
            CordSpot::End(PartEnd::Start),
            CordSpot::Neck,
            CordSpot::Lip,
            CordSpot::Share(0.5),
        ][new];
    }
    if let (CordSpot::Share(share), Some(solid)) = (hold.at, solid) {
        let round = f64::from(Solid::number(solid, solid.round_at(share)));
        let name = say!("attach-name-round", name = name);
        let mut grid = CellGrid::new();
        if let Some(round) = after_round(ui, &mut grid, &name, (round, solid), actions) {
            hold.at = CordSpot::Share(solid.share_at(round));
        }
    }
}

/// What follows: how long it has to be, what it bears, whether it is strong enough.
fn comes_to(ui: &mut Ui, here: &ToyBench<'_>, index: usize) {
    let Some(made) = here.made else { return };
    let unit = here.bench.unit();
    match made.assembled.held.get(index) {
        Some(HeldPart::Cord { length, bears_g, .. }) => {
            let words = say!(
                "attach-cut-length-in-all-it-holds-bears-g-g",
                length = unit.rough_text(length.all_mm),
                bears_g = format!("{:.0}", bears_g)
            );
            check(ui, here, &words, true);
        }
        Some(HeldPart::Wire(wire)) => {
            let strong = wire.safety >= plumpline_core::toy::figures::wire::SAFETY;
            let words = match (strong, wire.least_mm) {
                (true, _) => say!(
                    "attach-it-holds-times-times-what-stands-on-it",
                    times = format!("{:.0}", wire.safety.min(999.0)),
                    length = unit.rough_text(wire.cut_mm)
                ),
                (false, Some(mm)) => {
                    say!("attach-it-buckles-too-soon-it-needs-at-least", mm = decimal(mm, 1))
                }
                (false, None) => say!("attach-it-buckles-too-soon-at-any-thickness").into(),
            };
            check(ui, here, &words, strong);
        }
        Some(HeldPart::Sling(figures)) => sling_card::comes_to(ui, here, index, figures),
        Some(HeldPart::Joint { thread_mm }) => {
            check(
                ui,
                here,
                &say!("attach-cut-length-of-thread", length = unit.rough_text(*thread_mm)),
                true,
            );
        }
        Some(HeldPart::Loop { .. }) | None => {}
    }
    for caution in made.cautions.iter().filter(|c| c.attachment == Some(index)) {
        check(ui, here, &caution.text, !caution.refused);
    }
    let step = made.steps.iter().find(|step| step.attachment == Some(index));
    if let Some(step) = step {
        form::heading(ui, say!("attach-on-the-sheet"));
        form::remark(ui, &step.text);
    }
}
