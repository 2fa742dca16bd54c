//! A scene as SVG 1.1 text: whole in itself, with a title and a description for those who
//! cannot see it.

use std::fmt::Write as _;

use super::{Rgb, Scene};

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
}

/// The scene as the text of an SVG file.
pub fn svg(scene: &Scene, frame: &Frame<'_>) -> String {
    let [low, high] = scene.bounds();
    let (left, top) = (low[0] - frame.margin, low[1] - frame.margin);
    let (width, height) =
        (high[0] - low[0] + 2.0 * frame.margin, high[1] - low[1] + 2.0 * frame.margin);
    let mut out = String::with_capacity(64 * scene.polygons().len() + 1024);
    // Writing to a String cannot fail.
    let mut put = |line: std::fmt::Arguments<'_>| out.write_fmt(line).unwrap_or_default();
    put(format_args!(
        "<svg xmlns=\"http://www.w3.org/2000/svg\" version=\"1.1\" role=\"img\" \
         aria-labelledby=\"title desc\" width=\"{width:.0}\" height=\"{height:.0}\" \
         viewBox=\"{left:.2} {top:.2} {width:.2} {height:.2}\">\n"
    ));
    put(format_args!("<title id=\"title\">{}</title>\n", escaped(frame.title)));
    put(format_args!("<desc id=\"desc\">{}</desc>\n", escaped(frame.description)));
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
        let [x, y] = words.at;
        let turn = if words.upright {
            format!(" transform=\"rotate(-90 {x:.1} {y:.1})\"")
        } else {
            String::new()
        };
        put(format_args!(
            "<text x=\"{x:.1}\" y=\"{y:.1}\" dy=\"0.35em\" text-anchor=\"middle\" \
             font-family=\"{}\" font-size=\"{:.1}\" fill=\"{}\"{turn}>{}</text>\n",
            frame.fonts,
            words.height,
            hex(words.colour),
            escaped(&words.text)
        ));
    }
    put(format_args!("</svg>\n"));
    out
}

fn hex([r, g, b]: Rgb) -> String {
    format!("#{r:02x}{g:02x}{b:02x}")
}

/// Text as XML content or a quoted attribute holds it. Characters XML 1.0 forbids are left
/// out.
fn escaped(text: &str) -> String {
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
