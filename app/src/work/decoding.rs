//! Text from the bytes of a file, whatever program wrote it.

use encoding_rs::{Encoding, UTF_8, WINDOWS_1252};

/// Text from the bytes of a file: as the mark at its front says, else UTF-8, else
/// Windows-1252, which older programs write.
pub(super) fn decoded(bytes: &[u8]) -> String {
    let (encoding, mark) = match Encoding::for_bom(bytes) {
        Some(marked) => marked,
        None if std::str::from_utf8(bytes).is_ok() => (UTF_8, 0),
        None => (WINDOWS_1252, 0),
    };
    encoding.decode_without_bom_handling(&bytes[mark..]).0.into_owned()
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn text_is_read_as_its_program_wrote_it() {
        let text = "Rd 3: „2 fM, 1 Zun“ × 6 – fertig";
        assert_eq!(decoded(text.as_bytes()), text);
        let marked = |mark: &[u8], units: Vec<u8>| decoded(&[mark, &units].concat());
        assert_eq!(marked(&[0xef, 0xbb, 0xbf], text.as_bytes().to_vec()), text);
        let wide = |to: fn(u16) -> [u8; 2]| text.encode_utf16().flat_map(to).collect();
        assert_eq!(marked(&[0xff, 0xfe], wide(u16::to_le_bytes)), text);
        assert_eq!(marked(&[0xfe, 0xff], wide(u16::to_be_bytes)), text);
        // Curly quotes, a dash and the sign of multiplication as Windows wrote them.
        assert_eq!(decoded(b"\x842 fM\x93 \xd7 6 \x96 \xfcber"), "„2 fM“ × 6 – über");
        assert_eq!(decoded(&[0xff, 0xfe, 0x41]), "\u{fffd}", "cut short, it is still text");
    }
}
