//! The border every call passes: the status it answers, and the net that no panic gets through.

use crate::error::{BRIM_OK, brim_error, brim_status};
use crate::handle;
use brimline_core::{Error, ErrorKind, Fault};
use std::any::Any;
use std::panic::{AssertUnwindSafe, catch_unwind};

/// Does the work of one call and answers its status; `error` receives the detail where there is a
/// handle for it.
pub(crate) fn answer(
    error: *mut brim_error,
    work: impl FnOnce() -> Result<(), Error>,
) -> brim_status {
    match emptied(error) {
        Ok(detail) => told(caught(work), detail),
        Err(status) => status,
    }
}

/// Where the detail of an error goes, if anywhere: emptied of that of the last call.
fn emptied<'a>(error: *mut brim_error) -> Result<Option<&'a mut Option<Error>>, brim_status> {
    if error.is_null() {
        return Ok(None);
    }
    // SAFETY: as the header asks, the handle is one of `brim_error_new` and this thread alone uses it now.
    match unsafe { handle::change(error, "error") } {
        Ok(detail) => {
            *detail = None;
            Ok(Some(detail))
        }
        Err(refused) => Err(refused.kind().code()),
    }
}

/// The status of what was done, its detail put where it goes.
fn told(done: Result<(), Error>, detail: Option<&mut Option<Error>>) -> brim_status {
    let Err(refused) = done else { return BRIM_OK };
    let status = refused.kind().code();
    if let Some(detail) = detail {
        *detail = Some(refused);
    }
    status
}

/// What the work answers, a panic in it as `internal`.
pub(crate) fn caught<T>(work: impl FnOnce() -> Result<T, Error>) -> Result<T, Error> {
    // Nothing that the work was changing outlives a panic: calls write their outputs last.
    catch_unwind(AssertUnwindSafe(work)).unwrap_or_else(|panic| Err(of_panic(panic)))
}

#[cold]
fn of_panic(panic: Box<dyn Any + Send>) -> Error {
    let said = panic
        .downcast_ref::<&str>()
        .map(|said| (*said).to_string())
        .or_else(|| panic.downcast_ref::<String>().cloned());
    // Dropping what is not a text could run a panic of its own.
    std::mem::forget(panic);
    let fault = Fault::new(ErrorKind::Internal);
    match said {
        Some(said) => fault.got(&said).into(),
        None => fault.into(),
    }
}
