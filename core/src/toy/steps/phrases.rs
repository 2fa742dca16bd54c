//! The sentences of assembly as data: one set a language.

use std::sync::OnceLock;

use serde::Deserialize;

use crate::words::Lexicon;

/// The sentences of one language. Names in braces are filled in.
#[derive(Debug, Clone, PartialEq, Eq, Deserialize)]
#[serde(deny_unknown_fields)]
#[expect(missing_docs, reason = "each is said by its own words in the file")]
pub struct AssemblyPhrases {
    pub sew_one: String,
    pub sew_each: String,
    pub sink_one: String,
    pub sink_each: String,
    pub thread: String,
    pub covers: String,
    pub covers_one: String,
    pub between: String,
    pub around: String,
    pub around_one: String,
    pub front: String,
    pub back: String,
    pub centred_one: String,
    pub centred_two: String,
    pub apart: String,
    pub edge_over: String,
    pub edge_around: String,
    pub edge_flat: String,
    pub edge_flat_level: String,
    pub eye: String,
    pub eyes: String,
    pub nose: String,
    pub part: String,
    pub washer_one: String,
    pub washer_each: String,
    pub embroider: String,
    pub put_on: String,
    pub put_in: String,
    pub after_one: String,
    pub after_two: String,
    pub cord_around: String,
    pub cord_through: String,
    pub narrowest: String,
    pub edge_place: String,
    pub start_place: String,
    pub knot_inside: String,
    pub knot_outside: String,
    pub cord_down: String,
    pub cord_up: String,
    pub ring: String,
    pub wire: String,
    pub joint: String,
    pub sling: String,
    pub sling_leg: String,
    pub stitched_back: String,
    pub stitched_straight: String,
    pub stitched_knots: String,
    pub stitched_mirrored: String,
    pub line: String,
    pub knots: String,
}

impl AssemblyPhrases {
    /// The sentences of the lexicon's language; English for one without any.
    pub fn of(lexicon: &Lexicon) -> &'static Self {
        static ALL: OnceLock<[(&str, AssemblyPhrases); 4]> = OnceLock::new();
        let all = ALL.get_or_init(|| {
            [
                ("en", include_str!("../../../../assets/words/assembly/en.ron")),
                ("de", include_str!("../../../../assets/words/assembly/de.ron")),
                ("fr", include_str!("../../../../assets/words/assembly/fr.ron")),
                ("es", include_str!("../../../../assets/words/assembly/es.ron")),
            ]
            .map(|(code, text)| {
                (code, ron::from_str(text).expect("the built-in phrases parse"))
            })
        });
        let language = lexicon.code.split('-').next().unwrap_or_default();
        all.iter().find(|(code, _)| *code == language).map_or(&all[0].1, |(_, own)| own)
    }
}
