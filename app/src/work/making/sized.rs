//! The courses of sizes, worked out on a thread of their own: to plan a whole project at a size
//! takes longer than a frame. Every size that was asked for is kept while the design stays as
//! it is; what comes too late for another design is dropped.

use std::collections::BTreeMap;
use std::sync::Arc;
use std::sync::mpsc::{Receiver, TryRecvError, sync_channel};

use egui::Context;
use plumpline_core::making::Course;
use plumpline_core::{Piece, Project, Seam, WordingChoice};

use super::courses::is_same;
use crate::document::as_designed;

/// The course of every piece, in their order, or why there is none.
type Answer = Result<Vec<Arc<Course>>, String>;

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

/// Work under way.
#[derive(Debug)]
struct Running {
    of: Arc<Design>,
    size: String,
    hear: Receiver<Answer>,
}

/// The courses of a project at its sizes, as far as they have been worked out.
#[derive(Debug, Default)]
pub(crate) struct SizedCourses {
    design: Option<Arc<Design>>,
    known: BTreeMap<String, Answer>,
    running: Option<Running>,
}

impl SizedCourses {
    /// Follows the project: takes what has been found and starts what is missing at `size`.
    /// Returns whether the courses there were no longer hold.
    pub(crate) fn update(&mut self, ctx: &Context, project: &Project, size: &str) -> bool {
        let holds = self.design.as_ref().is_some_and(|design| design.is_of(project));
        if !holds {
            self.design = Some(Arc::new(Design::of(project)));
            self.known.clear();
        }
        self.hear();
        if !self.known.contains_key(size) && self.running.is_none() {
            self.start(ctx, project, size);
        }
        !holds
    }

    /// The course of a piece at `size`, or why it has none; none until it is worked out.
    pub(crate) fn of(&self, size: &str, piece: usize) -> Option<Result<&Arc<Course>, &str>> {
        match self.known.get(size)? {
            Ok(courses) => courses.get(piece).map(Ok),
            Err(why) => Some(Err(why)),
        }
    }

    fn hear(&mut self) {
        let Some(running) = &self.running else { return };
        let answer = match running.hear.try_recv() {
            Ok(answer) => answer,
            Err(TryRecvError::Empty) => return,
            Err(TryRecvError::Disconnected) => Err("it could not be planned".to_owned()),
        };
        if let Some(Running { of, size, .. }) = self.running.take()
            && self.design.as_ref().is_some_and(|design| Arc::ptr_eq(design, &of))
        {
            self.known.insert(size, answer);
        }
    }

    fn start(&mut self, ctx: &Context, project: &Project, size: &str) {
        let Some(of) = self.design.clone() else { return };
        let (tell, hear) = sync_channel(1);
        let (ctx, size, project) = (ctx.clone(), size.to_owned(), as_designed(project));
        let at = size.clone();
        let work = move || {
            // The window may be gone by now; then nobody needs to hear it.
            let _ = tell.send(answer(&project, &at));
            ctx.request_repaint();
        };
        if std::thread::Builder::new().name("size to make".into()).spawn(work).is_ok() {
            self.running = Some(Running { of, size, hear });
        }
    }
}

fn answer(project: &Project, size: &str) -> Answer {
    let courses = || Course::at_size(project, size, &project.wording.writer()?);
    let courses = courses().map_err(|e| e.to_string())?;
    Ok(courses.into_iter().map(Arc::new).collect())
}

#[cfg(test)]
mod tests {
    use std::time::{Duration, Instant};

    use super::*;
    use crate::document::Document;
    use plumpline_core::{Size, SizeBy};

    fn project() -> Project {
        let mut project = Document::blank().project().clone();
        let size = |name: &str, factor| Size::new(name, SizeBy::Factor(factor));
        project.pieces[0].sizes = vec![size("S", 0.5), size("M", 0.8)];
        project
    }

    /// Waits until `size` is worked out; returns how many rounds its piece has.
    fn rounds(courses: &mut SizedCourses, project: &Project, size: &str) -> u32 {
        let began = Instant::now();
        loop {
            courses.update(&Context::default(), project, size);
            if let Some(course) = courses.of(size, 0) {
                return course.expect("a course").last_round();
            }
            assert!(began.elapsed() < Duration::from_secs(20), "{size} is not planned");
            std::thread::sleep(Duration::from_millis(1));
        }
    }

    #[test]
    fn sizes_are_kept_until_the_design_is_another_and_late_ones_are_dropped() {
        let (mut project, mut courses) = (project(), SizedCourses::default());
        let small = rounds(&mut courses, &project, "S");
        assert!(rounds(&mut courses, &project, "M") > small);
        let ctx = Context::default();
        assert!(
            !courses.update(&ctx, &project, "S") && courses.running.is_none(),
            "both known"
        );
        project.title = "Another title".into();
        project.making.begin(0, Some("S"), 1).round = 4;
        assert!(!courses.update(&ctx, &project, "S"), "nothing follows from those");
        project.pieces[0].outline = project.pieces[0].outline.scaled(1.2, 1.2);
        assert!(courses.update(&ctx, &project, "S"), "those there were no longer hold");
        assert!(courses.of("S", 0).is_none() && courses.running.is_some());
        // While that is worked out, the design changes once more.
        let larger = project.clone();
        project.pieces[0].outline = project.pieces[0].outline.scaled(1.5, 1.5);
        assert!(courses.update(&ctx, &project, "S"));
        let largest = rounds(&mut courses, &project, "S");
        assert!(largest > rounds(&mut courses, &larger, "S"), "the late one was taken");
    }

    #[test]
    fn why_a_size_cannot_be_made_is_said() {
        let mut project = project();
        project.pieces[0].sizes[0].by = SizeBy::Meet { companion: 7 };
        let mut courses = SizedCourses::default();
        let began = Instant::now();
        while courses.of("S", 0).is_none() {
            courses.update(&Context::default(), &project, "S");
            assert!(began.elapsed() < Duration::from_secs(20), "there is no answer");
            std::thread::sleep(Duration::from_millis(1));
        }
        let why = courses.of("S", 0).expect("an answer").expect_err("no companion 7");
        assert!(why.contains("there is no companion 7"), "{why}");
    }
}
