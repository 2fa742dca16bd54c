//! What is worked several times: plain rounds, runs of one word, repeats.

use super::super::pen::Value;
use super::super::style::{EvenForm, Nesting, RunForm};
use super::{PlaceInLine, Scribe, height};
use crate::words::tree::{Decrease, Op, Placed, StitchKind, Times};

impl Scribe<'_, '_> {
    pub(super) fn group(&mut self, body: &[Placed<Op>], times: Times, place: PlaceInLine) {
        match (body, times) {
            ([Placed { it: Op::Each { kind, count: 1 }, .. }], Times::Around) => {
                self.even(*kind)
            }
            ([Placed { it: Op::Into { kind, many }, .. }], Times::Around) => {
                self.increases_around(*kind, *many);
            }
            ([Placed { it: Op::Together { kind, many, how }, .. }], Times::Around) => {
                self.together(*kind, *many, *how, 1);
                self.pen.words(" ");
                self.pen.words(&self.writer.phrases.around);
            }
            ([Placed { it: Op::Into { kind, many }, .. }], Times::In(n)) => {
                self.increases(*kind, *many, n, body, place);
            }
            ([Placed { it: Op::Together { kind, many, how }, .. }], Times::In(n)) => {
                self.decreases((*kind, *many, *how), n, body, place);
            }
            _ => self.repeat(body, times, place),
        }
    }

    /// A plain round.
    fn even(&mut self, kind: StitchKind) {
        self.at += 1;
        let word = self.kind(kind, 1);
        match self.writer.style.even {
            EvenForm::Around => {
                let phrase = &self.writer.phrases.all_plain;
                self.pen.fill(self.writer, phrase, &[("kind", word)]);
            }
            EvenForm::InEach | EvenForm::Counted => {
                let phrase = &self.writer.phrases.in_each;
                self.pen.fill(self.writer, phrase, &[("kind", word)]);
            }
        }
    }

    /// An increase in every stitch.
    fn increases_around(&mut self, kind: StitchKind, many: u32) {
        if self.bare_increase(kind, many) {
            self.pen.words(self.writer.lexicon.increase.brief(1));
            self.pen.words(" ");
            match self.writer.style.even {
                EvenForm::Around => self.pen.words(&self.writer.phrases.around),
                _ => self.pen.words(&self.writer.lexicon.in_each.one),
            }
        } else {
            self.many_of("{many} {kind} {in_each}", kind, many, None);
        }
    }

    /// An increase `n` times.
    fn increases(
        &mut self,
        kind: StitchKind,
        many: u32,
        n: u32,
        body: &[Placed<Op>],
        place: PlaceInLine,
    ) {
        let at = self.at;
        // “1 inc” is an increase, not a group of one.
        let alone = n == 1 && self.run_form() == RunForm::Before;
        if self.bare_increase(kind, many) && !alone {
            let words = self.writer.lexicon.increase.brief(if n == 1 { 1 } else { 2 });
            let one = self.writer.lexicon.increase.brief(1);
            let before = self.run_form() == RunForm::Before;
            self.run(n, |scribe, _| scribe.pen.words(if before { words } else { one }));
        } else if n >= 2 {
            let phrase = &self.writer.phrases.into_each_of;
            self.many_of(phrase, kind, many, Some(n));
        } else {
            self.at = at;
            self.repeat(body, Times::In(n), place);
        }
    }

    /// A decrease `n` times.
    fn decreases(
        &mut self,
        (kind, many, how): (StitchKind, u32, Decrease),
        n: u32,
        body: &[Placed<Op>],
        place: PlaceInLine,
    ) {
        let at = self.at;
        let in_words = self.decrease_word(kind, many, how, n).is_none();
        self.at = at;
        let writer = self.writer;
        // “3 3 sc together” is not to be told from a slip of the pen.
        let numbers_meet = in_words && writer.phrases.together.starts_with("{many}");
        if self.run_form() == RunForm::Before && (n == 1 || numbers_meet) {
            self.repeat(body, Times::In(n), place);
        } else {
            self.run(n, |scribe, said| scribe.together(kind, many, how, said));
        }
    }

    /// One word worked `n` times: `inc × 6`, `6 inc`. `word` is told how many it stands for.
    fn run(&mut self, n: u32, word: impl FnOnce(&mut Self, u32)) {
        match self.run_form() {
            RunForm::Before => {
                self.pen.number(n);
                self.pen.words(" ");
                word(self, n);
            }
            RunForm::After | RunForm::Usual => {
                word(self, 1);
                self.times(n);
            }
        }
    }

    fn times(&mut self, n: u32) {
        self.pen.fill(self.writer, &self.writer.style.times, &[("n", Value::Number(n))]);
    }

    /// Something longer, so many times or to the end of the round.
    fn repeat(&mut self, body: &[Placed<Op>], times: Times, place: PlaceInLine) {
        let phrases = self.writer.phrases;
        match times {
            Times::In(n @ 2..) if self.star && place.top => {
                self.starred(&phrases.star, body, n);
            }
            Times::Around if self.star && place.top => {
                self.starred(&phrases.star_around, body, 2);
            }
            Times::In(n) => {
                self.bracketed(body, place);
                self.times(n);
            }
            Times::Around => {
                self.bracketed(body, place);
                self.pen.words(" ");
                self.pen.words(&phrases.around);
            }
        }
    }

    fn starred(&mut self, phrase: &str, body: &[Placed<Op>], total: u32) {
        let (before, after) = phrase.split_once("{body}").unwrap_or(("", phrase));
        self.pen.words(before);
        self.list(body, PlaceInLine { depth: 0, top: false });
        let more = total - 1;
        let lexicon = self.writer.lexicon;
        let times = if more == 1 { &lexicon.times.one } else { &lexicon.times.many };
        let values = [
            ("n", Value::Number(more)),
            ("total", Value::Number(total)),
            ("times", Value::Words(times)),
        ];
        self.pen.fill(self.writer, after, &values);
    }

    pub(super) fn bracketed(&mut self, body: &[Placed<Op>], place: PlaceInLine) {
        let style = self.writer.style;
        let level = match style.nesting {
            Nesting::FromInside => height(body),
            Nesting::FromOutside => place.depth,
        };
        let pair = style.brackets.get(level).or(style.brackets.last());
        let mut pair = pair.map_or("()", String::as_str).chars();
        let (open, close) = (pair.next().unwrap_or('('), pair.next().unwrap_or(')'));
        self.pen.text.push(open);
        self.list(body, place.inside());
        self.pen.text.push(close);
    }
}
