//! How the pictures of a toy are drawn: large, at first as a draft of half the pixels and then
//! whole; small ones of its parts and of its steps.

use std::sync::Arc;

use egui::{ColorImage, Pos2, Rect, Vec2, vec2};
use plumpline_core::picture::Rgb;
use plumpline_core::picture::relief::{Quality, ReliefScene, ReliefView, Still};
use plumpline_core::picture::toy::{ToyLight, ToyPicture, ToyThing, shown_steps, thing_seen};

use super::super::still::{image_of, still_unless};
use super::made::ToyMade;
use super::{ToyLook, ToyPlace};
use crate::view::Turned;
use crate::view::toy::ToySide;

/// A draft has a pixel for so many of the screen, each way.
const DRAFT: f32 = 2.0;
/// Pixels of the small picture of a part, and of a step.
pub(super) const PART_PIXELS: [u32; 2] = [88, 88];
pub(super) const STEP_PIXELS: [u32; 2] = [208, 148];

/// A picture of the toy, and where it lies in the window.
#[derive(Debug)]
pub(super) struct ToyDrawn {
    still: Still,
    pub(super) image: ColorImage,
    pub(super) place: Rect,
    pub(super) draft: bool,
    things: Vec<ToyThing>,
    /// Which part each pose of the toy is of.
    parts: Vec<usize>,
}

impl ToyDrawn {
    fn new(
        mut still: Still,
        place: Rect,
        draft: bool,
        things: Vec<ToyThing>,
        made: &ToyMade,
    ) -> Self {
        let image = image_of(&mut still);
        let parts = made.assembled.poses.iter().map(|pose| pose.part).collect();
        Self { still, image, place, draft, things, parts }
    }

    /// What is seen at a place of the window.
    pub(super) fn pick(&self, at: Pos2) -> Option<ToyThing> {
        let [wide, tall] = self.still.size.map(|s| s as f32);
        let share = (at - self.place.min) / self.place.size();
        thing_seen(&self.things, self.still.pick(share.x * wide, share.y * tall)?)
    }

    /// The part of a pose of the toy as it was when this was drawn.
    pub(super) fn part(&self, thing: ToyThing) -> Option<usize> {
        match thing {
            ToyThing::Pose(pose) => self.parts.get(pose).copied(),
            ToyThing::Attachment(_) => None,
        }
    }

    /// A picture of the same size that is clear but for the edge of part `part`, in `colour`.
    pub(super) fn rim(&self, part: usize, colour: egui::Color32) -> ColorImage {
        let size = self.still.size.map(|s| s as usize);
        let [wide, tall] = size;
        let of_part: Vec<bool> = self
            .still
            .map
            .iter()
            .map(|seen| {
                let thing = thing_seen(&self.things, *seen);
                thing.and_then(|thing| self.part(thing)) == Some(part)
            })
            .collect();
        // Two pixels inside its edge, or one of a draft.
        let deep = if self.draft { 1 } else { 2 };
        let mut image = ColorImage::filled(size, egui::Color32::TRANSPARENT);
        for y in 0..tall {
            for x in 0..wide {
                let inside = |x: usize, y: usize| {
                    x < wide && y < tall && of_part.get(y * wide + x) == Some(&true)
                };
                let edge = inside(x, y)
                    && !(inside(x + deep, y)
                        && inside(x.wrapping_sub(deep), y)
                        && inside(x, y + deep)
                        && inside(x, y.wrapping_sub(deep)));
                if edge {
                    image.pixels[y * wide + x] = colour;
                }
            }
        }
        image
    }
}

/// Small pictures: of each part by itself, and of each step.
#[derive(Debug, Default)]
pub(super) struct ToySmall {
    pub(super) parts: Vec<ColorImage>,
    pub(super) steps: Vec<ColorImage>,
}

/// The colours of a project's yarns, and as many of the colour of what is in hand.
pub(super) struct Colours {
    yarns: Vec<Rgb>,
    lit: Vec<Rgb>,
}

impl Colours {
    pub(super) fn new(made: &ToyMade, lit: Rgb) -> Self {
        let yarns = made.project.colours();
        Self { lit: vec![lit; yarns.len().max(1)], yarns }
    }

    fn light<'a, 'p>(
        &'a self,
        parts: &'p [usize],
        attachment: Option<usize>,
    ) -> ToyLight<'a, 'p> {
        ToyLight { colours: &self.yarns, lit: &self.lit, parts, attachment }
    }
}

/// Draws the large picture, first in draft if so asked, and tells each; the whole one only as
/// long as it is not vain. Returns whether it came to its end.
pub(super) fn large(
    made: &Arc<ToyMade>,
    look: &ToyLook,
    place: &ToyPlace,
    draft: bool,
    mut tell: impl FnMut(ToyDrawn),
    is_vain: impl Fn() -> bool,
) -> bool {
    let colours = Colours::new(made, look.lit);
    let light = colours.light(&look.parts, look.attachment);
    let apart;
    let picture = if look.apart > 0.0 {
        apart = ToyPicture::new(&made.project, &made.assembled, look.apart);
        &apart
    } else {
        &made.picture
    };
    let scene = |coarse: f32, quality: Quality| {
        let view = ReliefView { quality, ..place.view(look.pixels_per_point / coarse) };
        picture.scene(|piece| made.reliefs.get(&piece).map(|r| &**r), &light, |_| true, &view)
    };
    if draft {
        let (scene, things) = scene(DRAFT, Quality::Draft);
        if let Some(still) = still_unless(&scene, || false) {
            tell(ToyDrawn::new(still, place.field, true, things, made));
        }
    }
    if is_vain() {
        return false;
    }
    let (scene, things) = scene(1.0, Quality::Full);
    let Some(still) = still_unless(&scene, is_vain) else { return false };
    tell(ToyDrawn::new(still, place.field, false, things, made));
    true
}

/// Draws the small pictures, unless that becomes vain.
pub(super) fn small(made: &ToyMade, lit: Rgb, is_vain: impl Fn() -> bool) -> Option<ToySmall> {
    let colours = Colours::new(made, lit);
    let mut pictures = ToySmall::default();
    let relief = |piece| made.reliefs.get(&piece).map(|relief| &**relief);
    let one = |parts: &[usize], held: &[usize], lit: (&[usize], Option<usize>), pixels| {
        let shows = |part: usize| parts.contains(&part);
        let picture = made.picture.only(shows, held);
        let light = colours.light(lit.0, lit.1);
        let view = picture.fitted(ToySide::Free.turned_deg(), pixels);
        let (scene, _) = picture.scene(relief, &light, shows, &view);
        drawn(&scene, &is_vain)
    };
    for index in 0..made.project.toy.parts.len() {
        pictures.parts.push(one(&[index], &[], (&[], None), PART_PIXELS)?);
    }
    for step in shown_steps(&made.steps) {
        let lit = (step.part.as_slice(), step.attachment);
        pictures.steps.push(one(&step.parts, &step.attachments, lit, STEP_PIXELS)?);
    }
    Some(pictures)
}

fn drawn(scene: &ReliefScene<'_>, is_vain: impl Fn() -> bool) -> Option<ColorImage> {
    Some(image_of(&mut still_unless(scene, is_vain)?))
}

impl ToyPlace {
    /// Where `picture` stands in `field`, turned so.
    pub(super) fn new(picture: &ToyPicture, turned: Turned, field: Rect, room: Vec2) -> Self {
        let reach = picture.reach();
        let fits = reach.fitting(room.x.max(8.0), room.y.max(8.0), turned.tilt_deg);
        let scale = fits * turned.zoom;
        Self { field, turned, scale, reach }
    }

    /// The view of the whole field, so many pixels a point.
    pub(super) fn view(&self, pixels: f32) -> ReliefView {
        let size = [self.field.width(), self.field.height()];
        ReliefView {
            turn_deg: self.turned.turn_deg,
            tilt_deg: self.turned.tilt_deg,
            scale: self.scale * pixels,
            middle: self.reach.middle,
            size: size.map(|s| (s * pixels).round().clamp(1.0, 8192.0) as u32),
            quality: Quality::Full,
        }
    }

    /// Where a place of the picture's axes falls in the window, and how near the eye it is.
    pub fn at(&self, spot: [f32; 3]) -> (Pos2, f32) {
        // The size in whole points is close, but the middle must be exact.
        let view = ReliefView { size: [0, 0], ..self.view(1.0) };
        let [x, y, near] = view.project(spot);
        (self.field.center() + vec2(x, y), near)
    }

    /// The line from a place of the window into the picture: see [`ReliefView::line`].
    pub(super) fn line(&self, at: Pos2) -> ([f32; 3], [f32; 3]) {
        let view = ReliefView { size: [0, 0], ..self.view(1.0) };
        let off = at - self.field.center();
        view.line(off.x, off.y)
    }

    /// The level of the ground, in the picture's axes, under the middle.
    pub fn foot(&self) -> [f32; 3] {
        let [x, y, z] = self.reach.middle;
        [x, y, z + self.reach.half_height]
    }

    /// The place over the middle that is as high as anything.
    pub fn top(&self) -> [f32; 3] {
        let [x, y, z] = self.reach.middle;
        [x, y, z - self.reach.half_height]
    }

    /// Points a millimetre.
    pub fn scale(&self) -> f32 {
        self.scale
    }

    /// How far anything is from the upright line through the middle, points.
    pub fn across(&self) -> f32 {
        self.reach.across * self.scale
    }

    /// Points that the surface moves for a radian the toy is turned.
    pub fn points_per_radian(&self) -> f32 {
        self.across().max(20.0)
    }

    /// Half the height of the toy, mm.
    pub fn half_height_mm(&self) -> f32 {
        self.reach.half_height
    }
}
