//! The body: every stitch on the stuffed surface, and how it looks from one side.

use super::cut;
use super::light::Light;
use super::order::back_to_front;
use super::scene::{Paint, Rim, Scene};
use super::stitches::{Cell, Stitches};
use super::surface::Surface;
use super::vector::{Eye, add, scaled};
use super::view::BodyView;
use super::{Rgb, Viewpoint};
use crate::piece::Piece;
use crate::plan::Plan;

/// Stitches beyond which rounds are drawn as bands.
pub const MOST_STITCHES: usize = 20_000;

/// Cells that face away by more than this are hidden by those before them. A little beyond
/// edge-on, because legs are round.
const EDGE_ON: f32 = -0.12;
/// How far a cell's own normal, the mean of its corners', may be from that of its middle.
const UNSURE: f32 = 0.25;
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
enum CellPart<'a> {
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
            stitch: (plan.stitch_mm.width as f32, plan.stitch_mm.height as f32),
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
    pub fn scene(&self, look: &Viewpoint, colours: &[Rgb]) -> Scene {
        let mut scene = Scene::default();
        self.draw(look, colours, &mut scene);
        scene
    }

    /// As [`Self::scene`], in the place of what `scene` showed: one that is drawn anew with
    /// every move of a hand keeps its memory.
    pub fn draw(&self, look: &Viewpoint, colours: &[Rgb], scene: &mut Scene) {
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
                parts.push(CellPart::Cloth(cell));
                if cell.stitch.is_some() {
                    depths.push(depth);
                    parts.push(CellPart::Legs(cell));
                }
            } else if looks_in {
                depths.push(depth - behind);
                parts.push(CellPart::Inside(cell));
            }
        }
        for start in [true, false] {
            if let Some(depth) = self.pole_depth(start, &eye) {
                depths.push(depth);
                parts.push(CellPart::Pole(start));
            }
        }
        let view = BodyView::new(eye, look, colours);
        for i in back_to_front(&depths) {
            match &parts[i as usize] {
                CellPart::Cloth(cell) => view.cloth(scene, cell),
                CellPart::Legs(cell) => view.legs(scene, cell),
                CellPart::Inside(cell) => view.inside(scene, cell),
                &CellPart::Pole(start) => self.pole(&view, scene, start),
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
    fn pole(&self, view: &BodyView<'_>, scene: &mut Scene, start: bool) {
        let nodes = self.surface.nodes();
        let rounds = self.yarns.len();
        // Beyond the edge of the last round lies the pole of its gathered loops.
        let (node, round) = if start { (nodes[0], 1) } else { (nodes[rounds], rounds as u32) };
        let out = [0.0, 0.0, if start { -1.0 } else { 1.0 }];
        let colour = view.colour(round, self.yarns[round as usize - 1]);
        let light = Light::on(view.eye.see(out), 1.0);
        let middle = [0.0, 0.0, node.1];
        let depth = view.eye.see(middle)[2];
        let radius = self.stitch.0 * if start { 0.17 } else { 0.24 };
        // The loops that a thread gathers fill what the last round leaves open.
        let loops = (!start).then_some((node.0 + 0.2 * self.stitch.0, 0.80));
        let dimple = [(radius, 0.52), (0.55 * radius, 0.30)];
        for (radius, times) in loops.into_iter().chain(dimple) {
            let corner = |i: u32| {
                let (sin, cos) = (std::f32::consts::TAU * i as f32 / 12.0).sin_cos();
                view.at(add(middle, scaled([cos, sin, 0.0], radius)))
            };
            let colour = light.tint_once(colour, times);
            let paint =
                Paint { colour, depth, round: Some(round), stitch: None, rim: Rim::Seen };
            scene.push(paint, (0..12).map(corner));
        }
    }
}
