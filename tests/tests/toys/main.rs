//! Toys against other calculations: footprints, mass and balance by triangle meshes, the neck
//! wherever it goes, all sizes.

mod balance;
mod footprints;
mod meshes;
mod places;
