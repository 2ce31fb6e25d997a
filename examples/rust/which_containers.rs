//! Which containers do I open? 1.3 L are needed; half a litre is left of one that was opened last week.

use brimline::report::caution;
use brimline::volume::{Container, Opened, containers};
use brimline::{Amount, Error, Rounding, Unit};

fn main() -> Result<(), Error> {
    let size = |name, volume, price| {
        Ok::<_, Error>(Container {
            name,
            volume: Amount::parse(volume)?,
            price: Some(price),
            stock: None,
        })
    };
    let sizes = [size("quart", "1 US qt", 1150)?, size("litre", "1 L", 1290)?];
    let opened = [Opened {
        name: "last week's",
        volume: Amount::parse("0.5 L")?,
        same_fluid: true,
        sealed: true,
        clean: true,
        dated: true,
        within_date: Some(true),
    }];
    let told = containers(Amount::parse("1.3 L")?, &sizes, &opened, None)?;

    let plans = [
        ("fewest", &told.fewest),
        ("cheapest", &told.cheapest),
        ("least waste", &told.least_waste),
    ];
    for (name, plan) in plans {
        let Some(plan) = plan else { continue };
        let full: Vec<String> = plan
            .containers
            .iter()
            .map(|own| format!("{} {}", own.count, own.name))
            .collect();
        println!(
            "{name}: {} and {}, {} left",
            plan.opened.join(", "),
            full.join(", "),
            plan.left.to(Unit::Litre, 2, Rounding::HalfEven)?
        );
    }
    for id in told.cautions {
        println!("mind: {}", caution(id).unwrap_or(id));
    }
    Ok(())
}
