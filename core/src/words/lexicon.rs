//! The words of one language and set of terms, as data: what the writer prints and what the
//! reader accepts. Tokens mean what they mean in one lexicon only; nothing is looked up
//! across languages.

use std::sync::OnceLock;

use serde::Deserialize;

use super::tree::StitchKind;

/// One trade term.
#[derive(Debug, Clone, PartialEq, Eq, Deserialize)]
#[serde(deny_unknown_fields)]
pub struct Term {
    /// The abbreviation to print, where one is in use; the words otherwise.
    #[serde(default)]
    pub short: Option<String>,
    /// The word to print for one.
    pub one: String,
    /// The word to print for several.
    pub many: String,
    /// What else is read as this term.
    #[serde(default)]
    pub also: Vec<String>,
}

impl Term {
    /// The abbreviation, or the word for `count` where there is none.
    pub fn brief(&self, count: u32) -> &str {
        self.short.as_deref().unwrap_or(if count == 1 { &self.one } else { &self.many })
    }

    /// Every form that is read as this term.
    pub fn forms(&self) -> impl Iterator<Item = &str> {
        let own = [self.one.as_str(), self.many.as_str()];
        let also = self.also.iter().map(String::as_str);
        self.short.as_deref().into_iter().chain(own).chain(also)
    }
}

/// The words of one language and set of terms.
#[derive(Debug, Clone, PartialEq, Eq, Deserialize)]
#[serde(deny_unknown_fields)]
pub struct Lexicon {
    /// `en-us`, `en-uk`, `de`, `fr`, `es`, `es-419` (Latin America, UN M49).
    pub code: String,
    /// Its name in itself.
    pub name: String,
    /// Whether a native reader has checked it.
    pub checked: bool,
    /// Slip stitch.
    pub slip: Term,
    /// US single crochet.
    pub single: Term,
    /// US half double crochet.
    pub half_double: Term,
    /// US double crochet.
    pub double: Term,
    /// US treble.
    pub treble: Term,
    /// Chain.
    pub chain: Term,
    /// Two stitches in one.
    pub increase: Term,
    /// Two stitches together.
    pub decrease: Term,
    /// Two together through the front loops.
    pub invisible_decrease: Term,
    /// Adjustable ring.
    pub ring: Term,
    /// Round.
    pub round: Term,
    /// Stitch.
    pub stitch: Term,
    /// Front loop only.
    pub front_loop: Term,
    /// Back loop only.
    pub back_loop: Term,
    /// Skip.
    pub skip: Term,
    /// Turn.
    pub turn: Term,
    /// Joining a round with a slip stitch.
    pub join: Term,
    /// Fastening off.
    pub fasten_off: Term,
    /// Stuffing the piece.
    pub stuff: Term,
    /// Stitch marker.
    pub marker: Term,
    /// Yarn.
    pub yarn: Term,
    /// Hook.
    pub hook: Term,
    /// Gauge.
    pub gauge: Term,
    /// “in each stitch around”, after a stitch.
    pub in_each: Term,
    /// “times”, after a number.
    pub times: Term,
}

impl Lexicon {
    /// The term of a kind of stitch.
    pub fn kind(&self, kind: StitchKind) -> &Term {
        match kind {
            StitchKind::Slip => &self.slip,
            StitchKind::Single => &self.single,
            StitchKind::HalfDouble => &self.half_double,
            StitchKind::Double => &self.double,
            StitchKind::Treble => &self.treble,
        }
    }
}

/// The built-in lexicons, US terms first.
pub fn all() -> &'static [Lexicon] {
    static ALL: OnceLock<[Lexicon; 6]> = OnceLock::new();
    ALL.get_or_init(|| {
        [
            include_str!("../../../assets/words/en-us.ron"),
            include_str!("../../../assets/words/en-uk.ron"),
            include_str!("../../../assets/words/de.ron"),
            include_str!("../../../assets/words/fr.ron"),
            include_str!("../../../assets/words/es.ron"),
            include_str!("../../../assets/words/es-419.ron"),
        ]
        .map(|text| ron::from_str(text).expect("the built-in lexicons parse"))
    })
}

/// The lexicon of this code.
pub fn by_code(code: &str) -> Option<&'static Lexicon> {
    all().iter().find(|lexicon| lexicon.code == code)
}
