//! The reader takes any text whatever: no panic, every place inside the text, and a tree no
//! larger than the text allows.

use plumpline_core::pattern::read::{Reading, TermsWish, read};
use plumpline_core::pattern::{Line, Op, Placed};

/// Invented patterns, to be spoilt.
const PATTERNS: [&str; 4] = [
    "HEAD\nRnd 1: 6 sc in mr (6)\nRnd 2: inc around (12)\nRnd 3: (1 sc, inc) x 6 (18)\n\
     R4-6: sc in each st around [18]\n7) *sc 1, dec; rep from * 5 more times = 12 sts\n\
     Stuff now.\nRnd 8: FLO: {[dec] 2 times, sc2tog} x 2\nFasten off.",
    "UK terms\nmiss = skip\nRound 1 – ch 2, 6 dc in 2nd ch from hook\n\
     Round 2 – 2 dc in each st, join with ss to first dc\nRound 3: repeat round 2 (24)",
    "1. Rd: 6 fM in Fadenring (6)\n2. Rd: jede M verdoppeln = 12 M\n3. Rd: (1 fM, 1 M \
     verdoppeln) 6x = 18 M\n4.–6. Rd: in jede M 1 fM\nFaden abschneiden.",
    "Tour 1 : 6 ms dans un cercle magique (6)\nTour 2 : *1 ms, 1 aug* répéter de * à * 5 fois \
     de plus\nV3: (1 pb, 1 aum) x 6 (18)\n• ▢ “R4”: 6x(sc, inc) -18-\r\n",
];

/// Pieces of patterns, to be strewn.
const BITS: [&str; 48] = [
    "sc",
    "inc",
    "dec",
    "(",
    ")",
    "[",
    "]",
    "{",
    "}",
    "*",
    "**",
    "rep from *",
    "x6",
    "× 6",
    "6",
    "99999999999",
    "0",
    "Rnd 3:",
    "\n",
    "\n\n",
    ",",
    ";",
    ".",
    "-",
    "–",
    "=",
    ":",
    "in",
    "each",
    "next",
    "st",
    "around",
    "to last",
    "FLO",
    "BLO:",
    "ring",
    "ch",
    "join",
    "turn",
    "repeat",
    "Rnd",
    "more",
    "times",
    "the",
    "with yarn",
    "change to",
    "\u{feff}",
    "2nd",
];

/// Chance: the cases are the same on every machine.
struct Dice(fastrand::Rng);

impl Dice {
    fn below(&mut self, n: usize) -> usize {
        self.0.usize(..n.max(1))
    }

    fn bytes(&mut self) -> String {
        let n = self.below(120);
        let bytes: Vec<u8> = (0..n).map(|_| self.0.u8(..)).collect();
        String::from_utf8_lossy(&bytes).into_owned()
    }

    fn strewn(&mut self) -> String {
        let n = self.below(60);
        let bits: Vec<&str> = (0..n).map(|_| BITS[self.below(BITS.len())]).collect();
        bits.join(if self.below(2) == 0 { " " } else { "" })
    }

    fn spoilt(&mut self) -> String {
        let mut chars: Vec<char> = PATTERNS[self.below(PATTERNS.len())].chars().collect();
        for _ in 0..=self.below(6) {
            let at = self.below(chars.len());
            match self.below(4) {
                0 => drop(chars.drain(at..(at + 1 + self.below(9)).min(chars.len()))),
                1 => chars.insert(at, ['(', '*', '\n', '9', ':', 'x', '\u{a0}'][self.below(7)]),
                2 => chars.splice(at..at, BITS[self.below(BITS.len())].chars()).for_each(drop),
                _ => {
                    let other = self.below(chars.len());
                    chars.swap(at, other);
                }
            }
            if chars.is_empty() {
                break;
            }
        }
        chars.into_iter().collect()
    }
}

/// Operations of a list with all that they hold, and how deep they go.
fn size(work: &[Placed<Op>]) -> (usize, usize) {
    work.iter().fold((0, 0), |(many, deep), op| match &op.it {
        Op::Group { body, .. } | Op::Only { body, .. } => {
            assert!(!body.is_empty(), "a group holds something");
            let (inner, depth) = size(body);
            (many + inner + 1, deep.max(depth + 1))
        }
        _ => (many + 1, deep.max(1)),
    })
}

fn check(text: &str, reading: &Reading) {
    let inside = |at: &std::ops::Range<usize>| {
        assert!(text.get(at.clone()).is_some(), "{at:?} is no place in {text:?}");
    };
    let mut all = 0;
    for line in &reading.pattern.lines {
        inside(&line.at);
        let work = match &line.it {
            Line::Rounds(rounds) => &rounds.work,
            Line::Do(work) => work,
            _ => continue,
        };
        work.iter().for_each(|op| inside(&op.at));
        let (many, deep) = size(work);
        assert!(deep <= 100, "{deep} deep: {text:?}");
        all += many;
    }
    reading.unread.iter().for_each(inside);
    // A word makes two operations at most; a line that stands for another some more.
    let lines = text.lines().count();
    assert!(all <= 2 * text.len() + 64 * lines, "{all} operations of {} bytes", text.len());
}

#[test]
fn any_text_can_be_read() {
    let mut dice = Dice(fastrand::Rng::with_seed(0x5eed));
    for case in 0..100_000 {
        let text = match case % 3 {
            0 => dice.bytes(),
            1 => dice.strewn(),
            _ => dice.spoilt(),
        };
        let wish = if case % 2 == 0 { TermsWish::Infer } else { TermsWish::Lexicon("en-us") };
        check(&text, &read(&text, wish));
    }
}

#[test]
fn long_runs_of_one_thing_can_be_read() {
    for bit in BITS {
        for between in ["", " "] {
            let text = format!("Rnd 1: {}", format!("{bit}{between}").repeat(20_000));
            check(&text, &read(&text, TermsWish::Lexicon("en-us")));
        }
    }
}
