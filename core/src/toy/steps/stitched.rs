//! Sentences about embroidery.

use super::say::Speaker;
use crate::piece::Yarn;
use crate::project::toy::embroidery::{Embroidery, EmbroideryStitch};
use crate::toy::assembled::Point;
use crate::toy::embroidered::EmbroideryFigures;
use crate::words::write::Fill;

/// What to embroider where: each place between two rounds, after a stitch.
pub(super) fn stitched(
    speaker: &Speaker<'_>,
    line: &Embroidery,
    figures: &EmbroideryFigures,
) -> String {
    let p = speaker.phrases;
    let (phrase, usual) = match line.stitch {
        EmbroideryStitch::Back => (&p.stitched_back, &p.line),
        EmbroideryStitch::Straight => (&p.stitched_straight, &p.line),
        EmbroideryStitch::FrenchKnot => (&p.stitched_knots, &p.knots),
    };
    let name = if line.name.is_empty() { usual } else { &line.name };
    let places = |of: &Vec<(u32, u32)>| {
        let told = of.iter().map(|&(round, after)| {
            let place = speaker.rounds(&p.between, round, round + 1);
            let point = Point { round, apart: None, after: vec![after] };
            match speaker.stitches(&point, &p.after_one, &p.after_two) {
                Some(after) => format!("{place} {after}"),
                None => place,
            }
        });
        told.collect::<Vec<_>>().join("; ")
    };
    let mut lines = figures.lines.iter().map(places);
    let (body, letter) = (speaker.name(line.part), Yarn::letter(line.yarn));
    let first = lines.next().unwrap_or_default();
    let values = [
        ("name", Fill::Words(name)),
        ("body", Fill::Words(&body)),
        ("letter", Fill::Words(&letter)),
        ("places", Fill::Words(&first)),
    ];
    let mut said = speaker.fill(phrase, &values);
    for other in lines {
        said += &speaker.fill(&p.stitched_mirrored, &[("places", Fill::Words(&other))]);
    }
    said + "."
}
