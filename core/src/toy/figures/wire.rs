//! Wire and cord: how thin a wire may be, how far it sways, how long a cord is.
//!
//! Elastic formulas only, as handbooks have them: a column fixed below and free above
//! (Euler), a cantilever, a column under its own weight (Greenhill 1881). Soft craft wire bends
//! for good long before.

use std::f64::consts::PI;

use crate::project::toy::attachment::Metal;

/// Standard gravity, m/s².
pub const GRAVITY: f64 = 9.806_65;

/// A wire is asked to bear so many times what it carries. Our choice: hands and draughts push,
/// and no wire is straight.
pub const SAFETY: f64 = 3.0;

/// The push at which sway is told, N: about the weight of 10 g.
pub const PUSH_N: f64 = 0.1;

/// 9/4 j², j the first zero of J₋⅓ (Greenhill; 7.8373 in handbooks).
pub const GREENHILL: f64 = 7.837_347_438_943_484;

/// How stiff and how heavy a metal is.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Stiffness {
    /// Young's modulus, GPa.
    pub gpa: f64,
    /// Density, kg/m³.
    pub kg_per_m3: f64,
    /// Whether a published table was read for the modulus; otherwise it is the low end of what
    /// textbooks are remembered to give, which asks for a thicker wire.
    pub sourced: bool,
}

impl Stiffness {
    /// Of `metal`. Steel 200, cold-drawn copper 117, aluminium 69 GPa and the densities of
    /// steel and aluminium from published tables; brass, and the density of copper, from
    /// memory, which changes the weight of a wire and hardly its strength.
    pub fn of(metal: Metal) -> Self {
        let (gpa, kg_per_m3, sourced) = match metal {
            Metal::Steel => (200.0, 7860.0, true),
            Metal::Brass => (97.0, 8700.0, false),
            Metal::Aluminium => (69.0, 2710.0, true),
            Metal::Copper => (117.0, 8960.0, true),
        };
        Self { gpa, kg_per_m3, sourced }
    }
}

/// A straight wire of one or more strands side by side that bend each for itself.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Rod {
    /// Its metal.
    pub stiffness: Stiffness,
    /// Thickness of a strand, mm.
    pub diameter_mm: f64,
    /// Strands.
    pub strands: u32,
    /// Free length, mm.
    pub length_mm: f64,
}

impl Rod {
    /// Bending stiffness EI, N·m².
    pub fn bending(&self) -> f64 {
        let metres = self.diameter_mm / 1000.0;
        let moment = PI * metres.powi(4) / 64.0;
        self.stiffness.gpa * 1e9 * moment * f64::from(self.strands)
    }

    /// Own weight a metre, N/m.
    pub fn weight(&self) -> f64 {
        let area = PI * (self.diameter_mm / 1000.0).powi(2) / 4.0;
        self.stiffness.kg_per_m3 * GRAVITY * area * f64::from(self.strands)
    }

    fn metres(&self) -> f64 {
        (self.length_mm / 1000.0).max(1e-6)
    }

    /// The load on its free end at which it buckles, N: π²EI/4L² (Euler, fixed and free).
    pub fn buckles_at_n(&self) -> f64 {
        PI.powi(2) * self.bending() / (4.0 * self.metres().powi(2))
    }

    /// The length at which it buckles under its own weight, mm: (7.8373 EI/ρgA)^⅓ (Greenhill).
    pub fn own_limit_mm(&self) -> f64 {
        1000.0 * (GREENHILL * self.bending() / self.weight()).cbrt()
    }

    /// How far its free end goes aside under a push of `newtons` there, mm: FL³/3EI.
    pub fn aside_mm(&self, newtons: f64) -> f64 {
        1000.0 * newtons * self.metres().powi(3) / (3.0 * self.bending())
    }

    /// How far its end hangs down under its own weight where it lies level, mm: wL⁴/8EI.
    pub fn sags_mm(&self) -> f64 {
        1000.0 * self.weight() * self.metres().powi(4) / (8.0 * self.bending())
    }

    /// How far its free end goes aside under a push of `newtons` with `load_n` on it, mm: the
    /// cantilever's, magnified by 1/(1 − P/P_cr). None where the load alone buckles it.
    pub fn sways_mm(&self, newtons: f64, load_n: f64) -> Option<f64> {
        let left = 1.0 - self.load_with_own_n(load_n) / self.buckles_at_n();
        (left > 0.0).then(|| self.aside_mm(newtons) / left)
    }

    /// `load_n` and of its own weight the share that buckles as a load on its end would:
    /// π²/(4·7.8373) = 0.315, drawn straight between the two limits.
    pub fn load_with_own_n(&self, load_n: f64) -> f64 {
        load_n + PI.powi(2) / (4.0 * GREENHILL) * self.weight() * self.metres()
    }

    /// How many times what is on it it bears before it buckles.
    pub fn safety(&self, load_n: f64) -> f64 {
        self.buckles_at_n() / self.load_with_own_n(load_n).max(1e-12)
    }

    /// The least thickness of a strand with which it bears `load_n` [`SAFETY`] times, mm; none
    /// where none up to 20 mm does.
    pub fn least_mm(&self, load_n: f64) -> Option<f64> {
        let bears = |mm: f64| Self { diameter_mm: mm, ..*self }.safety(load_n) >= SAFETY;
        let (mut low, mut high) = (0.001, 20.0);
        if !bears(high) {
            return None;
        }
        // Strength grows with the fourth power, weight with the second: one place where they
        // meet.
        for _ in 0..60 {
            let middle = 0.5 * (low + high);
            if bears(middle) {
                high = middle;
            } else {
                low = middle;
            }
        }
        Some(high)
    }
}

/// Diameter of American wire gauge `n`, mm: 0.127·92^((36−n)/39); 0 to −3 are 1/0 to 4/0.
pub fn awg_mm(n: i32) -> f64 {
    0.127 * 92.0_f64.powf(f64::from(36 - n) / 39.0)
}

/// The thinnest American gauge that is at least `mm` thick; none beyond 4/0.
pub fn awg_for(mm: f64) -> Option<i32> {
    (-3..=40).rev().find(|&n| awg_mm(n) >= mm)
}

/// Standard wire gauge (BS 3737:1964) and its diameter, mm; the even sizes of craft wire.
pub const SWG: [(u32, f64); 9] = [
    (24, 0.559),
    (22, 0.711),
    (20, 0.914),
    (18, 1.219),
    (16, 1.626),
    (14, 2.032),
    (12, 2.642),
    (10, 3.251),
    (8, 4.064),
];

/// The thinnest even standard gauge that is at least `mm` thick; none beyond 8.
pub fn swg_for(mm: f64) -> Option<u32> {
    SWG.iter().find(|(_, own)| *own >= mm).map(|(n, _)| *n)
}

/// What a knot takes of a cord, in its thicknesses. Common practice, no source.
pub const KNOT: f64 = 12.0;

/// Length of a cord, mm.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct CordLength {
    /// From where it leaves the one to where it enters the other, each strand.
    pub leg_mm: f64,
    /// Around or through what it hangs from.
    pub held_mm: f64,
    /// What all knots take.
    pub knots_mm: f64,
    /// To cut.
    pub all_mm: f64,
}

/// Length of a cord of `strands` legs that go `drop_mm` down and `aside_mm` sideways, held by
/// `held_mm` of it above and by a knot at each end.
pub fn cord_mm(
    drop_mm: f64,
    aside_mm: f64,
    held_mm: f64,
    strands: u32,
    thickness_mm: f64,
) -> CordLength {
    let strands = f64::from(strands.max(1));
    let leg_mm = drop_mm.hypot(aside_mm);
    let knots_mm = (strands + 1.0) * KNOT * thickness_mm;
    CordLength {
        leg_mm,
        held_mm,
        knots_mm,
        all_mm: strands.mul_add(leg_mm, held_mm + knots_mm),
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    fn rod(gpa: f64, kg_per_m3: f64, diameter_mm: f64) -> Rod {
        let stiffness = Stiffness { gpa, kg_per_m3, sourced: true };
        Rod { stiffness, diameter_mm, strands: 1, length_mm: 200.0 }
    }

    fn near(value: f64, known: f64) {
        assert!((value / known - 1.0).abs() < 1e-6, "{value} against {known}");
    }

    /// Computed to thirty digits from π²EI/4L², (7.8373 EI/ρgA)^⅓, FL³/3EI and wL⁴/8EI for a
    /// wire 2.032 mm thick and 0.2 m long.
    #[test]
    fn wires_bear_and_sway_as_handbooks_have_it() {
        let steel = rod(200.0, 7850.0, 2.032);
        near(steel.bending() / 200e9, 8.368_829_369e-13);
        near(steel.buckles_at_n(), 10.324_629);
        near(steel.own_limit_mm(), 1738.5161);
        near(steel.aside_mm(0.1), 1.593_213_7);
        near(steel.sags_mm(), 0.298_306_63);
        let copper = rod(117.0, 8960.0, 2.032);
        near(copper.buckles_at_n(), 6.039_908_2);
        near(copper.own_limit_mm(), 1391.2908);
        near(copper.aside_mm(0.1), 2.723_442_2);
        let aluminium = rod(69.0, 2700.0, 2.032);
        near(aluminium.buckles_at_n(), 3.561_997_1);
        near(aluminium.own_limit_mm(), 1740.2851);
        near(aluminium.aside_mm(0.1), 4.618_010_6);
        near(rod(200.0, 7850.0, 1.0).buckles_at_n(), 0.605_591_34);
    }

    #[test]
    fn the_least_wire_bears_three_times_and_a_thinner_one_does_not() {
        for metal in Metal::ALL {
            let stiffness = Stiffness::of(metal);
            let rod = Rod { stiffness, diameter_mm: 1.0, strands: 2, length_mm: 150.0 };
            let least = rod.least_mm(0.5).expect("some wire does");
            let of = |diameter_mm| Rod { diameter_mm, ..rod }.safety(0.5);
            assert!(of(least) >= SAFETY && of(0.99 * least) < SAFETY, "{metal:?}");
            assert!((of(least) - SAFETY).abs() < 1e-3);
        }
        // At its own limit of length the weight alone buckles it.
        let steel = rod(200.0, 7850.0, 2.032);
        let long = Rod { length_mm: steel.own_limit_mm(), ..steel };
        near(long.safety(0.0), 1.0);
        assert_eq!(long.sways_mm(0.1, 0.01), None);
    }

    /// American gauges by their defining formula, as reprinted in three places; standard
    /// gauges from BS 3737.
    #[test]
    fn gauges_are_as_thick_as_their_tables_say() {
        for (n, mm) in [(36, 0.127), (14, 1.627_726_6), (-3, 11.684), (20, 0.811_82)] {
            assert!((awg_mm(n) / mm - 1.0).abs() < 1e-5, "{n}: {}", awg_mm(n));
        }
        assert_eq!((awg_for(1.0), awg_for(1.6277), awg_for(12.0)), (Some(18), Some(14), None));
        assert_eq!((swg_for(1.0), swg_for(2.032), swg_for(5.0)), (Some(18), Some(14), None));
    }

    #[test]
    fn a_cord_is_as_long_as_its_way() {
        let cord = cord_mm(40.0, 30.0, 100.0, 4, 2.0);
        assert!((cord.leg_mm - 50.0).abs() < 1e-12, "a triangle of 3, 4, 5");
        assert!((cord.all_mm - (200.0 + 100.0 + 5.0 * 24.0)).abs() < 1e-12);
    }
}
