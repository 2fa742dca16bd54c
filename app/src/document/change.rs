//! What each edit does to the project.

use plumpline_core::project::shape::add_to;
use plumpline_core::{Band, Knot, Outline, Piece, PieceId, Project, Units, Yarn};

use super::Document;
use super::edit::Edit;
use super::measure;
use super::names;
use super::shaping::OFF_AXIS_MM;

impl Document {
    /// Makes one change of the project, in one step or as part of the gesture under way;
    /// lengths in the step's name are in `unit`. Selects the piece it is about. Returns
    /// whether anything changed.
    pub fn edit(&mut self, edit: Edit, unit: Units) -> bool {
        let name = names::step(&edit, self.history.in_gesture(), unit);
        let run = edit.run();
        let mut next = self.piece_id();
        let changed = self.change(name, run, |project, piece| {
            next = change(project, piece, edit);
        });
        self.select_piece(next);
        changed
    }
}

/// Changes the project; `id` is the selected piece. Returns the one to select now.
fn change(project: &mut Project, id: PieceId, edit: Edit) -> PieceId {
    let Some(index) = project.position(id) else { return id };
    let yarns = &mut project.yarns;
    let piece = &mut project.pieces[index];
    match edit {
        Edit::Title(title) => project.title = title,
        Edit::Wording(wording) => project.wording = wording,
        Edit::Yarn { index, yarn } => {
            if let Some(place) = yarns.get_mut(index) {
                *place = yarn;
            }
        }
        Edit::Band { round, yarn } => set_band(piece, round, yarn),
        Edit::NewYarn { round } => {
            yarns.push(Yarn::plain(yarns.len()));
            set_band(piece, round, yarns.len() - 1);
        }
        Edit::Paint { piece, round, count, stitches, yarn } => {
            if yarn == Some(yarns.len()) {
                yarns.push(Yarn::plain(yarns.len()));
            }
            let painted = project.pieces.iter_mut().find(|p| p.id == piece);
            if let Some(painted) = painted {
                painted.paint.put(round, count, stitches, yarn);
            }
        }
        Edit::ClearBand(round) => piece.bands.retain(|b| b.from_round != round),
        Edit::AddKnot { knot, radius_mm, height_mm } => {
            let knots = &mut piece.outline.knots;
            let at = knot.clamp(1, knots.len().saturating_sub(1));
            knots.insert(at, Knot::new(radius_mm.max(OFF_AXIS_MM), height_mm));
        }
        Edit::RemoveKnot(knot) => {
            let knots = &mut piece.outline.knots;
            if knots.len() > 3 && knot > 0 && knot + 1 < knots.len() {
                knots.remove(knot);
            }
        }
        Edit::ToggleCorner(knot) => {
            if let Some(knot) = piece.outline.knots.get_mut(knot) {
                knot.corner = !knot.corner;
            }
        }
        Edit::ToggleEnd(knot) => toggle_end(piece, knot),
        Edit::Pin { round, count } => {
            piece.pins.insert(round, count.clamp(3, 20_000));
        }
        Edit::Unpin(round) => {
            piece.pins.remove(&round);
        }
        Edit::Gauge(gauge) => piece.gauge = gauge,
        Edit::Firmness(firmness) => piece.firmness = firmness,
        Edit::Simplicity(wanted) => piece.simplicity = wanted.map(|s| s.clamp(0.0, 1.0)),
        Edit::Answer(answer) => {
            piece.simplicity = answer.simplicity;
            piece.accepted = Some(answer);
        }
        Edit::MoveKnots { outline, .. } | Edit::Outline(outline) => set_outline(piece, outline),
        Edit::Picture(picture) => piece.picture = picture,
        Edit::Resize(dimension, mm) => {
            if let Some(outline) = measure::with(piece, dimension, mm) {
                piece.outline = outline;
                if dimension.is_finished() {
                    // It was found for fresh counts; those of another size do not bear on it.
                    piece.accepted = None;
                }
            }
        }
        Edit::Choice(choice) => choice.make(piece),
        Edit::Sheet(text, words) => text.set(project, words),
        Edit::SheetDesign { design, .. } => project.sheet = design,
        Edit::Sizes(edit) => edit.make(project, index),
        Edit::Toy(edit) => edit.make(project),
        Edit::Piece(edit) => return edit.make(project, id),
        Edit::AddPieces(shaped) => {
            let first = project.pieces.len();
            add_to(project, shaped);
            return project.pieces.get(first).map_or(id, |piece| piece.id);
        }
    }
    id
}

/// Works in `yarn` from `round` on, up to where the yarn changes next. A change to the yarn
/// there already is, is none.
fn set_band(piece: &mut Piece, round: u32, yarn: usize) {
    piece.bands.retain(|b| b.from_round != round);
    if piece.yarn_of_round(round) != yarn || round == 1 {
        piece.bands.push(Band { from_round: round, yarn });
    }
    piece.bands.sort_by_key(|b| b.from_round);
}

/// Another outline; an oval needs a closed start.
fn set_outline(piece: &mut Piece, outline: Outline) {
    piece.outline = outline;
    if !piece.outline.starts_closed() {
        piece.straight_mm = 0.0;
    }
}

/// A closed end opens as wide as four stitches across; an open one is drawn to the axis.
fn toggle_end(piece: &mut Piece, knot: usize) {
    let width = 4.0 * piece.gauge.stitch_width_mm();
    let knots = &mut piece.outline.knots;
    if knot != 0 && knot + 1 != knots.len() {
        return;
    }
    let Some(end) = knots.get_mut(knot) else { return };
    end.radius_mm = if end.is_pole() { (0.5 * width * 10.0).round() / 10.0 } else { 0.0 };
    // Nothing holds a pole, and only a closed start can be an oval's.
    end.hold = end.hold.filter(|_| end.radius_mm > 0.0);
    if !piece.outline.starts_closed() {
        piece.straight_mm = 0.0;
    }
}
