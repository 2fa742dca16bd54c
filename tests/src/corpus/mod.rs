//! The corpus that judges reader and proofreader: written patterns in many house styles, all
//! invented, each with the tree it must read as. The trees are typed by hand.

mod acorn;
mod basket;
mod bean;
mod bell;
mod buoy;
mod button;
mod cloche;
mod float;
mod gourd;
mod huevo;
mod lighthouse;
mod mushroom;
mod noix;
mod onion;
mod pear;
mod pebble;
mod pilz;
mod seta;
mod tropfen;

use plumpline_core::pattern::Line;

/// A pattern without an error, and what it must read as.
#[derive(Debug, Clone)]
pub struct Clean {
    /// Its name, that of its file.
    pub name: &'static str,
    /// The code of the lexicon it is written in.
    pub lexicon: &'static str,
    /// The pattern as written.
    pub text: &'static str,
    /// Its lines but for remarks: see [`crate::trees::essence`].
    pub lines: Vec<Line>,
}

/// Every clean pattern of the corpus.
pub fn clean() -> Vec<Clean> {
    vec![
        acorn::clean(),
        basket::clean(),
        bean::clean(),
        bell::clean(),
        buoy::clean(),
        button::clean(),
        cloche::clean(),
        float::clean(),
        gourd::clean(),
        huevo::clean(),
        lighthouse::clean(),
        mushroom::clean(),
        noix::clean(),
        onion::clean(),
        pear::clean(),
        pebble::clean(),
        pilz::clean(),
        seta::clean(),
        tropfen::clean(),
    ]
}
