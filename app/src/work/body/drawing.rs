//! How the picture of the body is drawn: at first as a draft of half the pixels, then whole.

use std::sync::Arc;

use egui::{ColorImage, Pos2, Rect};
use plumpline_core::picture::Picked;
use plumpline_core::picture::relief::{
    Drape, PosedRelief, Quality, Relief, ReliefScene, ReliefView, Still,
};
use plumpline_core::{Piece, Plan, YarnFace};

use super::super::still::{image_of, still_unless};
use super::{BodyLook, around, view};
use crate::work::lesson::cloth::LooseCloth;

/// A draft has a pixel for so many of the screen, each way.
const DRAFT: f32 = 2.0;

/// What is to be drawn.
#[derive(Debug, Clone)]
pub(super) struct BodyWish {
    pub(super) plan: Arc<Plan>,
    pub(super) piece: Arc<Piece>,
    pub(super) look: BodyLook,
    pub(super) middle: Pos2,
    /// Points a millimetre.
    pub(super) scale: f32,
    /// Whether a draft comes first: the picture there is shows it elsewhere.
    pub(super) draft: bool,
}

/// A picture of the body and where it lies in the window.
#[derive(Debug)]
pub(super) struct Drawn {
    still: Still,
    image: ColorImage,
    place: Rect,
    draft: bool,
}

/// The relief of the plan drawn last, in its yarns: another look does not need another.
#[derive(Default)]
pub(super) struct BodyLikeness {
    kept: Option<(Arc<Plan>, Vec<YarnFace>, Relief)>,
    /// Its stitches let go, once that was asked for.
    loose: Option<(Arc<Plan>, LooseCloth)>,
}

impl BodyLikeness {
    /// Draws what is wished for, first in draft, and tells each; the whole picture only as long
    /// as it is not vain.
    pub(super) fn draw(
        &mut self,
        wish: &BodyWish,
        mut tell: impl FnMut(Drawn),
        is_vain: impl Fn() -> bool,
    ) {
        let faces = &wish.look.faces;
        let is_of = |(plan, of, _): &(Arc<Plan>, Vec<YarnFace>, Relief)| {
            Arc::ptr_eq(plan, &wish.plan) && of == faces
        };
        if !self.kept.as_ref().is_some_and(is_of) {
            let relief = Relief::new(&wish.piece, &wish.plan).in_yarns(faces);
            self.kept = Some((Arc::clone(&wish.plan), faces.clone(), relief));
        }
        if wish.look.turned.let_go && self.draw_loose(wish, &mut tell, &is_vain) {
            return;
        }
        let Some((.., relief)) = &self.kept else { return };
        let place = around(wish.look.field, wish.middle);
        let own = |coarse, quality| ReliefView {
            middle: relief.ball().0,
            quality,
            ..view(&wish.look, place, wish.scale, coarse)
        };
        let parts = [PosedRelief {
            lit: wish.look.lit,
            cutaway: wish.look.turned.cutaway,
            ..PosedRelief::new(relief, &wish.look.colours)
        }];
        if wish.draft {
            let scene = ReliefScene::new(&parts, &own(DRAFT, Quality::Draft));
            if let Some(still) = still_unless(&scene, || false) {
                tell(Drawn::new(still, place, true));
            }
        }
        if is_vain() {
            return;
        }
        let scene = ReliefScene::new(&parts, &own(1.0, Quality::Full));
        if let Some(still) = still_unless(&scene, is_vain) {
            tell(Drawn::new(still, place, false));
        }
    }
}

impl BodyLikeness {
    /// Draws the piece with every stitch in its own place, as it settles and then with all
    /// care; returns false where it has no net, as an oval has none.
    fn draw_loose(
        &mut self,
        wish: &BodyWish,
        tell: &mut impl FnMut(Drawn),
        is_vain: &impl Fn() -> bool,
    ) -> bool {
        let Some(middle) = self.kept.as_ref().map(|(.., relief)| relief.ball().0) else {
            return false;
        };
        if !self.loose.as_ref().is_some_and(|(plan, _)| Arc::ptr_eq(plan, &wish.plan)) {
            let Ok(cloth) = LooseCloth::of_piece(&wish.piece, &wish.plan) else { return false };
            self.loose = Some((Arc::clone(&wish.plan), cloth));
        }
        let Some((_, cloth)) = &mut self.loose else { return false };
        let place = around(wish.look.field, wish.middle);
        let draw = |cloth: &LooseCloth, coarse, quality| {
            // Rounds begin at −Y in a picture, at +X in a net.
            let turned = |[x, y, z]: [f64; 3]| [y as f32, -x as f32, z as f32];
            let places = cloth.places(false).into_iter().map(turned).collect();
            let drape =
                Drape::new(places, &cloth.cells, cloth.stitch_mm()).in_yarns(&wish.look.faces);
            let view =
                ReliefView { middle, quality, ..view(&wish.look, place, wish.scale, coarse) };
            drape.still(&view, &wish.look.colours, wish.look.lit).ok()
        };
        loop {
            let rests = cloth.settle(false, is_vain);
            if let Some(still) = draw(cloth, DRAFT, Quality::Draft) {
                tell(Drawn::new(still, place, true));
            }
            if rests || is_vain() {
                break;
            }
        }
        if !is_vain()
            && let Some(still) = draw(cloth, 1.0, Quality::Full)
        {
            tell(Drawn::new(still, place, false));
        }
        true
    }
}

impl Drawn {
    fn new(mut still: Still, place: Rect, draft: bool) -> Self {
        let image = image_of(&mut still);
        Self { still, image, place, draft }
    }

    pub(super) fn is_draft(&self) -> bool {
        self.draft
    }

    /// The picture itself; taken once.
    pub(super) fn take_image(&mut self) -> ColorImage {
        std::mem::take(&mut self.image)
    }

    pub(super) fn place(&self) -> Rect {
        self.place
    }

    /// The round and stitch at a place of the window.
    pub(super) fn pick(&self, at: Pos2) -> Option<Picked> {
        let [wide, tall] = self.still.size.map(|s| s as f32);
        let part = (at - self.place.min) / self.place.size();
        let seen = self.still.pick(part.x * wide, part.y * tall)?;
        let stitch = (seen.stitch > 0).then_some(u32::from(seen.stitch));
        (seen.round > 0).then_some(Picked { round: u32::from(seen.round), stitch })
    }

    /// The leftmost place of a round.
    pub(super) fn leftmost(&self, round: u32) -> Option<Pos2> {
        let [wide, tall] = self.still.size.map(|s| s as usize);
        let of_round = |(_, seen): &(usize, &plumpline_core::picture::relief::Seen)| {
            u32::from(seen.round) == round
        };
        let places = self.still.map.iter().enumerate().filter(of_round);
        let (i, _) = places.min_by_key(|(i, _)| i % wide.max(1))?;
        let part = |at: usize, many: usize| (at as f32 + 0.5) / many.max(1) as f32;
        let [x, y] = [part(i % wide.max(1), wide), part(i / wide.max(1), tall)];
        Some(self.place.min + self.place.size() * egui::vec2(x, y))
    }
}

/// How large the body is, without its relief: for what stands around it.
#[derive(Debug, Clone)]
pub(super) struct BodyExtent {
    /// Radius, and height from the middle, of every node of the forecast, mm.
    nodes: Vec<[f32; 2]>,
    /// Half the straight part of an oval's side, mm.
    straight: f32,
}

impl BodyExtent {
    pub(super) fn new(piece: &Piece, plan: &Plan) -> Self {
        let heights = || plan.forecast.iter().map(|n| n.z);
        let low = heights().fold(f64::INFINITY, f64::min);
        let high = heights().fold(f64::NEG_INFINITY, f64::max);
        let middle = 0.5 * (low + high);
        let straight =
            if plan.depth_mm.is_some() { 0.5 * piece.straight_mm as f32 } else { 0.0 };
        let nodes = plan.forecast.iter().map(|n| [n.r as f32, (n.z - middle) as f32]);
        Self { nodes: nodes.collect(), straight }
    }

    /// Half the height along the axis, mm.
    pub(super) fn half_height(&self) -> f32 {
        self.nodes.iter().fold(0.0, |most, n| most.max(n[1]))
    }

    /// Points a millimetre at which it fits into `wide` × `tall` points however it is turned.
    pub(super) fn fitting(&self, wide: f32, tall: f32) -> f32 {
        let across = self.nodes.iter().fold(1e-3_f32, |most, n| most.max(n[0] + self.straight));
        let round = self
            .nodes
            .iter()
            .fold(1e-3_f32, |most, n| most.max((n[0] + self.straight).hypot(n[1])));
        (0.5 * wide / across).min(0.5 * tall / round)
    }

    /// Around it as it is seen turned and tilted so, mm from its middle.
    pub(super) fn bounds(&self, turn_deg: f32, tilt_deg: f32) -> [[f32; 2]; 2] {
        let (dip, level) = tilt_deg.to_radians().sin_cos();
        let (sin, cos) = turn_deg.to_radians().sin_cos();
        let (mut low, mut high) = ([0.0_f32; 2], [0.0_f32; 2]);
        for [r, z] in &self.nodes {
            let across = r + self.straight * cos.abs();
            let deep = (r + self.straight * sin.abs()) * dip.abs();
            low = [low[0].min(-across), low[1].min(z * level - deep)];
            high = [high[0].max(across), high[1].max(z * level + deep)];
        }
        [low, high]
    }
}
