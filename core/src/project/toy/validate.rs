//! What no toy is: refused when a project is read or saved. What may come about by dragging a
//! knot, an edge that is no longer open say, is no fault here but is told by [`crate::toy`].

use super::Toy;
use super::attachment::{
    Attachment, Cord, CordHold, CordSpot, Hanger, LARGEST_MM, Sling, Wire,
};
use super::embroidery::{MOST_LINES, MOST_PLACES};
use super::part::{Copies, Part, PartForm, Seat, Thing};
use crate::error::{Error, LONGEST_NAME, LONGEST_TEXT, Result, no_longer, within};
use crate::piece::Piece;

/// Most parts of a toy.
pub const MOST_PARTS: usize = 200;

/// Most copies of a part around what carries it.
pub const MOST_AROUND: u32 = 24;

/// Most parts of a toy, each copy counted and copies on copies too.
pub const MOST_COPIES_IN_ALL: u64 = 2000;

/// Most attachments of a toy.
pub const MOST_ATTACHMENTS: usize = 100;

/// Fewest and most cords of a sling.
pub const LEGS: (usize, usize) = (2, 3);

/// Refuses numbers no toy has, parts of pieces that are not there, circles.
///
/// # Errors
/// Names the part or attachment, counted from 1, and the field.
pub(crate) fn validate(toy: &Toy, pieces: &[Piece]) -> Result<()> {
    let most = |place: &str, number: usize, most: usize| match number <= most {
        true => Ok(()),
        false => {
            Err(Error::new(place, format!("{number} of them"), format!("list at most {most}")))
        }
    };
    most("toy, parts", toy.parts.len(), MOST_PARTS)?;
    most("toy, attachments", toy.attachments.len(), MOST_ATTACHMENTS)?;
    most("toy, cautions", toy.cautions.len(), MOST_ATTACHMENTS)?;
    for caution in &toy.cautions {
        no_longer("toy, cautions", caution, LONGEST_TEXT)?;
    }
    let mut copies: Vec<u64> = Vec::with_capacity(toy.parts.len());
    for (index, part) in toy.parts.iter().enumerate() {
        let place = format!("toy, part {}", index + 1);
        self::part(part, index, pieces).map_err(|e| e.within(&place))?;
        let carried = part.on.map_or(1, |seat| copies[seat.part]);
        copies.push(carried.saturating_mul(u64::from(part.copies.number())));
    }
    let all = copies.iter().fold(0_u64, |all, n| all.saturating_add(*n));
    if all > MOST_COPIES_IN_ALL {
        return Err(Error::new(
            "toy, parts",
            format!("{all} of them with their copies"),
            format!("{MOST_COPIES_IN_ALL} are the most"),
        ));
    }
    for (number, attachment) in (1..).zip(&toy.attachments) {
        let place = format!("toy, attachment {number}");
        for part in attachment.parts() {
            if part >= toy.parts.len() {
                return Err(no_part(place, part, toy.parts.len()));
            }
        }
        self::attachment(attachment, toy).map_err(|e| e.within(&place))?;
    }
    joined(toy)
}

fn no_part(place: impl Into<String>, part: usize, parts: usize) -> Error {
    Error::new(
        place,
        format!("there is no part {part}"),
        format!("the first part is 0, and there are {parts}"),
    )
}

fn part(part: &Part, index: usize, pieces: &[Piece]) -> Result<()> {
    match &part.what {
        Thing::Piece(piece) => {
            let known = pieces.iter().map(|piece| piece.id);
            piece.among(known).map_err(|e| e.within("what"))?;
        }
        Thing::Small(small) => {
            no_longer("name", &small.name, LONGEST_NAME)?;
            if let Some(grams) = small.grams {
                within("grams", grams, 0.0, 5000.0, "g")?;
            }
            match small.form {
                PartForm::Eye(button) | PartForm::Nose(button) => {
                    within("diameter_mm", button.diameter_mm, 0.5, 200.0, "mm").map(drop)?;
                }
                PartForm::Block(a, b, c) => {
                    for mm in [a, b, c] {
                        within("form", mm, 0.1, LARGEST_MM, "mm")?;
                    }
                }
            }
            if part.on.is_none() {
                return Err(Error::new(
                    "on",
                    "a small thing is no body",
                    "say which part carries it",
                ));
            }
        }
    }
    if let Some(seat) = part.on {
        self::seat(seat, index)?;
    } else if part.copies != Copies::One {
        return Err(Error::new("copies", "a body is there once", "put its copies on a part"));
    }
    if let Copies::Around(n) = part.copies {
        within("copies", f64::from(n), 2.0, f64::from(MOST_AROUND), "")?;
    }
    within("front, along", part.front.along, 0.0, 1.0, "")?;
    within("front, around", part.front.around, 0.0, 1.0, "")?;
    Ok(())
}

fn seat(seat: Seat, index: usize) -> Result<()> {
    if seat.part >= index {
        return Err(Error::new(
            "on, part",
            format!("part {} does not stand before it", seat.part),
            "list what carries a part before the part",
        ));
    }
    within("along", seat.at.along, 0.0, 1.0, "")?;
    within("around", seat.at.around, -1.0, 1.0, "")?;
    within("turn_deg", seat.turn_deg, -360.0, 360.0, "°")?;
    within("tilt_deg", seat.tilt_deg, -90.0, 90.0, "°")?;
    within("sunk_mm", seat.sunk_mm, -LARGEST_MM, LARGEST_MM, "mm")?;
    Ok(())
}

fn attachment(attachment: &Attachment, toy: &Toy) -> Result<()> {
    match *attachment {
        Attachment::Sling(ref sling) => self::sling(sling, toy)?,
        Attachment::Cord(Cord { from, to, drop_mm, strands, thickness_mm, .. }) => {
            hold("from", from, toy)?;
            to.map_or(Ok(()), |to| hold("to", to, toy))?;
            within("drop_mm", drop_mm, 0.0, LARGEST_MM, "mm")?;
            within("strands", f64::from(strands), 1.0, 24.0, "")?;
            within("thickness_mm", thickness_mm, 0.1, 50.0, "mm")?;
        }
        Attachment::Loop(Hanger { on, around, stands_off_mm, around_mm, thickness_mm }) => {
            hold("on", on, toy)?;
            within("around", around.unwrap_or(0.0), -1.0, 1.0, "")?;
            within("stands_off_mm", stands_off_mm, 0.0, LARGEST_MM, "mm")?;
            within("around_mm", around_mm, 1.0, LARGEST_MM, "mm")?;
            within("thickness_mm", thickness_mm, 0.1, 50.0, "mm")?;
        }
        Attachment::Wire(Wire {
            carries, stands_in, free_mm, diameter_mm, strands, ..
        }) => {
            hold("carries", carries, toy)?;
            hold("stands_in", stands_in, toy)?;
            within("free_mm", free_mm, 0.0, LARGEST_MM, "mm")?;
            within("diameter_mm", diameter_mm, 0.05, 20.0, "mm")?;
            within("strands", f64::from(strands), 1.0, 24.0, "")?;
        }
        Attachment::Joint(joint) => {
            within("passes", f64::from(joint.passes), 1.0, 20.0, "")?;
            if toy.parts[joint.part].on.is_none() {
                return Err(Error::new(
                    "part",
                    "it is a body, which nothing carries",
                    "joint a part that sits on another",
                ));
            }
        }
    }
    Ok(())
}

fn sling(sling: &Sling, toy: &Toy) -> Result<()> {
    within("legs", sling.legs.len() as f64, LEGS.0 as f64, LEGS.1 as f64, "")?;
    within("above_mm", sling.above_mm, 0.0, LARGEST_MM, "mm")?;
    within("thickness_mm", sling.thickness_mm, 0.1, 50.0, "mm")?;
    for leg in &sling.legs {
        within("along", leg.at.along, 0.0, 1.0, "")?;
        within("around", leg.at.around, -1.0, 1.0, "")?;
        if toy.parts[leg.part].piece().is_none() {
            return Err(Error::new("legs", "one holds a small thing", "hold a crocheted part"));
        }
        if toy.body_of(leg.part) != toy.body_of(sling.legs[0].part) {
            let mend = "hold one body, or what sits on it, by all";
            return Err(Error::new("legs", "they hold different bodies", mend));
        }
    }
    Ok(())
}

fn hold(place: &str, hold: CordHold, toy: &Toy) -> Result<()> {
    if let CordSpot::Share(share) = hold.at {
        within(place, share, 0.0, 1.0, "")?;
    }
    if toy.parts[hold.part].piece().is_none() {
        return Err(Error::new(place, "it holds a small thing", "hold a crocheted part"));
    }
    Ok(())
}

/// Refuses bodies that hang on one another in a circle, and one that hangs on two.
fn joined(toy: &Toy) -> Result<()> {
    let mut above: Vec<Option<usize>> = vec![None; toy.parts.len()];
    for (number, attachment) in (1..).zip(&toy.attachments) {
        let Some((upper, lower, _)) = attachment.joins() else { continue };
        let fault = |what: &str, mend: &str| {
            Err(Error::new(format!("toy, attachment {number}"), what, mend))
        };
        if toy.parts[upper.part].on.is_some() || toy.parts[lower.part].on.is_some() {
            return fault("it joins a part that sits on another", "join two bodies");
        }
        // A second cord between the same two bodies is no other joint.
        if above[lower.part].is_some_and(|other| other != upper.part) {
            return fault("the lower body hangs on another already", "hang it on one");
        }
        let mut at = Some(upper.part);
        while let Some(part) = at {
            if part == lower.part {
                return fault("the two bodies hang on one another", "hang one on the other");
            }
            at = above[part];
        }
        above[lower.part] = Some(upper.part);
    }
    Ok(())
}

/// Refuses embroidery on what is not crochet, in a yarn that is not there, without a place.
///
/// # Errors
/// Names the line, counted from 1, and the field.
pub(crate) fn validate_embroidery(toy: &Toy, yarns: usize) -> Result<()> {
    let lines = toy.embroidery.len();
    if lines > MOST_LINES {
        let mend = format!("list at most {MOST_LINES}");
        return Err(Error::new("toy, embroidery", format!("{lines} of them"), mend));
    }
    for (number, line) in (1..).zip(&toy.embroidery) {
        let place = format!("toy, embroidery {number}");
        let fault = |what: String, mend: &str| Err(Error::new(place.clone(), what, mend));
        no_longer("name", &line.name, LONGEST_NAME).map_err(|e| e.within(&place))?;
        if toy.parts.get(line.part).and_then(|part| part.piece()).is_none() {
            return fault(format!("part {} is no crochet", line.part), "name a crocheted part");
        }
        if line.yarn >= yarns {
            return fault(
                format!("there is no yarn {}", line.yarn),
                "name a yarn of the project",
            );
        }
        if line.places.is_empty() || line.places.len() > MOST_PLACES {
            let what = format!("it has {} places", line.places.len());
            return fault(what, &format!("list 1 to {MOST_PLACES} places"));
        }
        for at in &line.places {
            let along = within("along", at.along, 0.0, 1.0, "");
            let around = within("around", at.around, -1.0, 1.0, "");
            along.and(around).map_err(|e| e.within(&place))?;
        }
    }
    Ok(())
}

#[cfg(test)]
mod tests {
    use super::super::attachment::{CordWay, Joint, Knots, SlingHold, SlingLengths};
    use super::super::part::{Button, Place, Small};
    use super::*;
    use crate::{Gauge, Outline, PieceId};

    fn toy() -> Toy {
        let eye = PartForm::Eye(Button { diameter_mm: 8.0, embroidered: false });
        let eye = Thing::Small(Small { name: String::new(), form: eye, grams: None });
        Toy {
            parts: vec![
                Part::body(PieceId::new(0)),
                Part::body(PieceId::new(1)),
                Part::new(Thing::Piece(PieceId::new(1)), Some(Seat::new(0, 0.3, 0.1))),
                Part::new(eye, Some(Seat::new(2, 0.3, 0.1))),
            ],
            attachments: vec![cord(0, 1)],
            ..Toy::default()
        }
    }

    fn two() -> [Piece; 2] {
        let one = |id| {
            let piece = Piece::new("Bead", Outline { knots: Vec::new() }, Gauge::default());
            Piece { id: PieceId::new(id), ..piece }
        };
        [one(0), one(1)]
    }

    fn cord(from: usize, to: usize) -> Attachment {
        let hold = |part| CordHold { part, at: CordSpot::Neck };
        Attachment::Cord(Cord {
            from: hold(from),
            way: CordWay::Around,
            knots: Knots::Inside,
            to: Some(hold(to)),
            drop_mm: 40.0,
            strands: 4,
            thickness_mm: 2.0,
        })
    }

    #[test]
    fn every_fault_is_one_line_that_names_its_place() {
        assert_eq!(validate(&toy(), &two()), Ok(()));
        type Fault = (&'static str, fn(&mut Toy));
        let faults: [Fault; 20] = [
            ("toy, part 1, what, pieces: there is no piece 9", |t| {
                t.parts[0].what = Thing::Piece(PieceId::new(9));
            }),
            ("toy, part 3, on, part: part 2 does", |t| t.parts[2].on = Some(seat(2))),
            ("toy, part 3, on, part: part 3 does", |t| t.parts[2].on = Some(seat(3))),
            ("toy, part 4, on: a small thing is no body", |t| t.parts[3].on = None),
            ("toy, part 1, copies: a body", |t| t.parts[0].copies = Copies::Mirrored),
            ("toy, part 3, copies: 25", |t| t.parts[2].copies = Copies::Around(25)),
            ("toy, part 3, along: NaN", |t| place(t).at.along = f64::NAN),
            ("toy, part 3, around: inf", |t| place(t).at.around = f64::INFINITY),
            ("toy, part 3, tilt_deg: 91", |t| place(t).tilt_deg = 91.0),
            ("toy, part 3, sunk_mm: 3001", |t| place(t).sunk_mm = 3001.0),
            ("toy, attachment 1: there is no part 7", |t| t.attachments = vec![cord(0, 7)]),
            ("toy, attachment 1: it joins a part that", |t| t.attachments = vec![cord(0, 2)]),
            ("toy, attachment 1: the two bodies hang", |t| t.attachments = vec![cord(0, 0)]),
            ("toy, attachment 2: the two bodies hang", |t| t.attachments.push(cord(1, 0))),
            ("toy, attachment 2, part: it is a body", |t| {
                t.attachments.push(Attachment::Joint(Joint { part: 0, passes: 2 }));
            }),
            ("toy, attachment 1, legs: 1", |t| t.attachments = vec![sling(&[0])]),
            ("toy, attachment 1, legs: one holds a small", |t| {
                t.attachments = vec![sling(&[0, 3])];
            }),
            ("toy, attachment 1, legs: they hold different bodies", |t| {
                t.attachments = vec![sling(&[0, 2, 1])];
            }),
            ("toy, parts: 201 of them", |t| t.parts.resize(201, Part::body(PieceId::new(0)))),
            ("toy, parts: 14425 of them with", |t| {
                let around = |part| Part {
                    copies: Copies::Around(24),
                    ..Part::new(Thing::Piece(PieceId::new(0)), Some(seat(part)))
                };
                t.parts = vec![Part::body(PieceId::new(0)), around(0), around(1), around(2)];
                t.attachments.clear();
            }),
        ];
        for (said, wrong) in faults {
            let mut toy = toy();
            wrong(&mut toy);
            let error = validate(&toy, &two()).expect_err(said).to_string();
            assert!(
                error.starts_with(said.split(" 14424").next().unwrap()),
                "{error} / {said}"
            );
            assert_eq!(error.lines().count(), 1);
        }
    }

    fn sling(parts: &[usize]) -> Attachment {
        let at = Place { along: 0.8, around: 0.2 };
        Attachment::Sling(Sling {
            legs: parts.iter().map(|&part| SlingHold { part, at }).collect(),
            lengths: SlingLengths::Upright,
            above_mm: 40.0,
            knots: Knots::Inside,
            thickness_mm: 2.0,
        })
    }

    fn seat(part: usize) -> Seat {
        Seat::new(part, 0.5, 0.0)
    }

    fn place(toy: &mut Toy) -> &mut Seat {
        toy.parts[2].on.as_mut().expect("it sits on another")
    }
}
