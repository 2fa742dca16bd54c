//! Reads which file of a crate names which other: by `use`, by a path in the code (`crate::`,
//! `super::`, or from a module declared there). A name that a file passes on by `use` leads to
//! the file it comes from. Tests inside a file are no part of it.

use std::collections::{BTreeMap, BTreeSet};
use std::path::{Path, PathBuf};

/// The place of a module in its crate: `["plan", "skin"]`; empty for the crate itself.
pub(crate) type Module = Vec<String>;

/// The files of a crate, and which other files each names.
#[derive(Debug, Default)]
pub(crate) struct Names {
    pub(crate) of: BTreeMap<Module, BTreeSet<Module>>,
}

/// What one file says.
#[derive(Debug, Default)]
struct Said {
    /// What its `use` lines bring in, by the name it has there.
    brought: BTreeMap<String, Vec<String>>,
    /// Every path in it.
    paths: Vec<Vec<String>>,
}

impl Names {
    /// Reads every file under `src`.
    pub(crate) fn of_crate(src: &Path) -> Self {
        let mut texts = BTreeMap::new();
        for path in files(src) {
            let inside = path.strip_prefix(src).expect("it lies in the crate");
            let module = module(inside);
            if !module.iter().any(|part| part == "tests") {
                texts.insert(module, std::fs::read_to_string(&path).expect("it is text"));
            }
        }
        Self::of_texts(&texts)
    }

    /// Reads these texts, by the modules they are.
    pub(crate) fn of_texts(texts: &BTreeMap<Module, String>) -> Self {
        let said: BTreeMap<&Module, Said> = texts.iter().map(|(m, t)| (m, said(t))).collect();
        let mut names = Self::default();
        for (&module, file) in &said {
            let found = file.paths.iter().filter_map(|path| {
                let place = absolute(module, path, texts)?;
                file_of(&place, &said, texts, 0)
            });
            names.of.insert(module.clone(), found.filter(|other| other != module).collect());
        }
        names
    }

    /// The circles: files that each reach all the others.
    pub(crate) fn circles(&self) -> Vec<Vec<Module>> {
        let reach: BTreeMap<_, _> = self.of.keys().map(|m| (m, self.reached(m))).collect();
        let mut circles = BTreeSet::new();
        for (module, reached) in &reach {
            let back = |other: &&Module| reach[*other].contains(*module);
            let circle: Vec<Module> = reached.iter().filter(back).cloned().collect();
            if circle.len() > 1 {
                circles.insert(circle);
            }
        }
        circles.into_iter().collect()
    }

    fn reached(&self, from: &Module) -> BTreeSet<Module> {
        let mut reached = BTreeSet::new();
        let mut open: Vec<&Module> = vec![from];
        while let Some(module) = open.pop() {
            for next in &self.of[module] {
                if reached.insert(next.clone()) {
                    open.push(next);
                }
            }
        }
        reached
    }
}

fn files(folder: &Path) -> Vec<PathBuf> {
    let mut found = Vec::new();
    for entry in std::fs::read_dir(folder).expect("the folder is there") {
        let path = entry.expect("an entry").path();
        if path.is_dir() {
            found.extend(files(&path));
        } else if path.extension().is_some_and(|end| end == "rs") {
            found.push(path);
        }
    }
    found
}

fn module(path: &Path) -> Module {
    let stem = path.with_extension("");
    let mut parts: Module =
        stem.iter().map(|part| part.to_str().expect("a plain name").to_owned()).collect();
    if parts.last().is_some_and(|last| last == "mod" || last == "lib" || last == "tests") {
        parts.pop();
    }
    parts
}

/// The path from the root of the crate, if it leads into the crate.
fn absolute(
    from: &Module,
    path: &[String],
    texts: &BTreeMap<Module, String>,
) -> Option<Module> {
    let mut place = from.clone();
    let rest = match path.first()?.as_str() {
        "crate" => return Some(path[1..].to_vec()),
        "self" => &path[1..],
        "super" => {
            let up = path.iter().take_while(|part| *part == "super").count();
            place.truncate(place.len().checked_sub(up)?);
            &path[up..]
        }
        first => {
            // A module declared here; anything else is another crate or a name of this file.
            let inner = [from.as_slice(), &[first.to_owned()]].concat();
            texts.contains_key(&inner).then_some(path)?
        }
    };
    place.extend_from_slice(rest);
    Some(place)
}

/// The file that a place lies in, through whatever files pass its name on.
fn file_of(
    place: &[String],
    said: &BTreeMap<&Module, Said>,
    texts: &BTreeMap<Module, String>,
    depth: u32,
) -> Option<Module> {
    let file = (0..=place.len()).rev().find_map(|n| said.get_key_value(&place[..n].to_vec()));
    let (&file, text) = file?;
    let rest = &place[file.len()..];
    if let Some(first) = rest.first()
        && let Some(passed) = text.brought.get(first)
        && depth < 20
    {
        let mut whole = absolute(file, passed, texts)?;
        whole.extend_from_slice(&rest[1..]);
        return file_of(&whole, said, texts, depth + 1);
    }
    Some(file.clone())
}

fn said(text: &str) -> Said {
    let code = code(text);
    let code = code.split("#[cfg(test)]\nmod tests").next().unwrap_or_default();
    let mut said = Said::default();
    let mut rest = String::new();
    // Whatever stands between two semicolons or braces may be a `use`.
    for (i, part) in code.split("use ").enumerate() {
        let whole = i > 0 && ends_a_thing(&rest);
        match part.split_once(';').filter(|_| whole) {
            Some((tree, after)) => {
                // What is only passed on is not used here.
                let passed_on =
                    rest.trim_end().ends_with("pub") || rest.trim_end().ends_with(')');
                for (path, name) in brought(tree) {
                    if !passed_on {
                        said.paths.push(path.clone());
                    }
                    said.brought.insert(name, path);
                }
                rest.push_str(after);
            }
            None => rest.push_str(part),
        }
    }
    let words = |c: char| !(c.is_alphanumeric() || c == '_' || c == ':');
    for word in rest.split(words).filter(|word| word.contains("::")) {
        let path = word.trim_matches(':').split("::").map(str::to_owned).collect();
        said.paths.push(path);
    }
    said
}

/// Whether what comes after `text` begins something: after an item, a brace or `pub`.
fn ends_a_thing(text: &str) -> bool {
    let text = text.trim_end();
    let last = text.rsplit(|c: char| c.is_whitespace()).next().unwrap_or_default();
    text.is_empty() || last.starts_with("pub") || text.ends_with([';', '{', '}', ']', ')'])
}

/// The paths of a `use` tree, each with the name it has from there on.
fn brought(tree: &str) -> Vec<(Vec<String>, String)> {
    let tree = tree.trim();
    let Some((lead, inner)) = tree.split_once('{') else {
        let (path, name) = match tree.split_once(" as ") {
            Some((path, name)) => (path, Some(name)),
            None => (tree, None),
        };
        let mut path: Vec<String> = path.split("::").map(|p| p.trim().to_owned()).collect();
        if path.last().is_some_and(|last| last == "self") {
            path.pop();
        }
        let own = path.last().cloned().unwrap_or_default();
        return vec![(path, name.map_or(own, |name| name.trim().to_owned()))];
    };
    let inner = inner.rsplit_once('}').map_or(inner, |(inner, _)| inner);
    let lead: Vec<String> =
        lead.split("::").map(str::trim).filter(|p| !p.is_empty()).map(str::to_owned).collect();
    let mut depth = 0;
    let between = |c: char| {
        depth += i32::from(c == '{') - i32::from(c == '}');
        c == ',' && depth == 0
    };
    let parts = inner.split(between).filter(|part| !part.trim().is_empty());
    parts
        .flat_map(brought)
        .map(|(path, name)| {
            let whole = [lead.as_slice(), &path].concat();
            let name =
                if path.is_empty() { lead.last().cloned().unwrap_or_default() } else { name };
            (whole, name)
        })
        .collect()
}

/// `text` without comments and what stands in quotes.
fn code(text: &str) -> String {
    let mut out = String::new();
    let mut chars = text.chars().peekable();
    while let Some(c) = chars.next() {
        match c {
            '/' if chars.peek() == Some(&'/') => {
                chars.by_ref().find(|&c| c == '\n');
                out.push('\n');
            }
            '"' => {
                while let Some(c) = chars.next() {
                    match c {
                        '\\' => drop(chars.next()),
                        '"' => break,
                        _ => {}
                    }
                }
                out.push_str("\"\"");
            }
            '\'' => {
                // A character, not a lifetime: its end stands one or, escaped, two further on.
                let ahead: Vec<char> = chars.clone().take(2).collect();
                if let [first, second] = ahead[..] {
                    if first == '\\' {
                        chars.nth(1);
                        chars.by_ref().find(|&c| c == '\'');
                    } else if second == '\'' {
                        chars.nth(1);
                    }
                }
            }
            c => out.push(c),
        }
    }
    out
}
