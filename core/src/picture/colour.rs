//! Colours mixed on paper.

use super::Rgb;

/// `share` of `b` in `a`.
pub(super) fn mixed(a: Rgb, b: Rgb, share: f32) -> Rgb {
    let mix = |a: u8, b: u8| (f32::from(a) + (f32::from(b) - f32::from(a)) * share) as u8;
    [mix(a[0], b[0]), mix(a[1], b[1]), mix(a[2], b[2])]
}
