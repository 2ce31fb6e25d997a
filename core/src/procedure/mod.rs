//! What the service sheet says: packs of procedures, their editions, fluids, and a linter.

mod agreement;
mod closing;
mod conditions;
mod edition;
mod lint;
mod method;
mod pack;
mod read;
mod ring;
mod select;

pub use closing::{Closing, Labour, Seal, Threadlocker};
pub use conditions::{
    Conditions, CoolerCondition, EngineState, RangesCondition, TemperatureCondition, TiltCondition,
};
pub use edition::{Act, Capacity, Caution, Counts, LeakLimit, Procedure, Refill};
pub use lint::{LintFinding, Severity};
pub use method::{Defect, Method, MethodKind, Sign, Warming};
pub use pack::Pack;
pub(crate) use read::FORMAT as PACK_FORMAT;
pub(crate) use read::{above_zero, edition_number, format, measures, volume, volume_from_zero};
pub use select::{Difference, InForce, Selection};
