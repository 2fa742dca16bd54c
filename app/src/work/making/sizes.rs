//! Which size of the project is under the hook, and how far each is.

use plumpline_core::making::Progress;
use plumpline_core::sizes::size_names;
use plumpline_core::{PieceId, Project};

use super::{Handiwork, PieceCopy};

/// How far a size is.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Default)]
pub struct SizeTally {
    /// Copies that are made, of all pieces together.
    pub made: u32,
    /// Copies that are begun, those that are made among them.
    pub begun: u32,
    /// Copies there are to make.
    pub copies: u32,
}

impl SizeTally {
    /// That of `project` at the size called `size`, or as it is designed. It needs no plan.
    pub fn of(project: &Project, size: Option<&str>) -> Self {
        let copies = |id: PieceId| project.piece(id).map_or(0, |piece| piece.copies);
        let counts = |p: &&Progress| p.size.as_deref() == size && p.copy <= copies(p.piece);
        let begun = || project.making.at.iter().filter(counts);
        Self {
            made: begun().filter(|p| p.closed).count() as u32,
            begun: begun().count() as u32,
            copies: project.pieces.iter().map(|p| p.copies).sum(),
        }
    }

    /// In words: `not begun`, `begun`, `1 of 3 made`, `made`.
    pub fn text(self) -> String {
        match self {
            Self { begun: 0, .. } => say!("make-not-started").into(),
            Self { made: 0, .. } => say!("size-started").into(),
            Self { made, copies, .. } if made >= copies => say!("make-finished").into(),
            Self { made, copies, .. } => {
                say!("size-made-of-copies-finished", made = made, copies = copies)
            }
        }
    }
}

/// What the size called `size` is called where it stands alone: `Size S`, or `As designed`.
pub fn size_title(size: Option<&str>) -> String {
    match size {
        None => say!("size-as-designed").into(),
        // Sizes beyond the usual letters are called so from the first.
        Some(name) if name.starts_with("Size ") => name.to_owned(),
        Some(name) => say!("size-named", name = name),
    }
}

/// The same within a sentence: `size S`, or `as designed`.
pub fn size_words(size: Option<&str>) -> String {
    match size {
        None => say!("size-as-designed-within").into(),
        Some(name) => {
            say!("size-named-within", name = name.strip_prefix("Size ").unwrap_or(name))
        }
    }
}

impl Handiwork {
    /// The size under the hook, by name; none where the project is made as it is designed.
    pub fn size(&self) -> Option<&str> {
        self.size.as_deref()
    }

    /// The size after the one under the hook, round the end to the project as it is designed.
    pub(crate) fn next_size(&self, project: &Project) -> Option<String> {
        let names = size_names(project);
        let next = match self.size() {
            None => 0,
            Some(size) => names.iter().position(|&name| name == size)? + 1,
        };
        names.get(next).map(|&name| name.to_owned())
    }

    /// Takes another size under the hook: the same piece of it, and of that the copy worked on
    /// last.
    pub(crate) fn take_size(&mut self, project: &Project, size: Option<String>) {
        let known = size.as_deref().is_none_or(|size| size_names(project).contains(&size));
        if known && size != self.size {
            self.size = size;
            self.sizes = size_names(project).into_iter().map(str::to_owned).collect();
            self.put_away();
            self.under = self.last_copy(project, self.under.piece);
        }
    }

    /// Follows the size under the hook to its new name, or away from one that is gone. Asked
    /// after every step: several at once could not be told apart.
    pub(crate) fn follow_size(&mut self, project: &Project) {
        let Some(size) = &self.size else { return };
        let names = size_names(project);
        if names == self.sizes {
            return;
        }
        if !names.contains(&size.as_str()) {
            let place = self.sizes.iter().position(|name| name == size);
            let there = place.and_then(|place| names.get(place).copied());
            let renamed = there.filter(|name| self.sizes.iter().all(|known| known != name));
            self.size = renamed.map(str::to_owned);
            self.put_away();
        }
        self.sizes = names.into_iter().map(str::to_owned).collect();
    }

    /// The copy of `piece` that was worked on last at the size under the hook, or the first.
    pub(crate) fn last_copy(&self, project: &Project, piece: PieceId) -> PieceCopy {
        PieceCopy { piece, copy: project.making.last_copy(piece, self.size()).unwrap_or(1) }
    }
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::document::Document;
    use plumpline_core::{Size, SizeBy};

    fn project(names: &[&str]) -> Project {
        let mut project = Document::blank().project().clone();
        let size = |&name: &&str| Size::new(name, SizeBy::Factor(0.5));
        project.pieces[0].sizes = names.iter().map(size).collect();
        project
    }

    #[test]
    fn sizes_come_round_to_the_project_as_it_is_designed() {
        let project = project(&["S", "M"]);
        let mut hands = Handiwork::default();
        let mut passed = Vec::new();
        for _ in 0..4 {
            let next = hands.next_size(&project);
            hands.take_size(&project, next);
            passed.push(hands.size().map(str::to_owned));
        }
        assert_eq!(passed, [Some("S".into()), Some("M".into()), None, Some("S".into())]);
        hands.take_size(&project, Some("XL".into()));
        assert_eq!(hands.size(), Some("S"), "there is no XL");
    }

    #[test]
    fn the_size_under_the_hook_is_followed_to_its_new_name_and_away_when_it_goes() {
        let mut hands = Handiwork::default();
        hands.take_size(&project(&["S", "M"]), Some("S".into()));
        for (names, expected) in [
            (&["Sm", "M"][..], Some("Sm")),
            (&["Small", "M"], Some("Small")),
            (&["Small", "M", "L"], Some("Small")),
            (&["Small", "L"], Some("Small")),
            (&["L"], None),
            (&["Small"], None),
        ] {
            hands.follow_size(&project(names));
            assert_eq!(hands.size(), expected, "{names:?}");
        }
    }

    #[test]
    fn how_far_a_size_is_in_words() {
        let mut project = project(&["S"]);
        let text = |project: &Project| SizeTally::of(project, Some("S")).text();
        project.making.begin(PieceId::default(), None, 1).closed = true;
        assert_eq!(text(&project), "not begun");
        project.making.begin(PieceId::default(), Some("S"), 1).round = 3;
        assert_eq!(text(&project), "begun");
        project.pieces[0].copies = 2;
        project.making.begin(PieceId::default(), Some("S"), 1).closed = true;
        assert_eq!(text(&project), "1 of 2 made");
        for copy in 1..=3 {
            project.making.begin(PieceId::default(), Some("S"), copy).closed = true;
        }
        assert_eq!(text(&project), "made", "a third was asked for once");
        assert_eq!(
            SizeTally::of(&project, Some("S")),
            SizeTally { made: 2, begun: 2, copies: 2 }
        );
    }

    #[test]
    fn a_size_is_called_so_once() {
        assert_eq!(size_title(Some("S")), "Size S");
        assert_eq!(size_title(Some("Size 2")), "Size 2");
        assert_eq!(size_words(Some("Oak")), "size Oak");
        assert_eq!(size_words(None), "as designed");
    }
}
