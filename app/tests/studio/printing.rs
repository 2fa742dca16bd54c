//! The Sheet stage as a person uses it.

use egui::Key;
use egui_kittest::kittest::Queryable as _;
use plumpline::view::Stage;

use crate::bench::{Bench, opened};
use crate::hand::click;
use crate::wait::until_settled;

fn at_sheet<'a>() -> Bench<'a> {
    let mut bench = opened(1440.0, 2400.0);
    bench.get_by_label("Sheet").click();
    bench.run();
    assert_eq!(bench.state().view().stage, Stage::Sheet);
    until_settled(&mut bench);
    bench
}

#[test]
fn pages_follow_every_change_and_the_newest_wins() {
    let mut bench = at_sheet();
    let pages = bench.state().printing().pages();
    assert!(pages.iter().all(|page| page.picture.is_some()));
    assert!((pages[0].size_pt[0] - 595.3).abs() < 1.0, "{:?}", pages[0].size_pt);
    click(&mut bench, "Paper: Letter");
    click(&mut bench, "Columns: two");
    assert!(!bench.state().printing().is_current());
    until_settled(&mut bench);
    let page = &bench.state().printing().pages()[0];
    assert!((page.size_pt[0] - 612.0).abs() < 1.0, "{:?}", page.size_pt);
    assert_eq!(bench.state().document().history.undo_steps(), 0, "the project is as it was");
}

#[test]
fn what_the_designer_adds_is_on_the_sheet_and_can_be_taken_back() {
    let mut bench = at_sheet();
    bench.get_by_label("Designer").focus();
    bench.run();
    bench.get_by_label("Designer").type_text("Nora #1 $x$");
    bench.run();
    until_settled(&mut bench);
    let sheet = bench.state().printing().sheet().expect("a sheet");
    assert_eq!(sheet.designer, "Nora #1 $x$");
    assert_eq!(bench.state().document().history.undo_steps(), 1, "typing is one step");
}

#[test]
fn a_round_of_the_text_is_taken_in_hand_on_every_view() {
    let mut bench = at_sheet();
    click(&mut bench, "The sheet as: Text");
    let line = bench.state().words().expect("its words").lines[3].clone();
    let words = format!("{}: {} [{}]", line.heading, line.text, line.count);
    click(&mut bench, &words);
    assert_eq!(bench.state().view().selected, Some(line.first));
    bench.key_press(Key::Escape);
    bench.run();
    click(&mut bench, "Shape");
    assert_eq!(bench.state().view().stage, Stage::Shape);
}
