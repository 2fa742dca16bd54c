//! The trade-off: what each step of ease costs in fit, and what it saves the maker.

use std::ops::ControlFlow;

use super::wording::{Line, words};
use super::write::Writer;
use crate::error::Result;
use crate::piece::{EASE_STOPS, Piece};
use crate::plan::forecast::fit::Fit;
use crate::plan::{Plan, plan};

/// Steps of ease from faithful to easy, both included.
pub const STEPS: u32 = EASE_STOPS.len() as u32;

/// One step of ease and its price.
#[derive(Debug, Clone)]
pub struct EaseStep {
    /// Ease, 0 faithful … 1 easy.
    pub ease: f64,
    /// How far its forecast is from the outline.
    pub fit: Option<Fit>,
    /// Share of its rounds that are plain or a single repeat, 0 to 1.
    pub simple_share: f64,
    /// Lines to read that differ from one another.
    pub distinct_lines: usize,
    /// Its rounds, worded.
    pub lines: Vec<Line>,
}

impl EaseStep {
    /// The step that `plan` of `piece` stands for, worded as the bench words it.
    pub fn of(piece: &Piece, plan: &Plan) -> Self {
        let words = words(plan, piece, &Writer::bench());
        Self {
            ease: piece.ease,
            fit: plan.fit,
            simple_share: plan.simple_share(),
            distinct_lines: words.distinct_lines(),
            lines: words.lines,
        }
    }
}

/// The steps of `piece` from faithful to easy, each planned in full. `go_on` is asked before
/// each step, with the step's number, and may break off; what was found by then is returned.
///
/// # Errors
/// As [`plan`](plan()).
pub fn ease_steps(
    piece: &Piece,
    go_on: &mut dyn FnMut(u32) -> ControlFlow<()>,
) -> Result<Vec<EaseStep>> {
    let mut steps = Vec::with_capacity(STEPS as usize);
    for (step, ease) in (0..).zip(EASE_STOPS) {
        if go_on(step).is_break() {
            break;
        }
        let piece = Piece { ease, ..piece.clone() };
        steps.push(EaseStep::of(&piece, &plan(&piece)?));
    }
    Ok(steps)
}
