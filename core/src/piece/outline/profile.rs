//! The outline sampled evenly by arc length, with the curvatures the membrane equations need.

use kurbo::{CubicBez, ParamCurve as _, ParamCurveDeriv as _};

use super::{LARGEST_MM, Rz};
use crate::error::{Error, Result};

/// One place on the wanted profile.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Station {
    /// Arc length from the start of the profile, mm.
    pub s: f64,
    /// Where it is.
    pub at: Rz,
    /// dr/ds: 1 where the cloth runs outwards, level.
    pub dr: f64,
    /// dz/ds, the sine of the slope: 1 where the cloth stands upright.
    pub dz: f64,
    /// Curvature along the meridian κ1, 1/mm; positive where the body is convex.
    pub bend_along: f64,
    /// Curvature around the axis κ2 = (dz/ds)/r, 1/mm; its limit κ1 at a smooth pole.
    pub bend_around: f64,
    /// Whether a card insert keeps the cloth level here.
    pub card: bool,
}

/// The wanted profile by arc length: stations evenly spaced from start to finish.
#[derive(Debug, Clone, PartialEq)]
pub struct Profile {
    /// The stations, in working order; at least two.
    pub stations: Vec<Station>,
    /// Arc length at every knot, mm.
    pub knots_mm: Vec<f64>,
}

/// Sub-intervals of a Bézier on which its arc length is integrated. With three-point Gauss
/// on each the error is far below a micrometre for spans of any shape a person draws.
const PANELS: usize = 16;

impl Profile {
    /// `curve` at `intervals + 1` places evenly spaced by arc length.
    pub(super) fn sample(curve: &[CubicBez], intervals: usize) -> Self {
        let marks = arc_length_marks(curve);
        let length = marks.last().map_or(0.0, |m| m.s);
        let mut stations = Vec::with_capacity(intervals + 1);
        let mut panel = 0;
        for i in 0..=intervals {
            let s = length * i as f64 / intervals as f64;
            while panel + 2 < marks.len() && (marks[panel + 1].s < s || !marks[panel].spans()) {
                panel += 1;
            }
            stations.push(station(curve, &marks[panel], &marks[panel + 1], s));
        }
        let mut knots_mm: Vec<f64> = marks.iter().filter(|m| m.t == 0.0).map(|m| m.s).collect();
        knots_mm.push(length);
        Self { stations, knots_mm }
    }

    /// Marks the stations that a card insert keeps level.
    pub(super) fn lay_cards(&mut self, knots: &[super::Knot]) {
        let spans = knots.iter().zip(self.knots_mm.windows(2));
        for ends in spans.filter(|(knot, _)| knot.card).map(|(_, ends)| ends) {
            let under = |st: &&mut Station| (ends[0]..=ends[1]).contains(&st.s);
            self.stations.iter_mut().filter(under).for_each(|st| st.card = true);
        }
    }

    /// Length of the profile along the cloth, mm.
    pub fn length_mm(&self) -> f64 {
        self.stations.last().map_or(0.0, |st| st.s)
    }

    /// Widest radius, mm.
    pub fn widest_mm(&self) -> f64 {
        self.stations.iter().fold(0.0, |widest, st| st.at.r.max(widest))
    }

    /// Extent along the axis, mm.
    pub fn height_mm(&self) -> f64 {
        let low = self.stations.iter().fold(f64::INFINITY, |low, st| st.at.z.min(low));
        let high = self.stations.iter().fold(f64::NEG_INFINITY, |high, st| st.at.z.max(high));
        high - low
    }

    /// Just the places, in order.
    pub fn places(&self) -> Vec<Rz> {
        self.stations.iter().map(|st| st.at).collect()
    }

    /// Refuses a profile that is nowhere, swings out further than any knot may lie, folds back
    /// on itself, or crosses the axis or itself.
    pub(super) fn validate(&self) -> Result<()> {
        let far = |st: &Station| {
            !(st.at.r.abs() <= 2.0 * LARGEST_MM && st.at.z.abs() <= 3.0 * LARGEST_MM)
        };
        if self.stations.iter().any(|st| far(st) || !st.s.is_finite()) {
            return Err(Error::new(
                "outline",
                format!("the curve swings out beyond {:.0} m", 2e-3 * LARGEST_MM),
                "move the knots nearer to one another",
            ));
        }
        if let Some(at) = fold(&self.stations) {
            return Err(Error::new(
                format!("outline, radius {:.0} mm, height {:.0} mm", at.r, at.z),
                "the curve folds back on itself",
                "pull the knots beside it apart",
            ));
        }
        let inner = &self.stations[1..self.stations.len() - 1];
        if let Some(over) = inner.iter().find(|st| st.at.r <= 0.0) {
            return Err(Error::new(
                format!("outline, {:.0} mm along the axis", over.at.z),
                "the curve crosses the axis between two knots",
                "move the nearest knot outwards or add one there",
            ));
        }
        if let Some(at) = crossing(&self.stations) {
            return Err(Error::new(
                format!("outline, radius {:.0} mm, height {:.0} mm", at.r, at.z),
                "the curve crosses itself",
                "pull the knots of the loop apart",
            ));
        }
        Ok(())
    }
}

/// A boundary between two panels: which Bézier, where on it, and the arc length there.
struct PanelMark {
    span: usize,
    t: f64,
    s: f64,
}

impl PanelMark {
    /// Whether a panel begins here (the last mark of a span begins none).
    fn spans(&self) -> bool {
        self.t < 1.0
    }
}

fn arc_length_marks(curve: &[CubicBez]) -> Vec<PanelMark> {
    // Three-point Gauss–Legendre on [0, 1].
    const NODES: [(f64, f64); 3] = [
        (0.112_701_665_379_258_3, 5.0 / 18.0),
        (0.5, 8.0 / 18.0),
        (0.887_298_334_620_741_7, 5.0 / 18.0),
    ];
    let mut marks = Vec::with_capacity(curve.len() * (PANELS + 1));
    let mut s = 0.0;
    for (span, bezier) in curve.iter().enumerate() {
        let deriv = bezier.deriv();
        marks.push(PanelMark { span, t: 0.0, s });
        let step = 1.0 / PANELS as f64;
        for panel in 0..PANELS {
            let from = panel as f64 * step;
            let speed = |u: f64| {
                let d = deriv.eval(from + u * step);
                (d.x * d.x + d.y * d.y).sqrt()
            };
            s += step * NODES.iter().map(|&(u, weight)| weight * speed(u)).sum::<f64>();
            marks.push(PanelMark { span, t: (panel + 1) as f64 * step, s });
        }
    }
    marks
}

/// The station at arc length `s` on the panel between two marks.
fn station(curve: &[CubicBez], from: &PanelMark, to: &PanelMark, s: f64) -> Station {
    let bezier = &curve[from.span];
    let first = bezier.deriv();
    let speed = |t: f64| {
        let d = first.eval(t);
        (d.x * d.x + d.y * d.y).sqrt().max(1e-12)
    };
    // t as the cubic Hermite of s: its slopes at both marks are known.
    let (ds, dt) = (to.s - from.s, to.t - from.t);
    let u = if ds > 0.0 { ((s - from.s) / ds).clamp(0.0, 1.0) } else { 0.0 };
    let (m0, m1) = (ds / speed(from.t), ds / speed(to.t));
    let t = from.t + u * (m0 + u * (3.0 * dt - 2.0 * m0 - m1 + u * (m0 + m1 - 2.0 * dt)));
    // Where a fold stops the curve, its pace is nothing and those slopes have no bound.
    let t = t.clamp(from.t, to.t);
    let place = bezier.eval(t);
    let d1 = first.eval(t);
    let d2 = first.deriv().eval(t);
    let pace = (d1.x * d1.x + d1.y * d1.y).sqrt().max(1e-12);
    let bend_along = (d1.x * d2.y - d1.y * d2.x) / (pace * pace * pace);
    let at = Rz::new(place.x, place.y);
    let dz = d1.y / pace;
    // The pole itself: at a slender tip its neighbours come very near the axis too, and how
    // many mm that is must not matter.
    let bend_around = if at.r <= 1e-9 * ds { bend_along } else { dz / at.r };
    Station { s, at, dr: d1.x / pace, dz, bend_along, bend_around, card: false }
}

/// Where the curve first turns about and runs back along itself, if it does.
fn fold(stations: &[Station]) -> Option<Rz> {
    stations.windows(3).find_map(|three| {
        let step =
            |i: usize| (three[i + 1].at.r - three[i].at.r, three[i + 1].at.z - three[i].at.z);
        let (a, b) = (step(0), step(1));
        let (along, across) = (a.0 * b.0 + a.1 * b.1, a.0 * b.1 - a.1 * b.0);
        (along < 0.0 && across.abs() < 1e-6 * along.abs()).then_some(three[1].at)
    })
}

/// Where the polyline through the stations first crosses itself, if it does.
fn crossing(stations: &[Station]) -> Option<Rz> {
    let rises = stations.windows(2).all(|pair| pair[1].at.z > pair[0].at.z);
    if rises {
        return None; // Always upwards: it cannot meet itself.
    }
    let places: Vec<Rz> = stations.iter().map(|st| st.at).collect();
    let side = |a: Rz, b: Rz, p: Rz| (b.r - a.r) * (p.z - a.z) - (b.z - a.z) * (p.r - a.r);
    for i in 0..places.len() - 1 {
        let (a, b) = (places[i], places[i + 1]);
        for j in i + 2..places.len() - 1 {
            let (c, d) = (places[j], places[j + 1]);
            let apart = c.r.min(d.r) > a.r.max(b.r)
                || a.r.min(b.r) > c.r.max(d.r)
                || c.z.min(d.z) > a.z.max(b.z)
                || a.z.min(b.z) > c.z.max(d.z);
            if !apart
                && side(a, b, c) * side(a, b, d) < 0.0
                && side(c, d, a) * side(c, d, b) < 0.0
            {
                return Some(c);
            }
        }
    }
    None
}

#[cfg(test)]
mod tests {
    use super::super::{Knot, Outline};

    fn semicircle(radius: f64, knots: u32) -> Outline {
        let knot = |i: u32| {
            let turn = std::f64::consts::PI * f64::from(i) / f64::from(knots);
            let r = if i == 0 || i == knots { 0.0 } else { radius * turn.sin() };
            Knot::new(r, radius * (1.0 - turn.cos()))
        };
        Outline { knots: (0..=knots).map(knot).collect() }
    }

    #[test]
    fn a_half_circle_has_the_length_and_curvature_of_one() {
        let profile = semicircle(40.0, 12).profile(400);
        assert!((profile.length_mm() - 40.0 * std::f64::consts::PI).abs() < 0.01);
        for st in &profile.stations {
            assert!((st.bend_along * 40.0 - 1.0).abs() < 0.03, "{st:?}");
            assert!((st.bend_around * 40.0 - 1.0).abs() < 0.03, "{st:?}");
        }
    }

    #[test]
    fn stations_are_evenly_spaced() {
        let profile = semicircle(40.0, 5).profile(100);
        for pair in profile.stations.windows(2) {
            let chord = pair[0].at.distance(pair[1].at);
            assert!((chord / (profile.length_mm() / 100.0) - 1.0).abs() < 1e-3);
        }
    }

    #[test]
    fn a_curve_that_folds_back_on_itself_is_refused_and_sampled_soundly_all_the_same() {
        let knots = |middle: f64, end: f64| {
            vec![Knot::new(0.0, 0.0), Knot::new(30.0, middle), Knot::new(0.0, end)]
        };
        // Flat; open at its end, so that it folds between two stations.
        let open = vec![Knot::new(0.0, 0.0), Knot::new(31.7, 0.0), Knot::new(5.0, 0.0)];
        for knots in [knots(0.0, 0.0), open] {
            let outline = Outline { knots };
            for intervals in [7, 240, 401] {
                let profile = outline.profile(intervals);
                assert!(profile.widest_mm() < 40.0, "{}", profile.widest_mm());
            }
            let fault = outline.validate().expect_err("it folds");
            assert!(fault.what.contains("folds"), "{fault}");
        }
        assert!(Outline { knots: knots(0.5, 1.0) }.validate().is_ok(), "thin is not folded");
    }

    #[test]
    fn a_curve_through_the_axis_or_itself_is_refused() {
        let across = Outline::new(vec![
            Knot::new(0.0, 0.0),
            Knot::new(40.0, 3.0),
            Knot::new(1.0, 8.0),
            Knot::new(2.0, 60.0),
            Knot::new(0.0, 70.0),
        ]);
        let fault = across.expect_err("it dips below the axis");
        assert!(fault.what.contains("axis"), "{fault}");
        let loops = Outline::new(vec![
            Knot::corner(5.0, 0.0),
            Knot::corner(40.0, 30.0),
            Knot::corner(40.0, 10.0),
            Knot::corner(5.0, 40.0),
        ]);
        assert!(loops.is_err_and(|e| e.what.contains("itself")));
    }
}
