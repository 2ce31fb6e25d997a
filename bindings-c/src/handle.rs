//! Opaque handles: each C type has exactly one ownership, so that the wrong free does not compile.

use crate::guard;
use brimline_core::{Error, ErrorKind, Fault};

/// A C type that stands for something held here.
pub(crate) trait Handle: Sized {
    /// What it stands for.
    type Held;
    /// What its memory begins with, of this type alone.
    const MARK: u64;
}

/// What a handle points to.
#[repr(C)]
struct Slot<T> {
    mark: u64,
    held: T,
}

/// What the memory of a freed handle begins with until it is used again.
const FREED: u64 = 0;

/// A handle that the caller owns from now on.
pub(crate) fn give<H: Handle>(held: H::Held) -> *mut H {
    let slot = Box::new(Slot {
        mark: H::MARK,
        held,
    });
    Box::into_raw(slot).cast()
}

/// What a handle stands for, to look at.
///
/// # Safety
/// The pointer is NULL or a live handle of any type, and nothing changes it during the
/// call.
pub(crate) unsafe fn look<'a, H: Handle>(
    handle: *const H,
    name: &'static str,
) -> Result<&'a H::Held, Error> {
    // SAFETY: as the caller promises.
    let slot = unsafe { checked(handle, name)? };
    // SAFETY: the mark says that `give` made this slot for this very type, and it was not freed.
    Ok(unsafe { &(*slot).held })
}

/// What a handle stands for where there is one; NULL is none.
///
/// # Safety
/// As [`look`].
pub(crate) unsafe fn look_if<'a, H: Handle>(
    handle: *const H,
    name: &'static str,
) -> Result<Option<&'a H::Held>, Error> {
    if handle.is_null() {
        return Ok(None);
    }
    // SAFETY: as the caller promises.
    unsafe { look(handle, name) }.map(Some)
}

/// What a handle stands for, to change.
///
/// # Safety
/// The pointer is NULL or a live handle of any type, and nothing else uses it during the
/// call.
pub(crate) unsafe fn change<'a, H: Handle>(
    handle: *mut H,
    name: &'static str,
) -> Result<&'a mut H::Held, Error> {
    // SAFETY: as the caller promises.
    let slot = unsafe { checked(handle, name)? };
    // SAFETY: the mark says that `give` made this slot for this very type, and it was not freed.
    Ok(unsafe { &mut (*slot.cast_mut()).held })
}

/// Takes a handle back and drops what it stands for. NULL, and what is not such a handle, is left
/// alone.
///
/// # Safety
/// The pointer is NULL or a live handle of any type, and nothing uses it during the call
/// or after it.
pub(crate) unsafe fn free<H: Handle>(handle: *mut H) {
    // SAFETY: as the caller promises.
    let Ok(slot) = (unsafe { checked(handle, "") }) else {
        return;
    };
    let slot = slot.cast_mut();
    // A panic while dropping stays here too; there is nobody to tell.
    let _ = guard::caught(|| {
        // SAFETY: the mark says that `give` made this slot for this very type, and it was not freed; the write
        // is volatile so that the mark goes although the memory is given back at once.
        unsafe {
            (&raw mut (*slot).mark).write_volatile(FREED);
            drop(Box::from_raw(slot));
        }
        Ok(())
    });
}

/// The slot of a handle of this type.
///
/// # Safety
/// The pointer is NULL or a live handle of any type.
unsafe fn checked<H: Handle>(
    handle: *const H,
    name: &'static str,
) -> Result<*const Slot<H::Held>, Error> {
    if handle.is_null() {
        return Err(Fault::new(ErrorKind::NullPointer).at(name).into());
    }
    let slot = handle.cast::<Slot<H::Held>>();
    // SAFETY: every handle begins with its mark, whatever its type.
    if slot.is_aligned() && unsafe { (&raw const (*slot).mark).read() } == H::MARK {
        return Ok(slot);
    }
    let hint = "this handle was freed, or is of another type";
    Err(Fault::new(ErrorKind::Unresolved).at(name).hint(hint).into())
}
