//! Prints how well patterns are read as people write them: each language, the practised texts
//! beside the fresh ones.

use plumpline_tests::people::{Written, together, written};

const LANGUAGES: [(&str, &str); 4] =
    [("en", "English"), ("de", "German"), ("fr", "French"), ("es", "Spanish")];

fn main() {
    for (folder, words) in [("practised", "Practised"), ("fresh", "Fresh")] {
        let texts = written(folder);
        println!("{words}");
        for (code, language) in LANGUAGES {
            let own: Vec<&Written> =
                texts.iter().filter(|text| text.name.starts_with(code)).collect();
            println!("  {language}: {}", together(own));
        }
        println!("  all: {}", together(&texts));
    }
}
