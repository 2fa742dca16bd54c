//! What can be predicted: a picture and a word each, or a number to type.

use egui::{Align2, Color32, Pos2, Rect, Role, Sense, Stroke, StrokeKind, TextEdit, Ui};
use egui::{WidgetInfo, pos2, vec2};
use plumpline_core::lesson::course::{LessonAsk, LessonChoice, LessonGuess};

use super::here::LessonBench;
use crate::bench::action::{Actions, LessonAct};
use crate::kit::controls::{self, ButtonFace};
use crate::kit::tokens::CARD_RADIUS;
use crate::kit::{icons, paint, type_faces};
use crate::view::lesson::LessonView;

/// Gap between choices.
const BETWEEN: f32 = 8.0;

/// Draws what can be predicted.
pub(super) fn show(
    ui: &mut Ui,
    here: &LessonBench<'_>,
    ask: &LessonAsk,
    next: &mut LessonView,
    actions: &mut Actions,
) {
    match ask {
        LessonAsk::Number { unit, .. } => number(ui, here, unit, next, actions),
        LessonAsk::Bend { .. } | LessonAsk::Curve { .. } => {
            let choices = ask.choices();
            let wide = ui.available_width();
            let many = choices.len() as f32;
            let each = (wide - BETWEEN * (many - 1.0)) / many;
            let tall = 0.62 * each + here.size(30.0);
            let (row, _) = ui.allocate_exact_size(vec2(wide, tall), Sense::hover());
            for (i, &choice) in choices.iter().enumerate() {
                let left = row.left() + i as f32 * (each + BETWEEN);
                let rect = Rect::from_min_size(pos2(left, row.top()), vec2(each, tall));
                one(ui, here, rect, choice, actions);
            }
        }
    }
}

fn one(
    ui: &Ui,
    here: &LessonBench<'_>,
    rect: Rect,
    choice: LessonChoice,
    actions: &mut Actions,
) {
    let t = here.bench.t;
    let words = choice.text(&here.course.words);
    let said = here.guess();
    let on = said == Some(LessonGuess::Choice(choice));
    let open = said.is_none();
    let sense = if open { Sense::click() } else { Sense::hover() };
    let response = ui.interact(rect, ui.scope_id().with(("choice", words)), sense);
    response.widget_info(|| WidgetInfo::selected(Role::RadioButton, open, on, words));
    let painter = ui.painter();
    if open {
        paint::lip(painter, rect, CARD_RADIUS, t.edge_deep, 2.0);
    }
    let (fill, edge) = match (on, open && response.hovered()) {
        (true, _) => (t.wash, Stroke::new(1.6, t.outline)),
        (false, true) => (t.panel, Stroke::new(1.5, t.outline)),
        (false, false) => (t.panel, Stroke::new(1.0, t.control_edge)),
    };
    painter.rect(rect, CARD_RADIUS, fill, edge, StrokeKind::Inside);
    let high = here.size(26.0);
    let place = rect.with_max_y(rect.bottom() - high).shrink(5.0);
    if let Some(texture) = here.bench.lesson.choice(choice) {
        let [wide, tall] = texture.size().map(|s| s as f32);
        let scale = (place.width() / wide).min(place.height() / tall);
        let at = Rect::from_center_size(place.center(), vec2(wide, tall) * scale);
        let whole = Rect::from_min_max(Pos2::ZERO, pos2(1.0, 1.0));
        let tint = if open || on { Color32::WHITE } else { Color32::from_white_alpha(120) };
        painter.image(texture.id(), at, whole, tint);
    }
    let galley = painter.layout(
        words.to_owned(),
        type_faces::semibold(here.size(type_faces::BODY)),
        if open || on { t.ink } else { t.soft_ink },
        rect.width() - 8.0,
    );
    let middle = pos2(rect.center().x, rect.bottom() - 0.5 * high - 1.0);
    let at = Align2::CENTER_CENTER.anchor_size(middle, galley.size());
    painter.galley(at.min, galley, t.ink);
    if on {
        let at = rect.right_top() + vec2(-4.0, 4.0);
        painter.circle_filled(at, 9.0, t.outline);
        icons::check(painter, at, t.panel);
    }
    if response.has_focus() {
        paint::focus_ring(painter, rect, CARD_RADIUS, t);
    }
    if open && response.clicked() {
        actions.lesson(LessonAct::Say(LessonGuess::Choice(choice)));
    }
}

fn number(
    ui: &mut Ui,
    here: &LessonBench<'_>,
    unit: &str,
    next: &mut LessonView,
    actions: &mut Actions,
) {
    let t = here.bench.t;
    let font = type_faces::semibold(here.size(type_faces::TITLE));
    let high = here.size(30.0);
    if let Some(LessonGuess::Number(said)) = here.guess() {
        let words = egui::RichText::new(format!("{said} {unit}")).font(font).color(t.ink);
        ui.label(words);
        return;
    }
    ui.horizontal(|ui| {
        let size = vec2(here.size(96.0), high);
        let edit = TextEdit::singleline(&mut next.typed)
            .id(crate::view::ids::guess_id())
            .font(font)
            .char_limit(12)
            .desired_width(size.x)
            .clip_text(true);
        let field = ui.add_sized(size, edit);
        field.widget_info(|| {
            WidgetInfo::labeled(Role::TextInput, true, say!("lesson-your-prediction"))
        });
        let small = type_faces::regular(here.size(type_faces::BODY));
        ui.label(egui::RichText::new(unit).font(small).color(t.ink));
        let guess = read(&next.typed);
        let wide = here.size(controls::words_width(ui, say!("lesson-answer")));
        let (rect, _) = ui.allocate_exact_size(vec2(wide, high), Sense::hover());
        let face = ButtonFace::Words(say!("lesson-answer"));
        let pressed =
            controls::button(ui, rect, face, say!("lesson-give-your-answer"), guess.is_some())
                .clicked();
        let entered = field.lost_focus() && ui.input(|i| i.key_pressed(egui::Key::Enter));
        if let Some(value) = guess.filter(|_| pressed || entered) {
            actions.lesson(LessonAct::Say(LessonGuess::Number(value)));
        }
    });
}

/// The number that was typed, with a point or a comma.
fn read(text: &str) -> Option<f64> {
    let number: f64 = text.trim().replace(',', ".").parse().ok()?;
    (number.is_finite() && number.abs() < 1e6).then_some(number)
}

#[cfg(test)]
mod tests {
    use super::read;

    #[test]
    fn numbers_are_read_as_people_type_them() {
        assert_eq!(read(" 6,3 "), Some(6.3));
        assert_eq!(read("6.3"), Some(6.3));
        for text in ["", "six", "inf", "NaN", "1e9", "6 st"] {
            assert_eq!(read(text), None, "{text}");
        }
    }
}
