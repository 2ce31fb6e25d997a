//! The straight line through the latest readings, where they do not show yet where they are going.

use super::curve::{Point, Stir, Task};

/// At most so many readings make a line; common practice, no source.
const MOST: usize = 6;
/// Pairs of them.
const PAIRS: usize = 15;
/// They lie at least so far apart, in seconds, where there are enough of them; common practice, no source.
const APART: f64 = 30.0;

/// A line in kelvin and seconds.
#[derive(Debug, Clone, Copy)]
pub(super) struct Slope {
    /// The flattest that a pair leaves open.
    pub(super) least: f64,
    /// The median of all pairs, after Theil and Sen.
    pub(super) likely: f64,
    /// The steepest.
    pub(super) most: f64,
    /// The temperature at `now` on it.
    pub(super) now: f64,
    /// Seconds from its first reading to `now`.
    pub(super) reach: f64,
}

/// A reading as it would be had all that was poured since been in it.
fn stirred(point: &Point, stirs: &[Stir]) -> f64 {
    let since = stirs.iter().filter(|stir| stir.at >= point.at);
    since.fold(point.over, |over, stir| stir.kept * over + stir.brought)
}

fn median(sorted: &[f64]) -> Option<f64> {
    let half = sorted.len() / 2;
    let upper = sorted.get(half)?;
    if sorted.len() % 2 == 1 {
        return Some(*upper);
    }
    Some((sorted.get(half.checked_sub(1)?)? + upper) / 2.0)
}

impl Task<'_> {
    /// The line through the latest believed readings, each off by as much as their scatter; `None` for fewer than three, or all at one time.
    ///
    /// A pair leaves open what twice the scatter makes of it over the time between the two. The line's ends come from the pairs at least half the line apart, nearer ones telling the scatter and no slope, and from those
    /// that end at the newest reading: warming slows down, and they know it first. For the same reason it goes through the
    /// newest reading and not through the middle of them all.
    pub(super) fn slope(&self, now: f64, scatter: f64) -> Option<Slope> {
        let (first, last) = self.ends();
        let step = APART.min((last.at - first.at) / 5.0);
        let mut line = [(0.0, 0.0); MOST];
        let mut count = 0_usize;
        let mut before = f64::INFINITY;
        for point in self.believed().rev() {
            if before - point.at < step {
                continue;
            }
            let Some(place) = line.get_mut(count) else {
                break;
            };
            *place = (point.at, stirred(point, self.stirs));
            (before, count) = (point.at, count.saturating_add(1));
        }
        let line = line.get(..count).filter(|line| line.len() >= 3)?;
        let (newest, oldest) = line.first().zip(line.last())?;
        let half = (newest.0 - oldest.0) / 2.0;
        let mut slopes = [0.0; PAIRS];
        let (mut pairs, mut least, mut most) = (0_usize, f64::INFINITY, f64::NEG_INFINITY);
        for (place, (at, over)) in line.iter().enumerate() {
            for (earlier, lower) in line.iter().skip(place.saturating_add(1)) {
                let apart = at - earlier;
                let slope = (over - lower) / apart;
                if let Some(own) = slopes.get_mut(pairs).filter(|_| apart > 0.0) {
                    *own = slope;
                    pairs = pairs.saturating_add(1);
                    if apart >= half || place == 0 {
                        let off = 2.0 * scatter / apart;
                        (least, most) = (least.min(slope - off), most.max(slope + off));
                    }
                }
            }
        }
        let slopes = slopes.get_mut(..pairs)?;
        slopes.sort_unstable_by(f64::total_cmp);
        let likely = median(slopes)?;
        Some(Slope {
            least: least.min(likely),
            likely,
            most: most.max(likely),
            now: newest.1 + likely * (now - newest.0),
            reach: now - oldest.0,
        })
    }
}
