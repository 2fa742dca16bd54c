//! Attachments: what a toy hangs by, what joins two bodies, what runs through it.

use serde::{Deserialize, Serialize};

use super::part::{PartEnd, Place};

/// Largest small thing, depth, drop or free length, mm.
pub(super) const LARGEST_MM: f64 = 3000.0;

/// Something that holds parts together, or the toy up.
#[derive(Debug, Clone, PartialEq, Serialize, Deserialize)]
pub enum Attachment {
    /// A cord from which another body, or the toy itself, hangs.
    Cord(Cord),
    /// A ring or loop that the toy hangs by.
    Loop(Hanger),
    /// A wire through the axis that carries a body over another.
    Wire(Wire),
    /// A thread through the toy on which parts turn.
    Joint(Joint),
    /// Cords from two or three places that meet above, by which the toy hangs.
    Sling(Sling),
}

/// A place on the axis of a part that its own shape finds.
#[derive(Debug, Clone, Copy, PartialEq, Serialize, Deserialize)]
pub enum CordSpot {
    /// The narrowest place between two swells.
    Neck,
    /// The swell beyond the neck, or the edge.
    Lip,
    /// An end.
    End(PartEnd),
    /// This share of the stuffed profile, 0 to 1.
    Share(f64),
}

/// A place on a part.
#[derive(Debug, Clone, Copy, PartialEq, Serialize, Deserialize)]
#[serde(deny_unknown_fields)]
pub struct CordHold {
    /// The part, an index into the toy's.
    pub part: usize,
    /// Where on it.
    pub at: CordSpot,
}

/// A cord.
#[derive(Debug, Clone, Copy, PartialEq, Serialize, Deserialize)]
#[serde(deny_unknown_fields)]
pub struct Cord {
    /// What it hangs from.
    pub from: CordHold,
    /// How it is held there.
    pub way: CordWay,
    /// Where its knots are.
    pub knots: Knots,
    /// The body that hangs on it; none for a cord that the toy hangs by.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub to: Option<CordHold>,
    /// How far below `from` the place `to` hangs, or how long the free loop above is, mm.
    pub drop_mm: f64,
    /// How many cords go down.
    #[serde(default = "one")]
    pub strands: u32,
    /// How thick it is, mm.
    pub thickness_mm: f64,
}

/// How a cord is held by a body.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Serialize, Deserialize)]
pub enum CordWay {
    /// Laid around it.
    Around,
    /// Drawn through it.
    Through,
}

/// On which side of the cloth knots are.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Serialize, Deserialize)]
pub enum Knots {
    /// Inside.
    Inside,
    /// Outside.
    Outside,
}

/// A ring or loop that the toy hangs by.
#[derive(Debug, Clone, Copy, PartialEq, Serialize, Deserialize)]
#[serde(deny_unknown_fields)]
pub struct Hanger {
    /// The part it is on, an index into the toy's.
    pub on: CordHold,
    /// Where around, a share of the round from the front; none for on the axis.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub around: Option<f64>,
    /// How far its bearing point stands off the cloth, mm.
    pub stands_off_mm: f64,
    /// Length of the loop all around, mm.
    pub around_mm: f64,
    /// How thick it is, mm.
    pub thickness_mm: f64,
}

/// Cords from two or three places on the cloth of one body, and of what sits on it, that meet
/// in one point above.
#[derive(Debug, Clone, PartialEq, Serialize, Deserialize)]
#[serde(deny_unknown_fields)]
pub struct Sling {
    /// Where each cord is held.
    pub legs: Vec<SlingHold>,
    /// How long the cords are.
    pub lengths: SlingLengths,
    /// How far the point where they meet is above the highest hold, or above the middle of
    /// the holds where all are as long, mm.
    pub above_mm: f64,
    /// Where their knots are.
    pub knots: Knots,
    /// How thick they are, mm.
    pub thickness_mm: f64,
}

/// Where a cord of a sling is held.
#[derive(Debug, Clone, Copy, PartialEq, Serialize, Deserialize)]
#[serde(deny_unknown_fields)]
pub struct SlingHold {
    /// The part, an index into the toy's; its first copy.
    pub part: usize,
    /// The place on its cloth.
    pub at: Place,
}

/// How long the cords of a sling are.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Serialize, Deserialize)]
pub enum SlingLengths {
    /// As long as each must be for the toy to hang as it is meant to stand.
    Upright,
    /// All as long.
    Equal,
}

/// A wire, doubled, through the axis of a body and down into another.
#[derive(Debug, Clone, Copy, PartialEq, Serialize, Deserialize)]
#[serde(deny_unknown_fields)]
pub struct Wire {
    /// The body it carries, and where the wire leaves that.
    pub carries: CordHold,
    /// The body it stands in, and where the wire enters that.
    pub stands_in: CordHold,
    /// Free length between the two, mm.
    pub free_mm: f64,
    /// What it is made of.
    pub metal: Metal,
    /// How thick one strand is, mm.
    pub diameter_mm: f64,
    /// How many strands stand side by side.
    #[serde(default = "two")]
    pub strands: u32,
}

/// What wire is made of.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Serialize, Deserialize)]
pub enum Metal {
    /// Steel.
    Steel,
    /// Brass.
    Brass,
    /// Aluminium.
    Aluminium,
    /// Copper.
    Copper,
}

/// A thread on which a part and its copies turn.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Serialize, Deserialize)]
#[serde(deny_unknown_fields)]
pub struct Joint {
    /// The part, an index into the toy's.
    pub part: usize,
    /// How often the thread goes through.
    #[serde(default = "two")]
    pub passes: u32,
}

impl Attachment {
    /// The parts it names.
    pub fn parts(&self) -> Vec<usize> {
        match self {
            Self::Cord(cord) => {
                std::iter::once(cord.from.part).chain(cord.to.map(|to| to.part)).collect()
            }
            Self::Loop(hanger) => vec![hanger.on.part],
            Self::Wire(wire) => vec![wire.carries.part, wire.stands_in.part],
            Self::Joint(joint) => vec![joint.part],
            Self::Sling(sling) => sling.legs.iter().map(|leg| leg.part).collect(),
        }
    }

    /// The body above and the body below, where it joins two, and how far apart, mm.
    pub fn joins(&self) -> Option<(CordHold, CordHold, f64)> {
        match self {
            Self::Cord(cord) => Some((cord.from, cord.to?, cord.drop_mm)),
            Self::Wire(wire) => Some((wire.carries, wire.stands_in, wire.free_mm)),
            Self::Loop(_) | Self::Joint(_) | Self::Sling(_) => None,
        }
    }

    pub(super) fn renumber(&mut self, to: impl Fn(usize) -> usize) {
        match self {
            Self::Cord(cord) => {
                cord.from.part = to(cord.from.part);
                if let Some(hold) = &mut cord.to {
                    hold.part = to(hold.part);
                }
            }
            Self::Loop(hanger) => hanger.on.part = to(hanger.on.part),
            Self::Wire(wire) => {
                wire.carries.part = to(wire.carries.part);
                wire.stands_in.part = to(wire.stands_in.part);
            }
            Self::Joint(joint) => joint.part = to(joint.part),
            Self::Sling(sling) => {
                sling.legs.iter_mut().for_each(|leg| leg.part = to(leg.part));
            }
        }
    }
}

impl Metal {
    /// All of them.
    pub const ALL: [Self; 4] = [Self::Steel, Self::Brass, Self::Aluminium, Self::Copper];

    /// The metal in a word.
    pub fn word(self) -> &'static str {
        match self {
            Self::Steel => "steel",
            Self::Brass => "brass",
            Self::Aluminium => "aluminium",
            Self::Copper => "copper",
        }
    }
}

fn one() -> u32 {
    1
}

fn two() -> u32 {
    2
}
