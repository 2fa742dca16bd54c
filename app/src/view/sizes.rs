//! What is looked at in the Sizes stage: never saved, never undone.

use std::collections::BTreeMap;

use plumpline_core::Gauge;
use plumpline_core::calibrate::{Measure, Measured};
use plumpline_core::companion::{Spot, ToyMeasure};

/// The card beside the table of sizes.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Default)]
pub enum SizesCard {
    /// Where pieces meet.
    #[default]
    Seams,
    /// The piece in another yarn.
    Yarn,
    /// What a finished sample teaches.
    Sample,
    /// The piece as large as a toy at hand.
    Match,
}

impl SizesCard {
    /// All of them, in the order of their thread.
    pub const ALL: [Self; 4] = [Self::Seams, Self::Yarn, Self::Sample, Self::Match];

    /// The word on screen.
    pub fn text(self) -> &'static str {
        match self {
            Self::Seams => say!("aside-seams"),
            Self::Yarn => say!("aside-another-yarn"),
            Self::Sample => say!("aside-sample"),
            Self::Match => say!("aside-match"),
        }
    }

    /// What it is for, in a few words.
    pub fn about(self) -> &'static str {
        match self {
            Self::Seams => say!("sizes-about-seams"),
            Self::Yarn => say!("sizes-about-yarn"),
            Self::Sample => say!("sizes-about-sample"),
            Self::Match => say!("sizes-about-match"),
        }
    }
}

/// What the Sizes stage shows.
#[derive(Debug, Clone, PartialEq, Default)]
pub struct SizesView {
    /// The card beside the table.
    pub card: SizesCard,
    /// Whether the table holds the sizes of every piece.
    pub whole: bool,
    /// The swatch of another yarn, as it is being tried.
    pub other: Option<Gauge>,
    /// What has been measured on samples, by the name of the piece.
    pub samples: BTreeMap<String, SampleDraft>,
    /// Whose hand worked it; empty where there is only one.
    pub maker: String,
    /// The yarn sought in the gauge book; empty where none is.
    pub sought: String,
    /// Entries of the gauge book shown beyond the first few.
    pub more: usize,
    /// What was measured of a toy at hand.
    pub toy: ToyDraft,
}

impl SizesView {
    /// What has been measured on the piece of this name.
    pub fn sample(&self, piece: &str) -> SampleDraft {
        self.samples.get(piece).cloned().unwrap_or_default()
    }

    /// The same with a change.
    #[must_use]
    pub fn changed(&self, change: impl FnOnce(&mut Self)) -> Self {
        let mut view = self.clone();
        change(&mut view);
        view
    }
}

/// A toy at hand, as far as it was measured.
#[derive(Debug, Clone, PartialEq)]
pub struct ToyDraft {
    /// Where it is measured.
    pub measure: ToyMeasure,
    /// What it measures there, mm: nought is not measured.
    pub mm: f64,
    /// What the size made after it is to be called.
    pub name: String,
}

impl Default for ToyDraft {
    fn default() -> Self {
        Self { measure: ToyMeasure::Height, mm: 0.0, name: say!("aside-toy").into() }
    }
}

impl ToyDraft {
    /// What has been measured, if anything.
    pub fn measured(&self) -> Option<(ToyMeasure, f64)> {
        (self.mm > 0.0).then_some((self.measure, self.mm))
    }

    /// Where its width or girth is taken; none for the height.
    pub const fn spot(&self) -> Option<Spot> {
        match self.measure {
            ToyMeasure::Height => None,
            ToyMeasure::Width(spot) | ToyMeasure::Around(spot) => Some(spot),
        }
    }
}

/// The measures of a sample as they are typed in: nought is not measured.
#[derive(Debug, Clone, PartialEq)]
pub struct SampleDraft {
    /// Stitches counted, and their width unstuffed, mm.
    pub stitches: (f64, f64),
    /// Rounds counted, and their length unstuffed, mm.
    pub rounds: (f64, f64),
    /// Around the widest place, stuffed, mm.
    pub around_mm: f64,
    /// Height, stuffed, mm.
    pub height_mm: f64,
    /// Around over both ends, stuffed, mm.
    pub over_ends_mm: f64,
    /// Yarn before and after, g.
    pub yarn_g: (f64, f64),
    /// A round, and the length of its yarn unravelled, mm.
    pub unravelled: (u32, f64),
}

impl Default for SampleDraft {
    fn default() -> Self {
        Self {
            stitches: (10.0, 0.0),
            rounds: (10.0, 0.0),
            around_mm: 0.0,
            height_mm: 0.0,
            over_ends_mm: 0.0,
            yarn_g: (0.0, 0.0),
            unravelled: (1, 0.0),
        }
    }
}

impl SampleDraft {
    /// What has been measured so far.
    pub fn measures(&self) -> Vec<Measured> {
        let (stitches, across) = self.stitches;
        let (rounds, along) = self.rounds;
        let (before_g, after_g) = self.yarn_g;
        let (round, yarn) = self.unravelled;
        let all = [
            (across, Measure::Stitches { stitches, mm: across }),
            (along, Measure::Rounds { rounds, mm: along }),
            (self.around_mm, Measure::Around(self.around_mm)),
            (self.height_mm, Measure::Height(self.height_mm)),
            (self.over_ends_mm, Measure::OverEnds(self.over_ends_mm)),
            (before_g - after_g, Measure::Yarn { before_g, after_g }),
            (yarn, Measure::Unravelled { round, mm: yarn }),
        ];
        all.into_iter().filter(|(value, _)| *value > 0.0).map(|(_, m)| m.into()).collect()
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn only_what_was_measured_counts() {
        let mut sample = SampleDraft::default();
        assert!(sample.measures().is_empty());
        sample.height_mm = 81.0;
        sample.yarn_g = (50.0, 31.0);
        let measures: Vec<Measure> = sample.measures().iter().map(|m| m.measure).collect();
        let yarn = Measure::Yarn { before_g: 50.0, after_g: 31.0 };
        assert_eq!(measures, [Measure::Height(81.0), yarn]);
    }
}
