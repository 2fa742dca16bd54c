//! The day as records carry it.

use std::time::{SystemTime, UNIX_EPOCH};

/// Nanoseconds of a day; records know no leap seconds.
const DAY_NS: i128 = 86_400 * 1_000_000_000;

/// The day of `now` in universal time, as ISO 8601 writes it: `2026-03-09`. Universal time,
/// because nothing in the standard library tells the place's own.
pub fn iso(now: SystemTime) -> String {
    // Before the epoch too a day begins at midnight, so it is rounded down, never to nought.
    let ns = match now.duration_since(UNIX_EPOCH) {
        Ok(since) => since.as_nanos() as i128,
        Err(before) => -(before.duration().as_nanos() as i128),
    };
    let (year, month, day) = civil(ns.div_euclid(DAY_NS) as i64);
    format!("{year:04}-{month:02}-{day:02}")
}

/// Year, month from 1 and day of the month from 1 of the day so many days after 1970-01-01, in
/// the Gregorian calendar carried on into the past.
///
/// Howard Hinnant, “chrono-Compatible Low-Level Date Algorithms”, `civil_from_days`: years
/// begin in March, so that the leap day is their last, and 400 of them are an era of 146 097
/// days.
const fn civil(days: i64) -> (i64, i64, i64) {
    let days = days + 719_468; // Since 0000-03-01.
    let era = days.div_euclid(146_097);
    let of_era = days.rem_euclid(146_097);
    let year = (of_era - of_era / 1_460 + of_era / 36_524 - of_era / 146_096) / 365;
    let of_year = of_era - (365 * year + year / 4 - year / 100);
    let from_march = (5 * of_year + 2) / 153;
    let day = of_year - (153 * from_march + 2) / 5 + 1;
    let month = if from_march < 10 { from_march + 3 } else { from_march - 9 };
    (year + 400 * era + (month <= 2) as i64, month, day)
}

#[cfg(test)]
mod tests {
    use std::time::Duration;

    use super::*;

    #[test]
    fn known_days_are_told() {
        for (seconds, day) in [
            (0, "1970-01-01"),
            (86_399, "1970-01-01"),
            (86_400, "1970-01-02"),
            (951_782_400, "2000-02-29"),
            (951_868_800, "2000-03-01"),
            (1_000_000_000, "2001-09-09"),
            (1_709_164_800, "2024-02-29"),
            (1_735_689_599, "2024-12-31"),
            (1_735_689_600, "2025-01-01"),
            (4_107_542_400, "2100-03-01"),
        ] {
            assert_eq!(iso(UNIX_EPOCH + Duration::from_secs(seconds)), day, "{seconds}");
        }
        assert_eq!(iso(UNIX_EPOCH - Duration::from_nanos(1)), "1969-12-31");
    }

    /// Months as long as everyone knows them, over two eras and the years round them.
    #[test]
    fn no_day_is_left_out_and_none_comes_twice() {
        let leap = |year: i64| year % 4 == 0 && (year % 100 != 0 || year % 400 == 0);
        let (mut year, mut month, mut day) = (1599, 12, 31);
        for days in -135_141..157_000 {
            assert_eq!(civil(days), (year, month, day));
            let last = match month {
                2 => 28 + i64::from(leap(year)),
                4 | 6 | 9 | 11 => 30,
                _ => 31,
            };
            (year, month, day) = match (month, day) {
                (12, 31) => (year + 1, 1, 1),
                (_, d) if d == last => (year, month + 1, 1),
                (_, d) => (year, month, d + 1),
            };
        }
    }
}
