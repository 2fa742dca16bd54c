//! Being asked to end from outside: the session is over, or the terminal that the studio was
//! started from is closed. The studio keeps its work and goes, without a question.

use std::sync::Arc;
use std::sync::atomic::{AtomicBool, Ordering};

use egui::Context;

/// Whether the studio was asked to end.
#[derive(Debug, Clone, Default)]
pub struct Ending(Arc<AtomicBool>);

impl Ending {
    /// Listens for the signals that end a program (SIGTERM, SIGHUP, SIGINT of POSIX.1-2024);
    /// `ctx` is woken by them. A second one ends the program at once. Where there are no
    /// signals nothing is heard.
    pub fn listen(ctx: &Context) -> Self {
        let ending = Self::default();
        #[cfg(unix)]
        listen(ctx.clone(), ending.clone());
        ending
    }

    /// Asks the studio to end.
    pub fn ask(&self) {
        self.0.store(true, Ordering::Release);
    }

    /// Whether it was asked to.
    pub fn is_asked(&self) -> bool {
        self.0.load(Ordering::Acquire)
    }
}

#[cfg(unix)]
fn listen(ctx: Context, ending: Ending) {
    use signal_hook::consts::{SIGHUP, SIGINT, SIGTERM};
    let Ok(mut signals) = signal_hook::iterator::Signals::new([SIGTERM, SIGHUP, SIGINT]) else {
        return; // They end it as they end any program.
    };
    let wait = move || {
        for signal in signals.forever() {
            if ending.is_asked() {
                std::process::exit(128 + signal);
            }
            ending.ask();
            ctx.request_repaint();
        }
    };
    // Without the thread they end it as they end any program.
    std::thread::Builder::new().name("signals".into()).spawn(wait).ok();
}
