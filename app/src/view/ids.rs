//! The ids by which the views take the keyboard.

use egui::Id;

/// The id the outline board takes the keyboard with.
pub fn board_id() -> Id {
    Id::unique("outline board")
}

/// The id the round bars take the keyboard with.
pub fn bars_id() -> Id {
    Id::unique("round bars")
}

/// The id the text of the pattern being proofread takes the keyboard with.
pub fn pattern_id() -> Id {
    Id::unique("pattern text")
}

/// The id the round under the hook takes the keyboard with.
pub fn make_id() -> Id {
    Id::unique("round under the hook")
}

/// The id a note on a round takes the keyboard with.
pub fn note_id() -> Id {
    Id::unique("note on the round")
}

/// The id the body takes the keyboard with.
pub fn body_id() -> Id {
    Id::unique("stuffed body")
}

/// The id the bend strip takes the keyboard with.
pub fn bend_id() -> Id {
    Id::unique("bend strip")
}

/// The id the picture of the toy takes the keyboard with.
pub fn toy_id() -> Id {
    Id::unique("picture of the toy")
}

/// The id the map of what carries a part takes the keyboard with.
pub fn map_id() -> Id {
    Id::unique("map of the rounds")
}

/// The id the surface of a part takes the keyboard with.
pub fn surface_id() -> Id {
    Id::unique("surface of a part")
}

/// The id the cloth of the lesson takes the keyboard with.
pub fn lesson_id() -> Id {
    Id::unique("cloth of the lesson")
}

/// The id its second picture takes the keyboard with.
pub fn lesson_side_id() -> Id {
    Id::unique("cloth of the lesson from another side")
}

/// The id the chart of what rounds gain takes the keyboard with.
pub fn gains_id() -> Id {
    Id::unique("chart of increases")
}

/// The id a number that is predicted takes the keyboard with.
pub fn guess_id() -> Id {
    Id::unique("prediction")
}

/// While something that is moved or turned has the keyboard, arrows and Esc belong to it; Tab
/// leaves it.
pub(crate) fn keep_arrows(ui: &egui::Ui, view: &egui::Response) {
    let filter = egui::EventFilter {
        tab: false,
        horizontal_arrows: true,
        vertical_arrows: true,
        escape: true,
    };
    ui.memory_mut(|m| m.set_focus_lock_filter(view.id, filter));
}

/// While a view of the rounds has the keyboard, Up, Down and Esc belong to it; Tab leaves it.
pub(crate) fn keep_rounds(ui: &egui::Ui, view: &egui::Response) {
    let filter = egui::EventFilter {
        tab: false,
        horizontal_arrows: false,
        vertical_arrows: true,
        escape: true,
    };
    ui.memory_mut(|m| m.set_focus_lock_filter(view.id, filter));
}
