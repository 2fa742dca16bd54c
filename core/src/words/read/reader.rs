//! The lines of a text, one after another: which are rounds, and what the others are.

use super::draft::{Draft, DraftLine, Name};
use super::heading::bullets_of;
use super::heading_range::Heading;
use super::layers::{Layers, is_gauge, peel, rematch};
use super::legend;
use super::lines::MeantLine;
use super::pieces::name;
use super::points::drop_points;
use super::round::work;
use super::token::{Say, Tok, Token, span};
use super::tokens::prepare;
use crate::words::course::founds;
use crate::words::tree::{Decrease, Line, Op, Placed, Span, StitchKind};

/// What is known while lines are read one after another.
#[derive(Debug, Default)]
pub(super) struct Reader<'t> {
    pub(super) text: &'t str,
    /// Whether the text works in rounds, so that “row” means round.
    pub(super) in_rounds: bool,
    /// Kind of stitch of the round before.
    pub(super) kind: Option<StitchKind>,
    /// Whether the list of abbreviations makes a plain “dec” the invisible one.
    pub(super) invisible: bool,
    /// Whether its rounds have no numbers, so that sentences tell them.
    pub(super) prose: bool,
    /// Whether the line that is read names a ring.
    pub(super) ring: bool,
    /// Whether a number with a point is an ordinal.
    pub(super) ordinal_point: bool,
    /// The heading of the last line that may be a round.
    pub(super) before: Option<Heading>,
    pub(super) entries: Vec<DraftLine>,
    pub(super) rows_as_rounds: Vec<Span>,
}

impl Reader<'_> {
    pub(super) fn line(&mut self, line: &MeantLine<'_>) {
        let at = span(line.tokens);
        self.ring = line.tokens.iter().any(|t| t.tok == Tok::Ring);
        match line.heading {
            _ if is_gauge(line.tokens) => self.note(line.tokens, at, false, None),
            Some(heading) if !heading.row || self.in_rounds => self.headed(heading, line, at),
            Some(_) => self.note(line.tokens, at, true, None),
            None => self.unheaded(line, at),
        }
    }

    fn headed(&mut self, heading: Heading, line: &MeantLine<'_>, at: Span) {
        if heading.numbered && heading.first == 1 {
            self.kind = None;
        }
        let mut draft = self.draft(Some(heading), line.body());
        let from = bullets_of(line.tokens);
        if let [open, number @ Token { tok: Tok::Number(n), .. }, close, ..] =
            &line.tokens[from..heading.tokens.max(from)]
            && heading.tokens > from + 3
            && matches!((open.tok, close.tok), (Tok::Open(_), Tok::Close))
            && line.tokens[from..heading.tokens].iter().any(|t| t.tok == Tok::Round)
            && draft.stated().is_none()
        {
            draft.layers.early = Some(Placed::at(*n, number.at()));
        }
        // A round whose number follows on is one, whatever its words say.
        let before = self.before;
        let follows = before.is_some_and(|b| {
            b.numbered && heading.numbered && b.last.checked_add(1) == Some(heading.first)
        }) && !draft.tokens.is_empty();
        let work = &draft.worked.work;
        let told = draft.layers.told.is_some()
            || follows && draft.stated().is_some()
            || draft.tokens.is_empty() && draft.layers.early.is_some()
            || counts_stitches(&draft.tokens)
            || draft.tokens.iter().take(3).any(|t| {
                matches!(
                    t.tok,
                    Tok::Ring
                        | Tok::InEach
                        | Tok::Ordinal(_)
                        | Tok::Even(_)
                        | Tok::Say(Say::Each | Say::Over)
                )
            })
            || draft.tokens.iter().take(6).any(|t| matches!(t.tok, Tok::Loop(_)))
            || draft.tokens.len() <= LONGEST_SENTENCE
                && draft.tokens.iter().any(|t| t.tok == Tok::Ring)
                && draft.tokens.iter().any(|t| matches!(t.tok, Tok::Kind(_) | Tok::Stitch));
        draft.heads = if heading.bare {
            work.iter()
                .find(|op| !matches!(op.it, Op::Note(_) | Op::Colour(_)))
                .is_some_and(|op| is_stitches(&op.it))
                || told
                || work
                    .iter()
                    .any(|op| op.it.works_stitches() || matches!(op.it, Op::Ring { .. }))
                    && line.tokens.iter().take(heading.tokens).any(|t| t.tok == Tok::Round)
                || draft.stated().is_some()
                    && line.tokens.iter().take(heading.tokens).any(|t| t.tok == Tok::Round)
        } else {
            true
        };
        let works = work.iter().any(|op| !matches!(op.it, Op::Note(_)));
        let counts = draft.tokens.iter().any(|t| t.tok.counts());
        if draft.heads && heading.bare || !heading.bare && (works || counts || told || follows)
        {
            self.kind = Some(draft.kind);
            if heading.row {
                self.rows_as_rounds.push(span(&line.tokens[..heading.tokens]));
            }
            let text = self.text.get(at.clone()).unwrap_or_default().to_owned();
            let line = Line::Note { text, unread: true };
            self.push(line, at, Name::No, Vec::new(), Some(draft));
        } else if heading.bare {
            self.unheaded(&MeantLine { heading: None, ..line.clone() }, at);
        } else {
            self.note(line.tokens, at, true, None);
        }
    }

    /// A line without the number of a round.
    fn unheaded(&mut self, line: &MeantLine<'_>, at: Span) {
        let body = line.body();
        let explained = legend::abbreviations(body, self.text);
        if !explained.is_empty() {
            self.invisible |= legend::makes_invisible(body);
            for Placed { it, at } in explained {
                self.push(it, at, Name::No, Vec::new(), None);
            }
            return;
        }
        // “or ch 3, join”: another way to do what stands above.
        if body.first().is_some_and(|t| t.tok == Tok::Say(Say::Or)) {
            return self.note(line.tokens, at, false, None);
        }
        let mut draft = self.draft(None, body);
        let worked = &draft.worked;
        let work = &worked.work;
        let all_read =
            worked.unread.is_empty() && !work.iter().any(|op| matches!(op.it, Op::Note(_)));
        let counted = body.iter().any(|t| {
            t.tok.counts()
                || matches!(t.tok, Tok::InEach | Tok::Say(Say::Around) | Tok::Even(_))
        });
        let stitches = work.iter().any(|op| is_stitches(&op.it));
        let tells = self.prose && tells_a_round(&draft);
        draft.stands_alone = stitches && counted || tells;
        // “Mit Füllwatte ausstopfen”: German has the verb last.
        let done = match work.as_slice() {
            [Placed { it: Op::Note(_), .. }, done] => Some(done),
            _ => work.first(),
        };
        match done.map(|op| &op.it) {
            Some(Op::FastenOff | Op::Stuff | Op::Marker | Op::Turn) => {
                // A length or a round named beside them changes no count.
                let works = |at: &&Span| {
                    body.iter().any(|t| t.tok.is_work() && at.contains(&t.at().start))
                };
                let unread = worked.unread.iter().filter(works).cloned().collect();
                let line = Line::Do(worked.work.clone());
                // “Stuff, and then decrease all around”
                let round = tells || draft.stands_alone && draft.stated().is_some();
                self.push(line, at, Name::No, unread, round.then_some(draft));
            }
            Some(Op::Join) => {
                let line = Line::Do(worked.work.clone());
                self.push(line, at, Name::No, Vec::new(), None);
            }
            Some(Op::Colour(_)) if all_read && !stitches => {
                self.push(Line::Do(worked.work.clone()), at, Name::No, Vec::new(), None);
            }
            Some(_) if all_read && counted => {
                self.push(Line::Do(worked.work.clone()), at, Name::No, Vec::new(), Some(draft));
            }
            _ => {
                let known = body.iter().filter(|t| t.tok != Tok::Unknown).count();
                let told = |tok| {
                    matches!(tok, Tok::Gauge | Tok::Hook | Tok::Yarn | Tok::Say(Say::Section))
                };
                // “between rounds 6 and 7” speaks of rounds, and is none.
                let refers = draft.layers.told.is_none()
                    && body.iter().skip(1).any(|t| t.tok == Tok::Round)
                    && !body.iter().any(|t| t.tok == Tok::Say(Say::Repeat));
                // “Ch 2 at the start is not a stitch.”
                let remarks = refers
                    || body.iter().any(|t| told(t.tok))
                    || draft.stated().is_none()
                        && body.iter().any(|t| t.tok == Tok::Say(Say::Remark));
                let works = stitches && !remarks;
                // Mostly trade words and numbers: a round, not a remark.
                let unread = works && counted && 4 * known > 3 * body.len();
                let maybe = draft.stated().is_some()
                    || self.ring && body.iter().any(|t| t.tok.is_work())
                    || draft.layers.told.is_some()
                    || tells
                    || draft.stands_alone && !remarks;
                self.note(line.tokens, at, unread, maybe.then_some(draft));
            }
        }
    }

    /// Takes numbers that head no round for what they are: those of a list, or of a line of
    /// prose that was broken before one. A round's number follows on from its neighbour's.
    pub(super) fn drop_stray_headings(&mut self) {
        let heading = |e: &DraftLine| e.draft.as_ref().and_then(|d| d.heading);
        let numbered: Vec<(usize, Heading)> = self
            .entries
            .iter()
            .enumerate()
            .filter_map(|(i, e)| heading(e).filter(|h| h.numbered).map(|h| (i, h)))
            .collect();
        let follows = |a: &Heading, b: &Heading| a.last.checked_add(1) == Some(b.first);
        for (k, (i, own)) in numbered.iter().enumerate().filter(|(_, (_, h))| h.bare) {
            // A number left out or there twice is a slip, and still heads a round.
            let before = k.checked_sub(1).is_some_and(|b| {
                let last = numbered[b].1.last;
                (last..=last.saturating_add(2)).contains(&own.first)
            });
            let after = numbered.get(k + 1).is_some_and(|(_, next)| follows(own, next));
            let entry = &mut self.entries[*i];
            let begins =
                entry.draft.as_ref().is_some_and(|d| founds(&d.worked.work)) && own.first == 1;
            if !(before || after || begins) && numbered.len() > 1 {
                if let Line::Note { unread, .. } = &mut entry.line {
                    *unread = false;
                }
                entry.unread.clear();
                entry.draft = None;
            }
        }
    }

    /// “R6 - 9 sc 30” before round 10 is a range; before round 7 it works nine stitches.
    pub(super) fn stretch_headings(&mut self) {
        let mut next: Option<u32> = None;
        for entry in self.entries.iter_mut().rev() {
            let Some(draft) = &mut entry.draft else { continue };
            let Some(heading) = draft.heading.filter(|h| h.numbered) else { continue };
            if let [
                Token { tok: Tok::Dash, .. },
                Token { tok: Tok::Number(last), .. },
                rest @ ..,
            ] = draft.tokens.as_slice()
                && heading.first == heading.last
                && next == last.checked_add(1)
                && *last > heading.first
                && !rest.is_empty()
            {
                let heading = Heading { last: *last, ..heading };
                let tokens = rest.to_vec();
                let (layers, kind) = (draft.layers.clone(), draft.kind);
                *draft = again(heading, tokens, layers, kind, self.text, draft);
            }
            next = draft.heading.map(|h| h.first);
        }
    }

    /// Lines of a list of abbreviations are no rounds, whatever they are like.
    pub(super) fn quiet_lists(&mut self) {
        let listed = |e: &DraftLine| matches!(e.line, Line::Abbreviation { .. });
        let near: Vec<bool> = (0..self.entries.len())
            .map(|i| {
                let before = i.checked_sub(1).is_some_and(|b| listed(&self.entries[b]));
                before && self.entries.get(i + 1).is_some_and(listed)
            })
            .collect();
        for (entry, near) in self.entries.iter_mut().zip(near) {
            if let Line::Note { unread, .. } = &mut entry.line
                && near
            {
                *unread = false;
                entry.unread.clear();
                entry.draft = None;
            }
        }
    }

    fn note(&mut self, tokens: &[Token], at: Span, unread: bool, draft: Option<Draft>) {
        let places = if unread { vec![at.clone()] } else { Vec::new() };
        let named = if unread { Name::No } else { name(tokens, self.text) };
        let text = self.text.get(at.clone()).unwrap_or_default().to_owned();
        self.push(Line::Note { text, unread }, at, named, places, draft);
    }

    fn push(
        &mut self,
        line: Line,
        at: Span,
        name: Name,
        unread: Vec<Span>,
        draft: Option<Draft>,
    ) {
        let ring = std::mem::take(&mut self.ring);
        self.before = draft.as_ref().and_then(|d| d.heading).or(self.before);
        self.entries.push(DraftLine { line, at, name, unread, ring, draft });
    }

    /// What a line says, its heading left out.
    fn draft(&self, heading: Option<Heading>, body: &[Token]) -> Draft {
        let mut tokens = body.to_vec();
        drop_points(&mut tokens, self.text, self.ordinal_point);
        let kind = prepare(&mut tokens, self.kind.unwrap_or(StitchKind::Single));
        if self.invisible {
            for token in &mut tokens {
                if let Tok::Decrease(_, how) = &mut token.tok {
                    *how = Decrease::Invisible;
                }
            }
        }
        let mut layers = peel(&mut tokens);
        // “6-10) 30”: the number alone is the count of an even round.
        let lead = tokens.iter().take_while(|t| t.tok.parts()).count();
        if let [number @ Token { tok: Tok::Number(n), .. }, end @ ..] = &tokens[lead..]
            && heading.is_some_and(|h| h.numbered)
            && matches!(end, [] | [Token { tok: Tok::Stop, .. }])
            && layers.early.is_none()
        {
            layers.early = Some(Placed::at(*n, number.at()));
            tokens.clear();
        }
        let worked = work(&tokens, self.text, kind);
        Draft::new(heading, tokens, layers, worked, kind)
    }
}

/// Longer sentences tell more than one round, in tokens.
const LONGEST_SENTENCE: usize = 32;

/// Whether a sentence tells a round: what is done and where, stitches and the ring they go
/// into, or how many rounds come.
fn tells_a_round(draft: &Draft) -> bool {
    let any = |want: &dyn Fn(Tok) -> bool| draft.tokens.iter().any(|t| want(t.tok));
    let shapes = any(&|t| {
        matches!(
            t,
            Tok::Increase(_) | Tok::Decrease(..) | Tok::Say(Say::Doubled | Say::Together)
        )
    });
    let placed = any(&|t| {
        matches!(
            t,
            Tok::InEach
                | Tok::Ordinal(_)
                | Tok::Number(_)
                | Tok::Even(_)
                | Tok::Say(Say::Each | Say::Around)
        )
    });
    // “danach jede dritte (24 Maschen)”
    let goes_on = any(&|t| matches!(t, Tok::Ordinal(_)))
        && any(&|t| t == Tok::Say(Say::Each))
        && draft.stated().is_some();
    let rings = any(&|t| t == Tok::Ring) && any(&|t| matches!(t, Tok::Number(3..=24)));
    let works =
        any(&|t| t.is_work() || matches!(t, Tok::Stitch | Tok::InEach | Tok::Say(Say::Work)));
    draft.tokens.len() <= LONGEST_SENTENCE
        && (shapes && placed || goes_on || rings || draft.layers.told.is_some() && works)
}

/// “24 M häkeln”: a number of stitches, and nothing else.
fn counts_stitches(tokens: &[Token]) -> bool {
    let counted = tokens
        .windows(2)
        .any(|pair| matches!((pair[0].tok, pair[1].tok), (Tok::Number(_), Tok::Stitch)));
    let idle = |t: &Token| {
        t.tok.parts()
            || matches!(
                t.tok,
                Tok::Number(_)
                    | Tok::Stitch
                    | Tok::Open(_)
                    | Tok::Close
                    | Tok::Equals
                    | Tok::Say(Say::Work | Say::The)
            )
    };
    counted && tokens.iter().all(idle)
}

/// `draft` under another heading, with other tokens for its work.
fn again(
    heading: Heading,
    mut tokens: Vec<Token>,
    layers: Layers,
    kind: StitchKind,
    text: &str,
    draft: &Draft,
) -> Draft {
    rematch(&mut tokens);
    let worked = work(&tokens, text, kind);
    let mut made = Draft::new(Some(heading), tokens, layers, worked, kind);
    (made.heads, made.stands_alone) = (draft.heads, draft.stands_alone);
    made
}

fn is_stitches(op: &Op) -> bool {
    !matches!(
        op,
        Op::Note(_) | Op::Stuff | Op::FastenOff | Op::Marker | Op::Turn | Op::Colour(_)
    )
}
