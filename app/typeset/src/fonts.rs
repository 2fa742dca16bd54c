//! The faces of a sheet, embedded, and which characters they have.

use std::collections::{BTreeMap, BTreeSet};

use typst::foundations::Bytes;
use typst::text::{Font, FontBook, FontInfo};

const FILES: [(&str, &[u8]); 4] = [
    ("Nunito Sans", include_bytes!("../../../assets/fonts/nunito-sans-400.ttf")),
    ("Nunito Sans", include_bytes!("../../../assets/fonts/nunito-sans-600.ttf")),
    ("Nunito Sans", include_bytes!("../../../assets/fonts/nunito-sans-700.ttf")),
    ("Routed Gothic", include_bytes!("../../../assets/fonts/routed-gothic.ttf")),
];

/// Weights of the first face.
const WEIGHTS: usize = 3;

/// The faces and the book that lists them.
#[derive(Debug)]
pub(crate) struct Fonts {
    pub(crate) faces: Vec<Font>,
    pub(crate) book: FontBook,
}

impl Fonts {
    pub(crate) fn embedded() -> Self {
        let faces: Vec<(&str, Font)> = FILES
            .iter()
            .filter_map(|(family, file)| Some((*family, Font::new(Bytes::new(*file), 0)?)))
            .collect();
        // A file's own family name may carry its weight; the template asks for the plain one.
        let book = FontBook::from_infos(faces.iter().map(|(family, font)| {
            let mut info = font.info().clone();
            info.family = (*family).to_owned();
            info
        }));
        Self { faces: faces.into_iter().map(|(_, font)| font).collect(), book }
    }

    /// Whether text in this character can be set: in every weight of the first face, in which
    /// stands what a person types, or else in any other.
    pub(crate) fn has(&self, c: char) -> bool {
        let has = |face: &Font| face.info().coverage.contains(c as u32);
        let (first, others) = self.faces.split_at(WEIGHTS.min(self.faces.len()));
        first.iter().all(has) || others.iter().any(has)
    }

    /// Adds the faces in `files`, each with its place in its file, behind those there are;
    /// what is no face is passed over.
    pub(crate) fn add(&mut self, files: Vec<(Vec<u8>, u32)>) {
        for (bytes, index) in files {
            if let Some(face) = Font::new(Bytes::new(bytes), index) {
                self.book.push(face.info().clone());
                self.faces.push(face);
            }
        }
    }
}

/// Which of `wanted` the face number `index` in the file `bytes` has; none for what is no face.
pub fn covered(bytes: &[u8], index: u32, wanted: &BTreeSet<char>) -> BTreeSet<char> {
    let Some(info) = FontInfo::new(bytes, index) else { return BTreeSet::new() };
    wanted.iter().copied().filter(|&c| info.coverage.contains(c as u32)).collect()
}

/// Characters that could not be set, each with how often.
#[derive(Debug, Clone, Default, PartialEq, Eq)]
pub(crate) struct Missing(BTreeMap<char, u32>);

impl Missing {
    pub(crate) fn note(&mut self, c: char) {
        *self.0.entry(c).or_default() += 1;
    }

    /// The characters.
    pub(crate) fn characters(self) -> BTreeSet<char> {
        self.0.into_keys().collect()
    }

    /// What was replaced, in a sentence, as `word` has its parts; none where nothing was.
    pub(crate) fn said<'w>(&self, word: impl Fn(&'static str) -> &'w str) -> Option<String> {
        /// More than these are only counted.
        const NAMED: usize = 8;
        if self.0.is_empty() {
            return None;
        }
        let code = |c: &char| format!("U+{:04X}", *c as u32);
        let mut named: Vec<String> = self.0.keys().take(NAMED).map(code).collect();
        if self.0.len() > NAMED {
            named.push(word("more_boxes").replace("{n}", &(self.0.len() - NAMED).to_string()));
        }
        let all: u32 = self.0.values().sum();
        let boxes = word(if all == 1 { "boxes.one" } else { "boxes.many" });
        Some(boxes.replace("{n}", &all.to_string()).replace("{which}", &named.join(", ")))
    }
}
