//! The studio in another language: chosen on the settings card, said everywhere at once, and by
//! assistive tools too.

use egui::{Key, Modifiers};
use egui_kittest::kittest::{NodeT as _, Queryable as _};
use plumpline::kit::words::Language;

use crate::bench::{Bench, opened};

fn names(bench: &Bench<'_>) -> Vec<String> {
    let nodes = bench.root().children_recursive();
    nodes.filter_map(|node| node.accesskit_node().label()).collect()
}

#[test]
fn the_settings_card_changes_the_language_at_once_and_back() {
    let mut bench = opened(1440.0, 900.0);
    bench.key_press_modifiers(Modifiers::COMMAND, Key::Comma);
    bench.run();
    let undo_steps = bench.state().document().history.undo_steps();
    bench.get_by_label("Language: Deutsch").click();
    bench.run();
    assert_eq!(bench.state().view().prefs.language, Language::German);
    assert_eq!(bench.state().document().history.undo_steps(), undo_steps, "no step");
    for name in ["Sprache: Deutsch", "Aussehen: hell", "Größen", "Datei"] {
        assert!(bench.query_by_label(name).is_some(), "{name}");
    }
    bench.get_by_label("Sprache: English").click();
    bench.run();
    assert!(
        bench.query_by_label("Sizes").is_some() && bench.query_by_label("Größen").is_none()
    );
}

/// A key that was pressed is answered in words, and the step of undo is called so.
#[test]
fn what_a_key_did_is_said_in_german() {
    let mut bench = opened(1440.0, 900.0);
    bench.state_mut().speak(Language::German);
    for key in [Key::Home, Key::P] {
        bench.key_press(key);
        bench.run();
    }
    let names = names(&bench);
    let said = names.iter().find(|name| name.starts_with("Rückgängig: "));
    assert!(said.is_some_and(|name| name.contains("Runde 1 bei")), "{names:?}");
}

/// The pattern keeps its own language: what is written does not follow the studio's.
#[test]
fn the_pattern_keeps_its_language() {
    let mut bench = opened(1440.0, 900.0);
    let written = |bench: &Bench<'_>| {
        bench.state().words().map(|words| words.lines.clone()).expect("words")
    };
    let before = written(&bench);
    bench.state_mut().speak(Language::German);
    bench.run();
    assert_eq!(written(&bench), before);
}

/// Lengths on the board and on the cards have the decimal comma of German.
#[test]
fn lengths_have_a_decimal_comma_in_german() {
    let mut bench = opened(1440.0, 900.0);
    bench.state_mut().speak(Language::German);
    bench.run();
    let is_length = |name: &String| name.ends_with(" mm") || name.ends_with(" cm");
    let names = names(&bench);
    let lengths: Vec<_> = names.iter().filter(|name| is_length(name)).collect();
    assert!(lengths.iter().any(|name| name.contains(',')), "{names:?}");
    let pointed = |name: &&String| {
        name.as_bytes()
            .windows(3)
            .any(|w| w[0].is_ascii_digit() && w[1] == b'.' && w[2].is_ascii_digit())
    };
    let pointed: Vec<_> = names.iter().filter(pointed).collect();
    assert!(pointed.is_empty(), "{pointed:?}");
}
