//! The outline board in daily use: zoom, several knots, either side, the magnet, the picture.

mod hand;
mod knots;
mod measures;
mod picture;
mod view;
