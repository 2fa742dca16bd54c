//! The studio stands in floors. What a file may name lies on its own floor or below; stages
//! know nothing of one another. So whoever changes a file knows who can notice.

mod literals;
mod reader;
mod words;

use std::collections::BTreeMap;
use std::path::Path;

use reader::{Module, Names};

/// The floors, from the lowest up. The command line stands beside the stages.
const FLOORS: [&[&str]; 8] = [
    &["kit"],
    &["document"],
    &["view"],
    &["work"],
    &["bench"],
    &["fields"],
    &["stages", "cli"],
    &["window"],
];
/// The floor whose rooms do not know one another.
const STAGES: usize = 6;
/// Most files that may name one another in a circle.
const LARGEST_CIRCLE: usize = 4;

fn studio() -> Names {
    Names::of_crate(&Path::new(env!("CARGO_MANIFEST_DIR")).join("src"))
}

fn floor(module: &Module) -> Option<usize> {
    FLOORS.iter().position(|rooms| rooms.contains(&module[0].as_str()))
}

/// The room of a file on the floor of the stages: `["stages", "make"]`, or `["cli"]`.
fn room(module: &Module) -> &[String] {
    if module[0] == "stages" { &module[..module.len().min(2)] } else { &module[..1] }
}

/// Every name that goes up, or from one stage to another.
fn wrong(names: &Names) -> Vec<String> {
    let mut wrong = Vec::new();
    for (file, others) in names.of.iter().filter(|(file, _)| floor(file).is_some()) {
        for other in others {
            let why = match (floor(file), floor(other)) {
                (Some(here), Some(there)) if there > here => "goes up",
                (Some(STAGES), Some(STAGES)) if room(file) != room(other) => "leaves its stage",
                (Some(_), Some(_)) => continue,
                _ => "leads off the floors",
            };
            wrong.push(format!("{} names {}: {why}", file.join("::"), other.join("::")));
        }
    }
    wrong
}

#[test]
fn every_file_stands_on_a_floor() {
    let names = studio();
    assert!(names.of.len() > 100, "only {} files were read", names.of.len());
    let without = |file: &&Module| floor(file).is_none();
    let without: Vec<_> = names.of.keys().filter(without).map(|m| m.join("::")).collect();
    assert_eq!(without, ["lib", "main"]);
}

#[test]
fn no_file_names_one_above_it_and_no_stage_another() {
    let wrong = wrong(&studio());
    assert!(wrong.is_empty(), "{} names go wrong:\n{}", wrong.len(), wrong.join("\n"));
}

#[test]
fn no_circle_is_large() {
    let circles = studio().circles();
    let large: Vec<String> = circles
        .iter()
        .filter(|circle| circle.len() > LARGEST_CIRCLE)
        .map(|circle| {
            let names: Vec<String> = circle.iter().map(|m| m.join("::")).collect();
            format!("{} files: {}", names.len(), names.join(", "))
        })
        .collect();
    assert!(large.is_empty(), "{}", large.join("\n"));
}

/// A house of a few files, each with what it says.
fn house(files: &[(&str, &str)]) -> Names {
    let module = |name: &str| name.split("::").map(str::to_owned).collect();
    let texts: BTreeMap<Module, String> =
        files.iter().map(|(name, text)| (module(name), (*text).to_owned())).collect();
    Names::of_texts(&texts)
}

#[test]
fn every_way_of_naming_a_file_is_seen() {
    let ways = [
        "use crate::window::Studio;",
        "use crate::{kit, window::{self, layout::Layout}};",
        "fn f() { crate::window::open(); }",
        "fn f() { let x = super::super::window::SIZE; }",
        "mod tests { fn f() { super::super::super::window::open(); } }",
        "pub use super::super::window::{Studio as Window};",
        "struct A { b: Vec<crate::window::Studio> }",
        "const A: &str = \"\\\"\"; type B = crate::window::Studio;",
        "fn f() -> char { '\"' } use crate::window::*;",
    ];
    for way in ways {
        let names = house(&[("window", ""), ("kit", ""), ("view::board", way)]);
        assert_eq!(wrong(&names), ["view::board names window: goes up"], "{way}");
    }
    let silent = [
        "// crate::window::Studio",
        "const A: &str = \"crate::window\";",
        "use egui::window;",
        "mod tests { mod window { } fn f() { self::window::open(); } }",
        "mod tests { use super::*; } fn f() { window::open() }",
    ];
    for way in silent {
        let names = house(&[("window", ""), ("view::board", way)]);
        assert!(wrong(&names).is_empty(), "{way}: {:?}", wrong(&names));
    }
}

#[test]
fn stages_that_meet_and_circles_are_seen() {
    let names = house(&[
        ("stages::make", "use crate::stages::shape::board;"),
        ("stages::shape", "mod board; fn f() { board::show(); }"),
        ("stages::shape::board", "use super::hands::Hand; use crate::cli::run;"),
        ("stages::shape::hands", "use crate::stages::shape;"),
        ("cli", ""),
    ]);
    let expected = [
        "stages::make names stages::shape::board: leaves its stage",
        "stages::shape::board names cli: leaves its stage",
    ];
    assert_eq!(wrong(&names), expected);
    let [circle] = &names.circles()[..] else { panic!("one circle: {:?}", names.circles()) };
    assert_eq!(circle.len(), 3);
}
