//! What holds a toy, and what is painted and embroidered on it, as a person uses it.

use egui::{Key, vec2};
use egui_kittest::kittest::Queryable as _;
use plumpline::view::toy::ToyPick;
use plumpline_core::project::toy::attachment::Attachment;

use crate::assembly::{choose, steps, take, toy, whole};
use crate::bench::Bench;
use crate::hand::{click, go_and_click, press, undo};
use crate::wait::until_settled;

#[test]
fn what_the_toy_hangs_by_is_added_changed_and_told() {
    let (_home, mut bench) = whole();
    take(&mut bench, "Part Head");
    choose(&mut bench, "Cord or wire", "Loop or ring to hang by");
    assert_eq!(bench.state().view().toy.taken, Some(ToyPick::Attachment(0)));
    let hangs = |bench: &Bench<'_>| {
        let studio = bench.state();
        studio.toy().made(studio.document()).expect("a toy").assembled.hangings.len()
    };
    assert_eq!(hangs(&bench), 1);
    bench.get_by_label("Length of the loop, more").focus();
    bench.run();
    click(&mut bench, "Length of the loop, more");
    until_settled(&mut bench);
    assert_eq!(steps(&bench), 2);
    assert!(bench.query_by_label_contains("Attachment 1: Loop").is_some());
    bench.get_by_label("Remove: loop").focus();
    bench.run();
    click(&mut bench, "Remove: loop");
    until_settled(&mut bench);
    assert_eq!((hangs(&bench), toy(&bench).attachments.len()), (0, 0));
}

#[test]
fn cords_from_three_places_are_added_and_hang_the_toy_upright() {
    let (_home, mut bench) = whole();
    take(&mut bench, "Part Body");
    choose(&mut bench, "Cord or wire", "Cords from 2 or 3 places");
    assert_eq!(bench.state().view().toy.taken, Some(ToyPick::Attachment(0)));
    go_and_click(&mut bench, "Cords: 3");
    until_settled(&mut bench);
    let legs = |bench: &Bench<'_>| match &toy(bench).attachments[0] {
        Attachment::Sling(sling) => sling.legs.clone(),
        other => panic!("{other:?}"),
    };
    assert_eq!(legs(&bench).len(), 3);
    let lean = |bench: &Bench<'_>| {
        let studio = bench.state();
        studio.toy().made(studio.document()).expect("a toy").assembled.hangings[0].lean_deg
    };
    assert!(lean(&bench) < 0.05, "cut for it: {}", lean(&bench));
    assert!(bench.query_by_label_contains("It hangs upright").is_some());
    go_and_click(&mut bench, "Lengths: all equal");
    until_settled(&mut bench);
    let equal = lean(&bench);
    assert!(equal > 0.05, "all equal: {equal}");
    go_and_click(&mut bench, "Cord 1, from the front, more");
    until_settled(&mut bench);
    assert_eq!(steps(&bench), 2, "one step for adding, one for the run of changes");
    undo(&mut bench);
    undo(&mut bench);
    assert_eq!(toy(&bench).attachments, []);
}

#[test]
fn stitches_of_a_part_are_painted_by_number_by_key_and_taken_back() {
    let (_home, mut bench) = whole();
    let paint = |bench: &Bench<'_>| bench.state().document().project().pieces[0].paint.clone();
    take(&mut bench, "Part Body");
    go_and_click(&mut bench, "Paint in yarn B");
    bench.get_by_label_contains("Surface of").focus();
    bench.run();
    // Up is a later round or an earlier one, as the part stands.
    press(&mut bench, Key::ArrowRight);
    press(&mut bench, Key::Space);
    until_settled(&mut bench);
    let painted = paint(&bench);
    assert_eq!((painted.rounds().count(), painted.yarns()), (1, vec![1]));
    assert_eq!(steps(&bench), 1);
    go_and_click(&mut bench, "Last stitch to paint, more");
    go_and_click(&mut bench, "Paint these in B");
    until_settled(&mut bench);
    let runs = |bench: &Bench<'_>| {
        let paint = paint(bench);
        let round = paint.rounds().next().expect("a round");
        let round = paint.round(round).expect("it is painted").clone();
        round.runs.iter().map(|run| run.to + 1 - run.from).sum::<u32>()
    };
    assert_eq!(runs(&bench), 2);
    let made = |bench: &Bench<'_>| {
        let studio = bench.state();
        let body = studio.document().project().pieces[0].id;
        let toy = studio.toy().made(studio.document()).expect("a toy");
        toy.plans[&body].rounds.iter().filter(|round| !round.colours.is_empty()).count()
    };
    assert_eq!(made(&bench), 1, "the plan has the change of yarn");
    go_and_click(&mut bench, "Take paint off");
    go_and_click(&mut bench, "Take paint off these");
    until_settled(&mut bench);
    assert!(paint(&bench).is_empty());
    undo(&mut bench);
    undo(&mut bench);
    undo(&mut bench);
    assert!(paint(&bench).is_empty() && steps(&bench) == 0);
}

#[test]
fn a_mouth_is_embroidered_place_by_place_and_taken_back() {
    let (_home, mut bench) = whole();
    take(&mut bench, "Part Head");
    go_and_click(&mut bench, "Backstitch");
    go_and_click(&mut bench, "Embroider in yarn B");
    let canvas = |bench: &Bench<'_>| bench.get_by_label_contains("Surface of").rect();
    bench.get_by_label_contains("Surface of").focus();
    bench.run();
    for share in [0.4, 0.5, 0.6] {
        let rect = canvas(&bench);
        let at = rect.lerp_inside(vec2(share, 0.5));
        bench.hover_at(at);
        bench.step();
        bench.drag_at(at);
        bench.step();
        bench.drop_at(at);
        bench.run();
    }
    until_settled(&mut bench);
    let lines = |bench: &Bench<'_>| toy(bench).embroidery;
    let [line] = lines(&bench).try_into().expect("one line");
    assert_eq!((line.part, line.yarn, line.places.len()), (1, 1, 3));
    assert!(!line.mirrored);
    // By the keyboard it goes on, and the last place comes off again.
    press(&mut bench, Key::Space);
    assert_eq!(lines(&bench)[0].places.len(), 4);
    press(&mut bench, Key::Backspace);
    assert_eq!(lines(&bench)[0].places, line.places);
    go_and_click(&mut bench, "Mirror embroidery 1");
    until_settled(&mut bench);
    let studio = bench.state();
    let made = studio.toy().made(studio.document()).expect("a toy");
    assert_eq!(made.assembled.embroidery[0].lines.len(), 2);
    let told = made.steps.iter().filter(|step| step.text.contains("in backstitch")).count();
    assert_eq!(told, 1, "a step of the assembly");
    go_and_click(&mut bench, "Remove embroidery 1");
    until_settled(&mut bench);
    assert_eq!(lines(&bench), []);
    undo(&mut bench);
    assert!(lines(&bench)[0].mirrored);
}

/// A letter takes the keyboard to the line of an open menu that begins with it, in the menus of
/// this stage, of the board and of the lesson.
#[test]
fn letters_choose_lines_of_menus() {
    let (_home, mut bench) = whole();
    let typed = |bench: &mut Bench<'_>, letter: &str, line: &str| {
        bench.event(egui::Event::Text(letter.into()));
        bench.run();
        // A button of the same name may stand on the board.
        let on_it = bench.query_all_by_label(line).any(|node| node.is_focused());
        assert!(on_it, "{letter}: {line}");
        press(bench, Key::Escape);
    };
    go_and_click(&mut bench, "Cord or wire");
    typed(&mut bench, "t", "Thread joint");
    go_and_click(&mut bench, "Add a part");
    typed(&mut bench, "o", "Other small thing");
    press(&mut bench, Key::Num1);
    bench.get_by_label("Outline board").focus();
    bench.run();
    bench.get_by_label("Outline board").click_secondary();
    bench.run();
    typed(&mut bench, "m", "Magnet");
    press(&mut bench, Key::Num5);
    until_settled(&mut bench);
    go_and_click(&mut bench, "Print or save the lesson");
    typed(&mut bench, "o", "Open a course…");
}
