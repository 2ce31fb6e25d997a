//! The calculators of `signal`, by name.

use super::arguments::{Arguments, told};
use super::{Answer, Function};
use crate::document::{Node, Reader};
use crate::error::{ErrorKind, Fault};
use crate::quantity::{Kind, Unit};
use crate::signal::{self, ByteOrder, Linear, Reading, Reply};
use alloc::format;
use alloc::vec::Vec;
use serde::Serialize;

pub(super) const FUNCTIONS: &[Function] = &[
    Function {
        name: "signal.transmission_frame",
        takes: &["id", "data"],
        ask: transmission_frame,
    },
    Function {
        name: "signal.linear",
        takes: &["data", "layout"],
        ask: linear,
    },
    Function {
        name: "signal.diagnostic_reply",
        takes: &["request", "reply", "layout"],
        ask: diagnostic_reply,
    },
];

fn transmission_frame(given: &mut Arguments<'_, '_, '_>) -> Option<Answer> {
    let id = given.read("id", identifier);
    let data = given.read("data", bytes);
    told(signal::transmission_frame(id?, &data?))
}

fn linear(given: &mut Arguments<'_, '_, '_>) -> Option<Answer> {
    let data = given.read("data", bytes);
    let layout = given.read("layout", layout);
    told(signal::linear(&data?, &layout?))
}

/// A reply, with the value read from its data.
#[derive(Serialize)]
struct Read<'a> {
    #[serde(flatten)]
    reply: Reply<'a>,
    #[serde(skip_serializing_if = "Option::is_none")]
    reading: Option<Reading>,
}

fn diagnostic_reply(given: &mut Arguments<'_, '_, '_>) -> Option<Answer> {
    let request = given.read("request", bytes);
    let reply = given.read("reply", bytes);
    let layout = given.read_if("layout", layout);
    let (request, reply) = (request?, reply?);
    told(
        signal::diagnostic_reply(&request, &reply).and_then(|reply| {
            let reading = reply.data.zip(layout);
            let reading = reading.map(|(data, layout)| signal::linear(data, &layout));
            Ok(Read {
                reply,
                reading: reading.transpose()?,
            })
        }),
    )
}

/// An identifier: a whole number, or hexadecimal text.
fn identifier(reader: &mut Reader<'_>, node: &Node<'_>) -> Option<u32> {
    let number = match node {
        Node::Integer(number) => u32::try_from(*number).ok(),
        _ => {
            let text = reader.str(node)?;
            let digits = text.strip_prefix("0x").unwrap_or(text);
            let all = digits.bytes().all(|digit| digit.is_ascii_hexdigit());
            u32::from_str_radix(digits, 16).ok().filter(|_| all)
        }
    };
    if number.is_none() {
        let forms = ["hexadecimal text, as 18FEF8FE", "a whole number"];
        reader.note(of_form(node).allowed(forms));
    }
    number
}

/// Bytes as hexadecimal text, with or without spaces between them.
fn bytes(reader: &mut Reader<'_>, node: &Node<'_>) -> Option<Vec<u8>> {
    let Node::Text(text) = node else {
        reader.str(node)?;
        return None;
    };
    let words = text.split(' ').flat_map(|word| word.as_bytes().chunks(2));
    let read: Option<Vec<u8>> = words.map(byte).collect();
    if read.is_none() {
        let form = "bytes of two hexadecimal digits each, as 62F190 or 62 F1 90";
        reader.note(of_form(node).allowed([form]));
    }
    read
}

fn of_form(node: &Node<'_>) -> Fault {
    let fault = Fault::new(ErrorKind::UnknownValue);
    match node {
        Node::Integer(number) => fault.got(&format!("{number}")),
        _ => fault.got(node.text().unwrap_or_default()),
    }
}

fn byte(digits: &[u8]) -> Option<u8> {
    let &[high, low] = digits else { return None };
    let digit = |digit: u8| {
        char::from(digit)
            .to_digit(16)
            .and_then(|value| u8::try_from(value).ok())
    };
    Some(digit(high)? << 4 | digit(low)?)
}

fn layout(reader: &mut Reader<'_>, node: &Node<'_>) -> Option<Linear> {
    let object = reader.object(
        node,
        &[
            "start", "length", "order", "signed", "unit", "scale", "offset", "min", "max",
        ],
    )?;
    let small = |reader: &mut Reader<'_>, node: &Node<'_>| {
        // What is past the type is past every row of bytes as well.
        Some(u32::try_from(reader.whole(node, 0)?).unwrap_or(u32::MAX))
    };
    let start = reader.required(&object, "start", small);
    let length = reader.required(&object, "length", small);
    let order = reader.required(&object, "order", |reader, node| {
        reader.word(node, ByteOrder::WORDS)
    });
    let signed = reader.optional(&object, "signed", Reader::flag);
    let unit = reader.required(&object, "unit", unit)?;
    let kind = unit.kind();
    let step = match kind {
        Kind::Temperature => Kind::TemperatureDifference,
        kind => kind,
    };
    let scale = reader.required(&object, "scale", |reader, node| reader.amount(node, step));
    let mut read = |name| reader.optional(&object, name, |reader, node| reader.amount(node, kind));
    let (offset, min, max) = (read("offset"), read("min"), read("max"));
    Some(Linear {
        start: start?,
        length: length?,
        order: order?,
        signed: signed.unwrap_or(false),
        unit,
        scale: scale?,
        offset,
        min,
        max,
    })
}

fn unit(reader: &mut Reader<'_>, node: &Node<'_>) -> Option<Unit> {
    match Unit::parse(reader.str(node)?) {
        Ok(unit) => Some(unit),
        Err(error) => {
            error
                .into_faults()
                .into_iter()
                .for_each(|fault| reader.note(fault));
            None
        }
    }
}
