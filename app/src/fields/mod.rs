//! Rows, fields and cards that stages share.

pub mod colour_field;
pub mod form;
pub mod length_field;
pub mod over;
pub mod yarn_card;
