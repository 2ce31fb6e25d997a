//! The shape of a sump: how much is in it at a level, and which level an amount gives.

use super::{above_zero, computed, from_zero, out_of_range};
use crate::error::{Error, ErrorKind, Fault};
use crate::quantity::{Amount, Unit};
use alloc::format;
use alloc::string::ToString;
use alloc::vec::Vec;
use core::f64::consts::PI;

/// What is lost in the print of a volume: of its size, and L.
const PRINTED: (f64, f64) = (1e-11, 1e-9);

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

/// Heights and levels in mm, areas in m² and volumes in L: a millimetre of a square metre is a litre.
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
        let high = above_zero("height", height, Unit::Millimetre)?;
        let low = from_zero("bottom", bottom, Unit::SquareMetre)?;
        let half = above_zero("middle", middle, Unit::SquareMetre)?;
        let up = from_zero("top", top, Unit::SquareMetre)?;
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
        let across = above_zero("diameter", diameter, Unit::Millimetre)?;
        let long = above_zero("length", length, Unit::Millimetre)?;
        Ok(Sump(Shape::LyingCylinder {
            diameter: across,
            volume: PI / 4e6 * across * across * long,
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
                level: from_zero("level", *level, Unit::Millimetre).map_err(within)?,
                volume: from_zero("volume", *volume, Unit::Litre).map_err(within)?,
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
    let at = from_zero("level", level, Unit::Millimetre)?;
    let (lowest, highest) = sump.ends();
    if !(lowest.level..=highest.level).contains(&at) {
        let ends = [lowest.level, highest.level];
        return Err(outside("level", level, ends, Unit::Millimetre));
    }
    let below = match &sump.0 {
        Shape::Prismoid { height, terms } => height * cubic(terms, at / height).0,
        Shape::LyingCylinder { diameter, volume } => volume * segment(at / diameter),
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
    let held = from_zero("volume", volume, Unit::Litre)?;
    let (lowest, highest) = sump.ends();
    let room = highest.volume * PRINTED.0 + PRINTED.1;
    if !(lowest.volume - room..=highest.volume + room).contains(&held) {
        let ends = [lowest.volume, highest.volume];
        return Err(outside("volume", volume, ends, Unit::Litre));
    }
    let held = held.clamp(lowest.volume, highest.volume);
    let level = match &sump.0 {
        Shape::Prismoid { height, terms } => {
            height * prismoid_share(terms, held / height, highest.volume / height)
        }
        Shape::LyingCylinder { diameter, volume } => diameter * segment_level(held / volume),
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
    let across = above_zero("diameter", diameter, Unit::Millimetre)?;
    let at = from_zero("level", level, Unit::Millimetre)?;
    if at > across {
        return Err(outside("level", level, [0.0, across], Unit::Millimetre));
    }
    computed("level", segment(at / across), Unit::One)
}

/// The share of a circle below the share t of its diameter.
fn segment(t: f64) -> f64 {
    // From the nearer side, where the angle is exact.
    let half = libm::asin(libm::sqrt(t.min(1.0 - t)));
    let near = (2.0 * half - 2.0 * libm::sqrt(t * (1.0 - t)) * (1.0 - 2.0 * t).abs()) / PI;
    if t <= 0.5 { near } else { 1.0 - near }
}

/// The share of the diameter below which a share of a circle lies.
fn segment_level(share: f64) -> f64 {
    // The angle less its sine is 2π of the share: begun by the series of the inverse, ended by Halley's method.
    let turn = 2.0 * PI * share.min(1.0 - share);
    let x = libm::cbrt(6.0 * turn);
    let square = x * x;
    let mut angle = x * (1.0 + square * (1.0 / 60.0 + square * (1.0 / 1400.0 + square / 25200.0)));
    for _ in 0..3 {
        let (sine, cosine) = libm::sincos(angle);
        let slope = 1.0 - cosine;
        let step = (angle - sine - turn) / slope;
        if !step.is_finite() {
            break;
        }
        angle -= step / (1.0 - step * sine / (2.0 * slope));
        if step.abs() < 1e-5 * angle {
            break;
        }
    }
    let near = libm::sin(angle / 4.0);
    let level = near * near;
    if share <= 0.5 { level } else { 1.0 - level }
}

/// a·t + b·t² + c·t³, and its slope.
fn cubic([a, b, c]: &[f64; 3], t: f64) -> (f64, f64) {
    (t * (a + t * (b + t * c)), a + t * (2.0 * b + t * 3.0 * c))
}

/// Where such a rising cubic reaches a value, of the one it has at 1: Newton's method, kept between what is known to be too
/// low and too high.
fn prismoid_share(terms: &[f64; 3], wanted: f64, whole: f64) -> f64 {
    let (mut low, mut high) = (0.0, 1.0);
    let mut t = wanted / whole;
    for _ in 0..60 {
        let (value, slope) = cubic(terms, t);
        if value > wanted {
            high = t;
        } else {
            low = t;
        }
        let step = (value - wanted) / slope;
        let next = t - step;
        if !(low..=high).contains(&next) {
            t = (low + high) / 2.0;
            continue;
        }
        t = next;
        // The error goes with the square of the step.
        if step.abs() <= 1e-8 * t {
            break;
        }
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
    match ends.map(|end| Amount::from_computed(end, unit)) {
        [Ok(low), Ok(high)] => fault.allowed([format!("{low} to {high}")]).into(),
        _ => fault.into(),
    }
}

#[cfg(test)]
mod tests {
    #![allow(clippy::unwrap_used)]

    use super::*;
    use alloc::string::String;

    fn amount(text: &str) -> Amount {
        Amount::parse(text).unwrap()
    }

    fn cylinder(diameter: &str, length: &str) -> Sump {
        Sump::lying_cylinder(amount(diameter), amount(length)).unwrap()
    }

    fn prismoid(height: &str, areas: [&str; 3]) -> Result<Sump, Error> {
        let [bottom, middle, top] = areas.map(amount);
        Sump::prismoid(amount(height), bottom, middle, top)
    }

    fn strapping(rows: &[(&str, &str)]) -> Result<Sump, Error> {
        let rows: Vec<_> = rows
            .iter()
            .map(|(level, volume)| (amount(level), amount(volume)))
            .collect();
        Sump::strapping(&rows)
    }

    fn litres(sump: &Sump, level: &str) -> f64 {
        volume_below(sump, amount(level)).unwrap().to_f64()
    }

    fn millimetres(sump: &Sump, volume: &str) -> f64 {
        level_for(sump, amount(volume)).unwrap().to_f64()
    }

    fn near(got: f64, wanted: f64, within: f64) {
        assert!((got - wanted).abs() <= within, "{got} for {wanted}");
    }

    fn refused<T: core::fmt::Debug>(answer: Result<T, Error>) -> (ErrorKind, String) {
        let error = answer.unwrap_err();
        (error.kind(), error.first().path.clone())
    }

    #[test]
    fn segments() {
        // Geometry, formula from memory, values computed apart from this code; 5e-9.
        for (level, wanted) in [
            ("0 mm", 0.0),
            ("100 mm", 0.05204402),
            ("250 mm", 0.19550111),
            ("300 mm", 0.25231579),
            ("500 mm", 0.5),
            ("750 mm", 0.80449889),
            ("1000 mm", 1.0),
        ] {
            let share = segment_share(amount(level), amount("1 m")).unwrap();
            near(share.si(), wanted, 5e-9);
        }
    }

    #[test]
    fn lying_cylinders() {
        // Published worked examples: r 1 m, 5 m long, half full, 7.854 m³; r 50 cm, 200 cm long, 30 cm, 396.34 L where its page
        // also prints 451.3; r 3, 10 long, 240: the level 4.7486 is computed.
        near(litres(&cylinder("2 m", "5 m"), "1 m"), 7854.0, 0.5);
        near(litres(&cylinder("1 m", "2 m"), "300 mm"), 396.34, 0.005);
        near(
            millimetres(&cylinder("6 m", "10 m"), "240 m³"),
            4748.6,
            0.005,
        );
        let drum = cylinder("1 m", "2 m");
        // What is told of a full one is taken back; its twelve digits tell the last micrometres of so thin a segment no more.
        near(millimetres(&drum, "1570.79632679 L"), 1000.0, 1e-3);
        assert_eq!(litres(&drum, "0 mm"), 0.0);
        assert_eq!(millimetres(&drum, "0 L"), 0.0);
        assert_eq!(litres(&drum, "1 m"), 1570.79632679);
    }

    #[test]
    fn prismoids() {
        // A square frustum, 4 m to 2 m over 3 m: 28 m³ exactly (prismoidal formula from memory); half way up, by its own
        // formula, (64 - 27)/(3 · 2/3) = 18.5 m³.
        let frustum = prismoid("3 m", ["16 m²", "9 m²", "4 m²"]).unwrap();
        near(litres(&frustum, "3 m"), 28_000.0, 1e-9);
        near(litres(&frustum, "1.5 m"), 18_500.0, 1e-9);
        near(millimetres(&frustum, "18.5 m³"), 1500.0, 1e-6);
        let boxed = prismoid("100 mm", ["600 cm²"; 3]).unwrap();
        near(litres(&boxed, "30 mm"), 1.8, 1e-12);
        near(millimetres(&boxed, "1.8 L"), 30.0, 1e-9);
        // A wedge and a pyramid, on their points.
        let wedge = prismoid("1 m", ["0 m²", "1 m²", "2 m²"]).unwrap();
        near(litres(&wedge, "500 mm"), 250.0, 1e-9);
        let pyramid = prismoid("3 m", ["0 m²", "1 m²", "4 m²"]).unwrap();
        near(litres(&pyramid, "3 m"), 4000.0, 1e-9);
        near(millimetres(&pyramid, "0.5 m³"), 1500.0, 1e-6);
    }

    #[test]
    fn strapping_tables() {
        let rows = [("5 mm", "0.1 L"), ("10 mm", "0.5 L"), ("30 mm", "2.1 L")];
        let sump = strapping(&rows).unwrap();
        for (level, volume) in rows {
            near(litres(&sump, level), amount(volume).to_f64(), 1e-12);
            near(millimetres(&sump, volume), amount(level).to_f64(), 1e-12);
        }
        near(litres(&sump, "20 mm"), 1.3, 1e-12);
        near(millimetres(&sump, "1.3 L"), 20.0, 1e-12);
        let out = |path: &str| (ErrorKind::OutOfRange, path.into());
        assert_eq!(refused(volume_below(&sump, amount("4 mm"))), out("level"));
        assert_eq!(refused(volume_below(&sump, amount("31 mm"))), out("level"));
        assert_eq!(refused(level_for(&sump, amount("0 L"))), out("volume"));
        assert_eq!(refused(level_for(&sump, amount("2.2 L"))), out("volume"));
    }

    #[test]
    fn what_is_no_sump_is_refused() {
        let out = |path: &str| (ErrorKind::OutOfRange, path.into());
        let none = Sump::lying_cylinder(amount("0 m"), amount("2 m"));
        assert_eq!(refused(none), out("diameter"));
        let none = Sump::lying_cylinder(amount("1 m"), amount("-2 m"));
        assert_eq!(refused(none), out("length"));
        let none = prismoid("1 m", ["1 m²", "1 m", "1 m²"]);
        assert_eq!(refused(none), (ErrorKind::WrongKind, "middle".into()));
        assert_eq!(refused(prismoid("0 m", ["1 m²"; 3])), out("height"));
        assert_eq!(
            refused(prismoid("1 m", ["1 m²", "0 m²", "1 m²"])),
            out("middle")
        );
        // 1 - 2.61 t + 1.62 t² is below zero at 0.8.
        assert_eq!(
            refused(prismoid("1 m", ["1 m²", "0.1 m²", "0.01 m²"])),
            out("middle")
        );
        assert_eq!(refused(strapping(&[("0 mm", "0 L")])), out("rows"));
        let flat = [("0 mm", "0 L"), ("10 mm", "1 L"), ("10 mm", "2 L")];
        assert_eq!(refused(strapping(&flat)), out("rows[2].level"));
        let falling = [("0 mm", "0 L"), ("10 mm", "1 L"), ("20 mm", "0.9 L")];
        assert_eq!(refused(strapping(&falling)), out("rows[2].volume"));
        let drum = cylinder("1 m", "2 m");
        assert_eq!(
            refused(volume_below(&drum, amount("1001 mm"))),
            out("level")
        );
        assert_eq!(refused(volume_below(&drum, amount("-1 mm"))), out("level"));
        assert_eq!(refused(level_for(&drum, amount("1571 L"))), out("volume"));
    }
}
