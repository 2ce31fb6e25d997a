//! The net at the C border: a panic in a call is answered as `internal`, with what it said.

#![allow(dead_code, reason = "the border is read here for its net alone")]
#![allow(
    non_camel_case_types,
    clippy::missing_safety_doc,
    reason = "as in the sources"
)]

extern crate brimline as brimline_core;

#[path = "../bindings-c/src/error.rs"]
mod error;
#[path = "../bindings-c/src/getter.rs"]
mod getter;
#[path = "../bindings-c/src/guard.rs"]
mod guard;
#[path = "../bindings-c/src/handle.rs"]
mod handle;
#[path = "../bindings-c/src/text.rs"]
mod text;

use brimline::ErrorKind;
use error::{brim_error, brim_error_free, brim_error_json, brim_error_new};

fn json(error: *const brim_error) -> String {
    let mut buffer = [0_u8; 512];
    let mut length = 0;
    // SAFETY: the handle lives, and the buffer has the capacity that is said.
    let status =
        unsafe { brim_error_json(error, buffer.as_mut_ptr().cast(), buffer.len(), &mut length) };
    assert_eq!(status, 0);
    String::from_utf8(buffer[..length].to_vec()).expect("UTF-8")
}

#[test]
fn a_panic_is_answered_as_internal() {
    let error = brim_error_new();
    for said in ["a defect", "another"] {
        assert_eq!(
            guard::answer(error, || panic!("{said}")),
            ErrorKind::Internal.code()
        );
        assert!(json(error).contains(&format!("\"got\":\"{said}\"")));
    }
    assert_eq!(guard::answer(error, || Ok(())), 0);
    assert_eq!(json(error), "");
    let odd = guard::answer(error, || std::panic::panic_any(7));
    assert_eq!(odd, ErrorKind::Internal.code());
    assert_eq!(
        guard::answer(std::ptr::null_mut(), || panic!("unheard")),
        ErrorKind::Internal.code()
    );
    // SAFETY: the handle lives, and is not used again.
    unsafe { brim_error_free(error) };
}

/// What panics when it is dropped.
struct Grenade;

impl Drop for Grenade {
    fn drop(&mut self) {
        panic!("dropped");
    }
}

struct brim_grenade;

impl handle::Handle for brim_grenade {
    type Held = Grenade;
    const MARK: u64 = 0x6772_656e_6164_6500;
}

#[test]
fn a_panic_while_freeing_stays_inside() {
    let grenade: *mut brim_grenade = handle::give(Grenade);
    // SAFETY: the handle lives, and is not used again.
    unsafe { handle::free(grenade) };
}
