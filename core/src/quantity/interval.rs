//! Closed intervals of amounts, possibly unbounded.

use super::amount::Amount;
use crate::error::{Error, ErrorKind, Fault};
use alloc::string::ToString;
use core::cmp::Ordering;
use core::fmt;
use core::str::FromStr;
use serde::de::{Deserialize, Deserializer, Error as _};
use serde::ser::{Serialize, SerializeTuple, Serializer};

/// Everything from one amount to another, both included; without an end it reaches to infinity there.
///
/// ```
/// use brimline::{Amount, Interval};
/// let short: Interval = "[-2.0 L, -1.5 L]".parse()?;
/// assert!(short.contains(&Amount::parse("-1.5 L")?)?);
/// assert_eq!(short.width()?.unwrap().to_string(), "0.5 L");
/// let below: Interval = "(-inf, -1800 mL]".parse()?;
/// assert_eq!(short.intersect(&below)?.unwrap().to_string(), "[-2.0 L, -1800 mL]");
/// # Ok::<(), brimline::Error>(())
/// ```
#[derive(Debug, Clone, Copy, PartialEq, Eq, Hash)]
pub struct Interval {
    lo: Option<Amount>,
    hi: Option<Amount>,
}

impl Interval {
    /// From minus to plus infinity.
    pub const UNBOUNDED: Interval = Interval { lo: None, hi: None };

    /// The interval of two ends; `None` where it is unbounded.
    ///
    /// # Errors
    ///
    /// [`WrongKind`](crate::ErrorKind::WrongKind) for ends of two kinds, [`OutOfRange`](crate::ErrorKind::OutOfRange)
    /// where the lower end is above the upper.
    ///
    /// ```
    /// # use brimline::{Amount, Interval};
    /// let at_most = Interval::new(None, Some(Amount::parse("0 L")?))?;
    /// assert_eq!(at_most.to_string(), "(-inf, 0 L]");
    /// # Ok::<(), brimline::Error>(())
    /// ```
    pub fn new(lo: Option<Amount>, hi: Option<Amount>) -> Result<Self, Error> {
        if let (Some(lo), Some(hi)) = (lo, hi)
            && lo.compare(&hi)?.is_gt()
        {
            let fault = Fault::new(ErrorKind::OutOfRange).got(&alloc::format!("[{lo}, {hi}]"));
            return Err(fault.hint("the lower end comes first").into());
        }
        Ok(Interval { lo, hi })
    }

    /// The interval of one amount alone.
    #[must_use]
    pub const fn of(amount: Amount) -> Self {
        Interval {
            lo: Some(amount),
            hi: Some(amount),
        }
    }

    /// Its lower end; `None` where it is unbounded.
    #[must_use]
    pub const fn lo(&self) -> Option<Amount> {
        self.lo
    }

    /// Its upper end; `None` where it is unbounded.
    #[must_use]
    pub const fn hi(&self) -> Option<Amount> {
        self.hi
    }

    /// Whether an amount lies within, the ends included.
    ///
    /// # Errors
    ///
    /// [`WrongKind`](crate::ErrorKind::WrongKind).
    ///
    /// ```
    /// # use brimline::{Amount, Interval};
    /// let window: Interval = "[45 °C, +inf)".parse()?;
    /// assert!(window.contains(&Amount::parse("113 °F")?)?);
    /// # Ok::<(), brimline::Error>(())
    /// ```
    pub fn contains(&self, amount: &Amount) -> Result<bool, Error> {
        let above = self
            .lo
            .map_or(Ok(Ordering::Less), |lo| lo.compare(amount))?;
        let below = self
            .hi
            .map_or(Ok(Ordering::Greater), |hi| hi.compare(amount))?;
        Ok(above.is_le() && below.is_ge())
    }

    /// What two intervals have in common; `None` where that is nothing. Equal ends are printed as in the first.
    ///
    /// # Errors
    ///
    /// [`WrongKind`](crate::ErrorKind::WrongKind).
    ///
    /// ```
    /// # use brimline::Interval;
    /// let (low, high): (Interval, Interval) = ("(-inf, 0 L]".parse()?, "[1 L, +inf)".parse()?);
    /// assert_eq!(low.intersect(&high)?, None);
    /// # Ok::<(), brimline::Error>(())
    /// ```
    pub fn intersect(&self, other: &Interval) -> Result<Option<Interval>, Error> {
        let tighter =
            |one: Option<Amount>, other: Option<Amount>, side: Ordering| match (one, other) {
                (Some(one), Some(other)) => Ok(Some(if other.compare(&one)? == side {
                    other
                } else {
                    one
                })),
                (one, other) => Ok::<_, Error>(one.or(other)),
            };
        let lo = tighter(self.lo, other.lo, Ordering::Greater)?;
        let hi = tighter(self.hi, other.hi, Ordering::Less)?;
        match (lo, hi) {
            (Some(lo), Some(hi)) if lo.compare(&hi)?.is_gt() => Ok(None),
            _ => Ok(Some(Interval { lo, hi })),
        }
    }

    /// Upper end less lower end, in the unit of the upper; `None` where it is unbounded.
    ///
    /// # Errors
    ///
    /// As [`Amount::checked_sub`].
    ///
    /// ```
    /// # use brimline::Interval;
    /// let short: Interval = "[-2 L, -1500 mL]".parse()?;
    /// assert_eq!(short.width()?.unwrap().to_string(), "500 mL");
    /// # Ok::<(), brimline::Error>(())
    /// ```
    pub fn width(&self) -> Result<Option<Amount>, Error> {
        match (self.lo, self.hi) {
            (Some(lo), Some(hi)) => hi.checked_sub(lo).map(Some),
            _ => Ok(None),
        }
    }

    /// Reads an interval as it is printed.
    ///
    /// # Errors
    ///
    /// [`NotANumber`](crate::ErrorKind::NotANumber) for another form, the errors of [`Amount::parse`] for an end, and those
    /// of [`Interval::new`].
    ///
    /// ```
    /// # use brimline::Interval;
    /// assert_eq!(Interval::parse("(-inf, +inf)")?, Interval::UNBOUNDED);
    /// # Ok::<(), brimline::Error>(())
    /// ```
    pub fn parse(text: &str) -> Result<Self, Error> {
        let fault = || {
            let fault = Fault::new(ErrorKind::NotANumber).got(text);
            Error::from(fault.hint("an interval is written as [-2 L, -1.5 L] or (-inf, 0 L]"))
        };
        let inner = text
            .trim()
            .strip_prefix(['[', '('])
            .and_then(|rest| rest.strip_suffix([']', ')']))
            .ok_or_else(fault)?;
        let (lo, hi) = inner
            .split_once(", ")
            .or_else(|| inner.split_once(','))
            .ok_or_else(fault)?;
        let closed = (text.trim().starts_with('['), text.trim().ends_with(']'));
        let end = |text: &str, infinity: &[&str], closed: bool| match text.trim() {
            unbounded if infinity.contains(&unbounded) => Ok(None),
            _ if !closed => Err(fault()),
            amount => Amount::parse(amount).map(Some),
        };
        Interval::new(
            end(lo, &["-inf", "−inf", "-∞", "−∞"], closed.0)?,
            end(hi, &["+inf", "inf", "+∞", "∞"], closed.1)?,
        )
    }
}

impl FromStr for Interval {
    type Err = Error;

    fn from_str(text: &str) -> Result<Self, Error> {
        Interval::parse(text)
    }
}

impl fmt::Display for Interval {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        match &self.lo {
            Some(lo) => write!(f, "[{lo}, ")?,
            None => f.write_str("(-inf, ")?,
        }
        match &self.hi {
            Some(hi) => write!(f, "{hi}]"),
            None => f.write_str("+inf)"),
        }
    }
}

impl Serialize for Interval {
    fn serialize<S: Serializer>(&self, serializer: S) -> Result<S::Ok, S::Error> {
        let mut pair = serializer.serialize_tuple(2)?;
        pair.serialize_element(&self.lo)?;
        pair.serialize_element(&self.hi)?;
        pair.end()
    }
}

impl<'de> Deserialize<'de> for Interval {
    fn deserialize<D: Deserializer<'de>>(deserializer: D) -> Result<Self, D::Error> {
        let (lo, hi) = <(Option<Amount>, Option<Amount>)>::deserialize(deserializer)?;
        Interval::new(lo, hi).map_err(|error| D::Error::custom(error.to_string()))
    }
}
