//! A maker's cloth and its five quantities.

use crate::piece::gauge::Gauge;
use crate::piece::{Firmness, Piece};

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
    /// All of them, in the order of [`Calibration::fitted`](super::Calibration::fitted).
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
    /// to differ by up to two both ways. The yarn figure is good to 20 %, as
    /// [`Habits::yarn_per_stitch`](crate::Habits::yarn_per_stitch) says.
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

    /// This cloth where `piece` is stuffed as much firmer or softer than it was planned as a
    /// piece of `prior` is in this cloth.
    pub(super) fn stuffing(self, piece: &Piece, prior: &Self) -> Self {
        let firmer = self.firmness.0 / prior.firmness.0;
        self.with(Quantity::Firmness, piece.firmness.0 * firmer)
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
        crate::project::sizes::set_gauge(&mut dressed, gauge);
        dressed.firmness = self.firmness;
        dressed.stiffness_along = self.stiffness_along;
        dressed.habits.yarn_per_stitch = self.yarn_per_stitch;
        dressed
    }
}
