//! The Sizes stage beside the project: what is looked at there, and what follows from the
//! sizes, seams, yarns and samples of the project, worked out on a thread. Of what
//! is asked only the newest is worked out.

use egui::Context;
use plumpline_core::another_yarn::{Comparison, compare};
use plumpline_core::calibrate::{Calibration, OfPiece, calibrate};
use plumpline_core::companion::{Matched, SeamReport, ToyMeasure, match_toy, report};
use plumpline_core::sizes::{SizeRow, size_table};
use plumpline_core::{Gauge, Piece, PieceId, Project};

use super::lingering::{self, Lingering, LongWork};
use super::worker::{Newest, Ticket, Voice, Worker};
use crate::document::{Document, Revision, as_designed};
use crate::view::sizes::SizesView;

/// What is to be worked out.
#[derive(Debug, Clone, PartialEq)]
struct SizesWish {
    project: Project,
    piece: PieceId,
    whole: bool,
    other: Option<Gauge>,
    made: Vec<OfPiece>,
    toy: Option<(ToyMeasure, f64)>,
}

impl SizesWish {
    /// What the stage shows of `piece` of `project`.
    fn new(project: &Project, piece: PieceId, view: &SizesView) -> Self {
        let mut project = as_designed(project);
        project.notes.clear(); // Sizes say nothing of them.
        let made = measured(&project, piece, view);
        let (other, toy) = (view.other, view.toy.measured());
        Self { project, piece, whole: view.whole, other, made, toy }
    }

    fn answer(&self) -> Found {
        let Self { project, piece, whole, other, made, toy } = self;
        let seams = (0..project.seams.len())
            .map(|i| report(project, i).map_err(|e| e.to_string()))
            .collect();
        let Some(own) = project.piece(*piece) else { return Found::default() };
        let swap = other.map(|gauge| compare(own, gauge).map_err(|e| e.to_string()));
        let learned =
            (!made.is_empty()).then(|| calibrate(project, made).map_err(|e| e.to_string()));
        let matched = toy.map(|(measure, mm)| {
            match_toy(project, *piece, measure, mm).map_err(|e| e.to_string())
        });
        let whole = whole.then(|| {
            let sizes = |of: &Piece| PieceSizes {
                piece: of.id,
                name: of.name.clone(),
                copies: of.copies,
                rows: size_table(project, of),
            };
            project.pieces.iter().map(sizes).collect()
        });
        Found { rows: size_table(project, own), whole, seams, swap, learned, matched }
    }
}

/// What has been measured of `project`: the piece `id` first, then the others of its gauge.
fn measured(project: &Project, id: PieceId, view: &SizesView) -> Vec<OfPiece> {
    let Some(own) = project.piece(id) else { return Vec::new() };
    let others = project.pieces.iter().filter(|piece| piece.id != id);
    std::iter::once(own)
        .chain(others)
        .filter(|piece| piece.gauge == own.gauge)
        .map(|piece| {
            let measures = view.sample(&piece.name).measures();
            OfPiece { piece: piece.id, measures }
        })
        .filter(|of| !of.measures.is_empty())
        .collect()
}

/// A piece and its sizes.
#[derive(Debug)]
pub struct PieceSizes {
    /// The piece.
    pub piece: PieceId,
    /// Its name.
    pub name: String,
    /// How often it is made.
    pub copies: u32,
    /// The piece as it is drawn, then its sizes.
    pub rows: Vec<SizeRow>,
}

/// What was worked out.
#[derive(Debug, Default)]
pub struct Found {
    /// The same of every piece, if it was asked for.
    pub whole: Option<Vec<PieceSizes>>,
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
#[derive(Debug)]
pub struct Sizing {
    worker: Worker<Newest<SizesWish>, Found>,
    /// What was last looked at: which piece of which project, and what is tried on it.
    seen: Option<(Revision, PieceId, SizesView)>,
    asked: Option<SizesWish>,
    state: SizesState,
    found: Option<Found>,
    /// How often anything was found.
    findings: u64,
}

/// How far what is asked is.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
enum SizesState {
    /// It has yet to be asked.
    New,
    Awaited(Ticket),
    Found,
    /// It cannot be had, and is not asked again.
    Broken,
}

impl Default for Sizing {
    fn default() -> Self {
        let work = || {
            |asked: SizesWish, voice: &Voice<'_, Newest<SizesWish>, Found>| {
                voice.say(asked.answer());
            }
        };
        Self {
            worker: Worker::new("sizes", work),
            seen: None,
            asked: None,
            state: SizesState::New,
            found: None,
            findings: 0,
        }
    }
}

impl Sizing {
    /// The work under way, if it takes so long that a person wonders.
    pub fn lingering(&self) -> Option<Lingering> {
        lingering::of(&self.worker, LongWork::Sizes, say!("trouble-preparing-the-sizes"))
    }

    /// Gives it up.
    pub fn give_up(&mut self, ctx: &Context) {
        self.worker.give_up(ctx);
    }

    /// The last answer there is; see [`Self::is_current`].
    pub fn found(&self) -> Option<&Found> {
        self.found.as_ref()
    }

    /// Which finding that is.
    pub fn findings(&self) -> u64 {
        self.findings
    }

    /// Whether it is that of the project as it is now.
    pub fn is_current(&self) -> bool {
        self.state == SizesState::Found
    }

    /// Whether that is still to come.
    pub fn is_busy(&self) -> bool {
        matches!(self.state, SizesState::New | SizesState::Awaited(_))
    }

    /// Takes what has been found and asks for what is missing: while a drag is under way it is
    /// not `still`, and nothing is asked. Returns whether there is anything new to show.
    ///
    /// # Errors
    /// One line, once, where it could not be worked out; it is tried again when anything of it
    /// is changed.
    pub fn update(
        &mut self,
        ctx: &Context,
        document: &Document,
        view: &SizesView,
        still: bool,
    ) -> Result<bool, String> {
        let before = self.state;
        self.look(document, view);
        let mut news = false;
        while let Some(heard) = self.worker.hear() {
            let is_last = self.state == SizesState::Awaited(heard.to);
            match heard.answer {
                // One that comes late is still nearer than what there was.
                Ok(found) => {
                    self.found = Some(found);
                    self.findings += 1;
                    news = true;
                    if is_last {
                        self.state = SizesState::Found;
                    }
                }
                Err(broken) => {
                    if is_last {
                        self.state = SizesState::Broken;
                    }
                    return Err(say!(
                        "trouble-the-sizes-could-not-be-planned-broken",
                        broken = broken.to_string()
                    ));
                }
            }
        }
        if let Some(asked) =
            self.asked.as_ref().filter(|_| still && self.state == SizesState::New)
        {
            self.state = SizesState::Awaited(self.worker.ask(ctx, asked.clone()));
        }
        Ok(news || before != self.state)
    }

    /// Notes what is asked now.
    fn look(&mut self, document: &Document, view: &SizesView) {
        let (revision, piece) = (document.revision(), document.piece_id());
        if self
            .seen
            .as_ref()
            .is_some_and(|(r, p, v)| (*r, *p) == (revision, piece) && v == view)
        {
            return;
        }
        self.seen = Some((revision, piece, view.clone()));
        let asked = SizesWish::new(document.project(), piece, view);
        if self.asked.as_ref() != Some(&asked) {
            self.asked = Some(asked);
            self.state = SizesState::New;
        }
    }
}
