//! The parts of a ZIP archive (APPNOTE 6.3: stored or deflated, no archive over several files,
//! no passwords), as far as the files of word processors use it.

use anyhow::{anyhow, bail};
use flate2::read::DeflateDecoder;
use plumpline_core::disk;

/// Bytes of one part once it is unpacked.
const LARGEST_PART: u64 = 24 << 20;

/// Parts of an archive, at most.
const MOST_PARTS: usize = 4096;

/// The record at the end of an archive, without its comment.
const END: usize = 22;

/// An archive in memory, and where its list of parts lies.
#[derive(Debug)]
pub(super) struct Archive<'a> {
    bytes: &'a [u8],
    list: usize,
}

impl<'a> Archive<'a> {
    /// The archive in `bytes`; none where they hold none.
    pub(super) fn new(bytes: &'a [u8]) -> Option<Self> {
        // The record may have a comment of up to 64 KB behind it.
        let from = bytes.len().saturating_sub(END + 0xffff);
        let tail = &bytes[from..];
        let end = tail.windows(4).rposition(|w| w == b"PK\x05\x06")? + from;
        let list = number(bytes, end + 16, 4)?;
        (list < bytes.len()).then_some(Self { bytes, list })
    }

    /// The part of this name as text, none where there is none.
    ///
    /// # Errors
    /// In one line: it is broken, packed in another way, or too large.
    pub(super) fn text(&self, name: &str) -> anyhow::Result<Option<String>> {
        let broken = || anyhow!(say!("file-is-broken"));
        let Some(at) = self.part(name) else { return Ok(None) };
        let field = |from: usize, many| number(self.bytes, at + from, many);
        let (Some(flags), Some(method), Some(packed), Some(start)) =
            (field(8, 2), field(10, 2), field(20, 4), field(42, 4))
        else {
            return Err(broken());
        };
        if flags & 1 == 1 {
            bail!(say!("file-is-locked"));
        }
        // The name and what else stands before the bytes of the part itself.
        let names = |from| number(self.bytes, start + from, 2);
        let (Some(name), Some(more)) = (names(26), names(28)) else { return Err(broken()) };
        let from = start + 30 + name + more;
        let bytes = self.bytes.get(from..from.saturating_add(packed)).ok_or_else(broken)?;
        let unpacked = match method {
            0 => disk::read_from(bytes, say!("file-the-file"), LARGEST_PART)?,
            8 => disk::read_from(
                DeflateDecoder::new(bytes),
                say!("file-the-file"),
                LARGEST_PART,
            )?,
            _ => return Err(broken()),
        };
        String::from_utf8(unpacked).map(Some).map_err(|_| broken())
    }

    /// Where the entry of a part stands in the list.
    fn part(&self, name: &str) -> Option<usize> {
        let mut at = self.list;
        for _ in 0..MOST_PARTS {
            if self.bytes.get(at..at + 4)? != b"PK\x01\x02" {
                return None;
            }
            let field = |from| number(self.bytes, at + from, 2);
            let (own, more, remark) = (field(28)?, field(30)?, field(32)?);
            if self.bytes.get(at + 46..at + 46 + own)? == name.as_bytes() {
                return Some(at);
            }
            at += 46 + own + more + remark;
        }
        None
    }
}

/// A number of `many` bytes, the lowest first.
fn number(bytes: &[u8], at: usize, many: usize) -> Option<usize> {
    let own = bytes.get(at..at.checked_add(many)?)?;
    own.iter().rev().try_fold(0_usize, |n, b| n.checked_mul(256)?.checked_add(usize::from(*b)))
}

#[cfg(test)]
pub(super) mod tests {
    use std::io::Write as _;

    use flate2::Compression;
    use flate2::write::DeflateEncoder;

    use super::*;

    /// An archive of these parts, deflated or stored.
    pub(in super::super) fn packed(parts: &[(&str, &str)], deflated: bool) -> Vec<u8> {
        let (mut file, mut list) = (Vec::new(), Vec::new());
        for (name, text) in parts {
            let bytes = if deflated {
                let mut packer = DeflateEncoder::new(Vec::new(), Compression::fast());
                packer.write_all(text.as_bytes()).expect("it is packed");
                packer.finish().expect("it is packed")
            } else {
                text.as_bytes().to_vec()
            };
            let start = file.len() as u32;
            let method: u16 = if deflated { 8 } else { 0 };
            let mut head = vec![0_u8; 22];
            head[2..4].copy_from_slice(&method.to_le_bytes());
            head[12..16].copy_from_slice(&(bytes.len() as u32).to_le_bytes());
            head[16..20].copy_from_slice(&(text.len() as u32).to_le_bytes());
            head[20..22].copy_from_slice(&(name.len() as u16).to_le_bytes());
            file.extend_from_slice(b"PK\x03\x04\x14\0");
            file.extend_from_slice(&head);
            file.extend_from_slice(&[0; 2]);
            file.extend_from_slice(name.as_bytes());
            file.extend_from_slice(&bytes);
            list.extend_from_slice(b"PK\x01\x02\x14\0\x14\0");
            list.extend_from_slice(&head);
            list.extend_from_slice(&[0; 12]);
            list.extend_from_slice(&start.to_le_bytes());
            list.extend_from_slice(name.as_bytes());
        }
        let at = file.len() as u32;
        let many = (parts.len() as u16).to_le_bytes();
        file.extend_from_slice(&list);
        file.extend_from_slice(b"PK\x05\x06\0\0\0\0");
        file.extend_from_slice(&[many, many].concat());
        file.extend_from_slice(&(list.len() as u32).to_le_bytes());
        file.extend_from_slice(&at.to_le_bytes());
        file.extend_from_slice(&[0; 2]);
        file
    }

    #[test]
    fn parts_are_found_by_name_packed_or_not() {
        for deflated in [false, true] {
            let file = packed(&[("a.xml", "first"), ("b/c.xml", "second")], deflated);
            let archive = Archive::new(&file).expect("it is one");
            let text = |name| archive.text(name).expect("it is read");
            assert_eq!(text("b/c.xml").as_deref(), Some("second"));
            assert_eq!(text("a.xml").as_deref(), Some("first"));
            assert_eq!(text("d.xml"), None);
        }
    }

    #[test]
    fn much_out_of_little_is_refused_and_broken_ones_end() {
        let large = "a".repeat(LARGEST_PART as usize + 1);
        let file = packed(&[("a.xml", &large)], true);
        assert!(file.len() < 1 << 20);
        assert!(Archive::new(&file).expect("it is one").text("a.xml").is_err());
        let whole = packed(&[("a.xml", "words")], true);
        for cut in 0..whole.len() {
            let _ends = Archive::new(&whole[..cut]).map(|a| a.text("a.xml"));
            let mut other = whole.clone();
            other[cut] ^= 0xff;
            let _ends = Archive::new(&other).map(|a| a.text("a.xml"));
        }
    }
}
