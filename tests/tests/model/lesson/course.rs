//! The course: words without numbers, numbers without words, and exercises that fit a lesson.

use plumpline_core::lesson::LessonCourse;
use plumpline_core::lesson::course::{
    LessonAnswer, LessonAsk, LessonChoice, LessonGuess, LessonStep, Mistake, lesson_page,
    teacher_page,
};
use plumpline_core::words::Writer;
use plumpline_core::{Gauge, Unit, plan};

/// Swatches of makers who work rounds low and high, and the default.
fn gauges() -> [Gauge; 4] {
    let [low, square, high] = [4.2, 5.0, 5.6].map(|height| Gauge::of_stitch(5.0, height));
    [Gauge::default(), low, square, high]
}

/// Every sentence of a step that is spoken of its own sample.
fn said(step: &LessonStep) -> Vec<&str> {
    let mut said: Vec<&str> = vec![&step.name, &step.title, &step.prediction.question];
    let (look, why, guide) = (&step.look, &step.why, &step.guide);
    said.extend(look.iter().chain(why).chain(&guide.aims).map(String::as_str));
    said.extend(guide.materials.iter().map(String::as_str));
    said.extend(guide.mistakes.iter().flat_map(|Mistake { seen, help }| [&**seen, &**help]));
    match &step.prediction.ask {
        LessonAsk::Bend { cup, flat, ruffle } => said.extend([&**cup, flat, ruffle]),
        LessonAsk::Curve { ball, straight, saddle, .. } => {
            said.extend([&**ball, straight, saddle]);
        }
        LessonAsk::Number { unit, low, high, .. } => said.extend([&**unit, low, high]),
    }
    said
}

#[test]
fn it_has_eight_steps_and_no_number_is_typed_into_their_words() {
    let course = LessonCourse::english();
    assert_eq!(course.steps.len(), 8);
    for step in &course.steps {
        let by_hand =
            step.exercise.steps.iter().map(String::as_str).chain([&*step.exercise.see]);
        for text in said(step).into_iter().chain(by_hand) {
            assert!(!text.contains(|c: char| c.is_ascii_digit()), "{}: {text}", step.title);
            assert!(!text.trim().is_empty(), "{}", step.title);
        }
    }
}

#[test]
fn every_name_in_braces_is_filled_in_at_every_gauge() {
    let course = LessonCourse::english();
    for gauge in gauges() {
        for step in &course.steps {
            let figures = step.figures(gauge).expect("it can be worked");
            let by_hand = step.exercise.sample.figures(gauge).expect("it can be worked");
            for text in said(step) {
                let text =
                    figures.filled(text, &[]).expect("its names are figures").to_string();
                assert!(!text.contains(['{', '}']), "{text}");
            }
            for text in step.exercise.steps.iter().chain([&step.exercise.see]) {
                by_hand.filled(text, &[]).expect("its names are figures");
            }
        }
    }
}

#[test]
fn every_question_has_one_right_answer_and_every_guess_a_reply() {
    let course = LessonCourse::english();
    for gauge in gauges() {
        for step in &course.steps {
            let figures = step.figures(gauge).expect("it can be worked");
            let reply = |guess| step.reply(guess, &figures, &course.words).expect("a reply");
            match step.answer(&figures).expect("an answer") {
                LessonAnswer::Choice(answer) => {
                    for &choice in step.prediction.ask.choices() {
                        let reply = reply(LessonGuess::Choice(choice));
                        assert_eq!(reply.right, choice == answer, "{}", step.title);
                        assert_eq!(reply.because.to_string().is_empty(), reply.right);
                        assert!(reply.verdict.to_string().contains(choice.text(&course.words)));
                    }
                    let number = LessonGuess::Number(3.0);
                    assert!(step.reply(number, &figures, &course.words).is_err());
                }
                LessonAnswer::Number { value, near, .. } => {
                    for (off, right) in [
                        (0.0, true),
                        (0.9 * near, true),
                        (-3.0 * near, false),
                        (5.0 * near, false),
                    ] {
                        let reply = reply(LessonGuess::Number(value + off));
                        assert_eq!(reply.right, right, "{}: off by {off}", step.title);
                        assert!((reply.off - off).abs() < 1e-9);
                        assert_eq!(reply.because.to_string().is_empty(), right);
                    }
                    for guess in [
                        LessonGuess::Choice(LessonChoice::Cup),
                        LessonGuess::Number(f64::NAN),
                        LessonGuess::Number(f64::INFINITY),
                    ] {
                        assert!(step.reply(guess, &figures, &course.words).is_err());
                    }
                }
            }
        }
    }
}

/// The answers as they follow from square stitches, worked by hand.
#[test]
fn the_answers_are_those_of_geometry() {
    let course = LessonCourse::english();
    let gauge = Gauge::of_stitch(5.0, 5.0);
    let answer = |i: usize| {
        let step = &course.steps[i];
        step.answer(&step.figures(gauge).expect("figures")).expect("an answer")
    };
    let number = |i: usize| match answer(i) {
        LessonAnswer::Number { value, .. } => value,
        LessonAnswer::Choice(choice) => panic!("step {i} answers {choice:?}"),
    };
    assert_eq!(answer(0), LessonAnswer::Choice(LessonChoice::Cup));
    assert!((number(1) - std::f64::consts::TAU).abs() < 1e-9);
    assert_eq!(answer(2), LessonAnswer::Choice(LessonChoice::Cup));
    // sin(half the opening) = 3/2π.
    assert!((number(3) - 57.037).abs() < 0.01, "{}", number(3));
    // 36 sin 45° = 25.46.
    assert!((number(4) - 25.0).abs() < 1e-9);
    assert_eq!(answer(5), LessonAnswer::Choice(LessonChoice::Straight));
    assert_eq!(answer(6), LessonAnswer::Choice(LessonChoice::Saddle));
    // sinh(x)/x at x = 9·ln(4/3), to whole stitches.
    let x = 9.0 * (4.0_f64 / 3.0).ln();
    assert!((number(7) - x.sinh() / x).abs() < 0.02, "{}", number(7));
}

#[test]
fn exercises_take_twenty_minutes_at_the_most_and_can_be_planned() {
    let course = LessonCourse::english();
    for gauge in gauges() {
        for step in &course.steps {
            let sample = step.exercise.sample.at(gauge).expect("it can be worked");
            let minutes = plumpline_core::lesson::course::figures::minutes(&sample);
            assert!(minutes <= 20.0, "{}: {minutes} minutes, {sample:?}", step.title);
            let piece = sample.piece(&step.title, gauge);
            let plan = plan(&piece).expect("it can be planned");
            assert_eq!(plan.counts(), sample.counts);
        }
    }
}

#[test]
fn a_page_says_everything_and_its_front_keeps_the_answer() {
    let course = LessonCourse::english();
    for (i, step) in course.steps.iter().enumerate() {
        for unit in [Unit::Mm, Unit::Inch] {
            let writer = Writer::bench();
            let page = lesson_page(course, i, Gauge::default(), unit, &writer).expect("a page");
            assert_eq!((page.number, page.steps), (i + 1, 8));
            assert!(page.rounds.len() >= 2, "{page:?}");
            assert!(!page.answer.is_empty() && page.why.len() == step.why.len());
            let LessonAnswer::Number { .. } =
                step.answer(&step.figures(Gauge::default()).expect("figures")).expect("answer")
            else {
                continue;
            };
            let number = page.answer.split(' ').next().expect("a number");
            let front = [&page.question, &page.see].into_iter().chain(&page.exercise);
            let words = |text: &str| {
                text.split(|c: char| !(c.is_ascii_digit() || c == '.'))
                    .map(|w| w.trim_matches('.').to_owned())
                    .collect::<Vec<_>>()
            };
            for text in front {
                assert!(!words(text).iter().any(|w| w == number), "{number} in “{text}”");
            }
        }
        let guide = teacher_page(course, i, Gauge::default(), Unit::Mm).expect("a guide");
        assert!(!guide.aims.1.is_empty() && !guide.mistakes.1.is_empty());
        assert!(guide.time.contains("minutes"));
    }
    let writer = Writer::bench();
    assert!(lesson_page(course, 8, Gauge::default(), Unit::Mm, &writer).is_err());
}
