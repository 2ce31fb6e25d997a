//! The net that no panic gets through.

use brimline::{Error, ErrorKind, Fault};
use std::any::Any;
use std::panic::{AssertUnwindSafe, catch_unwind};

/// What a call into the library answers, a panic in it as `internal`.
#[inline]
pub(crate) fn caught<T>(call: impl FnOnce() -> Result<T, Error>) -> Result<T, Error> {
    // Nothing a call was changing outlives a panic: it works on values of its own and on frozen ones.
    catch_unwind(AssertUnwindSafe(call)).unwrap_or_else(|panic| Err(of_panic(&*panic)))
}

#[cold]
fn of_panic(panic: &(dyn Any + Send)) -> Error {
    let fault = Fault::new(ErrorKind::Internal);
    let said = panic
        .downcast_ref::<&str>()
        .copied()
        .or_else(|| panic.downcast_ref::<String>().map(String::as_str));
    said.map_or(fault.clone(), |said| fault.got(said)).into()
}
