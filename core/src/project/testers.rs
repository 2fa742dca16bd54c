//! What testers returned of a pattern: read from their table, held against the forecast, and
//! taken into the gauge book.

use std::f64::consts::PI;

use crate::error::{Error, Result, plain};
use crate::piece::PieceId;
use crate::plan::{Plan, plan};
use crate::project::Project;
use crate::project::calibrate::{Calibration, Measure, Measured, OfPiece, calibrate};

/// Something testers measure.
#[derive(Debug, Clone, Copy, PartialEq, Eq, PartialOrd, Ord)]
pub enum Tested {
    /// Stitches to 10 cm, unstuffed.
    Stitches,
    /// Rounds to 10 cm, unstuffed.
    Rounds,
    /// Finished height, mm.
    Height,
    /// Finished width, mm.
    Width,
    /// Yarn used, g.
    Yarn,
    /// Stuffing used, g.
    Stuffing,
    /// Time taken, minutes.
    Minutes,
}

impl Tested {
    /// All of them, in the order of the table.
    pub const ALL: [Self; 7] = [
        Self::Stitches,
        Self::Rounds,
        Self::Height,
        Self::Width,
        Self::Yarn,
        Self::Stuffing,
        Self::Minutes,
    ];

    /// The heading of its column, with its unit.
    pub const fn column(self) -> &'static str {
        match self {
            Self::Stitches => "stitches_per_10cm",
            Self::Rounds => "rounds_per_10cm",
            Self::Height => "height_mm",
            Self::Width => "width_mm",
            Self::Yarn => "yarn_g",
            Self::Stuffing => "stuffing_g",
            Self::Minutes => "minutes",
        }
    }

    /// What the pattern says of it.
    fn forecast(self, project: &Project, index: usize, plan: &Plan) -> f64 {
        let piece = &project.pieces[index];
        let grams = |plan: &Plan| -> f64 {
            let used = plan.estimate.yarn.iter();
            used.map(|used| project.yarns[used.yarn].grams(used.metres)).sum()
        };
        match self {
            Self::Stitches => 100.0 / piece.gauge.stitch_width_mm(),
            Self::Rounds => 100.0 / piece.gauge.round_height_mm(),
            Self::Height => plan.size_mm.height,
            Self::Width => plan.size_mm.width,
            Self::Yarn => grams(plan),
            Self::Stuffing => {
                0.5 * (plan.estimate.stuffing_g.low + plan.estimate.stuffing_g.high)
            }
            Self::Minutes => plan.estimate.minutes,
        }
    }
}

/// What one tester returned of one piece.
#[derive(Debug, Clone, PartialEq)]
pub struct TesterReturn {
    /// Who it was.
    pub tester: String,
    /// The piece.
    pub piece: PieceId,
    /// What was measured; positive, in the units of [`Tested`].
    pub got: Vec<(Tested, f64)>,
    /// What the tester noted.
    pub notes: String,
}

/// Most rows of a table.
const MOST_ROWS: usize = 2000;

/// The returns in `text`: a table with the columns `tester`, `piece` (by name; the first piece
/// where there is no such column), those of [`Tested::column`] and `notes`, in any order; cells
/// parted by commas or semicolons, in quotes where they hold one; empty where nothing was
/// measured. Decimals stand after a point, or a comma where semicolons part the cells.
///
/// # Errors
/// Names the row and column at fault, and the mend.
pub fn read_returns(project: &Project, text: &str) -> Result<Vec<TesterReturn>> {
    let mut lines = text.lines().map(str::trim_end).filter(|line| !line.trim().is_empty());
    let head = lines.next().unwrap_or_default().trim_start_matches('\u{feff}');
    let by = if head.contains(';') { ';' } else { ',' };
    let head: Vec<String> =
        cells(head, by).iter().map(|cell| cell.trim().to_lowercase()).collect();
    let names = || Tested::ALL.map(Tested::column).join(", ");
    if !head.iter().any(|name| Tested::ALL.iter().any(|t| t.column() == name)) {
        return Err(Error::new(
            "row 1",
            "it names nothing that is measured",
            format!("head the columns tester, piece, {}, notes", names()),
        ));
    }
    let mut returns = Vec::new();
    for (row, line) in (2..).zip(lines) {
        if returns.len() >= MOST_ROWS {
            let mend = format!("give {MOST_ROWS} rows at most");
            return Err(Error::new(format!("row {row}"), "there are too many rows", mend));
        }
        let cells = cells(line, by);
        let cell = |name: &str| {
            let at = head.iter().position(|column| column == name)?;
            cells.get(at).map(|cell| cell.trim())
        };
        let piece = match cell("piece").filter(|name| !name.is_empty()) {
            None => project.pieces.first().map(|piece| piece.id).unwrap_or_default(),
            Some(name) => {
                let same = |n: &str| n.trim().eq_ignore_ascii_case(name);
                let found = project.pieces.iter().find(|piece| same(&piece.name));
                found.map(|piece| piece.id).ok_or_else(|| {
                    let names: Vec<&str> =
                        project.pieces.iter().map(|p| p.name.as_str()).collect();
                    Error::new(
                        format!("row {row}, piece"),
                        format!("there is no piece “{}”", plain(name, 80)),
                        format!("name one of {}", plain(&names.join(", "), 200)),
                    )
                })?
            }
        };
        let mut got = Vec::new();
        for tested in Tested::ALL {
            let Some(text) = cell(tested.column()).filter(|text| !text.is_empty()) else {
                continue;
            };
            let number = if by == ';' { text.replace(',', ".") } else { text.to_owned() };
            match number.parse::<f64>() {
                Ok(value) if value > 0.0 && value < 1e5 => got.push((tested, value)),
                _ => {
                    return Err(Error::new(
                        format!("row {row}, {}", tested.column()),
                        format!("“{}” is no measure", plain(text, 80)),
                        "write a positive number, or leave the cell empty",
                    ));
                }
            }
        }
        returns.push(TesterReturn {
            tester: cell("tester").unwrap_or_default().to_owned(),
            piece,
            got,
            notes: cell("notes").unwrap_or_default().to_owned(),
        });
    }
    Ok(returns)
}

/// The cells of a line, quotes taken off; a doubled quote is one.
fn cells(line: &str, by: char) -> Vec<String> {
    let mut cells = vec![String::new()];
    let mut quoted = false;
    let mut letters = line.chars().peekable();
    while let Some(letter) = letters.next() {
        let Some(cell) = cells.last_mut() else { break };
        match letter {
            '"' if quoted && letters.peek() == Some(&'"') => {
                cell.push('"');
                letters.next();
            }
            '"' => quoted = !quoted,
            letter if letter == by && !quoted => cells.push(String::new()),
            letter => cell.push(letter),
        }
    }
    cells
}

/// What testers got of one thing, against what the pattern says.
#[derive(Debug, Clone, PartialEq)]
pub struct TestSpread {
    /// The piece.
    pub piece: PieceId,
    /// What was measured.
    pub tested: Tested,
    /// What the pattern says.
    pub forecast: f64,
    /// What they got, smallest first; at least one.
    pub got: Vec<f64>,
}

impl TestSpread {
    /// The smallest and the largest.
    pub fn range(&self) -> (f64, f64) {
        let ends = (self.got.first(), self.got.last());
        (ends.0.copied().unwrap_or(self.forecast), ends.1.copied().unwrap_or(self.forecast))
    }

    /// Their mean.
    pub fn mean(&self) -> f64 {
        self.got.iter().sum::<f64>() / self.got.len().max(1) as f64
    }

    /// Their standard deviation as a sample; none of one.
    pub fn deviation(&self) -> Option<f64> {
        let n = self.got.len();
        let mean = self.mean();
        let squares: f64 = self.got.iter().map(|x| (x - mean) * (x - mean)).sum();
        (n > 1).then(|| (squares / (n - 1) as f64).sqrt())
    }
}

/// What the testers of `project` got, piece by piece, in the order of the table.
///
/// # Errors
/// As [`plan`], with the piece named.
pub fn spreads(project: &Project, returns: &[TesterReturn]) -> Result<Vec<TestSpread>> {
    let mut found = Vec::new();
    for (index, piece) in project.pieces.iter().enumerate() {
        let of: Vec<&TesterReturn> = returns.iter().filter(|r| r.piece == piece.id).collect();
        if of.is_empty() {
            continue;
        }
        let plan = plan(piece).map_err(|e| e.within(&format!("piece “{}”", piece.name)))?;
        for tested in Tested::ALL {
            let all = of.iter().flat_map(|r| &r.got);
            let mut got: Vec<f64> =
                all.filter(|(what, _)| *what == tested).map(|(_, value)| *value).collect();
            if got.is_empty() {
                continue;
            }
            got.sort_by(f64::total_cmp);
            let forecast = tested.forecast(project, index, &plan);
            found.push(TestSpread { piece: piece.id, tested, forecast, got });
        }
    }
    Ok(found)
}

/// How far one tester's tape may be off, mm.
const TAPE_MM: f64 = 2.0;

/// What the measures of `returned` say of the tester's cloth; none where nothing of it was
/// measured that a cloth shows in.
///
/// # Errors
/// As [`calibrate`].
pub fn cloth_of(project: &Project, returned: &TesterReturn) -> Result<Option<Calibration>> {
    let width = returned.got.iter().find(|(tested, _)| *tested == Tested::Width);
    let round = project.piece(returned.piece).is_some_and(|piece| piece.straight_mm == 0.0);
    let measures: Vec<Measured> = returned
        .got
        .iter()
        .filter_map(|&(tested, value)| match tested {
            Tested::Stitches => Some(Measure::Stitches { stitches: value, mm: 100.0 }),
            Tested::Rounds => Some(Measure::Rounds { rounds: value, mm: 100.0 }),
            Tested::Height => Some(Measure::Height(value)),
            _ => None,
        })
        .chain(width.filter(|_| round).map(|(_, mm)| Measure::Around(PI * mm)))
        .map(|measure| Measured { measure, error: TAPE_MM })
        .collect();
    if measures.is_empty() {
        return Ok(None);
    }
    calibrate(project, &[OfPiece { piece: returned.piece, measures }]).map(Some)
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::piece::Piece;
    use crate::piece::gauge::Gauge;
    use crate::piece::outline::{Knot, Outline};

    fn ball() -> Project {
        let knots = vec![Knot::new(0.0, 0.0), Knot::new(35.0, 35.0), Knot::new(0.0, 70.0)];
        Project::of_piece(Piece::new("Ball", Outline { knots }, Gauge::per(22.0, 24.0, 100.0)))
    }

    #[test]
    fn a_table_is_read_whatever_parts_its_cells() {
        let project = ball();
        let commas =
            "tester,piece,height_mm,notes\n\"Ann, B\",Ball,71.5,\"said \"\"ok\"\"\"\nCy,,,";
        let read = read_returns(&project, commas).expect("it is read");
        assert_eq!(read.len(), 2);
        assert_eq!(
            (read[0].tester.as_str(), read[0].notes.as_str()),
            ("Ann, B", "said \"ok\"")
        );
        assert_eq!(read[0].got, [(Tested::Height, 71.5)]);
        assert!(read[1].got.is_empty());
        let semicolons = "\u{feff}Tester;Height_mm\nAnn;71,5\n";
        let read = read_returns(&project, semicolons).expect("it is read");
        assert_eq!(read[0].got, [(Tested::Height, 71.5)]);
        for (text, said) in [
            ("", "row 1"),
            ("tester,piece\nAnn,Ball", "row 1"),
            ("piece,height_mm\nCube,4", "row 2, piece"),
            ("height_mm\n-4", "row 2, height_mm"),
            ("height_mm\nNaN", "row 2, height_mm"),
            ("height_mm\ntall", "row 2, height_mm"),
        ] {
            let error = read_returns(&project, text).expect_err("refused").to_string();
            assert!(error.contains(said) && !error.contains('\n'), "{error}");
        }
    }

    #[test]
    fn what_testers_got_stands_against_the_forecast() {
        let project = ball();
        let text = "tester,height_mm,stitches_per_10cm\nA,70,22\nB,74,20\nC,72,\n";
        let returns = read_returns(&project, text).expect("it is read");
        let spreads = spreads(&project, &returns).expect("it plans");
        let height = spreads.iter().find(|s| s.tested == Tested::Height).expect("heights");
        assert_eq!(height.range(), (70.0, 74.0));
        assert!((height.mean() - 72.0).abs() < 1e-12);
        assert!((height.deviation().expect("of three") - 2.0).abs() < 1e-12);
        assert!((height.forecast - 70.0).abs() < 4.0, "{}", height.forecast);
        // A looser hand is learned as one.
        let cloth = cloth_of(&project, &returns[1]).expect("it fits").expect("measures");
        assert!(cloth.cloth.stitch_width_mm > cloth.prior.stitch_width_mm);
        let nothing = TesterReturn { got: vec![(Tested::Minutes, 90.0)], ..returns[2].clone() };
        assert_eq!(cloth_of(&project, &nothing).expect("no trouble"), None);
    }
}
