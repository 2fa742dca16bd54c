//! Shapes and helpers that Plumpline's tests, benches and figures share.

pub mod any;
pub mod any_pattern;
pub mod corpus;
pub mod fit_set;
pub mod lbfgs;
pub mod makers;
pub mod measure;
pub mod mutate;
pub mod paper;
pub mod planted;
pub mod rng;
pub mod shapes;
pub mod stacking;
pub mod trees;
