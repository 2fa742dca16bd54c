//! How long the studio takes to show its first frame, for those who measure it.

use std::time::{Duration, Instant};

use super::studio::Studio;

/// The variable that asks for it.
pub(super) const VARIABLE: &str = "PLUMPLINE_TRACE";

/// The studio, reporting on standard error when its first frame has been shown.
pub(super) struct Traced {
    studio: Studio,
    opened: Instant,
    frames: u32,
}

impl Traced {
    /// `studio`, in a process whose window began to open at `opened`.
    pub(super) fn new(studio: Studio, opened: Instant) -> Self {
        Self { studio, opened, frames: 0 }
    }
}

impl eframe::App for Traced {
    fn ui(&mut self, ui: &mut egui::Ui, frame: &mut eframe::Frame) {
        self.frames += 1;
        match self.frames {
            // The second frame begins once the first has been swapped to the screen.
            1 => ui.request_repaint(),
            2 => {
                let spent = since_start().unwrap_or_else(|| self.opened.elapsed());
                eprintln!("plumpline: first frame after {} ms", spent.as_millis());
            }
            _ => {}
        }
        eframe::App::ui(&mut self.studio, ui, frame);
    }

    fn save(&mut self, storage: &mut dyn eframe::Storage) {
        eframe::App::save(&mut self.studio, storage);
    }

    fn on_exit(&mut self, gl: Option<&eframe::glow::Context>) {
        eframe::App::on_exit(&mut self.studio, gl);
    }

    fn persist_egui_memory(&self) -> bool {
        self.studio.persist_egui_memory()
    }
}

/// Time since the process was started, to a hundredth of a second, where the system tells.
fn since_start() -> Option<Duration> {
    let stat = std::fs::read_to_string("/proc/self/stat").ok()?;
    let uptime = std::fs::read_to_string("/proc/uptime").ok()?;
    // Field 22, counted after the name in brackets, which may hold spaces.
    let started: f64 = stat.rsplit(')').next()?.split_whitespace().nth(19)?.parse().ok()?;
    let now: f64 = uptime.split_whitespace().next()?.parse().ok()?;
    const TICKS_PER_SECOND: f64 = 100.0; // What Linux reports to programs, whatever it uses.
    Duration::try_from_secs_f64(now - started / TICKS_PER_SECOND).ok()
}
