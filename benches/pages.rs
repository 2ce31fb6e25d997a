//! A work sheet and a bay card from the text of a journal to the text of a page, and the pictures alone.

use brimline::report::{Medium, Particulars, Picture, bay_card, picture, work_sheet};
use brimline::{LevelCheck, Pack};
use criterion::{Criterion, criterion_group, criterion_main};
use std::hint::black_box;

const JOURNAL: &str = include_str!("../examples/journals/short_unit.json");

fn benches(criterion: &mut Criterion) {
    let pack = Pack::embedded().expect("the embedded pack reads");
    let particulars = Particulars::default();
    let mut group = criterion.benchmark_group("forty entries");
    for (name, medium) in Medium::WORDS {
        group.bench_function(format!("work sheet, {name}"), |bencher| {
            bencher.iter(|| work_sheet(&pack, black_box(JOURNAL), &particulars, *medium));
        });
    }
    group.bench_function("bay card, html", |bencher| {
        bencher.iter(|| bay_card(&pack, black_box(JOURNAL), &particulars, Medium::Html));
    });
    let check = LevelCheck::replay(&pack, JOURNAL).expect("the journal replays");
    for (name, which) in Picture::WORDS {
        group.bench_function(format!("picture, {name}"), |bencher| {
            bencher.iter(|| picture(black_box(&check), *which, None));
        });
    }
    group.finish();
}

criterion_group!(pages, benches);
criterion_main!(pages);
