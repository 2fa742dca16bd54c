//! Texts as pages can set them: numbers stay with their words, long words may break, and a box
//! stands for what no face has.

use serde_json::Value;
use unicode_normalization::UnicodeNormalization as _;

use crate::fonts::{Fonts, Missing};

/// A word longer than this may be broken every so many characters.
const LONG_WORD: usize = 28;
const BREAK_EVERY: usize = 12;
/// What stands for a character that no face has; the template draws a box there.
const BOX: char = '\u{FFFD}';

/// A text as the head or foot of a page has it: on one line, cut short where it is long.
pub(crate) fn running(text: &str, most: usize) -> String {
    let plain: Vec<char> = text.chars().filter(|&c| c != '\u{200B}').collect();
    if plain.len() <= most {
        return plain.into_iter().collect();
    }
    let cut: String = plain.into_iter().take(most - 3).collect();
    format!("{}...", cut.trim_end())
}

/// Keeps a number on the line of the word before it, in every text.
pub(crate) fn numbers_kept(data: &mut Value) {
    match data {
        Value::Array(items) => items.iter_mut().for_each(numbers_kept),
        Value::String(text) => *text = number_kept(text),
        Value::Object(_) | Value::Null | Value::Bool(_) | Value::Number(_) => {}
    }
}

fn number_kept(text: &str) -> String {
    let letters: Vec<char> = text.chars().collect();
    let kept = letters.iter().enumerate().map(|(i, &c)| {
        let number = letters.get(i + 1).is_some_and(char::is_ascii_digit);
        if c == ' ' && number { '\u{A0}' } else { c }
    });
    kept.collect()
}

/// Keeps a number on the line of the word before it, in the words of the rounds.
pub(crate) fn kept_together(data: &mut Value) {
    match data {
        Value::Array(items) => items.iter_mut().for_each(kept_together),
        Value::Object(fields) => {
            for (name, field) in fields {
                match field {
                    Value::String(text) if name == "text" => {
                        *text = number_kept(text);
                    }
                    _ => kept_together(field),
                }
            }
        }
        Value::Null | Value::Bool(_) | Value::Number(_) | Value::String(_) => {}
    }
}

/// Makes every text in `value` one that can be set: composed, without controls, with a box
/// for what no face has, and with places to break in words too long for a line.
pub(crate) fn settable(value: &mut Value, fonts: &Fonts, missing: &mut Missing) {
    match value {
        Value::String(text) => *text = set_text(text, fonts, missing),
        Value::Array(items) => items.iter_mut().for_each(|v| settable(v, fonts, missing)),
        Value::Object(fields) => fields.values_mut().for_each(|v| settable(v, fonts, missing)),
        Value::Null | Value::Bool(_) | Value::Number(_) => {}
    }
}

fn set_text(text: &str, fonts: &Fonts, missing: &mut Missing) -> String {
    let mut out = String::with_capacity(text.len());
    for (i, word) in text.split(' ').enumerate() {
        if i > 0 {
            out.push(' ');
        }
        let letters: Vec<char> = word.nfc().filter(|&c| !is_unseen(c)).collect();
        let breaks = letters.len() > LONG_WORD;
        for (n, &c) in letters.iter().enumerate() {
            if breaks && n > 0 && n % BREAK_EVERY == 0 {
                out.push('\u{200B}');
            }
            if c.is_whitespace() || fonts.has(c) {
                out.push(c);
            } else {
                missing.note(c);
                out.push(BOX);
            }
        }
    }
    out
}

/// Controls, and characters that only change others: directions, joiners, variants.
fn is_unseen(c: char) -> bool {
    c.is_control()
        || typst::text::is_default_ignorable(c)
        || matches!(c, '\u{FFF9}'..='\u{FFFC}' | '\u{1F3FB}'..='\u{1F3FF}')
}
