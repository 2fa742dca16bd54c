//! The gauge book on the disk: what samples taught, kept from project to project.

use std::path::Path;

use plumpline_core::calibrate::{Entry, GaugeBook, Struck};
use plumpline_core::{Result, disk};

use super::Home;

/// The file's name in the studio's folder.
pub(crate) const FILE: &str = "gauges.ron";

/// The book in the folder `home`, and one line on why it could not be read.
pub(crate) fn read(home: &Path) -> (GaugeBook, Option<String>) {
    let path = home.join(FILE);
    let Ok(text) = std::fs::read_to_string(&path) else { return (GaugeBook::default(), None) };
    match GaugeBook::parse(&text) {
        Ok(book) => (book, None),
        Err(error) => {
            // A book that cannot be read is not written over: it may hold years of swatches.
            let aside = home.join("gauges-unread.ron");
            let kept = disk::replace(&aside, text.as_bytes()).is_ok();
            let kept = if kept {
                format!("; it is kept as {}", aside.display())
            } else {
                String::new()
            };
            (GaugeBook::default(), Some(format!("{}: {error}{kept}", path.display())))
        }
    }
}

/// Writes the book's `text` to its file, in one step.
pub(crate) fn write(path: &Path, text: &str) -> std::result::Result<(), String> {
    disk::write(path, text.as_bytes()).map_err(|e| e.to_string())
}

impl Home {
    /// What was struck out of the gauge book in this run and not put back, oldest first.
    pub fn struck(&self) -> &[Struck] {
        &self.struck
    }

    /// Enters `entry` in the gauge book. What was struck out of the same yarn, hook and maker
    /// can no longer be put back.
    ///
    /// # Errors
    /// As [`GaugeBook::put`].
    pub fn enter_gauge(&mut self, entry: Entry) -> Result<()> {
        let (yarn, hook_mm, maker) = (entry.yarn.clone(), entry.hook_mm, entry.maker.clone());
        self.gauges.put(entry)?;
        self.struck.retain(|struck| !struck.entry().is_of(&yarn, hook_mm, &maker));
        self.keep_gauges()
    }

    /// Strikes the entry of the yarn, hook and maker of `entry` out of the gauge book, so that
    /// it can be put back as long as this run lasts.
    ///
    /// # Errors
    /// None in practice; see [`GaugeBook::write`].
    pub fn strike_gauge(&mut self, entry: &Entry) -> Result<()> {
        self.struck.extend(self.gauges.strike(&entry.yarn, entry.hook_mm, &entry.maker));
        self.keep_gauges()
    }

    /// Puts back what was struck out of the yarn, hook and maker of `entry`.
    ///
    /// # Errors
    /// As [`GaugeBook::put_back`]; then it can still be put back later.
    pub fn put_gauge_back(&mut self, entry: &Entry) -> Result<()> {
        let of = |s: &Struck| s.entry().is_of(&entry.yarn, entry.hook_mm, &entry.maker);
        let Some(i) = self.struck.iter().position(of) else { return Ok(()) };
        self.gauges.put_back(self.struck[i].clone())?;
        self.struck.remove(i);
        self.keep_gauges()
    }

    fn keep_gauges(&self) -> Result<()> {
        let text = self.gauges.write()?;
        if let Some(writer) = &self.writer {
            writer.book(self.folder.join(FILE), text);
        }
        Ok(())
    }
}
