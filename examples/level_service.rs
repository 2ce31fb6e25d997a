//! Tells one level check as a story, from its journal; then what it costs, against what was estimated; and writes the work
//! sheet of the job, whose path it tells.
//!
//! `level_service` tells the journal of the embedded pack that is built in, `level_service FILE [PACK]` any other.
//! A FILE of `-` is read from the standard input.

use brimline::estimate::{Asked, Quote};
use brimline::report::{Medium, Particulars, Rig};
use brimline::torque::{Tool, ToolType};
use brimline::{Amount, Error, LevelCheck, Pack, PriceList, Record, estimate, invoice, report};
use std::fs;
use std::io::{self, Read, Write};
use std::process::ExitCode;

const BUILT_IN: &str = include_str!("journals/short_unit.json");
const USAGE: &str = "\
usage: level_service [FILE [PACK]]

FILE  a journal: one JSON document or JSON Lines; - reads the standard input
PACK  the pack of service sheets it is told on; the embedded one if absent
";

fn main() -> ExitCode {
    let args: Vec<String> = std::env::args().skip(1).collect();
    let told = match args.as_slice() {
        [] => tell(BUILT_IN, "the journal built in", None),
        [only] if only == "--help" || only == "-h" => Ok(USAGE.into()),
        [file] => read(file).and_then(|journal| tell(&journal, file, None)),
        [file, pack] => read(file).and_then(|journal| tell(&journal, file, Some(pack))),
        _ => Err(USAGE.into()),
    };
    let (code, written) = match &told {
        Ok(story) => (ExitCode::SUCCESS, io::stdout().write_all(story.as_bytes())),
        Err(faults) => (ExitCode::FAILURE, io::stderr().write_all(faults.as_bytes())),
    };
    // A reader that has seen enough is no failure.
    if written.is_ok() {
        code
    } else {
        ExitCode::SUCCESS
    }
}

fn tell(journal: &str, named: &str, pack: Option<&str>) -> Result<String, String> {
    let pack = match pack {
        Some(file) => Pack::from_json(&read(file)?).map_err(|error| faults(file, &error))?,
        None => Pack::embedded().map_err(|error| faults("the embedded pack", &error))?,
    };
    let refused = |error| faults(named, &error);
    let mut told = report::story(&pack, journal).map_err(refused)?;
    let mut particulars = Particulars {
        shop: vec!["Fernhollow Gear & Drive", "7 Weir Lane, Oddmere"],
        ..Particulars::default()
    };
    // The embedded prices are for the embedded sheets; another pack's job may ask for what they have no price of.
    if let Ok((prices, quote, bill)) = counter(&pack, journal) {
        told.push_str(&format!("\n{bill}"));
        (particulars.prices, particulars.estimate) = (Some(prices), Some(quote));
    }
    particulars.rig = Some(rig().map_err(refused)?);
    // What another pack's journal cannot be sealed with has a work sheet without a record.
    let record = Record::seal(&pack, journal).ok();
    particulars.record = record.as_ref().map(Record::digest);
    let sheet = report::work_sheet(&pack, journal, &particulars, Medium::Html).map_err(refused)?;
    // Of this run alone, so that another at the same time keeps its own.
    let name = format!("brimline_work_sheet_{}.html", std::process::id());
    let path = std::env::temp_dir().join(name);
    fs::write(&path, sheet).map_err(|error| format!("{}: {error}\n", path.display()))?;
    told.push_str(&format!("\nWork sheet:\n  {}\n", path.display()));
    Ok(told)
}

/// The wrench of the shop, with the adapter that reaches the plug.
fn rig() -> Result<Rig<'static>, Error> {
    Ok(Rig {
        tool: Tool {
            name: "click wrench, quarter-inch drive",
            tool_type: ToolType::SettingAdjustable,
            max: Amount::parse("25 N·m")?,
            min: Some(Amount::parse("5 N·m")?),
            graduation: Some(Amount::parse("0.5 N·m")?),
            permissible: None,
            lever: Some(Amount::parse("230 mm")?),
        },
        adapter: Some(Amount::parse("40 mm")?),
        angle: None,
    })
}

/// What the job was estimated at before it began, and what it is billed at.
fn counter(pack: &Pack, journal: &str) -> Result<(PriceList, Quote, String), Error> {
    let prices = PriceList::embedded()?;
    let check = LevelCheck::replay(pack, journal)?;
    let lines = check.journal_lines();
    let header = lines.lines().next().unwrap_or_default();
    let before = LevelCheck::start(pack, header)?;
    let quote = estimate(&prices, &before, &Asked::default())?.quote();
    let bill = report::invoice(&invoice(&prices, &check, Some(&quote))?, check.sheet());
    Ok((prices, quote, bill))
}

fn read(file: &str) -> Result<String, String> {
    let read = match file {
        "-" => {
            let mut text = String::new();
            io::stdin().read_to_string(&mut text).map(|_| text)
        }
        _ => fs::read_to_string(file),
    };
    read.map_err(|error| format!("{file}: {error}\n"))
}

/// Every fault, a line each, with its path and place.
fn faults(named: &str, error: &Error) -> String {
    let count = error.faults().count();
    let mut told = format!(
        "{named}: {count} {}\n",
        if count == 1 { "fault" } else { "faults" }
    );
    for fault in error.faults() {
        told.push_str(&format!("  {fault}\n"));
    }
    told
}
