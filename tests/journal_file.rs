//! A writer is killed a thousand times, at any point: nothing it answered for is lost.
//!
//! The writer is this very program, run again with a file to write to. It writes in small pieces, so that it is killed
//! within lines as well. `BRIMLINE_SEED` starts the run from another seed.

#[allow(dead_code, reason = "a part of it is used here")]
#[path = "reference_model/dice.rs"]
mod dice;
#[allow(dead_code, reason = "the example's own start is not run here")]
#[path = "../examples/rust/keep_a_journal.rs"]
mod keep_a_journal;

use brimline::record::{KeptJournal, Storage};
use brimline::{Error, ErrorKind, Pack};
use dice::Dice;
use keep_a_journal::{FileStorage, journal};
use std::fs;
use std::io::{BufRead, BufReader, Read, Write};
use std::path::{Path, PathBuf};
use std::process::{Command, Stdio};
use std::thread;
use std::time::{Duration, Instant};

/// The file that a writer writes to; nobody is a writer without.
const FILE: &str = "BRIMLINE_TEST_JOURNAL";
const KILLS: usize = 1000;
const AT_ONCE: usize = 10;
/// Kills of writers on the same file, one after the other.
const KILLS_A_FILE: usize = 10;
const SEED: u64 = 20_261_127;

fn pack() -> Pack {
    let text = include_str!("vectors/packs/smallest.json");
    Pack::from_json(text).expect("the pack reads")
}

const HEADER: &str = r#"{"format":"brimline-journal/1","procedure":"least-plug","job":"check"}"#;

/// What is written under a number: short and long lines, with letters of several bytes.
fn entry(seq: u64) -> String {
    let text = "täglich ½ L ".repeat(usize::try_from(seq % 7).expect("it is small") * 9 + 1);
    format!(
        r#"{{"seq":{seq},"at":"2026-03-02T09:00:00Z","kind":"note","text":"{}"}}"#,
        text.trim()
    )
}

/// A file that is written to in pieces, each of which may be the last.
struct InPieces(FileStorage);

impl Storage for InPieces {
    fn append(&mut self, bytes: &[u8]) -> Result<(), String> {
        for piece in bytes.chunks(16) {
            let written = self.0.0.write_all(piece);
            written.map_err(|error| error.to_string())?;
            // Longer than the flush, so that most kills fall in between.
            thread::sleep(Duration::from_micros(20));
        }
        self.0.append(b"")
    }

    fn truncate(&mut self, length: usize) -> Result<(), String> {
        self.0.truncate(length)
    }
}

fn kept(file: &Path) -> KeptJournal<InPieces> {
    let (storage, bytes) = FileStorage::open(file).expect("the file opens");
    journal(&pack(), HEADER, InPieces(storage), &bytes).expect("what was kept is taken up again")
}

/// Appends entries until it is killed, and says of each that it is kept.
#[test]
fn writer() {
    let Some(file) = std::env::var_os(FILE) else {
        return;
    };
    let mut journal = kept(Path::new(&file));
    let newest = journal
        .check()
        .entries()
        .next_back()
        .map_or(0, |entry| entry.seq);
    let mut out = std::io::stdout();
    for seq in newest + 1.. {
        journal.append(&entry(seq)).expect("a file keeps it");
        out.write_all(format!("\nkept {seq}\n").as_bytes())
            .expect("somebody reads");
        out.flush().expect("somebody reads");
    }
}

/// What one kill left.
struct Left {
    answered: u64,
    torn: bool,
}

/// Runs a writer on a file, kills it, and sees what is left.
fn kill_one(file: &Path, dice: &mut Dice) -> Left {
    let mut writer = Command::new(std::env::current_exe().expect("it runs"))
        .args(["--exact", "writer", "--nocapture", "--test-threads=1"])
        .env(FILE, file)
        .stdout(Stdio::piped())
        .stderr(Stdio::null())
        .spawn()
        .expect("the writer starts");
    let mut told = BufReader::new(writer.stdout.take().expect("it is piped"));
    let mut answered = 0;
    let mut hear = |line: &str| {
        if let Some(seq) = line.trim().strip_prefix("kept ") {
            answered = seq.parse().expect("a number");
        }
    };
    // Some are killed before they wrote anything, most while they write.
    let wait = if dice.chance(10) {
        0
    } else {
        1 + dice.below(6)
    };
    let (mut line, mut lines) = (String::new(), 0);
    while lines < wait && told.read_line(&mut line).expect("it tells") > 0 {
        lines += usize::from(line.starts_with("kept "));
        hear(&line);
        line.clear();
    }
    let until = Instant::now() + Duration::from_micros(dice.below(2000) as u64);
    while Instant::now() < until {
        std::hint::spin_loop();
    }
    writer.kill().expect("it is killed");
    writer.wait().expect("it ends");
    let mut rest = String::new();
    told.read_to_string(&mut rest)
        .expect("what it said is there");
    // A line that was cut off is no answer.
    let whole = rest.rfind('\n').map_or("", |end| &rest[..end]);
    whole.lines().for_each(&mut hear);
    Left {
        answered,
        torn: check(file, answered),
    }
}

/// Sees that what was answered for is there, each entry as it was given, and that it evaluates.
fn check(file: &Path, answered: u64) -> bool {
    let Ok(bytes) = fs::read(file) else {
        assert_eq!(answered, 0, "the file is gone");
        return false;
    };
    if !bytes.contains(&b'\n') {
        assert_eq!(answered, 0, "the header is gone");
        return false;
    }
    let (storage, _) = FileStorage::open(file).expect("it opens");
    let kept = KeptJournal::recover(&pack(), &bytes, storage).expect("it is recovered");
    let entries: Vec<_> = kept.check().entries().collect();
    let newest = entries.len() as u64;
    assert!(
        newest >= answered,
        "{answered} answered for, {newest} there"
    );
    for (entry, seq) in entries.iter().zip(1..) {
        assert_eq!(brimline::document::canonical(*entry), self::entry(seq));
    }
    assert_eq!(kept.check().evaluation().verdict().slug(), "incomplete");
    kept.dropped_bytes() > 0
}

fn scratch(name: &str) -> PathBuf {
    let folder = Path::new(env!("CARGO_TARGET_TMPDIR")).join("journal_file");
    fs::create_dir_all(&folder).expect("the folder is made");
    folder.join(format!("{}-{name}", std::process::id()))
}

#[test]
fn nothing_answered_for_is_lost() {
    let seed = std::env::var("BRIMLINE_SEED").ok();
    let seed = seed.map_or(SEED, |seed| seed.parse().expect("a whole number"));
    println!("seed {seed}");
    let threads: Vec<_> = (0..AT_ONCE)
        .map(|place| {
            thread::spawn(move || {
                let mut dice = Dice::new(seed.wrapping_add(place as u64));
                let (mut answered, mut torn) = (0, 0);
                for round in 0..KILLS / AT_ONCE / KILLS_A_FILE {
                    let file = scratch(&format!("{place}-{round}"));
                    let mut newest = 0;
                    for _ in 0..KILLS_A_FILE {
                        let left = kill_one(&file, &mut dice);
                        // What an earlier writer answered for is still there.
                        check(&file, newest);
                        newest = newest.max(left.answered);
                        torn += usize::from(left.torn);
                    }
                    answered += newest;
                    fs::remove_file(&file).expect("it is removed");
                }
                (answered, torn)
            })
        })
        .collect();
    let done = threads
        .into_iter()
        .map(|thread| thread.join().expect("no kill lost anything"));
    let (answered, torn) = done.fold((0, 0), |all, one| (all.0 + one.0, all.1 + one.1));
    println!("{answered} entries answered for, {torn} of {KILLS} kills within a line");
    assert!(answered > 1000, "only {answered} entries were answered for");
    assert!(torn > 100, "only {torn} kills fell within a line");
}

/// A storage that does what it is told to.
#[derive(Debug, Default)]
struct Moody {
    bytes: Vec<u8>,
    /// How many bytes more it takes.
    room: Option<usize>,
    cuts: Vec<usize>,
}

impl Storage for &mut Moody {
    fn append(&mut self, bytes: &[u8]) -> Result<(), String> {
        let taken = self.room.unwrap_or(bytes.len()).min(bytes.len());
        self.bytes.extend(&bytes[..taken]);
        if taken < bytes.len() {
            Err("the disk is full".into())
        } else {
            Ok(())
        }
    }

    fn truncate(&mut self, length: usize) -> Result<(), String> {
        self.cuts.push(length);
        self.bytes.truncate(length);
        Ok(())
    }
}

fn storage_fault(error: &Error) {
    assert_eq!(error.kind(), ErrorKind::Storage);
    assert_eq!(error.first().path, "storage.append");
    assert_eq!(error.first().got.as_deref(), Some("the disk is full"));
    // A storage may hold what it refused, so only an `id` keeps an entry from counting twice.
    let hint = error.first().hint.as_deref().expect("what to do");
    assert!(hint.contains("the same `id`"), "{hint}");
}

#[test]
fn what_is_not_kept_is_not_recorded() {
    let mut full = Moody {
        room: Some(10),
        ..Moody::default()
    };
    storage_fault(&KeptJournal::start(&pack(), HEADER, &mut full).expect_err("no room"));

    let mut disk = Moody::default();
    let mut journal = KeptJournal::start(&pack(), HEADER, &mut disk).expect("there is room");
    journal.append(&entry(1)).expect("there is room");
    let before = journal.check().journal_lines();
    let disk = journal.into_storage();
    disk.room = Some(9);
    let bytes = disk.bytes.clone();
    let mut journal = KeptJournal::recover(&pack(), &bytes, &mut *disk).expect("it is whole");
    assert_eq!(journal.dropped_bytes(), 0);
    storage_fault(&journal.append(&entry(2)).expect_err("no room"));
    assert_eq!(journal.check().journal_lines(), before);
    let disk = journal.into_storage();
    assert_eq!(disk.bytes.len(), before.len() + 9);
    assert!(disk.cuts.is_empty());

    // The torn line goes before the next one comes, and nothing stands between.
    disk.room = None;
    let bytes = disk.bytes.clone();
    let mut journal = KeptJournal::recover(&pack(), &bytes, &mut *disk).expect("it is recovered");
    assert_eq!(journal.dropped_bytes(), 9);
    let refused = journal
        .append("{\"seq\":1}")
        .expect_err("it cannot be read");
    assert_eq!(refused.kind(), ErrorKind::MissingField);
    journal.append(&entry(2)).expect("there is room");
    journal.append(&entry(3)).expect("there is room");
    let lines = journal.check().journal_lines();
    let disk = journal.into_storage();
    assert_eq!(disk.cuts, [before.len()]);
    assert_eq!(String::from_utf8(disk.bytes.clone()).expect("text"), lines);
}

#[test]
fn an_entry_delivered_again_is_kept_once() {
    let mut disk = Moody::default();
    let mut journal = KeptJournal::start(&pack(), HEADER, &mut disk).expect("there is room");
    let named = r#"{"seq":1,"at":"2026-03-02T09:00:00Z","kind":"note","id":"a","text":"once"}"#;
    journal.append(named).expect("there is room");
    let findings = journal.append(named).expect("it is kept already");
    assert_eq!(
        findings.first().map(|finding| finding.id),
        Some("repeat_delivery")
    );
    let lines = journal.check().journal_lines();
    assert_eq!(disk.bytes, lines.into_bytes());
}

#[test]
fn a_header_that_was_cut_off_is_begun_again() {
    let mut disk = Moody::default();
    let error = KeptJournal::recover(&pack(), b"{\"format\":\"brim", &mut disk);
    assert_eq!(
        error.expect_err("there is no header").kind(),
        ErrorKind::Unresolved
    );
    // Bytes of a letter that was cut off are no line either.
    let cut = [HEADER.as_bytes(), b"\n{\"seq\":1,\"text\":\"\xc2"].concat();
    let journal = KeptJournal::recover(&pack(), &cut, &mut disk).expect("the header is whole");
    assert_eq!(journal.dropped_bytes(), 18);
}
