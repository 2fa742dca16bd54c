//! Changes of sizes, seams and cloth.

use plumpline_core::another_yarn::compare;
use plumpline_core::calibrate::Calibration;
use plumpline_core::companion;
use plumpline_core::sizes::{Keeps, MOST_SIZES, put, sized};
use plumpline_core::{Gauge, Piece, PieceId, Project, Seam, Size, SizeBy};

/// A change of the sizes of the selected piece, of the seams of the project, or of the cloth.
#[derive(Debug, Clone, PartialEq)]
pub enum SizeEdit {
    /// One size more, a little larger than the last.
    Add,
    /// This size, after those there are.
    Enter(Size),
    /// No longer this size.
    Remove(usize),
    /// Another size in this place.
    Change(usize, Size),
    /// The piece itself is made this size.
    Take(usize),
    /// The piece itself is made so large.
    Become(SizeBy),
    /// A seam.
    AddSeam(Seam),
    /// No longer this seam.
    RemoveSeam(usize),
    /// Another seam in this place.
    ChangeSeam(usize, Seam),
    /// This seam is made to hold.
    Meet(usize),
    /// The piece is worked in another yarn.
    Swap(Gauge, Keeps),
    /// A sample taught this: all pieces in the swatch of the selected one are worked so.
    Learn(Box<Calibration>),
}

impl SizeEdit {
    /// Makes the change; `index` is the selected piece. What cannot be done is not done: the
    /// stage has said why, where the button is.
    pub(crate) fn make(self, project: &mut Project, index: usize) {
        let id = project.pieces[index].id;
        let sizes = &mut project.pieces[index].sizes;
        match self {
            Self::Add if sizes.len() < MOST_SIZES => {
                let size = another(sizes);
                sizes.push(size);
            }
            Self::Add => {}
            Self::Enter(size) => {
                if can_enter(sizes, &size.name) && size.validate().is_ok() {
                    sizes.push(size);
                }
            }
            Self::Remove(i) => {
                if i < sizes.len() {
                    sizes.remove(i);
                }
            }
            Self::Change(i, size) => {
                let taken = |(j, other): (usize, &Size)| j != i && other.name == size.name;
                let free = !sizes.iter().enumerate().any(taken);
                if let Some(place) = sizes.get_mut(i)
                    && free
                    && size.validate().is_ok()
                {
                    *place = size;
                }
            }
            Self::Take(i) => {
                if let Some(size) = sizes.get(i).cloned() {
                    become_size(project, id, &size);
                }
            }
            Self::Become(by) => become_size(project, id, &Size::new("of the piece", by)),
            Self::AddSeam(seam) => project.seams.push(seam),
            Self::RemoveSeam(i) => {
                if i < project.seams.len() {
                    project.seams.remove(i);
                }
            }
            Self::ChangeSeam(i, seam) => {
                if let Some(place) = project.seams.get_mut(i) {
                    *place = seam;
                }
            }
            Self::Meet(i) => {
                if let Ok(met) = companion::meet(project, i) {
                    *project = met.project;
                }
            }
            Self::Swap(gauge, keeps) => {
                if let Some(piece) = swapped(&project.pieces[index], gauge, keeps) {
                    project.pieces[index] = piece;
                }
            }
            Self::Learn(learned) => {
                let swatch = project.pieces[index].gauge;
                for piece in project.pieces.iter_mut().filter(|p| p.gauge == swatch) {
                    *piece = learned.apply(piece);
                }
            }
        }
    }
}

/// Whether a size of this name can come to `sizes`: there is room, and none is called so.
pub fn can_enter(sizes: &[Size], name: &str) -> bool {
    sizes.len() < MOST_SIZES && sizes.iter().all(|size| size.name != name)
}

/// Makes the piece this size, or leaves it where it cannot be.
fn become_size(project: &mut Project, id: PieceId, size: &Size) {
    if let Ok(made) = sized(project, id, size) {
        put(project, id, &made);
    }
}

/// The next size up from those there are, each a quarter of the piece as it is drawn larger than
/// the one before: L, XL, XXL, for what is drawn is taken for an M. Never a twin of that.
fn another(sizes: &[Size]) -> Size {
    let taken = |name: &str| sizes.iter().any(|s| s.name == name);
    let name = ["L", "XL", "XXL"].into_iter().find(|n| !taken(n)).map_or_else(
        || {
            let numbers = (1..).map(|n: u32| format!("Size {n}"));
            numbers.into_iter().find(|n| !taken(n)).unwrap_or_default()
        },
        str::to_owned,
    );
    let by = match sizes.last().map(|s| s.by) {
        None => SizeBy::Factor(1.25),
        Some(SizeBy::Height(mm)) => SizeBy::Height(1.25 * mm),
        Some(SizeBy::Width(mm)) => SizeBy::Width(1.25 * mm),
        Some(SizeBy::Factor(factor)) => {
            let next = round(factor + 0.25);
            let twin = (next - 1.0).abs() < 0.01;
            SizeBy::Factor(if twin { 1.25 } else { next })
        }
        Some(SizeBy::Gauge { .. } | SizeBy::Meet { .. }) => SizeBy::Factor(1.25),
    };
    let like = sizes.last();
    Size {
        keep: like.is_some_and(|s| s.keep),
        family: like.is_some_and(|s| s.family),
        ..Size::new(name, by)
    }
}

fn round(factor: f64) -> f64 {
    (factor * 100.0).round() / 100.0
}

fn swapped(piece: &Piece, gauge: Gauge, keeps: Keeps) -> Option<Piece> {
    let both = compare(piece, gauge).ok()?;
    Some(match keeps {
        Keeps::Rounds => both.same_rounds.ok()?.0,
        Keeps::Size => both.same_size.ok()?.piece,
    })
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::document::Document;

    #[test]
    fn sizes_come_with_names_of_their_own_and_go() {
        let mut project = Document::blank().project().clone();
        for _ in 0..6 {
            SizeEdit::Add.make(&mut project, 0);
        }
        let names =
            |p: &Project| p.pieces[0].sizes.iter().map(|s| s.name.clone()).collect::<Vec<_>>();
        assert_eq!(names(&project), ["L", "XL", "XXL", "Size 1", "Size 2", "Size 3"]);
        SizeEdit::Remove(1).make(&mut project, 0);
        let called_l = Size { name: "L".into(), ..project.pieces[0].sizes[1].clone() };
        SizeEdit::Change(1, called_l).make(&mut project, 0);
        assert_eq!(
            names(&project),
            ["L", "XXL", "Size 1", "Size 2", "Size 3"],
            "one L is enough"
        );
        assert!(project.validate().is_ok());
    }

    #[test]
    fn a_size_that_is_proposed_is_the_next_one_up_and_no_twin() {
        let mut project = Document::blank().project().clone();
        let by = |project: &Project| project.pieces[0].sizes.last().map(|size| size.by);
        SizeEdit::Add.make(&mut project, 0);
        assert_eq!(by(&project), Some(SizeBy::Factor(1.25)));
        SizeEdit::Add.make(&mut project, 0);
        assert_eq!(by(&project), Some(SizeBy::Factor(1.5)));
        let small = Size::new("S", SizeBy::Factor(0.75));
        SizeEdit::Enter(small).make(&mut project, 0);
        SizeEdit::Add.make(&mut project, 0);
        assert_eq!(by(&project), Some(SizeBy::Factor(1.25)), "not as large as what is drawn");
    }

    #[test]
    fn a_size_is_entered_under_a_name_of_its_own() {
        let mut project = Document::blank().project().clone();
        let toy = Size::new("Toy", SizeBy::Factor(1.18));
        for _ in 0..2 {
            SizeEdit::Enter(toy.clone()).make(&mut project, 0);
        }
        assert_eq!(project.pieces[0].sizes, [toy], "one Toy is enough");
        let nameless = Size::new(" ", SizeBy::Factor(1.18));
        SizeEdit::Enter(nameless).make(&mut project, 0);
        assert_eq!(project.pieces[0].sizes.len(), 1);
        assert!(!can_enter(&project.pieces[0].sizes, "Toy"));
    }

    #[test]
    fn the_piece_takes_a_size() {
        let mut project = Document::blank().project().clone();
        SizeEdit::Add.make(&mut project, 0);
        let before = plumpline_core::plan(&project.pieces[0]).expect("a plan").size_mm;
        let by = SizeBy::Height(2.0 * before.height);
        SizeEdit::Change(0, Size::new("L", by)).make(&mut project, 0);
        SizeEdit::Take(0).make(&mut project, 0);
        let after = plumpline_core::plan(&project.pieces[0]).expect("a plan").size_mm;
        assert!(
            (after.height / before.height - 2.0).abs() < 0.03,
            "{before:?} became {after:?}"
        );
    }
}
