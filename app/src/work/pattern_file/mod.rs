//! The words of a written pattern from a file of whatever kind people keep patterns in: plain
//! text, a web page, a word processor's file, a PDF. What a file is, its first bytes say.

mod archive;
mod document;
mod lines;
mod page;
mod rich;
mod sheet;

use anyhow::bail;
use plumpline_core::disk::LARGEST_PATTERN;

use super::decoding::decoded;

/// Endings of the files that patterns are read from.
pub(crate) const ENDINGS: [&str; 8] =
    ["txt", "md", "html", "htm", "rtf", "docx", "pdf", "text"];

/// The text in the bytes of a file, one line a line; what only shows pictures has none.
///
/// # Errors
/// In one line, without the name of the file: it is broken, locked or no text, or holds more
/// of it than a pattern ever does.
pub(crate) fn text_of(bytes: &[u8]) -> anyhow::Result<String> {
    let text = if head(bytes, 1024).windows(5).any(|w| w == b"%PDF-") {
        sheet::text(bytes)?
    } else if bytes.starts_with(b"PK\x03\x04") {
        document::text(bytes)?
    } else if bytes.trim_ascii_start().starts_with(b"{\\rtf") {
        rich::text(bytes)?
    } else {
        if bytes.len() as u64 > LARGEST_PATTERN {
            bail!(too_large());
        }
        let text = decoded(bytes);
        if text.contains('\0') {
            bail!(say!("file-is-no-text"));
        }
        if page::is_page(&text) { page::text(&text) } else { text }
    };
    if text.len() as u64 > LARGEST_PATTERN {
        bail!(too_large());
    }
    Ok(text)
}

/// Why so much text is not read.
fn too_large() -> String {
    say!("file-holds-too-much-text", most = LARGEST_PATTERN >> 20)
}

fn head(bytes: &[u8], most: usize) -> &[u8] {
    &bytes[..bytes.len().min(most)]
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn a_file_is_what_its_first_bytes_say() {
        let text = |bytes: &[u8]| text_of(bytes).map_err(|e| e.to_string());
        let rounds = "Rnd 1: 6 sc in ring (6)\nRnd 2: inc x 6 (12)\n";
        assert_eq!(text(rounds.as_bytes()).as_deref(), Ok(rounds));
        let page = b"<!DOCTYPE html><p>Rnd 1: 6 sc in ring (6)</p><p>Rnd 2: inc x 6 (12)</p>";
        assert_eq!(text(page).as_deref(), Ok(rounds));
        let rich = br"{\rtf1 Rnd 1: 6 sc in ring (6)\par Rnd 2: inc x 6 (12)\par}";
        assert_eq!(text(rich).as_deref(), Ok(rounds));
        for broken in [&b"%PDF-1.7\nnothing"[..], b"PK\x03\x04nothing", b"\0\x01\x02"] {
            let refused = text(broken).expect_err("it is broken");
            assert!(!refused.contains('\n') && refused.len() > 20, "{refused}");
        }
    }
}
