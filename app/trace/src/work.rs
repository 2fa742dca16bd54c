//! Work that takes time: how far it is, and whether it is still wanted.

use plumpline_core::Error;

/// Why work came to no result.
#[derive(Debug, Clone, PartialEq, Eq, thiserror::Error)]
pub enum Halt {
    /// Whoever asked for it said stop.
    #[error("stopped")]
    Stopped,
    /// There is no result: one line that says where, why, and the mend.
    #[error(transparent)]
    Refused(#[from] Error),
}

/// What the steps of work return.
pub type Step<T> = Result<T, Halt>;

/// Tells the share done, 0 … 1; work stops where the answer is no.
pub(crate) struct Work<'a> {
    tell: &'a dyn Fn(f32) -> bool,
}

impl<'a> Work<'a> {
    pub(crate) fn new(tell: &'a dyn Fn(f32) -> bool) -> Self {
        Self { tell }
    }

    /// So much is done; [`Halt::Stopped`] where no more is wanted.
    pub(crate) fn reached(&self, share: f32) -> Step<()> {
        if (self.tell)(share) { Ok(()) } else { Err(Halt::Stopped) }
    }
}

/// A refusal about the picture.
pub(crate) fn refused(what: impl Into<String>, mend: impl Into<String>) -> Halt {
    Halt::Refused(Error::new("picture", what, mend))
}
