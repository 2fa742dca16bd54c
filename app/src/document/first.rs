//! What there is before anybody has opened anything: the sample, a blank project, starters as
//! they usually are.

use plumpline_core::starter::Starter;
use plumpline_core::{Gauge, Outline, Piece, Project, file};

/// The project that opens when none is named.
const SAMPLE: &str = include_str!("../../../sample-projects/float.ron");

/// The sample project.
pub(super) fn sample() -> Project {
    file::parse(SAMPLE).unwrap_or_else(|_| blank())
}

/// A project with a ball to begin from.
pub(super) fn blank() -> Project {
    let ball = usual(Starter::Ball, Gauge::default());
    Project { title: say!("new-new-project").into(), ..Project::of_piece(ball) }
}

/// A starter at its usual size, at this gauge.
pub(crate) fn usual(starter: Starter, gauge: Gauge) -> Piece {
    // Its usual size is within its range: a test makes every starter at that size.
    starter
        .piece(&starter.usual(), gauge)
        .unwrap_or_else(|_| Piece::new(starter.name(), Outline { knots: Vec::new() }, gauge))
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn both_first_projects_are_sound() {
        assert!(file::parse(SAMPLE).is_ok(), "{:?}", file::parse(SAMPLE));
        assert!(blank().validate().is_ok());
        assert!(plumpline_core::plan(&sample().pieces[0]).is_ok());
    }
}
