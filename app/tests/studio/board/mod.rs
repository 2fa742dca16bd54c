//! The outline board in daily use: zoom, several knots, either side, the magnet, the picture.

mod hand;
mod knots;
mod measures;
pub(crate) mod picture;
mod view;
