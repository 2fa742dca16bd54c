//! A table of measures as points of a profile.

use csv::{ReaderBuilder, StringRecord, Trim};
use plumpline_core::{Error, Result, Rz};

/// What a header may call its two columns.
const HEADERS: &str = "radius_mm,height_mm";

/// Points of a table, in working order, and the lines they stand on.
#[derive(Debug, Clone, PartialEq)]
pub struct Table {
    /// The points, mm.
    pub points: Vec<Rz>,
    /// The line of the file on which each stands, counted from 1.
    pub lines: Vec<u64>,
}

/// What a column holds: a radius (times `to_mm`, half of it for a diameter) or a height.
#[derive(Debug, Clone, Copy, PartialEq)]
struct Column {
    height: bool,
    to_mm: f64,
}

/// The points of a table with a header of two columns, such as `radius_mm,height_mm`: a
/// `radius` or a `diameter` and a `height`, each in `mm`, `cm`, `m`, `in` or `inches`, in
/// either order. Columns are parted by commas, semicolons or tabs; where it is not by commas,
/// numbers may have a decimal comma.
///
/// # Errors
/// Names the line that is not two numbers, or a missing header.
pub fn read(text: &str) -> Result<Table> {
    let text = text.trim_start_matches('\u{feff}');
    let first = text.lines().find(|line| !line.trim().is_empty()).unwrap_or_default();
    let parted_by = if first.contains(';') {
        b';'
    } else if first.contains('\t') {
        b'\t'
    } else {
        b','
    };
    let mut reader = ReaderBuilder::new()
        .delimiter(parted_by)
        .has_headers(false)
        .flexible(true)
        .trim(Trim::All)
        .from_reader(text.as_bytes());
    let mut rows = reader.records();
    let (radius, height) = match rows.next() {
        Some(Ok(header)) => columns(&header)?,
        _ => return Err(no_header()),
    };
    let mut table = Table { points: Vec::new(), lines: Vec::new() };
    for row in rows {
        let row = row.map_err(|e| {
            let line = e.position().map_or(0, csv::Position::line);
            Error::new(format!("line {line}"), "it cannot be read", "write radius,height")
        })?;
        if row.iter().all(str::is_empty) {
            continue;
        }
        let line = line_of(&row, text);
        let number = |i: usize| number(row.get(i)?, parted_by != b',');
        match (number(radius.0), number(height.0), row.len()) {
            (Some(r), Some(z), 2) => {
                table.points.push(Rz::new(r * radius.1.to_mm, z * height.1.to_mm));
                table.lines.push(line);
            }
            _ => return Err(no_numbers(line, &row, parted_by)),
        }
    }
    Ok(table)
}

/// The line a row stands on. The reader counts from the end of the row before, which leaves
/// empty lines between out.
fn line_of(row: &StringRecord, text: &str) -> u64 {
    let Some(at) = row.position() else { return 0 };
    let from = (at.byte() as usize).min(text.len());
    let blank = text.as_bytes()[from..].iter().take_while(|b| matches!(b, b'\n' | b'\r'));
    at.line() + blank.filter(|b| **b == b'\n').count() as u64
}

/// A field without the quotes that a space before them made a part of it.
fn bare(field: &str) -> &str {
    field.trim_matches('"').trim()
}

fn number(field: &str, with_comma: bool) -> Option<f64> {
    let field = bare(field);
    let plain = if with_comma { field.replace(',', ".") } else { field.to_owned() };
    plain.parse::<f64>().ok()
}

fn no_header() -> Error {
    Error::new("line 1", "the header is missing", format!("begin the file with {HEADERS}"))
}

fn no_numbers(line: u64, row: &StringRecord, parted_by: u8) -> Error {
    let row: Vec<&str> = row.iter().collect();
    let shown = row.join(&char::from(parted_by).to_string());
    Error::new(
        format!("line {line}"),
        format!("“{shown}” is not two numbers"),
        "write radius,height in the units of the header",
    )
}

/// Where the radius stands and where the height, and what they are in.
fn columns(header: &StringRecord) -> Result<((usize, Column), (usize, Column))> {
    let named: Vec<&str> = header.iter().map(bare).collect();
    if named.len() != 2 || named.iter().any(|name| name.parse::<f64>().is_ok()) {
        return Err(no_header());
    }
    let read: Vec<Column> = named.iter().map(|name| column(name)).collect::<Result<_>>()?;
    match (read[0].height, read[1].height) {
        (false, true) => Ok(((0, read[0]), (1, read[1]))),
        (true, false) => Ok(((1, read[1]), (0, read[0]))),
        (both, _) => {
            let what = if both { "two heights and no radius" } else { "no height" };
            let mend = format!("name one column of each, such as {HEADERS}");
            Err(Error::new("line 1", format!("its header has {what}"), mend))
        }
    }
}

fn column(name: &str) -> Result<Column> {
    let plain = name.to_lowercase();
    let unknown = || {
        let mend = format!("write {HEADERS}; cm, in and diameter are read too");
        Error::new("line 1", format!("“{name}” is no column that is known"), mend)
    };
    let (what, unit) = plain.split_once(['_', ' ']).ok_or_else(|| {
        let mend = format!("write its unit behind it, as in {HEADERS}");
        match plain.as_str() {
            "radius" | "height" | "diameter" => {
                Error::new("line 1", format!("the column {plain} has no unit"), mend)
            }
            _ => unknown(),
        }
    })?;
    let mm = match unit.trim_matches(['(', ')', '[', ']', ' ']) {
        "mm" => 1.0,
        "cm" => 10.0,
        "m" => 1000.0,
        "in" | "inch" | "inches" => 25.4,
        _ => return Err(unknown()),
    };
    match what {
        "radius" => Ok(Column { height: false, to_mm: mm }),
        "diameter" => Ok(Column { height: false, to_mm: 0.5 * mm }),
        "height" => Ok(Column { height: true, to_mm: mm }),
        _ => Err(unknown()),
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    fn points(text: &str) -> Vec<(f64, f64)> {
        let table = read(text).unwrap_or_else(|e| panic!("{text}: {e}"));
        let rounded = |v: f64| (v * 1e6).round() / 1e6;
        table.points.iter().map(|p| (rounded(p.r), rounded(p.z))).collect()
    }

    #[test]
    fn the_header_tells_unit_order_and_diameter() {
        let expected = vec![(0.0, 0.0), (25.4, 50.8)];
        for text in [
            "radius_mm,height_mm\n0,0\n25.4,50.8\n",
            "\u{feff}\"radius_mm\", \"height_mm\"\r\n0,0\r\n\r\n25.4,50.8",
            "height_cm,radius_cm\n0,0\n5.08,2.54\n",
            "radius_in,height_inches\n0,0\n1,2\n",
            "diameter_mm,height_mm\n0,0\n50.8,50.8\n",
            "Diameter (cm);Height (cm)\n0;0\n5,08;5,08\n",
            "radius_mm\theight_mm\n0\t0\n25.4\t50.8\n",
        ] {
            assert_eq!(points(text), expected, "{text}");
        }
    }

    #[test]
    fn the_line_at_fault_is_named() {
        let said = |text: &str| read(text).expect_err(text).to_string();
        assert_eq!(
            said("0,0\n1,1\n"),
            "line 1: the header is missing; begin the file with radius_mm,height_mm"
        );
        assert_eq!(said(""), said("0,0\n1,1\n"));
        assert!(said("radius_mm,height_mm\n0,0\n\n4;5\n").starts_with("line 4: “4;5” is not"));
        assert!(said("radius_mm,height_mm\n0,0,0\n").starts_with("line 2"));
        assert!(said("radius_mm,height_mm\n\n0,x\n").starts_with("line 3"));
        assert!(said("radius,height\n0,0\n").contains("has no unit"));
        assert!(said("radius_mm,diameter_mm\n0,0\n").contains("no height"));
        assert!(said("breadth_mm,height_mm\n0,0\n").contains("“breadth_mm”"));
    }

    #[test]
    fn lines_of_the_file_are_kept_with_the_points() {
        let table = read("radius_mm,height_mm\n0,0\n\n5,5\n").expect("a table");
        assert_eq!(table.lines, vec![2, 4]);
    }
}
