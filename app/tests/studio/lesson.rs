//! The Lesson stage as a teacher and her class use it.

use egui::{Key, accesskit};
use egui_kittest::kittest::Queryable as _;
use plumpline::view::Stage;
use plumpline_core::lesson::course::{LessonAnswer, LessonAsk, LessonChoice, LessonGuess};
use plumpline_core::lesson::{Curvature, LessonCourse};

use crate::bench::{Bench, opened};
use crate::hand::{click, press};
use crate::homes::at_home;
use crate::wait::{until, until_settled};

fn at_lesson<'a>(width: f32, height: f32) -> Bench<'a> {
    let mut bench = opened(width, height);
    press(&mut bench, Key::Num5);
    assert_eq!(bench.state().view().stage, Stage::Lesson);
    until_settled(&mut bench);
    bench
}

/// The words of the step that is shown stand in the tree.
fn reads(bench: &Bench<'_>, words: &str) -> bool {
    bench.query_by_label_contains(words).is_some()
}

/// Whether it is told why the answer is as it is.
fn explains(bench: &Bench<'_>) -> bool {
    bench.query_by_label("Why").is_some()
}

/// What the model answers at a step, in the stitches of the piece that is open.
fn answer(bench: &Bench<'_>, step: usize) -> LessonAnswer {
    let step = &LessonCourse::english().steps[step];
    let gauge = bench.state().document().piece().gauge;
    step.answer(&step.figures(gauge).expect("figures")).expect("an answer")
}

/// Goes to a control by Tab alone.
fn tab_to(bench: &mut Bench<'_>, role: accesskit::Role, name: &str) {
    for _ in 0..80 {
        press(bench, Key::Tab);
        if bench.get_by_role_and_label(role, name).is_focused() {
            return;
        }
    }
    panic!("Tab never comes to {name}");
}

#[test]
fn the_whole_course_is_gone_through_by_keyboard_alone() {
    for (width, height) in [(1024.0, 700.0), (1920.0, 1080.0)] {
        let mut bench = at_lesson(width, height);
        let course = LessonCourse::english();
        for (i, step) in course.steps.iter().enumerate() {
            assert_eq!(bench.state().view().lesson.step, i);
            // The answer is nowhere before it is asked for.
            assert!(!explains(&bench), "{}", step.name);
            match (&step.prediction.ask, answer(&bench, i)) {
                (LessonAsk::Number { .. }, LessonAnswer::Number { value, .. }) => {
                    tab_to(&mut bench, accesskit::Role::TextInput, "Your prediction");
                    bench.event(egui::Event::Text(format!("{value:.1}")));
                    bench.run();
                    press(&mut bench, Key::Enter);
                }
                (ask, LessonAnswer::Choice(right)) => {
                    let wrong = ask.choices().iter().find(|&&choice| choice != right);
                    let words = wrong.expect("another choice").text(&course.words);
                    tab_to(&mut bench, accesskit::Role::RadioButton, words);
                    press(&mut bench, Key::Enter);
                }
                (ask, answer) => panic!("{ask:?} is answered by {answer:?}"),
            }
            until_settled(&mut bench);
            assert!(explains(&bench), "{} at {width}", step.name);
            let state = bench.state().lesson().state().expect("cloth");
            assert!(state.rests && !state.held, "{}", step.name);
            // Its words tell how the prediction differed.
            let said = if matches!(step.prediction.ask, LessonAsk::Number { .. }) {
                "as good as right"
            } else {
                "The answer is"
            };
            assert!(reads(&bench, said), "{}", step.name);
            press(&mut bench, Key::PageDown);
            until_settled(&mut bench);
        }
        assert_eq!(bench.state().view().lesson.step, course.steps.len(), "the piece itself");
        assert!(reads(&bench, "your own piece relaxes"));
        press(&mut bench, Key::PageUp);
        assert!(explains(&bench), "what was said stands when one comes back");
    }
}

#[test]
fn cloth_is_held_until_something_is_predicted_and_then_let_go() {
    let mut bench = at_lesson(1440.0, 900.0);
    let rim = |bench: &Bench<'_>| {
        let state = bench.state().lesson().state().expect("cloth");
        (state.held, state.rings.last().expect("a rim").stretch)
    };
    let (held, crammed) = rim(&bench);
    assert!(held);
    // Too few stitches are stretched to lie flat.
    assert!(crammed > 1.02, "{crammed}");
    click(&mut bench, "it ruffles");
    until_settled(&mut bench);
    let (held, free) = rim(&bench);
    assert!(!held && (free - 1.0).abs() < 0.02, "at rest nothing is stretched: {free}");
    assert!(reads(&bench, "You said “it ruffles”"));
}

#[test]
fn the_rounds_follow_the_slider_and_the_arrows() {
    let mut bench = at_lesson(1440.0, 900.0);
    assert!(bench.query_by_label("new stitches in each round").is_none(), "not before");
    click(&mut bench, "it cups");
    until_settled(&mut bench);
    bench.get_by_label("The fabric").focus();
    bench.run();
    for _ in 0..4 {
        press(&mut bench, Key::ArrowUp);
    }
    until_settled(&mut bench);
    let knob = bench.state().view().lesson.knob.expect("it was changed");
    let rings = bench.state().lesson().state().expect("cloth").rings.len();
    assert_eq!(rings, 10, "nine rounds and the ring");
    let LessonAnswer::Choice(LessonChoice::Cup) = answer(&bench, 0) else {
        panic!("the sample cups")
    };
    assert!(reads(&bench, "new stitches in each round"));
    // More than lies flat turns the sum to the other side.
    let told = |bench: &Bench<'_>, sign: &str| reads(bench, &format!("Missing angle: {sign}"));
    assert!(knob > 7 && told(&bench, "−"), "{knob}");
    press(&mut bench, Key::H);
    assert!(told(&bench, "more fabric than lies flat"), "in words where numbers are hidden");
    // The question stays about its own sample.
    assert!(reads(&bench, "and that is right"));
}

#[test]
fn predictions_are_kept_on_this_computer_and_can_be_forgotten() {
    let folder = tempfile::tempdir().expect("a folder");
    let home = folder.path().join("home");
    let mut bench = at_home(&home, None);
    press(&mut bench, Key::Num5);
    until_settled(&mut bench);
    click(&mut bench, "it cups");
    until_settled(&mut bench);
    click(&mut bench, "Ask again");
    until_settled(&mut bench);
    click(&mut bench, "it lies flat");
    until_settled(&mut bench);
    assert!(reads(&bench, "1 of 2 right so far: it cups 1 · it lies flat 1"));
    let file = home.join("desk.ron");
    let kept = |what: &str| {
        let file = file.clone();
        let what = what.to_owned();
        move |_: &Bench<'_>| std::fs::read_to_string(&file).is_ok_and(|t| t.contains(&what))
    };
    until(&mut bench, "they were never written", kept("it lies flat"));
    drop(bench);
    let mut bench = at_home(&home, None);
    press(&mut bench, Key::Num5);
    until_settled(&mut bench);
    click(&mut bench, "it ruffles");
    until_settled(&mut bench);
    assert!(reads(&bench, "1 of 3 right so far"));
    click(&mut bench, "Delete all");
    assert!(!reads(&bench, "right so far"));
}

#[test]
fn a_lesson_is_presented_in_the_whole_window_and_left_by_esc() {
    let mut bench = at_lesson(1440.0, 900.0);
    let small = bench.get_by_label("The fabric").rect();
    assert!(bench.query_by_label("File").is_some());
    press(&mut bench, Key::F5);
    until_settled(&mut bench);
    assert!(bench.state().view().lesson.presents);
    assert!(bench.query_by_label("File").is_none(), "the strip is gone");
    assert!(bench.get_by_label("The fabric").rect().area() > 1.1 * small.area());
    press(&mut bench, Key::Escape);
    assert!(!bench.state().view().lesson.presents);
    assert!(bench.query_by_label("File").is_some());
}

#[test]
fn ones_own_piece_shows_its_angles_and_shares_its_round() {
    let mut bench = at_lesson(1440.0, 900.0);
    let steps = LessonCourse::english().steps.len();
    for _ in 0..steps {
        press(&mut bench, Key::PageDown);
    }
    until_settled(&mut bench);
    let studio = bench.state();
    let (piece, plan) = (studio.document().piece(), studio.plan().expect("a plan"));
    let sum = Curvature::of_plan(piece, plan).worked;
    let last = sum.edges.last().expect("rounds").running_rad.to_degrees().round();
    let told = format!("{}{:.0}°", if last < 0.0 { "−" } else { "" }, last.abs());
    assert!(reads(&bench, &format!("Missing angle: {told} of 720°")), "{told}");
    let count = bench.state().plan().expect("a plan").rounds.len();
    let rings = bench.state().lesson().state().expect("cloth").rings.len();
    assert_eq!(rings, count + 1);
    bench.get_by_label_contains("Increases of").focus();
    bench.run();
    press(&mut bench, Key::ArrowRight);
    press(&mut bench, Key::ArrowRight);
    assert_eq!(bench.state().view().selected, Some(2));
    click(&mut bench, "Chart: Angles");
    assert!(reads(&bench, "Angle missing at each round"));
    press(&mut bench, Key::Num1);
    assert_eq!(bench.state().view().selected, Some(2), "it is selected on the board too");
}

#[test]
fn a_course_of_ones_own_is_taught_and_a_bad_one_refused() {
    let folder = tempfile::tempdir().expect("a folder");
    let mut bench = at_lesson(1440.0, 900.0);
    let text = LessonCourse::english_text();
    let own = folder.path().join("own.ron");
    std::fs::write(&own, text.replace("Why six?", "Six, but why?")).expect("written");
    let bad = folder.path().join("bad.ron");
    std::fs::write(&bad, text.replace("Level(rounds: 9)", "Level(rounds: 900)"))
        .expect("written");
    let open = |bench: &mut Bench<'_>, path: &std::path::Path| {
        let ctx = bench.ctx.clone();
        bench.state_mut().open_course(&ctx, path);
        let quiet = |bench: &Bench<'_>| !bench.state().is_busy();
        bench.step();
        until(bench, "it was never read", quiet);
        bench.run();
    };
    open(&mut bench, &own);
    press(&mut bench, Key::PageDown);
    assert!(reads(&bench, "Step 2: Six, but why?"));
    open(&mut bench, &bad);
    let notice = bench.state().view().notice.clone().expect("it says why");
    assert!(notice.wrong && notice.text.contains("bad.ron") && !notice.text.contains('\n'));
    assert!(reads(&bench, "Step 2: Six, but why?"), "the other one is still taught");
}

#[test]
fn the_lesson_becomes_a_project_once_changes_are_safe() {
    let mut bench = at_lesson(1440.0, 900.0);
    click(&mut bench, "Print or save the lesson");
    click(&mut bench, "Make a project of the lesson");
    let project = bench.state().document().project();
    assert_eq!(project.pieces.len(), LessonCourse::english().steps.len());
    assert_eq!(project.title, LessonCourse::english().title);
}

#[test]
fn a_number_is_predicted_with_a_point_or_a_comma_and_nothing_else_acts() {
    let mut bench = at_lesson(1440.0, 900.0);
    press(&mut bench, Key::PageDown);
    until_settled(&mut bench);
    bench.get_by_label("Your prediction").focus();
    bench.run();
    for (key, text) in [(Key::Num6, "6"), (Key::Comma, ","), (Key::Num3, "3")] {
        bench.key_press(key);
        bench.event(egui::Event::Text(text.into()));
        bench.run();
    }
    assert_eq!(bench.state().view().stage, Stage::Lesson, "digits are typed");
    press(&mut bench, Key::Enter);
    let said = bench.state().view().lesson.said.get(&1).copied();
    assert_eq!(said, Some(LessonGuess::Number(6.3)));
}
