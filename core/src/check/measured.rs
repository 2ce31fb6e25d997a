//! A volume as it was measured, booked as an interval: what the way of measuring leaves open.

use super::entry::{Measured, MeasuredBy};
use super::ledger::Span;
use crate::document::{Node, Reader};
use crate::error::{ErrorKind, Fault};
use crate::procedure::Procedure;
use crate::quantity::{Amount, Kind};
use alloc::format;
use alloc::string::{String, ToString};
use core::str::FromStr;
use serde::{Serialize, Serializer};

/// Counts of volume in a microlitre.
const MICROLITRE: i128 = 10_000_000_000_000_000_000;
/// Counts of volume in a millilitre.
const MILLILITRE: i128 = 1_000 * MICROLITRE;
/// Counts of mass in a gram.
const GRAM: i128 = 100_000_000_000_000;
/// More than any sealed unit holds, for where the sheet states no capacity: 1000 L.
const LARGEST_UNIT: i128 = 1_000_000 * MILLILITRE;

/// A share in percent, exact.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
struct Percent {
    mantissa: i128,
    decimals: u8,
}

impl Percent {
    const fn whole(mantissa: i128) -> Self {
        Percent {
            mantissa,
            decimals: 0,
        }
    }

    /// `1.5 %`, up to six decimals, less than 100 %.
    fn parse(text: &str) -> Option<Self> {
        let number = text.strip_suffix('%')?.trim_end();
        let (whole, fraction) = number.split_once('.').unwrap_or((number, ""));
        let digits = format!("{whole}{fraction}");
        let plain = !whole.is_empty()
            && digits.len() <= 8
            && digits.bytes().all(|byte| byte.is_ascii_digit());
        let decimals = u8::try_from(fraction.len())
            .ok()
            .filter(|decimals| *decimals <= 6)?;
        let share = Percent {
            mantissa: i128::from_str(&digits).ok().filter(|_| plain)?,
            decimals,
        };
        (share.mantissa < share.hundred()).then_some(share)
    }

    /// A hundred percent, in the units of the mantissa.
    fn hundred(self) -> i128 {
        10_i128
            .saturating_pow(u32::from(self.decimals))
            .saturating_mul(100)
    }

    /// That share of a count, rounded up.
    fn of(self, count: i128) -> Option<i128> {
        ceiling(count.checked_mul(self.mantissa)?, self.hundred())
    }
}

/// How far a measurement may be off, either way.
#[derive(Debug, Clone, PartialEq, Eq)]
enum Width {
    Percent(Percent, String),
    Amount(Amount),
}

impl Serialize for Width {
    fn serialize<S: Serializer>(&self, serializer: S) -> Result<S::Ok, S::Error> {
        match self {
            Width::Percent(_, text) => serializer.serialize_str(text),
            Width::Amount(amount) => amount.serialize(serializer),
        }
    }
}

/// The half-widths a shop states for its own tools.
#[derive(Debug, Clone, PartialEq, Eq, Default, Serialize)]
pub(crate) struct HalfWidths {
    #[serde(skip_serializing_if = "Option::is_none")]
    sealed: Option<Width>,
    #[serde(skip_serializing_if = "Option::is_none")]
    meter: Option<Width>,
    #[serde(skip_serializing_if = "Option::is_none")]
    jug: Option<Width>,
    #[serde(skip_serializing_if = "Option::is_none")]
    scale: Option<Width>,
    #[serde(skip_serializing_if = "Option::is_none")]
    scale_density: Option<Width>,
    #[serde(skip_serializing_if = "Option::is_none")]
    eye: Option<Width>,
    #[serde(skip_serializing_if = "Option::is_none")]
    eye_drained: Option<Width>,
}

/// Reads `profile.half_width`.
pub(super) fn half_widths(reader: &mut Reader<'_>, node: &Node<'_>) -> Option<HalfWidths> {
    let names = &[
        "sealed",
        "meter",
        "jug",
        "scale",
        "scale_density",
        "eye",
        "eye_drained",
    ];
    let object = reader.object(node, names)?;
    let mut read = |name: &'static str, kind: Kind, share: bool| {
        reader.optional(&object, name, |reader, node| {
            width(reader, node, kind, share)
        })
    };
    Some(HalfWidths {
        sealed: read("sealed", Kind::Volume, true),
        meter: read("meter", Kind::Volume, true),
        jug: read("jug", Kind::Volume, true),
        scale: read("scale", Kind::Mass, false),
        scale_density: read("scale_density", Kind::Density, true),
        eye: read("eye", Kind::Volume, true),
        eye_drained: read("eye_drained", Kind::Volume, true),
    })
}

fn width(reader: &mut Reader<'_>, node: &Node<'_>, kind: Kind, share: bool) -> Option<Width> {
    let is_share = node
        .text()
        .is_some_and(|text| text.trim_end().ends_with('%'));
    if !is_share && kind != Kind::Density {
        return reader.amount_from_zero(node, kind).map(Width::Amount);
    }
    let text = reader.str(node)?;
    let parsed = Percent::parse(text).filter(|_| share);
    if parsed.is_none() {
        let allowed = if share {
            "a share below 100 %, as \"1.5 %\""
        } else {
            "a mass, as \"5 g\""
        };
        reader.note(
            Fault::new(ErrorKind::OutOfRange)
                .got(text)
                .allowed([allowed]),
        );
    }
    parsed.map(|share| Width::Percent(share, text.to_string()))
}

/// A volume as booked: the nominal count, and the interval it stands for.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub(super) struct Booked {
    pub(super) nominal: i128,
    pub(super) span: Span,
}

/// Why a volume is recorded and not booked.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub(super) enum Unbooked {
    Negative,
    Impossible,
    DensityUnknown,
}

/// What booking needs to know of the sheet and the shop.
#[derive(Debug, Clone, Copy)]
pub(super) struct Booking<'a> {
    pub(super) widths: Option<&'a HalfWidths>,
    /// The largest volume that is possible.
    pub(super) most: i128,
}

impl<'a> Booking<'a> {
    /// Half as much again as the unit holds is more than anybody could pour or drain.
    pub(super) fn on(sheet: Option<&Procedure>, widths: Option<&'a HalfWidths>) -> Self {
        let capacity = sheet.and_then(|sheet| sheet.capacity.as_ref());
        let holds = capacity.and_then(|capacity| capacity.total.or(capacity.refill)?.count());
        let holds = holds.unwrap_or(LARGEST_UNIT);
        let most = holds.saturating_add(holds.checked_div(2).unwrap_or(0));
        Booking { widths, most }
    }

    /// Books a volume or a mass. `drained` is for what came out, which is harder to judge by eye.
    pub(super) fn book(
        &self,
        measured: &Measured,
        drained: bool,
        density: Option<Amount>,
    ) -> Result<Booked, Unbooked> {
        if measured.amount.is_negative() {
            return Err(Unbooked::Negative);
        }
        let is_mass = measured.amount.kind() == Kind::Mass;
        let count = measured.amount.count().ok_or(Unbooked::Impossible)?;
        let density = density
            .and_then(|density| density.count())
            .filter(|count| *count > 0);
        let volume = match (is_mass, density) {
            // In microlitres, as a fraction: ten counts of mass over a count of density make one.
            (true, Some(density)) => Fraction {
                over: count.checked_mul(10),
                under: density,
            },
            (true, None) => return Err(Unbooked::DensityUnknown),
            (false, _) => Fraction {
                over: Some(count),
                under: MICROLITRE,
            }
            .reduced(),
        };
        let nominal = match is_mass {
            true => volume
                .nearest()
                .and_then(|microlitres| microlitres.checked_mul(MICROLITRE)),
            false => Some(count),
        };
        let nominal = nominal
            .filter(|nominal| *nominal <= self.most)
            .ok_or(Unbooked::Impossible)?;
        let span = match (measured.by, density) {
            (Some(MeasuredBy::Scale), Some(density)) if is_mass => {
                let mass = Fraction {
                    over: Some(count),
                    under: 1,
                };
                self.weighed(mass, density)
            }
            // A volume told by a scale was read off as a mass.
            (Some(MeasuredBy::Scale), Some(density)) => {
                let mass = Fraction {
                    over: volume.over.and_then(|over| over.checked_mul(density)),
                    under: volume.under.saturating_mul(10),
                };
                self.weighed(mass.reduced(), density)
            }
            (by, _) => {
                let width = self.half_width(nominal, by, drained);
                let known = match is_mass {
                    true => volume.outward(),
                    false => Some(Span::new(nominal, nominal)),
                };
                known.zip(width).and_then(|(known, width)| {
                    Some(known.plus(Span::new(width.checked_neg()?, width)))
                })
            }
        };
        Ok(Booked {
            nominal,
            span: span.ok_or(Unbooked::Impossible)?,
        })
    }

    /// What a way of measuring leaves open, in counts: trade values, no source, or the shop's own.
    fn half_width(&self, nominal: i128, by: Option<MeasuredBy>, drained: bool) -> Option<i128> {
        let none = HalfWidths::default();
        let own = self.widths.unwrap_or(&none);
        let (stated, default) = match by {
            Some(MeasuredBy::Sealed) => (&own.sealed, Percent::whole(1).of(nominal)),
            Some(MeasuredBy::Meter) => (&own.meter, Percent::whole(2).of(nominal)),
            Some(MeasuredBy::Jug) => (&own.jug, Some(20 * MILLILITRE)),
            Some(MeasuredBy::Eye) if drained => (&own.eye_drained, Some(100 * MILLILITRE)),
            Some(MeasuredBy::Eye) => (&own.eye, Some(60 * MILLILITRE)),
            Some(MeasuredBy::Scale) | None => (&None, Some(0)),
        };
        match stated {
            Some(Width::Percent(share, _)) => share.of(nominal),
            Some(Width::Amount(amount)) => amount.count(),
            None => default,
        }
    }

    /// A scale is off by some grams, and the density by a share of itself. `mass` is in counts.
    fn weighed(&self, mass: Fraction, density: i128) -> Option<Span> {
        let grams = match self.widths.and_then(|own| own.scale.as_ref()) {
            Some(Width::Amount(mass)) => mass.count()?,
            _ => 5 * GRAM,
        };
        let share = match self.widths.and_then(|own| own.scale_density.as_ref()) {
            Some(Width::Percent(share, _)) => *share,
            _ => Percent {
                mantissa: 25,
                decimals: 1,
            },
        };
        // Ten counts of mass over a count of density make a microlitre.
        let hundred = share.hundred();
        let over = |mass: i128| mass.checked_mul(10)?.checked_mul(hundred);
        let under = |share: i128| mass.under.checked_mul(density)?.checked_mul(share);
        let off = grams.checked_mul(mass.under)?;
        let lo = floor(
            over(mass.over?.checked_sub(off)?)?,
            under(hundred.checked_add(share.mantissa)?)?,
        )?;
        let hi = ceiling(
            over(mass.over?.checked_add(off)?)?,
            under(hundred.checked_sub(share.mantissa)?)?,
        )?;
        Some(Span::new(
            lo.checked_mul(MICROLITRE)?,
            hi.checked_mul(MICROLITRE)?,
        ))
    }
}

/// A fraction with a positive denominator.
#[derive(Clone, Copy)]
struct Fraction {
    over: Option<i128>,
    under: i128,
}

impl Fraction {
    fn reduced(self) -> Self {
        let (mut a, mut b) = (self.over.unwrap_or(0).saturating_abs(), self.under);
        while let Some(rest) = a.checked_rem(b) {
            (a, b) = (b, rest);
        }
        let divide = |n: i128| n.checked_div(a).unwrap_or(n);
        Fraction {
            over: self.over.map(divide),
            under: divide(self.under),
        }
    }

    /// To the nearest microlitre, halves up.
    fn nearest(self) -> Option<i128> {
        let doubled = self.over?.checked_mul(2)?.checked_add(self.under)?;
        floor(doubled, self.under.checked_mul(2)?)
    }

    /// The whole microlitres around it, in counts.
    fn outward(self) -> Option<Span> {
        let lo = floor(self.over?, self.under)?.checked_mul(MICROLITRE)?;
        let hi = ceiling(self.over?, self.under)?.checked_mul(MICROLITRE)?;
        Some(Span::new(lo, hi))
    }
}

fn floor(over: i128, under: i128) -> Option<i128> {
    over.checked_div_euclid(under)
}

fn ceiling(over: i128, under: i128) -> Option<i128> {
    over.checked_neg()?.checked_div_euclid(under)?.checked_neg()
}

#[cfg(test)]
mod tests {
    #![allow(clippy::unwrap_used)]
    use super::*;

    fn booked(text: &str, by: Option<MeasuredBy>, drained: bool) -> Booked {
        let measured = Measured {
            amount: Amount::parse(text).unwrap(),
            by,
        };
        let density = Amount::parse("840 kg/m³").ok();
        Booking {
            widths: None,
            most: LARGEST_UNIT,
        }
        .book(&measured, drained, density)
        .unwrap()
    }

    // Worked by hand: 420 g at 840 kg/m³ is 500 mL; the scale is off by 5 g, the density by 2.5 %:
    // 415/0.861 = 481.997… mL and 425/0.819 = 518.925… mL.
    #[test]
    fn a_weighed_half_litre() {
        let half = booked("420 g", Some(MeasuredBy::Scale), true);
        assert_eq!(half.nominal, 500 * MILLILITRE);
        assert_eq!(
            half.span,
            Span::new(481_997 * MICROLITRE, 518_926 * MICROLITRE)
        );
        // The same volume, said as a volume.
        assert_eq!(booked("500 mL", Some(MeasuredBy::Scale), true), half);
    }

    // Worked by hand: 100 g at 840 kg/m³ is 119.047619… mL.
    #[test]
    fn a_mass_is_rounded_outward() {
        let mass = booked("100 g", None, false);
        assert_eq!(mass.nominal, 119_048 * MICROLITRE);
        assert_eq!(
            mass.span,
            Span::new(119_047 * MICROLITRE, 119_048 * MICROLITRE)
        );
    }

    #[test]
    fn each_way_of_measuring_leaves_its_own_width() {
        let half = |by, drained| booked("500 mL", Some(by), drained).span;
        let around =
            |width: i128| Span::new((500 - width) * MILLILITRE, (500 + width) * MILLILITRE);
        assert_eq!(half(MeasuredBy::Sealed, false), around(5));
        assert_eq!(half(MeasuredBy::Meter, false), around(10));
        assert_eq!(half(MeasuredBy::Jug, false), around(20));
        assert_eq!(half(MeasuredBy::Eye, false), around(60));
        assert_eq!(half(MeasuredBy::Eye, true), around(100));
    }
}
