//! The rules of a level check, written a second time, slowly and plainly, and compared with the library.
//!
//! The model was written from the rules alone, in exact rationals and without sight of the library's code. Twenty
//! thousand generated journals a run are answered by both; where the answers differ, the shortest journal that
//! still shows it is printed with the seed. `BRIMLINE_SEED` starts the run from another seed.

#[path = "reference_model/bench.rs"]
mod bench;
#[path = "reference_model/booking.rs"]
mod booking;
#[path = "reference_model/conditions.rs"]
mod conditions;
#[path = "reference_model/coverage.rs"]
mod coverage;
#[path = "reference_model/dice.rs"]
mod dice;
#[path = "reference_model/edges.rs"]
mod edges;
#[path = "reference_model/generate.rs"]
mod generate;
#[path = "reference_model/leak.rs"]
mod leak;
#[path = "reference_model/ledger.rs"]
mod ledger;
#[path = "reference_model/mishap.rs"]
mod mishap;
#[path = "reference_model/model.rs"]
mod model;
#[path = "reference_model/packs.rs"]
mod packs;
#[path = "reference_model/record.rs"]
mod record;
#[path = "reference_model/scripts.rs"]
mod scripts;
#[path = "reference_model/sheet.rs"]
mod sheet;
#[path = "reference_model/shrink.rs"]
mod shrink;
#[path = "reference_model/volume.rs"]
mod volume;
#[path = "reference_model/words.rs"]
mod words;
#[path = "reference_model/worked.rs"]
mod worked;

use coverage::Met;
use dice::Dice;
use scripts::SCRIPTS;
use serde_json::Value;
use std::panic::{AssertUnwindSafe, catch_unwind};

const JOURNALS: u64 = 20_000;
const PACKS: u64 = 400;
const SEED: u64 = 20_240_506;

/// One generated job: its pack, by number, and its journal.
struct Job {
    seed: u64,
    pack: usize,
    script: &'static str,
    journal: Value,
}

/// What a share of the jobs came to.
#[derive(Default)]
struct Outcome {
    met: Met,
    /// The jobs answered otherwise, with the library's refusal if it gave one.
    differing: Vec<(Job, Option<String>)>,
}

fn base_seed() -> u64 {
    let stated = std::env::var("BRIMLINE_SEED").ok();
    stated.map_or(SEED, |seed| {
        seed.parse().expect("BRIMLINE_SEED is a whole number")
    })
}

fn packs(seed: u64) -> Vec<Value> {
    (0..PACKS)
        .map(|number| packs::pack(&mut Dice::new(seed.wrapping_add(number))))
        .collect()
}

fn job(seed: u64, packs: &[Value]) -> Job {
    let mut dice = Dice::new(!seed);
    let pack = dice.below(packs.len());
    let weights: Vec<(usize, usize)> = SCRIPTS
        .iter()
        .enumerate()
        .map(|(row, script)| (script.0, row))
        .collect();
    let (_, script, play) = SCRIPTS[dice.weighted(&weights)];
    let journal = generate::journal(&mut dice, &packs[pack], play);
    Job {
        seed,
        pack,
        script,
        journal,
    }
}

/// The library's answer, cut down to what the model speaks of; its refusal, or that it panicked, otherwise.
fn by_the_library(pack: &brimline::Pack, journal: &Value) -> Result<Value, String> {
    let journal = journal.to_string();
    let evaluation = catch_unwind(AssertUnwindSafe(|| {
        brimline::evaluate(pack, journal.as_str())
    }))
    .map_err(|_| "panicked".to_string())?
    .map_err(|error| format!("refused: {error}"))?;
    let result: Value = serde_json::from_str(&evaluation.to_json()).expect("the result is JSON");
    let mut answer = Value::Null;
    for member in ["verdict", "as_found", "net_added", "now", "leak"] {
        answer[member] = result[member].clone();
    }
    Ok(answer)
}

fn read_by_the_library(pack: &Value) -> Result<brimline::Pack, String> {
    brimline::Pack::from_json(&pack.to_string()).map_err(|error| format!("pack refused: {error}"))
}

/// The model's answer and the library's, if the library answers and they are not the same.
fn difference(pack: &Value, journal: &Value) -> Option<(Value, Value)> {
    let library = by_the_library(&read_by_the_library(pack).ok()?, journal).ok()?;
    let model = model::evaluate(&sheet::Pack::read(pack), journal).result;
    (model != library).then_some((model, library))
}

/// Everything a reader needs to take up a difference: seed, documents and both answers.
fn told(job: &Job, pack: &Value, refusal: Option<String>) -> String {
    let differ = |pack: &Value, journal: &Value| difference(pack, journal).is_some();
    let (pack, journal) = match refusal {
        Some(_) => (pack.clone(), job.journal.clone()),
        None => shrink::shortest(pack.clone(), job.journal.clone(), &differ),
    };
    let answers = match (refusal, difference(&pack, &journal)) {
        (Some(refusal), _) => refusal,
        (None, Some((model, library))) => format!("model:   {model}\nlibrary: {library}"),
        (None, None) => "the difference did not come back".into(),
    };
    let (seed, script) = (job.seed, job.script);
    format!("seed {seed}, script {script:?}\npack:    {pack}\njournal: {journal}\n{answers}\n")
}

fn compare(seeds: impl Iterator<Item = u64>, packs: &[Value]) -> Outcome {
    let modelled: Vec<sheet::Pack> = packs.iter().map(sheet::Pack::read).collect();
    let read: Vec<_> = packs.iter().map(read_by_the_library).collect();
    let mut outcome = Outcome::default();
    for seed in seeds {
        let job = job(seed, packs);
        let answer = model::evaluate(&modelled[job.pack], &job.journal);
        for what in answer.met {
            *outcome.met.entry(what).or_default() += 1;
        }
        let library = match &read[job.pack] {
            Ok(pack) => by_the_library(pack, &job.journal),
            Err(refusal) => Err(refusal.clone()),
        };
        match library {
            Ok(library) if library == answer.result => {}
            Ok(_) => outcome.differing.push((job, None)),
            Err(refusal) => outcome.differing.push((job, Some(refusal))),
        }
    }
    outcome
}

#[test]
fn the_library_answers_as_the_model_does() {
    let seed = base_seed();
    let packs = &packs(seed);
    let threads = std::thread::available_parallelism().map_or(1, usize::from);
    let mut whole = Outcome::default();
    std::thread::scope(|scope| {
        let share = |first: usize| {
            let numbers = (first as u64..JOURNALS).step_by(threads);
            scope.spawn(move || compare(numbers.map(|number| seed.wrapping_add(number)), packs))
        };
        let shares: Vec<_> = (0..threads).map(share).collect();
        for share in shares {
            let share = share.join().expect("a share of the jobs");
            for (what, times) in share.met {
                *whole.met.entry(what).or_default() += times;
            }
            whole.differing.extend(share.differing);
        }
    });

    let count = whole.differing.len();
    let length = |(job, _): &(Job, Option<String>)| job.journal.to_string().len();
    if let Some((job, refusal)) = whole.differing.into_iter().min_by_key(length) {
        let told = told(&job, &packs[job.pack], refusal);
        panic!(
            "{count} of {JOURNALS} journals are answered otherwise from BRIMLINE_SEED={seed}:\n{told}"
        );
    }
    coverage::assert_met(&whole.met);
}
