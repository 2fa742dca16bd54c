//! What a toy weighs and where its centre of mass is: each piece a shell of stitches and a
//! fill, small things as points.

use super::overlap::inside_earlier;
pub use super::weight::{Mass, sum};
use crate::extent::StitchSize;
use crate::piece::outline::Rz;
use crate::piece::{Piece, PieceId};
use crate::plan::Plan;
use crate::plan::estimate::YARN_TOLERANCE;
use crate::project::Project;
use crate::project::toy::part::{Part, PartForm, Small, Thing};
use crate::toy::pose::{Pose, Shapes};
use crate::toy::solid::Solid;

/// Density of the plastic of eyes and noses that nobody has weighed, g/ml. An assumption.
pub const PLASTIC_G_PER_ML: f64 = 1.1;

/// What one copy of a part weighs.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct PoseMass {
    /// The yarn of a piece; all of a small thing.
    pub shell: Mass,
    /// Its stuffing, without what is inside an earlier part.
    pub fill: Mass,
    /// Whether what it weighs is a guess: nobody has weighed it, and it is no yarn.
    pub guessed: bool,
}

impl PoseMass {
    /// Both together.
    pub fn all(&self) -> Mass {
        sum([self.shell, self.fill])
    }
}

/// How far all of `masses` may be off together, g: yarn by [`YARN_TOLERANCE`], stuffing by the
/// spread of hands.
pub fn range(masses: &[PoseMass]) -> (f64, f64) {
    let shell: f64 = masses.iter().map(|m| m.shell.grams).sum();
    let fill: f64 = masses.iter().map(|m| m.fill.grams).sum();
    let spread = crate::plan::estimate::STUFFING_SPREAD;
    (
        shell * (1.0 - YARN_TOLERANCE) + fill / spread,
        shell * (1.0 + YARN_TOLERANCE) + fill * spread,
    )
}

/// What each of `poses` weighs.
pub(crate) fn masses(
    project: &Project,
    plans: &[Plan],
    shapes: Shapes<'_>,
    poses: &[Pose],
) -> Vec<PoseMass> {
    let own = |index: usize| {
        let part = &project.toy.parts[index];
        match &part.what {
            Thing::Piece(piece) => of_piece(project, *piece, plans, shapes.of(index), part),
            Thing::Small(small) => of_small(small),
        }
    };
    let parts: Vec<PoseMass> = (0..project.toy.parts.len()).map(own).collect();
    (0..poses.len())
        .map(|i| {
            let (pose, own) = (&poses[i], parts[poses[i].part]);
            let placed = |mass: Mass| mass.at(pose.frame.place(mass.centre));
            let fill = placed(own.fill);
            let density = own.fill.grams / shapes.of(pose.part).map_or(1.0, volume_mm3);
            let hidden = match own.fill.grams > 0.0 {
                true => inside_earlier(shapes, poses, i),
                false => Mass::default(),
            };
            let less = Mass { grams: -density * hidden.grams, ..hidden };
            PoseMass { shell: placed(own.shell), fill: sum([fill, less]), guessed: own.guessed }
        })
        .collect()
}

/// A piece in its own axes.
fn of_piece(
    project: &Project,
    id: PieceId,
    plans: &[Plan],
    solid: Option<&Solid>,
    part: &Part,
) -> PoseMass {
    let nothing = PoseMass { shell: Mass::default(), fill: Mass::default(), guessed: false };
    let (Some(piece), Some(plan), Some(solid)) =
        (project.piece(id), project.position(id).and_then(|at| plans.get(at)), solid)
    else {
        return nothing;
    };
    let litres = volume_mm3(solid) / 1e6;
    let grams = piece.habits.stuffing_g_per_litre.at(piece.firmness) * litres;
    let grams = if part.is_stuffed() { grams } else { 0.0 };
    let fill = Mass { grams, centre: [0.0, 0.0, centroid(solid)] };
    PoseMass { shell: shell(project, piece, plan, solid), fill, guessed: false }
}

/// The yarn of a piece, each round's where that round is.
fn shell(project: &Project, piece: &Piece, plan: &Plan, solid: &Solid) -> Mass {
    let area = |number: u32, count: u32| {
        let StitchSize { width, height } = piece.cloth_of_round(number);
        f64::from(count) * width * height
    };
    let worked =
        |yarn: usize| (1..).zip(&plan.rounds).filter(move |(_, round)| round.yarn == yarn);
    let all = plan.estimate.yarn.iter().flat_map(|used| {
        let grams = project.yarns.get(used.yarn).map_or(0.0, |yarn| yarn.grams(used.metres));
        let whole: f64 = worked(used.yarn).map(|(k, round)| area(k, round.count)).sum();
        worked(used.yarn).map(move |(k, round)| Mass {
            grams: grams * area(k, round.count) / whole,
            centre: [0.0, 0.0, band_middle(solid, k as usize)],
        })
    });
    sum(all.filter(|mass| mass.grams.is_finite()).collect::<Vec<_>>())
}

/// Height of the centroid of round `k`'s cloth, mm.
fn band_middle(solid: &Solid, k: usize) -> f64 {
    let (a, b) = (solid.nodes()[k - 1], solid.nodes()[k]);
    let around = |node: Rz| std::f64::consts::TAU * node.r + 2.0 * solid.straight_mm();
    let (from, to) = (around(a), around(b));
    let share = if from + to > 0.0 { (from + 2.0 * to) / (3.0 * (from + to)) } else { 0.5 };
    share.mul_add(b.z - a.z, a.z)
}

/// Volume inside, mm³.
pub(crate) fn volume_mm3(solid: &Solid) -> f64 {
    slices(solid).map(|(volume, _)| volume).sum::<f64>().max(1e-9)
}

/// Height of the centroid of the volume inside, mm.
fn centroid(solid: &Solid) -> f64 {
    slices(solid).map(|(volume, z)| volume * z).sum::<f64>() / volume_mm3(solid)
}

/// Volume and height of the centroid of each band; negative where the profile goes back.
fn slices(solid: &Solid) -> impl Iterator<Item = (f64, f64)> {
    let straight = solid.straight_mm();
    solid.nodes().windows(2).flat_map(move |pair| {
        let (a, b, dz) = (pair[0].r, pair[1].r, pair[1].z - pair[0].z);
        let square = a * a + a * b + b * b;
        let round = std::f64::consts::FRAC_PI_3 * dz * square;
        let high = if square > 0.0 {
            (a * a + 2.0 * a * b + 3.0 * b * b) / (4.0 * square)
        } else {
            0.5
        };
        let sides = straight * dz * (a + b);
        let beside = if a + b > 0.0 { (a + 2.0 * b) / (3.0 * (a + b)) } else { 0.5 };
        let z = |share: f64| dz.mul_add(share, pair[0].z);
        [(round, z(high)), (sides, z(beside))]
    })
}

/// A small thing in its own axes.
fn of_small(small: &Small) -> PoseMass {
    let (guess, height) = match small.form {
        PartForm::Eye(button) | PartForm::Nose(button) => {
            // Half a ball of plastic; embroidery weighs next to nothing.
            let ml = std::f64::consts::PI * button.diameter_mm.powi(3) / 12e3;
            let grams = if button.embroidered { 0.0 } else { PLASTIC_G_PER_ML * ml };
            (grams, 0.1875 * button.diameter_mm)
        }
        PartForm::Block(_, _, long) => (0.0, 0.5 * long),
    };
    let grams = small.grams.unwrap_or(guess);
    let embroidered = matches!(
        small.form,
        PartForm::Eye(button) | PartForm::Nose(button) if button.embroidered
    );
    PoseMass {
        shell: Mass { grams, centre: [0.0, 0.0, height] },
        fill: Mass::default(),
        guessed: small.grams.is_none() && !embroidered,
    }
}
