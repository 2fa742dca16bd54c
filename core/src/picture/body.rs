//! The body: every stitch on the stuffed surface, and how it looks from one side.

use std::cell::OnceCell;

use super::cut;
use super::leaf::Leaf;
use super::light::{Dye, Light, mixed, speckle};
use super::order::back_to_front;
use super::scene::{Paint, Rim, Scene};
use super::stitches::{Cell, Stitches};
use super::surface::Surface;
use super::vector::{Eye, V3, add, scaled, unit};
use super::{Look, Rgb};
use crate::piece::Piece;
use crate::plan::Plan;
use crate::plan::placement::Stitch;

/// Stitches beyond which rounds are drawn as bands.
pub const MOST_STITCHES: usize = 20_000;

/// Cells that face away by more than this are hidden by those before them. A little beyond
/// edge-on, because legs are round.
const EDGE_ON: f32 = -0.12;
/// How far a cell's own normal, the mean of its corners', may be from that of its middle.
const UNSURE: f32 = 0.25;
/// Cloth between the legs, and the inside of a body, against the yarn's own light.
const BETWEEN: f32 = 0.54;
const INSIDE: f32 = 0.46;
/// Cloth between the legs of a lit round: it must stand out on a yarn of its own colour.
const BETWEEN_LIT: f32 = 0.30;
/// How much one stitch's tint differs from the next: yarn is never even.
const UNEVEN: f32 = 0.045;
/// How far a leg's own roundness turns its light to its side.
const ROUND: f32 = 0.50;
/// Cloth that faces the eye by more than this lies among its like: nobody sees its edge.
const AMONG: f32 = 0.45;

/// A stuffed piece in 3-D. A pure function of a piece and its plan; it holds no colours, so
/// that a yarn may change its colour without another body.
#[derive(Debug, Clone)]
pub struct Body {
    surface: Surface,
    stitches: Stitches,
    /// Stitch width and round height, mm.
    stitch: (f32, f32),
    /// Yarn of each round.
    yarns: Vec<usize>,
    /// Whether it can be looked into from the start, and from the other end.
    open: (bool, bool),
}

/// What of a cell is painted: the cloth first, the legs over it.
enum Part<'a> {
    Cloth(&'a Cell),
    Legs(&'a Cell),
    Inside(&'a Cell),
    /// A pole: its round and whether it is the start.
    Pole(bool),
}

impl Body {
    /// The body of `plan`, which must be the plan of `piece`.
    pub fn new(piece: &Piece, plan: &Plan) -> Self {
        let straight = if plan.depth_mm.is_some() { piece.straight_mm } else { 0.0 };
        let left = piece.hand == crate::piece::cloth::Hand::Left;
        let surface = Surface::new(&plan.forecast, straight, left);
        let stitches = Stitches::new(piece, plan, &surface, MOST_STITCHES);
        let open = |node: Option<&(f32, f32)>| node.is_some_and(|n| n.0 > 0.0);
        let ends = (surface.nodes().first(), surface.nodes().last());
        let oval = straight > 0.0;
        Self {
            open: (open(ends.0) && !oval, open(ends.1)),
            surface,
            stitches,
            stitch: (plan.stitch_mm.0 as f32, plan.stitch_mm.1 as f32),
            yarns: plan.rounds.iter().map(|r| r.yarn).collect(),
        }
    }

    /// Pixels a millimetre at which the whole body fits into `width` × `height` pixels,
    /// however it is turned and tilted.
    pub fn fitting(&self, width: f32, height: f32) -> f32 {
        let half = 0.5 * self.surface.straight();
        let nodes = self.surface.nodes();
        let across = nodes.iter().fold(0.0_f32, |most, n| most.max(n.0 + half));
        let round = nodes.iter().fold(0.0_f32, |most, n| most.max((n.0 + half).hypot(n.1)));
        (0.5 * width / across.max(1e-3)).min(0.5 * height / round.max(1e-3))
    }

    /// Half the height of the body along its axis, mm.
    pub fn half_height_mm(&self) -> f32 {
        self.surface.half_height()
    }

    /// The body from one side, back to front, `colours` by yarn. Deterministic; linear in
    /// the stitches.
    pub fn scene(&self, look: &Look, colours: &[Rgb]) -> Scene {
        let mut scene = Scene::default();
        self.draw(look, colours, &mut scene);
        scene
    }

    /// As [`Self::scene`], in the place of what `scene` showed: one that is drawn anew with
    /// every move of a hand keeps its memory.
    pub fn draw(&self, look: &Look, colours: &[Rgb], scene: &mut Scene) {
        scene.clear();
        let eye = Eye::new(look);
        let looks_in = (self.open.0 && eye.side() > 0.0) || (self.open.1 && eye.side() < 0.0);
        let shows = |normal| looks_in || eye.see(normal)[2] > EDGE_ON - UNSURE;
        let cells = self.stitches.cells(&self.surface, shows);
        let mut parts = Vec::with_capacity(2 * cells.len());
        let mut depths = Vec::with_capacity(2 * cells.len());
        // Cloth lies behind the legs of its neighbours, but well before another fold.
        let behind = 0.8 * self.stitch.0.max(self.stitch.1);
        for cell in &cells {
            if look.cutaway && cell.middle[1] > 0.0 {
                continue;
            }
            let facing = eye.see(cell.normal)[2];
            let depth = eye.see(cell.middle)[2];
            if facing > EDGE_ON {
                depths.push(depth - behind);
                parts.push(Part::Cloth(cell));
                if cell.stitch.is_some() {
                    depths.push(depth);
                    parts.push(Part::Legs(cell));
                }
            } else if looks_in {
                depths.push(depth - behind);
                parts.push(Part::Inside(cell));
            }
        }
        for start in [true, false] {
            if let Some(depth) = self.pole_depth(start, &eye) {
                depths.push(depth);
                parts.push(Part::Pole(start));
            }
        }
        let view = View::new(eye, look, colours);
        for i in back_to_front(&depths) {
            match &parts[i as usize] {
                Part::Cloth(cell) => view.cloth(scene, cell),
                Part::Legs(cell) => view.legs(scene, cell),
                Part::Inside(cell) => view.inside(scene, cell),
                &Part::Pole(start) => self.pole(&view, scene, start),
            }
        }
        if look.cutaway {
            cut::section(&view, &self.surface, self.stitch, &self.yarns, scene);
        }
    }

    /// Depth of a closed end's pole, if it is in sight.
    fn pole_depth(&self, start: bool, eye: &Eye) -> Option<f32> {
        let nodes = self.surface.nodes();
        let node = if start { nodes.first()? } else { nodes.last()? };
        let out = eye.see([0.0, 0.0, if start { -1.0 } else { 1.0 }])[2];
        let round = self.surface.straight() == 0.0;
        (round && node.0 <= 0.0 && out > 0.05).then(|| eye.see([0.0, 0.0, node.1])[2] + 0.05)
    }

    /// The dimple of a ring drawn tight, deeper where a thread gathers the last round.
    fn pole(&self, view: &View<'_>, scene: &mut Scene, start: bool) {
        let nodes = self.surface.nodes();
        let last = nodes.len() - 1;
        let (node, round) = if start { (nodes[0], 1) } else { (nodes[last], last as u32) };
        let out = [0.0, 0.0, if start { -1.0 } else { 1.0 }];
        let colour = view.colour(round, self.yarns[round as usize - 1]);
        let light = Light::on(view.eye.see(out), 1.0);
        let middle = [0.0, 0.0, node.1];
        let depth = view.eye.see(middle)[2];
        let radius = self.stitch.0 * if start { 0.17 } else { 0.24 };
        for (part, times) in [(1.0, 0.52), (0.55, 0.30)] {
            let corner = |i: u32| {
                let (sin, cos) = (std::f32::consts::TAU * i as f32 / 12.0).sin_cos();
                view.at(add(middle, scaled([cos, sin, 0.0], part * radius)))
            };
            let colour = light.tint_once(colour, times);
            let paint =
                Paint { colour, depth, round: Some(round), stitch: None, rim: Rim::Seen };
            scene.push(paint, (0..12).map(corner));
        }
    }
}

/// A colour as it is worked plain, as increases and as decreases; each dyed when first seen.
type Dyes = [OnceCell<Dye>; 3];

/// An eye, and the colours it sees.
pub(super) struct View<'a> {
    pub(super) eye: Eye,
    pub(super) look: &'a Look,
    colours: &'a [Rgb],
    /// By yarn; the last are those of a lit round.
    dyes: Vec<Dyes>,
}

impl<'a> View<'a> {
    fn new(eye: Eye, look: &'a Look, colours: &'a [Rgb]) -> Self {
        let dyes = (0..=colours.len()).map(|_| Dyes::default()).collect();
        Self { eye, look, colours, dyes }
    }

    fn is_lit(&self, round: u32) -> bool {
        self.look.lit.is_some_and(|(lit, _)| lit == round)
    }

    /// Colour of a round in this yarn.
    pub(super) fn colour(&self, round: u32, yarn: usize) -> Rgb {
        match self.look.lit {
            Some((lit, colour)) if lit == round => colour,
            _ => self.colours.get(yarn).or(self.colours.first()).copied().unwrap_or([128; 3]),
        }
    }

    /// The same with its deeper tones, as `worked` shows it.
    fn dye(&self, round: u32, yarn: usize, worked: Stitch) -> &Dye {
        let yarns = self.colours.len();
        let index = match self.is_lit(round) {
            true => yarns,
            // As colour() has it, an unknown yarn looks like the first.
            false if yarn < yarns => yarn,
            false => 0,
        };
        self.dyes[index][worked as usize].get_or_init(|| {
            // Shaping is told by form alone to a good eye; a breath of light helps the others.
            let own = self.colour(round, yarn);
            Dye::new(match worked {
                Stitch::Plain => own,
                Stitch::Increase => mixed(own, [255, 252, 240], 0.10),
                Stitch::Decrease => mixed(own, [30, 24, 40], 0.12),
            })
        })
    }

    /// Where a place of the body falls, pixels.
    pub(super) fn at(&self, place: V3) -> [f32; 2] {
        let seen = self.eye.see(place);
        [seen[0] * self.look.scale, seen[1] * self.look.scale]
    }

    fn paint(&self, cell: &Cell, colour: Rgb, rim: Rim) -> Paint {
        let depth = self.eye.see(cell.middle)[2];
        Paint { colour, depth, round: Some(cell.round), stitch: cell.stitch, rim }
    }

    /// Corners of the cloth under a cell, a little beyond its own.
    fn corners(&self, cell: &Cell) -> [[f32; 2]; 4] {
        let corners = cell.cloth.map(|corner| self.at(corner));
        let sum = corners.iter().fold([0.0; 2], |s, c| [s[0] + c[0], s[1] + c[1]]);
        let middle = [0.25 * sum[0], 0.25 * sum[1]];
        corners.map(|c| [0, 1].map(|i| middle[i] + cell.reach * (c[i] - middle[i])))
    }

    fn cloth(&self, scene: &mut Scene, cell: &Cell) {
        let normal = self.eye.see(cell.normal);
        let light = Light::on(normal, cell.openness);
        // A band stands for its stitches: it has their light, not that of the gaps.
        let times = match (cell.stitch.is_some(), self.is_lit(cell.round)) {
            (false, _) => 0.9,
            (true, false) => BETWEEN,
            (true, true) => BETWEEN_LIT,
        };
        let dye = self.dye(cell.round, cell.yarn, Stitch::Plain);
        let among = cell.stitch.is_some() && normal[2] > AMONG;
        let rim = if among { Rim::Lost } else { Rim::Seen };
        let paint = self.paint(cell, light.tint(dye, times), rim);
        scene.push(paint, self.corners(cell));
    }

    fn inside(&self, scene: &mut Scene, cell: &Cell) {
        let normal = self.eye.see(scaled(cell.normal, -1.0));
        let light = Light::on(normal, 1.0);
        let uneven = 1.0 + UNEVEN * speckle(cell.round, cell.stitch.unwrap_or(0));
        let dye = self.dye(cell.round, cell.yarn, Stitch::Plain);
        let paint = self.paint(cell, light.tint(dye, INSIDE * uneven), Rim::Seen);
        scene.push(paint, self.corners(cell));
    }

    fn legs(&self, scene: &mut Scene, cell: &Cell) {
        let normal = self.eye.see(cell.normal);
        let across = self.eye.see(cell.across);
        let uneven = 1.0 + UNEVEN * speckle(cell.round, cell.stitch.unwrap_or(0));
        let dye = self.dye(cell.round, cell.yarn, cell.worked);
        for (leg, to) in cell.legs.iter().zip([-1.0_f32, 1.0]) {
            let leaf = Leaf::seen(leg, &self.eye, across, normal, self.look.scale);
            let turned = unit(add(normal, scaled(across, to * ROUND)));
            let light = Light::on(turned, cell.openness);
            let paint = self.paint(cell, light.tint(dye, uneven), Rim::Seen);
            scene.push(paint, leaf.outline().iter());
            self.strands(scene, cell, &leaf, light, dye, uneven);
        }
    }

    /// The ridge of a leg, which catches the light, and where there is room the twist of its
    /// plies.
    fn strands(
        &self,
        scene: &mut Scene,
        cell: &Cell,
        leaf: &Leaf,
        light: Light,
        dye: &Dye,
        uneven: f32,
    ) {
        let side = leaf.side();
        // The ridge lies towards the light, up and to the left.
        let towards = -(0.62 * side[0] + 0.78 * side[1]);
        let dark = self.paint(cell, light.tint(dye, 0.84 * uneven), Rim::Lost);
        scene.push(dark, leaf.strand((0.02, 0.98), -0.62 * towards, 0.24).iter());
        let ridge = self.paint(cell, light.tint(dye, 1.13 * uneven), Rim::Lost);
        scene.push(ridge, leaf.strand((0.06, 0.94), 0.26 * towards, 0.30).iter());
        if leaf.is_full() {
            let ply = self.paint(cell, light.tint(dye, 0.90 * uneven), Rim::Lost);
            for u in [0.02, 0.30, 0.58] {
                let (a, b) = (leaf.at(u, -0.78), leaf.at(u + 0.32, 0.78));
                let (c, d) = (leaf.at(u + 0.36, 0.76), leaf.at(u + 0.04, -0.76));
                scene.push(ply, [a, b, c, d]);
            }
        }
    }
}
