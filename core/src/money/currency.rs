//! Currencies, by ISO 4217.

use crate::error::{Error, ErrorKind, Fault};
use core::fmt;
use serde::{Serialize, Serializer};

/// A currency by its ISO 4217 code, with the number of decimals of its smallest unit.
///
/// Source: ISO 4217, list of current currency and funds codes. Codes without a smallest unit (metals, tests, no
/// currency) are left out.
///
/// ```
/// use brimline::money::Currency;
/// assert_eq!(Currency::parse("EUR")?.decimals(), 2);
/// assert_eq!(Currency::parse("JPY")?.decimals(), 0);
/// assert_eq!(Currency::parse("KWD")?.decimals(), 3);
/// assert!(Currency::parse("eur").is_err());
/// # Ok::<(), brimline::Error>(())
/// ```
#[derive(Debug, Clone, Copy, PartialEq, Eq, Hash, PartialOrd, Ord)]
pub struct Currency {
    code: &'static str,
    decimals: u8,
}

/// The decimals of the smallest unit, and the codes that have them, each with a space after it and in order of the alphabet.
const CODES: [(u8, &str); 4] = [
    (
        0,
        "BIF CLP DJF GNF ISK JPY KMF KRW PYG RWF UGX UYI VND VUV XAF XOF XPF ",
    ),
    (
        2,
        "AED AFN ALL AMD AOA ARS AUD AWG AZN BAM BBD BDT BMD BND BOB BOV BRL BSD BTN BWP BYN \
         BZD CAD CDF CHE CHF CHW CNY COP COU CRC CUP CVE CZK DKK DOP DZD EGP ERN ETB EUR FJD \
         FKP GBP GEL GHS GIP GMD GTQ GYD HKD HNL HTG HUF IDR ILS INR IRR JMD KES KGS KHR KPW \
         KYD KZT LAK LBP LKR LRD LSL MAD MDL MGA MKD MMK MNT MOP MRU MUR MVR MWK MXN MXV MYR \
         MZN NAD NGN NIO NOK NPR NZD PAB PEN PGK PHP PKR PLN QAR RON RSD RUB SAR SBD SCR SDG \
         SEK SGD SHP SLE SOS SRD SSP STN SVC SYP SZL THB TJS TMT TOP TRY TTD TWD TZS UAH USD \
         USN UYU UZS VED VES WST XAD XCD XCG YER ZAR ZMW ZWG ",
    ),
    (3, "BHD IQD JOD KWD LYD OMR TND "),
    (4, "CLF UYW "),
];

impl Currency {
    /// The currency of a code of three capital letters.
    ///
    /// # Errors
    ///
    /// [`UnknownValue`](ErrorKind::UnknownValue) for a code that ISO 4217 does not list.
    pub fn parse(code: &str) -> Result<Self, Error> {
        Ok(Self::read(code)?)
    }

    /// Every currency, those with fewer decimals first.
    pub fn all() -> impl Iterator<Item = Self> {
        CODES.into_iter().flat_map(|(decimals, codes)| {
            codes
                .split_ascii_whitespace()
                .map(move |code| Currency { code, decimals })
        })
    }

    pub(super) fn read(code: &str) -> Result<Self, Fault> {
        Self::listed(code).ok_or_else(|| {
            let hint = "write the ISO 4217 code, three capital letters, as in 12.50 EUR";
            Fault::new(ErrorKind::UnknownValue).got(code).hint(hint)
        })
    }

    fn listed(code: &str) -> Option<Self> {
        let Ok([one, two, three]) = <[u8; 3]>::try_from(code.as_bytes()) else {
            return None;
        };
        let listed = CODES.iter().find_map(|(decimals, codes)| {
            let (places, _) = codes.as_bytes().as_chunks();
            let place = places.binary_search(&[one, two, three, b' ']).ok()?;
            let at = place.checked_mul(4)?;
            Some((*decimals, codes.get(at..at.checked_add(3)?)?))
        });
        listed.map(|(decimals, code)| Currency { code, decimals })
    }

    /// The code: three capital letters.
    #[must_use]
    pub const fn code(self) -> &'static str {
        self.code
    }

    /// How many decimals its smallest unit has, 0 to 4.
    #[must_use]
    pub const fn decimals(self) -> u8 {
        self.decimals
    }
}

impl fmt::Display for Currency {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        f.pad(self.code)
    }
}

impl Serialize for Currency {
    fn serialize<S: Serializer>(&self, serializer: S) -> Result<S::Ok, S::Error> {
        serializer.serialize_str(self.code)
    }
}

#[cfg(test)]
mod tests {
    use super::*;
    use alloc::collections::BTreeSet;

    #[test]
    fn every_code_is_three_capitals_and_stands_once() {
        for (_, codes) in CODES {
            assert!(codes.as_bytes().as_chunks::<4>().0.is_sorted());
        }
        let mut seen = BTreeSet::new();
        for currency in Currency::all() {
            assert!(currency.code.len() == 3);
            assert!(
                currency
                    .code
                    .bytes()
                    .all(|letter| letter.is_ascii_uppercase())
            );
            assert!(seen.insert(currency.code), "{currency}");
            assert_eq!(Currency::parse(currency.code), Ok(currency));
        }
        // ISO 4217, list one; compared whole with a general-purpose copy of it (the package iso4217, MIT).
        for (code, decimals) in [("TND", 3), ("IQD", 3), ("LYD", 3), ("CLF", 4), ("UYW", 4)] {
            assert_eq!(Currency::parse(code).map(Currency::decimals), Ok(decimals));
        }
        for code in ["XAU", "eur", "EUR ", " EU", "EU", "", "EURO"] {
            assert!(Currency::parse(code).is_err(), "{code}");
        }
    }
}
