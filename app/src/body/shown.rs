//! The body on screen: worked out anew only when the plan, the look or the place changes.

use std::sync::Arc;

use egui::{Mesh, Pos2, Rect, vec2};
use plumpline_core::picture::{Body, Look, Picked, Rgb, Scene};
use plumpline_core::{Piece, Plan};

use super::mesh;
use crate::studio::view::Turned;

/// Room around the body for its plumb line and its turntable, points.
const ABOVE: f32 = 16.0;
const BELOW: f32 = 44.0;
const BESIDE: f32 = 26.0;

/// What a body is shown with.
#[derive(Debug, Clone, Default, PartialEq)]
struct Asked {
    look: Option<Look>,
    colours: Vec<Rgb>,
    middle: Pos2,
    feather: f32,
}

/// The body of the plan in hand and the picture of it.
#[derive(Debug, Default)]
pub struct Shown {
    plan: Option<Arc<Plan>>,
    body: Option<Body>,
    asked: Asked,
    scene: Scene,
    mesh: Arc<Mesh>,
}

impl Shown {
    /// Shows `plan`, the plan of `piece`, in `rect`. Does nothing when all is as it was;
    /// returns whether it drew.
    pub fn update(
        &mut self,
        (plan, piece): (&Arc<Plan>, &Piece),
        rect: Rect,
        turned: &Turned,
        lit: Option<(u32, Rgb)>,
        (colours, feather): (Vec<Rgb>, f32),
    ) -> bool {
        let same = self.plan.as_ref().is_some_and(|shown| Arc::ptr_eq(shown, plan));
        if !same {
            self.plan = Some(Arc::clone(plan));
            self.body = Some(Body::new(piece, plan));
        }
        let Some(body) = &self.body else { return false };
        let room = rect.size() - vec2(2.0 * BESIDE, ABOVE + BELOW);
        let fitting = body.fitting(room.x.max(8.0), room.y.max(8.0));
        let look = Look {
            turn_deg: turned.turn_deg,
            tilt_deg: turned.tilt_deg,
            scale: fitting * turned.zoom,
            cutaway: turned.cutaway,
            lit,
        };
        let middle = rect.center() + vec2(0.0, 0.5 * (ABOVE - BELOW));
        let asked = Asked { look: Some(look), colours, middle, feather };
        if same && asked == self.asked {
            return false;
        }
        self.scene = body.scene(&look, &asked.colours);
        self.mesh = Arc::new(mesh::mesh(&self.scene, middle, feather));
        self.asked = asked;
        true
    }

    /// The picture as one mesh, in points of the window.
    pub fn mesh(&self) -> &Arc<Mesh> {
        &self.mesh
    }

    /// The round and stitch at a place of the window.
    pub fn pick(&self, at: Pos2) -> Option<Picked> {
        let from = at - self.asked.middle;
        self.scene.pick([from.x, from.y])
    }

    /// Where the middle of the body is.
    pub(super) fn middle(&self) -> Pos2 {
        self.asked.middle
    }

    /// Where the thread of a round is tied.
    pub fn tie(&self, round: u32) -> Option<Pos2> {
        mesh::leftmost(&self.scene, round, self.asked.middle)
    }

    /// Top and bottom of the picture and half its width, points.
    pub(super) fn reach(&self) -> (f32, f32, f32) {
        let [low, high] = self.scene.bounds();
        let y = self.asked.middle.y;
        (y + low[1], y + high[1], 0.5 * (high[0] - low[0]))
    }

    /// Points the surface moves for a radian it is turned.
    pub(super) fn points_per_radian(&self) -> f32 {
        let [low, high] = self.scene.bounds();
        (0.5 * (high[0] - low[0])).max(20.0)
    }

    /// Half the height of the body along its axis, points before it is tilted.
    pub(super) fn half_height(&self) -> f32 {
        let scale = self.asked.look.map_or(0.0, |look| look.scale);
        self.body.as_ref().map_or(0.0, |body| body.half_height_mm() * scale)
    }
}
