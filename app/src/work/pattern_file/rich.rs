//! Words of a rich text file, as word processors of all ages write it.

use anyhow::bail;
use encoding_rs::{Encoding, WINDOWS_1252};

use super::lines::Lines;

/// Groups deeper than this are no document.
const DEEPEST: usize = 200;

/// What holds for a group.
#[derive(Debug, Clone, Copy)]
struct RichGroup {
    /// Whether it is left out: fonts, colours, styles, pictures.
    hidden: bool,
    /// Characters that stand after a `\u` for programs that know none.
    instead: usize,
}

/// The words of the file, a line a paragraph.
///
/// # Errors
/// In one line, where its groups do not end well.
pub(super) fn text(bytes: &[u8]) -> anyhow::Result<String> {
    let mut lines = Lines::default();
    let mut groups = vec![RichGroup { hidden: false, instead: 1 }];
    let mut page = WINDOWS_1252;
    // Characters to be passed over, and the first half of a pair.
    let (mut skip, mut high) = (0_usize, None::<u16>);
    let mut at = 0;
    let mut raw: Vec<u8> = Vec::new();
    let flush = |raw: &mut Vec<u8>, lines: &mut Lines, page: &'static Encoding| {
        if !raw.is_empty() {
            lines.words(&page.decode_without_bom_handling(raw).0);
            raw.clear();
        }
    };
    while let Some(&byte) = bytes.get(at) {
        let depth = groups.len();
        let Some(group) = groups.last_mut() else {
            break;
        };
        match byte {
            b'{' => {
                flush(&mut raw, &mut lines, page);
                if depth > DEEPEST {
                    bail!(say!("file-groups-too-deep"));
                }
                let inner = *group;
                groups.push(inner);
                (at, skip) = (at + 1, 0);
            }
            b'}' => {
                flush(&mut raw, &mut lines, page);
                groups.pop();
                (at, skip) = (at + 1, 0);
            }
            b'\\' => {
                let (control, next) = control(bytes, at + 1);
                at = next;
                if !matches!(control, Control::Byte(_)) {
                    flush(&mut raw, &mut lines, page);
                }
                if skip > 0 && matches!(control, Control::Byte(_) | Control::Sign(_)) {
                    skip -= 1;
                    continue;
                }
                match control {
                    Control::Byte(byte) if !group.hidden => raw.push(byte),
                    Control::Sign(b'*') => group.hidden = true,
                    Control::Sign(sign) if !group.hidden => match sign {
                        b'~' => lines.gap(),
                        b'_' => lines.words("-"),
                        b'\\' | b'{' | b'}' => lines.words(&char::from(sign).to_string()),
                        b'\n' | b'\r' => lines.end(),
                        _ => {}
                    },
                    Control::Word(word, value) => match word {
                        b"uc" => group.instead = usize::try_from(value).unwrap_or(1).min(16),
                        b"bin" => at = at.saturating_add(usize::try_from(value).unwrap_or(0)),
                        b"ansicpg" => {
                            let name = format!("windows-{value}");
                            page = Encoding::for_label(name.as_bytes()).unwrap_or(page);
                        }
                        b"fonttbl" | b"colortbl" | b"stylesheet" | b"info" | b"pict"
                        | b"header" | b"footer" | b"headerl" | b"headerr" | b"headerf"
                        | b"footerl" | b"footerr" | b"footerf" | b"object" | b"fldinst"
                        | b"listtable" | b"themedata" | b"generator" | b"datastore"
                        | b"xmlnstbl" | b"rsidtbl" => group.hidden = true,
                        _ if group.hidden => {}
                        b"par" | b"line" | b"sect" | b"page" | b"row" => lines.end(),
                        b"tab" | b"cell" | b"emspace" | b"enspace" => lines.gap(),
                        b"emdash" => lines.words("—"),
                        b"endash" => lines.words("–"),
                        b"bullet" => lines.words("•"),
                        b"lquote" | b"rquote" => lines.words("'"),
                        b"ldblquote" | b"rdblquote" => lines.words("\""),
                        b"u" => {
                            skip = group.instead;
                            // Written as a signed number of 16 bits.
                            let unit = u16::try_from(value.rem_euclid(0x1_0000)).unwrap_or(0);
                            let pair = [high.take().unwrap_or(unit), unit];
                            let units = if pair[0] == unit { &pair[1..] } else { &pair[..] };
                            if (0xd800..0xdc00).contains(&unit) {
                                high = Some(unit);
                            } else {
                                lines.words(&String::from_utf16_lossy(units));
                            }
                        }
                        _ => {}
                    },
                    _ => {}
                }
            }
            b'\r' | b'\n' => at += 1,
            byte => {
                if skip > 0 {
                    skip -= 1;
                } else if !group.hidden {
                    raw.push(byte);
                }
                at += 1;
            }
        }
    }
    flush(&mut raw, &mut lines, page);
    Ok(lines.done())
}

/// What stands behind a backslash.
#[derive(Debug)]
enum Control<'a> {
    /// `\'e4`: a byte of the code page.
    Byte(u8),
    /// `\~`
    Sign(u8),
    /// `\par`, `\u8211`
    Word(&'a [u8], i64),
}

/// The control at `at`, and what follows it.
fn control(bytes: &[u8], at: usize) -> (Control<'_>, usize) {
    let Some(&first) = bytes.get(at) else { return (Control::Sign(0), at) };
    if first == b'\'' {
        let digits = bytes.get(at + 1..at + 3).and_then(|d| std::str::from_utf8(d).ok());
        return match digits.and_then(|d| u8::from_str_radix(d, 16).ok()) {
            Some(byte) => (Control::Byte(byte), at + 3),
            None => (Control::Sign(first), at + 1),
        };
    }
    if !first.is_ascii_alphabetic() {
        return (Control::Sign(first), at + 1);
    }
    let letters = bytes[at..].iter().take(40).take_while(|b| b.is_ascii_alphabetic()).count();
    let word = &bytes[at..at + letters];
    let from = at + letters;
    let minus = usize::from(bytes.get(from) == Some(&b'-'));
    let digits =
        bytes[from + minus..].iter().take(10).take_while(|b| b.is_ascii_digit()).count();
    let value = std::str::from_utf8(&bytes[from..from + minus + digits]).unwrap_or_default();
    let end = if digits > 0 { from + minus + digits } else { from };
    // A blank behind it belongs to it.
    let blank = usize::from(bytes.get(end) == Some(&b' '));
    (Control::Word(word, value.parse().unwrap_or(0)), end + blank)
}

#[cfg(test)]
mod tests {
    use super::*;

    fn words(rich: &[u8]) -> String {
        text(rich).expect("it is read")
    }

    #[test]
    fn letters_signs_and_line_ends_are_kept() {
        let rich = b"{\\rtf1\\ansi\\ansicpg1252{\\fonttbl{\\f0 Arial;}}{\\*\\generator X;}\
            \\pard\\b F\\'fcr den K\\'f6rper\\b0\\par\r\nRd 3: (1 fM, zun) \\'d7 6 \\u8211? 18\\line \
            \\{2 fM\\}\\tab \\u-10179?\\u-8704?\\par}";
        assert_eq!(words(rich), "Für den Körper\nRd 3: (1 fM, zun) × 6 – 18\n{2 fM} 😀\n");
    }

    #[test]
    fn what_is_broken_ends() {
        for rich in [
            &b"{\\rtf1"[..],
            b"{\\rtf1 \\",
            b"{\\rtf1 \\'",
            b"{\\rtf1 \\'z",
            b"{\\rtf1 \\u",
            b"{\\rtf1 \\bin99999999999 x",
            b"{\\rtf1 \\u-99999999999}}}}} x",
        ] {
            let _ends = words(rich);
        }
        assert!(text(&[b'{'; 100_000]).is_err());
    }
}
