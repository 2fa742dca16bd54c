//! Changes of the toy: which parts it has, where they sit, what holds it together.

use plumpline_core::project::toy::attachment::Attachment;
use plumpline_core::project::toy::embroidery::Embroidery;
use plumpline_core::project::toy::part::Part;
use plumpline_core::project::toy::{MOST_ATTACHMENTS, MOST_PARTS, MadeFor};
use plumpline_core::{Project, Yarn};

/// A change of the toy.
#[derive(Debug, Clone, PartialEq)]
pub enum ToyEdit {
    /// Another part, after all others.
    Add {
        /// The part.
        part: Box<Part>,
        /// What it is called.
        called: String,
    },
    /// No longer this part, nor what it carries.
    Remove {
        /// Which, an index into the toy's.
        index: usize,
        /// What it is called.
        called: String,
    },
    /// Something else of a part.
    Change {
        /// Which, an index into the toy's.
        index: usize,
        /// What is changed.
        what: PartTrait,
        /// The part with that.
        part: Box<Part>,
        /// What it is called.
        called: String,
    },
    /// Each copy of a part gets a place of its own.
    Separate {
        /// Which, an index into the toy's.
        index: usize,
        /// What it is called.
        called: String,
    },
    /// Who the toy is made for.
    MadeFor(MadeFor),
    /// Another attachment, after all others.
    Attach(Attachment),
    /// Another attachment in place of this one.
    ChangeAttachment(usize, Attachment),
    /// No longer this attachment.
    Detach(usize),
    /// What is embroidered, all of it; a yarn one past the last is a new one.
    Embroider(Vec<Embroidery>),
}

/// What of a part is changed: changes of one kind that follow one another are one step.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum PartTrait {
    /// Its place on what carries it.
    Place,
    /// What carries it.
    Carrier,
    /// By which edge it is put on.
    Edge,
    /// How it is turned.
    Turn,
    /// How it leans.
    Tilt,
    /// How deep it is sunk in.
    Sunk,
    /// Its copies.
    Copies,
    /// What holds it.
    HeldBy,
    /// Whether it is stuffed.
    Stuffing,
    /// Which stitch of it looks ahead.
    Front,
    /// What of it is up.
    Up,
    /// The size, the name or the weight of a small thing.
    Size,
}

impl PartTrait {
    /// What a change of it is called, of the part `called` so.
    pub(crate) fn step(self, called: &str) -> String {
        match self {
            Self::Place => say!("toy-step-move-called", called = called),
            Self::Carrier => say!("toy-step-what-called-sits-on", called = called),
            Self::Edge => say!("toy-step-edge-of-called", called = called),
            Self::Turn => say!("toy-step-turn-called", called = called),
            Self::Tilt => say!("toy-step-tilt-called", called = called),
            Self::Sunk => say!("toy-step-how-deep-called-is-sunk-in", called = called),
            Self::Copies => say!("toy-step-how-many-of-called", called = called),
            Self::HeldBy => say!("toy-step-what-holds-called", called = called),
            Self::Stuffing => say!("toy-step-stuffing-of-called", called = called),
            Self::Front => say!("toy-step-front-of-called", called = called),
            Self::Up => say!("toy-step-what-of-called-is-up", called = called),
            Self::Size => say!("toy-step-size-of-called", called = called),
        }
    }

    /// Whether changes of it come in runs: nudges by keys, a number that is typed.
    pub(crate) const fn runs(self) -> bool {
        matches!(self, Self::Place | Self::Turn | Self::Tilt | Self::Sunk | Self::Size)
    }
}

impl ToyEdit {
    /// Makes the change.
    pub(crate) fn make(self, project: &mut Project) {
        if let Self::Embroider(lines) = &self
            && lines.iter().any(|line| line.yarn == project.yarns.len())
        {
            project.yarns.push(Yarn::plain(project.yarns.len()));
        }
        let toy = &mut project.toy;
        match self {
            Self::Add { part, .. } if toy.parts.len() < MOST_PARTS => toy.parts.push(*part),
            Self::Remove { index, .. } if index < toy.parts.len() => toy.remove(index),
            Self::Change { index, part, .. } => {
                toy.change(index, *part);
            }
            Self::Separate { index, .. } => {
                toy.separate(index);
            }
            Self::MadeFor(made_for) => toy.made_for = made_for,
            Self::Attach(attachment) if toy.attachments.len() < MOST_ATTACHMENTS => {
                toy.attachments.push(attachment);
            }
            Self::ChangeAttachment(index, attachment) => {
                if let Some(place) = toy.attachments.get_mut(index) {
                    *place = attachment;
                }
            }
            Self::Detach(index) if index < toy.attachments.len() => {
                toy.attachments.remove(index);
            }
            Self::Embroider(lines) => toy.embroidery = lines,
            Self::Add { .. } | Self::Remove { .. } | Self::Attach(_) | Self::Detach(_) => {}
        }
    }

    /// What a run of such changes has in common that is undone as one.
    pub(crate) fn run(&self) -> Option<(&'static str, usize)> {
        match self {
            Self::Change { index, what, .. } if what.runs() => {
                Some(("part", 16 * index + *what as usize))
            }
            Self::ChangeAttachment(index, _) => Some(("attachment", *index)),
            _ => None,
        }
    }

    /// The name of the step that it makes.
    pub(crate) fn step(&self) -> String {
        match self {
            Self::Add { part, called } if part.on.is_none() => {
                say!("toy-step-put-down-called", called = called)
            }
            Self::Add { called, .. } => say!("toy-step-add-called", called = called),
            Self::Remove { called, .. } => say!("toy-step-remove-called", called = called),
            Self::Change { what, called, .. } => what.step(called),
            Self::Separate { called, .. } => {
                say!("toy-step-each-called-its-own-place", called = called)
            }
            Self::MadeFor(_) => say!("toy-step-who-it-is-made-for").into(),
            Self::Attach(attachment) => {
                say!("toy-step-attach", what = attachment_word(attachment))
            }
            Self::ChangeAttachment(_, attachment) => {
                say!("toy-step-change-the-what", what = attachment_word(attachment))
            }
            Self::Detach(_) => say!("toy-step-remove-what-holds-it").into(),
            Self::Embroider(_) => say!("toy-step-embroidery").into(),
        }
    }
}

/// What an attachment is called.
pub fn attachment_word(attachment: &Attachment) -> &'static str {
    match attachment {
        Attachment::Cord(_) => say!("toy-step-cord"),
        Attachment::Loop(_) => say!("toy-step-loop"),
        Attachment::Wire(_) => say!("toy-step-wire"),
        Attachment::Joint(_) => say!("toy-step-joint"),
        Attachment::Sling(_) => say!("toy-step-sling"),
    }
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::document::Document;
    use crate::document::edit::Edit;
    use plumpline_core::project::toy::attachment::{
        CordHold, CordSpot, Hanger, Joint, Knots, Sling, SlingHold, SlingLengths,
    };
    use plumpline_core::project::toy::embroidery::EmbroideryStitch;
    use plumpline_core::project::toy::part::{BodyFront, Copies, HeldBy, PartEnd, Place, Up};
    use plumpline_core::{Unit, file};

    const COB: &str = include_str!("../../../sample-projects/moor-cob.ron");

    fn cob() -> Document {
        Document::new(file::parse(COB).expect("the sample is sound"), None)
    }

    fn changed(index: usize, what: PartTrait, change: impl FnOnce(&mut Part)) -> ToyEdit {
        let mut part = cob().project().toy.parts[index].clone();
        change(&mut part);
        ToyEdit::Change { index, what, part: Box::new(part), called: "ear".into() }
    }

    fn seated(
        what: PartTrait,
        change: impl FnOnce(&mut plumpline_core::project::toy::part::Seat),
    ) -> ToyEdit {
        changed(2, what, |part| change(part.on.as_mut().expect("it is carried")))
    }

    fn ring() -> Attachment {
        Attachment::Loop(Hanger {
            on: CordHold { part: 0, at: CordSpot::End(PartEnd::Last) },
            around: None,
            stands_off_mm: 12.0,
            around_mm: 60.0,
            thickness_mm: 2.0,
        })
    }

    #[test]
    fn every_change_of_the_toy_is_one_step_and_undo_brings_equality() {
        let body = cob().project().pieces[0].id;
        let edits = [
            ToyEdit::Add { part: Box::new(Part::body(body)), called: "Body".into() },
            ToyEdit::Remove { index: 1, called: "Head".into() },
            seated(PartTrait::Place, |seat| seat.at.around = 0.25),
            seated(PartTrait::Carrier, |seat| seat.part = 5),
            seated(PartTrait::Edge, |seat| seat.by.end = PartEnd::Start),
            seated(PartTrait::Turn, |seat| seat.turn_deg = 15.0),
            seated(PartTrait::Tilt, |seat| seat.tilt_deg = 15.0),
            seated(PartTrait::Sunk, |seat| seat.sunk_mm = 3.0),
            changed(2, PartTrait::Copies, |part| part.copies = Copies::Around(3)),
            changed(2, PartTrait::HeldBy, |part| part.held_by = HeldBy::Thread),
            changed(1, PartTrait::Stuffing, |part| part.unstuffed = true),
            changed(1, PartTrait::Front, |part| {
                part.front = BodyFront { along: 0.4, around: 0.25 };
            }),
            changed(0, PartTrait::Up, |part| part.up = Up::Start),
            ToyEdit::MadeFor(MadeFor::Ornament),
            ToyEdit::Attach(ring()),
            ToyEdit::Attach(Attachment::Joint(Joint { part: 3, passes: 2 })),
            ToyEdit::Embroider(vec![Embroidery {
                name: String::new(),
                part: 0,
                stitch: EmbroideryStitch::Back,
                yarn: cob().project().yarns.len(),
                places: vec![
                    Place { along: 0.4, around: -0.1 },
                    Place { along: 0.4, around: 0.1 },
                ],
                mirrored: false,
            }]),
            ToyEdit::Attach(Attachment::Sling(Sling {
                legs: [0.2, -0.2]
                    .map(|around| SlingHold { part: 0, at: Place { along: 0.8, around } })
                    .to_vec(),
                lengths: SlingLengths::Upright,
                above_mm: 60.0,
                knots: Knots::Inside,
                thickness_mm: 2.0,
            })),
        ];
        for one in edits {
            let mut document = cob();
            let before = document.project().clone();
            let edit = Edit::Toy(one.clone());
            assert!(document.edit(edit, Unit::Mm.into()), "{one:?} changes nothing");
            assert!(document.project().validate().is_ok(), "{one:?}");
            assert_eq!(document.history.undo_steps(), 1, "{one:?}");
            document.undo();
            assert_eq!(document.project(), &before, "{one:?}");
            document.redo();
            assert_ne!(document.project(), &before, "{one:?}");
        }
    }

    #[test]
    fn what_holds_the_toy_is_changed_and_taken_away_again() {
        let mut document = cob();
        document.edit(Edit::Toy(ToyEdit::Attach(ring())), Unit::Mm.into());
        let before = document.project().clone();
        let mut other = ring();
        if let Attachment::Loop(hanger) = &mut other {
            hanger.around_mm = 90.0;
        }
        let steps = [ToyEdit::ChangeAttachment(0, other), ToyEdit::Detach(0)];
        for step in steps.clone() {
            assert!(document.edit(Edit::Toy(step), Unit::Mm.into()));
        }
        assert_eq!(document.history.undo_steps(), 1 + steps.len());
        document.undo();
        document.undo();
        assert_eq!(document.project(), &before);
    }

    #[test]
    fn nudges_of_one_part_are_one_step_and_a_turn_is_another() {
        let mut document = cob();
        for around in [0.21, 0.22, 0.23] {
            let edit = seated(PartTrait::Place, |seat| seat.at.around = around);
            document.edit(Edit::Toy(edit), Unit::Mm.into());
        }
        assert_eq!(document.history.undo_steps(), 1);
        let turn = seated(PartTrait::Turn, |seat| seat.turn_deg = 30.0);
        document.edit(Edit::Toy(turn), Unit::Mm.into());
        assert_eq!(document.history.undo_steps(), 2);
        assert_eq!(document.history.names().collect::<Vec<_>>(), ["Move ear", "Turn ear"]);
    }
}
