//! Tab comes to everything that can be acted on, leaves every board, and keys do what the
//! settings say.

use std::collections::BTreeSet;

use egui::{Key, Modifiers};
use egui_kittest::kittest::Queryable as _;
use plumpline::view::Over;

use super::places;
use crate::bench::opened;

/// Kinds that lie on a board, which has the keyboard for all of them; beside each how it is
/// done by key.
const ON_BOARDS: [(&str, &str); 8] = [
    ("Rounds of ", "G asks for the round to go to"),
    ("Knot ", "[ and ] take it, arrows move it"),
    ("Round ", "Up and Down take it"),
    ("End of round ", "+ and −"),
    ("Scale ", "the number beside it is typed"),
    ("Known length, end", "the length is typed"),
    ("Stitches off the outline", "the rows under the plot"),
    ("Stitches likely off the outline", "the answers under the plot"),
];

#[test]
fn tab_comes_to_everything() {
    let mut faults = Vec::new();
    places::each(1024.0, 700.0, |mut visit| {
        let mut reached = BTreeSet::new();
        reached.extend(visit.bench.ctx.memory(|m| m.focused()).map(|id| id.value()));
        for _ in 0..2 * visit.list.len() + 60 {
            visit.bench.key_press(Key::Tab);
            visit.bench.step();
            if let Some(id) = visit.bench.ctx.memory(|m| m.focused()) {
                reached.insert(id.value());
            }
        }
        for control in visit.list.iter().filter(|c| c.enabled) {
            let on_board = ON_BOARDS.iter().any(|(kind, _)| control.name.starts_with(kind));
            if control.focusable && !reached.contains(&control.id) {
                faults.push(format!("{}: Tab misses “{}”", visit.name, control.name));
            }
            if !control.focusable && !on_board {
                faults.push(format!("{}: “{}” takes no keys", visit.name, control.name));
            }
        }
    });
    assert!(faults.is_empty(), "{} faults:\n{}", faults.len(), faults.join("\n"));
}

#[test]
fn tab_leaves_every_board_either_way() {
    for name in ["Outline board", "Round bars", "Stuffed body", "Bend strip"] {
        for modifiers in [Modifiers::NONE, Modifiers::SHIFT] {
            let mut bench = opened(1440.0, 900.0);
            bench.get_by_label(name).focus();
            bench.run();
            let before = bench.ctx.memory(|m| m.focused());
            assert!(before.is_some(), "{name} takes the keyboard");
            bench.key_press_modifiers(modifiers, Key::Tab);
            bench.run();
            let after = bench.ctx.memory(|m| m.focused());
            assert!(after.is_some() && after != before, "{name} keeps it");
        }
    }
}

#[test]
fn brackets_take_knots_and_arrows_move_them_by_the_unit_in_use() {
    let mut bench = opened(1440.0, 900.0);
    bench.get_by_label("Outline board").focus();
    bench.run();
    for _ in 0..3 {
        bench.key_press(Key::CloseBracket);
        bench.run();
    }
    assert_eq!(bench.state().view().knot, Some(2));
    let radius =
        |b: &crate::bench::Bench<'_>| b.state().document().piece().outline.knots[2].radius_mm;
    let was = radius(&bench);
    bench.key_press(Key::ArrowRight);
    bench.run();
    assert!((radius(&bench) - was - 0.5).abs() < 1e-6);
    bench.key_press_modifiers(Modifiers::COMMAND, Key::Comma);
    bench.run();
    bench.get_by_label("Lengths in: inches").click();
    bench.run();
    bench.key_press(Key::Escape);
    bench.run();
    let was = radius(&bench);
    bench.get_by_label("Outline board").focus();
    bench.run();
    bench.key_press(Key::ArrowRight);
    bench.run();
    let step = radius(&bench) - was;
    assert!((step - 25.4 / 32.0).abs() < 2e-3, "{step} mm is no 1/32 in");
}

#[test]
fn single_keys_can_be_switched_off_and_want_alt_then() {
    let mut bench = opened(1440.0, 900.0);
    let pins = |b: &crate::bench::Bench<'_>| b.state().document().piece().pins.len();
    let before = pins(&bench);
    bench.key_press_modifiers(Modifiers::COMMAND, Key::Comma);
    bench.run();
    bench.get_by_label("Single keys").click();
    bench.run();
    bench.key_press(Key::Escape);
    bench.run();
    assert!(bench.state().view().over.is_none(), "Esc puts the card away");
    bench.key_press(Key::Home);
    bench.run();
    bench.key_press(Key::P);
    bench.run();
    assert_eq!(pins(&bench), before, "a letter by itself does nothing");
    bench.key_press_modifiers(Modifiers::ALT, Key::P);
    bench.run();
    assert_eq!(pins(&bench), before + 1);
}

#[test]
fn letters_typed_in_a_field_are_no_shortcuts() {
    let mut bench = opened(1440.0, 900.0);
    bench.key_press(Key::Home);
    bench.run();
    let before = bench.state().document().piece().clone();
    bench.get_by_label("Project name").focus();
    bench.run();
    for key in [Key::P, Key::F, Key::T, Key::Plus, Key::Num4, Key::M] {
        bench.key_press(key);
        bench.run();
    }
    assert_eq!(bench.state().document().piece(), &before);
    assert_eq!(bench.state().view().stage, plumpline::view::Stage::Shape);
}

#[test]
fn the_keys_card_finds_a_command_and_does_it() {
    let mut bench = opened(1440.0, 900.0);
    bench.key_press(Key::F1);
    bench.run();
    bench.event(egui::Event::Text("larger".into()));
    bench.run();
    assert_eq!(bench.state().view().over, Some(Over::Keys("larger".into())));
    assert!(bench.query_by_label("Smaller text").is_none());
    bench.get_by_label("Larger text").click();
    bench.run();
    assert_eq!(bench.state().view().over, None);
    assert_eq!(bench.state().view().prefs.text_percent, 105);
    bench.key_press_modifiers(Modifiers::COMMAND, Key::Num0);
    bench.run();
    assert_eq!(bench.state().view().prefs.text_percent, 100);
}

#[test]
fn enter_and_space_press_what_has_the_keyboard() {
    for key in [Key::Enter, Key::Space] {
        let mut bench = opened(1440.0, 900.0);
        bench.get_by_label("Settings…").focus();
        bench.run();
        bench.key_press(key);
        bench.run();
        assert_eq!(bench.state().view().over, Some(Over::Settings), "{key:?}");
    }
}
