//! Marks of an axis of time, at round hours and minutes of the clock on the wall.

use alloc::format;
use alloc::string::String;
use alloc::vec::Vec;

/// Seconds between marks that are read easily.
const STEPS: [f64; 9] = [
    60.0, 120.0, 300.0, 600.0, 900.0, 1800.0, 3600.0, 10_800.0, 43_200.0,
];
const DAY: f64 = 86_400.0;
/// The most marks on one axis.
const MOST: usize = 6;

/// Marks between two times, both in seconds since a moment: each with its clock, in the offset the moment is written in.
pub(super) fn clock_marks(moment: &str, [from, to]: [f64; 2]) -> Vec<(f64, String)> {
    let Some(start) = clock(moment) else {
        return Vec::new();
    };
    let fits = |step: &&f64| (to - from) / **step <= MOST as f64;
    let days = libm::ceil((to - from) / DAY / MOST as f64) * DAY;
    let step = STEPS.iter().find(fits).copied().unwrap_or(days);
    let first = libm::ceil((start + from) / step);
    (0..=MOST)
        .map(|place| (first + place as f64) * step)
        .map(|mark| (mark - start, hour_and_minute(mark)))
        .filter(|(seconds, _)| *seconds <= to)
        .collect()
}

/// Seconds of the day a moment is written at, where it is.
fn clock(moment: &str) -> Option<f64> {
    let part = |from, to| moment.get(from..to)?.parse::<f64>().ok();
    Some(part(11, 13)? * 3600.0 + part(14, 16)? * 60.0 + part(17, 19)?)
}

fn hour_and_minute(seconds: f64) -> String {
    let minutes = (libm::rint(seconds / 60.0) as i64).rem_euclid(1440);
    format!(
        "{:02}:{:02}",
        minutes.div_euclid(60),
        minutes.rem_euclid(60)
    )
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn marks_stand_at_round_minutes() {
        let marks = clock_marks("2025-05-13T23:48:30+02:00", [-60.0, 1500.0]);
        let told: Vec<_> = marks
            .iter()
            .map(|(at, text)| (*at, text.as_str()))
            .collect();
        assert_eq!(
            told,
            [
                (90.0, "23:50"),
                (390.0, "23:55"),
                (690.0, "00:00"),
                (990.0, "00:05"),
                (1290.0, "00:10")
            ]
        );
    }
}
