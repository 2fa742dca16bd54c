//! Another yarn: the piece in another swatch, its rounds kept or its size kept, side by side.

use egui::{DragValue, Ui};
use plumpline_core::sizes::Keeps;
use plumpline_core::{Gauge, Plan, Yarn};

use super::answers::AnswerColumns;
use super::book;
use crate::bench::Bench;
use crate::bench::action::Actions;
use crate::document::edit::Edit;
use crate::document::sizes::SizeEdit;
use crate::fields::{form, length_field};
use crate::view::look::Look;

/// Width of a field.
const FIELD: f32 = 84.0;

/// Draws the card.
pub(super) fn show(ui: &mut Ui, bench: &Bench<'_>, actions: &mut Actions) {
    form::remark(ui, say!("swap-count-a-swatch-of-the-other-yarn"));
    let own = bench.document.piece().gauge;
    let gauge = bench.view.sizes.other.unwrap_or(own);
    let mut new = gauge;
    number(
        ui,
        say!("swap-stitches"),
        say!("swap-other-yarn-stitches"),
        &mut new.stitches,
        actions,
    );
    number(ui, say!("swap-rounds"), say!("swap-other-yarn-rounds"), &mut new.rounds, actions);
    let rect = form::row(ui, say!("swap-over"), say!("swap-the-length-both-were-counted-over"));
    let at = (gauge.across_mm, bench.unit());
    let over = say!("swap-other-yarn-over");
    if let Some(mm) =
        length_field::show(ui, form::place(rect, 0.0, FIELD), over, at, 1.0..=2000.0, actions)
    {
        (new.across_mm, new.along_mm) = (mm, mm);
    }
    let mut hook = gauge.hook_mm;
    let rect = form::row(ui, say!("swap-hook"), say!("swap-shaft-diameter"));
    let drag = DragValue::new(&mut hook).range(0.5..=30.0).speed(0.02).suffix(" mm");
    form::field(
        ui,
        form::place(rect, 0.0, FIELD),
        say!("swap-other-yarn-hook"),
        drag.max_decimals(2),
        actions,
    );
    new.hook_mm = hook;
    book::show(ui, bench, &mut new, actions);
    if new != gauge && new.validate().is_ok() {
        actions.look(Look::Sizes(Box::new(
            bench.view.sizes.changed(|view| view.other = Some(new)),
        )));
    }
    if bench.view.sizes.other.is_none() {
        return;
    }
    compared(ui, bench, gauge, actions);
}

fn number(ui: &mut Ui, words: &str, name: &str, value: &mut f64, actions: &mut Actions) {
    let rect = form::row(ui, words, say!("swap-as-counted-on-the-swatch"));
    let drag = DragValue::new(value).range(0.5..=1000.0).speed(0.1);
    let drag = drag.custom_formatter(|count, _| form::short(count));
    form::field(ui, form::place(rect, 0.0, FIELD), name, drag, actions);
}

/// The piece as it is and both ways in the other yarn.
fn compared(ui: &mut Ui, bench: &Bench<'_>, gauge: Gauge, actions: &mut Actions) {
    form::heading(ui, say!("swap-side-by-side"));
    let swap = bench.sizing.found().and_then(|found| found.swap.as_ref());
    let both = match swap {
        None => return form::remark(ui, say!("swap-preparing")),
        Some(Err(error)) => return form::remark(ui, error),
        Some(Ok(both)) => both,
    };
    let same_rounds = both.same_rounds.as_ref().map(|(_, plan)| plan);
    let same_size = both.same_size.as_ref().map(|made| &made.plan);
    let plans = [Some(&both.now), same_rounds.ok(), same_size.ok()];
    let columns = AnswerColumns {
        heads: [say!("swap-now"), say!("swap-same-rounds"), say!("swap-same-size")],
        words: 56.0,
    };
    let unit = bench.unit();
    let yarns = &bench.document.project().yarns;
    columns.head(ui, bench);
    let line = |ui: &mut Ui, words: &str, of: &dyn Fn(&Plan) -> String| {
        columns.row(ui, bench, words, plans.map(|plan| plan.map_or("–".into(), of)));
    };
    line(ui, unit.symbol(), &|p| {
        format!(
            "{} × {}",
            unit.rough_number(p.size_mm.height),
            unit.rough_number(p.size_mm.width)
        )
    });
    line(ui, say!("swap-row-rounds"), &|p| p.rounds.len().to_string());
    line(ui, say!("swap-row-stitches"), &|p| p.estimate.stitches.to_string());
    line(ui, say!("swap-meters"), &|p| format!("{:.0}", metres(p, yarns)));
    line(ui, say!("swap-minutes"), &|p| format!("{:.0}", p.estimate.minutes));
    let errors = [both.same_rounds.as_ref().err(), both.same_size.as_ref().err()];
    for error in errors.into_iter().flatten() {
        form::remark(ui, &error.to_string());
    }
    let current = bench.sizing.is_current();
    for (words, keeps, can) in [
        (say!("swap-use-it-for-the-same-rounds"), Keeps::Rounds, both.same_rounds.is_ok()),
        (say!("swap-use-it-for-the-same-size"), Keeps::Size, both.same_size.is_ok()),
    ] {
        if form::wide(ui, form::ROW, words, can && current, false).clicked() {
            actions.edit(Edit::Sizes(SizeEdit::Swap(gauge, keeps)));
        }
    }
}

fn metres(plan: &Plan, yarns: &[Yarn]) -> f64 {
    plan.estimate.yarn.iter().filter(|used| used.yarn < yarns.len()).map(|u| u.metres).sum()
}
