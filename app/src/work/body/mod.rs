//! The body on screen: worked out anew only when the plan, the look or the place changes.

pub mod mesh;

use std::sync::Arc;

use egui::{Mesh, Pos2, Rect, vec2};
use plumpline_core::picture::{Body, Picked, Rgb, Scene, Viewpoint};
use plumpline_core::{Piece, Plan};

use crate::view::Turned;

/// Room around the body for its plumb line and its turntable, points.
const ABOVE: f32 = 8.0;
const BELOW: f32 = 36.0;
const BESIDE: f32 = 26.0;

/// What a body is to be shown with.
#[derive(Debug, Clone, PartialEq)]
pub struct BodyLook {
    /// How it is turned.
    pub turned: Turned,
    /// A round shown in another colour.
    pub lit: Option<(u32, Rgb)>,
    /// Colours by yarn.
    pub colours: Vec<Rgb>,
    /// Where it stands.
    pub field: Rect,
    /// Width of an edge, points.
    pub feather: f32,
}

/// The body of the plan on screen and the picture of it.
#[derive(Debug, Default)]
pub struct BodyShown {
    plan: Option<Arc<Plan>>,
    body: Option<Body>,
    asked: Option<BodyLook>,
    middle: Pos2,
    scale: f32,
    scene: Scene,
    bounds: [[f32; 2]; 2],
    mesh: Arc<Mesh>,
    /// The mesh before, which the window may still be painting: the next but one is made in
    /// its memory.
    before: Arc<Mesh>,
    drawn: usize,
}

impl BodyShown {
    /// Shows `plan`, the plan of `piece`, as asked. Does nothing when all is as it was.
    pub fn update(&mut self, plan: &Arc<Plan>, piece: &Piece, asked: BodyLook) {
        let same = self.plan.as_ref().is_some_and(|shown| Arc::ptr_eq(shown, plan));
        if same && self.asked.as_ref() == Some(&asked) {
            return;
        }
        if !same {
            self.plan = Some(Arc::clone(plan));
            self.body = None;
        }
        let body = self.body.get_or_insert_with(|| Body::new(piece, plan));
        let room = asked.field.size() - vec2(2.0 * BESIDE, ABOVE + BELOW);
        let turned = asked.turned;
        self.scale = body.fitting(room.x.max(8.0), room.y.max(8.0)) * turned.zoom;
        self.middle = asked.field.center() + vec2(0.0, 0.5 * (ABOVE - BELOW));
        let look = Viewpoint {
            turn_deg: turned.turn_deg,
            tilt_deg: turned.tilt_deg,
            scale: self.scale,
            cutaway: turned.cutaway,
            lit: asked.lit,
        };
        body.draw(&look, &asked.colours, &mut self.scene);
        self.bounds = self.scene.bounds();
        std::mem::swap(&mut self.mesh, &mut self.before);
        if Arc::get_mut(&mut self.mesh).is_none() {
            self.mesh = Arc::default();
        }
        if let Some(mesh) = Arc::get_mut(&mut self.mesh) {
            mesh::fill(mesh, &self.scene, self.middle, asked.feather);
        }
        self.asked = Some(asked);
        self.drawn += 1;
    }

    /// How often the picture was drawn anew: a body at rest is not.
    pub fn drawn(&self) -> usize {
        self.drawn
    }

    /// The picture as one mesh, in points of the window.
    pub fn mesh(&self) -> &Arc<Mesh> {
        &self.mesh
    }

    /// The round and stitch at a place of the window.
    pub fn pick(&self, at: Pos2) -> Option<Picked> {
        let from = at - self.middle;
        self.scene.pick([from.x, from.y])
    }

    /// Where the middle of the body is.
    pub(crate) fn middle(&self) -> Pos2 {
        self.middle
    }

    /// Where the thread of a round is tied.
    pub fn tie(&self, round: u32) -> Option<Pos2> {
        mesh::leftmost(&self.scene, round, self.middle)
    }

    /// Top and bottom of the picture and half its width, points.
    pub(crate) fn reach(&self) -> (f32, f32, f32) {
        let [low, high] = self.bounds;
        let y = self.middle.y;
        (y + low[1], y + high[1], 0.5 * (high[0] - low[0]))
    }

    /// Points the surface moves for a radian it is turned.
    pub(crate) fn points_per_radian(&self) -> f32 {
        let [low, high] = self.bounds;
        (0.5 * (high[0] - low[0])).max(20.0)
    }

    /// Half the height of the body along its axis, points before it is tilted.
    pub(crate) fn half_height(&self) -> f32 {
        self.body.as_ref().map_or(0.0, |body| body.half_height_mm() * self.scale)
    }
}
