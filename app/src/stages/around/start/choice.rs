//! What has been chosen on the start card so far, and the piece it would make.

use std::path::{Path, PathBuf};

use egui::Context;
use plumpline_core::piece::Picture;
use plumpline_core::starter::{Dimensions, Starter};
use plumpline_core::{Gauge, Outline, Piece, Unit, plan};
use plumpline_trace::formula::{self, FormulaFault, FormulaPlace};

use super::freehand::Freehand;
use super::tile::ProfilePicture;
use crate::document::from_root;
use crate::work::picture::line;
use crate::work::shape_file::{ProfileReading, ShapeKind, tolerance_mm};
use crate::work::shape_reading::{ShapeFound, ShapeReading, ShapeWish, name_of};

/// The exponent of a dome that nobody has changed: half an ellipse.
pub(super) const USUAL_EXPONENT: f64 = 2.0;
/// The formula that stands in the field to begin with.
const FIRST_FORMULA: &str = "30*sin(pi*t)*(1.2-t/2)";

/// What a piece begins from.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub(super) enum BeginFrom {
    /// A starter and its dimensions.
    Starter(Starter),
    /// A formula of the radius.
    Formula,
    /// A line drawn by hand.
    Freehand,
    /// A file with a shape in it.
    File,
}

/// What has been chosen on the card so far.
#[derive(Debug)]
pub struct StartChoice {
    pub(super) from: BeginFrom,
    /// Of the starter.
    pub(super) size: Dimensions,
    /// Of a dome.
    pub(super) exponent: f64,
    pub(super) formula: String,
    pub(super) formula_height_mm: f64,
    pub(super) freehand: Freehand,
    pub(super) freehand_height_mm: f64,
    pub(super) file: FileChoice,
    /// The starters as tiles show them.
    pub(super) pictures: Vec<ProfilePicture>,
    /// A formula as its tile shows it.
    pub(super) curve: ProfilePicture,
    made: Option<Made>,
}

/// A file with a shape in it, and how it is read.
#[derive(Debug)]
pub(super) struct FileChoice {
    pub(super) path: Option<PathBuf>,
    /// How high it is; what the file says if not typed.
    pub(super) height_mm: Option<f64>,
    /// What one unit of a solid is.
    pub(super) unit: Unit,
    /// Whether reading was stopped.
    pub(super) stopped: bool,
    pub(super) reading: ShapeReading,
    /// How often something new was read.
    news: u64,
}

/// What the card makes was last made of.
#[derive(Debug, Clone, PartialEq)]
struct MadeOf {
    from: BeginFrom,
    size: Dimensions,
    exponent: f64,
    formula: String,
    formula_height_mm: f64,
    freehand: (Freehand, f64),
    news: u64,
    gauge: Gauge,
}

/// What the card would make, worked out once for every choice.
#[derive(Debug)]
struct Made {
    of: MadeOf,
    /// None while there is nothing to make one of.
    piece: Option<Result<StartPiece, StartFault>>,
}

/// A piece to begin with.
#[derive(Debug)]
pub(super) struct StartPiece {
    pub(super) piece: Piece,
    pub(super) picture: ProfilePicture,
    /// Its rounds, and the stitches of the widest.
    pub(super) rounds: usize,
    pub(super) widest: u32,
}

/// Why there is none.
#[derive(Debug)]
pub(super) struct StartFault {
    /// One line: where, what, the mend.
    pub(super) line: String,
    /// Where in the formula, if that is at fault.
    pub(super) place: FormulaPlace,
}

impl From<plumpline_core::Error> for StartFault {
    fn from(error: plumpline_core::Error) -> Self {
        Self { line: error.to_string(), place: FormulaPlace::Whole }
    }
}

impl From<FormulaFault> for StartFault {
    fn from(fault: FormulaFault) -> Self {
        Self { line: fault.error.to_string(), place: fault.place }
    }
}

impl Default for StartChoice {
    fn default() -> Self {
        let starter = Starter::Ball;
        Self {
            from: BeginFrom::Starter(starter),
            size: starter.usual(),
            exponent: USUAL_EXPONENT,
            formula: FIRST_FORMULA.to_owned(),
            formula_height_mm: 80.0,
            freehand: Freehand::default(),
            freehand_height_mm: 80.0,
            file: FileChoice {
                path: None,
                height_mm: None,
                unit: Unit::Mm,
                stopped: false,
                reading: ShapeReading::default(),
                news: 0,
            },
            pictures: Starter::ALL.map(ProfilePicture::of_starter).into(),
            curve: curve(),
            made: None,
        }
    }
}

impl StartChoice {
    /// The card at this file, read as it says itself.
    pub(crate) fn take_file(&mut self, path: PathBuf) {
        self.from = BeginFrom::File;
        let unit = self.file.unit;
        self.file.path = Some(path);
        (self.file.height_mm, self.file.unit, self.file.stopped) = (None, unit, false);
    }

    pub(super) fn take(&mut self, from: BeginFrom) {
        if self.from == from {
            return;
        }
        self.from = from;
        if let BeginFrom::Starter(starter) = from {
            (self.size, self.exponent) = (starter.usual(), USUAL_EXPONENT);
        }
    }

    /// Asks for the file to be read, unless it has been, and takes what is read.
    pub(super) fn read_on(&mut self, ctx: &Context, gauge: Gauge) {
        let FileChoice { path, height_mm, unit, stopped, .. } = &self.file;
        let reading = ProfileReading {
            tolerance_mm: tolerance_mm(gauge),
            height_mm: *height_mm,
            unit: *unit,
        };
        let wanted = path.clone().filter(|_| !stopped && self.from == BeginFrom::File);
        let wanted = wanted.map(|path| ShapeWish { path, reading });
        if self.file.reading.update(ctx, wanted) {
            self.file.news += 1;
            ctx.request_repaint();
        }
    }

    /// What the card would make in cloth of this gauge.
    pub(super) fn made(&mut self, gauge: Gauge) -> Option<&Result<StartPiece, StartFault>> {
        let of = MadeOf {
            from: self.from,
            size: self.size,
            exponent: self.exponent,
            formula: self.formula.clone(),
            formula_height_mm: self.formula_height_mm,
            freehand: (self.freehand.clone(), self.freehand_height_mm),
            news: self.file.news,
            gauge,
        };
        let kept = self.made.take().filter(|made| made.of == of);
        let made = kept.unwrap_or_else(|| Made { of, piece: self.make(gauge) });
        self.made.insert(made).piece.as_ref()
    }

    fn make(&self, gauge: Gauge) -> Option<Result<StartPiece, StartFault>> {
        match self.from {
            BeginFrom::Starter(starter) => Some(self.of_starter(starter, gauge)),
            BeginFrom::Formula => {
                let (formula, height) = (&self.formula, self.formula_height_mm);
                let fitted = formula::outline(formula, height, tolerance_mm(gauge));
                let piece =
                    |outline: Outline| Piece::new(say!("start-formula"), outline, gauge);
                Some(match fitted {
                    Ok(fitted) => planned(piece(fitted.outline)),
                    Err(fault) => Err(fault.into()),
                })
            }
            BeginFrom::Freehand if self.freehand.is_empty() => None,
            BeginFrom::Freehand => {
                let drawn = self.freehand.outline(self.freehand_height_mm);
                Some(drawn.and_then(|outline| {
                    planned(Piece::new(say!("start-freehand"), outline, gauge))
                }))
            }
            BeginFrom::File => {
                let path = self.file.path.as_deref()?;
                Some(match self.file.reading.found()? {
                    Ok(ShapeFound::Profile(read)) => {
                        planned(Piece::new(name_of(path), read.outline().clone(), gauge))
                    }
                    Ok(ShapeFound::Picture(size)) => over_picture(path, *size, gauge),
                    Err(why) => {
                        Err(StartFault { line: why.to_owned(), place: FormulaPlace::Whole })
                    }
                })
            }
        }
    }

    fn of_starter(&self, starter: Starter, gauge: Gauge) -> Result<StartPiece, StartFault> {
        if starter != Starter::Dome || self.exponent == USUAL_EXPONENT {
            return planned(starter.piece(&self.size, gauge)?);
        }
        let Dimensions { height_mm, width_mm, .. } = self.size;
        let fitted = formula::dome(height_mm, width_mm, self.exponent, tolerance_mm(gauge))?;
        planned(Piece::new(starter.name(), fitted.outline, gauge))
    }

    /// Whether what is chosen is a picture, whose outline is still to be traced.
    pub(super) fn is_picture(&self) -> bool {
        let path = self.file.path.as_deref().filter(|_| self.from == BeginFrom::File);
        path.is_some_and(|path| ShapeKind::of(path) == ShapeKind::Picture)
    }
}

/// What the tile of the formula shows: a wave.
fn curve() -> ProfilePicture {
    let wave = formula::outline("20+12*cos(7*t-1)", 80.0, 0.5);
    let outline = wave.map_or_else(|_| Outline { knots: Vec::new() }, |fitted| fitted.outline);
    ProfilePicture::of_outline(&outline, 0.0)
}

fn planned(piece: Piece) -> Result<StartPiece, StartFault> {
    let counts = plan(&piece)?.counts();
    Ok(StartPiece {
        picture: ProfilePicture::of_outline(&piece.outline, piece.straight_mm),
        rounds: counts.len(),
        widest: counts.into_iter().max().unwrap_or(0),
        piece,
    })
}

/// A ball as high as the picture that lies under it: what is there until it is traced.
fn over_picture(
    path: &Path,
    (width, height): (u32, u32),
    gauge: Gauge,
) -> Result<StartPiece, StartFault> {
    let whole = from_root(path);
    let Some(shown) = whole.to_str() else {
        let line =
            line(path, say!("start-its-name-is-not-readable-text"), say!("start-rename-it"));
        return Err(StartFault { line, place: FormulaPlace::Whole });
    };
    let size = Starter::Ball.usual();
    let wide = size.height_mm * f64::from(width) / f64::from(height.max(1));
    let picture = Picture::new(shown, (0.0, 0.5 * size.height_mm), wide);
    let ball = Starter::Ball.piece(&size, gauge)?;
    planned(Piece { name: name_of(path), picture: Some(picture), ..ball })
}
