//! How long calculators take, each over the arguments of its answered cases in `tests/vectors/calculators`, one after
//! another; then what is kept up reading by reading, planned, or asked in JSON.

#[path = "calculators/containers.rs"]
mod containers;
#[path = "calculators/fluid.rs"]
mod fluid;
#[path = "calculators/given.rs"]
mod given;
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

use brimline::calculate::calculate;
use containers::plans;
use criterion::{Criterion, criterion_group, criterion_main};
use fluid::fluid;
use given::cases;
use leak::leak;
use signal::signal;
use std::hint::black_box;
use torque::torque;
use volume::volume;
use warm_up::warm_up;

/// The same calculators with arguments and answer as JSON.
fn json(c: &mut Criterion) {
    for name in ["torque.applied_torque", "fluid.viscosity_index"] {
        let texts: Vec<String> = cases(name)
            .iter()
            .map(|given| given.0.to_string())
            .collect();
        let mut turns = texts.iter().cycle();
        c.bench_function(&format!("JSON/{name}"), |bencher| {
            bencher.iter(|| turns.next().map(|text| calculate(name, black_box(text))));
        });
    }
}

criterion_group!(
    benches, torque, volume, warm_up, fluid, signal, leak, plans, json
);
criterion_main!(benches);
