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
    pub fn text(self) -> &'static str {
        match self {
            Self::WebPage => say!("publish-web-page"),
            Self::Text => say!("publish-text"),
            Self::Picture => say!("publish-page-picture"),
            Self::Print => say!("publish-print"),
            Self::OpenIt => say!("publish-open-it"),
            Self::AddPhoto => say!("publish-add-a-photograph"),
            Self::ChooseLogo => say!("publish-choose-a-logo"),
            Self::Compare => say!("publish-compare-with-a-published-version"),
            Self::CopyChanges => say!("publish-copy-the-changes"),
            Self::PutChanges => say!("publish-put-the-changes-on-the-sheet"),
        }
    }

    /// One sentence on what it does.
    pub fn tooltip(self) -> &'static str {
        match self {
            Self::WebPage => {
                say!("publish-save-the-sheet-as-one-page-for-a")
            }
            Self::Text => say!("publish-save-the-whole-pattern-as-plain-text"),
            Self::Picture => say!("publish-save-a-picture-of-the-first-page"),
            Self::Print => say!("publish-open-the-pages-in-the-systems-viewer"),
            Self::OpenIt => say!("publish-open-the-file-that-was-written-last"),
            Self::AddPhoto => say!("publish-add-a-photograph-to-the-sheet-png-jpeg"),
            Self::ChooseLogo => say!("publish-choose-a-logo-for-the-head-of-the"),
            Self::Compare => say!("publish-choose-the-project-as-it-was-published"),
            Self::CopyChanges => say!("publish-copy-what-has-changed-as-an-errata"),
            Self::PutChanges => say!("publish-add-what-has-changed-to-the-sheet-in-a"),
        }
    }
}
