//! `plumpline calibrate`: the maker's cloth learned from a finished sample.

use std::path::PathBuf;
use std::time::SystemTime;

use anyhow::{Context as _, anyhow};
use clap::Args;
use plumpline_core::calibrate::{Calibration, Entry, GaugeBook, Measure, Measured, calibrate};
use plumpline_core::file;

use crate::day;
use crate::length::parse_mm;

/// Arguments of `plumpline calibrate`.
#[derive(Debug, Args)]
pub(super) struct Calibrate {
    /// Project file of the sample as it was worked.
    project: PathBuf,
    /// The piece that was made; the first if left out.
    #[arg(long, value_name = "NAME")]
    piece: Option<String>,
    /// Width of some stitches, unstuffed, such as 20=91mm.
    #[arg(long, value_parser = parse_counted, value_name = "STITCHES=LENGTH")]
    stitches: Vec<(f64, f64)>,
    /// Length of some rounds, unstuffed, such as 20=84mm.
    #[arg(long, value_parser = parse_counted, value_name = "ROUNDS=LENGTH")]
    rounds: Vec<(f64, f64)>,
    /// Around the widest place of the stuffed piece.
    #[arg(long, value_parser = parse_mm, value_name = "LENGTH")]
    around: Vec<f64>,
    /// Height of the stuffed piece.
    #[arg(long, value_parser = parse_mm, value_name = "LENGTH")]
    height: Vec<f64>,
    /// Weight of the yarn before and after, in grams, such as 50,31.
    #[arg(long, value_parser = parse_weights, value_name = "BEFORE,AFTER")]
    yarn: Vec<(f64, f64)>,
    /// Length of the yarn of one round, unravelled, such as 12=1.64m.
    #[arg(long, value_parser = parse_counted, value_name = "ROUND=LENGTH")]
    unravelled: Vec<(f64, f64)>,
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
        let index = match &self.piece {
            Some(name) => super::sized::named(&project, name).context(shown.clone())?,
            None => 0,
        };
        let learned = calibrate(&project, index, &self.measures()).context(shown)?;
        if let Some(path) = &self.book {
            self.enter(path, &project.pieces[index], &learned)?;
        }
        if let Some(output) = &self.output {
            for piece in &mut project.pieces {
                *piece = learned.apply(piece);
            }
            file::save(&project, output)?;
        }
        super::print(&lines(&learned));
        Ok(())
    }

    fn measures(&self) -> Vec<Measured> {
        let length = |measure| Measured { measure, error: self.error };
        let stitches =
            self.stitches.iter().map(|&(stitches, mm)| Measure::Stitches { stitches, mm });
        let rounds = self.rounds.iter().map(|&(rounds, mm)| Measure::Rounds { rounds, mm });
        let around = self.around.iter().map(|&mm| Measure::Around(mm));
        let height = self.height.iter().map(|&mm| Measure::Height(mm));
        let unravelled = self
            .unravelled
            .iter()
            .map(|&(round, mm)| Measure::Unravelled { round: round as u32, mm });
        let lengths = stitches.chain(rounds).chain(around).chain(height).chain(unravelled);
        let yarn = self.yarn.iter().map(|&(before_g, after_g)| Measured {
            measure: Measure::Yarn { before_g, after_g },
            error: self.error_g * std::f64::consts::SQRT_2,
        });
        lengths.map(length).chain(yarn).collect()
    }

    fn enter(
        &self,
        path: &std::path::Path,
        piece: &plumpline_core::Piece,
        learned: &Calibration,
    ) -> anyhow::Result<()> {
        let shown = path.display();
        let text = match std::fs::read_to_string(path) {
            Ok(text) => text,
            Err(e) if e.kind() == std::io::ErrorKind::NotFound => String::new(),
            Err(e) => return Err(anyhow!("{shown}: it cannot be read ({e}); check the name")),
        };
        let mut book = GaugeBook::parse(&text).map_err(|e| anyhow!("{shown}, {e}"))?;
        let yarn = self.of.clone().unwrap_or_default();
        let date = self.date.clone().unwrap_or_else(|| day::iso(SystemTime::now()));
        book.put(Entry::learned(yarn, &self.maker, date, piece, learned))?;
        file::replace(path, book.write()?.as_bytes())
            .map_err(|e| anyhow!("{shown}: it cannot be written ({e}); check the folder"))
    }
}

fn lines(learned: &Calibration) -> String {
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
        out += &format!(
            "{}: {:.1} {} measured, {:.1} forecast before, {:.1} now\n",
            measure.text(),
            measure.value(),
            measure.unit(),
            row.before,
            row.after
        );
    }
    learned.notes.iter().for_each(|note| out += &format!("Note: {note}\n"));
    out
}
