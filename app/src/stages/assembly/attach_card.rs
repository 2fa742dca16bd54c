//! What holds the toy, in hand: where, how long, how thick, and what follows.

use egui::{Rect, Sense, Ui, pos2, vec2};
use plumpline_core::project::toy::attachment::{
    Attachment, Cord, CordHold, CordSpot, CordWay, Hanger, Joint, Knots, Metal, Wire,
};
use plumpline_core::project::toy::part::PartEnd;
use plumpline_core::toy::held::HeldPart;
use plumpline_core::toy::solid::Solid;

use super::cells::{CellGrid, NumberCell, list};
use super::here::ToyBench;
use super::part_card::check;
use super::told;
use crate::bench::action::Actions;
use crate::document::edit::Edit;
use crate::document::toy::{ToyEdit, attachment_word};
use crate::fields::form;
use crate::kit::controls::{self, ButtonFace};

/// Draws the card of attachment `index`.
pub(super) fn show(ui: &mut Ui, here: &ToyBench<'_>, index: usize, actions: &mut Actions) {
    let Some(attachment) = here.toy.attachments.get(index) else { return };
    let mut new = attachment.clone();
    match &mut new {
        Attachment::Cord(cord) => of_cord(ui, here, cord, actions),
        Attachment::Loop(hanger) => ring(ui, here, hanger, actions),
        Attachment::Wire(wire) => of_wire(ui, here, wire, actions),
        Attachment::Joint(joint) => of_joint(ui, here, joint, actions),
    }
    if new != *attachment {
        actions.edit(Edit::Toy(ToyEdit::ChangeAttachment(index, new)));
    }
    comes_to(ui, here, index);
    let (rect, _) = ui.allocate_exact_size(vec2(ui.available_width(), 34.0), Sense::hover());
    let words = "Remove";
    let size = vec2(controls::words_width(ui, words), 26.0);
    let place = Rect::from_min_size(pos2(rect.right() - size.x, rect.top() + 4.0), size);
    let name = format!("Remove the {}", attachment_word(attachment));
    if controls::button(ui, place, ButtonFace::Words(words), &name, true).clicked() {
        actions.edit(Edit::Toy(ToyEdit::Detach(index)));
    }
}

fn millimetres<'a>(
    (caption, name, why): (&'a str, &'a str, &'a str),
    value: f64,
    (low, high, step): (f64, f64, f64),
) -> NumberCell<'a> {
    NumberCell { caption, name, why, value, span: (low, high, step), decimals: 1, unit: " mm" }
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
    hold(ui, here, "Held by", &mut cord.from, actions);
    if let Some(to) = &mut cord.to {
        hold(ui, here, "Down to", to, actions);
    }
    let rect = form::row(ui, "Goes", "Laid around it, or drawn through it");
    let ways = [CordWay::Around, CordWay::Through];
    let now = usize::from(cord.way == CordWay::Through);
    if let Some(new) = form::pick(ui, rect, "Cord goes", &["around", "through"], now) {
        cord.way = ways[new];
    }
    let rect = form::row(ui, "Knots", "On which side of the cloth they are");
    let now = usize::from(cord.knots == Knots::Outside);
    if let Some(new) = form::pick(ui, rect, "Knots", &["inside", "outside"], now) {
        cord.knots = [Knots::Inside, Knots::Outside][new];
    }
    let mut grid = CellGrid::new();
    let (caption, why) = match cord.to {
        Some(_) => ("Drop", "How far below the other end hangs"),
        None => ("Free loop", "How long the free loop above is"),
    };
    let cell =
        millimetres((caption, "Drop of the cord", why), cord.drop_mm, (0.0, 3000.0, 5.0));
    if let Some(mm) = grid.number(ui, &cell, actions) {
        cord.drop_mm = mm;
    }
    let words = ("Thick", "Thickness of the cord", "How thick it is");
    let cell = millimetres(words, cord.thickness_mm, (0.1, 50.0, 0.5));
    if let Some(mm) = grid.number(ui, &cell, actions) {
        cord.thickness_mm = mm;
    }
    let words = ("Strands", "Strands of the cord", "How many cords go down");
    if let Some(n) = grid.number(ui, &whole(words, cord.strands, 24.0), actions) {
        cord.strands = n as u32;
    }
}

fn ring(ui: &mut Ui, here: &ToyBench<'_>, hanger: &mut Hanger, actions: &mut Actions) {
    hold(ui, here, "On", &mut hanger.on, actions);
    let rect = form::row(ui, "Sits", "On the axis, or on the cloth beside it");
    let now = usize::from(hanger.around.is_some());
    if let Some(new) = form::pick(ui, rect, "Loop sits", &["on the axis", "aside"], now) {
        hanger.around = [None, Some(0.0)][new];
    }
    let mut grid = CellGrid::new();
    if let Some(around) = hanger.around {
        let cell = NumberCell {
            caption: "From front",
            name: "Turn of the loop",
            why: "How far around from the front, the way the rounds run",
            value: (360.0 * around).round(),
            span: (-180.0, 180.0, 5.0),
            decimals: 0,
            unit: "°",
        };
        if let Some(deg) = grid.number(ui, &cell, actions) {
            hanger.around = Some(deg / 360.0);
        }
    }
    let words = ("Around", "Length of the loop", "Length of the loop all around");
    if let Some(mm) =
        grid.number(ui, &millimetres(words, hanger.around_mm, (1.0, 3000.0, 5.0)), actions)
    {
        hanger.around_mm = mm;
    }
    let words =
        ("Stands off", "How far the loop stands off", "From the cloth to where it bears");
    let cell = millimetres(words, hanger.stands_off_mm, (0.0, 3000.0, 1.0));
    if let Some(mm) = grid.number(ui, &cell, actions) {
        hanger.stands_off_mm = mm;
    }
    let words = ("Thick", "Thickness of the loop", "How thick it is");
    let cell = millimetres(words, hanger.thickness_mm, (0.1, 50.0, 0.5));
    if let Some(mm) = grid.number(ui, &cell, actions) {
        hanger.thickness_mm = mm;
    }
}

fn of_wire(ui: &mut Ui, here: &ToyBench<'_>, wire: &mut Wire, actions: &mut Actions) {
    hold(ui, here, "Carries", &mut wire.carries, actions);
    hold(ui, here, "Stands in", &mut wire.stands_in, actions);
    let rect = form::row(ui, "Metal", "What it is made of");
    let now = Metal::ALL.iter().position(|&m| m == wire.metal).unwrap_or(0);
    let words = Metal::ALL.map(Metal::word);
    if let Some(new) = list(ui, half(rect), "Metal", (&words, now)) {
        wire.metal = Metal::ALL[new];
    }
    let mut grid = CellGrid::new();
    let words = ("Free", "Free length of the wire", "Between the two bodies");
    if let Some(mm) =
        grid.number(ui, &millimetres(words, wire.free_mm, (0.0, 3000.0, 5.0)), actions)
    {
        wire.free_mm = mm;
    }
    let words = ("Thick", "Thickness of the wire", "How thick one strand is");
    let cell = millimetres(words, wire.diameter_mm, (0.1, 20.0, 0.1));
    if let Some(mm) = grid.number(ui, &cell, actions) {
        wire.diameter_mm = mm;
    }
    let words = ("Strands", "Strands of the wire", "How many stand side by side");
    if let Some(n) = grid.number(ui, &whole(words, wire.strands, 24.0), actions) {
        wire.strands = n as u32;
    }
}

fn of_joint(ui: &mut Ui, here: &ToyBench<'_>, joint: &mut Joint, actions: &mut Actions) {
    let parts: Vec<usize> = (0..here.toy.parts.len())
        .filter(|&i| here.part(i).is_some_and(|p| p.on.is_some() && p.piece().is_some()))
        .collect();
    let names: Vec<String> = parts.iter().map(|&i| told::capital(&here.called(i))).collect();
    let words: Vec<&str> = names.iter().map(String::as_str).collect();
    let now = parts.iter().position(|&i| i == joint.part).unwrap_or(0);
    let rect = form::row(ui, "Turns", "The part that turns on it, with its copies");
    if let Some(new) = list(ui, half(rect), "Part that turns", (&words, now)) {
        joint.part = parts[new];
    }
    let mut grid = CellGrid::new();
    let words = ("Passes", "Passes of the thread", "How often the thread goes through");
    if let Some(n) = grid.number(ui, &whole(words, joint.passes, 20.0), actions) {
        joint.passes = n as u32;
    }
}

fn half(row: Rect) -> Rect {
    let left = row.left().max(row.right() - 180.0);
    Rect::from_x_y_ranges(left..=row.right(), row.center().y - 13.0..=row.center().y + 13.0)
}

/// A place on a crocheted part: which, and where.
fn hold(
    ui: &mut Ui,
    here: &ToyBench<'_>,
    name: &str,
    hold: &mut CordHold,
    actions: &mut Actions,
) {
    let bodies: Vec<usize> = (0..here.toy.parts.len())
        .filter(|&i| here.part(i).is_some_and(|part| part.piece().is_some()))
        .collect();
    let names: Vec<String> = bodies.iter().map(|&i| told::capital(&here.called(i))).collect();
    let words: Vec<&str> = names.iter().map(String::as_str).collect();
    let now = bodies.iter().position(|&i| i == hold.part).unwrap_or(0);
    let rect = form::row(ui, name, "Which part");
    if let Some(new) = list(ui, half(rect), name, (&words, now)) {
        hold.part = bodies[new];
    }
    let solid = here.made.and_then(|made| made.solid(hold.part));
    let spots = ["its end", "its start", "its neck", "its lip", "a round"];
    let now = match hold.at {
        CordSpot::End(PartEnd::Last) => 0,
        CordSpot::End(PartEnd::Start) => 1,
        CordSpot::Neck => 2,
        CordSpot::Lip => 3,
        CordSpot::Share(_) => 4,
    };
    let rect = form::row(ui, "At", "A neck and a lip are found by its shape");
    let at = format!("{name}, at");
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
        let name = format!("{name}, round");
        let cell = NumberCell {
            caption: "After round",
            name: &name,
            why: "The round after which it is held",
            value: round,
            span: (1.0, solid.rounds().max(1) as f64, 1.0),
            decimals: 0,
            unit: "",
        };
        if let Some(round) = CellGrid::new().number(ui, &cell, actions) {
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
            let words = format!(
                "Cut {} in all; it bears {bears_g:.0} g",
                unit.rough_text(length.all_mm)
            );
            check(ui, here, &words, true);
        }
        Some(HeldPart::Wire(wire)) => {
            let strong = wire.safety >= plumpline_core::toy::figures::wire::SAFETY;
            let words = match (strong, wire.least_mm) {
                (true, _) => format!(
                    "It bears {:.0} times what stands on it; cut {}",
                    wire.safety.min(999.0),
                    unit.rough_text(wire.cut_mm)
                ),
                (false, Some(mm)) => {
                    format!("It buckles too soon: {mm:.1} mm is the least that does")
                }
                (false, None) => "It buckles too soon, however thick".into(),
            };
            check(ui, here, &words, strong);
        }
        Some(HeldPart::Joint { thread_mm }) => {
            check(ui, here, &format!("Cut {} of thread", unit.rough_text(*thread_mm)), true);
        }
        Some(HeldPart::Loop { .. }) | None => {}
    }
    for caution in made.cautions.iter().filter(|c| c.attachment == Some(index)) {
        check(ui, here, &caution.text, !caution.refused);
    }
    let step = made.steps.iter().find(|step| step.attachment == Some(index));
    if let Some(step) = step {
        form::heading(ui, "On the sheet");
        form::remark(ui, &step.text);
    }
}
