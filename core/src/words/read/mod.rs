//! Reading anyone's written pattern into the tree.
//!
//! The steps, a file each: characters fold into [`lexemes`]; [`terms`] finds out which
//! lexicon they are of; by its [`words`] they become [`tokens`]; [`lines`] finds what belongs
//! to one [`heading`]; a grammar reads each line ([`round`], with [`groups`],
//! [`stitch`], [`place`], [`doing`], [`count`] and [`settle`]); [`legend`] and [`pieces`] tell what the other lines are.
//!
//! What cannot be read is kept as text and listed; the rest is read all the same. Every
//! token is looked at a bounded number of times, so that time is linear in the text.

mod count;
mod doing;
mod groups;
mod heading;
mod legend;
mod lexemes;
mod lines;
mod pieces;
mod place;
mod round;
mod settle;
mod stitch;
mod terms;
#[cfg(test)]
mod tests;
mod tokens;
mod words;

use std::collections::BTreeMap;

use self::pieces::{Name, name, name_pieces};
use self::round::Worked;
use self::tokens::{Tok, Token, prepare, span};
use self::words::{Say, Vocabulary};
use super::tree::{Decrease, Line, Op, Pattern, Placed, Rounds, Span, StitchKind};

pub use self::terms::{TermsFound, Wish};

/// A text, read.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct Reading {
    /// What it says.
    pub pattern: Pattern,
    /// Code of the lexicon that it was read in.
    pub lexicon: &'static str,
    /// How that lexicon is known.
    pub terms: TermsFound,
    /// Places that were kept as text because they could not be read, in order.
    pub unread: Vec<Span>,
    /// Headings that say “row” and were read as rounds, because the text works in rounds.
    pub rows_as_rounds: Vec<Span>,
}

/// Reads `text`, whatever it holds; what is no pattern comes out as notes. Places are bytes
/// of `text`. Time and memory are linear in its length.
pub fn read(text: &str, wish: Wish<'_>) -> Reading {
    let lexemes = lexemes::lexemes(text);
    let (lexicon, terms) = terms::find(&lexemes, wish);
    let tokens = tokens::tokens(&lexemes, Vocabulary::of(lexicon));
    let in_rounds = tokens.iter().any(|t| matches!(t.tok, Tok::Ring | Tok::Round));
    let mut reader = Reader { text, in_rounds, ..Reader::default() };
    for line in lines::lines(&tokens) {
        reader.line(&line);
    }
    name_pieces(&mut reader.lines, &reader.names);
    Reading {
        pattern: Pattern { lines: reader.lines },
        lexicon,
        terms,
        unread: reader.unread,
        rows_as_rounds: reader.rows_as_rounds,
    }
}

/// What is known while lines are read one after another.
#[derive(Debug, Default)]
struct Reader<'t> {
    text: &'t str,
    /// Whether the text works in rounds, so that “row” means round.
    in_rounds: bool,
    /// Kind of stitch of the round before.
    kind: Option<StitchKind>,
    /// Whether the list of abbreviations makes a plain “dec” the invisible one.
    invisible: bool,
    /// Last round of the piece so far.
    last_round: Option<u32>,
    lines: Vec<Placed<Line>>,
    /// Where the rounds of the piece so far stand in `lines`, by their first number.
    rounds: BTreeMap<u32, usize>,
    /// Beside each line, whether it may be a name.
    names: Vec<Name>,
    unread: Vec<Span>,
    rows_as_rounds: Vec<Span>,
}

impl Reader<'_> {
    fn line(&mut self, line: &lines::Line<'_>) {
        let at = span(line.tokens);
        match line.heading {
            Some(heading) if !heading.row || self.in_rounds => {
                if heading.first == 1 {
                    self.kind = None;
                    self.rounds.clear();
                }
                let (worked, kind) =
                    self.again(line.body()).unwrap_or_else(|| self.work(line.body()));
                let heads = if heading.bare {
                    worked.work.first().is_some_and(|op| is_stitches(&op.it))
                } else {
                    worked.work.iter().any(|op| !matches!(op.it, Op::Note(_)))
                };
                if heads {
                    self.kind = Some(kind);
                    if heading.row {
                        self.rows_as_rounds.push(span(&line.tokens[..heading.tokens]));
                    }
                    self.rounds(heading.first, heading.last, worked, at);
                } else if heading.bare {
                    self.unheaded(&lines::Line { heading: None, ..line.clone() }, at);
                } else {
                    self.note(line.tokens, at, true);
                }
            }
            Some(_) => self.note(line.tokens, at, true),
            None => self.unheaded(line, at),
        }
    }

    /// “repeat Rnd 4”, “as Rnd 4 (18)”: the work of that round, at the place of the words
    /// that stand for it. `None` where nothing of the kind is said or known.
    fn again(&self, body: &[Token]) -> Option<(Worked, StitchKind)> {
        let from = body.iter().position(|t| !t.tok.parts())?;
        let said = body[from..].iter().take_while(|t| {
            matches!(t.tok, Tok::Say(Say::Repeat | Say::As | Say::The | Say::Work))
        });
        let round = from + said.count();
        let [Token { tok: Tok::Round, .. }, Token { tok: Tok::Number(n), .. }, after @ ..] =
            &body[round..]
        else {
            return None;
        };
        let (&first, &line) = self.rounds.range(..=n).next_back().filter(|_| round > from)?;
        let Line::Rounds(found) = &self.lines.get(line)?.it else { return None };
        let at = span(&body[from..round + 2]);
        let mut left = MOST_REPEATED;
        let work = moved(&found.work, &at, &mut left);
        let (counted, _) = self.work(after);
        let known = (first..=found.last).contains(n) && left > 0 && counted.work.is_empty();
        let worked = Worked { work, stated: counted.stated, unread: counted.unread };
        known.then_some((worked, self.kind.unwrap_or(StitchKind::Single)))
    }

    fn rounds(&mut self, first: u32, last: u32, worked: Worked, at: Span) {
        let Worked { work, stated, unread } = worked;
        self.last_round = Some(last);
        self.rounds.insert(first, self.lines.len());
        self.unread.extend(unread);
        self.push(Line::Rounds(Rounds { first, last, work, stated }), at, Name::No);
    }

    /// A line without the number of a round.
    fn unheaded(&mut self, line: &lines::Line<'_>, at: Span) {
        let body = line.body();
        let explained = legend::abbreviations(body, self.text);
        if !explained.is_empty() {
            self.invisible |= legend::makes_invisible(body);
            for Placed { it, at } in explained {
                self.push(it, at, Name::No);
            }
            return;
        }
        let (worked, kind) = self.work(body);
        let work = &worked.work;
        let all_read =
            worked.unread.is_empty() && !work.iter().any(|op| matches!(op.it, Op::Note(_)));
        let counted = body.iter().any(|t| {
            t.tok.counts()
                || matches!(t.tok, Tok::InEach | Tok::Say(Say::Around) | Tok::Even(_))
        });
        // “Mit Füllwatte ausstopfen”: German has the verb last.
        let done = match work.as_slice() {
            [Placed { it: Op::Note(_), .. }, done] => Some(done),
            _ => work.first(),
        };
        match done.map(|op| &op.it) {
            Some(Op::FastenOff | Op::Stuff | Op::Marker | Op::Turn | Op::Join) => {
                // A length or a round named beside them changes no count.
                let works = |at: &Span| {
                    body.iter().any(|t| t.tok.is_work() && at.contains(&t.at().start))
                };
                self.unread.extend(worked.unread.into_iter().filter(works));
                self.push(Line::Do(worked.work), at, Name::No);
            }
            Some(Op::Colour(_)) if all_read => self.push(Line::Do(worked.work), at, Name::No),
            Some(_) if all_read && counted => match (&worked.stated, self.last_round) {
                // A line that comes to a count is a round, whether numbered or not.
                (Some(_), Some(last)) => {
                    self.kind = Some(kind);
                    let next = last.saturating_add(1);
                    self.rounds(next, next, worked, at);
                }
                _ => self.push(Line::Do(worked.work), at, Name::No),
            },
            _ => {
                let known = body.iter().filter(|t| t.tok != Tok::Unknown).count();
                let told = |tok| {
                    matches!(tok, Tok::Gauge | Tok::Hook | Tok::Yarn | Tok::Say(Say::Section))
                };
                let works = work.iter().any(|op| is_stitches(&op.it))
                    && !body.iter().any(|t| told(t.tok));
                // Mostly trade words and numbers: a round, not a remark.
                self.note(line.tokens, at, works && counted && 4 * known > 3 * body.len());
            }
        }
    }

    fn note(&mut self, tokens: &[Token], at: Span, unread: bool) {
        if unread {
            self.unread.push(at.clone());
        }
        let named = if unread { Name::No } else { name(tokens, self.text) };
        let text = self.text.get(at.clone()).unwrap_or_default().to_owned();
        self.push(Line::Note { text, unread }, at, named);
    }

    fn push(&mut self, line: Line, at: Span, name: Name) {
        if name == Name::Marked {
            self.last_round = None;
        }
        self.lines.push(Placed::at(line, at));
        self.names.push(name);
    }

    fn work(&self, body: &[Token]) -> (Worked, StitchKind) {
        let mut tokens = body.to_vec();
        let kind = prepare(&mut tokens, self.kind.unwrap_or(StitchKind::Single));
        if self.invisible {
            for token in &mut tokens {
                if let Tok::Decrease(_, how) = &mut token.tok {
                    *how = Decrease::Invisible;
                }
            }
        }
        (round::work(&tokens, self.text, kind), kind)
    }
}

/// Most operations of a round that another may stand for, so that the tree stays linear in
/// the text.
const MOST_REPEATED: usize = 64;

/// A copy of `work` that stands at `at`, down to where `left` operations are used up.
fn moved(work: &[Placed<Op>], at: &Span, left: &mut usize) -> Vec<Placed<Op>> {
    let mut copy = Vec::new();
    for op in work {
        *left = left.saturating_sub(1);
        if *left == 0 {
            break;
        }
        let it = match &op.it {
            Op::Group { body, times } => {
                Op::Group { body: moved(body, at, left), times: *times }
            }
            Op::Only { only, body } => Op::Only { only: *only, body: moved(body, at, left) },
            other => other.clone(),
        };
        copy.push(Placed::at(it, at.clone()));
    }
    copy
}

fn is_stitches(op: &Op) -> bool {
    !matches!(
        op,
        Op::Note(_) | Op::Stuff | Op::FastenOff | Op::Marker | Op::Turn | Op::Colour(_)
    )
}
