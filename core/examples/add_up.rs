//! Reads a written pattern and says where it does not add up.
//!
//! `cargo run -p plumpline-core --example add_up -- pattern.txt`

use plumpline_core::words::proofread::{LineIndex, proofread};
use plumpline_core::words::read::{TermsWish, read};

/// A pattern with a slip in round 3, for want of another.
const SLIP: &str = "Rnd 1: 6 sc in magic ring (6)\n\
                    Rnd 2: inc in each st (12)\n\
                    Rnd 3: (sc, inc) x 5 (18)\n\
                    Rnd 4: sc in each st (18)\n";

fn main() -> std::io::Result<()> {
    let text = match std::env::args().nth(1) {
        Some(file) => std::fs::read_to_string(file)?,
        None => SLIP.to_owned(),
    };
    let reading = read(&text, TermsWish::Infer);
    let places = LineIndex::new(&text);
    for finding in proofread(&text, &reading) {
        let (line, column) = places.of(finding.at.start);
        println!("line {line}, column {column}: {}", finding.message);
        if let Some(mend) = finding.mend {
            println!("  {}", mend.text);
        }
    }
    Ok(())
}
