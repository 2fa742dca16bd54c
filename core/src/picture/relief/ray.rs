//! A ray from the eye: where it meets a part.
//!
//! Far from the cloth it goes on by its distance from it (sphere tracing: Hart, The Visual
//! Computer 12, 1996); within the cloth's thickness by its height over the stitch below it.

use super::{Around, Relief};
use super::cloth::{Care, Layers};
use super::curve::{Near, Stretch};
use super::scene::{Placed, Seen};
use super::shade::{Ground, Lit};
use super::space::{Turned, V3, add, along, chance, dot, eased, scaled, turned, unit};

/// Most steps of a ray.
const MOST_STEPS: usize = 96;
/// Most steps of a ray within the relief, before it is looked up where it is anew.
const DESCENT_STEPS: usize = 14;
/// Height at which the cloth is met where it is drawn smooth, in stitch widths.
const SMOOTH: f32 = -0.10;
/// How much of the relief's own normal light sees: wool scatters it.
const ROUGH: f32 = 0.70;
/// How much one stitch's tint differs from the next: yarn is never even.
const UNEVEN_TINT: f32 = 0.045;

/// Where a ray would be: `from` + depth × `towards`, in the part's own frame.
#[derive(Debug, Clone, Copy)]
pub(super) struct Ray {
    pub(super) from: V3,
    /// Unit vector towards the eye.
    pub(super) towards: V3,
}

/// A place of a ray against the surface of a part.
#[derive(Debug, Clone, Copy)]
struct Beside {
    place: V3,
    around: Around,
    near: Near,
    /// Unit vectors away from the surface, around it in working order and along the profile.
    out: V3,
    hoop: V3,
    meridian: V3,
}

/// Where a ray meets a part.
#[derive(Debug, Clone, Copy)]
pub(super) struct Meeting {
    /// How far towards the eye, mm.
    pub(super) depth: f32,
    /// How much of the ray's width the part covers.
    pub(super) cover: f32,
    /// Whether the part is cut there.
    cut: bool,
}

/// What a ray meets, in the part's own frame.
#[derive(Debug, Clone, Copy)]
pub(super) struct Hit {
    beside: Beside,
    care: Care,
    what: What,
}

#[derive(Debug, Clone, Copy)]
enum What {
    Cloth(Layers),
    Stuffing,
    /// A cut, and how deep within the surface it is, mm.
    Cut(f32),
}

/// How a ray runs over the surface from a place beside it: the distance from the surface, and
/// how far around and along it has gone, as it goes on away from the eye.
struct Course {
    far: f32,
    fall: f32,
    bend: f32,
    aside: [f32; 2],
}

impl Beside {
    fn at(relief: &Relief, place: V3, around: Around, near: Near) -> Self {
        let ([ox, oy], [wr, wz]) = (around.out, near.way);
        Self {
            place,
            around,
            near,
            out: [wz * ox, wz * oy, -wr],
            hoop: [relief.hand * oy, -relief.hand * ox, 0.0],
            meridian: [wr * ox, wr * oy, wz],
        }
    }

    /// The course of a ray towards `towards` from here.
    fn course(&self, relief: &Relief, towards: V3) -> Course {
        let way = [dot(self.hoop, towards), dot(self.meridian, towards)];
        let bend = self.near.segment.map_or(0.0, |s| relief.curve.segment(s).bend);
        let round = if self.around.foot.abs() < relief.straight {
            0.0
        } else {
            self.near.way[1] / self.around.r.max(0.2 * relief.stitch)
        };
        Course {
            far: self.near.far,
            fall: dot(self.out, towards),
            bend: round * way[0] * way[0] + bend * way[1] * way[1],
            aside: way,
        }
    }
}

impl Course {
    fn far(&self, gone: f32) -> f32 {
        self.far + gone * (0.5 * self.bend * gone - self.fall)
    }

    fn aside(&self, gone: f32) -> [f32; 2] {
        self.aside.map(|a| -a * gone)
    }

    /// How far on it first comes down to `high`, or comes nearest to it and how near.
    fn down_to(&self, high: f32) -> (f32, Option<f32>) {
        let over = self.far - high;
        let root = self.fall * self.fall - 2.0 * self.bend * over;
        if root >= 0.0 && (self.fall > 0.0 || self.bend < 0.0) {
            // The form of the root that loses no digits.
            let whole = self.fall + root.sqrt();
            if whole > 1e-6 {
                return (2.0 * over / whole, None);
            }
        }
        if self.fall > 0.0 && self.bend > 1e-9 {
            let nearest = self.fall / self.bend;
            return (nearest, Some(self.far(nearest) - high));
        }
        (0.0, Some(over))
    }
}

impl Ray {
    fn at(&self, depth: f32) -> V3 {
        along(self.from, self.towards, depth)
    }

    /// How far towards the eye a bundle of rays of radius `reach` about this one comes to
    /// `relief` between depths `begin` and `end`; nothing if it never does.
    pub(super) fn approach(
        &self,
        relief: &Relief,
        begin: f32,
        end: f32,
        reach: f32,
    ) -> Option<f32> {
        let mut depth = begin;
        for _ in 0..MOST_STEPS {
            let far = relief.far(self.at(depth)) - reach;
            if far < 0.25 * reach {
                return Some(depth);
            }
            depth -= far;
            if depth < end {
                return None;
            }
        }
        Some(depth)
    }

    /// Where the ray, `wide` mm wide, meets a part between depths `begin` and `end`: on its
    /// stitches where `deep`, else on a smooth skin.
    pub(super) fn meet(
        &self,
        placed: &Placed<'_>,
        begin: f32,
        end: f32,
        wide: f32,
        deep: bool,
    ) -> Option<Meeting> {
        let relief = placed.relief;
        let met = |depth| Some(Meeting { depth, cover: 1.0, cut: false });
        let (mut depth, mut end) = (begin, end);
        let mut cut = false;
        if placed.cutaway {
            // Only y ≤ 0 is left.
            let (y, dy) = (self.from[1], self.towards[1]);
            if dy > 1e-6 {
                let plane = -y / dy;
                cut = plane <= depth;
                depth = depth.min(plane);
            } else if dy < -1e-6 {
                end = end.max(-y / dy);
            } else if y > 0.0 {
                return None;
            }
        }
        let care = Care::new(wide, relief.stitch);
        // Where the cloth is as if it were smooth: a draft, or stitches that have melted.
        let smooth = (!deep || care.melted >= 1.0).then_some(SMOOTH * relief.stitch);
        let mut closest = (f32::INFINITY, depth);
        // Where the ray was last above what it may meet, and how far.
        let mut above: Option<(f32, f32)> = None;
        let mut last = None;
        for _ in 0..MOST_STEPS {
            if depth < end {
                break;
            }
            let place = self.at(depth);
            let around = relief.around(place);
            let near = relief.curve.near(around.r, place[2]);
            if near.segment.is_none() {
                if near.far < 0.0 {
                    // Deep inside: a cut leads there, or a step too far.
                    return if cut { Some(Meeting { depth, cover: 1.0, cut }) } else { met(depth) };
                }
                above = Some((near.far, depth));
                depth -= near.far.max(0.05 * relief.thick);
                cut = false;
                continue;
            }
            let beside = Beside::at(relief, place, around, near);
            if cut && near.far < smooth.unwrap_or(SMOOTH * relief.stitch) {
                return Some(Meeting { depth, cover: 1.0, cut });
            }
            cut = false;
            let course = beside.course(relief, self.towards);
            let high = smooth.unwrap_or(0.0);
            let over = near.far - high;
            if over < -0.06 * relief.stitch
                && let Some((was, from)) = above.take()
                && was > 0.0
            {
                // A step too far: back to where the surface is.
                depth = from + (depth - from) * was / (was - over);
                continue;
            }
            if over > 0.02 * relief.stitch {
                // Above the crests: on to where the surface, bent as it is here, is met, but
                // no farther than can be told from here.
                above = Some((over, depth));
                let (to, misses) = course.down_to(high);
                if over < closest.0 {
                    closest = (over, depth);
                }
                let least = 0.3 * over;
                let step = match misses {
                    None => to.clamp(over, 3.0 * over),
                    Some(_) if to > least => to.min(3.0 * over),
                    Some(_) => over.max(0.1 * relief.stitch),
                };
                depth -= step;
                continue;
            }
            if smooth.is_some() {
                return met(depth);
            }
            above = None;
            match self.descend(relief, &beside, &course, (depth, last), care) {
                Descent::Meets(depth) => return met(depth),
                Descent::Leaves { over, gone, nearest } => {
                    if nearest.0 < closest.0 {
                        closest = nearest;
                    }
                    last = Some((over, depth - gone));
                    depth -= gone;
                }
            }
        }
        let cover = 0.5 - closest.0 / wide;
        let cover = (2.0 * cover).min(1.0);
        (cover > 0.04).then_some(Meeting { depth: closest.1, cover, cut: false })
    }

    /// Follows the ray down into the relief, from beside the surface.
    fn descend(
        &self,
        relief: &Relief,
        beside: &Beside,
        course: &Course,
        (depth, last): (f32, Option<(f32, f32)>),
        care: Care,
    ) -> Descent {
        let stitch = relief.stitch;
        let turn = relief.turn(&beside.around);
        // How far the ray may come before it is looked up anew.
        let tight = course.bend.abs() * stitch > 0.35;
        let most = if tight { 0.15 } else { 0.7 } * stitch;
        let ahead = -course.aside[1] * (0.34 * stitch / course.fall.max(0.3)).min(most);
        let Some(layers) = relief.layers(&beside.near, turn, beside.around.r, ahead) else {
            // Stuffing is smooth.
            return Descent::Meets(depth + course.far.min(0.0) / course.fall.max(0.3));
        };
        let most = most.min(layers.room(course.aside(1.0)) + 0.01 * stitch);
        let mut gone = 0.0;
        let mut last = last.map_or((0.0, f32::INFINITY), |(over, at)| (depth - at - 0.01 * stitch, over));
        let mut nearest = (f32::INFINITY, depth);
        for _ in 0..DESCENT_STEPS {
            let far = course.far(gone);
            let over = far - layers.high(course.aside(gone), care);
            if over < nearest.0 {
                nearest = (over, depth - gone);
            }
            if over < 0.01 * stitch {
                let at = if over < 0.0 && last.1.is_finite() {
                    // Between the last step and this one, in a straight line.
                    last.0 + (gone - last.0) * last.1 / (last.1 - over).max(1e-9)
                } else {
                    gone
                };
                return Descent::Meets(depth - at);
            }
            last = (gone, over);
            if gone >= most || far > 0.03 * stitch && course.bend * gone > course.fall {
                break;
            }
            gone += (over / course.fall.max(0.42)).clamp(0.02 * stitch, 0.20 * stitch);
            gone = gone.min(most);
        }
        Descent::Leaves { over: last.1, gone: gone.max(0.01 * stitch), nearest }
    }

    /// What it meets at `meeting`, seen `wide` mm wide.
    pub(super) fn hit(&self, relief: &Relief, meeting: &Meeting, wide: f32) -> Hit {
        let place = self.at(meeting.depth);
        let around = relief.around(place);
        let near = relief.curve.near(around.r, place[2]);
        let mut beside = Beside::at(relief, place, around, near);
        let care = Care::new(wide, relief.stitch);
        if meeting.cut {
            beside.out = [0.0, 1.0, 0.0];
            return Hit { beside, care, what: What::Cut(-near.far) };
        }
        let turn = relief.turn(&around);
        let layers = relief.layers(&near, turn, around.r, 0.0);
        Hit { beside, care, what: layers.map_or(What::Stuffing, What::Cloth) }
    }
}

/// What becomes of a ray that goes down into the relief.
enum Descent {
    /// It meets it at this depth.
    Meets(f32),
    /// It is above it still, by `over`, after it has gone so far on; how near it came, and
    /// at what depth.
    Leaves { over: f32, gone: f32, nearest: (f32, f32) },
}

impl Hit {
    /// What the map says of part `part` here, counted from 0.
    pub(super) fn seen(&self, part: usize) -> Seen {
        let mut seen = Seen { part: part as u16 + 1, ..Seen::default() };
        if let What::Cloth(layers) = &self.what
            && let Some(top) = layers.top(self.care)
        {
            seen.round = (top.cell.round + 1).min(65_535) as u16;
            seen.stitch = (top.cell.stitch + 1).min(65_535) as u16;
        }
        seen
    }

    /// The place, and the unit normal of the surface without its relief.
    pub(super) fn place(&self) -> (V3, V3) {
        (self.beside.place, self.beside.out)
    }

    /// The light on the place, as an eye whose axes in the part's frame are `eye` sees it;
    /// `open` is how much of it other parts let in.
    pub(super) fn lit(&self, relief: &Relief, eye: &Turned, open: f32) -> Lit {
        let layers = match &self.what {
            What::Cloth(layers) => layers,
            What::Stuffing => return self.stuffing(relief, eye, open),
            What::Cut(deep) => return self.cut(relief, *deep, open),
        };
        let Some(top) = layers.top(self.care) else { return self.stuffing(relief, eye, open) };
        let Beside { near, out, hoop, meridian, .. } = &self.beside;
        let sample = top.sample(self.care);
        let [around, along] = layers.slope(top, &sample);
        let rough = unit(add(*out, add(scaled(*hoop, -around), scaled(*meridian, -along))));
        let normal = unit(add(scaled(rough, ROUGH), scaled(*out, 1.0 - ROUGH)));
        let last = relief.fabric.rounds().saturating_sub(1);
        let cell = &top.cell;
        let apart = 1.0 - self.care.melted;
        let tint = UNEVEN_TINT * chance(cell.stitch + 7, cell.round + 31) * apart;
        let stretch = near.segment.map(|s| relief.curve.segment(s).stretch);
        let within = if stretch == Some(Stretch::Within) {
            let deep = near.along.min(last as f32 + 1.0 - near.along).max(0.0);
            1.0 / (1.0 + 0.55 * deep)
        } else {
            1.0
        };
        Lit {
            normal: turned(eye, normal),
            smooth: turned(eye, *out),
            groove: sample[3],
            open: open * within,
            tint: 1.0 + tint,
            ground: Ground::Yarn {
                round: cell.round.min(last) + 1,
                yarn: relief.fabric.yarn(cell.round),
            },
        }
    }

    fn stuffing(&self, relief: &Relief, eye: &Turned, open: f32) -> Lit {
        let fluff = fluff(self.beside.place, 0.35 * relief.stitch);
        Lit {
            normal: turned(eye, self.beside.out),
            smooth: turned(eye, self.beside.out),
            groove: 0.75 + 0.25 * fluff,
            open: 0.62 * open,
            tint: 1.0,
            ground: Ground::Stuffing,
        }
    }

    fn cut(&self, relief: &Relief, deep: f32, open: f32) -> Lit {
        let cloth = deep < relief.thick;
        let round = self.beside.near.along.max(0.0) as u32;
        let round = round.min(relief.fabric.rounds().saturating_sub(1));
        let fluff = fluff(self.beside.place, 0.35 * relief.stitch);
        let shade = eased(0.0, 3.0 * relief.thick, deep - relief.thick);
        Lit {
            normal: [0.0, 0.0, 1.0],
            smooth: [0.0, 0.0, 1.0],
            groove: if cloth { 0.8 } else { (0.62 + 0.30 * shade) * (0.85 + 0.15 * fluff) },
            open,
            tint: 1.0,
            ground: if cloth {
                Ground::Yarn { round: round + 1, yarn: relief.fabric.yarn(round) }
            } else {
                Ground::Stuffing
            },
        }
    }
}

/// Soft fibre, −1 to 1: the same at a place every time.
fn fluff(place: V3, size: f32) -> f32 {
    let mut sum = 0.0;
    for (by, share) in [(1.0, 0.6), (2.3, 0.4)] {
        let p = scaled(place, by / size);
        let cell = p.map(f32::floor);
        let part = [0, 1, 2].map(|i| eased(0.0, 1.0, p[i] - cell[i]));
        let key = |i: i32, j: i32, k: i32| {
            let at = [cell[0] as i32 + i, cell[1] as i32 + j, cell[2] as i32 + k];
            chance(at[0] as u32 ^ (at[1] as u32).rotate_left(11), at[2] as u32)
        };
        let mut value = 0.0;
        for (i, j, k) in (0..8).map(|n| (n & 1, (n >> 1) & 1, n >> 2)) {
            let weight = |on: i32, part: f32| if on == 1 { part } else { 1.0 - part };
            value += key(i, j, k) * weight(i, part[0]) * weight(j, part[1]) * weight(k, part[2]);
        }
        sum += share * value;
    }
    sum
}
