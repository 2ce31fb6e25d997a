//! When can I open the plug? Six readings on the way to a window of 38 °C to 48 °C.

use brimline::warm_up::{Asked, Forecast};
use brimline::{Amount, Error, report};

fn main() -> Result<(), Error> {
    let mut forecast = Forecast::new(Asked {
        min: Some(Amount::parse("38 °C")?),
        max: Some(Amount::parse("48 °C")?),
        ..Asked::default()
    })?;
    for (at, reading) in [
        ("0 min", "19 °C"),
        ("2 min", "23 °C"),
        ("4 min", "27 °C"),
        ("6 min", "30 °C"),
        ("8 min", "33 °C"),
        ("10 min", "35 °C"),
    ] {
        forecast.sample(Amount::parse(at)?, Amount::parse(reading)?)?;
    }
    println!("{}", report::outlook(&forecast.answer()));
    Ok(())
}
