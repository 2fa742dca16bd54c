//! The stops of the slider between faithful and easy.

/// Ease at each stop: faithful, four between, easy. Prices grow with the square of ease, so
/// these are about evenly apart in what they change.
///
/// Few and fixed, because every stop starts from the one before it: a plan at the easy end
/// has to come past them all.
pub const EASE_STOPS: [f64; 6] = [0.0, 0.15, 0.3, 0.5, 0.75, 1.0];

/// The stop nearest `ease`, as an index of [`EASE_STOPS`].
pub fn ease_stop(ease: f64) -> usize {
    let between = EASE_STOPS.windows(2).map(|ends| 0.5 * (ends[0] + ends[1]));
    between.take_while(|&half| ease >= half).count()
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn every_ease_has_its_stop() {
        for (i, &ease) in EASE_STOPS.iter().enumerate() {
            assert_eq!(ease_stop(ease), i);
        }
        assert_eq!(ease_stop(0.07), 0);
        assert_eq!(ease_stop(0.2), 1);
        assert_eq!(ease_stop(0.9), 5);
    }
}
