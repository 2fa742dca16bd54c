//! Commands in words.

use super::Command;

impl Command {
    /// The words on menus and buttons.
    pub fn text(self) -> &'static str {
        match self {
            Self::New => say!("command-new"),
            Self::Open => say!("command-open"),
            Self::Save => say!("command-save"),
            Self::SaveAs => say!("command-save-as"),
            Self::Undo => say!("command-undo"),
            Self::Redo => say!("command-redo"),
            Self::ToggleTheme => say!("command-light-or-dark"),
            Self::ShowShape => say!("command-shape"),
            Self::ShowAssembly => say!("command-assembly"),
            Self::ShowSizes => say!("command-sizes"),
            Self::ShowSheet => say!("command-sheet"),
            Self::ShowProofread => say!("command-proofread"),
            Self::OpenPattern => say!("command-open-pattern"),
            Self::PastePattern => say!("command-paste"),
            Self::CopyPattern => say!("command-copy-the-text"),
            Self::SavePattern => say!("command-save-the-text"),
            Self::MakePiece => say!("command-make-a-piece-of-it"),
            Self::CopySheet => say!("command-copy"),
            Self::CopyScript => say!("command-copy-the-spoken-script"),
            Self::CopyBlurb => say!("command-copy-the-shop-text"),
            Self::SaveSheet => "PDF…",
            Self::Sheet(sheet) => sheet.text(),
            Self::SaveBody => say!("command-export-picture"),
            Self::SaveTurning => say!("command-export-turning"),
            Self::PreviousRound => say!("command-previous-round"),
            Self::NextRound => say!("command-next-round"),
            Self::FirstRound => say!("command-first-round"),
            Self::LastRound => say!("command-last-round"),
            Self::LetGo => say!("command-deselect"),
            Self::CopyRound => say!("command-copy-line"),
            Self::TogglePin => say!("command-pin"),
            Self::MoreStitches => say!("command-one-stitch-more"),
            Self::FewerStitches => say!("command-one-stitch-fewer"),
            Self::PreviousKnot => say!("command-previous-knot"),
            Self::NextKnot => say!("command-next-knot"),
            Self::RemoveKnot => say!("command-remove-knot"),
            Self::ToggleCorner => say!("command-corner"),
            Self::NextKind => say!("command-next-stitch"),
            Self::NextLoop => say!("command-next-loop"),
            Self::TogglePlain => say!("command-plain"),
            Self::FitView => say!("command-fit-view"),
            Self::ToggleMagnet => say!("command-magnet"),
            Self::ChoosePicture => say!("command-picture"),
            Self::TracePicture => say!("command-trace"),
            Self::ShowLesson => say!("command-lesson"),
            Self::LessonBack => say!("command-previous-step"),
            Self::LessonNext => say!("command-next-step"),
            Self::HideNumbers => say!("command-hide-numbers"),
            Self::Present => say!("command-present"),
            Self::LessonStop => say!("command-stop-or-continue"),
            Self::PrintStep => say!("command-print-this-step"),
            Self::PrintLesson => say!("command-print-every-step-for-a-class"),
            Self::LessonProject => say!("command-make-a-project-of-the-lesson"),
            Self::OpenCourse => say!("command-open-a-course"),
            Self::SaveCourse => say!("command-save-the-course-to-change-it"),
            Self::ShowMake => say!("command-make"),
            Self::Make(make) => make.text(),
            Self::ShowSettings => say!("command-settings"),
            Self::ShowKeys => say!("command-keys"),
            Self::LargerText => say!("command-larger-text"),
            Self::SmallerText => say!("command-smaller-text"),
            Self::UsualText => say!("command-usual-text"),
        }
    }

    /// One sentence on what it does.
    pub fn tooltip(self) -> &'static str {
        match self {
            Self::New => say!("command-new-does"),
            Self::Open => say!("command-open-does"),
            Self::Save => say!("command-save-does"),
            Self::SaveAs => say!("command-save-as-does"),
            Self::Undo => say!("command-undo-does"),
            Self::Redo => say!("command-redo-does"),
            Self::ToggleTheme => say!("command-theme-does"),
            Self::ShowShape => say!("command-shape-does"),
            Self::ShowAssembly => say!("command-assembly-does"),
            Self::ShowSizes => {
                say!("command-sizes-does")
            }
            Self::ShowSheet => say!("command-sheet-does"),
            Self::ShowProofread => say!("command-proofread-does"),
            Self::OpenPattern => {
                say!("command-open-pattern-does")
            }
            Self::PastePattern => say!("command-paste-pattern-does"),
            Self::CopyPattern => say!("command-copy-pattern-does"),
            Self::SavePattern => say!("command-save-pattern-does"),
            Self::MakePiece => {
                say!("command-make-piece-does")
            }
            Self::CopySheet => say!("command-copy-sheet-does"),
            Self::CopyScript => say!("command-copy-script-does"),
            Self::CopyBlurb => say!("command-copy-blurb-does"),
            Self::Sheet(sheet) => sheet.tooltip(),
            Self::SaveSheet => {
                say!("command-save-sheet-does")
            }
            Self::SaveBody => {
                say!("command-save-body-does")
            }
            Self::SaveTurning => say!("command-save-turning-does"),
            Self::PreviousRound => say!("command-previous-round-does"),
            Self::NextRound => say!("command-next-round-does"),
            Self::FirstRound => say!("command-first-round-does"),
            Self::LastRound => say!("command-last-round-does"),
            Self::LetGo => say!("command-deselect-does"),
            Self::CopyRound => say!("command-copy-round-does"),
            Self::TogglePin => say!("command-pin-does"),
            Self::MoreStitches => say!("command-more-stitches-does"),
            Self::FewerStitches => say!("command-fewer-stitches-does"),
            Self::PreviousKnot => say!("command-previous-knot-does"),
            Self::NextKnot => say!("command-next-knot-does"),
            Self::RemoveKnot => say!("command-remove-knot-does"),
            Self::ToggleCorner => say!("command-corner-does"),
            Self::NextKind => say!("command-next-kind-does"),
            Self::NextLoop => say!("command-next-loop-does"),
            Self::TogglePlain => say!("command-plain-does"),
            Self::FitView => say!("command-fit-does"),
            Self::ToggleMagnet => {
                say!("command-magnet-does")
            }
            Self::TracePicture => {
                say!("command-trace-does")
            }
            Self::ChoosePicture => say!("command-picture-does"),
            Self::ShowLesson => say!("command-lesson-does"),
            Self::LessonBack => say!("command-lesson-back-does"),
            Self::LessonNext => {
                say!("command-lesson-next-does")
            }
            Self::HideNumbers => {
                say!("command-lesson-numbers-does")
            }
            Self::Present => {
                say!("command-lesson-present-does")
            }
            Self::LessonStop => say!("command-lesson-stop-does"),
            Self::PrintStep => {
                say!("command-print-step-does")
            }
            Self::PrintLesson => {
                say!("command-print-lesson-does")
            }
            Self::LessonProject => {
                say!("command-lesson-project-does")
            }
            Self::OpenCourse => {
                say!("command-open-course-does")
            }
            Self::SaveCourse => say!("command-save-course-does"),
            Self::ShowMake => say!("command-make-does"),
            Self::Make(make) => make.tooltip(),
            Self::ShowSettings => say!("command-settings-does"),
            Self::ShowKeys => say!("command-keys-does"),
            Self::LargerText => say!("command-larger-does"),
            Self::SmallerText => say!("command-smaller-does"),
            Self::UsualText => say!("command-usual-does"),
        }
    }
}
