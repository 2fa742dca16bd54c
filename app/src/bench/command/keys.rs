//! Commands by key.

use egui::{Key, KeyboardShortcut, Modifiers};

use super::Command;

const CTRL: Modifiers = Modifiers::COMMAND;
const CTRL_SHIFT: Modifiers = Modifiers::COMMAND.plus(Modifiers::SHIFT);

impl Command {
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
            Self::ShowAssembly => (Modifiers::NONE, Key::Num2),
            Self::ShowSizes => (Modifiers::NONE, Key::Num3),
            Self::ShowSheet => (Modifiers::NONE, Key::Num4),
            Self::ShowLesson => (Modifiers::NONE, Key::Num5),
            Self::ShowProofread => (Modifiers::NONE, Key::Num6),
            Self::CopySheet
            | Self::CopyScript
            | Self::CopyBlurb
            | Self::SaveSheet
            | Self::Sheet(_)
            | Self::SaveBody
            | Self::SaveTurning
            | Self::OpenPattern
            | Self::PastePattern
            | Self::CopyPattern
            | Self::SavePattern
            | Self::MakePiece
            | Self::ChoosePicture
            | Self::TracePicture
            | Self::LessonStop
            | Self::PrintStep
            | Self::PrintLesson
            | Self::LessonProject
            | Self::OpenCourse
            | Self::SaveCourse => {
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
            Self::LessonBack => (Modifiers::NONE, Key::PageUp),
            Self::LessonNext => (Modifiers::NONE, Key::PageDown),
            Self::HideNumbers => (Modifiers::NONE, Key::H),
            Self::Present => (Modifiers::NONE, Key::F5),
            Self::ShowMake => (Modifiers::NONE, Key::Num7),
            Self::Make(make) => (Modifiers::NONE, make.key()),
            Self::ShowSettings => (CTRL, Key::Comma),
            Self::ShowKeys => (Modifiers::NONE, Key::F1),
            Self::LargerText => (CTRL, Key::Plus),
            Self::SmallerText => (CTRL, Key::Minus),
            Self::UsualText => (CTRL, Key::Num0),
        };
        Some(KeyboardShortcut::new(modifiers, key))
    }

    /// A second key for it, where keyboards differ or habit has two.
    pub const fn other_shortcut(self) -> Option<KeyboardShortcut> {
        let (modifiers, key) = match self {
            Self::Redo => (CTRL, Key::Y),
            Self::MoreStitches => (Modifiers::NONE, Key::Equals),
            Self::LargerText => (CTRL, Key::Equals),
            Self::ShowKeys => (Modifiers::NONE, Key::Questionmark),
            _ => return None,
        };
        Some(KeyboardShortcut::new(modifiers, key))
    }

    /// All its keys.
    pub fn shortcuts(self) -> impl Iterator<Item = KeyboardShortcut> {
        [self.shortcut(), self.other_shortcut()].into_iter().flatten()
    }

    /// Its key in words, for tooltips: `Ctrl+Z`, or where single keys are off `Alt+P`.
    pub fn key_text(self, single_keys: bool) -> Option<String> {
        self.shortcut().map(|shortcut| text_of(asked(shortcut, single_keys)))
    }

    /// Both its keys in words, for lists.
    pub fn all_keys_text(self, single_keys: bool) -> String {
        let mut texts = self.shortcuts().map(|key| text_of(asked(key, single_keys)));
        match (texts.next(), texts.next()) {
            (Some(first), Some(second)) => say!("key-either", first = first, second = second),
            (first, _) => first.unwrap_or_default(),
        }
    }

    /// Its tooltip with its key.
    pub fn hint(self, single_keys: bool) -> String {
        match self.key_text(single_keys) {
            Some(key) => format!("{} ({key})", self.tooltip()),
            None => self.tooltip().into(),
        }
    }
}

/// Whether a shortcut is a letter, a digit or a sign by itself: what a voice or a shaking
/// hand sets off unmeant. Arrows, Esc, Del and the like are not.
fn is_single(shortcut: KeyboardShortcut) -> bool {
    use Key::{ArrowDown, ArrowLeft, ArrowRight, ArrowUp, Delete, End, Escape, F1, F5, Home};
    use Key::{PageDown, PageUp};
    let arrows = [ArrowDown, ArrowLeft, ArrowRight, ArrowUp, PageDown, PageUp];
    let named = [&arrows[..], &[Delete, End, Escape, F1, F5, Home]].concat();
    shortcut.modifiers.is_none() && !named.contains(&shortcut.logical_key)
}

/// The shortcut as it has to be pressed: single keys want Alt where they are off by
/// themselves.
pub fn asked(shortcut: KeyboardShortcut, single_keys: bool) -> KeyboardShortcut {
    if single_keys || !is_single(shortcut) {
        shortcut
    } else {
        KeyboardShortcut::new(Modifiers::ALT, shortcut.logical_key)
    }
}

fn text_of(shortcut: KeyboardShortcut) -> String {
    let key = match shortcut.logical_key {
        Key::ArrowUp => say!("key-up"),
        Key::ArrowDown => say!("key-down"),
        Key::Escape => say!("key-esc"),
        Key::Delete => say!("key-del"),
        Key::Plus => "+",
        Key::Minus => "−",
        Key::Equals => "=",
        Key::Comma => ",",
        Key::Questionmark => "?",
        Key::OpenBracket => "[",
        Key::CloseBracket => "]",
        key => key.name(),
    };
    let command = if shortcut.modifiers.command { say!("key-ctrl") } else { "" };
    let alt = if shortcut.modifiers.alt { say!("key-alt") } else { "" };
    let shift = if shortcut.modifiers.shift { say!("key-shift") } else { "" };
    format!("{command}{alt}{shift}{key}")
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn where_single_keys_are_off_they_want_alt_and_nothing_else_does() {
        assert_eq!(Command::TogglePin.key_text(true).as_deref(), Some("P"));
        assert_eq!(Command::TogglePin.key_text(false).as_deref(), Some("Alt+P"));
        assert_eq!(Command::NextKnot.key_text(false).as_deref(), Some("Alt+]"));
        for command in [Command::Undo, Command::NextRound, Command::LetGo, Command::RemoveKnot]
        {
            assert_eq!(command.key_text(false), command.key_text(true), "{command:?}");
        }
        for command in Command::ALL {
            for key in command.shortcuts() {
                let key = asked(key, false);
                let letter = key.logical_key.name().chars().count() == 1;
                assert!(!letter || !key.modifiers.is_none(), "{command:?}");
            }
        }
    }

    #[test]
    fn second_keys_are_nobody_elses() {
        for a in Command::ALL {
            let Some(other) = a.other_shortcut() else { continue };
            for b in Command::ALL {
                assert_ne!(b.shortcut(), Some(other), "{a:?} and {b:?}");
                assert!(a == b || b.other_shortcut() != Some(other), "{a:?} and {b:?}");
            }
        }
    }
}
