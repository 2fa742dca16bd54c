//! A lesson as data for its template.

use std::collections::BTreeMap;

use plumpline_core::lesson::course::{LessonPage, TeacherPage};
use plumpline_core::words::Writer;
use serde_json::json;
use typst::foundations::Bytes;

use crate::fonts::{Fonts, Missing};
use crate::settable::settable;
use crate::world::LESSON_DATA;
use crate::{Error, Paper, Result};

/// The files of a lesson: its data and its pictures; and what no face has in a sentence.
pub(crate) fn lesson_files(
    steps: &[LessonPage],
    guides: &[TeacherPage],
    paper: Paper,
    fonts: &Fonts,
) -> Result<(BTreeMap<String, Bytes>, Option<String>)> {
    let title = steps.first().map(|step| step.lesson.as_str());
    let guide = guides.first().map(|guide| guide.guide.as_str());
    let paper = match paper {
        Paper::A4 => "a4",
        Paper::Letter => "us-letter",
    };
    let mut data = json!({
        "title": title.or(guide).unwrap_or_default(),
        "guide": guide.unwrap_or_default(),
        "language": "en",
        "paper": paper,
        "steps": serde_json::to_value(steps).map_err(|e| Error::new(e.to_string()))?,
        "guides": serde_json::to_value(guides).map_err(|e| Error::new(e.to_string()))?,
    });
    let mut files = BTreeMap::new();
    for (i, step) in steps.iter().enumerate() {
        for (j, picture) in step.pictures.iter().enumerate() {
            let name = format!("/step-{i}-{j}.png");
            data["steps"][i]["pictures"][j]["file"] = json!(name);
            files.insert(name, Bytes::new(picture.png.clone()));
        }
    }
    let mut missing = Missing::default();
    settable(&mut data, fonts, &mut missing);
    let words = Writer::bench();
    let replaced =
        missing.said(|name| words.sheet_words().get(name, words.lexicon()).unwrap_or_default());
    data["replaced"] = json!(replaced);
    files.insert(LESSON_DATA.to_owned(), Bytes::from_string(data.to_string()));
    Ok((files, replaced))
}

#[cfg(test)]
mod tests {
    use plumpline_core::lesson::LessonCourse;
    use plumpline_core::lesson::course::{lesson_page, teacher_page};
    use plumpline_core::words::Writer;
    use plumpline_core::{Gauge, Unit};

    use super::*;
    use crate::Press;

    fn pages() -> (Vec<LessonPage>, Vec<TeacherPage>) {
        let (course, gauge) = (LessonCourse::english(), Gauge::default());
        let steps = 0..course.steps.len();
        let writer = Writer::bench();
        let page = |i| lesson_page(course, i, gauge, Unit::Mm, &writer).expect("a page");
        let guide = |i| teacher_page(course, i, gauge, Unit::Mm).expect("a guide");
        (steps.clone().map(page).collect(), steps.map(guide).collect())
    }

    #[test]
    fn every_step_is_one_sheet_with_its_answer_on_the_back() {
        let (steps, guides) = pages();
        let press = Press::new();
        for paper in [Paper::A4, Paper::Letter] {
            let set = press.lesson(&steps, &[], paper).expect("it can be set");
            assert_eq!(set.count(), 2 * steps.len(), "{paper:?}");
            assert_eq!(set.replaced(), None);
            let all = press.lesson(&steps, &guides, paper).expect("it can be set");
            assert!(all.count() > set.count(), "the guide follows");
        }
        let alone = press.lesson(&[], &guides[..1], Paper::A4).expect("it can be set");
        assert_eq!(alone.count(), 1);
    }

    #[test]
    fn what_is_typed_is_no_markup() {
        let (mut steps, _) = pages();
        steps.truncate(1);
        steps[0].title = "#panic() *bold* $x$ [\u{1F9F6}]".into();
        let set = Press::new().lesson(&steps, &[], Paper::A4).expect("it can be set");
        assert_eq!(set.count(), 2);
        assert!(set.replaced().is_some_and(|said| said.contains("U+1F9F6")));
        assert!(!set.pdf().expect("a file").is_empty());
    }
}
