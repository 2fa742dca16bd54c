//! A path where the desktop shows no dialog for files: typed, or found folder by folder.

use std::path::{Path, PathBuf};

use egui::{Align2, RichText, Role, ScrollArea, Sense, TextEdit, Ui, WidgetInfo, vec2};
use plumpline_core::disk::FolderEntry;

use super::ask::{FileUse, Reply, heading};
use crate::kit::controls;
use crate::kit::icons::Icon;
use crate::kit::{Tokens, paint, type_faces};
use crate::work::folders::Folders;

/// Height of a line of the list, and of the list.
const LINE: f32 = 24.0;
const LIST: f32 = 190.0;

/// Where what is typed lies: the folder itself where it ends as one, else the one above.
pub(super) fn folder_of(from: Option<&Path>, typed: &str) -> PathBuf {
    let typed = typed.trim();
    let path = match from {
        Some(from) => from.join(typed),
        None => PathBuf::from(typed),
    };
    let whole = std::path::absolute(&path).unwrap_or(path);
    if typed.is_empty() || typed.ends_with(std::path::is_separator) {
        return whole;
    }
    whole.parent().map_or_else(|| whole.clone(), Path::to_owned)
}

/// What the question shows beside what is typed.
#[derive(Clone, Copy)]
pub(crate) struct Browsed<'a> {
    /// Where paths begin that do not begin at the root.
    pub(crate) from: Option<&'a Path>,
    pub(crate) folders: &'a Folders,
}

/// Asks for the path; returns the answer once there is one.
pub(super) fn show(
    ui: &mut Ui,
    wanted: &FileUse,
    text: &mut String,
    why: Option<&str>,
    browsed: Browsed<'_>,
) -> Option<Reply> {
    let saves = !wanted.purpose.reads();
    heading(ui, if saves { say!("ask-save-as") } else { say!("ask-where-is-the-file") });
    let label = ui.label(say!("ask-this-desktop-shows-no-file-dialog-type"));
    let field =
        ui.add(TextEdit::singleline(text).desired_width(f32::INFINITY)).labelled_by(label.id);
    // The keyboard is in the field until it goes on to the list by Tab.
    let elsewhere = ui.memory(|m| m.focused()).is_none_or(|id| {
        ui.ctx().read_response(id).is_none_or(|of| of.layer_id != ui.layer_id())
    });
    if elsewhere && !field.lost_focus() {
        field.request_focus();
    }
    let entered = field.lost_focus() && ui.input(|i| i.key_pressed(egui::Key::Enter));
    let t = Tokens::now(ui.ctx());
    if let Some(why) = why {
        ui.label(RichText::new(why).color(t.warning));
    }
    if let Some(chosen) = list(ui, wanted, text, browsed) {
        *text = chosen;
    }
    let verb = if saves { say!("ask-save") } else { say!("ask-open") };
    ui.horizontal(|ui| {
        let typed = !text.trim().is_empty() && !text.ends_with(std::path::is_separator);
        if (ui.add_enabled(typed, egui::Button::new(verb)).clicked() || entered) && typed {
            return Some(Reply::Path(wanted.clone(), PathBuf::from(text.trim())));
        }
        ui.button(say!("ask-cancel")).clicked().then_some(Reply::Cancel)
    })
    .inner
}

/// The folder above, the folders in this one, and its files of the kind that is wanted.
/// Returns what is to stand in the field.
fn list(ui: &mut Ui, wanted: &FileUse, text: &str, browsed: Browsed<'_>) -> Option<String> {
    let folder = folder_of(browsed.from, text);
    let t = Tokens::now(ui.ctx());
    ui.label(RichText::new(folder.display().to_string()).color(t.soft_ink).small());
    let mut chosen = None;
    controls::scroll_colours(ui);
    ScrollArea::vertical().max_height(LIST).min_scrolled_height(LIST).show(ui, |ui| {
        ui.reset_style();
        ui.spacing_mut().item_spacing.y = 0.0;
        if let Some(above) = folder.parent()
            && line(ui, say!("ask-up"), say!("ask-folder-above"), Some(Icon::Up))
        {
            chosen = Some(as_folder(above));
        }
        match browsed.folders.of(&folder) {
            None => {}
            Some(Err(why)) => {
                ui.label(RichText::new(why).color(t.soft_ink));
            }
            Some(Ok(entries)) => {
                for entry in entries.iter().filter(|entry| fits(entry, wanted)) {
                    let path = folder.join(&entry.name);
                    let (name, icon) = match entry.is_folder {
                        true => (say!("ask-folder", name = entry.name), Some(Icon::Right)),
                        false => (say!("ask-file", name = entry.name), None),
                    };
                    if line(ui, &entry.name, &name, icon) {
                        chosen = Some(match entry.is_folder {
                            true => as_folder(&path),
                            false => path.display().to_string(),
                        });
                    }
                }
            }
        }
        controls::follow_focus(ui);
    });
    chosen
}

/// Whether it is a folder, or a file that may be wanted.
fn fits(entry: &FolderEntry, wanted: &FileUse) -> bool {
    let endings = wanted.purpose.endings();
    let name = entry.name.to_lowercase();
    entry.is_folder || endings.iter().any(|ending| name.ends_with(&format!(".{ending}")))
}

fn as_folder(path: &Path) -> String {
    let mut text = path.display().to_string();
    if !text.ends_with(std::path::MAIN_SEPARATOR) {
        text.push(std::path::MAIN_SEPARATOR);
    }
    text
}

fn line(ui: &mut Ui, words: &str, name: &str, icon: Option<Icon>) -> bool {
    let t = Tokens::now(ui.ctx());
    let size = vec2(ui.available_width(), LINE);
    let (rect, response) = ui.allocate_exact_size(size, Sense::click());
    response.widget_info(|| WidgetInfo::labeled(Role::Button, true, name));
    let painter = ui.painter();
    paint::row(painter, rect, &response, false, t);
    if let Some(icon) = icon {
        icon.paint(painter, rect.left_center() + vec2(12.0, 0.0), t.soft_ink);
    }
    let at = Align2::LEFT_CENTER.pos_in_rect(&rect) + vec2(26.0, 0.0);
    let font = type_faces::regular(type_faces::BODY);
    paint::clipped_text(painter, at, words, font, t.ink, rect.width() - 34.0);
    response.clicked()
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn what_is_typed_lies_in_a_folder() {
        let at = |typed: &str| folder_of(Some(Path::new("/home/ada")), typed);
        assert_eq!(at(""), Path::new("/home/ada"));
        assert_eq!(at("float.ron"), Path::new("/home/ada"));
        assert_eq!(at("toys/"), Path::new("/home/ada/toys"));
        assert_eq!(at("toys/float.ron"), Path::new("/home/ada/toys"));
        assert_eq!(at("/srv/float.ron"), Path::new("/srv"));
        assert_eq!(at("/"), Path::new("/"));
    }
}
