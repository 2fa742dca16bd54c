//! What there is to act on, as assistive tools are told, with where it lies on screen.

use egui::accesskit::Role;
use egui::{LayerId, Pos2, Rect};
use egui_kittest::kittest::NodeT as _;

use crate::bench::Bench;

/// Something a person can act on.
#[derive(Debug, Clone)]
pub(crate) struct Control {
    pub(crate) id: u64,
    pub(crate) name: String,
    pub(crate) role: Role,
    /// All of it.
    pub(crate) rect: Rect,
    /// What of it is in sight.
    pub(crate) seen: Rect,
    pub(crate) layer: LayerId,
    /// Its turn in its layer: later is over earlier.
    pub(crate) turn: usize,
    pub(crate) focusable: bool,
    pub(crate) enabled: bool,
}

impl Control {
    /// Whether all of it is in sight.
    pub(crate) fn is_whole(&self) -> bool {
        self.rect.width() - self.seen.width() < 1.0
            && self.rect.height() - self.seen.height() < 1.0
    }
}

/// Gives the keyboard to a control; whether it is there.
pub(crate) fn focus(bench: &Bench<'_>, control: &Control) -> bool {
    let id = bench.ctx.viewport(|v| {
        let widgets = &v.prev_pass.widgets;
        let mut all = widgets.layers().flat_map(|(_, list)| list.iter());
        all.find(|w| w.id.value() == control.id).map(|w| w.id)
    });
    if let Some(id) = id {
        bench.ctx.memory_mut(|m| m.request_focus(id));
    }
    id.is_some()
}

/// Everything that can be acted on now.
pub(crate) fn all(bench: &Bench<'_>) -> Vec<Control> {
    let widgets: Vec<_> = bench.ctx.viewport(|viewport| {
        let widgets = &viewport.prev_pass.widgets;
        widgets.layers().flat_map(|(_, list)| list.iter().cloned().enumerate()).collect()
    });
    let nodes = bench.root().children_recursive().map(|node| node.accesskit_node());
    nodes
        .filter_map(|node| {
            let (id, _) = node.locate();
            let (turn, widget) = widgets.iter().find(|(_, w)| w.id.value() == id.0)?;
            let sense = widget.sense;
            let acts = sense.senses_click() || sense.senses_drag();
            // Grounds that only keep the hand off what lies under them, and scroll bars,
            // which the wheel and Tab stand in for.
            let ground = matches!(node.role(), Role::Unknown | Role::GenericContainer)
                && !sense.is_focusable();
            // Words that can be marked are read, not acted on.
            let aside = matches!(node.role(), Role::ScrollBar | Role::Label);
            if !acts || ground || aside || node.is_hidden() {
                return None;
            }
            Some(Control {
                id: id.0,
                name: node.label().unwrap_or_default(),
                role: node.role(),
                rect: widget.rect,
                seen: widget.interact_rect,
                layer: widget.layer_id,
                turn: *turn,
                focusable: sense.is_focusable(),
                enabled: widget.enabled && !node.is_disabled(),
            })
        })
        .collect()
}

/// What of `list` the hand meets at `at`: the one drawn last.
pub(crate) fn met(list: &[Control], at: Pos2) -> Option<&Control> {
    list.iter().filter(|c| c.seen.contains(at)).max_by_key(|c| (c.layer.order, c.turn))
}
