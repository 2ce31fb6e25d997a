//! Volumes and temperature, sumps, exchanges.

use crate::given::{Given, time};
use brimline::volume::{
    at_temperature, base_density, correction_factor, cycles_needed, density_at, exchange, flush,
    flush_needed, level_for, mass, segment_share, temperature_error, tilt_error, volume_below,
    volume_of_mass, wrong_left,
};
use criterion::Criterion;

pub fn volume(c: &mut Criterion) {
    let at = |given: &Given| {
        let density = given.any("density");
        (density, given.any("temperature"), given.base())
    };
    time(c, "volume.correction_factor", at, |(density, at, base)| {
        correction_factor(*density, *at, *base)
    });
    time(c, "volume.density_at", at, |(density, at, base)| {
        density_at(*density, *at, *base)
    });
    time(c, "volume.base_density", at, |(density, at, base)| {
        base_density(*density, *at, *base)
    });
    time(
        c,
        "volume.at_temperature",
        |given| {
            let volume = given.any("volume");
            let (from, to) = (given.any("from"), given.any("to"));
            (volume, from, to, given.expansion())
        },
        |(volume, from, to, expansion)| at_temperature(*volume, *from, *to, *expansion),
    );
    time(
        c,
        "volume.temperature_error",
        |given| {
            let volume = given.any("volume");
            let (read_at, reference) = (given.any("read_at"), given.any("reference"));
            (volume, read_at, reference, given.expansion())
        },
        |(volume, at, reference, expansion)| {
            temperature_error(*volume, *at, *reference, *expansion)
        },
    );
    time(
        c,
        "volume.mass",
        |given| (given.any("volume"), at(given)),
        |(volume, (density, at, base))| mass(*volume, *at, *density, *base),
    );
    time(
        c,
        "volume.volume_of_mass",
        |given| (given.any("mass"), at(given)),
        |(mass, (density, at, base))| volume_of_mass(*mass, *at, *density, *base),
    );
    time(
        c,
        "volume.tilt_error",
        |given| ["surface", "offset", "tilt"].map(|name| given.any(name)),
        |[surface, offset, tilt]| tilt_error(*surface, *offset, *tilt),
    );
    time(
        c,
        "volume.volume_below",
        |given| (given.sump(), given.any("level")),
        |(sump, level)| volume_below(sump, *level),
    );
    time(
        c,
        "volume.level_for",
        |given| (given.sump(), given.any("volume")),
        |(sump, volume)| level_for(sump, *volume),
    );
    time(
        c,
        "volume.segment_share",
        |given| [given.any("level"), given.any("diameter")],
        |[level, diameter]| segment_share(*level, *diameter),
    );
    let drained = |given: &Given| [given.any("capacity"), given.any("drained")];
    time(
        c,
        "volume.exchange",
        |given| (drained(given), given.count("cycles")),
        |([capacity, drained], cycles)| exchange(*capacity, *drained, *cycles),
    );
    time(
        c,
        "volume.cycles_needed",
        |given| (drained(given), given.ratio("fresh")),
        |([capacity, drained], fresh)| cycles_needed(*capacity, *drained, *fresh),
    );
    time(
        c,
        "volume.wrong_left",
        |given| (drained(given), given.any("wrong"), given.count("cycles")),
        |([capacity, drained], wrong, cycles)| wrong_left(*capacity, *wrong, *drained, *cycles),
    );
    time(
        c,
        "volume.flush",
        |given| [given.any("capacity"), given.any("flowed")],
        |[capacity, flowed]| flush(*capacity, *flowed),
    );
    time(
        c,
        "volume.flush_needed",
        |given| [given.any("capacity"), given.ratio("fresh")],
        |[capacity, fresh]| flush_needed(*capacity, *fresh),
    );
}
