//! What the sources themselves promise.

use std::collections::BTreeMap;
use std::path::{Path, PathBuf};

/// Every source file below `folder`.
fn sources(folder: &Path, found: &mut Vec<PathBuf>) {
    for entry in std::fs::read_dir(folder).expect("a folder").flatten() {
        let path = entry.path();
        if path.is_dir() {
            sources(&path, found);
        } else if path.extension().is_some_and(|e| e == "rs") {
            found.push(path);
        }
    }
}

/// What stands before the tests of a file, without its comments.
fn product(text: &str) -> String {
    let code = text.split("#[cfg(test)]").next().unwrap_or_default();
    code.lines().filter(|line| !line.trim_start().starts_with("//")).collect()
}

/// Files are read with limits and written in one step in one place; whoever reads or writes
/// past it can wait for ever, fill the memory or leave half a file.
#[test]
fn nothing_reads_or_writes_a_file_past_the_one_place_that_does() {
    let root = Path::new(env!("CARGO_MANIFEST_DIR")).join("..");
    let mut files = Vec::new();
    for folder in ["core/src", "app/src", "app/trace/src", "app/typeset/src"] {
        sources(&root.join(folder), &mut files);
    }
    // The lock of a recovery copy is an empty file, and the trace reads what the system says of
    // the running program.
    let may = |path: &Path, word: &str| match path.file_name().and_then(|n| n.to_str()) {
        Some("disk.rs") => true,
        Some("recovery.rs") => word == "OpenOptions",
        Some("trace.rs") => word == "fs::read_to_string",
        _ => false,
    };
    let words = [
        "fs::read(",
        "fs::read_to_string",
        "fs::write",
        "fs::rename",
        "fs::copy",
        "File::open",
        "File::create",
        "OpenOptions",
        "ImageReader::open",
        "image::open",
        "read_to_end",
    ];
    let (mut looked_at, mut read_or_written) = (0, 0);
    for path in &files {
        let code = product(&std::fs::read_to_string(path).expect("a source"));
        looked_at += 1;
        for word in words.iter().filter(|word| code.contains(**word)) {
            read_or_written += 1;
            assert!(may(path, word), "{}: {word}", path.display());
        }
    }
    assert!(looked_at > 100 && read_or_written > 3, "{looked_at}, {read_or_written}");
}

/// The type that a line of code declares.
fn declared(line: &str) -> Option<&str> {
    let words: Vec<&str> = line.split_whitespace().collect();
    let at = usize::from(words.first().is_some_and(|word| word.starts_with("pub")));
    let keyword = words.get(at).filter(|w| ["struct", "enum", "trait"].contains(*w));
    let name = words.get(at + usize::from(keyword.is_some())).filter(|_| keyword.is_some())?;
    name.split(|c: char| !c.is_alphanumeric()).next()
}

/// A name that stands for two things makes whoever reads it look twice. Each crate has its own
/// `Error`, as crates do.
#[test]
fn a_name_stands_for_one_type() {
    let root = Path::new(env!("CARGO_MANIFEST_DIR")).join("..");
    let mut files = Vec::new();
    for folder in ["core/src", "app/src", "app/trace/src", "app/typeset/src"] {
        sources(&root.join(folder), &mut files);
    }
    let mut places: BTreeMap<String, Vec<PathBuf>> = BTreeMap::new();
    for path in files {
        let text = std::fs::read_to_string(&path).expect("a source");
        let code = text.split("#[cfg(test)]").next().unwrap_or_default();
        for name in code.lines().filter_map(declared).filter(|name| *name != "Error") {
            places.entry(name.to_owned()).or_default().push(path.clone());
        }
    }
    assert!(places.len() > 300, "only {} types were found", places.len());
    places.retain(|_, paths| paths.len() > 1);
    assert!(places.is_empty(), "{places:#?}");
}
