//! Colour work: painted stitches are worked, counted, drawn and warned of where they are
//! painted, and what shapes a piece from inside is a step and a stop.

use plumpline_core::making::{By, Progress, Stand, Stop, WorkedPiece};
use plumpline_core::picture::Viewpoint;
use plumpline_core::picture::relief::Relief;
use plumpline_core::warning::WarningKind;
use plumpline_core::words::Writer;
use plumpline_core::{Gauge, Piece, PieceId, Project, Yarn, file, plan, sheet, words};

/// The trade's ball with a patch of yarn B: stitches 5 to 8 of rounds 6 to 8.
fn painted() -> Project {
    let starter = plumpline_core::starter::Starter::Ball;
    let piece = starter.piece(&starter.usual(), Gauge::default()).expect("a ball");
    let mut project = Project::of_piece(piece);
    project.yarns.push(Yarn::plain(1));
    let counts = plan(&project.pieces[0]).expect("a plan").counts();
    for round in 6..=8 {
        let count = counts[round as usize - 1];
        project.pieces[0].paint.put(round, count, (5, 8), Some(1));
    }
    project
}

#[test]
fn changes_of_yarn_inside_a_round_are_written_and_leave_its_counts() {
    let project = painted();
    let piece = &project.pieces[0];
    let plain = plan(&Piece { paint: Default::default(), ..piece.clone() }).expect("a plan");
    let made = plan(piece).expect("a plan");
    assert_eq!(made.counts(), plain.counts());
    let wording = words(&made, piece, &Writer::bench());
    for round in 6..=8 {
        let text = wording.text_of(round);
        assert!(text.contains("change to B") && text.ends_with(|c: char| c != ','), "{text}");
        assert!(text.contains("change to A"), "back to its own: {text}");
    }
    assert!(!wording.text_of(9).contains("change"), "{}", wording.text_of(9));
    // What the hands do is the same, and where they change.
    let course = WorkedPiece::new(piece, &made, &Writer::bench());
    let before = WorkedPiece::new(piece, &plain, &Writer::bench());
    for (a, b) in course.rounds.iter().zip(&before.rounds) {
        assert_eq!(a.stitches, b.stitches);
    }
    let changes = &course.round(7).expect("a round").changes;
    assert_eq!(changes.iter().map(|c| c.1).collect::<Vec<_>>(), [1, 0]);
    // Twelve stitches are in B, or a few more where one of a pair is an increase.
    let used = &made.estimate.yarn;
    assert_eq!(used.iter().map(|u| u.stitches).sum::<u32>(), made.estimate.stitches);
    assert!((12..=15).contains(&used[1].stitches), "{used:?}");
    let sheet = sheet::sheet(&project).expect("a sheet");
    assert_eq!(sheet.materials.yarn.len(), 2, "both yarns are needed");
}

#[test]
fn a_painted_stitch_is_drawn_in_its_yarn() {
    let project = painted();
    let piece = &project.pieces[0];
    let made = plan(piece).expect("a plan");
    let relief = Relief::new(piece, &made);
    let colours = [[40, 60, 200], [230, 190, 40]];
    let (mut right, mut wrong) = (0, 0);
    for turn_deg in [0.0, 90.0, 180.0, 270.0] {
        let look = Viewpoint { turn_deg, tilt_deg: 10.0, scale: 6.0, ..Viewpoint::default() };
        let still = relief.still(&look, &colours, 2.0).expect("a picture");
        for (seen, pixel) in still.map.iter().zip(&still.pixels) {
            if seen.part == 0 || seen.stitch == 0 || pixel[3] < 255 {
                continue;
            }
            let inner = (6..=8).contains(&seen.round) && (6..=7).contains(&seen.stitch);
            let far = !(5..=9).contains(&seen.round);
            let yellow = pixel[0] > pixel[2];
            if inner || far {
                if yellow == inner { right += 1 } else { wrong += 1 }
            }
        }
    }
    // A pixel at the edge of a stitch is mixed of both.
    assert!(right > 10_000 && wrong * 200 < right, "{right} right, {wrong} wrong");
}

#[test]
fn a_strand_behind_more_than_four_stitches_is_warned_of() {
    let mut project = painted();
    let count = plan(&project.pieces[0]).expect("a plan").counts()[6];
    let floats = |project: &Project| {
        let made = plan(&project.pieces[0]).expect("a plan");
        let told = made.warnings.iter().filter(|w| w.kind == WarningKind::Float).count();
        (told, made.floats.iter().map(|f| f.stitches).max())
    };
    // Yarn A lies behind the patch, which is four stitches wide.
    assert_eq!(floats(&project).0, 0);
    project.pieces[0].paint.put(7, count, (14, 15), Some(1));
    let (told, longest) = floats(&project);
    assert_eq!(told, 1);
    assert!(longest.is_some_and(|n| (4..=6).contains(&n)), "{longest:?}");
    let sheet = sheet::sheet(&project).expect("a sheet");
    assert!(sheet.pieces[0].warnings.iter().any(|w| w.contains("lies loose")));
}

#[test]
fn paint_is_saved_and_a_yarn_that_is_not_there_is_refused() {
    let mut project = painted();
    let saved = file::write(&project).expect("it is written");
    assert_eq!(file::parse(&saved).expect("it opens"), project);
    project.pieces[0].paint.put(5, 30, (1, 2), Some(7));
    let refused = project.validate().expect_err("there is no yarn H");
    assert!(refused.to_string().contains("there is no yarn 7"), "{refused}");
}

#[test]
fn card_is_laid_in_after_its_round_and_the_basket_stays_empty() {
    let text = include_str!("../../../sample-projects/drifting-float.ron");
    let project = file::parse(text).expect("the sample is sound");
    let basket = project.pieces.iter().find(|p| p.name == "Basket").expect("a basket");
    assert!(!project.stuffs(basket.id));
    let course = WorkedPiece::of_piece(basket, &Writer::bench()).expect("a plan");
    let course = course.stuffed_if(project.stuffs(basket.id));
    let [card] = course.inside.as_slice() else { panic!("{:?}", course.inside) };
    assert!(card.text.starts_with("Lay in a disc of card or plastic"), "{}", card.text);
    let mut progress = Progress::new(PieceId::new(0), 1);
    let mut stops = Vec::new();
    let mut places = vec![progress.place()];
    loop {
        match progress.stand(&course) {
            Stand::Made => break,
            Stand::Stop(stop) => {
                stops.push((stop, progress.round));
                assert!(progress.acknowledge(&course));
            }
            Stand::Stitch { .. } => {
                progress.advance(&course, By::Stitch);
            }
        }
        places.push(progress.place());
    }
    let last = course.last_round() + 1;
    assert_eq!(stops, [(Stop::Inside(0), card.after + 1), (Stop::Close, last)]);
    for place in places.iter().rev().skip(1) {
        assert!(progress.back(&course));
        assert_eq!(progress.place(), *place);
    }
}
