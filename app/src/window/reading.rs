//! What of the studio can be read: by whoever looks at it from outside, and by the stages.

use egui::Context;

use super::studio::Studio;
use crate::bench::Bench;
use crate::document::Document;
use crate::kit::Tokens;
use crate::view::View;
use crate::work::body::BodyShown;
use crate::work::lesson::LessonShown;
use crate::work::line_up::LineUp;
use crate::work::outlining::Outlining;
use crate::work::picture::Tracing;
use crate::work::proofread::Proofreading;
use crate::work::sheet::Printing;
use crate::work::sizes::Sizing;
use crate::work::small_pictures::SmallPictures;
use crate::work::toy::ToyShown;
use crate::work::trade::Trade;

impl Studio {
    /// The open project.
    pub fn document(&self) -> &Document {
        &self.document
    }

    /// What is looked at.
    pub fn view(&self) -> &View {
        &self.view
    }

    /// The trade-off of simplicity.
    pub fn trade(&self) -> &Trade {
        &self.trade
    }

    /// The sheet as far as it has been set.
    pub fn printing(&self) -> &Printing {
        &self.printing
    }

    /// Pictures of the sizes, as far as they are drawn.
    pub fn line_up(&self) -> &LineUp {
        &self.line_up
    }

    /// Small pictures of starters and of projects, as far as they are drawn.
    pub fn small_pictures(&self) -> &SmallPictures {
        &self.small_pictures
    }

    /// What follows from the sizes of the project, as far as it has been worked out.
    pub fn sizing(&self) -> &Sizing {
        &self.sizing
    }

    /// The written pattern being proofread.
    pub fn proofreading(&self) -> &Proofreading {
        &self.proofreading
    }

    /// The body on screen.
    pub fn body(&self) -> &BodyShown {
        &self.body
    }

    /// The toy on screen.
    pub fn toy(&self) -> &ToyShown {
        &self.toy
    }

    /// The cloth of the lesson on screen.
    pub fn lesson(&self) -> &LessonShown {
        &self.lesson
    }

    /// The picture to trace, as far as it has been read.
    pub fn picture(&self) -> &Tracing {
        &self.picture
    }

    /// That picture traced, as far as it is.
    pub fn outlining(&self) -> &Outlining {
        &self.outlining
    }

    /// Whether a file is being read or written.
    pub fn is_busy(&self) -> bool {
        self.files.is_busy()
    }

    /// The plan on screen.
    pub fn plan(&self) -> Option<&plumpline_core::Plan> {
        self.derived.plan().map(|plan| &**plan)
    }

    /// The words of that plan.
    pub fn words(&self) -> Option<&plumpline_core::Wording> {
        self.derived.words()
    }

    pub(super) fn bench(&self, ctx: &Context) -> Bench<'_> {
        Bench {
            document: &self.document,
            view: &self.view,
            plan: self.derived.plan().map(|plan| &**plan),
            words: self.derived.words(),
            error: self.derived.error(),
            trade: &self.trade,
            proofreading: &self.proofreading,
            making: &self.handiwork,
            sizing: &self.sizing,
            line_up: &self.line_up,
            small_pictures: &self.small_pictures,
            printing: &self.printing,
            gauges: &self.home.gauges,
            struck: self.home.struck(),
            body: &self.body,
            toy: &self.toy,
            lesson: &self.lesson,
            desk: &self.home.desk,
            picture: &self.picture,
            outlining: &self.outlining,
            busy: self.files.is_busy(),
            lingering: self.lingering(),
            t: Tokens::now(ctx),
        }
    }
}
