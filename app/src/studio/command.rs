//! Every command of the studio: its words, its key, and when it can be used.

use egui::{Key, KeyboardShortcut, Modifiers};

use super::bench::Bench;
use super::making::MakeCommand;
use super::view::Stage;

/// Something a person can ask for by menu, button or key.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum Command {
    /// Begin a new project.
    New,
    /// Open a project from a file.
    Open,
    /// Save the project.
    Save,
    /// Save the project in another file.
    SaveAs,
    /// Take the last step back.
    Undo,
    /// Take it again.
    Redo,
    /// Change between the light and the dark theme.
    ToggleTheme,
    /// Show the outline board and the round bars.
    ShowShape,
    /// Show the pattern.
    ShowSheet,
    /// Show someone's written pattern, checked.
    ShowProofread,
    /// Open a written pattern.
    OpenPattern,
    /// Make a piece of the written pattern.
    MakePiece,
    /// Copy the pattern.
    CopySheet,
    /// Save the pattern as text.
    SaveSheetText,
    /// Take the round before.
    PreviousRound,
    /// Take the next round.
    NextRound,
    /// Take the first round.
    FirstRound,
    /// Take the last round.
    LastRound,
    /// Let the round and the knot go.
    LetGo,
    /// Copy the line of the round in hand.
    CopyRound,
    /// Pin the round in hand, or remove its pin.
    TogglePin,
    /// One stitch more in the round in hand.
    MoreStitches,
    /// One stitch fewer.
    FewerStitches,
    /// Take the knot before.
    PreviousKnot,
    /// Take the next knot.
    NextKnot,
    /// Remove the knot in hand.
    RemoveKnot,
    /// Make the knot in hand a corner, or smooth.
    ToggleCorner,
    /// The next kind of stitch from the round in hand on.
    NextKind,
    /// The next loop for the round in hand.
    NextLoop,
    /// Keep the round in hand plain, or let it be shaped.
    TogglePlain,
    /// Show the whole piece on the outline board.
    FitView,
    /// Let knots snap, or not.
    ToggleMagnet,
    /// Choose a picture to trace.
    ChoosePicture,
    /// Show the round under the hook.
    ShowMake,
    /// A command of the Make stage.
    Make(MakeCommand),
}

const CTRL: Modifiers = Modifiers::COMMAND;
const CTRL_SHIFT: Modifiers = Modifiers::COMMAND.plus(Modifiers::SHIFT);

impl Command {
    /// Every command. Keys with more modifiers come first: egui ignores an extra Shift.
    pub const ALL: [Self; 42] = [
        Self::SaveAs,
        Self::Redo,
        Self::New,
        Self::Open,
        Self::Save,
        Self::Undo,
        Self::ToggleTheme,
        Self::ShowShape,
        Self::ShowSheet,
        Self::ShowProofread,
        Self::OpenPattern,
        Self::MakePiece,
        Self::CopySheet,
        Self::SaveSheetText,
        Self::PreviousRound,
        Self::NextRound,
        Self::FirstRound,
        Self::LastRound,
        Self::LetGo,
        Self::CopyRound,
        Self::TogglePin,
        Self::MoreStitches,
        Self::FewerStitches,
        Self::PreviousKnot,
        Self::NextKnot,
        Self::RemoveKnot,
        Self::ToggleCorner,
        Self::NextKind,
        Self::NextLoop,
        Self::TogglePlain,
        Self::FitView,
        Self::ToggleMagnet,
        Self::ChoosePicture,
        Self::ShowMake,
        Self::Make(MakeCommand::Stitch),
        Self::Make(MakeCommand::Repeat),
        Self::Make(MakeCommand::Round),
        Self::Make(MakeCommand::Back),
        Self::Make(MakeCommand::Done),
        Self::Make(MakeCommand::Other),
        Self::Make(MakeCommand::Find),
        Self::Make(MakeCommand::Note),
    ];

    /// The words on menus and buttons.
    pub const fn text(self) -> &'static str {
        match self {
            Self::New => "New…",
            Self::Open => "Open…",
            Self::Save => "Save",
            Self::SaveAs => "Save as…",
            Self::Undo => "Undo",
            Self::Redo => "Redo",
            Self::ToggleTheme => "Light or dark",
            Self::ShowShape => "Shape",
            Self::ShowSheet => "Sheet",
            Self::ShowProofread => "Proofread",
            Self::OpenPattern => "Open…",
            Self::MakePiece => "Make a piece of it",
            Self::CopySheet => "Copy",
            Self::SaveSheetText => "Save text…",
            Self::PreviousRound => "Previous round",
            Self::NextRound => "Next round",
            Self::FirstRound => "First round",
            Self::LastRound => "Last round",
            Self::LetGo => "Let go",
            Self::CopyRound => "Copy line",
            Self::TogglePin => "Pin",
            Self::MoreStitches => "One stitch more",
            Self::FewerStitches => "One stitch fewer",
            Self::PreviousKnot => "Previous knot",
            Self::NextKnot => "Next knot",
            Self::RemoveKnot => "Remove knot",
            Self::ToggleCorner => "Corner",
            Self::NextKind => "Next stitch",
            Self::NextLoop => "Next loop",
            Self::TogglePlain => "Plain",
            Self::FitView => "Fit view",
            Self::ToggleMagnet => "Magnet",
            Self::ChoosePicture => "Picture…",
            Self::ShowMake => "Make",
            Self::Make(make) => make.text(),
        }
    }

    /// One sentence on what it does.
    pub const fn tooltip(self) -> &'static str {
        match self {
            Self::New => "Begin a piece from a starter, or open a project",
            Self::Open => "Open a project file",
            Self::Save => "Save the project",
            Self::SaveAs => "Save the project under another name",
            Self::Undo => "Take the last step back",
            Self::Redo => "Take the step again",
            Self::ToggleTheme => "Change between paper and cutting mat",
            Self::ShowShape => "Shape the piece",
            Self::ShowSheet => "Read the pattern",
            Self::ShowProofread => "Check a written pattern, anyone's",
            Self::OpenPattern => "Open a written pattern from a text file",
            Self::MakePiece => {
                "Add a piece with these counts, in the gauge of the piece in hand"
            }
            Self::CopySheet => "Copy the whole pattern as plain text",
            Self::SaveSheetText => "Save the pattern as plain text (.txt) or Markdown (.md)",
            Self::PreviousRound => "Take the round before in hand",
            Self::NextRound => "Take the next round in hand",
            Self::FirstRound => "Take the first round in hand",
            Self::LastRound => "Take the last round in hand",
            Self::LetGo => "Let the round and the knot in hand go",
            Self::CopyRound => "Copy the line of the round in hand as plain text",
            Self::TogglePin => "Hold this round's stitch count, or let it go",
            Self::MoreStitches => "Pin the round in hand at one stitch more",
            Self::FewerStitches => "Pin the round in hand at one stitch fewer",
            Self::PreviousKnot => "Take the knot before in hand",
            Self::NextKnot => "Take the next knot in hand",
            Self::RemoveKnot => "Remove the knot in hand",
            Self::ToggleCorner => "Let the outline turn sharply at this knot, or not",
            Self::NextKind => "Work in the next kind of stitch from the round in hand on",
            Self::NextLoop => "Work the round in hand into both loops, the front or the back",
            Self::TogglePlain => "Keep the round in hand free of shaping, or let it be shaped",
            Self::FitView => "Show the whole piece on the board",
            Self::ToggleMagnet => {
                "Knots snap to the axis, to one another and to whole mm; Alt suspends it"
            }
            Self::ChoosePicture => "Choose a picture to trace: PNG, JPEG or WebP",
            Self::ShowMake => "Work the piece, one stitch after the other",
            Self::Make(make) => make.tooltip(),
        }
    }

    /// Its key, if it has one.
    pub const fn shortcut(self) -> Option<KeyboardShortcut> {
        let (modifiers, key) = match self {
            Self::New => (CTRL, Key::N),
            Self::Open => (CTRL, Key::O),
            Self::Save => (CTRL, Key::S),
            Self::SaveAs => (CTRL_SHIFT, Key::S),
            Self::Undo => (CTRL, Key::Z),
            Self::Redo => (CTRL_SHIFT, Key::Z),
            Self::ToggleTheme => (CTRL, Key::D),
            Self::ShowShape => (Modifiers::NONE, Key::Num1),
            Self::ShowSheet => (Modifiers::NONE, Key::Num2),
            Self::ShowProofread => (Modifiers::NONE, Key::Num3),
            Self::CopySheet
            | Self::SaveSheetText
            | Self::OpenPattern
            | Self::MakePiece
            | Self::ChoosePicture => {
                return None;
            }
            Self::PreviousRound => (Modifiers::NONE, Key::ArrowUp),
            Self::NextRound => (Modifiers::NONE, Key::ArrowDown),
            Self::FirstRound => (Modifiers::NONE, Key::Home),
            Self::LastRound => (Modifiers::NONE, Key::End),
            Self::LetGo => (Modifiers::NONE, Key::Escape),
            Self::CopyRound => (CTRL, Key::C),
            Self::TogglePin => (Modifiers::NONE, Key::P),
            Self::MoreStitches => (Modifiers::NONE, Key::Plus),
            Self::FewerStitches => (Modifiers::NONE, Key::Minus),
            Self::PreviousKnot => (Modifiers::NONE, Key::OpenBracket),
            Self::NextKnot => (Modifiers::NONE, Key::CloseBracket),
            Self::RemoveKnot => (Modifiers::NONE, Key::Delete),
            Self::ToggleCorner => (Modifiers::NONE, Key::K),
            Self::NextKind => (Modifiers::NONE, Key::T),
            Self::NextLoop => (Modifiers::NONE, Key::L),
            Self::TogglePlain => (Modifiers::NONE, Key::F),
            Self::FitView => (Modifiers::NONE, Key::Num0),
            Self::ToggleMagnet => (Modifiers::NONE, Key::M),
            Self::ShowMake => (Modifiers::NONE, Key::Num4),
            Self::Make(make) => (Modifiers::NONE, make.key()),
        };
        Some(KeyboardShortcut::new(modifiers, key))
    }

    /// Its key in words, for tooltips: `Ctrl+Z`.
    pub fn key_text(self) -> Option<String> {
        let shortcut = self.shortcut()?;
        let key = match shortcut.logical_key {
            Key::ArrowUp => "Up",
            Key::ArrowDown => "Down",
            Key::Escape => "Esc",
            Key::Delete => "Del",
            Key::Plus => "+",
            Key::Minus => "−",
            Key::OpenBracket => "[",
            Key::CloseBracket => "]",
            key => key.name(),
        };
        let command = if shortcut.modifiers.command { "Ctrl+" } else { "" };
        let shift = if shortcut.modifiers.shift { "Shift+" } else { "" };
        Some(format!("{command}{shift}{key}"))
    }

    /// Its tooltip with its key.
    pub fn hint(self) -> String {
        match self.key_text() {
            Some(key) => format!("{} ({key})", self.tooltip()),
            None => self.tooltip().into(),
        }
    }

    /// Whether it can be used now.
    pub fn enabled(self, bench: &Bench<'_>) -> bool {
        let shaping = bench.view.stage == Stage::Shape && bench.plan.is_some();
        let history = &bench.document.history;
        match self {
            Self::New | Self::Open | Self::SaveAs | Self::OpenPattern => !bench.busy,
            Self::Save => {
                !bench.busy && (bench.document.is_changed() || bench.document.path().is_none())
            }
            Self::Undo => history.can_undo() && !history.in_gesture(),
            Self::Redo => history.can_redo() && !history.in_gesture(),
            Self::ToggleTheme
            | Self::ShowShape
            | Self::ShowSheet
            | Self::ShowProofread
            | Self::ShowMake => true,
            Self::Make(make) => make.enabled(bench),
            Self::MakePiece => {
                bench.proofreading.checked().is_some_and(|c| c.summary.rounds > 1)
            }
            Self::CopySheet => bench.error.is_none(),
            Self::SaveSheetText => bench.error.is_none() && !bench.busy,
            Self::PreviousRound | Self::NextRound | Self::FirstRound | Self::LastRound => {
                shaping
            }
            Self::LetGo => bench.view.holds_something() || bench.view.board.picture,
            Self::NextLoop => {
                // A first round is worked into a ring or a chain, which have no loops.
                let later = bench.view.in_hand().is_some_and(|r| r > 1);
                shaping && later && !bench.view.is_dragging()
            }
            Self::CopyRound => shaping && bench.view.in_hand().is_some(),
            Self::TogglePin
            | Self::MoreStitches
            | Self::FewerStitches
            | Self::NextKind
            | Self::TogglePlain => {
                shaping && bench.view.in_hand().is_some() && !bench.view.is_dragging()
            }
            Self::PreviousKnot | Self::NextKnot => {
                bench.view.stage == Stage::Shape && !bench.view.is_dragging()
            }
            Self::RemoveKnot => {
                let enough = bench.document.piece().outline.knots.len() > 3;
                enough && bench.holds_inner_knot() && !bench.view.is_dragging()
            }
            Self::FitView => bench.view.stage == Stage::Shape && !bench.view.is_dragging(),
            Self::ToggleMagnet => bench.view.stage == Stage::Shape,
            Self::ChoosePicture => !bench.busy,
            Self::ToggleCorner => bench.view.stage == Stage::Shape && bench.view.knot.is_some(),
        }
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn no_two_commands_share_a_key() {
        for (i, a) in Command::ALL.iter().enumerate() {
            for b in &Command::ALL[i + 1..] {
                assert_ne!(a, b, "listed twice");
                if let (Some(x), Some(y)) = (a.shortcut(), b.shortcut()) {
                    assert_ne!(x, y, "{a:?} and {b:?}");
                }
            }
        }
    }

    #[test]
    fn every_command_has_words() {
        for command in Command::ALL {
            assert!(!command.text().is_empty(), "{command:?}");
            assert!(command.tooltip().len() > command.text().len(), "{command:?}");
        }
    }

    #[test]
    fn keys_with_shift_are_tried_first() {
        let at = |c: Command| Command::ALL.iter().position(|&x| x == c);
        assert!(at(Command::SaveAs) < at(Command::Save));
        assert!(at(Command::Redo) < at(Command::Undo));
    }
}
