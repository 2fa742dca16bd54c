//! What is said of toys, and what they are warned of.

use super::*;
use crate::PieceId;
use crate::piece::outline::Hold;
use crate::piece::starter::{Dimensions, Starter};
use crate::project::toy::attachment::{
    Attachment, Cord, CordHold, CordSpot, CordWay, Hanger, Knots, Metal, Sling, SlingHold,
    SlingLengths, Wire,
};
use crate::project::toy::embroidery::{Embroidery, EmbroideryStitch};
use crate::project::toy::part::{
    Button, Copies, EdgeHow, HeldBy, Part, PartEdge, PartEnd, PartForm, Place, Seat, Small,
    Thing,
};
use crate::project::toy::{MadeFor, Toy};
use crate::toy::held::HeldPart;
use crate::toy::{Assembled, assembled};
use crate::words::Writer;
use crate::{Gauge, Knot, Outline, Piece, Project};

fn piece(name: &str, knots: &[(f64, f64)]) -> Piece {
    let knots = knots.iter().map(|&(r, z)| Knot::new(r, z)).collect();
    let outline = Outline::new(knots).expect("an outline");
    Piece::new(name, outline, Gauge::per(22.0, 21.0, 100.0))
}

fn eyes(embroidered: bool) -> Part {
    let form = PartForm::Eye(Button { diameter_mm: 9.0, embroidered });
    let small = Small { name: String::new(), form, grams: None };
    let mut eyes = Part::new(Thing::Small(small), Some(Seat::new(0, 0.4, 0.09)));
    eyes.copies = Copies::Mirrored;
    eyes
}

/// A body with ears, eyes and a loop.
fn toy(made_for: MadeFor) -> Project {
    let body =
        piece("Body", &[(0.0, 0.0), (28.0, 14.0), (36.0, 45.0), (26.0, 80.0), (0.0, 95.0)]);
    let mut project = Project::of_piece(body);
    project.add(piece("Ear", &[(0.0, 0.0), (9.0, 10.0), (8.0, 40.0)]));
    let by = PartEdge { end: PartEnd::Last, how: EdgeHow::Open };
    let mut ears =
        Part::new(Thing::Piece(PieceId::new(1)), Some(Seat { by, ..Seat::new(0, 0.2, 0.15) }));
    ears.copies = Copies::Mirrored;
    let on = CordHold { part: 0, at: CordSpot::End(PartEnd::Start) };
    let hanger =
        Hanger { on, around: None, stands_off_mm: 10.0, around_mm: 400.0, thickness_mm: 1.2 };
    project.toy = Toy {
        made_for,
        parts: vec![Part::body(PieceId::new(0)), ears, eyes(false)],
        attachments: vec![Attachment::Loop(hanger)],
        cautions: vec!["Made of wool: wash cold.".into()],
        ..Toy::default()
    };
    project
}

fn said(project: &Project) -> (Assembled, Vec<String>) {
    let made = assembled(project).expect("a toy");
    let texts = steps(project, &made, &Writer::bench()).into_iter().map(|s| s.text).collect();
    (made, texts)
}

#[test]
fn steps_come_in_working_order_with_the_numbers_of_the_shape() {
    let project = toy(MadeFor::ThreeAndOver);
    let (made, texts) = said(&project);
    assert_eq!(texts.len(), 3, "{texts:?}");
    let point = made.parts[2].point.as_ref().expect("a place");
    let (round, apart) = (point.round, point.apart.expect("two"));
    let eyes = format!("between Rnds {round} and {}, {apart} sts apart", round + 1);
    assert!(
        texts[0].starts_with("Before you stuff the Body, push the eyes (9 mm)"),
        "{texts:?}"
    );
    assert!(texts[0].contains(&eyes), "{texts:?}");
    let span = made.parts[1].span.as_ref().expect("it lands");
    let ears = format!(
        "Sew the 2 × Ear on the Body between Rnds {} and {}",
        span.rounds.0, span.rounds.1
    );
    assert!(texts[1].starts_with(&ears), "{texts:?}");
    let gap = span.apart.expect("two").stitches.round();
    assert!(texts[1].contains(&format!(", {gap} sts apart")), "{texts:?}");
    assert!(texts[2].starts_with("Fasten the ring or loop"), "{texts:?}");
    // Nothing is left to fill in.
    assert!(texts.iter().all(|t| !t.contains(['{', '}'])), "{texts:?}");
}

#[test]
fn every_sentence_is_filled_in() {
    let mut project = toy(MadeFor::Ornament);
    let stand = piece("Stand", &[(0.0, 0.0), (22.0, 3.0), (20.0, 30.0)]);
    project.add(stand);
    project.toy.parts[1].held_by = HeldBy::Thread;
    project.toy.parts[2] = eyes(true);
    let mut tail = Part::new(Thing::Piece(PieceId::new(1)), Some(Seat::new(0, 0.8, 0.5)));
    tail.on.as_mut().expect("a seat").by.how = EdgeHow::Flat;
    let mut cap = tail.clone();
    cap.on = Some(Seat { sunk_mm: 9.0, ..Seat::new(0, 0.0, 0.0) });
    let block =
        Small { name: "bell".into(), form: PartForm::Block(9.0, 9.0, 9.0), grams: Some(3.0) };
    let bell = Part::new(Thing::Small(block), Some(Seat::new(0, 0.6, 0.3)));
    project.toy.parts.extend([tail, cap, bell, Part::body(PieceId::new(2))]);
    let hold = |part, at| CordHold { part, at };
    let (body, stand) = (hold(0, CordSpot::Share(0.9)), hold(6, CordSpot::End(PartEnd::Last)));
    let cord = Cord {
        from: body,
        way: CordWay::Through,
        knots: Knots::Outside,
        to: None,
        drop_mm: 80.0,
        strands: 1,
        thickness_mm: 2.0,
    };
    let wire = Wire {
        carries: body,
        stands_in: stand,
        free_mm: 300.0,
        metal: Metal::Brass,
        diameter_mm: 0.4,
        strands: 2,
    };
    let joint = crate::project::toy::attachment::Joint { part: 1, passes: 2 };
    project.toy.attachments.extend([
        Attachment::Cord(cord),
        Attachment::Wire(wire),
        Attachment::Joint(joint),
    ]);
    let (made, texts) = said(&project);
    assert_eq!(texts.len(), 9, "{texts:?}");
    assert!(texts.iter().all(|t| !t.contains(['{', '}']) && t.ends_with('.')), "{texts:?}");
    assert!(texts.iter().all(|t| !t.contains(", ,") && !t.contains(" ,")), "{texts:?}");
    let codes: Vec<&str> =
        cautions(&project, &made, &Writer::bench()).iter().map(|c| c.code).collect();
    assert!(codes.contains(&"wire_thin") && codes.contains(&"wire_elastic"), "{codes:?}");
}

#[test]
fn cautions_go_by_who_it_is_for() {
    let of = |made_for| {
        let project = toy(made_for);
        let made = assembled(&project).expect("a toy");
        cautions(&project, &made, &Writer::bench())
    };
    let find = |list: &[Caution], code: &str| list.iter().find(|c| c.code == code).cloned();
    for made_for in [MadeFor::Baby, MadeFor::SoftToy] {
        let list = of(made_for);
        let small = find(&list, "small_part").expect("an eye 9 mm across");
        assert!(small.refused && small.source == "16 CFR 1501.4", "{small:?}");
        // The loop is 400 mm around and 1.2 mm thick.
        let cord = find(&list, "cord").expect("a loop");
        assert!(cord.refused && cord.text.contains("400 mm"), "{cord:?}");
        assert!(cord.text.contains("1.2 mm is thinner"), "{cord:?}");
    }
    let older = of(MadeFor::ThreeAndOver);
    assert!(!find(&older, "small_part").expect("it is small").refused);
    let ornament = of(MadeFor::Ornament);
    assert_eq!(find(&ornament, "small_part"), None);
    for list in [&older, &ornament] {
        let [.., own, last] = list.as_slice() else { panic!("two at least") };
        assert_eq!((own.code, own.text.as_str()), ("own", "Made of wool: wash cold."));
        assert_eq!(last.code, "local_rules");
    }
}

#[test]
fn glue_and_wire_in_a_toy_are_refused() {
    let mut project = toy(MadeFor::ThreeAndOver);
    project.toy.parts[1].held_by = HeldBy::Glued;
    let hold = |part| CordHold { part, at: CordSpot::End(PartEnd::Start) };
    project.toy.parts.push(Part::body(PieceId::new(1)));
    project.toy.attachments = vec![Attachment::Wire(Wire {
        carries: hold(0),
        stands_in: hold(3),
        free_mm: 60.0,
        metal: Metal::Steel,
        diameter_mm: 1.6,
        strands: 2,
    })];
    let made = assembled(&project).expect("a toy");
    let refused: Vec<&str> = cautions(&project, &made, &Writer::bench())
        .iter()
        .filter(|c| c.refused)
        .map(|c| c.code)
        .collect();
    assert_eq!(refused, ["glue", "wire"]);
}

#[test]
fn drawn_threads_are_warned_of_in_every_language_of_sheets() {
    let mut project = toy(MadeFor::ThreeAndOver);
    project.pieces[0].outline.knots[2].hold = Some(Hold::Cinched);
    project.toy.parts[1].held_by = HeldBy::Thread;
    let made = assembled(&project).expect("a toy");
    let mut told: Vec<String> = Vec::new();
    for lexicon in crate::words::lexicon::all() {
        let writer = Writer::new(Writer::bench().style(), lexicon);
        let list = cautions(&project, &made, &writer);
        let drawn: Vec<&Caution> = list.iter().filter(|c| c.code == "drawn_thread").collect();
        assert_eq!(drawn.len(), 1, "{}", lexicon.code);
        assert_eq!((drawn[0].part, drawn[0].refused), (Some(0), false));
        assert!(drawn[0].text.contains("Body") && !drawn[0].text.contains(['{', '}']));
        assert!(
            list.iter().any(|c| c.code == "joint" && c.part == Some(1)),
            "ears on a thread"
        );
        told.push(drawn[0].text.clone());
    }
    told.sort();
    told.dedup();
    assert_eq!(told.len(), 4, "a text a language: {told:?}");
    project.pieces[0].outline.knots[2].hold = None;
    let list = cautions(&project, &made, &Writer::bench());
    assert!(list.iter().all(|c| c.code != "drawn_thread"));
}

/// A block put into the body: too wide for the room, it is said so, with the largest of its
/// proportions that fits; that one does, and one a little larger does not.
#[test]
fn what_is_put_in_has_room_or_is_told_what_would() {
    let with = |sides: [f64; 3], middle_mm: f64| {
        let mut project = toy(MadeFor::Ornament);
        let [wide, deep, long] = sides;
        let form = PartForm::Block(wide, deep, long);
        let small = Small { name: "jar".into(), form, grams: Some(20.0) };
        let seat = Seat { sunk_mm: middle_mm + 0.5 * long, ..Seat::new(0, 0.45, 0.0) };
        project.toy.parts[2] = Part::new(Thing::Small(small), Some(seat));
        let made = assembled(&project).expect("a toy");
        let said = misfit_text(&project, &made, 2);
        (made.parts[2].misfit, said)
    };
    assert_eq!(with([12.0, 12.0, 30.0], 20.0), (None, None));
    let (misfit, said) = with([70.0, 50.0, 40.0], 24.0);
    let misfit = misfit.expect("it is wider than the body");
    let fits = misfit.size_that_fits.expect("something smaller");
    let said = said.expect("a sentence");
    assert!(said.starts_with("jar has no room inside there: it is 70 × 50 × 40 mm;"), "{said}");
    let [wide, deep, long] = fits.map(|mm| format!("{mm:.0}"));
    assert!(said.contains(&format!("{wide} × {deep} × {long} mm at most would fit")), "{said}");
    // Rounded down to whole millimetres; two more on each side are too many.
    assert_eq!(with(fits, 24.0).0, None, "{fits:?}");
    assert_ne!(with(fits.map(|mm| mm + 2.0), 24.0).0, None, "{fits:?}");
}

/// A leg pushed into a base that card keeps flat is warned of; into its top, or into a base
/// without card, it is not.
#[test]
fn nothing_goes_through_card() {
    let met = |card: bool, along: f64| {
        let mut project = toy(MadeFor::Ornament);
        let size = Dimensions::new(60.0, 90.0);
        let dome = Starter::Dome.piece(&size, Gauge::per(22.0, 21.0, 100.0)).expect("a dome");
        project.pieces[0].outline = dome.outline;
        for knot in &mut project.pieces[0].outline.knots {
            knot.card &= card;
        }
        let by = PartEdge { end: PartEnd::Start, how: EdgeHow::Closed };
        project.toy.parts.truncate(2);
        project.toy.parts[1].copies = Copies::One;
        project.toy.parts[1].on = Some(Seat { by, sunk_mm: 12.0, ..Seat::new(0, along, 0.0) });
        let made = assembled(&project).expect("a toy");
        misfit_text(&project, &made, 1).unwrap_or_default()
    };
    let said = met(true, 1.0);
    assert!(
        said.starts_with("Ear would go through the card that is laid in after Rnd"),
        "{said}"
    );
    assert!(said.ends_with("; push it in less far."), "{said}");
    for other in [met(true, 0.0), met(false, 1.0)] {
        assert!(!other.contains("card"), "{other}");
    }
}

/// Hung from three places, each cord is told by its place and its own length; the lengths that
/// are cut for it hang the toy upright, equal ones do not.
#[test]
fn cords_from_three_places_are_told_by_place_and_length() {
    let with = |lengths| {
        let mut project = toy(MadeFor::SoftToy);
        let hold = |part, along, around| SlingHold { part, at: Place { along, around } };
        project.toy.attachments = vec![Attachment::Sling(Sling {
            legs: vec![hold(0, 0.8, 0.1), hold(0, 0.75, 0.4), hold(0, 0.7, -0.3)],
            lengths,
            above_mm: 60.0,
            knots: Knots::Inside,
            thickness_mm: 2.0,
        })];
        let made = assembled(&project).expect("a toy");
        (project, made)
    };
    let (project, made) = with(SlingLengths::Upright);
    assert!(made.hangings[0].lean_deg < 1e-6, "{:?}", made.hangings[0]);
    let HeldPart::Sling(figures) = &made.held[0] else { panic!("a sling") };
    let mut told: Vec<String> = Vec::new();
    for lexicon in crate::words::lexicon::all() {
        let writer = Writer::new(Writer::bench().style(), lexicon);
        let steps = steps(&project, &made, &writer);
        let text = &steps.last().expect("it is joined last").text;
        assert!(!text.contains(['{', '}']), "{text}");
        for leg in &figures.legs {
            assert!(text.contains(&format!("{:.0} mm", leg.free_mm)), "{text}");
            assert!(leg.bears_g > 0.0 && leg.bears_g < figures.bears_g, "{leg:?}");
        }
        told.push(text.clone());
    }
    assert!(told[0].starts_with("Draw 3 cords through the fabric: "), "{}", told[0]);
    let leg = figures.legs[0];
    let place =
        format!("between Rnds {} and {} after the {}", leg.round, leg.round + 1, leg.after);
    assert!(told[0].contains(&place), "{place} in {}", told[0]);
    let list = cautions(&project, &made, &Writer::bench());
    assert!(list.iter().any(|c| c.code == "cord" && c.attachment == Some(0)));
    assert!(with(SlingLengths::Equal).1.hangings[0].lean_deg > 0.5);
}

/// A mouth from place to place, mirrored, and knots: told by rounds and stitches in every
/// language, counted again when the gauge is another, with the yarn that it takes.
#[test]
fn embroidery_is_told_between_stitches() {
    let mut project = toy(MadeFor::Baby);
    project.yarns.push(crate::piece::Yarn::plain(1));
    let place = |along, around| Place { along, around };
    let line = Embroidery {
        name: "mouth".into(),
        part: 0,
        stitch: EmbroideryStitch::Back,
        yarn: 1,
        places: vec![place(0.5, 0.05), place(0.54, 0.1), place(0.5, 0.15)],
        mirrored: true,
    };
    let stitch = EmbroideryStitch::FrenchKnot;
    let knots = Embroidery { name: String::new(), stitch, mirrored: false, ..line.clone() };
    project.toy.embroidery = vec![line, knots];
    assert_eq!(project.validate(), Ok(()));
    for lexicon in crate::words::lexicon::all() {
        let writer = Writer::new(Writer::bench().style(), lexicon);
        let made = assembled(&project).expect("a toy");
        let steps = steps(&project, &made, &writer);
        let told: Vec<&AssemblyStep> =
            steps.iter().filter(|step| step.kind == StepKind::Embroider).collect();
        assert_eq!(told.len(), 2, "{}", lexicon.code);
        assert!(told[0].text.contains("mouth") && told[0].text.contains("Body"));
        assert!(told.iter().all(|step| !step.text.contains(['{', '}'])), "{}", told[0].text);
    }
    let said = |project: &Project| {
        let (made, texts) = said(project);
        let text = texts.iter().find(|t| t.contains("mouth")).expect("a step").clone();
        (made.embroidery[0].clone(), text)
    };
    let (figures, text) = said(&project);
    let [own, image] = figures.lines.as_slice() else { panic!("mirrored: two lines") };
    for &(round, after) in own.iter().chain(image) {
        let place = format!("between Rnds {round} and {} after the {after}", round + 1);
        assert!(text.contains(&place), "{place} in {text}");
    }
    assert!(text.contains("; mirrored: between Rnds"), "{text}");
    // As far apart as the share of the round says.
    let made = assembled(&project).expect("a toy");
    let solid = &made.solids[&PieceId::new(0)];
    let count = solid.stitches(f64::from(own[0].0)).round();
    let apart = (f64::from(own[2].1) - f64::from(own[0].1)).rem_euclid(count);
    assert!((apart - 0.1 * count).abs() <= 1.0, "{apart} of {count}");
    // Three times the way along the cloth, and two ends to hide for each of the two lines.
    let way: f64 = figures
        .strands
        .iter()
        .flat_map(|(_, strand)| strand.windows(2))
        .map(|pair| crate::toy::vector::distance(pair[0], pair[1]))
        .sum();
    let ends = 2.0 * crate::toy::embroidered::ENDS_MM;
    assert!((figures.yarn_mm - 3.0 * way - ends).abs() < 1e-6, "{}", figures.yarn_mm);
    project.pieces[0].gauge = Gauge::per(26.0, 27.0, 100.0);
    assert_ne!(said(&project).1, text, "other rounds and stitches at another gauge");
    project.toy.embroidery[0].yarn = 2;
    let error = project.validate().expect_err("no such yarn").to_string();
    assert!(error.starts_with("toy, embroidery 1: there is no yarn 2"), "{error}");
    project.toy.remove(0);
    assert_eq!(project.toy.embroidery, [], "it goes with its part");
}
