//! The gauge book: what was learned of yarns, hooks and makers, kept across projects.
//!
//! The book is text, RON with a version; whoever keeps it reads and writes the file.

use ron::ser::PrettyConfig;
use serde::{Deserialize, Serialize};

use super::{Calibration, MakersCloth, Quantity};
use crate::error::{Error, LONGEST_NAME, Result, no_longer, within};
use crate::piece::gauge::Gauge;
use crate::piece::{Firmness, Piece};

/// The version of gauge books this program writes, and the newest it reads.
pub const BOOK_VERSION: u32 = 1;

/// Most entries of a book.
pub const MOST_ENTRIES: usize = 5000;

/// What is known of one yarn on one hook in one maker's hand.
#[derive(Debug, Clone, PartialEq, Serialize, Deserialize)]
#[serde(deny_unknown_fields)]
pub struct Entry {
    /// The yarn, as its maker calls it.
    pub yarn: String,
    /// Shaft diameter of the hook, mm.
    pub hook_mm: f64,
    /// Whose hand it is; empty where there is only one.
    #[serde(default)]
    pub maker: String,
    /// The swatch.
    pub gauge: Gauge,
    /// How hard the maker stuffs.
    pub firmness: Firmness,
    /// Em/Eθ.
    pub stiffness_along: f64,
    /// Yarn in a single crochet, in stitch widths.
    pub yarn_per_stitch: f64,
    /// The day it was learned, as the caller writes it.
    #[serde(default)]
    pub date: String,
    /// Standard uncertainty of stitch width, round height, firmness, stiffness and yarn, as
    /// shares of their values; 0 where it is not known.
    #[serde(default)]
    pub uncertainty: [f64; 5],
}

/// A maker's gauges, in the order in which they were first learned.
#[derive(Debug, Clone, PartialEq, Default)]
pub struct GaugeBook {
    /// The entries: at most one for a yarn, a hook and a maker.
    entries: Vec<Entry>,
}

/// An entry that was struck out, and where it stood.
#[derive(Debug, Clone, PartialEq)]
pub struct Struck {
    entry: Entry,
    place: usize,
}

#[derive(Serialize, Deserialize)]
#[serde(deny_unknown_fields)]
struct SavedBook<E> {
    book_version: u32,
    entries: E,
}

#[derive(Deserialize)]
struct BookHeader {
    book_version: u32,
}

impl Entry {
    /// An entry of what a sample of `piece` taught, learned on `date`. The hook is that of the
    /// piece's swatch.
    pub fn learned(
        yarn: impl Into<String>,
        maker: impl Into<String>,
        date: impl Into<String>,
        piece: &Piece,
        calibration: &Calibration,
    ) -> Self {
        let dressed = calibration.apply(piece);
        Self {
            yarn: yarn.into(),
            hook_mm: dressed.gauge.hook_mm,
            maker: maker.into(),
            gauge: dressed.gauge,
            firmness: dressed.firmness,
            stiffness_along: dressed.stiffness_along,
            yarn_per_stitch: dressed.habits.yarn_per_stitch,
            date: date.into(),
            uncertainty: calibration.fitted.map(|f| f.uncertainty / f.value),
        }
    }

    /// Its cloth.
    pub fn cloth(&self) -> MakersCloth {
        MakersCloth {
            stitch_width_mm: self.gauge.stitch_width_mm(),
            round_height_mm: self.gauge.round_height_mm(),
            firmness: self.firmness,
            stiffness_along: self.stiffness_along,
            yarn_per_stitch: self.yarn_per_stitch,
        }
    }

    /// `piece` as this hand works it in this yarn.
    #[must_use]
    pub fn apply(&self, piece: &Piece) -> Piece {
        let mut dressed = self.cloth().dress(piece);
        dressed.gauge = self.gauge;
        dressed
    }

    /// Whether it is of this yarn, hook and maker; names count the same in small letters.
    pub fn is_of(&self, yarn: &str, hook_mm: f64, maker: &str) -> bool {
        let same = |a: &str, b: &str| a.trim().to_lowercase() == b.trim().to_lowercase();
        same(&self.yarn, yarn)
            && same(&self.maker, maker)
            && (self.hook_mm - hook_mm).abs() < 1e-6
    }

    fn validate(&self) -> Result<()> {
        no_longer("gauge book, yarn", &self.yarn, LONGEST_NAME)?;
        no_longer("gauge book, maker", &self.maker, LONGEST_NAME)?;
        no_longer("gauge book, date", &self.date, LONGEST_NAME)?;
        let place = format!("gauge of “{}”", self.yarn);
        if self.yarn.trim().is_empty() {
            return Err(Error::new("gauge book", "an entry names no yarn", "name its yarn"));
        }
        self.gauge.validate().map_err(|e| e.within(&place))?;
        within(&format!("{place}, hook_mm"), self.hook_mm, 0.4, 50.0, "mm")?;
        let cloth = self.cloth();
        for quantity in Quantity::ALL {
            let (least, most) = quantity.range();
            let place = format!("{place}, {}", quantity.name());
            within(&place, cloth.get(quantity), least, most, quantity.unit())?;
        }
        for share in self.uncertainty {
            within(&format!("{place}, uncertainty"), share, 0.0, 100.0, "")?;
        }
        Ok(())
    }
}

impl Struck {
    /// What was struck out.
    pub fn entry(&self) -> &Entry {
        &self.entry
    }
}

impl GaugeBook {
    /// The entries, oldest first.
    pub fn entries(&self) -> &[Entry] {
        &self.entries
    }

    /// What is known of this yarn on this hook in this maker's hand.
    pub fn find(&self, yarn: &str, hook_mm: f64, maker: &str) -> Option<&Entry> {
        self.entries.iter().find(|e| e.is_of(yarn, hook_mm, maker))
    }

    /// Enters `entry`; one of the same yarn, hook and maker gives its place to it.
    ///
    /// # Errors
    /// For numbers no cloth has, and a book that is full.
    pub fn put(&mut self, entry: Entry) -> Result<()> {
        entry.validate()?;
        let same =
            self.entries.iter().position(|e| e.is_of(&entry.yarn, entry.hook_mm, &entry.maker));
        match same {
            Some(i) => self.entries[i] = entry,
            None if self.entries.len() >= MOST_ENTRIES => {
                let what = format!("it is full with {MOST_ENTRIES} entries");
                return Err(Error::new("gauge book", what, "strike some out"));
            }
            None => self.entries.push(entry),
        }
        Ok(())
    }

    /// Strikes out the entry of this yarn, hook and maker; it, and its place, so that
    /// [`Self::put_back`] can undo that. None if there is no such entry.
    pub fn strike(&mut self, yarn: &str, hook_mm: f64, maker: &str) -> Option<Struck> {
        let place = self.entries.iter().position(|e| e.is_of(yarn, hook_mm, maker))?;
        Some(Struck { entry: self.entries.remove(place), place })
    }

    /// Puts back what was struck out, in its old place.
    ///
    /// # Errors
    /// Where the yarn, hook and maker have been entered anew since: the newer one stays. For a
    /// book that is full.
    pub fn put_back(&mut self, struck: Struck) -> Result<()> {
        let Struck { entry, place } = struck;
        if self.find(&entry.yarn, entry.hook_mm, &entry.maker).is_some() {
            let what = format!("{} has been entered anew since", entry.yarn);
            return Err(Error::new("gauge book", what, "strike that entry out first"));
        }
        self.put(entry)?;
        let place = place.min(self.entries.len() - 1);
        self.entries[place..].rotate_right(1);
        Ok(())
    }

    /// The book `theirs` with what was changed here since both were `known`: entered, changed
    /// or struck out. What was changed in both is as it is here.
    ///
    /// # Errors
    /// For a book that would be too full.
    pub fn onto(&self, known: &Self, theirs: Self) -> Result<Self> {
        let of = |book: &Self, e: &Entry| book.find(&e.yarn, e.hook_mm, &e.maker).cloned();
        let mut merged = theirs;
        for entry in known.entries.iter().filter(|e| of(self, e).is_none()) {
            merged.strike(&entry.yarn, entry.hook_mm, &entry.maker);
        }
        for entry in self.entries.iter().filter(|e| of(known, e).as_ref() != Some(*e)) {
            let stood = of(&merged, entry).is_some();
            merged.put(entry.clone())?;
            // One put back comes to its old place: before what follows it here.
            let later = self.entries.iter().skip_while(|e| *e != entry).nth(1);
            let place = later.and_then(|e| merged.entries.iter().position(|m| m == e));
            if let (false, Some(place)) = (stood, place) {
                merged.entries[place..].rotate_right(1);
            }
        }
        Ok(merged)
    }

    /// The book in `text`. An empty text is an empty book.
    ///
    /// # Errors
    /// One line: text that is no book or is cut short, a later version, numbers no cloth has.
    pub fn parse(text: &str) -> Result<Self> {
        if text.trim().is_empty() {
            return Ok(Self::default());
        }
        let header: std::result::Result<BookHeader, _> = ron::from_str(text);
        if let Ok(BookHeader { book_version }) = header
            && book_version != BOOK_VERSION
        {
            return Err(Error::new(
                "gauge book",
                format!(
                    "version {book_version} is not {BOOK_VERSION}, which this program reads"
                ),
                "open it with a newer Plumpline",
            ));
        }
        let saved: SavedBook<Vec<Entry>> = ron::from_str(text).map_err(|e| {
            Error::new(
                format!("gauge book, line {}", e.span.start.line),
                e.code.to_string().replace('\n', " "),
                "mend that line or take an older copy",
            )
        })?;
        let mut book = Self::default();
        for entry in saved.entries {
            book.put(entry)?;
        }
        Ok(book)
    }

    /// The text of the book, which [`Self::parse`] reads back the same.
    ///
    /// # Errors
    /// None in practice; the writer of RON may refuse.
    pub fn write(&self) -> Result<String> {
        let saved = SavedBook { book_version: BOOK_VERSION, entries: &self.entries };
        let style = PrettyConfig::new().depth_limit(3).indentor("  ");
        ron::ser::to_string_pretty(&saved, style).map(|text| text + "\n").map_err(|e| {
            Error::new("gauge book", format!("it cannot be written ({e})"), "report this")
        })
    }
}
