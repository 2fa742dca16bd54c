//! What it takes besides yarn and stuffing: card and thread inside, eyes, cords, wires.

use std::collections::BTreeMap;

use super::SizedPlan;
use crate::piece::Yarn;
use crate::plan::inside::Inside;
use crate::project::Project;
use crate::project::toy::attachment::Attachment;
use crate::project::toy::part::{Copies, PartForm, Thing};
use crate::toy::Assembled;
use crate::toy::held::HeldPart;
use crate::toy::steps::part_name;
use crate::words::write::Fill::{Number, Words};
use crate::words::write::{Writer, capitalised};

/// The word for an attachment.
pub(super) fn attachment_name(attachment: &Attachment) -> &'static str {
    match attachment {
        Attachment::Cord(_) | Attachment::Sling(_) => "cord_name",
        Attachment::Loop(_) => "loop_name",
        Attachment::Wire(_) => "wire_name",
        Attachment::Joint(_) => "joint_name",
    }
}

/// What the pieces take inside, a line each.
pub(super) fn inner_needs(plans: &[SizedPlan<'_>], writer: &Writer<'_>) -> Vec<String> {
    let mut lines: Vec<String> = Vec::new();
    for sized in plans {
        let copies = ("n", Number(sized.piece.copies));
        for stop in &sized.plan.inside {
            let whole = |mm: f64| format!("{:.0}", mm.floor().max(1.0));
            let line = match stop.what {
                Inside::Card { across_mm, hole_mm, .. } => {
                    let (mm, hole) = (whole(across_mm), whole(hole_mm.unwrap_or(0.0)));
                    let name = if hole_mm.is_some() { "need_flat_ring" } else { "need_disc" };
                    writer.say_of(name, &[copies, ("mm", Words(&mm)), ("hole", Words(&hole))])
                }
                Inside::Thread { .. } => writer.say("need_drawn"),
                Inside::Sewn { .. } => continue,
            };
            if !lines.contains(&line) {
                lines.push(line);
            }
        }
    }
    lines
}

/// What putting it together takes besides yarn and stuffing, a line each.
pub(super) fn needed(project: &Project, toy: &Assembled, writer: &Writer<'_>) -> Vec<String> {
    let mut lines: Vec<String> = Vec::new();
    for (index, part) in project.toy.parts.iter().enumerate() {
        let Thing::Small(small) = &part.what else { continue };
        let n = toy.parts.get(index).map_or(1, |part| part.number) as u32;
        let name = part_name(project, index, writer);
        let (phrase, mm) = match small.form {
            PartForm::Eye(b) | PartForm::Nose(b) if b.embroidered => {
                ("need_embroidery", length(b.diameter_mm, writer))
            }
            PartForm::Eye(b) => ("need_eye", length(b.diameter_mm, writer)),
            PartForm::Nose(b) => ("need_nose", length(b.diameter_mm, writer)),
            PartForm::Block(wide, deep, long) => {
                let sides = [wide, deep, long].map(|mm| length(mm, writer));
                ("need_part", sides.join(" × "))
            }
        };
        let words = [("part", Words(&name)), ("mm", Words(&mm))];
        let line = writer.say_n(phrase, if part.copies == Copies::One { 1 } else { n }, &words);
        if !lines.contains(&line) {
            lines.push(line);
        }
    }
    let mut cuts_wire = false;
    for (attachment, held) in project.toy.attachments.iter().zip(&toy.held) {
        let line = match (attachment, held) {
            (Attachment::Cord(cord), HeldPart::Cord { length: cut, .. }) => {
                sized("need_cord", cord.thickness_mm, cut.all_mm, "", writer)
            }
            (Attachment::Sling(sling), HeldPart::Sling(figures)) => {
                sized("need_cord", sling.thickness_mm, figures.all_mm, "", writer)
            }
            (Attachment::Loop(hanger), _) => {
                sized("need_loop", hanger.thickness_mm, hanger.around_mm, "", writer)
            }
            (Attachment::Wire(wire), HeldPart::Wire(figures)) => {
                cuts_wire = true;
                let metal = writer.say(wire.metal.word());
                sized("need_wire", wire.diameter_mm, figures.cut_mm, &metal, writer)
            }
            (Attachment::Joint(_), HeldPart::Joint { thread_mm }) => {
                sized("need_thread", 0.0, *thread_mm, "", writer)
            }
            _ => continue,
        };
        lines.push(line);
    }
    let mut stitched: BTreeMap<usize, f64> = BTreeMap::new();
    for (line, figures) in project.toy.embroidery.iter().zip(&toy.embroidery) {
        *stitched.entry(line.yarn).or_default() += figures.yarn_mm;
    }
    for (yarn, mm) in stitched.into_iter().filter(|(_, mm)| *mm > 0.0) {
        let (letter, mm) = (Yarn::letter(yarn), format!("{:.0}", 100.0 * (0.01 * mm).ceil()));
        let values = [("letter", Words(&letter)), ("mm", Words(&mm))];
        lines.push(writer.say_of("need_stitched", &values));
    }
    if cuts_wire {
        lines.push(writer.say("need_cutters"));
    }
    if project.toy.parts.iter().any(|part| part.on.is_some()) {
        lines.push(writer.say("need_pins"));
    }
    lines.into_iter().map(|line| capitalised(&line)).collect()
}

/// A line about something so thick of which so much is cut, mm.
fn sized(phrase: &str, thick: f64, cut: f64, metal: &str, writer: &Writer<'_>) -> String {
    let (thick, cut) = (length(thick, writer), format!("{:.0}", 10.0 * (0.1 * cut).ceil()));
    let values = [("thick", Words(&thick)), ("mm", Words(&cut)), ("metal", Words(metal))];
    writer.say_of(phrase, &values)
}

/// Millimetres without their unit: whole where they are.
fn length(mm: f64, writer: &Writer<'_>) -> String {
    let text = format!("{mm:.1}");
    writer.figure(text.strip_suffix(".0").unwrap_or(&text))
}
