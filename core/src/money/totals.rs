//! What lines come to: net, taxes at the host's own rates, total.

use super::currency::Currency;
use super::price::rounded;
use super::sum::{Money, mixed};
use crate::error::{Error, ErrorKind, Fault};
use crate::quantity::{Amount, Kind, Rounding, Unit};
use crate::word::words;
use alloc::format;
use alloc::string::ToString;
use alloc::vec::Vec;
use serde::Serialize;

words! {
    /// Where a tax is rounded.
    pub enum Place {
        /// On each line; the rounded taxes are added.
        Line = "line",
        /// Once a rate, on the sum of the lines that bear it.
        Document = "document",
    }
}

/// How a tax is rounded to the smallest unit of the currency, and where. What is right is the host's to know.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub struct TaxRounding {
    /// How.
    pub mode: Rounding,
    /// Where.
    pub place: Place,
}

/// A rate of tax, by a name of the host's.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub struct TaxRate<'a> {
    /// Its name, which lines bear.
    pub id: &'a str,
    /// The rate: a ratio from 0 to 100 %, up to nine decimals of the ratio.
    pub rate: Amount,
}

/// One line: what it comes to without tax, and the names of the taxes it bears.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub struct Taxable<'a> {
    /// Without tax.
    pub net: Money,
    /// The taxes on it; none for a line that is free of tax. Each is of the net, none of another tax.
    pub taxes: &'a [&'a str],
}

/// What lines come to.
#[derive(Debug, Clone, PartialEq, Eq, Serialize)]
#[non_exhaustive]
pub struct Totals<'a> {
    /// The lines without tax.
    pub net: Money,
    /// Each tax that a line bears, in the order of the rates.
    pub taxes: Vec<TaxTotal<'a>>,
    /// All of it.
    pub total: Money,
}

/// What one tax comes to.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Serialize)]
#[non_exhaustive]
pub struct TaxTotal<'a> {
    /// Its name.
    pub id: &'a str,
    /// Its rate.
    pub rate: Amount,
    /// The lines that bear it, without tax.
    pub base: Money,
    /// The tax.
    pub tax: Money,
}

/// What lines come to: their net, each tax, and the total, exact but for the one rounding of each tax.
///
/// `currency` is that of the document, which a document without lines has as well. The library holds no tax law: which line
/// bears which tax, the rates, the rounding and its place are the host's.
///
/// Source: arithmetic. That the place matters: six lines of 4.97 at 7 % bear 2.10 a line at a time and 2.09 together.
///
/// # Errors
///
/// All at once: [`Conflict`](ErrorKind::Conflict) for a line of another currency; [`Unresolved`](ErrorKind::Unresolved) for a
/// tax without a rate; [`DuplicateId`](ErrorKind::DuplicateId) for two rates of one name, or one tax twice on a line;
/// [`WrongKind`](ErrorKind::WrongKind) and [`OutOfRange`](ErrorKind::OutOfRange) for a rate that is no ratio from 0 to 100 %;
/// `out_of_range` at `net` or `total` past 15 digits. Paths such as `rates[0].rate` and `lines[2].taxes[0]`.
///
/// ```
/// use brimline::money::{Money, Place, TaxRate, TaxRounding, Taxable, totals};
/// use brimline::{Amount, Rounding};
/// let rates = [TaxRate { id: "goods", rate: Amount::parse("7 %")? }];
/// let line = Taxable { net: Money::parse("4.97 USD")?, taxes: &["goods"] };
/// let at = |place| TaxRounding { mode: Rounding::HalfUp, place };
/// let currency = line.net.currency();
/// let a_line = totals(currency, &[line; 6], &rates, at(Place::Line))?;
/// let together = totals(currency, &[line; 6], &rates, at(Place::Document))?;
/// assert_eq!(a_line.taxes[0].tax.to_string(), "2.10 USD");
/// assert_eq!(together.taxes[0].tax.to_string(), "2.09 USD");
/// assert_eq!(together.total.to_string(), "31.91 USD");
/// # Ok::<(), brimline::Error>(())
/// ```
pub fn totals<'a>(
    currency: Currency,
    lines: &[Taxable<'_>],
    rates: &[TaxRate<'a>],
    rounding: TaxRounding,
) -> Result<Totals<'a>, Error> {
    let mut faults = Vec::new();
    let read: Vec<Rate> = rates
        .iter()
        .enumerate()
        .filter_map(|(place, rate)| {
            let before = rates.iter().take(place);
            if before.into_iter().any(|other| other.id == rate.id) {
                let fault = Fault::new(ErrorKind::DuplicateId).got(rate.id);
                faults.push(fault.at(format!("rates[{place}].id")));
            }
            let read = Rate::of(&rate.rate);
            read.map_err(|fault| faults.push(fault.at(format!("rates[{place}].rate"))))
                .ok()
        })
        .collect();
    faults.extend(faults_of(currency, lines, rates));
    if let Some(error) = Error::from_faults(faults) {
        return Err(error);
    }
    let nets = || lines.iter().map(|line| line.net);
    let net = sum(currency, nets()).map_err(|fault| fault.at("net"))?;
    let mut taxes = Vec::new();
    let mut total = net;
    for (given, rate) in rates.iter().zip(read) {
        let bearing = || lines.iter().filter(|line| line.taxes.contains(&given.id));
        if bearing().next().is_none() {
            continue;
        }
        // No more than the net, which is told already.
        let base = sum(currency, bearing().map(|line| line.net))?;
        let tax = match rounding.place {
            Place::Document => rate.on(base, rounding.mode)?,
            Place::Line => {
                let mut tax = Money::zero(currency);
                for line in bearing() {
                    let more = rate.on(line.net, rounding.mode)?;
                    tax = tax.plus(more).map_err(past_total)?;
                }
                tax
            }
        };
        total = total.plus(tax).map_err(past_total)?;
        taxes.push(TaxTotal {
            id: given.id,
            rate: given.rate,
            base,
            tax,
        });
    }
    Ok(Totals { net, taxes, total })
}

/// The taxes are what makes the total too much: no tax by itself is more than the net.
#[cold]
fn past_total(error: Error) -> Fault {
    error.first().clone().at("total")
}

/// What is wrong with the lines by themselves.
fn faults_of(currency: Currency, lines: &[Taxable<'_>], rates: &[TaxRate<'_>]) -> Vec<Fault> {
    let mut faults = Vec::new();
    for (place, line) in lines.iter().enumerate() {
        if line.net.currency() != currency {
            let fault = mixed(currency, line.net.currency());
            faults.push(fault.at(format!("lines[{place}].net")));
        }
        for (index, id) in line.taxes.iter().enumerate() {
            let at = || format!("lines[{place}].taxes[{index}]");
            if !rates.iter().any(|rate| rate.id == *id) {
                let fault = Fault::new(ErrorKind::Unresolved).got(id).at(at());
                faults.push(fault.allowed(rates.iter().map(|rate| rate.id.to_string())));
            } else if line.taxes.iter().take(index).any(|other| other == id) {
                faults.push(Fault::new(ErrorKind::DuplicateId).got(id).at(at()));
            }
        }
    }
    faults
}

fn sum(currency: Currency, sums: impl Iterator<Item = Money>) -> Result<Money, Fault> {
    let minor = sums.fold(0_i128, |all, one| {
        all.saturating_add(one.minor_units().into())
    });
    Money::of_minor(minor, currency)
}

/// Whether a rate is a ratio from 0 to 100 %.
pub(crate) fn check_rate(rate: &Amount) -> Result<(), Fault> {
    Rate::of(rate).map(drop)
}

/// A rate in steps of 10^-decimals of the whole.
struct Rate {
    steps: i128,
    decimals: u8,
}

impl Rate {
    fn of(rate: &Amount) -> Result<Self, Fault> {
        if rate.kind() != Kind::Ratio {
            let hint = "a rate is a part of the net, as in 7 %";
            let fault = Fault::new(ErrorKind::WrongKind).got(&rate.to_string());
            return Err(fault.hint(hint));
        }
        let refused = || {
            Fault::new(ErrorKind::OutOfRange)
                .got(&rate.to_string())
                .allowed(["0 % to 100 %, in up to seven decimals of a percent"])
                .hint("a rate of nineteen in a hundred is 19 % or 0.19")
        };
        let whole = rate.to_exact(Unit::One).ok_or_else(refused)?;
        let one = Amount::new(1, 0, Unit::One).ok();
        if whole.is_negative() || one.is_none_or(|one| whole > one) {
            return Err(refused());
        }
        Ok(Rate {
            steps: whole.mantissa().into(),
            decimals: whole.decimals(),
        })
    }

    /// The tax on a sum.
    fn on(&self, net: Money, rounding: Rounding) -> Result<Money, Fault> {
        // Both factors are below 2^50.
        let product = i128::from(net.minor_units()).saturating_mul(self.steps);
        let currency = net.currency();
        let decimals = self.decimals.saturating_add(currency.decimals());
        rounded(product, decimals, currency, rounding)
    }
}

#[cfg(test)]
mod tests {
    #![allow(clippy::unwrap_used)]

    use super::*;
    use alloc::string::String;
    use alloc::vec;

    fn money(text: &str) -> Money {
        Money::parse(text).unwrap()
    }

    fn tax_on(net: &str, rate: &str, mode: Rounding) -> String {
        let rates = [TaxRate {
            id: "tax",
            rate: Amount::parse(rate).unwrap(),
        }];
        let lines = [Taxable {
            net: money(net),
            taxes: &["tax"],
        }];
        let place = Place::Document;
        let rounding = TaxRounding { mode, place };
        let told = totals(lines[0].net.currency(), &lines, &rates, rounding).unwrap();
        told.taxes.first().unwrap().tax.to_string()
    }

    #[test]
    fn published_taxes_come_out() {
        // US half-cent rule, as municipal codes print it: 10.99 at 6.25 % is 0.686875, which is 0.69.
        assert_eq!(tax_on("10.99 USD", "6.25 %", Rounding::HalfUp), "0.69 USD");
        assert_eq!(tax_on("100 JPY", "8 %", Rounding::Down), "8 JPY");
        assert_eq!(tax_on("99 JPY", "8 %", Rounding::Down), "7 JPY");
        assert_eq!(tax_on("99.99 EUR", "100 %", Rounding::HalfUp), "99.99 EUR");
    }

    #[test]
    fn a_line_may_bear_no_tax_or_two() {
        let rate = |id, rate| TaxRate {
            id,
            rate: Amount::parse(rate).unwrap(),
        };
        let rates = [
            rate("state", "6 %"),
            rate("city", "1.5 %"),
            rate("unused", "5 %"),
        ];
        let lines = [
            Taxable {
                net: money("20.00 USD"),
                taxes: &["city", "state"],
            },
            Taxable {
                net: money("30.00 USD"),
                taxes: &["state"],
            },
            Taxable {
                net: money("96.00 USD"),
                taxes: &[],
            },
        ];
        let rounding = TaxRounding {
            mode: Rounding::HalfUp,
            place: Place::Line,
        };
        let told = totals(lines[0].net.currency(), &lines, &rates, rounding).unwrap();
        // By hand: 1.20 + 1.80 of the state, 0.30 of the city.
        let json = crate::document::canonical(&told);
        assert_eq!(
            json,
            "{\"net\":\"146.00 USD\",\"taxes\":[{\"id\":\"state\",\"rate\":\"6 %\",\"base\":\"50.00 USD\",\"tax\":\"3.00 USD\"},\
             {\"id\":\"city\",\"rate\":\"1.5 %\",\"base\":\"20.00 USD\",\"tax\":\"0.30 USD\"}],\"total\":\"149.30 USD\"}"
        );
        let none = totals(lines[0].net.currency(), &[], &rates, rounding).unwrap();
        assert_eq!((none.taxes.len(), none.total), (0, money("0 USD")));
    }

    #[test]
    fn every_fault_is_told_at_once_with_its_place() {
        let rate = |id, rate| TaxRate {
            id,
            rate: Amount::parse(rate).unwrap(),
        };
        let rates = [rate("a", "100.1 %"), rate("b", "7 L"), rate("a", "-1 %")];
        let lines = [
            Taxable {
                net: money("1 USD"),
                taxes: &["c"],
            },
            Taxable {
                net: money("1 EUR"),
                taxes: &["b", "b"],
            },
        ];
        let rounding = TaxRounding {
            mode: Rounding::HalfUp,
            place: Place::Line,
        };
        let error = totals(lines[0].net.currency(), &lines, &rates, rounding).unwrap_err();
        let told: Vec<(&str, &str)> = error
            .faults()
            .map(|fault| (fault.path.as_str(), fault.kind.slug()))
            .collect();
        assert_eq!(
            told,
            vec![
                ("rates[0].rate", "out_of_range"),
                ("rates[1].rate", "wrong_kind"),
                ("rates[2].id", "duplicate_id"),
                ("rates[2].rate", "out_of_range"),
                ("lines[0].taxes[0]", "unresolved"),
                ("lines[1].net", "conflict"),
                ("lines[1].taxes[1]", "duplicate_id"),
            ]
        );
    }
}
