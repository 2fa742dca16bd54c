//! The one place where the project and the view are changed.

use super::board::Drag;
use super::look::Look;
use super::{Notice, View};
use crate::document::Document;
use crate::document::edit::Edit;
use crate::document::measure::{self, BoardDimension};
use crate::document::toy::{PartTrait, ToyEdit};
use crate::view::toy::ToyPick;
use plumpline_core::plan;

/// Makes one change of the project, in one step or as part of the gesture under way.
pub fn edit(document: &mut Document, view: &mut View, edit: Edit) {
    let follow = edit.clone();
    let piece = document.piece_id();
    let taken = taken_by(document, &edit);
    let changed = document.edit(edit, view.prefs.units());
    if let Some(taken) = taken.filter(|_| changed) {
        view.toy.taken = taken;
    }
    if document.piece_id() != piece {
        view.let_go();
    }
    match follow {
        Edit::Resize(dimension, mm) if dimension.is_finished() => {
            let piece = document.piece();
            let said = plan(piece).ok().and_then(|plan| {
                measure::missed(piece, &plan, dimension, mm, view.prefs.units())
            });
            view.notice = said.map(|text| Notice { text, wrong: false, undo: false });
        }
        Edit::AddKnot { knot, .. } if changed => view.select_knots(&[knot]),
        Edit::RemoveKnot(_) if changed => view.select_knots(&[]),
        // The rounds shown beside the answers are those in use again.
        Edit::Simplicity(_) | Edit::Answer(_) => view.answer = None,
        _ => {}
    }
}

/// What is in hand once a change of the toy is made, if it is about another thing: a part may
/// come to have another place in the list.
fn taken_by(document: &Document, edit: &Edit) -> Option<Option<ToyPick>> {
    let toy = &document.project().toy;
    let Edit::Toy(edit) = edit else { return None };
    match edit {
        ToyEdit::Add { .. } => Some(Some(ToyPick::Part(toy.parts.len()))),
        ToyEdit::Attach(_) => Some(Some(ToyPick::Attachment(toy.attachments.len()))),
        ToyEdit::Change { index, what: PartTrait::Carrier, part, .. } => {
            let index = toy.clone().change(*index, part.as_ref().clone());
            Some(Some(ToyPick::Part(index)))
        }
        ToyEdit::Remove { .. } | ToyEdit::Detach(_) => Some(None),
        _ => None,
    }
}

/// Makes one change of what is looked at.
pub fn look(document: &mut Document, view: &mut View, look: Look) {
    match look {
        Look::Select(round) => {
            view.selected = round;
            if round.is_some() {
                view.select_knots(&[]);
            }
        }
        Look::Knots(knots) => {
            take_typed(document, view);
            view.select_knots(&knots);
        }
        Look::Drag(drag) => {
            view.dragged_knot = match &drag {
                Some(Drag::Knots { lead, .. }) => Some(*lead),
                _ => None,
            };
            view.board.drag = drag;
        }
        Look::Sheet(sheet) => view.sheet = sheet,
        Look::Sizes(sizes) => view.sizes = *sizes,
        Look::Toy(toy) => view.toy = *toy,
        Look::Lesson(lesson) => view.lesson = *lesson,
        Look::Band(on) => view.board.band = on,
        Look::Lens(lens) => view.lens = lens,
        Look::Picture(on) => {
            view.typing = None;
            view.board.picture = on;
        }
        Look::Bare(on) => view.board.bare = on,
        Look::ByWidth(on) => view.board.by_width = on,
        Look::Warn(text) => view.notice = Some(Notice { text, wrong: true, undo: false }),
        Look::Tell(text) => view.notice = Some(Notice { text, wrong: false, undo: false }),
        Look::DragBar(bar) => view.dragged_bar = bar,
        Look::Type(typing) => view.typing = typing,
        Look::Piece(id) => {
            document.select_piece(id);
            view.let_go();
        }
        Look::Hide(id, true) => {
            view.hidden.insert(id);
        }
        Look::Hide(id, false) => {
            view.hidden.remove(&id);
        }
        Look::Dismiss => view.notice = None,
        Look::Card(card) => view.card = card,
        Look::Ball(made) => view.ball = made,
        Look::Turn(turned) => view.turned = turned,
        Look::Board(face) => view.face = face,
        Look::Present(present) => view.present = present,
        Look::Answer(answer) => view.answer = answer,
        Look::Read(kinds) => view.read = kinds,
        Look::Over(over) => view.over = over,
        Look::Trace(tracing) => view.tracing = *tracing,
        Look::Prefs(prefs) => view.prefs = prefs,
    }
}

/// Takes what is being typed for a knot before another one is selected, for its field is
/// gone then.
fn take_typed(document: &mut Document, view: &mut View) {
    let of_knot =
        |d| !matches!(d, BoardDimension::Height | BoardDimension::Width | BoardDimension::Neck);
    let Some(typing) = view.typing.take_if(|typing| of_knot(typing.dimension)) else { return };
    if let Some(Ok(mm)) = typing.entered() {
        edit(document, view, Edit::Resize(typing.dimension, mm));
    }
}

/// Selects a round, counted from the one there is.
pub fn step_round(view: &mut View, rounds: usize, step: impl FnOnce(Option<u32>) -> u32) {
    if rounds > 0 {
        let round = step(view.current_round()).clamp(1, rounds as u32);
        view.selected = Some(round);
        view.show_round = Some(round);
        view.select_knots(&[]);
    }
}

/// Selects a knot, `step` on from the one there is.
pub fn step_knot(view: &mut View, knots: usize, step: isize) {
    if knots > 0 {
        let at = view.knot.map_or(if step > 0 { -1 } else { 0 }, |k| k as isize);
        view.select_knots(&[(at + step).rem_euclid(knots as isize) as usize]);
    }
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::document::choice::Choice;
    use plumpline_core::Extent;
    use plumpline_core::piece::Picture;
    use plumpline_core::project::sheet_design::{SheetDesign, SheetSection};
    use plumpline_core::{Hold, Kind, Loop, PieceId, Yarn};

    fn sample() -> (Document, View) {
        (Document::sample(), View::default())
    }

    #[test]
    fn every_edit_is_one_step_and_undo_brings_equality() {
        let mut design = SheetDesign::default();
        design.show(SheetSection::Tester, true);
        let edits = [
            Edit::SheetDesign { design, typed: false },
            Edit::Title("Buoy".into()),
            Edit::MoveKnots { lead: 2, outline: Document::blank().piece().outline.clone() },
            Edit::AddKnot { knot: 2, radius_mm: 31.0, height_mm: 13.0 },
            Edit::RemoveKnot(3),
            Edit::ToggleCorner(3),
            Edit::ToggleEnd(6),
            Edit::ToggleEnd(0),
            Edit::Pin { round: 9, count: 50 },
            Edit::Simplicity(Some(0.8)),
            Edit::Band { round: 20, yarn: 0 },
            Edit::NewYarn { round: 5 },
            Edit::ClearBand(17),
            Edit::Paint {
                piece: PieceId::default(),
                round: 4,
                count: 24,
                stitches: (3, 9),
                yarn: Some(1),
            },
            Edit::Yarn { index: 1, yarn: Yarn::plain(2) },
            Edit::Resize(BoardDimension::Height, 140.0),
            Edit::Resize(BoardDimension::Width, 70.0),
            Edit::Resize(BoardDimension::KnotRadius(2), 44.0),
            Edit::Outline(Document::blank().piece().outline.clone()),
            Edit::Picture(Some(Picture::new("pear.png", (0.0, 60.0), 90.0))),
            Edit::Choice(Choice::Straight(20.0)),
            Edit::Choice(Choice::Reverse { rounds: 35 }),
            Edit::Choice(Choice::Hold { knot: 3, hold: Some(Hold::Cinched) }),
            Edit::Choice(Choice::Card { knot: 3, on: true }),
            Edit::Choice(Choice::Kind { round: 7, kind: Kind::HalfDouble }),
            Edit::Choice(Choice::Loop { round: 7, only: Some(Loop::Back) }),
        ];
        for one in edits {
            let (mut document, mut view) = sample();
            let before = document.project().clone();
            edit(&mut document, &mut view, one.clone());
            assert_ne!(document.project(), &before, "{one:?} changes nothing");
            assert_eq!(document.history.undo_steps(), 1, "{one:?}");
            document.undo();
            assert_eq!(document.project(), &before, "{one:?}");
        }
    }

    #[test]
    fn typing_is_one_step() {
        let (mut document, mut view) = sample();
        for title in ["B", "Bu", "Buo", "Buoy"] {
            edit(&mut document, &mut view, Edit::Title(title.into()));
        }
        assert_eq!(document.history.undo_steps(), 1);
        edit(&mut document, &mut view, Edit::Simplicity(Some(0.7)));
        edit(&mut document, &mut view, Edit::Title("Float".into()));
        assert_eq!(document.history.undo_steps(), 3);
    }

    #[test]
    fn a_typed_size_is_what_the_forecast_comes_to() {
        for (dimension, mm) in [(BoardDimension::Height, 150.0), (BoardDimension::Width, 60.0)]
        {
            let (mut document, mut view) = sample();
            edit(&mut document, &mut view, Edit::Resize(dimension, mm));
            let Extent { height, width } = plan(document.piece()).expect("a plan").size_mm;
            let got = if dimension == BoardDimension::Height { height } else { width };
            assert!((got - mm).abs() < 2.5, "{dimension:?} {got}");
        }
    }

    #[test]
    fn rounds_and_knots_are_stepped_through() {
        let (_, mut view) = sample();
        step_round(&mut view, 30, |r| r.map_or(1, |r| r + 1));
        assert_eq!(view.selected, Some(1));
        step_round(&mut view, 30, |r| r.map_or(1, |r| r.saturating_sub(1)));
        assert_eq!(view.selected, Some(1));
        step_knot(&mut view, 8, 1);
        assert_eq!(view.knot, Some(0));
        step_knot(&mut view, 8, -1);
        assert_eq!(view.knot, Some(7));
    }
}
