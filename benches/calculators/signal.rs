//! Bytes from a network.

use crate::given::time;
use brimline::signal::{diagnostic_reply, linear, transmission_frame};
use criterion::Criterion;

pub fn signal(c: &mut Criterion) {
    time(
        c,
        "signal.transmission_frame",
        |given| {
            let id = u32::from_str_radix(given.text("id"), 16).unwrap_or(0x18FE_F803);
            (id, given.bytes("data"))
        },
        |(id, data)| transmission_frame(*id, data),
    );
    time(
        c,
        "signal.linear",
        |given| (given.bytes("data"), given.layout()),
        |(data, layout)| linear(data, layout),
    );
    time(
        c,
        "signal.diagnostic_reply",
        |given| [given.bytes("request"), given.bytes("reply")],
        |[request, reply]| diagnostic_reply(request, reply).map(|reply| reply.state),
    );
}
