//! A yarn's card: its name, its colour, how far 100 g of it go; and the choice of a yarn
//! for the rounds from one on.

use egui::{DragValue, Popup, Response, RichText, Sense, TextEdit, Ui, pos2, vec2};
use plumpline_core::{Yarn, YarnFace};

use crate::bench::Bench;
use crate::bench::action::Actions;
use crate::document::edit::Edit;
use crate::fields::{colour_field, form};
use crate::kit::controls::{self, ButtonFace};
use crate::kit::tokens::{PALETTE, Tokens};
use crate::kit::words::terms;
use crate::kit::{icons, letters, paint, type_faces};

/// Width of the card, and of what is in it beside a scroll bar.
const WIDTH: f32 = 244.0;
const ACROSS: f32 = 232.0;
/// Most and least that a ball may hold, g; what a first one is taken to hold.
const BALL_G: (f64, f64, f64) = (1.0, 5000.0, 50.0);
/// Yarns a project may list; as many as the chooser shows without scrolling.
const MOST: usize = 26;

/// Opens the card of yarn `index` below what was clicked.
pub fn card(on: &Response, bench: &Bench<'_>, index: usize, actions: &mut Actions) {
    let Some(yarn) = bench.document.project().yarns.get(index) else { return };
    Popup::menu(on)
        .close_behavior(egui::PopupCloseBehavior::CloseOnClickOutside)
        .width(WIDTH)
        .show(|ui| {
            ui.set_width(WIDTH);
            // Under large text it is higher than the window.
            let high = ui.ctx().content_rect().height() - 32.0;
            controls::scroll_colours(ui);
            egui::ScrollArea::vertical().max_height(high).min_scrolled_height(high).show(
                ui,
                |ui| {
                    // A menu's own style hides the edges of fields.
                    ui.reset_style();
                    ui.set_width(ACROSS);
                    ui.spacing_mut().item_spacing = vec2(8.0, 6.0);
                    let mut now = yarn.clone();
                    heading(ui, &say!("yarn-letter", letter = Yarn::letter(index)));
                    name(ui, &mut now);
                    brand(ui, &mut now);
                    palette(ui, bench, &mut now);
                    any_colour(ui, index, &mut now);
                    face(ui, &mut now);
                    length(ui, bench, &mut now);
                    ball(ui, bench, &mut now);
                    needed(ui, bench, index, &now);
                    controls::follow_focus(ui);
                    if now != *yarn {
                        actions.edit(Edit::Yarn { index, yarn: now });
                    }
                },
            );
        });
}

fn heading(ui: &mut Ui, text: &str) {
    ui.label(RichText::new(text).font(type_faces::semibold(type_faces::BODY)));
}

fn name(ui: &mut Ui, yarn: &mut Yarn) {
    let field =
        TextEdit::singleline(&mut yarn.name).desired_width(f32::INFINITY).char_limit(60);
    ui.add(field).accessible_name(say!("yarn-yarn-name"));
}

/// Maker, range and shade, as the band of a ball has them.
fn brand(ui: &mut Ui, yarn: &mut Yarn) {
    let field = TextEdit::singleline(&mut yarn.brand)
        .desired_width(f32::INFINITY)
        .hint_text(say!("yarn-brand-hint"))
        .char_limit(plumpline_core::LONGEST_NAME);
    let field = ui.add(field).accessible_name(say!("yarn-brand"));
    field.on_hover_text(say!("yarn-brand-does"));
}

/// A colour that is none of the house's.
fn any_colour(ui: &mut Ui, index: usize, yarn: &mut Yarn) {
    ui.scope(|ui| {
        ui.spacing_mut().item_spacing.y = 2.0;
        let salt = egui::Id::unique("colour of yarn").with(index);
        if let Some(colour) = colour_field::show(ui, salt, yarn.colour) {
            yarn.colour = colour;
        }
    });
}

/// What a ball holds, in grams and in metres.
fn ball(ui: &mut Ui, bench: &Bench<'_>, yarn: &mut Yarn) {
    ui.horizontal(|ui| {
        let label = ui.label(RichText::new(say!("yarn-a-ball")).color(bench.t.soft_ink));
        let (least, most, usual) = BALL_G;
        let mut grams = yarn.ball_grams.unwrap_or(0.0);
        let field = DragValue::new(&mut grams)
            .range(0.0..=most)
            .speed(1.0)
            .max_decimals(0)
            .custom_formatter(|grams, _| match grams < least {
                true => say!("yarn-not-known").to_owned(),
                false => format!("{grams:.0} g"),
            })
            .custom_parser(|text| {
                let number = text.trim().trim_end_matches('g').trim();
                if text.trim() == say!("yarn-not-known") {
                    Some(0.0)
                } else {
                    number.parse().ok()
                }
            });
        let field = ui.add(field).labelled_by(label.id);
        if field.changed() {
            yarn.ball_grams = (grams >= least).then_some(grams);
        }
        field.on_hover_text(say!("yarn-ball-does"));
        match yarn.ball_metres() {
            None => {
                let known = ui.button("50 g").on_hover_text(say!("yarn-ball-usual-does"));
                if known.clicked() {
                    yarn.ball_grams = Some(usual);
                }
            }
            Some(metres) => {
                let mut metres = metres;
                let field =
                    DragValue::new(&mut metres).range(1.0..=20_000.0).speed(1.0).suffix(" m");
                let field = ui
                    .add(field.max_decimals(0))
                    .accessible_name(say!("yarn-meters-in-a-ball"));
                if let Some(grams) = yarn.ball_grams.filter(|_| field.changed()) {
                    yarn.metres_per_100g = (100.0 * metres / grams).clamp(1.0, 20_000.0);
                }
            }
        }
    });
}

/// What the piece in hand takes of it.
fn needed(ui: &mut Ui, bench: &Bench<'_>, index: usize, yarn: &Yarn) {
    let used = bench.plan.and_then(|p| p.estimate.yarn.iter().find(|one| one.yarn == index));
    let Some(used) = used else { return };
    let length = bench.unit().yarn_text(used.metres);
    let words = match yarn.balls(used.range().high) {
        None => say!("yarn-takes", length = length),
        Some(n) => say!("yarn-takes-balls", length = length, n = n),
    };
    form::remark(ui, &words);
}

/// House colours to choose from; the one in use is ringed.
fn palette(ui: &mut Ui, bench: &Bench<'_>, yarn: &mut Yarn) {
    let t = bench.t;
    const ACROSS: usize = 8;
    let side = 24.0;
    let rows = PALETTE.len().div_ceil(ACROSS);
    let size = vec2(ACROSS as f32 * 29.0, rows as f32 * 28.0);
    let (place, _) = ui.allocate_exact_size(size, Sense::hover());
    for (i, (name, colour)) in PALETTE.iter().enumerate() {
        let name = name.text();
        let at = place.min + vec2((i % ACROSS) as f32 * 29.0, (i / ACROSS) as f32 * 28.0);
        let rect = egui::Rect::from_min_size(at, vec2(side, side));
        let response = ui.interact(rect, ui.scope_id().with(("colour", i)), Sense::click());
        let on = yarn.colour == *colour;
        response.widget_info(|| {
            egui::WidgetInfo::selected(egui::Role::RadioButton, true, on, name)
        });
        let edge = egui::Stroke::new(1.0, t.yarn_edge(*colour));
        ui.painter().circle(rect.center(), 9.0, Tokens::yarn(*colour), edge);
        if on || response.hovered() {
            let ring = egui::Stroke::new(if on { 2.0 } else { 1.3 }, t.outline);
            ui.painter().circle_stroke(rect.center(), 11.5, ring);
        }
        if response.has_focus() {
            paint::focus_ring(ui.painter(), rect.shrink(2.0), 12.0, t);
        }
        if response.on_hover_text(name).clicked() {
            // A yarn still called after its colour is called after the new one.
            if PALETTE.iter().any(|(n, c)| n.text() == yarn.name && *c == yarn.colour) {
                yarn.name = name.to_owned();
            }
            yarn.colour = *colour;
        }
    }
}

/// What the yarn looks like close by.
fn face(ui: &mut Ui, yarn: &mut Yarn) {
    let (place, _) = ui.allocate_exact_size(vec2(232.0, 27.0), Sense::hover());
    let many = YarnFace::ALL.len() as f32;
    let wide = (place.width() - 6.0 * (many - 1.0)) / many;
    for (i, face) in YarnFace::ALL.into_iter().enumerate() {
        let at = place.min + vec2(i as f32 * (wide + 6.0), 0.0);
        let rect = egui::Rect::from_min_size(at, vec2(wide, 24.0));
        let words = ButtonFace::Words(terms::yarn_face(face));
        let name = say!("yarn-face", face = terms::yarn_face(face));
        let on = Some(yarn.face == face);
        let chip = controls::toggle(ui, rect, words, &name, true, on);
        if chip.on_hover_text(say!("yarn-how-pictures-show-this-yarn-no-count")).clicked() {
            yarn.face = face;
        }
    }
}

fn length(ui: &mut Ui, bench: &Bench<'_>, yarn: &mut Yarn) {
    ui.horizontal(|ui| {
        let words = RichText::new(say!("yarn-runs")).color(bench.t.soft_ink);
        let label = ui.label(words);
        let field = DragValue::new(&mut yarn.metres_per_100g)
            .range(1.0..=20_000.0)
            .speed(1.0)
            .max_decimals(0)
            .suffix(format!(" {}", say!("yarn-per-100g")));
        ui.add(field).labelled_by(label.id);
    });
}

/// Opens the choice of a yarn for `round` and the rounds after it.
pub fn choose(on: &Response, bench: &Bench<'_>, round: u32, actions: &mut Actions) {
    let project = bench.document.project();
    let now = bench.document.piece().yarn_of_round(round);
    Popup::menu(on).width(200.0).show(|ui| {
        ui.set_width(200.0);
        ui.spacing_mut().item_spacing.y = 2.0;
        heading(ui, &say!("yarn-from-round-round-on", round = round));
        for (index, yarn) in project.yarns.iter().enumerate().take(MOST) {
            let words = format!("{} {}", Yarn::letter(index), yarn.name);
            if line(ui, bench, &words, Some((index, yarn)), index == now).clicked() {
                actions.edit(Edit::Band { round, yarn: index });
            }
        }
        let fresh = project.yarns.len() < MOST;
        if fresh && line(ui, bench, say!("yarn-another-yarn"), None, false).clicked() {
            actions.edit(Edit::NewYarn { round });
        }
        let begins = bench.document.piece().bands.iter().any(|b| b.from_round == round);
        if begins
            && round > 1
            && line(ui, bench, say!("yarn-no-change-of-yarn-here"), None, false).clicked()
        {
            actions.edit(Edit::ClearBand(round));
        }
    });
}

/// One line of the choice: a bead and a name.
fn line(
    ui: &mut Ui,
    bench: &Bench<'_>,
    words: &str,
    yarn: Option<(usize, &Yarn)>,
    on: bool,
) -> Response {
    let t = bench.t;
    let (rect, response) =
        ui.allocate_exact_size(vec2(ui.available_width(), 26.0), Sense::click());
    response
        .widget_info(|| egui::WidgetInfo::selected(egui::Role::MenuItemRadio, true, on, words));
    letters::line(&response, yarn.map_or(words, |(_, yarn)| &yarn.name));
    if response.hovered() || response.has_focus() {
        ui.painter().rect_filled(rect, 6.0, t.well);
    }
    let y = rect.center().y;
    let name = match yarn {
        Some((index, yarn)) => {
            let bead = pos2(rect.left() + 13.0, y);
            paint::bead(ui.painter(), bead, &Yarn::letter(index), yarn.colour, t);
            &yarn.name
        }
        None => words,
    };
    let font = type_faces::regular(type_faces::BODY);
    let at = pos2(rect.left() + 28.0, y);
    paint::clipped_text(ui.painter(), at, name, font, t.ink, rect.width() - 52.0);
    if on {
        icons::check(ui.painter(), pos2(rect.right() - 14.0, y), t.outline);
    }
    if response.has_focus() {
        paint::focus_ring(ui.painter(), rect.shrink(4.0), 4.0, t);
    }
    if response.clicked() {
        ui.close();
    }
    response
}
