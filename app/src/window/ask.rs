//! Questions put in the middle of the window.

use std::path::{Path, PathBuf};

use egui::{Button, Context, Id, Modal, RichText, Ui, vec2};

use plumpline_core::Project;

use super::browse::{self, Browsed};
use crate::kit::type_faces;
use crate::work::files::{Purpose, ToSave};

/// Width of a question whose answers say what they do, and of an answer, points.
const WIDE: f32 = 480.0;
const ANSWER: f32 = 176.0;

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
    /// The project cannot simply be saved in its file.
    Hurdle(Box<Hurdle>),
    /// Something stands at the path that was typed.
    Taken(PathBuf, FileUse),
}

/// A file that the project cannot simply be saved in.
#[derive(Debug, Clone, PartialEq)]
pub(crate) struct Hurdle {
    pub(crate) path: PathBuf,
    /// A file beside it where nothing stands.
    pub(crate) beside: PathBuf,
    /// What was to be saved.
    pub(crate) mine: ToSave,
    pub(crate) why: Hindrance,
    /// What goes on once it is settled.
    pub(crate) then: Option<Next>,
}

/// What keeps a project from its file.
#[derive(Debug, Clone, PartialEq)]
pub(crate) enum Hindrance {
    /// Others have written in it: what stands there, if it is a project.
    Changed(Option<Box<Project>>),
    /// It is read-only.
    ReadOnly,
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
    /// Do it with this file, whatever stands there.
    Replace(PathBuf, FileUse),
    /// Type another path than this.
    Another(PathBuf, FileUse),
    /// Save over what stands in the file.
    Overwrite(Box<Hurdle>),
    /// Save in another file beside it.
    Beside(Box<Hurdle>),
    /// Take what the others wrote in place of the project here.
    Theirs(Box<Hurdle>),
    /// Never mind.
    Cancel,
}

/// Shows the question; returns the answer once there is one.
pub(crate) fn show(
    ctx: &Context,
    ask: &mut Question,
    title: &str,
    browsed: Browsed<'_>,
) -> Option<Reply> {
    let mut answer = None;
    let frame = egui::Frame::popup(&ctx.global_style()).inner_margin(20);
    let modal = Modal::new(Id::unique("question")).frame(frame).show(ctx, |ui| {
        let wide = !matches!(ask, Question::Unsaved(_));
        ui.set_width(if wide { WIDE } else { 380.0 });
        ui.spacing_mut().item_spacing = egui::vec2(8.0, 10.0);
        answer = match ask {
            Question::Unsaved(next) => unsaved(ui, next, title),
            Question::Path(wanted, text, why) => {
                browse::show(ui, wanted, text, why.as_deref(), browsed)
            }
            Question::Hurdle(hindered) => hurdle(ui, hindered),
            Question::Taken(at, wanted) => taken(ui, at, wanted),
        };
    });
    if answer.is_none() && modal.should_close() {
        answer = Some(Reply::Cancel);
    }
    answer
}

pub(super) fn heading(ui: &mut Ui, text: &str) {
    ui.label(RichText::new(text).font(type_faces::semibold(type_faces::TITLE)));
}

fn unsaved(ui: &mut Ui, next: &Next, title: &str) -> Option<Reply> {
    heading(ui, &say!("ask-save-title-first", title = title));
    ui.label(match next {
        Next::Close => say!("ask-lost-by-closing"),
        Next::Begin(_) => say!("ask-lost-by-starting"),
        Next::Open | Next::OpenPath(_) | Next::Take(..) | Next::Recover => {
            say!("ask-lost-by-opening")
        }
    });
    ui.add_space(4.0);
    ui.horizontal(|ui| {
        let save = ui.button(say!("ask-save"));
        let discard = ui.button(say!("ask-discard"));
        let back = ui.with_layout(egui::Layout::right_to_left(egui::Align::Center), |ui| {
            ui.button(say!("ask-keep-working"))
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

/// What becomes of a file that the project cannot simply be saved in.
type Settling = fn(Box<Hurdle>) -> Reply;

fn hurdle(ui: &mut Ui, hurdle: &Hurdle) -> Option<Reply> {
    let name = hurdle.path.file_name().unwrap_or_default().to_string_lossy();
    let (title, what, over) = match &hurdle.why {
        Hindrance::Changed(Some(theirs)) => (
            say!("ask-changed-elsewhere", file = name),
            say!("ask-other-saved", title = theirs.title),
            say!("ask-other-lost"),
        ),
        Hindrance::Changed(None) => (
            say!("ask-changed-elsewhere", file = name),
            say!("ask-not-readable").to_owned(),
            say!("ask-file-lost"),
        ),
        Hindrance::ReadOnly => (
            say!("ask-read-only", file = name),
            say!("ask-marked").to_owned(),
            say!("ask-stays-marked"),
        ),
    };
    heading(ui, &title);
    ui.label(what);
    let own = hurdle.beside.file_name().unwrap_or_default().to_string_lossy();
    let own = say!("ask-this-version-goes-into-own-both-stay", own = own);
    let mut answers: Vec<(&str, &str, Settling)> =
        vec![(say!("ask-save-mine-as-a-copy"), &own, Reply::Beside)];
    if let Hindrance::Changed(Some(_)) = hurdle.why {
        let lost = say!("ask-what-is-not-saved-here-is-lost");
        answers.push((say!("ask-open-the-other-version"), lost, Reply::Theirs));
    }
    answers.push((say!("ask-replace-it-with-mine"), over, Reply::Overwrite));
    let pressed = choices(ui, answers.iter().map(|(words, what, _)| (*words, *what)));
    match pressed? {
        PressedAnswer::Back => Some(Reply::Cancel),
        PressedAnswer::Answer(i) => Some((answers[i].2)(Box::new(hurdle.clone()))),
    }
}

fn taken(ui: &mut Ui, path: &Path, wanted: &FileUse) -> Option<Reply> {
    let name = path.file_name().unwrap_or_default().to_string_lossy();
    heading(ui, &say!("ask-name-already-exists", name = name));
    ui.label(say!(
        "ask-it-is-in-folder",
        folder = path.parent().unwrap_or(path).display().to_string()
    ));
    let pressed = choices(
        ui,
        [
            (say!("ask-choose-another-name"), say!("ask-the-file-stays-as-it-is")),
            (say!("ask-replace-it"), say!("ask-file-lost")),
        ],
    );
    Some(match pressed? {
        PressedAnswer::Back => Reply::Cancel,
        PressedAnswer::Answer(0) => Reply::Another(path.to_owned(), wanted.clone()),
        PressedAnswer::Answer(_) => Reply::Replace(path.to_owned(), wanted.clone()),
    })
}

/// What was pressed of several answers.
enum PressedAnswer {
    Answer(usize),
    Back,
}

/// Answers below one another, each with what it does to the work beside it, then the way back.
/// The keyboard is at the first, which loses nothing.
fn choices<'a>(
    ui: &mut Ui,
    answers: impl IntoIterator<Item = (&'a str, &'a str)>,
) -> Option<PressedAnswer> {
    ui.add_space(2.0);
    let mut row = |words: &str, what: &str| {
        ui.horizontal(|ui| {
            let button = ui.add(Button::new(words).min_size(vec2(ANSWER, 30.0)));
            ui.label(RichText::new(what).weak());
            button
        })
        .inner
    };
    let buttons: Vec<_> = answers.into_iter().map(|(words, what)| row(words, what)).collect();
    let back = row(say!("ask-keep-working"), say!("ask-nothing-is-saved-yet"));
    if !buttons.iter().any(egui::Response::has_focus) && !back.has_focus() {
        buttons[0].request_focus();
    }
    let pressed = buttons.iter().position(egui::Response::clicked).map(PressedAnswer::Answer);
    pressed.or(back.clicked().then_some(PressedAnswer::Back))
}
