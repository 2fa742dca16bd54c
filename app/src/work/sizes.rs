//! The Sizes stage beside the project: what is looked at there, and what follows from the
//! sizes, seams, yarns and samples of the project, worked out on a thread of its own. A result
//! that comes too late for the project as it is now is dropped.

use std::sync::mpsc::{Receiver, TryRecvError, sync_channel};

use egui::Context;
use plumpline_core::another_yarn::{Comparison, compare};
use plumpline_core::calibrate::{Calibration, OfPiece, calibrate};
use plumpline_core::companion::{Matched, SeamReport, ToyMeasure, match_toy, report};
use plumpline_core::sizes::{SizeRow, size_table};
use plumpline_core::{Gauge, Project};

use crate::document::as_designed;
use crate::view::sizes::SizesView;

/// What is to be worked out.
#[derive(Debug, Clone, PartialEq)]
pub struct Asked {
    project: Project,
    piece: usize,
    other: Option<Gauge>,
    made: Vec<OfPiece>,
    toy: Option<(ToyMeasure, f64)>,
}

impl Asked {
    /// What the stage shows of piece `piece` of `project`.
    pub fn new(project: &Project, piece: usize, view: &SizesView) -> Self {
        let mut project = as_designed(project);
        project.notes.clear(); // Sizes say nothing of them.
        let made = measured(&project, piece, view);
        let (other, toy) = (view.other, view.toy.measured());
        Self { project, piece, other, made, toy }
    }

    fn answer(&self) -> Found {
        let Self { project, piece, other, made, toy } = self;
        let seams = (0..project.seams.len())
            .map(|i| report(project, i).map_err(|e| e.to_string()))
            .collect();
        let swap = other
            .map(|gauge| compare(&project.pieces[*piece], gauge).map_err(|e| e.to_string()));
        let learned =
            (!made.is_empty()).then(|| calibrate(project, made).map_err(|e| e.to_string()));
        let matched = toy.map(|(measure, mm)| {
            match_toy(project, *piece, measure, mm).map_err(|e| e.to_string())
        });
        Found { rows: size_table(project, *piece), seams, swap, learned, matched }
    }
}

/// What has been measured of `project`: piece `index` first, then the others of its gauge.
fn measured(project: &Project, index: usize, view: &SizesView) -> Vec<OfPiece> {
    let gauge = project.pieces[index].gauge;
    let others = (0..project.pieces.len()).filter(|&i| i != index);
    std::iter::once(index)
        .chain(others)
        .filter(|&i| project.pieces[i].gauge == gauge)
        .map(|piece| {
            let measures = view.sample(&project.pieces[piece].name).measures();
            OfPiece { piece, measures }
        })
        .filter(|of| !of.measures.is_empty())
        .collect()
}

/// What was worked out.
#[derive(Debug, Default)]
pub struct Found {
    /// The piece as it is drawn, then its sizes.
    pub rows: Vec<SizeRow>,
    /// How each seam of the project stands, or why it cannot be told.
    pub seams: Vec<Result<SeamReport, String>>,
    /// The piece in the other yarn, if one was given.
    pub swap: Option<Result<Comparison, String>>,
    /// What the sample taught, if anything was measured.
    pub learned: Option<Result<Calibration, String>>,
    /// The piece as large as the toy at hand, if that was measured.
    pub matched: Option<Result<Matched, String>>,
}

/// What follows from the sizes of the project, and the work under way on it.
#[derive(Debug, Default)]
pub struct Sizing {
    found: Option<(Asked, Found)>,
    running: Option<(Asked, Receiver<Found>)>,
    current: bool,
}

impl Sizing {
    /// The last answer there is; see [`Self::is_current`].
    pub fn found(&self) -> Option<&Found> {
        self.found.as_ref().map(|(_, found)| found)
    }

    /// Whether it is that of the project as it is now.
    pub fn is_current(&self) -> bool {
        self.current
    }

    /// Takes what has been found and starts what is asked: while the hand holds something it
    /// is not `still`, and nothing is started. Returns whether there is anything new to show.
    pub fn update(&mut self, ctx: &Context, asked: &Asked, still: bool) -> bool {
        let mut news = false;
        if let Some((of, hear)) = &self.running {
            match hear.try_recv() {
                Ok(found) => {
                    self.found = Some((of.clone(), found));
                    self.running = None;
                    news = true;
                }
                Err(TryRecvError::Empty) => {}
                Err(TryRecvError::Disconnected) => self.running = None,
            }
        }
        let current = self.found.as_ref().is_some_and(|(of, _)| of == asked);
        news |= current != self.current;
        self.current = current;
        if !current && still && self.running.is_none() {
            self.start(ctx, asked.clone());
        }
        news
    }

    fn start(&mut self, ctx: &Context, asked: Asked) {
        let (tell, hear) = sync_channel(1);
        let (ctx, of) = (ctx.clone(), asked.clone());
        let work = move || {
            // The window may be gone by now; then nobody needs to hear it.
            let _ = tell.send(asked.answer());
            ctx.request_repaint();
        };
        if std::thread::Builder::new().name("sizes".into()).spawn(work).is_ok() {
            self.running = Some((of, hear));
        }
    }
}
