//! The studio as three people use it, each from first to last.

use std::path::Path;

use egui::{Key, Modifiers, vec2};
use egui_kittest::Harness;
use egui_kittest::kittest::Queryable as _;
use plumpline::window::Studio;
use plumpline_core::bend::BendWord;
use plumpline_core::{file, plan, sheet};

use crate::hand::{click, drag_control};
use crate::wait::until;

type Bench<'a> = Harness<'a, Studio>;

/// The studio in a folder of its own, as on a desktop without file dialogs.
fn opened<'a>(home: &Path) -> Bench<'a> {
    let mut bench = Harness::builder()
        .with_size(vec2(1440.0, 900.0))
        .with_max_steps(60)
        .with_step_dt(0.05)
        .build_eframe(|cc| {
            Studio::new(cc, None).at_home(&cc.egui_ctx, home).typing_paths(home)
        });
    bench.run();
    bench
}

fn type_over(bench: &mut Bench<'_>, field: &str, text: &str) {
    bench.get_by_label(field).click();
    bench.run();
    bench.key_press_modifiers(Modifiers::COMMAND, Key::A);
    bench.event(egui::Event::Text(text.into()));
    bench.run();
    bench.key_press(Key::Enter);
    bench.run();
}

/// Saves by the keyboard under `path`, as a desktop without dialogs asks for it.
fn save_as(bench: &mut Bench<'_>, path: &Path) {
    bench.key_press_modifiers(Modifiers::COMMAND | Modifiers::SHIFT, Key::S);
    wait_for(bench, "the question", asks_for_a_path);
    bench.run();
    bench.key_press_modifiers(Modifiers::COMMAND, Key::A);
    bench.event(egui::Event::Text(path.display().to_string()));
    bench.run();
    bench.key_press(Key::Enter);
    wait_for(bench, "the file", |b| b.state().document().path() == Some(path));
    assert!(!bench.state().document().is_changed());
}

/// Whether it asks for the path of a file to save.
fn asks_for_a_path(bench: &Bench<'_>) -> bool {
    bench.query_by_label("Save as").is_some()
}

/// Steps until `there` holds; what waits for another thread takes its own time.
fn wait_for(bench: &mut Bench<'_>, what: &str, there: impl Fn(&Bench<'_>) -> bool) {
    bench.step();
    until(bench, &format!("{what} did not come"), there);
}

#[test]
fn the_designer_goes_from_a_sketch_to_a_saved_pattern() {
    let home = tempfile::tempdir().expect("a folder");
    let mut bench = opened(home.path());

    // An egg of a size to begin from, under a name.
    bench.key_press_modifiers(Modifiers::COMMAND, Key::N);
    bench.run();
    click(&mut bench, "Starter Egg");
    type_over(&mut bench, "Height", "9 cm");
    click(&mut bench, "Create");
    type_over(&mut bench, "Project name", "Harbour egg");
    assert_eq!(bench.state().document().project().title, "Harbour egg");

    // The waist comes in under the hand, the height is typed.
    let counts = bench.state().plan().expect("a plan").counts();
    drag_control(&mut bench, "Knot 3", vec2(-18.0, 0.0), 6);
    assert_ne!(bench.state().plan().expect("a plan").counts(), counts);
    bench.get_by_label_contains("Height ").click();
    bench.run();
    bench.get_by_label("New value: Height").type_text("11 cm");
    bench.run();
    bench.key_press(Key::Enter);
    bench.run();
    let height = bench.state().plan().expect("a plan").size_mm.height;
    assert!((height - 110.0).abs() < 3.0, "{height}");

    // A round is held, and its line copied for a friend.
    drag_control(&mut bench, "End of round 9", vec2(-12.0, 0.0), 6);
    let held = bench.state().document().piece().pins[&9];
    let shown = bench.state().plan().expect("a plan");
    assert_eq!(shown.rounds[8].count, held);
    let words = bench.state().words().expect("its words").text_of(9).to_owned();
    bench.event(egui::Event::Copy);
    bench.step();
    let copied = bench.output().platform_output.commands.iter().find_map(|c| match c {
        egui::OutputCommand::CopyText(text) => Some(text.clone()),
        _ => None,
    });
    let copied = copied.expect("a copied line");
    assert!(copied.contains(&words) && copied.contains(&format!("[{held}]")), "{copied}");

    // Saved, closed and opened again: the same piece, and the command line's own pattern.
    let path = home.path().join("egg.ron");
    save_as(&mut bench, &path);
    let project = bench.state().document().project().clone();
    let shown = bench.state().plan().expect("a plan").clone();
    let words = bench.state().words().expect("its words").clone();
    drop(bench);
    let loaded = file::load(&path).expect("it opens");
    assert_eq!(loaded, project);
    assert_eq!(plan(&loaded.pieces[0]).expect("a plan").counts(), shown.counts());
    let text = sheet::text(&loaded).expect("a sheet");
    // Lines longer than the page are broken at spaces.
    let words_of = |text: &str| text.split_whitespace().collect::<Vec<_>>().join(" ");
    let unbroken = words_of(&text);
    for line in &words.lines {
        let line = words_of(&line.text);
        assert!(unbroken.contains(&line), "{line} is not in the pattern");
    }
    assert!(text.contains("Harbour egg"));
}

#[test]
fn the_teacher_drags_and_reads_the_bend() {
    let home = tempfile::tempdir().expect("a folder");
    let mut bench = opened(home.path());
    bench.key_press_modifiers(Modifiers::COMMAND, Key::N);
    bench.run();
    click(&mut bench, "Starter Ball");
    click(&mut bench, "Create");

    // A ball cups: after its first rounds each gains fewer stitches than lie flat.
    let said = |bench: &Bench<'_>| {
        let plan = bench.state().plan().expect("a plan");
        plan.bends.iter().map(|b| (b.gained, b.word)).collect::<Vec<_>>()
    };
    let ball = said(&bench);
    let flat = bench.state().plan().expect("a plan").flat_increase;
    assert!((5.0..8.0).contains(&flat), "about six stitches a round lie flat: {flat}");
    let shoulder = |said: &[(i32, BendWord)]| said[..8].iter().map(|b| b.0).sum::<i32>();
    assert!(f64::from(shoulder(&ball)) < 8.0 * flat - 3.0, "{ball:?}");
    assert!(ball[4..].iter().any(|b| b.1 == BendWord::Cup), "{ball:?}");

    // The shoulder goes out and up, flat as a plate: those rounds gain what lies flat.
    drag_control(&mut bench, "Knot 2", vec2(60.0, -30.0), 6);
    let wider = said(&bench);
    assert!(shoulder(&wider) > shoulder(&ball), "the strip follows the hand: {wider:?}");

    // Pointing at a column of the strip lights that round on the bars and the body.
    let strip = bench.get_by_label("Bend strip").rect();
    bench.hover_at(strip.left_center() + vec2(0.35 * strip.width(), 0.0));
    bench.run();
    let round = bench.state().view().hovered.expect("a round");
    let plan = bench.state().plan().expect("a plan");
    let count = plan.rounds[round as usize - 1].count;
    let row = bench.get_by_label_contains(&format!("Round {round}: ")).rect();
    assert!(row.height() > 0.0 && count > 0);

    // One key takes the lesson back to the ball.
    bench.event(egui::Event::PointerGone);
    bench.key_press_modifiers(Modifiers::COMMAND, Key::Z);
    bench.run();
    assert_eq!(said(&bench), ball);
}

/// A cork for a jar, in a notation of its own.
const CORK: &str = "Cork\n\
    R1: 6 sc in magic ring (6)\n\
    R2: inc x 6 (12)\n\
    R3: (sc 1, inc) x 6 (18)\n\
    R4: (sc 2, inc) x 6 (24)\n\
    R5-9: sc in each st around (24)\n\
    R10: (sc 2, dec) x 6 (18)\n\
    Stuff now.\n\
    R11: (sc 1, dec) x 6 (12)\n\
    R12: dec x 6 (6)\n\
    Fasten off.\n";

#[test]
fn the_maker_reads_a_pattern_resizes_it_and_prints() {
    let home = tempfile::tempdir().expect("a folder");
    let mut bench = opened(home.path());
    click(&mut bench, "Proofread");
    bench.get_by_label("Pattern text").focus();
    bench.run();
    bench.event(egui::Event::Paste(CORK.into()));
    wait_for(&mut bench, "the reading", |b| {
        b.state().proofreading().checked().is_some_and(|c| c.summary.rounds == 12)
    });
    let found = bench.state().proofreading().checked().expect("checked").findings.len();
    assert_eq!(found, 0, "it adds up");
    bench.run();
    click(&mut bench, "Make a piece of it");
    let counts = bench.state().plan().expect("a plan").counts();
    assert_eq!(counts, [6, 12, 18, 24, 24, 24, 24, 24, 24, 18, 12, 6]);

    // Twice as high: planned anew from its shape, not multiplied.
    let was = bench.state().plan().expect("a plan").size_mm;
    click(&mut bench, "Sizes");
    click(&mut bench, "Add a size");
    click(&mut bench, "Size 1 sized by scale factor");
    click(&mut bench, "height");
    let target = format!("{:.0} mm", 2.0 * was.height);
    type_over(&mut bench, "Height of size 1", &target);
    wait_for(&mut bench, "the size", |b| b.state().sizing().is_current());
    let rows = &bench.state().sizing().found().expect("rows").rows;
    let made = rows[1].made.as_ref().expect("it can be made");
    assert!(
        (made.height_mm / was.height - 2.0).abs() < 0.06,
        "{} of {}",
        made.height_mm,
        was.height
    );
    assert!(made.rounds > 20, "{} rounds", made.rounds);
    bench.run();
    click(&mut bench, "More about size 1");
    click(&mut bench, "Make the piece this size");
    let now = bench.state().plan().expect("a plan").size_mm;
    assert!((now.height / was.height - 2.0).abs() < 0.06, "{was:?} became {now:?}");

    // The sheet as pages, then as a file.
    bench.key_press(Key::Escape);
    bench.run();
    click(&mut bench, "Sheet");
    wait_for(&mut bench, "the pages", |b| b.state().printing().is_current());
    assert!(!bench.state().printing().pages().is_empty());
    bench.run();
    click(&mut bench, "PDF…");
    wait_for(&mut bench, "the question", asks_for_a_path);
    bench.run();
    let path = home.path().join("cork.pdf");
    bench.key_press_modifiers(Modifiers::COMMAND, Key::A);
    bench.event(egui::Event::Text(path.display().to_string()));
    bench.run();
    bench.key_press(Key::Enter);
    wait_for(&mut bench, "the file", |_| path.exists());
    let file = std::fs::read(&path).expect("it is there");
    assert!(file.starts_with(b"%PDF-"), "it is a PDF");
}
