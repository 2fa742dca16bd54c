//! The gauge book on the disk: what samples taught, kept from project to project.

use std::path::Path;

use plumpline_core::calibrate::GaugeBook;
use plumpline_core::disk;

/// The file's name in the studio's folder.
pub(crate) const FILE: &str = "gauges.ron";

/// The book in the folder `home`, and one line on why it could not be read.
pub(crate) fn read(home: &Path) -> (GaugeBook, Option<String>) {
    read_at(&home.join(FILE))
}

fn read_at(path: &Path) -> (GaugeBook, Option<String>) {
    if !path.exists() {
        return (GaugeBook::default(), None);
    }
    let text = match disk::read_text(path, disk::LARGEST_BOOK) {
        Ok(text) => text,
        Err(error) => return (GaugeBook::default(), Some(error.to_string())),
    };
    match GaugeBook::parse(&text) {
        Ok(book) => (book, None),
        Err(error) => {
            // A book that cannot be read is not written over: it may hold years of swatches.
            let aside = path.with_file_name("gauges-unread.ron");
            let kept = disk::replace(&aside, text.as_bytes()).is_ok();
            let (path, error) = (path.display().to_string(), error.to_string());
            let told = if kept {
                let aside = aside.display().to_string();
                say!("trouble-book-kept", path = path, error = error, aside = aside)
            } else {
                format!("{path}: {error}")
            };
            (GaugeBook::default(), Some(told))
        }
    }
}

/// Writes `book`, which was `known` when it was last read or written, to its file, in one step.
/// What others have written there since stays, save what was changed here too.
pub(crate) fn write(path: &Path, known: &GaugeBook, book: &GaugeBook) -> Result<(), String> {
    let write = || {
        // From here to the end nobody else changes the book.
        let _turn = disk::turn(path)?;
        let merged = match read_at(path) {
            // Taken away or unreadable: all that is known is written anew.
            (theirs, _) if theirs.entries().is_empty() => book.clone(),
            (theirs, _) => book.onto(known, theirs)?,
        };
        disk::write(path, merged.write()?.as_bytes())
    };
    write().map_err(|e: plumpline_core::Error| e.to_string())
}

#[cfg(test)]
mod tests {
    use plumpline_core::calibrate::Entry;
    use plumpline_core::{Firmness, Gauge};

    use super::*;

    fn entry(yarn: &str) -> Entry {
        Entry {
            yarn: yarn.into(),
            hook_mm: 3.0,
            maker: String::new(),
            gauge: Gauge { hook_mm: 3.0, ..Gauge::default() },
            firmness: Firmness(0.06),
            stiffness_along: 1.3,
            yarn_per_stitch: 9.4,
            date: "3 March".into(),
            uncertainty: [0.0; 5],
        }
    }

    #[test]
    fn two_windows_write_in_one_book_and_each_keeps_the_others_entries() {
        let folder = tempfile::tempdir().expect("a folder");
        let path = folder.path().join(FILE);
        let mut before = GaugeBook::default();
        before.put(entry("Moor")).expect("entered");
        before.put(entry("Oat")).expect("entered");
        write(&path, &GaugeBook::default(), &before).expect("written");
        let [mut one, mut two] = [(); 2].map(|()| read(folder.path()).0);
        one.put(entry("Slate")).expect("entered");
        one.strike("Moor", 3.0, "").expect("it was there");
        write(&path, &before, &one).expect("written");
        two.put(entry("Fern")).expect("entered");
        write(&path, &before, &two).expect("written");
        let (book, trouble) = read(folder.path());
        assert_eq!(trouble, None);
        let yarns: Vec<&str> = book.entries().iter().map(|e| e.yarn.as_str()).collect();
        assert_eq!(yarns, ["Oat", "Slate", "Fern"]);
        // Taken away, the book is written whole; broken, it is kept aside.
        std::fs::remove_file(&path).expect("removed");
        write(&path, &before, &two).expect("written");
        assert_eq!(read(folder.path()).0, two);
        std::fs::write(&path, "no book").expect("written");
        write(&path, &two, &two).expect("written");
        assert_eq!(read(folder.path()).0, two);
        let aside = std::fs::read_to_string(folder.path().join("gauges-unread.ron"));
        assert_eq!(aside.expect("it is there"), "no book");
    }
}
