//! What do I set this wrench to? 14 N·m at the plug, 40 mm of adapter straight out on a 230 mm wrench.

use brimline::report::caution;
use brimline::torque::{Wrench, wrench_setting};
use brimline::{Amount, Error, Rounding, Unit};

fn main() -> Result<(), Error> {
    let wrench = Wrench {
        lever: Amount::parse("230 mm")?,
        adapter: Some(Amount::parse("40 mm")?),
        angle: None,
        graduation: Some(Amount::parse("0.5 N·m")?),
    };
    let told = wrench_setting(Amount::parse("14 N·m")?, &wrench, None)?;

    println!("set it to   {}", told.setting);
    println!(
        "that gives  {}",
        told.applied.to(Unit::NewtonMetre, 2, Rounding::HalfEven)?
    );
    println!(
        "off by      {}",
        told.error.to(Unit::Percent, 1, Rounding::HalfEven)?
    );
    for id in told.cautions {
        println!("mind        {}", caution(id).unwrap_or(id));
    }
    Ok(())
}
