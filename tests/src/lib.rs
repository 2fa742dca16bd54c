//! Shapes and helpers that Plumpline's tests, benches and figures share.

pub mod anneal;
pub mod any;
pub mod any_pattern;
pub mod corpus;
pub mod designer;
pub mod drag;
pub mod drawn;
pub mod fit_set;
pub mod hands;
pub mod lbfgs;
pub mod makers;
pub mod measure;
pub mod mutate;
pub mod paper;
pub mod people;
pub mod planted;
pub mod rng;
pub mod shapes;
pub mod stacking;
pub mod sweep;
pub mod trees;
