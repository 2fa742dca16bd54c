//! The window: what happens in a frame and in which order, what becomes of what the stages
//! ask for, and the talk with files.

mod ask;
mod browse;
mod commanding;
mod files;
mod hurdles;
mod keep;
mod layout;
mod lesson;
mod lingering;
mod making;
mod picture;
mod publishing;
mod reading;
mod showing;
mod studio;
mod telling;
mod trace;
mod trust;

pub use studio::{Studio, dress};

use std::path::PathBuf;

use anyhow::anyhow;

use crate::work::ending::Ending;

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
        let mut studio = Studio::new(cc, open).ending_with(Ending::listen(&cc.egui_ctx));
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
        .map_err(|e| anyhow!(no_window(&e.to_string(), has_display())))
}

/// Whether the session says where windows are shown; only Linux and its like ask.
fn has_display() -> bool {
    let named = |name: &str| std::env::var_os(name).is_some_and(|value| !value.is_empty());
    !cfg!(target_os = "linux")
        || ["DISPLAY", "WAYLAND_DISPLAY", "WAYLAND_SOCKET"].into_iter().any(named)
}

/// Why there is no window, in one line with the mend.
fn no_window(error: &str, display: bool) -> String {
    if !display {
        return "there is no display; start it in a desktop session, or do without a window: \
                see plumpline --help"
            .into();
    }
    // Libraries name the line of their own sources before what went wrong.
    let said = error.rsplit_once(".rs:").map_or(error, |(_, rest)| rest);
    let said = said.trim_start_matches(|c: char| c.is_ascii_digit() || ": ".contains(c));
    format!(
        "the window could not be opened ({said}); on Debian, app/run.sh installs what it needs"
    )
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn why_there_is_no_window_names_no_sources() {
        let error = "winit EventLoopError: os error at /home/a/winit-0.30.13/src/x11/mod.rs:842: \
                     Failed to load one of xlib's shared libraries";
        let said = no_window(error, true);
        assert!(said.contains("(Failed to load") && !said.contains(".rs"), "{said}");
        assert!(no_window(error, false).starts_with("there is no display"));
    }
}
