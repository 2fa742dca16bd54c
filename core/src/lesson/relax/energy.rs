//! Energy of a net in space and its gradient: the forecast's, stitch by stitch, and what a
//! surface that need not be round has besides.
//!
//! In units of Eθ and mm, φ as in [`crate::plan::forecast::energy`]:
//!
//! ```text
//! E = Σ yarns   stiffness · area · φ(ℓ/rest − 1)          1 along rounds, Em/Eθ up stitches
//!   + Σ faces   ½ G · area · (u·v/area)²                  u along, v across: how far it shears
//!   + Σ nodes   ½ B · |Lx|²/area                          L the cotangent Laplacian at rest
//!   − P V
//! ```
//!
//! Summed over a round whose stitches are all alike the first line is the forecast's, and no
//! surface of revolution shears. Bending is quadratic: the Laplacian is that of the net at
//! rest, so flat cloth bends for nothing however it lies (the isometric bending model of
//! Bergou, Wardetzky, Harmon, Zorin and Grinspun, *A Quadratic Bending Model for Inextensible
//! Surfaces*, 2006; from memory).

use super::cloth::{Filling, NetCloth};
use super::cotangents::{Cotangents, stitch_area};
use super::ends::{Ends, HELD, press};
use crate::lesson::net::{Net, NetEnd, NetFace};
use crate::lesson::space::{V3, add, dot, length, plus, scaled, sub};

/// A spring ready to be summed.
#[derive(Debug, Clone, Copy)]
struct Stretched {
    ends: [u32; 2],
    per_rest: f64,
    /// Stiffness times area, Eθ·mm².
    weight: f64,
    /// Stiffness in compression over that in stretch.
    slack: f64,
    /// Its share in the Laplacian.
    cotangent: f64,
}

/// A face ready to be summed.
#[derive(Debug, Clone, Copy)]
struct Shear {
    face: NetFace,
    /// G/area.
    weight: f64,
}

/// Energy in parts, Eθ·mm².
#[derive(Debug, Clone, Copy, PartialEq, Default)]
pub struct NetEnergy {
    /// Stretch along and across.
    pub stretch: f64,
    /// Shear.
    pub shear: f64,
    /// Bending.
    pub bending: f64,
    /// What the stuffing gives, −P V.
    pub pressed: f64,
}

impl NetEnergy {
    /// All of it, Eθ·mm²; of a stuffed net below 0.
    pub fn total(self) -> f64 {
        self.elastic() + self.pressed
    }

    /// What the cloth holds, Eθ·mm².
    pub fn elastic(self) -> f64 {
        self.stretch + self.shear + self.bending
    }
}

/// The energy of one net as a function of its places.
#[derive(Debug, Clone)]
pub(super) struct Forces {
    pulls: Vec<Stretched>,
    shears: Vec<Shear>,
    /// B/area of every node; 0 where nothing bends.
    bends: Vec<f64>,
    ends: Ends,
    pressure: f64,
    /// Lx of every node, then B·Lx/area.
    laplacian: Vec<V3>,
}

impl Forces {
    pub(super) fn new(net: &Net, cloth: &NetCloth, filling: Filling) -> Self {
        let pressure = match filling {
            Filling::Empty => 0.0,
            Filling::Stuffed(pressure) => pressure,
        };
        let last = net.rings().len() - 1;
        let gathered = net.end() == NetEnd::Drawn;
        let cotangents = Cotangents::of(net);
        let pulls = net
            .springs()
            .iter()
            .zip(&cotangents.springs)
            .map(|(spring, &cotangent)| {
                // Gathered loops are held at the yarn's own thickness.
                let held = gathered && spring.along_round && spring.round as usize == last;
                let stiffness = match (held, spring.along_round) {
                    (true, _) => HELD,
                    (false, true) => 1.0,
                    (false, false) => cloth.along,
                };
                Stretched {
                    ends: spring.ends,
                    per_rest: 1.0 / spring.rest_mm,
                    weight: stiffness * spring.area_mm2,
                    slack: if held { 1.0 } else { cloth.slack },
                    cotangent,
                }
            })
            .collect();
        let shears = net
            .faces()
            .map(|face| {
                let area = stitch_area(net, face);
                let share = if matches!(face, NetFace::Square(_)) { 1.0 } else { 0.5 };
                Shear { face, weight: share * cloth.shear / area }
            })
            .collect();
        let mut bends = vec![0.0; net.len()];
        for (k, ring) in net.rings().iter().enumerate() {
            // Of an open edge and of gathered loops the Laplacian knows one side only.
            if k == last || (k == 0 && ring.count > 1) {
                continue;
            }
            let nodes = ring.first..ring.first + ring.count;
            for (bend, area) in bends[nodes.clone()].iter_mut().zip(&cotangents.areas[nodes]) {
                *bend = cloth.bending_mm2 / area.max(1e-12);
            }
        }
        Self {
            pulls,
            shears,
            bends,
            ends: Ends::of(net, filling),
            pressure,
            laplacian: vec![[0.0; 3]; net.len()],
        }
    }

    /// Stiffness between nodes, as `(a, b, Eθ)`: what a step is made by.
    pub(super) fn couplings(&self) -> impl Iterator<Item = (u32, u32, f64)> + '_ {
        let pull = |p: &Stretched| (p.ends[0], p.ends[1], p.weight * p.per_rest * p.per_rest);
        self.pulls.iter().map(pull)
    }

    /// Stiffness that holds nodes by themselves, as `(node, Eθ)`.
    pub(super) fn anchors(&self) -> impl Iterator<Item = (u32, f64)> + '_ {
        self.ends.held().map(|node| (node, HELD))
    }

    /// The energy at `x`; its gradient is written to `gradient`, Eθ·mm.
    pub(super) fn value_and_gradient(&mut self, x: &[V3], gradient: &mut [V3]) -> NetEnergy {
        gradient.fill([0.0; 3]);
        let stretch = self.stretch(x, gradient) + self.ends.hold(x, gradient);
        let bending = self.bend(gradient);
        let shear = self.shear(x, gradient);
        let pressed = if self.pressure > 0.0 {
            let faces = self.shears.iter().map(|shear| shear.face);
            press(self.pressure, faces, x, gradient)
                + self.ends.press(self.pressure, x, gradient)
        } else {
            0.0
        };
        NetEnergy { stretch, shear, bending, pressed }
    }

    /// Springs; gathers the Laplacian on the way.
    fn stretch(&mut self, x: &[V3], gradient: &mut [V3]) -> f64 {
        self.laplacian.fill([0.0; 3]);
        let mut energy = 0.0;
        for pull in &self.pulls {
            let [a, b] = pull.ends.map(|i| i as usize);
            let d = sub(x[b], x[a]);
            let long = length(d);
            let strain = long * pull.per_rest - 1.0;
            let stiffness = if strain < 0.0 { pull.slack } else { 1.0 } * pull.weight;
            energy += 0.5 * stiffness * strain * strain;
            let force = stiffness * strain * pull.per_rest / long.max(1e-12);
            let bent = scaled(d, pull.cotangent);
            gradient[a] = plus(gradient[a], d, -force);
            gradient[b] = plus(gradient[b], d, force);
            self.laplacian[a] = add(self.laplacian[a], bent);
            self.laplacian[b] = sub(self.laplacian[b], bent);
        }
        energy
    }

    fn bend(&mut self, gradient: &mut [V3]) -> f64 {
        let mut energy = 0.0;
        for (l, &weight) in self.laplacian.iter_mut().zip(&self.bends) {
            energy += 0.5 * weight * dot(*l, *l);
            *l = scaled(*l, weight);
        }
        for pull in &self.pulls {
            let [a, b] = pull.ends.map(|i| i as usize);
            let force = scaled(sub(self.laplacian[b], self.laplacian[a]), pull.cotangent);
            gradient[a] = add(gradient[a], force);
            gradient[b] = sub(gradient[b], force);
        }
        energy
    }

    fn shear(&self, x: &[V3], gradient: &mut [V3]) -> f64 {
        let mut energy = 0.0;
        let mut put = |i: u32, by: V3| gradient[i as usize] = add(gradient[i as usize], by);
        for &Shear { face, weight } in &self.shears {
            let at = |i: u32| x[i as usize];
            // Twice u and v, so that no face takes a half before the end.
            let (u, v) = match face {
                NetFace::Square([a, b, c, d]) => {
                    let (a, b, c, d) = (at(a), at(b), at(c), at(d));
                    let (ca, bd) = (sub(c, a), sub(b, d));
                    (add(ca, bd), sub(ca, bd))
                }
                NetFace::Widening([p, s, t]) => {
                    let (p, s, t) = (at(p), at(s), at(t));
                    (scaled(sub(t, s), 2.0), add(sub(s, p), sub(t, p)))
                }
                NetFace::Narrowing([p, q, s]) => {
                    let (p, q, s) = (at(p), at(q), at(s));
                    (scaled(sub(q, p), 2.0), add(sub(s, p), sub(s, q)))
                }
            };
            let along = 0.25 * dot(u, v);
            energy += 0.5 * weight * along * along;
            // Half the derivatives by u and v.
            let (gu, gv) = (scaled(v, 0.25 * weight * along), scaled(u, 0.25 * weight * along));
            match face {
                NetFace::Square([a, b, c, d]) => {
                    let (sum, difference) = (add(gu, gv), sub(gu, gv));
                    put(a, scaled(sum, -1.0));
                    put(b, difference);
                    put(c, sum);
                    put(d, scaled(difference, -1.0));
                }
                NetFace::Widening([p, s, t]) => {
                    put(p, scaled(gv, -2.0));
                    put(s, plus(gv, gu, -2.0));
                    put(t, plus(gv, gu, 2.0));
                }
                NetFace::Narrowing([p, q, s]) => {
                    put(p, scaled(plus(gv, gu, 2.0), -1.0));
                    put(q, plus(scaled(gv, -1.0), gu, 2.0));
                    put(s, scaled(gv, 2.0));
                }
            }
        }
        energy
    }
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::extent::StitchSize;
    use crate::lesson::net::NetRound;
    use crate::piece::given::Start;
    use crate::plan::placement::Placer;

    /// A net with all that has an energy: increases, decreases and both kinds of end.
    fn net(start: Start, end: NetEnd) -> Net {
        let mut placer = Placer::new(crate::piece::Spread::Turned, 0.0);
        let mut below = start.joined();
        let rounds: Vec<NetRound> = [6, 11, 15, 15, 10, 7]
            .into_iter()
            .map(|count| {
                let placement = match below {
                    Some(below) => placer.place(below, count),
                    None => crate::piece::stitch::Placement::plain(count),
                };
                below = Some(count);
                NetRound { placement, stitch_mm: StitchSize { width: 4.0, height: 3.5 } }
            })
            .collect();
        Net::new(start, &rounds, end).expect("a net")
    }

    #[test]
    fn the_gradient_is_the_slope_of_the_energy() {
        let cloth = NetCloth { along: 0.7, slack: 0.3, shear: 0.4, bending_mm2: 0.8 };
        for (start, end) in [
            (Start::Ring, NetEnd::Drawn),
            (Start::Ring, NetEnd::Open),
            (Start::Chain(8), NetEnd::Open),
        ] {
            let net = net(start, end);
            let mut forces = Forces::new(&net, &cloth, Filling::Stuffed(0.02));
            let mut x: Vec<V3> = (0..net.len())
                .map(|i| [1.0, 1.7, 2.9].map(|s| 9.0 * (i as f64 * s + s * s).sin()))
                .collect();
            let mut gradient = vec![[0.0; 3]; x.len()];
            let mut unused = gradient.clone();
            forces.value_and_gradient(&x, &mut gradient);
            for i in 0..x.len() {
                for axis in 0..3 {
                    let step = 1e-5;
                    let at = x[i][axis];
                    x[i][axis] = at + step;
                    let above = forces.value_and_gradient(&x, &mut unused).total();
                    x[i][axis] = at - step;
                    let below = forces.value_and_gradient(&x, &mut unused).total();
                    x[i][axis] = at;
                    let slope = (above - below) / (2.0 * step);
                    let off = (slope - gradient[i][axis]).abs();
                    assert!(off < 1e-4 * (1.0 + slope.abs()), "{i}.{axis}: {slope}, {off}");
                }
            }
        }
    }
}
