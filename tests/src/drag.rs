//! A knot dragged in small steps: how many rounds change, against how many the ideal asks to.

use std::path::Path;

use plumpline_core::{Accepted, Piece, Plan, file, plan_draft};

use crate::fit_set::SHAPES;

/// How far a step is, mm.
pub const STEP_MM: f64 = 0.05;

/// Rounds that changed in a drag, and those that the ideal's own crossings ask to change.
#[derive(Debug, Clone, Copy, Default)]
pub struct Moved {
    /// Steps of the drag.
    pub steps: usize,
    /// Rounds whose count changed, all steps together.
    pub rounds: usize,
    /// Rounds whose ideal crossed from one whole number to the next.
    pub crossings: usize,
}

impl Moved {
    /// Rounds changed for each that had to.
    pub fn ratio(self) -> f64 {
        self.rounds as f64 / self.crossings.max(1) as f64
    }

    /// Both drags together.
    #[must_use]
    pub fn and(self, other: Self) -> Self {
        Self {
            steps: self.steps + other.steps,
            rounds: self.rounds + other.rounds,
            crossings: self.crossings + other.crossings,
        }
    }
}

/// Places where two lists differ; where one is longer, the rest of it.
fn differ<T: PartialEq>(a: &[T], b: &[T]) -> usize {
    a.iter().zip(b).filter(|(a, b)| a != b).count() + a.len().abs_diff(b.len())
}

fn whole(plan: &Plan) -> Vec<u32> {
    plan.ideal.iter().map(|n| n.round() as u32).collect()
}

/// Drags knot `which` of `piece` outwards in `steps` steps. The counts that stand when the
/// drag begins are the accepted ones all along.
///
/// # Panics
/// Where a step cannot be planned.
pub fn drag(piece: &Piece, which: usize, steps: usize) -> Moved {
    let planned = |piece: &Piece| plan_draft(piece).expect("a small step can be planned");
    let mut before = planned(piece);
    let mut piece = piece.clone();
    piece.accepted = Some(Accepted { simplicity: piece.simplicity, counts: before.counts() });
    let mut moved = Moved { steps, ..Moved::default() };
    for _ in 0..steps {
        piece.outline.knots[which].radius_mm += STEP_MM;
        let now = planned(&piece);
        moved.rounds += differ(&before.counts(), &now.counts());
        moved.crossings += differ(&whole(&before), &whole(&now));
        before = now;
    }
    moved
}

/// Every knot off the axis dragged in turn.
pub fn every_knot(piece: &Piece, steps: usize) -> Moved {
    let inner = (0..piece.outline.knots.len()).filter(|&i| !piece.outline.knots[i].is_pole());
    inner.map(|i| drag(piece, i, steps)).fold(Moved::default(), Moved::and)
}

/// The first piece of a sample project.
///
/// # Panics
/// Where there is no such sample.
pub fn sample(name: &str) -> Piece {
    let folder = Path::new(env!("CARGO_MANIFEST_DIR")).join("../sample-projects");
    let project = file::load(&folder.join(name)).expect("the sample loads");
    project.pieces[0].clone()
}

/// Drags every knot of the egg, the pear, the float and the acorn by a millimetre and prints
/// what changed; returns the median of their ratios.
pub fn median_of_four() -> f64 {
    let pieces = [
        ("egg", SHAPES[1].piece(None, 1.0)),
        ("pear", SHAPES[3].piece(None, 1.0)),
        ("float", sample("float.ron")),
        ("acorn", sample("acorn.ron")),
    ];
    let mut ratios = pieces.map(|(name, piece)| {
        let moved = every_knot(&piece, 20);
        let (Moved { steps, rounds, crossings }, ratio) = (moved, moved.ratio());
        println!(
            "{name:6} {steps} steps: {rounds} rounds, {crossings} crossings, {ratio:.2} each"
        );
        ratio
    });
    ratios.sort_by(f64::total_cmp);
    let median = 0.5 * (ratios[1] + ratios[2]);
    println!("median {median:.2}");
    median
}
