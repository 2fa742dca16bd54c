//! What other programs say of a PDF, and the rounds that a text states.

use std::path::Path;
use std::process::Command;

/// What `tool` prints about a PDF, and whether it was content.
///
/// # Panics
/// Where the tool is not installed: `tests/run.sh` installs it.
pub fn asked(tool: &str, args: &[&str], pdf: &[u8]) -> (String, bool) {
    let folder = tempfile::tempdir().expect("a folder");
    let path = folder.path().join("sheet.pdf");
    std::fs::write(&path, pdf).expect("the file is written");
    let path: &Path = &path;
    let (before, after): (Vec<&str>, Vec<&str>) =
        args.iter().copied().partition(|a| a.len() > 1 && a.starts_with('-'));
    let out = Command::new(tool)
        .args(before)
        .arg(path)
        .args(after)
        .output()
        .unwrap_or_else(|e| panic!("{tool} runs ({e}): bash tests/run.sh installs it"));
    (String::from_utf8_lossy(&out.stdout).into_owned(), out.status.success())
}

/// A line of rounds as a form states it: first and last round, words, stitches.
pub type Stated = (u32, u32, String, u32);

/// The lines of rounds in `text`, in order: a number or a range of them at the start of a
/// line, after a word or not, then words, then a count in square brackets. A line may go on
/// over several lines of the text.
pub fn rounds_in(text: &str) -> Vec<Stated> {
    let mut found = Vec::new();
    /// A line of rounds goes on over no more lines than this.
    const MOST_LINES: u32 = 12;
    let mut open: Option<(u32, u32, String)> = None;
    let mut lines = 0;
    for line in text.lines() {
        let line = line.replace(['\u{a0}', '\u{200b}'], " ");
        let line = line.trim();
        if let Some((first, last, rest)) = headed(line) {
            open = Some((first, last, rest.to_owned()));
            lines = 0;
        } else if let Some((_, _, words)) = &mut open {
            words.push(' ');
            words.push_str(line);
            lines += 1;
        }
        // Measures are no rounds: “2 1/4 in” of a schematic, “22 sc and …” of a gauge.
        let measure = open.as_ref().is_some_and(|(_, _, words)| words.contains(" cm"));
        if lines > MOST_LINES || measure {
            open = None;
        }
        if let Some((first, last, words)) = &open
            && let Some((text, count)) = counted(words)
        {
            found.push((*first, *last, text, count));
            open = None;
        }
    }
    found
}

/// `Rnds 12–16: sc …` and `12–16 sc …`: the numbers and what follows.
fn headed(line: &str) -> Option<(u32, u32, &str)> {
    let line = line.trim_start_matches("- [ ] ").trim_start_matches("**");
    let line = ["Rnds ", "Rnd "].iter().find_map(|w| line.strip_prefix(w)).unwrap_or(line);
    let digits = |s: &str| s.chars().take_while(char::is_ascii_digit).count();
    let n = digits(line);
    let first: u32 = line.get(..n)?.parse().ok()?;
    let rest = &line[n..];
    let (last, rest) = match rest.strip_prefix('–') {
        Some(after) => {
            let n = digits(after);
            (after.get(..n)?.parse().ok()?, &after[n..])
        }
        None => (first, rest),
    };
    let rest = rest.trim_start_matches([':', '*']);
    let words = rest.strip_prefix(' ').unwrap_or(rest).trim();
    (rest.is_empty() || rest.starts_with(' ')).then_some((first, last, words))
}

/// `inc × 6 [12]`: the words and the count.
fn counted(words: &str) -> Option<(String, u32)> {
    let words = words.replace(['*', '\\'], "");
    let open = words.rfind('[')?;
    let close = open + words[open..].find(']')?;
    let count = words[open + 1..close].trim().parse().ok()?;
    let text = words[..open].split_whitespace().collect::<Vec<_>>().join(" ");
    (!text.is_empty()).then_some((text, count))
}

/// The words of an HTML file, a line a table row.
pub fn html_words(html: &str) -> String {
    let body = html.split_once("<body").map_or(html, |(_, body)| body);
    let mut out = String::new();
    let mut rest = body;
    while let Some((text, after)) = rest.split_once('<') {
        out.push_str(text.split_once('>').map_or(text, |(_, text)| text));
        let row = after.starts_with("tr") || after.starts_with("/tr") || after.starts_with("p");
        out.push(if row { '\n' } else { ' ' });
        rest = after.split_once('>').map_or("", |(_, rest)| rest);
    }
    out.push_str(rest);
    out.replace("&lt;", "<").replace("&gt;", ">").replace("&quot;", "\"").replace("&amp;", "&")
}
