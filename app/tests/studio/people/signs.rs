//! What a colour says is said in words too.

use egui::Key;
use egui_kittest::kittest::Queryable as _;

use crate::bench::opened;

#[test]
fn a_round_tells_its_yarn_and_its_pin() {
    let mut bench = opened(1440.0, 900.0);
    let first = |b: &crate::bench::Bench<'_>, part: &str| {
        let rows = b.query_all_by_label_contains("Round 1: ");
        rows.filter_map(|r| egui_kittest::kittest::NodeT::accesskit_node(&r).label())
            .any(|label| label.contains(part))
    };
    assert!(first(&bench, "yarn A") && !first(&bench, "pinned"));
    bench.key_press(Key::Home);
    bench.run();
    bench.key_press(Key::P);
    bench.run();
    assert!(first(&bench, "pinned"));
}

#[test]
fn how_the_project_is_saved_is_told_in_words() {
    let mut bench = opened(1440.0, 900.0);
    assert!(bench.query_by_label("not saved yet").is_some());
    bench.key_press(Key::Home);
    bench.run();
    bench.key_press(Key::P);
    bench.run();
    assert!(bench.query_by_label("changes not saved").is_some());
}
