//! Volume and temperature, the shape of a sump, exchanging a fluid, which containers to open.
//!
//! A volume means something only with its temperature: fluid gains about 1 % on 13 °C. Where several volumes meet here they
//! are taken at one temperature; [`at_temperature`] brings them there.

mod container;
mod container_sums;
mod density;
mod exchange;
mod expansion;
mod opened;
mod sump;
mod tilt;

pub(crate) use container::containers_for;
pub use container::{Container, ContainerCount, ContainerPlan, ContainerPlans, containers};
pub use density::{Base, base_density, correction_factor, density_at, mass, volume_of_mass};
pub use exchange::{
    CyclesNeeded, Exchange, Flush, FlushNeeded, cycles_needed, exchange, flush, flush_needed,
    wrong_left,
};
pub use expansion::{Expansion, at_temperature, temperature_error};
pub use opened::{Opened, OpenedDefect, OpenedUse};
pub use sump::{Sump, level_for, segment_share, volume_below};
pub use tilt::{TiltError, tilt_error};

use crate::quantity::argument::{
    above_zero, computed, from_zero, named, number, of_kind, out_of_range,
};
