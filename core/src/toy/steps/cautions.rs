//! Cautions by who a toy is made for. Figures are those that could be read in public texts; the
//! text and the edition are named beside each, and the last word is never this program's.

use super::say::part_name;
use crate::piece::Piece;
use crate::piece::outline::Hold;
use crate::project::Project;
use crate::project::toy::MadeFor;
use crate::project::toy::attachment::{Attachment, CordWay, Metal};
use crate::project::toy::part::{HeldBy, PartForm, Thing};
use crate::toy::assembled::Assembled;
use crate::toy::figures::small_parts::BALL_MM;
use crate::toy::figures::wire::SAFETY;
use crate::toy::held::{HeldPart, SlingLeg, WireFigures};
use crate::words::write::Fill::Words;
use crate::words::write::Writer;

/// Thinnest cord for a child under 36 months, mm (EN 71-1:2005+A8:2009, 5.4).
pub const LEAST_CORD_MM: f64 = 1.5;

/// Longest free cord there that can make a noose, mm.
pub const MOST_CORD_MM: f64 = 220.0;

/// Longest noose there, all around, mm.
pub const MOST_NOOSE_MM: f64 = 380.0;

/// Something that whoever makes or gives the toy should know.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct Caution {
    /// What it is about, in a word that stays the same.
    pub code: &'static str,
    /// The part it is about, an index into the toy's.
    pub part: Option<usize>,
    /// The attachment it is about.
    pub attachment: Option<usize>,
    /// Whether what is asked for should not be made for whom it is meant.
    pub refused: bool,
    /// What to know, in sentences.
    pub text: String,
    /// Where that is written; empty for common practice.
    pub source: &'static str,
}

const SMALL_PARTS: &str = "16 CFR 1501.4";
const CORDS: &str = "EN 71-1:2005+A8:2009, 5.4";

/// The cautions of `toy`: of its parts, of what holds it, of all of it, then the maker's own; in
/// the words of `writer`.
pub fn cautions(project: &Project, toy: &Assembled, writer: &Writer<'_>) -> Vec<Caution> {
    let young = is_young(project.toy.made_for);
    let mut list = CautionList { list: Vec::new(), young, writer };
    for (index, part) in project.toy.parts.iter().enumerate() {
        of_part(&mut list, project, toy, index);
        if part.held_by == HeldBy::Glued {
            let text = list.of("glue", &part_name(project, index, writer));
            list.put("glue", Some(index), None, true, "", text);
        }
        let jointed = |a: &Attachment| matches!(a, Attachment::Joint(j) if j.part == index);
        let joint = project.toy.attachments.iter().any(jointed);
        if part.held_by == HeldBy::Thread && !joint {
            let text = list.say("joint");
            list.put("joint", Some(index), None, false, "", text);
        }
    }
    for index in 0..project.toy.attachments.len() {
        of_attachment(&mut list, project, toy, index);
    }
    of_all(&mut list, project);
    let own = project.toy.cautions.iter().filter(|text| !text.trim().is_empty());
    for text in own {
        list.put("own", None, None, false, "", text.clone());
    }
    let text = list.say("local_rules");
    list.put("local_rules", None, None, false, "", text);
    list.list
}

struct CautionList<'a> {
    list: Vec<Caution>,
    young: bool,
    writer: &'a Writer<'a>,
}

impl CautionList<'_> {
    fn say(&self, name: &str) -> String {
        self.writer.say(name)
    }

    /// Of a part.
    fn of(&self, name: &str, part: &str) -> String {
        self.writer.say_of(name, &[("part", Words(part))])
    }

    /// A length, mm, and the limit it is held against.
    fn against(&self, name: &str, mm: &str, limit: &str) -> String {
        let (mm, limit) = (self.writer.figure(mm), self.writer.figure(limit));
        let values = [("mm", Words(&mm)), ("least", Words(&limit)), ("most", Words(&limit))];
        self.writer.say_of(name, &values)
    }

    fn put(
        &mut self,
        code: &'static str,
        part: Option<usize>,
        attachment: Option<usize>,
        refused: bool,
        source: &'static str,
        text: String,
    ) {
        self.list.push(Caution { code, part, attachment, refused, text, source });
    }
}

/// Whether it counts as a toy for a child under 3.
fn is_young(made_for: MadeFor) -> bool {
    matches!(made_for, MadeFor::Baby | MadeFor::SoftToy)
}

fn of_part(list: &mut CautionList<'_>, project: &Project, toy: &Assembled, index: usize) {
    let (part, figures) = (&project.toy.parts[index], &toy.parts[index]);
    let name = part_name(project, index, list.writer);
    let at = Some(index);
    let mut put = |code, refused, source, text| {
        let told = list.of(text, &name);
        list.put(code, at, None, refused, source, told);
    };
    let young = is_young(project.toy.made_for);
    let ornament = project.toy.made_for == MadeFor::Ornament;
    match &part.what {
        Thing::Small(small) => {
            let embroidered = matches!(
                small.form,
                PartForm::Eye(b) | PartForm::Nose(b) if b.embroidered
            );
            if embroidered || ornament {
                return;
            }
            if figures.is_small() && young {
                put("small_part", true, SMALL_PARTS, "small_part_young");
            } else if figures.is_small() {
                put("small_part", false, SMALL_PARTS, "small_part");
            } else if young {
                put("hard_part", false, "", "hard_part");
            }
        }
        Thing::Piece(piece) => {
            if figures.is_small() && young {
                put("small_piece", false, SMALL_PARTS, "small_piece");
            }
            let solid = toy.solids.get(piece);
            let wide = solid.map_or(f64::INFINITY, |solid| {
                let r = solid.nodes().iter().fold(0.0, |most: f64, n| most.max(n.r));
                2.0 * r + solid.straight_mm()
            });
            let alone = part.on.is_none() && project.toy.parts.len() == 1;
            if alone && wide <= BALL_MM && !ornament {
                put("small_ball", young, "16 CFR 1500.19", "small_ball");
            }
            let card = |piece: &Piece| piece.outline.knots.iter().any(|knot| knot.card);
            if project.piece(*piece).is_some_and(card) {
                put("card", false, "", "card");
            }
            let drawn = |piece: &Piece| {
                piece.outline.knots.iter().any(|knot| knot.hold == Some(Hold::Cinched))
            };
            if project.piece(*piece).is_some_and(drawn) {
                put("drawn_thread", false, "", "drawn_thread");
            }
        }
    }
}

fn of_attachment(list: &mut CautionList<'_>, project: &Project, toy: &Assembled, index: usize) {
    let at = Some(index);
    match (&project.toy.attachments[index], toy.held.get(index)) {
        (Attachment::Cord(c), held) => {
            let noose = if c.to.is_none() { Some(2.0 * c.drop_mm) } else { None };
            of_cord(list, at, [c.thickness_mm, c.drop_mm], noose);
            if let Some(HeldPart::Cord { from, .. }) = held
                && !from.narrow
                && c.way == CordWay::Around
            {
                let name = part_name(project, c.from.part, list.writer);
                let text = list.of("cord_slips", &name);
                list.put("cord_slips", None, at, false, "", text);
            }
        }
        (Attachment::Loop(hanger), _) => {
            of_cord(list, at, [hanger.thickness_mm, 0.0], Some(hanger.around_mm));
        }
        (Attachment::Sling(sling), Some(HeldPart::Sling(figures))) => {
            let free = |leg: &SlingLeg| leg.free_mm;
            let longest = figures.legs.iter().map(free).fold(0.0, f64::max);
            // Two of them and the cloth between make a noose; the cloth gives way, so the two
            // alone are told.
            let mut all: Vec<f64> = figures.legs.iter().map(free).collect();
            all.sort_by(|a, b| b.total_cmp(a));
            let noose: f64 = all.iter().take(2).sum();
            of_cord(list, at, [sling.thickness_mm, longest], Some(noose));
        }
        (Attachment::Sling(_), _) => {}
        (Attachment::Joint(_), _) => {
            let text = list.say("joint");
            list.put("joint", None, at, false, "", text);
        }
        (Attachment::Wire(wire), held) => {
            let toy_too = project.toy.made_for != MadeFor::Ornament;
            let text = list.say("wire");
            list.put("wire", None, at, toy_too, "16 CFR 1500.48", text);
            let text = list.say("wire_cutting");
            list.put("wire_cutting", None, at, false, "29 CFR 1910.133", text);
            if let Some(HeldPart::Wire(figures)) = held {
                of_wire(list, at, wire.metal, figures);
            }
        }
    }
}

/// A cord of this thickness and this much of it free, mm, which may make a noose.
fn of_cord(
    list: &mut CautionList<'_>,
    at: Option<usize>,
    [thick, free]: [f64; 2],
    noose: Option<f64>,
) {
    if !list.young {
        let text = list.say("cord_away");
        list.put("cord", None, at, false, "", text);
        return;
    }
    let mut faults: Vec<String> = Vec::new();
    let whole = |mm: f64| format!("{mm:.0}");
    if thick < LEAST_CORD_MM {
        let least = LEAST_CORD_MM.to_string();
        faults.push(list.against("cord_thin", &thick.to_string(), &least));
    }
    if free > MOST_CORD_MM {
        faults.push(list.against("cord_long", &whole(free), &whole(MOST_CORD_MM)));
    }
    if let Some(noose) = noose.filter(|&mm| mm > MOST_NOOSE_MM) {
        faults.push(list.against("cord_noose", &whole(noose), &whole(MOST_NOOSE_MM)));
    }
    let said = match faults.is_empty() {
        true => list.say("cord_keeps"),
        false => list.writer.say_of("cord_faults", &[("faults", Words(&faults.join("; ")))]),
    };
    let text = list.writer.say_of("cord_young", &[("said", Words(&said))]);
    list.put("cord", None, at, !faults.is_empty(), CORDS, text);
}

fn of_wire(list: &mut CautionList<'_>, at: Option<usize>, metal: Metal, figures: &WireFigures) {
    let writer = list.writer;
    if figures.safety < SAFETY {
        let least = figures.least_mm.map_or_else(
            || writer.say("wire_none"),
            |mm| {
                let mm = writer.figure(&format!("{:.1}", (10.0 * mm).ceil() / 10.0));
                writer.say_of("wire_least", &[("mm", Words(&mm))])
            },
        );
        let times = writer.figure(&format!("{:.1}", figures.safety));
        let asked = format!("{SAFETY:.0}");
        let values =
            [("times", Words(&times)), ("asked", Words(&asked)), ("least", Words(&least))];
        let text = writer.say_of("wire_thin", &values);
        list.put("wire_thin", None, at, false, "", text);
    }
    let text = match metal {
        Metal::Brass => format!("{} {}", writer.say("wire_elastic"), writer.say("wire_brass")),
        _ => writer.say("wire_elastic"),
    };
    list.put("wire_elastic", None, at, false, "", text);
}

fn of_all(list: &mut CautionList<'_>, project: &Project) {
    let made_for = project.toy.made_for;
    let mut put = |code, source| {
        let text = list.say(code);
        list.put(code, None, None, false, source, text);
    };
    match made_for {
        MadeFor::Baby => put("seams", "16 CFR 1500.51"),
        MadeFor::SoftToy => put("soft_toy", "EN 71-1"),
        MadeFor::ThreeAndOver | MadeFor::Ornament => {}
    }
    if made_for == MadeFor::Baby {
        put("sleep", "");
        put("shedding", "");
    }
    if made_for != MadeFor::Ornament {
        put("magnets", "");
    }
    put("pins", "");
    put("sellers", "16 CFR part 1250");
}
