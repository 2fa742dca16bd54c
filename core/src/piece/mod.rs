//! The piece: everything a person decides about one stuffed shape. Saved, undone, and the
//! only thing [`crate::plan`] reads.

pub mod cloth;
mod ease;
pub mod gauge;
mod measures;
pub mod outline;
mod picture;
mod rules;
pub(crate) mod size;
pub mod starter;
mod yarn;

use std::collections::BTreeMap;

use serde::{Deserialize, Serialize};

use crate::error::{Error, Result, within};
use crate::piece::cloth::{Hand, KindFrom, Loop, Swatches, Working};
use crate::piece::gauge::Gauge;
use crate::piece::outline::Outline;

pub use ease::{EASE_STOPS, ease_stop};
pub use picture::{PICTURE_WIDTH_MM, Picture};
pub use rules::{Face, Rules, Spread};
use size::Size;
pub use yarn::Yarn;

/// Most rounds a piece may come to; more than anyone works, few enough to answer at once.
pub const MOST_ROUNDS: usize = 1200;

/// Most copies of one piece.
pub const MOST_COPIES: u32 = 999;

/// How hard a piece is stuffed: the hoop strain ε* that a ball shows, as a fraction.
///
/// Common practice, no source: stuffed toys stretch 5–15 % in width.
#[derive(Debug, Clone, Copy, PartialEq, PartialOrd, Serialize, Deserialize)]
#[serde(transparent)]
pub struct Firmness(pub f64);

impl Firmness {
    /// Squashes under a finger.
    pub const SOFT: Self = Self(0.02);
    /// Keeps its shape in the hand.
    pub const MEDIUM: Self = Self(0.05);
    /// As hard as the cloth allows without stuffing showing.
    pub const FIRM: Self = Self(0.08);
    /// Least strain the model is good for: below it the cloth hangs rather than stands.
    pub const LEAST: f64 = 0.005;
    /// Greatest strain: beyond it stuffing shows between the stitches.
    pub const MOST: f64 = 0.15;

    /// The nearest of the words soft, medium and firm.
    pub fn word(self) -> &'static str {
        match self.0 {
            e if e < 0.035 => "soft",
            e if e < 0.065 => "medium",
            _ => "firm",
        }
    }

    /// Reads `soft`, `medium`, `firm` or a strain such as `0.08`.
    ///
    /// # Errors
    /// For any other word, or a strain outside 0.005–0.15.
    pub fn parse(text: &str) -> Result<Self> {
        match text.trim() {
            "soft" => Ok(Self::SOFT),
            "medium" => Ok(Self::MEDIUM),
            "firm" => Ok(Self::FIRM),
            number => {
                let strain = number.parse::<f64>().map_err(|_| {
                    Error::new(
                        "firmness",
                        format!("“{number}” is not a firmness"),
                        "write soft, medium, firm or a strain such as 0.08",
                    )
                })?;
                within("firmness", strain, Self::LEAST, Self::MOST, "").map(Self)
            }
        }
    }
}

impl Default for Firmness {
    fn default() -> Self {
        Self::MEDIUM
    }
}

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
    /// Stuffing per litre at medium firmness, g: least and most. Common practice, no source.
    pub stuffing_g_per_litre: (f64, f64),
}

impl Default for Habits {
    fn default() -> Self {
        Self {
            yarn_per_stitch: 10.0,
            stitches_per_minute: 12.0,
            stuffing_g_per_litre: (16.0, 35.0),
        }
    }
}

/// One stuffed shape: the wanted outline, the maker's cloth, and the choices made about it.
#[derive(Debug, Clone, PartialEq, Serialize, Deserialize)]
#[serde(deny_unknown_fields)]
pub struct Piece {
    /// What the piece is called.
    pub name: String,
    /// How many of it are made: two ears, say.
    #[serde(default = "one_copy")]
    pub copies: u32,
    /// The wanted side profile.
    pub outline: Outline,
    /// The maker's swatch.
    pub gauge: Gauge,
    /// How hard it is stuffed.
    #[serde(default)]
    pub firmness: Firmness,
    /// 0 faithful to the outline … 1 easy to work.
    #[serde(default = "default_ease")]
    pub ease: f64,
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

fn default_ease() -> f64 {
    0.3
}

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
            name: name.into(),
            copies: 1,
            outline,
            gauge,
            firmness: Firmness::default(),
            ease: default_ease(),
            stiffness_along: one(),
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
        within("ease", self.ease, 0.0, 1.0, "")?;
        within("stiffness_along", self.stiffness_along, 0.1, 10.0, "")?;
        self.rules.validate()?;
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
        if let Some(picture) = &self.picture {
            picture.validate()?;
        }
        size::validate(&self.sizes)?;
        self.outline.validate()
    }
}

impl Habits {
    fn validate(&self) -> Result<()> {
        within("habits.yarn_per_stitch", self.yarn_per_stitch, 1.0, 60.0, "stitch widths")?;
        within("habits.stitches_per_minute", self.stitches_per_minute, 0.1, 200.0, "")?;
        let (low, high) = self.stuffing_g_per_litre;
        within("habits.stuffing_g_per_litre", low, 0.1, 500.0, "g")?;
        within("habits.stuffing_g_per_litre", high, low, 500.0, "g")?;
        Ok(())
    }
}
