//! A whole pattern, line by line.

use super::Below;
use super::Writer;
use super::ops::Scribe;
use super::pen::TextPen;
use crate::words::tree::{Line, Op, Pattern, Placed, Rounds};

/// Most rounds that a range is written out into where a style joins none.
const MOST_WRITTEN_OUT: u32 = 1200;

/// The lines of a pattern, and its stitches in all where every round can be counted.
pub(super) struct Page {
    pub(super) lines: Vec<TextPen>,
    pub(super) total: Option<u64>,
}

/// Writes `pattern` without what stands above and below its lines.
pub(super) fn page(writer: &Writer<'_>, pattern: &Pattern) -> Page {
    let mut page = Page { lines: Vec::new(), total: Some(0) };
    let mut below = Below::default();
    let mut lines = pattern.lines.iter().map(|line| &line.it).peekable();
    while let Some(line) = lines.next() {
        match line {
            Line::Piece(name) => {
                if !page.lines.is_empty() {
                    page.lines.push(TextPen::default());
                }
                let mut pen = TextPen::default();
                pen.given(name);
                page.lines.push(pen);
                // Whether a new piece starts in single crochet anew, nobody says.
                let single = Below::default().kind;
                let kind = below.kind.filter(|_| below.kind == single);
                below = Below { kind, count: None };
            }
            Line::Rounds(rounds) => {
                let mut rounds = rounds.clone();
                while writer.style.join_alike
                    && let Some(Line::Rounds(next)) = lines.peek()
                    && goes_on(&rounds, next)
                {
                    rounds.last = next.last;
                    lines.next();
                }
                below = page.rounds(writer, &rounds, below);
            }
            Line::Do(work) => {
                let mut pen = TextPen::default();
                Scribe::new(writer, &mut pen, below).write(work);
                pen.capitalise();
                if !pen.text.ends_with(['.', '!', '?']) {
                    pen.words(".");
                }
                page.lines.push(pen);
                below = after_doing(work, below);
            }
            // The list at the head is made anew from the words that are used.
            Line::Abbreviation { .. } => {}
            Line::Note { text, .. } => {
                for line in text.lines() {
                    let mut pen = TextPen::default();
                    pen.given(line);
                    page.lines.push(pen);
                }
            }
        }
    }
    page
}

/// Whether `next` only carries on what `rounds` do.
fn goes_on(rounds: &Rounds, next: &Rounds) -> bool {
    rounds.last.checked_add(1) == Some(next.first)
        && next.first <= next.last
        && rounds.work == next.work
        && rounds.stated == next.stated
}

/// What the first round after `work` outside the rounds stands on.
fn after_doing(work: &[Placed<Op>], below: Below) -> Below {
    let chains = work.iter().find_map(|op| match op.it {
        Op::Chain(n) => Some(n),
        _ => None,
    });
    match chains {
        None => below,
        // Only a chain joined into a ring is worked into stitch by stitch.
        Some(_) if !work.iter().any(|op| op.it == Op::Join) => Below { count: None, ..below },
        chain => Below { count: chain, ..below },
    }
}

impl Page {
    fn rounds(&mut self, writer: &Writer<'_>, rounds: &Rounds, below: Below) -> Below {
        let many = u64::from(rounds.last.saturating_sub(rounds.first)) + 1;
        let apart = !writer.style.join_alike && many <= MOST_WRITTEN_OUT.into();
        if apart {
            let mut below = below;
            for number in rounds.first..=rounds.last.max(rounds.first) {
                self.lines.push(line(writer, (number, number), rounds, below));
                below = self.count(&rounds.work, 1, below, rounds);
            }
            below
        } else {
            self.lines.push(line(writer, (rounds.first, rounds.last), rounds, below));
            self.count(&rounds.work, many, below, rounds)
        }
    }

    /// Adds the stitches of `many` rounds. What the next round stands on.
    fn count(
        &mut self,
        work: &[Placed<Op>],
        many: u64,
        below: Below,
        rounds: &Rounds,
    ) -> Below {
        let (after, worked) = below.after(work, many);
        let sum = |total: u64| worked.map(|worked| total.saturating_add(worked));
        self.total = self.total.and_then(sum);
        // What cannot be counted is taken as stated.
        let stated = rounds.stated.as_ref().map(|n| n.it);
        Below { count: after.count.or(stated), ..after }
    }
}

fn line(writer: &Writer<'_>, at: (u32, u32), rounds: &Rounds, below: Below) -> TextPen {
    let mut pen = writer.headed(at.0, at.1);
    pen.words(" ");
    pen.append(&writer.worked(&rounds.work, below));
    if let Some(stated) = &rounds.stated {
        pen.append(&writer.counted(stated.it));
    }
    pen
}
