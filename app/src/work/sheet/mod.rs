//! The sheet on pages, set and drawn on a thread of its own that keeps its press: after a
//! change only what changed is set again. Pages that come too late are dropped.

mod worker;

use std::sync::Arc;

use egui::{ColorImage, Context, TextureHandle, TextureOptions};
use plumpline_core::Project;
use plumpline_core::sheet::Sheet;

use crate::document::as_designed;
use crate::view::sheet::SheetLook;
use worker::{Job, News, Worker};

/// A page on screen.
pub struct Shown {
    /// Its width and height, points of paper (1/72 in).
    pub size_pt: [f32; 2],
    /// Its picture, once there is one: that of the sheet before until the new one is drawn.
    pub picture: Option<TextureHandle>,
}

impl std::fmt::Debug for Shown {
    fn fmt(&self, f: &mut std::fmt::Formatter<'_>) -> std::fmt::Result {
        // A texture says nothing of itself but its name.
        let drawn = self.picture.as_ref().map(TextureHandle::name);
        let mut shown = f.debug_struct("Shown");
        shown.field("size_pt", &self.size_pt).field("picture", &drawn).finish()
    }
}

/// What is to be set.
#[derive(Debug, Clone, PartialEq)]
struct Asked {
    project: Project,
    look: SheetLook,
    /// Pixels a point of paper.
    scale: f32,
}

/// The sheet of the project as far as it has been set.
#[derive(Debug, Default)]
pub struct Printing {
    asked: Option<Asked>,
    revision: u64,
    worker: Option<Worker>,
    sheet: Option<Arc<Sheet>>,
    error: Option<String>,
    replaced: Option<String>,
    pages: Vec<Shown>,
    /// Pages of this revision that are drawn.
    drawn: usize,
    /// Whether all that was asked for has been answered.
    done: bool,
}

impl Printing {
    /// The sheet's content, once gathered.
    pub fn sheet(&self) -> Option<&Sheet> {
        self.sheet.as_deref()
    }

    /// Why there is none.
    pub fn error(&self) -> Option<&str> {
        self.error.as_deref()
    }

    /// Which characters no face has, in a sentence.
    pub fn replaced(&self) -> Option<&str> {
        self.replaced.as_deref()
    }

    /// The pages.
    pub fn pages(&self) -> &[Shown] {
        &self.pages
    }

    /// Whether all pages on screen are those of the project as it is now.
    pub fn is_current(&self) -> bool {
        self.done
    }

    /// Asks for the sheet of `project` if it is another than was asked for last, and takes
    /// what has been set. Returns whether there is anything new to show.
    pub fn update(
        &mut self,
        ctx: &Context,
        project: &Project,
        look: SheetLook,
        scale: f32,
    ) -> bool {
        let asked = Asked { project: as_designed(project), look, scale };
        let mut news = false;
        if self.asked.as_ref() != Some(&asked) {
            self.ask(ctx, asked);
            news = true;
        }
        while let Some(one) = self.worker.as_ref().and_then(Worker::hear) {
            news |= self.take(ctx, one);
        }
        news
    }

    fn ask(&mut self, ctx: &Context, asked: Asked) {
        self.revision += 1;
        self.done = false;
        self.drawn = 0;
        if self.worker.is_none() {
            self.worker = Worker::start(ctx.clone());
        }
        if let Some(worker) = &self.worker {
            let Asked { project, look, scale } = asked.clone();
            worker.ask(Job { revision: self.revision, project, look, scale });
        }
        self.asked = Some(asked);
    }

    fn take(&mut self, ctx: &Context, news: News) -> bool {
        match news {
            News::Failed { revision, why } if revision == self.revision => {
                self.error = Some(why);
                self.sheet = None;
                self.pages.clear();
                self.done = true;
            }
            News::Set { revision, sheet, sizes_pt, replaced } if revision == self.revision => {
                self.error = None;
                self.sheet = Some(sheet);
                self.replaced = replaced;
                let mut before = std::mem::take(&mut self.pages).into_iter();
                let shown = |size_pt| Shown {
                    size_pt,
                    picture: before.next().and_then(|page| page.picture),
                };
                self.pages = sizes_pt.into_iter().map(shown).collect();
            }
            News::Page { revision, index, image } if revision == self.revision => {
                self.show(ctx, index, image);
                self.drawn += 1;
                self.done = self.drawn >= self.pages.len();
            }
            _ => return false,
        }
        true
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
