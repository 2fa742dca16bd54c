//! The thing told from its background.
//!
//! A background of one colour, however it is lit, is found without asking: [`plain`] fits a
//! smooth surface to it. Any other wants a rectangle about the thing, or strokes on it and
//! beside it: [`marked`] learns the colours of both from them. [`edge`] then moves the edge to
//! where the colour is half one and half the other, and [`shadow`] leaves shadows out.

mod edge;
mod marked;
mod plain;
mod shadow;
mod smooth;
mod surface;

use crate::mask::Mask;
use crate::picture::{Photo, Raster};
use crate::work::{Step, Work, refused};

/// What is known of the background. Places are pixels of the whole picture as it is seen.
#[derive(Debug, Clone, PartialEq, Default)]
pub enum TraceGround {
    /// Nothing: it is of one colour, or clear.
    #[default]
    Plain,
    /// The thing lies within a rectangle, is where it was stroked as the thing, and is not
    /// where it was stroked as background.
    Marked {
        /// Upper left and lower right corner; the whole picture if left out.
        frame: Option<[(f64, f64); 2]>,
        /// The strokes.
        strokes: Vec<Stroke>,
    },
}

/// A stroke that marks what is under it.
#[derive(Debug, Clone, PartialEq)]
pub struct Stroke {
    /// Whether it marks the thing; the background if not.
    pub thing: bool,
    /// Its middle line.
    pub points: Vec<(f64, f64)>,
    /// Half its thickness.
    pub radius: f64,
}

/// The thing, as pixels of the raster, and what was noticed on the way.
#[derive(Debug, Clone)]
pub(crate) struct Separated {
    /// One piece, its holes filled.
    pub(crate) mask: Mask,
    /// The same piece as it was found, with its holes.
    pub(crate) pierced: Mask,
    /// Area of the next largest piece, as a share of this one's.
    pub(crate) next: f64,
    /// Whether a shadow was left out.
    pub(crate) shadow: bool,
    /// How far the thing stands out from its background at its edge, in units of what the
    /// background itself varies by; infinite for a picture cut out already.
    pub(crate) contrast: f64,
}

impl Separated {
    /// The same with the holes of `found`, of which only the outer edge was looked at again.
    fn pierced_as(mut self, found: &Mask) -> Self {
        let whole = found.filled();
        let holes = found.bits.iter().zip(&whole.bits).map(|(&bit, &filled)| filled && !bit);
        for (bit, hole) in self.pierced.bits.iter_mut().zip(holes) {
            *bit &= !hole;
        }
        self
    }
}

/// Less than this share of the picture is nothing to trace.
const LEAST_SHARE: f64 = 0.002;
/// What stands out over more than this is the background itself.
const MOST_SHARE: f64 = 0.97;

/// Tells the thing in `picture` from its background.
pub(crate) fn separate(
    picture: &Photo,
    ground: &TraceGround,
    work: &Work<'_>,
) -> Step<Separated> {
    let raster = &picture.raster;
    work.reached(0.05)?;
    let separated = match ground {
        TraceGround::Plain => match cut_out(raster) {
            Some(mask) => one_piece(&mask, f64::INFINITY),
            None => plain::separate(raster, work)?,
        },
        TraceGround::Marked { frame, strokes } => {
            marked::separate(raster, frame.as_ref(), strokes, picture.reduction(), work)?
        }
    };
    check(raster, &separated.mask)?;
    Ok(separated)
}

/// The thing, where the picture is clear around it.
fn cut_out(raster: &Raster) -> Option<Mask> {
    let opacity = raster.opacity.as_ref()?;
    let mask = Mask::from_fn(raster.size(), |i| opacity[i] >= 128);
    let share = mask.area() as f64 / mask.bits.len() as f64;
    (LEAST_SHARE..=MOST_SHARE).contains(&share).then_some(mask)
}

fn one_piece(found: &Mask, contrast: f64) -> Separated {
    let (pierced, next) = found.largest();
    Separated { mask: pierced.filled(), pierced, next, shadow: false, contrast }
}

fn check(raster: &Raster, mask: &Mask) -> Step<()> {
    let share = mask.area() as f64 / (raster.width * raster.height) as f64;
    if share < LEAST_SHARE {
        let mend = "choose a picture of a thing before a plain background, or draw a \
                    rectangle around it";
        return Err(refused("nothing in it stands out from its background", mend));
    }
    if share > MOST_SHARE {
        let mend = "leave some background around it, or draw a rectangle";
        return Err(refused("the thing fills the whole picture", mend));
    }
    Ok(())
}
