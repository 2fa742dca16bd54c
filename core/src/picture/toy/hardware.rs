//! What holds a toy, as rods in space: cords, loops and rings, wires.

use std::f64::consts::{PI, TAU};

use super::upright::Upright;
use crate::picture::Rgb;
use crate::picture::relief::{BareForm, PosedPlain};
use crate::project::Project;
use crate::project::toy::attachment::{
    Attachment, Cord, CordHold, CordWay, Hanger, Metal, Sling, Wire,
};
use crate::toy::Assembled;
use crate::toy::narrow::find;
use crate::toy::pose::{Pose, Shapes, sling_holds};
use crate::toy::vector::{Axes, V3};

/// The colour of cords and loops: undyed cotton. By eye, no source.
const COTTON: Rgb = [222, 204, 168];
/// Pieces of a loop.
const PIECES: usize = 28;

/// The rods of attachment `index`, in the picture's axes; none where nothing of it is seen.
pub(super) fn rods(
    project: &Project,
    toy: &Assembled,
    upright: &Upright,
    index: usize,
) -> Vec<PosedPlain> {
    let Some(attachment) = project.toy.attachments.get(index) else { return Vec::new() };
    let draw = Draw { project, toy, upright };
    match attachment {
        Attachment::Cord(cord) => draw.cord(cord),
        Attachment::Loop(hanger) => draw.ring(hanger, index),
        Attachment::Wire(wire) => draw.wire(wire),
        Attachment::Joint(_) => Vec::new(),
        Attachment::Sling(sling) => draw.sling(sling, index),
    }
}

/// A strand that lies through `places`, or a knot where there is only one.
pub(super) fn strand(
    upright: &Upright,
    places: &[V3],
    thick_mm: f64,
    colour: Rgb,
) -> Vec<PosedPlain> {
    if let [at] = *places {
        let pose = upright.pose(&Axes { origin: at, ..Axes::WORLD });
        let form = BareForm::Ball([0.9 * thick_mm as f32; 3]);
        return vec![PosedPlain { form, pose, colour, shines: false }];
    }
    let pairs = places.windows(2);
    pairs.filter_map(|p| rod(upright, (p[0], p[1]), 0.5 * thick_mm, colour, false)).collect()
}

fn rod(
    upright: &Upright,
    (from, to): (V3, V3),
    radius: f64,
    colour: Rgb,
    shines: bool,
) -> Option<PosedPlain> {
    let way = sub(to, from);
    let long = length(way);
    if !(long > 1e-6 && radius > 0.0) {
        return None;
    }
    let z = scaled(way, 1.0 / long);
    let side = square(z);
    let axes = Axes { origin: from, x: side, y: cross(z, side), z };
    let form = BareForm::Rod { radius: radius as f32, long: long as f32 };
    Some(PosedPlain { form, pose: upright.pose(&axes), colour, shines })
}

struct Draw<'a> {
    project: &'a Project,
    toy: &'a Assembled,
    upright: &'a Upright,
}

/// A place on the axis at which a part is held, and the radius there, mm.
struct HeldSpot<'a> {
    pose: &'a Pose,
    at: V3,
    radius: f64,
}

impl Draw<'_> {
    fn held(&self, hold: CordHold) -> Option<HeldSpot<'_>> {
        let pose = self.toy.poses.iter().find(|pose| pose.part == hold.part)?;
        let solid = self.toy.solids.get(&self.project.toy.parts.get(hold.part)?.piece()?)?;
        let place = solid.profile(find(solid, hold.at)?);
        Some(HeldSpot { pose, at: pose.frame.place([0.0, 0.0, place.z]), radius: place.r })
    }

    fn rod(
        &self,
        from: V3,
        to: V3,
        radius: f64,
        colour: Rgb,
        shines: bool,
    ) -> Option<PosedPlain> {
        rod(self.upright, (from, to), radius, colour, shines)
    }

    fn path(&self, places: &[V3], thickness: f64) -> Vec<PosedPlain> {
        let pairs = places.windows(2);
        pairs.filter_map(|p| self.rod(p[0], p[1], 0.5 * thickness, COTTON, false)).collect()
    }

    /// Cords down to another body, or a free loop up.
    fn cord(&self, cord: &Cord) -> Vec<PosedPlain> {
        let Some(from) = self.held(cord.from) else { return Vec::new() };
        let up = self.toy.up;
        let side = square(up);
        let Some(to) = cord.to.and_then(|to| self.held(to)) else {
            // Two legs from the sides, and a bow over them.
            let legs = 0.35 * cord.drop_mm.min(2.0 * from.radius.max(4.0));
            let bow = |i: usize| {
                let (sin, cos) = (PI * i as f64 / PIECES as f64).sin_cos();
                let foot = plus(from.at, side, -legs * cos);
                plus(foot, up, cord.drop_mm * sin.sqrt())
            };
            return self.path(&(0..=PIECES).map(bow).collect::<Vec<_>>(), cord.thickness_mm);
        };
        let ahead = cross(up, side);
        let aside = |radius: f64, turn: f64| {
            let (sin, cos) = (TAU * turn).sin_cos();
            plus(scaled(side, radius * cos), ahead, radius * sin)
        };
        let strands = cord.strands.max(1);
        let mut rods = Vec::new();
        for i in 0..strands {
            let turn = f64::from(i) / f64::from(strands);
            let spread = if strands > 1 { 1.0 } else { 0.0 };
            let high = add(from.at, aside(spread * from.radius, turn));
            let low = add(to.at, aside(spread * to.radius, turn));
            rods.extend(self.path(&[high, low], cord.thickness_mm));
        }
        if cord.way == CordWay::Around {
            let around = |i: usize| add(from.at, aside(from.radius, i as f64 / PIECES as f64));
            rods.extend(
                self.path(&(0..=PIECES).map(around).collect::<Vec<_>>(), cord.thickness_mm),
            );
        }
        rods
    }

    /// A ring that stands on the cloth and bears at its top.
    fn ring(&self, hanger: &Hanger, index: usize) -> Vec<PosedPlain> {
        let Some(hung) = self.toy.hangings.iter().find(|h| h.attachment == index) else {
            return Vec::new();
        };
        let Some(held) = self.held(hanger.on) else { return Vec::new() };
        let radius = hanger.around_mm / TAU;
        let out = sub(hung.point, held.at);
        let out = if length(out) > 1e-6 { scaled(out, 1.0 / length(out)) } else { self.toy.up };
        let side = cross(out, held.pose.frame.y);
        let side =
            if length(side) > 1e-3 { scaled(side, 1.0 / length(side)) } else { square(out) };
        let middle = plus(hung.point, out, -radius);
        let place = |i: usize| {
            let (sin, cos) = (TAU * i as f64 / PIECES as f64).sin_cos();
            plus(plus(middle, out, radius * cos), side, 0.62 * radius * sin)
        };
        self.path(&(0..=PIECES).map(place).collect::<Vec<_>>(), hanger.thickness_mm)
    }

    /// Cords from the cloth to where they meet, as the toy hangs by them.
    fn sling(&self, sling: &Sling, index: usize) -> Vec<PosedPlain> {
        let Some(hung) = self.toy.hangings.iter().find(|h| h.attachment == index) else {
            return Vec::new();
        };
        let shapes = Shapes { toy: &self.project.toy, solids: &self.toy.solids };
        let holds = sling_holds(shapes, &self.toy.poses, sling);
        let legs = holds.into_iter();
        legs.flat_map(|at| self.path(&[at, hung.point], sling.thickness_mm)).collect()
    }

    /// The strands side by side, from the middle of the one body to that of the other.
    fn wire(&self, wire: &Wire) -> Vec<PosedPlain> {
        let (Some(high), Some(low)) = (self.held(wire.carries), self.held(wire.stands_in))
        else {
            return Vec::new();
        };
        let colour = match wire.metal {
            Metal::Steel => [150, 154, 160],
            Metal::Brass => [196, 164, 84],
            Metal::Aluminium => [190, 193, 197],
            Metal::Copper => [186, 112, 72],
        };
        let side = square(self.toy.up);
        let strands = (0..wire.strands.max(1)).filter_map(|i| {
            let off =
                (f64::from(i) - 0.5 * f64::from(wire.strands.max(1) - 1)) * wire.diameter_mm;
            let by = |at: V3| plus(at, side, off);
            self.rod(by(low.at), by(high.at), 0.5 * wire.diameter_mm, colour, true)
        });
        strands.collect()
    }
}

fn add(a: V3, b: V3) -> V3 {
    plus(a, b, 1.0)
}

fn sub(a: V3, b: V3) -> V3 {
    plus(a, b, -1.0)
}

fn plus(a: V3, b: V3, by: f64) -> V3 {
    [0, 1, 2].map(|i| b[i].mul_add(by, a[i]))
}

fn scaled(a: V3, by: f64) -> V3 {
    a.map(|c| c * by)
}

fn length(a: V3) -> f64 {
    a.iter().map(|c| c * c).sum::<f64>().sqrt()
}

fn cross(a: V3, b: V3) -> V3 {
    [a[1] * b[2] - a[2] * b[1], a[2] * b[0] - a[0] * b[2], a[0] * b[1] - a[1] * b[0]]
}

/// A unit vector square to the unit vector `way`.
fn square(way: V3) -> V3 {
    let off = if way[0].abs() < 0.8 { [1.0, 0.0, 0.0] } else { [0.0, 1.0, 0.0] };
    let side = cross(way, off);
    scaled(side, 1.0 / length(side).max(1e-12))
}
