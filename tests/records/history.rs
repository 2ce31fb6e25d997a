//! What many records say does not depend on their order or on repeats, and is what the single jobs add up to.

use crate::vector_cases::{answer, cases, root};
use brimline::record::{Visit, comebacks, follow_up};
use brimline::{History, Pack, Record, report};
use proptest::prelude::*;
use serde_json::{Value, json};
use std::collections::{BTreeMap, BTreeSet};
use std::fs;

/// One visit of which everything is measured: millilitres poured, and of those caught again.
#[derive(Debug, Clone)]
struct Job {
    vehicle: u8,
    day: i64,
    odometer: Option<u32>,
    poured: u32,
    caught: u32,
    kind: &'static str,
}

fn jobs() -> impl Strategy<Value = Vec<Job>> {
    let kind = prop::sample::select(vec!["check", "top_up", "leak_follow_up", "recheck"]);
    let volumes = (1_u32..1500).prop_flat_map(|poured| (Just(poured), 0..poured));
    let job = (
        0_u8..3,
        0_i64..2000,
        prop::option::of(0_u32..300_000),
        volumes,
        kind,
    );
    prop::collection::vec(job, 0..12).prop_map(|jobs| {
        let mut days = BTreeSet::new();
        let jobs = jobs.into_iter().filter(|job| days.insert((job.0, job.1)));
        let job = |(vehicle, day, odometer, (poured, caught), kind)| Job {
            vehicle,
            day,
            odometer,
            poured,
            caught,
            kind,
        };
        jobs.map(job).collect()
    })
}

fn pack() -> Pack {
    let text = fs::read_to_string(root().join("tests/vectors/packs/limits.json"));
    Pack::from_json(&text.expect("the pack is there")).expect("it reads")
}

fn sealed(pack: &Pack, job: &Job) -> Record {
    let day = day_after(job.day);
    let mut subject = json!({"vehicle": format!("Oddry Fen {}", job.vehicle)});
    if let Some(odometer) = job.odometer {
        subject["odometer"] = json!(format!("{odometer} km"));
    }
    let journal = json!({
        "format": "brimline-journal/1",
        "procedure": "more",
        "job": job.kind,
        "subject": subject,
        "entries": [
            {"seq": 1, "at": format!("{day}T09:00:10Z"), "kind": "plug", "state": "open"},
            {"seq": 2, "at": format!("{day}T09:00:30Z"), "kind": "flow", "grade": "none", "for": "12 s"},
            {"seq": 3, "at": format!("{day}T09:02:05Z"), "kind": "added", "volume": format!("{} mL", job.poured)},
            {"seq": 4, "at": format!("{day}T09:03:52Z"), "kind": "flow", "grade": "trickle", "for": "13 s",
             "captured": format!("{} mL", job.caught)},
            {"seq": 5, "at": format!("{day}T09:06:00Z"), "kind": "plug", "state": "closed"},
        ],
    });
    Record::seal(pack, journal.to_string().as_str()).expect("it seals")
}

/// A calendar day for each number, the higher the later; no month has more than 28 of them.
fn day_after(number: i64) -> String {
    let (year, month, day) = (2015 + number / 336, number % 336 / 28 + 1, number % 28 + 1);
    format!("{year}-{month:02}-{day:02}")
}

/// Millilitres of a volume in litres.
fn millilitres(text: &Value) -> i64 {
    let litres = brimline::Amount::parse(text.as_str().expect("an end")).expect("a volume");
    let exact = litres
        .to_exact(brimline::Unit::Millilitre)
        .expect("a volume");
    exact.number().parse().expect("whole millilitres")
}

proptest! {
    #![proptest_config(ProptestConfig { cases: 64, failure_persistence: None, ..ProptestConfig::default() })]

    #[test]
    fn the_order_and_repeats_say_nothing(jobs in jobs(), turn in 0_usize..12, again in 0_usize..12) {
        let pack = pack();
        let records: Vec<Record> = jobs.iter().map(|job| sealed(&pack, job)).collect();
        let mut turned = records.clone();
        turned.rotate_left(turn % records.len().max(1));
        turned.reverse();
        prop_assert_eq!(History::of(&records).to_json(), History::of(&turned).to_json());
        prop_assert_eq!(comebacks(&records).to_json(), comebacks(&turned).to_json());
        if let Some(record) = records.get(again % records.len().max(1)) {
            let mut more = records.clone();
            more.push(record.clone());
            let [once, twice] = [&records, &more].map(|records| History::of(records));
            prop_assert_eq!(once.vehicles(), twice.vehicles());
            prop_assert_eq!(twice.notices()[0].id, "record_twice");
            prop_assert_eq!(comebacks(&records).to_json(), comebacks(&more).to_json());
        }
    }

    #[test]
    fn losses_are_what_each_visit_took(jobs in jobs()) {
        let pack = pack();
        let records: Vec<Record> = jobs.iter().map(|job| sealed(&pack, job)).collect();
        let told: Value = serde_json::from_str(&History::of(&records).to_json()).expect("JSON");
        let mut visits = 0;
        for vehicle in told["vehicles"].as_array().expect("a list") {
            let name = vehicle["vehicle"].as_str().expect("a name");
            let mut own: Vec<&Job> =
                jobs.iter().filter(|job| name == format!("Oddry Fen {}", job.vehicle)).collect();
            own.sort_by_key(|job| job.day);
            visits += own.len();
            let losses = vehicle["losses"].as_array().expect("a list");
            prop_assert_eq!(losses.len(), own.len() - 1);
            // What was lost before the last job that searched, or was past 1.2 L by itself, was answered for then.
            let answers = |job: &&Job| job.poured - job.caught > 1200 || job.kind == "leak_follow_up";
            let since = own.iter().rposition(answers).unwrap_or(0);
            let after = &own[since + 1..];
            let sum: i64 = after.iter().map(|job| i64::from(job.poured) - i64::from(job.caught)).sum();
            for (loss, pair) in losses.iter().zip(own.windows(2)) {
                let lost = i64::from(pair[1].poured) - i64::from(pair[1].caught);
                prop_assert_eq!(millilitres(&loss["lost"][0]), lost);
                prop_assert_eq!(millilitres(&loss["lost"][1]), lost);
                let apart = pair[0].odometer.zip(pair[1].odometer);
                let is_told = loss.get("per_1000_km").is_some();
                let may_be_told = apart.is_some_and(|(from, to)| to > from);
                prop_assert!(!is_told || may_be_told);
                prop_assert!(loss.get("per_30_days").is_some());
            }
            let together = vehicle["notices"].as_array().expect("a list").iter()
                .any(|notice| notice["id"] == "lost_together");
            prop_assert_eq!(together, sum > 1200 && after.len() > 1);
        }
        prop_assert_eq!(visits, jobs.len());
    }

    #[test]
    fn a_follow_up_is_never_later_than_a_reason_allows(jobs in jobs()) {
        let pack = pack();
        let records: Vec<Record> = jobs.iter().map(|job| sealed(&pack, job)).collect();
        let history = History::of(&records);
        for record in &records {
            let of = history.of_record(record).expect("it is there");
            let digests = |visit: &Visit| visit.record == *record;
            prop_assert!(of.visits.iter().any(digests));
            let told = follow_up(record, Some(of)).expect("default rules");
            prop_assert!(!told.because().is_empty());
            prop_assert_eq!(told.job().is_none(), told.because()[0].id == "nothing_asks");
            for reason in told.because() {
                if let (Some(own), Some(least)) = (reason.days, told.days()) {
                    prop_assert!(least <= own);
                }
                if let (Some(own), Some(least)) = (reason.distance, told.distance()) {
                    prop_assert!(least <= own);
                }
            }
            prop_assert!(!told.is_now() || told.date().is_none() && told.distance().is_none());
        }
    }
}

/// The names in braces of a text that are told in any case, and all of them.
fn names(text: &str) -> (BTreeSet<String>, BTreeSet<String>) {
    let (mut always, mut all) = (BTreeSet::new(), BTreeSet::new());
    for (index, part) in text.split(['[', ']']).enumerate() {
        for name in part
            .split('{')
            .skip(1)
            .filter_map(|part| part.split('}').next())
        {
            all.insert(name.to_string());
            if index % 2 == 0 {
                always.insert(name.to_string());
            }
        }
    }
    (always, all)
}

#[test]
fn every_notice_and_reason_has_its_message_and_is_met() {
    let mut met: BTreeMap<(&str, String), Vec<Value>> = BTreeMap::new();
    for case in cases() {
        let told = || -> Value { serde_json::from_str(&answer(&case.request)).expect("JSON") };
        let lists: Vec<(&str, Value)> = match case.request.op.as_str() {
            "history" => {
                let told = told();
                let units = told["vehicles"].as_array().cloned().unwrap_or_default();
                let of_units = units
                    .iter()
                    .map(|unit| ("history", unit["notices"].clone()));
                of_units
                    .chain([("history", told["notices"].clone())])
                    .collect()
            }
            "comebacks" => vec![("comeback", told()["notices"].clone())],
            "follow_up" => vec![("follow_up", told()["because"].clone())],
            _ => continue,
        };
        for (part, list) in lists {
            for notice in list.as_array().into_iter().flatten() {
                let id = notice["id"].as_str().expect("an id").to_string();
                met.entry((part, id))
                    .or_default()
                    .push(notice["args"].clone());
            }
        }
    }
    for message in report::messages() {
        if !["history", "comeback", "follow_up"].contains(&message.part) {
            continue;
        }
        let given = met.remove(&(message.part, message.id.to_string()));
        let given = given.unwrap_or_else(|| panic!("{} {} is never met", message.part, message.id));
        let (always, all) = names(message.text);
        for args in &given {
            for name in &always {
                assert!(
                    args.get(name).is_some(),
                    "{} {}: {name} is not given",
                    message.part,
                    message.id
                );
            }
        }
        for name in all {
            let is_given = given.iter().any(|args| args.get(&name).is_some());
            assert!(
                is_given,
                "{} {}: {name} is never given",
                message.part, message.id
            );
        }
    }
    assert!(met.is_empty(), "no message for {met:#?}");
}
