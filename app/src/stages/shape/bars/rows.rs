//! Where the bars are: one row a round, the columns beside it.

use egui::{Rect, pos2};
use plumpline_core::{Kind, Plan};

use crate::bench::Bench;

/// Rows closer than this scroll instead, points.
pub(super) const TIGHTEST: f32 = 17.2;
/// Rows no further apart than this, points.
const WIDEST: f32 = 27.0;
/// Room of the stuffing pill between two bars.
pub(super) const STUFFING: f32 = 28.0;
/// Room of the foundation chain above the first bar.
pub(super) const CHAIN: f32 = 20.0;
/// Fewest points a stitch at which single cells are drawn.
pub(super) const CELL: f32 = 3.0;

/// The rows and columns of the bars, in points of the screen.
#[derive(Debug, Clone)]
pub struct Rows {
    /// What is in sight.
    pub view: Rect,
    /// Distance from row to row.
    pub pitch: f32,
    /// Points a stitch.
    pub stitch: f32,
    /// The round after which the stuffing goes in.
    pub stuff_after: Option<u32>,
    count: u32,
    top: f32,
    chain: f32,
    wording: f32,
    marks: f32,
}

/// Room the marks of kind and loop need left of the widest bar, points.
pub(super) fn marks_width(bench: &Bench<'_>, plan: &Plan) -> f32 {
    let rounds = plan.rounds.len() as u32;
    let piece = bench.document.piece();
    let widest = (1..=rounds).map(|r| {
        let kind = plan.rounds[r as usize - 1].kind != Kind::Single;
        match (kind, piece.loops.contains_key(&r)) {
            (false, false) => 0.0,
            (true, true) => 48.0,
            _ => 26.0,
        }
    });
    widest.fold(0.0, f32::max)
}

impl Rows {
    /// The rows of `plan` in `view`, scrolled to the top. `frozen` keeps points a stitch as
    /// they were while a bar is dragged; `marks` is room for what stands left of the bars.
    pub fn new(view: Rect, plan: &Plan, frozen: Option<f32>, zoom: f32, marks: f32) -> Self {
        let count = plan.rounds.len() as u32;
        let chain = if plan.chain.is_some() { CHAIN } else { 0.0 };
        let stuff_after = plan.stuff_after();
        let gap = if stuff_after.is_some() { STUFFING } else { 0.0 };
        let room = (view.height() - chain - gap - 4.0) / count.max(1) as f32;
        // At a text scale of 125 % and up a row is as high as a finger needs.
        let tightest = if zoom >= 1.24 { TIGHTEST.max(24.0 / zoom) } else { TIGHTEST };
        let pitch = if room >= tightest - 1.2 { room.min(WIDEST) } else { tightest };
        let mut rows = Self {
            view,
            pitch,
            stitch: 1.0,
            stuff_after,
            count,
            top: view.top() + 2.0,
            chain,
            marks,
            wording: (0.35 * view.width()).clamp(158.0, 230.0),
        };
        let widest = plan.rounds.iter().map(|r| r.count).max().unwrap_or(1).max(12);
        let fitting = (rows.bars_right() - rows.bars_left()) / widest as f32;
        rows.stitch = frozen.unwrap_or(fitting).min(7.0);
        rows
    }

    /// The same rows scrolled down by `offset`.
    #[must_use]
    pub fn scrolled(mut self, offset: f32) -> Self {
        self.top = self.view.top() + 2.0 - offset;
        self
    }

    /// Height of all rows.
    pub fn height(&self) -> f32 {
        let gap = if self.stuff_after.is_some() { STUFFING } else { 0.0 };
        self.chain + self.count as f32 * self.pitch + gap + 4.0
    }

    /// Number of rounds.
    pub fn count(&self) -> u32 {
        self.count
    }

    /// Middle of the row of `round`.
    pub fn y(&self, round: u32) -> f32 {
        let gap = if self.stuff_after.is_some_and(|s| round > s) { STUFFING } else { 0.0 };
        self.top + self.chain + (round as f32 - 0.5) * self.pitch + gap
    }

    /// Middle of the row of the foundation chain.
    pub fn chain_y(&self) -> f32 {
        self.top + 0.5 * self.chain
    }

    /// Middle of the gap in which the stuffing goes in.
    pub fn stuffing_y(&self) -> Option<f32> {
        self.stuff_after.map(|s| self.y(s) + 0.5 * (self.pitch + STUFFING) + 1.5)
    }

    /// The whole row of `round`.
    pub fn row(&self, round: u32) -> Rect {
        let y = self.y(round);
        Rect::from_x_y_ranges(
            self.left() + 2.0..=self.right(),
            y - 0.5 * self.pitch..=y + 0.5 * self.pitch,
        )
    }

    /// Whether `round` is in sight.
    pub fn sees(&self, round: u32) -> bool {
        self.view.y_range().shrink(2.0).contains(self.y(round))
    }

    /// The rounds in sight, a margin of one row at either end included.
    pub fn in_sight(&self) -> std::ops::RangeInclusive<u32> {
        let rows_above =
            ((self.view.top() - self.top - self.chain - STUFFING) / self.pitch).floor();
        let first = (rows_above.max(0.0) as u32 + 1).min(self.count.max(1));
        let rows = (self.view.height() + STUFFING) / self.pitch;
        let last = (first + rows.ceil() as u32 + 2).min(self.count);
        first..=last
    }

    /// Left end of the numbers.
    pub fn left(&self) -> f32 {
        self.view.left()
    }

    /// Right end of the counts.
    pub fn right(&self) -> f32 {
        self.view.right() - 14.0
    }

    /// Right end of the round numbers.
    pub fn numbers_right(&self) -> f32 {
        self.left() + 30.0
    }

    /// Middle of the yarn beads.
    pub fn beads_x(&self) -> f32 {
        self.left() + 44.0
    }

    fn bars_left(&self) -> f32 {
        self.left() + 58.0 + self.marks
    }

    fn bars_right(&self) -> f32 {
        self.wording_left() - 34.0
    }

    /// Middle of all bars.
    pub fn bars_x(&self) -> f32 {
        0.5 * (self.bars_left() + self.bars_right())
    }

    /// Where the braces of joined rounds stand.
    pub fn brace_x(&self) -> f32 {
        self.wording_left() - 12.0
    }

    /// Left end of the wording.
    pub fn wording_left(&self) -> f32 {
        self.counts_left() - self.wording
    }

    /// Left end of the counts.
    pub fn counts_left(&self) -> f32 {
        self.right() - 40.0
    }

    /// Height of a bar.
    pub fn bar_height(&self) -> f32 {
        // What is left between two bars holds the notches, wholly outside the bars.
        (0.58 * self.pitch).round()
    }

    /// The bar of `round` when it has `count` stitches.
    pub fn bar(&self, round: u32, count: u32) -> Rect {
        let half = 0.5 * count as f32 * self.stitch;
        let high = 0.5 * self.bar_height();
        let at = pos2(self.bars_x(), self.y(round));
        Rect::from_x_y_ranges(at.x - half..=at.x + half, at.y - high..=at.y + high)
    }
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::document::Document;
    use plumpline_core::plan;

    fn rows(height: f32) -> Rows {
        let plan = plan(Document::sample().piece()).expect("a plan");
        let view = Rect::from_min_size(pos2(600.0, 100.0), egui::vec2(450.0, height));
        Rows::new(view, &plan, None, 1.0, 0.0)
    }

    #[test]
    fn rows_fill_the_view_or_scroll_but_never_crowd() {
        let high = rows(700.0);
        assert!(high.height() <= 700.0 && high.pitch >= TIGHTEST - 1.2);
        let low = rows(300.0);
        assert!(low.height() > 300.0 && low.pitch >= TIGHTEST);
        let end = low.clone().scrolled(low.height() - 300.0);
        assert!(end.sees(end.count()) && !end.sees(1));
        assert!(end.in_sight().contains(&end.count()));
        assert!(low.in_sight().contains(&1) && !low.in_sight().contains(&low.count()));
    }

    #[test]
    fn the_widest_bar_leaves_the_columns_free() {
        let rows = rows(700.0);
        let bar = rows.bar(14, 60);
        assert!(bar.left() > rows.beads_x(), "{bar:?}");
        assert!(bar.right() < rows.wording_left() + 20.0, "{bar:?}");
    }
}
