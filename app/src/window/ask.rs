//! Questions put in the middle of the window.

use std::path::PathBuf;

use egui::{Context, Id, Modal, RichText, TextEdit, Ui};

use plumpline_core::Project;

use crate::document::Revision;
use crate::kit::{Tokens, type_faces};
use crate::work::files::Purpose;

/// What waits until the project has been saved or given up.
#[derive(Debug, Clone, PartialEq)]
pub(crate) enum Next {
    /// Begin this project.
    Begin(Box<Project>),
    /// Take up what a crash left.
    Recover,
    /// Choose a file and open it.
    Open,
    /// Open this file.
    OpenPath(PathBuf),
    /// Show this project, which was read from this file.
    Take(PathBuf, Box<Project>),
    /// Close the window.
    Close,
}

/// A question.
#[derive(Debug, Clone, PartialEq)]
pub(crate) enum Question {
    /// The project has changes that are not saved.
    Unsaved(Next),
    /// No file dialog could be shown; where is the file? With what has been typed, and why
    /// that came to nothing.
    Path(FileUse, String, Option<String>),
    /// Somebody else has written in the project's file since it was opened.
    Changed(Box<Changed>),
}

/// A file that others have written in.
#[derive(Debug, Clone, PartialEq)]
pub(crate) struct Changed {
    pub(crate) path: PathBuf,
    /// The document.
    pub(crate) of: Revision,
    /// What was to be saved.
    pub(crate) mine: Box<Project>,
    /// What stands in the file, if it is a project.
    pub(crate) theirs: Option<Box<Project>>,
    /// What goes on once it is settled.
    pub(crate) then: Option<Next>,
}

/// What a file is wanted for, and what goes on once it is saved.
#[derive(Debug, Clone, PartialEq)]
pub(crate) struct FileUse {
    pub(crate) purpose: Purpose,
    pub(crate) then: Option<Next>,
}

/// The answer.
#[derive(Debug, Clone, PartialEq)]
pub(crate) enum Reply {
    /// Save first, then go on.
    SaveFirst(Next),
    /// Go on without saving.
    Discard(Next),
    /// This path.
    Path(FileUse, PathBuf),
    /// Save over what the others wrote.
    Overwrite(Box<Changed>),
    /// Save in another file beside it.
    Beside(Box<Changed>),
    /// Take what the others wrote in place of the project here.
    Theirs(Box<Changed>),
    /// Never mind.
    Cancel,
}

/// Shows the question; returns the answer once there is one.
pub(crate) fn show(ctx: &Context, ask: &mut Question, title: &str) -> Option<Reply> {
    let mut answer = None;
    let frame = egui::Frame::popup(&ctx.global_style()).inner_margin(20);
    let modal = Modal::new(Id::unique("question")).frame(frame).show(ctx, |ui| {
        ui.set_width(380.0);
        ui.spacing_mut().item_spacing = egui::vec2(8.0, 10.0);
        answer = match ask {
            Question::Unsaved(next) => unsaved(ui, next, title),
            Question::Path(wanted, text, why) => path(ui, wanted, text, why.as_deref()),
            Question::Changed(changed) => elsewhere(ui, changed),
        };
    });
    if answer.is_none() && modal.should_close() {
        answer = Some(Reply::Cancel);
    }
    answer
}

fn heading(ui: &mut Ui, text: &str) {
    ui.label(RichText::new(text).font(type_faces::semibold(type_faces::TITLE)));
}

fn unsaved(ui: &mut Ui, next: &Next, title: &str) -> Option<Reply> {
    heading(ui, &format!("Save “{title}” first?"));
    let goes = match next {
        Next::Close => "Closing the window",
        Next::Begin(_) => "Beginning another piece",
        Next::Open | Next::OpenPath(_) | Next::Take(..) | Next::Recover => {
            "Opening another project"
        }
    };
    ui.label(format!("It has changes that are not saved. {goes} would lose them."));
    ui.add_space(4.0);
    ui.horizontal(|ui| {
        let save = ui.button("Save");
        let discard = ui.button("Discard");
        let back = ui.with_layout(egui::Layout::right_to_left(egui::Align::Center), |ui| {
            ui.button("Keep working")
        });
        let answers = [
            (save, Reply::SaveFirst(next.clone())),
            (discard, Reply::Discard(next.clone())),
            (back.inner, Reply::Cancel),
        ];
        // The keyboard is in the question, at the answer that loses nothing.
        if !answers.iter().any(|(button, _)| button.has_focus()) {
            answers[0].0.request_focus();
        }
        answers.into_iter().find(|(button, _)| button.clicked()).map(|(_, answer)| answer)
    })
    .inner
}

/// What becomes of a file that others have written in.
type Settling = fn(Box<Changed>) -> Reply;

fn elsewhere(ui: &mut Ui, changed: &Changed) -> Option<Reply> {
    let name = changed.path.file_name().unwrap_or_default().to_string_lossy();
    heading(ui, &format!("{name} was changed elsewhere"));
    ui.label(match changed.theirs {
        Some(_) => "Another window or program has saved another version of it.",
        None => "What stands in it now cannot be read as a project.",
    });
    ui.add_space(4.0);
    let beside = "Keep both: what is here goes into a new file in the same folder";
    let theirs = "What is changed here is given up";
    let over = "What stands in the file is given up";
    let mut answers: Vec<(&str, &str, Settling)> =
        vec![("Save mine beside it", beside, Reply::Beside)];
    if changed.theirs.is_some() {
        answers.push(("Open the other version", theirs, Reply::Theirs));
    }
    answers.push(("Replace it with mine", over, Reply::Overwrite));
    let buttons: Vec<_> =
        answers.iter().map(|(words, what, _)| ui.button(*words).on_hover_text(*what)).collect();
    let back = ui.button("Keep working");
    // The keyboard is in the question, at the answer that loses nothing.
    if !buttons.iter().any(egui::Response::has_focus) && !back.has_focus() {
        buttons[0].request_focus();
    }
    let pressed = buttons.iter().zip(&answers).find(|(button, _)| button.clicked());
    let reply = pressed.map(|(_, (_, _, reply))| reply(Box::new(changed.clone())));
    reply.or(back.clicked().then_some(Reply::Cancel))
}

fn path(ui: &mut Ui, wanted: &FileUse, text: &mut String, why: Option<&str>) -> Option<Reply> {
    let saves = !wanted.purpose.reads();
    heading(ui, if saves { "Save as" } else { "Where is the file?" });
    let label = ui.label("This desktop shows no file dialog. Type the whole path:");
    let field =
        ui.add(TextEdit::singleline(text).desired_width(f32::INFINITY)).labelled_by(label.id);
    if !field.has_focus() && !field.lost_focus() {
        field.request_focus();
    }
    let entered = field.lost_focus() && ui.input(|i| i.key_pressed(egui::Key::Enter));
    if let Some(why) = why {
        let t = Tokens::now(ui.ctx());
        ui.label(RichText::new(why).color(t.warning));
    }
    let verb = if saves { "Save" } else { "Open" };
    ui.horizontal(|ui| {
        let typed = !text.trim().is_empty();
        if (ui.add_enabled(typed, egui::Button::new(verb)).clicked() || entered) && typed {
            return Some(Reply::Path(wanted.clone(), PathBuf::from(text.trim())));
        }
        ui.button("Cancel").clicked().then_some(Reply::Cancel)
    })
    .inner
}
