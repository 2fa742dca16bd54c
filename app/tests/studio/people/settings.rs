//! What the settings card settles, and where it shows.

use egui::{Key, Modifiers, Rect};
use egui_kittest::kittest::Queryable as _;
use plumpline_core::Unit;

use crate::bench::{Bench, opened};

fn settle(bench: &mut Bench<'_>, name: &str) {
    bench.key_press_modifiers(Modifiers::COMMAND, Key::Comma);
    bench.run();
    bench.get_by_label(name).click();
    bench.run();
    bench.key_press(Key::Escape);
    bench.run();
}

#[test]
fn every_length_on_screen_follows_the_unit() {
    for (name, unit) in [("cm", Unit::Cm), ("inches", Unit::Inch), ("mm", Unit::Mm)] {
        let mut bench = opened(1440.0, 900.0);
        settle(&mut bench, &format!("Lengths in: {name}"));
        assert_eq!(bench.state().view().prefs.unit, unit);
        let size = bench.state().plan().expect("a plan").size_mm;
        let shown = format!("Height {}", unit.text(size.height));
        assert!(bench.query_by_label(&shown).is_some(), "{shown}");
        let value = bench.get_by_label("over").value().unwrap_or_default();
        assert!(value.ends_with(unit.symbol()), "{value}");
        assert_eq!(bench.state().document().history.undo_steps(), 0, "no step");
    }
}

#[test]
fn a_bare_number_typed_is_in_the_unit_and_another_may_be_written() {
    let mut bench = opened(1440.0, 900.0);
    settle(&mut bench, "Lengths in: cm");
    let height = |b: &Bench<'_>| b.state().plan().expect("a plan").size_mm.height;
    for (typed, mm) in [("12", 120.0), ("110 mm", 110.0), ("5 in", 127.0)] {
        bench.get_by_label_contains("Height ").click();
        bench.run();
        bench.key_press_modifiers(Modifiers::COMMAND, Key::A);
        bench.event(egui::Event::Text(typed.into()));
        bench.run();
        bench.key_press(Key::Enter);
        bench.run();
        let got = height(&bench);
        assert!((got - mm).abs() < 3.0, "{typed} came to {got} mm");
    }
}

#[test]
fn walking_through_fields_under_inches_changes_nothing() {
    let mut bench = opened(1440.0, 900.0);
    settle(&mut bench, "Lengths in: inches");
    let before = bench.state().document().project().clone();
    for _ in 0..60 {
        bench.key_press(Key::Tab);
        bench.run();
    }
    assert_eq!(bench.state().document().project(), &before);
}

#[test]
fn the_board_changes_sides_with_the_bars() {
    let mut bench = opened(1440.0, 900.0);
    let place = |b: &Bench<'_>, name: &str| -> Rect { b.get_by_label(name).rect() };
    let usual = [place(&bench, "Outline board"), place(&bench, "Round bars")];
    assert!(usual[0].right() < usual[1].left());
    settle(&mut bench, "Side of the board: right");
    let now = [place(&bench, "Outline board"), place(&bench, "Round bars")];
    assert!(now[0].left() > now[1].right(), "{now:?}");
    assert_eq!(now[0].size(), usual[0].size());
}

#[test]
fn terms_are_a_step_of_the_project_and_the_rest_is_none() {
    let mut bench = opened(1440.0, 900.0);
    settle(&mut bench, "Theme: dark");
    settle(&mut bench, "Reduce motion");
    assert!(!bench.state().document().is_changed());
    settle(&mut bench, "Crochet terms: UK");
    assert_eq!(bench.state().document().project().wording.lexicon, "en-uk");
    assert_eq!(bench.state().document().history.undo_steps(), 1);
}
