//! The lesson on paper: pages to work on with their answers, and the teacher's guide.

use std::ops::Range;

use plumpline_core::lesson::LessonCourse;
use plumpline_core::lesson::course::{lesson_page, teacher_page};
use plumpline_core::words::Writer;
use plumpline_core::{Gauge, Result, Unit};
use plumpline_typeset::{Paper, Press};

/// What of a lesson is printed.
#[derive(Debug, Clone, PartialEq)]
pub struct LessonPrint {
    /// The course.
    pub course: LessonCourse,
    /// Its steps, from 0.
    pub steps: Range<usize>,
    /// Whether the teacher's guide comes with them.
    pub guide: bool,
    /// The stitches it counts in.
    pub gauge: Gauge,
    /// Unit of lengths.
    pub unit: Unit,
    /// Paper.
    pub paper: Paper,
}

impl LessonPrint {
    /// The PDF.
    ///
    /// # Errors
    /// One line: where a sample cannot be worked at that gauge, or the typesetter gives up.
    pub fn pdf(&self) -> std::result::Result<Vec<u8>, String> {
        let writer = Writer::bench();
        let (course, gauge, unit) = (&self.course, self.gauge, self.unit);
        let steps = || self.steps.clone();
        let pages = steps().map(|i| lesson_page(course, i, gauge, unit, &writer));
        let pages = pages.collect::<Result<Vec<_>>>();
        let guides =
            steps().filter(|_| self.guide).map(|i| teacher_page(course, i, gauge, unit));
        let guides = guides.collect::<Result<Vec<_>>>();
        let at = |e: plumpline_core::Error| format!("the lesson at this gauge: {e}");
        let (pages, guides) = (pages.map_err(at)?, guides.map_err(at)?);
        let set = Press::new().lesson(&pages, &guides, self.paper);
        set.and_then(|set| set.pdf()).map_err(|e| e.to_string())
    }
}
