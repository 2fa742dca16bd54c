//! Making any piece: every stitch once, whatever steps are mixed; back is the way back; the
//! place survives the file and a change of plan.

use plumpline_core::making::{By, Making, Progress, ReturnPlace, Stand, Stop, WorkedPiece};
use plumpline_core::pattern::write::{HouseStyle, Writer, style};
use plumpline_core::placement::Stitch;
use plumpline_core::sizes::at_size;
use plumpline_core::{
    Gauge, Habits, Kind, Loop, Piece, PieceId, Project, Size, SizeBy, Working, file, pattern,
    plan, starter::Starter, words,
};
use plumpline_tests::any::any_piece;
use proptest::prelude::*;

fn ball() -> Piece {
    let ball = Starter::Ball;
    ball.piece(&ball.usual(), Gauge::default()).expect("a ball")
}

fn course(piece: &Piece) -> WorkedPiece {
    WorkedPiece::of_piece(piece, &Writer::bench()).expect("a plan")
}

/// Makes all of it by `steps`, over and over; returns the places passed and the stitches made.
fn make(course: &WorkedPiece, steps: &[By]) -> (Progress, Vec<ReturnPlace>, u32) {
    let mut progress = Progress::new(PieceId::new(0), 1);
    let (mut places, mut made) = (vec![progress.place()], 0);
    for by in steps.iter().copied().cycle() {
        match progress.stand(course) {
            Stand::Made => break,
            Stand::Stop(_) => assert!(progress.acknowledge(course)),
            Stand::Stitch { .. } => {
                let stitches = progress.advance(course, by);
                assert!(stitches > 0, "a step that makes nothing");
                made += stitches;
            }
        }
        assert_ne!(places.last(), Some(&progress.place()), "it stands still");
        places.push(progress.place());
    }
    (progress, places, made)
}

fn any_steps() -> impl Strategy<Value = Vec<By>> {
    let by = prop_oneof![Just(By::Stitch), Just(By::Repeat), Just(By::Round)];
    prop::collection::vec(by, 1..12)
}

proptest! {
    #![proptest_config(ProptestConfig { cases: 48, ..ProptestConfig::default() })]

    #[test]
    fn any_mix_of_steps_makes_every_stitch_once_and_ends(
        piece in any_piece(),
        steps in any_steps(),
    ) {
        let plan = plan(&piece).expect("a plan");
        let course = course(&piece);
        let (progress, places, made) = make(&course, &steps);
        prop_assert_eq!(made, plan.counts().iter().sum::<u32>());
        prop_assert_eq!(&progress.worked, &plan.counts());
        prop_assert!(progress.stuffed && progress.closed);
        let (done, all) = progress.share(&course);
        prop_assert_eq!(done, all);
        // Places only ever move on.
        let rank = |p: &ReturnPlace| (p.closed, p.round, p.stuffed, p.done);
        prop_assert!(places.windows(2).all(|p| rank(&p[0]) < rank(&p[1])));
    }

    #[test]
    fn back_goes_over_every_place_again_the_other_way(piece in any_piece()) {
        let course = course(&piece);
        let (mut progress, places, _) = make(&course, &[By::Stitch]);
        for place in places.iter().rev().skip(1) {
            prop_assert!(progress.back(&course));
            prop_assert_eq!(&progress.place(), place);
            prop_assert_eq!(progress.worked.len() as u32 + 1, place.round);
        }
        prop_assert!(!progress.back(&course), "there is nothing before the first stitch");
        prop_assert_eq!(progress, Progress::new(PieceId::new(0), 1));
    }

    #[test]
    fn repeats_part_a_round_without_a_rest(piece in any_piece()) {
        for round in &course(&piece).rounds {
            prop_assert_eq!(round.repeats[0], 0);
            prop_assert!(round.repeats.windows(2).all(|r| r[0] < r[1]), "{:?}", round.repeats);
            prop_assert!(round.repeats.iter().all(|&r| r < round.steps()));
            prop_assert_eq!(round.made(round.steps()), round.count);
        }
    }

    #[test]
    fn a_place_survives_the_file_and_any_change_of_plan(
        piece in any_piece(),
        other in any_piece(),
        steps in any_steps(),
        share in 0.0..1.0_f64,
    ) {
        let (first, second) = (course(&piece), course(&other));
        let (_, places, _) = make(&first, &steps);
        let mut project = Project::of_piece(piece);
        let progress = project.making.begin(PieceId::new(0), None, 1);
        progress.take_place(&first, places[(share * (places.len() - 1) as f64) as usize]);
        progress.spend(93.0, 12, &Habits::default());
        progress.note(2, "“Tighter” here\nthan there");
        prop_assert_eq!(progress.parted(&first), None);
        let text = file::write(&project).expect("written");
        prop_assert_eq!(&file::parse(&text).expect("read"), &project);
        // Another plan: the place stands on it somewhere, and goes on to its end.
        let mut progress = project.making.at[0].clone();
        progress.accept(&second);
        prop_assert_eq!(progress.parted(&second), None);
        for _ in 0..4 * second.last_round() {
            if !progress.acknowledge(&second) {
                progress.advance(&second, By::Round);
            }
        }
        prop_assert_eq!(progress.stand(&second), Stand::Made);
    }
}

#[test]
fn a_round_of_the_ball_is_worked_stitch_by_stitch_and_repeat_by_repeat() {
    let course = course(&ball());
    let increasing = course
        .rounds
        .iter()
        .position(|r| r.repeats.len() == 6 && r.stitches.contains(&Stitch::Plain))
        .expect("a round of six repeats");
    let number = increasing as u32 + 1;
    let round = &course.rounds[increasing];
    let mut progress = Progress::new(PieceId::new(0), 1);
    progress.go_to(&course, number);
    assert_eq!(progress.stand(&course), Stand::Stitch { round: number, done: 0 });
    let each = round.steps() / 6;
    assert_eq!(progress.advance(&course, By::Stitch), round.stitches[0].produces());
    let rest = progress.advance(&course, By::Repeat);
    assert_eq!(rest, round.count / 6 - round.stitches[0].produces());
    assert_eq!(progress.done, each);
    progress.advance(&course, By::Repeat);
    assert_eq!((progress.done, round.repeat_of(progress.done)), (2 * each, 2));
    let rest = progress.advance(&course, By::Round);
    assert_eq!(rest, round.count - round.made(2 * each));
    assert_eq!(progress.stand(&course), Stand::Stitch { round: number + 1, done: 0 });
}

#[test]
fn stops_are_not_ticked_past_and_stuffing_that_was_ripped_out_is_due_again() {
    let course = course(&ball());
    let after = course.stuff_after.expect("a ball is stuffed");
    let mut progress = Progress::new(PieceId::new(0), 1);
    progress.go_to(&course, after);
    progress.advance(&course, By::Round);
    assert_eq!(progress.stand(&course), Stand::Stop(Stop::Stuff));
    for by in By::ALL {
        assert_eq!(progress.advance(&course, by), 0, "{by:?}");
    }
    assert!(progress.acknowledge(&course));
    let at = progress.clone();
    assert!(!progress.acknowledge(&course), "nothing more to do there");
    progress.advance(&course, By::Stitch);
    progress.back(&course);
    assert_eq!(progress, at);
    progress.go_to(&course, after);
    assert!(!progress.stuffed);
    progress.go_to(&course, course.last_round());
    assert_eq!(progress.stand(&course), Stand::Stop(Stop::Stuff), "jumped over, still due");
    progress.acknowledge(&course);
    progress.advance(&course, By::Round);
    assert_eq!(progress.stand(&course), Stand::Stop(Stop::Close));
    progress.acknowledge(&course);
    assert_eq!(progress.stand(&course), Stand::Made);
}

#[test]
fn a_changed_plan_is_told_round_by_round_and_the_place_is_kept() {
    let mut piece = ball();
    let first = course(&piece);
    let mut progress = Progress::new(PieceId::new(0), 1);
    progress.go_to(&first, 6);
    for _ in 0..5 {
        progress.advance(&first, By::Stitch);
    }
    let (third, sixth) = (first.rounds[2].count, first.rounds[5].count);
    piece.pins.insert(3, third + 1);
    piece.pins.insert(6, sixth + 2);
    let second = course(&piece);
    let parted = progress.parted(&second).expect("it has changed");
    assert!(parted.rounds.contains(&(3, third, third + 1)), "{parted:?}");
    assert_eq!(parted.under_way, Some(6));
    assert_eq!(parted.first_round(&second), parted.rounds[0].0);
    let text = parted.text();
    let told = format!("round 3 was worked with {third} stitches and now has {}", third + 1);
    assert!(text.contains(&told) && !text.contains('\n'), "{text}");
    assert_eq!(progress.stand(&second), Stand::Stitch { round: 6, done: 5 });
    progress.accept(&second);
    assert_eq!(progress.parted(&second), None);
    assert_eq!(progress.stand(&second), Stand::Stitch { round: 6, done: 5 });
    // Ripped back instead: what is worked anew fits.
    progress.go_to(&first, 6);
    progress.go_to(&second, 3);
    progress.advance(&second, By::Round);
    assert_eq!(progress.parted(&second), None);
}

#[test]
fn a_piece_that_is_made_stays_made_when_its_plan_grows_or_shrinks() {
    let piece = ball();
    let small = course(&piece);
    let mut larger = piece.clone();
    larger.outline = piece.outline.scaled(1.5, 1.5);
    let large = course(&larger);
    for (now, then) in [(&small, &large), (&large, &small)] {
        let (mut progress, ..) = make(now, &[By::Round]);
        assert_eq!(progress.stand(then), Stand::Made);
        let parted = progress.parted(then).expect("another plan");
        assert!(parted.beyond + parted.more > 0, "{parted:?}");
        let making = Making { at: vec![progress.clone()] };
        let left =
            making.outlook(making.of(PieceId::new(0), None, 1), then, &Habits::default());
        assert_eq!(left.stitches_left, 0, "nothing is left of what is made");
        progress.accept(then);
        assert_eq!((progress.stand(then), progress.parted(then)), (Stand::Made, None));
        progress.back(then);
        assert_eq!(progress.stand(then), Stand::Stop(Stop::Close));
    }
}

#[test]
fn the_words_are_the_writers_in_every_style_and_language() {
    let mut piece = ball();
    piece.loops.insert(3, Loop::Back);
    for lexicon in pattern::lexicon::all() {
        for style in style::all() {
            let writer = Writer::new(style, lexicon);
            let course = WorkedPiece::of_piece(&piece, &writer).expect("a plan");
            let sheet = words(&plan(&piece).expect("a plan"), &piece, &writer);
            for (number, round) in (1..).zip(&course.rounds) {
                assert_eq!(round.text, sheet.line_of(number).expect("a line").text);
                for stitch in [Stitch::Plain, Stitch::Increase, Stitch::Decrease] {
                    assert!(!round.word(stitch).is_empty(), "{} {}", style.name, lexicon.code);
                }
            }
        }
    }
    let bench = course(&ball());
    let words = [Stitch::Plain, Stitch::Increase, Stitch::Decrease];
    assert_eq!(words.map(|s| bench.rounds[4].word(s)), ["sc", "inc", "dec"]);
    let style = HouseStyle::by_name("numbers").expect("a style");
    let german = Writer::new(style, pattern::lexicon::by_code("de").expect("German"));
    let german = WorkedPiece::of_piece(&ball(), &german).expect("a plan");
    assert_eq!(german.rounds[4].word(Stitch::Plain), "fM");
}

#[test]
fn open_oval_and_joined_pieces_have_a_course_too() {
    let mut piece = ball();
    piece.straight_mm = 24.0;
    piece.working = Working::Joined { chain_counts: false };
    piece.kinds.push(plumpline_core::KindFrom { from_round: 4, kind: Kind::HalfDouble });
    let oval = course(&piece);
    let counts = plan(&piece).expect("a plan").counts();
    assert!(oval.opening.iter().any(|line| line.starts_with("Ch ")), "{:?}", oval.opening);
    for (round, count) in oval.rounds.iter().zip(counts) {
        assert_eq!(round.made(round.steps()), count);
        assert!(!round.lead_in.is_empty() && !round.lead_out.is_empty());
    }
    assert_eq!((oval.rounds[2].joining, oval.rounds[3].joining), (2, 3));
    assert_eq!(oval.rounds[4].word(Stitch::Plain), "hdc");
    let bowl = Starter::Dish.piece(&Starter::Dish.usual(), Gauge::default()).expect("a dish");
    let last = plan(&bowl).expect("a plan").counts().last().copied();
    assert_eq!(course(&bowl).open_edge, last.filter(|_| !bowl.outline.finishes_closed()));
}

#[test]
fn time_left_goes_by_habit_until_the_hands_are_known() {
    let (piece, habits) = (ball(), Habits::default());
    let course = course(&piece);
    let all: u32 = course.rounds.iter().map(|r| r.count).sum();
    let mut making = Making::default();
    let outlook = making.outlook(making.of(PieceId::new(0), None, 1), &course, &habits);
    assert_eq!((outlook.stitches_left, outlook.own), (all, false));
    let by_habit = 60.0 * f64::from(all) / habits.stitches_per_minute;
    assert!((outlook.seconds_left - by_habit).abs() < 1e-9);
    // Twice as fast as the habit says, for six rounds of one copy.
    for _ in 0..6 {
        let progress = making.begin(PieceId::new(0), None, 1);
        let stitches = progress.advance(&course, By::Round);
        progress.spend(2.5 * f64::from(stitches), stitches, &habits);
    }
    let outlook = making.outlook(making.of(PieceId::new(0), None, 1), &course, &habits);
    assert!(outlook.own && (outlook.per_minute - 24.0).abs() < 1e-9, "{outlook:?}");
    let made: u32 = course.rounds[..6].iter().map(|r| r.count).sum();
    assert_eq!(outlook.stitches_left, all - made);
    assert!((outlook.seconds_left - 2.5 * f64::from(all - made)).abs() < 1e-6);
    // The other copy is made by the same hands.
    let other = making.outlook(making.of(PieceId::new(0), None, 2), &course, &habits);
    assert!(other.own && other.seconds == 0.0 && other.stitches_left == all);
}

#[test]
fn a_project_that_was_never_begun_is_saved_as_before() {
    let project = Project::of_piece(ball());
    let text = file::write(&project).expect("written");
    assert!(!text.contains("making"), "{text}");
    let wrong = text.replace("    pieces: [", "    making: [(piece: 7)],\n    pieces: [");
    let error = file::parse(&wrong).expect_err("there is no piece 7").to_string();
    assert!(error.contains("making, piece 7, copy 1, pieces: there is no piece 7"), "{error}");
}

/// An acorn whose cap meets its nut at every size, and a leaf without any size.
fn acorn() -> Project {
    let acorn = include_str!("../../../sample-projects/acorn.ron");
    let mut project = file::parse(acorn).expect("a sample");
    project.add(Piece { name: "Leaf".into(), ..ball() });
    project
}

#[test]
fn a_size_is_made_as_the_whole_project_at_that_size_is_planned() {
    let (project, writer) = (acorn(), Writer::bench());
    let as_designed: Vec<WorkedPiece> = project.pieces.iter().map(course).collect();
    for size in ["Bead", "Oak"] {
        let courses = WorkedPiece::at_size(&project, size, &writer).expect("courses");
        let at = at_size(&project, size).expect("a size").project;
        let planned: Vec<WorkedPiece> = at.pieces.iter().map(course).collect();
        assert_eq!(courses, planned, "{size}");
        assert_ne!(courses[0], as_designed[0], "{size}");
        assert_eq!(courses[2], as_designed[2], "the leaf has no sizes");
    }
    let missing = WorkedPiece::at_size(&project, "XXL", &writer).expect_err("no such size");
    assert!(missing.to_string().contains("the sizes are Bead, Oak"), "{missing}");
}

#[test]
fn sizes_in_the_making_keep_place_notes_and_time_apart_and_are_saved() {
    let (mut project, writer) = (acorn(), Writer::bench());
    let habits = Habits::default();
    let sizes = [Some("Bead"), Some("Oak"), None];
    let at = |project: &Project, size| match size {
        None => course(&project.pieces[0]),
        Some(size) => {
            WorkedPiece::at_size(project, size, &writer).expect("courses").swap_remove(0)
        }
    };
    for (rounds, size) in (3..).zip(sizes) {
        let course = at(&project, size);
        let progress = project.making.begin(PieceId::new(0), size, 1);
        for _ in 0..rounds {
            let stitches = progress.advance(&course, By::Round);
            progress.spend(4.0 * f64::from(stitches), stitches, &habits);
        }
        progress.note(rounds, &format!("{rounds} rounds"));
    }
    let text = file::write(&project).expect("written");
    assert!(text.contains("size: Some(\"Bead\")"), "{text}");
    assert_eq!(file::parse(&text).as_ref(), Ok(&project));
    for (rounds, size) in (3..).zip(sizes) {
        let course = at(&project, size);
        let progress = project.making.of(PieceId::new(0), size, 1).expect("begun");
        assert_eq!(progress.stand(&course), Stand::Stitch { round: rounds + 1, done: 0 });
        assert_eq!(progress.notes.len(), 1);
        assert_eq!(progress.parted(&course), None);
        let all: u32 = course.rounds.iter().map(|r| r.count).sum();
        let made: u32 = progress.worked.iter().sum();
        let outlook = project.making.outlook(Some(progress), &course, &habits);
        assert_eq!(outlook.stitches_left, all - made);
        assert!((outlook.seconds - 4.0 * f64::from(made)).abs() < 1e-6, "time of its own");
        assert!(outlook.own && (outlook.per_minute - 15.0).abs() < 1e-9, "one maker's pace");
    }
    // A change of the Oak parts with the Oak alone.
    let oak = project.pieces[0].sizes.iter().position(|s| s.name == "Oak").expect("an Oak");
    project.pieces[0].sizes[oak] = Size::new("Oak", SizeBy::Height(24.0));
    let parted = |size| {
        let progress = project.making.of(PieceId::new(0), size, 1).expect("begun");
        progress.parted(&at(&project, size)).is_some()
    };
    assert_eq!(sizes.map(parted), [false, true, false]);
}

#[test]
fn what_was_saved_before_there_were_sizes_is_as_designed() {
    let project = Project::of_piece(ball());
    let text = file::write(&project).expect("written");
    let old = "    making: [(piece: 0, copy: 1, round: 3, done: 2, worked: [6, 12])],\n";
    let text = text.replace("    pieces: [", &format!("{old}    pieces: ["));
    let read = file::parse(&text).expect("an old file");
    let progress = read.making.of(PieceId::new(0), None, 1).expect("begun");
    assert_eq!((progress.round, progress.done, &progress.size), (3, 2, &None));
    assert!(!file::write(&read).expect("written").contains("size:"), "and is saved as before");
    let wrong = text.replace("piece: 0, copy", "piece: 0, size: Some(\"XL\"), copy");
    let error = file::parse(&wrong).expect_err("there is no XL").to_string();
    assert!(error.contains("size “XL”, copy 1: no piece has such a size"), "{error}");
}
