//! The field in which a formula is typed, with what is wrong marked at its place.

use std::ops::Range;
use std::sync::Arc;

use egui::text::{CCursor, LayoutJob, TextFormat};
use egui::{Galley, Shape, Stroke, TextBuffer, TextEdit, Ui, vec2};
use plumpline_trace::formula::FormulaPlace;

use crate::kit::{Tokens, type_faces};

/// Longest formula that can be typed, in characters.
const LONGEST: usize = 400;

/// A field that changes `formula`; what `fault` says is underlined, and pointed at from below.
pub(super) fn show(ui: &mut Ui, t: &Tokens, formula: &mut String, fault: &FormulaPlace) {
    let at = match fault {
        FormulaPlace::Letters(at) => Some(at.clone()),
        FormulaPlace::Height(_) | FormulaPlace::Whole => None,
    };
    let mut layouter = |ui: &Ui, text: &dyn TextBuffer, _: f32| -> Arc<Galley> {
        let job = marked(text.as_str(), at.clone(), t);
        ui.fonts_mut(|fonts| fonts.layout_job(job))
    };
    let shown = TextEdit::singleline(formula)
        .desired_width(f32::INFINITY)
        .min_size(vec2(0.0, 28.0))
        .char_limit(LONGEST)
        .layouter(&mut layouter)
        .show(ui);
    let field = shown.response.response.accessible_name(say!("start-formula-of-the-radius"));
    let why = say!("start-z-is-the-height-above-the-start-in-mm");
    let field = field.on_hover_text(why);
    if let Some(at) = at {
        let place = shown.galley.pos_from_cursor(CCursor::new(at.start));
        let tip = shown.galley_pos + place.left_bottom().to_vec2();
        let tip = tip.clamp(field.rect.min, field.rect.max);
        let foot = [tip, tip + vec2(-4.0, 6.0), tip + vec2(4.0, 6.0)];
        ui.painter().add(Shape::convex_polygon(foot.into(), t.warning, Stroke::NONE));
    }
}

/// The formula with these of its characters marked.
fn marked(text: &str, at: Option<Range<usize>>, t: &Tokens) -> LayoutJob {
    let plain = TextFormat::simple(type_faces::regular(type_faces::BODY), t.ink);
    let wrong = TextFormat {
        underline: Stroke::new(2.0, t.warning),
        background: t.warn_wash,
        ..plain.clone()
    };
    let mut job = LayoutJob::default();
    job.wrap.max_width = f32::INFINITY;
    job.break_on_newline = false;
    let at = at.unwrap_or(0..0);
    let part = |range: Range<usize>| -> String {
        text.chars().skip(range.start).take(range.end.saturating_sub(range.start)).collect()
    };
    for (range, format) in
        [(0..at.start, plain.clone()), (at.clone(), wrong), (at.end..usize::MAX, plain)]
    {
        job.append(&part(range), 0.0, format);
    }
    job
}
