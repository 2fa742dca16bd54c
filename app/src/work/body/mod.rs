//! The body on screen: its picture is drawn on a thread, a draft at once and then with all
//! care, and only when the plan, the look or the place changes.

mod drawing;

use std::sync::Arc;

use egui::{Context, Pos2, Rect, TextureHandle, TextureOptions, pos2, vec2};
use plumpline_core::picture::relief::ReliefView;
use plumpline_core::picture::{Picked, Rgb};
use plumpline_core::{Piece, Plan, YarnFace};

use self::drawing::{BodyExtent, BodyLikeness, BodyWish, Drawn};
use super::worker::{Newest, Ticket, Voice, Worker};
use crate::view::Turned;

/// Room around the body for its plumb line and its turntable, points.
const ABOVE: f32 = 8.0;
const BELOW: f32 = 36.0;
const BESIDE: f32 = 26.0;

/// What a body is to be shown with.
#[derive(Debug, Clone, PartialEq)]
pub struct BodyLook {
    /// How it is turned.
    pub turned: Turned,
    /// A round shown in another colour.
    pub lit: Option<(u32, Rgb)>,
    /// Colours by yarn.
    pub colours: Vec<Rgb>,
    /// Faces by yarn.
    pub faces: Vec<YarnFace>,
    /// Where it stands.
    pub field: Rect,
    /// Pixels a point.
    pub pixels_per_point: f32,
}

/// The body of the plan on screen and the picture of it.
pub struct BodyShown {
    worker: Worker<Newest<BodyWish>, Drawn>,
    /// The plan and its piece.
    shown: Option<(Arc<Plan>, Arc<Piece>, BodyExtent)>,
    asked: Option<BodyLook>,
    awaited: Option<Ticket>,
    middle: Pos2,
    /// Points a millimetre.
    scale: f32,
    /// Around the body as it is asked for, points from its middle.
    bounds: [[f32; 2]; 2],
    drawn: Option<Drawn>,
    texture: Option<TextureHandle>,
    times: usize,
}

impl std::fmt::Debug for BodyShown {
    fn fmt(&self, f: &mut std::fmt::Formatter<'_>) -> std::fmt::Result {
        let mut shown = f.debug_struct("BodyShown");
        shown.field("asked", &self.asked).field("drawn", &self.drawn).finish_non_exhaustive()
    }
}

impl Default for BodyShown {
    fn default() -> Self {
        let work = || {
            let mut likeness = BodyLikeness::default();
            move |wish: BodyWish, voice: &Voice<'_, Newest<BodyWish>, Drawn>| {
                likeness.draw(&wish, |drawn| voice.say(drawn), || voice.is_vain());
            }
        };
        Self {
            worker: Worker::new("body", work),
            shown: None,
            asked: None,
            awaited: None,
            middle: Pos2::ZERO,
            scale: 1.0,
            bounds: [[0.0; 2]; 2],
            drawn: None,
            texture: None,
            times: 0,
        }
    }
}

impl BodyShown {
    /// Shows `plan`, the plan of `piece`, as asked; takes what has been drawn. Asks for nothing
    /// when all is as it was.
    ///
    /// # Errors
    /// One line, where it could not be drawn.
    pub fn update(
        &mut self,
        ctx: &Context,
        plan: &Arc<Plan>,
        piece: &Piece,
        asked: BodyLook,
    ) -> Result<(), String> {
        let heard = self.hear(ctx);
        let same = self.shown.as_ref().is_some_and(|(shown, ..)| Arc::ptr_eq(shown, plan));
        if same && self.asked.as_ref() == Some(&asked) {
            return heard;
        }
        let moved = !same
            || self
                .asked
                .as_ref()
                .is_none_or(|was| (was.turned, was.field) != (asked.turned, asked.field));
        if !same {
            let extent = BodyExtent::new(piece, plan);
            self.shown = Some((Arc::clone(plan), Arc::new(piece.clone()), extent));
        }
        let Some((plan, piece, extent)) = &self.shown else { return heard };
        let room = asked.field.size() - vec2(2.0 * BESIDE, ABOVE + BELOW);
        let turned = asked.turned;
        self.scale = extent.fitting(room.x.max(8.0), room.y.max(8.0)) * turned.zoom;
        self.middle = asked.field.center() + vec2(0.0, 0.5 * (ABOVE - BELOW));
        self.bounds =
            extent.bounds(turned.turn_deg, turned.tilt_deg).map(|c| c.map(|v| v * self.scale));
        let wish = BodyWish {
            plan: Arc::clone(plan),
            piece: Arc::clone(piece),
            look: asked.clone(),
            middle: self.middle,
            scale: self.scale,
            draft: moved,
        };
        if self.drawn.is_none() {
            // A place never stands empty: the first draft is not waited for.
            BodyLikeness::default().draw(&wish, |drawn| self.take(ctx, drawn), || true);
        }
        self.awaited = Some(self.worker.ask(ctx, wish));
        self.asked = Some(asked);
        self.times += 1;
        heard
    }

    fn hear(&mut self, ctx: &Context) -> Result<(), String> {
        while let Some(heard) = self.worker.hear() {
            match heard.answer {
                Ok(drawn) => {
                    if !drawn.is_draft() {
                        self.awaited.take_if(|ticket| *ticket == heard.to);
                    }
                    self.take(ctx, drawn);
                }
                Err(broken) => {
                    self.awaited.take_if(|ticket| *ticket == heard.to);
                    return Err(say!(
                        "trouble-the-body-could-not-be-drawn-broken",
                        broken = broken.to_string()
                    ));
                }
            }
        }
        Ok(())
    }

    fn take(&mut self, ctx: &Context, mut drawn: Drawn) {
        let image = drawn.take_image();
        match &mut self.texture {
            Some(texture) => texture.set(image, TextureOptions::LINEAR),
            None => {
                self.texture = Some(ctx.load_texture("body", image, TextureOptions::LINEAR));
            }
        }
        self.drawn = Some(drawn);
    }

    /// How often another picture was asked for: a body at rest asks for none.
    pub fn drawn(&self) -> usize {
        self.times
    }

    /// Whether the picture that was asked for last is still being drawn.
    pub fn is_busy(&self) -> bool {
        self.awaited.is_some()
    }

    /// Nobody looks at it: what is awaited is asked for again when somebody does.
    pub(crate) fn rest(&mut self) {
        if self.awaited.take().is_some() {
            self.asked = None;
        }
    }

    /// The picture and where it is in the window.
    pub fn picture(&self) -> Option<(&TextureHandle, Rect)> {
        Some((self.texture.as_ref()?, self.drawn.as_ref()?.place()))
    }

    /// The round and stitch at a place of the window.
    pub fn pick(&self, at: Pos2) -> Option<Picked> {
        self.drawn.as_ref()?.pick(at)
    }

    /// Where the middle of the body is.
    pub(crate) fn middle(&self) -> Pos2 {
        self.middle
    }

    /// Where the thread of a round is tied: the leftmost place of it in sight.
    pub fn tie(&self, round: u32) -> Option<Pos2> {
        self.drawn.as_ref()?.leftmost(round)
    }

    /// Top and bottom of the picture and half its width, points.
    pub(crate) fn reach(&self) -> (f32, f32, f32) {
        let [low, high] = self.bounds;
        let y = self.middle.y;
        (y + low[1], y + high[1], 0.5 * (high[0] - low[0]))
    }

    /// Points the surface moves for a radian it is turned.
    pub(crate) fn points_per_radian(&self) -> f32 {
        let [low, high] = self.bounds;
        (0.5 * (high[0] - low[0])).max(20.0)
    }

    /// Half the height of the body along its axis, points before it is tilted.
    pub(crate) fn half_height(&self) -> f32 {
        self.shown.as_ref().map_or(0.0, |(_, _, extent)| extent.half_height() * self.scale)
    }
}

/// The view of a picture in `place` of the window that shows the body's middle at `middle`,
/// every `coarse`th pixel of the screen a pixel.
fn view(look: &BodyLook, place: Rect, scale: f32, coarse: f32) -> ReliefView {
    let pixels = look.pixels_per_point / coarse;
    let size = [place.width(), place.height()];
    ReliefView {
        turn_deg: look.turned.turn_deg,
        tilt_deg: look.turned.tilt_deg,
        scale: scale * pixels,
        middle: [0.0; 3],
        size: size.map(|s| (s * pixels).round().clamp(1.0, 8192.0) as u32),
        quality: plumpline_core::picture::relief::Quality::Full,
    }
}

/// The part of the window that a picture around `middle` must cover to fill `field`.
fn around(field: Rect, middle: Pos2) -> Rect {
    let half = |low: f32, high: f32, at: f32| (at - low).max(high - at).max(1.0);
    let x = half(field.left(), field.right(), middle.x);
    let y = half(field.top(), field.bottom(), middle.y);
    Rect::from_min_max(pos2(middle.x - x, middle.y - y), pos2(middle.x + x, middle.y + y))
}
