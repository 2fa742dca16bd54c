//! The studio as a person uses it: what the hand does and what then stands on screen.

use egui::{Key, Modifiers, Pos2, vec2};
use egui_kittest::Harness;
use egui_kittest::kittest::{NodeT as _, Queryable as _};
use plumpline::view::Stage;
use plumpline::window::Studio;
use plumpline_core::{plan, plan_draft};

use crate::bench::{Bench, opened};
use crate::wait::until_settled;

fn bench<'a>() -> Bench<'a> {
    opened(1440.0, 900.0)
}

fn place(bench: &Bench<'_>, name: &str) -> Pos2 {
    bench.get_by_label(name).rect().center()
}

fn row(bench: &Bench<'_>, round: u32) -> egui::Rect {
    bench.get_by_label_contains(&format!("Round {round}: ")).rect()
}

/// Whether what is on screen is the plan of the piece as it is now: a draft while a hand drags.
fn is_current(bench: &Bench<'_>) -> bool {
    let studio = bench.state();
    let (document, piece) = (studio.document(), studio.document().piece());
    let dragged = document.history.in_gesture();
    let now = if dragged { plan_draft(piece) } else { plan(piece) };
    let now = now.expect("a plan").counts();
    studio.plan().is_some_and(|shown| shown.counts() == now)
}

fn drag(bench: &mut Bench<'_>, from: Pos2, by: egui::Vec2, steps: usize) {
    bench.hover_at(from);
    bench.step();
    bench.drag_at(from);
    bench.step();
    for i in 1..=steps {
        bench.hover_at(from + by * (i as f32 / steps as f32));
        bench.step();
        assert!(is_current(bench), "the rounds lag behind the hand");
    }
    bench.drop_at(from + by);
    bench.run();
}

#[test]
fn dragging_a_knot_changes_the_rounds_at_once_and_is_one_step() {
    let mut bench = bench();
    let before = bench.state().document().project().clone();
    let counts = bench.state().plan().unwrap().counts();
    let knot = place(&bench, "Knot 3");
    drag(&mut bench, knot, vec2(-40.0, 12.0), 8);
    assert_ne!(bench.state().plan().unwrap().counts(), counts);
    assert_eq!(bench.state().document().history.undo_steps(), 1);
    bench.key_press_modifiers(Modifiers::COMMAND, Key::Z);
    bench.run();
    assert_eq!(bench.state().document().project(), &before);
    assert_eq!(bench.state().plan().unwrap().counts(), counts);
    bench.key_press_modifiers(Modifiers::COMMAND | Modifiers::SHIFT, Key::Z);
    bench.run();
    assert_ne!(bench.state().document().project(), &before);
}

#[test]
fn a_knot_moves_by_as_much_as_the_hand() {
    let mut bench = bench();
    let from = place(&bench, "Knot 4");
    let grab = from + vec2(4.0, -3.0);
    drag(&mut bench, grab, vec2(-12.0, 9.0), 5);
    let to = place(&bench, "Knot 4");
    let moved = to - from;
    assert!((moved - vec2(-12.0, 9.0)).length() < 0.6, "{moved:?}");
}

#[test]
fn a_press_that_does_not_move_is_no_step() {
    let mut bench = bench();
    let knot = place(&bench, "Knot 3");
    drag(&mut bench, knot, vec2(0.0, 0.0), 2);
    assert_eq!(bench.state().document().history.undo_steps(), 0);
    assert_eq!(bench.state().view().knot, Some(2), "a click takes the knot");
}

#[test]
fn a_crossed_outline_keeps_the_last_rounds_and_says_why() {
    let mut bench = bench();
    let from = place(&bench, "Knot 3");
    bench.hover_at(from);
    bench.step();
    bench.drag_at(from);
    bench.step();
    for i in 1..=10 {
        bench.hover_at(from + vec2(0.0, 40.0 * i as f32));
        bench.step();
    }
    assert!(bench.state().plan().is_some());
    bench.drop_at(from + vec2(0.0, 400.0));
    bench.run();
    bench.key_press_modifiers(Modifiers::COMMAND, Key::Z);
    bench.run();
    assert!(is_current(&bench));
}

#[test]
fn a_round_pointed_at_anywhere_is_in_hand() {
    let mut bench = bench();
    let bar = row(&bench, 9).center();
    bench.hover_at(bar);
    bench.run();
    assert_eq!(bench.state().view().hovered, Some(9));
    bench.hover_at(place(&bench, "Knot 1") + vec2(-30.0, 200.0));
    bench.run();
    let on_board = bench.state().view().hovered.expect("a round of the body");
    assert!(on_board > 5 && on_board < 30, "{on_board}");
    let strip = bench.get_by_label("Bend strip").rect();
    bench.hover_at(strip.left_center() + vec2(3.0, 0.0));
    bench.run();
    assert_eq!(bench.state().view().hovered, Some(1));
    bench.hover_at(Pos2::new(700.0, 4.0));
    bench.run();
    assert_eq!(bench.state().view().hovered, None);
}

#[test]
fn a_click_takes_a_round_and_keys_step_on() {
    let mut bench = bench();
    let bar = row(&bench, 9).center();
    bench.hover_at(bar);
    bench.step();
    bench.drag_at(bar);
    bench.drop_at(bar);
    bench.run();
    assert_eq!(bench.state().view().selected, Some(9));
    for (key, round) in
        [(Key::ArrowDown, 10), (Key::ArrowUp, 9), (Key::Home, 1), (Key::ArrowUp, 1)]
    {
        bench.key_press(key);
        bench.run();
        assert_eq!(bench.state().view().selected, Some(round), "{key:?}");
    }
    bench.key_press(Key::Escape);
    bench.run();
    assert_eq!(bench.state().view().selected, None);
}

#[test]
fn dragging_a_bars_end_pins_its_count() {
    let mut bench = bench();
    let count = bench.state().plan().unwrap().rounds[8].count;
    let end = place(&bench, "End of round 9");
    drag(&mut bench, end, vec2(-11.0, 0.0), 6);
    let pin = bench.state().document().piece().pins.get(&9).copied().expect("a pin");
    assert!(pin < count && pin + 10 > count, "{count} pinned at {pin}");
    assert_eq!(bench.state().document().history.undo_steps(), 1);
    assert_eq!(bench.state().plan().unwrap().rounds[8].count, pin);
    // P lets it go again.
    bench.key_press(Key::P);
    bench.run();
    assert!(bench.state().document().piece().pins.is_empty());
}

#[test]
fn plus_and_minus_pin_one_stitch_more_or_fewer() {
    let mut bench = bench();
    bench.key_press(Key::Home);
    for _ in 0..11 {
        bench.key_press(Key::ArrowDown);
        bench.run();
    }
    let count = bench.state().plan().unwrap().rounds[11].count;
    bench.key_press(Key::Plus);
    bench.run();
    assert_eq!(bench.state().document().piece().pins.get(&12), Some(&(count + 1)));
    bench.key_press(Key::Minus);
    bench.run();
    bench.key_press(Key::Minus);
    bench.run();
    assert_eq!(bench.state().document().piece().pins.get(&12), Some(&(count - 1)));
}

#[test]
fn a_typed_height_scales_the_outline() {
    let mut bench = bench();
    let was = bench.state().plan().unwrap().size_mm.height;
    bench.get_by_label_contains("Height ").click();
    bench.run();
    bench.get_by_label("New value: Height").type_text("15 cm");
    bench.run();
    bench.key_press(Key::Enter);
    bench.run();
    let height = bench.state().plan().unwrap().size_mm.height;
    assert!((height - 150.0).abs() < 3.0, "{was} became {height}");
    assert_eq!(bench.state().document().history.undo_steps(), 1);
    assert!(bench.state().view().typing.is_none());
}

#[test]
fn arrows_nudge_the_knot_in_hand() {
    let mut bench = bench();
    bench.key_press(Key::CloseBracket);
    bench.key_press(Key::CloseBracket);
    bench.run();
    assert_eq!(bench.state().view().knot, Some(1));
    let was = bench.state().document().piece().outline.knots[1];
    bench.key_press(Key::ArrowRight);
    bench.run();
    bench.key_press_modifiers(Modifiers::SHIFT, Key::ArrowDown);
    bench.run();
    let now = bench.state().document().piece().outline.knots[1];
    assert!((now.radius_mm - was.radius_mm - 0.5).abs() < 1e-9);
    assert!((now.height_mm - was.height_mm - 5.0).abs() < 1e-9);
    bench.key_press(Key::Delete);
    bench.run();
    assert_eq!(bench.state().document().piece().outline.knots.len(), 6);
}

#[test]
fn a_double_click_on_the_line_adds_a_knot() {
    let mut bench = bench();
    let knots = bench.state().document().piece().outline.knots.len();
    let middle =
        place(&bench, "Knot 3") + (place(&bench, "Knot 4") - place(&bench, "Knot 3")) * 0.5;
    // The line bulges out between two knots; look for it to the right.
    bench.hover_at(middle + vec2(5.0, 0.0));
    bench.step();
    for _ in 0..2 {
        bench.drag_at(middle + vec2(5.0, 0.0));
        bench.drop_at(middle + vec2(5.0, 0.0));
    }
    bench.run();
    assert_eq!(bench.state().document().piece().outline.knots.len(), knots + 1);
    assert_eq!(bench.state().view().knot, Some(3));
}

#[test]
fn single_keys_leave_a_text_field_alone() {
    let mut bench = bench();
    bench.get_by_label("Project name").focus();
    bench.run();
    bench.key_press(Key::P);
    bench.key_press(Key::Num4);
    bench.get_by_label("Project name").type_text("p2");
    bench.run();
    assert_eq!(bench.state().view().stage, Stage::Shape);
    assert!(bench.state().document().piece().pins.is_empty());
    assert!(bench.state().document().project().title.contains("p2"));
}

#[test]
fn the_sheet_reads_every_round() {
    let mut bench = opened(1440.0, 2400.0);
    bench.get_by_label("Sheet").click();
    bench.run();
    assert_eq!(bench.state().view().stage, Stage::Sheet);
    until_settled(&mut bench);
    bench.get_by_label("The sheet as: Text").click();
    bench.run();
    let lines = bench.state().words().unwrap().lines.clone();
    for line in lines {
        let words = format!("{}: {} [{}]", line.heading, line.text, line.count);
        assert!(bench.query_by_label(&words).is_some(), "{words}");
    }
}

#[test]
fn nothing_named_leaves_the_window() {
    for (width, height) in [(1024.0, 700.0), (1200.0, 760.0), (1440.0, 900.0), (3840.0, 2160.0)]
    {
        let bench = opened(width, height);
        let window = egui::Rect::from_min_size(Pos2::ZERO, vec2(width, height));
        for node in bench.root().children_recursive() {
            let Some(label) = node.accesskit_node().label() else { continue };
            // Rows below the fold are scrolled to.
            if label.starts_with("Round ") || label.starts_with("End of") {
                continue;
            }
            assert!(
                window.expand(1.0).contains_rect(node.rect()),
                "{label} at {width}×{height}"
            );
        }
    }
}

#[test]
fn an_idle_bench_asks_for_no_more_frames() {
    let mut bench = bench();
    crate::wait::until_settled(&mut bench);
    assert_eq!(bench.run(), 1, "one frame, and no wish for another");
}

#[test]
fn closing_with_changes_asks_first() {
    let mut bench = bench();
    let close = |bench: &mut Bench<'_>| {
        let viewports = &mut bench.input_mut().viewports;
        let root = viewports.get_mut(&egui::ViewportId::ROOT).expect("the window");
        root.events.push(egui::ViewportEvent::Close);
        bench.step();
        let output = &bench.output().viewport_output[&egui::ViewportId::ROOT];
        output.commands.contains(&egui::ViewportCommand::CancelClose)
    };
    assert!(!close(&mut bench), "nothing to lose, nothing to ask");
    let mut bench = self::bench();
    bench.key_press(Key::CloseBracket);
    bench.run();
    bench.key_press(Key::ArrowDown);
    bench.run();
    assert!(bench.state().document().is_changed());
    assert!(close(&mut bench), "the window must stay");
    bench.run();
    bench.get_by_label("Keep working").click();
    bench.run();
    assert!(bench.query_by_label("Keep working").is_none());
    assert!(bench.state().document().is_changed());
}

#[test]
fn a_file_named_at_the_start_opens_and_a_broken_one_is_told() {
    let folder = tempfile::tempdir().expect("a folder");
    let path = folder.path().join("ball.ron");
    let project = plumpline::document::Document::blank().project().clone();
    plumpline_core::file::save(&project, &path).expect("saved");
    let bench = Harness::builder()
        .with_size(vec2(1440.0, 900.0))
        .build_eframe(|cc| Studio::new(cc, Some(path.clone())));
    assert_eq!(bench.state().document().project(), &project);
    assert_eq!(bench.state().document().path(), Some(path.as_path()));
    std::fs::write(&path, "not a project").expect("written");
    let bench = Harness::builder()
        .with_size(vec2(1440.0, 900.0))
        .build_eframe(|cc| Studio::new(cc, Some(path.clone())));
    let notice = bench.state().view().notice.clone().expect("a line");
    assert!(notice.wrong && notice.text.contains("ball.ron"), "{}", notice.text);
    assert_eq!(notice.text.lines().count(), 1);
}

#[test]
fn a_yarn_changes_from_the_round_in_hand_on() {
    let mut bench = bench();
    bench.key_press(Key::End);
    bench.run();
    let last = bench.state().plan().expect("a plan").rounds.len();
    bench.get_by_label("Change yarn").click();
    bench.run();
    bench.get_by_label("A Madder").click();
    bench.run();
    assert_eq!(bench.state().plan().expect("a plan").rounds[last - 1].yarn, 0);
    assert_eq!(bench.state().plan().expect("a plan").rounds[last - 2].yarn, 2);
    assert_eq!(bench.state().document().history.undo_steps(), 1);
}

#[test]
fn a_yarn_takes_another_colour_on_its_card() {
    let mut bench = bench();
    bench.get_by_label("Yarn A, Madder").click();
    bench.run();
    bench.get_by_label("Plum").click();
    bench.run();
    let yarn = &bench.state().document().project().yarns[0];
    assert_eq!((yarn.name.as_str(), yarn.colour), ("Plum", [110, 62, 104]));
}
