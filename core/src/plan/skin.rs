//! The closed-form skin: the unstuffed cloth that would stuff into a wanted profile.
//!
//! A pressurised skin of revolution is statically determinate: its tensions follow from the
//! wanted shape alone, T_m = P/(2κ2) along and T_θ = (P/κ2)(1 − κ1/(2κ2)) around (the
//! membrane relations of a shell of revolution under uniform pressure: Timoshenko and
//! Woinowsky-Krieger, *Theory of Plates and Shells*, 2nd ed. 1959, § 105; the number of the
//! section from memory). Tensions give strains, strains give the rest size of every ring and band.

use crate::piece::outline::Profile;
use crate::plan::forecast::{Cloth, Skin, pressure_for_outline};

/// Strains beyond these are not asked of the cloth: past −5 % more stitches only wrinkle
/// more, and past 30 % nothing holds the shape. Where a strain is cut off, the place is
/// marked in [`RestSkin::unheld`].
const STRAIN_RANGE: (f64, f64) = (-0.05, 0.30);

/// Why cloth cannot hold the outline somewhere.
#[derive(Debug, Clone, Copy, PartialEq, Eq, PartialOrd, Ord)]
pub enum Unheld {
    /// Hoop tension would be negative: the cloth wrinkles and bulges along its meridian.
    Wrinkles,
    /// The profile runs level: nothing holds it against the stuffing.
    Flat,
}

/// A stretch of the outline that cloth alone does not hold.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct UnheldZone {
    /// What happens there.
    pub why: Unheld,
    /// First and last rest length of the stretch, mm from the start.
    pub from_mm: f64,
    /// See `from_mm`.
    pub to_mm: f64,
}

/// The unstuffed skin as functions of rest length from the start.
#[derive(Debug, Clone)]
pub struct RestSkin {
    /// Rest length from the start at each station, mm; increasing.
    pub along_mm: Vec<f64>,
    /// Rest circumference at each station, mm.
    pub around_mm: Vec<f64>,
    /// Wanted circumference at each station, mm: what stitches of that length together fill.
    pub girth_mm: Vec<f64>,
    /// Stretches that cloth does not hold.
    pub unheld: Vec<UnheldZone>,
    /// Pressure the skin was found for, Eθ/mm.
    pub pressure: f64,
}

impl RestSkin {
    /// The skin that stuffs into `profile` at hoop strain `strain` (see
    /// [`crate::piece::Firmness`]), exact up to where cloth cannot follow.
    pub fn of(profile: &Profile, strain: f64, cloth: &Cloth) -> Self {
        Self::of_oval(profile, strain, cloth, 0.0)
    }

    /// The skin of an oval body, which has a straight side of `straight_mm` between its two
    /// half rounds: its circumference grows by twice that, its curvatures stay those of the
    /// round part (an approximation).
    pub fn of_oval(profile: &Profile, strain: f64, cloth: &Cloth, straight_mm: f64) -> Self {
        let pressure = pressure_for_outline(strain, profile.widest_mm());
        let n = profile.stations.len();
        let (mut along_mm, mut around_mm) = (Vec::with_capacity(n), Vec::with_capacity(n));
        let mut girth_mm = Vec::with_capacity(n);
        let mut unheld: Vec<(f64, Option<Unheld>)> = Vec::with_capacity(n);
        let (mut rest, mut last_pace) = (0.0, 0.0);
        let spacing = profile.length_mm() / (n - 1) as f64;
        for (i, st) in profile.stations.iter().enumerate() {
            let (around, along, why) = if st.card {
                (0.0, 0.0, None) // The card carries the load.
            } else {
                strains(st.bend_along, st.bend_around, pressure, cloth)
            };
            let pace = 1.0 / (1.0 + along);
            if i > 0 {
                rest += 0.5 * spacing * (last_pace + pace);
            }
            last_pace = pace;
            along_mm.push(rest);
            let around_wanted = std::f64::consts::TAU * st.at.r + 2.0 * straight_mm;
            girth_mm.push(around_wanted);
            around_mm.push(around_wanted / (1.0 + around));
            unheld.push((rest, why));
        }
        Self { along_mm, around_mm, girth_mm, unheld: zones(&unheld), pressure }
    }

    /// The rest sizes of `skin` itself, of which nothing is wanted but what it is.
    pub(crate) fn of_skin(skin: &Skin) -> Self {
        let mut along_mm = vec![0.0];
        for height in &skin.height_mm {
            along_mm.push(along_mm[along_mm.len() - 1] + height);
        }
        let around_mm: Vec<f64> =
            std::iter::once(skin.start_mm).chain(skin.around_mm.iter().copied()).collect();
        let girth_mm = around_mm.clone();
        Self { along_mm, around_mm, girth_mm, unheld: Vec::new(), pressure: 0.0 }
    }

    /// Rest length from start to finish, mm.
    pub fn length_mm(&self) -> f64 {
        self.along_mm.last().copied().unwrap_or(0.0)
    }

    /// Rest circumference at `places` (rest lengths, growing), mm.
    pub fn around_at(&self, places: &[f64]) -> Vec<f64> {
        self.at(&self.around_mm, places)
    }

    /// Wanted circumference at `places` (rest lengths, growing), mm.
    pub fn girth_at(&self, places: &[f64]) -> Vec<f64> {
        self.at(&self.girth_mm, places)
    }

    fn at(&self, values: &[f64], places: &[f64]) -> Vec<f64> {
        let mut i = 0;
        places
            .iter()
            .map(|&at| {
                while i + 2 < self.along_mm.len() && self.along_mm[i + 1] < at {
                    i += 1;
                }
                let span = (self.along_mm[i + 1] - self.along_mm[i]).max(1e-12);
                let u = ((at - self.along_mm[i]) / span).clamp(0.0, 1.0);
                values[i] + u * (values[i + 1] - values[i])
            })
            .collect()
    }

    /// Rest length at arc length `s` of `profile`, of which this is the skin, mm.
    pub fn rest_at(&self, profile: &Profile, s: f64) -> f64 {
        let last = self.along_mm.len() - 1;
        let place = (s / profile.length_mm() * last as f64).clamp(0.0, last as f64);
        let i = (place as usize).min(last - 1);
        self.along_mm[i] + (place - i as f64) * (self.along_mm[i + 1] - self.along_mm[i])
    }
}

/// Hoop and meridional strain of cloth whose shape bends by κ1 along and κ2 around, and why
/// it would not hold if it would not.
///
/// E counts per rest length, so with t = T/E: ε_θ = t_θ(1+t_m)/(1−t_θ t_m) and the same with
/// the two exchanged.
fn strains(
    along: f64,
    around: f64,
    pressure: f64,
    cloth: &Cloth,
) -> (f64, f64, Option<Unheld>) {
    let (low, high) = STRAIN_RANGE;
    // Level cloth, or cloth turned inwards (below a lip): the pull along it has no bound.
    let t_m = pressure / (2.0 * around) / cloth.along;
    let level = around <= 0.0 || t_m > high / (1.0 + high);
    let t_m = if level { high / (1.0 + high) } else { t_m };
    let ratio = if level {
        (along / (2.0 * around.max(1e-9))).clamp(-1.0, 1.0)
    } else {
        along / (2.0 * around)
    };
    let t_theta = 2.0 * t_m * cloth.along * (1.0 - ratio);
    let t_theta = if t_theta < 0.0 { t_theta / cloth.slack } else { t_theta };
    let scale = 1.0 - t_theta * t_m;
    let hoop = t_theta * (1.0 + t_m) / scale;
    let meridian = t_m * (1.0 + t_theta) / scale;
    let why = if level {
        Some(Unheld::Flat)
    } else if hoop < low {
        Some(Unheld::Wrinkles)
    } else if hoop > high || meridian > high || scale <= 0.0 {
        Some(Unheld::Flat)
    } else {
        None
    };
    let clamp = |e: f64| if e.is_finite() { e.clamp(low, high) } else { high };
    (clamp(hoop), clamp(meridian), why)
}

/// Runs of neighbouring stations with the same trouble.
fn zones(marks: &[(f64, Option<Unheld>)]) -> Vec<UnheldZone> {
    let mut zones: Vec<UnheldZone> = Vec::new();
    let mut open: Option<Unheld> = None;
    for &(at, why) in marks {
        match (why, zones.last_mut()) {
            (Some(w), Some(zone)) if open == Some(w) => zone.to_mm = at,
            (Some(w), _) => zones.push(UnheldZone { why: w, from_mm: at, to_mm: at }),
            (None, _) => {}
        }
        open = why;
    }
    zones
}
