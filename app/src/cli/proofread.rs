//! `plumpline proofread`: what does not add up in a written pattern, for people and programs.

use std::fmt::Write as _;
use std::path::PathBuf;
use std::process::ExitCode;

use clap::Args;
use plumpline_core::pattern::HouseStyle;
use plumpline_core::pattern::lexicon;
use plumpline_core::pattern::proofread::{
    Finding, FindingKind, LineIndex, RoundRead, listing, proofread,
};
use plumpline_core::pattern::read::{Reading, Saying, Sure, TermsFound, TermsWish, read_with};
use serde::Serialize;

use crate::work::files::pattern_text;

/// Exit status for a pattern with findings.
const FINDINGS: u8 = 3;

/// Arguments of `plumpline proofread`.
#[derive(Debug, Args)]
pub(super) struct ProofreadArgs {
    /// Pattern to check: text, a web page, .rtf, .docx or PDF; - for standard input.
    #[arg(value_name = "FILE")]
    file: PathBuf,
    /// What was read and the findings, as JSON.
    #[arg(long)]
    json: bool,
    /// Terms to read it in: us, uk, de, fr or es; found out from the text if left out.
    #[arg(long, value_parser = terms)]
    terms: Option<&'static str>,
    /// What words of it mean, in words that it reads; a number stands for any number. Once for
    /// each: --saying "3 plain, twin = (3 sc, inc) x 6".
    #[arg(long, value_name = "WORDS=MEANING", value_parser = saying)]
    saying: Vec<Saying>,
}

/// Words and what they mean, parted by the last equals sign.
fn saying(told: &str) -> Result<Saying, String> {
    let parts = told.rsplit_once('=').map(|(words, means)| (words.trim(), means.trim()));
    match parts {
        Some((words, means)) if !words.is_empty() && !means.is_empty() => {
            Ok(Saying { words: words.to_owned(), means: means.to_owned() })
        }
        _ => Err("it has no words or no meaning; write \"words = meaning\"".to_owned()),
    }
}

/// The code of the terms a person names.
pub(super) fn terms(name: &str) -> Result<&'static str, String> {
    let name = name.to_lowercase();
    let known = lexicon::all().iter();
    let mut codes = known.map(|l| l.code.as_str());
    codes
        .find(|code| *code == name || code.strip_prefix("en-") == Some(&name))
        .ok_or_else(|| "these are no terms it knows; write us, uk, de, fr or es".to_owned())
}

#[derive(Debug, Serialize)]
struct FindingsReport<'a> {
    terms: Terms<'a>,
    rounds: Vec<RoundLine<'a>>,
    findings: Vec<FindingLine<'a>>,
}

#[derive(Debug, Serialize)]
struct RoundLine<'a> {
    line: usize,
    part: usize,
    from: Option<u32>,
    to: Option<u32>,
    /// Rounds the line stands for.
    times: u32,
    takes: Option<u32>,
    makes: Option<u32>,
    read: bool,
    sure: &'static str,
    reading: &'a str,
    inferred: Vec<&'static str>,
}

impl<'a> RoundLine<'a> {
    fn of(round: &'a RoundRead) -> Self {
        Self {
            line: round.line,
            part: round.part,
            from: round.numbers.map(|n| n.0),
            to: round.numbers.filter(|_| !round.open).map(|n| n.1),
            times: round.times,
            takes: round.takes,
            makes: round.makes,
            read: round.sure != Sure::Unread,
            sure: round.sure.word(),
            reading: &round.reading,
            inferred: round.inferred.iter().map(|i| i.words()).collect(),
        }
    }
}

#[derive(Debug, Serialize)]
struct Terms<'a> {
    code: &'a str,
    name: &'a str,
    decided: bool,
    because: String,
}

#[derive(Debug, Serialize)]
struct FindingLine<'a> {
    round: Option<u32>,
    line: usize,
    column: usize,
    length: usize,
    kind: FindingKind,
    message: &'a str,
    mend: Option<&'a str>,
}

impl ProofreadArgs {
    pub(super) fn run(self) -> anyhow::Result<ExitCode> {
        let text = pattern_text(&self.file)?;
        let wish = self.terms.map_or(TermsWish::Infer, TermsWish::Lexicon);
        let reading = read_with(&text, wish, &self.saying);
        let findings = proofread(&text, &reading);
        let rounds = listing(&text, &reading, HouseStyle::bench());
        if self.json {
            let report = report(&text, &reading, &rounds, &findings);
            super::out::print(&(serde_json::to_string_pretty(&report)? + "\n"));
        } else {
            let file = self.file.display().to_string();
            super::out::print(&lines(&file, &text, (&reading, &rounds), &findings));
        }
        // Clean is only what was read to the last round.
        let clean = findings.is_empty()
            && !rounds.is_empty()
            && rounds.iter().all(|r| r.sure != Sure::Unread);
        Ok(if clean { ExitCode::SUCCESS } else { ExitCode::from(FINDINGS) })
    }
}

fn report<'a>(
    text: &str,
    reading: &Reading,
    rounds: &'a [RoundRead],
    findings: &'a [Finding],
) -> FindingsReport<'a> {
    let places = LineIndex::new(text);
    let lexicon = lexicon::by_code(reading.lexicon);
    let terms = Terms {
        code: lexicon.map_or("", |l| &l.code),
        name: lexicon.map_or("", |l| &l.name),
        decided: !matches!(reading.terms, TermsFound::Undecided { .. }),
        because: places.because(reading),
    };
    let line = |f: &'a Finding| {
        let (line, column) = places.of(f.at.start);
        FindingLine {
            round: f.round,
            line,
            column,
            length: text.get(f.at.clone()).map_or(0, |words| words.chars().count()),
            kind: f.kind,
            message: &f.message,
            mend: f.mend.as_ref().map(|m| m.text.as_str()),
        }
    };
    let rounds = rounds.iter().map(RoundLine::of).collect();
    FindingsReport { terms, rounds, findings: findings.iter().map(line).collect() }
}

fn lines(
    file: &str,
    text: &str,
    (reading, rounds): (&Reading, &[RoundRead]),
    findings: &[Finding],
) -> String {
    let places = LineIndex::new(text);
    let mut out = String::new();
    // Writing to a String cannot fail.
    let mut put = |line: String| writeln!(out, "{line}").ok();
    put(format!("{file}: {}", places.terms(reading)));
    for (word, meaning) in &reading.learnt {
        put(format!("“{word}” read as {}: so the sums come out.", meaning.words()));
    }
    for finding in findings {
        let (line, column) = places.of(finding.at.start);
        put(format!("\n{file}:{line}:{column}: {}", finding.message));
        // Tabs become one space each, so that the marks stand under what they mark.
        let shown = places.line(line).replace('\t', " ");
        let marked = text.get(finding.at.clone()).unwrap_or_default();
        let first = marked.lines().next().unwrap_or_default();
        put(format!("    {shown}"));
        let marks = "^".repeat(first.chars().count().max(1));
        put(format!("    {}{marks}", " ".repeat(column - 1)));
        if let Some(mend) = &finding.mend {
            put(format!("    {}", mend.text));
        }
    }
    let many = findings.len();
    let unread = rounds.iter().filter(|r| r.sure == Sure::Unread).count();
    let read = rounds.len() - unread;
    let of_rounds = match (read, unread) {
        (0, 0) => "no rounds were found in it".to_owned(),
        (read, 0) => format!("{read} lines of rounds read"),
        (read, unread) => format!("{read} lines of rounds read, {unread} not"),
    };
    put(match many {
        0 if unread == 0 && read > 0 => format!("It adds up: {of_rounds}."),
        0 => format!("Nothing else was found: {of_rounds}."),
        1 => format!("\n1 finding; {of_rounds}"),
        _ => format!("\n{many} findings; {of_rounds}"),
    });
    out
}
