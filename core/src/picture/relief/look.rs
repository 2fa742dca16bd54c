//! Which relief a stitch has, and what is known of it at a place.

use crate::piece::cloth::Kind;
use crate::plan::placement::Stitch;

/// How far a tile reaches beyond its stitch, below and above, in stitch heights.
pub(super) const REACH: f32 = 0.35;

/// Which tile a stitch looks like.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Hash)]
pub(super) struct TileShape(u8);

impl TileShape {
    /// Loops gathered by a thread.
    pub(super) const DRAWN: Self = Self(12);
    /// The loops of an open edge.
    pub(super) const RIM: Self = Self(13);
    /// The cloth from within.
    pub(super) const WITHIN: Self = Self(14);
    /// A front loop left free.
    pub(super) const RIDGE: Self = Self(15);
    /// Tiles there are.
    pub(super) const MANY: usize = 16;

    /// A stitch of `kind`, `which` (from 1) of those that `worked` leaves.
    pub(super) fn of(kind: Kind, worked: Stitch, which: u32) -> Self {
        let row = match kind {
            Kind::Single => 0,
            Kind::HalfDouble => 1,
            Kind::Double => 2,
        };
        let column = match (worked, which) {
            (Stitch::Plain, _) => 0,
            (Stitch::Increase, 1) => 1,
            (Stitch::Increase, _) => 2,
            (Stitch::Decrease, _) => 3,
        };
        Self(4 * row + column)
    }

    pub(super) fn index(self) -> usize {
        self.0 as usize
    }
}

/// Height in stitch widths (0 at the top of the yarn, negative below), how it grows across and
/// up the stitch, and how much light comes into the place, 0 to 1.
pub(super) type Sample = [f32; 4];
