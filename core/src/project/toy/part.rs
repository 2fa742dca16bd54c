//! Parts: a piece, or a small thing, in its place on another part.

use serde::{Deserialize, Serialize};

use crate::piece::PieceId;

/// Something in its place on the toy, with its copies.
#[derive(Debug, Clone, PartialEq, Serialize, Deserialize)]
#[serde(deny_unknown_fields)]
pub struct Part {
    /// What is put there.
    pub what: Thing,
    /// What carries it and where; none for a body, which stands by itself or is joined to
    /// another body by a cord or a wire.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub on: Option<Seat>,
    /// How often it is there.
    #[serde(default, skip_serializing_if = "Copies::is_one")]
    pub copies: Copies,
    /// What holds it.
    #[serde(default, skip_serializing_if = "HeldBy::is_sewn")]
    pub held_by: HeldBy,
    /// Which stitch of it looks ahead. Only asked of what carries other parts.
    #[serde(default, skip_serializing_if = "BodyFront::is_usual")]
    pub front: BodyFront,
    /// What of it is up when the toy stands as it is meant to. Only asked of a body.
    #[serde(default, skip_serializing_if = "Up::is_last")]
    pub up: Up,
    /// Whether it is left without stuffing; a flat edge always is.
    #[serde(default, skip_serializing_if = "std::ops::Not::not")]
    pub unstuffed: bool,
}

/// What a part is.
#[derive(Debug, Clone, PartialEq, Serialize, Deserialize)]
pub enum Thing {
    /// A crocheted piece.
    Piece(PieceId),
    /// Something small that is bought, cut or embroidered.
    Small(Small),
}

/// Something small that is not crochet.
#[derive(Debug, Clone, PartialEq, Serialize, Deserialize)]
#[serde(deny_unknown_fields)]
pub struct Small {
    /// What it is called; empty for what its form says already.
    #[serde(default, skip_serializing_if = "String::is_empty")]
    pub name: String,
    /// What it is.
    pub form: PartForm,
    /// What one weighs, g, where that is known.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub grams: Option<f64>,
}

/// The form of a small thing.
#[derive(Debug, Clone, Copy, PartialEq, Serialize, Deserialize)]
pub enum PartForm {
    /// An eye.
    Eye(Button),
    /// A nose.
    Nose(Button),
    /// Anything else: across, deep and long, mm; long is away from what carries it.
    Block(f64, f64, f64),
}

/// An eye or a nose.
#[derive(Debug, Clone, Copy, PartialEq, Serialize, Deserialize)]
#[serde(deny_unknown_fields)]
pub struct Button {
    /// Its diameter, mm.
    pub diameter_mm: f64,
    /// Whether it is embroidered; otherwise it has a shank and a washer inside.
    #[serde(default, skip_serializing_if = "std::ops::Not::not")]
    pub embroidered: bool,
}

/// Where a part sits on what carries it, and by which edge.
#[derive(Debug, Clone, Copy, PartialEq, Serialize, Deserialize)]
#[serde(deny_unknown_fields)]
pub struct Seat {
    /// The part that carries it, an index into the toy's parts; a smaller one than its own.
    pub part: usize,
    /// The place on that part.
    pub at: Place,
    /// The edge it is put on by. Small things have no edges.
    #[serde(default)]
    pub by: PartEdge,
    /// Turned about the line that stands upright on the cloth, degrees; 0 has the part's front
    /// towards later rounds.
    #[serde(default, skip_serializing_if = "is_zero")]
    pub turn_deg: f64,
    /// Leant from that line towards the part's own front, degrees.
    #[serde(default, skip_serializing_if = "is_zero")]
    pub tilt_deg: f64,
    /// Pushed into what carries it along its own axis, mm; negative stands off.
    #[serde(default, skip_serializing_if = "is_zero")]
    pub sunk_mm: f64,
}

/// A place on the stuffed shape of a part, in shares, so that it is still itself when the
/// outline, the gauge or the size is another.
#[derive(Debug, Clone, Copy, PartialEq, Serialize, Deserialize)]
#[serde(deny_unknown_fields)]
pub struct Place {
    /// Share of the length of the stuffed profile, from its start, 0 to 1.
    pub along: f64,
    /// Share of the round from the front, the way the rounds run, −1 to 1: 0.25 is on the
    /// side, 0.5 at the back.
    pub around: f64,
}

/// The edge that a part is put on by.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Default, Serialize, Deserialize)]
#[serde(deny_unknown_fields)]
pub struct PartEdge {
    /// Which end of the piece it is.
    pub end: PartEnd,
    /// How that end is put on.
    pub how: EdgeHow,
}

/// An end of a piece.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Default, Serialize, Deserialize)]
pub enum PartEnd {
    /// Where the working starts.
    Start,
    /// Where the working ends.
    #[default]
    Last,
}

/// How an end is put on.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Default, Serialize, Deserialize)]
pub enum EdgeHow {
    /// An open edge, sewn around.
    #[default]
    Open,
    /// A closed end, or an open one pushed in: sewn where the two shapes meet.
    Closed,
    /// An open edge of an unstuffed piece, pressed flat and sewn in a line.
    Flat,
}

/// How often a part is there.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Default, Serialize, Deserialize)]
pub enum Copies {
    /// Once.
    #[default]
    One,
    /// Twice, either side of the front.
    Mirrored,
    /// So many, evenly around from its place.
    Around(u32),
}

/// What holds a part.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Default, Serialize, Deserialize)]
pub enum HeldBy {
    /// Sewn on.
    #[default]
    Sewn,
    /// A washer pressed on its shank inside.
    Washer,
    /// A thread through the toy on which it turns.
    Thread,
    /// Glue. Saved so that it can be told why not.
    Glued,
}

/// What of a body is up.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Default, Serialize, Deserialize)]
pub enum Up {
    /// Where the working starts; its front looks ahead.
    Start,
    /// Where the working ends; its front looks ahead.
    #[default]
    Last,
    /// Its front: it lies, and where the working starts looks ahead.
    Front,
    /// What is opposite its front: it lies, and where the working starts looks ahead.
    Back,
}

/// Which stitch looks ahead: of the round at this share of the stuffed profile, this share of
/// the round from its first stitch. All rounds are counted from the plane through it and the
/// axis: following the lean of a spiral would twist a face.
#[derive(Debug, Clone, Copy, PartialEq, Serialize, Deserialize)]
#[serde(deny_unknown_fields)]
pub struct BodyFront {
    /// Share of the length of the stuffed profile, 0 to 1.
    pub along: f64,
    /// Share of that round from its first stitch, 0 to 1.
    pub around: f64,
}

impl BodyFront {
    fn is_usual(&self) -> bool {
        *self == Self::default()
    }
}

impl Default for BodyFront {
    /// Half-way up and half-way round, so that rounds begin at the back.
    fn default() -> Self {
        Self { along: 0.5, around: 0.5 }
    }
}

impl Part {
    /// A body of `piece`, everything else as usual.
    pub fn body(piece: PieceId) -> Self {
        Self::new(Thing::Piece(piece), None)
    }

    /// `what` once at `seat`, sewn on.
    pub fn new(what: Thing, on: Option<Seat>) -> Self {
        Self {
            what,
            on,
            copies: Copies::One,
            held_by: HeldBy::Sewn,
            front: BodyFront::default(),
            up: Up::Last,
            unstuffed: false,
        }
    }

    /// Whether there is stuffing in it.
    pub fn is_stuffed(&self) -> bool {
        let flat = self.on.is_some_and(|seat| seat.by.how == EdgeHow::Flat);
        self.piece().is_some() && !self.unstuffed && !flat
    }

    /// The piece it is.
    pub fn piece(&self) -> Option<PieceId> {
        match self.what {
            Thing::Piece(piece) => Some(piece),
            Thing::Small(_) => None,
        }
    }
}

impl Copies {
    /// How many there are; at least one.
    pub fn number(self) -> u32 {
        match self {
            Self::One => 1,
            Self::Mirrored => 2,
            Self::Around(n) => n.max(1),
        }
    }

    fn is_one(&self) -> bool {
        *self == Self::One
    }
}

impl Up {
    fn is_last(&self) -> bool {
        *self == Self::Last
    }
}

impl HeldBy {
    fn is_sewn(&self) -> bool {
        *self == Self::Sewn
    }
}

impl Seat {
    /// On `part` at this place by its open last edge, upright, not sunk in.
    pub fn new(part: usize, along: f64, around: f64) -> Self {
        let at = Place { along, around };
        Self { part, at, by: PartEdge::default(), turn_deg: 0.0, tilt_deg: 0.0, sunk_mm: 0.0 }
    }
}

fn is_zero(number: &f64) -> bool {
    *number == 0.0
}
