//! The desktop's dialogs for files.

use std::path::Path;

use super::purpose::Purpose;
use crate::work::shape_file::ShapeKind;
use crate::work::{pattern_file, picture};

/// The dialog that asks for a file for this purpose; `suggested` is where it begins.
pub(super) fn dialog(purpose: &Purpose, suggested: &Path) -> rfd::FileDialog {
    let dialog = rfd::FileDialog::new().set_title(title(purpose));
    let dialog = match purpose {
        Purpose::Picture => dialog.add_filter("PNG, JPEG or WebP", &picture::ENDINGS),
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
        Purpose::Sheet(..) => dialog
            .add_filter("PDF", &["pdf"])
            .add_filter("Page for a browser", &["html"])
            .add_filter("Markdown", &["md"])
            .add_filter("Plain text", &["txt"])
            .add_filter("Picture of the first page", &["png"]),
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

fn title(purpose: &Purpose) -> &'static str {
    match purpose {
        Purpose::Open => "Open a project",
        Purpose::Pattern => "Open a written pattern",
        Purpose::Picture => "Choose a picture to trace",
        Purpose::Shape => "Choose a file with a shape in it",
        Purpose::SavePattern(_) => "Save the written pattern",
        Purpose::Sheet(..) => "Save the pattern",
        Purpose::Body(_) => "Save the picture of the body",
        Purpose::Lesson(_) => "Print the lesson as a PDF",
        Purpose::SaveCourse(_) => "Save the course",
        Purpose::Course => "Open a course",
        _ => "Save the project",
    }
}
