//! What a sheet says around its rounds, by name: headings, materials, how stitches are worked,
//! charts, cautions. One set a language, as data; a name may have a form of its own for the
//! terms of one country: `color.us`.

use std::collections::BTreeMap;
use std::sync::OnceLock;

use crate::words::lexicon::Lexicon;

/// The words of one language around the rounds.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct SheetWords {
    says: BTreeMap<String, String>,
}

impl SheetWords {
    /// The words of the lexicon's language; English for a language without any.
    pub fn of(lexicon: &Lexicon) -> &'static Self {
        let language = lexicon.code.split('-').next().unwrap_or_default();
        let all = all();
        all.iter().find(|(code, _)| *code == language).map_or(&all[0].1, |(_, words)| words)
    }

    /// What is said under `name` in the terms of `lexicon`; none for a name that is not there.
    pub fn get(&self, name: &str, lexicon: &Lexicon) -> Option<&str> {
        let country = lexicon.code.split_once('-').map(|(_, country)| country);
        let own = country.and_then(|country| self.says.get(&format!("{name}.{country}")));
        own.or_else(|| self.says.get(name)).map(String::as_str)
    }

    /// Every name, in order.
    pub fn names(&self) -> impl Iterator<Item = &str> {
        self.says.keys().map(String::as_str)
    }
}

/// Every language, English first.
fn all() -> &'static [(&'static str, SheetWords); 4] {
    static ALL: OnceLock<[(&str, SheetWords); 4]> = OnceLock::new();
    ALL.get_or_init(|| {
        [("en", EN), ("de", DE), ("fr", FR), ("es", ES)]
            .map(|(code, files)| (code, SheetWords { says: read(&files) }))
    })
}

fn read(files: &[&str]) -> BTreeMap<String, String> {
    let mut says = BTreeMap::new();
    for file in files {
        let part: BTreeMap<String, String> =
            ron::from_str(file).expect("the built-in words parse");
        says.extend(part);
    }
    says
}

const EN: [&str; 5] = [
    include_str!("../../../../assets/words/sheet/en.ron"),
    include_str!("../../../../assets/words/cautions/en.ron"),
    include_str!("../../../../assets/words/spoken/en.ron"),
    include_str!("../../../../assets/words/shop/en.ron"),
    include_str!("../../../../assets/words/toy/en.ron"),
];
const DE: [&str; 5] = [
    include_str!("../../../../assets/words/sheet/de.ron"),
    include_str!("../../../../assets/words/cautions/de.ron"),
    include_str!("../../../../assets/words/spoken/de.ron"),
    include_str!("../../../../assets/words/shop/de.ron"),
    include_str!("../../../../assets/words/toy/de.ron"),
];
const FR: [&str; 5] = [
    include_str!("../../../../assets/words/sheet/fr.ron"),
    include_str!("../../../../assets/words/cautions/fr.ron"),
    include_str!("../../../../assets/words/spoken/fr.ron"),
    include_str!("../../../../assets/words/shop/fr.ron"),
    include_str!("../../../../assets/words/toy/fr.ron"),
];
const ES: [&str; 5] = [
    include_str!("../../../../assets/words/sheet/es.ron"),
    include_str!("../../../../assets/words/cautions/es.ron"),
    include_str!("../../../../assets/words/spoken/es.ron"),
    include_str!("../../../../assets/words/shop/es.ron"),
    include_str!("../../../../assets/words/toy/es.ron"),
];

#[cfg(test)]
mod tests {
    use std::collections::BTreeSet;

    use super::*;

    /// A name without its country: `color.us` is `color`; `total.one` stays.
    fn plain(name: &str) -> &str {
        name.strip_suffix(".us").or(name.strip_suffix(".uk")).unwrap_or(name)
    }

    fn in_braces(text: &str) -> BTreeSet<&str> {
        text.split('{').skip(1).filter_map(|part| part.split('}').next()).collect()
    }

    /// Every language says everything that English says, and fills in nothing that English
    /// does not but terms of its own.
    #[test]
    fn every_language_says_everything() {
        let english = &all()[0].1;
        let wanted: BTreeSet<&str> = english.names().map(plain).collect();
        for (code, words) in all() {
            let has: BTreeSet<&str> = words.names().map(plain).collect();
            assert_eq!(has, wanted, "{code}");
            for (name, text) in &words.says {
                let ours = english.says.get(name).map_or(text.as_str(), String::as_str);
                let known = in_braces(ours);
                let terms = super::super::pen::TERMS;
                for given in in_braces(text) {
                    assert!(
                        known.contains(given) || terms.contains(&given) || given == "color",
                        "{code}, {name}: {given}"
                    );
                }
            }
        }
    }
}
