//! What is done when: whatever needs a hand inside before the stuffing, then faces, then parts
//! on parts before these go on bodies, then what holds bodies together.

use super::phrases::AssemblyPhrases;
use super::say::Speaker;
use super::stitched::stitched;
use crate::project::Project;
use crate::project::toy::attachment::Attachment;
use crate::project::toy::part::{Part, PartForm, Thing};
use crate::toy::assembled::Assembled;
use crate::words::write::Writer;

/// What kind of work a step is, in working order.
#[derive(Debug, Clone, Copy, PartialEq, Eq, PartialOrd, Ord)]
pub enum StepKind {
    /// While the body can still be reached into.
    Inside,
    /// Embroidery.
    Embroider,
    /// A part put on.
    PutOn,
    /// Bodies joined, rings and loops.
    Join,
}

/// One thing to do.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct AssemblyStep {
    /// What kind of work it is.
    pub kind: StepKind,
    /// The parts it is about, indices into the toy's: what a picture of it shows.
    pub parts: Vec<usize>,
    /// The attachment it is about.
    pub attachment: Option<usize>,
    /// What to do, in a sentence.
    pub text: String,
}

/// The steps of putting `toy` together, in working order, in the words of `writer`.
pub fn steps(project: &Project, toy: &Assembled, writer: &Writer<'_>) -> Vec<AssemblyStep> {
    let phrases = AssemblyPhrases::of(writer.lexicon());
    let speaker = Speaker { project, toy, writer, phrases };
    let parts = &project.toy.parts;
    let mut steps: Vec<(usize, AssemblyStep)> = Vec::new();
    for (index, part) in parts.iter().enumerate() {
        let (Some(seat), Some(figures)) = (part.on, toy.parts.get(index)) else { continue };
        let (kind, text) = match (&part.what, &figures.point) {
            (Thing::Small(small), Some(point)) => {
                (kind_of(part), speaker.small(index, seat, small, point))
            }
            (Thing::Piece(_), _) => (StepKind::PutOn, speaker.seat(index, seat)),
            (Thing::Small(_), None) => continue,
        };
        let step = AssemblyStep { kind, parts: vec![index, seat.part], attachment: None, text };
        steps.push((depth(parts, index), step));
    }
    for (line, figures) in project.toy.embroidery.iter().zip(&toy.embroidery) {
        if line.places.len() < line.stitch.least_places() {
            continue;
        }
        let text = stitched(&speaker, line, figures);
        let (kind, parts) = (StepKind::Embroider, vec![line.part]);
        let step = AssemblyStep { kind, parts, attachment: None, text };
        steps.push((depth(&project.toy.parts, line.part), step));
    }
    for (index, attachment) in project.toy.attachments.iter().enumerate() {
        let text = speaker.attachment(index);
        let kind = match attachment {
            Attachment::Joint(_) => StepKind::PutOn,
            Attachment::Cord(_)
            | Attachment::Loop(_)
            | Attachment::Wire(_)
            | Attachment::Sling(_) => StepKind::Join,
        };
        let step =
            AssemblyStep { kind, parts: attachment.parts(), attachment: Some(index), text };
        steps.push((0, step));
    }
    // Deepest first: an ear on a head before the head goes on.
    steps.sort_by_key(|(depth, step)| (step.kind, std::cmp::Reverse(*depth)));
    steps.into_iter().map(|(_, step)| step).collect()
}

fn kind_of(part: &Part) -> StepKind {
    let Thing::Small(small) = &part.what else { return StepKind::PutOn };
    match small.form {
        PartForm::Eye(b) | PartForm::Nose(b) if b.embroidered => StepKind::Embroider,
        PartForm::Eye(_) | PartForm::Nose(_) => StepKind::Inside,
        PartForm::Block(_, _, long) if part.on.is_some_and(|seat| seat.sunk_mm >= long) => {
            StepKind::Inside
        }
        PartForm::Block(..) => StepKind::PutOn,
    }
}

/// How many parts carry it, one on another.
fn depth(parts: &[Part], index: usize) -> usize {
    let mut depth = 0;
    let mut at = index;
    while let Some(seat) = parts.get(at).and_then(|part| part.on) {
        at = seat.part;
        depth += 1;
    }
    depth
}
