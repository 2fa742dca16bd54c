//! The sheet on pages, set and drawn on a thread that keeps its press: after a
//! change only what changed is set again. Pages that come too late are dropped.

mod setter;

use std::path::{Path, PathBuf};
use std::sync::Arc;

use egui::{ColorImage, Context, TextureHandle, TextureOptions};
use plumpline_core::sheet::{Changes, Sheet};

use crate::document::{Document, Revision, as_designed};
use crate::view::sheet::SheetLook;
use crate::work::lingering::{self, Lingering, LongWork};
use crate::work::worker::{Newest, Ticket, Worker};
use setter::{SheetNews, SheetWish};

/// A page on screen.
pub struct PageShown {
    /// Its width and height, points of paper (1/72 in).
    pub size_pt: [f32; 2],
    /// Its picture, once there is one: that of the sheet before until the new one is drawn.
    pub picture: Option<TextureHandle>,
}

impl std::fmt::Debug for PageShown {
    fn fmt(&self, f: &mut std::fmt::Formatter<'_>) -> std::fmt::Result {
        // A texture says nothing of itself but its name.
        let drawn = self.picture.as_ref().map(TextureHandle::name);
        let mut shown = f.debug_struct("PageShown");
        shown.field("size_pt", &self.size_pt).field("picture", &drawn).finish()
    }
}

/// The sheet of the project as far as it has been set.
#[derive(Debug)]
pub struct Printing {
    worker: Worker<Newest<SheetWish>, SheetNews>,
    /// What was last looked at: which project, laid out how.
    seen: Option<(Revision, SheetLook, f32)>,
    asked: Option<SheetWish>,
    ticket: Ticket,
    sheet: Option<Arc<Sheet>>,
    error: Option<String>,
    told: Vec<String>,
    /// What has changed since a published version, and what its file is called.
    changes: Option<(String, Changes)>,
    /// Where the sheet was written last.
    written: Option<PathBuf>,
    pages: Vec<PageShown>,
    /// Pages of what is asked now that are drawn.
    drawn: usize,
    /// Whether all that was asked for has been answered.
    done: bool,
}

impl Default for Printing {
    fn default() -> Self {
        Self {
            worker: setter::worker(),
            seen: None,
            asked: None,
            ticket: 0,
            sheet: None,
            error: None,
            told: Vec::new(),
            changes: None,
            written: None,
            pages: Vec::new(),
            drawn: 0,
            done: false,
        }
    }
}

impl Printing {
    /// The work under way, if it takes so long that a person wonders.
    pub fn lingering(&self) -> Option<Lingering> {
        lingering::of(&self.worker, LongWork::Sheet, say!("trouble-preparing-the-sheet"))
    }

    /// Gives it up.
    pub fn give_up(&mut self, ctx: &Context) {
        self.worker.give_up(ctx);
    }

    /// The sheet's content, once gathered.
    pub fn sheet(&self) -> Option<&Sheet> {
        self.sheet.as_deref()
    }

    /// Why there is none.
    pub fn error(&self) -> Option<&str> {
        self.error.as_deref()
    }

    /// What is to be told of the pages, a sentence each: which characters no face has, which
    /// pictures cannot be read.
    pub fn told(&self) -> &[String] {
        &self.told
    }

    /// What has changed since a published version, and what its file is called; once that was
    /// asked for.
    pub fn changes(&self) -> Option<(&str, &Changes)> {
        self.changes.as_ref().map(|(name, changes)| (name.as_str(), changes))
    }

    /// Notes what has changed since the version in the file of this name; none forgets it.
    pub fn compared(&mut self, changes: Option<(String, Changes)>) {
        self.changes = changes;
    }

    /// Where the sheet was written last in this run.
    pub fn written(&self) -> Option<&Path> {
        self.written.as_deref()
    }

    /// Notes that it was written there.
    pub fn wrote(&mut self, path: PathBuf) {
        self.written = Some(path);
    }

    /// The pages.
    pub fn pages(&self) -> &[PageShown] {
        &self.pages
    }

    /// Whether all pages on screen are those of the project as it is now.
    pub fn is_current(&self) -> bool {
        self.done
    }

    /// Asks for the sheet of `document` if it is another than was asked for last, and takes
    /// what has been set. Returns whether there is anything new to show.
    pub fn update(
        &mut self,
        ctx: &Context,
        document: &Document,
        look: SheetLook,
        scale: f32,
    ) -> bool {
        let mut news = self.look(ctx, document, look, scale);
        while let Some(heard) = self.worker.hear() {
            // Pages that come too late are dropped; a panic never is.
            let is_last = heard.to == self.ticket;
            match heard.answer {
                Ok(found) if is_last => self.take(ctx, found),
                Ok(_) => continue,
                Err(broken) => self.fail(say!(
                    "trouble-it-could-not-be-made-broken",
                    broken = broken.to_string()
                )),
            }
            news = true;
        }
        news
    }

    /// Asks for the sheet if it is another than was asked for last. Returns whether it is.
    fn look(
        &mut self,
        ctx: &Context,
        document: &Document,
        look: SheetLook,
        scale: f32,
    ) -> bool {
        let seen = (document.revision(), look, scale);
        if self.seen.replace(seen) == Some(seen) {
            return false;
        }
        let folder = document.path().and_then(Path::parent).map(Path::to_owned);
        let project = as_designed(document.project());
        let wish = SheetWish { project, folder, look, scale };
        if self.asked.as_ref() == Some(&wish) {
            return false;
        }
        self.done = false;
        self.drawn = 0;
        self.ticket = self.worker.ask(ctx, wish.clone());
        self.asked = Some(wish);
        true
    }

    fn take(&mut self, ctx: &Context, news: SheetNews) {
        match news {
            SheetNews::Failed { why } => self.fail(why),
            SheetNews::Set { sheet, sizes_pt, told } => {
                self.error = None;
                self.sheet = Some(sheet);
                self.told = told;
                let mut before = std::mem::take(&mut self.pages).into_iter();
                let shown = |size_pt| PageShown {
                    size_pt,
                    picture: before.next().and_then(|page| page.picture),
                };
                self.pages = sizes_pt.into_iter().map(shown).collect();
            }
            SheetNews::Page { index, image } => {
                self.show(ctx, index, image);
                self.drawn += 1;
                self.done = self.drawn >= self.pages.len();
            }
        }
    }

    fn fail(&mut self, why: String) {
        self.error = Some(why);
        self.sheet = None;
        self.pages.clear();
        self.done = true;
    }

    fn show(&mut self, ctx: &Context, index: usize, image: ColorImage) {
        let Some(page) = self.pages.get_mut(index) else { return };
        let options = TextureOptions::LINEAR;
        match &mut page.picture {
            Some(picture) => picture.set(image, options),
            none => *none = Some(ctx.load_texture(format!("page {index}"), image, options)),
        }
    }
}
