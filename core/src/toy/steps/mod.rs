//! How a toy is put together: steps in working order, with their sentences, and cautions.
//!
//! `phrases` are the sentences as data, `say` fills them in, `stitched` those of embroidery; `order` says what comes when;
//! `cautions` go by who the toy is made for.

pub mod cautions;
mod order;
pub mod phrases;
mod say;
mod stitched;
#[cfg(test)]
mod tests;

pub use cautions::{Caution, cautions};
pub use order::{AssemblyStep, StepKind, steps};
pub use say::{misfit_text, part_name, where_held};
