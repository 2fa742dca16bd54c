//! What a person says that words of the text mean: the field to say it in, and the list of
//! what was said.

use egui::{Frame, Key, Label, Margin, RichText, Stroke, TextEdit, Ui, WidgetInfo, vec2};
use egui::{Role, Sense};

use crate::bench::Bench;
use crate::bench::action::{Action, Actions};
use crate::kit::controls::{self, ButtonFace};
use crate::kit::tokens::CARD_RADIUS;
use crate::work::proofread::{Proofread, Telling};

/// Longest words shown, in characters; the whole stands under the pointer.
const SHOWN: usize = 60;

/// The field to say in what `telling` names.
pub(super) fn field(ui: &mut Ui, bench: &Bench<'_>, telling: &Telling, actions: &mut Actions) {
    let t = bench.t;
    let frame = Frame::new()
        .fill(t.panel)
        .stroke(Stroke::new(1.0, t.outline))
        .corner_radius(CARD_RADIUS)
        .inner_margin(Margin::symmetric(12, 10));
    frame.show(ui, |ui| {
        ui.set_width(ui.available_width());
        ui.spacing_mut().item_spacing.y = 6.0;
        let words = say!("saying-words-means", words = shortened(&telling.words));
        ui.add(Label::new(RichText::new(words).strong()).wrap()).on_hover_text(&telling.words);
        let mut means = telling.means.clone();
        let response = ui.add(
            TextEdit::singleline(&mut means)
                .hint_text(say!("saying-2-sc-inc-x-6"))
                .desired_width(f32::INFINITY)
                .char_limit(300),
        );
        let name = || WidgetInfo::labeled(Role::TextInput, true, say!("saying-what-it-means"));
        response.widget_info(name);
        if telling.fresh {
            response.request_focus();
        }
        if means != telling.means || telling.fresh {
            actions.push(Action::Proofread(Proofread::Telling(means.clone())));
        }
        let note = say!("saying-a-number-stands-for-any-number-and-for");
        ui.add(Label::new(RichText::new(note).color(t.soft_ink)).wrap());
        let keyed = |key| response.lost_focus() && ui.input(|i| i.key_pressed(key));
        let (entered, left) = (keyed(Key::Enter), keyed(Key::Escape));
        ui.horizontal(|ui| {
            let said = !means.trim().is_empty();
            if button(ui, say!("saying-save"), say!("saying-save-what-it-means"), said)
                || entered && said
            {
                actions.push(Action::Proofread(Proofread::Say));
            }
            if button(ui, say!("saying-cancel"), say!("saying-say-nothing"), true) || left {
                actions.push(Action::Proofread(Proofread::TellNothing));
            }
        });
    });
}

/// What was said of the text, each with a way to take it back.
pub(super) fn list(ui: &mut Ui, bench: &Bench<'_>, actions: &mut Actions) {
    let sayings = bench.proofreading.sayings();
    if sayings.is_empty() {
        return;
    }
    let t = bench.t;
    ui.add_space(6.0);
    ui.label(RichText::new(say!("saying-what-you-said-about-this-text")).strong());
    for (i, saying) in sayings.iter().enumerate() {
        ui.horizontal(|ui| {
            let room =
                ui.available_width() - controls::words_width(ui, say!("saying-remove")) - 12.0;
            let words = say!(
                "saying-words-means-means",
                words = shortened(&saying.words),
                means = shortened(&saying.means)
            );
            let height = 36.0;
            ui.allocate_ui(vec2(room, height), |ui| {
                ui.set_width(room);
                ui.add(Label::new(RichText::new(words).color(t.soft_ink)).wrap());
            });
            if button(
                ui,
                say!("saying-remove"),
                &say!("saying-remove-what-you-said-number", number = i + 1),
                true,
            ) {
                actions.push(Action::Proofread(Proofread::Unsay(i)));
            }
        });
    }
}

fn button(ui: &mut Ui, words: &str, name: &str, enabled: bool) -> bool {
    let size = vec2(controls::words_width(ui, words), 28.0);
    let (rect, _) = ui.allocate_exact_size(size, Sense::hover());
    controls::button(ui, rect, ButtonFace::Words(words), name, enabled).clicked()
}

fn shortened(words: &str) -> String {
    if words.chars().count() <= SHOWN {
        return words.to_owned();
    }
    words.chars().take(SHOWN).chain(['…']).collect()
}
