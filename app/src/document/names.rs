//! What the steps of undo are called: what a person did, in the words of the bench.

use plumpline_core::{Spread, Units, Yarn};

use super::choice::Choice;
use super::edit::Edit;
use super::measure::BoardDimension;
use super::pieces::PieceEdit;
use super::sizes::SizeEdit;
use crate::kit::words::terms;

/// The name of the step that `edit` makes; `dragged` if it is part of a gesture.
pub(crate) fn step(edit: &Edit, dragged: bool, unit: Units) -> String {
    match edit {
        Edit::Title(_) => say!("step-name-the-project").into(),
        Edit::MoveKnots { lead, .. } if dragged => say!("step-drag-knot-knot", knot = lead + 1),
        Edit::MoveKnots { lead, .. } => say!("step-move-knot-knot", knot = lead + 1),
        Edit::AddKnot { knot, .. } => say!("step-add-knot-knot", knot = knot + 1),
        Edit::RemoveKnot(knot) => say!("step-remove-knot-knot", knot = knot + 1),
        Edit::ToggleCorner(knot) => {
            say!("step-make-knot-knot-sharp-or-smooth", knot = knot + 1)
        }
        Edit::ToggleEnd(0) => say!("step-open-or-close-the-start").into(),
        Edit::ToggleEnd(_) => say!("step-open-or-close-the-end").into(),
        Edit::Pin { round, count } if !dragged => {
            say!("step-pin-at", round = round, count = count)
        }
        Edit::Pin { round, .. } => say!("step-pin-round-round", round = round),
        Edit::Unpin(round) => say!("step-unpin-round-round", round = round),
        Edit::Gauge(_) => say!("step-gauge").into(),
        Edit::Firmness(firmness) if !dragged => {
            say!("step-stuff-it", how = terms::firmness(*firmness))
        }
        Edit::Firmness(_) => say!("step-firmness").into(),
        Edit::Simplicity(None) => say!("step-default-simplicity").into(),
        Edit::Simplicity(Some(_)) => say!("step-simplicity").into(),
        Edit::Answer(_) => say!("step-choose-a-result").into(),
        Edit::Yarn { index, .. } => say!("yarn-letter", letter = Yarn::letter(*index)),
        Edit::Band { round, yarn } => {
            say!(
                "step-yarn-letter-from-round-round",
                letter = Yarn::letter(*yarn),
                round = round
            )
        }
        Edit::NewYarn { round } => say!("step-new-yarn-from-round-round", round = round),
        Edit::ClearBand(round) => say!("step-no-change-of-yarn-at-round-round", round = round),
        Edit::Paint { yarn: Some(_), .. } if dragged => say!("step-paint-stitches").into(),
        Edit::Paint { yarn: None, .. } if dragged => say!("step-take-paint-off").into(),
        Edit::Paint { round, yarn: Some(yarn), .. } => {
            say!("step-paint-round-in-yarn", round = round, letter = Yarn::letter(*yarn))
        }
        Edit::Paint { round, .. } => say!("step-take-paint-off-round", round = round),
        Edit::Outline(_) => say!("step-shape-the-outline").into(),
        Edit::Picture(Some(_)) => say!("step-picture-to-trace").into(),
        Edit::Picture(None) => say!("step-remove-the-picture").into(),
        Edit::Resize(BoardDimension::Height, mm) => {
            say!("step-height-length", length = unit.rough_text(*mm))
        }
        Edit::Resize(BoardDimension::Width, mm) => {
            say!("step-width-length", length = unit.rough_text(*mm))
        }
        Edit::Resize(BoardDimension::Neck, mm) => {
            say!("step-neck-length", length = unit.rough_text(*mm))
        }
        Edit::Resize(BoardDimension::Ruler, _) => say!("step-scale-the-picture").into(),
        Edit::Resize(
            BoardDimension::KnotRadius(knot)
            | BoardDimension::KnotWidth(knot)
            | BoardDimension::KnotHeight(knot),
            _,
        ) => say!("step-move-knot-knot", knot = knot + 1),
        Edit::Choice(choice) => chosen(choice, unit),
        Edit::AddPieces(pieces) if pieces.len() == 1 => {
            say!("step-make-a-piece-from-a-pattern").into()
        }
        Edit::AddPieces(_) => say!("step-make-pieces-from-a-pattern").into(),
        Edit::Sheet(text, _) => say!("step-entry-on-the-sheet", entry = text.name()),
        Edit::SheetDesign { .. } => say!("step-arrange-the-sheet").into(),
        Edit::Sizes(edit) => sized(edit),
        Edit::Piece(edit) => listed(edit),
        Edit::Toy(edit) => edit.step(),
        Edit::Wording(_) => say!("step-words-of-the-pattern").into(),
    }
}

fn sized(edit: &SizeEdit) -> String {
    match edit {
        SizeEdit::Add => say!("step-add-a-size").into(),
        SizeEdit::Enter(size) => say!("step-add-the-size-name", name = size.name),
        SizeEdit::Remove(_) => say!("step-remove-a-size").into(),
        SizeEdit::Change(_, size) => say!("step-size-name", name = size.name),
        SizeEdit::Take(_) | SizeEdit::Become(_) => {
            say!("step-make-the-piece-another-size").into()
        }
        SizeEdit::AddSeam(_) => say!("step-add-a-seam").into(),
        SizeEdit::RemoveSeam(i) => say!("step-remove-seam-number", number = i + 1),
        SizeEdit::ChangeSeam(i, _) => say!("step-seam-number", number = i + 1),
        SizeEdit::Meet(i) => say!("step-match-seam-number", number = i + 1),
        SizeEdit::Swap(..) => say!("step-another-yarn").into(),
        SizeEdit::Learn(_) => say!("step-use-the-measured-sample").into(),
    }
}

fn listed(edit: &PieceEdit) -> String {
    match edit {
        PieceEdit::Add(starter) => terms::add(*starter).into(),
        PieceEdit::Bring(piece) => say!("step-add-the-piece", name = piece.name),
        PieceEdit::Move(_) => say!("step-move-the-piece-in-the-list").into(),
        PieceEdit::Duplicate => say!("step-duplicate-the-piece").into(),
        PieceEdit::Remove => say!("step-remove-the-piece").into(),
        PieceEdit::Name(_) => say!("step-name-the-piece").into(),
        PieceEdit::Copies(n) => say!("step-how-many-n", n = n),
    }
}

fn chosen(choice: &Choice, unit: Units) -> String {
    match choice {
        Choice::Rules(_) => say!("step-rules").into(),
        Choice::Spread(Spread::Stacked) => say!("step-stack-increases").into(),
        Choice::Spread(_) => say!("step-spread-increases").into(),
        Choice::Faces(_) => say!("step-plain-rounds").into(),
        Choice::Plain { from, to, on } => {
            let rounds = if from == to {
                say!("step-one-round", round = *from)
            } else {
                say!("step-rounds", from = *from, to = *to)
            };
            if *on {
                say!("step-plain", rounds = rounds)
            } else {
                say!("step-shaped", rounds = rounds)
            }
        }
        Choice::Straight(mm) => {
            say!("step-straight-part-length", length = unit.rough_text(*mm))
        }
        Choice::Reverse { .. } => say!("step-work-from-the-other-end").into(),
        Choice::Hold { knot, hold: None } => say!("step-free-knot-knot", knot = knot + 1),
        Choice::Hold { knot, .. } => say!("step-hold-knot-knot", knot = knot + 1),
        Choice::Card { knot, on: true } => say!("step-card-after-knot-knot", knot = knot + 1),
        Choice::Card { knot, .. } => say!("step-no-card-after-knot-knot", knot = knot + 1),
        Choice::Kind { round, kind } => {
            say!("step-kind", kind = terms::kind(*kind), round = *round)
        }
        Choice::Loop { round, .. } => say!("step-loops-of-round-round", round = round),
        Choice::Swatches(_) => say!("step-swatches-in-other-stitches").into(),
        Choice::Working(_) => say!("step-spiral-or-joined").into(),
        Choice::Hand(_) => say!("step-hook-hand").into(),
        Choice::Packing(_) => say!("step-stuffing-grams-per-liter").into(),
    }
}

#[cfg(test)]
mod tests {
    use super::*;
    use plumpline_core::Unit;

    #[test]
    fn steps_say_what_was_done() {
        let outline = plumpline_core::Outline { knots: Vec::new() };
        let knot = Edit::MoveKnots { lead: 2, outline };
        assert_eq!(step(&knot, true, Unit::Mm.into()), "Drag knot 3");
        assert_eq!(step(&knot, false, Unit::Mm.into()), "Move knot 3");
        assert_eq!(
            step(&Edit::Pin { round: 12, count: 40 }, true, Unit::Mm.into()),
            "Pin round 12"
        );
        let plain = Choice::Plain { from: 4, to: 6, on: true };
        assert_eq!(step(&Edit::Choice(plain), false, Unit::Mm.into()), "Keep rounds 4–6 plain");
        let tall = Edit::Resize(BoardDimension::Height, 120.0);
        assert_eq!(step(&tall, false, Unit::Cm.into()), "Height 12.0 cm");
    }
}
