//! The sheet as data: JSON for the template, and pictures as files beside it.

use std::collections::BTreeMap;

use plumpline_core::project::sheet_design::{SheetDetail, SheetSection};
use plumpline_core::sheet::{PieceSheet, Sheet, SizeSheet, Step};
use serde_json::{Value, json};
use typst::foundations::Bytes;

use crate::fonts::{Fonts, Missing};
use crate::photos::own_pictures;
use crate::pictures::{
    ABOVE_AND_BELOW, BESIDE, BesideRounds, FIELD, FIELD_OF_ONE, LaidPictures, Legend, MARGINS,
    MEASURED_IN_FRONT, MEASURES, bodies_field, rounds_tall, toy_pictures,
};
use crate::raster::BodyCache;
use crate::settable::{kept_together, numbers_kept, running, settable};
use crate::world::DATA;
use crate::{Columns, Error, Options, Paper, Result};

/// Marks that pages hold, at most; see [`marks`]. The typesetter needs about 4 kB for each.
pub(crate) const MOST_MARKS: usize = 100_000;

/// Marks of a line of rounds: its words and boxes, as against a sign of a chart.
const MARKS_OF_A_LINE: usize = 10;

/// Sizes of a piece, each with rounds of its own, beyond which those run on as paragraphs: tables
/// of them would be a book.
const TABLES_OF_SIZES: usize = 8;

/// Whether the rounds of a piece's sizes run on.
fn runs_on(piece: &PieceSheet) -> bool {
    piece.steps.is_empty() && piece.sizes.len() > TABLES_OF_SIZES
}

/// The rounds of a size in one paragraph: `1: 6 sc in magic ring [6]. 2: inc × 6 [12].`
fn run_on(size: &SizeSheet) -> String {
    let said = size.steps.iter().map(|step| match step {
        Step::Rounds(line) => format!("{}: {} {}.", line.number, line.text, line.count),
        Step::Yarn(yarn) => format!("{}.", yarn.text.trim_end_matches('.')),
        Step::Stuff(text) | Step::Inside(text) => text.clone(),
    });
    said.collect::<Vec<_>>().join(" ")
}

/// How much there is to set: the signs of all charts, and lines of rounds as so many each.
pub(crate) fn marks(sheet: &Sheet) -> usize {
    let of = |piece: &PieceSheet| {
        let charts: usize =
            piece.pictures.charts.charts.iter().map(|c| c.drawing.shapes.len()).sum();
        let lines: usize = piece.lists().iter().map(|(_, steps, _)| steps.len()).sum();
        let each = if runs_on(piece) { 1 } else { MARKS_OF_A_LINE };
        charts + piece.pictures.schematic.shapes.len() + each * lines
    };
    sheet.pieces.iter().map(of).sum()
}

/// All that the pages of `sheet` say, but for captions of photographs.
fn texts(sheet: &Sheet) -> serde_json::Result<Value> {
    let mut data = serde_json::to_value(sheet)?;
    if !sheet.sections.contains(&SheetSection::Tester) {
        // It names the pattern once more, on a page that there is not.
        data["tester"] = Value::Null;
    }
    Ok(data)
}

/// The characters of `sheet` that `fonts` have not.
pub(crate) fn missing(sheet: &Sheet, fonts: &Fonts) -> Missing {
    let mut missing = Missing::default();
    let captions = sheet.photos.iter().map(|photo| json!(photo.caption));
    for mut text in texts(sheet).into_iter().chain(captions) {
        settable(&mut text, fonts, &mut missing);
    }
    missing
}

/// All that the typesetter is given for one sheet.
pub(crate) struct SheetFiles {
    pub(crate) files: BTreeMap<String, Bytes>,
    /// Which characters were replaced, in a sentence.
    pub(crate) replaced: Option<String>,
}

impl SheetFiles {
    pub(crate) fn of(
        sheet: &Sheet,
        options: Options,
        fonts: &Fonts,
        bodies: &BodyCache,
    ) -> Result<Self> {
        let marks = marks(sheet);
        if marks > MOST_MARKS {
            return Err(Error::too_much(format!(
                "its rounds and charts come to {marks} marks, and pages hold {MOST_MARKS}"
            )));
        }
        let mut data = texts(sheet).map_err(|e| Error::new(e.to_string()))?;
        let mut files = BTreeMap::new();
        let single = sheet.pieces.len() == 1;
        let (paper, page) = match options.paper {
            Paper::A4 => ("a4", [210.0, 297.0]),
            Paper::Letter => ("us-letter", [215.9, 279.4]),
        };
        // A photograph shows what a drawing of the single piece would.
        let pictured = single && !sheet.photos.is_empty();
        let has_pieces = sheet.sections.contains(&SheetSection::Pieces);
        let bodies_drawn = has_pieces && sheet.draws(SheetDetail::Bodies) && !pictured;
        own_pictures(sheet, page[0] - MARGINS, &mut data, &mut files);
        for (i, piece) in sheet.pieces.iter().enumerate().filter(|(_, piece)| runs_on(piece)) {
            for (k, size) in piece.sizes.iter().enumerate() {
                let data = &mut data["pieces"][i]["sizes"][k];
                data["run_on"] = json!(run_on(size));
                data["steps"] = json!([]);
            }
        }
        kept_together(&mut data["pieces"]);
        numbers_kept(&mut data["abbreviations"]);
        let mut missing = Missing::default();
        settable(&mut data, fonts, &mut missing);
        let replaced = missing.said(|name| sheet.label(name));
        let field = bodies_field(&sheet.pieces, sheet.toy.is_some());
        let mut legend = Legend::default();
        for (i, piece) in sheet.pieces.iter().enumerate().filter(|_| has_pieces) {
            let room = [page[0] - MARGINS, page[1] - ABOVE_AND_BELOW];
            let mut laid = LaidPictures { files: &mut files, i, pictures: &piece.pictures };
            let measures = match sheet.pieces.len() > MEASURED_IN_FRONT {
                true => MEASURES,
                false => 0.0,
            };
            let beside = options.columns == Columns::One;
            let column = BesideRounds { measures_mm: measures, rounds_mm: rounds_tall(piece) };
            let mut pictures = laid.charts(room, beside.then_some(column), sheet);
            if !single {
                legend.add(&piece.pictures.charts);
            }
            let finished = &piece.sizes[0].finished;
            pictures["schematic"] =
                laid.schematic(&sheet.label_of("measures_picture", "finished", finished));
            if bodies_drawn {
                pictures["body"] = laid.body(field.1, bodies)?;
            }
            data["pieces"][i]["pictures"] = pictures;
            data["pieces"][i]["runs_on"] = json!(runs_on(piece));
        }
        if let Some(toy) = sheet.toy.as_ref().filter(|_| has_pieces) {
            let wide = if sheet.pieces.len() == 1 { FIELD_OF_ONE[0] } else { FIELD[0] };
            data["toy"]["pictures"] = toy_pictures(&mut files, sheet, toy, wide, bodies)?;
        }
        data["paper"] = json!(paper);
        data["columns"] = json!(if options.columns == Columns::Two { 2 } else { 1 });
        data["beside_mm"] = json!(BESIDE);
        data["measures_in_front"] = json!(sheet.pieces.len() <= MEASURED_IN_FRONT);
        data["bodies_across"] = json!(if bodies_drawn { field.0 } else { 0 });
        data["front"] = json!(has_pieces);
        data["page_mm"] = json!(page);
        data["sections"] = json!(sheet.shown());
        data["key"] = legend.laid(&mut files);
        data["reading"] = json!(legend.reading);
        for (field, name, most) in [
            ("running_title", "title", 84),
            ("running_designer", "designer", 60),
            ("running_licence", "licence", 110),
        ] {
            data[field] = json!(running(data[name].as_str().unwrap_or_default(), most));
        }
        data["by_designer"] = json!(sheet.label_of(
            "by",
            "designer",
            data["designer"].as_str().unwrap_or_default()
        ));
        data["plain_title"] = json!(sheet.title);
        data["plain_designer"] = json!(sheet.designer);
        data["replaced"] = json!(replaced);
        data["names_pieces"] = json!(sheet.names_pieces());
        data["need_lines"] = sheet
            .materials
            .lines
            .iter()
            .skip(sheet.materials.yarn.len())
            .map(|l| json!(l))
            .collect();
        files.insert(DATA.into(), Bytes::from_string(data.to_string()));
        Ok(Self { files, replaced })
    }
}
