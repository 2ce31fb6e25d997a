//! Bytes as text: documents are UTF-8, and bytes that are not say where.

use crate::error::{Error, ErrorKind, Fault, Position};
use alloc::string::String;

/// The text that bytes are. `path` is the argument they were given as.
///
/// # Errors
///
/// [`NotUtf8`](ErrorKind::NotUtf8), with the line, the column and the offset of the first byte that is not.
///
/// ```
/// use brimline::document::from_utf8;
/// assert_eq!(from_utf8("3,5 Nm".as_bytes(), "torque")?, "3,5 Nm");
/// let error = from_utf8(b"line\n4 \xb0C", "pack").unwrap_err();
/// assert_eq!(error.first().path, "pack");
/// assert_eq!(error.first().position.map(|at| (at.line, at.column, at.offset)), Some((2, 3, 7)));
/// # Ok::<(), brimline::Error>(())
/// ```
pub fn from_utf8<'a>(bytes: &'a [u8], path: &str) -> Result<&'a str, Error> {
    core::str::from_utf8(bytes).map_err(|stop| not_utf8(bytes, stop.valid_up_to(), path))
}

#[cold]
fn not_utf8(bytes: &[u8], valid: usize, path: &str) -> Error {
    let read = String::from_utf8_lossy(bytes.get(..valid).unwrap_or_default());
    let line = read.rsplit('\n').next().unwrap_or_default();
    let count = |places: usize| u32::try_from(places).unwrap_or(u32::MAX);
    let mut fault = Fault::new(ErrorKind::NotUtf8).at(path);
    fault.position = Some(Position {
        line: count(read.matches('\n').count()).saturating_add(1),
        column: count(line.chars().count()).saturating_add(1),
        offset: count(valid),
    });
    fault.hint("texts are UTF-8; convert it first").into()
}
