//! Warnings: what the maker should know before working the piece, each with its remedy.

use serde::ser::{Serialize, SerializeStruct as _, Serializer};

use crate::piece::Piece;
use crate::piece::cloth::Kind;
use crate::piece::outline::Rz;
use crate::plan::counts::rules::GaveWay;
use crate::plan::counts::slack::{PLEATED, SHOWING_SLACK};
use crate::plan::counts::{Chosen, Start};
use crate::plan::skin::{RestSkin, Unheld};
use crate::sentence::Sentence;

/// Something the maker should know, and what helps.
#[derive(Debug, Clone, PartialEq)]
pub struct Warning {
    /// What it is about.
    pub kind: WarningKind,
    /// First and last round concerned, counted from 1; empty for the whole piece.
    pub rounds: Vec<u32>,
    /// What will happen and what to do, one sentence each; where [`Warning::named`] says so,
    /// the first goes on from the rounds.
    pub what: Sentence,
}

impl Warning {
    /// The rounds to name before [`Warning::what`]: `Rnds 9–12`. None where it concerns the
    /// whole piece or names them itself.
    pub fn named(&self) -> Option<Sentence> {
        use WarningKind::{Corner, Flat, Frill, Misfit, Slack, Wrinkle};
        match (self.kind, &*self.rounds) {
            (Corner | Flat | Frill | Misfit | Slack | Wrinkle, &[first, last]) => {
                Some(named(first, last))
            }
            _ => None,
        }
    }

    /// The whole of it: `Rnds 9–12: it bulges 6.1 mm. Round the outline there …`.
    pub fn sentence(&self) -> Sentence {
        match self.named() {
            Some(rounds) => Sentence::note(
                "of_rounds",
                [("rounds", rounds.into()), ("what", self.what.clone().into())],
            ),
            None => self.what.clone(),
        }
    }
}

/// As programs read it: `code`, `rounds`, `text`, lengths in mm.
impl Serialize for Warning {
    fn serialize<S: Serializer>(&self, serializer: S) -> Result<S::Ok, S::Error> {
        let mut fields = serializer.serialize_struct("Warning", 3)?;
        fields.serialize_field("code", &self.kind)?;
        fields.serialize_field("rounds", &self.rounds)?;
        fields.serialize_field("text", &self.sentence())?;
        fields.end()
    }
}

/// What a warning is about; programs read it as one lower-case word: `misfit`.
#[derive(Debug, Clone, Copy, PartialEq, Eq, PartialOrd, Ord, Hash, serde::Serialize)]
#[serde(rename_all = "lowercase")]
pub enum WarningKind {
    /// More or fewer stitches change than asked, or a face shapes.
    Change,
    /// A corner that nothing holds.
    Corner,
    /// Counts go against the outline.
    Direction,
    /// The first, last or narrowest round is not as asked.
    Ends,
    /// Cloth too level to be held.
    Flat,
    /// A strand of colour work lies loose over too many stitches.
    Float,
    /// More stitches are gained than lie flat.
    Frill,
    /// The forecast leaves the outline.
    Misfit,
    /// Counts are not multiples of the number asked.
    Multiples,
    /// An oval's forecast is approximate.
    Oval,
    /// A pin is not met.
    Pin,
    /// The stuffing leaves cloth slack.
    Slack,
    /// The height of a kind of stitch is assumed.
    Swatch,
    /// Two halves are not alike.
    Symmetry,
    /// The forecast did not settle.
    Unsettled,
    /// Cloth so flat that it wrinkles.
    Wrinkle,
}

/// A stretch where the forecast leaves the outline by more than half a stitch.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Misfit {
    /// First node of the stretch; node k is the top edge of round k.
    pub from: usize,
    /// Last node of the stretch.
    pub to: usize,
    /// Node where the gap is widest.
    pub worst: usize,
    /// The gap there, mm; positive where the cloth bulges out of the outline.
    pub off_mm: f64,
}

/// Gaps wider than this are marked, in stitch widths.
pub const MARKED_STITCHES: f64 = 0.5;

/// Where cloth is not held at all, gaps wider than this are worth a word, in stitch widths.
const SHOWS_STITCHES: f64 = 0.25;

/// The stretches of a forecast that are more than half a stitch off.
pub fn misfits(offsets_mm: &[f64], stitch_width_mm: f64) -> Vec<Misfit> {
    beyond(offsets_mm, MARKED_STITCHES * stitch_width_mm)
}

/// The stretches where a forecast is more than `least_mm` off.
fn beyond(offsets_mm: &[f64], least_mm: f64) -> Vec<Misfit> {
    let mut found: Vec<Misfit> = Vec::new();
    for (k, &off_mm) in offsets_mm.iter().enumerate() {
        if off_mm.abs() <= least_mm {
            continue;
        }
        match found.last_mut() {
            Some(zone) if zone.to + 1 == k && (zone.off_mm > 0.0) == (off_mm > 0.0) => {
                zone.to = k;
                if off_mm.abs() > zone.off_mm.abs() {
                    (zone.worst, zone.off_mm) = (k, off_mm);
                }
            }
            _ => found.push(Misfit { from: k, to: k, worst: k, off_mm }),
        }
    }
    found
}

impl Misfit {
    /// What the gap is, in two or three words: `bulges 6.1 mm`.
    pub fn sentence(&self, last_node: usize) -> Sentence {
        let key = match (self.off_mm > 0.0, self.is_at_end(last_node)) {
            (true, true) => "end_sticks_out",
            (false, true) => "end_falls_short",
            (true, false) => "bulges",
            (false, false) => "stays_in",
        };
        Sentence::note(key, [("off", Sentence::default().mm(self.off_mm.abs()).into())])
    }

    /// Whether it is widest at the first or the last node.
    pub fn is_at_end(&self, last_node: usize) -> bool {
        self.worst == 0 || self.worst == last_node
    }

    /// First and last round of the stretch.
    pub fn rounds(&self) -> [u32; 2] {
        [(self.from as u32).max(1), (self.to as u32).max(1)]
    }
}

/// Everything worth saying about the chosen counts, most serious first.
pub fn warnings(
    piece: &Piece,
    rest: &RestSkin,
    chosen: &Chosen,
    offsets_mm: &[f64],
    misfits: &[Misfit],
) -> Vec<Warning> {
    let mut warnings: Vec<Warning> =
        chosen.gave_way.iter().filter_map(|&g| gave_way(g)).collect();
    warnings.extend(change(piece, chosen));
    warnings.extend(pins(piece, chosen));
    warnings.extend(frills(piece, chosen));
    warnings.extend(slack(chosen));
    for kind in piece.unmeasured_kinds() {
        warnings.push(Warning {
            kind: WarningKind::Swatch,
            rounds: Vec::new(),
            what: Sentence::note(
                match kind {
                    Kind::Single => "swatch_single",
                    Kind::HalfDouble => "swatch_half_double",
                    Kind::Double => "swatch_double",
                },
                [("times", Sentence::default().number(kind.default_height(), 1).into())],
            ),
        });
    }
    if matches!(chosen.start, Start::Oval(_)) {
        warnings.push(Warning {
            kind: WarningKind::Oval,
            rounds: Vec::new(),
            what: Sentence::note("oval", []),
        });
    }
    let rounds = chosen.counts.len();
    if !chosen.settled.is_settled() {
        warnings.push(Warning {
            kind: WarningKind::Unsettled,
            rounds: Vec::new(),
            what: Sentence::note("unsettled", []),
        });
    }
    for misfit in misfits {
        let [first, last] = misfit.rounds();
        let corner = at_corner(piece, chosen, misfit);
        warnings.push(Warning {
            kind: if corner { WarningKind::Corner } else { WarningKind::Misfit },
            rounds: vec![first, last],
            what: Sentence::note(
                if misfit.is_at_end(rounds) { "misfit_at_end" } else { "misfit" },
                [("what", misfit.sentence(rounds).into())],
            )
            .then(Sentence::note(remedy(misfit, corner), [])),
        });
    }
    let gaps = beyond(offsets_mm, SHOWS_STITCHES * piece.gauge.stitch_width_mm());
    for zone in &rest.unheld {
        let share = |at: f64| (at / rest.length_mm() * rounds as f64).ceil().max(1.0) as u32;
        let (first, last) = (share(zone.from_mm), share(zone.to_mm));
        // Where nothing visibly goes wrong there is nothing to say.
        let shows = gaps.iter().any(|m| {
            let [a, b] = m.rounds();
            a <= last + 1 && first <= b + 1
        });
        if shows {
            warnings.push(unheld(zone.why, first, last));
        }
    }
    warnings
}

/// `Rnd 9` or `Rnds 9–12`.
pub(super) fn named(first: u32, last: u32) -> Sentence {
    match first == last {
        true => Sentence::note("round", [("n", first.into())]),
        false => Sentence::note("rounds", [("first", first.into()), ("last", last.into())]),
    }
}

/// Whether the gap is that of a corner that nothing holds.
fn at_corner(piece: &Piece, chosen: &Chosen, misfit: &Misfit) -> bool {
    let node = chosen.settled.nodes[misfit.worst];
    let at = Rz::new(node.r, node.z + chosen.fit.shift_mm);
    let near = misfit.off_mm.abs() + 2.0 * piece.gauge.stitch_width_mm();
    piece
        .outline
        .knots
        .iter()
        .any(|k| k.corner && k.hold.is_none() && !k.is_pole() && k.place().distance(at) < near)
}

/// The note on what helps.
fn remedy(misfit: &Misfit, corner: bool) -> &'static str {
    match (corner, misfit.off_mm > 0.0) {
        (true, _) => "mend_corner",
        (false, true) => "mend_bulge",
        (false, false) => "mend_stays_in",
    }
}

fn unheld(why: Unheld, first: u32, last: u32) -> Warning {
    let (kind, what) = match why {
        Unheld::Wrinkles => (WarningKind::Wrinkle, "wrinkles"),
        Unheld::Flat => (WarningKind::Flat, "unheld"),
    };
    Warning { kind, rounds: vec![first, last], what: Sentence::note(what, []) }
}

/// A rule that gave way as a whole; those that give way in single rounds are found there.
fn gave_way(rule: GaveWay) -> Option<Warning> {
    let (kind, key) = match rule {
        GaveWay::Change | GaveWay::Flat => return None,
        GaveWay::Direction => (WarningKind::Direction, "gave_way_direction"),
        GaveWay::Multiples => (WarningKind::Multiples, "gave_way_multiples"),
        GaveWay::Symmetry => (WarningKind::Symmetry, "gave_way_symmetry"),
        GaveWay::Ends => (WarningKind::Ends, "gave_way_ends"),
    };
    Some(Warning { kind, rounds: Vec::new(), what: Sentence::note(key, []) })
}

/// Rounds that shape within a plain face, or by more than the largest change.
fn change(piece: &Piece, chosen: &Chosen) -> Option<Warning> {
    let most = piece.rules.largest_change.unwrap_or(u32::MAX);
    let mut below = chosen.start.joined();
    let broken: Vec<u32> = (1..)
        .zip(&chosen.counts)
        .filter_map(|(k, &count)| {
            let change = below.replace(count)?.abs_diff(count);
            (change > most || (change > 0 && piece.is_in_face(k))).then_some(k)
        })
        .collect();
    let (&first, &last) = (broken.first()?, broken.last()?);
    let gathers = piece.outline.finishes_closed() && last as usize == chosen.counts.len();
    let why = if gathers && first == last { "change_drawn_shut" } else { "change" };
    let what = Sentence::note(why, [("rounds", named(first, last).into())]);
    Some(Warning { kind: WarningKind::Change, rounds: vec![first, last], what })
}

/// Runs of neighbouring rounds, first and last.
fn runs(rounds: impl IntoIterator<Item = u32>) -> Vec<(u32, u32)> {
    let mut runs: Vec<(u32, u32)> = Vec::new();
    for round in rounds {
        match runs.last_mut() {
            Some(run) if run.1 + 1 == round => run.1 = round,
            _ => runs.push((round, round)),
        }
    }
    runs
}

/// Rounds that gain more than lies flat.
fn frills(piece: &Piece, chosen: &Chosen) -> Vec<Warning> {
    let mut below = chosen.start.joined();
    let above = (1..).zip(&chosen.counts).filter_map(|(round, &count)| {
        let below = below.replace(count)?;
        let most = chosen.most_gain(piece, round, below);
        (count > below.saturating_add(most)).then_some(round)
    });
    let frills = runs(above.collect::<Vec<_>>());
    let warning = |(first, last): (u32, u32)| Warning {
        kind: WarningKind::Frill,
        rounds: vec![first, last],
        what: Sentence::note("frill", []),
    };
    frills.into_iter().map(warning).collect()
}

/// Rings that the stuffing does not fill.
fn slack(chosen: &Chosen) -> Vec<Warning> {
    let drawn = chosen.hoop_strains.last().is_some_and(Option::is_none);
    let pleated = if drawn { PLEATED + 1 } else { 0 };
    let looked_at = chosen.hoop_strains.len().saturating_sub(pleated);
    let rings = (1..).zip(&chosen.hoop_strains[..looked_at]);
    let slack = rings.filter_map(|(round, strain): (u32, _)| {
        strain.is_some_and(|e| -e > SHOWING_SLACK).then_some(round)
    });
    let warning = |(first, last): (u32, u32)| {
        let share = chosen.hoop_strains[first as usize - 1..last as usize].iter().flatten();
        let most = share.fold(0.0_f64, |most, e| most.max(-e));
        Warning {
            kind: WarningKind::Slack,
            rounds: vec![first, last],
            what: Sentence::note(
                "slack",
                [("share", Sentence::default().number(100.0 * most, 0).into())],
            ),
        }
    };
    runs(slack.collect::<Vec<_>>()).into_iter().map(warning).collect()
}

/// Pins that are not met.
fn pins<'a>(piece: &'a Piece, chosen: &'a Chosen) -> impl Iterator<Item = Warning> + 'a {
    piece.pins.iter().filter_map(|(&round, &wanted)| {
        let what = match chosen.counts.get(round as usize - 1) {
            None => Sentence::note("pin_beyond", [("round", round.into())]),
            Some(&given) if given != wanted => Sentence::note(
                "pin_missed",
                [("round", round.into()), ("wanted", wanted.into()), ("given", given.into())],
            ),
            Some(_) => return None,
        };
        Some(Warning { kind: WarningKind::Pin, rounds: vec![round, round], what })
    })
}
