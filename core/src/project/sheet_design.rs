//! What a designer adds to the sheet in pictures, and which of its sections it has, in which
//! order.

use serde::{Deserialize, Serialize};

use crate::error::{Error, LONGEST_NAME, LONGEST_TEXT, Result, no_longer};

/// Most photographs of one sheet: beyond this a pattern is an album.
pub const MOST_PHOTOS: usize = 40;

/// Longest line that is typed and set under a photograph, characters.
pub const LONGEST_CAPTION: usize = 200;

/// A section of the sheet after its front, which says what it is and what it takes.
#[derive(Debug, Clone, Copy, PartialEq, Eq, PartialOrd, Ord, Hash, Serialize, Deserialize)]
pub enum SheetSection {
    /// The designer's photographs.
    Photos,
    /// Abbreviations, and how the less usual stitches are worked.
    Words,
    /// The pieces with their rounds.
    Pieces,
    /// How the pieces are put together.
    Assembly,
    /// What to mind before it is given away.
    Cautions,
    /// What has changed since a version that was published.
    Changes,
    /// The form for testers.
    Tester,
}

impl SheetSection {
    /// Every section, in the usual order.
    pub const ALL: [Self; 7] = [
        Self::Photos,
        Self::Words,
        Self::Pieces,
        Self::Assembly,
        Self::Cautions,
        Self::Changes,
        Self::Tester,
    ];

    /// Whether no sheet goes without it: the rounds are the pattern, and whoever makes a toy
    /// has to know what harms a child.
    pub const fn is_needed(self) -> bool {
        matches!(self, Self::Pieces | Self::Cautions)
    }

    /// The sections of a sheet of which nothing else is said: all but the form for testers.
    pub fn usual() -> Vec<Self> {
        Self::ALL.into_iter().filter(|&section| section != Self::Tester).collect()
    }
}

/// Something drawn on the sheet that may be left out.
#[derive(Debug, Clone, Copy, PartialEq, Eq, PartialOrd, Ord, Hash, Serialize, Deserialize)]
pub enum SheetDetail {
    /// The stuffed pieces on the first page.
    Bodies,
    /// The pieces with their measures.
    Measures,
    /// The round charts.
    Charts,
}

impl SheetDetail {
    /// All of them, in the order of the sheet.
    pub const ALL: [Self; 3] = [Self::Bodies, Self::Measures, Self::Charts];
}

/// A photograph of the designer's.
#[derive(Debug, Clone, PartialEq, Eq, Hash, Serialize, Deserialize)]
#[serde(deny_unknown_fields)]
pub struct OwnPhoto {
    /// Its file: beside the project's, or from its folder.
    pub path: String,
    /// What stands under it.
    #[serde(default, skip_serializing_if = "String::is_empty")]
    pub caption: String,
}

/// What a designer adds to the sheet, and how it is arranged.
#[derive(Debug, Clone, PartialEq, Eq, Serialize, Deserialize)]
#[serde(deny_unknown_fields)]
pub struct SheetDesign {
    /// File of the designer's logo, which stands at the head of the first page.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub logo: Option<String>,
    /// Photographs; the first is the cover.
    #[serde(default, skip_serializing_if = "Vec::is_empty")]
    pub photos: Vec<OwnPhoto>,
    /// The sections after the front, in their order; those that are not named are left out.
    #[serde(default = "SheetSection::usual", skip_serializing_if = "is_usual")]
    pub sections: Vec<SheetSection>,
    /// What is not drawn.
    #[serde(default, skip_serializing_if = "Vec::is_empty")]
    pub left_out: Vec<SheetDetail>,
    /// What has changed since a published version; its first line is the heading.
    #[serde(default, skip_serializing_if = "String::is_empty")]
    pub changes: String,
}

fn is_usual(sections: &[SheetSection]) -> bool {
    sections == SheetSection::usual()
}

impl Default for SheetDesign {
    fn default() -> Self {
        Self {
            logo: None,
            photos: Vec::new(),
            sections: SheetSection::usual(),
            left_out: Vec::new(),
            changes: String::new(),
        }
    }
}

impl SheetDesign {
    /// Whether nothing is added and nothing arranged otherwise.
    pub fn is_usual(&self) -> bool {
        *self == Self::default()
    }

    /// The names of its pictures' files, to be changed.
    pub fn files_mut(&mut self) -> impl Iterator<Item = &mut String> {
        self.logo.iter_mut().chain(self.photos.iter_mut().map(|photo| &mut photo.path))
    }

    /// Shows `section`, where it usually stands, or leaves it out; one that is needed stays.
    pub fn show(&mut self, section: SheetSection, on: bool) {
        if !on {
            self.sections.retain(|&other| other != section || section.is_needed());
        } else if !self.sections.contains(&section) {
            let before = |other: &SheetSection| *other > section;
            let place = self.sections.iter().position(before).unwrap_or(self.sections.len());
            self.sections.insert(place, section);
        }
    }

    /// Moves `section` one place up, or down; at the end of the list it stays.
    pub fn shift(&mut self, section: SheetSection, down: bool) {
        let Some(place) = self.sections.iter().position(|&other| other == section) else {
            return;
        };
        let to = if down { place + 1 } else { place.wrapping_sub(1) };
        if to < self.sections.len() {
            self.sections.swap(place, to);
        }
    }

    /// Draws `detail`, or leaves it out.
    pub fn draw(&mut self, detail: SheetDetail, on: bool) {
        self.left_out.retain(|&other| other != detail);
        if !on {
            self.left_out.push(detail);
            self.left_out.sort();
        }
    }

    /// Refuses what cannot be laid out.
    ///
    /// # Errors
    /// For a section that is named twice or that no sheet goes without, too many photographs,
    /// and texts that nobody types.
    pub fn validate(&self) -> Result<()> {
        for section in SheetSection::ALL {
            let times = self.sections.iter().filter(|&&other| other == section).count();
            if times > 1 {
                let what = format!("{section:?} stands there {times} times");
                return Err(Error::new("sheet, sections", what, "name it once"));
            }
            if times == 0 && section.is_needed() {
                let what = format!("{section:?} is left out");
                return Err(Error::new("sheet, sections", what, "no sheet goes without it"));
            }
        }
        if self.photos.len() > MOST_PHOTOS {
            let what = format!("{} photographs", self.photos.len());
            return Err(Error::new(
                "sheet, photos",
                what,
                format!("list at most {MOST_PHOTOS}"),
            ));
        }
        let files = self.logo.iter().chain(self.photos.iter().map(|photo| &photo.path));
        for file in files {
            no_longer("sheet, file of a picture", file, LONGEST_TEXT)?;
        }
        for photo in &self.photos {
            no_longer("sheet, caption of a photograph", &photo.caption, LONGEST_NAME)?;
        }
        no_longer("sheet, changes", &self.changes, LONGEST_TEXT)
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn sections_come_and_go_at_their_places() {
        let mut design = SheetDesign::default();
        assert!(design.is_usual() && design.validate().is_ok());
        design.show(SheetSection::Words, false);
        design.show(SheetSection::Pieces, false);
        design.show(SheetSection::Tester, true);
        use SheetSection::{Assembly, Cautions, Changes, Photos, Pieces, Tester, Words};
        assert_eq!(
            design.sections,
            [Photos, Pieces, Assembly, Cautions, Changes, Tester],
            "the rounds stay"
        );
        design.show(Words, true);
        design.shift(Cautions, false);
        design.shift(Photos, false);
        design.shift(Tester, true);
        assert_eq!(
            design.sections,
            [Photos, Words, Pieces, Cautions, Assembly, Changes, Tester]
        );
        assert!(design.validate().is_ok());
        design.sections.retain(|&section| section != Cautions);
        assert!(design.validate().is_err_and(|e| e.to_string().contains("Cautions")));
    }
}
