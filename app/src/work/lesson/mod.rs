//! Cloth of the lesson on screen: let go on a thread, seen as it settles, then drawn with all
//! care; small pictures of what can be predicted last.

pub(super) mod cloth;
pub(super) mod drawing;

use std::sync::Arc;

use egui::{ColorImage, Context, TextureHandle, TextureOptions};
use plumpline_core::lesson::course::{LessonChoice, LessonCourse, SampleRule};
use plumpline_core::lesson::net::RingMeasure;
use plumpline_core::picture::Rgb;
use plumpline_core::picture::relief::Seen;
use plumpline_core::{Gauge, Piece, PieceId, Plan, YarnFace};

use self::cloth::LessonCloth;
use super::worker::{Newest, Voice, Worker};
use crate::document::Revision;
use crate::view::Turned;

/// What is let go.
#[derive(Debug, Clone, Copy, PartialEq)]
pub enum LessonSubject {
    /// A sample of the course, in stitches of a gauge.
    Sample(SampleRule, Gauge),
    /// A piece of the project as it was then.
    Piece(PieceId, Revision),
}

/// One picture of it.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct LessonSight {
    /// From where.
    pub turned: Turned,
    /// Its size, pixels.
    pub pixels: [u32; 2],
}

/// How it is shown.
#[derive(Debug, Clone, PartialEq)]
pub struct LessonLook {
    /// Whether it is still held flat.
    pub held: bool,
    /// Whether it stays as far as it has come.
    pub stopped: bool,
    /// Whether it is shown at rest only, not on the way there.
    pub still: bool,
    /// Its pictures.
    pub sights: [LessonSight; 2],
    /// A round in another colour.
    pub lit: Option<(u32, Rgb)>,
    /// Colours by yarn.
    pub colours: Vec<Rgb>,
    /// What the yarns look like.
    pub faces: Vec<YarnFace>,
}

/// What is asked of the thread.
#[derive(Debug, Clone)]
struct LessonWish {
    subject: LessonSubject,
    /// The piece and its plan, where that is the subject.
    piece: Option<(Arc<Piece>, Arc<Plan>)>,
    look: LessonLook,
}

/// The cloth as it lies.
#[derive(Debug, Clone, PartialEq)]
pub struct LessonState {
    /// What it is.
    pub subject: LessonSubject,
    /// Every round as it lies, what the first is worked into at index 0.
    pub rings: Vec<RingMeasure>,
    /// How far it has come, 0 to 1.
    pub progress: f64,
    /// Whether it is at rest.
    pub rests: bool,
    /// Whether it is held flat.
    pub held: bool,
}

/// One picture that was drawn.
#[derive(Debug, Default)]
struct LessonDrawn {
    image: ColorImage,
    map: Vec<Seen>,
}

#[derive(Debug)]
enum LessonSaid {
    Drawn(Box<([LessonDrawn; 2], LessonState)>),
    Choices(Vec<(LessonChoice, ColorImage)>),
    Refused(String),
}

/// A picture on screen and what is seen in it.
struct ClothPicture {
    texture: TextureHandle,
    size: [usize; 2],
    map: Vec<Seen>,
}

/// The cloth of the lesson and its pictures.
pub struct LessonShown {
    /// The course that is taught in place of the built-in one.
    course: Option<LessonCourse>,
    worker: Worker<Newest<LessonWish>, LessonSaid>,
    asked: Option<(LessonSubject, LessonLook)>,
    state: Option<LessonState>,
    refused: Option<String>,
    pictures: [Option<ClothPicture>; 2],
    choices: Vec<(LessonChoice, TextureHandle)>,
    piece: Option<(Revision, Arc<Piece>)>,
}

impl std::fmt::Debug for LessonShown {
    fn fmt(&self, f: &mut std::fmt::Formatter<'_>) -> std::fmt::Result {
        let mut shown = f.debug_struct("LessonShown");
        shown.field("asked", &self.asked).field("state", &self.state).finish_non_exhaustive()
    }
}

impl Default for LessonShown {
    fn default() -> Self {
        let work = || {
            let mut cloth: Option<LessonCloth> = None;
            let mut choices: Vec<Rgb> = Vec::new();
            move |wish: LessonWish, voice: &Voice<'_, Newest<LessonWish>, LessonSaid>| {
                carry_out(&wish, &mut cloth, &mut choices, voice);
            }
        };
        Self {
            course: None,
            worker: Worker::new("lesson", work),
            asked: None,
            state: None,
            refused: None,
            pictures: [None, None],
            choices: Vec::new(),
            piece: None,
        }
    }
}

fn carry_out(
    wish: &LessonWish,
    cloth: &mut Option<LessonCloth>,
    choices: &mut Vec<Rgb>,
    voice: &Voice<'_, Newest<LessonWish>, LessonSaid>,
) {
    if cloth.as_ref().is_none_or(|cloth| cloth.subject != wish.subject) {
        *cloth = None;
        match LessonCloth::of(wish) {
            Ok(made) => *cloth = Some(made),
            Err(error) => return voice.say(LessonSaid::Refused(error.to_string())),
        }
    }
    let Some(cloth) = cloth else { return };
    let say = |pictures, cloth: &LessonCloth| {
        voice.say(LessonSaid::Drawn(Box::new((pictures, cloth.state(wish.look.held)))));
    };
    let goes = !wish.look.held && !wish.look.stopped;
    loop {
        let rests = !goes || cloth.cloth.settle(wish.look.still, || voice.is_vain());
        if voice.is_vain() && !rests {
            return;
        }
        if !wish.look.still || rests {
            say(drawing::draft(cloth, &wish.look), cloth);
        }
        if rests {
            break;
        }
    }
    if let Some(pictures) = drawing::whole(cloth, &wish.look, || voice.is_vain()) {
        say(pictures, cloth);
    }
    if *choices != wish.look.colours
        && let Some(pictures) = drawing::choices(&wish.look.colours, || voice.is_vain())
    {
        choices.clone_from(&wish.look.colours);
        voice.say(LessonSaid::Choices(pictures));
    }
}

impl LessonShown {
    /// The course that is taught.
    pub fn course(&self) -> &LessonCourse {
        self.course.as_ref().unwrap_or_else(|| LessonCourse::english())
    }

    /// Teaches another course.
    pub(crate) fn teach(&mut self, course: LessonCourse) {
        self.course = Some(course);
    }

    /// Shows `subject` so; takes what has been worked out and drawn. Asks for nothing when all
    /// is as it was. `piece` gives the piece and its plan, where those are the subject.
    ///
    /// # Errors
    /// One line, where the work on it broke off.
    pub(crate) fn update(
        &mut self,
        ctx: &Context,
        subject: LessonSubject,
        look: LessonLook,
        piece: Option<(&Piece, &Arc<Plan>)>,
    ) -> Result<(), String> {
        let heard = self.hear(ctx);
        if self.asked.as_ref().is_some_and(|(was, asked)| *was == subject && *asked == look) {
            return heard;
        }
        if self.asked.as_ref().is_none_or(|(was, _)| *was != subject) {
            self.refused = None;
        }
        let piece = match (subject, piece) {
            (LessonSubject::Piece(_, revision), Some((piece, plan))) => {
                let kept = self.piece.take().filter(|(of, _)| *of == revision);
                let kept = kept.unwrap_or_else(|| (revision, Arc::new(piece.clone())));
                let both = (Arc::clone(&kept.1), Arc::clone(plan));
                self.piece = Some(kept);
                Some(both)
            }
            _ => None,
        };
        self.worker.ask(ctx, LessonWish { subject, piece, look: look.clone() });
        self.asked = Some((subject, look));
        heard
    }

    /// Nobody looks at it: what has been worked out is taken all the same.
    ///
    /// # Errors
    /// As [`LessonShown::update`].
    pub(crate) fn rest(&mut self, ctx: &Context) -> Result<(), String> {
        if self.worker.asked() == 0 { Ok(()) } else { self.hear(ctx) }
    }

    fn hear(&mut self, ctx: &Context) -> Result<(), String> {
        while let Some(heard) = self.worker.hear() {
            match heard.answer {
                Ok(LessonSaid::Drawn(said)) => {
                    let (drawn, state) = *said;
                    let now = self.asked.as_ref().map(|(subject, _)| *subject);
                    if now == Some(state.subject) {
                        self.take(ctx, drawn);
                        self.state = Some(state);
                    }
                }
                Ok(LessonSaid::Choices(choices)) => {
                    let keep = |(choice, image): (LessonChoice, ColorImage)| {
                        let name = format!("lesson {choice:?}");
                        (choice, ctx.load_texture(name, image, TextureOptions::LINEAR))
                    };
                    self.choices = choices.into_iter().map(keep).collect();
                }
                Ok(LessonSaid::Refused(why)) => {
                    (self.state, self.pictures) = (None, [None, None]);
                    self.refused = Some(why);
                }
                Err(broken) => {
                    return Err(say!(
                        "trouble-the-fabric-could-not-relax-broken",
                        broken = broken.to_string()
                    ));
                }
            }
        }
        Ok(())
    }

    fn take(&mut self, ctx: &Context, drawn: [LessonDrawn; 2]) {
        for (i, LessonDrawn { image, map }) in drawn.into_iter().enumerate() {
            let size = image.size;
            match &mut self.pictures[i] {
                Some(picture) => {
                    picture.texture.set(image, TextureOptions::LINEAR);
                    (picture.size, picture.map) = (size, map);
                }
                empty @ None => {
                    let name = format!("lesson picture {i}");
                    let texture = ctx.load_texture(name, image, TextureOptions::LINEAR);
                    *empty = Some(ClothPicture { texture, size, map });
                }
            }
        }
    }

    /// The cloth of `subject` as it lies.
    pub fn state(&self) -> Option<&LessonState> {
        let (subject, _) = self.asked.as_ref()?;
        self.state.as_ref().filter(|state| state.subject == *subject)
    }

    /// Why it cannot be let go.
    pub fn refused(&self) -> Option<&str> {
        self.refused.as_deref()
    }

    /// Whether something that was asked for is still under way.
    pub fn is_busy(&self) -> bool {
        self.worker.is_busy()
    }

    /// Picture 0 or 1.
    pub fn picture(&self, index: usize) -> Option<&TextureHandle> {
        Some(&self.pictures.get(index)?.as_ref()?.texture)
    }

    /// The round seen in a picture at a place, as shares of its width and height.
    pub fn round_at(&self, index: usize, share: egui::Vec2) -> Option<u32> {
        let ClothPicture { size: [wide, tall], map, .. } =
            self.pictures.get(index)?.as_ref()?;
        let (x, y) = (share.x * *wide as f32, share.y * *tall as f32);
        if !(0.0..*wide as f32).contains(&x) || !(0.0..*tall as f32).contains(&y) {
            return None;
        }
        let seen = map.get(y as usize * wide + x as usize)?;
        (seen.round > 0).then_some(u32::from(seen.round))
    }

    /// The small picture of a choice.
    pub fn choice(&self, choice: LessonChoice) -> Option<&TextureHandle> {
        self.choices.iter().find(|(of, _)| *of == choice).map(|(_, texture)| texture)
    }
}
