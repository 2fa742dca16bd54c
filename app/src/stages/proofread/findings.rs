//! What was found, with the likeliest mend of each; the terms; what the pattern comes to.

use egui::{Popup, Rect, RichText, Role, ScrollArea, Sense, Stroke, StrokeKind, Ui};
use egui::{UiBuilder, WidgetInfo, pos2, vec2};
use plumpline_core::pattern::lexicon;
use plumpline_core::pattern::proofread::{Finding, FindingKind, Summary};

use super::saying;
use crate::bench::Bench;
use crate::bench::action::{Action, Actions};
use crate::bench::command::Command;
use crate::kit::controls::{self, ButtonFace};
use crate::kit::icons::{self, Icon};
use crate::kit::tokens::{CARD_RADIUS, PAD};
use crate::kit::{letters, paint, type_faces};
use crate::work::proofread::{Checked, Proofread};

/// Height of the foot with the figures and the button.
const FOOT: f32 = 62.0;

/// Draws the findings in `rect`.
pub fn show(ui: &mut Ui, bench: &Bench<'_>, rect: Rect, actions: &mut Actions) {
    let t = bench.t;
    let painter = ui.painter();
    let checked = bench.proofreading.checked();
    let hint = match checked.map(|c| c.findings.len()) {
        None if bench.proofreading.is_busy() => say!("findings-reading").to_owned(),
        None => String::new(),
        Some(0) => say!("findings-none").into(),
        Some(n) => n.to_string(),
    };
    paint::title(
        painter,
        rect.left_top() + vec2(PAD, 22.0),
        say!("findings-problems"),
        &hint,
        t,
    );
    let across = rect.x_range().shrink(PAD);
    painter.hline(across, rect.top() + 44.0, Stroke::new(1.0, t.edge));
    let foot = rect.with_min_y(rect.bottom() - FOOT);
    let inner = Rect::from_min_max(
        pos2(rect.left() + PAD, rect.top() + 45.0),
        pos2(rect.right() - 6.0, foot.top()),
    );
    let mut child = ui.new_child(UiBuilder::new().max_rect(inner).id_salt("findings"));
    controls::scroll_colours(&mut child);
    ScrollArea::vertical().auto_shrink(false).show(&mut child, |ui| {
        ui.set_width(ui.available_width() - 8.0);
        ui.spacing_mut().item_spacing.y = 8.0;
        ui.add_space(8.0);
        let Some(checked) = checked else {
            let words = say!("findings-what-does-not-add-up-is-listed-here");
            ui.label(RichText::new(words).color(t.soft_ink));
            return;
        };
        terms(ui, bench, checked, actions);
        ui.add_space(4.0);
        if checked.findings.is_empty() {
            clean(ui, bench, checked.summary, checked.unread());
        }
        for (i, finding) in checked.findings.iter().enumerate() {
            card(ui, bench, (i, finding, checked.lines[i]), actions);
            if let Some(telling) = bench.proofreading.telling().filter(|t| t.finding == i) {
                saying::field(ui, bench, telling, actions);
            }
        }
        saying::list(ui, bench, actions);
        ui.add_space(8.0);
        controls::follow_focus(ui);
    });
    ui.painter().hline(across, foot.top(), Stroke::new(1.0, t.edge));
    figures(ui, bench, foot, checked.map(|c| c.summary).unwrap_or_default(), actions);
}

fn clean(ui: &mut Ui, bench: &Bench<'_>, summary: Summary, unread: usize) {
    ui.horizontal(|ui| {
        let (rect, _) = ui.allocate_exact_size(vec2(18.0, 20.0), Sense::hover());
        if summary.rounds == 0 {
            icons::warning(ui.painter(), rect.center(), 13.0, bench.t.warning);
            ui.label(say!("findings-no-rounds-were-found-in-it"));
        } else if unread > 0 {
            icons::warning(ui.painter(), rect.center(), 13.0, bench.t.warning);
            ui.label(say!("findings-unread", n = unread));
        } else {
            icons::check(ui.painter(), rect.center(), bench.t.increase);
            ui.label(say!("findings-no-problems-found-every-round-adds-up"));
        }
    });
}

/// In which terms it was read, and a choice of others.
fn terms(ui: &mut Ui, bench: &Bench<'_>, checked: &Checked, actions: &mut Actions) {
    let line = RichText::new(&checked.terms).color(bench.t.soft_ink);
    ui.add(egui::Label::new(line).wrap());
    let width = controls::words_width(ui, say!("findings-read-in-other-terms")) + 14.0;
    let (rect, _) = ui.allocate_exact_size(vec2(width, 28.0), Sense::hover());
    let face = ButtonFace::WordsThen(say!("findings-read-in-other-terms"), Icon::Down);
    let button = controls::button(ui, rect, face, say!("findings-read-in-other-terms"), true);
    Popup::menu(&button).show(|ui| {
        ui.set_min_width(190.0);
        let own = [(None, say!("findings-as-the-text-says"))];
        let all = lexicon::all().iter().map(|l| (Some(l.code.as_str()), l.name.as_str()));
        for (code, name) in own.into_iter().chain(all) {
            let item = ui.selectable_label(bench.proofreading.wish() == code, name);
            if letters::noted(item, name).clicked() {
                actions.push(Action::Proofread(Proofread::Terms(code)));
                ui.close();
            }
        }
    });
}

/// One finding: a click shows its place, a button mends it.
fn card(
    ui: &mut Ui,
    bench: &Bench<'_>,
    (index, finding, line): (usize, &Finding, usize),
    actions: &mut Actions,
) {
    let t = bench.t;
    let taken = bench.proofreading.taken().is_some_and(|(i, _)| i == index);
    let width = ui.available_width();
    let layout =
        |words: &str, font, ink| ui.painter().layout(words.to_owned(), font, ink, width - 44.0);
    let body = type_faces::regular(type_faces::BODY);
    let where_ = layout(
        &say!("findings-line-line", line = line),
        type_faces::bold(type_faces::SMALL),
        t.soft_ink,
    );
    let message = layout(&finding.message, type_faces::semibold(type_faces::BODY), t.ink);
    let mend = finding.mend.as_ref().map(|m| layout(&m.text, body, t.soft_ink));
    let edit = finding.mend.as_ref().and_then(|m| m.edit.clone());
    let telling = bench.proofreading.telling().is_some_and(|t| t.finding == index);
    let unread = finding.kind == FindingKind::Unread && !telling;
    let words =
        where_.size().y + message.size().y + mend.as_ref().map_or(0.0, |m| m.size().y + 4.0);
    let button = if edit.is_some() || unread { 36.0 } else { 0.0 };
    let (rect, response) =
        ui.allocate_exact_size(vec2(width, words + button + 20.0), Sense::click());
    let spoken = say!("findings-line-says", line = line, message = finding.message);
    response.widget_info(|| WidgetInfo::selected(Role::Button, true, taken, &spoken));
    let painter = ui.painter();
    let (fill, edge) = match (taken, response.hovered()) {
        (true, _) => (t.warn_wash, Stroke::new(1.5, t.warning)),
        (false, true) => (t.well, Stroke::new(1.0, t.outline)),
        (false, false) => (t.panel, Stroke::new(1.0, t.control_edge)),
    };
    painter.rect(rect, CARD_RADIUS, fill, edge, StrokeKind::Inside);
    icons::warning(painter, rect.left_top() + vec2(17.0, 19.0), 14.0, t.warning);
    let mut at = rect.left_top() + vec2(34.0, 10.0);
    for galley in [Some(where_), Some(message)].into_iter().flatten() {
        let height = galley.size().y;
        painter.galley(at, galley, t.ink);
        at.y += height;
    }
    if let Some(mend) = mend {
        let ink = if taken { t.ink } else { t.soft_ink };
        painter.galley_with_override_text_color(at + vec2(0.0, 4.0), mend, ink);
    }
    if response.has_focus() {
        paint::focus_ring(painter, rect, CARD_RADIUS, t);
    }
    if let Some((place, new)) = edit {
        let size = vec2(controls::words_width(ui, say!("findings-fix")), 28.0);
        let corner = pos2(rect.left() + 34.0, rect.bottom() - 10.0 - size.y);
        let name =
            say!("findings-fix-line-line-problem-number", line = line, number = index + 1);
        let at = Rect::from_min_size(corner, size);
        let button =
            controls::button(ui, at, ButtonFace::Words(say!("findings-fix")), &name, true);
        if button.on_hover_text(say!("findings-make-this-change-in-the-text-ctrl-z")).clicked()
        {
            actions.push(Action::Proofread(Proofread::Mend(place, new)));
            return;
        }
    }
    if unread && finding.mend.as_ref().is_none_or(|m| m.edit.is_none()) {
        let face = ButtonFace::Words(say!("findings-say-what-it-means"));
        let size = vec2(controls::words_width(ui, say!("findings-say-what-it-means")), 28.0);
        let corner = pos2(rect.left() + 34.0, rect.bottom() - 10.0 - size.y);
        let name =
            say!("findings-say-what-line-line-means-problem", line = line, number = index + 1);
        let button = controls::button(ui, Rect::from_min_size(corner, size), face, &name, true);
        let hint = say!("findings-put-it-in-usual-words-it-is-read-that");
        if button.on_hover_text(hint).clicked() {
            actions.push(Action::Proofread(Proofread::Take(index)));
            actions.push(Action::Proofread(Proofread::Tell(index)));
            return;
        }
    }
    if response.on_hover_text(say!("findings-show-the-place-in-the-text")).clicked() {
        actions.push(Action::Proofread(Proofread::Take(index)));
    }
}

/// What the pattern comes to, and the way to a piece.
fn figures(ui: &mut Ui, bench: &Bench<'_>, foot: Rect, sum: Summary, actions: &mut Actions) {
    let command = Command::MakePiece;
    let width = controls::words_width(ui, command.text());
    let at = pos2(foot.right() - PAD - width, foot.center().y - 16.0);
    let place = Rect::from_min_size(at, vec2(width, 30.0));
    let enabled = command.enabled(bench);
    let button =
        controls::button(ui, place, ButtonFace::Words(command.text()), command.text(), enabled);
    if button.on_hover_text(bench.hint(command)).clicked() {
        actions.command(command);
    }
    if sum.rounds == 0 {
        return;
    }
    let t = bench.t;
    let room = at.x - foot.left() - PAD - 12.0;
    let lines = [
        (say!("findings-sum", rounds = sum.rounds, stitches = sum.stitches), t.ink),
        (say!("findings-widest-n", n = sum.widest), t.soft_ink),
    ];
    for (i, (words, ink)) in lines.into_iter().enumerate() {
        let at = pos2(foot.left() + PAD, foot.center().y - 10.0 + 18.0 * i as f32);
        let font = type_faces::regular(type_faces::BODY);
        paint::clipped_text(ui.painter(), at, &words, font, ink, room);
    }
}
