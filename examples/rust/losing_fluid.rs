//! Is it losing fluid? Four visits, each below the leak limit of its sheet.

use brimline::leak::{Visit, consumption};
use brimline::report::caution;
use brimline::{Amount, Error, Interval, Rounding, Unit};

/// Both ends in whole units, outward.
fn round(range: Interval, unit: Unit) -> Result<Interval, Error> {
    let whole = |end: Amount, rounding| end.to(unit, 0, rounding);
    let lo = range
        .lo()
        .map(|end| whole(end, Rounding::Floor))
        .transpose()?;
    let hi = range
        .hi()
        .map(|end| whole(end, Rounding::Ceiling))
        .transpose()?;
    Interval::new(lo, hi)
}

fn main() -> Result<(), Error> {
    let visit = |odometer, net| {
        Ok::<_, Error>(Visit {
            uncertainty: Some(Amount::parse("0.03 L")?),
            ..Visit::new(Amount::parse(odometer)?, Amount::parse(net)?)
        })
    };
    let visits = [
        visit("41200 km", "0 L")?,
        visit("53900 km", "0.15 L")?,
        visit("64100 km", "0.25 L")?,
        visit("70300 km", "0.30 L")?,
    ];
    let told = consumption(&visits, Amount::parse("0.5 L")?)?;

    for rate in &told.rates {
        let Some(lost) = rate.per_1000_km else {
            continue;
        };
        let lost = round(lost, Unit::Millilitre)?;
        let (from, to) = (rate.from + 1, rate.to + 1);
        println!("visit {from} to {to}: {lost} lost per 1000 km");
    }
    println!("trend: {}", told.trend.slug());
    if let Some(distance) = told.distance {
        println!(
            "half a litre is gone after {}",
            round(distance, Unit::Kilometre)?
        );
    }
    for id in told.cautions {
        println!("mind: {}", caution(id).unwrap_or(id));
    }
    Ok(())
}
