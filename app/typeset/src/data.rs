//! The sheet as data: JSON for the template, and pictures as files beside it.

use std::collections::BTreeMap;

use plumpline_core::picture::Drawing;
use plumpline_core::picture::chart::{Chart, Charts, KeyEntry, LEAST_SCALE};
use plumpline_core::project::sheet_design::{SheetDetail, SheetSection};
use plumpline_core::sheet::{
    CalledView, Pictures, PieceSheet, Sheet, SizeSheet, Step, ToySheet, drawing_svg,
};
use serde_json::{Value, json};
use typst::foundations::Bytes;

use crate::fonts::{Fonts, Missing};
use crate::packing::rows;
use crate::photos::own_pictures;
use crate::raster::BodyCache;
use crate::settable::{kept_together, numbers_kept, running, settable};
use crate::world::DATA;
use crate::{Columns, Error, Options, Paper, Result};

/// Margins left and right together, and what head, foot and a heading take of the height, mm.
const MARGINS: f32 = 32.0;
const ABOVE_AND_BELOW: f32 = 62.0;
/// Width of the column beside the rounds, mm.
const BESIDE: f32 = 62.0;
/// Height of the measures of a piece and of the key of its charts there, mm.
const MEASURES: f32 = 70.0;
const KEY: f32 = 66.0;
/// Least pixels a millimetre of a body: one of a hundred metres still has a hundred.
const LEAST_FINE: f32 = 1e-3;
/// Between two pictures, mm.
const GAP: f32 = 8.0;
/// The field of the body pictures, mm: of a single one, and of several together.
const FIELD_OF_ONE: [f32; 2] = [78.0, 92.0];
const FIELD: [f32; 2] = [58.0, 74.0];
/// The same for so many pieces that their names want the width of the page, and how many are.
const FIELD_OF_MANY: [f32; 2] = [166.0, 86.0];
const MANY: usize = 9;
/// What the name of a piece takes under it, mm across and down.
const NAME: [f32; 2] = [22.0, 5.0];
/// Height of the pieces under the picture of the toy that they make, mm, and the field of that.
const UNDER_TOY: f32 = 24.0;
const TOY_HIGH: f32 = 62.0;
/// The field of a view of the toy with the names of its parts, mm, and of a step.
const VIEW: [f32; 2] = [85.0, 68.0];
const STEP: [f32; 2] = [36.0, 29.0];
/// Pieces whose measures still have room on the first page.
const MEASURED_IN_FRONT: usize = 2;
/// Pixels a millimetre of a body on paper: 200 to the inch, for yarn has no hard edges.
const FINE: f32 = 7.9;
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
            let mut pictures = laid.charts(room, beside.then_some(measures), sheet);
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

/// How many bodies stand side by side in their field, and millimetres on paper for one of
/// the bodies, the same for all.
fn bodies_field(pieces: &[PieceSheet], under_toy: bool) -> (usize, f32) {
    let size = |piece: &PieceSheet| {
        let (tall, wide) =
            piece.sizes.first().map_or((1.0, 1.0), |s| (s.height_mm, s.width_mm));
        // Seen a little from above.
        [wide as f32 + 2.0, 0.97 * tall as f32 + 0.25 * wide as f32 + 2.0]
    };
    let sizes: Vec<[f32; 2]> = pieces.iter().map(size).collect();
    let field = match (under_toy, pieces.len()) {
        (true, 1) => [FIELD_OF_ONE[0], UNDER_TOY],
        (_, MANY..) => FIELD_OF_MANY,
        (true, _) => [FIELD[0], UNDER_TOY],
        (false, 1) => FIELD_OF_ONE,
        (false, _) => FIELD,
    };
    let name = if pieces.len() >= MANY { NAME } else { [0.0, 0.0] };
    let fit = |across: usize| {
        let rows = sizes.chunks(across);
        let wide = rows.clone().map(|r| r.iter().map(|s| s[0]).sum()).fold(0.0, f32::max);
        let tall: f32 = rows.clone().map(|r| r.iter().map(|s| s[1]).fold(0.0, f32::max)).sum();
        let gaps = |n: usize| 4.0 * (n.max(1) - 1) as f32;
        let room =
            |i: usize, n: usize| (field[i] - gaps(n) - name[1] * (i * n) as f32).max(8.0);
        if across > 1 && across as f32 * name[0] > field[0] {
            return 0.0;
        }
        (room(0, across) / wide.max(1.0)).min(room(1, rows.len()) / tall.max(1.0))
    };
    (1..=sizes.len().max(1))
        .map(|across| (across, fit(across)))
        .max_by(|a, b| a.1.total_cmp(&b.1))
        .unwrap_or((1, 1.0))
}

/// The symbols of several pieces and how their charts are read, each once.
#[derive(Default)]
struct Legend {
    key: Vec<KeyEntry>,
    reading: Vec<String>,
}

impl Legend {
    fn add(&mut self, charts: &Charts) {
        for entry in &charts.key {
            if !self.key.iter().any(|known| known.text == entry.text) {
                self.key.push(entry.clone());
            }
        }
        for sentence in &charts.reading {
            if !self.reading.contains(sentence) {
                self.reading.push(sentence.clone());
            }
        }
    }

    fn laid(&self, files: &mut BTreeMap<String, Bytes>) -> Value {
        let entry = |(k, entry): (usize, &KeyEntry)| {
            let file = format!("/key{k}.svg");
            let svg = drawing_svg(&entry.drawing, &entry.text, "", "");
            files.insert(file.clone(), Bytes::from_string(svg));
            json!({ "file": file, "alt": entry.text, "text": entry.text })
        };
        self.key.iter().enumerate().map(entry).collect()
    }
}

/// The pictures of the whole toy: in a field so wide on the cover, of each step, and its views.
fn toy_pictures(
    files: &mut BTreeMap<String, Bytes>,
    sheet: &Sheet,
    toy: &ToySheet,
    wide: f32,
    bodies: &BodyCache,
) -> Result<Value> {
    let mut put = |name: String, file: Bytes, wide: f32, alt: &str| {
        let path = format!("/toy-{name}");
        files.insert(path.clone(), file);
        json!({ "file": path, "alt": alt, "wide": wide })
    };
    let drawn = |step, field| bodies.toy(&toy.pictures, step, (field, FINE));
    let cover = drawn(None, [wide, TOY_HIGH])?;
    let cover = put("cover.png".into(), cover.file, wide, sheet.label("toy_picture"));
    let mut views = Vec::new();
    for view in CalledView::ALL {
        let caption = sheet.label(view.label());
        let file = bodies.called(&toy.pictures, view, (VIEW, FINE), caption)?;
        let mut view = put(format!("{}.svg", view.label()), file, VIEW[0], caption);
        view["caption"] = json!(caption);
        views.push(view);
    }
    let mut steps = Vec::new();
    for step in 0..toy.steps {
        let described = sheet.label_of("step_picture", "n", &(step + 1).to_string());
        let file = drawn(Some(step), STEP)?.file;
        steps.push(put(format!("step{step}.png"), file, STEP[0], &described));
    }
    Ok(json!({ "cover": cover, "views": views, "steps": steps }))
}

/// The pictures of one piece, being laid out.
struct LaidPictures<'a> {
    files: &'a mut BTreeMap<String, Bytes>,
    i: usize,
    pictures: &'a Pictures,
}

impl LaidPictures<'_> {
    fn file(&mut self, name: &str, bytes: Bytes) -> String {
        let path = format!("/{}-{name}", self.i);
        self.files.insert(path.clone(), bytes);
        path
    }

    fn drawn(&mut self, name: &str, drawing: &Drawing, alt: &str) -> Value {
        let svg = drawing_svg(drawing, alt, "", "");
        let [low, high] = drawing.bounds();
        let file = self.file(name, Bytes::from_string(svg));
        json!({ "file": file, "alt": alt, "wide": high[0] - low[0] + 1.2 })
    }

    fn schematic(&mut self, alt: &str) -> Value {
        let drawing = &self.pictures.schematic;
        let mut drawn = self.drawn("schematic.svg", drawing, alt);
        let [low, high] = drawing.bounds();
        let wide = high[0] - low[0] + 1.2;
        drawn["wide"] = json!(wide.min(BESIDE));
        drawn
    }

    fn body(&mut self, scale: f32, bodies: &BodyCache) -> Result<Value> {
        let picture = bodies.picture(self.pictures, (scale * FINE).clamp(LEAST_FINE, 24.0))?;
        let file = self.file("body.png", picture.file);
        let [wide, tall] = picture.size_mm;
        let alt = &self.pictures.described;
        Ok(json!({ "file": file, "alt": alt, "wide": wide * scale, "tall": tall * scale }))
    }

    /// Charts in rows, their key and what is said of them. Small ones stand beside the
    /// rounds where there is room; `beside` is what stands there already, mm, where anything
    /// may.
    fn charts(&mut self, room: [f32; 2], beside: Option<f32>, sheet: &Sheet) -> Value {
        let pictures = self.pictures;
        let charts = &pictures.charts;
        let sizes: Vec<[f32; 2]> = charts.charts.iter().map(Chart::size_mm).collect();
        let widest = sizes.iter().map(|s| s[0]).fold(0.0, f32::max);
        let tall: f32 = sizes.iter().map(|s| s[1] * (BESIDE / s[0]).min(1.0) + 12.0).sum();
        // The symbols of several pieces are told in front.
        let key_height = if sheet.pieces.len() == 1 { KEY } else { 0.0 };
        let free = beside.map_or(0.0, |taken| room[1] - taken - key_height);
        let beside = widest * LEAST_SCALE <= BESIDE && tall < free;
        let width = if beside { BESIDE } else { room[0] };
        let packed = match beside {
            true => rows(&sizes, BESIDE, BESIDE, room[1]),
            false => rows(&sizes, width, GAP, room[1]),
        };
        let mut laid = Vec::new();
        for row in packed {
            let charts = row.items.clone().map(|c| {
                let chart = &charts.charts[c];
                let named = format!("{}, {}", chart.title, chart.caption);
                let alt = sheet.label_of("chart_picture", "chart", &named);
                let mut drawn = self.drawn(&format!("chart{c}.svg"), &chart.drawing, &alt);
                drawn["wide"] = json!(sizes[c][0] * row.scale);
                drawn["title"] = json!(chart.title);
                drawn["caption"] = json!(chart.caption);
                drawn
            });
            let charts: Vec<Value> = charts.collect();
            laid.push(json!({ "charts": charts, "least": LEAST_SCALE / row.scale }));
        }
        let own = sheet.pieces.len() == 1;
        let entries = charts.key.iter().enumerate().filter(|_| own);
        let key: Vec<Value> = entries
            .map(|(k, entry)| {
                let mut drawn = self.drawn(&format!("key{k}.svg"), &entry.drawing, &entry.text);
                drawn["text"] = json!(entry.text);
                drawn
            })
            .collect();
        let reading: &[String] = if own { &charts.reading } else { &[] };
        json!({
            "beside": beside,
            "rows": laid,
            "key": key,
            "reading": reading,
            "remarks": charts.remarks,
        })
    }
}
