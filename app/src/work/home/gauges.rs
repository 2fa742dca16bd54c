//! What samples taught: entered, struck out, put back.

use plumpline_core::Result;
use plumpline_core::calibrate::{Entry, Struck};

use super::writer::HomeWish;
use super::{Home, book};

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

    fn keep_gauges(&mut self) -> Result<()> {
        // Nothing is told to the thread that could not be written.
        self.gauges.write()?;
        self.write(HomeWish::Book(self.folder.join(book::FILE), self.gauges.clone()));
        Ok(())
    }
}
