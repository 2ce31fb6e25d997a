//! What the calculators must hold whatever is put in: inverse functions invert, what physics makes rise rises, branches meet,
//! and nothing but an error comes of what makes no sense.

#[path = "calculators/fluid.rs"]
mod fluid;
#[path = "calculators/leak.rs"]
mod leak;
#[path = "calculators/signal.rs"]
mod signal;
#[path = "calculators/torque.rs"]
mod torque;
#[path = "calculators/volume.rs"]
mod volume;
#[path = "calculators/warm_up.rs"]
mod warm_up;
