//! The proofreader finds each planted error, once, where it stands, and nothing else.

use plumpline_core::pattern::Span;
use plumpline_core::pattern::proofread::{Finding, proofread};
use plumpline_core::pattern::read::{TermsWish, read};
use plumpline_tests::corpus::clean;
use plumpline_tests::planted::{Planted, QUIET, planted};
use plumpline_tests::trees::lines_of;

fn findings(text: &str) -> Vec<Finding> {
    proofread(text, &read(text, TermsWish::Infer))
}

/// The kind by the name of its variant.
fn kind(finding: &Finding) -> String {
    let text = format!("{:?}", finding.kind);
    text.chars().take_while(|c| c.is_alphanumeric()).collect()
}

fn show(text: &str, findings: &[Finding]) -> String {
    let show = |f: &Finding| {
        let marked = text.get(f.at.clone()).unwrap_or("(no place)");
        format!("\n    {} round {:?} “{marked}”: {}", kind(f), f.round, f.message)
    };
    findings.iter().map(show).collect()
}

/// Whether a finding underlines what it should: on the same lines, and at least half of the
/// longer of the two is common to both.
fn is_there(text: &str, found: &Span, expected: &Span) -> bool {
    let start = found.start.max(expected.start);
    let common = found.end.min(expected.end).saturating_sub(start);
    2 * common >= found.len().max(expected.len())
        && lines_of(text, found) == lines_of(text, expected)
}

/// What is wrong with the findings of a pattern with one error.
fn wrong(case: &Planted) -> Option<String> {
    let found = findings(&case.text);
    let complain =
        |what: &str| Some(format!("{}: {what}{}", case.place(), show(&case.text, &found)));
    let [finding] = found.as_slice() else {
        return complain(&format!("{} findings", found.len()));
    };
    if kind(finding) != case.kind {
        return complain("another kind");
    }
    if case.round.is_some() && finding.round != case.round {
        return complain(&format!("round should be {:?}", case.round));
    }
    if !is_there(&case.text, &finding.at, &case.at) {
        return complain("another place");
    }
    None
}

#[test]
fn each_planted_error_is_the_one_finding() {
    let cases = planted();
    let wrong: Vec<String> = cases.iter().filter_map(wrong).collect();
    assert!(
        wrong.is_empty(),
        "{} of {} planted errors:\n{}",
        wrong.len(),
        cases.len(),
        wrong.join("\n")
    );
}

/// What is wrong with the mend that a pattern with one error is offered.
fn not_mended(case: &Planted) -> Option<String> {
    let found = findings(&case.text);
    let edit = found.iter().find_map(|finding| finding.mend.as_ref()?.edit.clone());
    let Some((at, new)) = edit else {
        return Some(format!("{}: no edit{}", case.place(), show(&case.text, &found)));
    };
    let [before, after] = [case.text.get(..at.start), case.text.get(at.end..)];
    let text = [before.unwrap_or_default(), &new, after.unwrap_or_default()].concat();
    let left = findings(&text);
    (!left.is_empty())
        .then(|| format!("{}: “{new}” leaves{}", case.place(), show(&text, &left)))
}

#[test]
fn mends_leave_nothing_to_find() {
    let cases = planted();
    let wanted = cases.iter().filter(|case| case.mends);
    let wrong: Vec<String> = wanted.filter_map(not_mended).collect();
    assert!(wrong.is_empty(), "{} mends:\n{}", wrong.len(), wrong.join("\n"));
}

#[test]
fn clean_patterns_give_no_findings() {
    let texts = clean().into_iter().map(|pattern| (pattern.name, pattern.text)).chain(QUIET);
    let noisy: Vec<String> = texts
        .map(|(name, text)| (name, text, findings(text)))
        .filter(|(_, _, found)| !found.is_empty())
        .map(|(name, text, found)| format!("{name}:{}", show(text, &found)))
        .collect();
    assert!(noisy.is_empty(), "{}", noisy.join("\n"));
}
