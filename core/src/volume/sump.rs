//! The shape of a sump: how much is in it at a level, and which level an amount gives.

use super::{above_zero, computed, from_zero, out_of_range};
use crate::error::{Error, ErrorKind, Fault};
use crate::quantity::{Amount, Kind, Unit};
use alloc::format;
use alloc::string::ToString;
use alloc::vec::Vec;
use core::f64::consts::PI;

/// What is lost in the print of a volume: of its size, and m³.
const PRINTED: (f64, f64) = (1e-11, 1e-12);

/// The inside of a sump, measured from its lowest point.
///
/// ```
/// use brimline::{Amount, volume::{Sump, volume_below}};
/// let [diameter, length, level] = ["2 m", "5 m", "1 m"].map(Amount::parse);
/// let drum = Sump::lying_cylinder(diameter?, length?)?;
/// // A published worked example gives 7.854 m³.
/// assert_eq!(format!("{:.0}", volume_below(&drum, level?)?.to_f64()), "7854");
/// # Ok::<(), brimline::Error>(())
/// ```
#[derive(Debug, Clone, PartialEq)]
pub struct Sump(Shape);

/// In metres and cubic metres.
#[derive(Debug, Clone, PartialEq)]
enum Shape {
    /// The volume is height · (a·t + b·t² + c·t³) up to the share t of the height.
    Prismoid {
        height: f64,
        terms: [f64; 3],
    },
    LyingCylinder {
        diameter: f64,
        volume: f64,
    },
    Strapping(Vec<Row>),
}

#[derive(Debug, Clone, Copy, PartialEq)]
struct Row {
    level: f64,
    volume: f64,
}

impl Sump {
    /// A sump whose section changes evenly with the height, by its areas at the bottom, half way up and at the top.
    ///
    /// `height` above zero; `bottom` and `top` zero and above, `middle` above zero. The section between is the parabola
    /// through the three, so that the whole is height/6 · (bottom + 4·middle + top), the prismoidal formula, exact for
    /// frusta, wedges and cylinders.
    ///
    /// Source: prismoidal formula, from memory.
    ///
    /// # Errors
    ///
    /// [`WrongKind`](ErrorKind::WrongKind); [`OutOfRange`](ErrorKind::OutOfRange), also where three areas would leave a
    /// section below zero between them.
    ///
    /// ```
    /// use brimline::{Amount, volume::{Sump, volume_below}};
    /// // A square frustum, exact: 28 m³.
    /// let [height, bottom, middle, top] = ["3 m", "16 m²", "9 m²", "4 m²"].map(Amount::parse);
    /// let height = height?;
    /// let sump = Sump::prismoid(height, bottom?, middle?, top?)?;
    /// assert_eq!(volume_below(&sump, height)?.to_string(), "28000 L");
    /// # Ok::<(), brimline::Error>(())
    /// ```
    pub fn prismoid(
        height: Amount,
        bottom: Amount,
        middle: Amount,
        top: Amount,
    ) -> Result<Self, Error> {
        let high = above_zero("height", height, Kind::Length)?;
        let low = from_zero("bottom", bottom, Kind::Area)?;
        let half = above_zero("middle", middle, Kind::Area)?;
        let up = from_zero("top", top, Kind::Area)?;
        // The section is low + slope·t + bend·t².
        let slope = 4.0 * half - 3.0 * low - up;
        let bend = 2.0 * (low + up) - 4.0 * half;
        let turn = -slope / (2.0 * bend);
        let least = low + slope * turn / 2.0;
        if 0.0 < turn && turn < 1.0 && least < -1e-12 * (low + up) {
            let hint = "with these areas the section would vanish on the way: measure again, or give a strapping table";
            return Err(out_of_range("middle", middle).hint(hint).into());
        }
        Ok(Sump(Shape::Prismoid {
            height: high,
            terms: [low, slope / 2.0, bend / 3.0],
        }))
    }

    /// A cylinder that lies on its side.
    ///
    /// `diameter` and `length` above zero.
    ///
    /// # Errors
    ///
    /// [`WrongKind`](ErrorKind::WrongKind), [`OutOfRange`](ErrorKind::OutOfRange).
    pub fn lying_cylinder(diameter: Amount, length: Amount) -> Result<Self, Error> {
        let across = above_zero("diameter", diameter, Kind::Length)?;
        let long = above_zero("length", length, Kind::Length)?;
        Ok(Sump(Shape::LyingCylinder {
            diameter: across,
            volume: PI / 4.0 * across * across * long,
        }))
    }

    /// A sump that was measured: levels with the volumes below them, two or more, straight lines between.
    ///
    /// Levels and volumes zero and above, both rising from row to row. Below the first row and above the last nothing is
    /// told.
    ///
    /// # Errors
    ///
    /// [`WrongKind`](ErrorKind::WrongKind); [`OutOfRange`](ErrorKind::OutOfRange) for fewer than two rows and for a row that
    /// does not rise. Paths such as `rows[1].level`.
    ///
    /// ```
    /// use brimline::{Amount, volume::{Sump, level_for}};
    /// let rows = [("0 mm", "0 L"), ("10 mm", "0.5 L"), ("30 mm", "2.1 L")];
    /// let mut measured = Vec::new();
    /// for (level, volume) in rows {
    ///     measured.push((Amount::parse(level)?, Amount::parse(volume)?));
    /// }
    /// let sump = Sump::strapping(&measured)?;
    /// assert_eq!(level_for(&sump, Amount::parse("1.3 L")?)?.to_string(), "20 mm");
    /// # Ok::<(), brimline::Error>(())
    /// ```
    pub fn strapping(rows: &[(Amount, Amount)]) -> Result<Self, Error> {
        if rows.len() < 2 {
            let fault = Fault::new(ErrorKind::OutOfRange).at("rows");
            let fault = fault.got(&rows.len().to_string());
            return Err(fault.allowed(["two rows or more"]).into());
        }
        let mut read: Vec<Row> = Vec::with_capacity(rows.len());
        for (index, (level, volume)) in rows.iter().enumerate() {
            let within = |error: Error| {
                let mut fault = error.first().clone();
                fault.path = format!("rows[{index}].{}", fault.path);
                Error::from(fault)
            };
            let row = Row {
                level: from_zero("level", *level, Kind::Length).map_err(within)?,
                volume: from_zero("volume", *volume, Kind::Volume).map_err(within)?,
            };
            let rising = |name, got: Amount| {
                let hint = "each row stands above the one before it, and holds more";
                within(out_of_range(name, got).hint(hint).into())
            };
            if let Some(before) = read.last() {
                if row.level <= before.level {
                    return Err(rising("level", *level));
                }
                if row.volume <= before.volume {
                    return Err(rising("volume", *volume));
                }
            }
            read.push(row);
        }
        Ok(Sump(Shape::Strapping(read)))
    }

    /// Its lowest and its highest level, with the volumes below them.
    fn ends(&self) -> (Row, Row) {
        const EMPTY: Row = Row {
            level: 0.0,
            volume: 0.0,
        };
        match &self.0 {
            Shape::Prismoid { height, terms } => {
                let volume = height * terms.iter().sum::<f64>();
                let level = *height;
                (EMPTY, Row { level, volume })
            }
            Shape::LyingCylinder { diameter, volume } => {
                let (level, volume) = (*diameter, *volume);
                (EMPTY, Row { level, volume })
            }
            Shape::Strapping(rows) => {
                let end = |row: Option<&Row>| row.copied().unwrap_or(EMPTY);
                (end(rows.first()), end(rows.last()))
            }
        }
    }
}

/// How much a sump holds below a level, in L.
///
/// `level` from the lowest point, within the sump.
///
/// Source: geometry; of a lying cylinder the circular segment, formula from memory.
///
/// # Errors
///
/// [`WrongKind`](ErrorKind::WrongKind), [`OutOfRange`](ErrorKind::OutOfRange).
///
/// ```
/// use brimline::{Amount, volume::{Sump, volume_below}};
/// // A published example: radius 50 cm, length 200 cm, level 30 cm hold 396.3 L.
/// let [diameter, length, level] = ["1 m", "2 m", "300 mm"].map(Amount::parse);
/// let drum = Sump::lying_cylinder(diameter?, length?)?;
/// assert_eq!(format!("{:.2}", volume_below(&drum, level?)?.to_f64()), "396.34");
/// # Ok::<(), brimline::Error>(())
/// ```
pub fn volume_below(sump: &Sump, level: Amount) -> Result<Amount, Error> {
    let at = from_zero("level", level, Kind::Length)?;
    let (lowest, highest) = sump.ends();
    if !(lowest.level..=highest.level).contains(&at) {
        let ends = [lowest.level, highest.level];
        return Err(outside("level", level, ends, Unit::Millimetre));
    }
    let below = match &sump.0 {
        Shape::Prismoid { height, terms } => height * cubic(terms, at / height).0,
        Shape::LyingCylinder { diameter, volume } => volume * segment(at / diameter).0,
        Shape::Strapping(rows) => between(rows, at, |row| row.level, |row| row.volume),
    };
    computed("level", below, Unit::Litre)
}

/// The level at which a sump holds a volume, in mm from the lowest point.
///
/// `volume` within what the sump holds.
///
/// Source: as [`volume_below`], solved for the level.
///
/// # Errors
///
/// [`WrongKind`](ErrorKind::WrongKind), [`OutOfRange`](ErrorKind::OutOfRange).
///
/// ```
/// use brimline::{Amount, volume::{Sump, level_for}};
/// let [diameter, length, volume] = ["6 m", "10 m", "240 m³"].map(Amount::parse);
/// let drum = Sump::lying_cylinder(diameter?, length?)?;
/// // A published problem; the answer is computed: 4.7486 m.
/// assert_eq!(format!("{:.1}", level_for(&drum, volume?)?.to_f64()), "4748.6");
/// # Ok::<(), brimline::Error>(())
/// ```
pub fn level_for(sump: &Sump, volume: Amount) -> Result<Amount, Error> {
    let held = from_zero("volume", volume, Kind::Volume)?;
    let (lowest, highest) = sump.ends();
    let room = highest.volume * PRINTED.0 + PRINTED.1;
    if !(lowest.volume - room..=highest.volume + room).contains(&held) {
        let ends = [lowest.volume, highest.volume];
        return Err(outside("volume", volume, ends, Unit::Litre));
    }
    let held = held.clamp(lowest.volume, highest.volume);
    let level = match &sump.0 {
        Shape::Prismoid { height, terms } => {
            height
                * share_of(held / highest.volume, |t| {
                    let (volume, section) = cubic(terms, t);
                    let whole = highest.volume / height;
                    (volume / whole, section / whole)
                })
        }
        Shape::LyingCylinder { diameter, volume } => diameter * share_of(held / volume, segment),
        Shape::Strapping(rows) => between(rows, held, |row| row.volume, |row| row.level),
    };
    computed("volume", level, Unit::Millimetre)
}

/// The share of a circle that lies below a level.
///
/// `diameter` above zero, `level` from its lowest point, zero to the diameter.
///
/// Source: geometry, (φ - sin φ cos φ)/π with cos φ = 1 - 2·level/diameter; formula from memory.
///
/// # Errors
///
/// [`WrongKind`](ErrorKind::WrongKind), [`OutOfRange`](ErrorKind::OutOfRange).
///
/// ```
/// use brimline::{Amount, volume::segment_share};
/// let [level, diameter] = ["100 mm", "1 m"].map(Amount::parse);
/// assert_eq!(segment_share(level?, diameter?)?.to_string(), "0.052044019 ratio");
/// # Ok::<(), brimline::Error>(())
/// ```
pub fn segment_share(level: Amount, diameter: Amount) -> Result<Amount, Error> {
    let across = above_zero("diameter", diameter, Kind::Length)?;
    let at = from_zero("level", level, Kind::Length)?;
    if at > across {
        return Err(outside("level", level, [0.0, across], Unit::Millimetre));
    }
    computed("level", segment(at / across).0, Unit::One)
}

/// The share of a circle below the share t of its diameter, and how fast it grows with t.
fn segment(t: f64) -> (f64, f64) {
    let half_width = libm::sqrt(t * (1.0 - t));
    // From the nearer side, where the angle is exact.
    let angle = 2.0 * libm::asin(libm::sqrt(t.min(1.0 - t)));
    let near = (angle - 2.0 * half_width * (1.0 - 2.0 * t).abs()) / PI;
    let share = if t <= 0.5 { near } else { 1.0 - near };
    (share, 8.0 / PI * half_width)
}

/// a·t + b·t² + c·t³, and its slope.
fn cubic([a, b, c]: &[f64; 3], t: f64) -> (f64, f64) {
    (t * (a + t * (b + t * c)), a + t * (2.0 * b + t * 3.0 * c))
}

/// Where a function that rises from 0 to 1 reaches a share: Newton's method, kept between what is known to be too low and
/// too high.
fn share_of(share: f64, function: impl Fn(f64) -> (f64, f64)) -> f64 {
    let (mut low, mut high) = (0.0, 1.0);
    let mut t = share;
    for _ in 0..60 {
        let (value, slope) = function(t);
        if value > share {
            high = t;
        } else {
            low = t;
        }
        let next = t - (value - share) / slope;
        let next = if low < next && next < high {
            next
        } else {
            (low + high) / 2.0
        };
        if (next - t).abs() < 1e-15 || (value - share).abs() < 4e-16 {
            return next;
        }
        t = next;
    }
    t
}

/// On the straight line between the two rows about a value.
fn between(rows: &[Row], at: f64, of: fn(&Row) -> f64, to: fn(&Row) -> f64) -> f64 {
    let above = rows.partition_point(|row| of(row) < at);
    let below = rows.get(above.saturating_sub(1));
    match (below, rows.get(above)) {
        (Some(below), Some(above)) if of(above) > of(below) => {
            let share = (at - of(below)) / (of(above) - of(below));
            to(below) + share * (to(above) - to(below))
        }
        (below, above) => above.or(below).map_or(0.0, to),
    }
}

fn outside(name: &'static str, got: Amount, ends: [f64; 2], unit: Unit) -> Error {
    let fault = out_of_range(name, got);
    match ends.map(|end| Amount::from_si(end, unit)) {
        [Ok(low), Ok(high)] => fault.allowed([format!("{low} to {high}")]).into(),
        _ => fault.into(),
    }
}
