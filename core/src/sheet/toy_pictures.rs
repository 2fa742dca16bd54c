//! What is drawn of the whole toy on its sheet: it on the cover, each step of putting it
//! together, and views with the names of its parts.

use std::collections::BTreeMap;
use std::hash::{Hash, Hasher};

use super::needs::attachment_name;
use super::pictures::FONTS;
use crate::error::Result;
use crate::picture::Rgb;
use crate::picture::relief::{Relief, Still};
use crate::picture::svg::{self, Frame};
use crate::picture::toy::{
    ShownStep, ToyLight, ToyPicture, ToyThing, call_outs, column_mm, lay_over, lettered,
    shown_steps, stand_out, thing_seen,
};
use crate::piece::PieceId;
use crate::plan::Plan;
use crate::project::Project;
use crate::toy::steps::part_name;
use crate::toy::{Assembled, AssemblyStep};
use crate::words::write::{Writer, capitalised};

/// How far a toy is turned on the cover and in steps, and seen from above, degrees.
const COVER: (f32, f32) = (332.0, 14.0);
/// White paper, and the ink around what a step is about.
const PAPER: Rgb = [255, 255, 255];
const RIM: Rgb = [163, 58, 12];

/// From where a view with names is seen.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Hash)]
pub enum CalledView {
    /// From the front.
    Front,
    /// From the side.
    Side,
}

impl CalledView {
    /// Both.
    pub const ALL: [Self; 2] = [Self::Front, Self::Side];

    /// The label of what it is called.
    pub const fn label(self) -> &'static str {
        match self {
            Self::Front => "view_front",
            Self::Side => "view_side",
        }
    }

    const fn turn_deg(self) -> f32 {
        match self {
            Self::Front => 0.0,
            Self::Side => 90.0,
        }
    }
}

/// The pictures of a toy.
#[derive(Debug, Clone)]
pub struct ToyPictures {
    picture: ToyPicture,
    reliefs: BTreeMap<PieceId, Relief>,
    colours: Vec<Rgb>,
    steps: Vec<ShownStep>,
    /// The part of each pose.
    part_of: Vec<usize>,
    /// What parts, and then attachments, are called.
    parts: Vec<String>,
    attachments: Vec<String>,
    /// What all of it was made from.
    made_from: String,
}

/// Those that show the same hash alike, so that what was drawn can be kept.
impl Hash for ToyPictures {
    fn hash<H: Hasher>(&self, state: &mut H) {
        self.made_from.hash(state);
        self.reliefs.hash(state);
        self.colours.hash(state);
        self.parts.hash(state);
        self.attachments.hash(state);
    }
}

impl ToyPictures {
    pub(super) fn of(
        project: &Project,
        plans: &[Plan],
        toy: &Assembled,
        steps: &[AssemblyStep],
        writer: &Writer<'_>,
    ) -> Self {
        let faces = project.faces();
        let pieces = project.pieces.iter().zip(plans);
        let reliefs = pieces
            .map(|(piece, plan)| (piece.id, Relief::new(piece, plan).in_yarns(&faces)))
            .collect();
        let named = |index| capitalised(&part_name(project, index, writer));
        let attachments = project.toy.attachments.iter();
        Self {
            picture: ToyPicture::new(project, toy, 0.0),
            reliefs,
            colours: project.colours(),
            steps: shown_steps(steps),
            part_of: toy.poses.iter().map(|pose| pose.part).collect(),
            parts: (0..project.toy.parts.len()).map(named).collect(),
            attachments: attachments
                .map(|a| capitalised(&writer.say(attachment_name(a))))
                .collect(),
            // What moves parts about: the places, and the outlines that carry them.
            made_from: format!("{:?} {:?}", project.toy, toy.poses),
        }
    }

    /// How many steps have a picture.
    pub fn steps(&self) -> usize {
        self.steps.len()
    }

    /// The toy as it stands on the cover, in so many pixels.
    ///
    /// # Errors
    /// For a picture of too many pixels, see [`Still::blank`].
    pub fn cover(&self, pixels: [u32; 2]) -> Result<Still> {
        Ok(self.drawn(&self.picture, |_| true, COVER, pixels)?.0)
    }

    /// The toy once step `index`, from 0, is done; what that was about stands out.
    ///
    /// # Errors
    /// As [`Self::cover`]; a step that is not there shows the finished toy.
    pub fn step(&self, index: usize, pixels: [u32; 2]) -> Result<Still> {
        let Some(step) = self.steps.get(index) else { return self.cover(pixels) };
        let shows = |part: usize| step.parts.contains(&part);
        let picture = self.picture.only(shows, &step.attachments);
        let (mut still, things) = self.drawn(&picture, shows, COVER, pixels)?;
        let part = |pose: usize| self.part_of.get(pose).copied();
        let is_lit = |things: &[ToyThing], seen| {
            thing_seen(things, seen).is_some_and(|thing| step.is_about(thing, part))
        };
        if still.map.iter().any(|seen| is_lit(&things, *seen)) {
            stand_out(&mut still, |seen| is_lit(&things, seen), PAPER, RIM);
            return Ok(still);
        }
        // What is put inside is seen by nobody: it is drawn as if the rest were glass.
        stand_out(&mut still, |_| false, PAPER, RIM);
        let scale = picture.fitted(COVER, pixels).scale;
        let alone = |index: usize| step.part == Some(index);
        let (inside, of_it) = self.seen(&picture, alone, scale, COVER, pixels)?;
        let own: Vec<bool> = inside.map.iter().map(|seen| is_lit(&of_it, *seen)).collect();
        lay_over(&mut still, &inside, &own, RIM);
        Ok(still)
    }

    /// A view with the names of its parts beside it, as SVG: `field` mm wide and high, `fine`
    /// pixels a millimetre; ids in it begin with `ids`.
    ///
    /// # Errors
    /// As [`Self::cover`].
    pub fn called_svg(
        &self,
        view: CalledView,
        (field, fine): ([f32; 2], f32),
        described: &str,
        ids: &str,
    ) -> Result<String> {
        let names = self.parts.iter().chain(&self.attachments).map(String::as_str);
        let column = column_mm(names, field[0]);
        let room = [field[0] - 2.0 * column, field[1]];
        let pixels = |mm: [f32; 2]| mm.map(|mm| (mm * fine).round().max(1.0) as u32);
        let turned = (view.turn_deg(), 0.0);
        let inner = self.picture.fitted(turned, pixels(room));
        let (still, things) =
            self.seen(&self.picture, |_| true, inner.scale, turned, pixels(field))?;
        let name_of = |thing| match thing {
            ToyThing::Pose(pose) => {
                let part = *self.part_of.get(pose)?;
                Some((part, self.parts.get(part)?.clone()))
            }
            ToyThing::Attachment(at) => {
                Some((self.parts.len() + at, self.attachments.get(at)?.clone()))
            }
        };
        let called = call_outs(&still, &things, name_of, fine);
        let drawing = lettered(&called, field, column);
        Ok(svg::drawing_over(&still.small_png()?, &drawing, &frame(described, ids)))
    }

    fn drawn(
        &self,
        picture: &ToyPicture,
        shows: impl Fn(usize) -> bool,
        turned: (f32, f32),
        pixels: [u32; 2],
    ) -> Result<(Still, Vec<ToyThing>)> {
        let scale = picture.fitted(turned, pixels).scale;
        self.seen(picture, shows, scale, turned, pixels)
    }

    fn seen(
        &self,
        picture: &ToyPicture,
        shows: impl Fn(usize) -> bool,
        scale: f32,
        turned: (f32, f32),
        pixels: [u32; 2],
    ) -> Result<(Still, Vec<ToyThing>)> {
        let mut view = picture.fitted(turned, pixels);
        view.scale = scale;
        let light = ToyLight { colours: &self.colours, lit: &[], parts: &[], attachment: None };
        let relief = |piece| self.reliefs.get(&piece);
        let (scene, things) = picture.scene(relief, &light, shows, &view);
        Ok((Still::new(&scene)?, things))
    }
}

/// A still of a toy as SVG; ids in it begin with `ids`.
///
/// # Errors
/// For a still without pixels.
pub(super) fn still_svg(still: &Still, described: &str, ids: &str) -> Result<String> {
    Ok(svg::still(still, &still.small_png()?, &frame(described, ids)))
}

fn frame<'a>(described: &'a str, ids: &'a str) -> Frame<'a> {
    Frame {
        title: described,
        description: described,
        margin: 0.0,
        background: None,
        fonts: FONTS,
        ids,
    }
}
