//! Figures of a toy: what it weighs, how it hangs and stands, what its cords and wires have to
//! be, what fits into the small-parts cylinder.

pub mod balance;
pub mod flat;
pub mod mass;
mod overlap;
pub(crate) mod sling;
pub mod small_parts;
mod weight;
pub mod wire;
