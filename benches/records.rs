//! Records: the digest beside the bare hash, sealing, reopening, and what is asked of a record.

use brimline::document::digest;
use brimline::record::{KeptJournal, Rules, Storage};
use brimline::{Pack, Record};
use criterion::{Criterion, Throughput, criterion_group, criterion_main};
use sha2::{Digest, Sha256};
use std::hint::black_box;

const JOURNAL: &str = include_str!("../examples/journals/short_unit.json");

/// Both hash the same bytes in the same run: the difference is what writing the digest costs.
fn digests(c: &mut Criterion) {
    for (name, length) in [("8 KB", 8 * 1024), ("1 MB", 1024 * 1024)] {
        let text = "a".repeat(length);
        let mut group = c.benchmark_group(format!("digest of {name}"));
        group.throughput(Throughput::Bytes(length as u64));
        group.bench_function("sha2", |b| {
            b.iter(|| Sha256::digest(black_box(text.as_bytes())));
        });
        group.bench_function("brimline", |b| b.iter(|| digest(black_box(&text))));
        group.finish();
    }
}

fn records(c: &mut Criterion) {
    let pack = Pack::embedded().expect("it reads");
    let record = Record::seal(&pack, JOURNAL).expect("it seals");
    let mut group = c.benchmark_group("record");
    group.throughput(Throughput::Bytes(record.to_json().len() as u64));
    group.bench_function("seal", |b| {
        b.iter(|| Record::seal(&pack, black_box(JOURNAL)).expect("it seals"));
    });
    group.bench_function("reopen", |b| {
        b.iter(|| Record::reopen(black_box(record.to_json())).expect("it reopens"));
    });
    group.bench_function("evidence", |b| b.iter(|| black_box(&record).evidence()));
    group.bench_function("reevaluate", |b| {
        b.iter(|| {
            black_box(&record)
                .reevaluate(&pack, Rules::Latest)
                .expect("same pack")
        });
    });
    group.finish();
}

/// A storage that costs nothing.
struct Nowhere;

impl Storage for Nowhere {
    fn append(&mut self, _: &[u8]) -> Result<(), String> {
        Ok(())
    }

    fn truncate(&mut self, _: usize) -> Result<(), String> {
        Ok(())
    }
}

fn keeping(c: &mut Criterion) {
    let pack = Pack::embedded().expect("it reads");
    let header = r#"{"format":"brimline-journal/1","procedure":"pipit-level","job":"check"}"#;
    let entry = |seq: u32| {
        format!(r#"{{"seq":{seq},"at":"2026-03-02T09:00:00Z","kind":"ranges","dwell":"4 s"}}"#)
    };
    let entries: Vec<String> = (1..=100).map(entry).collect();
    c.bench_function("keep 100 entries", |b| {
        b.iter(|| {
            let mut journal = KeptJournal::start(&pack, header, Nowhere).expect("it starts");
            for entry in &entries {
                journal.append(entry).expect("it is kept");
            }
            journal
        });
    });
}

criterion_group!(benches, digests, records, keeping);
criterion_main!(benches);
