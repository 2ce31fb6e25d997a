//! An estimate and an invoice on a check that was read before: from the check to the answer, and to its document. A job of twenty
//! entries of which ten are billed, as a bay terminal and a counter ask it.

use brimline::estimate::{Asked, CaseKind};
use brimline::{LevelCheck, Pack, PriceList, estimate, invoice};
use criterion::{Criterion, criterion_group, criterion_main};
use std::hint::black_box;

const ENTRIES: [&str; 20] = [
    r#""kind":"confirmed","what":"fill_opening_proven""#,
    r#""kind":"approved","ceiling":"400.00 EUR","by":"Ivo""#,
    r#""kind":"level","tilt":"0.2 deg","toward":"plug""#,
    r#""kind":"engine","state":"idling""#,
    r#""kind":"selector","position":"park""#,
    r#""kind":"ranges","dwell":"4 s""#,
    r#""kind":"temperature","reading":"43 °C","source":"scan""#,
    r#""kind":"plug","state":"open""#,
    r#""kind":"flow","grade":"none","for":"20 s""#,
    r#""kind":"added","volume":"0.25 L","measured_by":"jug""#,
    r#""kind":"temperature","reading":"43 °C","source":"scan""#,
    r#""kind":"flow","grade":"none","for":"20 s""#,
    r#""kind":"added","volume":"0.25 L","measured_by":"jug""#,
    r#""kind":"temperature","reading":"44 °C","source":"scan""#,
    r#""kind":"flow","grade":"trickle","for":"20 s","captured":"40 mL","captured_by":"jug""#,
    r#""kind":"plug","state":"closed""#,
    r#""kind":"tightened","torque":"13 N·m""#,
    r#""kind":"confirmed","what":"drips_checked""#,
    r#""kind":"engine","state":"off""#,
    r#""kind":"note","text":"customer waits""#,
];

/// A check of the first so many of the entries.
fn check(count: usize) -> LevelCheck {
    let entries: Vec<String> = ENTRIES
        .iter()
        .take(count)
        .enumerate()
        .map(|(place, rest)| {
            let (minute, second) = (place / 4, place % 4 * 15);
            format!(
                r#"{{"seq":{},"at":"2026-03-02T09:{minute:02}:{second:02}Z",{rest}}}"#,
                place + 1
            )
        })
        .collect();
    let journal = format!(
        r#"{{"format":"brimline-journal/1","procedure":"pipit-level","edition":2,"job":"top_up","entries":[{}]}}"#,
        entries.join(",")
    );
    let pack = Pack::embedded().expect("the embedded pack reads");
    LevelCheck::replay(&pack, &journal).expect("the journal reads")
}

fn benches(criterion: &mut Criterion) {
    let prices = PriceList::embedded().expect("the embedded list reads");
    let (before, running, done) = (check(0), check(13), check(20));
    let nothing = Asked::default();
    let planned = Asked::from_json(r#"{"planned":"0.25 L"}"#).expect("what is asked reads");
    let stock = r#"{"stock":{"full":[{"container":"sedge-thin-bottle","count":3}]}}"#;
    let stock = Asked::from_json(stock).expect("what is asked reads");
    let quote = estimate(&prices, &before, &nothing).expect("it can be estimated");
    assert!(quote.case(CaseKind::Worst).lines.len() > 5);
    let quote = quote.quote();
    let mut group = criterion.benchmark_group("counter");
    for (name, check, asked) in [
        ("estimate, before", &before, &nothing),
        ("estimate, running, with a ceiling", &running, &planned),
        ("estimate, before, with the shelf", &before, &stock),
    ] {
        group.bench_function(name, |bencher| {
            bencher.iter(|| estimate(black_box(&prices), black_box(check), asked));
        });
    }
    group.bench_function("invoice", |bencher| {
        bencher.iter(|| invoice(black_box(&prices), black_box(&done), None));
    });
    group.bench_function("invoice, against an estimate", |bencher| {
        bencher.iter(|| invoice(black_box(&prices), black_box(&done), Some(&quote)));
    });
    let billed = invoice(&prices, &done, Some(&quote)).expect("it can be billed");
    group.bench_function("invoice, to its document", |bencher| {
        bencher.iter(|| black_box(&billed).to_json());
    });
    group.bench_function("price list, read", |bencher| {
        let text = prices.to_json();
        bencher.iter(|| PriceList::from_json(black_box(&text)));
    });
    group.finish();
}

criterion_group!(counter, benches);
criterion_main!(counter);
