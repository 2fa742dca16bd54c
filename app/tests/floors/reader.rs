//! Reads which file of a crate names which other: by `use`, by a path in the code (`crate::`,
//! `super::`), or by the name of a module declared there.

use std::collections::{BTreeMap, BTreeSet};
use std::path::{Path, PathBuf};

/// The place of a module in its crate: `["work", "home"]`.
pub(crate) type Module = Vec<String>;

/// The files of a crate, and which other files each names.
#[derive(Debug, Default)]
pub(crate) struct Names {
    pub of: BTreeMap<Module, BTreeSet<Module>>,
}

impl Names {
    /// Reads every file under `src`.
    pub(crate) fn of_crate(src: &Path) -> Self {
        let mut texts = BTreeMap::new();
        for path in files(src) {
            let text = std::fs::read_to_string(&path).expect("a source file is text");
            let inside = path.strip_prefix(src).expect("it lies in the crate");
            texts.insert(module(inside), text);
        }
        Self::of_texts(&texts)
    }

    /// Reads these texts, by the modules they are.
    pub(crate) fn of_texts(texts: &BTreeMap<Module, String>) -> Self {
        let mut names = Self::default();
        for (module, text) in texts {
            let found = paths(module, text).into_iter().filter_map(|path| {
                let known = (1..=path.len()).rev().map(|n| path[..n].to_vec());
                known.into_iter().find(|place| texts.contains_key(place))
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

    /// All that can be reached from a file, itself included if a way leads back to it.
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

pub(crate) fn files(folder: &Path) -> Vec<PathBuf> {
    let entries = std::fs::read_dir(folder).expect("the folder is there").flatten();
    let mut found = Vec::new();
    for path in entries.map(|entry| entry.path()) {
        if path.is_dir() {
            found.extend(files(&path));
        } else if path.extension().is_some_and(|e| e == "rs") {
            found.push(path);
        }
    }
    found
}

fn module(path: &Path) -> Module {
    let mut module: Module =
        path.with_extension("").iter().map(|s| s.to_string_lossy().into_owned()).collect();
    if module.last().is_some_and(|last| last == "mod") {
        module.pop();
    }
    module
}

/// Words and signs of a source text, comments and strings left out.
fn tokens(text: &str) -> Vec<String> {
    let mut tokens = Vec::new();
    let mut rest = text;
    while let Some(first) = rest.chars().next() {
        let long = if rest.starts_with("//") {
            rest.find('\n').unwrap_or(rest.len())
        } else if first == '"' {
            string(rest)
        } else if first.is_alphanumeric() || first == '_' {
            let word = rest.find(|c: char| !c.is_alphanumeric() && c != '_');
            let long = word.unwrap_or(rest.len());
            tokens.push(rest[..long].to_owned());
            long
        } else if rest.starts_with("::") {
            tokens.push("::".into());
            2
        } else if first == '\'' && rest.chars().nth(2) == Some('\'') {
            rest.char_indices().nth(3).map_or(rest.len(), |(at, _)| at)
        } else {
            if !first.is_whitespace() {
                tokens.push(first.into());
            }
            first.len_utf8()
        };
        rest = &rest[long..];
    }
    tokens
}

/// Bytes of the string that `text` begins with.
fn string(text: &str) -> usize {
    let mut escaped = false;
    for (at, c) in text.char_indices().skip(1) {
        match c {
            _ if escaped => escaped = false,
            '\\' => escaped = true,
            '"' => return at + 1,
            _ => {}
        }
    }
    text.len()
}

/// Every path within the crate that the text of `module` names, from the crate's root.
fn paths(module: &Module, text: &str) -> Vec<Module> {
    let tokens = tokens(text);
    let word = |at: usize| tokens.get(at).map_or("", String::as_str);
    let children: BTreeSet<&str> = (0..tokens.len())
        .filter(|&at| word(at) == "mod" && word(at + 2) == ";")
        .map(|at| word(at + 1))
        .collect();
    let mut found = Vec::new();
    // Modules written out within the file, each with the depth at which it ends.
    let mut within: Vec<(&str, i32)> = Vec::new();
    let (mut depth, mut at) = (0, 0);
    while at < tokens.len() {
        let here = word(at);
        match here {
            "mod" if word(at + 2) == "{" => within.push((word(at + 1), depth)),
            "{" => depth += 1,
            "}" => {
                depth -= 1;
                within.retain(|(_, ends)| *ends < depth);
            }
            _ => {}
        }
        let child = within.is_empty() && children.contains(here) && word(at + 1) == "::";
        let starts = ["crate", "super", "self"].contains(&here) && word(at + 1) == "::";
        let whole = at == 0 || word(at - 1) != "::";
        if whole && (starts || child) {
            let mut base = module.clone();
            base.extend(within.iter().map(|(name, _)| (*name).to_owned()));
            if child {
                at = tree(&tokens, at, base, &mut found);
            } else {
                if here == "crate" {
                    base.clear();
                }
                if here == "super" {
                    base.pop();
                    while word(at + 2) == "super" {
                        base.pop();
                        at += 2;
                    }
                }
                at = tree(&tokens, at + 2, base, &mut found);
            }
        } else {
            at += 1;
        }
    }
    found
}

/// Reads a path that goes on from `base` at token `at`, with all that stands in its braces;
/// returns the token after it.
fn tree(tokens: &[String], mut at: usize, mut base: Module, found: &mut Vec<Module>) -> usize {
    let word = |at: usize| tokens.get(at).map_or("", String::as_str);
    if word(at) == "{" {
        at += 1;
        while at < tokens.len() && word(at) != "}" {
            at = match word(at) {
                "," => at + 1,
                "as" => at + 2,
                _ => tree(tokens, at, base.clone(), found),
            };
        }
        return at + 1;
    }
    if !["self", "*"].contains(&word(at)) {
        base.push(word(at).to_owned());
    }
    at += 1;
    if word(at) == "::" && word(at + 1) != "<" {
        return tree(tokens, at + 1, base, found);
    }
    found.push(base);
    at
}
