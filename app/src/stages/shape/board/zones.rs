//! Stretches of cloth that nothing holds, where that shows: hatched, each with its size.

use egui::{Align2, Painter, Rect, Stroke, StrokeKind, pos2, vec2};
use plumpline_core::Plan;
use plumpline_core::outline::Rz;
use plumpline_core::warning::{Misfit, WarningKind};

use super::ground::Ground;
use super::misfit;
use crate::bench::Bench;
use crate::kit::type_faces;

/// What cloth does where nothing holds it.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub(super) enum ZoneKind {
    Wrinkles,
    Unheld,
}

/// A stretch that nothing holds.
struct Zone {
    /// What cloth does there.
    kind: ZoneKind,
    /// First and last round.
    rounds: [u32; 2],
}

fn zones(plan: &Plan) -> impl Iterator<Item = Zone> + '_ {
    plan.warnings.iter().filter_map(|w| {
        let kind = match w.kind {
            WarningKind::Wrinkle => ZoneKind::Wrinkles,
            WarningKind::Flat => ZoneKind::Unheld,
            _ => return None,
        };
        Some(Zone { kind, rounds: [*w.rounds.first()?, *w.rounds.last()?] })
    })
}

/// What cloth does at a gap, where nothing holds it there.
pub(super) fn kind_at(plan: &Plan, misfit: &Misfit) -> Option<ZoneKind> {
    let [first, last] = misfit.rounds();
    let worst = (misfit.worst as u32).max(1);
    let near = |z: &Zone| z.rounds[0] <= last + 1 && first <= z.rounds[1] + 1;
    let around = |z: &Zone| (z.rounds[0]..=z.rounds[1]).contains(&worst);
    // Where two meet, the one that has the worst of the gap.
    zones(plan).find(around).or_else(|| zones(plan).find(near)).map(|zone| zone.kind)
}

/// Hatches the gap along the whole of each stretch, more openly than the gaps themselves.
pub(super) fn hatch(painter: &Painter, bench: &Bench<'_>, plan: &Plan, ground: &Ground) {
    let stroke = Stroke::new(0.8, bench.t.warning);
    for zone in zones(plan) {
        let last = plan.rounds.len();
        let [from, to] = zone.rounds.map(|r| (r as usize).min(last));
        misfit::hatch_nodes(painter, plan, ground, from.saturating_sub(1)..=to, 10.0, stroke);
    }
}

/// How far each gap is off, but for the one the callout names.
pub(super) fn sizes(
    painter: &Painter,
    bench: &Bench<'_>,
    plan: &Plan,
    ground: &Ground,
    callout: Option<Rect>,
) {
    let t = bench.t;
    let Some(named) = misfit::worst(plan) else { return };
    let mut taken: Vec<Rect> = callout.into_iter().collect();
    taken.extend(super::dimensions::marks(plan, ground));
    // The selected round wears its name on the body.
    let current_round =
        bench.view.current_round().map(|r| r as usize).filter(|&r| r <= plan.rounds.len());
    if let Some(k) = current_round.filter(|&k| k > 0) {
        let y = |k: usize| ground.y(plan.forecast[k].z + plan.shift_mm);
        let middle = 0.5 * (y(k - 1) + y(k));
        let half = (0.5 * (y(k) - y(k - 1)).abs()).max(8.0);
        let strip = ground.rect.x_range();
        taken.push(Rect::from_x_y_ranges(strip, middle - half..=middle + half));
    }
    for gap in plan.misfits.iter().filter(|m| m.worst != named.worst) {
        let off = gap.sentence(plan.rounds.len()).text(bench.unit());
        let words = match kind_at(plan, gap) {
            Some(ZoneKind::Wrinkles) => say!("board-zone-wrinkles", off = off),
            Some(ZoneKind::Unheld) => say!("board-zone-unheld", off = off),
            None => off,
        };
        let font = type_faces::semibold(type_faces::SMALL);
        let galley = painter.layout_no_wrap(words, font, t.warning);
        let size = galley.size() + vec2(10.0, 4.0);
        let node = plan.forecast[gap.worst];
        let rim = ground.mirrored(Rz::new(node.r, node.z + plan.shift_mm));
        let board = ground.rect.shrink(4.0);
        if !board.contains(rim) {
            continue;
        }
        // On the body, which is quieter than what lies around it; else beside it.
        let inward = match gap.worst {
            0 => 14.0,
            k if k == plan.rounds.len() => -14.0,
            _ => 0.0,
        };
        let mut places = [
            Align2::LEFT_CENTER.anchor_size(rim + vec2(8.0, inward), size),
            Align2::RIGHT_CENTER.anchor_size(rim - vec2(8.0, 0.0), size),
            Align2::CENTER_CENTER.anchor_size(pos2(ground.axis_x, rim.y + 18.0), size),
            Align2::CENTER_CENTER.anchor_size(pos2(ground.axis_x, rim.y - 18.0), size),
        ];
        if rim.x > ground.axis_x - 6.0 {
            // At a pole, away from the side with the knots.
            places.swap(0, 1);
        }
        let free = |r: &&Rect| {
            board.contains_rect(**r) && !taken.iter().any(|other| other.intersects(**r))
        };
        let Some(&rect) = places.iter().find(free) else { continue };
        let edge = Stroke::new(1.0, t.warning);
        painter.rect(rect, 4.0, t.warn_wash, edge, StrokeKind::Inside);
        painter.galley(rect.min + vec2(5.0, 2.0), galley, t.warning);
        taken.push(rect);
    }
}
