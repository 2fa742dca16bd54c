//! What the sources themselves promise.

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
    for folder in ["core/src", "app/src", "app/typeset/src"] {
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
