//! A scene or a drawing as SVG 1.1 text: whole in itself, with a title and a description for those who
//! cannot see it.

use std::fmt::Write as _;

use super::drawing::{Drawing, Pen, Shape};
use super::relief::Still;
use super::{Rgb, Scene, Writing};

/// What stands around a scene in its file.
#[derive(Debug, Clone, PartialEq)]
pub struct Frame<'a> {
    /// What it is a picture of, for screen readers and tooltips.
    pub title: &'a str,
    /// What it shows, in a sentence or two.
    pub description: &'a str,
    /// Room left around the scene, pixels.
    pub margin: f32,
    /// Colour of the ground; none leaves it clear.
    pub background: Option<Rgb>,
    /// Families for the words, first choice first, as CSS writes them.
    pub fonts: &'a str,
    /// What the ids in it begin with: several pictures in one page must not share any.
    pub ids: &'a str,
}

/// The scene as the text of an SVG file.
pub fn svg(scene: &Scene, frame: &Frame<'_>) -> String {
    let [low, high] = scene.bounds();
    let (left, top) = (low[0] - frame.margin, low[1] - frame.margin);
    let (width, height) =
        (high[0] - low[0] + 2.0 * frame.margin, high[1] - low[1] + 2.0 * frame.margin);
    let ids = frame.ids;
    let mut out = String::with_capacity(64 * scene.polygons().len() + 1024);
    // Writing to a String cannot fail.
    let mut put = |line: std::fmt::Arguments<'_>| out.write_fmt(line).unwrap_or_default();
    put(format_args!(
        "<svg xmlns=\"http://www.w3.org/2000/svg\" version=\"1.1\" role=\"img\" \
         aria-labelledby=\"{ids}title {ids}desc\" width=\"{width:.0}\" height=\"{height:.0}\" \
         viewBox=\"{left:.2} {top:.2} {width:.2} {height:.2}\">\n"
    ));
    put(format_args!("<title id=\"{ids}title\">{}</title>\n", escaped(frame.title)));
    put(format_args!("<desc id=\"{ids}desc\">{}</desc>\n", escaped(frame.description)));
    if let Some(colour) = frame.background {
        put(format_args!(
            "<rect x=\"{left:.2}\" y=\"{top:.2}\" width=\"100%\" height=\"100%\" fill=\"{}\"/>\n",
            hex(colour)
        ));
    }
    for polygon in scene.polygons() {
        put(format_args!("<path fill=\"{}\" d=\"", hex(polygon.colour)));
        for (i, [x, y]) in scene.corners(polygon).iter().enumerate() {
            put(format_args!("{}{x:.1} {y:.1}", if i == 0 { 'M' } else { 'L' }));
        }
        put(format_args!("Z\"/>\n"));
    }
    for words in &scene.writing {
        put(format_args!("{}", written(words, (false, false), frame.fonts)));
    }
    put(format_args!("</svg>\n"));
    out
}

/// A still as the text of an SVG file: its pixels as the file `png` within, and over them its
/// outline as a path, drawn in nothing, for those who cut or trace it.
pub fn still(still: &Still, png: &[u8], frame: &Frame<'_>) -> String {
    use base64::Engine as _;
    let [width, height] = still.size;
    let ids = frame.ids;
    let mut out = String::with_capacity(png.len() * 4 / 3 + 8192);
    let mut put = |line: std::fmt::Arguments<'_>| out.write_fmt(line).unwrap_or_default();
    put(format_args!(
        "<svg xmlns=\"http://www.w3.org/2000/svg\" \
         version=\"1.1\" role=\"img\" \
         aria-labelledby=\"{ids}title {ids}desc\" width=\"{width}\" height=\"{height}\" \
         viewBox=\"0 0 {width} {height}\">\n"
    ));
    put(format_args!("<title id=\"{ids}title\">{}</title>\n", escaped(frame.title)));
    put(format_args!("<desc id=\"{ids}desc\">{}</desc>\n", escaped(frame.description)));
    if let Some(colour) = frame.background {
        let fill = hex(colour);
        put(format_args!("<rect width=\"100%\" height=\"100%\" fill=\"{fill}\"/>\n"));
    }
    let data = base64::engine::general_purpose::STANDARD.encode(png);
    put(format_args!(
        "<image width=\"{width}\" height=\"{height}\" \
         href=\"data:image/png;base64,{data}\"/>\n<path class=\"outline\" fill=\"none\" d=\""
    ));
    for ring in still.outline() {
        put(format_args!("{}", traced(&ring, true)));
    }
    put(format_args!("\"/>\n</svg>\n"));
    out
}

/// The drawing as the text of an SVG file, a millimetre a unit, `width` pixels wide where
/// that is asked for and as large as it is on paper otherwise.
pub fn drawing(drawing: &Drawing, frame: &Frame<'_>, width: Option<f32>) -> String {
    drawn_over(drawing, frame, width, "")
}

/// The drawing over a picture that fills it, the file `png`.
pub fn drawing_over(png: &[u8], drawing: &Drawing, frame: &Frame<'_>) -> String {
    use base64::Engine as _;
    let [low, high] = drawing.bounds();
    let [wide, tall] = [high[0] - low[0], high[1] - low[1]];
    let data = base64::engine::general_purpose::STANDARD.encode(png);
    let under = format!(
        "<image x=\"{:.2}\" y=\"{:.2}\" width=\"{wide:.2}\" height=\"{tall:.2}\" \
         href=\"data:image/png;base64,{data}\"/>\n",
        low[0], low[1]
    );
    drawn_over(drawing, frame, None, &under)
}

fn drawn_over(drawing: &Drawing, frame: &Frame<'_>, width: Option<f32>, under: &str) -> String {
    let [low, high] = drawing.bounds();
    let (left, top) = (low[0] - frame.margin, low[1] - frame.margin);
    let (wide, high) = (high[0] - left + frame.margin, high[1] - top + frame.margin);
    let ids = frame.ids;
    let mut out = String::with_capacity(48 * drawing.shapes.len() + 1024);
    let mut put = |line: std::fmt::Arguments<'_>| out.write_fmt(line).unwrap_or_default();
    let size = match width {
        Some(px) => format!("width=\"{px:.0}\" height=\"{:.0}\"", px * high / wide.max(1e-3)),
        None => format!("width=\"{wide:.2}mm\" height=\"{high:.2}mm\""),
    };
    put(format_args!(
        "<svg xmlns=\"http://www.w3.org/2000/svg\" version=\"1.1\" role=\"img\" \
         aria-labelledby=\"{ids}title {ids}desc\" {size} \
         viewBox=\"{left:.2} {top:.2} {wide:.2} {high:.2}\" fill=\"none\" \
         stroke-linecap=\"round\" stroke-linejoin=\"round\">\n"
    ));
    put(format_args!("<title id=\"{ids}title\">{}</title>\n", escaped(frame.title)));
    put(format_args!("<desc id=\"{ids}desc\">{}</desc>\n", escaped(frame.description)));
    if let Some(colour) = frame.background {
        put(format_args!(
            "<rect x=\"{left:.2}\" y=\"{top:.2}\" width=\"100%\" height=\"100%\" fill=\"{}\"/>\n",
            hex(colour)
        ));
    }
    put(format_args!("{under}"));
    let mut shapes = drawing.shapes.iter().peekable();
    while let Some(shape) = shapes.next() {
        match shape {
            Shape::Path { points, closed, fill, pen } => {
                put(format_args!(
                    "<path{} d=\"{}",
                    inked(*fill, *pen),
                    traced(points, *closed)
                ));
                // Lines of one pen are one path: a chart has thousands.
                while fill.is_none()
                    && let Some(Shape::Path { points, closed, fill: None, pen: next }) =
                        shapes.peek()
                    && next == pen
                {
                    put(format_args!("{}", traced(points, *closed)));
                    shapes.next();
                }
                put(format_args!("\"/>\n"));
            }
            Shape::Oval { middle: [x, y], radii: [a, b], turn_deg, fill, pen } => {
                let turn = match turn_deg {
                    0.0 => String::new(),
                    deg => format!(" transform=\"rotate({deg:.1} {x:.2} {y:.2})\""),
                };
                put(format_args!(
                    "<ellipse cx=\"{x:.2}\" cy=\"{y:.2}\" rx=\"{a:.2}\" ry=\"{b:.2}\"{}{turn}/>\n",
                    inked(*fill, *pen)
                ));
            }
            Shape::Words { writing, bold, from_start } => {
                put(format_args!("{}", written(writing, (*bold, *from_start), frame.fonts)));
            }
        }
    }
    put(format_args!("</svg>\n"));
    out
}

fn traced(points: &[[f32; 2]], closed: bool) -> String {
    let mut path = String::with_capacity(12 * points.len());
    for (i, [x, y]) in points.iter().enumerate() {
        let letter = if i == 0 { 'M' } else { 'L' };
        write!(path, "{letter}{x:.2} {y:.2}").unwrap_or_default();
    }
    if closed {
        path.push('Z');
    }
    path
}

fn inked(fill: Option<Rgb>, pen: Option<Pen>) -> String {
    let mut ink = fill.map_or_else(String::new, |fill| format!(" fill=\"{}\"", hex(fill)));
    if let Some(pen) = pen {
        let (colour, width) = (hex(pen.colour), pen.width);
        write!(ink, " stroke=\"{colour}\" stroke-width=\"{width:.3}\"").unwrap_or_default();
        if let Some(dash) = pen.dash {
            write!(ink, " stroke-dasharray=\"{dash:.2}\"").unwrap_or_default();
        }
    }
    ink
}

/// Words, whether they are bold and whether they begin at their place.
fn written(words: &Writing, (bold, from_start): (bool, bool), fonts: &str) -> String {
    let [x, y] = words.at;
    let turn = if words.upright {
        format!(" transform=\"rotate(-90 {x:.2} {y:.2})\"")
    } else {
        String::new()
    };
    let anchor = if from_start { "start" } else { "middle" };
    let weight = if bold { " font-weight=\"700\"" } else { "" };
    format!(
        "<text x=\"{x:.2}\" y=\"{y:.2}\" dy=\"0.35em\" text-anchor=\"{anchor}\" \
         font-family=\"{fonts}\" font-size=\"{:.2}\"{weight} fill=\"{}\"{turn}>{}</text>\n",
        words.height,
        hex(words.colour),
        escaped(&words.text)
    )
}

pub(crate) fn hex([r, g, b]: Rgb) -> String {
    format!("#{r:02x}{g:02x}{b:02x}")
}

/// Text as XML content or a quoted attribute holds it. Characters XML 1.0 forbids are left
/// out.
pub(crate) fn escaped(text: &str) -> String {
    let mut out = String::with_capacity(text.len());
    for c in text.chars() {
        match c {
            '&' => out.push_str("&amp;"),
            '<' => out.push_str("&lt;"),
            '>' => out.push_str("&gt;"),
            '"' => out.push_str("&quot;"),
            '\t' | '\n' => out.push(c),
            c if c.is_control() || matches!(c, '\u{FFFE}' | '\u{FFFF}') => {}
            c => out.push(c),
        }
    }
    out
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn names_are_printed_as_typed() {
        assert_eq!(escaped("a<b> & \"c\"\u{1}"), "a&lt;b&gt; &amp; &quot;c&quot;");
    }
}
