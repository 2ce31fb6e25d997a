//! Is this torque print a slip? A sheet prints one torque three times; one of them would strip the thread.

use brimline::report::caution;
use brimline::torque::{PlugKind, Thread, equivalents, plausible};
use brimline::{Amount, Error, Rounding, Unit};

fn main() -> Result<(), Error> {
    let printed = ["14 N·m", "10 lbf·ft", "124 lbf·ft"].map(Amount::parse);
    let [governing, rounded, slipped] = printed;
    let (governing, rounded, slipped) = (governing?, rounded?, slipped?);
    for told in equivalents(&[governing, rounded, slipped])?.prints {
        let factor = told.factor.map(|factor| format!(": {}", factor.slug()));
        println!(
            "{:<12}{}{}",
            told.print.to_string(),
            told.class.slug(),
            factor.unwrap_or_default()
        );
    }

    let told = plausible(slipped, &Thread::parse("M10x1")?, PlugKind::Steel)?;
    println!("{slipped} on M10x1: {}", told.fits.slug());
    if let (Some(lo), Some(hi)) = (told.band.lo(), told.band.hi()) {
        let whole = |end: Amount| end.to(Unit::NewtonMetre, 0, Rounding::HalfEven);
        println!("usual is {} to {}", whole(lo)?, whole(hi)?);
    }
    if let Some(slip) = told.slip {
        println!("meant may be {}", slip.torque);
    }
    for id in told.cautions {
        println!("mind: {}", caution(id).unwrap_or(id));
    }
    Ok(())
}
