//! What is worked in one round, in words.

mod groups;

use super::pen::{TextPen, Value};
use super::style::{DecreaseForm, EvenForm, IncreaseForm, PlainForm, RepeatForm, RunForm};
use super::terms::NamedKinds;
use super::{Below, Writer};
use crate::piece::cloth::Loop;
use crate::words::lexicon::Term;
use crate::words::tree::{Decrease, Op, Placed, StitchKind, Times};

/// Writes the work of one round.
pub(super) struct Scribe<'w, 'p> {
    writer: &'w Writer<'w>,
    pen: &'p mut TextPen,
    below: Below,
    named: NamedKinds,
    /// Kinds named so far.
    at: usize,
    /// Whether the round has one repeat that may stand between asterisks.
    star: bool,
}

/// Where in its line something stands.
#[derive(Clone, Copy)]
struct PlaceInLine {
    /// Brackets around it.
    depth: usize,
    /// Whether it is one of the line's own items.
    top: bool,
}

impl PlaceInLine {
    fn inside(self) -> Self {
        Self { depth: self.depth + 1, top: false }
    }
}

const TOP: PlaceInLine = PlaceInLine { depth: 0, top: true };

impl<'w, 'p> Scribe<'w, 'p> {
    pub(super) fn new(writer: &'w Writer<'w>, pen: &'p mut TextPen, below: Below) -> Self {
        Self { writer, pen, below, named: NamedKinds::Nothing, at: 0, star: false }
    }

    /// Writes all of `work`.
    pub(super) fn write(&mut self, work: &[Placed<Op>]) {
        self.named = NamedKinds::in_work(work);
        let line = match work {
            [Placed { it: Op::Only { only, body }, .. }] => {
                let term = self.loop_term(*only).brief(1);
                let phrase = &self.writer.phrases.only;
                self.pen.fill(self.writer, phrase, &[("loop", Value::Words(term))]);
                body
            }
            _ => work,
        };
        if let [Placed { it: Op::Group { body, times: Times::Around }, .. }] = line
            && let Some(kind) = plain_body(body)
            && self.writer.style.even == EvenForm::Counted
            && let Some(count) = self.below.count
        {
            return self.each(kind, count);
        }
        let repeats = line.iter().filter(|op| is_long_repeat(&op.it)).count();
        self.star = self.writer.style.repeat == RepeatForm::Star && repeats == 1;
        self.list(line, TOP);
    }

    fn list(&mut self, ops: &[Placed<Op>], place: PlaceInLine) {
        for (i, op) in ops.iter().enumerate() {
            if i > 0 {
                let led_on = matches!(ops[i - 1].it, Op::OtherSide);
                self.pen.words(if led_on { " " } else { &self.writer.style.between });
            }
            self.op(&op.it, place);
        }
    }

    fn op(&mut self, op: &Op, place: PlaceInLine) {
        let (lexicon, phrases) = (self.writer.lexicon, self.writer.phrases);
        match op {
            Op::Each { kind, count } => self.each(*kind, *count),
            Op::Into { kind, many } => self.into(*kind, *many),
            Op::Together { kind, many, how } => {
                let at = self.at;
                if self.decrease_word(*kind, *many, *how, 1).is_some() {
                    self.one_of_them();
                }
                self.at = at;
                self.together(*kind, *many, *how, 1);
            }
            Op::Group { body, times } => self.group(body, *times, place),
            Op::Only { only, body } => self.only(*only, body, place),
            Op::Ring { kind, count } => self.stitches(&phrases.ring, *kind, *count, None),
            Op::IntoChain { kind, count, nth: 0 } => {
                self.stitches(&phrases.into_last_chain, *kind, *count, None);
            }
            Op::IntoChain { kind, count, nth } => {
                self.stitches(&phrases.into_chain, *kind, *count, Some(*nth));
            }
            Op::Chain(n) => {
                self.pen.fill(self.writer, &phrases.chains, &[("n", Value::Number(*n))]);
            }
            Op::Skip(n) => {
                self.pen.fill(self.writer, &phrases.skipped, &[("n", Value::Number(*n))]);
            }
            Op::Join => self.pen.words(lexicon.join.brief(1)),
            Op::OtherSide => self.pen.fill(self.writer, &phrases.other_side, &[]),
            Op::Turn => self.pen.words(lexicon.turn.brief(1)),
            Op::Marker => self.pen.words(lexicon.marker.brief(1)),
            Op::Stuff => self.pen.words(lexicon.stuff.brief(1)),
            Op::FastenOff => self.pen.words(lexicon.fasten_off.brief(1)),
            Op::Colour(name) => {
                let (before, after) =
                    phrases.colour.split_once("{colour}").unwrap_or((&phrases.colour, ""));
                self.pen.words(before);
                self.pen.given(name);
                self.pen.words(after);
            }
            Op::Note(words) => self.pen.given(words),
        }
    }

    fn kind(&self, kind: StitchKind, count: u32) -> Value<'w> {
        Value::Words(self.writer.lexicon.kind(kind).brief(count))
    }

    fn loop_term(&self, only: Loop) -> &'w Term {
        match only {
            Loop::Front => &self.writer.lexicon.front_loop,
            Loop::Back => &self.writer.lexicon.back_loop,
        }
    }

    /// Whether the next bare word would be understood as `kind`; counts it as named.
    fn understood(&mut self, kind: StitchKind) -> bool {
        let understood = self.named.understood(self.at, kind, self.below.kind);
        self.at += 1;
        understood
    }

    fn each(&mut self, kind: StitchKind, count: u32) {
        self.at += 1;
        let word = self.writer.lexicon.kind(kind).brief(count);
        match self.plain() {
            PlainForm::InNext => {
                let values = [("kind", Value::Words(word)), ("n", Value::Number(count))];
                self.pen.fill(self.writer, self.writer.phrases.next.of(count), &values);
            }
            _ if count == 1 && !self.says_one() => self.pen.words(word),
            PlainForm::After => {
                self.pen.words(word);
                self.pen.words(" ");
                self.pen.number(count);
            }
            PlainForm::Before | PlainForm::Usual => {
                self.pen.number(count);
                self.pen.words(" ");
                self.pen.words(word);
            }
        }
    }

    /// Where the number of plain stitches stands.
    fn plain(&self) -> PlainForm {
        match (self.writer.style.plain, self.writer.phrases.number_first) {
            (PlainForm::Usual, true) => PlainForm::Before,
            (PlainForm::Usual, false) => PlainForm::After,
            (form, _) => form,
        }
    }

    /// Where the number of several increases or decreases stands.
    fn run_form(&self) -> RunForm {
        match (self.writer.style.run, self.writer.phrases.number_first) {
            (RunForm::Usual, true) => RunForm::Before,
            (RunForm::Usual, false) => RunForm::After,
            (form, _) => form,
        }
    }

    fn says_one(&self) -> bool {
        let usual = self.writer.style.plain == PlainForm::Usual;
        self.writer.style.says_one || (usual && self.writer.phrases.number_first)
    }

    /// `count` stitches of `kind` in one place.
    fn stitches(&mut self, phrase: &str, kind: StitchKind, count: u32, nth: Option<u32>) {
        self.at += 1;
        let lexicon = self.writer.lexicon;
        let values = [
            ("n", Value::Number(count)),
            ("kind", self.kind(kind, count)),
            ("nth", nth.map_or(Value::Words(""), Value::Nth)),
            // The place is one, however many stitches go there.
            ("chain", Value::Words(lexicon.chain.brief(1))),
            ("ring", Value::Words(lexicon.ring.brief(1))),
            ("hook", Value::Words(lexicon.hook.brief(1))),
        ];
        self.pen.fill(self.writer, phrase, &values);
    }

    /// Whether `many` stitches of `kind` in one are written by the bare word.
    fn bare_increase(&mut self, kind: StitchKind, many: u32) -> bool {
        let understood = self.understood(kind);
        understood && many == 2 && self.writer.style.increase == IncreaseForm::Word
    }

    fn into(&mut self, kind: StitchKind, many: u32) {
        if self.bare_increase(kind, many) {
            self.one_of_them();
            self.pen.words(self.writer.lexicon.increase.brief(1));
        } else {
            let phrase = &self.writer.phrases.into;
            self.many_of(phrase, kind, many, None);
        }
    }

    /// “1 ” before a single increase or decrease, where the language says it by habit.
    fn one_of_them(&mut self) {
        let usual = self.writer.style.run == RunForm::Usual;
        if usual && self.run_form() == RunForm::Before {
            self.pen.number(1_u32);
            self.pen.words(" ");
        }
    }

    fn many_of(&mut self, phrase: &str, kind: StitchKind, many: u32, n: Option<u32>) {
        let values = [
            ("many", Value::Number(many)),
            ("kind", self.kind(kind, many)),
            ("n", n.map_or(Value::Words(""), Value::Number)),
        ];
        self.pen.fill(self.writer, phrase, &values);
    }

    /// The one word for `times` decreases, where there is one and it is understood.
    fn decrease_word(
        &mut self,
        kind: StitchKind,
        many: u32,
        how: Decrease,
        times: u32,
    ) -> Option<&'w str> {
        let understood = self.understood(kind) && many == 2;
        let (lexicon, style) = (self.writer.lexicon, self.writer.style);
        match how {
            Decrease::Invisible if understood => Some(lexicon.invisible_decrease.brief(times)),
            Decrease::Plain if understood && style.decrease == DecreaseForm::Word => {
                Some(lexicon.decrease.brief(times))
            }
            _ => None,
        }
    }

    /// Writes `times` decreases, without their number.
    fn together(&mut self, kind: StitchKind, many: u32, how: Decrease, times: u32) {
        match self.decrease_word(kind, many, how, times) {
            Some(word) => self.pen.words(word),
            None => {
                let values = [("kind", self.kind(kind, many)), ("many", Value::Number(many))];
                self.pen.fill(self.writer, &self.writer.phrases.together, &values);
                if how == Decrease::Invisible {
                    self.pen.words(" ");
                    self.pen.words(&self.writer.phrases.through_front);
                }
            }
        }
    }

    fn only(&mut self, only: Loop, body: &[Placed<Op>], place: PlaceInLine) {
        self.pen.words(self.loop_term(only).brief(1));
        self.pen.words(" ");
        match body {
            [one] => self.op(&one.it, PlaceInLine { top: false, ..place }),
            _ => self.bracketed(body, place),
        }
    }
}

/// The kind of stitch, where a group is one of it in each stitch.
fn plain_body(body: &[Placed<Op>]) -> Option<StitchKind> {
    match body {
        [Placed { it: Op::Each { kind, count: 1 }, .. }] => Some(*kind),
        _ => None,
    }
}

/// Whether `op` is a repeat that needs brackets or asterisks around it.
fn is_long_repeat(op: &Op) -> bool {
    match op {
        Op::Group { body, times } => match body.as_slice() {
            [Placed { it: Op::Into { .. } | Op::Together { .. }, .. }] => false,
            body => !(*times == Times::Around && plain_body(body).is_some()),
        },
        _ => false,
    }
}

/// How many brackets deep the deepest of `body` stands.
fn height(body: &[Placed<Op>]) -> usize {
    let of = |op: &Op| match op {
        Op::Group { body, .. } => height(body) + usize::from(is_long_repeat(op)),
        Op::Only { body, .. } => height(body) + usize::from(body.len() != 1),
        _ => 0,
    };
    body.iter().map(|op| of(&op.it)).max().unwrap_or(0)
}
