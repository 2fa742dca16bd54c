//! Pages with the system's faces where ours have no letters: names in other scripts. What the
//! system has is looked up once, and only when something is missing.

use std::collections::BTreeSet;
use std::path::Path;
use std::sync::{Mutex, PoisonError};

use plumpline_core::disk;
use plumpline_core::sheet::Sheet;
use plumpline_typeset::{Options, Pages, Press, covered};

/// Largest file of a face that is read, bytes: those of Chinese and Japanese are large.
const LARGEST_FACE: u64 = 64 << 20;
/// Faces that one search adds, at most.
const MOST_FACES: usize = 6;

/// Sets pages, and remembers which faces of the system they took.
#[derive(Debug, Default)]
pub(crate) struct PageMaker {
    press: Press,
    /// Characters that were looked for.
    sought: BTreeSet<char>,
}

impl PageMaker {
    /// The pages of `sheet`.
    ///
    /// # Errors
    /// As [`Press::pages`].
    pub(crate) fn pages(
        &mut self,
        sheet: &Sheet,
        options: Options,
    ) -> plumpline_typeset::Result<Pages> {
        self.find_faces(sheet);
        self.press.pages(sheet, options)
    }

    /// The form for testers of `sheet`.
    ///
    /// # Errors
    /// As [`Press::pages`].
    pub(crate) fn tester_form(
        &mut self,
        sheet: &Sheet,
        options: Options,
    ) -> plumpline_typeset::Result<Pages> {
        self.find_faces(sheet);
        self.press.tester_form(sheet, options)
    }

    fn find_faces(&mut self, sheet: &Sheet) {
        let missing = self.press.missing(sheet);
        let fresh: BTreeSet<char> = missing.difference(&self.sought).copied().collect();
        if !fresh.is_empty() {
            self.press.add_faces(faces_for(&fresh));
            self.sought.extend(fresh);
        }
    }
}

/// Files of the system's faces that together have most of `wanted`, each with its place in its
/// file; the fewer the better.
fn faces_for(wanted: &BTreeSet<char>) -> Vec<(Vec<u8>, u32)> {
    static SYSTEM: Mutex<Option<fontdb::Database>> = Mutex::new(None);
    let mut system = SYSTEM.lock().unwrap_or_else(PoisonError::into_inner);
    let system = system.get_or_insert_with(|| {
        let mut system = fontdb::Database::new();
        system.load_system_fonts();
        system
    });
    let upright = system.faces().filter(|face| face.style == fontdb::Style::Normal);
    let mut known: Vec<(&fontdb::FaceInfo, BTreeSet<char>)> = upright
        .filter_map(|face| {
            let has = system.with_face_data(face.id, |bytes, i| covered(bytes, i, wanted))?;
            (!has.is_empty()).then_some((face, has))
        })
        .collect();
    // Among faces that have as much, one like ours; by name, so that it is the same each time.
    known.sort_by_cached_key(|(face, _)| rank(face));
    let mut left = wanted.clone();
    let mut files = Vec::new();
    while files.len() < MOST_FACES && !left.is_empty() {
        let gains = |has: &BTreeSet<char>| has.intersection(&left).count();
        let most = known.iter().map(|(_, has)| gains(has)).max().unwrap_or(0);
        let Some((face, has)) = known.iter().find(|(_, has)| most > 0 && gains(has) == most)
        else {
            break;
        };
        let has = has.clone();
        if let Some(bytes) = file_of(face).and_then(|path| disk::read(path, LARGEST_FACE).ok())
        {
            left.retain(|c| !has.contains(c));
            files.push((bytes, face.index));
        }
        let id = face.id;
        known.retain(|(face, _)| face.id != id);
    }
    files
}

fn file_of(face: &fontdb::FaceInfo) -> Option<&Path> {
    match &face.source {
        fontdb::Source::File(path) | fontdb::Source::SharedFile(path, _) => Some(path),
        fontdb::Source::Binary(_) => None,
    }
}

/// How unlike ours a face is: how it is spaced, whether it has no serifs, by its name, its
/// weight; then its name.
fn rank(face: &fontdb::FaceInfo) -> (bool, bool, u16, bool, String) {
    let name = face.families.first().map_or_else(String::new, |(name, _)| name.to_lowercase());
    let plain = name.contains("sans") || name.contains("gothic");
    let narrow = face.stretch != fontdb::Stretch::Normal;
    (face.monospaced, !plain, face.weight.0.abs_diff(400), narrow, name)
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::document::Document;
    use plumpline_core::sheet;

    #[test]
    fn a_name_in_any_script_is_set_or_its_letters_are_named() {
        let mut project = Document::blank().project().clone();
        project.title = "Ёж \u{5d3}\u{5d5}\u{5d1} \u{e0001}\u{10ffff}".into();
        let sheet = sheet::sheet(&project).expect("a sheet");
        let ours = Press::new();
        let missing = ours.missing(&sheet);
        assert!(missing.contains(&'Ё') && missing.contains(&'\u{10ffff}'), "{missing:?}");
        let mut maker = PageMaker::default();
        let pages = maker.pages(&sheet, Options::default()).expect("it is set");
        let found: BTreeSet<char> =
            missing.difference(&maker.press.missing(&sheet)).copied().collect();
        let told = pages.replaced().expect("no face has all of them").to_owned();
        for c in missing {
            let code = format!("U+{:04X}", c as u32);
            assert_ne!(found.contains(&c), told.contains(&code), "{code}: {told}");
        }
    }
}
