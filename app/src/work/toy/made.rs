//! The toy put together: plans of its pieces, what follows from them, its steps and cautions.

use std::collections::BTreeMap;
use std::sync::Arc;

use plumpline_core::picture::relief::Relief;
use plumpline_core::picture::toy::ToyPicture;
use plumpline_core::project::toy::Toy;
use plumpline_core::toy::solid::Solid;
use plumpline_core::toy::{
    Assembled, AssemblyStep, Caution, PartFigures, assembled_of, cautions, steps,
};
use plumpline_core::words::Writer;
use plumpline_core::{Piece, PieceId, Plan, Project, YarnFace, plan};

use crate::document::Revision;

/// A toy put together, and everything a panel tells of it.
#[derive(Debug)]
pub struct ToyMade {
    /// The state of the project it is of.
    pub revision: Revision,
    /// The project as it was then.
    pub project: Arc<Project>,
    /// What follows from its parts.
    pub assembled: Assembled,
    /// How it is put together, in working order.
    pub steps: Vec<AssemblyStep>,
    /// What its maker should know.
    pub cautions: Vec<Caution>,
    /// The plans of its pieces.
    pub plans: BTreeMap<PieceId, Arc<Plan>>,
    /// Their reliefs.
    pub(super) reliefs: BTreeMap<PieceId, Arc<Relief>>,
    /// Its picture, together.
    pub(super) picture: ToyPicture,
}

impl ToyMade {
    /// Whether it still tells of the parts of `toy`: the same things on the same carriers, be
    /// it in other places.
    pub fn is_of(&self, toy: &Toy) -> bool {
        let kept = &self.project.toy;
        let alike = kept.parts.iter().zip(&toy.parts).all(|(a, b)| {
            a.what == b.what && a.on.map(|seat| seat.part) == b.on.map(|seat| seat.part)
        });
        alike
            && kept.parts.len() == toy.parts.len()
            && kept.attachments.len() == toy.attachments.len()
    }

    /// What is told of a part.
    pub fn part(&self, index: usize) -> Option<&PartFigures> {
        self.assembled.parts.get(index)
    }

    /// The stuffed shape of a part; none of a small thing.
    pub fn solid(&self, index: usize) -> Option<&Solid> {
        self.assembled.solids.get(&self.project.toy.parts.get(index)?.piece()?)
    }

    /// The shape of what carries a part.
    pub fn carrier(&self, index: usize) -> Option<&Solid> {
        self.solid(self.project.toy.parts.get(index)?.on?.part)
    }

    /// The first copy of a part, an index into the poses.
    pub fn pose_of(&self, part: usize) -> Option<usize> {
        self.assembled.poses.iter().position(|pose| pose.part == part)
    }

    /// Whether later rounds of a part lie higher than earlier ones, where it stands.
    pub fn grows_up(&self, part: usize) -> bool {
        let pose = self.pose_of(part).and_then(|at| self.assembled.poses.get(at));
        pose.is_some_and(|pose| {
            let (z, up) = (pose.frame.z, self.assembled.up);
            z[0] * up[0] + z[1] * up[1] + z[2] * up[2] > 1e-6
        })
    }

    /// Whether more stitches around from the front lie further right, on a part with its later
    /// rounds drawn upwards where they lie higher.
    pub fn runs_right(&self, part: usize) -> bool {
        let hand = self.solid(part).map_or(1.0, Solid::hand);
        (hand > 0.0) != self.grows_up(part)
    }
}

/// A piece with what follows from it alone.
#[derive(Debug)]
struct ToyPiece {
    piece: Piece,
    plan: Arc<Plan>,
    relief: Arc<Relief>,
}

/// Puts toys together, and keeps what it has worked out of pieces that stay as they are.
#[derive(Debug, Default)]
pub(super) struct ToyMaker {
    known: BTreeMap<PieceId, ToyPiece>,
    /// The yarns that reliefs are drawn in.
    faces: Vec<YarnFace>,
    made: Option<Arc<ToyMade>>,
}

impl ToyMaker {
    /// The toy of `project`; the one made last if the project is the same.
    pub(super) fn make(
        &mut self,
        project: &Arc<Project>,
        revision: Revision,
    ) -> Result<Arc<ToyMade>, String> {
        if let Some(made) = self.made.as_ref().filter(|made| made.revision == revision) {
            return Ok(Arc::clone(made));
        }
        self.learn(project)?;
        let known = |piece: &Piece| self.known.get(&piece.id);
        let plans: Vec<Plan> =
            project.pieces.iter().filter_map(|p| Some((*known(p)?.plan).clone())).collect();
        let assembled = assembled_of(project, &plans).map_err(|e| e.to_string())?;
        let writer = project.wording.writer().map_err(|e| e.to_string())?;
        let made = Arc::new(ToyMade {
            revision,
            steps: steps(project, &assembled, &writer),
            cautions: cautions(project, &assembled, &Writer::bench()),
            picture: ToyPicture::new(project, &assembled, 0.0),
            plans: self.known.iter().map(|(id, k)| (*id, Arc::clone(&k.plan))).collect(),
            reliefs: self.known.iter().map(|(id, k)| (*id, Arc::clone(&k.relief))).collect(),
            project: Arc::clone(project),
            assembled,
        });
        self.made = Some(Arc::clone(&made));
        Ok(made)
    }

    /// Plans the pieces that are others by now.
    fn learn(&mut self, project: &Project) -> Result<(), String> {
        self.known.retain(|id, _| project.piece(*id).is_some());
        let faces = project.faces();
        if faces != self.faces {
            for known in self.known.values_mut() {
                known.relief = Arc::new((*known.relief).clone().in_yarns(&faces));
            }
            self.faces = faces;
        }
        for piece in &project.pieces {
            if self.known.get(&piece.id).is_some_and(|known| known.piece == *piece) {
                continue;
            }
            let planned = plan(piece)
                .map_err(|e| say!("piece-fails", name = piece.name, why = e.to_string()))?;
            let relief = Arc::new(Relief::new(piece, &planned).in_yarns(&self.faces));
            let known = ToyPiece { piece: piece.clone(), plan: Arc::new(planned), relief };
            self.known.insert(piece.id, known);
        }
        Ok(())
    }
}
