//! The question of a step, what was predicted and what is said to it, why it is so, and what
//! to make by hand.

use egui::{Color32, Rect, RichText};
use egui::{FontId, Role, ScrollArea, Sense, Ui, UiBuilder, WidgetInfo, vec2};
use plumpline_core::lesson::course::{Figures, GuessReply, LessonStep};

use super::choices;
use super::here::LessonBench;
use crate::bench::action::{Actions, LessonAct};
use crate::kit::controls::{self, ButtonFace};
use crate::kit::icons;
use crate::kit::tokens::PAD;
use crate::kit::type_faces;
use crate::kit::words::decimal;
use crate::kit::words::terms;
use crate::view::lesson::LessonView;

/// Draws the question in `panel`.
pub(super) fn show(
    ui: &mut Ui,
    here: &LessonBench<'_>,
    panel: Rect,
    next: &mut LessonView,
    actions: &mut Actions,
) {
    let t = here.bench.t;
    let (title, hint) = match here.step {
        Some(_) => (say!("lesson-your-prediction"), say!("lesson-kept-on-this-computer-only")),
        None => (say!("lesson-your-piece"), ""),
    };
    let head = panel.left_top() + vec2(PAD, here.size(22.0));
    let font = type_faces::drafting(here.size(type_faces::TITLE));
    let name = ui.painter().text(head, egui::Align2::LEFT_CENTER, title, font, t.ink);
    let small = type_faces::regular(here.size(type_faces::SMALL));
    let wide = ui.painter().layout_no_wrap(hint.to_owned(), small.clone(), t.ink).size().x;
    if name.right() + 12.0 + wide < panel.right() - PAD {
        let at = egui::pos2(panel.right() - PAD, head.y + 1.0);
        ui.painter().text(at, egui::Align2::RIGHT_CENTER, hint, small, t.soft_ink);
    }
    let inner = Rect::from_min_max(
        egui::pos2(panel.left() + PAD, panel.top() + here.size(42.0)),
        panel.max - vec2(6.0, 8.0),
    );
    let mut child = ui.new_child(UiBuilder::new().max_rect(inner).id_salt("lesson question"));
    controls::scroll_colours(&mut child);
    let salt = ("lesson question", here.view.step);
    ScrollArea::vertical().id_salt(salt).auto_shrink(false).show(&mut child, |ui| {
        ui.set_max_width(inner.width() - PAD);
        ui.spacing_mut().item_spacing.y = here.size(8.0);
        match (here.step, &here.figures) {
            (Some(step), Some(figures)) => of_step(ui, here, step, figures, next, actions),
            (None, _) => of_piece(ui, here),
            // Why there are no figures stands beside the cloth.
            (Some(_), None) => {}
        }
        controls::follow_focus(ui);
    });
}

fn of_step(
    ui: &mut Ui,
    here: &LessonBench<'_>,
    step: &LessonStep,
    figures: &Figures,
    next: &mut LessonView,
    actions: &mut Actions,
) {
    let t = here.bench.t;
    for words in &step.look {
        para(ui, &hidden(here, filled(here, figures, words)), body(here), t.soft_ink);
    }
    let question = filled(here, figures, &step.prediction.question);
    para(ui, &question, type_faces::bold(here.size(type_faces::TITLE)), t.ink);
    choices::show(ui, here, &step.prediction.ask, next, actions);
    let Some(guess) = here.guess() else { return };
    if let Ok(reply) = step.reply(guess, figures, &here.course.words) {
        self::reply(ui, here, &reply);
    }
    tally(ui, here, step, actions);
    heading(ui, here, say!("lesson-why"));
    for words in &step.why {
        para(ui, &hidden(here, filled(here, figures, words)), body(here), t.ink);
    }
    by_hand(ui, here, step);
}

/// What is said to the prediction, on a ground of its own.
fn reply(ui: &mut Ui, here: &LessonBench<'_>, reply: &GuessReply) {
    let t = here.bench.t;
    let unit = here.bench.unit();
    let (verdict, because) = (reply.verdict.text(unit), reply.because.text(unit));
    let frame = egui::Frame::new()
        .fill(t.well)
        .stroke(egui::Stroke::new(1.0, t.edge))
        .corner_radius(8.0)
        .inner_margin(egui::Margin::same(10));
    frame.show(ui, |ui| {
        ui.set_width(ui.available_width());
        let sign = here.size(18.0);
        ui.horizontal_top(|ui| {
            let (rect, _) = ui.allocate_exact_size(vec2(sign, sign), Sense::hover());
            if reply.right {
                icons::check(ui.painter(), rect.center(), t.increase);
            } else {
                icons::warning(ui.painter(), rect.center(), 0.7 * sign, t.warning);
            }
            ui.vertical(|ui| {
                let font = type_faces::bold(here.size(type_faces::BODY));
                para(ui, &verdict, font, t.ink);
                if !because.is_empty() {
                    para(ui, &because, body(here), t.ink);
                }
            });
        });
    });
}

/// What was predicted on this computer so far, and another prediction.
fn tally(ui: &mut Ui, here: &LessonBench<'_>, step: &LessonStep, actions: &mut Actions) {
    let t = here.bench.t;
    let words = here.bench.desk.predictions.told(&step.name);
    if let Some(words) = words.filter(|_| here.tells_numbers()) {
        para(ui, &words, type_faces::regular(here.size(type_faces::SMALL)), t.soft_ink);
    }
    ui.horizontal(|ui| {
        let list = [
            (say!("lesson-ask-again"), LessonAct::AskAgain),
            (say!("lesson-delete-all"), LessonAct::Forget),
        ];
        for (words, act) in list {
            let enabled = act == LessonAct::AskAgain || !here.bench.desk.predictions.is_empty();
            let size = vec2(controls::words_width(ui, words), 26.0);
            let (rect, _) = ui.allocate_exact_size(size, Sense::hover());
            let face = ButtonFace::Words(words);
            let button = controls::button(ui, rect, face, words, enabled);
            let hint = match act {
                LessonAct::AskAgain => say!("lesson-take-another-prediction-from-another"),
                _ => say!("lesson-delete-every-kept-prediction-of-all"),
            };
            if button.on_hover_text(hint).clicked() {
                actions.lesson(act);
            }
        }
    });
}

fn by_hand(ui: &mut Ui, here: &LessonBench<'_>, step: &LessonStep) {
    let t = here.bench.t;
    let gauge = here.bench.document.piece().gauge;
    let Ok(figures) = step.exercise.sample.figures(gauge) else { return };
    heading(ui, here, &filled(here, &figures, &here.course.words.by_hand));
    for words in step.exercise.steps.iter().chain([&step.exercise.see]) {
        para(ui, &filled(here, &figures, words), body(here), t.ink);
    }
    let words = say!("lesson-the-rounds-to-work-are-on-the-steps");
    para(ui, words, type_faces::regular(here.size(type_faces::SMALL)), t.soft_ink);
}

/// What the piece's counts come to.
fn of_piece(ui: &mut Ui, here: &LessonBench<'_>) {
    let t = here.bench.t;
    let Some(bent) = &here.bent else {
        para(ui, say!("lesson-there-are-no-rounds-yet"), body(here), t.soft_ink);
        return;
    };
    let intro = say!("lesson-own-piece");
    para(ui, intro, body(here), t.ink);
    let count = |word| bent.gains.iter().filter(|g| g.word == word).count();
    let ruffles = count(plumpline_core::bend::BendWord::Ruffle);
    let words = match ruffles {
        0 => say!("lesson-no-ruffles").to_owned(),
        n => say!("lesson-ruffles", n = n),
    };
    para(ui, &words, type_faces::semibold(here.size(type_faces::BODY)), t.ink);
    if let Some(gain) = here.round().and_then(|r| bent.gains.get(r as usize - 1)) {
        let round = here.round().unwrap_or(0);
        let words = if here.tells_numbers() {
            say!(
                "lesson-round-told",
                round = round,
                gained = format!("{:+}", gain.gained),
                flat = decimal(gain.flat, 1),
                bend = terms::bend(gain.word),
                mean = format!("{:+.1}", gain.mean_gained),
                meanflat = decimal(gain.mean_flat, 1),
                meanbend = terms::bend(gain.mean_word),
            )
        } else {
            say!(
                "lesson-round-bends",
                round = round,
                bend = terms::bend(gain.word),
                meanbend = terms::bend(gain.mean_word),
            )
        };
        para(ui, &words, body(here), t.ink);
    }
    let note = say!("lesson-fabric-note");
    para(ui, note, type_faces::regular(here.size(type_faces::SMALL)), t.soft_ink);
}

fn filled(here: &LessonBench<'_>, figures: &Figures, words: &str) -> String {
    // The words were filled in once when the course was read; what cannot be is shown as it is.
    figures.filled(words, &[]).map_or_else(|_| words.to_owned(), |s| s.text(here.bench.unit()))
}

/// `words` with every number left out where numbers are hidden: learners work them out.
fn hidden(here: &LessonBench<'_>, words: String) -> String {
    if here.tells_numbers() {
        return words;
    }
    let mut kept = String::with_capacity(words.len());
    let mut chars = words.chars().peekable();
    while let Some(c) = chars.next() {
        if !c.is_ascii_digit() {
            kept.push(c);
            continue;
        }
        kept.push('…');
        // The rest of it, a decimal point between digits too.
        while let Some(&next) = chars.peek() {
            let mut after = chars.clone();
            after.next();
            let point = next == '.' && after.peek().is_some_and(char::is_ascii_digit);
            if !next.is_ascii_digit() && !point {
                break;
            }
            chars.next();
        }
    }
    kept
}

fn body(here: &LessonBench<'_>) -> FontId {
    type_faces::regular(here.size(type_faces::BODY))
}

fn heading(ui: &mut Ui, here: &LessonBench<'_>, words: &str) {
    ui.add_space(here.size(4.0));
    let (line, _) = ui.allocate_exact_size(vec2(ui.available_width(), 1.0), Sense::hover());
    paint_rule(ui, line, here.bench.t.edge);
    para(ui, words, type_faces::semibold(here.size(type_faces::BODY)), here.bench.t.ink);
}

fn paint_rule(ui: &Ui, line: Rect, colour: Color32) {
    ui.painter().hline(line.x_range(), line.center().y, egui::Stroke::new(1.0, colour));
}

/// A paragraph.
fn para(ui: &mut Ui, words: &str, font: FontId, ink: Color32) {
    let text = RichText::new(words).font(font).color(ink);
    let label = ui.add(egui::Label::new(text).wrap());
    label.widget_info(|| WidgetInfo::labeled(Role::Label, true, words));
}
