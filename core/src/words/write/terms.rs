//! How terms are printed, and which bare “inc” and “dec” are understood as meant.

use crate::words::lexicon::Term;
use crate::words::tree::{Op, Placed, StitchKind};

/// The abbreviation of `count` of the term, where there is one, in the plural that is in use
/// for it; the word otherwise.
pub(super) fn plural(term: &Term, count: u32) -> &str {
    match &term.short {
        Some(short) if count != 1 => short_plural(term).unwrap_or(short),
        _ => term.brief(count),
    }
}

/// The plural of an abbreviation that takes an s: `sts`, `Rnds`.
pub(super) fn short_plural(term: &Term) -> Option<&str> {
    let short = term.short.as_deref()?;
    term.also.iter().map(String::as_str).find(|form| form.strip_suffix('s') == Some(short))
}

/// The kinds of stitch that a round names, in the order in which they are read.
///
/// A bare “inc” or “dec” has the kind of the last plain stitch named before it in its round,
/// else of the next one named after it, else of the round below. It is printed only where
/// that is its kind whether or not increases and decreases in full words are taken to name a
/// kind as well, and whichever of those are printed as bare words themselves.
#[derive(Debug)]
pub(super) enum NamedKinds {
    /// One kind throughout, and whether a plain stitch names it.
    Alike(StitchKind, bool),
    /// Several: each kind and whether it stands in a plain stitch.
    Several(Vec<(StitchKind, bool)>),
    /// None.
    Nothing,
}

impl NamedKinds {
    /// The kinds that `work` names.
    pub(super) fn in_work(work: &[Placed<Op>]) -> Self {
        let mut named = Self::Nothing;
        visit(work, &mut |kind, plain| match &mut named {
            Self::Nothing => named = Self::Alike(kind, plain),
            Self::Alike(first, any) if *first == kind => *any |= plain,
            Self::Alike(..) => named = Self::Several(Vec::new()),
            Self::Several(_) => {}
        });
        if let Self::Several(list) = &mut named {
            visit(work, &mut |kind, plain| list.push((kind, plain)));
        }
        named
    }

    /// Whether the bare word at place `at` among the named is understood as `kind`, on a
    /// round of `below`.
    pub(super) fn understood(
        &self,
        at: usize,
        kind: StitchKind,
        below: Option<StitchKind>,
    ) -> bool {
        if kind == StitchKind::Slip {
            return false;
        }
        match self {
            Self::Nothing => false,
            Self::Alike(_, plain) => *plain || below == Some(kind),
            Self::Several(list) => {
                let (before, after) = (&list[..at], &list[(at + 1).min(list.len())..]);
                // Up to the next plain stitch that way: its kind, if all there have that kind.
                let telling = |(k, plain): &&(StitchKind, bool)| *plain || *k != kind;
                let told = before.iter().rev().find(telling).or(after.iter().find(telling));
                told.is_some_and(|(k, _)| *k == kind)
            }
        }
    }

    /// The kind of the whole round, where it has one only.
    pub(super) fn kind(&self) -> Option<StitchKind> {
        match self {
            Self::Alike(kind, _) => Some(*kind),
            Self::Several(_) | Self::Nothing => None,
        }
    }
}

/// Calls `named` with every kind in reading order, and whether it stands in a plain stitch.
fn visit(work: &[Placed<Op>], named: &mut dyn FnMut(StitchKind, bool)) {
    for op in work {
        match &op.it {
            Op::Each { kind, .. } => named(*kind, true),
            Op::Into { kind, .. }
            | Op::Together { kind, .. }
            | Op::Ring { kind, .. }
            | Op::IntoChain { kind, .. } => named(*kind, false),
            Op::Group { body, .. } | Op::Only { body, .. } => visit(body, named),
            _ => {}
        }
    }
}

#[cfg(test)]
mod tests {
    use super::*;
    use StitchKind::{HalfDouble, Single};

    fn each(kind: StitchKind) -> Placed<Op> {
        Placed::unread(Op::Each { kind, count: 3 })
    }

    fn into(kind: StitchKind) -> Placed<Op> {
        Placed::unread(Op::Into { kind, many: 2 })
    }

    #[test]
    fn a_bare_increase_goes_by_the_stitches_around_it() {
        let alike = NamedKinds::in_work(&[into(HalfDouble), each(HalfDouble)]);
        assert!(alike.understood(0, HalfDouble, Some(Single)));
        let alone = NamedKinds::in_work(&[into(HalfDouble)]);
        assert!(!alone.understood(0, HalfDouble, Some(Single)));
        assert!(alone.understood(0, HalfDouble, Some(HalfDouble)));
        let mixed = NamedKinds::in_work(&[
            each(Single),
            into(Single),
            into(HalfDouble),
            each(HalfDouble),
        ]);
        assert!(mixed.understood(1, Single, None));
        assert!(!mixed.understood(2, HalfDouble, None));
    }
}
