//! The axes in which a toy is shown: upright, x to the right of who looks at its front, y
//! ahead, z down.

use crate::picture::relief::{ReliefPose, V3 as Spot};
use crate::toy::Assembled;
use crate::toy::vector::{Axes, V3};

/// The axes of the picture in those of the toy.
#[derive(Debug, Clone, Copy, PartialEq)]
pub(super) struct Upright(Axes);

impl Upright {
    /// What is up in `toy` upwards, what is ahead towards who looks.
    pub(super) fn of(toy: &Assembled) -> Self {
        let ([ux, uy, uz], ahead) = (toy.up, toy.ahead);
        let z = [-ux, -uy, -uz];
        let x = [
            ahead[1] * z[2] - ahead[2] * z[1],
            ahead[2] * z[0] - ahead[0] * z[2],
            ahead[0] * z[1] - ahead[1] * z[0],
        ];
        Self(Axes { origin: [0.0; 3], x, y: ahead, z })
    }

    /// Where a place or direction of the toy is in the picture.
    pub(super) fn spot(&self, world: V3) -> Spot {
        self.0.own_direction(world).map(|c| c as f32)
    }

    /// Where a place or direction of the picture is in the toy.
    pub(super) fn world(&self, spot: Spot) -> V3 {
        self.0.direction(spot.map(f64::from))
    }

    /// How something with these axes of its own stands in the picture.
    pub(super) fn pose(&self, axes: &Axes) -> ReliefPose {
        let directions = [axes.x, axes.y, axes.z];
        ReliefPose { axes: directions.map(|way| self.spot(way)), at: self.spot(axes.origin) }
    }
}
