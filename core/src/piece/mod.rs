//! The piece: everything a person decides about one stuffed shape. Saved, undone, and the
//! only thing [`crate::plan`] reads.

pub mod cloth;
mod firmness;
pub mod gauge;
pub mod given;
mod id;
mod measures;
pub mod outline;
mod packing;
pub mod paint;
mod picture;
mod rules;
mod simplicity;
pub(crate) mod size;
pub mod starter;
pub mod stitch;
mod variation;
mod yarn;

use std::collections::BTreeMap;

use serde::{Deserialize, Serialize};

use crate::error::{Error, Result, within};
use crate::piece::cloth::{Hand, KindFrom, Loop, Swatches, Working};
use crate::piece::gauge::Gauge;
use crate::piece::given::Given;
use crate::piece::outline::Outline;
use crate::piece::paint::Paint;

pub use firmness::Firmness;
pub use given::MOST_ROUNDS;
pub use id::PieceId;
pub use packing::Packing;
pub use picture::{PICTURE_WIDTH_MM, Picture};
pub use rules::{Face, Rules, Spread};
use size::Size;
pub use variation::Variation;
pub use yarn::{Yarn, YarnFace};

/// Most copies of one piece.
pub const MOST_COPIES: u32 = 999;

/// From this round on, work in this yarn.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Serialize, Deserialize)]
#[serde(deny_unknown_fields)]
pub struct Band {
    /// First round of the band, counted from 1.
    pub from_round: u32,
    /// Index into the project's yarns.
    pub yarn: usize,
}

/// A maker's habits, from which yarn, stuffing and time are estimated.
#[derive(Debug, Clone, Copy, PartialEq, Serialize, Deserialize)]
#[serde(deny_unknown_fields, default)]
pub struct Habits {
    /// Yarn in one single crochet, in stitch widths. 10 from one published swatch, ±20 %:
    /// 53 in of yarn in a row of 5 in.
    pub yarn_per_stitch: f64,
    /// Stitches worked in a minute. Common practice, no source.
    pub stitches_per_minute: f64,
    /// How densely the piece is packed.
    pub stuffing_g_per_litre: Packing,
}

impl Default for Habits {
    fn default() -> Self {
        Self {
            yarn_per_stitch: 10.0,
            stitches_per_minute: 12.0,
            stuffing_g_per_litre: Packing::default(),
        }
    }
}

/// Counts that were accepted, and the simplicity they were an answer to.
#[derive(Debug, Clone, PartialEq, Serialize, Deserialize)]
#[serde(deny_unknown_fields)]
pub struct Accepted {
    /// See [`Piece::simplicity`].
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub simplicity: Option<f64>,
    /// Stitches of each round.
    pub counts: Vec<u32>,
}

/// One stuffed shape: the wanted outline, the maker's cloth, and the choices made about it.
#[derive(Debug, Clone, PartialEq, Serialize, Deserialize)]
#[serde(deny_unknown_fields)]
pub struct Piece {
    /// Which piece of its project it is.
    #[serde(default)]
    pub id: PieceId,
    /// What the piece is called.
    pub name: String,
    /// How many of it are made: two ears, say.
    #[serde(default = "one_copy")]
    pub copies: u32,
    /// The wanted side profile. Of a piece given by its rounds only its ends count, open or
    /// closed: what it looks like is the forecast.
    pub outline: Outline,
    /// The rounds, where the piece is given by them and not by its outline.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub given: Option<Given>,
    /// The maker's swatch.
    pub gauge: Gauge,
    /// How hard it is stuffed.
    #[serde(default)]
    pub firmness: Firmness,
    /// 0 faithful to the outline … 1 simple to work; without one, the simplest answer whose
    /// likely fit no hand can tell from the best.
    #[serde(
        default,
        alias = "ease",
        deserialize_with = "simplicity::read",
        skip_serializing_if = "Option::is_none"
    )]
    pub simplicity: Option<f64>,
    /// The counts last accepted: a plan keeps them while no hand could tell its fresh answer
    /// from them. Whoever edits a piece writes them when the edit ends; a plan never does.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub accepted: Option<Accepted>,
    /// How far this maker's hands differ from what is planned for.
    #[serde(default)]
    pub variation: Variation,
    /// Em/Eθ of the cloth; 1 until a sample says otherwise.
    #[serde(default = "one")]
    pub stiffness_along: f64,
    /// What every round must keep to.
    #[serde(default)]
    pub rules: Rules,
    /// Rounds whose stitch count is held: round number → stitches.
    #[serde(default)]
    pub pins: BTreeMap<u32, u32>,
    /// How increases sit from round to round.
    #[serde(default)]
    pub spread: Spread,
    /// Rounds that are to stay plain.
    #[serde(default)]
    pub faces: Vec<Face>,
    /// Straight part of an oval body, mm: its cross-section is a stadium, two half rounds and
    /// two straight sides. 0 for a round body.
    #[serde(default)]
    pub straight_mm: f64,
    /// Which kind of stitch from which round on; single crochet unless said otherwise.
    #[serde(default)]
    pub kinds: Vec<KindFrom>,
    /// Rounds worked into one loop only.
    #[serde(default)]
    pub loops: BTreeMap<u32, Loop>,
    /// Swatches of other kinds of stitch.
    #[serde(default)]
    pub swatches: Swatches,
    /// Spiral or joined rounds.
    #[serde(default)]
    pub working: Working,
    /// The hand that holds the hook.
    #[serde(default)]
    pub hand: Hand,
    /// Which yarn from which round on; round 1 is yarn 0 unless said otherwise.
    #[serde(default)]
    pub bands: Vec<Band>,
    /// Stitches worked in another yarn than their round.
    #[serde(default, skip_serializing_if = "Paint::is_empty")]
    pub paint: Paint,
    /// What estimates reckon with.
    #[serde(default)]
    pub habits: Habits,
    /// A picture the outline is traced from.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub picture: Option<Picture>,
    /// The sizes it is also made in, in the order of the table.
    #[serde(default, skip_serializing_if = "Vec::is_empty")]
    pub sizes: Vec<Size>,
}

/// Em/Eθ of a new piece, until a sample says otherwise.
///
/// Assumption: no measurement of crocheted cloth was found. Of knitted cloth the ratio is 0.5
/// (garter stitch) to 4.9 (stocking stitch; from the data of Singal et al., Nature
/// Communications 2024, doi 10.1038/s41467-024-46498-z), and with 0.7 the ball that the trade
/// works as round is forecast round: see [`crate::plan::ball`]. Files that give none mean 1.
pub const STIFFNESS_ALONG: f64 = 0.7;

fn one() -> f64 {
    1.0
}

fn one_copy() -> u32 {
    1
}

impl Piece {
    /// A piece with this outline and gauge and every other choice at its default.
    pub fn new(name: impl Into<String>, outline: Outline, gauge: Gauge) -> Self {
        Self {
            id: PieceId::default(),
            name: name.into(),
            copies: 1,
            outline,
            given: None,
            gauge,
            firmness: Firmness::default(),
            simplicity: None,
            accepted: None,
            variation: Variation::default(),
            stiffness_along: STIFFNESS_ALONG,
            rules: Rules::default(),
            pins: BTreeMap::new(),
            spread: Spread::default(),
            faces: Vec::new(),
            straight_mm: 0.0,
            kinds: Vec::new(),
            loops: BTreeMap::new(),
            swatches: Swatches::default(),
            working: Working::default(),
            hand: Hand::default(),
            bands: Vec::new(),
            paint: Paint::default(),
            habits: Habits::default(),
            picture: None,
            sizes: Vec::new(),
        }
    }

    /// Index of the yarn round `round` (from 1) is worked in.
    pub fn yarn_of_round(&self, round: u32) -> usize {
        self.bands
            .iter()
            .filter(|band| band.from_round <= round)
            .max_by_key(|band| band.from_round)
            .map_or(0, |band| band.yarn)
    }

    /// Refuses numbers no piece can have.
    ///
    /// # Errors
    /// Names the first field that is out of range, and the mend.
    pub fn validate(&self) -> Result<()> {
        within("copies", f64::from(self.copies), 1.0, f64::from(MOST_COPIES), "")?;
        self.gauge.validate()?;
        within("firmness", self.firmness.0, Firmness::LEAST, Firmness::MOST, "")?;
        if let Some(simplicity) = self.simplicity {
            within("simplicity", simplicity, 0.0, 1.0, "")?;
        }
        within("stiffness_along", self.stiffness_along, 0.1, 10.0, "")?;
        self.rules.validate()?;
        self.variation.validate()?;
        self.habits.validate()?;
        self.swatches.validate()?;
        within("straight_mm", self.straight_mm, 0.0, 1000.0, "mm")?;
        if self.straight_mm > 0.0 && !self.outline.starts_closed() {
            return Err(Error::new(
                "straight_mm",
                "an oval starts on a closed chain, but this piece starts open",
                "set it to 0 or bring the first knot to the axis",
            ));
        }
        if let Some(face) =
            self.faces.iter().find(|f| f.from_round == 0 || f.from_round > f.to_round)
        {
            return Err(Error::new(
                format!("faces, from_round {}", face.from_round),
                format!("it runs from {} to {}", face.from_round, face.to_round),
                "count rounds from 1, first to last",
            ));
        }
        for (&round, &count) in &self.pins {
            if round == 0 || round as usize > MOST_ROUNDS || !(1..=20_000).contains(&count) {
                return Err(Error::new(
                    format!("pins, round {round}"),
                    format!("{count} stitches cannot be held there"),
                    format!("pin rounds 1 to {MOST_ROUNDS} at 1 to 20000 stitches"),
                ));
            }
        }
        if let Some(band) = self.bands.iter().find(|b| b.from_round == 0) {
            return Err(Error::new(
                format!("bands, yarn {}", band.yarn),
                "it starts at round 0",
                "count rounds from 1",
            ));
        }
        self.no_list_without_end()?;
        self.paint.validate()?;
        if let Some(picture) = &self.picture {
            picture.validate()?;
        }
        size::validate(&self.sizes)?;
        if let Some(given) = &self.given {
            given.validate()?;
        }
        self.outline.validate()
    }
}

impl Piece {
    /// Refuses lists of choices that are longer than any piece has rounds: each is looked
    /// through for every round.
    fn no_list_without_end(&self) -> Result<()> {
        let accepted = self.accepted.as_ref().map_or(0, |accepted| accepted.counts.len());
        for (place, entries) in [
            ("faces", self.faces.len()),
            ("kinds", self.kinds.len()),
            ("loops", self.loops.len()),
            ("bands", self.bands.len()),
            ("accepted, counts", accepted),
        ] {
            if entries > MOST_ROUNDS {
                let what = format!("it has {entries} entries");
                return Err(Error::new(place, what, format!("list at most {MOST_ROUNDS}")));
            }
        }
        Ok(())
    }
}

impl Habits {
    fn validate(&self) -> Result<()> {
        within("habits.yarn_per_stitch", self.yarn_per_stitch, 1.0, 60.0, "stitch widths")?;
        within("habits.stitches_per_minute", self.stitches_per_minute, 0.1, 200.0, "")?;
        self.stuffing_g_per_litre.validate()?;
        Ok(())
    }
}
