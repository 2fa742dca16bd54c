//! Warnings: what the maker should know before working the piece, each with its remedy.

use serde::Serialize;

use crate::length::{self, Unit};
use crate::piece::Piece;
use crate::piece::outline::Rz;
use crate::plan::counts::rules::GaveWay;
use crate::plan::counts::slack::{PLEATED, SHOWING_SLACK};
use crate::plan::counts::{Chosen, Start};
use crate::plan::skin::{RestSkin, Unheld};

/// Something the maker should know, and what helps.
#[derive(Debug, Clone, PartialEq, Eq, Serialize)]
pub struct Warning {
    /// A stable word for programs: `misfit`, `corner`, `wrinkle`, `flat`, `pin`, `direction`, `ends`,
    /// `multiples`, `change`, `symmetry`, `unsettled`, `swatch`, `oval`, `frill`, `slack`.
    pub code: &'static str,
    /// First and last round concerned, counted from 1; empty for the whole piece.
    pub rounds: Vec<u32>,
    /// What will happen and what to do, one sentence each.
    pub text: String,
}

impl Warning {
    /// The text with its lengths in `unit`.
    pub fn text_in(&self, unit: Unit) -> String {
        length::retold(&self.text, unit)
    }
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
    pub fn text(&self, last_node: usize, unit: Unit) -> String {
        let off = unit.text(self.off_mm.abs());
        let word = match (self.off_mm > 0.0, self.worst == 0 || self.worst == last_node) {
            (true, true) => "end sticks out",
            (false, true) => "end falls short",
            (true, false) => "bulges",
            (false, false) => "stays in",
        };
        format!("{word} {off}")
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
            code: "swatch",
            rounds: Vec::new(),
            text: format!(
                "The height of {} is assumed to be {} times that of single crochet. Work a \
                 swatch in it for a forecast that holds.",
                kind.name(),
                kind.default_height()
            ),
        });
    }
    if matches!(chosen.start, Start::Oval(_)) {
        warnings.push(Warning {
            code: "oval",
            rounds: Vec::new(),
            text:
                "The forecast of an oval body is approximate: its flat sides bulge more than \
                   its round ends. Make a sample before you trust its width."
                    .into(),
        });
    }
    let rounds = chosen.counts.len();
    if !chosen.settled.is_settled() {
        warnings.push(Warning {
            code: "unsettled",
            rounds: Vec::new(),
            text: "The forecast did not settle; treat its size as a guess. Less firm stuffing \
                   or a rounder outline helps."
                .into(),
        });
    }
    for misfit in misfits {
        let [first, last] = misfit.rounds();
        let corner = at_corner(piece, chosen, misfit);
        warnings.push(Warning {
            code: if corner { "corner" } else { "misfit" },
            rounds: vec![first, last],
            text: format!(
                "{}: {}. {}",
                named(first, last),
                misfit.text(rounds, Unit::Mm),
                remedy(misfit, corner)
            ),
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
fn named(first: u32, last: u32) -> String {
    if first == last { format!("Rnd {first}") } else { format!("Rnds {first}–{last}") }
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

fn remedy(misfit: &Misfit, corner: bool) -> &'static str {
    match (corner, misfit.off_mm > 0.0) {
        (true, _) => {
            "Cloth rounds a sharp edge off: draw a thread through that round, sew it, lay a \
             card in, or round the outline there."
        }
        (false, true) => {
            "Round the outline there, stuff less firmly, or hold it with a card or a drawn \
             thread."
        }
        (false, false) => "Ease the outline there or pin those rounds to more stitches.",
    }
}

fn unheld(why: Unheld, first: u32, last: u32) -> Warning {
    let (code, what) = match why {
        Unheld::Wrinkles => (
            "wrinkle",
            "cloth this flat wrinkles around and bulges; a rounder outline there holds",
        ),
        Unheld::Flat => (
            "flat",
            "cloth this level has nothing to hold it; a card insert or a steeper side does",
        ),
    };
    Warning {
        code,
        rounds: vec![first, last],
        text: format!("{}: {what}.", named(first, last)),
    }
}

/// A rule that gave way as a whole; those that give way in single rounds are found there.
fn gave_way(rule: GaveWay) -> Option<Warning> {
    let (code, text) = match rule {
        GaveWay::Change | GaveWay::Flat => return None,
        GaveWay::Direction => (
            "direction",
            "The rules could not all be met: some rounds gain on a narrowing stretch or lose \
             on a widening one. A gentler outline or fewer pins helps.",
        ),
        GaveWay::Multiples => (
            "multiples",
            "The stitches could not all be multiples of the number asked: neighbouring rounds \
             would be too far apart. A smaller multiple helps.",
        ),
        GaveWay::Symmetry => (
            "symmetry",
            "The two halves could not have the same counts. Pins or faces that differ between \
             them stand in the way.",
        ),
        GaveWay::Ends => (
            "ends",
            "The rules could not all be met: the first, last or narrowest round has fewer or \
             more stitches than asked. A gentler outline there helps.",
        ),
    };
    Some(Warning { code, rounds: Vec::new(), text: text.to_owned() })
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
    let why = if gathers && first == last {
        "is drawn shut, which takes a decrease round whatever the largest change or a plain \
         face says. End the face a round earlier, or leave that end open."
    } else {
        "could not keep to the largest change or the plain face: the outline widens or \
         narrows faster. A gentler outline there, a larger change or a shorter face helps."
    };
    let text = format!("{} {why}", named(first, last));
    Some(Warning { code: "change", rounds: vec![first, last], text })
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
        code: "frill",
        rounds: vec![first, last],
        text: format!(
            "{}: more stitches are gained than lie flat, so the cloth stands in folds there. \
             Fewer stitches or a gentler outline lie smooth.",
            named(first, last)
        ),
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
            code: "slack",
            rounds: vec![first, last],
            text: format!(
                "{}: the stuffing leaves up to {:.0} % of the cloth slack, so it ripples. \
                 A rounder outline there, or fewer stitches, is smooth.",
                named(first, last),
                100.0 * most
            ),
        }
    };
    runs(slack.collect::<Vec<_>>()).into_iter().map(warning).collect()
}

/// Pins that are not met.
fn pins<'a>(piece: &'a Piece, chosen: &'a Chosen) -> impl Iterator<Item = Warning> + 'a {
    piece.pins.iter().filter_map(|(&round, &wanted)| {
        let text = match chosen.counts.get(round as usize - 1) {
            None => {
                format!("Rnd {round} is pinned, but the piece ends before it. Remove the pin.")
            }
            Some(&given) if given != wanted => format!(
                "Rnd {round} is pinned to {wanted} sts, but only {given} can be worked between \
                 its neighbours. Pin a count nearer to theirs."
            ),
            Some(_) => return None,
        };
        Some(Warning { code: "pin", rounds: vec![round, round], text })
    })
}
