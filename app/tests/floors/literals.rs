//! Reads the strings of a source, outside its comments, attributes and tests.

/// A string as it stands in a source.
#[derive(Debug, PartialEq, Eq)]
pub(crate) struct Literal {
    /// What it says, line breaks of the source taken out.
    pub(crate) text: String,
    /// The code before it, without white space at its end.
    pub(crate) before: String,
    /// Names of what the call gives beside it: `n` of `say!("key", n = 3)`.
    pub(crate) arguments: Vec<String>,
}

/// How much of the code before a string is kept, characters.
const BEFORE: usize = 24;

/// The strings of `source` in order, up to its tests.
pub(crate) fn literals(source: &str) -> Vec<Literal> {
    let code: Vec<char> = source.chars().collect();
    let end = tests_at(source).map_or(code.len(), |at| source[..at].chars().count());
    let mut list = Vec::new();
    let mut i = 0;
    while i < end {
        match (code[i], code.get(i + 1)) {
            ('/', Some('/')) => i = after_line(&code, i),
            ('#', Some('[')) => i = closed(&code, i + 1),
            ('\'', _) => i = after_quote(&code, i),
            ('"', _) => {
                let (text, after) = string(&code, i);
                let before: String = code[..i].iter().collect();
                let before = before.trim_end();
                let from = before.char_indices().rev().nth(BEFORE).map_or(0, |(at, _)| at);
                let before = before[from..].to_owned();
                list.push(Literal { text, before, arguments: arguments(&code, after) });
                i = after;
            }
            _ => i += 1,
        }
    }
    list
}

/// Where tests that stand in the file begin.
fn tests_at(source: &str) -> Option<usize> {
    let at = source.find("#[cfg(test)]\nmod ")?;
    source[at..].lines().nth(1).is_some_and(|line| line.ends_with('{')).then_some(at)
}

fn after_line(code: &[char], from: usize) -> usize {
    code[from..].iter().position(|&c| c == '\n').map_or(code.len(), |n| from + n)
}

/// Past a character in quotes, or past the quote of a lifetime.
fn after_quote(code: &[char], from: usize) -> usize {
    match (code.get(from + 1), code.get(from + 2)) {
        (Some('\\'), _) => code[from + 3..]
            .iter()
            .position(|&c| c == '\'')
            .map_or(code.len(), |n| from + n + 4),
        (Some(_), Some('\'')) => from + 3,
        _ => from + 1,
    }
}

/// The string that begins at `from`, and where it has ended.
fn string(code: &[char], from: usize) -> (String, usize) {
    let mut text = String::new();
    let mut i = from + 1;
    while i < code.len() && code[i] != '"' {
        if code[i] == '\\' {
            i += 1;
            match code.get(i) {
                Some('\n') => {
                    while code.get(i + 1).is_some_and(|c| c.is_whitespace()) {
                        i += 1;
                    }
                }
                Some('n') => text.push('\n'),
                Some('u') => {
                    while code.get(i).is_some_and(|&c| c != '}') {
                        i += 1;
                    }
                }
                Some(&other) => text.push(other),
                None => {}
            }
        } else {
            text.push(code[i]);
        }
        i += 1;
    }
    (text, i + 1)
}

/// Past what closes the bracket at `from`, strings left out.
fn closed(code: &[char], from: usize) -> usize {
    let mut depth = 0;
    let mut i = from;
    while i < code.len() {
        match code[i] {
            '"' => {
                i = string(code, i).1;
                continue;
            }
            '(' | '[' | '{' => depth += 1,
            ')' | ']' | '}' => depth -= 1,
            _ => {}
        }
        i += 1;
        if depth <= 0 {
            break;
        }
    }
    i
}

/// The names before a single `=` in the rest of a call, from after its first argument.
fn arguments(code: &[char], from: usize) -> Vec<String> {
    let mut names = Vec::new();
    let mut i = from;
    let mut name = String::new();
    let mut fresh = false;
    while i < code.len() && !matches!(code[i], ')' | ']' | '}' | ';') {
        match code[i] {
            '"' => {
                i = string(code, i).1;
                continue;
            }
            '(' | '[' | '{' => {
                i = closed(code, i);
                fresh = false;
                continue;
            }
            ',' => {
                name.clear();
                fresh = true;
            }
            '=' if fresh && code.get(i + 1) != Some(&'=') => {
                names.push(std::mem::take(&mut name));
                fresh = false;
            }
            c if c.is_whitespace() => {}
            c if c.is_alphanumeric() || c == '_' => name.push(c),
            _ => fresh = false,
        }
        i += 1;
    }
    names
}

#[test]
fn strings_are_read_and_what_only_looks_like_one_is_not() {
    let source = r##"//! "no"
#[doc = "no"]
fn f<'a>(x: &'a str) { let c = '"'; say!("key-a", n = x.len(), of = g("in", 1 == 2)); }
const A: &str = "two \
    lines \"quoted\""; // "no"
#[cfg(test)]
mod tests {
    "no"
}
"##;
    let list = literals(source);
    let texts: Vec<_> = list.iter().map(|l| l.text.as_str()).collect();
    assert_eq!(texts, ["key-a", "in", "two lines \"quoted\""]);
    assert_eq!(list[0].arguments, ["n", "of"]);
    assert!(list[0].before.ends_with("say!("));
}
