//! The pictures of a sheet: how large each is on its page, and their files.

use std::collections::BTreeMap;

use plumpline_core::picture::Drawing;
use plumpline_core::picture::chart::{Chart, Charts, KeyEntry, LEAST_SCALE};
use plumpline_core::sheet::{
    CalledView, Pictures, PieceSheet, Sheet, Step, ToySheet, drawing_svg,
};
use serde_json::{Value, json};
use typst::foundations::Bytes;

use crate::Result;
use crate::packing::rows;
use crate::raster::BodyCache;

/// Margins left and right together, and what head, foot and a heading take of the height, mm.
pub(crate) const MARGINS: f32 = 32.0;
pub(crate) const ABOVE_AND_BELOW: f32 = 62.0;
/// Width of the column beside the rounds, mm.
pub(crate) const BESIDE: f32 = 62.0;
/// Height of the measures of a piece and of the key of its charts there, mm.
pub(crate) const MEASURES: f32 = 70.0;
const KEY: f32 = 66.0;
/// Height of a line of rounds and of what stands over and under them, mm; letters of a line
/// that has pictures beside it.
const LINE: f32 = 5.6;
const HEAD_OF_ROUNDS: f32 = 26.0;
const LETTERS_OF_A_LINE: usize = 42;
/// How far what stands beside the rounds may reach below them, mm.
const MOST_BELOW: f32 = 24.0;
/// Least pixels a millimetre of a body: one of a hundred metres still has a hundred.
const LEAST_FINE: f32 = 1e-3;
/// Between two pictures, mm.
const GAP: f32 = 8.0;
/// The field of the body pictures, mm: of a single one, and of several together.
pub(crate) const FIELD_OF_ONE: [f32; 2] = [78.0, 92.0];
pub(crate) const FIELD: [f32; 2] = [58.0, 74.0];
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
pub(crate) const MEASURED_IN_FRONT: usize = 2;
/// Pixels a millimetre of a body on paper: 200 to the inch, for yarn has no hard edges.
const FINE: f32 = 7.9;

/// How many bodies stand side by side in their field, and millimetres on paper for one of
/// the bodies, the same for all.
pub(crate) fn bodies_field(pieces: &[PieceSheet], under_toy: bool) -> (usize, f32) {
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
pub(crate) struct Legend {
    pub(crate) key: Vec<KeyEntry>,
    pub(crate) reading: Vec<String>,
}

impl Legend {
    pub(crate) fn add(&mut self, charts: &Charts) {
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

    pub(crate) fn laid(&self, files: &mut BTreeMap<String, Bytes>) -> Value {
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
pub(crate) fn toy_pictures(
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

/// The column beside the rounds of a piece.
#[derive(Clone, Copy)]
pub(crate) struct BesideRounds {
    /// What its measures take of it, mm.
    pub(crate) measures_mm: f32,
    /// How far down the rounds reach beside it, mm.
    pub(crate) rounds_mm: f32,
}

/// How far down the rounds of a piece reach, mm, about: a line each, two where its words are
/// long.
pub(crate) fn rounds_tall(piece: &PieceSheet) -> f32 {
    let line = |step: &Step| match step {
        Step::Rounds(line) if line.text.chars().count() <= LETTERS_OF_A_LINE => LINE,
        _ => 1.5 * LINE,
    };
    let list = |(_, steps, _): (&str, &[Step], &[String])| {
        HEAD_OF_ROUNDS + steps.iter().map(line).sum::<f32>()
    };
    piece.lists().into_iter().map(list).sum()
}

/// The pictures of one piece, being laid out.
pub(crate) struct LaidPictures<'a> {
    pub(crate) files: &'a mut BTreeMap<String, Bytes>,
    pub(crate) i: usize,
    pub(crate) pictures: &'a Pictures,
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

    pub(crate) fn schematic(&mut self, alt: &str) -> Value {
        let drawing = &self.pictures.schematic;
        let mut drawn = self.drawn("schematic.svg", drawing, alt);
        let [low, high] = drawing.bounds();
        let wide = high[0] - low[0] + 1.2;
        drawn["wide"] = json!(wide.min(BESIDE));
        drawn
    }

    pub(crate) fn body(&mut self, scale: f32, bodies: &BodyCache) -> Result<Value> {
        let picture = bodies.picture(self.pictures, (scale * FINE).clamp(LEAST_FINE, 24.0))?;
        let file = self.file("body.png", picture.file);
        let [wide, tall] = picture.size_mm;
        let alt = &self.pictures.described;
        Ok(json!({ "file": file, "alt": alt, "wide": wide * scale, "tall": tall * scale }))
    }

    /// Charts in rows, their key and what is said of them. Small ones stand beside the
    /// rounds, in `beside` where anything may, if a page has room for them there and they do
    /// not reach far below the rounds: what stands under those would be left empty.
    pub(crate) fn charts(
        &mut self,
        room: [f32; 2],
        beside: Option<BesideRounds>,
        sheet: &Sheet,
    ) -> Value {
        let pictures = self.pictures;
        let charts = &pictures.charts;
        let sizes: Vec<[f32; 2]> = charts.charts.iter().map(Chart::size_mm).collect();
        let widest = sizes.iter().map(|s| s[0]).fold(0.0, f32::max);
        let tall: f32 = sizes.iter().map(|s| s[1] * (BESIDE / s[0]).min(1.0) + 12.0).sum();
        // The symbols of several pieces are told in front.
        let key_height = if sheet.pieces.len() == 1 { KEY } else { 0.0 };
        let free = beside.map_or(0.0, |column| {
            let below = column.rounds_mm + MOST_BELOW;
            room[1].min(below) - column.measures_mm - key_height
        });
        let beside = widest * LEAST_SCALE <= BESIDE && tall < free;
        // One under another beside the rounds: no two have room for such a gap.
        let (width, gap) = if beside { (BESIDE, BESIDE) } else { (room[0], GAP) };
        let packed = rows(&sizes, width, gap, room[1]);
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
