//! The number before a unit: a plain decimal, a common fraction, or a whole and a fraction.

use super::exact::power_of_ten;
use super::refusal;
use crate::error::{ErrorKind, Fault};
use alloc::format;
use alloc::string::String;
use alloc::vec;

/// A decimal as it is written: ± mantissa / 10^decimals.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub(crate) struct Number {
    pub(crate) mantissa: i64,
    pub(crate) decimals: u8,
}

/// One above the largest mantissa: 15 digits.
pub(super) const MANTISSAS: u64 = 1_000_000_000_000_000;
/// The most decimals.
pub(super) const DECIMALS: u8 = 9;

/// Fractions with a sign of their own.
const VULGAR: &[(char, u64, u64)] = &[
    ('½', 1, 2),
    ('¼', 1, 4),
    ('¾', 3, 4),
    ('⅓', 1, 3),
    ('⅔', 2, 3),
    ('⅕', 1, 5),
    ('⅖', 2, 5),
    ('⅗', 3, 5),
    ('⅘', 4, 5),
    ('⅙', 1, 6),
    ('⅚', 5, 6),
    ('⅐', 1, 7),
    ('⅛', 1, 8),
    ('⅜', 3, 8),
    ('⅝', 5, 8),
    ('⅞', 7, 8),
    ('⅑', 1, 9),
    ('⅒', 1, 10),
];

/// The fraction a text begins with.
fn vulgar(text: &str) -> Option<&'static (char, u64, u64)> {
    let sign = text.chars().next().filter(|sign| !sign.is_ascii())?;
    VULGAR.iter().find(|row| row.0 == sign)
}

/// Reads the number at the start of a text, which has no white space around it; what follows it is the unit.
pub(crate) fn read(text: &str) -> Result<(Number, &str), Fault> {
    if text.is_empty() {
        return Err(refusal::of_number(
            "write a number and its unit, as in 1.5 L",
        ));
    }
    let (negative, unsigned) = match text.strip_prefix(['-', '−']) {
        Some(rest) => (true, rest.trim_start()),
        None => (false, text.strip_prefix('+').unwrap_or(text)),
    };
    let (whole, rest) = digits(unsigned);
    let (number, unit) = match rest.chars().next() {
        Some('.') => decimal(whole, rest)?,
        Some(',') if !digits(rest.trim_start_matches(',')).0.is_empty() => {
            return Err(comma(negative, unsigned));
        }
        Some(_) => match fraction(whole, rest) {
            Some((fraction, unit)) => (fraction.number(negative, unit)?, unit),
            None if whole.is_empty() => return Err(no_number(text)),
            None => (scaled(whole, "")?, rest),
        },
        None if whole.is_empty() => return Err(no_number(text)),
        None => (scaled(whole, "")?, rest),
    };
    let unit = end(unit).map_err(|hint| match hint {
        Some(hint) => refusal::of_number(hint),
        None => comma(negative, unsigned),
    })?;
    let mantissa = if negative {
        number.mantissa.wrapping_neg()
    } else {
        number.mantissa
    };
    Ok((Number { mantissa, ..number }, unit))
}

/// The leading digits and what follows.
fn digits(text: &str) -> (&str, &str) {
    let end = text.bytes().take_while(u8::is_ascii_digit).count();
    text.split_at_checked(end).unwrap_or((text, ""))
}

/// A decimal whose point comes next.
fn decimal<'a>(whole: &str, rest: &'a str) -> Result<(Number, &'a str), Fault> {
    let (decimals, unit) = digits(rest.strip_prefix('.').unwrap_or(rest));
    if decimals.is_empty() {
        return Err(refusal::of_number(
            "digits stand after a decimal point: write 5 or 5.0, and 0.5 rather than a lone point",
        ));
    }
    Ok((scaled(whole, decimals)?, unit))
}

/// The decimal of these digits.
fn scaled(whole: &str, decimals: &str) -> Result<Number, Fault> {
    let places = u8::try_from(decimals.len())
        .ok()
        .filter(|places| *places <= DECIMALS)
        .ok_or_else(refusal::of_digits)?;
    let mut mantissa = 0_u64;
    for digit in whole.bytes().chain(decimals.bytes()) {
        mantissa = mantissa
            .wrapping_mul(10)
            .wrapping_add(u64::from(digit.wrapping_sub(b'0')));
        if mantissa >= MANTISSAS {
            return Err(refusal::of_digits());
        }
    }
    Ok(Number {
        mantissa: mantissa.cast_signed(),
        decimals: places,
    })
}

/// A whole and a part of it, as written.
struct Fraction {
    whole: u64,
    part: u64,
    of: u64,
}

/// `3/8`, `½`, `1 1/2`, `1-1/2`, `1½`, and what follows.
fn fraction<'a>(whole: &str, rest: &'a str) -> Option<(Fraction, &'a str)> {
    let slash = ['/', '⁄', '∕'];
    let small = |digits: &str| {
        if digits.is_empty() {
            Some(0)
        } else {
            digits.parse::<u64>().ok().filter(|n| *n < MANTISSAS)
        }
    };
    if let Some(below) = rest.strip_prefix(slash) {
        let (of, unit) = digits(below);
        let part = small(whole).filter(|_| !whole.is_empty() && !of.is_empty())?;
        return Some((
            Fraction {
                whole: 0,
                part,
                of: small(of)?,
            },
            unit,
        ));
    }
    let after = rest.trim_start();
    if let Some((_, part, of)) = vulgar(after) {
        let mut signs = after.chars();
        signs.next();
        return Some((
            Fraction {
                whole: small(whole)?,
                part: *part,
                of: *of,
            },
            signs.as_str(),
        ));
    }
    let after = rest.strip_prefix('-').unwrap_or(after);
    let (part, below) = digits(after);
    let (of, unit) = digits(below.strip_prefix(slash)?);
    if whole.is_empty() || part.is_empty() || of.is_empty() || after.len() == rest.len() {
        return None;
    }
    Some((
        Fraction {
            whole: small(whole)?,
            part: small(part)?,
            of: small(of)?,
        },
        unit,
    ))
}

impl Fraction {
    /// The decimal it is, refused where it does not end within nine decimals.
    fn number(&self, negative: bool, unit: &str) -> Result<Number, Fault> {
        let whole_and_part = self.whole > 0 && self.part >= self.of;
        if self.of == 0 || whole_and_part {
            return Err(refusal::of_number(
                "a fraction has a part above zero below the stroke, as in 1 1/2",
            ));
        }
        let at = |decimals: u8| {
            let scaled = u128::from(self.part).checked_mul(power_of_ten(decimals).into())?;
            let whole = u128::from(self.whole).checked_mul(power_of_ten(decimals).into())?;
            let mantissa = whole.checked_add(scaled.checked_div(self.of.into())?)?;
            let mantissa = u64::try_from(mantissa)
                .ok()
                .filter(|mantissa| *mantissa < MANTISSAS)?;
            Some((
                Number {
                    mantissa: mantissa.cast_signed(),
                    decimals,
                },
                scaled.checked_rem(self.of.into())? == 0,
            ))
        };
        for decimals in 0..=DECIMALS {
            match at(decimals) {
                Some((number, true)) => return Ok(number),
                Some(_) => {}
                None => return Err(refusal::of_digits()),
            }
        }
        let Some((below, _)) = at(2) else {
            return Err(refusal::of_digits());
        };
        let sign = if negative { "-" } else { "" };
        let neighbours = [below.mantissa, below.mantissa.saturating_add(1)].map(|mantissa| {
            let (whole, part) = (mantissa / 100, mantissa % 100);
            join(format!("{sign}{whole}.{part:02}"), unit)
        });
        Err(Fault::new(ErrorKind::Fraction)
            .allowed(neighbours)
            .hint("write a decimal: this fraction has none that ends within 9 digits"))
    }
}

fn join(number: String, unit: &str) -> String {
    match unit.trim() {
        "" => number,
        unit => format!("{number} {unit}"),
    }
}

/// The readings of a number with a comma.
fn comma(negative: bool, unsigned: &str) -> Fault {
    let end = unsigned
        .bytes()
        .take_while(|byte| byte.is_ascii_digit() || matches!(byte, b',' | b'.'))
        .count();
    let (typed, unit) = unsigned.split_at_checked(end).unwrap_or((unsigned, ""));
    let sign = if negative { "-" } else { "" };
    let say = |digits: String| {
        let digits = match digits.trim_start_matches('0') {
            rest if rest.is_empty() || rest.starts_with('.') => format!("0{rest}"),
            rest => String::from(rest),
        };
        join(format!("{sign}{digits}"), unit)
    };
    let plain = |text: &str| {
        text.chars()
            .filter(char::is_ascii_digit)
            .collect::<String>()
    };
    let readings = match (typed.rfind(','), typed.rfind('.')) {
        // The later of the two signs is the decimal one.
        (Some(comma), Some(point)) => {
            let (whole, decimals) = typed
                .split_at_checked(comma.max(point))
                .unwrap_or((typed, ""));
            vec![say(format!("{}.{}", plain(whole), plain(decimals)))]
        }
        (Some(comma), None) if typed.find(',') == Some(comma) => {
            vec![say(typed.replace(',', ".")), say(plain(typed))]
        }
        _ => vec![say(plain(typed))],
    };
    refusal::of_comma(readings)
}

fn no_number(text: &str) -> Fault {
    let word = text
        .trim_start_matches(['-', '−', '+'])
        .get(..3)
        .unwrap_or_default();
    if word.eq_ignore_ascii_case("nan") || word.eq_ignore_ascii_case("inf") {
        return refusal::of_number("a finite number is needed");
    }
    refusal::of_number("the number comes first, in plain decimal digits, as in 1.5 L")
}

/// What follows the number is the unit, unless the number goes on in a form that is not read; `None` says it
/// goes on with a comma.
fn end(rest: &str) -> Result<&str, Option<&'static str>> {
    let unit = rest.trim_start();
    let mut signs = rest.chars();
    let hint = match (signs.next(), signs.next()) {
        (None, _) => return Ok(unit),
        // As in 3/8-in.
        (Some('-'), Some(letter)) if letter.is_alphabetic() => {
            return Ok(rest.strip_prefix('-').unwrap_or(rest));
        }
        (Some(','), _) => return Err(None),
        (Some('e' | 'E'), Some('0'..='9' | '+' | '-')) => {
            "write the number out, without an exponent"
        }
        (Some('x' | 'X'), Some(_)) => "write the number in decimal digits",
        (Some('_' | '\'' | '’'), _) => "write the digits without separators",
        (Some('.' | '/'), _) => "one decimal point, or one fraction",
        _ => match unit.chars().next() {
            Some('0'..='9') => "write the digits without spaces between them",
            Some('-' | '−' | '–' | '—' | '±' | '…' | '~' | '+') => {
                "one amount, not a range or a tolerance: give each its own field"
            }
            Some(_) if vulgar(unit).is_some() => "a fraction follows a whole number, not a decimal",
            _ => return Ok(unit),
        },
    };
    Err(Some(hint))
}
