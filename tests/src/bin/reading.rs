//! Prints how well patterns are read as people write them: each language, the practised texts
//! beside the fresh ones. With folders named, `reading [-v] FOLDER …`, those of each folder;
//! `-v` lists what is not as it should be.

use std::path::Path;

use plumpline_tests::people::{Written, together, written, written_in};

const LANGUAGES: [(&str, &str); 4] =
    [("en", "English"), ("de", "German"), ("fr", "French"), ("es", "Spanish")];

fn main() {
    let (flags, folders): (Vec<String>, Vec<String>) =
        std::env::args().skip(1).partition(|word| word.starts_with('-'));
    if folders.is_empty() {
        print("Practised", &written("practised"));
        print("Fresh", &written("fresh"));
    }
    for folder in &folders {
        let texts = written_in(Path::new(folder));
        if flags.iter().any(|flag| flag == "-v") {
            list(&texts);
        }
        print(folder, &texts);
    }
}

fn print(name: &str, texts: &[Written]) {
    println!("{name}");
    for (code, language) in LANGUAGES {
        let own: Vec<&Written> =
            texts.iter().filter(|text| text.name.starts_with(code)).collect();
        println!("  {language}: {}", together(own));
    }
    println!("  all: {}", together(texts));
}

fn list(texts: &[Written]) {
    for text in texts {
        for note in text.judged().1 {
            println!("{}: {note}", text.name);
        }
    }
}
