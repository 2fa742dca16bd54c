//! What threads draw for the stage in sight: the body, the toy.

use egui::{Context, Rect};

use super::studio::Studio;
use crate::kit::Tokens;
use crate::work::body::BodyLook;
use crate::work::toy::ToyLook;

impl Studio {
    /// The body as the plan and the hand have it now, if it is in sight.
    pub(super) fn show_body(&mut self, ctx: &Context, field: Option<Rect>) {
        let (Some(plan), Some(field)) = (self.derived.plan(), field) else {
            self.body.rest();
            return;
        };
        let lit = self.view.current_round().map(|round| (round, Tokens::now(ctx).lit_yarn()));
        let project = self.document.project();
        let asked = BodyLook {
            turned: self.view.turned,
            lit,
            colours: project.colours(),
            faces: project.faces(),
            field,
            pixels_per_point: ctx.pixels_per_point(),
        };
        if let Err(trouble) = self.body.update(ctx, plan, self.document.piece(), asked) {
            self.say(trouble, true);
        }
    }

    /// The toy as the project and the hand have it now, if it is in sight.
    pub(super) fn show_toy(&mut self, ctx: &Context, field: Option<Rect>) {
        let t = Tokens::now(ctx);
        let view = &self.view.toy;
        let heard = match field {
            None => self.toy.rest(ctx),
            Some(field) => {
                let look = ToyLook {
                    turned: view.turned,
                    apart: view.apart,
                    parts: view.part().into_iter().collect(),
                    attachment: view.attachment(),
                    lit: t.lit_yarn(),
                    field,
                    pixels_per_point: ctx.pixels_per_point(),
                };
                let pointed = view.hovered.filter(|&part| view.part() != Some(part));
                let heard =
                    self.toy.update(ctx, &self.document, look, self.view.toy.drag.is_some());
                self.toy.trace_rim(ctx, pointed, t.highlight);
                heard
            }
        };
        if let Err(trouble) = heard {
            self.say(trouble, true);
        }
    }
}
