//! One kind of error: a line that says where, what is wrong, and how to mend it.

/// Longest part of an error, in characters: whatever it quotes, it is a line to be read.
const LONGEST_PART: usize = 400;

/// A refusal, worded for the person at the bench: the place, what is wrong there, the mend.
///
/// Its `Display` is one line, `place: what; mend`, with no final stop, so that callers can
/// put a file name in front of it.
#[derive(Debug, Clone, PartialEq, Eq, thiserror::Error)]
#[error("{place}: {what}; {mend}")]
pub struct Error {
    /// Where: a field, a knot, a line of a file.
    pub place: String,
    /// What is wrong there.
    pub what: String,
    /// What to do about it.
    pub mend: String,
    /// The number at fault as bits, by which its line in a project file is found.
    number: Option<u64>,
}

impl Error {
    /// An error at `place`, saying `what` is wrong and how to `mend` it.
    pub fn new(
        place: impl Into<String>,
        what: impl Into<String>,
        mend: impl Into<String>,
    ) -> Self {
        let plain = |text: String| plain(&text, LONGEST_PART);
        Self {
            place: plain(place.into()),
            what: plain(what.into()),
            mend: plain(mend.into()),
            number: None,
        }
    }

    /// The number at fault, where it was a number out of range.
    pub(crate) fn number(&self) -> Option<f64> {
        self.number.map(f64::from_bits)
    }

    /// The same error seen from further out: `outer` is put before its place.
    #[must_use]
    pub fn within(mut self, outer: &str) -> Self {
        self.place = format!("{}, {}", plain(outer, LONGEST_PART), self.place);
        self
    }
}

/// Longest name of anything, in characters.
pub const LONGEST_NAME: usize = 400;

/// Longest text of a project, its notes say, in characters.
pub const LONGEST_TEXT: usize = 100_000;

/// Refuses a text of more than `most` characters; the error names `place`.
pub(crate) fn no_longer(place: &str, text: &str, most: usize) -> Result<()> {
    // Each character has one byte at least, which tells most texts without counting.
    if text.len() <= most || text.chars().count() <= most {
        return Ok(());
    }
    let what = format!("it is longer than {most} characters");
    Err(Error::new(place, what, "shorten it"))
}

/// `text` as it can be shown in one line anywhere, at most `longest` characters of it: control
/// characters, and those that turn the direction of writing, stand as their escapes, since a
/// terminal would obey them.
pub fn plain(text: &str, longest: usize) -> String {
    let mut out = String::new();
    for (i, c) in text.chars().enumerate() {
        if i == longest {
            out.push('…');
            break;
        }
        match c {
            '\n' | '\r' | '\t' => out.push(' '),
            c if is_unseen(c) => out.extend(c.escape_default()),
            c => out.push(c),
        }
    }
    out
}

/// Whether a terminal obeys `c` instead of showing it, or writes on in another direction.
pub(crate) fn is_unseen(c: char) -> bool {
    c.is_control() || matches!(c, '\u{202a}'..='\u{202e}' | '\u{2066}'..='\u{2069}')
}

/// What the fallible functions of this crate return.
pub type Result<T> = std::result::Result<T, Error>;

/// `value`, if it is finite and within `low..=high`; otherwise an error that names `place`
/// and the range. NaN and infinities are refused.
pub(crate) fn within(place: &str, value: f64, low: f64, high: f64, unit: &str) -> Result<f64> {
    if value.is_finite() && (low..=high).contains(&value) {
        return Ok(value);
    }
    let unit = if unit.is_empty() { String::new() } else { format!(" {unit}") };
    Err(Error {
        number: Some(value.to_bits()),
        ..Error::new(
            place,
            format!("{value}{unit} is out of range"),
            format!("give a number from {low} to {high}{unit}"),
        )
    })
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn what_an_error_quotes_cannot_command_a_terminal_nor_fill_it() {
        let name = format!("\u{1b}]0;gone\u{7}\u{202e}{}\n", "x".repeat(10_000_000));
        let error = Error::new(&name, format!("“{name}” is wrong"), "mend it").within(&name);
        let line = error.to_string();
        assert!(line.chars().all(|c| !is_unseen(c)), "{}", line.len());
        assert!(line.len() < 3000, "{}", line.len());
        assert!(line.contains("\\u{1b}]0;gone\\u{7}\\u{202e}x"), "{line}");
        assert_eq!(plain("a\r\nb", 9), "a  b");
    }
}
