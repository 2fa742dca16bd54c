//! What the steps of undo are called: what a person did, in the words of the bench.

use plumpline_core::{Spread, Unit, Yarn};

use super::choice::Choice;
use super::edit::Edit;
use super::measure::BoardDimension;
use super::pieces::PieceEdit;
use super::sizes::SizeEdit;

/// The name of the step that `edit` makes; `dragged` if it is part of a gesture.
pub(crate) fn step(edit: &Edit, dragged: bool, unit: Unit) -> String {
    match edit {
        Edit::Title(_) => "Name the project".into(),
        Edit::MoveKnots { lead, .. } if dragged => format!("Drag knot {}", lead + 1),
        Edit::MoveKnots { lead, .. } => format!("Move knot {}", lead + 1),
        Edit::AddKnot { knot, .. } => format!("Add knot {}", knot + 1),
        Edit::RemoveKnot(knot) => format!("Remove knot {}", knot + 1),
        Edit::ToggleCorner(knot) => format!("Turn knot {} sharp or smooth", knot + 1),
        Edit::ToggleEnd(0) => "Open or close the start".into(),
        Edit::ToggleEnd(_) => "Open or close the end".into(),
        Edit::Pin { round, count } if !dragged => format!("Pin round {round} at {count}"),
        Edit::Pin { round, .. } => format!("Pin round {round}"),
        Edit::Unpin(round) => format!("Let round {round} go"),
        Edit::Gauge(_) => "Gauge".into(),
        Edit::Firmness(firmness) if !dragged => format!("Stuff it {}", firmness.word()),
        Edit::Firmness(_) => "Firmness".into(),
        Edit::Simplicity(None) => "Default simplicity".into(),
        Edit::Simplicity(Some(_)) => "Simplicity".into(),
        Edit::Answer(_) => "Choose an answer".into(),
        Edit::Yarn { index, .. } => format!("Yarn {}", Yarn::letter(*index)),
        Edit::Band { round, yarn } => {
            format!("Yarn {} from round {round}", Yarn::letter(*yarn))
        }
        Edit::NewYarn { round } => format!("New yarn from round {round}"),
        Edit::ClearBand(round) => format!("No yarn change at round {round}"),
        Edit::Outline(_) => "Shape the outline".into(),
        Edit::Picture(Some(_)) => "Picture to trace".into(),
        Edit::Picture(None) => "Remove the picture".into(),
        Edit::Resize(BoardDimension::Height, mm) => format!("Height {}", unit.rough_text(*mm)),
        Edit::Resize(BoardDimension::Width, mm) => format!("Width {}", unit.rough_text(*mm)),
        Edit::Resize(BoardDimension::Neck, mm) => format!("Neck {}", unit.rough_text(*mm)),
        Edit::Resize(BoardDimension::Ruler, _) => "Scale the picture".into(),
        Edit::Resize(
            BoardDimension::KnotRadius(knot)
            | BoardDimension::KnotWidth(knot)
            | BoardDimension::KnotHeight(knot),
            _,
        ) => format!("Move knot {}", knot + 1),
        Edit::Choice(choice) => chosen(choice, unit),
        Edit::AddPieces(pieces) if pieces.len() == 1 => "Make a piece of a pattern".into(),
        Edit::AddPieces(_) => "Make pieces of a pattern".into(),
        Edit::Sheet(text, _) => format!("{} on the sheet", text.name()),
        Edit::Sizes(edit) => sized(edit),
        Edit::Piece(edit) => listed(edit),
        Edit::Toy(edit) => edit.step(),
        Edit::Wording(_) => "Words of the pattern".into(),
    }
}

fn sized(edit: &SizeEdit) -> String {
    match edit {
        SizeEdit::Add => "Add a size".into(),
        SizeEdit::Enter(size) => format!("Add the size {}", size.name),
        SizeEdit::Remove(_) => "Remove a size".into(),
        SizeEdit::Change(_, size) => format!("Size {}", size.name),
        SizeEdit::Take(_) | SizeEdit::Become(_) => "Make the piece another size".into(),
        SizeEdit::AddSeam(_) => "Add a seam".into(),
        SizeEdit::RemoveSeam(i) => format!("Remove seam {}", i + 1),
        SizeEdit::ChangeSeam(i, _) => format!("Seam {}", i + 1),
        SizeEdit::Meet(i) => format!("Make seam {} meet", i + 1),
        SizeEdit::Swap(..) => "Another yarn".into(),
        SizeEdit::Learn(_) => "Learn from the sample".into(),
    }
}

fn listed(edit: &PieceEdit) -> String {
    match edit {
        PieceEdit::Add(starter) => format!("Add a {}", starter.name().to_lowercase()),
        PieceEdit::Bring(piece) => format!("Add the piece {}", piece.name),
        PieceEdit::Move(_) => "Move the piece in the list".into(),
        PieceEdit::Duplicate => "Duplicate the piece".into(),
        PieceEdit::Remove => "Remove the piece".into(),
        PieceEdit::Name(_) => "Name the piece".into(),
        PieceEdit::Copies(n) => format!("Make {n} of it"),
    }
}

fn chosen(choice: &Choice, unit: Unit) -> String {
    match choice {
        Choice::Rules(_) => "Rules".into(),
        Choice::Spread(Spread::Stacked) => "Stack increases".into(),
        Choice::Spread(_) => "Spread increases".into(),
        Choice::Faces(_) => "Plain rounds".into(),
        Choice::Plain { from, to, on } => {
            let what = if *on { "Keep" } else { "Let" };
            let rounds = if from == to {
                format!("round {from}")
            } else {
                format!("rounds {from}–{to}")
            };
            format!("{what} {rounds} {}", if *on { "plain" } else { "be shaped" })
        }
        Choice::Straight(mm) => format!("Straight part {}", unit.rough_text(*mm)),
        Choice::Reverse { .. } => "Work from the other end".into(),
        Choice::Hold { knot, hold: None } => format!("Let knot {} go free", knot + 1),
        Choice::Hold { knot, .. } => format!("Hold knot {}", knot + 1),
        Choice::Card { knot, on: true } => format!("Card after knot {}", knot + 1),
        Choice::Card { knot, .. } => format!("No card after knot {}", knot + 1),
        Choice::Kind { round, kind } => format!("From round {round} {}", kind.name()),
        Choice::Loop { round, .. } => format!("Loops of round {round}"),
        Choice::Swatches(_) => "Other swatches".into(),
        Choice::Working(_) => "Spiral or joined".into(),
        Choice::Hand(_) => "Hook hand".into(),
        Choice::Packing(_) => "Stuffing by the litre".into(),
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn steps_say_what_was_done() {
        let outline = plumpline_core::Outline { knots: Vec::new() };
        let knot = Edit::MoveKnots { lead: 2, outline };
        assert_eq!(step(&knot, true, Unit::Mm), "Drag knot 3");
        assert_eq!(step(&knot, false, Unit::Mm), "Move knot 3");
        assert_eq!(step(&Edit::Pin { round: 12, count: 40 }, true, Unit::Mm), "Pin round 12");
        let plain = Choice::Plain { from: 4, to: 6, on: true };
        assert_eq!(step(&Edit::Choice(plain), false, Unit::Mm), "Keep rounds 4–6 plain");
        let tall = Edit::Resize(BoardDimension::Height, 120.0);
        assert_eq!(step(&tall, false, Unit::Cm), "Height 12.0 cm");
    }
}
