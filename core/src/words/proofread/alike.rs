//! Findings that say the same of the same construct are told once, and how many more there are.

use std::collections::BTreeMap;

use super::finding::{Finding, FindingKind};

/// So many rounds that do not add up and are worded alike, and it is the reading that is in
/// doubt, not the text.
const TOO_MANY: usize = 4;

/// Bytes before a finding that tell which construct it stands in.
const NEAR: usize = 300;

/// `findings`, those of one kind on words that differ in their numbers alone told once.
pub(super) fn merged(text: &str, findings: Vec<Finding>) -> Vec<Finding> {
    let mut seen: BTreeMap<(FindingKind, String), usize> = BTreeMap::new();
    let keys: Vec<(FindingKind, String)> =
        findings.iter().map(|f| (f.kind, construct(text, f))).collect();
    for key in &keys {
        *seen.entry(key.clone()).or_default() += 1;
    }
    let mut told: BTreeMap<(FindingKind, String), ()> = BTreeMap::new();
    let mut kept = Vec::with_capacity(findings.len());
    for (mut finding, key) in findings.into_iter().zip(keys) {
        let many = seen.get(&key).copied().unwrap_or(1);
        let doubted = accuses(finding.kind) && many >= TOO_MANY;
        if many == 1 || accuses(finding.kind) && !doubted || !merges(finding.kind) {
            kept.push(finding);
            continue;
        }
        if told.insert(key, ()).is_some() {
            continue;
        }
        if doubted {
            let said = finding.message.trim_end_matches('.').to_owned();
            finding.kind = FindingKind::Unread;
            finding.message = format!("As I read this: {said}. The reading may be at fault");
            finding.mend = None;
        } else {
            finding.message = finding.message.trim_end_matches('.').to_owned();
        }
        finding.message.push_str(&format!(", and {} more like it.", many - 1));
        kept.push(finding);
    }
    kept
}

fn accuses(kind: FindingKind) -> bool {
    matches!(kind, FindingKind::Takes | FindingKind::Count | FindingKind::Repeat)
}

fn merges(kind: FindingKind) -> bool {
    accuses(kind) || kind == FindingKind::Unread
}

/// The words of the line a finding stands in, numbers and case aside.
fn construct(text: &str, finding: &Finding) -> String {
    let words = match finding.kind {
        FindingKind::Unread => text.get(finding.at.clone()),
        _ => {
            // Of a very long line only what is near.
            let at = &finding.at;
            let mut from = at.start.min(text.len()).saturating_sub(NEAR);
            while !text.is_char_boundary(from) {
                from -= 1;
            }
            let before = text.get(from..at.start).unwrap_or_default();
            let start = before.rfind('\n').map_or(from, |i| from + i + 1);
            text.get(start..at.end)
        }
    };
    let mut key = String::new();
    for c in words.unwrap_or_default().chars() {
        if c.is_ascii_digit() {
            if !key.ends_with('#') {
                key.push('#');
            }
        } else {
            key.extend(c.to_lowercase());
        }
    }
    key
}
