//! Many records that were reopened before: histories and comebacks over 1,000, 10,000 and 100,000 of them, on one core.

use brimline::record::comebacks;
use brimline::{History, Pack, Record};
use criterion::{BenchmarkId, Criterion, Throughput, criterion_group, criterion_main};
use std::hint::black_box;

/// How often each vehicle came.
const VISITS: usize = 4;

/// One visit of sixteen entries, in which a unit was found short and brought to its level.
fn journal(visit: usize) -> String {
    let (vehicle, turn) = (visit / VISITS, visit % VISITS);
    let (month, day) = (1 + turn * 2, 1 + vehicle % 28);
    let odometer = 40_000 + vehicle % 1_000 + turn * 5_000;
    let facts = [
        r#""kind":"confirmed","what":"fill_opening_proven""#,
        r#""kind":"level","tilt":"0.2 deg","toward":"plug""#,
        r#""kind":"engine","state":"idling""#,
        r#""kind":"selector","position":"park""#,
        r#""kind":"ranges","dwell":"4 s""#,
        r#""kind":"temperature","reading":"38 °C","source":"scan""#,
        r#""kind":"temperature","reading":"43 °C","source":"scan""#,
        r#""kind":"plug","state":"open","by":"Tilda""#,
        r#""kind":"flow","grade":"none","for":"20 s","by":"Tilda""#,
        r#""kind":"added","volume":"0.25 L","measured_by":"jug""#,
        r#""kind":"added","volume":"0.25 L","measured_by":"jug""#,
        r#""kind":"temperature","reading":"44 °C","source":"scan""#,
        r#""kind":"flow","grade":"trickle","for":"20 s","captured":"40 g","captured_by":"scale""#,
        r#""kind":"plug","state":"closed","by":"Tilda""#,
        r#""kind":"tightened","torque":"13 N·m""#,
        r#""kind":"engine","state":"off""#,
    ];
    let seconds = [
        0, 31, 75, 90, 101, 130, 400, 430, 455, 470, 500, 610, 631, 660, 700, 750,
    ];
    let lines: Vec<String> = facts
        .iter()
        .zip(seconds)
        .enumerate()
        .map(|(place, (fact, second))| {
            let (seq, minute, second) = (place + 1, second / 60, second % 60);
            format!(r#"{{"seq":{seq},"at":"2025-{month:02}-{day:02}T08:{minute:02}:{second:02}Z",{fact}}}"#)
        })
        .collect();
    format!(
        r#"{{"format":"brimline-journal/1","job_id":"job {visit}","procedure":"pipit-level","edition":2,"job":"check","subject":{{"vehicle":"Oddry Fen {vehicle:06}","odometer":"{odometer} km"}},"entries":[{}]}}"#,
        lines.join(",")
    )
}

fn benches(criterion: &mut Criterion) {
    let pack = Pack::embedded().expect("the embedded pack reads");
    let sealed = |visit| Record::seal(&pack, journal(visit).as_str()).expect("it seals");
    let records: Vec<Record> = (0..100_000).map(sealed).collect();
    let mut group = criterion.benchmark_group("history");
    group.sample_size(10);
    for count in [1_000, 10_000, 100_000] {
        let records = &records[..count];
        group.throughput(Throughput::Elements(count as u64));
        group.bench_with_input(
            BenchmarkId::new("of", count),
            records,
            |bencher, records| {
                bencher.iter(|| History::of(black_box(records)));
            },
        );
        group.bench_with_input(
            BenchmarkId::new("comebacks", count),
            records,
            |bencher, records| {
                bencher.iter(|| comebacks(black_box(records)));
            },
        );
    }
    group.finish();
}

criterion_group!(history, benches);
criterion_main!(history);
