//! Patterns as people write them, each with its truth, and how well they are read.
//!
//! `corpus/people/practised` holds texts that the reader was made better on,
//! `corpus/people/fresh` such as were written after it and that it was never changed for.
//! Beside `NAME.txt` stands `NAME.json`: the terms, one entry a round or range (line, part,
//! numbers or null, what one such round takes and makes as worked), the slips that a good
//! proofreader would mark, and the lines whose work nobody can be expected to count.

use std::fmt;
use std::path::{Path, PathBuf};

use plumpline_core::pattern::HouseStyle;
use plumpline_core::pattern::proofread::{
    Finding, FindingKind, LineIndex, RoundRead, listing, proofread,
};
use plumpline_core::pattern::read::{Reading, Sure, TermsWish, read};
use serde_json::Value;

/// A text and its truth.
#[derive(Debug)]
pub struct Written {
    /// Name of its file; the first two letters tell the language.
    pub name: String,
    /// The text.
    pub text: String,
    truth: Value,
}

/// One round as it truly is.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
struct Round {
    line: usize,
    part: usize,
    from: Option<u32>,
    to: Option<u32>,
    takes: Option<u32>,
    makes: u32,
}

/// How well texts are read.
#[derive(Debug, Clone, Copy, Default, PartialEq, Eq)]
pub struct Score {
    /// Texts.
    pub texts: usize,
    /// Rounds whose truth is known, ranges counted once.
    pub rounds: usize,
    /// Of them read with the numbers they have, what they take and what they make.
    pub right: usize,
    /// Of them listed as read with other figures.
    pub wrong: usize,
    /// Findings other than that something could not be read.
    pub accusations: usize,
    /// Of them such as no true slip explains.
    pub false_accusations: usize,
    /// True slips.
    pub errors: usize,
    /// Of them found on their line.
    pub found: usize,
    /// Texts called clean though a round of theirs was not read, or none was.
    pub rash: usize,
    /// Texts read to the last round, with every slip found and nothing else.
    pub perfect: usize,
}

impl Score {
    fn and(self, other: Self) -> Self {
        Self {
            texts: self.texts + other.texts,
            rounds: self.rounds + other.rounds,
            right: self.right + other.right,
            wrong: self.wrong + other.wrong,
            accusations: self.accusations + other.accusations,
            false_accusations: self.false_accusations + other.false_accusations,
            errors: self.errors + other.errors,
            found: self.found + other.found,
            rash: self.rash + other.rash,
            perfect: self.perfect + other.perfect,
        }
    }

    /// `part` of `whole` in hundredths; 100 of nothing.
    pub fn share(part: usize, whole: usize) -> f64 {
        if whole == 0 { 100.0 } else { 100.0 * part as f64 / whole as f64 }
    }
}

impl fmt::Display for Score {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        let just = self.accusations - self.false_accusations;
        write!(
            f,
            "{} texts: {:.1} % of {} rounds read rightly, {} wrongly; {:.2} false accusations \
             a text, {:.0} % of accusations just; {} of {} slips found; {} called clean rashly; \
             {:.0} % handled perfectly",
            self.texts,
            Self::share(self.right, self.rounds),
            self.rounds,
            self.wrong,
            self.false_accusations as f64 / self.texts.max(1) as f64,
            Self::share(just, self.accusations),
            self.found,
            self.errors,
            self.rash,
            Self::share(self.perfect, self.texts),
        )
    }
}

/// The texts of a folder of `corpus/people`, by name.
///
/// # Panics
/// If the folder or a truth cannot be read, with its name.
pub fn written(folder: &str) -> Vec<Written> {
    written_in(&Path::new(env!("CARGO_MANIFEST_DIR")).join("corpus/people").join(folder))
}

/// The texts of any folder, by name.
///
/// # Panics
/// If the folder or a truth cannot be read, with its name.
pub fn written_in(folder: &Path) -> Vec<Written> {
    let entries = std::fs::read_dir(folder)
        .unwrap_or_else(|e| panic!("{}: {e}", folder.display()))
        .filter_map(|entry| Some(entry.ok()?.path()));
    let mut paths: Vec<PathBuf> =
        entries.filter(|path| path.extension().is_some_and(|e| e == "txt")).collect();
    paths.sort();
    let contents = |path: &Path| {
        std::fs::read_to_string(path).unwrap_or_else(|e| panic!("{}: {e}", path.display()))
    };
    paths
        .iter()
        .map(|path| Written {
            name: path
                .file_stem()
                .map_or_else(String::new, |s| s.to_string_lossy().into_owned()),
            text: contents(path),
            truth: serde_json::from_str(&contents(&path.with_extension("json")))
                .unwrap_or_else(|e| panic!("{}: {e}", path.display())),
        })
        .collect()
}

/// The score of several texts together.
pub fn together<'a>(texts: impl IntoIterator<Item = &'a Written>) -> Score {
    texts.into_iter().fold(Score::default(), |sum, text| sum.and(text.score()))
}

fn number(value: &Value) -> Option<u32> {
    value.as_u64().and_then(|n| u32::try_from(n).ok())
}

fn line_of(value: &Value) -> usize {
    number(&value["line"]).unwrap_or_default() as usize
}

fn list(value: &Value) -> &[Value] {
    value.as_array().map_or(&[], Vec::as_slice)
}

impl Written {
    fn rounds(&self) -> Vec<Round> {
        let round = |value: &Value| {
            Some(Round {
                line: line_of(value),
                part: number(&value["part"]).unwrap_or(1) as usize,
                from: number(&value["from"]),
                to: number(&value["to"]).or(number(&value["from"])),
                takes: number(&value["takes"]),
                makes: number(&value["makes"]).filter(|&n| n > 0)?,
            })
        };
        list(&self.truth["rounds"]).iter().filter_map(round).collect()
    }

    /// Lines and kinds of the slips, those that are matters of taste left out.
    fn errors(&self) -> Vec<(usize, &str)> {
        let hard = |e: &&Value| e.get("slight").is_none();
        let of = |e: &'_ Value| line_of(e);
        list(&self.truth["errors"])
            .iter()
            .filter(hard)
            .map(|e| (of(e), e["kind"].as_str().unwrap_or_default()))
            .collect()
    }

    fn not_counted(&self) -> Vec<usize> {
        let lines = list(&self.truth["unread_ok"]).iter().filter_map(number);
        lines.map(|n| n as usize).collect()
    }

    /// How well it is read.
    pub fn score(&self) -> Score {
        self.judged().0
    }

    /// How well it is read, and what is not as it should be, a line each.
    pub fn judged(&self) -> (Score, Vec<String>) {
        let mut notes = Vec::new();
        let reading = read(&self.text, TermsWish::Infer);
        let findings = proofread(&self.text, &reading);
        let listed = listing(&self.text, &reading, HouseStyle::bench());
        let places = LineIndex::new(&self.text);
        let at: Vec<(usize, &Finding)> =
            findings.iter().map(|f| (places.of(f.at.start).0, f)).collect();
        let mut score = Score { texts: 1, ..Score::default() };
        let (errors, free) = (self.errors(), self.not_counted());
        let unread = self.count_rounds(&listed, &mut score, &mut notes);
        score.errors = errors.len();
        for error in &errors {
            if found(error, &at) {
                score.found += 1;
            } else {
                notes.push(format!("line {}: the slip ({}) is not found", error.0, error.1));
            }
        }
        let explained = |line: usize| {
            free.contains(&line) || errors.iter().any(|(at, _)| at.abs_diff(line) <= 1)
        };
        let accuses = |f: &Finding| f.kind != FindingKind::Unread;
        let strangers = at.iter().filter(|(line, _)| !explained(*line));
        let (mut noise, mut blamed) = (0, 0);
        for (line, finding) in strangers {
            noise += 1;
            blamed += usize::from(accuses(finding));
            notes.push(format!("line {line}: {:?}: {}", finding.kind, finding.message));
        }
        score.accusations = at.iter().filter(|(_, f)| accuses(f)).count();
        score.false_accusations = blamed;
        let missed = listed.iter().any(|r| r.sure == Sure::Unread) || listed.is_empty();
        let clean = findings.is_empty() && !missed;
        let silent = findings.is_empty() && unread > 0;
        score.rash = usize::from(silent && clean);
        if score.rash > 0 {
            notes.push("called clean with a round unseen".to_owned());
        }
        let perfect = noise == 0
            && score.found == score.errors
            && score.right == score.rounds
            && self.in_terms(&reading)
            && clean == errors.is_empty();
        score.perfect = usize::from(perfect);
        if !self.in_terms(&reading) {
            notes.push(format!("read as {}", reading.lexicon));
        }
        (score, notes)
    }

    fn in_terms(&self, reading: &Reading) -> bool {
        let terms = self.truth["terms"].as_str().unwrap_or_default();
        reading.lexicon == terms || reading.lexicon.strip_prefix("en-") == Some(terms)
    }

    /// Adds up which rounds are read rightly; returns how many were not read at all.
    fn count_rounds(
        &self,
        listed: &[RoundRead],
        score: &mut Score,
        notes: &mut Vec<String>,
    ) -> usize {
        let (rounds, free) = (self.rounds(), self.not_counted());
        let slips: Vec<usize> = self
            .errors()
            .iter()
            .filter(|(_, kind)| matches!(*kind, "count" | "takes" | "repeat" | "word"))
            .map(|e| e.0)
            .collect();
        let mut used = vec![false; listed.len()];
        let mut unread = 0;
        let mut before: Option<usize> = None;
        for round in &rounds {
            let first_of_part = before.replace(round.part) != Some(round.part);
            if free.contains(&round.line) || slips.contains(&round.line) {
                continue;
            }
            score.rounds += 1;
            let hit = listed.iter().enumerate().find(|(i, r)| {
                let numbered = match (round.from, round.to, r.numbers) {
                    (Some(from), Some(to), Some((first, last))) => first <= from && to <= last,
                    (None, _, _) => !used[*i],
                    _ => false,
                };
                r.line == round.line && numbered
            });
            let words = || self.text.lines().nth(round.line - 1).unwrap_or_default().trim();
            let Some((i, hit)) = hit else {
                unread += 1;
                notes.push(format!("line {}: not listed: {}", round.line, words()));
                continue;
            };
            used[i] = true;
            if hit.sure == Sure::Unread {
                unread += 1;
                notes.push(format!("line {}: not read: {}", round.line, words()));
                continue;
            }
            let takes = first_of_part || round.takes.is_none() || hit.takes == round.takes;
            // A range that shapes takes what is below its first round and makes its last.
            let shapes = hit.numbers.is_some_and(|(a, b)| b > a) && hit.takes != hit.makes;
            if shapes || takes && hit.makes == Some(round.makes) {
                score.right += 1;
            } else {
                score.wrong += 1;
                notes.push(format!(
                    "line {}: takes {:?} and makes {}, read as {:?} and {:?}: {}",
                    round.line,
                    round.takes,
                    round.makes,
                    hit.takes,
                    hit.makes,
                    words()
                ));
            }
        }
        unread
    }
}

/// Whether a slip is found: on its line, or a sum beside it.
fn found(error: &(usize, &str), findings: &[(usize, &Finding)]) -> bool {
    let (line, kind) = *error;
    let sums = |f: &Finding| f.kind != FindingKind::Unread;
    let own: Vec<_> = findings.iter().filter(|(at, _)| *at == line).collect();
    own.iter().any(|(_, f)| kind == "word" || sums(f))
        || own.is_empty() && findings.iter().any(|(at, f)| at.abs_diff(line) == 1 && sums(f))
}
