//! The day as records carry it.

use std::time::{SystemTime, UNIX_EPOCH};

use jiff::Timestamp;
use jiff::tz::TimeZone;

/// The day of `now` where this computer stands, as ISO 8601 writes it: `2026-03-09`.
pub fn iso(now: SystemTime) -> String {
    iso_in(&TimeZone::system(), now)
}

/// The same where clocks go as `zone` says. A clock gone wild tells the first or last day there
/// is.
fn iso_in(zone: &TimeZone, now: SystemTime) -> String {
    let end = if now < UNIX_EPOCH { Timestamp::MIN } else { Timestamp::MAX };
    let now = Timestamp::try_from(now).unwrap_or(end);
    zone.to_datetime(now).date().to_string()
}

#[cfg(test)]
mod tests {
    use std::time::Duration;

    use super::*;
    use jiff::tz::offset;

    #[test]
    fn known_days_are_told() {
        for (seconds, day) in [
            (0, "1970-01-01"),
            (86_399, "1970-01-01"),
            (86_400, "1970-01-02"),
            (951_782_400, "2000-02-29"),
            (1_735_689_599, "2024-12-31"),
            (1_735_689_600, "2025-01-01"),
            (4_107_542_400, "2100-03-01"),
        ] {
            let now = UNIX_EPOCH + Duration::from_secs(seconds);
            assert_eq!(iso_in(&TimeZone::UTC, now), day, "{seconds}");
        }
        assert_eq!(iso_in(&TimeZone::UTC, UNIX_EPOCH - Duration::from_nanos(1)), "1969-12-31");
    }

    #[test]
    fn it_is_the_day_of_the_place() {
        let now = UNIX_EPOCH + Duration::from_secs(1_735_689_599);
        assert_eq!(iso_in(&TimeZone::fixed(offset(1)), now), "2025-01-01");
        assert_eq!(iso_in(&TimeZone::fixed(offset(-11)), now), "2024-12-31");
    }

    #[test]
    fn a_clock_gone_wild_still_tells_a_day() {
        let far = UNIX_EPOCH + Duration::from_secs(1 << 50);
        assert!(iso(far).starts_with("9999-12-"), "{}", iso(far));
    }
}
