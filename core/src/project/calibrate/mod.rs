//! Calibration: the maker's own cloth, learned from a finished sample.
//!
//! The maker works a piece or two, measures and weighs them, and [`calibrate`](calibrate())
//! finds the cloth that explains the measures best: stitch width, round height, firmness,
//! stiffness along over around, and yarn in a stitch. It is a least-squares fit by
//! Gauss–Newton in the logarithms of the five, with what was known before as residuals of
//! their own: what the measures do not tell stays as it was, and is named. The [`book`] keeps
//! what was learned.

pub mod book;
mod cloth;
mod fit;
mod measure;
mod model;
mod tape;

use crate::error::{Error, Result};
use crate::piece::Piece;
use crate::plan::plan;
use crate::project::Project;
use crate::sentence::Sentence;

pub use book::{Entry, GaugeBook, Struck};
pub use cloth::{MakersCloth, Quantity};
pub use measure::{Compared, Measure, Measured, OfPiece};
pub use model::{Sample, worked_by};

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

/// What a sample taught.
#[derive(Debug, Clone, PartialEq)]
pub struct Calibration {
    /// The maker's cloth as it was known, that of the first piece measured.
    pub prior: MakersCloth,
    /// The maker's cloth as it is now known.
    pub cloth: MakersCloth,
    /// The five quantities, in the order of [`Quantity::ALL`].
    pub fitted: [Fitted; 5],
    /// Every measure, forecast before and after.
    pub table: Vec<Compared>,
    /// What the measures do not tell, and which of them disagree, a sentence each.
    pub notes: Vec<Sentence>,
}

impl Calibration {
    /// `piece`, of the gauge of the sample, in the cloth that was learned: its next plan is
    /// this maker's. It is stuffed as much firmer or softer than it was planned as the sample
    /// was.
    #[must_use]
    pub fn apply(&self, piece: &Piece) -> Piece {
        self.cloth.stuffing(piece, &self.prior).dress(piece)
    }

    /// Whether more than one piece was measured: a measure is then told with its piece.
    pub fn is_of_several(&self) -> bool {
        are_of_several(&self.table)
    }
}

/// A measure further off than this many of its errors disagrees with the others.
const DISAGREES: f64 = 3.0;

/// The cloth of whoever worked these pieces of `project` as planned, and measured them. What
/// was known before is the gauge, firmness, stiffness and yarn of the first; the others must
/// be of its gauge, and count as stuffed as much firmer or softer than planned as it is. Two
/// pieces tell more than one, most of all where one is small.
///
/// # Errors
/// For no measures, a piece that is not there, a measure that is out of range or of a round that is not there, pieces of
/// different gauges, and a piece that cannot be planned.
pub fn calibrate(project: &Project, made: &[OfPiece]) -> Result<Calibration> {
    let measured: Vec<Measured> = made.iter().flat_map(|m| &m.measures).copied().collect();
    let Some(first) = made.iter().find(|m| !m.measures.is_empty()) else {
        return Err(Error::new(
            "the sample",
            "nothing was measured",
            "give at least the width of some stitches and the length of some rounds",
        ));
    };
    let prior = MakersCloth::of(project.needed(first.piece)?);
    let samples: Vec<(Sample<'_>, &[Measured])> = made
        .iter()
        .filter(|m| !m.measures.is_empty())
        .map(|m| Ok((sample(project, m, &prior)?, &m.measures[..])))
        .collect::<Result<_>>()?;
    let predict = |cloth: &MakersCloth| -> Vec<f64> {
        let all = samples.iter();
        all.flat_map(|(sample, measures)| {
            sample.predict(&cloth.stuffing(sample.piece(), &prior), measures)
        })
        .collect()
    };
    let before = predict(&prior);
    let asked = fit::Evidence { prior, measures: &measured, predict: &predict };
    let found = fit::fit(&asked);
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
    let after = predict(&found.cloth);
    let pieces = made.iter().flat_map(|m| std::iter::repeat_n(m.piece, m.measures.len()));
    let table: Vec<Compared> = pieces
        .zip(measured)
        .zip(before.iter().zip(after))
        .map(|((piece, measured), (&before, after))| Compared {
            piece,
            measured,
            before,
            after,
        })
        .collect();
    let notes = notes(project, &fitted, &table);
    Ok(Calibration { prior, cloth: found.cloth, fitted, table, notes })
}

/// The sample of one piece, its measures checked.
fn sample<'a>(project: &'a Project, made: &OfPiece, prior: &MakersCloth) -> Result<Sample<'a>> {
    let piece = project.needed(made.piece)?;
    let place = format!("piece “{}”", piece.name);
    let own = MakersCloth::of(piece);
    let same = |a: f64, b: f64| (a / b - 1.0).abs() < 1e-6;
    if !same(own.stitch_width_mm, prior.stitch_width_mm)
        || !same(own.round_height_mm, prior.round_height_mm)
    {
        let what = "it is of another gauge than the first piece measured";
        return Err(Error::new(place, what, "measure it by itself"));
    }
    let sample = Sample::new(piece, plan(piece)?, &project.yarns);
    for measured in &made.measures {
        measured.measure.validate(measured.error).map_err(|e| e.within(&place))?;
        sample.has(&measured.measure).map_err(|e| e.within(&place))?;
    }
    Ok(sample)
}

fn are_of_several(table: &[Compared]) -> bool {
    table.iter().any(|row| row.piece != table[0].piece)
}

fn notes(project: &Project, fitted: &[Fitted], table: &[Compared]) -> Vec<Sentence> {
    let untold = fitted.iter().filter(|f| !f.learned).map(|f| {
        let key = match f.quantity {
            Quantity::StitchWidth => "untold_stitch_width",
            Quantity::RoundHeight => "untold_round_height",
            Quantity::Firmness => "untold_firmness",
            Quantity::StiffnessAlong => "untold_stiffness",
            Quantity::YarnPerStitch => "untold_yarn",
        };
        let number = Sentence::default();
        let stays = match f.quantity.unit() {
            "mm" => number.mm(f.prior),
            "" => number.number(f.prior, 3),
            unit => number.number(f.prior, 3).words(format!(" {unit}")),
        };
        Sentence::note(key, [("stays", stays.into())])
    });
    let odd = table.iter().filter(|row| row.off().abs() > DISAGREES).map(|row| {
        let measure = row.measured.measure;
        let amount = |value: f64| match measure.unit() {
            "mm" => Sentence::default().mm(value),
            unit => Sentence::default().number(value, 1).words(format!(" {unit}")),
        };
        let what = match are_of_several(table) {
            true => Sentence::from(format!("{}, ", project.name_of(row.piece))),
            false => Sentence::default(),
        };
        Sentence::note(
            "measure_odd",
            [
                ("what", what.and(measure.sentence()).into()),
                ("got", amount(measure.value()).into()),
                ("asked", amount(row.after).into()),
            ],
        )
    });
    untold.chain(odd).collect()
}
