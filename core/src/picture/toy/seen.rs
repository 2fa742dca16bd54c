//! What is seen in the picture of a toy.

use crate::picture::relief::Seen;

/// What of a toy is seen at a place of its picture.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum ToyThing {
    /// A copy of a part: an index into the poses of the toy.
    Pose(usize),
    /// An attachment: an index into the toy's.
    Attachment(usize),
}

/// What `seen` is of, in a scene whose map stands for `things`.
pub fn thing_seen(things: &[ToyThing], seen: Seen) -> Option<ToyThing> {
    things.get(usize::from(seen.part).checked_sub(1)?).copied()
}
