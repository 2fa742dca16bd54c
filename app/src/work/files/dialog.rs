//! The desktop's dialogs for files.

use std::path::Path;

use super::purpose::{OwnPictureUse, Purpose};
use crate::kit::words::MessageKey;
use crate::work::shape_file::ShapeKind;
use crate::work::{pattern_file, picture};

/// The dialog that asks for a file for this purpose; `suggested` is where it begins.
pub(super) fn dialog(purpose: &Purpose, suggested: &Path) -> rfd::FileDialog {
    let dialog = rfd::FileDialog::new().set_title(title(purpose));
    let dialog = match purpose {
        Purpose::Picture | Purpose::OwnPicture(_) => {
            dialog.add_filter(say!("dialog-png-jpeg-or-webp"), &picture::ENDINGS)
        }
        Purpose::Shape => {
            let all = [&picture::ENDINGS[..], &ShapeKind::PROFILES[..]].concat();
            dialog.add_filter(say!("dialog-pictures-drawings-tables-and-solids"), &all)
        }
        Purpose::Pattern => {
            dialog.add_filter(say!("dialog-text-page-document-or-pdf"), &pattern_file::ENDINGS)
        }
        Purpose::SavePattern(_) => dialog
            .add_filter(say!("dialog-plain-text"), &["txt"])
            .add_filter("Markdown", &["md"]),
        Purpose::Body(_) => dialog.add_filter("PNG", &["png"]),
        Purpose::Lesson(_) => dialog.add_filter("PDF", &["pdf"]),
        Purpose::SaveCourse(_) | Purpose::Course => {
            dialog.add_filter(say!("dialog-course"), &["ron"])
        }
        Purpose::Sheet(sheet) => {
            // The one that was asked for comes first.
            let mut kinds = SHEETS;
            kinds.sort_by_key(|(_, ending)| *ending != sheet.form.ending());
            kinds.iter().fold(dialog, |dialog, (name, ending)| {
                dialog.add_filter(name.text(), std::slice::from_ref(ending))
            })
        }
        _ => dialog.add_filter(say!("dialog-plumpline-project"), &["ron"]),
    };
    let dialog = match suggested.parent() {
        Some(folder) if folder.is_dir() => dialog.set_directory(folder),
        _ => dialog,
    };
    match suggested.file_name() {
        Some(name) if !purpose.reads() => dialog.set_file_name(name.to_string_lossy()),
        _ => dialog,
    }
}

/// What a sheet can be written as, with the ending of each.
const SHEETS: [(MessageKey, &str); 7] = [
    (message!("dialog-pdf"), "pdf"),
    (message!("dialog-web-page"), "html"),
    (message!("dialog-plain-text"), "txt"),
    (message!("dialog-markdown"), "md"),
    (message!("dialog-picture-of-the-first-page"), "png"),
    (message!("dialog-captions-subrip"), "srt"),
    (message!("dialog-captions-webvtt"), "vtt"),
];

fn title(purpose: &Purpose) -> &'static str {
    match purpose {
        Purpose::Open => say!("dialog-open-a-project"),
        Purpose::Pattern => say!("dialog-open-a-written-pattern"),
        Purpose::Picture => say!("dialog-choose-a-picture-to-trace"),
        Purpose::Shape => say!("dialog-choose-a-file-with-a-shape-in-it"),
        Purpose::SavePattern(_) => say!("dialog-save-the-written-pattern"),
        Purpose::Sheet(..) => say!("dialog-export-the-sheet"),
        Purpose::OwnPicture(OwnPictureUse::Photo) => say!("dialog-choose-a-photograph"),
        Purpose::OwnPicture(OwnPictureUse::Logo) => say!("dialog-choose-a-logo"),
        Purpose::Published(_) => say!("dialog-open-the-published-version"),
        Purpose::Body(_) => say!("dialog-export-the-picture-of-the-body"),
        Purpose::Lesson(_) => say!("dialog-print-the-lesson-as-a-pdf"),
        Purpose::SaveCourse(_) => say!("dialog-save-the-course"),
        Purpose::Course => say!("dialog-open-a-course"),
        _ => say!("dialog-save-the-project"),
    }
}
