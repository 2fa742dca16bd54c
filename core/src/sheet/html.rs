//! The sheet as one HTML file: whole in itself, readable on a phone and by a screen reader,
//! fit to print, with boxes to tick that the browser remembers. Its form is the template
//! `assets/sheet/sheet.html`, which escapes all that a person typed.

use std::fmt;

use askama::Template;
use base64::Engine as _;

use super::pictures::drawing_svg;
use super::toy_pictures::still_svg;
use super::{CalledView, PieceSheet, RoundsLine, Sheet, SheetPhoto, Step, ToySheet, sheet};
use crate::error::Result;
use crate::picture::Rgb;
use crate::picture::chart::LEAST_SCALE;
use crate::picture::svg::{escaped, hex};
use crate::project::Project;
use crate::project::sheet_design::{SheetDetail, SheetSection};

/// How large the body is drawn, pixels: yarn compresses badly, and a page is sent by mail.
const BODY: f32 = 400.0;

/// The pattern of `project` as an HTML file.
///
/// # Errors
/// As [`sheet`](super::sheet()).
pub fn html(project: &Project) -> Result<String> {
    Ok(html_of(&sheet(project)?))
}

/// A sheet as an HTML file. Whatever a person typed prints as typed.
pub fn html_of(sheet: &Sheet) -> String {
    let mut ids = 0..;
    let pieces = (0..).zip(&sheet.pieces).map(|(i, of)| HtmlPiece::new(sheet, of, i, &mut ids));
    let pieces = pieces.collect();
    let toy = sheet.toy.as_ref().map(|toy| HtmlToy::new(sheet, toy, &mut ids));
    let page = HtmlPage { sheet, pieces, toy };
    // It is written to a String, which never refuses.
    page.render().unwrap_or_default()
}

/// What the template asks for.
#[derive(Template)]
#[template(path = "sheet.html")]
struct HtmlPage<'a> {
    sheet: &'a Sheet,
    pieces: Vec<HtmlPiece<'a>>,
    toy: Option<HtmlToy>,
}

impl HtmlPage<'_> {
    fn has_words(&self) -> bool {
        self.sheet.sections.contains(&SheetSection::Words)
    }

    /// The designer's photograph `number`, counted from 1, with what stands under it.
    fn photo(&self, photo: &SheetPhoto, number: usize) -> String {
        let alt = match photo.caption.as_str() {
            "" => self.sheet.label_of("photo_picture", "n", &number.to_string()),
            caption => caption.to_owned(),
        };
        let under = match photo.caption.as_str() {
            "" => String::new(),
            caption => format!("<figcaption dir=\"auto\">{}</figcaption>", escaped(caption)),
        };
        let [wide, tall] = photo.size;
        format!(
            "<figure class=\"photo\"><img src=\"{}\" width=\"{wide}\" height=\"{tall}\" \
             alt=\"{}\">{under}</figure>",
            photo.address(),
            escaped(&alt)
        )
    }

    /// The picture beside line `line` of the assembly.
    fn step_picture(&self, line: &usize) -> Option<&str> {
        self.toy.as_ref()?.steps.get(*line)?.as_deref()
    }

    /// The faces of the page, embedded: it asks for nothing from anywhere.
    fn faces(&self) -> String {
        FACES
            .iter()
            .map(|(family, weight, file)| {
                let data = base64::engine::general_purpose::STANDARD.encode(file);
                format!(
                    "@font-face {{ font-family: \"{family}\"; font-weight: {weight}; \
                     font-display: block; \
                     src: url(data:font/woff2;base64,{data}) format(\"woff2\"); }}\n"
                )
            })
            .collect()
    }
}

/// Families, weights, and subsets of their files:
/// Latin letters, figures and the signs of patterns. Other scripts take the reader's own faces.
const FACES: [(&str, u32, &[u8]); 3] = [
    ("Nunito Sans", 400, include_bytes!("../../../assets/fonts/web/nunito-sans-400.woff2")),
    ("Nunito Sans", 700, include_bytes!("../../../assets/fonts/web/nunito-sans-700.woff2")),
    ("Routed Gothic", 400, include_bytes!("../../../assets/fonts/web/routed-gothic.woff2")),
];

/// What is escaped in the template, as in every picture: signs of markup are written by name,
/// characters that no document may hold are left out.
#[derive(Debug, Clone, Copy)]
struct Escape;

impl askama::filters::Escaper for Escape {
    fn write_escaped_str<W: fmt::Write>(&self, mut to: W, text: &str) -> fmt::Result {
        to.write_str(&escaped(text))
    }
}

/// Width of half a printed page, mm: two charts that can be read at it stand side by side.
const HALF_PAGE: f32 = 88.0;

/// Pieces whose bodies are drawn, at most: each takes a good part of a second.
const MOST_BODIES: usize = 16;

/// How large the toy and a step of it are drawn, pixels, and its views with names, mm.
const TOY: [u32; 2] = [520, 520];
const STEP: [u32; 2] = [300, 220];
const VIEW: [f32; 2] = [104.0, 84.0];
/// Pixels a millimetre of those.
const VIEW_FINE: f32 = 4.6;

/// The whole toy with its pictures drawn.
struct HtmlToy {
    cover: Option<HtmlPicture>,
    views: Vec<HtmlPicture>,
    /// One a line of the assembly, none beside lines that are no steps of it.
    steps: Vec<Option<String>>,
}

impl HtmlToy {
    fn new(sheet: &Sheet, of: &ToySheet, numbers: &mut impl Iterator<Item = u32>) -> Self {
        let mut ids = || format!("p{}-", numbers.next().unwrap_or_default());
        // So few pixels are never too many.
        let described = sheet.label("toy_picture");
        let cover = of.pictures.cover(TOY).and_then(|s| still_svg(&s, described, &ids())).ok();
        let caption = String::new();
        let cover = cover.map(|svg| HtmlPicture { svg, caption, class: "body" });
        let views = CalledView::ALL.into_iter().filter_map(|view| {
            let caption = sheet.label(view.label()).to_owned();
            let field = (VIEW, VIEW_FINE);
            let svg = of.pictures.called_svg(view, field, &caption, &ids()).ok()?;
            Some(HtmlPicture { svg, caption, class: "flat" })
        });
        let views = views.collect();
        let steps = (0..sheet.assembly.len()).map(|line| {
            let step = of.step_of(line)?;
            let n = (step + 1).to_string();
            let described = sheet.label_of("step_picture", "n", &n);
            let still = of.pictures.step(step, STEP).ok()?;
            still_svg(&still, &described, &ids()).ok()
        });
        Self { cover, views, steps: steps.collect() }
    }
}

/// A piece with its pictures drawn.
struct HtmlPiece<'a> {
    of: &'a PieceSheet,
    pictures: Vec<HtmlPicture>,
    lists: Vec<HtmlList<'a>>,
    charts: Vec<HtmlPicture>,
    /// Symbols of the charts with their meanings, and whether a piece before has them too:
    /// paper, which is read from its first page, need not say them again.
    key: Vec<(String, &'a str, bool)>,
    /// How the charts are read, a sentence each, and whether it stood with a piece before.
    reading: Vec<(&'a str, bool)>,
}

/// A picture with its caption.
struct HtmlPicture {
    svg: String,
    caption: String,
    class: &'static str,
}

/// The rounds of a size, or of all.
struct HtmlList<'a> {
    size: &'a str,
    /// Tells its ticks from those of other lists.
    ticks: String,
    steps: &'a [Step],
    closing: &'a [String],
}

impl<'a> HtmlPiece<'a> {
    /// Piece `index` of the sheet; `numbers` tell the ids of one picture from another's.
    fn new(
        sheet: &Sheet,
        of: &'a PieceSheet,
        index: usize,
        numbers: &mut impl Iterator<Item = u32>,
    ) -> Self {
        let mut ids = || format!("p{}-", numbers.next().unwrap_or_default());
        let mut pictures = Vec::with_capacity(2);
        // So few pixels are never too many.
        if index < MOST_BODIES
            && sheet.draws(SheetDetail::Bodies)
            && let Ok(svg) = of.pictures.body_svg(BODY, &ids())
        {
            let caption = sheet.label_of("stuffed_picture", "name", &of.name);
            pictures.push(HtmlPicture { svg, caption, class: "body" });
        }
        let finished = &of.sizes[0].finished;
        let measures = sheet.label("measures");
        if sheet.draws(SheetDetail::Measures) {
            let svg = drawing_svg(&of.pictures.schematic, measures, finished, &ids());
            pictures.push(HtmlPicture { svg, caption: measures.to_owned(), class: "flat" });
        }
        let lists = of.lists().into_iter().map(|(size, steps, closing)| HtmlList {
            size,
            ticks: format!("{index}{size}"),
            steps,
            closing,
        });
        let drawn = &of.pictures.charts;
        let charts = drawn.charts.iter().map(|chart| {
            let caption = format!("{}{} {}", chart.title, sheet.colon, chart.caption);
            let text = sheet.label_of("chart_picture", "chart", &caption);
            let svg = drawing_svg(&chart.drawing, &caption, &text, &ids());
            let wide = chart.size_mm()[0] > HALF_PAGE / LEAST_SCALE;
            HtmlPicture { svg, caption, class: if wide { "chart wide" } else { "chart" } }
        });
        let charts = charts.collect();
        let before = || sheet.pieces[..index].iter().map(|piece| &piece.pictures.charts);
        let key = drawn.key.iter().map(|entry| {
            let again = before().any(|c| c.key.iter().any(|known| known.text == entry.text));
            (drawing_svg(&entry.drawing, &entry.text, "", &ids()), entry.text.as_str(), again)
        });
        let key = key.collect();
        let reading = drawn
            .reading
            .iter()
            .map(|said| (said.as_str(), before().any(|c| c.reading.contains(said))));
        let (lists, reading) = (lists.collect(), reading.collect());
        Self { of, pictures, lists, key, charts, reading }
    }
}

/// The rounds of a line, each with a box to tick.
fn rounds(line: &RoundsLine) -> std::ops::Range<u32> {
    line.first..line.first + line.boxes
}

/// A colour as CSS writes it.
fn dyed(colour: &Rgb) -> String {
    hex(*colour)
}

/// A yarn's letter on its colour.
fn bead(letter: &str, colour: &Rgb) -> String {
    let light = |c: u8| f32::from(c) / 255.0;
    let bright = 0.3 * light(colour[0]) + 0.59 * light(colour[1]) + 0.11 * light(colour[2]);
    let ink = if bright > 0.55 { "#2c2823" } else { "#fff" };
    format!(
        "<span class=\"bead\" style=\"background:{};color:{ink}\">{}</span>",
        hex(*colour),
        escaped(letter)
    )
}

const STYLE: &str = include_str!("../../../assets/sheet/sheet.css");
const SCRIPT: &str = include_str!("../../../assets/sheet/ticks.js");
/// SHA-256 of the script, in base 64: the only one that a browser is to run on the page
/// (W3C, Content Security Policy Level 3, 6.7.3).
const SCRIPT_HASH: &str = "atN6WxfIN7YC0WizEDRuGUAV4XX+Z/uol8YgZTMj8VA=";
