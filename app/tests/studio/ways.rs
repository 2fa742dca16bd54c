//! Ways through a day's work: coming back, yarn, presenting, working beside a film, tracing.

use egui::{Event, Key, Modifiers, Shape, vec2};
use egui_kittest::kittest::Queryable as _;
use plumpline::view::{BoardFace, Stage};
use plumpline_core::{PieceId, file};

use crate::bench::{Bench, opened};
use crate::board::picture::{dropped_as, egg};
use crate::hand::{click, drag_control, press, undo};
use crate::homes::at_home;
use crate::wait::{until, until_settled};

/// All words of the last frame, each by itself.
fn drawn(bench: &Bench<'_>) -> Vec<String> {
    fn gather(shape: &Shape, list: &mut Vec<String>) {
        match shape {
            Shape::Text(text) => list.push(text.galley.text().to_owned()),
            Shape::Vec(shapes) => shapes.iter().for_each(|shape| gather(shape, list)),
            _ => {}
        }
    }
    let mut list = Vec::new();
    bench.output().shapes.iter().for_each(|clipped| gather(&clipped.shape, &mut list));
    list
}

fn yarn(bench: &Bench<'_>, index: usize) -> plumpline_core::Yarn {
    bench.state().document().project().yarns[index].clone()
}

/// Types `text` over what stands in the field called `name`.
fn type_over(bench: &mut Bench<'_>, name: &str, text: &str) {
    bench.get_by_label(name).focus();
    bench.run();
    bench.key_press_modifiers(Modifiers::COMMAND, Key::A);
    bench.run();
    bench.event(Event::Text(text.into()));
    bench.run();
}

#[test]
fn a_yarn_has_any_colour_a_brand_line_and_a_ball_and_the_sheet_says_so() {
    let mut bench = opened(1440.0, 900.0);
    bench.get_by_label_contains("Yarn A, ").click();
    bench.run();
    type_over(&mut bench, "Color in hexadecimal", "#12ab9F");
    assert_eq!(yarn(&bench, 0).colour, [0x12, 0xAB, 0x9F]);
    // By key the colour changes by a step, and back.
    bench.get_by_label("Lightness of the color").focus();
    bench.run();
    press(&mut bench, Key::ArrowLeft);
    let darker = yarn(&bench, 0).colour;
    assert!(darker[1] < 0xAB && darker != [0x12, 0xAB, 0x9F], "{darker:?}");
    type_over(&mut bench, "Brand of the yarn", "Hollow Mill, Brook, tide");
    assert_eq!(yarn(&bench, 0).brand, "Hollow Mill, Brook, tide");
    if bench.query_by_label("50 g").is_some() {
        click(&mut bench, "50 g");
    }
    assert_eq!(yarn(&bench, 0).ball_grams, Some(50.0));
    bench.get_by_label("Meters in a ball").click();
    bench.run();
    bench.key_press_modifiers(Modifiers::COMMAND, Key::A);
    bench.event(Event::Text("90".into()));
    bench.run();
    press(&mut bench, Key::Enter);
    assert_eq!(yarn(&bench, 0).metres_per_100g, 180.0);
    press(&mut bench, Key::Escape);
    assert!(drawn(&bench).iter().any(|words| words == "1 ball"), "in the figures");
    let sheet = plumpline_core::sheet::sheet(bench.state().document().project());
    let text = plumpline_core::sheet::text_of(&sheet.expect("a sheet"));
    assert!(text.contains("Hollow Mill, Brook, tide; 180 m"), "{text}");
    // It is kept with the project.
    let project = bench.state().document().project();
    let folder = tempfile::tempdir().expect("a folder");
    let path = folder.path().join("float.ron");
    file::save(project, &path).expect("saved");
    assert_eq!(file::load(&path).expect("read").yarns, project.yarns);
}

#[test]
fn every_yarn_stands_in_the_folded_figures_apart_from_its_neighbours() {
    let mut bench = opened(1024.0, 700.0);
    bench.run();
    let rects: Vec<_> = ["A", "B", "C"]
        .map(|letter| bench.get_by_label_contains(&format!("Yarn {letter}, ")).rect())
        .into();
    for pair in rects.windows(2) {
        assert!(!pair[0].shrink(3.0).intersects(pair[1].shrink(3.0)), "{rects:?}");
    }
    assert!(rects.iter().all(|rect| rect.right() < 1024.0), "{rects:?}");
}

#[test]
fn one_key_fills_the_window_with_two_views_and_numbers_are_hidden_on_demand() {
    let mut bench = opened(1440.0, 900.0);
    let height = |bench: &Bench<'_>| {
        let mm = bench.state().plan().expect("a plan").size_mm.height;
        let text = plumpline_core::Unit::Mm.text(mm);
        drawn(bench).contains(&text)
    };
    assert!(height(&bench));
    press(&mut bench, Key::Home);
    press(&mut bench, Key::F5);
    assert!(bench.state().view().presents());
    assert!(bench.query_by_label("Assembly").is_none(), "the strip of stages is away");
    for view in ["Outline board", "Stuffed body"] {
        assert!(bench.query_by_label(view).is_some(), "{view}");
    }
    assert!(bench.query_by_label("Bend strip").is_none());
    assert!(height(&bench));
    press(&mut bench, Key::H);
    let numbers: Vec<String> = drawn(&bench)
        .into_iter()
        .filter(|words| words.chars().any(|c| c.is_ascii_digit()))
        .collect();
    assert!(numbers.is_empty(), "{numbers:?}");
    // The third takes the place of the one chosen first.
    click(&mut bench, "Present: Bend strip");
    assert!(bench.query_by_label("Bend strip").is_some());
    assert!(bench.query_by_label("Outline board").is_none());
    assert!(drawn(&bench).iter().all(|words| !words.contains("sharpest")));
    press(&mut bench, Key::H);
    assert!(drawn(&bench).iter().any(|words| words.contains("lies flat, +")));
    let held = bench.state().view().selected;
    press(&mut bench, Key::Escape);
    assert!(!bench.state().view().presents());
    assert_eq!(bench.state().view().selected, held, "the round stays in hand");
    assert!(bench.query_by_label("Assembly").is_some());
}

#[test]
fn the_body_grows_to_the_board_and_to_the_window() {
    let mut bench = opened(1440.0, 900.0);
    let area = |bench: &Bench<'_>| {
        let size = bench.get_by_label("Stuffed body").rect().size();
        size.x * size.y
    };
    let in_panel = area(&bench);
    click(&mut bench, "Show the body larger");
    assert_eq!(bench.state().view().face, BoardFace::Body);
    let on_board = area(&bench);
    assert!(on_board > 1.5 * in_panel, "{in_panel} to {on_board}");
    click(&mut bench, "Fill the window with the body");
    let whole = area(&bench);
    assert!(whole > 1.5 * on_board, "{on_board} to {whole}");
    press(&mut bench, Key::Escape);
    click(&mut bench, "Show the outline");
    assert_eq!(area(&bench), in_panel);
}

#[test]
fn a_small_window_works_the_stitches_with_the_same_keys() {
    let mut bench = opened(1440.0, 900.0);
    press(&mut bench, Key::Num7);
    let done = |bench: &Bench<'_>| {
        let making = &bench.state().document().project().making;
        making.of(PieceId::new(0), None, 1).map_or(0, |p| 1000 * p.round + p.done)
    };
    press(&mut bench, Key::Space);
    let one = done(&bench);
    press(&mut bench, Key::B);
    assert!(bench.state().handiwork().small);
    bench.run();
    // Here no second window can be opened, so it lies within the first.
    assert_eq!(bench.query_all_by_label("Stitch").count(), 2, "one in each");
    press(&mut bench, Key::Space);
    assert_eq!(done(&bench), one + 1, "one key is one stitch");
    let small = bench.query_all_by_label("Stitch").last().expect("the small one").rect();
    bench.hover_at(small.center());
    bench.step();
    bench.drag_at(small.center());
    bench.step();
    bench.drop_at(small.center());
    bench.run();
    assert_eq!(done(&bench), one + 2);
    press(&mut bench, Key::B);
    assert_eq!(bench.query_all_by_label("Stitch").count(), 1);
}

#[test]
fn whoever_comes_back_continues_where_the_hook_was() {
    let home = tempfile::tempdir().expect("a folder");
    let path = home.path().join("written.ron");
    let mut project = opened(1440.0, 900.0).state().document().project().clone();
    let last = project.making.begin(PieceId::new(0), None, 1);
    (last.round, last.worked) = (4, vec![6, 12, 15]);
    file::save(&project, &path).expect("saved");
    drop(at_home(home.path(), Some(&path)));
    let mut bench = at_home(home.path(), None);
    let name = format!("Continue {}, round 4", project.pieces[0].name);
    until(&mut bench, "nothing to continue", |b| b.query_by_label(&name).is_some());
    let others = bench.query_all_by_label_contains("Starter ").map(|node| node.rect().top());
    let first = others.fold(f32::INFINITY, f32::min);
    assert!(bench.get_by_label(&name).rect().bottom() <= first, "it comes first");
    assert!(bench.query_by_label("Open written").is_none(), "it is offered once");
    click(&mut bench, &name);
    until(&mut bench, "it never opens", |b| b.state().view().stage == Stage::Make);
    bench.run();
    assert_eq!(bench.state().document().path(), Some(path.as_path()));
    let under = bench.state().handiwork().under();
    let begun = bench.state().handiwork().begun(bench.state().document().project(), under);
    assert_eq!(begun.map(|p| p.round), Some(4));
}

#[test]
fn the_stages_keep_their_places_as_pieces_come() {
    let mut bench = opened(1440.0, 900.0);
    let places = |bench: &Bench<'_>| {
        ["Shape", "Sheet", "Make"]
            .map(|stage| bench.get_by_role_and_label(egui::accesskit::Role::Tab, stage).rect())
    };
    let before = places(&bench);
    for _ in 0..4 {
        bench.get_by_label_contains(", selected").click();
        bench.run();
        click(&mut bench, "Duplicate");
        assert_eq!(places(&bench), before);
    }
}

#[test]
fn a_long_name_ends_in_dots_and_is_whole_while_it_is_typed() {
    let mut bench = opened(1440.0, 900.0);
    let long = "A lantern float for the upper pond";
    type_over(&mut bench, "Project name", long);
    assert!(drawn(&bench).iter().any(|words| words == long));
    press(&mut bench, Key::Escape);
    let elided = |shape: &Shape| match shape {
        Shape::Text(text) => text.galley.text() == long && text.galley.elided,
        _ => false,
    };
    assert!(bench.output().shapes.iter().any(|clipped| elided(&clipped.shape)));
}

#[test]
fn tracing_by_hand_keeps_the_board_still_and_the_fill_out_of_the_way() {
    let folder = tempfile::tempdir().expect("a folder");
    let mut bench = opened(1440.0, 900.0);
    dropped_as(&mut bench, folder.path(), egg);
    until(&mut bench, "no picture came", |b| b.query_by_label("Fill the body").is_some());
    bench.run();
    assert!(drawn(&bench).iter().any(|words| words.starts_with("Scale: lay both ends")));
    click(&mut bench, "Deselect the picture");
    let lens = |bench: &Bench<'_>| bench.state().view().lens.expect("a lens");
    let before = lens(&bench);
    drag_control(&mut bench, "Knot 4", vec2(70.0, 0.0), 6);
    drag_control(&mut bench, "Knot 5", vec2(70.0, 30.0), 6);
    assert_eq!(lens(&bench), before, "nothing moved but the knots");
    click(&mut bench, "Fill the body");
    assert!(bench.state().view().board.bare);
    // Another piece is traced from the same picture.
    bench.get_by_label_contains(", selected").click();
    bench.run();
    click(&mut bench, "Add a ball");
    let name = bench.state().document().project().pieces[0].name.clone();
    click(&mut bench, "Picture");
    click(&mut bench, &format!("The picture of {name}"));
    let pieces = &bench.state().document().project().pieces;
    assert!(pieces[1].picture.is_some());
    assert_eq!(pieces[1].picture, pieces[0].picture);
}

#[test]
fn an_end_that_is_dragged_off_the_axis_opens_and_back_on_it_is_closed() {
    let mut bench = opened(1440.0, 900.0);
    let first = |bench: &Bench<'_>| bench.state().document().piece().outline.knots[0];
    assert!(first(&bench).is_pole());
    drag_control(&mut bench, "Knot 1", vec2(10.0, 0.0), 4);
    assert!(first(&bench).is_pole(), "a hand that shakes opens nothing");
    drag_control(&mut bench, "Knot 1", vec2(60.0, 0.0), 6);
    let open = first(&bench);
    assert!(!open.is_pole() && open.radius_mm > 8.0, "{open:?}");
    undo(&mut bench);
    assert!(first(&bench).is_pole());
}

#[test]
fn where_no_dialog_is_shown_a_file_is_found_folder_by_folder() {
    let folder = tempfile::tempdir().expect("a folder");
    let project = opened(1440.0, 900.0).state().document().project().clone();
    let toys = folder.path().join("toys");
    std::fs::create_dir(&toys).expect("a folder");
    file::save(&project, &toys.join("pond.ron")).expect("saved");
    std::fs::write(toys.join("notes.txt"), "no project").expect("written");
    let home = folder.path().to_owned();
    let mut bench: Bench<'_> = egui_kittest::Harness::builder()
        .with_size(vec2(1440.0, 900.0))
        .with_max_steps(60)
        .with_step_dt(0.05)
        .build_eframe(|cc| plumpline::window::Studio::new(cc, None).typing_paths(&home));
    bench.run();
    bench.key_press_modifiers(Modifiers::COMMAND, Key::O);
    bench.run();
    until(&mut bench, "no path is asked for", |b| {
        b.query_by_label("Where is the file?").is_some()
    });
    bench.key_press_modifiers(Modifiers::COMMAND, Key::A);
    bench.run();
    bench.event(Event::Text(format!("{}/", folder.path().display())));
    bench.run();
    until(&mut bench, "no folder", |b| b.query_by_label("Folder toys").is_some());
    click(&mut bench, "Folder toys");
    until(&mut bench, "no file", |b| b.query_by_label("File pond.ron").is_some());
    assert!(bench.query_by_label("File notes.txt").is_none(), "projects are wanted");
    click(&mut bench, "File pond.ron");
    click(&mut bench, "Open");
    let there = toys.join("pond.ron");
    until(&mut bench, "it never opens", |b| {
        b.state().document().path() == Some(there.as_path())
    });
}

#[test]
fn a_piece_is_hidden_and_shown_and_one_comes_from_the_gallery() {
    let mut bench = opened(1440.0, 900.0);
    let name = bench.state().document().piece().name.clone();
    bench.get_by_label_contains(", selected").click();
    bench.run();
    click(&mut bench, "Add a ball");
    assert!(bench.query_by_label(&format!("Piece {name}")).is_some());
    click(&mut bench, &format!("Piece {name}"));
    click(&mut bench, &format!("Piece {name}, selected"));
    click(&mut bench, "Hide");
    assert!(bench.query_by_label(&format!("Piece {name}")).is_none(), "off the strip");
    assert_eq!(bench.state().document().project().pieces.len(), 2, "still in the project");
    bench.get_by_label_contains(", selected").click();
    bench.run();
    click(&mut bench, &format!("{name}, hidden"));
    assert!(bench.query_by_label(&format!("Piece {name}, selected")).is_some());
    click(&mut bench, &format!("Piece {name}, selected"));
    click(&mut bench, "Add from the gallery");
    click(&mut bench, "Starter Dish");
    click(&mut bench, "Add it to this project");
    let pieces = &bench.state().document().project().pieces;
    assert_eq!(pieces.len(), 3);
    assert_eq!(pieces[1].name, "Dish", "after the one in hand");
}

#[test]
fn a_shape_is_drawn_freehand() {
    let mut bench = opened(1440.0, 900.0);
    bench.key_press_modifiers(Modifiers::COMMAND, Key::N);
    bench.run();
    click(&mut bench, "Drawn freehand");
    let field = bench.get_by_label("Draw the shape here").rect();
    let high = field.height() - 28.0;
    let at = |i: u32| {
        let angle = std::f32::consts::PI * i as f32 / 40.0;
        let out = 1.0 + 0.4 * high * angle.sin();
        field.min + vec2(14.0 + out, 14.0 + 0.5 * high * (1.0 - angle.cos()))
    };
    bench.hover_at(at(0));
    bench.step();
    bench.drag_at(at(0));
    bench.step();
    for i in 1..=40 {
        bench.hover_at(at(i));
        bench.step();
    }
    bench.drop_at(at(40));
    bench.run();
    assert!(bench.query_by_label_contains("rounds of").is_some(), "it can be worked");
    click(&mut bench, "Add it to this project");
    let pieces = &bench.state().document().project().pieces;
    let last = pieces.last().expect("a piece");
    assert_eq!(last.name, "Freehand");
    assert!(last.outline.knots.len() < 14 && last.outline.starts_closed());
    let places = last.outline.profile(200).places();
    let widest = places.iter().map(|place| place.r).fold(0.0, f64::max);
    assert!((widest - 32.0).abs() < 5.0, "{widest}");
}

#[test]
fn the_first_letter_of_a_line_takes_the_keyboard_there() {
    let mut bench = opened(1440.0, 900.0);
    click(&mut bench, "File");
    let letter = |bench: &mut Bench<'_>, letter: &str| {
        bench.event(Event::Text(letter.into()));
        bench.run();
    };
    let focused =
        |bench: &Bench<'_>, words: &str| bench.get_by_label_contains(words).is_focused();
    letter(&mut bench, "o");
    assert!(focused(&bench, "Open…"));
    // Nothing is saved yet, so both can be used; a second press goes on to the next.
    letter(&mut bench, "k");
    assert!(focused(&bench, "Keys…"));
    press(&mut bench, Key::Enter);
    assert!(bench.state().view().over.is_some(), "Enter does what the line says");
}

#[test]
fn the_sizes_of_all_pieces_stand_in_one_table_with_what_each_takes() {
    let mut bench = opened(1440.0, 900.0);
    bench.get_by_label_contains(", selected").click();
    bench.run();
    click(&mut bench, "Add a ball");
    press(&mut bench, Key::Escape);
    press(&mut bench, Key::Num3);
    click(&mut bench, "Add a size");
    click(&mut bench, "Sizes of all pieces");
    until_settled(&mut bench);
    let found = bench.state().sizing().found().expect("an answer");
    let whole = found.whole.as_ref().expect("all pieces");
    let rows: Vec<usize> = whole.iter().map(|piece| piece.rows.len()).collect();
    assert_eq!(rows, [1, 2], "the ball has a size more");
    let words = drawn(&bench);
    for piece in &bench.state().document().project().pieces {
        assert!(words.contains(&piece.name), "{}", piece.name);
    }
    assert_eq!(words.iter().filter(|words| words.starts_with("All, ")).count(), 2);
    // The float is made as it is drawn in either; the larger ball takes more stitches.
    let made = |piece: usize, row: usize| {
        let made = whole[piece].rows[row].made.as_ref().expect("made");
        u64::from(made.needs.stitches)
    };
    for all in [made(0, 0) + made(1, 0), made(0, 0) + made(1, 1)] {
        let words = plumpline_core::length::grouped(all);
        assert!(drawn(&bench).contains(&words), "{words}");
    }
}
