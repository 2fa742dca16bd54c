//! A course as a file, so that whoever teaches can write one, and its samples as a project.

use std::sync::OnceLock;

use super::{LessonCourse, LessonStep, lesson_page, teacher_page};
use crate::error::{Error, Result};
use crate::length::Unit;
use crate::piece::gauge::Gauge;
use crate::project::Project;
use crate::words::Writer;

/// Most steps of a course: more have no room on their thread.
const MOST_STEPS: usize = 24;

/// The built-in course as its file has it.
const ENGLISH: &str = include_str!("../../../../assets/words/lesson/en.ron");

impl LessonCourse {
    /// The lesson in English, the only language it has yet.
    pub fn english() -> &'static Self {
        static ENGLISH_COURSE: OnceLock<LessonCourse> = OnceLock::new();
        ENGLISH_COURSE
            .get_or_init(|| ron::from_str(ENGLISH).expect("the built-in lesson parses"))
    }

    /// The English lesson as its file has it, to be changed.
    pub fn english_text() -> &'static str {
        ENGLISH
    }

    /// The course that `text` holds, written like [`LessonCourse::english_text`].
    ///
    /// # Errors
    /// Names the line that cannot be read; the step whose sample cannot be worked or whose
    /// words have a name in braces that is no figure; a course of no step or of more than 24.
    pub fn read(text: &str) -> Result<Self> {
        let course: Self = ron::from_str(text).map_err(|e| {
            let at = e.span.start;
            Error::new(
                format!("line {}, column {}", at.line, at.col),
                e.code.to_string().replace('\n', " "),
                "compare it with the course that is built in",
            )
        })?;
        if course.steps.is_empty() || course.steps.len() > MOST_STEPS {
            return Err(Error::new(
                "steps",
                format!("there are {}", course.steps.len()),
                format!("give 1 to {MOST_STEPS}"),
            ));
        }
        course.try_out()?;
        Ok(course)
    }

    /// Everything that its words come to be, once.
    fn try_out(&self) -> Result<()> {
        let (gauge, unit, writer) = (Gauge::default(), Unit::Mm, Writer::bench());
        for (i, step) in self.steps.iter().enumerate() {
            let at = |e: Error| e.within(&format!("step {}, “{}”", i + 1, step.title));
            lesson_page(self, i, gauge, unit, &writer).map_err(at)?;
            teacher_page(self, i, gauge, unit).map_err(at)?;
            let figures = step.figures(gauge).map_err(at)?;
            let replies = step.replies();
            for words in step.look.iter().map(String::as_str).chain(replies) {
                figures.filled(words, super::answer::NAMES_OF_REPLY).map_err(at)?;
            }
        }
        Ok(())
    }

    /// A project with a piece for the sample of each step, in stitches of `gauge`, its title
    /// the course's.
    ///
    /// # Errors
    /// Where a sample cannot be worked at that gauge.
    pub fn project(&self, gauge: Gauge) -> Result<Project> {
        let piece = |step: &LessonStep| Ok(step.sample.at(gauge)?.piece(&step.title, gauge));
        let mut pieces = self.steps.iter().map(piece);
        let Some(first) = pieces.next().transpose()? else {
            return Err(Error::new("steps", "there are none", "give one at least"));
        };
        let mut project = Project::of_piece(first);
        project.title.clone_from(&self.title);
        project.notes.clone_from(&self.about);
        for piece in pieces {
            project.add(piece?);
        }
        Ok(project)
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn a_course_of_ones_own_is_read_and_refused_in_one_line() {
        let text = LessonCourse::english_text();
        assert_eq!(
            &LessonCourse::read(text).expect("the built-in one"),
            LessonCourse::english()
        );
        let other = text.replace("Why six?", "Six, but why?");
        let other = LessonCourse::read(&other).expect("other words");
        assert_eq!(other.steps[1].title, "Six, but why?");
        for (from, to, says) in [
            ("{flat_whole}", "{flat_hole}", ""),
            ("Level(rounds: 9)", "Level(rounds: 900)", "Why six?"),
            ("Level(rounds: 9)", "Levell(rounds: 9)", "line"),
            ("{stitch_height} high", "{stitch_hight} high", "stitch_hight"),
            ("{stitch_degrees}", "{stitch_degree}", "stitch_degree"),
        ] {
            let broken = text.replace(from, to);
            if broken == text {
                continue;
            }
            let error = LessonCourse::read(&broken).expect_err(to).to_string();
            assert!(error.contains(says) && !error.contains('\n'), "{error}");
        }
        assert!(LessonCourse::read("").is_err());
    }

    #[test]
    fn its_samples_are_a_project_that_opens() {
        let project = LessonCourse::english().project(Gauge::default()).expect("a project");
        assert_eq!(project.pieces.len(), LessonCourse::english().steps.len());
        let text = crate::project::file::write(&project).expect("written");
        assert_eq!(crate::project::file::parse(&text).expect("read"), project);
    }
}
