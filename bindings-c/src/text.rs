//! The caller's memory: texts that come in, texts and values that go out.

use brimline_core::document::from_utf8;
use brimline_core::{Error, ErrorKind, Fault, Journal};
use std::borrow::Cow;
use std::ffi::{CStr, c_char};

/// As the length of a text: it ends at its first NUL. The header defines it in words of C.
///
/// cbindgen:ignore
pub const BRIM_TERMINATED: usize = usize::MAX;

/// A text that must be there.
///
/// # Safety
/// The pointer is NULL or points to `length` bytes, or to bytes up to a NUL, that stay as
/// they are during the call.
pub(crate) unsafe fn text<'a>(
    text: *const c_char,
    length: usize,
    name: &'static str,
) -> Result<&'a str, Error> {
    // SAFETY: as the caller promises.
    match unsafe { text_if(text, length, name)? } {
        Some(text) => Ok(text),
        None => Err(null(name)),
    }
}

/// A text that may be left out, as NULL.
///
/// # Safety
/// As [`text`].
pub(crate) unsafe fn text_if<'a>(
    text: *const c_char,
    length: usize,
    name: &'static str,
) -> Result<Option<&'a str>, Error> {
    if text.is_null() {
        return Ok(None);
    }
    // SAFETY: as the caller promises.
    let bytes = unsafe { bytes_of(text, length, name)? };
    if bytes.is_ascii() {
        // SAFETY: ASCII is UTF-8. Names of units are short and mostly ASCII, and this is the shorter way for them.
        return Ok(Some(unsafe { std::str::from_utf8_unchecked(bytes) }));
    }
    from_utf8(bytes, name).map(Some)
}

/// A list of texts, each of which ends with a NUL.
///
/// # Safety
/// The pointer is NULL or points to `count` pointers, each as [`text`] has it.
pub(crate) unsafe fn texts<'a>(
    texts: *const *const c_char,
    count: usize,
    name: &'static str,
) -> Result<Vec<&'a str>, Error> {
    if texts.is_null() {
        return Err(null(name));
    }
    if count > isize::MAX.unsigned_abs() / size_of::<*const c_char>() {
        return Err(too_long(count, name));
    }
    // SAFETY: the caller promises so many pointers; hosts that lay out lists themselves may not align them.
    let each = (0..count).map(|index| unsafe { texts.add(index).read_unaligned() });
    // SAFETY: as the caller promises of each.
    each.map(|one| unsafe { text(one, BRIM_TERMINATED, name) })
        .collect()
}

/// A list of texts, each of which ends with a NUL or is left out as NULL; all are left out where the list is.
///
/// # Safety
/// The pointer is NULL or points to `count` pointers, each as [`text_if`] has it.
pub(crate) unsafe fn texts_if<'a>(
    texts: *const *const c_char,
    count: usize,
    name: &'static str,
) -> Result<Vec<Option<&'a str>>, Error> {
    if count > isize::MAX.unsigned_abs() / size_of::<*const c_char>() {
        return Err(too_long(count, name));
    }
    if texts.is_null() {
        return Ok(vec![None; count]);
    }
    // SAFETY: the caller promises so many pointers; hosts that lay out lists themselves may not align them.
    let each = (0..count).map(|index| unsafe { texts.add(index).read_unaligned() });
    // SAFETY: as the caller promises of each.
    each.map(|one| unsafe { text_if(one, BRIM_TERMINATED, name) })
        .collect()
}

/// A journal, of which the last line may have been cut off.
///
/// # Safety
/// As [`text`].
pub(crate) unsafe fn journal<'a>(
    journal: *const c_char,
    length: usize,
    name: &'static str,
) -> Result<Cow<'a, str>, Error> {
    if journal.is_null() {
        return Err(null(name));
    }
    // SAFETY: as the caller promises.
    Journal::text(unsafe { bytes_of(journal, length, name)? })
}

/// Bytes that must be there.
///
/// # Safety
/// The pointer is NULL or points to `length` bytes that stay as they are during the call.
pub(crate) unsafe fn bytes<'a>(
    bytes: *const u8,
    length: usize,
    name: &'static str,
) -> Result<&'a [u8], Error> {
    if bytes.is_null() {
        return Err(null(name));
    }
    if length > isize::MAX.unsigned_abs() {
        return Err(too_long(length, name));
    }
    // SAFETY: the caller promises so many bytes, and this many fit into memory.
    Ok(unsafe { std::slice::from_raw_parts(bytes, length) })
}

/// The bytes of a text that is there.
///
/// # Safety
/// As [`text`], and the pointer is not NULL.
unsafe fn bytes_of<'a>(
    text: *const c_char,
    length: usize,
    name: &'static str,
) -> Result<&'a [u8], Error> {
    if length == BRIM_TERMINATED {
        // SAFETY: the caller promises a NUL.
        return Ok(unsafe { CStr::from_ptr(text) }.to_bytes());
    }
    // SAFETY: as the caller promises.
    unsafe { bytes(text.cast(), length, name) }
}

#[cold]
fn too_long(length: usize, name: &'static str) -> Error {
    let fault = Fault::new(ErrorKind::OutOfRange).at(name);
    let hint = "nothing is that long: give the number of bytes; BRIM_TERMINATED is for texts";
    fault.got(&length.to_string()).hint(hint).into()
}

#[cold]
fn null(name: &'static str) -> Error {
    Fault::new(ErrorKind::NullPointer).at(name).into()
}

/// Where a value goes.
pub(crate) struct Out<T>(*mut T);

/// Where a value goes that the caller must take.
///
/// # Safety
/// The pointer is NULL or may be written to until the call returns.
pub(crate) unsafe fn out<T>(pointer: *mut T, name: &'static str) -> Result<Out<T>, Error> {
    if pointer.is_null() {
        return Err(null(name));
    }
    Ok(Out(pointer))
}

impl<T> Out<T> {
    /// Writes the value, which is what a call does last.
    pub(crate) fn put(self, value: T) {
        // SAFETY: `out` was promised memory to write to; hosts that lay out records themselves may not align it.
        unsafe { self.0.write_unaligned(value) };
    }
}

/// Where a text goes.
pub(crate) struct Room {
    buffer: *mut c_char,
    capacity: usize,
    length: *mut usize,
}

/// The caller's buffer for a text, and where the length of the text goes.
///
/// # Safety
/// `buffer` is NULL or has `capacity` bytes to write to, `length` is NULL or may be
/// written to, until the call returns.
pub(crate) unsafe fn room(
    buffer: *mut c_char,
    capacity: usize,
    length: *mut usize,
) -> Result<Room, Error> {
    if buffer.is_null() && (capacity > 0 || length.is_null()) {
        return Err(null("buffer"));
    }
    Ok(Room {
        buffer,
        capacity,
        length,
    })
}

impl Room {
    /// Writes the whole text and a NUL, or only the length of the text.
    pub(crate) fn put(self, text: &str) -> Result<(), Error> {
        if !self.length.is_null() {
            // SAFETY: `room` was promised memory to write to.
            unsafe { self.length.write_unaligned(text.len()) };
        }
        if self.buffer.is_null() {
            return Ok(());
        }
        if self.capacity <= text.len() {
            return Err(too_small(self.capacity, text.len()));
        }
        // SAFETY: `room` was promised a buffer of `capacity` bytes, which is more than the text has, and no text
        // of ours overlaps memory of the caller's.
        unsafe {
            let buffer = self.buffer.cast::<u8>();
            buffer.copy_from_nonoverlapping(text.as_ptr(), text.len());
            buffer.add(text.len()).write(0);
        }
        Ok(())
    }
}

#[cold]
fn too_small(capacity: usize, length: usize) -> Error {
    let needed = format!("{} or more", length.saturating_add(1));
    let fault = Fault::new(ErrorKind::BufferTooSmall).at("capacity");
    fault.got(&capacity.to_string()).allowed([needed]).into()
}

/// The item at a place.
pub(crate) fn at<'a, T>(items: &'a [T], index: usize, name: &'static str) -> Result<&'a T, Error> {
    items.get(index).ok_or_else(|| {
        let fault = Fault::new(ErrorKind::OutOfRange)
            .at(name)
            .got(&index.to_string());
        match items.len() {
            0 => fault.hint("there is none").into(),
            count => fault
                .allowed([format!("0 to {}", count.saturating_sub(1))])
                .into(),
        }
    })
}
