//! Work that takes so long that a person wonders: it is told of, and can be stopped.

use std::time::Duration;

use super::worker::{Waiting, Worker};

/// What takes longer is told.
pub(super) const LINGERS: Duration = Duration::from_secs(1);

/// Work that can be stopped.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum LongWork {
    /// A file that is read or written.
    File,
    /// A pattern that is proofread.
    Proofread,
    /// The sheet that is set.
    Sheet,
    /// The sizes that are worked out.
    Sizes,
    /// The toy that is put together.
    Toy,
}

/// Work that lingers.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub struct Lingering {
    /// Which work it is.
    pub work: LongWork,
    /// What is being done.
    pub doing: &'static str,
}

/// The work of `worker`, if it lingers.
pub(super) fn of<W: Waiting, Answer: Send + 'static>(
    worker: &Worker<W, Answer>,
    work: LongWork,
    doing: &'static str,
) -> Option<Lingering> {
    let lingers = worker.busy_for().is_some_and(|long| long >= LINGERS);
    lingers.then_some(Lingering { work, doing })
}
