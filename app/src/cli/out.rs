//! What a person at the command line reads.

/// Says on standard error, in one line, what went wrong.
pub(super) fn complain(text: &str) {
    eprintln!("plumpline: {}", text.replace('\n', " "));
}

/// Prints `text` to standard output; a reader that went away is no error.
pub(super) fn print(text: &str) {
    use std::io::Write as _;
    std::io::stdout().write_all(text.as_bytes()).ok();
}
