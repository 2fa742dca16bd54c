//! The text being proofread, with line numbers, what was found underlined and marked.

use std::sync::Arc;

use egui::text::{CCursor, CCursorRange, LayoutJob, LayoutSection, TextFormat};
use egui::text_edit::TextEditOutput;
use egui::{
    Align2, Galley, Rect, Role, ScrollArea, Sense, Stroke, TextBuffer, TextEdit, Ui, UiBuilder,
};
use egui::{WidgetInfo, pos2, vec2};
use plumpline_core::pattern::Span;
use plumpline_core::pattern::read::Sure;

use crate::bench::Bench;
use crate::bench::action::{Action, Actions};
use crate::bench::command::Command;
use crate::kit::controls::{self, ButtonFace};
use crate::kit::tokens::PAD;
use crate::kit::{Tokens, icons, paint, type_faces};
use crate::view::ids::pattern_id;
use crate::work::proofread::Proofread;

/// Width of the margin with the numbers of the lines and the marks.
const MARGIN: f32 = 96.0;

/// Room of the stitch counts, left of the numbers of the lines.
const COUNTS: f32 = 40.0;

/// Draws the text in `rect`.
pub fn show(ui: &mut Ui, bench: &Bench<'_>, rect: Rect, actions: &mut Actions) {
    let t = bench.t;
    let head = rect.left_top() + vec2(PAD, 22.0);
    let left = buttons(ui, bench, rect, actions);
    let hint = say!("proofread-a-written-pattern-yours-or-anothers");
    let (title, small) =
        (type_faces::drafting(type_faces::TITLE), type_faces::regular(type_faces::SMALL));
    let wide =
        |words: &str, font| ui.painter().layout_no_wrap(words.to_owned(), font, t.ink).size().x;
    let fits = head.x + wide(say!("stage-proofread"), title) + 28.0 + wide(hint, small) < left;
    let hint = if fits { hint } else { "" };
    paint::title(ui.painter(), head, say!("stage-proofread"), hint, t);
    let rule = rect.top() + 44.0;
    ui.painter().hline(rect.x_range().shrink(PAD), rule, Stroke::new(1.0, t.edge));
    let inner =
        Rect::from_min_max(pos2(rect.left() + 6.0, rule + 1.0), rect.max - vec2(6.0, 8.0));
    let mut child = ui.new_child(UiBuilder::new().max_rect(inner).id_salt("pattern"));
    controls::scroll_colours(&mut child);
    ScrollArea::vertical().auto_shrink(false).show(&mut child, |ui| {
        ui.add_space(8.0);
        field(ui, bench, inner.height() - 24.0, actions);
        ui.add_space(8.0);
    });
    if bench.proofreading.text().is_empty() {
        empty(ui, bench, inner);
    }
}

/// From the right: open a text, save it, copy it. Returns where they begin.
fn buttons(ui: &Ui, bench: &Bench<'_>, rect: Rect, actions: &mut Actions) -> f32 {
    let mut right = rect.right() - PAD;
    for (command, name) in [
        (Command::OpenPattern, say!("proofread-open-pattern")),
        (Command::PastePattern, say!("proofread-paste-a-pattern")),
        (Command::SavePattern, say!("proofread-save-the-text")),
        (Command::CopyPattern, say!("proofread-copy-the-text")),
    ] {
        let width = controls::words_width(ui, command.text());
        let place =
            Rect::from_min_size(pos2(right - width, rect.top() + 8.0), vec2(width, 28.0));
        right -= width + 8.0;
        let (face, enabled) = (ButtonFace::Words(command.text()), command.enabled(bench));
        let button = controls::button(ui, place, face, name, enabled);
        if button.on_hover_text(bench.hint(command)).clicked() {
            actions.command(command);
        }
    }
    right
}

fn empty(ui: &Ui, bench: &Bench<'_>, inner: Rect) {
    let (at, painter) = (inner.center() - vec2(0.0, 24.0), ui.painter());
    let title = type_faces::semibold(type_faces::TITLE);
    let words = say!("proofread-paste-a-pattern-or-open-a-file-with");
    painter.text(at, Align2::CENTER_CENTER, words, title, bench.t.ink);
    let font = type_faces::regular(type_faces::BODY);
    let words = say!("proofread-every-round-is-checked-against-its");
    let below = at + vec2(0.0, 26.0);
    painter.text(below, Align2::CENTER_CENTER, words, font, bench.t.soft_ink);
}

fn field(ui: &mut Ui, bench: &Bench<'_>, height: f32, actions: &mut Actions) {
    let mut text = bench.proofreading.text().to_owned();
    let (marks, unread, plain) = (marks(bench), unread(bench), plain(bench.t));
    let mut layouter = |ui: &Ui, text: &dyn TextBuffer, width: f32| -> Arc<Galley> {
        ui.fonts_mut(|fonts| {
            fonts.layout_job(job(text.as_str(), &plain, &marks, &unread, width))
        })
    };
    let shown = ui
        .horizontal_top(|ui| {
            ui.spacing_mut().item_spacing.x = 0.0;
            ui.add_space(MARGIN);
            TextEdit::multiline(&mut text)
                .id(pattern_id())
                .frame(egui::Frame::NONE)
                .margin(egui::Margin::symmetric(6, 0))
                .desired_width(ui.available_width())
                .min_size(vec2(0.0, height))
                .lock_focus(false)
                .layouter(&mut layouter)
                .show(ui)
        })
        .inner;
    let name =
        || WidgetInfo::labeled(Role::MultilineTextInput, true, say!("proofread-pattern-text"));
    shown.response.response.widget_info(name);
    if shown.response.response.has_focus() {
        // Inside the panel, round what of the text is in sight.
        // A scroll area clips the way it scrolls and no other.
        let seen = Rect::from_x_y_ranges(ui.max_rect().x_range(), ui.clip_rect().y_range());
        let seen = seen.intersect(ui.clip_rect()).shrink(4.0);
        paint::focus_ring(ui.painter(), seen, 6.0, bench.t);
    }
    margin(ui, bench, &shown);
    if let Some((index, true)) = bench.proofreading.taken() {
        reveal(ui, bench, &shown, index);
        actions.push(Action::Proofread(Proofread::Shown));
    }
    if shown.response.response.changed() && text != bench.proofreading.text() {
        actions.push(Action::Proofread(Proofread::Text(text)));
    }
}

/// The places to underline, in order and apart, and whether each is selected.
fn marks(bench: &Bench<'_>) -> Vec<(Span, TextFormat)> {
    let (t, taken) = (bench.t, bench.proofreading.taken());
    let Some(checked) = bench.proofreading.checked() else { return Vec::new() };
    let mut marks: Vec<(Span, TextFormat)> = Vec::new();
    for (i, finding) in checked.findings.iter().enumerate() {
        let start = marks.last().map_or(0, |(at, _)| at.end).max(finding.at.start);
        if start >= finding.at.end {
            continue;
        }
        let mut format = plain(t);
        format.underline = Stroke::new(2.0, t.warning);
        if taken.is_some_and(|(index, _)| index == i) {
            format.background = t.warn_wash;
        }
        marks.push((start..finding.at.end, format));
    }
    marks
}

/// The lines of rounds that could not be counted, in order, and the ink they are set in.
fn unread(bench: &Bench<'_>) -> (Vec<Span>, egui::Color32) {
    let rounds = bench.proofreading.checked().map_or(&[][..], |c| &c.rounds);
    let places = rounds.iter().filter(|r| r.sure == Sure::Unread).map(|r| r.at.clone());
    (places.collect(), bench.t.soft_ink)
}

fn plain(t: &Tokens) -> TextFormat {
    TextFormat::simple(type_faces::regular(type_faces::BODY), t.ink)
}

/// The text with its marks. Marks of an older text are left out where they do not fit.
fn job(
    text: &str,
    plain: &TextFormat,
    marks: &[(Span, TextFormat)],
    (unread, grey): &(Vec<Span>, egui::Color32),
    width: f32,
) -> LayoutJob {
    let mut job = LayoutJob { text: text.to_owned(), ..LayoutJob::default() };
    job.wrap.max_width = width;
    job.keep_trailing_whitespace = true;
    let mut set = |from: usize, to: usize, format: TextFormat| {
        if from < to {
            let byte_range = from.into()..to.into();
            job.sections.push(LayoutSection { leading_space: 0.0, byte_range, format });
        }
    };
    // What was not read is grey, whatever else marks it.
    let mut put = |from: usize, to: usize, format: TextFormat| {
        let mut at = from;
        let next = unread.partition_point(|u| u.end <= from);
        for place in unread[next..].iter().take_while(|u| u.start < to) {
            let (start, end) = (place.start.max(at), place.end.min(to));
            if start >= end || !text.is_char_boundary(start) || !text.is_char_boundary(end) {
                continue;
            }
            set(at, start, format.clone());
            set(start, end, TextFormat { color: *grey, ..format.clone() });
            at = end;
        }
        set(at, to, format);
    };
    let mut from = 0;
    for (at, format) in marks {
        if text.get(at.clone()).is_none() || at.start < from {
            continue;
        }
        put(from, at.start, plain.clone());
        put(at.start, at.end, format.clone());
        from = at.end;
    }
    put(from, text.len(), plain.clone());
    job
}

/// Beside a line: its number, the stitches of its round as it was understood (a question mark
/// where it was not; what was read shows under the pointer), and a triangle beside those with a finding.
fn margin(ui: &Ui, bench: &Bench<'_>, shown: &TextEditOutput) {
    let t = bench.t;
    let painter = ui.painter();
    let clip = ui.clip_rect();
    let right = shown.galley_pos.x - 14.0;
    let lines = bench.proofreading.checked().map_or(&[][..], |c| &c.lines);
    let font = type_faces::regular(type_faces::SMALL);
    let (mut line, mut begins) = (1, true);
    for row in &shown.galley.rows {
        let y = shown.galley_pos.y + row.rect().center().y;
        if begins && clip.y_range().expand(20.0).contains(y) {
            let marked = lines.binary_search(&line).is_ok();
            let ink = if marked { t.warning } else { t.soft_ink };
            painter.text(pos2(right, y), Align2::RIGHT_CENTER, line, font.clone(), ink);
            if marked {
                icons::warning(
                    painter,
                    pos2(shown.galley_pos.x - MARGIN + 8.0, y),
                    12.0,
                    t.warning,
                );
            }
            count(ui, bench, line, pos2(right - COUNTS, y));
        }
        begins = row.ends_with_newline;
        line += usize::from(begins);
    }
    let x = shown.galley_pos.x - 7.0;
    painter.vline(x, clip.y_range(), Stroke::new(1.0, t.edge));
}

/// The stitches that line `line` leaves, ending at `at`.
fn count(ui: &Ui, bench: &Bench<'_>, line: usize, at: egui::Pos2) {
    let rounds = bench.proofreading.checked().map_or(&[][..], |c| &c.rounds);
    let from = rounds.partition_point(|r| r.line < line);
    let Some(round) = rounds[from..].iter().take_while(|r| r.line == line).last() else {
        return;
    };
    let read = round.sure != Sure::Unread;
    let words = match round.makes {
        Some(makes) if read => makes.to_string(),
        _ => "?".to_owned(),
    };
    let font = type_faces::semibold(type_faces::SMALL);
    let ink = if read { bench.t.ink } else { bench.t.soft_ink };
    let place = ui.painter().text(at, Align2::RIGHT_CENTER, &words, font, ink);
    let told = if read {
        let supplied: Vec<&str> = round.inferred.iter().map(|i| i.words()).collect();
        match supplied.as_slice() {
            [] => say!("proofread-read-as-reading", reading = round.reading),
            _ => say!(
                "proofread-read-as-reading-supplied",
                reading = round.reading,
                supplied = supplied.join("; ")
            ),
        }
    } else {
        say!("proofread-this-round-was-not-read-the-next-is").to_owned()
    };
    let response =
        ui.interact(place.expand(3.0), ui.scope_id().with(("count", line)), Sense::hover());
    response.on_hover_text(told);
}

/// Scrolls the place of a finding into sight and selects it.
fn reveal(ui: &Ui, bench: &Bench<'_>, shown: &TextEditOutput, index: usize) {
    let text = bench.proofreading.text();
    let finding = bench.proofreading.checked().and_then(|c| c.findings.get(index));
    let Some(finding) = finding else { return };
    let cursor = |byte: usize| {
        let before = text.get(..byte).unwrap_or_default();
        CCursor::new(before.chars().count())
    };
    let (from, to) = (cursor(finding.at.start), cursor(finding.at.end));
    let at = shown.galley.pos_from_cursor(from).translate(shown.galley_pos.to_vec2());
    ui.scroll_to_rect(at.expand(60.0), None);
    let mut state = shown.state.clone();
    state.cursor.set_char_range(Some(CCursorRange::two(from, to)));
    state.store(ui.ctx(), pattern_id());
    ui.memory_mut(|m| m.request_focus(pattern_id()));
}
