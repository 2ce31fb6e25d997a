//! What a vehicle network says of a gearbox.

use crate::amount::brim_amount;
use crate::calculator::reckon;
use crate::error::{brim_error, brim_status};
use crate::list::{self, number, numbers};
use crate::text::bytes;
use crate::unit::{brim_unit, unit};
use brimline_core::signal::{ByteOrder, LevelStatus, Linear, Reading, Refusal, ReplyState, State};
use brimline_core::{Error, ErrorKind, Fault, signal};

/// What a value from a network is worth. Only `BRIM_SIGNAL_STATE_VALID` may be used.
pub type brim_signal_state = i32;

/// Within the range of valid values.
pub const BRIM_SIGNAL_STATE_VALID: brim_signal_state = 1;
/// A code whose meaning belongs to the parameter.
pub const BRIM_SIGNAL_STATE_PARAMETER_SPECIFIC: brim_signal_state = 2;
/// A code kept for later use.
pub const BRIM_SIGNAL_STATE_RESERVED: brim_signal_state = 3;
/// The sender knows that its value is wrong.
pub const BRIM_SIGNAL_STATE_ERROR: brim_signal_state = 4;
/// The sender has no value.
pub const BRIM_SIGNAL_STATE_NOT_AVAILABLE: brim_signal_state = 5;
/// A valid code for something that cannot be, or that lies outside the range given for it.
pub const BRIM_SIGNAL_STATE_IMPLAUSIBLE: brim_signal_state = 6;

/// Whether the level was measured, and if not, what is in the way.
pub type brim_level_status = i32;

/// The conditions for measuring are met.
pub const BRIM_LEVEL_STATUS_CONDITIONS_MET: brim_level_status = 1;
/// The fluid is still settling; the countdown tells how long.
pub const BRIM_LEVEL_STATUS_SETTLING: brim_level_status = 2;
/// A range is engaged.
pub const BRIM_LEVEL_STATUS_IN_GEAR: brim_level_status = 3;
/// The fluid is too cold.
pub const BRIM_LEVEL_STATUS_TOO_COLD: brim_level_status = 4;
/// The fluid is too hot.
pub const BRIM_LEVEL_STATUS_TOO_HOT: brim_level_status = 5;
/// The vehicle is moving.
pub const BRIM_LEVEL_STATUS_MOVING: brim_level_status = 6;
/// The vehicle does not stand level.
pub const BRIM_LEVEL_STATUS_NOT_LEVEL: brim_level_status = 7;
/// The engine turns too slowly.
pub const BRIM_LEVEL_STATUS_ENGINE_TOO_SLOW: brim_level_status = 8;
/// A code without a known meaning.
pub const BRIM_LEVEL_STATUS_UNKNOWN: brim_level_status = 9;
/// The sender knows that the status is wrong.
pub const BRIM_LEVEL_STATUS_ERROR: brim_level_status = 10;
/// The sender has no status.
pub const BRIM_LEVEL_STATUS_NOT_AVAILABLE: brim_level_status = 11;

/// Which byte of a number comes first.
pub type brim_byte_order = i32;

/// The low byte first; the number starts at its lowest bit.
pub const BRIM_BYTE_ORDER_LITTLE: brim_byte_order = 1;
/// The high byte first; the number starts at its highest bit.
pub const BRIM_BYTE_ORDER_BIG: brim_byte_order = 2;

/// How a control unit answers.
pub type brim_reply = i32;

/// With data.
pub const BRIM_REPLY_POSITIVE: brim_reply = 1;
/// With a refusal.
pub const BRIM_REPLY_NEGATIVE: brim_reply = 2;
/// That the answer will come later: wait for it, and do not ask again.
pub const BRIM_REPLY_PENDING: brim_reply = 3;

/// Why a control unit refuses.
pub type brim_refusal = i32;

/// No reason given.
pub const BRIM_REFUSAL_GENERAL_REJECT: brim_refusal = 1;
/// It does not have the service.
pub const BRIM_REFUSAL_SERVICE_NOT_SUPPORTED: brim_refusal = 2;
/// It does not have this part of the service.
pub const BRIM_REFUSAL_SUB_FUNCTION_NOT_SUPPORTED: brim_refusal = 3;
/// The request has the wrong length or form.
pub const BRIM_REFUSAL_INCORRECT_LENGTH: brim_refusal = 4;
/// The answer would be too long.
pub const BRIM_REFUSAL_RESPONSE_TOO_LONG: brim_refusal = 5;
/// It is busy; ask again.
pub const BRIM_REFUSAL_BUSY: brim_refusal = 6;
/// Its conditions are not met.
pub const BRIM_REFUSAL_CONDITIONS_NOT_CORRECT: brim_refusal = 7;
/// The request comes out of order.
pub const BRIM_REFUSAL_SEQUENCE_ERROR: brim_refusal = 8;
/// It does not have the identifier, or not now.
pub const BRIM_REFUSAL_OUT_OF_RANGE: brim_refusal = 9;
/// It must be unlocked first.
pub const BRIM_REFUSAL_SECURITY_ACCESS_DENIED: brim_refusal = 10;
/// It wants to know who asks first.
pub const BRIM_REFUSAL_AUTHENTICATION_REQUIRED: brim_refusal = 11;
/// The answer will come later.
pub const BRIM_REFUSAL_RESPONSE_PENDING: brim_refusal = 12;
/// It does not have this part of the service in the session it is in.
pub const BRIM_REFUSAL_SUB_FUNCTION_NOT_IN_SESSION: brim_refusal = 13;
/// It does not have the service in the session it is in.
pub const BRIM_REFUSAL_SERVICE_NOT_IN_SESSION: brim_refusal = 14;
/// A code without a name here.
pub const BRIM_REFUSAL_OTHER: brim_refusal = 15;

numbers! { State of State::WORDS.len();
    BRIM_SIGNAL_STATE_VALID Valid, BRIM_SIGNAL_STATE_PARAMETER_SPECIFIC ParameterSpecific,
    BRIM_SIGNAL_STATE_RESERVED Reserved, BRIM_SIGNAL_STATE_ERROR Error,
    BRIM_SIGNAL_STATE_NOT_AVAILABLE NotAvailable, BRIM_SIGNAL_STATE_IMPLAUSIBLE Implausible,
}

numbers! { LevelStatus of LevelStatus::WORDS.len();
    BRIM_LEVEL_STATUS_CONDITIONS_MET ConditionsMet, BRIM_LEVEL_STATUS_SETTLING Settling,
    BRIM_LEVEL_STATUS_IN_GEAR InGear, BRIM_LEVEL_STATUS_TOO_COLD TooCold, BRIM_LEVEL_STATUS_TOO_HOT TooHot,
    BRIM_LEVEL_STATUS_MOVING Moving, BRIM_LEVEL_STATUS_NOT_LEVEL NotLevel,
    BRIM_LEVEL_STATUS_ENGINE_TOO_SLOW EngineTooSlow, BRIM_LEVEL_STATUS_UNKNOWN Unknown,
    BRIM_LEVEL_STATUS_ERROR Error, BRIM_LEVEL_STATUS_NOT_AVAILABLE NotAvailable,
}

numbers! { ByteOrder of ByteOrder::WORDS.len();
    BRIM_BYTE_ORDER_LITTLE Little, BRIM_BYTE_ORDER_BIG Big,
}

numbers! { ReplyState of ReplyState::WORDS.len();
    BRIM_REPLY_POSITIVE Positive, BRIM_REPLY_NEGATIVE Negative, BRIM_REPLY_PENDING Pending,
}

numbers! { Refusal of Refusal::WORDS.len();
    BRIM_REFUSAL_GENERAL_REJECT GeneralReject, BRIM_REFUSAL_SERVICE_NOT_SUPPORTED ServiceNotSupported,
    BRIM_REFUSAL_SUB_FUNCTION_NOT_SUPPORTED SubFunctionNotSupported,
    BRIM_REFUSAL_INCORRECT_LENGTH IncorrectLength, BRIM_REFUSAL_RESPONSE_TOO_LONG ResponseTooLong,
    BRIM_REFUSAL_BUSY Busy, BRIM_REFUSAL_CONDITIONS_NOT_CORRECT ConditionsNotCorrect,
    BRIM_REFUSAL_SEQUENCE_ERROR SequenceError, BRIM_REFUSAL_OUT_OF_RANGE OutOfRange,
    BRIM_REFUSAL_SECURITY_ACCESS_DENIED SecurityAccessDenied,
    BRIM_REFUSAL_AUTHENTICATION_REQUIRED AuthenticationRequired,
    BRIM_REFUSAL_RESPONSE_PENDING ResponsePending,
    BRIM_REFUSAL_SUB_FUNCTION_NOT_IN_SESSION SubFunctionNotInSession,
    BRIM_REFUSAL_SERVICE_NOT_IN_SESSION ServiceNotInSession, BRIM_REFUSAL_OTHER Other,
}

/// One value from a network: what it is worth, and the value where its code stands for one, which
/// is with `BRIM_SIGNAL_STATE_VALID` and `BRIM_SIGNAL_STATE_IMPLAUSIBLE`; else its unit is 0.
///
/// A record of 24 bytes: state at byte 0, value at 8.
#[derive(Clone, Copy)]
#[repr(C)]
pub struct brim_reading {
    /// What it is worth.
    pub state: brim_signal_state,
    /// The value, if any.
    pub value: brim_amount,
}

impl From<Reading> for brim_reading {
    fn from(reading: Reading) -> Self {
        brim_reading {
            state: number(reading.state),
            value: reading.value.into(),
        }
    }
}

/// Where a number stands in a row of bytes, and what it is worth: offset + number * scale. Bits
/// are counted from 0, the lowest bit of the first byte, eight to a byte: bit 7 is the highest of
/// the first byte, bit 8 the lowest of the second.
///
/// A record of 88 bytes, each member at the byte that is told with it.
#[derive(Clone, Copy)]
#[repr(C)]
pub struct brim_layout {
    /// At 0: the bit it starts at, its lowest for the low byte first, its highest for the high byte.
    pub start: u32,
    /// At 4: how many bits it has, 1 to 64.
    pub length: u32,
    /// At 8: which byte of it comes first.
    pub order: brim_byte_order,
    /// At 12: 1 if its highest bit counts below zero (two's complement), else 0.
    pub is_signed: i32,
    /// At 16: what one step is worth, of the unit's kind (for a temperature, a difference), not
    /// zero.
    pub scale: brim_amount,
    /// At 32: what the number 0 stands for, of the unit's kind; with unit 0, nothing.
    pub offset: brim_amount,
    /// At 48: the least value that is valid, of the unit's kind; with unit 0, none is too small.
    pub min: brim_amount,
    /// At 64: the greatest value that is valid, of the unit's kind; with unit 0, none is too great.
    pub max: brim_amount,
    /// At 80: the unit of the answer.
    pub unit: brim_unit,
}

impl brim_layout {
    fn read(self) -> Result<Linear, Error> {
        Ok(Linear {
            start: self.start,
            length: self.length,
            order: list::value(self.order, "layout.order")?,
            signed: self.is_signed != 0,
            unit: unit(self.unit, "layout.unit")?,
            scale: self.scale.read("layout.scale")?,
            offset: self.offset.read_if("layout.offset")?,
            min: self.min.read_if("layout.min")?,
            max: self.max.read_if("layout.max")?,
        })
    }
}

/// The layout of a caller's record.
///
/// # Safety The pointer is NULL or points to a layout.
unsafe fn layout(layout: *const brim_layout, name: &'static str) -> Result<Linear, Error> {
    if layout.is_null() {
        return Err(Fault::new(ErrorKind::NullPointer).at(name).into());
    }
    // SAFETY: as the caller promises; hosts that lay out records themselves may not align them. Any bytes are a
    // valid record.
    unsafe { layout.read_unaligned() }.read()
}

/// Reads the frame in which a heavy vehicle's transmission tells of its fluid: parameter group
/// 65272, eight bytes (SAE J1939-71). `temperature` in deg C, implausible outside -40 to 200;
/// `level` in % of full; `departure` from the right level in L, below zero too little, which
/// counts only with the status `BRIM_LEVEL_STATUS_CONDITIONS_MET`; `countdown` in min until the
/// level will be measured, 0 for less than one.
///
/// Errors: `BRIM_ERROR_OUT_OF_RANGE` for an identifier of more than 29 bits or of another
/// parameter group, and for anything but eight bytes.
#[unsafe(no_mangle)]
pub unsafe extern "C" fn brim_transmission_frame(
    id: u32,
    data: *const u8,
    data_length: usize,
    temperature: *mut brim_reading,
    level: *mut brim_reading,
    departure: *mut brim_reading,
    level_status: *mut brim_level_status,
    countdown: *mut brim_reading,
    error: *mut brim_error,
) -> brim_status {
    reckon!(error, [], frame = {
            // SAFETY: pointers as the header asks.
            let data = unsafe { bytes(data, data_length, "data")? };
            signal::transmission_frame(id, data)?
        };
        temperature = frame.temperature, level = frame.level, departure = frame.departure,
        level_status = number(frame.status), countdown = frame.countdown)
}

/// Reads one number from a row of bytes, exactly: valid from `min` to `max`, both included, and
/// implausible outside; told in either case. Codes that stand for no value are for the caller to
/// keep out by `min` and `max`.
///
/// Errors: `BRIM_ERROR_OUT_OF_RANGE` for a number that does not lie within the data, a length
/// outside 1 to 64, a scale of zero, a value past the digits of an amount;
/// `BRIM_ERROR_WRONG_KIND`; `BRIM_ERROR_TOO_MANY_DIGITS` where the value does not end in the unit;
/// of the layout's amounts those of `brim_amount_text`, with the member as path.
#[unsafe(no_mangle)]
pub unsafe extern "C" fn brim_linear(
    data: *const u8,
    data_length: usize,
    layout: *const brim_layout,
    reading: *mut brim_reading,
    error: *mut brim_error,
) -> brim_status {
    reckon!(
        error,
        [],
        reading = {
            // SAFETY: pointers as the header asks.
            let (data, layout) = unsafe {
                (
                    bytes(data, data_length, "data")?,
                    self::layout(layout, "layout")?,
                )
            };
            signal::linear(data, &layout)?
        }
    )
}

/// Reads the answer to a request for one value: `22` and a data identifier of two bytes (ISO
/// 14229), or `01` and a parameter of one byte (SAE J1979); both without what the transport puts
/// before or after them. Of a positive answer `data_start` and `data_count` tell which bytes of
/// `reply` are the data, which `brim_linear` reads; of another, `code` is that of the refusal or
/// the delay, and `reason` what it means. What an answer does not have is 0.
///
/// Errors: `BRIM_ERROR_OUT_OF_RANGE` for a request of another service or length, and for an answer
/// cut short or, if negative, too long; `BRIM_ERROR_CONFLICT` for an answer to something else.
#[unsafe(no_mangle)]
pub unsafe extern "C" fn brim_diagnostic_reply(
    request: *const u8,
    request_length: usize,
    reply: *const u8,
    reply_length: usize,
    state: *mut brim_reply,
    data_start: *mut usize,
    data_count: *mut usize,
    code: *mut u32,
    reason: *mut brim_refusal,
    error: *mut brim_error,
) -> brim_status {
    reckon!(error, [], told = {
            // SAFETY: pointers as the header asks.
            let (request, reply) = unsafe { (bytes(request, request_length, "request")?, bytes(reply, reply_length, "reply")?) };
            signal::diagnostic_reply(request, reply)?
        };
        state = number(told.state),
        data_start = told.data.map_or(0, |data| reply_length.saturating_sub(data.len())),
        data_count = told.data.map_or(0, <[u8]>::len),
        code = told.code.map_or(0, u32::from),
        reason = told.reason.map_or(0, number))
}
