//! Which closed jobs may come back before anybody calls? Three records, and what to do about the first.

use brimline::record::{Cited, comebacks, follow_up};
use brimline::{Error, Pack, Record, report};

/// A short job: set up, open, look at this temperature, close.
fn sealed(job: &str, vehicle: &str, reading: &str, grade: &str) -> Result<Record, Error> {
    let journal = format!(
        r#"{{"format":"brimline-journal/1","job_id":"{job}","procedure":"pipit-level","edition":2,"job":"check",
        "subject":{{"vehicle":"{vehicle}","odometer":"61240 km"}},"entries":[
        {{"seq":1,"at":"2025-03-04T08:00:00Z","kind":"level","tilt":"0.2 deg","toward":"away"}},
        {{"seq":2,"at":"2025-03-04T08:00:40Z","kind":"engine","state":"idling"}},
        {{"seq":3,"at":"2025-03-04T08:02:10Z","kind":"ranges","dwell":"5 s"}},
        {{"seq":4,"at":"2025-03-04T08:02:25Z","kind":"selector","position":"park"}},
        {{"seq":5,"at":"2025-03-04T08:03:10Z","kind":"plug","state":"open","by":"Tilda"}},
        {{"seq":6,"at":"2025-03-04T08:10:33Z","kind":"temperature","reading":"{reading}","source":"scan"}},
        {{"seq":7,"at":"2025-03-04T08:11:00Z","kind":"flow","grade":"{grade}","for":"20 s"}},
        {{"seq":8,"at":"2025-03-04T08:12:25Z","kind":"plug","state":"closed"}}]}}"#
    );
    Record::seal(&Pack::embedded()?, journal.as_str())
}

fn main() -> Result<(), Error> {
    let kept = [
        sealed("too cold", "Oddry Fen 7", "31 °C", "trickle")?,
        sealed("closed low", "Tarnik Dale 3", "43 °C", "none")?,
        sealed("as it should be", "Kestle Row 1", "44 °C", "trickle")?,
    ];
    let found = comebacks(&kept);
    for notice in found.notices() {
        let about = |cited: &Cited| {
            format!(
                "{}, entries {:?}",
                cited.record.job_id().unwrap_or("a job"),
                cited.entries
            )
        };
        let about: Vec<String> = notice.records.iter().map(about).collect();
        println!(
            "{}: {}: {}",
            notice.severity.slug(),
            notice.id,
            about.join("; ")
        );
    }
    for id in found.cautions() {
        println!("mind: {}", report::caution(id).unwrap_or(id));
    }
    let again = follow_up(&kept[0], None)?;
    let now = if again.is_now() { "yes" } else { "no" };
    println!("again before it is handed over: {now}");
    Ok(())
}
