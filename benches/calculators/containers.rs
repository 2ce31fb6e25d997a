//! Which containers to open for 40 L, of twelve sizes.

use crate::given::amount;
use brimline::volume::{Container, containers};
use criterion::Criterion;
use std::hint::black_box;

/// What a shelf offers: names, volumes and prices.
const SHELVES: [(&str, &[(&str, u64)]); 4] = [
    (
        "litres",
        &[
            ("0.1 L", 210),
            ("0.25 L", 420),
            ("0.5 L", 700),
            ("1 L", 1_190),
            ("1.5 L", 1_720),
            ("2 L", 2_150),
            ("3 L", 3_190),
            ("4 L", 4_090),
            ("5 L", 4_950),
            ("10 L", 9_400),
            ("20 L", 17_900),
            ("60 L", 49_900),
        ],
    ),
    (
        "quarts",
        &[
            ("4 US fl oz", 260),
            ("8 US fl oz", 430),
            ("1 US pt", 700),
            ("1 US qt", 1_150),
            ("1.5 US qt", 1_690),
            ("2 US qt", 2_190),
            ("3 US qt", 3_150),
            ("1 US gal", 3_990),
            ("5 US qt", 4_890),
            ("2 US gal", 7_600),
            ("5 US gal", 17_700),
            ("15 US gal", 49_800),
        ],
    ),
    (
        "litres and quarts",
        &[
            ("0.25 L", 420),
            ("0.5 L", 700),
            ("1 US pt", 690),
            ("1 US qt", 1_150),
            ("1 L", 1_190),
            ("2 L", 2_150),
            ("2 US qt", 2_190),
            ("1 US gal", 3_990),
            ("4 L", 4_090),
            ("5 L", 4_950),
            ("5 US gal", 17_700),
            ("20 L", 17_900),
        ],
    ),
    (
        "odd sizes",
        &[
            ("0.33 L", 510),
            ("0.473 L", 690),
            ("0.568 L", 800),
            ("0.75 L", 980),
            ("0.946 L", 1_150),
            ("1.136 L", 1_310),
            ("1.75 L", 1_910),
            ("3.785 L", 3_990),
            ("4.546 L", 4_600),
            ("7.57 L", 7_550),
            ("18.93 L", 17_700),
            ("22.7 L", 20_900),
        ],
    ),
];

pub fn plans(c: &mut Criterion) {
    for (word, shelf) in SHELVES {
        let sizes = shelf.iter().map(|(name, price)| Container {
            name,
            volume: amount(name),
            price: Some(*price),
            stock: None,
        });
        let (sizes, need): (Vec<_>, _) = (sizes.collect(), amount("40 L"));
        c.bench_function(
            &format!("volume.containers, 40 L of 12 sizes, {word}"),
            |bencher| {
                bencher.iter(|| containers(black_box(need), black_box(&sizes), &[], None));
            },
        );
    }
}
