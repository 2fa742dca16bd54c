//! What is looked at in the Sheet stage: never saved, never undone.

use plumpline_core::picture::chart::SingleSymbol;
use plumpline_typeset::Options;

/// How a sheet is drawn and laid out.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Default)]
pub struct SheetLook {
    /// Paper and columns.
    pub options: Options,
    /// The symbol for single crochet in charts.
    pub single: SingleSymbol,
}

/// What the Sheet stage shows the pattern as.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Default)]
pub enum SheetFace {
    /// The pages as they print.
    #[default]
    Pages,
    /// The words, line by line.
    Text,
}

impl SheetFace {
    /// Both.
    pub const ALL: [Self; 2] = [Self::Pages, Self::Text];

    /// The word on screen.
    pub fn text(self) -> &'static str {
        match self {
            Self::Pages => say!("sheet-as-pages"),
            Self::Text => say!("sheet-as-text"),
        }
    }
}

/// What the Sheet stage shows.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct SheetView {
    /// Pages or text.
    pub face: SheetFace,
    /// How it is laid out.
    pub look: SheetLook,
    /// Size of a page against the room it has.
    pub zoom: f32,
}

impl Default for SheetView {
    fn default() -> Self {
        Self { face: SheetFace::default(), look: SheetLook::default(), zoom: 1.0 }
    }
}

impl SheetView {
    /// The sizes a page can be shown at.
    pub const ZOOMS: [f32; 6] = [0.5, 0.75, 1.0, 1.35, 1.8, 2.4];

    /// The next size up (1) or down (−1); the same where there is none.
    #[must_use]
    pub fn zoomed(self, by: i32) -> Self {
        let now = Self::ZOOMS.iter().position(|&z| z >= self.zoom - 0.01).unwrap_or(2) as i32;
        let next = (now + by).clamp(0, Self::ZOOMS.len() as i32 - 1);
        Self { zoom: Self::ZOOMS[next as usize], ..self }
    }
}
