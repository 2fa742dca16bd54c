//! Words of a web page.

use super::lines::Lines;

/// Longest name of an entity.
const LONGEST_ENTITY: usize = 10;

/// Longest tag, bytes.
const LONGEST_TAG: usize = 8192;

/// Whether `text` is a web page, or a piece of one as it is copied.
pub(super) fn is_page(text: &str) -> bool {
    let start = text.trim_start_matches(|c: char| c.is_whitespace() || c == '\u{feff}');
    let head: String = start.chars().take(4096).collect::<String>().to_ascii_lowercase();
    let tags = ["<html", "<body", "<p>", "<p ", "<div", "<br", "<table", "<ol", "<ul", "<h1"];
    let pages = ["<!doctype html", "<html", "<meta", "<head"];
    pages.iter().any(|p| head.starts_with(p))
        || start.starts_with('<') && tags.iter().any(|t| head.contains(t))
}

/// A list that is open: how far it has counted, if it counts.
type List = Option<u32>;

/// The words of `page`, a line a paragraph, row or item of a list; scripts, styles and remarks
/// are left out. Items of counted lists keep their numbers: rounds are often listed so.
pub(super) fn text(page: &str) -> String {
    let mut lines = Lines::default();
    let mut lists: Vec<List> = Vec::new();
    let mut rest = page;
    // Inside `pre` the line ends are those of the text.
    let mut kept = false;
    while !rest.is_empty() {
        let at = rest.find('<').unwrap_or(rest.len());
        let words = unescaped(&rest[..at]);
        if kept {
            for (i, line) in words.split('\n').enumerate() {
                if i > 0 {
                    lines.end();
                }
                lines.words(line);
            }
        } else {
            lines.words(&words);
        }
        rest = &rest[at..];
        if rest.is_empty() {
            break;
        }
        if let Some(remark) = rest.strip_prefix("<!--") {
            rest = remark.find("-->").map_or("", |end| &remark[end + 3..]);
            continue;
        }
        let Some(end) = tag_end(rest) else {
            lines.words("<");
            rest = &rest[1..];
            continue;
        };
        let inside = &rest[1..end];
        rest = &rest[end + 1..];
        let closes = inside.starts_with('/');
        let name: String = inside
            .trim_start_matches('/')
            .chars()
            .take_while(char::is_ascii_alphanumeric)
            .map(|c| c.to_ascii_lowercase())
            .collect();
        if name.is_empty() && !inside.starts_with('!') && !inside.starts_with('?') {
            // “3 < 4” is no tag.
            lines.words("<");
            lines.words(&unescaped(inside));
            lines.words(">");
            continue;
        }
        match (name.as_str(), closes) {
            ("script" | "style" | "title" | "noscript" | "template" | "svg", false)
                if !inside.ends_with('/') =>
            {
                rest = behind(rest, &name);
            }
            ("br", _) => lines.end(),
            ("pre" | "textarea", closes) => {
                kept = !closes;
                lines.fresh();
            }
            ("ol", false) => {
                let start = attribute(inside, "start").and_then(|n| n.parse().ok());
                lists.push(Some(start.unwrap_or(1)));
                lines.fresh();
            }
            ("ul", false) => {
                lists.push(None);
                lines.fresh();
            }
            ("ol" | "ul", true) => {
                lists.pop();
                lines.fresh();
            }
            ("li", false) => {
                lines.fresh();
                match lists.last_mut() {
                    Some(Some(n)) => {
                        lines.words(&format!("{n}. "));
                        *n = n.saturating_add(1);
                    }
                    _ => lines.words("- "),
                }
            }
            ("td" | "th", true) => lines.gap(),
            ("p" | "h1" | "h2" | "h3" | "h4" | "h5" | "h6" | "table", _) => lines.fresh(),
            (
                "div" | "li" | "tr" | "section" | "article" | "header" | "footer" | "main"
                | "blockquote" | "dt" | "dd" | "dl" | "figure" | "figcaption" | "hr" | "form"
                | "body" | "nav" | "aside" | "caption" | "option",
                _,
            ) => lines.fresh(),
            _ => {}
        }
    }
    lines.done()
}

/// Where the tag that `rest` begins with ends; quoted values may hold “>”.
fn tag_end(rest: &str) -> Option<usize> {
    let mut quote = None;
    let mut assigned = false;
    for (i, b) in rest.bytes().enumerate().take(LONGEST_TAG).skip(1) {
        match (quote, b) {
            (Some(q), b) if b == q => quote = None,
            (Some(_), _) => {}
            (None, b'"' | b'\'') if assigned => quote = Some(b),
            (None, b'>') => return Some(i),
            (None, b'<') => return None,
            _ => {}
        }
        assigned = b == b'=' || assigned && b.is_ascii_whitespace();
    }
    None
}

/// What stands behind the end of the element `name`.
fn behind<'a>(rest: &'a str, name: &str) -> &'a str {
    let mut from = 0;
    while let Some(at) = rest[from..].find("</") {
        let at = from + at;
        let after = &rest[at + 2..];
        if after.get(..name.len()).is_some_and(|n| n.eq_ignore_ascii_case(name)) {
            return after.find('>').map_or("", |end| &after[end + 1..]);
        }
        from = at + 2;
    }
    ""
}

/// The value of an attribute.
fn attribute<'a>(tag: &'a str, name: &str) -> Option<&'a str> {
    let at = tag.find(&format!("{name}="))? + name.len() + 1;
    let value = tag[at..].trim_start_matches(['"', '\'']);
    value.split(['"', '\'', ' ', '/']).next()
}

/// Entities as the characters they stand for.
fn unescaped(words: &str) -> String {
    let mut text = String::with_capacity(words.len());
    let mut rest = words;
    while let Some(at) = rest.find('&') {
        text.push_str(&rest[..at]);
        rest = &rest[at..];
        let end = rest.bytes().take(LONGEST_ENTITY + 2).position(|b| b == b';');
        match end.and_then(|end| Some((entity(rest.get(1..end)?)?, end))) {
            Some((c, end)) => {
                text.push(c);
                rest = &rest[end + 1..];
            }
            None => {
                text.push('&');
                rest = &rest[1..];
            }
        }
    }
    text.push_str(rest);
    text
}

fn entity(name: &str) -> Option<char> {
    if let Some(number) = name.strip_prefix('#') {
        let hex = number.strip_prefix(['x', 'X']);
        let code = match hex {
            Some(hex) => u32::from_str_radix(hex, 16).ok()?,
            None => number.parse().ok()?,
        };
        return char::from_u32(code).filter(|c| *c != '\0');
    }
    Some(match name {
        "amp" => '&',
        "lt" => '<',
        "gt" => '>',
        "quot" => '"',
        "apos" | "rsquo" => '\'',
        "nbsp" => '\u{a0}',
        "shy" => '\u{ad}',
        "ndash" => '–',
        "mdash" => '—',
        "hellip" => '…',
        "times" => '×',
        "rarr" => '→',
        "bull" | "middot" => '•',
        "laquo" => '«',
        "raquo" => '»',
        "ldquo" => '“',
        "rdquo" => '”',
        "bdquo" => '„',
        "lsquo" => '‘',
        "deg" => '°',
        "ordf" => 'ª',
        "ordm" => 'º',
        "frac12" => '½',
        "frac14" => '¼',
        "auml" => 'ä',
        "ouml" => 'ö',
        "uuml" => 'ü',
        "Auml" => 'Ä',
        "Ouml" => 'Ö',
        "Uuml" => 'Ü',
        "szlig" => 'ß',
        "agrave" => 'à',
        "aacute" => 'á',
        "acirc" => 'â',
        "ccedil" => 'ç',
        "egrave" => 'è',
        "eacute" => 'é',
        "ecirc" => 'ê',
        "euml" => 'ë',
        "icirc" => 'î',
        "iuml" => 'ï',
        "iacute" => 'í',
        "ntilde" => 'ñ',
        "ocirc" => 'ô',
        "oacute" => 'ó',
        "oelig" => 'œ',
        "ugrave" => 'ù',
        "uacute" => 'ú',
        "ucirc" => 'û',
        "iexcl" => '¡',
        "iquest" => '¿',
        "Eacute" => 'É',
        "Agrave" => 'À',
        "Ccedil" => 'Ç',
        "Ntilde" => 'Ñ',
        _ => return None,
    })
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn paragraphs_rows_and_items_are_lines() {
        let page = "<html><head><title>Toys</title><style>p{}</style></head><body>\n\
            <h1>Pebble</h1><ol><li>6 sc in ring <b>(6)</b></li><li>inc x&nbsp;6 (12)</li></ol>\
            <table><tr><td>Rnd 3</td><td>(1&#32;sc, inc) &times; 6</td><td>18</td></tr></table>\
            <p>Stuff &amp; close.<br/>Done<!-- <p>not this -->!</p>\
            <script>if (a < b) { }</script></body></html>";
        let words = "Pebble\n1. 6 sc in ring (6)\n2. inc x 6 (12)\nRnd 3 (1 sc, inc) × 6 18\n\
            Stuff & close.\nDone!\n";
        assert!(is_page(page));
        assert_eq!(text(page), words);
    }

    #[test]
    fn what_is_no_page_is_none() {
        assert!(!is_page("<sc 2, inc> x 6 (18)"));
        assert!(!is_page("Rnd 1: 6 sc (6) <br>"));
        for broken in
            ["<p", "<p class='", "<!--", "<script>", "&#xffffffff;&;&", "<ol><li", "</"]
        {
            let _ends = text(broken);
        }
        assert_eq!(text("<p>5 < 6 &unknown; 7</p>"), "5 < 6 &unknown; 7\n");
    }
}
