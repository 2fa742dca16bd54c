//! The keys card: every command with its key, in groups, narrowed by what is typed. A click
//! on a line does what it says.

use egui::{
    Align2, Context, Response, Role, Sense, Stroke, TextEdit, Ui, WidgetInfo, pos2, vec2,
};

use crate::bench::Bench;
use crate::bench::action::Actions;
use crate::bench::command::{Command, Group};
use crate::fields::form;
use crate::fields::over::{self, Head};
use crate::kit::words::MessageKey;
use crate::kit::{paint, type_faces};
use crate::view::Over;
use crate::view::look::Look;

fn head() -> Head {
    Head { title: say!("keys-title"), hint: say!("keys-hint"), width: 520.0 }
}
/// Height of a command's line.
const LINE: f32 = 40.0;

/// What hands do that is no command: what it does, and how.
const HANDS: [(MessageKey, MessageKey); 9] = [
    (message!("keys-move-knots"), message!("keys-move-knots-how")),
    (message!("keys-several-knots"), message!("keys-several-knots-how")),
    (message!("keys-no-magnet"), message!("keys-no-magnet-how")),
    (message!("keys-move-board"), message!("keys-move-board-how")),
    (message!("keys-zoom"), message!("keys-zoom-how")),
    (message!("keys-turn-body"), message!("keys-turn-body-how")),
    (message!("keys-move-part"), message!("keys-move-part-how")),
    (message!("keys-next-control"), message!("keys-next-control-how")),
    (message!("keys-close"), message!("keys-close-how")),
];

/// Draws the card over the window.
pub fn show(ctx: &Context, bench: &Bench<'_>, query: &str, actions: &mut Actions) {
    let mut typed = query.to_owned();
    let mut chosen = None;
    let closed = over::show(
        ctx,
        head(),
        |ui| search(ui, &mut typed),
        |ui| chosen = list(ui, bench, query),
    );
    if let Some(command) = chosen {
        actions.look(Look::Over(None));
        actions.command(command);
    } else if closed {
        actions.look(Look::Over(None));
    } else if typed != query {
        actions.look(Look::Over(Some(Over::Keys(typed))));
    }
}

fn search(ui: &mut Ui, typed: &mut String) {
    let field = TextEdit::singleline(typed)
        .hint_text(say!("keys-type-a-word-or-a-key"))
        .desired_width(f32::INFINITY)
        .min_size(vec2(0.0, 28.0))
        .char_limit(60);
    let response = ui.add(field).accessible_name(say!("keys-search-the-keys"));
    // The keyboard is here when the card opens, and stays where it is taken.
    if ui.memory(|m| m.focused().is_none()) {
        response.request_focus();
    }
}

/// Whether a line holds all the words that are typed.
fn holds(line: &str, query: &str) -> bool {
    let line = line.to_lowercase();
    query.to_lowercase().split_whitespace().all(|word| line.contains(word))
}

/// The commands of a group that hold what is typed, in the order of all commands; what
/// only keys with Shift do comes after.
fn commands(group: Group, query: &str, single_keys: bool) -> Vec<Command> {
    let line = |command: Command| {
        let keys = command.all_keys_text(single_keys);
        [group.text(), command.text(), command.tooltip(), &keys].join(" ")
    };
    let mut list: Vec<Command> =
        Command::ALL.into_iter().filter(|c| c.group() == group).collect();
    list.retain(|&c| holds(&line(c), query));
    let shift = |c: Command| c.shortcut().is_some_and(|key| key.modifiers.shift);
    list.sort_by_key(|&c| shift(c));
    list
}

/// All groups; returns the command that was clicked.
fn list(ui: &mut Ui, bench: &Bench<'_>, query: &str) -> Option<Command> {
    ui.spacing_mut().item_spacing.y = 2.0;
    let mut chosen = None;
    let mut any = false;
    for group in Group::ALL {
        let list = commands(group, query, bench.view.prefs.single_keys);
        if list.is_empty() {
            continue;
        }
        any = true;
        form::heading(ui, group.text());
        for command in list {
            if line(ui, bench, command).clicked() {
                chosen = Some(command);
            }
        }
    }
    let hands: Vec<_> = HANDS
        .into_iter()
        .map(|(what, how)| (what.text(), how.text()))
        .filter(|(what, how)| holds(&[*what, *how].join(" "), query))
        .collect();
    if !hands.is_empty() {
        any = true;
        form::heading(ui, say!("keys-with-the-hand"));
        for (what, how) in hands {
            by_hand(ui, bench, what, how);
        }
    }
    if !any {
        form::remark(ui, say!("keys-no-match"));
    }
    chosen
}

fn line(ui: &mut Ui, bench: &Bench<'_>, command: Command) -> Response {
    let t = bench.t;
    let enabled = command.enabled(bench);
    let size = vec2(ui.available_width(), LINE);
    let sense = if enabled { Sense::click() } else { Sense::hover() };
    let (rect, response) = ui.allocate_exact_size(size, sense);
    let keys = command.all_keys_text(bench.view.prefs.single_keys);
    response.widget_info(|| {
        let mut info = WidgetInfo::labeled(Role::Button, enabled, command.text());
        info.hint_text = (!keys.is_empty()).then(|| keys.clone());
        info
    });
    let painter = ui.painter();
    if enabled {
        paint::row(painter, rect, &response, false, t);
    }
    let (ink, soft) = if enabled { (t.ink, t.soft_ink) } else { (t.soft_ink, t.soft_ink) };
    let font = type_faces::bold(type_faces::SMALL);
    let right = rect.right_center() - vec2(8.0, 0.0);
    let key = painter.layout_no_wrap(keys.clone(), font, ink);
    let mut room = rect.width() - 24.0;
    if !keys.is_empty() {
        let plate = Align2::RIGHT_CENTER.anchor_size(right, key.size() + vec2(12.0, 6.0));
        let edge = Stroke::new(1.0, t.edge);
        painter.rect(plate, 4.0, t.panel, edge, egui::StrokeKind::Inside);
        painter.galley(plate.min + vec2(6.0, 3.0), key, ink);
        room = plate.left() - rect.left() - 20.0;
    }
    let name = if enabled {
        command.text().to_owned()
    } else {
        say!("keys-command-not-now", command = command.text())
    };
    let at = pos2(rect.left() + 8.0, rect.top() + 13.0);
    paint::clipped_text(painter, at, &name, type_faces::semibold(type_faces::BODY), ink, room);
    let below = at + vec2(0.0, 15.0);
    let small = type_faces::regular(type_faces::SMALL);
    let (_, cut) = paint::clipped_text(painter, below, command.tooltip(), small, soft, room);
    if cut { response.on_hover_text(command.tooltip()) } else { response }
}

fn by_hand(ui: &mut Ui, bench: &Bench<'_>, what: &str, how: &str) {
    let t = bench.t;
    let (rect, response) =
        ui.allocate_exact_size(vec2(ui.available_width(), 26.0), Sense::hover());
    response.widget_info(|| WidgetInfo::labeled(Role::Label, true, format!("{what}: {how}")));
    let painter = ui.painter();
    let small = type_faces::regular(type_faces::SMALL);
    let at = rect.right_center() - vec2(8.0, 0.0);
    let how = painter.text(at, Align2::RIGHT_CENTER, how, small, t.soft_ink);
    let at = rect.left_center() + vec2(8.0, 0.0);
    let room = how.left() - at.x - 12.0;
    let font = type_faces::regular(type_faces::BODY);
    paint::clipped_text(painter, at, what, font, t.ink, room);
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn every_command_is_listed_once_and_found_by_its_words_and_its_key() {
        let all: Vec<Command> =
            Group::ALL.into_iter().flat_map(|g| commands(g, "", true)).collect();
        assert_eq!(all.len(), Command::ALL.len());
        for command in Command::ALL {
            let of = |query: &str| commands(command.group(), query, true);
            assert!(of(command.text()).contains(&command), "{command:?} by its words");
            let keys = command.all_keys_text(true);
            assert!(of(&keys).contains(&command), "{command:?} by {keys}");
        }
        assert!(Group::ALL.into_iter().all(|g| commands(g, "no such thing", true).is_empty()));
    }
}
