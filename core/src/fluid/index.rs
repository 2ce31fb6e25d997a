//! The viscosity index: how little an oil thins as it warms.

use super::index_table::ROWS;
use super::{Span, VISCOSITIES, told, viscosity};
use crate::error::{Error, ErrorKind, Fault};
use crate::quantity::{Amount, Unit};
use crate::word::words;
use serde::Serialize;

/// The viscosities at 100 °C that have an index, in mm²/s.
const AT_100: Span = Span(2.0, 2e7, "2 mm²/s to 20000000 mm²/s");

words! {
    /// Which half of ASTM D2270 an index comes from.
    pub enum Procedure {
        /// Up to 100: linear between L and H.
        A = "a",
        /// From 100 on: by logarithms.
        B = "b",
    }
}

/// A viscosity index and what it came from.
#[derive(Debug, Clone, Copy, PartialEq, Serialize)]
#[non_exhaustive]
pub struct ViscosityIndex {
    /// The index to the nearest whole number, half to even, as it is reported.
    pub index: i64,
    /// The half of the standard it comes from.
    pub procedure: Procedure,
    /// Viscosity at 40 °C of an oil of index 0 with the same viscosity at 100 °C, in mm²/s.
    pub l: Amount,
    /// Viscosity at 40 °C of an oil of index 100 with the same viscosity at 100 °C, in mm²/s.
    pub h: Amount,
    /// The index before rounding, a plain number.
    pub unrounded: Amount,
}

/// The viscosity index of an oil from its viscosities at 40 °C and 100 °C.
///
/// At 100 °C from 2 mm²/s on; at 40 °C more than at 100 °C, up to 2·10⁷ mm²/s. L and H come from the table up to and
/// including 70 mm²/s, linear between its rows, and from the two quadratics above; they do not join: at 70 mm²/s the
/// table has L 4905 and H 1558, the quadratics 4903.87 and 1557.66. Source: ASTM D2270-93, procedures A and B, table 1
/// (the same in ISO 2909). Lubricants lie from below 0 to some 400 (from memory): an index far outside follows from the
/// formulas and from no oil, so one of the viscosities, or its temperature, was mistaken.
///
/// # Errors
///
/// [`WrongKind`](ErrorKind::WrongKind); [`OutOfRange`](ErrorKind::OutOfRange) outside those spans;
/// [`Conflict`](ErrorKind::Conflict) where the oil is not thicker at 40 °C.
///
/// ```
/// use brimline::{Amount, fluid::{Procedure, viscosity_index}};
/// // ASTM D2270, example of procedure A: L 119.94, H 69.48, 92.43, reported as 92.
/// let found = viscosity_index(Amount::parse("73.30 mm²/s")?, Amount::parse("8.86 mm²/s")?)?;
/// assert_eq!((found.index, found.procedure), (92, Procedure::A));
/// assert_eq!((found.l.to_string(), found.h.to_string()), ("119.94 mm²/s".into(), "69.48 mm²/s".into()));
/// # Ok::<(), brimline::Error>(())
/// ```
pub fn viscosity_index(
    viscosity_40: Amount,
    viscosity_100: Amount,
) -> Result<ViscosityIndex, Error> {
    let u = viscosity(viscosity_40, &VISCOSITIES, "viscosity_40")?;
    let y = viscosity(viscosity_100, &AT_100, "viscosity_100")?;
    if u <= y {
        let fault = Fault::new(ErrorKind::Conflict).at("viscosity_40");
        let hint = "an oil is thicker at 40 °C than at 100 °C: were the two swapped?";
        return Err(fault
            .got(&alloc::format!("{viscosity_40}"))
            .hint(hint)
            .into());
    }
    let (l, h) = references(y);
    let (procedure, index) = if u < h {
        let n = (libm::log10(h) - libm::log10(u)) / libm::log10(y);
        (Procedure::B, (libm::exp10(n) - 1.0) / 0.00715 + 100.0)
    } else {
        (Procedure::A, (l - u) / (l - h) * 100.0)
    };
    Ok(ViscosityIndex {
        index: libm::rint(index) as i64,
        procedure,
        l: told(l)?,
        h: told(h)?,
        unrounded: Amount::from_computed(index, Unit::One)?,
    })
}

/// L and H of a viscosity at 100 °C, all in mm²/s.
fn references(y: f64) -> (f64, f64) {
    let next = ROWS.partition_point(|row| row.0 <= y);
    let row = |place: Option<usize>| place.and_then(|place| ROWS.get(place)).copied();
    match (row(next.checked_sub(1)), row(Some(next))) {
        (Some((y0, l0, h0)), Some((y1, l1, h1))) => {
            let part = (y - y0) / (y1 - y0);
            (l0 + part * (l1 - l0), h0 + part * (h1 - h0))
        }
        (Some((end, l, h)), None) if y <= end => (l, h),
        _ => (
            (0.8353 * y + 14.67) * y - 216.0,
            (0.1684 * y + 11.85) * y - 97.0,
        ),
    }
}

#[cfg(test)]
mod tests {
    #![allow(clippy::unwrap_used, clippy::arithmetic_side_effects)]

    use super::*;

    fn amount(text: &str) -> Amount {
        Amount::parse(text).unwrap()
    }

    fn index(at_40: &str, at_100: &str) -> ViscosityIndex {
        viscosity_index(amount(at_40), amount(at_100)).unwrap()
    }

    #[test]
    fn the_examples_of_the_standard() {
        // ASTM D2270-93, 5.1.4 and 6.1.4; the third is from memory, with the same integer in chemicals 1.5.2. Printed
        // unrounded: 92.43; 156.37, there from rounded H 28.97 and N 0.14708.
        for (at_40, at_100, expected, procedure, printed, off) in [
            ("73.30 mm²/s", "8.86 mm²/s", 92, Procedure::A, 92.43, 0.005),
            ("22.83 mm²/s", "5.05 mm²/s", 156, Procedure::B, 156.37, 0.06),
            ("53.47 mm²/s", "7.80 mm²/s", 111, Procedure::B, 111.0, 0.5),
        ] {
            let found = index(at_40, at_100);
            assert_eq!((found.index, found.procedure), (expected, procedure));
            assert!(
                (found.unrounded.to_f64() - printed).abs() <= off,
                "{found:?}"
            );
        }
        assert!((index("22.83 mm²/s", "5.05 mm²/s").h.to_f64() - 28.97).abs() <= 0.0051);
        // The table's own rows, as printed.
        for (at_100, l, h) in [
            ("2 mm²/s", "7.994 mm²/s", "6.394 mm²/s"),
            ("4 mm²/s", "25.32 mm²/s", "19.56 mm²/s"),
            ("5.0 mm²/s", "40.23 mm²/s", "28.49 mm²/s"),
            ("5.1 mm²/s", "41.99 mm²/s", "29.46 mm²/s"),
            ("6 mm²/s", "57.97 mm²/s", "38.19 mm²/s"),
            ("7 mm²/s", "78 mm²/s", "48.57 mm²/s"),
            ("7.8 mm²/s", "95.43 mm²/s", "57.31 mm²/s"),
            ("8.8 mm²/s", "118.5 mm²/s", "68.79 mm²/s"),
            ("10 mm²/s", "147.7 mm²/s", "82.87 mm²/s"),
            ("70 mm²/s", "4905 mm²/s", "1558 mm²/s"),
        ] {
            let found = index("5000 mm²/s", at_100);
            assert_eq!((found.l, found.h), (amount(l), amount(h)));
        }
    }

    #[test]
    fn an_oil_of_h_has_100_and_one_of_l_has_0() {
        for (y, l, h) in ROWS {
            let at = |number| viscosity_index(told(number).unwrap(), told(*y).unwrap()).unwrap();
            let (hundred, nothing) = (at(*h), at(*l));
            assert_eq!((hundred.index, hundred.procedure), (100, Procedure::A));
            assert_eq!((nothing.index, nothing.procedure), (0, Procedure::A));
            let thinner = at(h - 1e-6);
            assert_eq!(thinner.procedure, Procedure::B);
            assert!(thinner.unrounded > hundred.unrounded);
            assert!(thinner.unrounded.to_f64() < 100.001);
        }
    }

    #[test]
    fn the_join_at_70_steps_as_the_standard_has_it() {
        // ASTM D2270: 4903.87 and 1557.66 by the quadratics, 4905 and 1558 in the table.
        let (table, above) = (references(70.0), references(70.0 + 1e-9));
        assert_eq!(table, (4905.0, 1558.0));
        assert!((above.0 - 4903.87).abs() < 1e-5 && (above.1 - 1557.66).abs() < 1e-5);
        let [at, past] = ["70 mm²/s", "70.000000001 mm²/s"].map(|y| index("1557.8 mm²/s", y));
        assert_eq!((at.procedure, past.procedure), (Procedure::B, Procedure::A));
    }

    #[test]
    fn the_table_meets_the_quadratics_of_the_appendix() {
        // ASTM D2270, table X2.1: from Y on, L = a·Y² + b·Y + c and H = d·Y² + e·Y + f.
        const FROM: [(f64, [f64; 3], [f64; 3]); 15] = [
            (2.0, [1.14673, 1.7576, -0.109], [0.84155, 1.5521, -0.077]),
            (3.8, [3.38095, -15.4952, 33.196], [0.78571, 1.7929, -0.183]),
            (4.4, [2.5, -7.2143, 13.812], [0.82143, 1.5679, 0.119]),
            (5.0, [0.101, 16.635, -45.469], [0.04985, 9.1613, -18.557]),
            (6.4, [3.35714, -23.5643, 78.466], [0.22619, 7.7369, -16.656]),
            (7.0, [0.01191, 21.475, -72.870], [0.79762, -0.7321, 14.61]),
            (7.7, [0.41858, 16.1558, -56.04], [0.05794, 10.5156, -28.24]),
            (9.0, [0.88779, 7.5527, -16.6], [0.26665, 6.7015, -10.81]),
            (12.0, [0.7672, 10.7972, -38.18], [0.20073, 8.4658, -22.49]),
            (15.0, [0.97305, 5.3135, -2.2], [0.28889, 5.9741, -4.93]),
            (18.0, [0.97256, 5.25, -0.98], [0.24504, 7.416, -16.73]),
            (22.0, [0.91413, 7.4759, -21.82], [0.20323, 9.1267, -34.23]),
            (28.0, [0.87031, 9.7157, -50.77], [0.18411, 10.1015, -46.75]),
            (
                40.0,
                [0.84703, 12.6752, -133.31],
                [0.17029, 11.4866, -80.62],
            ),
            (55.0, [0.85921, 11.1009, -83.19], [0.1713, 11.368, -76.94]),
        ];
        assert_eq!(ROWS.len(), 311);
        for (y, l, h) in ROWS {
            let (_, for_l, for_h) = FROM.iter().rfind(|(from, ..)| from <= y).unwrap();
            for (printed, [a, b, c]) in [(l, for_l), (h, for_h)] {
                let computed = (a * y + b) * y + c;
                assert!(
                    (computed / printed - 1.0).abs() < 1.2e-3,
                    "{y}: {computed} for {printed}"
                );
            }
        }
        let next = ROWS.iter().skip(1);
        let mut pairs = ROWS.iter().zip(next);
        assert!(pairs.all(|(one, next)| one.0 < next.0 && one.1 < next.1 && one.2 < next.2));
    }

    #[test]
    fn refused_with_the_name_of_the_argument() {
        for (at_40, at_100, kind, path) in [
            (
                "5 mm²/s",
                "1.999 mm²/s",
                ErrorKind::OutOfRange,
                "viscosity_100",
            ),
            (
                "5.05 mm²/s",
                "22.83 mm²/s",
                ErrorKind::Conflict,
                "viscosity_40",
            ),
            (
                "5.05 mm²/s",
                "5.05 mm²/s",
                ErrorKind::Conflict,
                "viscosity_40",
            ),
            ("22 °C", "5 mm²/s", ErrorKind::WrongKind, "viscosity_40"),
            ("0 mm²/s", "5 mm²/s", ErrorKind::OutOfRange, "viscosity_40"),
            ("30 mm²/s", "5 L", ErrorKind::WrongKind, "viscosity_100"),
        ] {
            let error = viscosity_index(amount(at_40), amount(at_100)).unwrap_err();
            assert_eq!((error.kind(), &*error.first().path), (kind, path));
        }
        // Far out, a number still.
        let far = index("20000000 mm²/s", "2 mm²/s");
        assert!(far.index < -1_000_000_000);
        assert!(index("2.01 mm²/s", "2 mm²/s").index > 100);
    }
}
