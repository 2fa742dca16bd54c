//! The sizes as they will look, drawn stitch by stitch on a thread once they are worked out.

use egui::{Color32, ColorImage, Context, TextureHandle, TextureOptions, Vec2, vec2};
use plumpline_core::picture::relief::{
    PosedRelief, Quality, Relief, ReliefScene, ReliefView, Still,
};
use plumpline_core::picture::{Rgb, Viewpoint};
use plumpline_core::{Piece, Plan, Yarn, YarnFace};

use super::sizes::Sizing;
use super::still::{image_of, still_unless};
use super::worker::{Newest, Ticket, Voice, Worker};

/// Height of the picture of the highest size, pixels: about twice what a large window shows, so
/// that it is sharp on a fine screen too.
const TALLEST: f64 = 480.0;
/// Most pixels a millimetre.
const FINEST: f64 = 12.0;
/// Least side of a picture that is halved again, pixels.
const LEAST_SIDE: usize = 24;
/// Room around a size, pixels.
const MARGIN: f32 = 2.0;

/// All sizes of a piece, to be drawn at one scale.
#[derive(Debug)]
struct LineUpWish {
    sizes: Vec<(Piece, Plan)>,
    yarns: Vec<Yarn>,
    /// Pixels a millimetre.
    scale: f32,
}

/// A size drawn.
#[derive(Debug)]
struct SizeDrawn {
    /// Which of those asked for.
    index: usize,
    /// The picture, then halves of it: a screen that shows every fifth of its pixels would make
    /// moiré of the stitches.
    images: Vec<ColorImage>,
    /// Width and height, mm.
    size_mm: Vec2,
}

/// The picture of a size.
pub struct SizePicture {
    /// Its pixels, each half as many a side as the one before.
    textures: Vec<TextureHandle>,
    /// How wide and high it is with its margins, mm.
    pub size_mm: Vec2,
}

impl std::fmt::Debug for SizePicture {
    fn fmt(&self, f: &mut std::fmt::Formatter<'_>) -> std::fmt::Result {
        f.debug_struct("SizePicture").field("size_mm", &self.size_mm).finish_non_exhaustive()
    }
}

/// The pictures of the sizes that were found last.
#[derive(Debug)]
pub struct LineUp {
    worker: Worker<Newest<LineUpWish>, SizeDrawn>,
    /// Which finding they are of, in which yarns.
    of: Option<(u64, Vec<Yarn>)>,
    awaited: Option<Ticket>,
    pictures: Vec<Option<SizePicture>>,
}

impl Default for LineUp {
    fn default() -> Self {
        let work = || {
            |wish: LineUpWish, voice: &Voice<'_, Newest<LineUpWish>, SizeDrawn>| {
                let colours: Vec<Rgb> = wish.yarns.iter().map(|yarn| yarn.colour).collect();
                let faces: Vec<YarnFace> = wish.yarns.iter().map(|yarn| yarn.face).collect();
                for (index, (piece, plan)) in wish.sizes.iter().enumerate() {
                    let relief = Relief::new(piece, plan).in_yarns(&faces);
                    // Level, so that its height is the one it measures.
                    let look =
                        Viewpoint { scale: wish.scale, tilt_deg: 0.0, ..Viewpoint::default() };
                    let view = ReliefView::around(&relief, &look, MARGIN, Quality::Full);
                    let parts = [PosedRelief::new(&relief, &colours)];
                    let scene = ReliefScene::new(&parts, &view);
                    let Some(still) = still_unless(&scene, || voice.is_vain()) else { return };
                    voice.say(drawn(index, still, wish.scale));
                }
            }
        };
        Self {
            worker: Worker::new("line-up", work),
            of: None,
            awaited: None,
            pictures: Vec::new(),
        }
    }
}

fn drawn(index: usize, mut still: Still, scale: f32) -> SizeDrawn {
    let [wide, tall] = still.size.map(|s| s as f32);
    let images = std::iter::successors(Some(image_of(&mut still)), |image| {
        image.size.iter().all(|&side| side >= 2 * LEAST_SIDE).then(|| half(image))
    });
    let size_mm = vec2(wide, tall) / scale;
    SizeDrawn { index, images: images.collect(), size_mm }
}

/// An image of half as many pixels a side, each the mean of four.
fn half(image: &ColorImage) -> ColorImage {
    let [wide, tall] = image.size;
    let size = [wide.div_ceil(2), tall.div_ceil(2)];
    let mean = |i: usize| {
        let (x, y) = (2 * (i % size[0]), 2 * (i / size[0]));
        let four = [(0, 0), (1, 0), (0, 1), (1, 1)].map(|(right, down)| {
            let at = (y + down).min(tall - 1) * wide + (x + right).min(wide - 1);
            image.pixels[at].to_array()
        });
        let [r, g, b, a] = [0, 1, 2, 3].map(|c| {
            let sum: u16 = four.iter().map(|pixel| u16::from(pixel[c])).sum();
            ((sum + 2) / 4) as u8
        });
        Color32::from_rgba_premultiplied(r, g, b, a)
    };
    ColorImage::new(size, (0..size[0] * size[1]).map(mean).collect())
}

impl SizePicture {
    /// The texture for a picture `pixels` high on the screen: as many pixels or a few more.
    pub fn texture(&self, pixels: f32) -> Option<&TextureHandle> {
        let high = |texture: &&TextureHandle| texture.size()[1] as f32 >= 0.9 * pixels;
        self.textures.iter().rev().find(high).or(self.textures.first())
    }
}

impl LineUp {
    /// Takes what has been drawn, and asks for the pictures of what `sizing` has found since.
    /// Returns whether there is anything new to show.
    ///
    /// # Errors
    /// One line, where they could not be drawn.
    pub fn update(
        &mut self,
        ctx: &Context,
        sizing: &Sizing,
        yarns: &[Yarn],
    ) -> Result<bool, String> {
        let mut news = false;
        while let Some(heard) = self.worker.hear() {
            let is_last = self.awaited == Some(heard.to);
            match heard.answer {
                Ok(drawn) if is_last => {
                    self.take(ctx, drawn);
                    news = true;
                }
                // Of sizes that are others now.
                Ok(_) => {}
                Err(broken) if is_last => {
                    return Err(say!(
                        "trouble-the-sizes-could-not-be-drawn-broken",
                        broken = broken.to_string()
                    ));
                }
                Err(_) => {}
            }
        }
        let of = (sizing.findings(), yarns.to_vec());
        if let (Some(found), true) = (sizing.found(), self.of.as_ref() != Some(&of)) {
            let made = || found.rows.iter().filter_map(|row| row.made.as_ref().ok());
            let tallest = made().map(|made| made.height_mm).fold(1.0, f64::max);
            let scale = (TALLEST / tallest).min(FINEST) as f32;
            let sizes = made().map(|made| (made.piece.clone(), made.plan.clone())).collect();
            let wish = LineUpWish { sizes, yarns: yarns.to_vec(), scale };
            self.pictures = (0..wish.sizes.len()).map(|_| None).collect();
            self.awaited = Some(self.worker.ask(ctx, wish));
            self.of = Some(of);
        }
        Ok(news)
    }

    fn take(&mut self, ctx: &Context, drawn: SizeDrawn) {
        let SizeDrawn { index, images, size_mm } = drawn;
        if let Some(place) = self.pictures.get_mut(index) {
            let name = format!("size {index}");
            let load = |image| ctx.load_texture(&name, image, TextureOptions::LINEAR);
            let textures = images.into_iter().map(load).collect();
            *place = Some(SizePicture { textures, size_mm });
        }
    }

    /// The picture of the size that is the `index`th of those that can be made, once it is
    /// drawn.
    pub fn picture(&self, index: usize) -> Option<&SizePicture> {
        self.pictures.get(index)?.as_ref()
    }

    /// Whether every size that was asked for is drawn.
    pub fn is_whole(&self) -> bool {
        self.pictures.iter().all(Option::is_some)
    }
}
