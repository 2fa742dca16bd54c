//! The whole toy as a scene of [`super::relief`]: every copy of every part in its place,
//! upright, its front towards who looks; also drawn apart, each part moved away from what
//! carries it, the way it was put on.
//!
//! `upright` are the axes of the picture, `hardware` the cords, loops and wires, `seen` what is
//! seen where; `shown` is what the picture of a step shows, `called` the names beside a view.

mod called;
mod hardware;
mod seen;
mod shown;
#[cfg(test)]
mod tests;
mod upright;

use std::f64::consts::TAU;

use super::Rgb;
use super::relief::{
    BareForm, PosedPlain, PosedRelief, Quality, Relief, ReliefFilling, ReliefPose, ReliefScene,
    ReliefView, V3 as Spot,
};
use crate::piece::PieceId;
use crate::project::Project;
use crate::project::toy::part::{EdgeHow, Part, PartEnd, PartForm, Thing};
use crate::toy::Assembled;
use crate::toy::solid::{OnCloth, Solid};
use crate::toy::vector::{Axes, V3};
use upright::Upright;

pub use called::CallOut;
pub(crate) use called::{call_outs, column_mm, lettered};
pub use seen::{ToyThing, thing_seen};
pub use shown::{ShownStep, shown_steps};
pub(crate) use shown::{lay_over, stand_out};

/// What is bought or stitched on as an eye or a nose: black. By eye, no source.
const BLACK: Rgb = [30, 27, 27];
/// What any other small thing is shown as: wood. By eye, no source.
const WOOD: Rgb = [201, 168, 122];
/// How far parts are drawn apart at most: in lengths of their own, and at least so many mm.
const APART: f64 = 0.7;
const LEAST_APART_MM: f64 = 14.0;
/// Turns at which the reach of a shape is felt for.
const AROUND: usize = 12;

/// A copy of a crocheted part as it stands in the picture.
#[derive(Debug, Clone, Copy)]
struct ShownCopy {
    pose: usize,
    part: usize,
    piece: PieceId,
    stands: ReliefPose,
    filling: ReliefFilling,
}

/// Something without stitches as it stands in the picture.
#[derive(Debug, Clone, Copy)]
struct PlainCopy {
    of: ToyThing,
    /// The part, of what is one.
    part: Option<usize>,
    placed: PosedPlain,
}

/// What reaches to a place.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
enum Reaches {
    Part(usize),
    Attachment(usize),
}

/// A toy made ready for its pictures, without the reliefs of its pieces.
#[derive(Debug, Clone)]
pub struct ToyPicture {
    upright: Upright,
    copies: Vec<ShownCopy>,
    plain: Vec<PlainCopy>,
    /// By how much each pose is moved away, mm, in the toy's axes.
    moved: Vec<V3>,
    /// Places that reach as far as anything, in the picture's axes, each with what reaches so.
    reach: Vec<(Reaches, Spot)>,
}

/// How large a toy is in its picture's axes, mm.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct ToyReach {
    /// The middle, about which it turns.
    pub middle: Spot,
    /// Half its height.
    pub half_height: f32,
    /// How far anything is from the upright line through the middle.
    pub across: f32,
}

impl ToyReach {
    /// Points, or pixels, a millimetre at which all of it fits into `wide` × `tall` of them,
    /// tilted by so many degrees and however it is turned.
    pub fn fitting(&self, wide: f32, tall: f32, tilt_deg: f32) -> f32 {
        let (dip, level) = tilt_deg.to_radians().sin_cos();
        let high = self.half_height * level.abs() + self.across * dip.abs();
        (0.5 * wide / self.across.max(1e-3)).min(0.5 * tall / high.max(1e-3))
    }
}

/// What of a toy is shown, and in which colours.
#[derive(Debug, Clone, Copy)]
pub struct ToyLight<'a, 'p> {
    /// Colours by yarn.
    pub colours: &'a [Rgb],
    /// As many of the colour that parts in hand are shown in.
    pub lit: &'a [Rgb],
    /// The parts in hand, by index.
    pub parts: &'p [usize],
    /// The attachment in hand.
    pub attachment: Option<usize>,
}

impl ToyPicture {
    /// The picture of `toy`, the toy of `project`; `apart` from 0, together, to 1.
    pub fn new(project: &Project, toy: &Assembled, apart: f64) -> Self {
        let upright = Upright::of(toy);
        let moved = moved(project, toy, apart);
        let mut picture =
            Self { upright, copies: Vec::new(), plain: Vec::new(), moved, reach: Vec::new() };
        for (index, pose) in toy.poses.iter().enumerate() {
            let Some(part) = project.toy.parts.get(pose.part) else { continue };
            let by = picture.moved[index];
            let frame = Axes { origin: sum(pose.frame.origin, by), ..pose.frame };
            match &part.what {
                Thing::Piece(piece) => {
                    let Some(solid) = toy.solids.get(piece) else { continue };
                    let filling = filling(part);
                    let stands = match filling {
                        ReliefFilling::Pressed => frame,
                        _ => worked(toy, pose.part, solid, &frame),
                    };
                    let stands = upright.pose(&stands);
                    let piece = *piece;
                    picture.copies.push(ShownCopy {
                        pose: index,
                        part: pose.part,
                        piece,
                        stands,
                        filling,
                    });
                    let spot =
                        |own: V3| (Reaches::Part(pose.part), upright.spot(frame.place(own)));
                    picture.reach.extend(around(solid).map(spot));
                }
                Thing::Small(small) => {
                    let placed = thing(small.form, upright.pose(&frame));
                    let corner = |own: Spot| (Reaches::Part(pose.part), placed.pose.place(own));
                    picture.reach.extend(placed.form.reach().map(corner));
                    let of = ToyThing::Pose(index);
                    picture.plain.push(PlainCopy { of, part: Some(pose.part), placed });
                }
            }
        }
        // Drawn apart, nothing is held together.
        let held = if apart > 0.0 { 0 } else { project.toy.attachments.len() };
        for index in 0..held {
            let of = ToyThing::Attachment(index);
            for placed in hardware::rods(project, toy, &upright, index) {
                picture.reach.push((Reaches::Attachment(index), placed.pose.at));
                picture.plain.push(PlainCopy { of, part: None, placed });
            }
        }
        for (line, figures) in project.toy.embroidery.iter().zip(&toy.embroidery) {
            let Some(yarn) = project.yarns.get(line.yarn) else { continue };
            for (pose, strand) in &figures.strands {
                let by = picture.moved[*pose];
                let strand: Vec<V3> = strand.iter().map(|&at| sum(at, by)).collect();
                let (of, part) = (ToyThing::Pose(*pose), Some(line.part));
                let rods = hardware::strand(&upright, &strand, figures.thick_mm, yarn.colour);
                let rods = rods.into_iter();
                picture.plain.extend(rods.map(|placed| PlainCopy { of, part, placed }));
            }
        }
        picture
    }

    /// The same with no more than the parts for which `shows` says so, and these `attachments`.
    #[must_use]
    pub fn only(&self, shows: impl Fn(usize) -> bool, attachments: &[usize]) -> Self {
        let reach = self.reach.iter().filter(|(of, _)| match *of {
            Reaches::Part(part) => shows(part),
            Reaches::Attachment(at) => attachments.contains(&at),
        });
        let kept = |thing: &&PlainCopy| match thing.of {
            ToyThing::Attachment(at) => attachments.contains(&at),
            ToyThing::Pose(_) => thing.part.is_some_and(&shows),
        };
        let plain = self.plain.iter().filter(kept);
        Self {
            upright: self.upright,
            copies: self.copies.iter().filter(|copy| shows(copy.part)).copied().collect(),
            plain: plain.copied().collect(),
            moved: self.moved.clone(),
            reach: reach.copied().collect(),
        }
    }

    /// How large it is.
    pub fn reach(&self) -> ToyReach {
        let (mut low, mut high) = ([f32::INFINITY; 3], [f32::NEG_INFINITY; 3]);
        for (_, spot) in &self.reach {
            for i in 0..3 {
                (low[i], high[i]) = (low[i].min(spot[i]), high[i].max(spot[i]));
            }
        }
        if low[0] > high[0] {
            return ToyReach { middle: [0.0; 3], half_height: 1.0, across: 1.0 };
        }
        let middle = [0, 1, 2].map(|i| 0.5 * (low[i] + high[i]));
        let off =
            |(_, spot): &(Reaches, Spot)| (spot[0] - middle[0]).hypot(spot[1] - middle[1]);
        ToyReach {
            middle,
            half_height: 0.5 * (high[2] - low[2]),
            across: self.reach.iter().map(off).fold(0.0, f32::max),
        }
    }

    /// The least upright rectangle around it as `view` sees it, pixels, least corner first.
    pub fn bounds(&self, view: &ReliefView) -> [[f32; 2]; 2] {
        let (mut low, mut high) = ([f32::INFINITY; 2], [f32::NEG_INFINITY; 2]);
        for (_, spot) in &self.reach {
            let [x, y, _] = view.project(*spot);
            low = [low[0].min(x), low[1].min(y)];
            high = [high[0].max(x), high[1].max(y)];
        }
        if low[0] <= high[0] { [low, high] } else { [[0.0; 2]; 2] }
    }

    /// The view, turned and tilted by so many degrees, in which all of it just fits into a
    /// picture of so many pixels, with a little room around it.
    pub fn fitted(&self, (turn_deg, tilt_deg): (f32, f32), size: [u32; 2]) -> ReliefView {
        let middle = self.reach().middle;
        let quality = Quality::Full;
        let mut view = ReliefView { turn_deg, tilt_deg, scale: 1.0, middle, size, quality };
        let [low, high] = self.bounds(&view);
        let [wide, tall] = size.map(|s| s as f32);
        let half = |i: usize, all: f32| (high[i] - 0.5 * all).max(0.5 * all - low[i]).max(0.5);
        view.scale = (0.47 * wide / half(0, wide)).min(0.47 * tall / half(1, tall));
        view
    }

    /// The scene of the parts for which `shows` says so and, where all are shown, of what
    /// holds them; and what each number of its map stands for, from 1 on.
    pub fn scene<'a>(
        &self,
        relief: impl Fn(PieceId) -> Option<&'a Relief>,
        light: &ToyLight<'a, '_>,
        shows: impl Fn(usize) -> bool,
        view: &ReliefView,
    ) -> (ReliefScene<'a>, Vec<ToyThing>) {
        let (mut parts, mut plain, mut things) = (Vec::new(), Vec::new(), Vec::new());
        for copy in self.copies.iter().filter(|copy| shows(copy.part)) {
            let Some(relief) = relief(copy.piece) else { continue };
            let lit = light.parts.contains(&copy.part);
            let colours = if lit { light.lit } else { light.colours };
            let own = PosedRelief::new(relief, colours);
            parts.push(PosedRelief { pose: copy.stands, filling: copy.filling, ..own });
            things.push(ToyThing::Pose(copy.pose));
        }
        for thing in &self.plain {
            let (shown, lit) = match (thing.part, thing.of) {
                (Some(part), _) => (shows(part), light.parts.contains(&part)),
                (None, ToyThing::Attachment(at)) => (true, light.attachment == Some(at)),
                (None, ToyThing::Pose(_)) => (false, false),
            };
            if shown {
                let colour = light.lit.first().filter(|_| lit).copied();
                let colour = colour.unwrap_or(thing.placed.colour);
                plain.push(PosedPlain { colour, ..thing.placed });
                things.push(thing.of);
            }
        }
        (ReliefScene::new(&parts, view).with_plain(&plain), things)
    }

    /// Where a place of the toy, mm in its own axes, lies in the picture's.
    pub fn spot(&self, world: V3) -> Spot {
        self.upright.spot(world)
    }

    /// Where a place on the cloth of pose `index` lies in the picture's axes.
    pub fn on_cloth(
        &self,
        toy: &Assembled,
        index: usize,
        solid: &Solid,
        on: OnCloth,
    ) -> Option<Spot> {
        let pose = toy.poses.get(index)?;
        let at = pose.frame.place(solid.station(on).at);
        Some(self.upright.spot(sum(at, *self.moved.get(index)?)))
    }

    /// The place on the cloth of pose `index` that is seen along a line of the picture's axes
    /// (see [`ReliefView::line`]), whatever is before it; none where the line passes it.
    pub fn seen_on(
        &self,
        toy: &Assembled,
        index: usize,
        solid: &Solid,
        (from, towards): (Spot, Spot),
    ) -> Option<OnCloth> {
        let pose = toy.poses.get(index)?;
        let by = self.moved.get(index)?.map(|c| -c);
        let from = pose.frame.own_place(sum(self.upright.world(from), by));
        solid.seen(from, pose.frame.own_direction(self.upright.world(towards)))
    }
}

/// The axes of a relief, whose rounds begin opposite its y axis, where the part's own front is
/// as it is counted. An oval lies along its straight part, whatever its front.
fn worked(toy: &Assembled, part: usize, solid: &Solid, frame: &Axes) -> Axes {
    let front = toy.parts.get(part).and_then(|figures| figures.front);
    let Some(front) = front.filter(|_| solid.straight_mm() <= 0.0) else { return *frame };
    let (sin, cos) = (TAU * (0.5 - front.turns)).sin_cos();
    let sin = sin * solid.hand();
    let y = frame.direction([sin, cos, 0.0]);
    let x = frame.direction([cos, -sin, 0.0]);
    Axes { x, y, ..*frame }
}

/// What is in a part: nothing in one that is left without stuffing, and a flat edge presses it.
fn filling(part: &Part) -> ReliefFilling {
    let is_flat = part.on.is_some_and(|seat| seat.by.how == EdgeHow::Flat);
    match (is_flat, part.is_stuffed()) {
        (true, _) => ReliefFilling::Pressed,
        (false, true) => ReliefFilling::Stuffed,
        (false, false) => ReliefFilling::Empty,
    }
}

/// A small thing as it is shown.
fn thing(form: PartForm, pose: ReliefPose) -> PosedPlain {
    match form {
        PartForm::Eye(button) | PartForm::Nose(button) => {
            let radius = 0.5 * button.diameter_mm as f32;
            // Embroidery is a flat cushion of yarn; a bought one half a ball and more.
            let high = if button.embroidered { (0.3 * radius).max(1.0) } else { 0.75 * radius };
            let form = BareForm::Ball([radius, radius, high]);
            PosedPlain { form, pose, colour: BLACK, shines: !button.embroidered }
        }
        PartForm::Block(wide, deep, long) => {
            let form = BareForm::Block([wide, deep, long].map(|mm| mm as f32));
            PosedPlain { form, pose, colour: WOOD, shines: false }
        }
    }
}

/// By how much each pose is moved away from what carries it, with that.
fn moved(project: &Project, toy: &Assembled, apart: f64) -> Vec<V3> {
    let mut moved: Vec<V3> = Vec::with_capacity(toy.poses.len());
    for pose in &toy.poses {
        let part = project.toy.parts.get(pose.part);
        let carried = pose.on.and_then(|on| moved.get(on).copied());
        let own = part.filter(|_| pose.on.is_some()).map_or([0.0; 3], |part| {
            let (away, far) = put_on(toy, part, &pose.frame);
            away.map(|c| c * apart * far)
        });
        moved.push(sum(carried.unwrap_or([0.0; 3]), own));
    }
    moved
}

/// The way a part is taken off what carries it, and how far it goes, mm.
fn put_on(toy: &Assembled, part: &Part, frame: &Axes) -> (V3, f64) {
    let solid = part.piece().and_then(|piece| toy.solids.get(&piece));
    let Some(solid) = solid else { return (frame.z, LEAST_APART_MM) };
    let heights = solid.nodes().iter().map(|node| node.z);
    let (low, high) = heights
        .fold((f64::INFINITY, f64::NEG_INFINITY), |(low, high), z| (low.min(z), high.max(z)));
    let away = match part.on.map(|seat| seat.by.end) {
        Some(PartEnd::Start) => frame.z,
        _ => frame.z.map(|c| -c),
    };
    (away, (APART * (high - low)).max(LEAST_APART_MM))
}

/// Places all over a shape, in its own axes.
fn around(solid: &Solid) -> impl Iterator<Item = V3> + '_ {
    let rings = 0..solid.nodes().len();
    rings.flat_map(move |k| {
        let turn = move |i: usize| OnCloth { round: k as f64, turn: i as f64 / AROUND as f64 };
        (0..AROUND).map(move |i| solid.station(turn(i)).at)
    })
}

fn sum(a: V3, b: V3) -> V3 {
    [a[0] + b[0], a[1] + b[1], a[2] + b[2]]
}
