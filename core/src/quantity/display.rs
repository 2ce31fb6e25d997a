//! Printing amounts, and their text form in documents.

use super::amount::Amount;
use super::exact::power_of_ten;
use super::unit::Unit;
use alloc::string::{String, ToString};
use core::fmt;
use serde::de::{self, Deserialize, Deserializer, Visitor};
use serde::ser::{Serialize, Serializer};

/// The number of an amount as it is printed.
struct Printed<'a>(&'a Amount);

impl fmt::Display for Printed<'_> {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        let Printed(amount) = self;
        if amount.mantissa() < 0 {
            f.write_str("-")?;
        }
        let size = amount.mantissa().unsigned_abs();
        match amount.decimals() {
            0 => write!(f, "{size}"),
            decimals => {
                let power = u64::from(power_of_ten(decimals));
                let whole = size.checked_div(power).unwrap_or_default();
                let part = size.checked_rem(power).unwrap_or_default();
                write!(f, "{whole}.{part:0width$}", width = usize::from(decimals))
            }
        }
    }
}

impl fmt::Display for Amount {
    /// Number, one space, symbol: `-1.50 L`.
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        write!(f, "{} {}", Printed(self), self.unit().symbol())
    }
}

impl fmt::Display for Unit {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        f.pad(self.symbol())
    }
}

impl Amount {
    /// Its number as printed, without the unit: `1.50`.
    ///
    /// ```
    /// # use brimline::Amount;
    /// assert_eq!(Amount::parse("1.50 L")?.number(), "1.50");
    /// # Ok::<(), brimline::Error>(())
    /// ```
    #[must_use]
    pub fn number(&self) -> String {
        Printed(self).to_string()
    }
}

impl Serialize for Amount {
    fn serialize<S: Serializer>(&self, serializer: S) -> Result<S::Ok, S::Error> {
        serializer.collect_str(self)
    }
}

impl<'de> Deserialize<'de> for Amount {
    fn deserialize<D: Deserializer<'de>>(deserializer: D) -> Result<Self, D::Error> {
        deserializer.deserialize_str(Text("an amount as text, such as 1.5 L", Amount::parse))
    }
}

impl Serialize for Unit {
    fn serialize<S: Serializer>(&self, serializer: S) -> Result<S::Ok, S::Error> {
        serializer.serialize_str(self.symbol())
    }
}

impl<'de> Deserialize<'de> for Unit {
    fn deserialize<D: Deserializer<'de>>(deserializer: D) -> Result<Self, D::Error> {
        deserializer.deserialize_str(Text("a unit as text, such as US qt", Unit::parse))
    }
}

/// Reads a value from its text.
struct Text<T>(&'static str, fn(&str) -> Result<T, crate::error::Error>);

impl<T> Visitor<'_> for Text<T> {
    type Value = T;

    fn expecting(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        f.write_str(self.0)
    }

    fn visit_str<E: de::Error>(self, text: &str) -> Result<T, E> {
        (self.1)(text).map_err(E::custom)
    }
}
