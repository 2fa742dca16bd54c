//! The studio: one window in which a piece is shaped.
//!
//! [`document`] is what is saved and undone, [`view`] what is looked at, [`derived`] what
//! follows from the piece in hand. Panels read them through [`bench::Bench`] and push
//! [`action::Action`]s; [`apply`] is the one place that changes anything.

pub mod action;
pub mod app;
pub mod apply;
pub mod ask;
pub mod bench;
pub mod board_view;
pub mod choice;
pub mod command;
mod commanding;
pub mod derived;
pub mod document;
mod files;
pub mod history;
pub mod home;
pub mod jobs;
pub mod keys;
pub mod making;
pub(crate) mod measure;
mod names;
pub mod picture;
pub mod pieces;
pub mod prefs;
pub mod printing;
pub mod proofreading;
pub(crate) mod shaping;
pub mod sizing;
mod trace;
pub mod trade;
mod trust;
pub mod view;

use std::path::PathBuf;

use anyhow::anyhow;

/// What the desktop knows the studio by, and what its folder is called.
const APP: &str = "plumpline";

/// Opens the studio's window, with the project at `open` or a sample, and returns when it
/// is closed.
///
/// # Errors
/// If no window can be opened.
pub fn run(open: Option<PathBuf>) -> anyhow::Result<()> {
    let options = eframe::NativeOptions {
        viewport: egui::ViewportBuilder::default()
            .with_title("Plumpline")
            .with_app_id(APP)
            .with_inner_size([1440.0, 900.0])
            .with_min_inner_size([1024.0, 700.0]),
        renderer: eframe::Renderer::Glow,
        ..Default::default()
    };
    let opened = std::time::Instant::now();
    let start = move |cc: &eframe::CreationContext<'_>| {
        let mut studio = app::Studio::new(cc, open);
        if let Some(folder) = eframe::storage_dir(APP) {
            studio = studio.at_home(&cc.egui_ctx, &folder);
        }
        let app: Box<dyn eframe::App> = match std::env::var_os(trace::VARIABLE) {
            Some(_) => Box::new(trace::Traced::new(studio, opened)),
            None => Box::new(studio),
        };
        Ok(app)
    };
    eframe::run_native("Plumpline", options, Box::new(start))
        .map_err(|e| anyhow!("the window could not be opened: {e}"))
}
