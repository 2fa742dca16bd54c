//! The figures folded into one line, where the window is narrow: every figure and every yarn,
//! with as many words as there is room for.

use std::sync::Arc;

use egui::{Align2, FontId, Galley, Painter, Rect, Ui, pos2, vec2};
use plumpline_core::{Plan, Yarn};

use super::figures::Values;
use super::{card, yarn_rows};
use crate::bench::Bench;
use crate::bench::action::Actions;
use crate::kit::tokens::PAD;
use crate::kit::words::decimal;
use crate::kit::{paint, type_faces};

/// How many words a line has, and how far its figures stand apart.
#[derive(Debug, Clone, Copy)]
struct Fold {
    /// Words after figures whose meaning a designer sees at once.
    words: bool,
    /// Lengths of yarn; else their beads alone.
    metres: bool,
    /// Working time and fit.
    all: bool,
    apart: f32,
}

/// From the roomiest on.
const FOLDS: [Fold; 5] = [
    Fold { words: true, metres: true, all: true, apart: 18.0 },
    Fold { words: false, metres: true, all: true, apart: 14.0 },
    Fold { words: false, metres: true, all: false, apart: 12.0 },
    Fold { words: false, metres: false, all: true, apart: 12.0 },
    Fold { words: false, metres: false, all: false, apart: 10.0 },
];

/// Words of the line, laid out.
struct LineWords {
    figures: Vec<(Arc<Galley>, Arc<Galley>)>,
    yarns: Vec<Arc<Galley>>,
    apart: f32,
}

impl LineWords {
    fn of(painter: &Painter, bench: &Bench<'_>, plan: &Plan, fold: Fold) -> Self {
        let t = bench.t;
        let set = |words: &str, font: FontId, ink| {
            painter.layout_no_wrap(words.to_owned(), font, ink)
        };
        let values = Values::of(plan, bench.unit());
        let symbol = bench.unit().symbol();
        let size_unit = match plan.depth_mm {
            None if fold.words => say!("measured-unit-high-wide", symbol = symbol),
            _ => symbol.to_owned(),
        };
        let mass = bench.unit().mass_symbol();
        let stuffing = say!("measured-unit-stuffing", unit = mass);
        let fit = plan.fit.map_or("–".into(), |_| decimal(plan.likely_rms_stitches, 2));
        let making = if fold.words { say!("measured-to-make") } else { "" };
        let mut items = vec![
            (values.size, size_unit.as_str()),
            (values.rounds, say!("measured-word-rounds")),
            (values.stitches, say!("measured-st")),
        ];
        if fold.all {
            items.push((values.stuffing, if fold.words { &stuffing } else { mass }));
            items.push((values.time, making));
            items.push((fit, say!("measured-st-off")));
        }
        let small = || type_faces::regular(type_faces::SMALL);
        let figures = items
            .into_iter()
            .map(|(value, unit)| {
                let title = type_faces::bold(type_faces::TITLE);
                (set(&value, title, t.ink), set(unit, small(), t.soft_ink))
            })
            .collect();
        let body = || type_faces::regular(type_faces::BODY);
        let yarns = plan.estimate.yarn.iter().map(|used| {
            let words = match fold.metres {
                true => bench.unit().yarn_text(used.metres),
                false => String::new(),
            };
            set(&words, body(), t.ink)
        });
        let yarns = yarns.collect();
        Self { figures, yarns, apart: fold.apart }
    }

    fn width(&self) -> f32 {
        let figure = |(value, unit): &(Arc<Galley>, Arc<Galley>)| {
            value.size().x + 4.0 + unit.size().x + self.apart
        };
        let figures: f32 = self.figures.iter().map(figure).sum();
        let yarns: f32 = self.yarns.iter().map(|words| self.yarn_width(words)).sum();
        figures + yarns
    }

    fn yarn_width(&self, words: &Galley) -> f32 {
        let words = words.size().x;
        // A bead by itself is still as wide as a hand hits.
        (20.0 + words + if words > 0.0 { 4.0 } else { 0.0 }).max(24.0) + 0.5 * self.apart
    }
}

/// Draws the line, with the card behind a button at its end; returns whether the answers to
/// choose from are in sight.
pub(super) fn show(ui: &mut Ui, bench: &Bench<'_>, rect: Rect, actions: &mut Actions) -> bool {
    let t = bench.t;
    let painter = ui.painter_at(rect);
    let y = rect.center().y;
    let mut x = rect.left() + PAD;
    let (end, sees_answers) = card::button(ui, bench, rect, actions);
    let room = end - 12.0 - x;
    let Some(plan) = bench.plan else {
        let title = type_faces::bold(type_faces::TITLE);
        painter.text(pos2(x, y), Align2::LEFT_CENTER, "–", title, t.ink);
        return sees_answers;
    };
    let tried = || FOLDS.into_iter().map(|fold| LineWords::of(&painter, bench, plan, fold));
    let Some(words) = tried().find(|words| words.width() <= room).or(tried().next_back())
    else {
        return sees_answers;
    };
    let put = |galley: &Arc<Galley>, x: f32, y: f32| {
        let place = Align2::LEFT_CENTER.anchor_size(pos2(x, y), galley.size());
        painter.galley(place.min, galley.clone(), t.ink);
        place.right()
    };
    for (value, unit) in &words.figures {
        x = put(value, x, y);
        x = put(unit, x + 4.0, y + 1.0) + words.apart;
    }
    let yarns = &bench.document.project().yarns;
    let mut told = 0;
    for (used, galley) in plan.estimate.yarn.iter().zip(&words.yarns) {
        let width = words.yarn_width(galley);
        let last = told + 1 == plan.estimate.yarn.len();
        // The last may stand where else “and 3 more” would.
        if x + width + if last { 0.0 } else { 44.0 } > end - 8.0 {
            break;
        }
        let Some(yarn) = yarns.get(used.yarn) else { continue };
        let hit = Rect::from_min_size(
            pos2(x - 3.0, y - 14.0),
            vec2(width - 0.5 * words.apart + 6.0, 28.0),
        );
        yarn_rows::button(ui, bench, hit, used, yarn, actions);
        let letter = Yarn::letter(used.yarn);
        paint::bead(&painter, pos2(x + 8.0, y), &letter, yarn.colour, t);
        put(galley, x + 20.0, y);
        x += width;
        told += 1;
    }
    if told < plan.estimate.yarn.len() {
        let more = format!("+{}", plan.estimate.yarn.len() - told);
        let font = type_faces::semibold(type_faces::BODY);
        painter.text(pos2(x, y), Align2::LEFT_CENTER, more, font, t.soft_ink);
    }
    sees_answers
}
