//! How far work on another thread is, and whether it is still wanted.

use std::sync::atomic::{AtomicU32, AtomicU64, Ordering};

/// Shared by who asks for work and the thread that does it. Wishes are numbered: of several
/// the last alone is wanted.
#[derive(Debug, Default)]
pub(super) struct WorkPace {
    /// Thousandths that are done.
    done: AtomicU32,
    wanted: AtomicU64,
}

impl WorkPace {
    /// The number of a new wish; work on any before it stops.
    pub(super) fn next(&self) -> u64 {
        self.done.store(0, Ordering::Relaxed);
        self.wanted.fetch_add(1, Ordering::Relaxed) + 1
    }

    /// The share that is done, 0 … 1.
    pub(super) fn share(&self) -> f32 {
        self.done.load(Ordering::Relaxed) as f32 / 1000.0
    }

    /// So much of wish `number` is done; whether it is still wanted.
    pub(super) fn reached(&self, number: u64, share: f32) -> bool {
        let wanted = self.wanted.load(Ordering::Relaxed) == number;
        if wanted {
            self.done.store((1000.0 * share) as u32, Ordering::Relaxed);
        }
        wanted
    }
}
