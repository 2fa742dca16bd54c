//! Every command of the studio: its words, its key, and when it can be used.

mod enabled;
mod keys;
mod making;
mod publishing;
mod words;

pub use keys::asked;
pub use making::MakeCommand;
pub use publishing::SheetCommand;

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
    /// Show the pieces put together.
    ShowAssembly,
    /// Show the sizes of the piece.
    ShowSizes,
    /// Show the pattern.
    ShowSheet,
    /// Show someone's written pattern, checked.
    ShowProofread,
    /// Open a written pattern.
    OpenPattern,
    /// Paste a written pattern from the clipboard.
    PastePattern,
    /// Copy the written pattern as it is now.
    CopyPattern,
    /// Save the written pattern as it is now.
    SavePattern,
    /// Make a piece of the written pattern.
    MakePiece,
    /// Copy the pattern.
    CopySheet,
    /// Copy the pattern as it is said.
    CopyScript,
    /// Copy what a shop says of the pattern.
    CopyBlurb,
    /// Save the sheet.
    SaveSheet,
    /// A command of the Sheet stage.
    Sheet(SheetCommand),
    /// Save the picture of the body.
    SaveBody,
    /// Save a picture of the body that turns.
    SaveTurning,
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
    /// Copy the line of the selected round.
    CopyRound,
    /// Pin the selected round, or remove its pin.
    TogglePin,
    /// One stitch more in the selected round.
    MoreStitches,
    /// One stitch fewer.
    FewerStitches,
    /// Take the knot before.
    PreviousKnot,
    /// Take the next knot.
    NextKnot,
    /// Remove the selected knot.
    RemoveKnot,
    /// Make the selected knot a corner, or smooth.
    ToggleCorner,
    /// The next kind of stitch from the selected round on.
    NextKind,
    /// The next loop for the selected round.
    NextLoop,
    /// Keep the selected round plain, or let it be shaped.
    TogglePlain,
    /// Show the whole piece on the outline board.
    FitView,
    /// Let knots snap, or not.
    ToggleMagnet,
    /// Choose a picture to trace.
    ChoosePicture,
    /// Find the outline in the picture.
    TracePicture,
    /// Show why an increase bends cloth.
    ShowLesson,
    /// Go to the step before in the lesson.
    LessonBack,
    /// Go to the next step.
    LessonNext,
    /// Hide numbers, or show them.
    HideNumbers,
    /// Fill the window with the lesson, or not.
    Present,
    /// Hold cloth that settles where it is, or let it go on.
    LessonStop,
    /// Print the step that is shown.
    PrintStep,
    /// Print every step.
    PrintLesson,
    /// Begin a project with the lesson's samples.
    LessonProject,
    /// Teach another course.
    OpenCourse,
    /// Save the course.
    SaveCourse,
    /// Show the round under the hook.
    ShowMake,
    /// A command of the Make stage.
    Make(MakeCommand),
    /// Show what is settled for every project.
    ShowSettings,
    /// Show every command with its key.
    ShowKeys,
    /// Make text and all that holds it larger.
    LargerText,
    /// Make it smaller.
    SmallerText,
    /// Make it its usual size.
    UsualText,
}

/// What commands have to do with, for lists of them.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum Group {
    /// Files, steps, the window.
    Project,
    /// What the window shows.
    Stages,
    /// The selected round.
    Rounds,
    /// The outline board and its knots.
    Board,
    /// The pattern, and anyone's pattern.
    Pattern,
    /// The lesson.
    Lesson,
    /// The round under the hook.
    Make,
    /// How the bench looks and is worked.
    Bench,
}

impl Group {
    /// All of them, in the order of lists.
    pub const ALL: [Self; 8] = [
        Self::Project,
        Self::Stages,
        Self::Rounds,
        Self::Board,
        Self::Pattern,
        Self::Lesson,
        Self::Make,
        Self::Bench,
    ];

    /// The heading over its commands.
    pub fn text(self) -> &'static str {
        match self {
            Self::Project => say!("group-project"),
            Self::Stages => say!("group-stages"),
            Self::Rounds => say!("group-rounds"),
            Self::Board => say!("group-outline-board"),
            Self::Pattern => say!("group-pattern"),
            Self::Lesson => say!("group-lesson"),
            Self::Make => say!("group-make"),
            Self::Bench => say!("group-studio"),
        }
    }
}

impl Command {
    /// Every command. Keys with more modifiers come first: egui ignores an extra Shift.
    pub const ALL: [Self; 80] = [
        Self::SaveAs,
        Self::Redo,
        Self::New,
        Self::Open,
        Self::Save,
        Self::Undo,
        Self::ToggleTheme,
        Self::ShowShape,
        Self::ShowAssembly,
        Self::ShowSizes,
        Self::ShowSheet,
        Self::ShowProofread,
        Self::OpenPattern,
        Self::PastePattern,
        Self::CopyPattern,
        Self::SavePattern,
        Self::MakePiece,
        Self::CopySheet,
        Self::CopyScript,
        Self::CopyBlurb,
        Self::SaveSheet,
        Self::Sheet(SheetCommand::WebPage),
        Self::Sheet(SheetCommand::Text),
        Self::Sheet(SheetCommand::Picture),
        Self::Sheet(SheetCommand::Print),
        Self::Sheet(SheetCommand::OpenIt),
        Self::Sheet(SheetCommand::AddPhoto),
        Self::Sheet(SheetCommand::ChooseLogo),
        Self::Sheet(SheetCommand::Compare),
        Self::Sheet(SheetCommand::CopyChanges),
        Self::Sheet(SheetCommand::PutChanges),
        Self::SaveBody,
        Self::SaveTurning,
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
        Self::TracePicture,
        Self::ShowLesson,
        Self::LessonBack,
        Self::LessonNext,
        Self::HideNumbers,
        Self::Present,
        Self::LessonStop,
        Self::PrintStep,
        Self::PrintLesson,
        Self::LessonProject,
        Self::OpenCourse,
        Self::SaveCourse,
        Self::ShowMake,
        Self::Make(MakeCommand::Stitch),
        Self::Make(MakeCommand::Repeat),
        Self::Make(MakeCommand::Round),
        Self::Make(MakeCommand::Back),
        Self::Make(MakeCommand::Done),
        Self::Make(MakeCommand::Other),
        Self::Make(MakeCommand::Size),
        Self::Make(MakeCommand::Find),
        Self::Make(MakeCommand::Note),
        Self::Make(MakeCommand::Small),
        Self::ShowSettings,
        Self::ShowKeys,
        Self::LargerText,
        Self::SmallerText,
        Self::UsualText,
    ];

    /// What it has to do with.
    pub const fn group(self) -> Group {
        match self {
            Self::New | Self::Open | Self::Save | Self::SaveAs | Self::Undo | Self::Redo => {
                Group::Project
            }
            Self::ShowShape
            | Self::ShowAssembly
            | Self::ShowSizes
            | Self::ShowSheet
            | Self::ShowLesson
            | Self::ShowProofread
            | Self::ShowMake
            | Self::Present
            | Self::HideNumbers => Group::Stages,
            Self::LessonBack
            | Self::LessonNext
            | Self::LessonStop
            | Self::PrintStep
            | Self::PrintLesson
            | Self::LessonProject
            | Self::OpenCourse
            | Self::SaveCourse => Group::Lesson,
            Self::Make(_) => Group::Make,
            Self::PreviousRound
            | Self::NextRound
            | Self::FirstRound
            | Self::LastRound
            | Self::LetGo
            | Self::CopyRound
            | Self::TogglePin
            | Self::MoreStitches
            | Self::FewerStitches
            | Self::NextKind
            | Self::NextLoop
            | Self::TogglePlain => Group::Rounds,
            Self::PreviousKnot
            | Self::NextKnot
            | Self::RemoveKnot
            | Self::ToggleCorner
            | Self::FitView
            | Self::ToggleMagnet
            | Self::ChoosePicture
            | Self::TracePicture => Group::Board,
            Self::OpenPattern
            | Self::PastePattern
            | Self::CopyPattern
            | Self::SavePattern
            | Self::MakePiece
            | Self::CopySheet
            | Self::CopyScript
            | Self::CopyBlurb
            | Self::SaveSheet
            | Self::Sheet(_)
            | Self::SaveBody
            | Self::SaveTurning => Group::Pattern,
            Self::ToggleTheme
            | Self::ShowSettings
            | Self::ShowKeys
            | Self::LargerText
            | Self::SmallerText
            | Self::UsualText => Group::Bench,
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
    fn words_tell_commands_apart() {
        for (i, a) in Command::ALL.iter().enumerate() {
            for b in &Command::ALL[i + 1..] {
                assert_ne!(a.text(), b.text(), "{a:?} and {b:?}");
            }
        }
    }

    #[test]
    fn every_group_has_commands() {
        for group in Group::ALL {
            assert!(Command::ALL.iter().any(|c| c.group() == group), "{group:?}");
        }
    }

    #[test]
    fn keys_with_shift_are_tried_first() {
        let at = |c: Command| Command::ALL.iter().position(|&x| x == c);
        assert!(at(Command::SaveAs) < at(Command::Save));
        assert!(at(Command::Redo) < at(Command::Undo));
    }
}
