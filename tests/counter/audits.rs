//! What records cost, against the invoices that were written of them.

use super::jobs::{CLOSED, OPEN, entries, job, journal, list, pour, prices};
use brimline::estimate::{Audit, Audited, audit};
use brimline::{Pack, PriceList, Record, invoice};

/// A job that was billed under one list and is audited under another.
fn of(sheet: &str, volume: &str, billed: &PriceList, now: &PriceList, pack: &Pack) -> Audit {
    let entries = entries(&[OPEN, &pour(volume), CLOSED]);
    let check = job(sheet, "check", &entries);
    let record = Record::seal(
        &Pack::embedded().expect("it reads"),
        &*journal(sheet, "check", &entries),
    );
    let invoice = invoice(billed, &check, None).expect("it can be billed");
    let job = Audited::invoiced(record.expect("it seals"), now, &invoice);
    audit(now, pack, &[job]).expect("it can be audited")
}

fn given_away(audit: &Audit) -> (usize, String, usize) {
    let item = &audit.items()[2];
    assert_eq!(item.id, "fluid_not_billed");
    (item.count, item.net.to_string(), item.unpriced)
}

#[test]
fn our_own_invoice_gives_nothing_away() {
    let pack = Pack::embedded().expect("it reads");
    let step = r#""billing":{"policy":"used","least":"0.1 L","step":"0.05 L"}"#;
    let list = list(step, r#""billing":{"policy":"used"}"#);
    // Billed as 0.333333 L.
    let told = of("pipit-level", "0.3333334 L", &list, &list, &pack);
    assert_eq!(given_away(&told), (0, "0.00 EUR".into(), 0));
    // Two bottles.
    let told = of("dunlin-pipe", "0.7 L", &prices(), &prices(), &pack);
    assert_eq!(given_away(&told), (0, "0.00 EUR".into(), 0));
}

#[test]
fn a_container_that_left_the_list_is_no_volume_of_zero() {
    let pack = Pack::embedded().expect("it reads");
    let renamed = list("teasel-wet-flask", "teasel-wet-carton");
    let told = of("dunlin-pipe", "0.7 L", &prices(), &renamed, &pack);
    assert_eq!(given_away(&told), (0, "0.00 EUR".into(), 0));
}

#[test]
fn fluid_of_another_sheet_has_no_price() {
    let text = Pack::embedded().expect("it reads").to_json();
    let other = text.replace(r#""hands_on":"30 min""#, r#""hands_on":"31 min""#);
    assert_ne!(text, other);
    let other = Pack::from_json(&other).expect("it reads");
    let entries = entries(&[OPEN, &pour("0.75 L"), CLOSED]);
    let journal = journal("pipit-level", "check", &entries);
    let record = Record::seal(&Pack::embedded().expect("it reads"), &*journal).expect("it seals");
    let billed = brimline::Amount::parse("0.5 L").ok();
    let told = audit(&prices(), &other, &[Audited { record, billed }]).expect("it can be audited");
    assert_eq!(given_away(&told), (1, "0.00 EUR".into(), 1));
}

#[test]
fn what_was_billed_is_read_with_all_its_faults() {
    let check = job("pipit-level", "check", &[]);
    let record = Record::seal(
        &Pack::embedded().expect("it reads"),
        check.journal_lines().as_str(),
    );
    let record = record.expect("it seals");
    let told = |texts: &[Option<&str>]| {
        let list = Audited::list(vec![record.clone(); 3], Some(texts));
        let error = list.expect_err("refused");
        let faults = error.faults();
        let told = faults.map(|fault| format!("{} {}", fault.path, fault.kind.slug()));
        told.collect::<Vec<_>>()
    };
    assert_eq!(
        told(&[Some("0.5 kg"), Some("-1 L"), Some("1,5 L")]),
        [
            "jobs[0].billed wrong_kind",
            "jobs[1].billed out_of_range",
            "jobs[2].billed decimal_comma"
        ]
    );
    // One more or less than there are records would bill another job.
    assert_eq!(told(&[Some("1 L"), None]), ["billed conflict"]);
    let read = Audited::list(vec![record.clone(); 2], Some(&[Some("1 L"), None]));
    let read: Vec<bool> = read
        .expect("it reads")
        .iter()
        .map(|own| own.billed.is_some())
        .collect();
    assert_eq!(read, [true, false]);
    let unknown = Audited::list::<&str>(vec![record], None).expect("it reads");
    assert!(unknown.iter().all(|own| own.billed.is_none()));
}
