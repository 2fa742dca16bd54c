//! What lies in a folder, listed on a thread: a folder on a network may take its time.

use std::path::{Path, PathBuf};

use egui::Context;
use plumpline_core::disk::{self, FolderEntry};

use super::worker::{Newest, Ticket, Voice, Worker};

type FolderAnswer = Result<Vec<FolderEntry>, String>;

/// The folder that is looked into where paths are typed.
#[derive(Debug)]
pub struct Folders {
    worker: Worker<Newest<PathBuf>, FolderAnswer>,
    asked: Option<(PathBuf, Ticket)>,
    found: Option<(PathBuf, FolderAnswer)>,
}

impl Default for Folders {
    fn default() -> Self {
        let work = || {
            |folder: PathBuf, voice: &Voice<'_, Newest<PathBuf>, FolderAnswer>| {
                voice.say(disk::folder(&folder).map_err(|e| e.to_string()));
            }
        };
        Self { worker: Worker::new("folders", work), asked: None, found: None }
    }
}

impl Folders {
    /// Asks for what lies in `folder`, unless it has been asked for. Returns whether there is
    /// anything new to show.
    pub(crate) fn update(&mut self, ctx: &Context, folder: &Path) -> bool {
        let mut news = false;
        while let Some(heard) = self.worker.hear() {
            let asked = self.asked.as_ref().filter(|(_, ticket)| *ticket == heard.to);
            if let Some((folder, _)) = asked {
                let answer = heard.answer.unwrap_or_else(|broken| Err(broken.to_string()));
                self.found = Some((folder.clone(), answer));
                news = true;
            }
        }
        if self.asked.as_ref().is_none_or(|(asked, _)| asked != folder) {
            let ticket = self.worker.ask(ctx, folder.to_owned());
            self.asked = Some((folder.to_owned(), ticket));
        }
        news
    }

    /// Nobody looks any more: what is asked for next is looked into anew.
    pub(crate) fn rest(&mut self) {
        (self.asked, self.found) = (None, None);
    }

    /// What lies in `folder`, or why that is not known; none until it is.
    pub(crate) fn of(&self, folder: &Path) -> Option<Result<&[FolderEntry], &str>> {
        let (_, answer) = self.found.as_ref().filter(|(of, _)| of == folder)?;
        Some(answer.as_deref().map_err(String::as_str))
    }
}
