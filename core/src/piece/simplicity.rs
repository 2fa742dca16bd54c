//! Reads `simplicity`, and `ease` as files of version 1 spell it.

use std::fmt;

use serde::de::{Deserializer, Visitor};

/// Ease that version 1 gave every piece nobody had chosen one for.
const UNCHOSEN_EASE: f64 = 0.3;

/// `Some(0.5)` as it is written now, or the bare number that version 1 wrote: its default reads
/// as no choice.
pub(super) fn read<'de, D: Deserializer<'de>>(input: D) -> Result<Option<f64>, D::Error> {
    input.deserialize_any(Simplicity)
}

struct Simplicity;

impl<'de> Visitor<'de> for Simplicity {
    type Value = Option<f64>;

    fn expecting(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        f.write_str("a simplicity from 0 to 1")
    }

    fn visit_f64<E: serde::de::Error>(self, ease: f64) -> Result<Self::Value, E> {
        Ok(Some(ease).filter(|&e| e != UNCHOSEN_EASE))
    }

    fn visit_i64<E: serde::de::Error>(self, ease: i64) -> Result<Self::Value, E> {
        self.visit_f64(ease as f64)
    }

    fn visit_u64<E: serde::de::Error>(self, ease: u64) -> Result<Self::Value, E> {
        self.visit_f64(ease as f64)
    }

    fn visit_none<E: serde::de::Error>(self) -> Result<Self::Value, E> {
        Ok(None)
    }

    fn visit_some<D: Deserializer<'de>>(self, input: D) -> Result<Self::Value, D::Error> {
        serde::Deserialize::deserialize(input).map(Some)
    }
}
