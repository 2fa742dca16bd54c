//! The Sheet stage as a person uses it.

use std::path::Path;

use egui::{Event, Key, Modifiers, vec2};
use egui_kittest::Harness;
use egui_kittest::kittest::Queryable as _;
use plumpline::view::Stage;
use plumpline::window::Studio;
use plumpline_core::file;
use plumpline_core::project::sheet_design::SheetSection;

use crate::bench::{Bench, opened};
use crate::hand::{click, go_and_click, undo};
use crate::wait::{until, until_settled};

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

/// Answers the question for a file with this path.
fn type_path(bench: &mut Bench<'_>, path: &Path) {
    until(bench, "no question for a file", |b| {
        b.query_by_label("Where is the file?").is_some()
    });
    bench.run();
    bench.key_press_modifiers(Modifiers::COMMAND, Key::A);
    bench.event(Event::Text(path.display().to_string()));
    bench.run();
    bench.key_press(Key::Enter);
    bench.run();
}

#[test]
fn a_designer_arranges_the_sheet_and_says_what_has_changed() {
    let folder = tempfile::tempdir().expect("a folder");
    let at = |name: &str| folder.path().join(name);
    let samples = Path::new(env!("CARGO_MANIFEST_DIR")).join("../sample-projects");
    let mut project = file::load(&samples.join("mushroom.ron")).expect("a sample");
    project.version = "1".into();
    file::save(&project, &at("old.ron")).expect("saved");
    project.yarns[0].name = "Moss".into();
    file::save(&project, &at("new.ron")).expect("saved");
    image::RgbImage::from_pixel(60, 40, image::Rgb([90; 3])).save(at("p.png")).expect("saved");
    let mut bench = Harness::builder()
        .with_size(vec2(1440.0, 2400.0))
        .with_max_steps(60)
        .with_step_dt(0.05)
        .build_eframe(|cc| {
            let studio = Studio::new(cc, Some(at("new.ron")));
            studio.at_home(&cc.egui_ctx, folder.path()).typing_paths(folder.path())
        });
    bench.run();
    let open = |b: &Bench<'_>| b.state().document().path().is_some();
    until(&mut bench, "the project is not open", open);
    click(&mut bench, "Sheet");
    until_settled(&mut bench);

    go_and_click(&mut bench, "Leave out: Abbreviations");
    until_settled(&mut bench);
    let sheet = bench.state().printing().sheet().expect("a sheet");
    assert!(!sheet.shown().contains(&SheetSection::Words));
    undo(&mut bench);
    go_and_click(&mut bench, "Earlier: Cautions");
    let sections = bench.state().document().project().sheet.sections.clone();
    assert_eq!(sections[3], SheetSection::Cautions, "{sections:?}");

    go_and_click(&mut bench, "Add a photograph…");
    type_path(&mut bench, &at("p.png"));
    let added = |b: &Bench<'_>| b.state().document().project().sheet.photos.len() == 1;
    until(&mut bench, "no photograph is added", added);
    until_settled(&mut bench);
    let sheet = bench.state().printing().sheet().expect("a sheet");
    assert_eq!(sheet.photos[0].size, [60, 40]);

    go_and_click(&mut bench, "Compare with a published version…");
    type_path(&mut bench, &at("old.ron"));
    let compared = |b: &Bench<'_>| b.state().printing().changes().is_some();
    until(&mut bench, "nothing is compared", compared);
    bench.run();
    go_and_click(&mut bench, "Put the changes on the sheet");
    until_settled(&mut bench);
    let sheet = bench.state().printing().sheet().expect("a sheet");
    assert_eq!(sheet.changes[0], "Changes since version 1");
    assert!(sheet.changes[1].contains("Moss"), "{:?}", sheet.changes);
}
