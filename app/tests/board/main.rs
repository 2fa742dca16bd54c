//! The outline board in daily use: zoom, several knots, either side, the magnet, the picture.

#[path = "../bench/mod.rs"]
mod bench;
mod hand;
mod knots;
mod measures;
mod picture;
mod view;
