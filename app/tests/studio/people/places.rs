//! Every place of the studio, and how a person comes there.

use std::path::Path;

use egui::{Key, Modifiers, vec2};
use egui_kittest::kittest::Queryable as _;
use plumpline_core::calibrate::{Entry, GaugeBook};
use plumpline_core::{Firmness, Gauge};

use super::controls::{self, Control};
use crate::bench::{Bench, opened};
use crate::board::picture;
use crate::hand::{go_and_click as click, press};
use crate::homes::at_home;
use crate::wait::{until, until_settled, until_true};

/// A stage, a card, a menu or a strip.
pub(crate) struct Place {
    pub(crate) name: &'static str,
    /// What it is drawn over: then only what is new there is looked at.
    pub(crate) over: bool,
    open: fn(&mut Bench<'_>),
}

/// A text with a finding: round 3 makes 18, not 19.
const BROKEN: &str = "Rnd 1: 6 sc in magic ring (6)\nRnd 2: inc x 6 (12)\n\
    Rnd 3: (sc 1, inc) x 6 (19)\n";

fn click_part(bench: &mut Bench<'_>, part: &str) {
    bench.get_by_label_contains(part).focus();
    bench.run();
    bench.get_by_label_contains(part).click();
    bench.run();
}

fn ctrl(bench: &mut Bench<'_>, key: Key) {
    bench.key_press_modifiers(Modifiers::COMMAND, key);
    bench.run();
}

/// Puts the card to one of its beads, in the column or behind its button.
fn card(bench: &mut Bench<'_>, bead: &str) {
    if bench.query_by_label("Checks, rules, simplicity").is_some() {
        click(bench, "Checks, rules, simplicity");
    }
    bench.get_by_role_and_label(egui::accesskit::Role::Tab, bead).focus();
    bench.run();
    bench.get_by_role_and_label(egui::accesskit::Role::Tab, bead).click();
    bench.run();
    if bead == "Simplicity" {
        until(bench, "no answers came", |b| b.state().trade().is_current());
    }
    bench.run();
}

/// Comes to the Assembly stage with a body.
fn assembly(bench: &mut Bench<'_>) {
    press(bench, Key::Num2);
    click(bench, "Put the pieces together");
    until_settled(bench);
}

/// The same with eyes on it, in hand.
fn eyes_on_a_body(bench: &mut Bench<'_>) {
    assembly(bench);
    click(bench, "Add a part");
    click(bench, "Eyes");
    until_settled(bench);
}

/// Comes to the first question of the lesson.
fn lesson(bench: &mut Bench<'_>) {
    press(bench, Key::Num5);
    until_settled(bench);
}

/// Comes to the Make stage with two sizes to make.
fn sizes_to_make(bench: &mut Bench<'_>) {
    press(bench, Key::Num3);
    click(bench, "Add a size");
    click(bench, "Add a size");
    press(bench, Key::Escape); // The keyboard leaves the button.
    press(bench, Key::Num7);
}

/// Reads a text with a finding, until the control whose name begins so is there.
fn proofread(bench: &mut Bench<'_>, begins: &str) {
    press(bench, Key::Num6);
    bench.get_by_label("Pattern text").focus();
    bench.run();
    bench.event(egui::Event::Paste(BROKEN.into()));
    bench.run();
    let there = |bench: &Bench<'_>| bench.query_by_label_contains(begins).is_some();
    until(bench, "nothing was found", there);
}

const fn base(name: &'static str, open: fn(&mut Bench<'_>)) -> Place {
    Place { name, over: false, open }
}

const fn over(name: &'static str, open: fn(&mut Bench<'_>)) -> Place {
    Place { name, over: true, open }
}

/// All places that are reached from the bench as it opens.
pub(crate) const PLACES: [Place; 55] = [
    base("shape", |_| {}),
    base("shape, a round in hand", |b| press(b, Key::Home)),
    base("shape, a knot in hand", |b| {
        press(b, Key::CloseBracket);
        press(b, Key::CloseBracket);
        press(b, Key::CloseBracket);
    }),
    base("shape, a height being typed", |b| click_part(b, "Height ")),
    base("shape, the body on the board", |b| {
        if b.query_by_label("Show the body").is_some() {
            click(b, "Show the body");
        }
    }),
    over("what holds a knot", |b| {
        press(b, Key::CloseBracket);
        press(b, Key::CloseBracket);
        click(b, "What holds this knot");
    }),
    over("file menu", |b| click(b, "File")),
    over("steps", |b| {
        press(b, Key::Home);
        press(b, Key::P);
        click(b, "Steps");
    }),
    over("piece card", |b| click_part(b, ", selected")),
    over("more about the cloth", |b| click(b, "More about the fabric")),
    over("round card", |b| {
        press(b, Key::Home);
        press(b, Key::ArrowDown);
        click(b, "Choices for this round");
    }),
    over("change of yarn", |b| {
        press(b, Key::Home);
        click(b, "Change yarn");
    }),
    over("yarn card", |b| {
        click_part(b, "Yarn A, ");
    }),
    over("board menu", |b| {
        b.get_by_label("Outline board").focus();
        b.run();
        b.get_by_label("Outline board").click_secondary();
        b.run();
    }),
    base("notes", |b| card(b, "Checks")),
    base("rules", |b| card(b, "Rules")),
    base("simplicity", |b| card(b, "Simplicity")),
    base("assembly, nothing yet", |b| {
        press(b, Key::Num2);
        until_settled(b);
    }),
    base("assembly, a part in hand", eyes_on_a_body),
    base("assembly, a loop in hand", |b| {
        assembly(b);
        click(b, "Cord or wire");
        click(b, "Loop or ring to hang by");
        until_settled(b);
    }),
    base("assembly, cords that meet", |b| {
        assembly(b);
        click(b, "Cord or wire");
        click(b, "Cords from 2 or 3 places");
        until_settled(b);
    }),
    base("assembly, embroidery", |b| {
        assembly(b);
        click_part(b, "Part Float");
        click(b, "French knots");
        click(b, "Add the place");
        until_settled(b);
    }),
    over("parts to add", |b| {
        assembly(b);
        click(b, "Add a part");
    }),
    over("carriers to choose from", |b| {
        eyes_on_a_body(b);
        click_part(b, "Sits on: ");
    }),
    base("sizes", |b| {
        press(b, Key::Num3);
        click(b, "Add a size");
        until_settled(b);
    }),
    base("another yarn", |b| {
        press(b, Key::Num3);
        click(b, "Beside the sizes: Another yarn");
        until_settled(b);
    }),
    base("sample", |b| {
        press(b, Key::Num3);
        click(b, "Beside the sizes: Sample");
        until_settled(b);
    }),
    base("a toy to match", |b| {
        press(b, Key::Num3);
        click(b, "Beside the sizes: Match");
        click(b, "Toy measured: around");
        click(b, "Toy measured at: round");
        click(b, "Toy measures");
        ctrl(b, Key::A);
        b.event(egui::Event::Text("25 cm".into()));
        b.run();
        press(b, Key::Enter);
        until_settled(b);
        assert!(b.query_by_label("Add as a size").is_some(), "nothing was matched");
    }),
    base("a toy that cannot be measured so", |b| {
        press(b, Key::Num3);
        click(b, "Beside the sizes: Match");
        click(b, "Toy measures");
        ctrl(b, Key::A);
        b.event(egui::Event::Text("19 m".into()));
        b.run();
        press(b, Key::Enter);
        until_settled(b);
    }),
    over("more about a size", |b| {
        press(b, Key::Num3);
        click(b, "Add a size");
        until_settled(b);
        click(b, "More about size 1");
    }),
    base("sheet", |b| {
        press(b, Key::Num4);
        until_settled(b);
    }),
    base("sheet as text", |b| {
        press(b, Key::Num4);
        click(b, "The sheet as: Text");
        until_settled(b);
    }),
    base("lesson, a question", lesson),
    base("lesson, answered", |b| {
        lesson(b);
        click(b, "it ruffles");
        until_settled(b);
    }),
    base("lesson, a number asked for", |b| {
        lesson(b);
        press(b, Key::PageDown);
        until_settled(b);
    }),
    base("lesson, the piece itself", |b| {
        lesson(b);
        (0..8).for_each(|_| press(b, Key::PageDown));
        until_settled(b);
        click(b, "Chart: Angles");
    }),
    base("lesson, presented", |b| {
        lesson(b);
        click(b, "it cups");
        press(b, Key::F5);
        until_settled(b);
    }),
    over("lesson, to print", |b| {
        lesson(b);
        click(b, "Print or save the lesson");
    }),
    base("make", |b| press(b, Key::Num7)),
    base("make, in a size", |b| {
        sizes_to_make(b);
        press(b, Key::S);
        until_settled(b);
        press(b, Key::N);
    }),
    over("sizes to make", |b| {
        sizes_to_make(b);
        click_part(b, "Size being made: ");
    }),
    base("sheet, copied", |b| {
        press(b, Key::Num4);
        click(b, "Copy");
    }),
    over("words", |b| {
        press(b, Key::Num4);
        click(b, "Words");
    }),
    base("proofread, empty", |b| press(b, Key::Num6)),
    base("proofread, a finding", |b| {
        proofread(b, "Fix line");
    }),
    over("terms to read in", |b| {
        proofread(b, "Read in other terms");
        click(b, "Read in other terms");
    }),
    over("start card", |b| ctrl(b, Key::N)),
    over("start card, a formula that cannot be read", |b| {
        ctrl(b, Key::N);
        click(b, "From a formula");
        b.get_by_label("Formula of the radius").focus();
        b.run();
        ctrl(b, Key::A);
        b.event(egui::Event::Text("30*sine(t)".into()));
        b.run();
    }),
    over("start card, a file", |b| {
        let folder = tempfile::tempdir().expect("a folder");
        let path = folder.path().join("bead.svg");
        let svg = "<svg xmlns='http://www.w3.org/2000/svg'><path d='M 40 5 A 30 30 0 0 1 40 65'/></svg>";
        std::fs::write(&path, svg).expect("written");
        picture::let_go_over_the_window(b, &path);
        let there = |b: &Bench<'_>| b.query_by_label_contains("the line lies within").is_some();
        until(b, "nothing was read", there);
        b.run();
    }),
    over("settings", |b| ctrl(b, Key::Comma)),
    over("keys", |b| press(b, Key::F1)),
    over("traced picture", |b| {
        let folder = tempfile::tempdir().expect("a folder");
        picture::dropped_as(b, folder.path(), picture::egg);
        picture::traced(b);
    }),
    over("traced picture, the keyboard on it", |b| {
        let folder = tempfile::tempdir().expect("a folder");
        picture::dropped_as(b, folder.path(), picture::egg);
        picture::traced(b);
        b.get_by_label("The picture with the traced line").focus();
        b.run();
        press(b, Key::Space);
        for key in [Key::ArrowRight, Key::ArrowDown, Key::ArrowRight, Key::ArrowDown] {
            b.key_press_modifiers(Modifiers::SHIFT, key);
            b.run();
        }
        press(b, Key::Space);
        let rests = |b: &Bench<'_>| b.state().outlining().share().is_none();
        until(b, "the mark was never worked on", rests);
        b.run();
    }),
    over("unsaved changes", |b| {
        press(b, Key::Home);
        press(b, Key::P);
        ctrl(b, Key::O);
    }),
    base("mirrored", |b| {
        ctrl(b, Key::Comma);
        click(b, "Side of the board: right");
        press(b, Key::Escape);
        press(b, Key::Home);
    }),
];

/// A place a person has come to, and what there is to act on.
pub(crate) struct Visit<'a> {
    pub(crate) name: &'static str,
    pub(crate) bench: Bench<'a>,
    pub(crate) list: Vec<Control>,
    /// Whether it lies over another place.
    pub(crate) over: bool,
}

impl Visit<'_> {
    /// Looks again at what there is, of the same layers.
    pub(crate) fn again(&self) -> Vec<Control> {
        let layers: Vec<_> = self.list.iter().map(|c| c.layer).collect();
        let mut list = controls::all(&self.bench);
        list.retain(|c| layers.contains(&c.layer));
        list
    }
}

/// Comes to every place in a window of this size, one after another.
pub(crate) fn each(width: f32, height: f32, mut look: impl FnMut(Visit<'_>)) {
    for place in &PLACES {
        let mut bench = opened(width, height);
        let ground: Vec<_> = controls::all(&bench).iter().map(|c| c.layer).collect();
        (place.open)(&mut bench);
        let mut list = controls::all(&bench);
        let top = list.iter().any(|c| !ground.contains(&c.layer));
        if place.over {
            assert!(top, "{}: nothing came up", place.name);
        }
        if top {
            // A menu or a card: what is under it is another place.
            list.retain(|c| !ground.contains(&c.layer));
        }
        look(Visit { name: place.name, bench, list, over: top });
    }
    let home = tempfile::tempdir().expect("a folder");
    let visit = |bench: Bench<'static>, name| {
        let list = controls::all(&bench);
        Visit { name, bench, list, over: false }
    };
    look(visit(kept(home.path(), width, height), "first steps"));
    look(visit(booked(home.path(), width, height), "gauge book"));
    crash(home.path());
    look(visit(kept(home.path(), width, height), "what a crash left"));
}

fn kept(home: &Path, width: f32, height: f32) -> Bench<'static> {
    let mut bench = at_home(home, None);
    bench.set_size(vec2(width, height));
    bench.run();
    bench
}

/// A gauge book with an entry that was struck out, and more than are shown at once.
fn booked(home: &Path, width: f32, height: f32) -> Bench<'static> {
    let mut book = GaugeBook::default();
    for (i, yarn) in
        ["Ash", "Birch", "Cedar", "Elm", "Fir", "Hazel", "Larch"].iter().enumerate()
    {
        let entry = Entry {
            yarn: (*yarn).into(),
            hook_mm: 3.0 + 0.25 * i as f64,
            maker: "Ada".into(),
            gauge: Gauge::default(),
            firmness: Firmness(0.05),
            stiffness_along: 1.0,
            yarn_per_stitch: 9.4,
            date: "2024-02-29".into(),
            uncertainty: [0.0; 5],
        };
        book.put(entry).expect("it is entered");
    }
    let text = book.write().expect("it writes");
    std::fs::write(home.join("gauges.ron"), text).expect("it is written");
    let mut bench = kept(home, width, height);
    press(&mut bench, Key::Num3);
    click(&mut bench, "Beside the sizes: Another yarn");
    click(&mut bench, "Delete Birch, 3.25 mm, Ada");
    until_settled(&mut bench);
    bench
}

/// Leaves a recovery copy behind, as a crash does.
fn crash(home: &Path) {
    let mut bench = at_home(home, None);
    bench.key_press(Key::Home);
    bench.run();
    bench.key_press(Key::P);
    bench.run();
    bench.event(egui::Event::WindowFocused(false));
    bench.run();
    let copies = home.join("recovery");
    until_true("no copy was kept", || {
        let mut files = std::fs::read_dir(&copies).into_iter().flatten().flatten();
        files.any(|f| f.path().extension().is_some_and(|e| e == "ron"))
    });
}
