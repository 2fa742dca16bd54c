//! Sentences about one part or attachment.

use super::phrases::AssemblyPhrases;
use crate::project::Project;
use crate::project::toy::attachment::{
    Attachment, Cord, CordHold, CordSpot, CordWay, Joint, Knots, Sling, Wire,
};
use crate::project::toy::part::{
    Copies, EdgeHow, HeldBy, PartEnd, PartForm, Seat, Small, Thing,
};
use crate::toy::assembled::{Assembled, PartFigures, Point};
use crate::toy::footprint::{Miss, Span, Why};
use crate::toy::held::{HeldPart, HeldPlace, SlingFigures, WireFigures};
use crate::words::write::{Fill, Writer};

/// What sentences are made from.
#[derive(Clone, Copy)]
pub(super) struct Speaker<'a> {
    pub(super) project: &'a Project,
    pub(super) toy: &'a Assembled,
    pub(super) writer: &'a Writer<'a>,
    pub(super) phrases: &'static AssemblyPhrases,
}

/// What part `index` is called: its piece, or what the small thing is in the words of `writer`.
pub fn part_name(project: &Project, index: usize, writer: &Writer<'_>) -> String {
    let phrases = AssemblyPhrases::of(writer.lexicon());
    let Some(part) = project.toy.parts.get(index) else { return String::new() };
    match &part.what {
        Thing::Piece(piece) => project.name_of(*piece).to_owned(),
        Thing::Small(small) if !small.name.is_empty() => small.name.clone(),
        Thing::Small(small) => match small.form {
            PartForm::Eye(_) if part.copies == Copies::One => phrases.eye.clone(),
            PartForm::Eye(_) => phrases.eyes.clone(),
            PartForm::Nose(_) => phrases.nose.clone(),
            PartForm::Block(..) => phrases.part.clone(),
        },
    }
}

impl Speaker<'_> {
    pub(super) fn name(&self, index: usize) -> String {
        part_name(self.project, index, self.writer)
    }

    pub(super) fn fill(&self, phrase: &str, values: &[(&str, Fill<'_>)]) -> String {
        self.writer.filled(phrase, values)
    }

    pub(super) fn rounds(&self, phrase: &str, first: u32, last: u32) -> String {
        let ends = [("first", Fill::Number(first)), ("last", Fill::Number(last))];
        self.fill(phrase, &ends)
    }

    fn counted(&self, phrase: &str, n: f64) -> String {
        self.fill(phrase, &[("n", Fill::Number(whole(n)))])
    }

    /// The sentence that puts a piece in its place.
    pub(super) fn seat(&self, index: usize, seat: Seat) -> String {
        let p = self.phrases;
        let part = &self.project.toy.parts[index];
        let figures = &self.toy.parts[index];
        let n = part.copies.number();
        let sunk = seat.sunk_mm > 0.0
            && figures.footprint.as_ref().is_some_and(|f| f.edge_mm.is_none());
        let phrase = match (part.held_by, sunk, n > 1) {
            (HeldBy::Thread, ..) => &p.thread,
            (_, true, false) => &p.sink_one,
            (_, true, true) => &p.sink_each,
            (_, false, false) => &p.sew_one,
            (_, false, true) => &p.sew_each,
        };
        let place = self.covered(figures, seat);
        let (name, body) = (self.name(index), self.name(seat.part));
        let mm = format!("{:.0}", seat.sunk_mm);
        let mut said = self.fill(
            phrase,
            &[
                ("part", Fill::Words(&name)),
                ("body", Fill::Words(&body)),
                ("where", Fill::Words(&place)),
                ("mm", Fill::Words(&mm)),
                ("n", Fill::Number(n)),
            ],
        );
        if let Some(apart) = figures.span.as_ref().and_then(|span| span.apart) {
            said = format!("{said}, {}", self.counted(&p.apart, apart.stitches.max(0.0)));
        }
        // What goes around the axis has its middle at a pole, which is at no stitch.
        let middle = figures
            .point
            .as_ref()
            .filter(|_| figures.span.as_ref().is_none_or(|span| !span.around));
        if let Some(at) =
            middle.and_then(|at| self.stitches(at, &p.centred_one, &p.centred_two))
        {
            said = format!("{said}, {at}");
        }
        if let Some(edge) = self.edge(figures, seat).filter(|_| !sunk) {
            said = format!("{said}, {edge}");
        }
        said + "."
    }

    /// Which rounds a footprint covers, and on which side.
    fn covered(&self, figures: &PartFigures, seat: Seat) -> String {
        let p = self.phrases;
        let Some(Span { rounds: (first, last), around, .. }) = figures.span else {
            return self.side(figures, seat);
        };
        let place = match (around, first < last) {
            (true, true) => return self.rounds(&p.around, first, last),
            (true, false) => return self.counted(&p.around_one, f64::from(first)),
            (false, true) => self.rounds(&p.covers, first, last),
            (false, false) if first == last => self.counted(&p.covers_one, f64::from(first)),
            (false, false) => self.rounds(&p.between, last, first),
        };
        let side = self.side(figures, seat);
        if side.is_empty() { place } else { format!("{place}, {side}") }
    }

    /// Whether a single part is on the front line or opposite.
    fn side(&self, figures: &PartFigures, seat: Seat) -> String {
        let p = self.phrases;
        let carrier = self.project.toy.parts[seat.part].piece();
        let Some(carrier) = carrier.filter(|_| figures.number == 1) else {
            return String::new();
        };
        let turn = seat.at.around.rem_euclid(1.0);
        let solid = self.toy.solids.get(&carrier);
        let count = solid.map_or(1.0, |solid| solid.stitches(solid.round_at(seat.at.along)));
        let stitches = turn * count;
        if stitches < 0.5 || stitches > count - 0.5 {
            return p.front.clone();
        }
        if (stitches - 0.5 * count).abs() < 0.5 { p.back.clone() } else { String::new() }
    }

    fn edge(&self, figures: &PartFigures, seat: Seat) -> Option<String> {
        let p = self.phrases;
        let (print, span) = (figures.footprint.as_ref()?, figures.span.as_ref()?);
        let rows = (span.rounds.1 + 1).saturating_sub(span.rounds.0);
        let phrase = match (seat.by.how, span.around, rows) {
            (EdgeHow::Flat, _, 0) => &p.edge_flat_level,
            (EdgeHow::Flat, ..) => &p.edge_flat,
            (_, true, _) => &p.edge_around,
            (_, false, _) => &p.edge_over,
        };
        Some(self.fill(
            phrase,
            &[
                ("rows", Fill::Number(rows)),
                ("wide", Fill::Number(whole(span.widest))),
                ("n", Fill::Number(whole(print.edge_stitches))),
            ],
        ))
    }

    /// The stitches of a place, by a phrase for one and one for two; none for more, nor before
    /// the first stitch of a round, which is no stitch's place.
    pub(super) fn stitches(&self, point: &Point, one: &str, two: &str) -> Option<String> {
        let round = ("round_number", Fill::Number(point.round));
        let single = ("n", Fill::Number(1));
        match point.after[..] {
            [nth] if nth > 0 => {
                let at = [("nth", Fill::Nth(nth)), ("nth_number", Fill::Number(nth))];
                Some(self.fill(one, &[at[0], at[1], round, single]))
            }
            [nth, other] if nth > 0 && other > 0 => {
                let ends = [
                    ("nth", Fill::Nth(nth)),
                    ("nth_number", Fill::Number(nth)),
                    ("other", Fill::Nth(other)),
                    ("other_number", Fill::Number(other)),
                    round,
                    single,
                ];
                Some(self.fill(two, &ends))
            }
            _ => None,
        }
    }

    /// The sentence about a small thing.
    pub(super) fn small(
        &self,
        index: usize,
        seat: Seat,
        small: &Small,
        point: &Point,
    ) -> String {
        let p = self.phrases;
        let part = &self.project.toy.parts[index];
        let mut place = self.rounds(&p.between, point.round, point.round + 1);
        if let Some(apart) = point.apart {
            place = format!("{place}, {}", self.counted(&p.apart, f64::from(apart)));
        }
        let after = self.stitches(point, &p.after_one, &p.after_two);
        if let Some(after) = after {
            place = format!("{place} ({after})");
        }
        let several = part.copies.number() > 1;
        let (phrase, mm) = match small.form {
            PartForm::Eye(b) | PartForm::Nose(b) if b.embroidered => {
                (&p.embroider, b.diameter_mm)
            }
            PartForm::Eye(b) | PartForm::Nose(b) if several => (&p.washer_each, b.diameter_mm),
            PartForm::Eye(b) | PartForm::Nose(b) => (&p.washer_one, b.diameter_mm),
            PartForm::Block(_, _, long) if seat.sunk_mm >= long => (&p.put_in, long),
            PartForm::Block(_, _, long) => (&p.put_on, long),
        };
        let (name, body) = (self.name(index), self.name(seat.part));
        let mm = format!("{mm:.0}");
        let values = [
            ("part", Fill::Words(&name)),
            ("body", Fill::Words(&body)),
            ("where", Fill::Words(&place)),
            ("mm", Fill::Words(&mm)),
        ];
        self.fill(phrase, &values) + "."
    }

    /// The sentence about an attachment.
    pub(super) fn attachment(&self, index: usize) -> String {
        match (&self.project.toy.attachments[index], &self.toy.held[index]) {
            (Attachment::Cord(cord), HeldPart::Cord { from, to, length, .. }) => {
                self.cord(cord, *from, *to, length.leg_mm, length.all_mm)
            }
            (Attachment::Loop(hanger), HeldPart::Loop { on }) => {
                let (body, place) = self.body_and_place(hanger.on, *on);
                let mm = format!("{:.0}", hanger.around_mm);
                let values = [("body", body.as_str()), ("where", &place), ("mm", &mm)];
                self.worded(&self.phrases.ring, &values)
            }
            (Attachment::Wire(wire), HeldPart::Wire(figures)) => self.wire(wire, figures),
            (Attachment::Joint(joint), HeldPart::Joint { thread_mm }) => {
                self.joint(*joint, *thread_mm)
            }
            (Attachment::Sling(sling), HeldPart::Sling(figures)) => self.sling(sling, figures),
            _ => String::new(),
        }
    }

    fn worded(&self, phrase: &str, values: &[(&str, &str)]) -> String {
        let values: Vec<(&str, Fill<'_>)> =
            values.iter().map(|&(name, words)| (name, Fill::Words(words))).collect();
        self.fill(phrase, &values) + "."
    }

    fn body_and_place(&self, hold: CordHold, found: HeldPlace) -> (String, String) {
        let place = where_held(self.project, self.toy, self.writer, hold, found);
        (self.name(hold.part), place)
    }

    fn cord(
        &self,
        cord: &Cord,
        from: HeldPlace,
        to: Option<HeldPlace>,
        leg: f64,
        all: f64,
    ) -> String {
        let p = self.phrases;
        let (body, place) = self.body_and_place(cord.from, from);
        let way = match cord.way {
            CordWay::Around => &p.cord_around,
            CordWay::Through => &p.cord_through,
        };
        let held = [("body", Fill::Words(&body)), ("where", Fill::Words(&place))];
        let first = self.fill(way, &held);
        let knot = match cord.knots {
            Knots::Inside => &p.knot_inside,
            Knots::Outside => &p.knot_outside,
        };
        let (leg, all) = (format!("{leg:.0}"), format!("{all:.0}"));
        let way = match (cord.to, to) {
            (Some(hold), Some(found)) => {
                let (other, place) = self.body_and_place(hold, found);
                let values = [
                    ("mm", Fill::Words(&leg)),
                    ("all", Fill::Words(&all)),
                    ("other", Fill::Words(&other)),
                    ("where", Fill::Words(&place)),
                    ("n", Fill::Number(cord.strands)),
                ];
                self.fill(&p.cord_down, &values)
            }
            _ => {
                let values = [("mm", Fill::Words(&leg)), ("all", Fill::Words(&all))];
                self.fill(&p.cord_up, &values)
            }
        };
        format!("{first}; {knot}; {way}.")
    }

    fn wire(&self, wire: &Wire, figures: &WireFigures) -> String {
        let (body, place) = self.body_and_place(wire.carries, figures.carries);
        let other = self.name(wire.stands_in.part);
        let thick = self.writer.figure(&wire.diameter_mm.to_string());
        let all = format!("{:.0}", figures.cut_mm);
        let metal = self.writer.say(wire.metal.word());
        let mm = format!("{:.0}", wire.free_mm);
        let values = [
            ("body", Fill::Words(&body)),
            ("where", Fill::Words(&place)),
            ("other", Fill::Words(&other)),
            ("metal", Fill::Words(&metal)),
            ("thick", Fill::Words(&thick)),
            ("all", Fill::Words(&all)),
            ("mm", Fill::Words(&mm)),
            ("n", Fill::Number(wire.strands)),
        ];
        self.fill(&self.phrases.wire, &values) + "."
    }

    fn sling(&self, sling: &Sling, figures: &SlingFigures) -> String {
        let p = self.phrases;
        let legs = figures.legs.iter().map(|leg| {
            let body = self.name(leg.part);
            let place = self.rounds(&p.between, leg.round, leg.round + 1);
            let point = Point { round: leg.round, apart: None, after: vec![leg.after] };
            let place = match self.stitches(&point, &p.after_one, &p.after_two) {
                Some(after) => format!("{place} {after}"),
                None => place,
            };
            let mm = format!("{:.0}", leg.free_mm);
            let values = [("body", body.as_str()), ("where", &place), ("mm", &mm)];
            let values = values.map(|(name, words)| (name, Fill::Words(words)));
            self.fill(&p.sling_leg, &values)
        });
        let legs: Vec<String> = legs.collect();
        let knot = match sling.knots {
            Knots::Inside => &p.knot_inside,
            Knots::Outside => &p.knot_outside,
        };
        let (legs, all) = (legs.join("; "), format!("{:.0}", figures.all_mm));
        let values = [
            ("n", Fill::Number(sling.legs.len() as u32)),
            ("legs", Fill::Words(&legs)),
            ("knot", Fill::Words(knot)),
            ("all", Fill::Words(&all)),
        ];
        self.fill(&p.sling, &values) + "."
    }

    fn joint(&self, joint: Joint, thread_mm: f64) -> String {
        let body = self.project.toy.parts[joint.part].on.map_or(0, |seat| seat.part);
        let (part, body) = (self.name(joint.part), self.name(body));
        let all = format!("{thread_mm:.0}");
        let values = [
            ("part", Fill::Words(&part)),
            ("body", Fill::Words(&body)),
            ("all", Fill::Words(&all)),
            ("n", Fill::Number(joint.passes)),
        ];
        self.fill(&self.phrases.joint, &values) + "."
    }
}

/// Where something is held: “between Rnds 30 and 31, the narrowest place”. The rounds come from
/// the shape as it is planned, never from what was true of another.
pub fn where_held(
    project: &Project,
    toy: &Assembled,
    writer: &Writer<'_>,
    hold: CordHold,
    found: HeldPlace,
) -> String {
    let p = AssemblyPhrases::of(writer.lexicon());
    let solid =
        project.toy.parts.get(hold.part).and_then(|part| toy.solids.get(&part.piece()?));
    let (Some(round), Some(solid)) = (found.round, solid) else { return String::new() };
    let (open_start, open_last) = solid.open();
    if hold.at == CordSpot::End(PartEnd::Start) || round <= 0.0 {
        return if open_start { p.edge_place.clone() } else { p.start_place.clone() };
    }
    if hold.at == CordSpot::End(PartEnd::Last) && open_last {
        return p.edge_place.clone();
    }
    let last = solid.rounds() as u32;
    let below = (round.round() as u32).clamp(1, last);
    if below == last {
        return if open_last {
            p.edge_place.clone()
        } else {
            writer.filled(&p.covers_one, &[("n", Fill::Number(last))])
        };
    }
    let ends = [("first", Fill::Number(below)), ("last", Fill::Number(below + 1))];
    let place = writer.filled(&p.between, &ends);
    if found.narrow { format!("{place}, {}", p.narrowest) } else { place }
}

/// Why a part does not fit, and what would, in a sentence.
pub fn misfit_text(project: &Project, toy: &Assembled, index: usize) -> Option<String> {
    let misfit = toy.parts.get(index)?.misfit?;
    let name = part_name(project, index, &Writer::bench());
    let what = match misfit.why {
        Why::Misses(Miss::NoEdge) => {
            format!("{name} is closed at that end, so it has no edge to sew")
        }
        Why::Misses(Miss::OffTheBody) => format!("{name} reaches past the body there"),
        Why::Misses(Miss::TooHigh(_)) => format!("{name} does not reach into the body"),
        Why::Misses(Miss::Swallowed) => format!("All of {name} is inside the body"),
        Why::Stretches { has, wants } => format!(
            "{name} does not fit there: its edge has {} stitches and would have to reach {}",
            whole(has),
            whole(wants)
        ),
        Why::TooLarge { sides } => {
            format!("{name} has no room inside there: it is {}", sizes_text(sides))
        }
        Why::ThroughCard { after } => {
            format!("{name} would go through the card that is laid in after Rnd {after}")
        }
    };
    let mut would: Vec<String> = Vec::new();
    if let Some(n) = misfit.edge_that_fits {
        would.push(format!("an edge of {n} stitches at most would fit"));
    }
    if let Some(sides) = misfit.size_that_fits {
        would.push(format!("one of {} at most would fit", sizes_text(sides)));
    }
    if let Some(mm) = misfit.sink_mm {
        would.push(format!("pushed in {:.0} mm further it would", mm.ceil()));
    }
    let into_card = matches!(misfit.why, Why::ThroughCard { .. }) && would.is_empty();
    if misfit.why == Why::Misses(Miss::Swallowed) || into_card {
        would.push("push it in less far".into());
    }
    if misfit.why == Why::Misses(Miss::NoEdge) {
        would.push("put it on by its closed end, or open that end".into());
    }
    if would.is_empty() {
        would.push("move it, or put on something smaller".into());
    }
    Some(format!("{what}; {}.", would.join(", or ")))
}

/// `20 × 20 × 12 mm`.
fn sizes_text(sides: [f64; 3]) -> String {
    format!("{} mm", sides.map(|mm| format!("{mm:.0}")).join(" × "))
}

fn whole(n: f64) -> u32 {
    n.round().max(0.0) as u32
}
