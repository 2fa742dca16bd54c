//! Calibration: the maker's own cloth, learned from a finished sample.
//!
//! The maker works a piece, measures and weighs it, and [`calibrate`](calibrate()) finds the
//! cloth that explains the measures best: stitch width, round height, firmness, stiffness
//! along over around, and yarn in a stitch. It is a least-squares fit by Gauss–Newton in the
//! logarithms of the five, with what was known before as residuals of their own: what the
//! measures do not tell stays as it was, and is named. The [`book`] keeps what was learned.

pub mod book;
mod fit;
mod model;

use crate::error::{Error, Result, within};
use crate::gauge::Gauge;
use crate::piece::{Firmness, Piece};
use crate::plan::plan;
use crate::project::Project;

pub use book::{Entry, GaugeBook, Struck};
pub use model::{Sample, worked_by};

/// A maker's cloth: all that a forecast and an estimate of yarn read.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct MakersCloth {
    /// Width of a single crochet, unstuffed, mm.
    pub stitch_width_mm: f64,
    /// Height of a round of them, unstuffed, mm.
    pub round_height_mm: f64,
    /// How hard the maker stuffs.
    pub firmness: Firmness,
    /// Em/Eθ.
    pub stiffness_along: f64,
    /// Yarn in a single crochet, in stitch widths.
    pub yarn_per_stitch: f64,
}

/// One of the five quantities of a maker's cloth.
#[derive(Debug, Clone, Copy, PartialEq, Eq, PartialOrd, Ord)]
pub enum Quantity {
    /// [`MakersCloth::stitch_width_mm`].
    StitchWidth,
    /// [`MakersCloth::round_height_mm`].
    RoundHeight,
    /// [`MakersCloth::firmness`].
    Firmness,
    /// [`MakersCloth::stiffness_along`].
    StiffnessAlong,
    /// [`MakersCloth::yarn_per_stitch`].
    YarnPerStitch,
}

impl Quantity {
    /// All of them, in the order of [`Calibration::fitted`].
    pub const ALL: [Self; 5] = [
        Self::StitchWidth,
        Self::RoundHeight,
        Self::Firmness,
        Self::StiffnessAlong,
        Self::YarnPerStitch,
    ];

    /// What it is called.
    pub fn name(self) -> &'static str {
        match self {
            Self::StitchWidth => "stitch width",
            Self::RoundHeight => "round height",
            Self::Firmness => "firmness",
            Self::StiffnessAlong => "stiffness along over around",
            Self::YarnPerStitch => "yarn in a stitch",
        }
    }

    /// Its unit; empty for a ratio.
    pub fn unit(self) -> &'static str {
        match self {
            Self::StitchWidth | Self::RoundHeight => "mm",
            Self::Firmness | Self::StiffnessAlong => "",
            Self::YarnPerStitch => "stitch widths",
        }
    }

    /// How far it may be from what was known before, one standard deviation of its natural
    /// logarithm. Common practice, no source: gauges differ by up to some 15 % from maker to
    /// maker, who stuff within about a quarter of the firmness they name; stiffness is taken
    /// to differ by up to two both ways. The yarn figure is good to 20 % (FACTS.md section 7).
    pub fn prior_spread(self) -> f64 {
        match self {
            Self::StitchWidth | Self::RoundHeight => 0.10,
            Self::Firmness => 0.25,
            Self::StiffnessAlong => 0.45,
            Self::YarnPerStitch => 0.2,
        }
    }

    /// Least and greatest value a piece may have.
    pub(crate) fn range(self) -> (f64, f64) {
        match self {
            Self::StitchWidth | Self::RoundHeight => (0.3, 60.0),
            Self::Firmness => (Firmness::LEAST, Firmness::MOST),
            Self::StiffnessAlong => (0.1, 10.0),
            Self::YarnPerStitch => (1.0, 60.0),
        }
    }
}

impl MakersCloth {
    /// The cloth that `piece` is planned in.
    pub fn of(piece: &Piece) -> Self {
        Self {
            stitch_width_mm: piece.gauge.stitch_width_mm(),
            round_height_mm: piece.gauge.round_height_mm(),
            firmness: piece.firmness,
            stiffness_along: piece.stiffness_along,
            yarn_per_stitch: piece.habits.yarn_per_stitch,
        }
    }

    /// One of its quantities.
    pub fn get(&self, quantity: Quantity) -> f64 {
        match quantity {
            Quantity::StitchWidth => self.stitch_width_mm,
            Quantity::RoundHeight => self.round_height_mm,
            Quantity::Firmness => self.firmness.0,
            Quantity::StiffnessAlong => self.stiffness_along,
            Quantity::YarnPerStitch => self.yarn_per_stitch,
        }
    }

    /// The same cloth with another value of one quantity, kept within its range.
    #[must_use]
    pub fn with(mut self, quantity: Quantity, value: f64) -> Self {
        let (least, most) = quantity.range();
        let value = value.clamp(least, most);
        match quantity {
            Quantity::StitchWidth => self.stitch_width_mm = value,
            Quantity::RoundHeight => self.round_height_mm = value,
            Quantity::Firmness => self.firmness = Firmness(value),
            Quantity::StiffnessAlong => self.stiffness_along = value,
            Quantity::YarnPerStitch => self.yarn_per_stitch = value,
        }
        self
    }

    /// `piece` in this cloth: planned, it comes out as this maker's will. The swatch keeps
    /// its counts and takes other lengths.
    #[must_use]
    pub fn dress(&self, piece: &Piece) -> Piece {
        let mut dressed = piece.clone();
        let gauge = Gauge {
            across_mm: self.stitch_width_mm * piece.gauge.stitches,
            along_mm: self.round_height_mm * piece.gauge.rounds,
            ..piece.gauge
        };
        crate::another_yarn::set_gauge(&mut dressed, gauge);
        dressed.firmness = self.firmness;
        dressed.stiffness_along = self.stiffness_along;
        dressed.habits.yarn_per_stitch = self.yarn_per_stitch;
        dressed
    }
}

/// Something measured on a sample.
#[derive(Debug, Clone, Copy, PartialEq)]
pub enum Measure {
    /// So many stitches, unstuffed, are so wide.
    Stitches {
        /// Stitches counted.
        stitches: f64,
        /// Their width, mm.
        mm: f64,
    },
    /// So many rounds, unstuffed, are so long.
    Rounds {
        /// Rounds counted.
        rounds: f64,
        /// Their length, mm.
        mm: f64,
    },
    /// The stuffed piece measures this around its widest place, mm.
    Around(f64),
    /// The stuffed piece is this high, mm.
    Height(f64),
    /// Yarn at hand before and after the piece, g.
    Yarn {
        /// Before the first stitch.
        before_g: f64,
        /// After the last.
        after_g: f64,
    },
    /// The yarn of this round, unravelled, is so long.
    Unravelled {
        /// The round, from 1.
        round: u32,
        /// Length of its yarn, mm.
        mm: f64,
    },
}

impl Measure {
    /// What the measure came to, mm or g.
    pub fn value(&self) -> f64 {
        match *self {
            Self::Stitches { mm, .. } | Self::Rounds { mm, .. } => mm,
            Self::Around(mm) | Self::Height(mm) | Self::Unravelled { mm, .. } => mm,
            Self::Yarn { before_g, after_g } => before_g - after_g,
        }
    }

    /// `mm` or `g`.
    pub fn unit(&self) -> &'static str {
        if matches!(self, Self::Yarn { .. }) { "g" } else { "mm" }
    }

    /// How far off it may be unless the maker says otherwise, one standard deviation: 1 mm, and
    /// 1 g each time something is weighed.
    pub fn usual_error(&self) -> f64 {
        if matches!(self, Self::Yarn { .. }) { std::f64::consts::SQRT_2 } else { 1.0 }
    }

    /// What was measured, in words.
    pub fn text(&self) -> String {
        match *self {
            Self::Stitches { stitches, .. } => format!("{stitches} stitches across, unstuffed"),
            Self::Rounds { rounds, .. } => format!("{rounds} rounds along, unstuffed"),
            Self::Around(_) => "around the widest place".into(),
            Self::Height(_) => "height".into(),
            Self::Yarn { .. } => "yarn used".into(),
            Self::Unravelled { round, .. } => format!("yarn of Rnd {round}"),
        }
    }

    fn validate(&self, error: f64) -> Result<()> {
        let place = self.text();
        let counted = match *self {
            Self::Stitches { stitches, .. } => Some(stitches),
            Self::Rounds { rounds, .. } => Some(rounds),
            _ => None,
        };
        if let Some(counted) = counted {
            within(&format!("{place}, counted"), counted, 0.5, 20_000.0, "")?;
        }
        within(&place, self.value(), 0.1, 100_000.0, self.unit())?;
        within(&format!("{place}, error"), error, 1e-3, 10_000.0, self.unit())?;
        Ok(())
    }
}

/// A measure and how far it may be off.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Measured {
    /// What was measured.
    pub measure: Measure,
    /// One standard deviation of its error, in its unit.
    pub error: f64,
}

impl From<Measure> for Measured {
    fn from(measure: Measure) -> Self {
        Self { measure, error: measure.usual_error() }
    }
}

/// What was learned of one quantity.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Fitted {
    /// The quantity.
    pub quantity: Quantity,
    /// What was known before.
    pub prior: f64,
    /// What it is now; the prior where the measures do not tell.
    pub value: f64,
    /// Its standard uncertainty, in its unit.
    pub uncertainty: f64,
    /// Whether the measures tell it.
    pub learned: bool,
}

/// A measure beside what the program makes of it.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Compared {
    /// The measure and its error.
    pub measured: Measured,
    /// What was forecast before, in its unit.
    pub before: f64,
    /// What is forecast now.
    pub after: f64,
}

impl Compared {
    /// What is left between forecast and measure, in errors of the measure.
    pub fn off(&self) -> f64 {
        (self.measured.measure.value() - self.after) / self.measured.error
    }
}

/// What a sample taught.
#[derive(Debug, Clone, PartialEq)]
pub struct Calibration {
    /// The maker's cloth as it is now known.
    pub cloth: MakersCloth,
    /// The five quantities, in the order of [`Quantity::ALL`].
    pub fitted: [Fitted; 5],
    /// Every measure, forecast before and after.
    pub table: Vec<Compared>,
    /// What the measures do not tell, and which of them disagree, a sentence each.
    pub notes: Vec<String>,
}

impl Calibration {
    /// `piece` in the cloth that was learned: its next plan is this maker's.
    #[must_use]
    pub fn apply(&self, piece: &Piece) -> Piece {
        self.cloth.dress(piece)
    }
}

/// A measure further off than this many of its errors disagrees with the others.
const DISAGREES: f64 = 3.0;

/// The cloth of the maker of piece `index` of `project`, which was worked as planned and
/// measured; the piece's own gauge, firmness, stiffness and yarn are what was known before.
///
/// # Errors
/// For no measures, one that is out of range or of a round that is not there, and a piece that
/// cannot be planned.
pub fn calibrate(
    project: &Project,
    index: usize,
    measures: &[Measured],
) -> Result<Calibration> {
    let piece = &project.pieces[index];
    if measures.is_empty() {
        return Err(Error::new(
            format!("piece “{}”", piece.name),
            "nothing was measured",
            "give at least the width of some stitches and the length of some rounds",
        ));
    }
    let sample = Sample::new(piece, plan(piece)?, &project.yarns);
    for measured in measures {
        measured.measure.validate(measured.error)?;
        sample.has(&measured.measure)?;
    }
    let prior = MakersCloth::of(piece);
    let before = sample.predict(&prior, measures);
    let found = fit::fit(&sample, prior, measures);
    let fitted = std::array::from_fn(|i| {
        let quantity = Quantity::ALL[i];
        let value = found.cloth.get(quantity);
        Fitted {
            quantity,
            prior: prior.get(quantity),
            value,
            uncertainty: value * found.spread[i],
            learned: found.learned[i],
        }
    });
    let after = sample.predict(&found.cloth, measures);
    let table: Vec<Compared> = measures
        .iter()
        .zip(before.iter().zip(after))
        .map(|(&measured, (&before, after))| Compared { measured, before, after })
        .collect();
    let notes = notes(&fitted, &table);
    Ok(Calibration { cloth: found.cloth, fitted, table, notes })
}

fn notes(fitted: &[Fitted], table: &[Compared]) -> Vec<String> {
    let untold = fitted.iter().filter(|f| !f.learned).map(|f| {
        let unit = f.quantity.unit();
        let space = if unit.is_empty() { "" } else { " " };
        let name = f.quantity.name();
        let name = name[..1].to_uppercase() + &name[1..];
        format!("{name} is not told by these measures and stays {:.3}{space}{unit}.", f.prior)
    });
    let odd = table.iter().filter(|row| row.off().abs() > DISAGREES).map(|row| {
        let (measure, unit) = (row.measured.measure, row.measured.measure.unit());
        format!(
            "{}: {:.1} {unit} measured, but the other measures ask for {:.1}; measure it \
             again, and check that the rounds were worked as written.",
            measure.text(),
            measure.value(),
            row.after
        )
    });
    untold.chain(odd).collect()
}
