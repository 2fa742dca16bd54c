//! What was read, round by round.

use super::report::LineIndex;
use crate::words::course::{CourseStep, courses};
use crate::words::lexicon::by_code;
use crate::words::read::{Inferred, Reading, Sure};
use crate::words::tree::{Line, Op, Span};
use crate::words::write::{Below, HouseStyle, Writer};

/// One line of rounds as it was understood.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct RoundRead {
    /// Where it stands.
    pub at: Span,
    /// Line of the text, from 1.
    pub line: usize,
    /// Piece of the pattern, from 1.
    pub part: usize,
    /// First and last number; `None` where the text gives none.
    pub numbers: Option<(u32, u32)>,
    /// Whether it leaves open how far it goes.
    pub open: bool,
    /// Rounds it stands for.
    pub times: u32,
    /// Stitches one such round takes; 0 into a ring or a foundation, `None` where unknown.
    pub takes: Option<u32>,
    /// Stitches it leaves: by its work, or as it states where that could not be counted.
    pub makes: Option<u32>,
    /// How sure the reading is.
    pub sure: Sure,
    /// The work in the house's words; empty where it was not read.
    pub reading: String,
    /// What the text leaves unsaid and was supplied.
    pub inferred: Vec<Inferred>,
}

/// Every line of rounds of `text`, in order, its work written in `style`.
pub fn listing(text: &str, reading: &Reading, style: &HouseStyle) -> Vec<RoundRead> {
    let Some(lexicon) = by_code(reading.lexicon) else { return Vec::new() };
    let places = LineIndex::new(text);
    let writer = Writer::new(style, lexicon);
    let mut found = Vec::new();
    for (part, course) in (1..).zip(courses(&reading.pattern, &reading.unread)) {
        // A chain joined to a ring is what the first round is worked on.
        let joined = course.lines.iter().take_while(|l| !matches!(l.it, Line::Rounds(_)));
        for line in joined {
            let Line::Do(ops) = &line.it else { continue };
            let chain = ops.iter().find_map(|op| match op.it {
                Op::Chain(n) if n > 1 => Some(n),
                _ => None,
            });
            let closed = ops.iter().any(|op| op.it == Op::Join);
            if let Some(n) = chain.filter(|_| closed) {
                found.push(RoundRead {
                    at: line.at.clone(),
                    line: places.line_of(line.at.start),
                    part,
                    numbers: None,
                    open: false,
                    times: 1,
                    takes: Some(0),
                    makes: Some(n),
                    sure: Sure::Certain,
                    reading: writer.text(ops, Below::default()),
                    inferred: Vec::new(),
                });
            }
        }
        for (i, step) in course.steps.iter().enumerate() {
            found.push(of_step(&places, &writer, reading, (part, i > 0), step));
        }
    }
    found
}

fn of_step(
    places: &LineIndex<'_>,
    writer: &Writer<'_>,
    reading: &Reading,
    (part, joined): (usize, bool),
    step: &CourseStep<'_>,
) -> RoundRead {
    let index = reading.pattern.lines.partition_point(|l| l.at.start < step.at.start);
    let known = reading.understood.get(&index);
    let sure = match known {
        _ if step.unread => Sure::Unread,
        Some(known) => known.sure,
        None => Sure::Certain,
    };
    let numbered = known.is_none_or(|k| k.numbered);
    let sum = step.run.sum.as_ref().ok().filter(|_| sure != Sure::Unread);
    // The first round of a range takes what is below it, the last leaves what it makes.
    // Over pieces that are joined behind the first round it takes the stitches of all of them.
    let joins = joined && known.is_some_and(|k| k.inferred.contains(&Inferred::Joined));
    let takes = match step.founds {
        true if joins => sum.map(|s| s.left),
        true => Some(0),
        false => step.run.takes.or(sum.map(|s| s.taken)),
    };
    let takes = takes.filter(|_| sure != Sure::Unread);
    let makes = match sure {
        Sure::Unread => step.stated(),
        _ => sum.map(|sum| sum.left),
    };
    let text = match sure {
        Sure::Unread => String::new(),
        _ => writer.text(&step.rounds.work, Below::default()),
    };
    RoundRead {
        at: step.at.clone(),
        line: places.line_of(step.at.start),
        part,
        numbers: numbered.then_some((step.rounds.first, step.rounds.last)),
        open: known.is_some_and(|k| k.open),
        times: step.many(),
        takes,
        makes,
        sure,
        reading: text,
        inferred: known.map(|k| k.inferred.clone()).unwrap_or_default(),
    }
}

/// The work of the line of `text` that `at` lies in, without its number and its count: what a
/// person may say the meaning of. `at` itself where no line of rounds is.
pub fn work_words(text: &str, reading: &Reading, at: &Span) -> Span {
    let lines = &reading.pattern.lines;
    let index = lines.partition_point(|l| l.at.start <= at.start).checked_sub(1);
    let work = index.and_then(|index| {
        let (line, known) = (lines.get(index)?, reading.understood.get(&index)?);
        let Line::Rounds(rounds) = &line.it else { return None };
        let mut work = known.work.clone();
        if let Some(stated) = rounds.stated.as_ref().filter(|s| s.at.start > work.start) {
            work.end = work.end.min(stated.at.start);
        }
        Some(work).filter(|work| work.start <= at.start && !work.is_empty())
    });
    let span = work.unwrap_or_else(|| at.clone());
    let words = text.get(span.clone()).unwrap_or_default();
    let first = words.lines().next().unwrap_or_default();
    let parting = |c: char| c.is_whitespace() || ":=–—-→,;./|".contains(c);
    let front = first.trim_start_matches(parting);
    let start = span.start + (first.len() - front.len());
    let kept = front.trim_end_matches(|c| parting(c) || "([{<".contains(c));
    start..start + kept.len()
}
