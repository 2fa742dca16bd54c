//! The Shape stage presented: outline, body and bend strip, one or two of them, over the whole
//! window, with a line at the foot that says which. Everything in it can be dragged and
//! pointed at as on the bench.

use egui::{Painter, Rect, Ui, pos2, vec2};

use super::{Hands, bend_strip, board, body};
use crate::bench::Bench;
use crate::bench::action::Actions;
use crate::bench::command::Command;
use crate::kit::controls::{self, ButtonFace};
use crate::kit::divide::Divided;
use crate::kit::tokens::{GAP, PAD};
use crate::kit::{Tokens, paint, type_faces};
use crate::view::look::Look;
use crate::view::present::{PresentView, Presented};

/// How much larger than usual everything is drawn: read from the last row of a classroom.
/// Common practice, no source.
pub const LARGER: f32 = 1.5;
/// Height of the line at the foot, and of a button in it.
const FOOT: f32 = 50.0;
const BUTTON: f32 = 30.0;
/// Height of a panel's heading.
const HEADING: f32 = 40.0;

/// Where everything is.
#[derive(Debug, Clone, Copy)]
pub struct PresentLayout {
    panels: [Option<(PresentView, Rect)>; 2],
    foot: Rect,
}

/// Divides the window.
pub fn divide(window: Rect, shown: Presented) -> PresentLayout {
    let Divided { main, side: foot } = Divided::above(window.shrink(GAP), FOOT);
    let views = shown.views();
    let panels = match views[..] {
        [view] => [Some((view, main)), None],
        [first, PresentView::Bend] => {
            let Divided { main, side } = Divided::above(main, 0.34 * main.height());
            [Some((first, main)), Some((PresentView::Bend, side))]
        }
        [first, second] => {
            let Divided { main, side } = Divided::beside(main, 0.5 * (main.width() - GAP));
            [Some((first, main)), Some((second, side))]
        }
        _ => [None, None],
    };
    PresentLayout { panels, foot }
}

impl PresentLayout {
    /// The part of the window over which a line for the person may lie.
    pub fn main(&self) -> Rect {
        self.panels[0].map_or(self.foot, |(_, rect)| rect)
    }

    /// Where the body stands, if it is shown.
    pub fn body_field(&self) -> Option<Rect> {
        self.of(PresentView::Body).map(body::field)
    }

    fn of(&self, view: PresentView) -> Option<Rect> {
        self.panels.iter().flatten().find(|(of, _)| *of == view).map(|(_, rect)| *rect)
    }

    fn board(&self) -> Option<Rect> {
        let inside = |rect: Rect| rect.with_min_y(rect.top() + HEADING).shrink2(vec2(PAD, 6.0));
        self.of(PresentView::Outline).map(inside)
    }

    /// The grounds of all panels.
    pub fn grounds(&self, painter: &Painter, t: &Tokens) {
        self.panels.iter().flatten().for_each(|(_, rect)| paint::panel(painter, *rect, t));
        paint::panel(painter, self.foot, t);
    }
}

/// First half of a frame: what the hand does.
pub fn hands(
    ui: &Ui,
    bench: &Bench<'_>,
    layout: &PresentLayout,
    actions: &mut Actions,
) -> Hands {
    let board = layout.board().map(|rect| board::hands(ui, bench, rect, actions));
    let body = layout.body_field().and_then(|field| body::hands(ui, bench, field, actions));
    let bend = layout
        .of(PresentView::Bend)
        .and_then(|rect| bend_strip::hands(ui, bench, rect, actions));
    let hovered = board.as_ref().and_then(|b| b.round).or(body).or(bend);
    let lens = board.as_ref().map(|b| b.ground.lens());
    Hands { board, bars: None, hovered, lens }
}

/// Second half: the picture of the piece as it is now.
pub fn picture(
    ui: &mut Ui,
    bench: &Bench<'_>,
    layout: &PresentLayout,
    hands: &Hands,
    actions: &mut Actions,
) {
    if let (Some(hand), Some(panel)) = (&hands.board, layout.of(PresentView::Outline)) {
        let at = panel.left_top() + vec2(PAD, 20.0);
        paint::title(ui.painter(), at, PresentView::Outline.text(), "", bench.t);
        board::paint_alone(ui, bench, hand, actions);
    }
    if let Some(panel) = layout.of(PresentView::Body) {
        body::panel(ui, bench, panel, body::BodyPlace::Window, actions);
    }
    if let Some(panel) = layout.of(PresentView::Bend) {
        bend_strip::paint(ui.painter(), bench, panel);
    }
    foot(ui, bench, layout.foot, actions);
}

/// Which piece it is; which views are shown; hiding numbers; the way back.
fn foot(ui: &Ui, bench: &Bench<'_>, rect: Rect, actions: &mut Actions) {
    let shown = bench.view.present;
    let y = rect.center().y - 0.5 * BUTTON;
    let mut right = rect.right() - PAD;
    let mut slot = |words: &str| {
        let wide = controls::words_width(ui, words);
        let place = Rect::from_min_size(pos2(right - wide, y), vec2(wide, BUTTON));
        right = place.left() - 8.0;
        place
    };
    let (end, hide) = (Command::Present, Command::HideNumbers);
    let place = slot(say!("present-end"));
    let button = controls::button(
        ui,
        place,
        ButtonFace::Words(say!("present-end")),
        say!("present-end-name"),
        true,
    );
    if button.on_hover_text(say!("present-end-does")).clicked() {
        actions.command(end);
    }
    let place = slot(hide.text());
    let face = ButtonFace::Words(hide.text());
    let on = Some(shown.hides_numbers);
    let button = controls::toggle(ui, place, face, hide.text(), true, on);
    if button.on_hover_text(bench.hint(hide)).clicked() {
        actions.command(hide);
    }
    for view in PresentView::ALL.into_iter().rev() {
        let place = slot(view.text());
        let face = ButtonFace::Words(view.text());
        let name = say!("present-view-name", view = view.text());
        let on = Some(shown.shows(view));
        let button = controls::toggle(ui, place, face, &name, true, on);
        if button.on_hover_text(say!("present-view-does")).clicked() {
            actions.look(Look::Present(shown.toggled(view)));
        }
    }
    let name = &bench.document.piece().name;
    let font = type_faces::semibold(type_faces::TITLE);
    let at = pos2(rect.left() + PAD, rect.center().y);
    let room = right - at.x - 8.0;
    if room > 30.0 {
        paint::clipped_text(ui.painter(), at, name, font, bench.t.ink, room);
    }
}
