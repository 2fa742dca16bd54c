//! What a person at the command line reads.

use plumpline_core::plain;

/// Longest complaint, in characters.
const LONGEST: usize = 2000;

/// Says on standard error, in one line, what went wrong.
pub(super) fn complain(text: &str) {
    eprintln!("plumpline: {}", plain(text, LONGEST));
}

/// Prints `text` to standard output; a reader that went away is no error. What a terminal would
/// obey, a name may hold: it is shown as a character that is not known.
pub(super) fn print(text: &str) {
    use std::io::Write as _;
    let shown = |c: char| if c.is_control() && !"\n\t".contains(c) { '\u{fffd}' } else { c };
    let text: String = text.chars().map(shown).collect();
    std::io::stdout().write_all(text.as_bytes()).ok();
}

/// Prints each of `lines` as [`print`] does.
pub(super) fn print_lines(lines: &[String]) {
    for line in lines {
        print(&format!("{line}\n"));
    }
}
