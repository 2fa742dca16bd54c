//! The toy on screen: put together on a thread whenever the project is another, and drawn
//! there, a draft at once and then with all care; small pictures of parts and steps last.

mod drawing;
mod made;

use std::sync::Arc;

use egui::{Color32, Context, Pos2, Rect, TextureHandle, TextureOptions, Vec2, vec2};
use plumpline_core::Project;
use plumpline_core::picture::Rgb;
use plumpline_core::picture::toy::{ToyPicture, ToyReach, ToyThing};
use plumpline_core::toy::solid::OnCloth;

use self::drawing::{ToyDrawn, ToySmall};
use self::made::ToyMaker;
use super::lingering::{self, Lingering, LongWork};
use super::worker::{Newest, Voice, Worker};
use crate::document::{Document, Revision};
use crate::view::Turned;

pub use made::ToyMade;

/// Room around the toy for its ground, its height and what is said of it, points.
const ROOM: Vec2 = vec2(150.0, 60.0);

/// How a toy is to be shown.
#[derive(Debug, Clone, PartialEq)]
pub struct ToyLook {
    /// How it is turned.
    pub turned: Turned,
    /// How far its parts are drawn apart, 0 to 1.
    pub apart: f64,
    /// The parts in hand.
    pub parts: Vec<usize>,
    /// The attachment in hand.
    pub attachment: Option<usize>,
    /// The colour of what is in hand.
    pub lit: Rgb,
    /// Where it stands.
    pub field: Rect,
    /// Pixels a point.
    pub pixels_per_point: f32,
}

/// How the toy's millimetres fall on the window.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct ToyPlace {
    field: Rect,
    turned: Turned,
    /// Points a millimetre.
    scale: f32,
    reach: ToyReach,
}

/// What is to be done: the toy put together, where that is not done yet, and drawn.
#[derive(Debug, Clone)]
struct ToyWish {
    project: Arc<Project>,
    revision: Revision,
    look: ToyLook,
    /// Where it stands, if that is to stay as it was.
    place: Option<ToyPlace>,
    /// Whether a draft comes first: the picture there is shows it elsewhere.
    draft: bool,
}

/// What the thread says.
#[derive(Debug)]
enum ToySaid {
    Made(Result<Arc<ToyMade>, String>),
    Drawn(ToyDrawn),
    Small(ToySmall),
}

/// The toy of the project and its pictures.
pub struct ToyShown {
    worker: Worker<Newest<ToyWish>, ToySaid>,
    asked: Option<(Revision, ToyLook)>,
    made: Option<Arc<ToyMade>>,
    /// Why the toy as it stands cannot be put together.
    error: Option<String>,
    /// The picture for the place, of the toy as it was made and so far apart.
    picture: Option<(Arc<ToyMade>, f64, ToyPicture)>,
    place: Option<ToyPlace>,
    drawn: Option<ToyDrawn>,
    texture: Option<TextureHandle>,
    /// The edge of a part of the picture drawn last.
    rim: Option<(usize, TextureHandle)>,
    parts: Vec<TextureHandle>,
    steps: Vec<TextureHandle>,
    times: usize,
}

impl std::fmt::Debug for ToyShown {
    fn fmt(&self, f: &mut std::fmt::Formatter<'_>) -> std::fmt::Result {
        let mut shown = f.debug_struct("ToyShown");
        shown.field("asked", &self.asked).field("place", &self.place).finish_non_exhaustive()
    }
}

impl Default for ToyShown {
    fn default() -> Self {
        let work = || {
            let mut maker = ToyMaker::default();
            let mut small: Option<Revision> = None;
            move |wish: ToyWish, voice: &Voice<'_, Newest<ToyWish>, ToySaid>| {
                carry_out(&wish, &mut maker, &mut small, voice);
            }
        };
        Self {
            worker: Worker::new("toy", work),
            asked: None,
            made: None,
            error: None,
            picture: None,
            place: None,
            drawn: None,
            texture: None,
            rim: None,
            parts: Vec::new(),
            steps: Vec::new(),
            times: 0,
        }
    }
}

fn carry_out(
    wish: &ToyWish,
    maker: &mut ToyMaker,
    small: &mut Option<Revision>,
    voice: &Voice<'_, Newest<ToyWish>, ToySaid>,
) {
    let made = maker.make(&wish.project, wish.revision);
    voice.say(ToySaid::Made(made.clone()));
    let Ok(made) = made else { return };
    let place = wish.place.unwrap_or_else(|| {
        let picture = ToyPicture::new(&made.project, &made.assembled, wish.look.apart);
        place_of(&picture, &wish.look)
    });
    let tell = |drawn| voice.say(ToySaid::Drawn(drawn));
    let done = drawing::large(&made, &wish.look, &place, wish.draft, tell, || voice.is_vain());
    if done && *small != Some(wish.revision) {
        let pictures = drawing::small(&made, wish.look.lit, || voice.is_vain());
        if let Some(pictures) = pictures {
            *small = Some(wish.revision);
            voice.say(ToySaid::Small(pictures));
        }
    }
}

fn place_of(picture: &ToyPicture, look: &ToyLook) -> ToyPlace {
    ToyPlace::new(picture, look.turned, look.field, look.field.size() - ROOM)
}

impl ToyShown {
    /// The work under way, if it takes so long that a person wonders.
    pub fn lingering(&self) -> Option<Lingering> {
        lingering::of(&self.worker, LongWork::Toy, say!("trouble-putting-the-toy-together"))
    }

    /// Gives it up.
    pub fn give_up(&mut self, ctx: &Context) {
        self.worker.give_up(ctx);
    }

    /// Shows the toy of `document` as asked; takes what has been worked out and drawn. Asks
    /// for nothing when all is as it was. While it is `held`, the ground stays where it is.
    ///
    /// # Errors
    /// One line, where the work on it broke off.
    pub fn update(
        &mut self,
        ctx: &Context,
        document: &Document,
        look: ToyLook,
        held: bool,
    ) -> Result<(), String> {
        let heard = self.hear(ctx);
        let revision = document.revision();
        if document.project().toy.parts.is_empty() {
            self.clear();
            return heard;
        }
        if self.asked.as_ref() == Some(&(revision, look.clone())) {
            return heard;
        }
        let moved = self.asked.as_ref().is_none_or(|(was, asked)| {
            let ground = |look: &ToyLook| (look.turned, look.apart, look.field);
            *was != revision || ground(asked) != ground(&look)
        });
        let project = match &self.made {
            Some(made) if made.revision == revision => Arc::clone(&made.project),
            _ => Arc::new(document.project().clone()),
        };
        let place = self.place.filter(|place| held && place.field == look.field);
        let wish = ToyWish { project, revision, look: look.clone(), place, draft: moved };
        self.worker.ask(ctx, wish);
        self.asked = Some((revision, look));
        self.times += 1;
        self.stand(held);
        heard
    }

    /// Nobody looks at it: what has been worked out is taken all the same.
    pub fn rest(&mut self, ctx: &Context) -> Result<(), String> {
        if self.worker.asked() == 0 { Ok(()) } else { self.hear(ctx) }
    }

    fn clear(&mut self) {
        (self.made, self.error, self.picture, self.place) = (None, None, None, None);
        (self.drawn, self.texture, self.rim, self.asked) = (None, None, None, None);
        self.parts.clear();
        self.steps.clear();
    }

    fn hear(&mut self, ctx: &Context) -> Result<(), String> {
        while let Some(heard) = self.worker.hear() {
            match heard.answer {
                // What was still under way when the last part was taken out.
                Ok(_) if self.asked.is_none() => {}
                Ok(ToySaid::Made(Ok(made))) => {
                    self.made = Some(made);
                    self.error = None;
                    self.stand(false);
                }
                Ok(ToySaid::Made(Err(error))) => self.error = Some(error),
                Ok(ToySaid::Drawn(drawn)) => self.take(ctx, drawn),
                Ok(ToySaid::Small(small)) => {
                    let keep = |(i, image)| {
                        ctx.load_texture(format!("toy {i}"), image, TextureOptions::LINEAR)
                    };
                    self.parts = small.parts.into_iter().enumerate().map(keep).collect();
                    self.steps = small.steps.into_iter().enumerate().map(keep).collect();
                }
                Err(broken) => {
                    return Err(say!(
                        "trouble-the-toy-could-not-be-drawn-broken-turn",
                        broken = broken.to_string()
                    ));
                }
            }
        }
        Ok(())
    }

    /// Where the toy stands as it was made last, unless it is held.
    fn stand(&mut self, held: bool) {
        let (Some(made), Some((_, look))) = (&self.made, &self.asked) else { return };
        let known = self.picture.as_ref();
        if !known.is_some_and(|(of, apart, _)| Arc::ptr_eq(of, made) && *apart == look.apart) {
            let picture = ToyPicture::new(&made.project, &made.assembled, look.apart);
            self.picture = Some((Arc::clone(made), look.apart, picture));
        }
        let stays = held && self.place.is_some_and(|place| place.field == look.field);
        if let Some((.., picture)) = self.picture.as_ref().filter(|_| !stays) {
            self.place = Some(place_of(picture, look));
        }
    }

    fn take(&mut self, ctx: &Context, mut drawn: ToyDrawn) {
        let image = std::mem::take(&mut drawn.image);
        match &mut self.texture {
            Some(texture) => texture.set(image, TextureOptions::LINEAR),
            None => self.texture = Some(ctx.load_texture("toy", image, TextureOptions::LINEAR)),
        }
        self.rim = None;
        self.drawn = Some(drawn);
    }

    /// The toy as it was made last, if it tells of the parts that the project has.
    pub fn made(&self, document: &Document) -> Option<&ToyMade> {
        self.made.as_deref().filter(|made| made.is_of(&document.project().toy))
    }

    /// Why the toy as it stands cannot be put together.
    pub fn error(&self) -> Option<&str> {
        self.error.as_deref()
    }

    /// Whether something that was asked for is still under way.
    pub fn is_busy(&self) -> bool {
        self.worker.is_busy()
    }

    /// How often another picture was asked for: a toy at rest asks for none.
    pub fn drawn(&self) -> usize {
        self.times
    }

    /// How its millimetres fall on the window.
    pub fn place(&self) -> Option<&ToyPlace> {
        self.place.as_ref()
    }

    /// The picture and where it is in the window.
    pub fn picture(&self) -> Option<(&TextureHandle, Rect)> {
        Some((self.texture.as_ref()?, self.drawn.as_ref()?.place))
    }

    /// The small picture of a part.
    pub fn part_picture(&self, index: usize) -> Option<&TextureHandle> {
        self.parts.get(index)
    }

    /// The small picture of a step.
    pub fn step_picture(&self, index: usize) -> Option<&TextureHandle> {
        self.steps.get(index)
    }

    /// What is seen at a place of the window.
    pub fn pick(&self, at: Pos2) -> Option<ToyThing> {
        self.drawn.as_ref()?.pick(at)
    }

    /// The part that a pose is of, in the picture.
    pub fn part(&self, thing: ToyThing) -> Option<usize> {
        self.drawn.as_ref()?.part(thing)
    }

    /// The edge of a part in the picture, and nothing else: a picture of the same size.
    pub(crate) fn trace_rim(&mut self, ctx: &Context, part: Option<usize>, colour: Color32) {
        let (Some(part), Some(drawn)) = (part, &self.drawn) else {
            self.rim = None;
            return;
        };
        if self.rim.as_ref().is_some_and(|(of, _)| *of == part) {
            return;
        }
        let image = drawn.rim(part, colour);
        self.rim = Some((part, ctx.load_texture("toy rim", image, TextureOptions::LINEAR)));
    }

    /// The edge of the part pointed at, and where it lies.
    pub fn rim(&self) -> Option<(&TextureHandle, Rect)> {
        Some((&self.rim.as_ref()?.1, self.drawn.as_ref()?.place))
    }

    /// Where a place on the cloth of a pose falls in the window, and how near the eye it is.
    pub fn on_cloth(&self, pose: usize, on: OnCloth) -> Option<(Pos2, f32)> {
        let (made, _, picture) = self.picture.as_ref()?;
        let solid = made.solid(made.assembled.poses.get(pose)?.part)?;
        let spot = picture.on_cloth(&made.assembled, pose, solid, on)?;
        Some(self.place?.at(spot))
    }

    /// The place on the cloth of a pose that lies under a place of the window, whatever is
    /// before it.
    pub fn under(&self, pose: usize, at: Pos2) -> Option<OnCloth> {
        let (made, _, picture) = self.picture.as_ref()?;
        let solid = made.solid(made.assembled.poses.get(pose)?.part)?;
        picture.seen_on(&made.assembled, pose, solid, self.place?.line(at))
    }

    /// Where a place of the toy, mm in its own axes, falls in the window.
    pub fn at(&self, world: [f64; 3]) -> Option<Pos2> {
        let (.., picture) = self.picture.as_ref()?;
        Some(self.place?.at(picture.spot(world)).0)
    }
}
