//! The courses of sizes, worked out on a thread: to plan a whole project at a size
//! takes longer than a frame. Every size that was asked for is kept while the design stays as
//! it is; what comes too late for another design is dropped.

use std::collections::BTreeMap;
use std::sync::Arc;

use egui::Context;
use plumpline_core::making::WorkedPiece;
use plumpline_core::{Piece, PieceId, Project, Seam, WordingChoice};

use super::courses::is_same;
use crate::document::{Document, Revision, as_designed};
use crate::work::worker::{Newest, Ticket, Voice, Worker};

/// The course of every piece, or why there is none.
type CoursesFound = Result<BTreeMap<PieceId, Arc<WorkedPiece>>, String>;

/// What the courses of a size follow from.
#[derive(Debug)]
struct Design {
    pieces: Vec<Piece>,
    seams: Vec<Seam>,
    wording: WordingChoice,
}

impl Design {
    fn of(project: &Project) -> Self {
        let Project { pieces, seams, wording, .. } = as_designed(project);
        Self { pieces, seams, wording }
    }

    /// Whether it is that of `project`: asked every frame, it copies nothing.
    fn is_of(&self, project: &Project) -> bool {
        self.pieces.len() == project.pieces.len()
            && self.pieces.iter().zip(&project.pieces).all(|(mine, now)| is_same(mine, now))
            && self.seams == project.seams
            && self.wording == project.wording
    }
}

/// A size to plan.
#[derive(Debug)]
struct SizeWish {
    of: Arc<Design>,
    project: Project,
    size: String,
}

/// What came of one.
#[derive(Debug)]
struct Planned {
    of: Arc<Design>,
    size: String,
    answer: CoursesFound,
}

/// The wish that is still to be answered.
#[derive(Debug)]
struct SizeAwaited {
    ticket: Ticket,
    size: String,
}

/// The courses of a project at its sizes, as far as they have been worked out.
#[derive(Debug)]
pub(crate) struct SizedCourses {
    worker: Worker<Newest<SizeWish>, Planned>,
    seen: Option<Revision>,
    design: Option<Arc<Design>>,
    known: BTreeMap<String, CoursesFound>,
    asked: Option<SizeAwaited>,
}

impl Default for SizedCourses {
    fn default() -> Self {
        let work = || {
            |wish: SizeWish, voice: &Voice<'_, Newest<SizeWish>, Planned>| {
                let answer = answer(&wish.project, &wish.size);
                voice.say(Planned { of: wish.of, size: wish.size, answer });
            }
        };
        Self {
            worker: Worker::new("size to make", work),
            seen: None,
            design: None,
            known: BTreeMap::new(),
            asked: None,
        }
    }
}

impl SizedCourses {
    /// Follows the document: takes what has been found and asks for what is missing at `size`.
    /// Returns whether the courses there were no longer hold.
    pub(crate) fn update(&mut self, ctx: &Context, document: &Document, size: &str) -> bool {
        let holds = self.follow(document);
        self.hear();
        let awaited = self.asked.as_ref().is_some_and(|asked| asked.size == size);
        if !self.known.contains_key(size)
            && !awaited
            && let Some(of) = self.design.clone()
        {
            let project = as_designed(document.project());
            let wish = SizeWish { of, project, size: size.to_owned() };
            let ticket = self.worker.ask(ctx, wish);
            self.asked = Some(SizeAwaited { ticket, size: size.to_owned() });
        }
        !holds
    }

    /// Follows the design; returns whether it is as it was.
    fn follow(&mut self, document: &Document) -> bool {
        if self.seen.replace(document.revision()) == Some(document.revision()) {
            return true;
        }
        let project = document.project();
        let holds = self.design.as_ref().is_some_and(|design| design.is_of(project));
        if !holds {
            self.design = Some(Arc::new(Design::of(project)));
            self.known.clear();
            self.asked = None;
        }
        holds
    }

    /// The course of a piece at `size`, or why it has none; none until it is worked out.
    pub(crate) fn of(
        &self,
        size: &str,
        piece: PieceId,
    ) -> Option<Result<&Arc<WorkedPiece>, &str>> {
        match self.known.get(size)? {
            Ok(courses) => courses.get(&piece).map(Ok),
            Err(why) => Some(Err(why)),
        }
    }

    fn hear(&mut self) {
        while let Some(heard) = self.worker.hear() {
            let asked = self.asked.take_if(|asked| asked.ticket == heard.to);
            match heard.answer {
                Ok(Planned { of, size, answer }) => {
                    let holds = |design| Arc::ptr_eq(design, &of);
                    if self.design.as_ref().is_some_and(holds) {
                        self.known.insert(size, answer);
                    }
                }
                Err(broken) => {
                    if let Some(SizeAwaited { size, .. }) = asked {
                        let why = say!(
                            "trouble-it-could-not-be-planned-broken",
                            broken = broken.to_string()
                        );
                        self.known.insert(size, Err(why));
                    }
                }
            }
        }
    }
}

fn answer(project: &Project, size: &str) -> CoursesFound {
    let courses = || WorkedPiece::at_size(project, size, &project.wording.writer()?);
    let courses = courses().map_err(|e| e.to_string())?;
    let pieces = project.pieces.iter().map(|piece| piece.id);
    Ok(pieces.zip(courses.into_iter().map(Arc::new)).collect())
}

#[cfg(test)]
mod tests {
    use std::time::{Duration, Instant};

    use super::*;
    use plumpline_core::{Size, SizeBy};

    fn document() -> Document {
        let mut project = Document::blank().project().clone();
        let size = |name: &str, factor| Size::new(name, SizeBy::Factor(factor));
        project.pieces[0].sizes = vec![size("S", 0.5), size("M", 0.8)];
        Document::new(project, None)
    }

    fn change(document: &mut Document, change: impl FnOnce(&mut Project)) {
        document.change("Change".into(), None, |project, _| change(project));
    }

    /// Waits until `size` is worked out; returns how many rounds its piece has.
    fn rounds(courses: &mut SizedCourses, document: &Document, size: &str) -> u32 {
        let began = Instant::now();
        loop {
            courses.update(&Context::default(), document, size);
            if let Some(course) = courses.of(size, PieceId::new(0)) {
                return course.expect("a course").last_round();
            }
            assert!(began.elapsed() < Duration::from_secs(20), "{size} is not planned");
            std::thread::yield_now();
        }
    }

    #[test]
    fn sizes_are_kept_until_the_design_is_another_and_late_ones_are_dropped() {
        let (mut document, mut courses) = (document(), SizedCourses::default());
        let small = rounds(&mut courses, &document, "S");
        assert!(rounds(&mut courses, &document, "M") > small);
        let ctx = Context::default();
        assert!(!courses.update(&ctx, &document, "S") && courses.asked.is_none(), "both known");
        change(&mut document, |project| project.title = "Another title".into());
        document.work(|making| making.begin(PieceId::new(0), Some("S"), 1).round = 4);
        assert!(!courses.update(&ctx, &document, "S"), "nothing follows from those");
        let scale = |factor| {
            move |project: &mut Project| {
                let outline = &mut project.pieces[0].outline;
                *outline = outline.scaled(factor, factor);
            }
        };
        change(&mut document, scale(1.2));
        assert!(courses.update(&ctx, &document, "S"), "those there were no longer hold");
        assert!(courses.of("S", PieceId::new(0)).is_none() && courses.asked.is_some());
        // While that is worked out, the design changes once more.
        let larger = Document::new(document.project().clone(), None);
        change(&mut document, scale(1.5));
        assert!(courses.update(&ctx, &document, "S"));
        let largest = rounds(&mut courses, &document, "S");
        assert!(largest > rounds(&mut courses, &larger, "S"), "the late one was taken");
    }

    #[test]
    fn why_a_size_cannot_be_made_is_said() {
        let mut document = document();
        change(&mut document, |project| {
            project.pieces[0].sizes[0].by = SizeBy::Meet { companion: PieceId::new(7) };
        });
        let mut courses = SizedCourses::default();
        let began = Instant::now();
        while courses.of("S", PieceId::new(0)).is_none() {
            courses.update(&Context::default(), &document, "S");
            assert!(began.elapsed() < Duration::from_secs(20), "there is no answer");
            std::thread::yield_now();
        }
        let why =
            courses.of("S", PieceId::new(0)).expect("an answer").expect_err("no companion 7");
        assert!(why.contains("there is no companion 7"), "{why}");
    }
}
