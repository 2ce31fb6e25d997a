//! A journal that is kept entry by entry in a storage of the host's.

use crate::check::brim_check;
use crate::error::{brim_error, brim_status};
use crate::findings::brim_findings;
use crate::getter::value;
use crate::guard::answer;
use crate::handle::{self, Handle};
use crate::options::brim_options;
use crate::pack::brim_pack;
use crate::text::{bytes, out, text};
use brimline_core::record::{KeptJournal, Storage};
use brimline_core::{Error, ErrorKind, Fault, Limits};
use std::ffi::{c_char, c_void};

/// Adds bytes at the end of a storage of yours, and answers 0 once they are durable: written, and
/// flushed down to the medium. Any other answer is a refusal; the bytes may be there in part.
/// `user` is what was given with it. It calls nothing on the journal it is called for, and leaves
/// by its return only.
pub type brim_storage_append =
    Option<unsafe extern "C" fn(user: *mut c_void, bytes: *const u8, length: usize) -> i32>;

/// Drops all but the first `length` bytes of a storage of yours, and answers 0, or anything else
/// for a refusal. It need not be durable before the next append is. As `brim_storage_append`.
pub type brim_storage_truncate =
    Option<unsafe extern "C" fn(user: *mut c_void, length: usize) -> i32>;

/// The journal of a running check, kept entry by entry in a storage of yours as JSON Lines. An entry
/// is answered for only once the storage said that it is durable, so nothing that was answered for
/// is lost.
///
/// Ownership: `brim_kept_journal_start` or `brim_kept_journal_recover` to `brim_kept_journal_free`.
/// Threads: one at a time; the storage is called on the thread that appends. Lifetime: its own; what
/// `user` points to must outlive it.
pub struct brim_kept_journal {
    _opaque: [u8; 0],
}

impl Handle for brim_kept_journal {
    type Held = KeptJournal<Callbacks>;
    const MARK: u64 = u64::from_le_bytes(*b"brimkpt\0");
}

/// A storage of the caller's.
pub struct Callbacks {
    append: unsafe extern "C" fn(*mut c_void, *const u8, usize) -> i32,
    truncate: unsafe extern "C" fn(*mut c_void, usize) -> i32,
    user: *mut c_void,
}

impl Callbacks {
    fn of(
        append: brim_storage_append,
        truncate: brim_storage_truncate,
        user: *mut c_void,
    ) -> Result<Self, Error> {
        let null = |name: &str| Fault::new(ErrorKind::NullPointer).at(name);
        Ok(Callbacks {
            append: append.ok_or_else(|| null("append"))?,
            truncate: truncate.ok_or_else(|| null("truncate"))?,
            user,
        })
    }
}

fn done(answered: i32) -> Result<(), String> {
    match answered {
        0 => Ok(()),
        other => Err(format!("the storage answered {other}")),
    }
}

impl Storage for Callbacks {
    fn append(&mut self, bytes: &[u8]) -> Result<(), String> {
        // SAFETY: the caller gave this function for this pointer; the bytes stay as they are meanwhile.
        done(unsafe { (self.append)(self.user, bytes.as_ptr(), bytes.len()) })
    }

    fn truncate(&mut self, length: usize) -> Result<(), String> {
        // SAFETY: the caller gave this function for this pointer.
        done(unsafe { (self.truncate)(self.user, length) })
    }
}

/// Begins a journal in an empty storage, from its header as JSON. Of the options, the limits count.
///
/// Errors: every fault of the header, with path and position; `BRIM_ERROR_STORAGE` if it could not
/// be kept.
#[unsafe(no_mangle)]
pub unsafe extern "C" fn brim_kept_journal_start(
    pack: *const brim_pack,
    header: *const c_char,
    header_length: usize,
    append: brim_storage_append,
    truncate: brim_storage_truncate,
    user: *mut c_void,
    options: *const brim_options,
    journal: *mut *mut brim_kept_journal,
    error: *mut brim_error,
) -> brim_status {
    answer(error, || {
        // SAFETY: pointers as the header asks.
        let (pack, header, options, journal) = unsafe {
            (
                handle::look(pack, "pack")?,
                text(header, header_length, "header")?,
                handle::look_if(options, "options")?,
                out(journal, "journal")?,
            )
        };
        let storage = Callbacks::of(append, truncate, user)?;
        let limits = options.map_or_else(Limits::default, |options| options.limits.clone());
        let started = KeptJournal::start_with(pack, header, storage, &limits)?;
        journal.put(handle::give(started));
        Ok(())
    })
}

/// Takes a journal up again from the bytes that its storage holds. What stands after the last line
/// feed was never answered for: it is left out, and the storage is asked to drop it before the next
/// entry comes. Of the options, the limits count.
///
/// Errors: every fault of what was kept, with path and position; `BRIM_ERROR_UNRESOLVED` if not even
/// the header was kept whole.
#[unsafe(no_mangle)]
pub unsafe extern "C" fn brim_kept_journal_recover(
    pack: *const brim_pack,
    kept: *const u8,
    kept_length: usize,
    append: brim_storage_append,
    truncate: brim_storage_truncate,
    user: *mut c_void,
    options: *const brim_options,
    journal: *mut *mut brim_kept_journal,
    error: *mut brim_error,
) -> brim_status {
    answer(error, || {
        // SAFETY: pointers as the header asks.
        let (pack, kept, options, journal) = unsafe {
            (
                handle::look(pack, "pack")?,
                bytes(kept, kept_length, "kept")?,
                handle::look_if(options, "options")?,
                out(journal, "journal")?,
            )
        };
        let storage = Callbacks::of(append, truncate, user)?;
        let limits = options.map_or_else(Limits::default, |options| options.limits.clone());
        let recovered = KeptJournal::recover_with(pack, kept, storage, &limits)?;
        journal.put(handle::give(recovered));
        Ok(())
    })
}

/// Frees a journal; what is kept of it stays. NULL is allowed.
#[unsafe(no_mangle)]
pub unsafe extern "C" fn brim_kept_journal_free(journal: *mut brim_kept_journal) {
    // SAFETY: the handle is NULL or the caller's to give back.
    unsafe { handle::free(journal) }
}

/// Records one entry, as JSON, and keeps it. `findings` receives what is new with it, once it is
/// durable, in a handle of the caller's; NULL if that is not wanted. An entry that repeats an
/// earlier one under the same `id` is kept already.
///
/// Errors: as `brim_check_record`; `BRIM_ERROR_STORAGE` if the entry could not be kept. The check
/// then stays as it was, and the same entry can be given again.
#[unsafe(no_mangle)]
pub unsafe extern "C" fn brim_kept_journal_append(
    journal: *mut brim_kept_journal,
    entry: *const c_char,
    entry_length: usize,
    findings: *mut *mut brim_findings,
    error: *mut brim_error,
) -> brim_status {
    answer(error, || {
        // SAFETY: pointers as the header asks.
        let (journal, entry) = unsafe {
            (
                handle::change(journal, "journal")?,
                text(entry, entry_length, "entry")?,
            )
        };
        let new = journal.append(entry)?;
        // SAFETY: the same.
        if let Ok(findings) = unsafe { out(findings, "findings") } {
            findings.put(handle::give(new));
        }
        Ok(())
    })
}

/// A copy of the check as far as it is kept, which goes its own way from here. It costs next to
/// nothing.
///
/// Errors: none of its own.
#[unsafe(no_mangle)]
pub unsafe extern "C" fn brim_kept_journal_check(
    journal: *const brim_kept_journal,
    check: *mut *mut brim_check,
    error: *mut brim_error,
) -> brim_status {
    // SAFETY: pointers as the header asks.
    unsafe {
        value(journal, "journal", check, "check", error, |journal| {
            Ok(handle::give(journal.check().clone()))
        })
    }
}

/// The bytes after the last whole line that the recovery left out.
///
/// Errors: none of its own.
#[unsafe(no_mangle)]
pub unsafe extern "C" fn brim_kept_journal_dropped_bytes(
    journal: *const brim_kept_journal,
    count: *mut usize,
    error: *mut brim_error,
) -> brim_status {
    // SAFETY: pointers as the header asks.
    unsafe {
        value(journal, "journal", count, "count", error, |journal| {
            Ok(journal.dropped_bytes())
        })
    }
}
