//! The words of the pattern, chosen on the sheet and read everywhere.

use egui::{Key, Modifiers};
use egui_kittest::kittest::Queryable as _;

use crate::bench::{Bench, opened};
use crate::wait::until;

#[test]
fn a_house_style_and_terms_reword_the_sheet_and_the_bars() {
    let mut bench = opened(1440.0, 900.0);
    let counts = bench.state().plan().expect("a plan").counts();
    bench.key_press(Key::Num4);
    bench.run();
    bench.get_by_label("Words").click();
    bench.run();
    bench.get_by_label("brackets").click();
    bench.run();
    let reworded = |bench: &Bench<'_>| {
        let sheet = bench.state().printing().sheet();
        sheet.is_some_and(|s| plumpline_core::sheet::text_of(s).contains("6 times"))
    };
    until(&mut bench, "the sheet is not worded anew", reworded);
    bench.get_by_label("English (UK terms)").click();
    bench.run();
    let text = bench.state().words().expect("its words").text_of(1);
    assert!(text.contains("dc"), "{text}");
    assert_eq!(bench.state().plan().expect("a plan").counts(), counts);
    for _ in 0..2 {
        bench.key_press_modifiers(Modifiers::COMMAND, Key::Z);
        bench.run();
    }
    assert!(!bench.state().document().is_changed());
}
