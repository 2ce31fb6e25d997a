//! What a control unit answers when it is asked for one value.

use crate::error::{Error, ErrorKind, Fault};
use crate::word::words;
use alloc::format;
use alloc::string::String;
use core::fmt::Write;
use serde::{Serialize, Serializer};

/// The services whose answers are read, with the bytes of the identifier they carry.
///
/// Source: ISO 14229-1, ReadDataByIdentifier; SAE J1979, service 01 (the layout of its answer from memory).
const SERVICES: &[(u8, usize)] = &[(0x22, 2), (0x01, 1)];

/// Added to the service in a positive answer.
const POSITIVE: u8 = 0x40;

/// Begins a negative answer.
const NEGATIVE: u8 = 0x7F;

words! {
    /// How a control unit answers.
    pub enum ReplyState {
        /// With data.
        Positive = "positive",
        /// With a refusal.
        Negative = "negative",
        /// That the answer will come later: wait for it, and do not ask again.
        Pending = "pending",
    }
}

words! {
    /// Why a control unit refuses.
    pub enum Refusal {
        /// No reason given.
        GeneralReject = "general_reject",
        /// It does not have the service.
        ServiceNotSupported = "service_not_supported",
        /// It does not have this part of the service.
        SubFunctionNotSupported = "sub_function_not_supported",
        /// The request has the wrong length or form.
        IncorrectLength = "incorrect_length",
        /// The answer would be too long.
        ResponseTooLong = "response_too_long",
        /// It is busy; ask again.
        Busy = "busy",
        /// Its conditions are not met.
        ConditionsNotCorrect = "conditions_not_correct",
        /// The request comes out of order.
        SequenceError = "sequence_error",
        /// It does not have the identifier, or not now.
        OutOfRange = "out_of_range",
        /// It must be unlocked first.
        SecurityAccessDenied = "security_access_denied",
        /// It wants to know who asks first.
        AuthenticationRequired = "authentication_required",
        /// The answer will come later.
        ResponsePending = "response_pending",
        /// It does not have this part of the service in the session it is in.
        SubFunctionNotInSession = "sub_function_not_in_session",
        /// It does not have the service in the session it is in.
        ServiceNotInSession = "service_not_in_session",
        /// A code without a name here.
        Other = "other",
    }
}

/// The negative response codes. Source: ISO 14229-1, annex A; 13, 14, 22, 31, 33 and 78 seen in print, the others from
/// memory.
const REFUSALS: &[(u8, Refusal)] = &[
    (0x10, Refusal::GeneralReject),
    (0x11, Refusal::ServiceNotSupported),
    (0x12, Refusal::SubFunctionNotSupported),
    (0x13, Refusal::IncorrectLength),
    (0x14, Refusal::ResponseTooLong),
    (0x21, Refusal::Busy),
    (0x22, Refusal::ConditionsNotCorrect),
    (0x24, Refusal::SequenceError),
    (0x31, Refusal::OutOfRange),
    (0x33, Refusal::SecurityAccessDenied),
    (0x34, Refusal::AuthenticationRequired),
    (0x78, Refusal::ResponsePending),
    (0x7E, Refusal::SubFunctionNotInSession),
    (0x7F, Refusal::ServiceNotInSession),
];

/// What a control unit answered.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Serialize)]
#[non_exhaustive]
pub struct Reply<'a> {
    /// How it answers.
    pub state: ReplyState,
    /// What was asked for, as the answer repeats it; in JSON hexadecimal text.
    #[serde(
        skip_serializing_if = "Option::is_none",
        serialize_with = "hexadecimal"
    )]
    pub identifier: Option<&'a [u8]>,
    /// The value, in bytes, one or more; in JSON hexadecimal text.
    #[serde(
        skip_serializing_if = "Option::is_none",
        serialize_with = "hexadecimal"
    )]
    pub data: Option<&'a [u8]>,
    /// The code of a refusal or a delay.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub code: Option<u8>,
    /// What the code means.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub reason: Option<Refusal>,
}

/// Reads the answer to a request for one value: `22` and a data identifier of two bytes (ISO 14229), or `01` and a
/// parameter of one byte (SAE J1979).
///
/// Both without what the transport puts before or after them. [`linear`](super::linear()) reads the value from the data.
/// Source: ISO 14229-1: 62, the identifier and data, or 7F, the service and a code; SAE J1979: 41, the parameter and data.
///
/// # Errors
///
/// [`OutOfRange`](ErrorKind::OutOfRange) for a request of another service or length, and for an answer cut short or, if
/// negative, too long; [`Conflict`](ErrorKind::Conflict) for an answer to something else.
///
/// ```
/// use brimline::signal::{Refusal, ReplyState, diagnostic_reply};
/// let reply = diagnostic_reply(&[0x22, 0xFF, 0xFF], &[0x7F, 0x22, 0x31])?;
/// assert_eq!((reply.state, reply.reason), (ReplyState::Negative, Some(Refusal::OutOfRange)));
/// let reply = diagnostic_reply(&[0x01, 0x05], &[0x41, 0x05, 0x7B])?;
/// assert_eq!(reply.data, Some(&[0x7B][..]));
/// # Ok::<(), brimline::Error>(())
/// ```
pub fn diagnostic_reply<'a>(request: &[u8], reply: &'a [u8]) -> Result<Reply<'a>, Error> {
    let (service, asked) = asked(request)?;
    if let Some((&NEGATIVE, rest)) = reply.split_first() {
        return refusal(service, rest, reply);
    }
    let Some((first, rest)) = reply.split_first() else {
        return Err(of_reply(
            ErrorKind::OutOfRange,
            reply,
            "the answer is empty",
        ));
    };
    if *first != service.wrapping_add(POSITIVE) {
        let hint = format!(
            "an answer to {service:02X} begins with {:02X} or 7F, after the length the transport puts before it",
            service.wrapping_add(POSITIVE)
        );
        return Err(of_reply(ErrorKind::Conflict, reply, hint));
    }
    let Some((identifier, data)) = rest.split_at_checked(asked.len()) else {
        return Err(of_reply(
            ErrorKind::OutOfRange,
            reply,
            "the answer is cut short",
        ));
    };
    if identifier != asked {
        let hint = format!("{} was asked for", spelled(asked));
        return Err(of_reply(ErrorKind::Conflict, reply, hint));
    }
    if data.is_empty() {
        let hint = "the answer is cut short: it has no data";
        return Err(of_reply(ErrorKind::OutOfRange, reply, hint));
    }
    Ok(Reply {
        state: ReplyState::Positive,
        identifier: Some(identifier),
        data: Some(data),
        code: None,
        reason: None,
    })
}

/// The service of a request and the identifier it asks for.
fn asked(request: &[u8]) -> Result<(u8, &[u8]), Error> {
    if let Some((service, asked)) = request.split_first()
        && SERVICES.contains(&(*service, asked.len()))
    {
        return Ok((*service, asked));
    }
    let fault = Fault::new(ErrorKind::OutOfRange).at("request");
    Err(fault
        .got(&spelled(request))
        .allowed(["22 and two bytes", "01 and one byte"])
        .hint("ask for one value at a time, without what the transport adds")
        .into())
}

/// A negative answer, after its first byte.
fn refusal<'a>(service: u8, rest: &[u8], reply: &'a [u8]) -> Result<Reply<'a>, Error> {
    let &[refused, code] = rest else {
        let hint = "a negative answer has three bytes: 7F, the service and a code";
        return Err(of_reply(ErrorKind::OutOfRange, reply, hint));
    };
    if refused != service {
        let hint = format!("it refuses {refused:02X}, and {service:02X} was asked");
        return Err(of_reply(ErrorKind::Conflict, reply, hint));
    }
    let known = REFUSALS.iter().find(|(known, _)| *known == code);
    let reason = known.map_or(Refusal::Other, |(_, reason)| *reason);
    let state = if reason == Refusal::ResponsePending {
        ReplyState::Pending
    } else {
        ReplyState::Negative
    };
    Ok(Reply {
        state,
        identifier: None,
        data: None,
        code: Some(code),
        reason: Some(reason),
    })
}

fn of_reply(kind: ErrorKind, reply: &[u8], hint: impl Into<String>) -> Error {
    let fault = Fault::new(kind).at("reply").got(&spelled(reply));
    fault.hint(hint.into()).into()
}

/// Bytes as two hexadecimal digits each; those past the fortieth do not fit in a fault.
fn spelled(bytes: &[u8]) -> String {
    bytes.iter().take(41).fold(String::new(), |mut text, byte| {
        // Writing to a text does not fail.
        let _ = write!(text, "{byte:02X}");
        text
    })
}

fn hexadecimal<S: Serializer>(bytes: &Option<&[u8]>, serializer: S) -> Result<S::Ok, S::Error> {
    struct Bytes<'a>(&'a [u8]);

    impl core::fmt::Display for Bytes<'_> {
        fn fmt(&self, f: &mut core::fmt::Formatter<'_>) -> core::fmt::Result {
            self.0.iter().try_for_each(|byte| write!(f, "{byte:02X}"))
        }
    }

    serializer.collect_str(&Bytes(bytes.unwrap_or_default()))
}

#[cfg(test)]
mod tests {
    #![allow(clippy::unwrap_used)]

    use super::*;

    #[test]
    fn positive() {
        // ISO 14229-1: service 22 is answered by 62 and the identifier; SAE J1979: 01 by 41 and the parameter.
        let reply = diagnostic_reply(&[0x22, 0xF1, 0x90], &[0x62, 0xF1, 0x90, 0x12, 0x34]).unwrap();
        assert_eq!(reply.state, ReplyState::Positive);
        assert_eq!(reply.identifier, Some(&[0xF1, 0x90][..]));
        assert_eq!(reply.data, Some(&[0x12, 0x34][..]));
        assert_eq!((reply.code, reply.reason), (None, None));
        let json = serde_json::to_string(&reply).unwrap();
        assert_eq!(
            json,
            r#"{"state":"positive","identifier":"F190","data":"1234"}"#
        );
        let reply = diagnostic_reply(&[0x01, 0x0C], &[0x41, 0x0C, 0x1A, 0xF8]).unwrap();
        assert_eq!(reply.data, Some(&[0x1A, 0xF8][..]));
    }

    #[test]
    fn negative() {
        // ISO 14229-1, annex A: 31 request out of range, 22 conditions not correct, 33 security, 13 length, 14 too long, 78
        // pending; 99 has no name here.
        for (code, reason, state) in [
            (0x13, "incorrect_length", ReplyState::Negative),
            (0x14, "response_too_long", ReplyState::Negative),
            (0x22, "conditions_not_correct", ReplyState::Negative),
            (0x31, "out_of_range", ReplyState::Negative),
            (0x33, "security_access_denied", ReplyState::Negative),
            (0x78, "response_pending", ReplyState::Pending),
            (0x99, "other", ReplyState::Negative),
        ] {
            let bytes = [0x7F, 0x22, code];
            let reply = diagnostic_reply(&[0x22, 0xFF, 0xFF], &bytes).unwrap();
            assert_eq!((reply.state, reply.code), (state, Some(code)));
            assert_eq!(reply.reason.unwrap().slug(), reason);
            assert_eq!((reply.identifier, reply.data), (None, None));
        }
    }

    #[test]
    fn odd_and_truncated_bytes_are_refused() {
        let asked = [0x22, 0xF1, 0x90];
        let (range, conflict) = (ErrorKind::OutOfRange, ErrorKind::Conflict);
        for (reply, kind) in [
            (&[][..], range),
            (&[0x62], range),
            (&[0x62, 0xF1], range),
            (&[0x62, 0xF1, 0x90], range),
            (&[0x7F], range),
            (&[0x7F, 0x22], range),
            (&[0x7F, 0x22, 0x31, 0x00], range),
            (&[0x62, 0x90, 0xF1, 0x00], conflict),
            (&[0x41, 0x05, 0x7B], conflict),
            (&[0x7F, 0x01, 0x31], conflict),
            (&[0x05, 0x62, 0xF1, 0x90, 0x12, 0x34], conflict),
        ] {
            let error = diagnostic_reply(&asked, reply).unwrap_err();
            assert_eq!(
                (error.kind(), &*error.first().path),
                (kind, "reply"),
                "{reply:02X?}"
            );
        }
        for request in [
            &[][..],
            &[0x22],
            &[0x22, 0xF1],
            &[0x22, 0xF1, 0x90, 0x00],
            &[0x2E, 0xF1, 0x90],
            &[0x01],
        ] {
            let error = diagnostic_reply(request, &[0x62, 0xF1, 0x90, 0x00]).unwrap_err();
            assert_eq!((error.kind(), &*error.first().path), (range, "request"));
        }
    }
}
