//! The core stands in streets, in the order in which one thing is made from another. No file
//! names one in a later street, and no two files name each other, by whatever way round.

mod reader;

use std::collections::BTreeMap;
use std::path::Path;

use reader::{Module, Names};

/// The streets in the order of the flow. What stands at the corner is named by all.
const STREETS: [&str; 8] =
    ["piece", "plan", "words", "project", "toy", "picture", "lesson", "sheet"];

fn core() -> Names {
    Names::of_crate(&Path::new(env!("CARGO_MANIFEST_DIR")).join("src"))
}

fn street(module: &Module) -> Option<usize> {
    STREETS.iter().position(|street| module.first().is_some_and(|first| first == street))
}

/// Every name that leads to a later street, or from the corner into one.
fn ahead(names: &Names) -> Vec<String> {
    let mut found = Vec::new();
    for (file, others) in names.of.iter().filter(|(file, _)| !file.is_empty()) {
        for other in others {
            if street(other).is_some_and(|there| street(file).is_none_or(|here| there > here)) {
                found.push(format!("{} names {}", file.join("::"), other.join("::")));
            }
        }
    }
    found
}

fn told(circles: &[Vec<Module>]) -> Vec<String> {
    let name = |module: &Module| module.join("::");
    circles.iter().map(|c| c.iter().map(name).collect::<Vec<_>>().join(", ")).collect()
}

#[test]
fn no_file_names_one_in_a_later_street() {
    let names = core();
    assert!(names.of.len() > 100, "only {} files were read", names.of.len());
    for street in STREETS {
        assert!(names.of.keys().any(|module| module[..] == [street.to_owned()]), "{street}");
    }
    let ahead = ahead(&names);
    assert!(ahead.is_empty(), "{}", ahead.join("\n"));
}

#[test]
fn no_files_name_each_other() {
    let circles = told(&core().circles());
    assert!(circles.is_empty(), "{}", circles.join("\n"));
}

/// A core of a few files, each with what it says.
fn small(files: &[(&str, &str)]) -> Names {
    let module = |name: &str| name.split("::").map(str::to_owned).collect();
    let texts: BTreeMap<Module, String> =
        files.iter().map(|(name, text)| (module(name), (*text).to_owned())).collect();
    Names::of_texts(&texts)
}

#[test]
fn every_way_of_naming_a_file_is_seen() {
    let ways = [
        "use crate::sheet::Page;",
        "use crate::{piece, sheet::{self, Page}};",
        "fn f() { crate::sheet::print(); }",
        "fn f() { let x = super::super::sheet::SIZE; }",
        "use super::super::sheet::{Page as Sheet};",
        "struct A { b: Vec<crate::sheet::Page> }",
        "const A: &str = \"\\\"\"; type B = crate::sheet::Page;",
        "fn f() -> char { '\"' } use crate::sheet::*;",
    ];
    for way in ways {
        let names = small(&[("sheet", ""), ("piece", ""), ("plan::skin", way)]);
        assert_eq!(ahead(&names), ["plan::skin names sheet"], "{way}");
    }
    for way in [
        "// crate::sheet::Page",
        "const A: &str = \"crate::sheet\";",
        "use other::sheet;",
        "#[cfg(test)]\nmod tests { use crate::sheet::Page; }",
    ] {
        let names = small(&[("sheet", ""), ("plan::skin", way)]);
        assert_eq!(ahead(&names), [""; 0], "{way}");
    }
}

#[test]
fn a_name_that_is_passed_on_leads_to_the_file_it_comes_from() {
    let passed = [
        ("plan", "mod skin; mod fit; pub use skin::{Skin, Cloth as Stuff}; use fit::Fit;"),
        ("plan::skin", "pub struct Skin; pub struct Cloth;"),
        ("plan::fit", "use super::{Skin, Stuff};"),
    ];
    assert_eq!(told(&small(&passed).circles()), [""; 0]);
    let circle = [
        ("plan", "mod skin; pub struct Plan; fn f() { skin::of(); }"),
        ("plan::skin", "use super::Plan;"),
    ];
    assert_eq!(told(&small(&circle).circles()), ["plan, plan::skin"]);
    let long = [
        ("plan::a", "use super::b::B;"),
        ("plan::b", "fn f(c: crate::plan::c::C) {}"),
        ("plan::c", "use crate::plan::a;"),
        ("plan", "pub mod a; pub mod b; pub mod c;"),
    ];
    assert_eq!(told(&small(&long).circles()), ["plan::a, plan::b, plan::c"]);
}
