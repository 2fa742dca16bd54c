//! What stands around every stage: the strip at the top, the line at the foot, and the cards
//! that lie over the window.

pub mod foot;
pub mod keys_card;
pub mod notice;
mod pieces;
mod recent;
pub mod settings_card;
pub mod start;
mod steps;
pub mod top_strip;
