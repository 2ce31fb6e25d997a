//! A journal that is kept entry by entry in a storage of the host's, and recovered after a power cut.

use crate::check::{Finding, Journal, LevelCheck};
use crate::document::{Limits, canonical};
use crate::error::{Error, ErrorKind, Fault};
use crate::procedure::Pack;
use alloc::format;
use alloc::string::String;
use alloc::vec::Vec;

/// Where a host keeps one journal: a file, a blob, whatever grows at its end. What goes wrong is told in words.
pub trait Storage {
    /// Adds bytes at the end, and answers once they are durable: written, and flushed down to the medium.
    ///
    /// # Errors
    /// What went wrong; the bytes may be there in part.
    fn append(&mut self, bytes: &[u8]) -> Result<(), String>;

    /// Drops all but the first `length` bytes. It need not be durable before the next append is.
    ///
    /// # Errors
    /// What went wrong.
    fn truncate(&mut self, length: usize) -> Result<(), String>;
}

/// A journal kept as JSON Lines: the header, then a line for each entry. An entry is answered for only once the storage
/// said that it is durable, so nothing that was answered for is lost; a line that was cut off never comes to stand
/// between others.
///
/// ```
/// use brimline::Pack;
/// use brimline::record::{KeptJournal, Storage};
///
/// /// For a file, see the example `keep_a_journal`.
/// #[derive(Default)]
/// struct Memory(Vec<u8>);
///
/// impl Storage for Memory {
///     fn append(&mut self, bytes: &[u8]) -> Result<(), String> {
///         self.0.extend(bytes);
///         Ok(())
///     }
///     fn truncate(&mut self, length: usize) -> Result<(), String> {
///         self.0.truncate(length);
///         Ok(())
///     }
/// }
///
/// let pack = Pack::embedded()?;
/// let header = r#"{"format":"brimline-journal/1","procedure":"pipit-level","job":"check"}"#;
/// let mut journal = KeptJournal::start(&pack, header, Memory::default())?;
/// journal.append(r#"{"seq":1,"at":"2026-03-02T09:00:00Z","kind":"engine","state":"idling"}"#)?;
/// let mut storage = journal.into_storage();
/// storage.0.extend(b"{\"seq\":2,\"at\":\"2026-03"); // the power goes
///
/// let bytes = storage.0.clone();
/// let mut journal = KeptJournal::recover(&pack, &bytes, storage)?;
/// assert_eq!((journal.check().entries().count(), journal.dropped_bytes()), (1, 22));
/// # Ok::<(), brimline::Error>(())
/// ```
#[derive(Debug)]
pub struct KeptJournal<S> {
    check: LevelCheck,
    storage: S,
    /// Bytes that are whole lines.
    length: usize,
    /// Whether more than that may be there.
    has_tail: bool,
    dropped: usize,
}

impl<S: Storage> KeptJournal<S> {
    /// Begins a journal in an empty storage, from its header, under the default [`Limits`].
    ///
    /// # Errors
    /// Every fault of the header, with path and position; `storage` if it could not be kept.
    pub fn start(pack: &Pack, header: &str, storage: S) -> Result<Self, Error> {
        Self::start_with(pack, header, storage, &Limits::default())
    }

    /// Begins a journal in an empty storage, from its header.
    ///
    /// # Errors
    /// As [`start`](Self::start).
    pub fn start_with(
        pack: &Pack,
        header: &str,
        mut storage: S,
        limits: &Limits,
    ) -> Result<Self, Error> {
        let check = LevelCheck::start_with(pack, header, limits)?;
        let line = check.journal_lines();
        let kept = storage.append(line.as_bytes());
        kept.map_err(|said| refused("append", &said))?;
        Ok(KeptJournal {
            check,
            storage,
            length: line.len(),
            has_tail: false,
            dropped: 0,
        })
    }

    /// Takes a journal up again from the bytes that its storage holds, under the default [`Limits`]. What stands after the
    /// last line feed was never answered for: it is left out, and goes before the next entry comes.
    ///
    /// # Errors
    /// Every fault of what was kept, with path and position; `unresolved` if not even the header was kept whole.
    pub fn recover(pack: &Pack, bytes: &[u8], storage: S) -> Result<Self, Error> {
        Self::recover_with(pack, bytes, storage, &Limits::default())
    }

    /// Takes a journal up again from the bytes that its storage holds.
    ///
    /// # Errors
    /// As [`recover`](Self::recover).
    pub fn recover_with(
        pack: &Pack,
        bytes: &[u8],
        storage: S,
        limits: &Limits,
    ) -> Result<Self, Error> {
        let length = bytes.iter().rposition(|byte| *byte == b'\n');
        let Some(length) = length.map(|last| last.saturating_add(1)) else {
            let hint = "no header was kept whole: empty the storage, and start the journal";
            let fault = Fault::new(ErrorKind::Unresolved).at("journal");
            return Err(fault.hint(hint).into());
        };
        let lines = Journal::text(bytes.get(..length).unwrap_or_default())?;
        let dropped = bytes.len().saturating_sub(length);
        Ok(KeptJournal {
            check: LevelCheck::replay_with(pack, &lines, limits)?,
            storage,
            length,
            has_tail: dropped > 0,
            dropped,
        })
    }

    /// Records one entry, given as JSON, and keeps it; answers the findings that are new with it, once it is durable.
    ///
    /// An entry that repeats an earlier one under the same `id` is kept already. Before the first entry after a recovery or
    /// a refusal, the storage is asked to drop what is no whole line.
    ///
    /// # Errors
    /// As [`LevelCheck::record`]; `storage` at `storage.append` or `storage.truncate` if the storage does not say that the
    /// entry is kept. The check stays as it was, and the same entry can be given again. The storage may hold it all the same,
    /// and a recovery then finds it: give every entry an `id`, so that it counts once.
    pub fn append(&mut self, entry: &str) -> Result<Vec<Finding>, Error> {
        let newest = |check: &LevelCheck| check.entries().next_back().map(|entry| entry.seq);
        let (check, findings) = self.check.clone().record(entry)?;
        if newest(&check) == newest(&self.check) {
            return Ok(findings);
        }
        let mut line = check
            .entries()
            .next_back()
            .map(canonical)
            .unwrap_or_default();
        line.push('\n');
        if self.has_tail {
            let dropped = self.storage.truncate(self.length);
            dropped.map_err(|said| refused("truncate", &said))?;
        }
        self.has_tail = true;
        let kept = self.storage.append(line.as_bytes());
        kept.map_err(|said| refused("append", &said))?;
        self.has_tail = false;
        self.length = self.length.saturating_add(line.len());
        self.check = check;
        Ok(findings)
    }

    /// The check as far as it is kept.
    #[must_use]
    pub fn check(&self) -> &LevelCheck {
        &self.check
    }

    /// Bytes after the last whole line that the recovery left out.
    #[must_use]
    pub fn dropped_bytes(&self) -> usize {
        self.dropped
    }

    /// The storage, when the journal is done.
    #[must_use]
    pub fn into_storage(self) -> S {
        self.storage
    }
}

/// The fault of a storage that did not do an act.
fn refused(act: &str, said: &str) -> Fault {
    Fault::new(ErrorKind::Storage)
        .at(format!("storage.{act}"))
        .got(said)
        .hint("it was not answered for, though the storage may hold it: give it again under the same `id`, so that it counts once")
}
