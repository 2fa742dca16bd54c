//! What is looked at in the Assembly stage: never saved, never undone.

use plumpline_core::project::toy::embroidery::EmbroideryStitch;

use super::Turned;

/// How far parts are drawn apart is a share of all the way, in steps of this.
pub const APART_STEP: f64 = 0.05;

/// What is in hand of the toy.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum ToyPick {
    /// A part, an index into the toy's.
    Part(usize),
    /// An attachment, an index into the toy's.
    Attachment(usize),
}

/// A part that is dragged over what carries it.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct PartDrag {
    /// The part, an index into the toy's.
    pub part: usize,
    /// Which copy of it the hand holds, an index into the poses of the toy.
    pub pose: usize,
    /// From the hand to the middle of its place, points.
    pub off: egui::Vec2,
}

/// Sides that a toy is looked at from.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum ToySide {
    /// Its front.
    Front,
    /// Its left side.
    Side,
    /// Its back.
    Back,
    /// As a hand has turned it.
    Free,
}

impl ToySide {
    /// All of them, in the order of their buttons.
    pub const ALL: [Self; 4] = [Self::Front, Self::Side, Self::Back, Self::Free];

    /// The word on screen.
    pub fn text(self) -> &'static str {
        match self {
            Self::Front => say!("look-from-front"),
            Self::Side => say!("look-from-side"),
            Self::Back => say!("look-from-back"),
            Self::Free => say!("look-from-free"),
        }
    }

    /// How far the toy is turned for it, and tilted, degrees.
    pub const fn turned_deg(self) -> (f32, f32) {
        match self {
            Self::Front => (0.0, 0.0),
            Self::Side => (90.0, 0.0),
            Self::Back => (180.0, 0.0),
            Self::Free => (332.0, 14.0),
        }
    }
}

/// What the Assembly stage shows.
#[derive(Debug, Clone, PartialEq)]
pub struct ToyView {
    /// How the toy is turned.
    pub turned: Turned,
    /// How far its parts are drawn apart, 0 to 1.
    pub apart: f64,
    /// What is in hand.
    pub taken: Option<ToyPick>,
    /// The part pointed at, in whichever list or picture.
    pub hovered: Option<usize>,
    /// The part that is dragged.
    pub drag: Option<PartDrag>,
    /// Whether how it stands and hangs is drawn over it.
    pub balance: bool,
    /// What stitches are painted in.
    pub brush: Brush,
    /// The stitches chosen on the surface of the part in hand.
    pub spot: Option<PaintSpot>,
    /// What is embroidered on it; none while stitches are painted.
    pub needle: Option<EmbroideryStitch>,
    /// The line that goes on, an index into the toy's embroidery; none for another one.
    pub line: Option<usize>,
}

/// What stitches are painted in.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum Brush {
    /// Nothing: paint is taken off.
    Off,
    /// A yarn, an index into the project's; one past the last is a new one.
    Yarn(usize),
}

/// Stitches of one round, counted from 1.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub struct PaintSpot {
    /// The round.
    pub round: u32,
    /// The first stitch.
    pub from: u32,
    /// The last stitch.
    pub to: u32,
}

impl PaintSpot {
    /// Where the brush is first: round 1 is worked in one yarn.
    pub const FIRST: Self = Self { round: 2, from: 1, to: 1 };

    /// One stitch, brought back to where there is one: rounds end at the first and the last of
    /// `rounds`, the stitches of a round, `count` of it, go around.
    pub fn around(round: i64, stitch: i64, rounds: u32, count: impl Fn(u32) -> u32) -> Self {
        let round = round.clamp(1, i64::from(rounds.max(1))) as u32;
        let count = i64::from(count(round).max(1));
        let stitch = ((stitch - 1).rem_euclid(count) + 1) as u32;
        Self { round, from: stitch, to: stitch }
    }
}

impl Default for ToyView {
    fn default() -> Self {
        let mut view = Self {
            turned: Turned { zoom: 1.0, cutaway: false, ..Turned::default() },
            apart: 0.0,
            taken: None,
            hovered: None,
            drag: None,
            balance: false,
            brush: Brush::Yarn(1),
            spot: None,
            needle: None,
            line: None,
        };
        view.turn_to(ToySide::Free);
        view
    }
}

impl ToyView {
    /// The side it is looked at from.
    pub fn side(&self) -> ToySide {
        let now = (self.turned.turn_deg, self.turned.tilt_deg);
        let set = [ToySide::Front, ToySide::Side, ToySide::Back];
        set.into_iter().find(|side| side.turned_deg() == now).unwrap_or(ToySide::Free)
    }

    /// Looks at it from a side.
    pub fn turn_to(&mut self, side: ToySide) {
        (self.turned.turn_deg, self.turned.tilt_deg) = side.turned_deg();
    }

    /// The part in hand.
    pub fn part(&self) -> Option<usize> {
        match self.taken {
            Some(ToyPick::Part(part)) => Some(part),
            _ => None,
        }
    }

    /// The attachment in hand.
    pub fn attachment(&self) -> Option<usize> {
        match self.taken {
            Some(ToyPick::Attachment(attachment)) => Some(attachment),
            _ => None,
        }
    }

    /// Lets go of what is no longer there.
    pub(crate) fn keep_to(&mut self, parts: usize, attachments: usize) {
        self.taken = self.taken.filter(|taken| match *taken {
            ToyPick::Part(part) => part < parts,
            ToyPick::Attachment(attachment) => attachment < attachments,
        });
        self.hovered = self.hovered.filter(|&part| part < parts);
        self.drag = self.drag.filter(|drag| drag.part < parts);
    }
}
