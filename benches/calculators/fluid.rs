//! Oils: viscosity, index, blends, grades.

use crate::given::{Given, amount, time};
use brimline::fluid::{
    BlendRule, Component, Walther, blend, grade, grade_limits, temperature_for, viscosity_at,
    viscosity_index,
};
use criterion::Criterion;
use std::hint::black_box;

pub fn fluid(c: &mut Criterion) {
    let points = |given: &Given| {
        [
            "viscosity_1",
            "temperature_1",
            "viscosity_2",
            "temperature_2",
        ]
        .map(|name| given.any(name))
    };
    time(
        c,
        "fluid.viscosity_at",
        |given| (points(given), given.any("temperature")),
        |([v1, t1, v2, t2], at)| viscosity_at(*v1, *t1, *v2, *t2, *at),
    );
    time(
        c,
        "fluid.temperature_for",
        |given| (points(given), given.any("viscosity")),
        |([v1, t1, v2, t2], of)| temperature_for(*v1, *t1, *v2, *t2, *of),
    );
    time(
        c,
        "fluid.viscosity_index",
        |given| [given.any("viscosity_40"), given.any("viscosity_100")],
        |[at_40, at_100]| viscosity_index(*at_40, *at_100),
    );
    time(
        c,
        "fluid.blend",
        |given| {
            let rule = BlendRule::from_slug(given.text("rule")).expect("a rule");
            let parts = given.list("parts").map(|part| Component {
                viscosity: part.any("viscosity"),
                share: part.ratio("share"),
            });
            (parts.collect::<Vec<_>>(), rule)
        },
        |(parts, rule)| blend(parts, *rule),
    );
    time(
        c,
        "fluid.grade",
        |given| given.any("viscosity_40"),
        |viscosity| grade(*viscosity),
    );
    time(
        c,
        "fluid.grade_limits",
        |given| given.count("grade"),
        |number| grade_limits(*number),
    );
    let [thick, cold, thin, hot, at] =
        ["32 mm²/s", "40 °C", "5.4 mm²/s", "100 °C", "80 °C"].map(amount);
    let oil = Walther::new(thick, cold, thin, hot).expect("an oil");
    c.bench_function("fluid.Walther.viscosity_at", |bencher| {
        bencher.iter(|| oil.viscosity_at(black_box(at)));
    });
    c.bench_function("fluid.Walther.temperature_for", |bencher| {
        bencher.iter(|| oil.temperature_for(black_box(thin)));
    });
}
