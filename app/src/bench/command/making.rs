//! The commands of the Make stage. Each has a key of its own, so that it can be worked by
//! keyboard alone; a key that is held down counts once.

use egui::Key;
use plumpline_core::making::By;

use crate::work::making::Make;

/// Something a person can ask for in the Make stage by button or key.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum MakeCommand {
    /// One stitch is worked.
    Stitch,
    /// The repeat is worked to its end.
    Repeat,
    /// The round is worked to its end.
    Round,
    /// Take the last step back.
    Back,
    /// What the stop asks for is done.
    Done,
    /// The next copy or piece.
    Other,
    /// The next size.
    Size,
    /// Go to a round.
    Find,
    /// Write a note.
    Note,
    /// The round and its steps in a small window that stays on top.
    Small,
}

impl MakeCommand {
    /// The words on its button.
    pub fn text(self) -> &'static str {
        match self {
            Self::Stitch => say!("making-stitch"),
            Self::Repeat => say!("making-repeat"),
            Self::Round => say!("making-round"),
            Self::Back => say!("making-back"),
            Self::Done => say!("making-done"),
            Self::Other => say!("making-other-piece"),
            Self::Size => say!("making-other-size"),
            Self::Find => say!("making-go-to"),
            Self::Note => say!("making-note"),
            Self::Small => say!("making-small"),
        }
    }

    /// One sentence on what it does.
    pub fn tooltip(self) -> &'static str {
        match self {
            Self::Stitch => say!("making-stitch-does"),
            Self::Repeat => say!("making-repeat-does"),
            Self::Round => say!("making-round-does"),
            Self::Back => say!("making-back-does"),
            Self::Done => say!("making-done-does"),
            Self::Other => say!("making-other-does"),
            Self::Size => say!("making-size-does"),
            Self::Find => say!("making-find-does"),
            Self::Note => say!("making-note-does"),
            Self::Small => {
                say!("making-small-does")
            }
        }
    }

    /// Its key.
    pub const fn key(self) -> Key {
        match self {
            Self::Stitch => Key::Space,
            Self::Repeat => Key::R,
            Self::Round => Key::N,
            Self::Back => Key::Backspace,
            Self::Done => Key::Enter,
            Self::Other => Key::O,
            Self::Size => Key::S,
            Self::Find => Key::G,
            Self::Note => Key::W,
            Self::Small => Key::B,
        }
    }

    /// What it asks for.
    pub const fn asks(self) -> Make {
        match self {
            Self::Stitch => Make::Step(By::Stitch),
            Self::Repeat => Make::Step(By::Repeat),
            Self::Round => Make::Step(By::Round),
            Self::Back => Make::Back,
            Self::Done => Make::Done,
            Self::Other => Make::Other,
            Self::Size => Make::NextSize,
            Self::Find => Make::Find(Some(String::new())),
            Self::Note => Make::Write(true),
            Self::Small => Make::Small,
        }
    }
}
