//! The commands of the Sheet stage beside saving and copying the pattern.

/// Something a person can ask for in the Sheet stage.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum SheetCommand {
    /// Save the sheet as a page for a browser.
    WebPage,
    /// Save it as plain text.
    Text,
    /// Save a picture of its first page.
    Picture,
    /// Print it.
    Print,
    /// Open the file that was written last.
    OpenIt,
    /// Add a photograph.
    AddPhoto,
    /// Choose a logo.
    ChooseLogo,
    /// Say what has changed since a published version.
    Compare,
    /// Copy that.
    CopyChanges,
    /// Put that on the sheet.
    PutChanges,
}

impl SheetCommand {
    /// The words on its button.
    pub const fn text(self) -> &'static str {
        match self {
            Self::WebPage => "Web page…",
            Self::Text => "Text…",
            Self::Picture => "Page picture…",
            Self::Print => "Print…",
            Self::OpenIt => "Open it",
            Self::AddPhoto => "Add a photograph…",
            Self::ChooseLogo => "Choose a logo…",
            Self::Compare => "Compare with a published version…",
            Self::CopyChanges => "Copy the changes",
            Self::PutChanges => "Put the changes on the sheet",
        }
    }

    /// One sentence on what it does.
    pub const fn tooltip(self) -> &'static str {
        match self {
            Self::WebPage => {
                "Save the sheet as one page for a browser, to read beside the yarn"
            }
            Self::Text => "Save the whole pattern as plain text",
            Self::Picture => "Save a picture of the first page",
            Self::Print => "Open the pages in the system's viewer, which prints them",
            Self::OpenIt => "Open the file that was written last",
            Self::AddPhoto => "Add a photograph to the sheet: PNG, JPEG or WebP",
            Self::ChooseLogo => "Choose a logo for the head of the first page",
            Self::Compare => "Choose the project as it was published, to see what has changed",
            Self::CopyChanges => "Copy what has changed as an errata paragraph",
            Self::PutChanges => "Add what has changed to the sheet, in a section of its own",
        }
    }
}
