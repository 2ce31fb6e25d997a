//! Keeps the journal of a running check in a file, and takes it up again: `keep_a_journal FILE`

use brimline::Pack;
use brimline::record::{KeptJournal, Storage};
use std::fs::{File, OpenOptions};
use std::io::{Read, Result, Write};
use std::path::Path;

/// A journal in a file.
pub struct FileStorage(pub File);

impl FileStorage {
    /// Opens a file, new or not, with the bytes it holds.
    pub fn open(path: &Path) -> Result<(Self, Vec<u8>)> {
        let mut options = OpenOptions::new();
        let mut file = options.read(true).append(true).create(true).open(path)?;
        let mut bytes = Vec::new();
        file.read_to_end(&mut bytes)?;
        // The name of a new file is durable once its folder is.
        let folder = path
            .parent()
            .filter(|folder| !folder.as_os_str().is_empty());
        if cfg!(unix) && bytes.is_empty() {
            File::open(folder.unwrap_or(Path::new(".")))?.sync_all()?;
        }
        Ok((FileStorage(file), bytes))
    }
}

impl Storage for FileStorage {
    fn append(&mut self, bytes: &[u8]) -> std::result::Result<(), String> {
        let written = self.0.write_all(bytes).and_then(|()| self.0.sync_data());
        written.map_err(|error| error.to_string())
    }

    fn truncate(&mut self, length: usize) -> std::result::Result<(), String> {
        let cut = self.0.set_len(length as u64);
        cut.map_err(|error| error.to_string())
    }
}

/// The journal of a file: recovered if its header was kept, begun if not.
pub fn journal<S: Storage>(
    pack: &Pack,
    header: &str,
    mut storage: S,
    bytes: &[u8],
) -> std::result::Result<KeptJournal<S>, Box<dyn std::error::Error>> {
    if bytes.contains(&b'\n') {
        return Ok(KeptJournal::recover(pack, bytes, storage)?);
    }
    storage.truncate(0)?;
    Ok(KeptJournal::start(pack, header, storage)?)
}

fn main() -> std::result::Result<(), Box<dyn std::error::Error>> {
    let file = std::env::args()
        .nth(1)
        .ok_or("usage: keep_a_journal FILE")?;
    let header = r#"{"format":"brimline-journal/1","procedure":"pipit-level","job":"check"}"#;
    let (storage, bytes) = FileStorage::open(Path::new(&file))?;
    let mut journal = journal(&Pack::embedded()?, header, storage, &bytes)?;
    if journal.dropped_bytes() > 0 {
        println!("{} bytes of a line were cut off", journal.dropped_bytes());
    }
    for line in std::io::stdin().lines() {
        for finding in journal.append(&line?)? {
            println!("{} {}", finding.severity.slug(), finding.id);
        }
        // Only now is the entry answered for.
        println!("kept, {}", journal.check().evaluation().verdict().slug());
    }
    Ok(())
}
