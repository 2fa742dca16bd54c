//! Stiffness of the cloth of a net.
//!
//! G and B are assumptions: no measurement of crocheted cloth was found. Both are small beside
//! stretch, as they are in any cloth that drapes. How long a ruffle is does not depend on
//! them; how many waves it has does.

/// Stiffness in shear over that along the round: yarns turn on one another easily. Chosen so
/// that six stacked increases make a hexagon up to some thirty rounds, as they do on a table;
/// five times as much folds it into three.
const SHEAR: f64 = 0.01;

/// Bending stiffness over Eθ and the square of a stitch's width: that of a plate as thick as
/// half a stitch. Much less, and cloth puckers at every increase, which no hand sees; much
/// more, and a ruffle is pressed together.
const BENDING: f64 = 0.02;

/// What presses from inside.
#[derive(Debug, Clone, Copy, PartialEq)]
pub enum Filling {
    /// Nothing: cloth that lies or stands as it will.
    Empty,
    /// Stuffing at this pressure, Eθ/mm: see [`crate::plan::forecast::pressure_for_skin`].
    Stuffed(f64),
}

/// Stiffness of the cloth.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct NetCloth {
    /// Em/Eθ, as in the forecast.
    pub along: f64,
    /// Stiffness in compression over stiffness in stretch. The forecast's 0.05 stands for
    /// wrinkles that a surface of revolution cannot show; cloth that is not stuffed makes them
    /// here in the open, and is as stiff one way as the other.
    pub slack: f64,
    /// G/Eθ.
    pub shear: f64,
    /// B/Eθ, mm².
    pub bending_mm2: f64,
}

impl NetCloth {
    /// Cloth of stiffness `along` (Em/Eθ) and stitches `width_mm` wide under `filling`.
    pub fn new(along: f64, width_mm: f64, filling: Filling) -> Self {
        let slack = match filling {
            Filling::Empty => 1.0,
            Filling::Stuffed(_) => crate::plan::forecast::Cloth::default().slack,
        };
        let bending_mm2 = BENDING * width_mm * width_mm;
        Self { along, slack, shear: SHEAR, bending_mm2 }
    }
}
