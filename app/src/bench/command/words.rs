//! Commands in words.

use super::Command;

impl Command {
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
            Self::ShowAssembly => "Assembly",
            Self::ShowSizes => "Sizes",
            Self::ShowSheet => "Sheet",
            Self::ShowProofread => "Proofread",
            Self::OpenPattern => "Open pattern…",
            Self::PastePattern => "Paste",
            Self::CopyPattern => "Copy the text",
            Self::SavePattern => "Save the text…",
            Self::MakePiece => "Make a piece of it",
            Self::CopySheet => "Copy",
            Self::CopyScript => "Copy the spoken script",
            Self::CopyBlurb => "Copy the shop text",
            Self::SaveSheet => "Save the sheet…",
            Self::SaveBody => "Save the picture…",
            Self::SaveTurning => "Save it turning…",
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
            Self::TracePicture => "Trace…",
            Self::ShowLesson => "Lesson",
            Self::LessonBack => "Previous step",
            Self::LessonNext => "Next step",
            Self::HideNumbers => "Hide numbers",
            Self::Present => "Present",
            Self::LessonStop => "Stop or let go on",
            Self::PrintStep => "Print this step…",
            Self::PrintLesson => "Print every step for a class…",
            Self::LessonProject => "Make a project of the lesson",
            Self::OpenCourse => "Open a course…",
            Self::SaveCourse => "Save the course to change it…",
            Self::ShowMake => "Make",
            Self::Make(make) => make.text(),
            Self::ShowSettings => "Settings…",
            Self::ShowKeys => "Keys…",
            Self::LargerText => "Larger text",
            Self::SmallerText => "Smaller text",
            Self::UsualText => "Usual text",
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
            Self::ShowAssembly => "Put the pieces together, see how the toy stands and hangs",
            Self::ShowSizes => {
                "Make the piece in other sizes, meet a companion, learn from a sample"
            }
            Self::ShowSheet => "Read the pattern",
            Self::ShowProofread => "Check a written pattern, anyone's",
            Self::OpenPattern => {
                "Open a written pattern: text, a web page, a document (.rtf, .docx) or a PDF"
            }
            Self::PastePattern => "Paste a written pattern from the clipboard",
            Self::CopyPattern => "Copy the written pattern as it is now, mends and all",
            Self::SavePattern => "Save the written pattern as it is now in a text file",
            Self::MakePiece => {
                "Add a piece with these counts, in the gauge of the piece in hand"
            }
            Self::CopySheet => "Copy the whole pattern as plain text",
            Self::CopyScript => "Copy the pattern as sentences to say, with the time of each",
            Self::CopyBlurb => "Copy size, level, materials and what is included, for a shop",
            Self::SaveSheet => {
                "Save the sheet as .pdf, .html, .md, .txt, a page as .png, or captions as .srt \
                 or .vtt"
            }
            Self::SaveBody => {
                "Save the body as it is turned now, as a picture on a clear ground"
            }
            Self::SaveTurning => "Save the body turning once around, as an animated picture",
            Self::PreviousRound => "Take the round before in hand",
            Self::NextRound => "Take the next round in hand",
            Self::FirstRound => "Take the first round in hand",
            Self::LastRound => "Take the last round in hand",
            Self::LetGo => "Let the round, the knot or the part in hand go",
            Self::CopyRound => "Copy the line of the round in hand as plain text",
            Self::TogglePin => "Hold this round's stitch count, or let it go",
            Self::MoreStitches => "Pin the round in hand at one stitch more",
            Self::FewerStitches => "Pin the round in hand at one stitch fewer",
            Self::PreviousKnot => "Take the knot before in hand",
            Self::NextKnot => "Take the next knot in hand",
            Self::RemoveKnot => "Remove the knot in hand; on the toy, the part",
            Self::ToggleCorner => "Let the outline turn sharply at this knot, or not",
            Self::NextKind => "Work in the next kind of stitch from the round in hand on",
            Self::NextLoop => "Work the round in hand into both loops, the front or the back",
            Self::TogglePlain => "Keep the round in hand free of shaping, or let it be shaped",
            Self::FitView => "Show the whole piece on the board",
            Self::ToggleMagnet => {
                "Knots snap to the axis, to one another and to whole mm or sixteenths of an \
                 inch; Alt suspends it"
            }
            Self::TracePicture => {
                "Find the outline in the picture, to look at before it is taken"
            }
            Self::ChoosePicture => "Choose a picture to trace: PNG, JPEG or WebP",
            Self::ShowLesson => "See and teach why an increase bends cloth",
            Self::LessonBack => "Go to the step of the lesson before this one",
            Self::LessonNext => {
                "Go to the next step of the lesson, after the last to your own piece"
            }
            Self::HideNumbers => {
                "Hide the numbers of what is taught, so that learners work them out, or show them"
            }
            Self::Present => {
                "Fill the window in large type, for a projector: the lesson, or outline, body and bend strip; Esc ends it"
            }
            Self::LessonStop => "Hold the cloth where it has come to, or let it settle further",
            Self::PrintStep => {
                "Save a page to work on with its answer on the back, and a page for the teacher, as a PDF"
            }
            Self::PrintLesson => {
                "Save the pages of all steps, and the teacher’s guide, as one PDF"
            }
            Self::LessonProject => {
                "Begin a project with a piece for each step, in your own stitches"
            }
            Self::OpenCourse => {
                "Teach from a file of your own, written like the one that is built in"
            }
            Self::SaveCourse => "Save the built-in course as a file, to write your own",
            Self::ShowMake => "Work the piece, one stitch after the other",
            Self::Make(make) => make.tooltip(),
            Self::ShowSettings => "Theme, units, text size, keys, and the side of the board",
            Self::ShowKeys => "Every command with its key, to search by typing",
            Self::LargerText => "Make text, and all that holds it, one step larger",
            Self::SmallerText => "Make text, and all that holds it, one step smaller",
            Self::UsualText => "Bring text back to its usual size",
        }
    }
}
