//! The sheet as one HTML file: whole in itself, readable on a phone and by a screen reader,
//! fit to print, with boxes to tick that the browser remembers.

use std::fmt::Write as _;

use super::pictures::drawing_svg;
use super::{PieceSheet, Sheet, Step, sheet};
use crate::error::Result;
use crate::picture::Rgb;
use crate::picture::svg::{escaped, hex};
use crate::project::Project;

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
    let mut page = HtmlPage { out: String::with_capacity(1 << 18), pictures: 0, boxes: 0 };
    let title = escaped(&sheet.title);
    page.put(&format!(
        "<!DOCTYPE html>\n<html lang=\"{}\">\n<head>\n<meta charset=\"utf-8\">\n\
         <meta name=\"viewport\" content=\"width=device-width, initial-scale=1\">\n\
         <meta http-equiv=\"Content-Security-Policy\" content=\"default-src 'none'; \
         img-src data:; style-src 'unsafe-inline'; script-src 'sha256-{SCRIPT_HASH}'; base-uri 'none'; \
         form-action 'none'\">\n\
         <meta name=\"generator\" content=\"Plumpline\">\n<title>{title}</title>\n\
         <style>{STYLE}</style>\n</head>\n<body data-sheet=\"{title}\">\n<main>\n",
        escaped(&sheet.language)
    ));
    page.head(sheet);
    page.needs(sheet);
    page.words(sheet);
    for (i, piece) in sheet.pieces.iter().enumerate() {
        page.piece(sheet, piece, i);
    }
    page.list_of("Putting it together", "assembly", &sheet.assembly, "p");
    page.put("<section aria-labelledby=\"cautions\" class=\"cautions\">\n<h2 id=\"cautions\">Cautions</h2>\n<ul>\n");
    for caution in &sheet.cautions {
        page.put(&format!("<li>{}</li>\n", escaped(caution)));
    }
    page.put("</ul>\n</section>\n");
    page.put(&format!("</main>\n<script>{SCRIPT}</script>\n</body>\n</html>\n"));
    page.out
}

/// A page being written.
struct HtmlPage {
    out: String,
    /// Pictures so far: the ids in each must differ.
    pictures: usize,
    /// Boxes to tick so far.
    boxes: usize,
}

impl HtmlPage {
    fn put(&mut self, text: &str) {
        self.out.push_str(text);
    }

    fn head(&mut self, sheet: &Sheet) {
        self.put(&format!("<header>\n<h1 dir=\"auto\">{}</h1>\n", escaped(&sheet.title)));
        if !sheet.designer.is_empty() {
            self.put(&format!("<p dir=\"auto\">by {}</p>\n", escaped(&sheet.designer)));
        }
        self.put(&format!(
            "<p>Level: <strong>{}</strong> ({})</p>\n",
            sheet.level.name,
            escaped(&sheet.level.why)
        ));
        for note in &sheet.notes {
            self.put(&format!("<p class=\"note\" dir=\"auto\">{}</p>\n", escaped(note)));
        }
        if !sheet.licence.is_empty() {
            self.put(&format!(
                "<p class=\"small\" dir=\"auto\">{}</p>\n",
                escaped(&sheet.licence)
            ));
        }
        self.put("</header>\n");
    }

    fn needs(&mut self, sheet: &Sheet) {
        let materials = &sheet.materials;
        self.put("<section aria-labelledby=\"need\">\n<h2 id=\"need\">You need</h2>\n<ul class=\"need\">\n");
        for yarn in &materials.yarn {
            self.put(&format!(
                "<li>{} <strong dir=\"auto\">{}</strong> about {}</li>\n",
                bead(&yarn.letter, yarn.colour),
                escaped(&yarn.name),
                yarn.amount()
            ));
        }
        for line in materials.lines().iter().skip(materials.yarn.len()) {
            self.put(&format!("<li>{}</li>\n", escaped(line)));
        }
        self.put("</ul>\n<p class=\"small\">Yarn, stuffing and time are estimates.</p>\n</section>\n");
    }

    fn words(&mut self, sheet: &Sheet) {
        self.put(&format!(
            "<section aria-labelledby=\"short\">\n<h2 id=\"short\">Abbreviations</h2>\n\
             <p class=\"small\">{}</p>\n<dl class=\"short\">\n",
            escaped(&sheet.terms)
        ));
        for (short, meaning) in &sheet.abbreviations {
            self.put(&format!("<dt>{}</dt><dd>{}</dd>\n", escaped(short), escaped(meaning)));
        }
        self.put("</dl>\n</section>\n");
        if !sheet.specials.is_empty() {
            self.put("<section aria-labelledby=\"special\">\n<h2 id=\"special\">How it is worked</h2>\n<dl>\n");
            for special in &sheet.specials {
                self.put(&format!(
                    "<dt>{}</dt><dd>{}</dd>\n",
                    escaped(&special.name),
                    escaped(&special.how)
                ));
            }
            self.put("</dl>\n</section>\n");
        }
    }

    fn piece(&mut self, sheet: &Sheet, piece: &PieceSheet, index: usize) {
        let name = escaped(&piece.name);
        self.put(&format!(
            "<article aria-labelledby=\"piece{index}\">\n<h2 id=\"piece{index}\" dir=\"auto\">{name}</h2>\n"
        ));
        self.put("<div class=\"pictures\">\n");
        // So few pixels are never too many.
        if let Ok(body) = piece.pictures.body_svg(BODY) {
            self.picture(&body, &format!("{}, stuffed", piece.name), "body");
        }
        let schematic =
            drawing_svg(&piece.pictures.schematic, "Measures", &piece.sizes[0].finished);
        self.picture(&schematic, "Measures", "flat");
        self.put("</div>\n<dl class=\"facts\">\n");
        for size in &piece.sizes {
            let name =
                if size.name.is_empty() { String::new() } else { format!(" {}", size.name) };
            self.put(&format!(
                "<dt>Finished size{}</dt><dd>{}. {}</dd>\n",
                escaped(&name),
                escaped(&size.finished),
                escaped(&size.measured_on)
            ));
        }
        self.put(&format!("<dt>Gauge</dt><dd>{}</dd>\n", escaped(&piece.gauge)));
        self.put(&format!("<dt>Hook</dt><dd>{}</dd>\n</dl>\n", escaped(&piece.hook)));
        if !piece.warnings.is_empty() {
            self.list_of("Before you begin", &format!("before{index}"), &piece.warnings, "li");
        }
        if !sheet.unchecked.is_empty() {
            self.put(&format!("<p>{}</p>\n", escaped(&sheet.unchecked)));
        }
        for line in &piece.opening {
            self.put(&format!("<p>{}</p>\n", escaped(line)));
        }
        for (size, steps, closing) in piece.lists() {
            if !size.is_empty() {
                self.put(&format!("<h3>{}</h3>\n", escaped(size)));
            }
            self.rounds(sheet, steps, &format!("{index}{size}"));
            for line in closing {
                self.put(&format!("<p>{}</p>\n", escaped(line)));
            }
        }
        for size in &piece.sizes {
            let total = format!("{}{}", size.lead(), size.total);
            self.put(&format!("<p class=\"small\">{}.</p>\n", escaped(&total)));
        }
        self.charts(piece, index);
        self.put("</article>\n");
    }

    /// The table of rounds; `list` tells its ticks from those of other lists.
    fn rounds(&mut self, sheet: &Sheet, steps: &[Step], list: &str) {
        let list = escaped(list);
        self.put(&format!(
            "<table class=\"rounds\">\n<caption>Rounds: tick each as you finish it</caption>\n\
             <thead><tr><th scope=\"col\">{}</th><th scope=\"col\">Work</th>\
             <th scope=\"col\">Stitches</th><th scope=\"col\">Done</th></tr></thead>\n<tbody>\n",
            escaped(&sheet.round_word)
        ));
        for step in steps {
            match step {
                Step::Rounds(line) => {
                    self.put(&format!(
                        "<tr class=\"round\"><th scope=\"row\">{}</th><td>{}</td><td class=\"count\">{}</td><td class=\"done\">",
                        escaped(&line.number),
                        escaped(&line.text),
                        escaped(&line.count)
                    ));
                    for round in (line.first..).take(line.boxes as usize) {
                        self.boxes += 1;
                        self.put(&format!(
                            "<input type=\"checkbox\" id=\"b{}\" data-tick=\"{list}.{round}\" aria-label=\"Round {round} done\">",
                            self.boxes
                        ));
                    }
                    self.put("</td></tr>\n");
                }
                Step::Yarn(yarn) => self.put(&format!(
                    "<tr class=\"between\" style=\"--yarn:{}\"><td colspan=\"4\">{} {}</td></tr>\n",
                    hex(yarn.colour),
                    bead(&yarn.letter, yarn.colour),
                    escaped(&yarn.text)
                )),
                Step::Stuff(text) => self.put(&format!(
                    "<tr class=\"between stuff\"><td colspan=\"4\">{}</td></tr>\n",
                    escaped(text)
                )),
            }
        }
        self.put("</tbody>\n</table>\n");
    }

    fn charts(&mut self, piece: &PieceSheet, index: usize) {
        let charts = &piece.pictures.charts;
        if charts.charts.is_empty() && charts.remarks.is_empty() {
            return;
        }
        self.put(&format!(
            "<section aria-labelledby=\"chart{index}\">\n<h3 id=\"chart{index}\">Round charts</h3>\n"
        ));
        for chart in &charts.charts {
            let caption = format!("{}: {}", chart.title(), chart.caption());
            let text = "The same rounds as the table, as symbols.";
            let svg = drawing_svg(&chart.drawing, &caption, text);
            self.picture(&svg, &caption, "chart");
        }
        if !charts.key.is_empty() {
            self.put("<ul class=\"key\">\n");
            for entry in &charts.key {
                self.pictures += 1;
                let svg = drawing_svg(&entry.drawing, &entry.text, "");
                let hidden = svg.replacen("role=\"img\"", "aria-hidden=\"true\"", 1);
                self.put(&format!("<li>{hidden} {}</li>\n", escaped(&entry.text)));
            }
            self.put("</ul>\n");
        }
        for remark in &charts.remarks {
            self.put(&format!("<p class=\"small\">{}</p>\n", escaped(remark)));
        }
        self.put("</section>\n");
    }

    /// A picture with its caption; ids in it are made its own.
    fn picture(&mut self, svg: &str, caption: &str, class: &str) {
        self.pictures += 1;
        let n = self.pictures;
        let own = svg
            .replacen(
                "aria-labelledby=\"title desc\"",
                &format!("aria-labelledby=\"t{n} d{n}\""),
                1,
            )
            .replacen("<title id=\"title\">", &format!("<title id=\"t{n}\">"), 1)
            .replacen("<desc id=\"desc\">", &format!("<desc id=\"d{n}\">"), 1);
        write!(
            self.out,
            "<figure class=\"{class}\">\n{own}<figcaption dir=\"auto\">{}</figcaption>\n</figure>\n",
            escaped(caption)
        )
        .unwrap_or_default();
    }

    /// A section of paragraphs or list items; nothing where there are none.
    fn list_of(&mut self, title: &str, id: &str, lines: &[String], tag: &str) {
        if lines.is_empty() {
            return;
        }
        self.put(&format!(
            "<section aria-labelledby=\"{id}\">\n<h2 id=\"{id}\">{title}</h2>\n"
        ));
        if tag == "li" {
            self.put("<ul>\n");
        }
        for line in lines {
            self.put(&format!("<{tag} dir=\"auto\">{}</{tag}>\n", escaped(line)));
        }
        self.put(if tag == "li" { "</ul>\n</section>\n" } else { "</section>\n" });
    }
}

/// A yarn's letter on its colour.
fn bead(letter: &str, colour: Rgb) -> String {
    let light = |c: u8| f32::from(c) / 255.0;
    let bright = 0.3 * light(colour[0]) + 0.59 * light(colour[1]) + 0.11 * light(colour[2]);
    let ink = if bright > 0.55 { "#2c2823" } else { "#fff" };
    format!(
        "<span class=\"bead\" style=\"background:{};color:{ink}\">{}</span>",
        hex(colour),
        escaped(letter)
    )
}

const STYLE: &str = include_str!("../../../assets/sheet/sheet.css");
const SCRIPT: &str = include_str!("../../../assets/sheet/ticks.js");
/// SHA-256 of the script, in base 64: the only one that a browser is to run on the page
/// (W3C, Content Security Policy Level 3, 6.7.3).
const SCRIPT_HASH: &str = "atN6WxfIN7YC0WizEDRuGUAV4XX+Z/uol8YgZTMj8VA=";
