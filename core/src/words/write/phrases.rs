//! What stands around the terms of a lexicon: word order, small words, whole sentences. One
//! set a language, as data.

use std::sync::OnceLock;

use serde::Deserialize;

use crate::words::lexicon::Lexicon;
use crate::words::tree::StitchKind;

/// A phrase for one and a phrase for several.
#[derive(Debug, Clone, PartialEq, Eq, Deserialize)]
#[serde(deny_unknown_fields)]
pub struct OneMany {
    /// For one.
    pub one: String,
    /// For several.
    pub many: String,
}

impl OneMany {
    /// The phrase for `count`.
    pub fn of(&self, count: u32) -> &str {
        if count == 1 { &self.one } else { &self.many }
    }
}

/// The phrases of one language. Names in braces stand for what is filled in: `{n}`,
/// `{many}`, `{first}`, `{last}`, `{total}` are numbers, `{kind}` is a stitch, the rest are
/// terms of the lexicon.
#[derive(Debug, Clone, PartialEq, Eq, Deserialize)]
#[serde(deny_unknown_fields)]
pub struct Phrases {
    /// The language, in English.
    pub language: String,
    /// Whether nouns keep their capital inside a sentence.
    pub nouns_capital: bool,
    /// Whether a number stands before its stitch (`2 fM`), and is said where it is 1.
    pub number_first: bool,
    /// What stands before a colon: a space that does not break, or nothing.
    pub before_colon: String,
    /// Whether decimals stand after a comma.
    pub decimal_comma: bool,
    /// The letter for a round, where one is in use.
    pub letter: Option<String>,
    /// A round's number and word; a range's.
    pub heading: OneMany,
    /// What makes a number an ordinal, by its last digit; the first also for all others.
    pub ordinal: Vec<String>,
    /// One stitch in each of the next few.
    pub next: OneMany,
    /// Several stitches in one.
    pub into: String,
    /// Several stitches in each of the next few.
    pub into_each_of: String,
    /// Stitches worked together.
    pub together: String,
    /// Added where stitches are worked together through their front loops.
    pub through_front: String,
    /// Stitches in a ring.
    pub ring: String,
    /// Chains.
    pub chains: String,
    /// Stitches in a chain, counted from the hook.
    pub into_chain: String,
    /// Stitches in the last chain.
    pub into_last_chain: String,
    /// Going on along the other side of a chain.
    pub other_side: String,
    /// Stitches left unworked.
    pub skipped: String,
    /// Another yarn.
    pub colour: String,
    /// A plain round.
    pub in_each: String,
    /// A plain round, in the shorter form.
    pub all_plain: String,
    /// After what is worked to the end of a round.
    pub around: String,
    /// A repeat between asterisks; `{n}` counts on from the first working.
    pub star: String,
    /// A repeat between asterisks, to the end of the round.
    pub star_around: String,
    /// Before a round worked in one loop.
    pub only: String,
    /// How a spiral is worked.
    pub spiral: String,
    /// How joined rounds are worked, each joined in its first stitch.
    pub joined_first: String,
    /// The same, joined in the top of the chain that counts as the first stitch.
    pub joined_top: String,
    /// “first”, as it is said of single, half double and double crochet.
    pub first: [String; 3],
    /// The chain that begins a joined round is its first stitch.
    pub chain_counts: OneMany,
    /// That chain is no stitch.
    pub chain_does_not_count: String,
    /// For left-handed makers.
    pub left_handed: String,
    /// A foundation chain joined into a ring.
    pub foundation_ring: String,
    /// A foundation chain worked along both its sides.
    pub foundation: String,
    /// Stuffing after the last round.
    pub stuff_last: String,
    /// Stuffing a part that no hand reaches later.
    pub stuff_part: String,
    /// Stuffing little by little from here on.
    pub stuff_as_you_go: String,
    /// Stuffing before a piece is drawn shut.
    pub stuff_then_close: String,
    /// Stuffing before a piece is sewn on.
    pub stuff_then_sew: String,
    /// Closing an oval.
    pub close_flat: String,
    /// Drawing the last round shut.
    pub close_drawn: String,
    /// Leaving the last round open.
    pub close_open: String,
    /// The same where rounds are joined.
    pub close_joined: String,
    /// Said of words that no native reader has checked.
    pub unchecked: String,
    /// Above the list of abbreviations.
    pub abbreviations: String,
    /// What an increase is.
    pub increase_means: String,
    /// What a decrease is.
    pub decrease_means: String,
    /// How an invisible decrease is worked.
    pub invisible_means: String,
    /// What stitches worked together are.
    pub together_means: String,
    /// Stitches in all.
    pub total: OneMany,
    /// A size, where what it works is said apart.
    pub size: String,
}

impl Phrases {
    /// The phrases of the lexicon, or of its language; English for a language without any.
    pub fn of(lexicon: &Lexicon) -> &'static Self {
        let all = all();
        if let Some((_, own)) = all.iter().find(|(code, _)| *code == lexicon.code) {
            return own;
        }
        let language = lexicon.code.split('-').next().unwrap_or_default();
        all.iter().find(|(code, _)| *code == language).map_or(&all[0].1, |(_, phrases)| phrases)
    }

    /// “first”, as it is said of `kind`.
    pub(super) fn first_of(&self, kind: StitchKind) -> &str {
        match kind {
            StitchKind::HalfDouble => &self.first[1],
            StitchKind::Double => &self.first[2],
            StitchKind::Single | StitchKind::Slip | StitchKind::Treble => &self.first[0],
        }
    }

    /// The ordinal ending of `n`: `2nd`, `11th`, `3.`.
    pub(super) fn ordinal_end(&self, n: u32) -> &str {
        let teen = (11..=13).contains(&(n % 100));
        let digit = if teen { 0 } else { (n % 10) as usize };
        self.ordinal.get(digit).or(self.ordinal.first()).map_or("", String::as_str)
    }
}

/// Every language, English first.
fn all() -> &'static [(&'static str, Phrases); 5] {
    static ALL: OnceLock<[(&str, Phrases); 5]> = OnceLock::new();
    ALL.get_or_init(|| {
        [
            ("en", include_str!("../../../../assets/words/phrases/en.ron")),
            ("de", include_str!("../../../../assets/words/phrases/de.ron")),
            ("fr", include_str!("../../../../assets/words/phrases/fr.ron")),
            ("es", include_str!("../../../../assets/words/phrases/es.ron")),
            ("es-419", include_str!("../../../../assets/words/phrases/es-419.ron")),
        ]
        .map(|(code, text)| (code, ron::from_str(text).expect("the built-in phrases parse")))
    })
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn english_ordinals_end_as_they_are_said() {
        let english = &all()[0].1;
        let said = |n| format!("{n}{}", english.ordinal_end(n));
        assert_eq!(
            [1, 2, 3, 4, 11, 12, 13, 21, 102, 111, 120].map(said),
            [
                "1st", "2nd", "3rd", "4th", "11th", "12th", "13th", "21st", "102nd", "111th",
                "120th"
            ]
        );
    }
}
