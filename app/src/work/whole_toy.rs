//! A toy made ready for one picture of it: planned, put together, its pieces as reliefs.

use std::collections::BTreeMap;

use plumpline_core::picture::Rgb;
use plumpline_core::picture::relief::{Relief, ReliefView, Still};
use plumpline_core::picture::toy::{ToyLight, ToyPicture};
use plumpline_core::toy::assembled_of;
use plumpline_core::{Piece, PieceId, Plan, Project, Result, plan};

use super::still::still;

/// What a picture of a toy is made of.
pub(crate) struct WholeToy {
    /// Where its parts stand.
    pub(crate) picture: ToyPicture,
    reliefs: BTreeMap<PieceId, Relief>,
    colours: Vec<Rgb>,
}

impl WholeToy {
    /// The toy of `project`, its parts so far `apart`, from 0, together, to 1.
    ///
    /// # Errors
    /// Names the piece that cannot be planned, or says why the toy cannot be put together.
    pub(crate) fn of(project: &Project, apart: f64) -> Result<Self> {
        let planned = |piece: &Piece| {
            plan(piece).map_err(|e| e.within(&say!("piece-by-name", name = piece.name)))
        };
        let plans: Vec<Plan> = project.pieces.iter().map(planned).collect::<Result<_>>()?;
        let toy = assembled_of(project, &plans)?;
        let faces = project.faces();
        let pieces = project.pieces.iter().zip(&plans);
        let reliefs = pieces
            .map(|(piece, plan)| (piece.id, Relief::new(piece, plan).in_yarns(&faces)))
            .collect();
        let picture = ToyPicture::new(project, &toy, apart);
        Ok(Self { picture, reliefs, colours: project.colours() })
    }

    /// It as `view` sees it.
    ///
    /// # Errors
    /// For a picture of too many pixels, see [`Still::blank`].
    pub(crate) fn still(&self, view: &ReliefView) -> Result<Still> {
        let light = ToyLight { colours: &self.colours, lit: &[], parts: &[], attachment: None };
        let relief = |piece| self.reliefs.get(&piece);
        let (scene, _) = self.picture.scene(relief, &light, |_| true, view);
        still(&scene)
    }
}
