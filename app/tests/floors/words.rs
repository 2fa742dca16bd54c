//! What people read stands in the files of words, a file a language: each message that the
//! sources ask for is there, each that is there is asked for, every language takes the same
//! arguments, and no other words stand in the sources.

use std::collections::{BTreeMap, BTreeSet};
use std::path::Path;

use fluent_syntax::ast::{Entry, Expression, InlineExpression, Pattern, PatternElement};

use crate::literals::{Literal, literals};
use crate::reader::files;

/// Folders and files whose words for people do not all stand in the files of words yet.
const NOT_YET: [&str; 1] = ["cli"];

/// Calls whose text no person reads as the studio's words: names of widgets for the toolkit,
/// messages to whoever debugs, names of files and of what a sheet says in its own language.
const NOT_READ: [&str; 41] = [
    "say!(",
    "message!(",
    "Id::unique(",
    "Id::new(",
    "id_salt(",
    ".with(",
    ".with((",
    "scope_id(",
    "let salt = (",
    "expect(",
    "unreachable!(",
    "include_str!(",
    "include_bytes!(",
    "eprintln!(",
    "println!(",
    "suggested(",
    "with_extension(",
    "with_file_name(",
    "with_file_name(format!(",
    "eq_ignore_ascii_case(",
    "ends_with(",
    "starts_with(",
    "strip_suffix(",
    "strip_prefix(",
    "rsplit_once(",
    "fs::read_to_string(",
    "target_os =",
    "sheet.label(",
    "sheet.label_of(",
    "plot::fixed(",
    "formula::outline(",
    "Book::read(",
    "f.get(",
    "ui.push_id((",
    "id_salt((",
    "Worker::new(",
    "debug_struct(",
    ".field(",
    "load_texture(",
    "load_texture(format!(",
    "Builder::new().name(",
];

/// Words that are the same in every language, or stand for a language: units, sizes, codes, and
/// what things and languages are called by themselves.
const OF_NO_LANGUAGE: [&str; 32] = [
    "mm",
    "XL",
    "XXL",
    "en",
    "de",
    "us",
    "uk",
    "Plumpline",
    "plumpline",
    "English",
    "Deutsch",
    "txt",
    "htm",
    "csv",
    "tsv",
    "svg",
    "stl",
    "obj",
    "ron",
    "pdf",
    "png",
    "md",
    "html",
    "jpg",
    "jpeg",
    "webp",
    "srt",
    "vtt",
    "lock",
    "PNG",
    "PDF",
    "Markdown",
];

/// Text that is no word for people though it looks like one: by file, the first words of it.
const NO_WORDS: [(&str, &[&str]); 21] = [
    // What edits run on in, never shown.
    ("document/edit.rs", &["title", "yarn", "piece name", "sheet", "size", "seam", "knot"]),
    ("document/toy.rs", &["part", "attachment"]),
    // Names that are saved and then a person's own.
    ("document/sizes.rs", &["of the piece", "Size {n}"]),
    ("kit/type_faces.rs", &["nunito-sans", "routed-gothic"]),
    // How the core tells them apart.
    ("kit/words/terms.rs", &["soft", "medium"]),
    ("stages/around/start/choice.rs", &["30*sin"]),
    ("stages/sheet/text.rs", &["designer"]),
    ("window/lesson.rs", &["lesson-{}.pdf", "lesson.pdf"]),
    // What a terminal reads where there is no window.
    (
        "window/mod.rs",
        &["DISPLAY", "WAYLAND_", "there is no display", "the window could not be opened"],
    ),
    ("window/trace.rs", &["PLUMPLINE_TRACE"]),
    ("stages/assembly/parts.rs", &["small_part"]),
    // Names of textures and files, and how a copy says what it is of.
    ("work/files/carry_out.rs", &["standard input"]),
    ("work/home/book.rs", &["gauges"]),
    ("work/home/desk.rs", &["desk.ron"]),
    ("work/faces.rs", &["sans", "gothic"]),
    ("work/home/mod.rs", &["recovery", "print.pdf"]),
    ("work/home/recovery.rs", &["// unsaved changes of ", "none"]),
    ("work/lesson/mod.rs", &["lesson {choice:?}", "lesson picture {i}"]),
    ("work/line_up.rs", &["size {index}"]),
    ("work/pattern_file/page.rs", &["<!doctype html"]),
    ("work/shape_file.rs", &["picture"]),
];

/// Readers of other formats: a single word there names a part of the format, and only what
/// has a space is said to people.
const FORMATS: &str = "work/pattern_file";

type Arguments = BTreeSet<String>;

fn studio() -> std::path::PathBuf {
    Path::new(env!("CARGO_MANIFEST_DIR")).join("src")
}

/// Every string of the studio's sources outside tests, with the file it stands in.
fn strings() -> Vec<(String, Literal)> {
    let src = studio();
    let mut found = Vec::new();
    for path in files(&src) {
        let text = std::fs::read_to_string(&path).expect("a source");
        let name = path.strip_prefix(&src).expect("inside").to_string_lossy().into_owned();
        found.extend(literals(&text).into_iter().map(|literal| (name.clone(), literal)));
    }
    assert!(found.len() > 1000, "only {} strings were read", found.len());
    found
}

/// The messages that the sources ask for, each with the arguments it is given, and where.
fn asked() -> BTreeMap<String, BTreeMap<Arguments, String>> {
    let mut asked: BTreeMap<String, BTreeMap<Arguments, String>> = BTreeMap::new();
    for (file, literal) in strings() {
        // The module's own tests and examples ask for what is not there.
        let asks = literal.before.ends_with("say!(") || literal.before.ends_with("message!(");
        if asks && file != "kit/words/mod.rs" {
            let arguments = literal.arguments.into_iter().collect();
            asked.entry(literal.text).or_default().insert(arguments, file);
        }
    }
    assert!(asked.len() > 400, "only {} messages are asked for", asked.len());
    asked
}

fn of_expression(expression: &Expression<&str>, found: &mut Arguments) {
    let mut inline = |inline: &InlineExpression<&str>| match inline {
        InlineExpression::VariableReference { id } => {
            found.insert(id.name.to_owned());
        }
        InlineExpression::Placeable { expression } => of_expression(expression, found),
        _ => {}
    };
    match expression {
        Expression::Inline(expression) => inline(expression),
        Expression::Select { selector, variants } => {
            inline(selector);
            variants.iter().for_each(|variant| of_pattern(&variant.value, found));
        }
    }
}

fn of_pattern(pattern: &Pattern<&str>, found: &mut Arguments) {
    for element in &pattern.elements {
        if let PatternElement::Placeable { expression } = element {
            of_expression(expression, found);
        }
    }
}

/// The messages of a language, each with its arguments.
fn messages(code: &str) -> BTreeMap<String, Arguments> {
    let file = format!("../assets/words/studio/{code}.ftl");
    let path = Path::new(env!("CARGO_MANIFEST_DIR")).join(file);
    let text = std::fs::read_to_string(&path).expect("the words of a language");
    let read = fluent_syntax::parser::parse(text.as_str());
    let read = read.unwrap_or_else(|(_, faults)| panic!("{code}: {faults:?}"));
    let mut list = BTreeMap::new();
    for entry in &read.body {
        if let Entry::Message(message) = entry {
            let mut arguments = Arguments::new();
            let value = message.value.as_ref().expect("a message has words");
            of_pattern(value, &mut arguments);
            let before = list.insert(message.id.name.to_owned(), arguments);
            assert!(before.is_none(), "{code}: {} stands there twice", message.id.name);
        }
    }
    list
}

#[test]
fn what_is_asked_for_is_there_in_english_and_what_is_there_is_asked_for() {
    let (asked, english) = (asked(), messages("en"));
    let mut faults = Vec::new();
    for (key, uses) in &asked {
        for (given, file) in uses {
            match english.get(key) {
                None => faults.push(format!("{file}: no file of words has {key}")),
                Some(wanted) if wanted != given => {
                    faults.push(format!("{file}: {key} takes {wanted:?}, not {given:?}"));
                }
                Some(_) => {}
            }
        }
    }
    let unused = english.keys().filter(|key| !asked.contains_key(*key));
    faults.extend(unused.map(|key| format!("{key}: nothing asks for it")));
    assert!(faults.is_empty(), "{} faults:\n{}", faults.len(), faults.join("\n"));
}

#[test]
fn german_says_what_english_says_with_the_same_arguments() {
    let (english, german) = (messages("en"), messages("de"));
    let missing: Vec<_> = english.keys().filter(|key| !german.contains_key(*key)).collect();
    let over: Vec<_> = german.keys().filter(|key| !english.contains_key(*key)).collect();
    let differ: Vec<_> = english
        .iter()
        .filter(|(key, arguments)| german.get(*key).is_some_and(|other| other != *arguments))
        .map(|(key, _)| key)
        .collect();
    assert!(missing.is_empty() && over.is_empty(), "missing {missing:?}, over {over:?}");
    assert!(differ.is_empty(), "other arguments: {differ:?}");
}

/// The words of a text outside its braces: two letters in a row or more.
fn words(text: &str) -> impl Iterator<Item = &str> {
    let outside =
        text.split('{').enumerate().map(|(i, part)| match (i, part.split_once('}')) {
            (0, _) => part,
            (_, Some((_, after))) => after,
            (_, None) => "",
        });
    let words = outside.flat_map(|part| part.split(|c: char| !c.is_alphabetic()));
    words.filter(|word| word.chars().count() > 1)
}

#[test]
fn no_words_for_people_stand_in_the_sources() {
    let mut faults = Vec::new();
    let mut looked_at = 0;
    for (file, literal) in strings() {
        let path = Path::new(&file);
        if NOT_YET.iter().any(|folder| path.starts_with(folder)) {
            continue;
        }
        looked_at += 1;
        let none = NO_WORDS
            .iter()
            .find(|(at, _)| *at == file)
            .is_some_and(|(_, texts)| texts.iter().any(|text| literal.text.starts_with(text)));
        let of_format = path.starts_with(FORMATS) && !literal.text.contains(' ');
        let none = none || of_format;
        let read = !none && !NOT_READ.iter().any(|call| literal.before.ends_with(call));
        if read && words(&literal.text).any(|word| !OF_NO_LANGUAGE.contains(&word)) {
            faults.push(format!("{file}: {:?}", literal.text));
        }
    }
    assert!(looked_at > 300, "only {looked_at} strings were looked at");
    assert!(faults.is_empty(), "{} faults:\n{}", faults.len(), faults.join("\n"));
}
