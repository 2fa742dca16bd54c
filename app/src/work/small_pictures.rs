//! Small pictures of what a piece can begin from and of the projects last worked on, drawn
//! stitch by stitch on a thread and kept.

use std::path::{Path, PathBuf};

use egui::{ColorImage, Context, TextureHandle, TextureOptions, Vec2};
use plumpline_core::picture::Viewpoint;
use plumpline_core::picture::relief::{
    PosedRelief, Quality, Relief, ReliefPose, ReliefScene, ReliefView,
};
use plumpline_core::starter::Starter;
use plumpline_core::{Gauge, Project, Yarn, file, plan};

use super::making::copy_name;
use super::still::{image_of, still_unless};
use super::whole_toy::WholeToy;
use super::worker::{Queue, Ticket, Voice, Worker};
use crate::view::toy::ToySide;

/// Room left around what is drawn, as a part of the picture.
const FILLED: f32 = 0.94;

/// What there is a small picture of.
#[derive(Debug, Clone, PartialEq, Eq)]
pub enum Pictured {
    /// A starter at its usual size, in plain yarn.
    Starter(Starter),
    /// The project in a file: its toy, or its first piece.
    Project(PathBuf),
}

/// What is to be drawn, as wide and high as so many pixels.
#[derive(Debug)]
struct SmallWish {
    of: Pictured,
    pixels: [u32; 2],
}

/// What was drawn of one.
#[derive(Debug, Default)]
struct SmallDrawn {
    /// None of what cannot be drawn.
    image: Option<ColorImage>,
    left_at: Option<LeftAt>,
}

/// Where the hook was when a project was last worked on.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct LeftAt {
    /// The piece, with the number of its copy where there are several.
    pub piece: String,
    /// The round under the hook.
    pub round: u32,
}

impl LeftAt {
    /// Of the copy that was worked on last; none where that is made, or nothing was begun.
    fn of(project: &Project) -> Option<Self> {
        let last = project.making.at.last()?;
        let piece = project.piece(last.piece)?;
        let begun = !last.closed && (last.round > 1 || last.done > 0);
        begun.then(|| Self { piece: copy_name(piece, last.copy), round: last.round })
    }
}

/// A small picture, as far as it has been drawn.
struct SmallPicture {
    of: Pictured,
    pixels: [u32; 2],
    asked: Ticket,
    /// None until it is drawn, and of what cannot be.
    texture: Option<TextureHandle>,
    left_at: Option<LeftAt>,
    /// Whether it is to be drawn again when it is next looked at: a file may be another by then.
    old: bool,
}

/// The small pictures there are.
pub struct SmallPictures {
    worker: Worker<Queue<SmallWish>, SmallDrawn>,
    kept: Vec<SmallPicture>,
}

impl std::fmt::Debug for SmallPictures {
    fn fmt(&self, f: &mut std::fmt::Formatter<'_>) -> std::fmt::Result {
        f.debug_struct("SmallPictures").field("kept", &self.kept.len()).finish_non_exhaustive()
    }
}

impl Default for SmallPictures {
    fn default() -> Self {
        let work = || {
            |wish: SmallWish, voice: &Voice<'_, Queue<SmallWish>, SmallDrawn>| {
                voice.say(match &wish.of {
                    Pictured::Starter(starter) => {
                        SmallDrawn { image: of_starter(*starter, wish.pixels), left_at: None }
                    }
                    Pictured::Project(path) => of_project(path, wish.pixels),
                });
            }
        };
        Self { worker: Worker::new("small pictures", work), kept: Vec::new() }
    }
}

impl SmallPictures {
    /// Takes what has been drawn, and asks for what of `wanted`, each with its size in points,
    /// there is no picture of. Returns whether there is anything new to show.
    pub fn update(
        &mut self,
        ctx: &Context,
        wanted: impl IntoIterator<Item = (Pictured, Vec2)>,
    ) -> bool {
        let mut news = false;
        while let Some(heard) = self.worker.hear() {
            // One that could not be drawn stands empty; there is nothing to say about it.
            let drawn = heard.answer.unwrap_or_default();
            let of = self.kept.iter_mut().find(|small| small.asked == heard.to);
            let Some(small) = of else { continue };
            news |= drawn.image.is_some() || drawn.left_at != small.left_at;
            small.left_at = drawn.left_at;
            if let Some(image) = drawn.image {
                let texture = ctx.load_texture("small", image, TextureOptions::LINEAR);
                small.texture = Some(texture);
            }
        }
        for (of, size) in wanted {
            let side = |points: f32| (points * ctx.pixels_per_point()).round().max(1.0) as u32;
            let pixels = [side(size.x), side(size.y)];
            let kept = self.kept.iter().position(|small| small.of == of);
            if kept.is_some_and(|at| !self.kept[at].old && self.kept[at].pixels == pixels) {
                continue;
            }
            // What there is is shown until there is another.
            let (texture, left_at) = match kept.map(|at| self.kept.swap_remove(at)) {
                Some(small) => (small.texture, small.left_at),
                None => (None, None),
            };
            let asked = self.worker.ask(ctx, SmallWish { of: of.clone(), pixels });
            self.kept.push(SmallPicture { of, pixels, asked, texture, left_at, old: false });
        }
        news
    }

    /// Nobody looks at them: files are looked into again when somebody does.
    pub(crate) fn rest(&mut self) {
        for small in &mut self.kept {
            small.old = matches!(small.of, Pictured::Project(_));
        }
    }

    /// The picture of a starter, once it is drawn.
    pub fn starter(&self, starter: Starter) -> Option<&TextureHandle> {
        self.of(&Pictured::Starter(starter))
    }

    /// The picture of the project in a file, once it is drawn; none of a file that cannot be
    /// read.
    pub fn project(&self, path: &Path) -> Option<&TextureHandle> {
        self.of(&Pictured::Project(path.to_owned()))
    }

    /// Where the hook was in the project in a file, once that is read; none where nothing is
    /// begun.
    pub fn left_at(&self, path: &Path) -> Option<&LeftAt> {
        let of = Pictured::Project(path.to_owned());
        self.kept.iter().find(|small| small.of == of)?.left_at.as_ref()
    }

    fn of(&self, of: &Pictured) -> Option<&TextureHandle> {
        self.kept.iter().find(|small| small.of == *of)?.texture.as_ref()
    }

    /// Whether some that were asked for are still to be drawn.
    pub fn is_busy(&self) -> bool {
        self.worker.is_busy()
    }
}

/// A starter as it will look, a dish on its foot.
fn of_starter(starter: Starter, pixels: [u32; 2]) -> Option<ColorImage> {
    let piece = starter.piece(&starter.usual(), Gauge::default()).ok()?;
    let relief = Relief::new(&piece, &plan(&piece).ok()?);
    let stands = if starter == Starter::Dish {
        // It is worked from its middle, but known by how it stands.
        let axes = [[1.0, 0.0, 0.0], [0.0, -1.0, 0.0], [0.0, 0.0, -1.0]];
        ReliefPose { axes, ..ReliefPose::default() }
    } else {
        ReliefPose::default()
    };
    let colours = [Yarn::plain(0).colour];
    alone(PosedRelief { pose: stands, ..PosedRelief::new(&relief, &colours) }, pixels)
}

/// A project in a file: its picture, and where the hook was.
fn of_project(path: &Path, pixels: [u32; 2]) -> SmallDrawn {
    let Ok(project) = file::load(path) else { return SmallDrawn::default() };
    SmallDrawn { image: drawn(&project, pixels), left_at: LeftAt::of(&project) }
}

/// A project: its toy, or its first piece where it has none.
fn drawn(project: &Project, pixels: [u32; 2]) -> Option<ColorImage> {
    if !project.toy.parts.is_empty() {
        return of_toy(project, pixels);
    }
    let piece = project.pieces.first()?;
    let relief = Relief::new(piece, &plan(piece).ok()?).in_yarns(&project.faces());
    alone(PosedRelief::new(&relief, &project.colours()), pixels)
}

/// One relief, as large as fits.
fn alone(part: PosedRelief<'_>, pixels: [u32; 2]) -> Option<ColorImage> {
    let Viewpoint { turn_deg, tilt_deg, .. } = Viewpoint::default();
    let [low, high] = part.relief.bounds(turn_deg, tilt_deg);
    let half = [0, 1].map(|i| high[i].max(-low[i]).max(1e-3));
    let [wide, tall] = pixels.map(|p| 0.5 * FILLED * p as f32);
    let view = ReliefView {
        turn_deg,
        tilt_deg,
        scale: (wide / half[0]).min(tall / half[1]),
        middle: part.pose.place(part.relief.ball().0),
        size: pixels,
        quality: Quality::Full,
    };
    let mut still = still_unless(&ReliefScene::new(&[part], &view), || false)?;
    Some(image_of(&mut still))
}

/// The toy of a project, put together.
fn of_toy(project: &Project, pixels: [u32; 2]) -> Option<ColorImage> {
    let toy = WholeToy::of(project, 0.0).ok()?;
    let view = toy.picture.fitted(ToySide::Free.turned_deg(), pixels);
    Some(image_of(&mut toy.still(&view).ok()?))
}
