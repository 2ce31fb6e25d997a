//! Limits under uncertainty, consumption, drips.

use crate::given::{amount, time};
use brimline::leak::{
    Rule, SeepageClass, Visit, against_limit, combined_uncertainty, conformance, consumption,
    drip_rate, drops_for, expanded_uncertainty, guard_band, quantile, risks, seepage,
};
use brimline::{Amount, Kind, Unit};
use criterion::Criterion;
use serde_json::Value;
use std::hint::black_box;

pub fn leak(c: &mut Criterion) {
    time(
        c,
        "leak.against_limit",
        |given| {
            let rule = Rule::from_slug(given.text("rule")).unwrap_or(Rule::SimpleAcceptance);
            let values = ["estimate", "uncertainty", "limit"].map(|name| given.any(name));
            (values, rule, given.maybe("probability", Kind::Ratio))
        },
        |([estimate, uncertainty, limit], rule, probability)| {
            against_limit(*estimate, *uncertainty, *limit, *rule, *probability)
        },
    );
    time(
        c,
        "leak.conformance",
        |given| {
            let limits = ["lower", "upper"].map(|name| given.maybe(name, None));
            (given.any("value"), given.any("uncertainty"), limits)
        },
        |(value, uncertainty, [lower, upper])| conformance(*value, *uncertainty, *lower, *upper),
    );
    time(
        c,
        "leak.guard_band",
        |given| [given.any("uncertainty"), given.ratio("probability")],
        |[uncertainty, probability]| guard_band(*uncertainty, *probability),
    );
    time(
        c,
        "leak.quantile",
        |given| given.ratio("probability"),
        |probability| quantile(*probability),
    );
    time(
        c,
        "leak.combined_uncertainty",
        |given| {
            let parts = given.0["parts"].as_array().expect("a list");
            let parts = parts.iter().filter_map(Value::as_str).map(amount);
            parts.collect::<Vec<_>>()
        },
        |parts| combined_uncertainty(parts),
    );
    time(
        c,
        "leak.expanded_uncertainty",
        |given| (given.any("uncertainty"), given.maybe("factor", Kind::Ratio)),
        |(uncertainty, factor)| expanded_uncertainty(*uncertainty, *factor),
    );
    time(
        c,
        "leak.risks",
        |given| {
            let values = ["mean", "spread", "uncertainty"].map(|name| given.any(name));
            (
                values,
                given.interval("tolerance"),
                given.interval("acceptance"),
            )
        },
        |([mean, spread, doubt], tolerance, acceptance)| {
            risks(*mean, *spread, *doubt, *tolerance, *acceptance)
        },
    );
    time(
        c,
        "leak.drip_rate",
        |given| {
            (
                given.count("drops"),
                given.any("in_time"),
                given.any("drop"),
            )
        },
        |(drops, in_time, drop)| drip_rate(*drops, *in_time, *drop),
    );
    time(
        c,
        "leak.drops_for",
        |given| ["volume", "over", "drop"].map(|name| given.any(name)),
        |[volume, over, drop]| drops_for(*volume, *over, *drop),
    );
    time(
        c,
        "leak.seepage",
        |given| SeepageClass::from_slug(given.text("class")).expect("a class"),
        |class| Ok(seepage(*class)),
    );
    let visits = (0..10_i64).map(|place| {
        let odometer = Amount::new(80_000 + 12_000 * place, 0, Unit::Kilometre);
        let net = Amount::new(30 + 7 * place % 20, 2, Unit::Litre);
        Visit {
            date: format!("20{:02}-03-02", 16 + place).parse().ok(),
            ..Visit::new(odometer.expect("a length"), net.expect("a volume"))
        }
    });
    let (visits, shortage): (Vec<_>, _) = (visits.collect(), amount("0.5 L"));
    c.bench_function("leak.consumption, 10 visits", |bencher| {
        bencher.iter(|| consumption(black_box(&visits), shortage));
    });
}
