//! One evaluation from text to text, the fold alone, reading, and growth to 100,000 entries.

use brimline::{Journal, Pack, evaluate, verdict};
use criterion::{BenchmarkId, Criterion, Throughput, criterion_group, criterion_main};
use std::hint::black_box;

const HEADER: &str =
    r#"{"format":"brimline-journal/1","procedure":"pipit-level","edition":2,"job":"check""#;

/// A check of this many entries: set up, then warm, look, pour and measure in turn.
fn journal(entries: usize) -> String {
    let opening = [
        r#""kind":"confirmed","what":"fill_opening_proven""#,
        r#""kind":"level","tilt":"0.2 deg","toward":"plug""#,
        r#""kind":"engine","state":"idling""#,
        r#""kind":"selector","position":"park""#,
        r#""kind":"ranges","dwell":"4 s""#,
        r#""kind":"plug","state":"open""#,
    ];
    let round = [
        r#""kind":"temperature","reading":"42 °C","source":"scan""#,
        r#""kind":"flow","grade":"none","for":"20 s""#,
        r#""kind":"added","volume":"0.25 L","measured_by":"jug""#,
        r#""kind":"note","text":"settling""#,
    ];
    let facts = opening.iter().chain(round.iter().cycle()).take(entries);
    let lines: Vec<String> = facts
        .enumerate()
        .map(|(place, fact)| {
            let seq = place + 1;
            let (hour, minute, second) = (seq / 3600 % 24, seq / 60 % 60, seq % 60);
            let day = 1 + seq / 86400;
            format!(r#"{{"seq":{seq},"at":"2026-03-{day:02}T{hour:02}:{minute:02}:{second:02}Z",{fact}}}"#)
        })
        .collect();
    format!("{HEADER},\"entries\":[{}]}}", lines.join(","))
}

fn benches(criterion: &mut Criterion) {
    let pack = Pack::embedded().expect("the embedded pack reads");
    let twenty = journal(20);
    let read = Journal::from_json(&twenty, None).expect("the journal reads");
    let mut group = criterion.benchmark_group("twenty entries");
    group.bench_function("evaluate, text to text", |bencher| {
        bencher.iter(|| evaluate(&pack, black_box(twenty.as_str())).map(|answer| answer.to_json()));
    });
    group.bench_function("read the journal", |bencher| {
        bencher.iter(|| Journal::from_json(black_box(&twenty), None));
    });
    group.bench_function("fold and answer", |bencher| {
        bencher.iter(|| evaluate(&pack, black_box(&read)));
    });
    group.bench_function("fold", |bencher| {
        bencher.iter(|| verdict(&pack, black_box(&read)));
    });
    group.finish();

    let mut group = criterion.benchmark_group("growth");
    group.sample_size(10);
    for entries in [1_000, 10_000, 100_000] {
        let text = journal(entries);
        group.throughput(Throughput::Elements(entries as u64));
        group.bench_with_input(
            BenchmarkId::from_parameter(entries),
            &text,
            |bencher, text| {
                bencher.iter(|| evaluate(&pack, text.as_str()).map(|answer| answer.to_json()));
            },
        );
    }
    group.finish();
}

criterion_group!(level_check, benches);
criterion_main!(level_check);
