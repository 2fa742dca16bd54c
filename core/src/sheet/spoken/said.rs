//! What is worked in a round, as it is said.

use crate::piece::cloth::Loop;
use crate::words::numerals::{NumeralFor, numeral};
use crate::words::tree::{Op, Placed, StitchKind, Times};
use crate::words::write::Fill::Words;
use crate::words::write::Writer;

/// Says rounds.
#[derive(Clone, Copy)]
pub(super) struct Speech<'a> {
    pub(super) writer: &'a Writer<'a>,
}

impl Speech<'_> {
    /// A number of stitches, or of times.
    fn many(&self, n: u32) -> String {
        // A French stitch is feminine, a Spanish one masculine.
        let with = match self.writer.lexicon().code.as_str() {
            "fr" => NumeralFor::Feminine,
            _ => NumeralFor::Masculine,
        };
        numeral(n, &self.writer.lexicon().code, with)
    }

    /// A number of times.
    fn times(&self, n: u32) -> String {
        // Both “fois” and “veces” are feminine.
        numeral(n, &self.writer.lexicon().code, NumeralFor::Feminine)
    }

    /// A number by itself.
    fn number(&self, n: u32) -> String {
        numeral(n, &self.writer.lexicon().code, NumeralFor::Itself)
    }

    /// A sentence about `n` of something.
    pub(super) fn counted(&self, name: &str, n: u32) -> String {
        self.writer.say_of(name, &[("n", Words(&self.many(n)))])
    }

    /// The same in a form for one or for several.
    pub(super) fn counted_n(&self, name: &str, n: u32) -> String {
        let form = if n == 1 { "one" } else { "many" };
        self.counted(&format!("{name}.{form}"), n)
    }

    /// A round, or several alike, on `below` stitches.
    pub(super) fn rounds(
        &self,
        (first, last): (u32, u32),
        work: &[Placed<Op>],
        below: Option<u32>,
    ) -> String {
        let work = self.list(work, below);
        let (from, to) = (self.number(first), self.number(last));
        match first == last {
            true => {
                self.writer.say_of("say_round", &[("n", Words(&from)), ("work", Words(&work))])
            }
            false => self.writer.say_of(
                if first + 1 == last { "say_two_rounds" } else { "say_rounds" },
                &[("first", Words(&from)), ("last", Words(&to)), ("work", Words(&work))],
            ),
        }
    }

    fn list(&self, ops: &[Placed<Op>], below: Option<u32>) -> String {
        let said: Vec<String> = ops.iter().map(|op| self.op(&op.it, below)).collect();
        said.join(&self.writer.say("say_then"))
    }

    /// One of a kind, with its article; several, with their number.
    fn one(&self, kind: StitchKind) -> String {
        self.writer.say(&format!("one_{}", kind_name(kind)))
    }

    fn of_kind(&self, kind: StitchKind, n: u32) -> String {
        let many = self.writer.say(&format!("many_{}", kind_name(kind)));
        if n == 1 { self.one(kind) } else { format!("{} {many}", self.many(n)) }
    }

    fn op(&self, op: &Op, below: Option<u32>) -> String {
        let say = |name: &str, kind: StitchKind, many: u32, n: u32| {
            let (one, many) = (self.one(kind), self.of_kind(kind, many));
            let n = self.many(n);
            let values = [("one", Words(&one)), ("many", Words(&many)), ("n", Words(&n))];
            self.writer.say_of(name, &values)
        };
        match op {
            Op::Each { kind, count: 1 } => say("say_next.one", *kind, 1, 1),
            Op::Each { kind, count } => say("say_next.many", *kind, 1, *count),
            Op::Into { kind, many } => say("say_into", *kind, *many, 1),
            Op::Together { kind, many, .. } => say("say_together", *kind, *many, *many),
            Op::Ring { kind, count } => say("say_ring", *kind, *count, 1),
            Op::IntoChain { kind, count, nth: 0 } => say("say_last_chain", *kind, *count, 1),
            Op::IntoChain { kind, count, nth } => {
                let (many, nth) = (self.of_kind(*kind, *count), self.number(*nth));
                let values = [("many", Words(&many)), ("n", Words(&nth))];
                self.writer.say_of("say_into_chain", &values)
            }
            Op::OtherSide => self.writer.say("say_other_side"),
            Op::Only { only, body } => {
                let body = self.list(body, below);
                let name = match only {
                    Loop::Front => "say_front",
                    Loop::Back => "say_back",
                };
                self.writer.say_of(name, &[("body", Words(&body))])
            }
            Op::Group { body, times } => self.group(body, *times, below),
            // Planned rounds have nothing else between their stitches.
            _ => String::new(),
        }
    }

    fn group(&self, body: &[Placed<Op>], times: Times, below: Option<u32>) -> String {
        match (body, times) {
            ([Placed { it: Op::Each { kind, count: 1 }, .. }], Times::Around) => {
                let (one, n) = (self.one(*kind), self.many(below.unwrap_or(0)));
                self.writer.say_of("say_plain", &[("one", Words(&one)), ("n", Words(&n))])
            }
            ([Placed { it: Op::Into { kind, many }, .. }], Times::In(n @ 2..)) => {
                let (many, n) = (self.of_kind(*kind, *many), self.many(n));
                let values = [("many", Words(&many)), ("n", Words(&n))];
                self.writer.say_of("say_into_each", &values)
            }
            ([Placed { it: Op::Together { many, .. }, .. }], Times::In(n @ 2..)) => {
                let (many, n) = (self.many(*many), self.times(n));
                let values = [("many", Words(&many)), ("n", Words(&n))];
                self.writer.say_of("say_together_times", &values)
            }
            (body, Times::In(2)) => {
                let body = self.list(body, below);
                self.writer.say_of("say_twice", &[("body", Words(&body))])
            }
            (body, Times::In(n)) => {
                let (body, n) = (self.list(body, below), self.times(n));
                let values = [("body", Words(&body)), ("n", Words(&n))];
                self.writer.say_of("say_times", &values)
            }
            (body, Times::Around) => self.list(body, below),
        }
    }
}

fn kind_name(kind: StitchKind) -> &'static str {
    match kind {
        StitchKind::Slip => "slip",
        StitchKind::Single => "single",
        StitchKind::HalfDouble => "half_double",
        StitchKind::Double => "double",
        StitchKind::Treble => "treble",
    }
}
