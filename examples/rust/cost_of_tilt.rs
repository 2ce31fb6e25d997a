//! How much did the tilt cost? The unit leaned by 0.8°, its opening 140 mm from the middle of the fluid.

use brimline::volume::tilt_error;
use brimline::{Amount, Error, Rounding, Unit};

fn main() -> Result<(), Error> {
    let surface = Amount::parse("0.055 m²")?;
    let offset = Amount::parse("140 mm")?;
    let told = tilt_error(surface, offset, Amount::parse("0.8 deg")?)?;

    println!(
        "at the opening  {}",
        told.height.to(Unit::Millimetre, 1, Rounding::HalfEven)?
    );
    println!(
        "in fluid        {}",
        told.volume.to(Unit::Litre, 2, Rounding::HalfEven)?
    );
    println!(
        "An opening on the low side reads full that much too early, one on the high side too late."
    );
    Ok(())
}
