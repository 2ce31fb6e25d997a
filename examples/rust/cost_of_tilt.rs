//! How much did the tilt cost? The unit leaned by 0.8°, its opening 140 mm from the middle of the fluid.

use brimline::volume::tilt_error;
use brimline::{Amount, Error};

fn main() -> Result<(), Error> {
    let surface = Amount::parse("0.055 m²")?;
    let offset = Amount::parse("140 mm")?;
    let told = tilt_error(surface, offset, Amount::parse("0.8 deg")?)?;

    println!("at the opening  {}", told.height);
    println!("in fluid        {}", told.volume);
    Ok(())
}
