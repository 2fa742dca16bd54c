//! scratch
use plumpline_core::pattern::HouseStyle;
use plumpline_core::pattern::proofread::{LineIndex, listing, proofread};
use plumpline_core::pattern::read::{TermsWish, read};
fn main() {
    let path = std::env::args().nth(1).unwrap_or_default();
    let text = std::fs::read_to_string(&path).unwrap_or_default();
    let reading = read(&text, TermsWish::Infer);
    let places = LineIndex::new(&text);
    println!("{} {:?}", reading.lexicon, reading.learnt);
    for r in listing(&text, &reading, HouseStyle::bench()) {
        println!("{} p{} {:?} x{} {:?}>{:?} {} {:?} | {}", r.line, r.part, r.numbers, r.times, r.takes, r.makes, r.sure.word(), r.inferred, r.reading);
    }
    for f in proofread(&text, &reading) {
        println!("{}: {:?} {} | {:?}", places.of(f.at.start).0, f.kind, f.message, f.mend.map(|m| m.text));
    }
}
