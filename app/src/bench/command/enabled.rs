//! When commands can be used.

use plumpline_core::making::Stand;
use plumpline_core::project::sheet_design::MOST_PHOTOS;

use super::{Command, MakeCommand, SheetCommand};
use crate::bench::Bench;
use crate::view::Stage;

impl Command {
    /// Whether it could be used, were no file read or written: whoever asks for it is told.
    pub fn waits_for_a_file(self, bench: &Bench<'_>) -> bool {
        bench.busy && !self.enabled(bench) && self.enabled(&Bench { busy: false, ..*bench })
    }

    /// Whether it can be used now.
    pub fn enabled(self, bench: &Bench<'_>) -> bool {
        let shaping = bench.view.stage == Stage::Shape && bench.plan.is_some();
        let teaches = bench.view.stage == Stage::Lesson;
        let history = &bench.document.history;
        match self {
            Self::New | Self::Open | Self::SaveAs | Self::OpenPattern => !bench.busy,
            // One that asks for no path waits its turn by itself.
            Self::Save => match bench.document.path() {
                Some(_) => bench.document.is_changed() || bench.proofreading.is_unkept(),
                None => !bench.busy,
            },
            Self::Undo => history.can_undo() && !history.in_gesture(),
            Self::Redo => history.can_redo() && !history.in_gesture(),
            Self::ToggleTheme
            | Self::ShowShape
            | Self::ShowAssembly
            | Self::ShowSizes
            | Self::ShowSheet
            | Self::ShowLesson
            | Self::ShowProofread
            | Self::PastePattern
            | Self::ShowMake
            | Self::ShowSettings
            | Self::ShowKeys => true,
            Self::LargerText => {
                bench.view.prefs.stepped(1) != bench.view.prefs && !bench.view.is_dragging()
            }
            Self::SmallerText => {
                bench.view.prefs.stepped(-1) != bench.view.prefs && !bench.view.is_dragging()
            }
            Self::UsualText => !bench.view.is_dragging(),
            Self::CopyPattern => !bench.proofreading.text().is_empty(),
            Self::SavePattern => !bench.proofreading.text().is_empty() && !bench.busy,
            Self::MakePiece => {
                bench.proofreading.checked().is_some_and(|c| c.summary.rounds > 1)
            }
            Self::CopySheet | Self::CopyScript | Self::CopyBlurb => bench.error.is_none(),
            Self::SaveBody | Self::SaveTurning => bench.plan.is_some() && !bench.busy,
            Self::SaveSheet => bench.error.is_none() && !bench.busy,
            Self::Sheet(sheet) => sheet.enabled(bench),
            Self::PreviousRound | Self::NextRound | Self::FirstRound | Self::LastRound => {
                shaping
            }
            Self::LetGo if bench.view.stage == Stage::Assembly => {
                bench.view.toy.taken.is_some()
            }
            Self::LetGo if bench.view.stage == Stage::Lesson => {
                bench.view.lesson.presents || bench.view.lesson.round.is_some()
            }
            Self::LetGo if bench.view.presents() => true,
            Self::LetGo => bench.view.holds_something() || bench.view.board.picture,
            Self::NextLoop => {
                // A first round is worked into a ring or a chain, which have no loops.
                let later = bench.view.current_round().is_some_and(|r| r > 1);
                shaping && later && !bench.view.is_dragging()
            }
            Self::CopyRound => shaping && bench.view.current_round().is_some(),
            Self::LessonBack => teaches && bench.view.lesson.step > 0,
            Self::LessonNext => {
                teaches && bench.view.lesson.step < bench.lesson.course().steps.len()
            }
            Self::Present => teaches || shaping,
            Self::HideNumbers => teaches || bench.view.presents(),
            Self::LessonStop => teaches,
            Self::PrintStep => {
                teaches
                    && !bench.busy
                    && bench.view.lesson.step < bench.lesson.course().steps.len()
            }
            Self::PrintLesson | Self::OpenCourse | Self::SaveCourse => teaches && !bench.busy,
            Self::LessonProject => teaches,
            Self::Make(make) => make.enabled(bench),
            Self::TogglePin
            | Self::MoreStitches
            | Self::FewerStitches
            | Self::NextKind
            | Self::TogglePlain => {
                shaping && bench.view.current_round().is_some() && !bench.view.is_dragging()
            }
            Self::PreviousKnot | Self::NextKnot => {
                bench.view.stage == Stage::Shape && !bench.view.is_dragging()
            }
            Self::RemoveKnot => {
                let enough = bench.document.piece().outline.knots.len() > 3;
                let shaping = bench.view.stage == Stage::Shape;
                shaping && enough && bench.holds_inner_knot() && !bench.view.is_dragging()
            }
            Self::FitView => bench.view.stage == Stage::Shape && !bench.view.is_dragging(),
            Self::ToggleMagnet => bench.view.stage == Stage::Shape,
            Self::ChoosePicture => !bench.busy,
            Self::TracePicture => bench.picture.texture().is_some(),
            Self::ToggleCorner => bench.view.stage == Stage::Shape && bench.view.knot.is_some(),
        }
    }
}

impl SheetCommand {
    /// Whether it can be used now.
    pub fn enabled(self, bench: &Bench<'_>) -> bool {
        let changes = bench.printing.changes().is_some_and(|(_, c)| !c.lines.is_empty());
        match self {
            Self::WebPage | Self::Text | Self::Picture | Self::Print | Self::Compare => {
                bench.error.is_none() && !bench.busy
            }
            Self::AddPhoto => {
                !bench.busy && bench.document.project().sheet.photos.len() < MOST_PHOTOS
            }
            Self::ChooseLogo => !bench.busy,
            Self::OpenIt => bench.printing.written().is_some(),
            Self::CopyChanges | Self::PutChanges => changes,
        }
    }
}

impl MakeCommand {
    /// Whether it can be used now.
    pub fn enabled(self, bench: &Bench<'_>) -> bool {
        if bench.view.stage != Stage::Make {
            return false;
        }
        if self == Self::Small {
            return true;
        }
        let project = bench.document.project();
        let under = bench.making.under();
        let sizes = || project.pieces.iter().any(|piece| !piece.sizes.is_empty());
        let Some(stand) = bench.making.stand(project, under) else {
            return self == Self::Other || (self == Self::Size && sizes());
        };
        let begun = bench.making.begun(project, under);
        match self {
            Self::Size => sizes(),
            // The fields of the last two stand beside a round's words and stitches.
            Self::Stitch | Self::Repeat | Self::Round | Self::Find | Self::Note => {
                matches!(stand, Stand::Stitch { .. })
            }
            Self::Small => true,
            Self::Done => matches!(stand, Stand::Stop(_)),
            Self::Back => {
                bench.making.has_trail() || begun.is_some_and(|p| p.round > 1 || p.done > 0)
            }
            Self::Other => project.pieces.iter().map(|p| p.copies).sum::<u32>() > 1,
        }
    }
}
