//! The picture that is traced.

use egui::vec2;
use egui_kittest::kittest::Queryable as _;

use super::hand::*;
use crate::wait::{until, until_at_rest};

/// A file let go over the window.
#[derive(Debug)]
struct Dropped(std::path::PathBuf);

impl egui::DroppedFile for Dropped {
    fn path(&self) -> &std::path::Path {
        &self.0
    }

    fn bytes(&self) -> Result<Vec<u8>, String> {
        std::fs::read(&self.0).map_err(|e| e.to_string())
    }
}

/// Writes a picture and drops it on the window.
fn dropped(bench: &mut Bench<'_>, folder: &std::path::Path) -> std::path::PathBuf {
    dropped_as(bench, folder, |_, _| [180, 200, 90])
}

/// The same of a picture with these colours, 40 × 80 pixels.
pub(crate) fn dropped_as(
    bench: &mut Bench<'_>,
    folder: &std::path::Path,
    colour: impl Fn(u32, u32) -> [u8; 3],
) -> std::path::PathBuf {
    dropped_of_size(bench, folder, (40, 80), colour)
}

/// The same, so many pixels wide and high.
pub(crate) fn dropped_of_size(
    bench: &mut Bench<'_>,
    folder: &std::path::Path,
    (width, height): (u32, u32),
    colour: impl Fn(u32, u32) -> [u8; 3],
) -> std::path::PathBuf {
    let path = folder.join("pear.png");
    let picture = image::RgbImage::from_fn(width, height, |x, y| image::Rgb(colour(x, y)));
    picture.save(&path).expect("a picture");
    let_go_over_the_window(bench, &path);
    wait(bench, |bench| bench.state().document().piece().picture.is_some());
    path
}

/// Drops a file on the window.
pub(crate) fn let_go_over_the_window(bench: &mut Bench<'_>, path: &std::path::Path) {
    bench.input_mut().dropped_files.push(std::sync::Arc::new(Dropped(path.to_owned())));
    bench.step();
    bench.input_mut().dropped_files.clear();
}

/// Steps until something that is done on another thread has come about.
fn wait(bench: &mut Bench<'_>, done: impl Fn(&Bench<'_>) -> bool) {
    until(bench, "it never came about", done);
    bench.run();
}

#[test]
fn a_picture_is_dropped_moved_scaled_and_let_go() {
    let folder = tempfile::tempdir().expect("a folder");
    let mut bench = gourd(folder.path());
    dropped(&mut bench, folder.path());
    assert_eq!(steps(&bench), 1);
    wait(&mut bench, |bench| bench.query_by_label("Known length, end 1").is_some());
    let picture =
        |bench: &Bench<'_>| bench.state().document().piece().picture.clone().expect("one");
    let first = picture(&bench);
    assert!((first.width_mm - 65.0).abs() < 1.5, "as high as the outline: {first:?}");
    // The hand moves the picture, not the knots.
    let (was, at) = (knots(&bench), corner(&bench) + vec2(150.0, 150.0));
    drag(&mut bench, at, vec2(22.0, -11.0));
    let moved = picture(&bench);
    let points = f64::from(scale(&bench));
    assert!((moved.across_mm - first.across_mm - 22.0 / points).abs() < 0.1);
    assert!((moved.along_mm - first.along_mm + 11.0 / points).abs() < 0.1);
    assert_eq!((knots(&bench), steps(&bench)), (was, 2));
    let end = place(&bench, "Known length, end 1");
    drag(&mut bench, end, vec2(0.0, 40.0));
    assert_eq!(steps(&bench), 3);
    let length = picture(&bench).ruler_mm(2.0);
    assert!(length < moved.ruler_mm(2.0) - 5.0);
    type_over(&mut bench, "Known length 9", "New known length", "8 cm");
    assert!((picture(&bench).ruler_mm(2.0) - 80.0).abs() < 1e-6);
    assert_eq!(steps(&bench), 4);
    click(&mut bench, "Lock the picture");
    let locked = picture(&bench);
    drag(&mut bench, at, vec2(30.0, 30.0));
    assert_eq!(picture(&bench), locked);
    click(&mut bench, "Hide the picture");
    assert!(picture(&bench).hidden);
    click(&mut bench, "Remove the picture");
    assert!(bench.state().document().piece().picture.is_none());
    undo(&mut bench);
    assert!(picture(&bench).hidden);
    // The picture is read again on a thread of its own, which wakes the window when it is done.
    until_at_rest(&mut bench);
}

#[test]
fn a_missing_picture_is_one_line_and_nothing_is_lost() {
    let folder = tempfile::tempdir().expect("a folder");
    let mut bench = gourd(folder.path());
    let path = dropped(&mut bench, folder.path());
    let project = bench.state().document().project().clone();
    let file = folder.path().join("traced.ron");
    plumpline_core::file::save(&project, &file).expect("saved");
    std::fs::remove_file(&path).expect("removed");
    let mut bench = from_file(&file);
    wait(&mut bench, |bench| bench.state().picture().error().is_some());
    let error = bench.state().picture().error().expect("a line").to_owned();
    assert!(error.contains("pear.png") && error.lines().count() == 1, "{error}");
    assert_eq!(bench.state().document().project(), &project);
    assert!(!bench.state().document().is_changed());
    assert!(bench.state().plan().is_some());
}

#[test]
fn what_is_no_picture_changes_nothing() {
    let folder = tempfile::tempdir().expect("a folder");
    let mut bench = bench();
    let path = folder.path().join("pear.png");
    std::fs::write(&path, "not a picture").expect("written");
    bench.input_mut().dropped_files.push(std::sync::Arc::new(Dropped(path)));
    bench.step();
    wait(&mut bench, |bench| bench.state().view().notice.is_some());
    let notice = bench.state().view().notice.clone().expect("a line");
    assert!(notice.wrong && notice.text.contains("pear.png"), "{}", notice.text);
    assert!(bench.state().document().piece().picture.is_none());
    assert_eq!(steps(&bench), 0);
}

/// An egg 60 pixels high and 24 wide in the middle of the picture.
pub(crate) fn egg(x: u32, y: u32) -> [u8; 3] {
    let (x, y) = ((f64::from(x) + 0.5 - 20.0) / 12.0, (f64::from(y) + 0.5 - 40.0) / 30.0);
    if x.hypot(y) < 1.0 { [120, 60, 30] } else { [225, 225, 220] }
}

/// Opens the card and waits for what tracing comes to.
pub(crate) fn traced(bench: &mut Bench<'_>) {
    wait(bench, |bench| bench.query_by_label("Trace the picture").is_some());
    click(bench, "Trace the picture");
    wait(bench, |bench| bench.state().outlining().found().is_some());
}

#[test]
fn a_traced_outline_is_looked_at_before_it_is_taken() {
    let folder = tempfile::tempdir().expect("a folder");
    let mut bench = gourd(folder.path());
    dropped_as(&mut bench, folder.path(), egg);
    let before = bench.state().document().project().clone();
    let stood = steps(&bench);
    traced(&mut bench);
    assert_eq!(bench.state().document().project(), &before, "nothing is taken unasked");
    assert!(bench.query_by_label_contains("Both sides share ").is_some());
    let wide = before.pieces[0].picture.as_ref().expect("the picture").width_mm;
    click(&mut bench, "Use the outline");
    assert_eq!(steps(&bench), stood + 1, "outline and picture are one step");
    let profile = bench.state().document().piece().outline.profile(400);
    let mm = wide / 40.0;
    assert!((profile.height_mm() - 60.0 * mm).abs() < 1.5 * mm, "{}", profile.height_mm());
    assert!((2.0 * profile.widest_mm() - 24.0 * mm).abs() < 1.5 * mm);
    // The picture lies under it as it was traced.
    let picture = bench.state().document().piece().picture.clone().expect("the picture");
    let middle = picture.place((0.5, 0.5), 2.0);
    assert!(middle.0.abs() < mm && (middle.1 - 30.0 * mm).abs() < mm, "{middle:?}");
    assert!(bench.state().view().over.is_none());
    undo(&mut bench);
    assert_eq!(bench.state().document().project(), &before);
    until_at_rest(&mut bench);
}

#[test]
fn what_cannot_be_traced_is_told_on_the_card_and_nothing_can_be_taken() {
    let folder = tempfile::tempdir().expect("a folder");
    let mut bench = gourd(folder.path());
    dropped(&mut bench, folder.path());
    let before = bench.state().document().project().clone();
    traced(&mut bench);
    let found = bench.state().outlining().found();
    let why = found.and_then(Result::err).expect("one colour").to_owned();
    assert!(why.contains("nothing in it stands out") && why.lines().count() == 1, "{why}");
    assert!(bench.query_by_label_contains("nothing in it stands out").is_some());
    click(&mut bench, "Use the outline");
    assert_eq!(bench.state().document().project(), &before);
    click(&mut bench, "Close the card");
    assert!(bench.state().outlining().found().is_none());
    until_at_rest(&mut bench);
}
