//! The gauge book on the disk: what samples taught, kept from project to project.

use std::path::Path;

use plumpline_core::calibrate::GaugeBook;
use plumpline_core::file;

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
            let kept = file::replace(&aside, text.as_bytes()).is_ok();
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
    file::replace(path, text.as_bytes()).map_err(|error| {
        format!("{}: it cannot be written ({error}); check the folder", path.display())
    })
}
