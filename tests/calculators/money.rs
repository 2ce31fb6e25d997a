//! Money against fractions of whole numbers, which know no rounding.

use brimline::money::{Currency, Money, Place, Price, TaxRate, TaxRounding, Taxable, totals};
use brimline::{Amount, Rounding, Unit};
use num_bigint::BigInt;
use num_rational::BigRational;
use proptest::prelude::*;

fn ten_to(power: u8) -> BigRational {
    BigRational::from_integer(BigInt::from(10).pow(power.into()))
}

fn decimal(mantissa: i64, decimals: u8) -> BigRational {
    BigRational::from_integer(mantissa.into()) / ten_to(decimals)
}

/// A sum not below zero, rounded to whole smallest units.
fn rounded(exact: &BigRational, currency: Currency, mode: Rounding) -> BigInt {
    let steps = exact * ten_to(currency.decimals());
    let floor = steps.floor();
    let half = BigRational::new(1.into(), 2.into());
    let left = &steps - &floor;
    let is_odd = &floor.to_integer() % 2 != BigInt::from(0);
    let up = match mode {
        Rounding::HalfEven => left > half || (left == half && is_odd),
        Rounding::HalfUp => left >= half,
        Rounding::Up | Rounding::Ceiling => left > BigRational::from_integer(0.into()),
        _ => false,
    };
    floor.to_integer() + i32::from(up)
}

fn currency() -> impl Strategy<Value = Currency> {
    prop::sample::select(Currency::all().collect::<Vec<_>>())
}

fn mode() -> impl Strategy<Value = Rounding> {
    prop::sample::select(
        Rounding::WORDS
            .iter()
            .map(|(_, mode)| *mode)
            .collect::<Vec<_>>(),
    )
}

proptest! {
    #[test]
    fn a_cost_is_the_exact_product_rounded_once(
        currency in currency(), mode in mode(),
        price in 0_i64..1_000_000_000, price_decimals in 0_u8..=9,
        used in 0_i64..1_000_000_000, used_decimals in 0_u8..=9,
    ) {
        let text = Amount::new(price, price_decimals, Unit::Litre).unwrap().number();
        let price_of_one = Price::parse(&format!("{text} {}", currency.code())).unwrap();
        let quantity = Amount::new(used, used_decimals, Unit::Litre).unwrap();
        let exact = decimal(price, price_decimals) * decimal(used, used_decimals);
        let wanted = rounded(&exact, currency, mode);
        match price_of_one.of(&quantity, mode) {
            Ok(cost) => prop_assert_eq!(BigInt::from(cost.minor_units()), wanted),
            Err(_) => prop_assert!(wanted > BigInt::from(999_999_999_999_999_u64)),
        }
    }

    #[test]
    fn totals_are_exact_where_the_tax_is_rounded(
        currency in currency(), mode in mode(),
        nets in prop::collection::vec(0_u64..10_000_000, 1..12),
        rate in 0_i64..=1_000_000, at_line in any::<bool>(),
    ) {
        let place = if at_line { Place::Line } else { Place::Document };
        let rate_amount = Amount::new(rate, 4, Unit::Percent).unwrap();
        let rates = [TaxRate { id: "tax", rate: rate_amount }];
        let lines: Vec<Taxable> = nets
            .iter()
            .map(|net| Taxable { net: Money::new(*net, currency).unwrap(), taxes: &["tax"] })
            .collect();
        let told = totals(currency, &lines, &rates, TaxRounding { mode, place }).unwrap();
        let part = decimal(rate, 6);
        let one = |net: u64| {
            let exact = BigRational::from_integer(net.into()) / ten_to(currency.decimals()) * &part;
            rounded(&exact, currency, mode)
        };
        let sum: u64 = nets.iter().sum();
        let tax = if at_line { nets.iter().map(|net| one(*net)).sum() } else { one(sum) };
        prop_assert_eq!(BigInt::from(told.taxes[0].tax.minor_units()), tax.clone());
        prop_assert_eq!(told.net.minor_units(), sum);
        prop_assert_eq!(BigInt::from(told.total.minor_units()), tax + sum);
        // What is printed reads back.
        prop_assert_eq!(Money::parse(&told.total.to_string()).unwrap(), told.total);
    }
}
