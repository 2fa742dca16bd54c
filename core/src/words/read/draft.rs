//! A line while the text is read: what it says, before it is judged which reading is meant.

use super::heading_range::Heading;
use super::layers::Layers;
use super::readings::{Understood, others};
use super::round::LineReading;
use super::token::Token;
use crate::words::tree::{Line, Placed, Span, StitchKind};

/// A line of the text.
#[derive(Debug)]
pub(super) struct DraftLine {
    /// What it is, or what it is if it is no round.
    pub(super) line: Line,
    pub(super) at: Span,
    pub(super) name: Name,
    /// What of it could not be read, if it is no round.
    pub(super) unread: Vec<Span>,
    /// Whether it names a ring.
    pub(super) ring: bool,
    /// What it says if it is a round.
    pub(super) draft: Option<Draft>,
}

/// How sure it is that words are a name, if rounds follow.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub(super) enum Name {
    /// They look like a heading: “HEAD”, “Body:”, “Ear (make 2)”.
    Marked,
    /// They are short, and name a piece only right above its first round.
    Plain,
    /// They head a part of the pattern that is no piece: “Materials”.
    Section,
    /// They are a sentence.
    No,
}

/// A line that may be a round.
#[derive(Debug)]
pub(super) struct Draft {
    /// Its heading; none where it has neither a number nor a word for a round.
    pub(super) heading: Option<Heading>,
    /// Whether what follows the heading is work.
    pub(super) heads: bool,
    /// Whether it looks like a round though it has no heading.
    pub(super) stands_alone: bool,
    /// Its work, prepared, what stands beside it taken off.
    pub(super) tokens: Vec<Token>,
    pub(super) layers: Layers,
    /// Its work as it stands.
    pub(super) worked: LineReading,
    /// Kind of stitch where none is named.
    pub(super) kind: StitchKind,
    /// Set by the judge: its work is certain and does not come out.
    pub(super) disputed: bool,
    /// Set by the judge, where its work is disputed: the count that the next round speaks for.
    pub(super) goes_on: Option<u32>,
    /// Set by the judge: how far it goes is left to the maker.
    pub(super) open: bool,
    others: Option<Vec<Understood>>,
}

impl Draft {
    pub(super) fn new(
        heading: Option<Heading>,
        tokens: Vec<Token>,
        layers: Layers,
        worked: LineReading,
        kind: StitchKind,
    ) -> Self {
        Self {
            heading,
            heads: false,
            stands_alone: false,
            tokens,
            layers,
            worked,
            kind,
            disputed: false,
            goes_on: None,
            open: false,
            others: None,
        }
    }

    /// How many rounds it stands for.
    pub(super) fn many(&self) -> u32 {
        let by_number =
            self.heading.map_or(1, |h| h.last.saturating_sub(h.first).saturating_add(1));
        let numbered = self.heading.is_some_and(|h| h.numbered);
        match &self.layers.told {
            Some(told) if !numbered && by_number == 1 => told.it.clamp(1, 500),
            _ => by_number,
        }
    }

    /// The count it states.
    pub(super) fn stated(&self) -> Option<Placed<u32>> {
        self.worked.stated.clone().or_else(|| self.layers.early.clone())
    }

    /// The readings beside the one as it stands.
    pub(super) fn others(&mut self, text: &str) -> &[Understood] {
        let Self { others: known, tokens, worked, kind, .. } = self;
        known.get_or_insert_with(|| others(tokens, worked, text, *kind))
    }
}
