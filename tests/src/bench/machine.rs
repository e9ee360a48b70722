//! Where and when a bench ran.

use std::time::{SystemTime, UNIX_EPOCH};

/// The processor and how many of its threads are ours.
pub(super) fn describe() -> String {
    let threads = std::thread::available_parallelism().map_or(1, usize::from);
    let info = std::fs::read_to_string("/proc/cpuinfo").unwrap_or_default();
    let name =
        info.lines().find_map(|line| line.strip_prefix("model name")?.split_once(':').map(|(_, name)| name.trim()));
    format!("{}, {threads} threads", name.unwrap_or(std::env::consts::ARCH))
}

/// Today in UTC, as 2026-01-31.
pub(super) fn today() -> String {
    let seconds = SystemTime::now().duration_since(UNIX_EPOCH).map_or(0, |since| since.as_secs());
    date(seconds / 86_400)
}

/// The Gregorian date `days` days after 1970-01-01: years are taken to begin in March, so that the leap day is a
/// year's last and the months' lengths follow one line (H. Hinnant, "chrono-compatible low-level date algorithms",
/// `civil_from_days`).
fn date(days: u64) -> String {
    let days = days + 719_468;
    let (era, day_of_era) = (days / 146_097, days % 146_097);
    let year_of_era = (day_of_era - day_of_era / 1_460 + day_of_era / 36_524 - day_of_era / 146_096) / 365;
    let day_of_year = day_of_era - (365 * year_of_era + year_of_era / 4 - year_of_era / 100);
    let month_from_march = (5 * day_of_year + 2) / 153;
    let day = day_of_year - (153 * month_from_march + 2) / 5 + 1;
    let month = if month_from_march < 10 { month_from_march + 3 } else { month_from_march - 9 };
    let year = 400 * era + year_of_era + u64::from(month <= 2);
    format!("{year}-{month:02}-{day:02}")
}

#[cfg(test)]
mod tests {
    use super::date;

    /// Days since 1970 by `date -u -d DATE +%s` of GNU coreutils, divided by 86 400.
    #[test]
    fn dates_are_those_of_the_calendar() {
        assert_eq!(date(0), "1970-01-01");
        assert_eq!(date(11_016), "2000-02-29");
        assert_eq!(date(11_017), "2000-03-01");
        assert_eq!(date(20_453), "2025-12-31");
        assert_eq!(date(20_454), "2026-01-01");
    }
}
