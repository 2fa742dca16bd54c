//! The lesson on paper: pages to work on with their answers, and the teacher's guide.

use std::ops::Range;

use plumpline_core::lesson::LessonCourse;
use plumpline_core::lesson::course::{LessonPage, LessonPicture, lesson_page, teacher_page};
use plumpline_core::picture::Rgb;
use plumpline_core::picture::relief::Still;
use plumpline_core::words::Writer;
use plumpline_core::{Gauge, Result, Unit};
use plumpline_typeset::{Paper, Press};

use super::lesson::drawing;
use crate::view::lesson::LessonView;

/// Pixels of a picture on a page: 200 to the inch.
const PICTURE_PIXELS: [u32; 2] = [640, 460];

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
    /// Colour of the yarn in its pictures.
    pub colour: Rgb,
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
        let draw = |mut page: LessonPage, i: usize| {
            page.pictures = pictures(course, i, gauge, self.colour)?;
            Ok(page)
        };
        let drawn = |pages: Vec<LessonPage>| {
            pages.into_iter().zip(steps()).map(|(page, i)| draw(page, i)).collect()
        };
        let pages: Result<Vec<LessonPage>> = pages.and_then(drawn);
        let guides =
            steps().filter(|_| self.guide).map(|i| teacher_page(course, i, gauge, unit));
        let guides = guides.collect::<Result<Vec<_>>>();
        let at = |e: plumpline_core::Error| say!("lesson-at-this-gauge", why = e.to_string());
        let (pages, guides) = (pages.map_err(at)?, guides.map_err(at)?);
        let set = Press::new().lesson(&pages, &guides, self.paper);
        set.and_then(|set| set.pdf()).map_err(|e| e.to_string())
    }
}

/// The cloth of step `index` at rest, as it is first seen on screen.
fn pictures(
    course: &LessonCourse,
    index: usize,
    gauge: Gauge,
    colour: Rgb,
) -> Result<Vec<LessonPicture>> {
    let Some(step) = course.steps.get(index) else { return Ok(Vec::new()) };
    let words = &course.words;
    let sights = LessonView::default().sights(Some(step.sample));
    let looks = sights.map(|turned| (turned.turn_deg, turned.tilt_deg));
    let stills = drawing::at_rest(step.sample, gauge, &looks, PICTURE_PIXELS, &[colour])?;
    let picture = |(still, (_, tilt_deg)): (&Still, (f32, f32))| {
        let level = tilt_deg.abs() < 45.0;
        let words = if level { &words.from_side } else { &words.from_above }.clone();
        Ok(LessonPicture { words, png: still.small_png()? })
    };
    stills.iter().zip(looks).map(picture).collect()
}
