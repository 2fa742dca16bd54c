//! Footprints on the map of a carrier.

use egui::{Color32, Painter, Pos2, Shape, Stroke};
use plumpline_core::project::toy::part::{Copies, PartForm, Thing};
use plumpline_core::toy::solid::OnCloth;

use super::here::ToyBench;
use super::map::MapGround;

/// Draws the prints of part `index`, all its copies, each filled `fill`; returns the middles.
pub(super) fn paint(
    painter: &Painter,
    here: &ToyBench<'_>,
    ground: &MapGround<'_>,
    index: usize,
    fill: Color32,
) -> Vec<Pos2> {
    let Some(part) = here.part(index) else { return Vec::new() };
    let Some(seat) = part.on else { return Vec::new() };
    let middle = OnCloth { round: ground.solid.round_at(seat.at.along), turn: seat.at.around };
    let print = here.made.and_then(|made| made.part(index)?.footprint.as_ref());
    // The print is of where the part was when the toy was made last; it moves with its place.
    let was = here.made.and_then(|made| made.project.toy.parts.get(index)?.on);
    let by = was.map_or((0.0, 0.0), |was| {
        (middle.round - ground.solid.round_at(was.at.along), seat.at.around - was.at.around)
    });
    let edge = Stroke::new(1.6, here.bench.t.outline);
    let copies = images(part.copies);
    for &(flip, step) in &copies {
        let turned = |on: &OnCloth| OnCloth {
            round: on.round + by.0,
            turn: flip * (on.turn + by.1) + step,
        };
        match (print, &part.what) {
            (Some(print), _) => {
                let around = print.winding() != 0;
                let places: Vec<Pos2> = match around {
                    true => ring(print.curve.iter().map(turned).map(|on| on.round), ground),
                    false => print.curve.iter().map(|on| ground.at(turned(on))).collect(),
                };
                if print.closed && !around {
                    painter.add(Shape::convex_polygon(places.clone(), fill, Stroke::NONE));
                    painter.add(Shape::closed_line(places, edge));
                } else {
                    painter.add(Shape::line(places.clone(), Stroke::new(6.5, edge.color)));
                    painter.add(Shape::line(places, Stroke::new(4.0, fill)));
                }
            }
            (None, Thing::Small(small)) => {
                let across = match small.form {
                    PartForm::Eye(button) | PartForm::Nose(button) => button.diameter_mm,
                    PartForm::Block(wide, deep, _) => wide.max(deep),
                };
                let stitch = ground.solid.stitch_mm().max(0.1);
                let radius = (0.5 * across / stitch) as f32 * ground.cell;
                let at = ground.at(turned(&OnCloth {
                    round: middle.round - by.0,
                    turn: middle.turn - by.1,
                }));
                let light = Stroke::new(1.4, here.bench.t.panel);
                let edge = if fill == here.bench.t.highlight { edge } else { light };
                painter.circle(at, radius.max(3.0), fill, edge);
            }
            (None, Thing::Piece(_)) => {
                let at = ground.at(turned(&OnCloth {
                    round: middle.round - by.0,
                    turn: middle.turn - by.1,
                }));
                painter.circle(at, 4.0, fill, edge);
            }
        }
    }
    copies
        .into_iter()
        .map(|(flip, step)| ground.at(OnCloth { turn: flip * middle.turn + step, ..middle }))
        .collect()
}

/// How each copy follows from the first: turned over, and turned on.
pub(super) fn images(copies: Copies) -> Vec<(f64, f64)> {
    match copies {
        Copies::One => vec![(1.0, 0.0)],
        Copies::Mirrored => vec![(1.0, 0.0), (-1.0, 0.0)],
        Copies::Around(n) => {
            (0..n).map(|i| (1.0, f64::from(i) / f64::from(n.max(1)))).collect()
        }
    }
}

/// A line along the rounds that a print lies on which goes around the axis.
fn ring(rounds: impl Iterator<Item = f64>, ground: &MapGround<'_>) -> Vec<Pos2> {
    let (sum, number) = rounds.fold((0.0, 0.0), |(sum, n), round| (sum + round, n + 1.0));
    let round = if number > 0.0 { sum / number } else { 0.0 };
    [-0.5, 0.5].map(|turn| ground.at(OnCloth { round, turn })).to_vec()
}
