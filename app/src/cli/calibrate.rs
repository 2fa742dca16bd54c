//! `plumpline calibrate`: the maker's cloth learned from a finished sample.

use std::path::PathBuf;
use std::time::SystemTime;

use anyhow::{Context as _, anyhow};
use clap::Args;
use plumpline_core::calibrate::{
    Calibration, Entry, GaugeBook, Measure, Measured, OfPiece, calibrate,
};
use plumpline_core::{PieceId, Project, disk, file};

use super::length::parse_mm;
use crate::work::{carried, day};

/// Arguments of `plumpline calibrate`.
///
/// Measures are of `--piece`, or of the piece they name: `--height Cap:45mm`. Two pieces tell
/// more than one.
#[derive(Debug, Args)]
pub(super) struct Calibrate {
    /// Project file of the sample as it was worked.
    project: PathBuf,
    /// The piece that was measured; the first if left out.
    #[arg(long, value_name = "NAME")]
    piece: Option<String>,
    /// Width of some stitches, unstuffed, such as 20=91mm.
    #[arg(long, value_parser = counted, value_name = "[PIECE:]STITCHES=LENGTH")]
    stitches: Vec<Of<(f64, f64)>>,
    /// Length of some rounds, unstuffed, such as 20=84mm. Pressed flat, over the start and up
    /// the other side, the piece has twice as many.
    #[arg(long, value_parser = counted, value_name = "[PIECE:]ROUNDS=LENGTH")]
    rounds: Vec<Of<(f64, f64)>>,
    /// Around the widest place of the stuffed piece.
    #[arg(long, value_parser = length, value_name = "[PIECE:]LENGTH")]
    around: Vec<Of<f64>>,
    /// Height of the stuffed piece.
    #[arg(long, value_parser = length, value_name = "[PIECE:]LENGTH")]
    height: Vec<Of<f64>>,
    /// Around the stuffed piece over both of its ends.
    #[arg(long, value_parser = length, value_name = "[PIECE:]LENGTH")]
    over_ends: Vec<Of<f64>>,
    /// Weight of the yarn before and after, in grams, such as 50,31.
    #[arg(long, value_parser = weights, value_name = "[PIECE:]BEFORE,AFTER")]
    yarn: Vec<Of<(f64, f64)>>,
    /// Length of the yarn of one round, unravelled, such as 12=1.64m.
    #[arg(long, value_parser = counted, value_name = "[PIECE:]ROUND=LENGTH")]
    unravelled: Vec<Of<(f64, f64)>>,
    /// How far a length may be off, such as 1mm.
    #[arg(long, value_parser = parse_mm, default_value = "1mm", value_name = "LENGTH")]
    error: f64,
    /// How far one weighing may be off, in grams.
    #[arg(long, default_value_t = 1.0, value_name = "GRAMS")]
    error_g: f64,
    /// Project file to write, its pieces in the cloth that was learned.
    #[arg(short, long, value_name = "RON")]
    output: Option<PathBuf>,
    /// Gauge book to enter it in; begun if there is none.
    #[arg(long, value_name = "RON", requires = "of")]
    book: Option<PathBuf>,
    /// The yarn, as the gauge book is to call it.
    #[arg(long, value_name = "YARN")]
    of: Option<String>,
    /// Whose hand it is.
    #[arg(long, default_value = "", value_name = "NAME")]
    maker: String,
    /// The day, as the gauge book is to have it; today if it is not given.
    #[arg(long, value_name = "DAY")]
    date: Option<String>,
}

/// Something measured, and the piece it names.
#[derive(Debug, Clone)]
struct Of<T> {
    piece: Option<String>,
    value: T,
}

fn of<T>(text: &str, parse: impl Fn(&str) -> Result<T, String>) -> Result<Of<T>, String> {
    // No length, count or weight has a colon; a piece's name may.
    let (piece, rest) = match text.rsplit_once(':') {
        Some((piece, rest)) => (Some(piece.trim().to_owned()), rest),
        None => (None, text),
    };
    Ok(Of { piece, value: parse(rest)? })
}

fn length(text: &str) -> Result<Of<f64>, String> {
    of(text, parse_mm)
}

fn counted(text: &str) -> Result<Of<(f64, f64)>, String> {
    of(text, parse_counted)
}

fn weights(text: &str) -> Result<Of<(f64, f64)>, String> {
    of(text, parse_weights)
}

fn parse_counted(text: &str) -> Result<(f64, f64), String> {
    let wrong = || format!("“{text}” is no count and length; write it like 20=91mm");
    let (count, length) = text.split_once('=').ok_or_else(wrong)?;
    let count = count.trim().replace(',', ".").parse::<f64>().map_err(|_| wrong())?;
    Ok((count, parse_mm(length)?))
}

fn parse_weights(text: &str) -> Result<(f64, f64), String> {
    let wrong = || format!("“{text}” is no two weights; write them like 50,31");
    let (before, after) = text.split_once([',', ';']).ok_or_else(wrong)?;
    let grams =
        |text: &str| text.trim().trim_end_matches('g').trim().parse().map_err(|_| wrong());
    Ok((grams(before)?, grams(after)?))
}

impl Calibrate {
    pub(super) fn run(self) -> anyhow::Result<()> {
        let shown = self.project.display().to_string();
        let mut project = file::load(&self.project)?;
        let piece = match &self.piece {
            Some(name) => super::sized::named(&project, name).context(shown.clone())?,
            None => &project.pieces[0],
        };
        let made = self.made(&project, piece.id).context(shown.clone())?;
        let learned = calibrate(&project, &made).context(shown)?;
        if let Some(path) = &self.book {
            self.enter(path, piece, &learned)?;
        }
        let mut told = Vec::new();
        if let Some(output) = &self.output {
            for piece in &mut project.pieces {
                *piece = learned.apply(piece);
            }
            told = carried::save(project.clone(), Some(&self.project), output)?;
        }
        super::out::print(&lines(&project, &learned));
        super::out::print_lines(&told);
        Ok(())
    }

    /// What was measured, by piece; first that of `own`, which unnamed measures are of.
    fn made(&self, project: &Project, own: PieceId) -> anyhow::Result<Vec<OfPiece>> {
        let mut made = vec![OfPiece { piece: own, measures: Vec::new() }];
        for Of { piece, value } in self.measures() {
            let piece = match piece {
                Some(name) => super::sized::named(project, &name)?.id,
                None => own,
            };
            match made.iter_mut().find(|of| of.piece == piece) {
                Some(of) => of.measures.push(value),
                None => made.push(OfPiece { piece, measures: vec![value] }),
            }
        }
        Ok(made)
    }

    fn measures(&self) -> Vec<Of<Measured>> {
        fn each<'a, T: Copy + 'a>(
            all: &'a [Of<T>],
            measure: impl Fn(T) -> Measure + 'a,
        ) -> impl Iterator<Item = Of<Measure>> + 'a {
            all.iter().map(move |of| Of { piece: of.piece.clone(), value: measure(of.value) })
        }
        let round = |(round, mm)| Measure::Unravelled { round: round as u32, mm };
        let lengths = each(&self.stitches, |(stitches, mm)| Measure::Stitches { stitches, mm })
            .chain(each(&self.rounds, |(rounds, mm)| Measure::Rounds { rounds, mm }))
            .chain(each(&self.around, Measure::Around))
            .chain(each(&self.height, Measure::Height))
            .chain(each(&self.over_ends, Measure::OverEnds))
            .chain(each(&self.unravelled, round))
            .map(|of| (of, self.error));
        let weighed = std::f64::consts::SQRT_2 * self.error_g;
        let weights =
            each(&self.yarn, |(before_g, after_g)| Measure::Yarn { before_g, after_g })
                .map(|of| (of, weighed));
        lengths
            .chain(weights)
            .map(|(of, error)| Of {
                piece: of.piece,
                value: Measured { measure: of.value, error },
            })
            .collect()
    }

    fn enter(
        &self,
        path: &std::path::Path,
        piece: &plumpline_core::Piece,
        learned: &Calibration,
    ) -> anyhow::Result<()> {
        let yarn = self.of.clone().unwrap_or_default();
        let date = self.date.clone().unwrap_or_else(|| day::iso(SystemTime::now()));
        put_in_book(path, [Entry::learned(yarn, &self.maker, date, piece, learned)])
    }
}

/// Enters what was learnt in the gauge book at `path`, beside what stands there.
pub(super) fn put_in_book(
    path: &std::path::Path,
    entries: impl IntoIterator<Item = Entry>,
) -> anyhow::Result<()> {
    // From here to the end nobody else changes the book.
    let _turn = disk::turn(path)?;
    let text = match path.exists() {
        true => disk::read_text(path, disk::LARGEST_BOOK)?,
        false => String::new(),
    };
    let shown = path.display();
    let mut book = GaugeBook::parse(&text).map_err(|e| anyhow!("{shown}, {e}"))?;
    for entry in entries {
        book.put(entry)?;
    }
    Ok(disk::write(path, book.write()?.as_bytes())?)
}

fn lines(project: &Project, learned: &Calibration) -> String {
    let mut out = String::new();
    for f in &learned.fitted {
        let unit = f.quantity.unit();
        let space = if unit.is_empty() { "" } else { " " };
        out += &format!(
            "{}: {:.3} ± {:.3}{space}{unit} (was {:.3}{})\n",
            f.quantity.name(),
            f.value,
            f.uncertainty,
            f.prior,
            if f.learned { "" } else { "; not told by the measures" }
        );
    }
    for row in &learned.table {
        let measure = row.measured.measure;
        if learned.is_of_several() {
            out += &format!("{}, ", project.name_of(row.piece));
        }
        out += &format!(
            "{}: {:.1} {} measured, {:.1} forecast before, {:.1} now\n",
            measure.sentence(),
            measure.value(),
            measure.unit(),
            row.before,
            row.after
        );
    }
    learned.notes.iter().for_each(|note| out += &format!("Note: {note}\n"));
    out
}
