//! How long quantities take: conversions by unit and by name, reading, comparing, printing.

use brimline::{Amount, Rounding, Unit, convert};
use criterion::{Criterion, criterion_group, criterion_main};
use std::hint::black_box;

fn conversions(c: &mut Criterion) {
    let mut group = c.benchmark_group("convert");
    let pairs = [
        (Unit::NewtonMetre, Unit::PoundForceFoot),
        (Unit::Millilitre, Unit::Litre),
        (Unit::DegreeFahrenheit, Unit::DegreeCelsius),
        (Unit::PoundPerSquareInch, Unit::Bar),
    ];
    for (from, to) in pairs {
        for (digits, number) in [
            ("15 digits", 104.25),
            ("any double", 1.0 / 3.0),
            ("the smallest", 5e-324),
        ] {
            group.bench_function(format!("units/{from} to {to}/{digits}"), |b| {
                b.iter(|| convert(black_box(number), black_box(from), black_box(to)));
            });
        }
    }
    for (from, to) in [
        ("N·m", "lbf·ft"),
        ("N*m", "ft-lb"),
        ("deg F", "°C"),
        ("qt (US)", "L"),
        ("newton metres", "pound-force feet"),
    ] {
        group.bench_function(format!("names/{from} to {to}"), |b| {
            b.iter(|| convert(black_box(104.25), black_box(from), black_box(to)));
        });
    }
    group.finish();
}

fn amounts(c: &mut Criterion) {
    let mut group = c.benchmark_group("amount");
    for text in [
        "1.5 L",
        "9 ft-lb",
        "1/2 US qt",
        "1 1/2 US qt",
        "104 °F",
        "123456.789012345 kgf·cm",
    ] {
        group.bench_function(format!("parse/{text}"), |b| {
            b.iter(|| Amount::parse(black_box(text)))
        });
    }
    group.bench_function("parse/refused: 12 oz", |b| {
        b.iter(|| Amount::parse(black_box("12 oz")))
    });
    let [limit, pour, other] =
        ["1.4 US qt", "0.1 US qt", "1.3 L"].map(|text| Amount::parse(text).expect("an amount"));
    group.bench_function("add", |b| {
        b.iter(|| black_box(limit).checked_add(black_box(pour)))
    });
    group.bench_function("compare/one unit", |b| {
        b.iter(|| black_box(limit).compare(&black_box(pour)))
    });
    group.bench_function("compare/two units", |b| {
        b.iter(|| black_box(limit).compare(&black_box(other)))
    });
    group.bench_function("to", |b| {
        b.iter(|| black_box(limit).to(Unit::Litre, 4, Rounding::HalfEven))
    });
    group.bench_function("from_f64", |b| {
        b.iter(|| Amount::from_f64(black_box(0.1), Unit::Litre))
    });
    group.bench_function("print", |b| b.iter(|| black_box(limit).to_string()));
    group.finish();
}

criterion_group!(benches, conversions, amounts);
criterion_main!(benches);
