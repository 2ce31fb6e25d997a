//! How much of a document is read before it is refused.

use crate::error::{Error, ErrorKind, Fault};
use alloc::format;
use alloc::string::ToString;

/// Finite bounds on what a document may hold. Every refusal names the limit that was passed.
///
/// ```
/// use brimline::Limits;
/// let limits = Limits::default().with_entries(50);
/// assert_eq!(limits.entries(), 50);
/// assert_eq!(limits.bytes(), 16 * 1024 * 1024);
/// ```
#[derive(Debug, Clone, PartialEq, Eq, Hash)]
pub struct Limits {
    bytes: usize,
    depth: usize,
    entries: usize,
    text: usize,
    faults: usize,
}

impl Default for Limits {
    fn default() -> Self {
        Limits {
            bytes: 16 * 1024 * 1024,
            depth: 32,
            entries: 100_000,
            text: 10_000,
            faults: 100,
        }
    }
}

impl Limits {
    /// Bytes of one document. What is held in memory while it is read is bounded by it as well: a sound document
    /// takes a few times its bytes, and none can take more than sixty times.
    #[must_use]
    pub fn bytes(&self) -> usize {
        self.bytes
    }

    /// Objects and lists inside each other; `ext` members are not counted.
    #[must_use]
    pub fn depth(&self) -> usize {
        self.depth
    }

    /// Entries of one journal.
    #[must_use]
    pub fn entries(&self) -> usize {
        self.entries
    }

    /// Bytes of any one text value.
    #[must_use]
    pub fn text(&self) -> usize {
        self.text
    }

    /// Faults collected before the rest are left out.
    #[must_use]
    pub fn faults(&self) -> usize {
        self.faults
    }

    /// The same limits with another number of bytes.
    #[must_use]
    pub fn with_bytes(self, bytes: usize) -> Self {
        Limits { bytes, ..self }
    }

    /// The same limits with another depth; at most 100, which any thread's stack bears.
    #[must_use]
    pub fn with_depth(self, depth: usize) -> Self {
        Limits {
            depth: depth.min(100),
            ..self
        }
    }

    /// The same limits with another number of entries.
    #[must_use]
    pub fn with_entries(self, entries: usize) -> Self {
        Limits { entries, ..self }
    }

    /// The same limits with another length of text.
    #[must_use]
    pub fn with_text(self, text: usize) -> Self {
        Limits { text, ..self }
    }

    /// The same limits with another number of faults; at least one is always told.
    #[must_use]
    pub fn with_faults(self, faults: usize) -> Self {
        Limits {
            faults: faults.max(1),
            ..self
        }
    }

    /// The fault of a journal with too many entries.
    pub(crate) fn too_many_entries(&self, got: usize) -> Fault {
        exceeded("entries", self.entries, got)
    }

    pub(crate) fn check_bytes(&self, text: &str) -> Result<(), Error> {
        if text.len() > self.bytes {
            return Err(exceeded("bytes", self.bytes, text.len()).into());
        }
        Ok(())
    }
}

/// The fault of passing the limit of this name.
pub(super) fn exceeded(name: &'static str, limit: usize, got: usize) -> Fault {
    Fault::new(ErrorKind::Limit)
        .got(&got.to_string())
        .allowed([format!("up to {limit}")])
        .hint(format!(
            "the limit is called {name}; raise it if the document is meant"
        ))
}
