//! A written pattern made a piece plans to the very counts it was written with.

use plumpline_core::pattern::course::courses;
use plumpline_core::pattern::read::{Wish, read};
use plumpline_core::project::shape::{project_of, shape};
use plumpline_core::{Firmness, Gauge, plan};
use plumpline_tests::corpus::clean;

#[test]
fn clean_patterns_plan_to_their_own_counts() {
    let mut wrong = Vec::new();
    for pattern in clean() {
        let reading = read(pattern.text, Wish::Infer);
        let shaped = shape(
            &reading.pattern,
            &reading.unread,
            pattern.name,
            Gauge::per(22.0, 24.0, 100.0),
            Firmness::MEDIUM,
        );
        let shaped = match shaped {
            Ok(shaped) => shaped,
            Err(error) => {
                wrong.push(format!("{}: {error}", pattern.name));
                continue;
            }
        };
        let written: Vec<Vec<u32>> = courses(&reading.pattern, &reading.unread)
            .iter()
            .map(|c| c.steps.iter().flat_map(|s| s.counted()).filter_map(|(_, n)| n).collect())
            .collect();
        for (one, written) in shaped.iter().zip(&written) {
            let planned = plan(&one.piece).expect("it was planned before").counts();
            if planned != *written {
                wrong.push(format!("{}: {written:?} becomes {planned:?}", pattern.name));
            }
        }
        assert_eq!(shaped.len(), written.len(), "{}", pattern.name);
        let project = project_of(shaped).expect("it has pieces");
        assert_eq!(project.validate(), Ok(()), "{}", pattern.name);
    }
    assert!(wrong.is_empty(), "{}", wrong.join("\n"));
}
