//! Cautions by who a toy is made for. Figures are those that could be read in public texts; the
//! text and the edition are named beside each, and the last word is never this program's.

use super::say::part_name;
use crate::project::Project;
use crate::project::toy::MadeFor;
use crate::project::toy::attachment::{Attachment, Metal};
use crate::project::toy::part::{HeldBy, PartForm, Thing};
use crate::toy::assembled::Assembled;
use crate::toy::figures::small_parts::BALL_MM;
use crate::toy::figures::wire::SAFETY;
use crate::toy::held::HeldPart;

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

/// The cautions of `toy`: of its parts, of what holds it, of all of it, then the maker's own.
pub fn cautions(project: &Project, toy: &Assembled) -> Vec<Caution> {
    let mut list = CautionList { list: Vec::new(), young: is_young(project.toy.made_for) };
    for (index, part) in project.toy.parts.iter().enumerate() {
        of_part(&mut list, project, toy, index);
        if part.held_by == HeldBy::Glued {
            list.put("glue", Some(index), None, true, "", format!(
                "Glue alone does not hold a part of a toy: sew the {} on. A glue gun is at 120 to \
                 193 °C and burns.",
                part_name(project, index)
            ));
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
    list.put(
        "local_rules",
        None,
        None,
        false,
        "",
        "The rules of your country and an accredited laboratory decide, not this pattern."
            .into(),
    );
    list.list
}

struct CautionList {
    list: Vec<Caution>,
    young: bool,
}

impl CautionList {
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

fn of_part(list: &mut CautionList, project: &Project, toy: &Assembled, index: usize) {
    let (part, figures) = (&project.toy.parts[index], &toy.parts[index]);
    let name = part_name(project, index);
    match &part.what {
        Thing::Small(small) => {
            let embroidered = matches!(
                small.form,
                PartForm::Eye(b) | PartForm::Nose(b) if b.embroidered
            );
            if embroidered || project.toy.made_for == MadeFor::Ornament {
                return;
            }
            if figures.is_small() && list.young {
                list.put("small_part", Some(index), None, true, SMALL_PARTS, format!(
                    "The {name} fits entirely into the small-parts cylinder, 1.25 in wide and \
                     2.25 in deep. In the United States no toy for a child under 3, nor a part \
                     that comes off it, may: embroider it. Washers and shanks come off too."
                ));
            } else if figures.is_small() {
                list.put("small_part", Some(index), None, false, SMALL_PARTS, format!(
                    "The {name} fits entirely into the small-parts cylinder, 1.25 in wide and \
                     2.25 in deep: keep the toy from children under 3. In the United States \
                     some toys with small parts for older children must carry a warning."
                ));
            } else if list.young {
                list.put("hard_part", Some(index), None, false, "", format!(
                    "The {name} does not fit into the small-parts cylinder as it is; a piece \
                     that breaks off it may."
                ));
            }
        }
        Thing::Piece(piece) => {
            if figures.is_small() && list.young {
                list.put("small_piece", Some(index), None, false, SMALL_PARTS, format!(
                    "The {name} would fit into the small-parts cylinder. Yarn and fabric that \
                     come off are not counted there, stuffing and what is inside may be: sew it \
                     on twice around."
                ));
            }
            let solid = toy.solids.get(piece);
            let wide = solid.map_or(f64::INFINITY, |solid| {
                let r = solid.nodes().iter().fold(0.0, |most: f64, n| most.max(n.r));
                2.0 * r + solid.straight_mm()
            });
            let alone = part.on.is_none() && project.toy.parts.len() == 1;
            if alone && wide <= BALL_MM && project.toy.made_for != MadeFor::Ornament {
                list.put("small_ball", Some(index), None, list.young, "16 CFR 1500.19", format!(
                    "A ball or egg that passes a hole 1.75 in wide is a small ball, and the {name} \
                     does: make it larger."
                ));
            }
            if project
                .piece(*piece)
                .is_some_and(|piece| piece.outline.knots.iter().any(|knot| knot.card))
            {
                list.put("card", Some(index), None, false, "", format!(
                    "There is card in the {name}: round its edges, and wipe the toy instead of \
                     washing it."
                ));
            }
        }
    }
}

fn of_attachment(list: &mut CautionList, project: &Project, toy: &Assembled, index: usize) {
    let at = Some(index);
    let cord = |list: &mut CautionList, thick: f64, free: f64, noose: Option<f64>| {
        if !list.young {
            list.put("cord", None, at, false, "", "Cords and loops strangle small children, \
                whose necks a few pounds of pull are enough for: hang it out of reach, away from \
                beds and cots.".into());
            return;
        }
        let mut faults: Vec<String> = Vec::new();
        if thick < LEAST_CORD_MM {
            faults.push(format!("{thick} mm is thinner than {LEAST_CORD_MM} mm"));
        }
        if free > MOST_CORD_MM {
            faults.push(format!("{free:.0} mm free is longer than {MOST_CORD_MM:.0} mm"));
        }
        if let Some(noose) = noose.filter(|&mm| mm > MOST_NOOSE_MM) {
            faults.push(format!(
                "a loop {noose:.0} mm around is longer than {MOST_NOOSE_MM:.0} mm"
            ));
        }
        let said = match faults.is_empty() {
            true => "As it is it keeps to that.".to_owned(),
            false => format!("Here {}.", faults.join("; ")),
        };
        list.put("cord", None, at, !faults.is_empty(), CORDS, format!(
            "For a child under 36 months a cord is at least 1.5 mm thick, one that can make a \
             noose at most 220 mm long, a noose at most 380 mm around, each pulled with 25 N. \
             {said} Later editions (2014+A1:2018) changed these rules: read the one in force."
        ));
    };
    match (&project.toy.attachments[index], toy.held.get(index)) {
        (Attachment::Cord(c), _) => {
            let noose = if c.to.is_none() { Some(2.0 * c.drop_mm) } else { None };
            cord(list, c.thickness_mm, c.drop_mm, noose);
            if let Some(HeldPart::Cord { from, .. }) = toy.held.get(index)
                && !from.narrow
                && c.way == crate::project::toy::attachment::CordWay::Around
            {
                list.put("cord_slips", None, at, false, "", format!(
                    "The cord around the {} is at no narrow place and can slip off: draw it \
                     through, or lay it in the neck.",
                    part_name(project, c.from.part)
                ));
            }
        }
        (Attachment::Loop(hanger), _) => {
            cord(list, hanger.thickness_mm, 0.0, Some(hanger.around_mm));
        }
        (Attachment::Joint(_), _) => {
            list.put(
                "joint",
                None,
                at,
                false,
                "",
                "A thread joint wears: use strong thread, \
                tie it under the cloth, and look at it from time to time."
                    .into(),
            );
        }
        (Attachment::Wire(wire), held) => {
            let toy_too = project.toy.made_for != MadeFor::Ornament;
            list.put("wire", None, at, toy_too, "16 CFR 1500.48", "A wired piece is an ornament, \
                not a toy: wire works its way out and its ends cut. What children under 8 use is \
                tested for sharp points, new and after abuse. Turn the ends back and bind them."
                .into());
            list.put(
                "wire_cutting",
                None,
                at,
                false,
                "29 CFR 1910.133",
                "Cut wire at right \
                angles without rocking the jaws, and wear eye protection with sides: ends fly."
                    .into(),
            );
            let Some(HeldPart::Wire(figures)) = held else { return };
            if figures.safety < SAFETY {
                let least = figures.least_mm.map_or_else(
                    || "no wire of this metal does".to_owned(),
                    |mm| format!("take one at least {:.1} mm thick", (10.0 * mm).ceil() / 10.0),
                );
                list.put("wire_thin", None, at, false, "", format!(
                    "The wire bears {:.1} times what is on it before it buckles; {SAFETY:.0} \
                     times are asked here: {least}.",
                    figures.safety
                ));
            }
            let guess = if wire.metal == Metal::Brass {
                " What brass bears is reckoned from memory, on the low side."
            } else {
                ""
            };
            list.put(
                "wire_elastic",
                None,
                at,
                false,
                "",
                format!(
                    "Elastic formulas only: soft craft wire bends for good much sooner.{guess}"
                ),
            );
        }
    }
}

fn of_all(list: &mut CautionList, project: &Project) {
    let made_for = project.toy.made_for;
    let mut put =
        |code, source, text: &str| list.put(code, None, None, false, source, text.into());
    match made_for {
        MadeFor::Baby => put(
            "seams",
            "16 CFR 1500.51",
            "Seams of a stuffed toy for a child up to \
            18 months are pulled with 10 lb in any direction: sew close and twice.",
        ),
        MadeFor::SoftToy => put(
            "soft_toy",
            "EN 71-1",
            "A soft toy for holding and cuddling \
            counts as a toy for under 36 months, whatever age its label gives.",
        ),
        MadeFor::ThreeAndOver | MadeFor::Ornament => {}
    }
    if made_for == MadeFor::Baby {
        put("sleep", "", "Put no soft toy into the bed of a sleeping infant.");
        put("shedding", "", "Take no yarn that sheds: hairs come off in the mouth.");
    }
    if made_for != MadeFor::Ornament {
        put(
            "magnets",
            "",
            "Put no magnets and no button cells into it, nor beads or bells that \
            could come out.",
        );
    }
    put("pins", "", "Count your pins before you close it and after you have sewn it.");
    put(
        "sellers",
        "16 CFR part 1250",
        "Who sells it in the United States must meet ASTM F963, \
        and in Pennsylvania, Ohio and Massachusetts register and label stuffed toys, as new \
        material throughout. Use clean new stuffing, say how to wash it, and keep a record of \
        each batch.",
    );
}
