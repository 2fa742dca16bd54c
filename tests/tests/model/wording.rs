//! The written rounds, read back by a reader that knows only the grammar.
//!
//! ```text
//! line   = [ "FLO: " | "BLO: " ] ( kind " in each st" | list )
//! list   = part { ", " part }
//! part   = ( "(" list ")" | "[" list "]" | stitch ) [ " × " number ]
//! stitch = kind [ " " number ] | "inc" | "dec" | "2 " kind " in next st" | kind "2tog"
//!        | "2 " kind " in each of next " number " sts"
//! kind   = "sc" | "hdc" | "dc"
//! ```
//!
//! Increases and decreases stand in full words where nothing else in the round says its kind
//! of stitch and the round below has another.

use plumpline_core::counts::Start;
use plumpline_core::pattern::write::Writer;
use plumpline_core::placement::Stitch;
use plumpline_core::{Kind, KindFrom, Loop, Piece, Plan, Spread, Working, plan, words};
use plumpline_tests::any::any_piece;
use plumpline_tests::fit_set::SHAPES;
use proptest::prelude::*;
use proptest::test_runner::RngSeed;

/// What a line says: its stitches, and the kind and loop they are worked in.
#[derive(Debug, Clone, PartialEq, Eq)]
struct Read {
    stitches: Vec<Stitch>,
    kind: Option<Kind>,
    only: Option<Loop>,
}

struct Reader<'a> {
    left: &'a str,
    kind: Option<Kind>,
}

type Parsed<T> = Result<T, String>;

/// Reads a line worked on a round of `below` stitches.
fn read(line: &str, below: u32) -> Parsed<Read> {
    let (only, left) = match line.split_once(": ") {
        Some(("FLO", left)) => (Some(Loop::Front), left),
        Some(("BLO", left)) => (Some(Loop::Back), left),
        _ => (None, line),
    };
    let mut reader = Reader { left, kind: None };
    let stitches = match left.strip_suffix(" in each st") {
        Some(kind) => {
            reader.kind = kind_of(kind);
            vec![Stitch::Plain; below as usize]
        }
        None => reader.list()?,
    };
    let read_whole = reader.left.is_empty() || left.ends_with(" in each st");
    if !read_whole || stitches.is_empty() {
        return Err(format!("“{}” is left of “{line}”", reader.left));
    }
    Ok(Read { stitches, kind: reader.kind, only })
}

fn kind_of(word: &str) -> Option<Kind> {
    match word {
        "sc" => Some(Kind::Single),
        "hdc" => Some(Kind::HalfDouble),
        "dc" => Some(Kind::Double),
        _ => None,
    }
}

impl Reader<'_> {
    fn takes(&mut self, word: &str) -> bool {
        let rest = self.left.strip_prefix(word);
        self.left = rest.unwrap_or(self.left);
        rest.is_some()
    }

    fn list(&mut self) -> Parsed<Vec<Stitch>> {
        let mut stitches = self.part()?;
        while self.takes(", ") {
            stitches.extend(self.part()?);
        }
        Ok(stitches)
    }

    fn part(&mut self) -> Parsed<Vec<Stitch>> {
        let once = if self.takes("(") {
            self.closed_by(")")?
        } else if self.takes("[") {
            self.closed_by("]")?
        } else {
            self.stitch()?
        };
        let times = if self.takes(" × ") { self.number()? } else { 1 };
        Ok(once.repeat(times))
    }

    fn closed_by(&mut self, bracket: &str) -> Parsed<Vec<Stitch>> {
        let list = self.list()?;
        if self.takes(bracket) {
            Ok(list)
        } else {
            Err(format!("no {bracket} in {}", self.left))
        }
    }

    /// The kind of stitch that a round is worked in, the same throughout.
    fn names(&mut self, word: &str) -> Parsed<()> {
        let kind = kind_of(word).ok_or_else(|| format!("no stitch is called “{word}”"))?;
        if *self.kind.get_or_insert(kind) != kind {
            return Err(format!("{kind:?} among others"));
        }
        Ok(())
    }

    /// An increase in full words, or several.
    fn two_in_one(&mut self) -> Parsed<Vec<Stitch>> {
        let (word, left) = self.left.split_once(' ').ok_or("nowhere to work two")?;
        self.left = left;
        self.names(word)?;
        if self.takes("in next st") {
            return Ok(vec![Stitch::Increase]);
        }
        if !self.takes("in each of next ") {
            return Err(format!("two where? {}", self.left));
        }
        let times = self.number()?;
        if self.takes(" sts") {
            Ok(vec![Stitch::Increase; times])
        } else {
            Err("of what?".into())
        }
    }

    fn stitch(&mut self) -> Parsed<Vec<Stitch>> {
        if self.takes("2 ") {
            return self.two_in_one();
        }
        let end = self.left.find(|c: char| !c.is_ascii_lowercase()).unwrap_or(self.left.len());
        let (word, left) = self.left.split_at(end);
        self.left = left;
        match word {
            "inc" => return Ok(vec![Stitch::Increase]),
            "dec" => return Ok(vec![Stitch::Decrease]),
            _ => {}
        }
        self.names(word)?;
        if self.takes("2tog") {
            return Ok(vec![Stitch::Decrease]);
        }
        let counted =
            self.left.strip_prefix(' ').is_some_and(|l| l.starts_with(char::is_numeric));
        let times = if counted && self.takes(" ") { self.number()? } else { 1 };
        Ok(vec![Stitch::Plain; times])
    }

    fn number(&mut self) -> Parsed<usize> {
        let end = self.left.find(|c: char| !c.is_ascii_digit()).unwrap_or(self.left.len());
        let (digits, left) = self.left.split_at(end);
        self.left = left;
        digits.parse().map_err(|e| format!("“{digits}”: {e}"))
    }
}

/// Stitches a list takes of the round below, and leaves.
fn takes_and_leaves(stitches: &[Stitch]) -> (u32, u32) {
    stitches.iter().fold((0, 0), |(takes, leaves), stitch| match stitch {
        Stitch::Plain => (takes + 1, leaves + 1),
        Stitch::Increase => (takes + 1, leaves + 2),
        Stitch::Decrease => (takes + 2, leaves + 1),
    })
}

/// The kind that a line without a kind of its own is worked in: that of the round below.
fn kind_below(piece: &Piece, number: u32) -> Kind {
    if number > 1 { piece.kind_of_round(number - 1) } else { Kind::Single }
}

/// Reads every line of `plan` and compares it with the rounds it stands for.
fn proofread(piece: &Piece, plan: &Plan) -> Parsed<()> {
    let mut below = plan.chain;
    for line in &words(plan, piece, &Writer::bench()).lines {
        for number in line.first..=line.last {
            let round = &plan.rounds[number as usize - 1];
            let fail = |what: String| Err(format!("Rnd {number}, “{}”: {what}", line.text));
            if line.count != round.count {
                return fail(format!("says {} of {}", line.count, round.count));
            }
            let Some(taken) = below.replace(round.count) else {
                let ring = format!("{} {} in magic ring", round.count, round.kind.code());
                if plan.start == Start::Ring && line.text != ring {
                    return fail(ring);
                }
                continue;
            };
            let read = match read(&line.text, taken) {
                Ok(read) => read,
                Err(why) => return fail(why),
            };
            let placed: Vec<Stitch> = round.placement.stitches().collect();
            if read.stitches != placed {
                return fail(format!("reads {:?} for {placed:?}", read.stitches));
            }
            if takes_and_leaves(&read.stitches) != (taken, round.count) {
                return fail(format!("on {taken} to {}", round.count));
            }
            let kind = read.kind.unwrap_or_else(|| kind_below(piece, number));
            if kind != piece.kind_of_round(number)
                || read.only != piece.loops.get(&number).copied()
            {
                return fail(format!("is worked as {:?} {:?}", read.kind, read.only));
            }
        }
    }
    Ok(())
}

#[test]
fn the_reader_reads_the_grammar() {
    use Stitch::{Decrease as D, Increase as I, Plain as P};
    let reads = |line, below| read(line, below).map(|r| r.stitches);
    assert_eq!(reads("sc in each st", 3), Ok(vec![P, P, P]));
    assert_eq!(reads("inc × 3", 3), Ok(vec![I, I, I]));
    assert_eq!(reads("(sc 2, inc) × 2", 6), Ok(vec![P, P, I, P, P, I]));
    assert_eq!(reads("[(sc, inc) × 2, dec] × 2", 0), Ok([P, I, P, I, D].repeat(2)));
    assert_eq!(reads("sc 2, dec, sc", 5), Ok(vec![P, P, D, P]));
    assert_eq!(reads("2 hdc in each of next 3 sts", 3), Ok(vec![I, I, I]));
    assert_eq!(reads("(2 dc in next st, dc2tog) × 2", 6), Ok(vec![I, D, I, D]));
    let back =
        Read { stitches: vec![P, P, I], kind: Some(Kind::Double), only: Some(Loop::Back) };
    assert_eq!(read("BLO: dc 2, inc", 3), Ok(back));
    for wrong in
        ["", "sc 2 inc", "(sc, inc × 2", "(sc, inc] × 2", "sc, hdc", "sc, inc)", "tr 4", "2 sc"]
    {
        assert!(read(wrong, 4).is_err(), "{wrong}");
    }
}

#[test]
fn the_fit_set_reads_back() {
    for shape in &SHAPES {
        for ease in [0.0, 0.3, 1.0] {
            let piece = shape.piece(ease, 1.0);
            let plan = plan(&piece).expect("the set can be planned");
            assert_eq!(proofread(&piece, &plan), Ok(()), "{} at ease {ease}", shape.name);
        }
    }
}

prop_compose! {
    fn worked_anyhow()(
        piece in any_piece(),
        kinds in prop::collection::vec(
            (1_u32..40, prop::sample::select(vec![Kind::Single, Kind::HalfDouble, Kind::Double])),
            0..3,
        ),
        loops in prop::collection::btree_map(
            1_u32..40,
            prop::sample::select(vec![Loop::Front, Loop::Back]),
            0..4,
        ),
        stacked in any::<bool>(),
        joined in any::<bool>(),
        drift in -1.0..1.0_f64,
    ) -> Piece {
        let mut piece = piece;
        let from = |(from_round, kind)| KindFrom { from_round, kind };
        piece.kinds = kinds.into_iter().map(from).collect();
        piece.loops = loops;
        piece.spread = if stacked { Spread::Stacked } else { Spread::Turned };
        piece.working =
            if joined { Working::Joined { chain_counts: false } } else { Working::Spiral };
        piece.rules.spiral_drift = drift;
        piece
    }
}

proptest! {
    #![proptest_config(ProptestConfig {
        cases: 192,
        max_global_rejects: 100_000,
        rng_seed: RngSeed::Fixed(0x7265_6164),
        failure_persistence: None,
        ..ProptestConfig::default()
    })]

    /// Every line says the stitches that are placed, takes what the round below leaves and
    /// leaves what it says.
    #[test]
    fn every_line_reads_back(piece in worked_anyhow()) {
        // Tall stitches can leave fewer than two rounds: that is refused, rightly.
        let Ok(plan) = plan(&piece) else { return Err(TestCaseError::reject("too short")) };
        prop_assert_eq!(proofread(&piece, &plan), Ok(()));
    }
}
