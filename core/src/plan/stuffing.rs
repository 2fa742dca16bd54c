//! When a piece is stuffed.

/// The round after which to stuff: the last one, going on from the widest, whose opening is
/// still at least 18 stitches and 60 mm around at rest. A neck further on does not count: a
/// hand has to pass it. Where the opening is never that wide, the widest round.
pub(super) fn stuff_after(counts: &[u32], stitch_width_mm: f64) -> Option<u32> {
    let most = *counts.iter().max()?;
    let widest = counts.iter().position(|&n| n == most)?;
    let open = |&&n: &&u32| n >= 18 && f64::from(n) * stitch_width_mm >= 60.0;
    let on = counts[widest..].iter().take_while(open).count();
    Some((widest + on.max(1)) as u32)
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn stuffing_comes_while_the_opening_is_wide_enough() {
        assert_eq!(stuff_after(&[6, 12, 18, 24, 18, 12, 6], 4.6), Some(5));
        assert_eq!(stuff_after(&[6, 12, 18, 24, 30, 24, 18, 12, 6], 2.4), Some(5));
        assert_eq!(stuff_after(&[6, 12, 24, 24, 14, 20, 24], 4.6), Some(4));
        assert_eq!(stuff_after(&[6, 10, 12, 12, 6], 4.0), Some(3));
    }
}
