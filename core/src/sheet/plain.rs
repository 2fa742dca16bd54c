//! Texts of people and of the sheet made fit for where they are put.

/// User text kept to one line, control characters dropped.
pub(super) fn one_line(text: &str) -> String {
    text.split_whitespace()
        .map(|word| word.chars().filter(|c| !c.is_control()).collect::<String>())
        .filter(|word| !word.is_empty())
        .collect::<Vec<_>>()
        .join(" ")
}

/// A lexicon's code as a BCP 47 tag.
pub(super) fn language(code: &str) -> String {
    match code {
        "en-us" => "en-US".into(),
        "en-uk" => "en-GB".into(),
        other => other.into(),
    }
}

/// `text` on one line with Markdown's own characters escaped.
pub(super) fn escaped(text: &str) -> String {
    let mut out = String::with_capacity(text.len());
    // A space that does not break stays one.
    let breaks = |c: char| c.is_whitespace() && c != '\u{a0}';
    let words: Vec<&str> = text.split(breaks).filter(|word| !word.is_empty()).collect();
    for c in words.join(" ").chars() {
        if r"\`*_{}[]<>#|~&$!".contains(c) {
            out.push('\\');
        }
        if !c.is_control() {
            out.push(c);
        }
    }
    // A line that starts like a list, a rule or a numbered item would become one.
    if out.starts_with(['-', '+', '=']) || numbered(&out) {
        out.insert(0, '\u{200b}');
    }
    out
}

fn numbered(text: &str) -> bool {
    let digits = text.chars().take_while(char::is_ascii_digit).count();
    digits > 0 && text[digits..].starts_with(['.', ')'])
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn markup_prints_as_typed() {
        assert_eq!(escaped("#1 *best* [x](y) <b>"), r"\#1 \*best\* \[x\](y) \<b\>");
        assert!(escaped("1. first").starts_with('\u{200b}'));
        assert_eq!(escaped("(sc 2, inc) × 6"), "(sc 2, inc) × 6");
    }
}
