//! House styles: how a house sets its rounds, as data. A style has no words of its own; those
//! come from a lexicon, so that every style is written in every language.

use std::sync::OnceLock;

use serde::Deserialize;

/// How one house writes its patterns.
#[derive(Debug, Clone, PartialEq, Eq, Deserialize)]
#[serde(deny_unknown_fields)]
pub struct HouseStyle {
    /// What the style is called, by how it looks.
    pub name: String,
    /// The number of a round and what stands around it.
    pub heading: HeadingStyle,
    /// Between two things to work.
    pub between: String,
    /// Whether the words of a round begin with a capital.
    pub capital: bool,
    /// Plain stitches inside a round.
    pub plain: PlainForm,
    /// Whether a single plain stitch has its number: “1 sc” or “sc”.
    pub says_one: bool,
    /// Rounds of plain stitches throughout.
    pub even: EvenForm,
    /// Two stitches in one.
    pub increase: IncreaseForm,
    /// Two stitches together.
    pub decrease: DecreaseForm,
    /// Several increases or decreases in a row.
    pub run: RunForm,
    /// Several stitches worked several times.
    pub repeat: RepeatForm,
    /// How often a bracket is worked: `{n}` the number, `{times}` the word.
    pub times: String,
    /// Brackets, opening and closing, for repeats in repeats.
    pub brackets: Vec<String>,
    /// Which bracket stands where.
    pub nesting: Nesting,
    /// The count after a round: `{n}` the number, `{stitch}` and `{stitches}` the word, short
    /// and in full.
    pub count: String,
    /// Whether neighbouring rounds worked alike are written once.
    pub join_alike: bool,
}

/// The number of a round and what stands around it.
#[derive(Debug, Clone, PartialEq, Eq, Deserialize)]
#[serde(deny_unknown_fields)]
pub struct HeadingStyle {
    /// The word for a round.
    pub word: HeadingWord,
    /// Whether that word has a capital. In a language whose nouns do, it always has.
    pub capital: bool,
    /// Between the first and the last number of a range.
    pub dash: String,
    /// After it all.
    pub after: String,
}

/// The word for a round. Where it stands, before or after the number, is the language's.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Deserialize)]
pub enum HeadingWord {
    /// `Rnd 4`
    Short,
    /// `Round 4`
    Word,
    /// `R4`, in languages that have such a letter; `Short` in others.
    Letter,
    /// `4`
    Bare,
}

/// Plain stitches inside a round.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Deserialize)]
pub enum PlainForm {
    /// `sc 2`
    After,
    /// `2 sc`
    Before,
    /// `sc in next 2 sts`
    InNext,
    /// As the language is used to: `sc 2`, `2 fM`.
    Usual,
}

/// Rounds of plain stitches throughout.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Deserialize)]
pub enum EvenForm {
    /// `sc in each st`
    InEach,
    /// `sc around`
    Around,
    /// `24 sc`, where the round below is known; `InEach` elsewhere.
    Counted,
}

/// Two stitches in one.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Deserialize)]
pub enum IncreaseForm {
    /// `inc`
    Word,
    /// `2 sc in next st`
    InNext,
}

/// Two stitches together.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Deserialize)]
pub enum DecreaseForm {
    /// `dec`
    Word,
    /// `sc2tog`
    Together,
}

/// Several increases or decreases in a row.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Deserialize)]
pub enum RunForm {
    /// `inc × 6`
    After,
    /// `6 inc`
    Before,
    /// As the language is used to.
    Usual,
}

/// Several stitches worked several times.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Deserialize)]
pub enum RepeatForm {
    /// `(sc 2, inc) × 6`
    Brackets,
    /// `*sc 2, inc; rep from * 5 more times`; brackets inside it, and where a round has two
    /// repeats, so that no asterisk is in doubt.
    Star,
}

/// Which bracket stands where.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Deserialize)]
pub enum Nesting {
    /// The first brackets are the innermost.
    FromInside,
    /// The first brackets are the outermost.
    FromOutside,
}

impl HouseStyle {
    /// The style the studio itself words rounds in.
    pub fn bench() -> &'static Self {
        &all()[0]
    }

    /// The style of this name.
    pub fn by_name(name: &str) -> Option<&'static Self> {
        all().iter().find(|style| style.name == name)
    }
}

/// The built-in styles, the studio's own first.
pub fn all() -> &'static [HouseStyle] {
    static ALL: OnceLock<Vec<HouseStyle>> = OnceLock::new();
    ALL.get_or_init(|| {
        [
            include_str!("../../../../assets/styles/bench.ron"),
            include_str!("../../../../assets/styles/brackets.ron"),
            include_str!("../../../../assets/styles/stars.ron"),
            include_str!("../../../../assets/styles/plain-words.ron"),
            include_str!("../../../../assets/styles/compact.ron"),
            include_str!("../../../../assets/styles/numbers.ron"),
            include_str!("../../../../assets/styles/equals.ron"),
            include_str!("../../../../assets/styles/ledger.ron"),
            include_str!("../../../../assets/styles/teaching.ron"),
            include_str!("../../../../assets/styles/curly.ron"),
            include_str!("../../../../assets/styles/small.ron"),
            include_str!("../../../../assets/styles/counted.ron"),
            include_str!("../../../../assets/styles/roomy.ron"),
        ]
        .into_iter()
        .map(|text| ron::from_str(text).expect("the built-in house styles parse"))
        .collect()
    })
}
