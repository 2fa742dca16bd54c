//! The Proofread stage: someone's written pattern on the left, what does not add up in it on
//! the right.

pub mod findings;
pub mod text;
