//! Characters into lexemes: words, numbers and signs as people type them, folded so that odd
//! dashes, spaces, digits, quotes, accents and capitals all read alike, each with its place.

use std::borrow::Cow;

use crate::words::tree::Span;

/// What a lexeme is.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub(super) enum LexemeKind {
    Word,
    Number,
    /// Any other sign, folded.
    Sign(char),
    /// The end of a line.
    Newline,
}

/// A word, a number or a sign.
#[derive(Debug, Clone, PartialEq, Eq)]
pub(super) struct Lexeme<'t> {
    pub(super) shape: LexemeKind,
    /// Folded: lower case, no accents, plain signs.
    pub(super) text: Cow<'t, str>,
    /// Bytes of the text.
    pub(super) at: Span,
}

/// The sign that stands for two asterisks.
pub(super) const TWO_STARS: char = '⁑';

/// Those of `lexemes` that stand at `at`.
pub(super) fn within<'a, 't>(lexemes: &'a [Lexeme<'t>], at: &Span) -> &'a [Lexeme<'t>] {
    let from = lexemes.partition_point(|l| l.at.start < at.start);
    let to = lexemes.partition_point(|l| l.at.start < at.end);
    &lexemes[from..to.max(from)]
}

/// The lexemes of `text`, in order, in time linear in its length.
pub(super) fn lexemes(text: &str) -> Vec<Lexeme<'_>> {
    let mut found = Vec::with_capacity(text.len() / 3);
    let mut rest = text.char_indices().peekable();
    while let Some(&(start, raw)) = rest.peek() {
        let c = fold(raw);
        let mut end = start;
        let mut take_while = |want: &dyn Fn(char, Option<char>) -> bool| {
            while let Some(&(i, raw)) = rest.peek() {
                let next = text[i + raw.len_utf8()..].chars().next().map(fold);
                if !want(fold(raw), next) {
                    break;
                }
                end = i + raw.len_utf8();
                rest.next();
            }
        };
        let shape = if is_letter(c) {
            let seam = std::cell::Cell::new((0_usize, false));
            let elided = elision(&text[start..]);
            take_while(&|c, next| {
                if let Some(letters) = elided {
                    let (so_far, _) = seam.replace((seam.get().0 + 1, false));
                    return so_far <= letters;
                }
                let (so_far, was_lower) = seam.get();
                // “thereRnd 2:”: a line end was lost on the way here.
                let sewn = so_far > 1
                    && was_lower
                    && c.is_uppercase()
                    && next.is_some_and(char::is_lowercase);
                seam.set((so_far + 1, c.is_lowercase()));
                !sewn
                    && (is_letter(c)
                        || is_nothing(c)
                        || (c == '\'' && next.is_some_and(is_letter)))
            });

            LexemeKind::Word
        } else if c.is_ascii_digit() {
            take_while(&|c, next| {
                c.is_ascii_digit() || (c == '.' && next.is_some_and(|n| n.is_ascii_digit()))
            });
            LexemeKind::Number
        } else {
            rest.next();
            end = start + raw.len_utf8();
            let next = rest.peek().map(|&(_, raw)| fold(raw));
            let then = |sign: char| next == Some(sign);
            // “R5…7”
            let reaches = || {
                let digit = |c: Option<char>| c.is_some_and(|c| c.is_ascii_digit());
                digit(text[..start].chars().next_back()) && digit(next)
            };
            let (sign, two) = match c {
                '…' if reaches() => ('-', false),
                '\r' if then('\n') => ('\n', true),
                '*' if then('*') => (TWO_STARS, true),
                '-' | '=' if then('>') => ('→', true),
                _ => (c, false),
            };
            if two && let Some((i, raw)) = rest.next() {
                end = i + raw.len_utf8();
            }
            if is_newline(sign) {
                LexemeKind::Newline
            } else if sign.is_whitespace() || is_nothing(sign) {
                continue;
            } else {
                LexemeKind::Sign(sign)
            }
        };
        let mut text = folded(&text[start..end], shape);
        if text.ends_with('\'') {
            text = Cow::Owned(text.trim_end_matches('\'').to_owned());
        }
        found.push(Lexeme { shape, text, at: start..end });
    }
    found
}

fn folded(raw: &str, shape: LexemeKind) -> Cow<'_, str> {
    match shape {
        LexemeKind::Sign(c) => Cow::Owned(c.to_string()),
        LexemeKind::Newline => Cow::Borrowed("\n"),
        _ if raw.bytes().all(|b| b.is_ascii_lowercase() || b.is_ascii_digit() || b == b'.') => {
            Cow::Borrowed(raw)
        }
        _ => {
            let mut text = String::with_capacity(raw.len());
            for c in raw.chars().map(fold).filter(|&c| !is_nothing(c)) {
                match c {
                    'ß' | 'ẞ' => text.push_str("ss"),
                    'œ' | 'Œ' => text.push_str("oe"),
                    _ => text.extend(c.to_lowercase().map(without_accent)),
                }
            }
            Cow::Owned(text)
        }
    }
}

/// Letters of an elided word that `text` begins with: “l'anneau” is two words.
fn elision(text: &str) -> Option<usize> {
    let mut letters = text.chars().map(fold);
    let first = letters.next()?.to_ascii_lowercase();
    let second = letters.next()?.to_ascii_lowercase();
    let third = letters.next()?;
    match (first, second, third) {
        ('l' | 'd' | 'n' | 's' | 'j' | 'c', '\'', next) if is_letter(next) => Some(1),
        ('q', 'u', '\'') if letters.next().is_some_and(is_letter) => Some(2),
        _ => None,
    }
}

fn is_letter(c: char) -> bool {
    c.is_alphabetic()
}

fn is_newline(c: char) -> bool {
    matches!(c, '\n' | '\r' | '\u{b}' | '\u{c}' | '\u{85}' | '\u{2028}' | '\u{2029}')
}

/// Characters that do not show: byte order marks, joiners, soft hyphens, the accents of
/// decomposed letters.
fn is_nothing(c: char) -> bool {
    matches!(c, '\u{feff}' | '\u{ad}' | '\u{200b}'..='\u{200f}' | '\u{2060}'
        | '\u{300}'..='\u{36f}' | '\u{fe0e}' | '\u{fe0f}')
}

/// The plain character for the many that people and programs put in its place.
fn fold(c: char) -> char {
    match c {
        // Full-width forms lie at a fixed distance from the plain ones.
        '\u{ff01}'..='\u{ff5e}' => char::from_u32(c as u32 - 0xfee0)
            .map_or(c, |plain| if plain == '~' { '-' } else { plain }),
        '‐' | '‑' | '‒' | '–' | '—' | '―' | '−' | '﹘' | '﹣' | '~' => '-',
        '✕' | '✖' | '⨯' | '╳' => '×',
        '∗' | '⁎' | '✱' | '﹡' => '*',
        '‘' | '’' | '‛' | '′' | '`' | '´' => '\'',
        '“' | '”' | '„' | '″' | '«' | '»' => '"',
        '➜' | '➔' | '⇒' | '➝' | '➡' | '⟶' | '⟹' | '⇨' | '➙' | '➛' | '➞' | '↦' => {
            '→'
        }
        '【' | '〔' | '「' => '[',
        '】' | '〕' | '」' => ']',
        '、' => ',',
        '。' => '.',
        '•' | '▢' | '☐' | '☑' | '☒' | '✓' | '✔' | '✅' | '□' | '■' | '▪' | '▫' | '○' | '●'
        | '◦' | '‣' | '·' | '►' | '▸' | '◻' | '◯' | '❑' | '❏' => '•',
        // Small pictures stand where bullets do.
        '\u{2600}'..='\u{27bf}' | '\u{2b00}'..='\u{2bff}' | '\u{1f300}'..='\u{1faff}' => '•',
        _ => c,
    }
}

fn without_accent(c: char) -> char {
    match c {
        'à' | 'á' | 'â' | 'ã' | 'ä' | 'å' => 'a',
        'ç' => 'c',
        'è' | 'é' | 'ê' | 'ë' => 'e',
        'ì' | 'í' | 'î' | 'ï' => 'i',
        'ñ' => 'n',
        'ò' | 'ó' | 'ô' | 'õ' | 'ö' => 'o',
        'ù' | 'ú' | 'û' | 'ü' => 'u',
        _ => c,
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    fn texts(text: &str) -> Vec<String> {
        lexemes(text).into_iter().map(|l| l.text.into_owned()).collect()
    }

    #[test]
    fn odd_characters_read_as_plain_ones() {
        assert_eq!(texts("Ｒ３：\u{a0}６\u{2009}ｓｃ"), ["r", "3", ":", "6", "sc"]);
        assert_eq!(texts("5–9—3‑2−1"), ["5", "-", "9", "-", "3", "-", "2", "-", "1"]);
        assert_eq!(texts("\u{feff}Stä\u{ad}bchen l’air"), ["stabchen", "l", "air"]);
        assert_eq!(texts("re\u{301}péter"), ["repeter"]);
        assert_eq!(texts("a\r\nb\rc\u{2028}d"), ["a", "\n", "b", "\n", "c", "\n", "d"]);
        assert_eq!(texts("**x6 -> 3.5"), ["⁑", "x", "6", "→", "3.5"]);
    }

    #[test]
    fn places_are_bytes_of_the_text() {
        let text = "É–6 sc";
        let found = lexemes(text);
        assert_eq!(&text[found[0].at.clone()], "É");
        assert_eq!(&text[found[1].at.clone()], "–");
        assert_eq!(&text[found[3].at.clone()], "sc");
    }
}
