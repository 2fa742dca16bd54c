//! The words of the pattern: whose terms, and in which house's style, each shown by a line.

use egui::{Align2, Popup, Rect, Response, Role, Sense, Ui, WidgetInfo};
use egui::{pos2, vec2};
use plumpline_core::WordingChoice;
use plumpline_core::pattern::write::{Below, HouseStyle, Writer, style};
use plumpline_core::pattern::{Lexicon, Op, Placed, Rounds, StitchKind, Times, lexicon};

use crate::bench::Bench;
use crate::bench::action::Actions;
use crate::document::edit::Edit;
use crate::fields::form;
use crate::kit::controls::{self, ButtonFace};
use crate::kit::icons::Icon;
use crate::kit::{Tokens, paint, type_faces};

/// Width of the card.
const WIDTH: f32 = 420.0;
/// Height of a style's row.
const ROW: f32 = 40.0;

/// The button that opens the card, its right end at `right`; returns its left end.
pub(super) fn button(
    ui: &Ui,
    bench: &Bench<'_>,
    (right, top): (f32, f32),
    actions: &mut Actions,
) -> f32 {
    let now = &bench.document.project().wording;
    let name = lexicon::by_code(&now.lexicon).map_or(say!("sheet-words"), |l| l.name.as_str());
    let width = controls::words_width(ui, name) + 14.0;
    let rect = Rect::from_min_size(pos2(right - width, top), vec2(width, 28.0));
    let button = controls::button(
        ui,
        rect,
        ButtonFace::WordsThen(name, Icon::Down),
        say!("sheet-words"),
        true,
    );
    card(&button, bench, actions);
    button.on_hover_text(say!("sheet-whose-terms-and-which-house-style-the"));
    rect.left()
}

fn card(on: &Response, bench: &Bench<'_>, actions: &mut Actions) {
    let now = &bench.document.project().wording;
    Popup::menu(on)
        .close_behavior(egui::PopupCloseBehavior::CloseOnClickOutside)
        .width(WIDTH)
        .show(|ui| {
            ui.set_width(WIDTH);
            ui.reset_style();
            ui.spacing_mut().item_spacing = vec2(6.0, 4.0);
            form::heading(ui, say!("sheet-terms"));
            ui.horizontal_wrapped(|ui| {
                for lexicon in lexicon::all() {
                    let on = lexicon.code == now.lexicon;
                    let size = vec2(controls::words_width(ui, &lexicon.name), 26.0);
                    let (rect, _) = ui.allocate_exact_size(size, Sense::hover());
                    let face = ButtonFace::Words(&lexicon.name);
                    let chip = controls::toggle(ui, rect, face, &lexicon.name, true, Some(on));
                    if chip.clicked() && !on {
                        let lexicon = lexicon.code.clone();
                        let choice = WordingChoice { lexicon, ..now.clone() };
                        actions.edit(Edit::Wording(choice));
                    }
                }
            });
            let Some(lexicon) = lexicon::by_code(&now.lexicon) else { return };
            if !lexicon.checked {
                form::remark(ui, say!("sheet-not-yet-checked-by-a-native-reader-the"));
            }
            form::heading(ui, say!("sheet-house-style"));
            egui::ScrollArea::vertical().max_height(340.0).show(ui, |ui| {
                for style in style::all() {
                    let on = style.name == now.style;
                    if row(ui, bench.t, style, lexicon, on).clicked() && !on {
                        let choice = WordingChoice { style: style.name.clone(), ..now.clone() };
                        actions.edit(Edit::Wording(choice));
                    }
                }
                controls::follow_focus(ui);
            });
        });
}

/// A style by name and by the line it would print.
fn row(ui: &mut Ui, t: &Tokens, style: &HouseStyle, lexicon: &Lexicon, on: bool) -> Response {
    let size = vec2(ui.available_width() - 12.0, ROW);
    let (rect, response) = ui.allocate_exact_size(size, Sense::click());
    response
        .widget_info(|| WidgetInfo::selected(Role::RadioButton, true, on, style.name.as_str()));
    let painter = ui.painter();
    paint::row(painter, rect, &response, on, t);
    let at = rect.left_top() + vec2(8.0, 11.0);
    let small = type_faces::regular(type_faces::SMALL);
    painter.text(at, Align2::LEFT_CENTER, spaced(&style.name), small, t.soft_ink);
    let font = type_faces::semibold(type_faces::BODY);
    let width = rect.width() - 16.0;
    let at = rect.left_top() + vec2(8.0, 28.0);
    let sample = sample(style, lexicon);
    let (_, cut) = paint::clipped_text(painter, at, &sample, font, t.ink, width);
    if cut { response.on_hover_text(sample) } else { response }
}

/// `plain-words` as `plain words`.
fn spaced(name: &str) -> String {
    name.replace('-', " ")
}

/// A round of three plain stitches and an increase, six times, as this house prints it.
fn sample(style: &HouseStyle, lexicon: &Lexicon) -> String {
    let kind = StitchKind::Single;
    let body = [Op::Each { kind, count: 3 }, Op::Into { kind, many: 2 }];
    let body = body.into_iter().map(Placed::unread).collect();
    let work = vec![Placed::unread(Op::Group { body, times: Times::In(6) })];
    let rounds = Rounds { first: 5, last: 5, work, stated: Some(Placed::unread(30)) };
    let below = Below { count: Some(24), kind: Some(kind) };
    let text = Writer::new(style, lexicon).rounds(&rounds, below);
    [text.heading, text.text, text.count].join(" ")
}
