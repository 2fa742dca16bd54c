//! One kind of error: a line that says where, what is wrong, and how to mend it.

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
        Self { place: place.into(), what: what.into(), mend: mend.into(), number: None }
    }

    /// The number at fault, where it was a number out of range.
    pub(crate) fn number(&self) -> Option<f64> {
        self.number.map(f64::from_bits)
    }

    /// The same error seen from further out: `outer` is put before its place.
    #[must_use]
    pub fn within(mut self, outer: &str) -> Self {
        self.place = format!("{outer}, {}", self.place);
        self
    }
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
