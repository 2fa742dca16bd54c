//! The Proofread stage as a person uses it.

use egui::{Event, Key, Modifiers, vec2};
use egui_kittest::Harness;
use egui_kittest::kittest::Queryable as _;
use plumpline::view::Stage;
use plumpline::window::Studio;
use plumpline_core::plan;

use crate::wait::until;

/// An invented cork for a jar; round 4 repeats five times where six are meant.
const BROKEN: &str = "Cork\n\
    Rnd 1: 6 sc in magic ring (6)\n\
    Rnd 2: inc x 6 (12)\n\
    Rnd 3: (sc 1, inc) x 6 (18)\n\
    Rnd 4: (sc 2, inc) x 5 (24)\n\
    Rnds 5-9: sc in each st around (24)\n\
    Rnd 10: (sc 2, dec) x 6 (18)\n\
    Stuff now.\n\
    Rnd 11: (sc 1, dec) x 6 (12)\n\
    Rnd 12: dec x 6 (6)\n\
    Fasten off.\n";

const COUNTS: [u32; 12] = [6, 12, 18, 24, 24, 24, 24, 24, 24, 18, 12, 6];

type Bench<'a> = Harness<'a, Studio>;

fn bench<'a>() -> Bench<'a> {
    let mut bench = Harness::builder()
        .with_size(vec2(1440.0, 900.0))
        .with_max_steps(60)
        .with_step_dt(0.05)
        .build_eframe(|cc| Studio::new(cc, None));
    bench.run();
    bench.key_press(Key::Num6);
    bench.run();
    assert_eq!(bench.state().view().stage, Stage::Proofread);
    bench
}

fn paste(bench: &mut Bench<'_>, text: &str) {
    bench.get_by_label("Pattern text").focus();
    bench.run();
    bench.event(Event::Paste(text.into()));
    bench.run();
    assert_eq!(bench.state().proofreading().text(), text);
}

fn findings(bench: &Bench<'_>) -> usize {
    bench.state().proofreading().checked().map_or(usize::MAX, |c| c.findings.len())
}

#[test]
fn a_broken_pattern_is_found_mended_and_the_mend_can_be_taken_back() {
    let mut bench = bench();
    paste(&mut bench, BROKEN);
    assert_eq!(findings(&bench), 1);
    bench.get_by_label_contains("Rnd 4 takes 15 of the 18 stitches").click();
    bench.run();
    assert_eq!(bench.state().proofreading().taken(), Some((0, false)));
    bench.get_by_label("Fix line 5, problem 1").click();
    bench.run();
    assert_eq!(findings(&bench), 0);
    let mended = BROKEN.replace("(sc 2, inc) x 5", "(sc 2, inc) x 6");
    assert_eq!(bench.state().proofreading().text(), mended);
    bench.key_press_modifiers(Modifiers::COMMAND, Key::Z);
    bench.run();
    assert_eq!(bench.state().proofreading().text(), BROKEN);
    assert_eq!(bench.state().document().history.undo_steps(), 0, "the project is as it was");
}

#[test]
fn typing_belongs_to_the_text_and_not_to_the_stages() {
    let mut bench = bench();
    paste(&mut bench, BROKEN);
    bench.key_press(Key::Num1);
    bench.run();
    assert_eq!(bench.state().view().stage, Stage::Proofread);
}

#[test]
fn a_piece_is_made_in_one_step_with_these_counts() {
    let mut bench = bench();
    let before = bench.state().document().project().clone();
    paste(&mut bench, &BROKEN.replace("x 5", "x 6"));
    bench.get_by_label("Make a piece of it").click();
    bench.run();
    let document = bench.state().document();
    assert_eq!(document.project().pieces.len(), before.pieces.len() + 1);
    assert_eq!(document.piece().name, "Cork");
    assert_eq!(plan(document.piece()).expect("a plan").counts(), COUNTS);
    assert_eq!(document.history.undo_steps(), 1);
    bench.get_by_label("Undo").click();
    bench.run();
    assert_eq!(bench.state().document().project(), &before);
}

#[test]
fn other_terms_can_be_asked_for() {
    let mut bench = bench();
    paste(&mut bench, BROKEN);
    let terms = |bench: &Bench<'_>| {
        bench.state().proofreading().checked().map(|c| c.terms.clone()).expect("it was read")
    };
    assert!(terms(&bench).contains("“sc” in line 2"), "{}", terms(&bench));
    bench.get_by_label("Read in other terms").click();
    bench.run();
    bench.get_by_label_contains("UK").click();
    bench.run();
    assert_eq!(bench.state().proofreading().wish(), Some("en-uk"));
    assert!(terms(&bench).contains("as asked"), "{}", terms(&bench));
}

#[test]
fn long_texts_are_checked_while_the_window_goes_on() {
    let mut bench = bench();
    let long = BROKEN.repeat(1000);
    bench.get_by_label("Pattern text").focus();
    bench.run();
    bench.event(Event::Paste(long));
    bench.step();
    assert!(bench.state().proofreading().is_busy(), "it is read off the frame");
    until(&mut bench, "it is never read", |b| !b.state().proofreading().is_busy());
    // The same slip in every copy is told once.
    assert_eq!(findings(&bench), 1);
    let checked = bench.state().proofreading().checked().expect("it was read");
    assert!(format!("{checked:?}").contains("999 more"), "and said how often");
}

/// An invented text in words of its author's own.
const OWN_WORDS: &str = "Bud\n\
    Rnd 1: 6 sc in magic ring (6)\n\
    Rnd 2: blossoming\n\
    Rnd 3: 1 peacefully, blossoming\n\
    Rnd 4: 2 peacefully, blossoming\n";

fn unread(bench: &Bench<'_>) -> usize {
    bench.state().proofreading().checked().map_or(usize::MAX, |c| c.unread())
}

/// Says what `words` of the selected finding mean.
fn say(bench: &mut Bench<'_>, finding: &str, means: &str) {
    bench.get_by_label_contains(finding).click();
    bench.run();
    bench.get_by_label("What it means").focus();
    bench.run();
    bench.event(Event::Text(means.into()));
    bench.run();
    bench.get_by_label("Save what it means").click();
    bench.run();
}

#[test]
fn what_a_line_means_is_said_once_and_holds_for_the_rest() {
    let mut bench = bench();
    paste(&mut bench, OWN_WORDS);
    let before = unread(&bench);
    assert!(before > 1, "{before} are not read");
    say(&mut bench, "Say what line 3 means", "inc in each st");
    say(&mut bench, "Say what line 4 means", "(1 sc, inc) x 6");
    let proofreading = bench.state().proofreading();
    assert_eq!(proofreading.sayings().len(), 2);
    let counts: Vec<_> =
        proofreading.checked().expect("read").rounds.iter().map(|r| r.makes).collect();
    assert_eq!(counts, [Some(6), Some(12), Some(18), Some(24)], "the last was never told of");
    assert_eq!((unread(&bench), findings(&bench)), (0, 0));
    assert!(bench.state().proofreading().is_unkept());
    bench.get_by_label("Remove what you said, 1").click();
    bench.run();
    assert_eq!(bench.state().proofreading().sayings().len(), 1);
    assert!(unread(&bench) > 0);
    // Another text has another author.
    bench.get_by_label_contains("Say what line 3 means").click();
    bench.run();
    bench.get_by_label("Say nothing").click();
    bench.run();
    assert!(bench.query_by_label("What it means").is_none());
}
