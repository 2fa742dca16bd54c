//! The desktop's dialogs for files.

use std::path::Path;

use super::purpose::{OwnPictureUse, Purpose};
use crate::work::shape_file::ShapeKind;
use crate::work::{pattern_file, picture};

/// The dialog that asks for a file for this purpose; `suggested` is where it begins.
pub(super) fn dialog(purpose: &Purpose, suggested: &Path) -> rfd::FileDialog {
    let dialog = rfd::FileDialog::new().set_title(title(purpose));
    let dialog = match purpose {
        Purpose::Picture | Purpose::OwnPicture(_) => {
            dialog.add_filter("PNG, JPEG or WebP", &picture::ENDINGS)
        }
        Purpose::Shape => {
            let all = [&picture::ENDINGS[..], &ShapeKind::PROFILES[..]].concat();
            dialog.add_filter("Pictures, drawings, tables and solids", &all)
        }
        Purpose::Pattern => {
            dialog.add_filter("Text, page, document or PDF", &pattern_file::ENDINGS)
        }
        Purpose::SavePattern(_) => {
            dialog.add_filter("Plain text", &["txt"]).add_filter("Markdown", &["md"])
        }
        Purpose::Body(_) => dialog.add_filter("PNG", &["png"]),
        Purpose::Lesson(_) => dialog.add_filter("PDF", &["pdf"]),
        Purpose::SaveCourse(_) | Purpose::Course => dialog.add_filter("Course", &["ron"]),
        Purpose::Sheet(sheet) => {
            // The one that was asked for comes first.
            let mut kinds = SHEETS;
            kinds.sort_by_key(|(_, ending)| *ending != sheet.form.ending());
            kinds.iter().fold(dialog, |dialog, (name, ending)| {
                dialog.add_filter(*name, std::slice::from_ref(ending))
            })
        }
        _ => dialog.add_filter("Plumpline project", &["ron"]),
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
const SHEETS: [(&str, &str); 7] = [
    ("PDF", "pdf"),
    ("Web page", "html"),
    ("Plain text", "txt"),
    ("Markdown", "md"),
    ("Picture of the first page", "png"),
    ("Captions, SubRip", "srt"),
    ("Captions, WebVTT", "vtt"),
];

fn title(purpose: &Purpose) -> &'static str {
    match purpose {
        Purpose::Open => "Open a project",
        Purpose::Pattern => "Open a written pattern",
        Purpose::Picture => "Choose a picture to trace",
        Purpose::Shape => "Choose a file with a shape in it",
        Purpose::SavePattern(_) => "Save the written pattern",
        Purpose::Sheet(..) => "Save the pattern",
        Purpose::OwnPicture(OwnPictureUse::Photo) => "Choose a photograph",
        Purpose::OwnPicture(OwnPictureUse::Logo) => "Choose a logo",
        Purpose::Published(_) => "Open the published version",
        Purpose::Body(_) => "Save the picture of the body",
        Purpose::Lesson(_) => "Print the lesson as a PDF",
        Purpose::SaveCourse(_) => "Save the course",
        Purpose::Course => "Open a course",
        _ => "Save the project",
    }
}
