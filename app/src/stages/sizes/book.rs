//! The gauge book: swatches that are known already, to take, to strike out and to put back.

use egui::{Align2, Rect, Response, Sense, Stroke, TextEdit, Ui, pos2, vec2};
use plumpline_core::Gauge;
use plumpline_core::calibrate::Entry;

use crate::bench::Bench;
use crate::bench::action::Actions;
use crate::fields::form;
use crate::kit::controls::{self, ButtonFace};
use crate::kit::icons::Icon;
use crate::kit::{paint, type_faces};
use crate::view::look::Look;
use crate::work::home::DeskAction;

/// Entries shown at first, and how many more at a time; a longer book can be searched.
const FIRST: usize = 6;
const MORE: usize = 20;

/// Height of an entry, and of its two lines about its middle.
const ROW: f32 = 44.0;
const LINE: f32 = 8.0;
/// Room at the end of a row for the control that strikes it out.
const STRIKE: f32 = 34.0;
/// Width of the control that puts a struck entry back.
const BACK: f32 = 98.0;

/// Draws the book; an entry that is taken goes into `gauge`.
pub(super) fn show(ui: &mut Ui, bench: &Bench<'_>, gauge: &mut Gauge, actions: &mut Actions) {
    let struck = bench.struck.iter().map(|struck| (struck.entry(), true));
    let mut list: Vec<(&Entry, bool)> =
        bench.gauges.entries().iter().map(|entry| (entry, false)).chain(struck).collect();
    if list.is_empty() {
        return;
    }
    form::heading(ui, say!("book-from-the-gauge-book"));
    if list.len() > FIRST {
        search(ui, bench, actions);
    }
    let sought = bench.view.sizes.sought.trim().to_lowercase();
    list.retain(|(entry, _)| entry.yarn.to_lowercase().contains(&sought));
    list.sort_by(|(a, _), (b, _)| {
        order(a).cmp(&order(b)).then(a.hook_mm.total_cmp(&b.hook_mm))
    });
    if list.is_empty() {
        form::remark(ui, say!("book-no-match"));
    }
    let shown = FIRST + bench.view.sizes.more;
    for (entry, struck) in list.iter().take(shown) {
        match struck {
            true => struck_out(ui, bench, entry, actions),
            false => known(ui, bench, entry, gauge, actions),
        }
    }
    let left = list.len().saturating_sub(shown);
    if left > 0 {
        let words = say!("book-show-more-more-of-all", more = left.min(MORE), all = list.len());
        if form::wide(ui, form::ROW, &words, true, false).clicked() {
            let more = bench.view.sizes.more + MORE;
            actions
                .look(Look::Sizes(Box::new(bench.view.sizes.changed(|view| view.more = more))));
        }
    }
}

/// By yarn, then by maker, as an index goes.
fn order(entry: &Entry) -> (String, String) {
    (entry.yarn.trim().to_lowercase(), entry.maker.trim().to_lowercase())
}

fn search(ui: &mut Ui, bench: &Bench<'_>, actions: &mut Actions) {
    let mut sought = bench.view.sizes.sought.clone();
    let edit =
        TextEdit::singleline(&mut sought).hint_text(say!("book-search-by-yarn")).char_limit(40);
    let (rect, _) =
        ui.allocate_exact_size(vec2(ui.available_width(), form::ROW), Sense::hover());
    let place = rect.shrink2(vec2(0.0, 2.0));
    let edit = edit.desired_width(place.width()).min_size(place.size());
    if ui.put(place, edit).accessible_name(say!("book-search-the-gauge-book")).changed() {
        let change = bench.view.sizes.changed(|view| (view.sought, view.more) = (sought, 0));
        actions.look(Look::Sizes(Box::new(change)));
    }
}

/// An entry in a line: `Oat, 3.5 mm, Ada`.
fn titled(entry: &Entry) -> String {
    format!("{}, {}", entry.yarn, hand(entry))
}

/// Its hook and maker: `3.5 mm, Ada`.
fn hand(entry: &Entry) -> String {
    let hook = form::short(entry.hook_mm);
    match entry.maker.trim() {
        "" => format!("{hook} mm"),
        maker => format!("{hook} mm, {maker}"),
    }
}

/// Its hook, maker and swatch: `3.5 mm, Ada · 22 sts, 24 rnds to 10 cm`.
fn details(bench: &Bench<'_>, entry: &Entry) -> String {
    let Gauge { stitches, rounds, across_mm, along_mm, .. } = entry.gauge;
    let over = |counted: f64, mm: f64| form::short(counted * 100.0 / mm);
    let unit = bench.unit();
    let length = unit.short_text(100.0);
    let (stitches, rounds) = (over(stitches, across_mm), over(rounds, along_mm));
    say!(
        "book-hand-stitches-sts-rounds-rnds-to",
        hand = hand(entry),
        stitches = stitches,
        rounds = rounds,
        length = length
    )
}

/// An entry to take, and to strike out.
fn known(
    ui: &mut Ui,
    bench: &Bench<'_>,
    entry: &Entry,
    gauge: &mut Gauge,
    actions: &mut Actions,
) {
    let title = titled(entry);
    let learned = match entry.date.trim() {
        "" => String::new(),
        day => format!(", {}", say!("book-measured-on", day = day)),
    };
    let (place, end) = row(ui);
    let on = Some(entry.gauge == *gauge);
    let name = say!("book-gauge-of-title-learned", title = title, learned = learned);
    let button = controls::toggle(ui, place, ButtonFace::Words(""), &name, true, on);
    let words = write(ui, bench, place.shrink2(vec2(10.0, 0.0)), entry, false);
    let button = if words { button } else { button.on_hover_text(&name) };
    if button.clicked() {
        *gauge = entry.gauge;
    }
    let name = say!("book-delete-title", title = title);
    let strike = controls::button(ui, end, ButtonFace::Icon(Icon::Close), &name, true);
    take_keyboard(ui, &strike, &name);
    if strike.clicked() {
        pass_keyboard(ui, &strike, say!("book-restore-title", title = title));
        actions.desk(DeskAction::StrikeGauge(Box::new(entry.clone())));
    }
    strike.on_hover_text(say!("book-delete-it-from-the-gauge-book"));
}

/// An entry that was struck out, in its place, to put back.
fn struck_out(ui: &mut Ui, bench: &Bench<'_>, entry: &Entry, actions: &mut Actions) {
    let title = titled(entry);
    let (place, end) = row(ui);
    // Away from where it was struck out: a hand that clicks twice undoes nothing.
    let back = Rect::from_center_size(
        pos2(end.left() - 6.0 - 0.5 * BACK, place.center().y),
        vec2(BACK, 28.0),
    );
    let words = place.shrink2(vec2(10.0, 0.0)).with_max_x(back.left() - 8.0);
    write(ui, bench, words, entry, true);
    let said = ui.interact(words, ui.scope_id().with(&title), Sense::hover());
    let told = say!("book-title-deleted", title = title);
    said.widget_info(|| egui::WidgetInfo::labeled(egui::Role::Label, true, &told));
    said.on_hover_text(&told);
    let name = say!("book-restore-title", title = title);
    let button =
        controls::button(ui, back, ButtonFace::Words(say!("book-restore")), &name, true);
    take_keyboard(ui, &button, &name);
    if button.clicked() {
        pass_keyboard(ui, &button, say!("book-delete-title", title = title));
        actions.desk(DeskAction::PutGaugeBack(Box::new(entry.clone())));
    }
}

/// A row: the place of the entry, and that of the control which strikes it out.
fn row(ui: &mut Ui) -> (Rect, Rect) {
    let size = vec2(ui.available_width(), ROW + 4.0);
    let (rect, _) = ui.allocate_exact_size(size, Sense::hover());
    let (place, end) = rect.split_left_right_at_x(rect.right() - STRIKE);
    let end = Rect::from_center_size(end.center() + vec2(3.0, 0.0), vec2(28.0, 28.0));
    (place.shrink2(vec2(0.0, 2.0)), end)
}

/// Writes an entry in two lines; whether all of it could be written. What is struck out has a
/// line through it.
fn write(ui: &Ui, bench: &Bench<'_>, rect: Rect, entry: &Entry, struck: bool) -> bool {
    let (painter, t) = (ui.painter(), bench.t);
    let small = type_faces::regular(type_faces::SMALL);
    let above = rect.left_center() - vec2(0.0, LINE);
    let mut room = rect.width();
    if !struck && !entry.date.trim().is_empty() {
        let at = pos2(rect.right(), above.y);
        let day = entry.date.trim();
        let day = painter.text(at, Align2::RIGHT_CENTER, day, small.clone(), t.soft_ink);
        room -= day.width() + 8.0;
    }
    let bold = type_faces::semibold(type_faces::BODY);
    let ink = if struck { t.soft_ink } else { t.ink };
    let (yarn, cut) = paint::clipped_text(painter, above, &entry.yarn, bold, ink, room);
    let below = rect.left_center() + vec2(0.0, LINE + 1.0);
    let words = match struck {
        true => say!("book-hand-deleted", hand = hand(entry)),
        false => details(bench, entry),
    };
    let wide = rect.width();
    let (_, also) = paint::clipped_text(painter, below, &words, small, t.soft_ink, wide);
    if struck {
        let line = yarn.x_range().expand(2.0);
        painter.hline(line, yarn.center().y + 1.0, Stroke::new(1.3, t.soft_ink));
    }
    !cut && !also
}

/// Where the keyboard goes when the control it was on turns into another one.
fn kept(ui: &Ui) -> egui::Id {
    ui.scope_id().with("the keyboard goes to")
}

/// The control was used by key: what stands there next, called `to`, takes the keyboard.
fn pass_keyboard(ui: &Ui, from: &Response, to: String) {
    if from.has_focus() {
        ui.data_mut(|d| d.insert_temp(kept(ui), to));
    }
}

/// Takes the keyboard that was passed to the control called `name`.
fn take_keyboard(ui: &Ui, control: &Response, name: &str) {
    if ui.data(|d| d.get_temp::<String>(kept(ui)).is_some_and(|to| to == name)) {
        ui.data_mut(|d| d.remove::<String>(kept(ui)));
        control.request_focus();
    }
}
