//! How seams stand, in figures and in words.

use std::f64::consts::PI;

use super::edge::{EdgeFacts, edge, named};
use super::{At, Seam, SeamKind, Side};
use crate::error::Result;
use crate::piece::PieceId;
use crate::plan::{Plan, plan};
use crate::project::Project;
use crate::sentence::{NoteValue, Sentence};
use crate::words::write::Fill::{Number, Words};
use crate::words::write::{Writer, capitalised};

/// How a seam stands.
#[derive(Debug, Clone, PartialEq)]
pub struct SeamReport {
    /// Its first edge.
    pub a: EdgeFacts,
    /// Its second edge.
    pub b: EdgeFacts,
    /// How much wider `b` is than `a`, mm across, as [`SeamKind::Clearance`] measures it.
    pub room_mm: f64,
    /// How many stitches `b` has too many, or too few if negative: whole ones where the two
    /// are sewn, else those of the room it has too much.
    pub off_stitches: f64,
    /// Whether the seam holds: equal stitches, or the room within half a stitch.
    pub met: bool,
    kind: SeamKind,
    /// Its edges by name: `Cap, the open end (36 sts)`.
    names: [Sentence; 2],
}

impl SeamReport {
    /// All that in a sentence.
    pub fn sentence(&self) -> Sentence {
        let [one, other] = self.names.clone().map(NoteValue::from);
        let (one, other) = (("one", one), ("other", other));
        match (self.kind, self.met) {
            (SeamKind::SewnEqual, true) => Sentence::note("seam_sews", [one, other]),
            (SeamKind::SewnEqual, false) => {
                let apart = self.off_stitches.abs().round() as u32;
                Sentence::note("seam_apart", [one, other, ("apart", apart.into())])
            }
            (SeamKind::Clearance { mm, .. }, met) => {
                let length = |mm: f64| NoteValue::from(Sentence::default().mm(mm));
                let key = if met { "seam_goes_over" } else { "seam_goes_over_not" };
                let (room, wanted) = (length(self.room_mm), length(mm));
                Sentence::note(key, [one, other, ("room", room), ("wanted", wanted)])
            }
        }
    }
}

/// Half a stitch is as near as whole ones come; a hair more is for arithmetic.
const HALF: f64 = 0.5 + 1e-9;

/// What a seam of `kind` between these edges is off by, in stitches of `b`, and its room, mm.
pub(super) fn off(kind: SeamKind, a: &EdgeFacts, b: &EdgeFacts) -> (f64, f64) {
    let outer = match kind {
        SeamKind::Clearance { stuffed: false, .. } => b.slack_mm,
        _ => b.stuffed_mm,
    };
    let room = outer - a.stuffed_mm;
    let off = match kind {
        SeamKind::SewnEqual => f64::from(b.stitches) - f64::from(a.stitches),
        SeamKind::Clearance { mm, .. } => (room - mm) * PI / b.stitch_mm,
    };
    (off, room)
}

/// Whether a seam of `kind` that is `off` by so many stitches holds.
pub(super) fn holds(kind: SeamKind, off: f64) -> bool {
    match kind {
        SeamKind::SewnEqual => off == 0.0,
        SeamKind::Clearance { .. } => off.abs() <= HALF,
    }
}

/// How seam `index` of `project` stands.
///
/// # Errors
/// As [`plan`](crate::plan()), and where a piece or an edge is not there.
///
/// # Panics
/// Where there is no seam `index`.
pub fn report(project: &Project, index: usize) -> Result<SeamReport> {
    let seam = &project.seams[index];
    let of = |side: Side| {
        let piece = project.needed(seam.edges(side).0.piece)?;
        let plan = plan(piece).map_err(|e| e.within(&format!("piece “{}”", piece.name)))?;
        edge(piece, &plan, seam.edges(side).0)
    };
    Ok(of_edges(project, seam, of(Side::A)?, of(Side::B)?))
}

/// How every seam of `project` stands, with the plans of its pieces at hand.
///
/// # Panics
/// Where `plans` are fewer than the pieces.
pub fn reports(project: &Project, plans: &[Plan]) -> Vec<Result<SeamReport>> {
    let facts = |at: super::Edge| {
        let mut all = project.pieces.iter().zip(plans);
        let (piece, plan) = all
            .find(|(piece, _)| piece.id == at.piece)
            .ok_or_else(|| at.piece.missing(project.pieces.iter().map(|piece| piece.id)))?;
        edge(piece, plan, at)
    };
    let one = |seam: &Seam| Ok(of_edges(project, seam, facts(seam.a)?, facts(seam.b)?));
    project.seams.iter().map(one).collect()
}

pub(super) fn of_edges(
    project: &Project,
    seam: &Seam,
    a: EdgeFacts,
    b: EdgeFacts,
) -> SeamReport {
    let (off_stitches, room_mm) = off(seam.kind, &a, &b);
    let met = holds(seam.kind, off_stitches);
    let name = |facts: &EdgeFacts| {
        let piece = project.name_of(facts.edge.piece);
        let edge = named(facts.edge.at).into();
        let values = [("piece", piece.into()), ("edge", edge), ("n", facts.stitches.into())];
        Sentence::note("edge_of_piece", values)
    };
    let names = [name(&a), name(&b)];
    SeamReport { a, b, room_mm, off_stitches, met, kind: seam.kind, names }
}

/// What the maker of `piece` is told of its seams, a sentence each, in the words of `writer`;
/// `plans` are those of all pieces. A seam whose edge is not there is told as such.
///
/// # Panics
/// As [`reports`].
pub fn instructions(
    project: &Project,
    plans: &[Plan],
    piece: PieceId,
    writer: &Writer<'_>,
) -> Vec<Sentence> {
    let seams = project.seams.iter().zip(reports(project, plans));
    let said = |at: At| match at {
        At::OpenStart => writer.say("edge_start"),
        At::OpenEnd => writer.say("edge_end"),
        At::Round(k) => writer.say_of("edge_round", &[("n", Number(k))]),
    };
    let told = |(seam, report): (&Seam, Result<SeamReport>)| {
        let report = match report {
            Ok(report) => report,
            Err(e) => return format!("A seam is not there any more: {e}.").into(),
        };
        let outer = seam.b.piece == piece;
        let (own, other) = if outer { (&report.b, &report.a) } else { (&report.a, &report.b) };
        let mine = capitalised(&said(own.edge.at));
        let (edge, name) = (said(other.edge.at), project.name_of(other.edge.piece));
        let theirs =
            writer.say_of("of_piece", &[("edge", Words(&edge)), ("piece", Words(name))]);
        let values = |room: &str| {
            writer.say_of(
                match (seam.kind, report.met, outer) {
                    (SeamKind::SewnEqual, true, _) => "sewn",
                    (SeamKind::SewnEqual, false, _) => "sewn_eased",
                    (SeamKind::Clearance { .. }, _, true) => "goes_over",
                    (SeamKind::Clearance { .. }, _, false) => "goes_into",
                },
                &[
                    ("mine", Words(&mine)),
                    ("theirs", Words(&theirs)),
                    ("n", Number(own.stitches)),
                    ("other", Number(other.stitches)),
                    ("room", Words(room)),
                ],
            )
        };
        // A length keeps its place in the sentence until somebody reads it in a unit.
        let text = values(ROOM);
        match text.split_once(ROOM) {
            None => text.into(),
            Some((before, after)) => {
                Sentence::from(before).rough_mm(report.room_mm).words(after)
            }
        }
    };
    seams.filter(|(seam, _)| seam.touches(piece)).map(told).collect()
}

/// Stands for a length in a sentence that is not yet read: no text holds it.
const ROOM: &str = "\u{1}";

#[cfg(test)]
mod tests {
    use super::*;
    use crate::length::Unit;
    use crate::project::seam::{At, Edge};

    #[test]
    fn every_length_of_a_sentence_is_in_the_unit_asked_for() {
        let facts = EdgeFacts {
            edge: Edge { piece: PieceId::default(), at: At::OpenEnd },
            round: 20,
            stitches: 36,
            stuffed_mm: 50.8,
            slack_mm: 50.8,
            stitch_mm: 4.5,
        };
        let mut report = SeamReport {
            a: facts,
            b: facts,
            room_mm: 5.08,
            off_stitches: 0.0,
            met: true,
            kind: SeamKind::Clearance { mm: 4.0, stuffed: true },
            names: ["Nut".into(), "Cap".into()],
        };
        let text = "Cap goes over Nut with 0.20 in to spare across, 0.16 in wanted.";
        assert_eq!(report.sentence().text(Unit::Inch), text);
        report.met = false;
        let text = "Cap goes over Nut with 5.1 mm to spare across, not the 4.0 mm wanted.";
        assert_eq!(report.sentence().text(Unit::Mm), text);
    }
}
