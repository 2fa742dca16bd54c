//! Whatever is typed into a field, with whatever card or menu open, is typed and does nothing
//! else: letters by themselves are keys of the bench only where nobody types.

use egui::accesskit::Role;
use egui::{Event, Key};

use super::controls::focus;
use super::places;

/// Each of these is a key of the bench: half double, pin, loops, plain, magnet, corner.
const LETTERS: &str = "tplfmk";

#[test]
fn no_letter_typed_into_any_field_acts_as_a_key() {
    let (mut fields, mut faults) = (0, Vec::new());
    places::each(1440.0, 900.0, |mut visit| {
        let typed = |role| matches!(role, Role::TextInput | Role::MultilineTextInput);
        let list: Vec<_> = visit.list.iter().filter(|c| typed(c.role)).cloned().collect();
        for control in list {
            if !focus(&visit.bench, &control) {
                continue;
            }
            visit.bench.step();
            visit.bench.step();
            let what = |bench: &crate::bench::Bench<'_>| {
                let piece = bench.state().document().piece();
                let corners: Vec<bool> =
                    piece.outline.knots.iter().map(|knot| knot.corner).collect();
                let kept = (piece.pins.clone(), piece.loops.clone(), corners);
                (kept, bench.state().view().board.magnet, bench.state().view().stage)
            };
            let before = what(&visit.bench);
            for letter in LETTERS.chars() {
                let key = Key::from_name(&letter.to_uppercase().to_string()).expect("a key");
                visit.bench.key_press(key);
                visit.bench.event(Event::Text(letter.to_string()));
                visit.bench.step();
            }
            fields += 1;
            if what(&visit.bench) != before {
                faults.push(format!("{}: “{}”", visit.name, control.name));
            }
        }
    });
    assert!(fields > 20, "{fields} fields only: places did not open");
    assert!(faults.is_empty(), "letters acted as keys:\n{}", faults.join("\n"));
}
