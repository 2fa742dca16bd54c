//! The window: what happens in a frame and in which order, what becomes of what the stages
//! ask for, and the talk with files.

mod ask;
mod commanding;
mod files;
mod keep;
mod layout;
mod making;
mod picture;
mod studio;
mod trace;
mod trust;

pub use studio::{Studio, dress};

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
        let mut studio = Studio::new(cc, open);
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
