//! How the window is divided, and what is drawn where.

use egui::{Rect, Ui, pos2, vec2};

use crate::bench::Bench;
use crate::bench::action::Actions;
use crate::kit::divide::{Divided, mirrored};
use crate::kit::paint;
use crate::kit::tokens::{GAP, STRIP};
use crate::stages::around::{notice, top_strip};
use crate::stages::shape::{self, Hands};
use crate::stages::{assembly, lesson, make, proofread, sheet, sizes};
use crate::view::Stage;

/// Where everything is.
#[derive(Debug, Clone, Copy)]
pub(super) struct WindowLayout {
    strip: Rect,
    pub(super) room: Room,
}

/// The stage's part of the window.
#[derive(Debug, Clone, Copy)]
pub(super) enum Room {
    Shape(shape::layout::ShapeLayout),
    Present(shape::present::PresentLayout),
    Assembly(assembly::layout::AssemblyLayout),
    Sizes(Divided),
    Sheet(Divided),
    Lesson(lesson::layout::LessonLayout),
    Proofread(Divided),
    Make(Rect),
}

/// Divides the window; `yarns` is how many yarns the figures list.
pub(super) fn layout(window: Rect, bench: &Bench<'_>, yarns: usize) -> WindowLayout {
    let stage = bench.view.stage;
    let strip = Rect::from_min_size(window.min, vec2(window.width(), STRIP));
    // The panel's lip hangs three points below it.
    let room = Rect::from_min_max(
        pos2(window.left() + GAP, strip.bottom() + 8.0),
        window.max - vec2(GAP, GAP),
    );
    let room = match stage {
        Stage::Shape if bench.view.presents() => {
            Room::Present(shape::present::divide(window, bench.view.present))
        }
        Stage::Shape => {
            Room::Shape(shape::layout::layout(window, room, yarns, bench.view.face))
        }
        Stage::Assembly => Room::Assembly(assembly::layout::divide(window, room)),
        Stage::Sizes => Room::Sizes(sizes::divide(window, room)),
        Stage::Sheet => Room::Sheet(sheet::divide(window, room)),
        Stage::Lesson => Room::Lesson(lesson::layout::divide(window, room, bench)),
        Stage::Proofread => Room::Proofread(proofread::divide(room)),
        Stage::Make => Room::Make(room),
    };
    WindowLayout { strip, room }
}

impl WindowLayout {
    /// The same with left and right changed in `window`, for a board on the right.
    #[must_use]
    pub(super) fn mirrored(self, window: Rect) -> Self {
        let room = match self.room {
            Room::Shape(shape) => Room::Shape(shape.mirrored(window)),
            // Two views side by side have no hand to lie over them.
            Room::Present(room) => Room::Present(room),
            Room::Assembly(assembly) => Room::Assembly(assembly.mirrored(window)),
            Room::Sizes(sizes) => Room::Sizes(sizes.mirrored(window)),
            Room::Sheet(sheet) => Room::Sheet(sheet.mirrored(window)),
            Room::Lesson(lesson) => Room::Lesson(lesson.mirrored(window)),
            Room::Proofread(proofread) => Room::Proofread(proofread.mirrored(window)),
            Room::Make(rect) => Room::Make(mirrored(rect, window)),
        };
        Self { room, ..self }
    }

    /// The part of the window over which a line for the person may lie.
    fn main(&self) -> Rect {
        match self.room {
            Room::Shape(shape) => shape.main,
            Room::Present(room) => room.main(),
            Room::Assembly(room) => room.picture,
            Room::Lesson(room) => room.picture,
            Room::Sizes(room) | Room::Sheet(room) | Room::Proofread(room) => room.main,
            // It would lie over the buttons that are pressed at every stitch.
            Room::Make(rect) => make::above_the_steps(rect),
        }
    }
}

/// First half of a frame: the grounds of all panels, the controls, and what the hand does.
pub(super) fn hands(
    ui: &mut Ui,
    bench: &Bench<'_>,
    layout: &WindowLayout,
    actions: &mut Actions,
) -> Hands {
    match &layout.room {
        Room::Shape(shape) => shape::grounds(ui.painter(), shape, bench.t),
        Room::Present(room) => room.grounds(ui.painter(), bench.t),
        Room::Assembly(room) => room.grounds(ui.painter(), bench.t),
        Room::Lesson(room) => room.grounds(ui.painter(), bench.t),
        Room::Sizes(room) | Room::Sheet(room) | Room::Proofread(room) => {
            paint::panel(ui.painter(), room.main, bench.t);
            paint::panel(ui.painter(), room.side, bench.t);
        }
        Room::Make(rect) => paint::panel(ui.painter(), *rect, bench.t),
    }
    // What is on a projector has the whole window.
    let lesson = bench.view.stage == Stage::Lesson && bench.view.lesson.presents;
    if !lesson && !bench.view.presents() {
        top_strip::show(ui, bench, layout.strip, actions);
    }
    match &layout.room {
        Room::Shape(shape) => shape::hands(ui, bench, shape, actions),
        Room::Present(room) => shape::present::hands(ui, bench, room, actions),
        _ => Hands::default(),
    }
}

/// Second half: the picture of the piece as it is now. Returns whether the answers to
/// choose from are in sight.
pub(super) fn picture(
    ui: &mut Ui,
    bench: &Bench<'_>,
    layout: &WindowLayout,
    hands: &Hands,
    actions: &mut Actions,
) -> bool {
    let mut sees_answers = false;
    match &layout.room {
        Room::Shape(shape) => sees_answers = shape::picture(ui, bench, shape, hands, actions),
        Room::Present(room) => shape::present::picture(ui, bench, room, hands, actions),
        Room::Assembly(room) => assembly::show(ui, bench, room, actions),
        Room::Sizes(room) => {
            sizes::show(ui, bench, room.main, actions);
            sizes::side(ui, bench, room.side, actions);
        }
        Room::Sheet(room) => {
            sheet::show(ui, bench, room.main, actions);
            sheet::side(ui, bench, room.side, actions);
        }
        Room::Lesson(room) => lesson::show(ui, bench, room, actions),
        Room::Proofread(room) => {
            proofread::text::show(ui, bench, room.main, actions);
            proofread::findings::show(ui, bench, room.side, actions);
        }
        Room::Make(rect) => make::show(ui, bench, *rect, actions),
    }
    notice::show(ui, bench, layout.main(), actions);
    sees_answers
}
