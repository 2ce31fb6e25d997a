//! What must hold of `signal` whatever is put in.

use brimline::calculate::calculate;
use brimline::signal::{
    ByteOrder, Linear, Reading, ReplyState, State, diagnostic_reply, linear, transmission_frame,
};
use brimline::{Amount, Unit};
use proptest::prelude::*;

const ID: u32 = 0x18FE_F8FE;

/// What a reading says against what it should: a state, and a value in hundred-thousandths.
fn is(reading: Reading, state: State, hundred_thousandths: i64, unit: Unit) -> bool {
    let value = Amount::new(hundred_thousandths, 5, unit).unwrap();
    let kept = matches!(state, State::Valid | State::Implausible);
    reading.state == state && reading.value == kept.then_some(value)
}

/// SAE J1939-71, ranges of transmitted values, by the number instead of the code: a word up to 64255 is valid, and on.
fn state_of(word: i64) -> State {
    const ENDS: [(i64, State); 5] = [
        (64_255, State::Valid),
        (64_511, State::ParameterSpecific),
        (65_023, State::Reserved),
        (65_279, State::Error),
        (65_535, State::NotAvailable),
    ];
    ENDS.iter().find(|(end, _)| word <= *end).unwrap().1
}

#[test]
fn every_temperature() {
    for word in 0..=u16::MAX {
        let [low, high] = [word % 256, word / 256].map(|byte| byte as u8);
        let data = [0xFF, 0xFF, 0xFF, 0xFF, low, high, 0xFF, 0xFF];
        let reading = transmission_frame(ID, &data).unwrap().temperature;
        // 1/32 °C is 3125 hundred-thousandths.
        let expected = i64::from(word) * 3_125 - 273 * 100_000;
        let impossible = !(-40 * 100_000..=200 * 100_000).contains(&expected);
        let state = match state_of(word.into()) {
            State::Valid if impossible => State::Implausible,
            state => state,
        };
        assert!(
            is(reading, state, expected, Unit::DegreeCelsius),
            "{word:04X}: {reading:?}"
        );
    }
}

#[test]
fn every_byte_of_the_others() {
    for byte in 0..=u8::MAX {
        let state = state_of(i64::from(byte) * 256);
        let frame = transmission_frame(ID, &[0, byte, 0, 0, 0, 0, byte, byte]).unwrap();
        let number = i64::from(byte);
        assert!(is(frame.level, state, number * 40_000, Unit::Percent));
        assert!(is(
            frame.departure,
            state,
            number * 50_000 - 6_250_000,
            Unit::Litre
        ));
        let state = match number % 16 {
            14 => State::Error,
            15 => State::NotAvailable,
            _ => State::Valid,
        };
        assert!(is(
            frame.countdown,
            state,
            number % 16 * 100_000,
            Unit::Minute
        ));
        let words = [
            "conditions_met",
            "settling",
            "in_gear",
            "too_cold",
            "too_hot",
            "moving",
            "not_level",
            "engine_too_slow",
        ];
        let word = match byte / 16 {
            14 => "error",
            15 => "not_available",
            code => words.get(usize::from(code)).copied().unwrap_or("unknown"),
        };
        assert_eq!(frame.status.slug(), word);
    }
}

/// Writes a number into data bit by bit, as databases of network signals count.
fn write(data: &mut [u8], start: usize, length: usize, order: ByteOrder, raw: u64) {
    // Places from the lowest bit up: for the high byte first, bytes are walked back from where the highest bit stands.
    let places: Vec<usize> = match order {
        ByteOrder::Little => (start..start + length).collect(),
        _ => {
            let upper = start / 8 * 8 + 7 - start % 8;
            let down = (upper..upper + length).map(|place| place / 8 * 8 + 7 - place % 8);
            let mut places: Vec<usize> = down.collect();
            places.reverse();
            places
        }
    };
    for (bit, place) in places.into_iter().enumerate() {
        if raw >> bit & 1 == 1 {
            data[place / 8] |= 1 << (place % 8);
        }
    }
}

fn layout(start: u32, length: u32, order: ByteOrder, signed: bool) -> Linear {
    Linear {
        start,
        length,
        order,
        signed,
        unit: Unit::Millilitre,
        scale: Amount::new(1, 0, Unit::Millilitre).unwrap(),
        offset: None,
        min: None,
        max: None,
    }
}

fn any_amount() -> impl Strategy<Value = Amount> {
    let unit = prop::sample::select(Unit::ALL);
    (
        -999_999_999_999_999_i64..=999_999_999_999_999,
        0_u8..=9,
        unit,
    )
        .prop_map(|(number, decimals, unit)| Amount::new(number, decimals, unit).unwrap())
}

fn hexadecimal(bytes: &[u8]) -> String {
    bytes.iter().map(|byte| format!("{byte:02X}")).collect()
}

proptest! {
    #[test]
    fn a_number_is_read_as_it_was_written(
        (start, length, raw) in (0..64_usize, 1..=49_usize, any::<u64>()),
        (big, signed) in (any::<bool>(), any::<bool>()),
    ) {
        let order = if big { ByteOrder::Big } else { ByteOrder::Little };
        let raw = raw & ((1 << length) - 1);
        let mut data = [0; 16];
        write(&mut data, start, length, order, raw);
        let reading = linear(&data, &layout(start as u32, length as u32, order, signed)).unwrap();
        let below_zero = signed && raw >> (length - 1) == 1;
        let expected = raw as i64 - if below_zero { 1_i64 << length } else { 0 };
        prop_assert_eq!(reading.value.unwrap().mantissa(), expected);
        prop_assert_eq!(reading.state, State::Valid);
    }

    #[test]
    fn a_range_decides_the_state_only(
        raw in any::<u8>(), (min, max) in (-100_i64..=300, -100_i64..=300),
    ) {
        let end = |number| Some(Amount::new(number, 0, Unit::Millilitre).unwrap());
        let bounded = Linear { min: end(min), max: end(max), ..layout(0, 8, ByteOrder::Little, false) };
        let reading = linear(&[raw], &bounded).unwrap();
        let within = (min..=max).contains(&i64::from(raw));
        prop_assert_eq!(reading.state == State::Valid, within);
        prop_assert_eq!(reading.value.unwrap().mantissa(), i64::from(raw));
    }

    #[test]
    fn any_frame_is_read_or_refused(
        id in prop_oneof![any::<u32>(), Just(ID)], data in prop::collection::vec(any::<u8>(), 0..12),
    ) {
        let frame = transmission_frame(id, &data);
        let ours = id <= 0x1FFF_FFFF && (id >> 8) & 0x3_FFFF == 65_272 && data.len() == 8;
        prop_assert_eq!(frame.is_ok(), ours);
        let text = format!(r#"{{"id": "{id:08X}", "data": "{}"}}"#, hexadecimal(&data));
        let asked = calculate("signal.transmission_frame", &text);
        let number = format!(r#"{{"id": {id}, "data": "{}"}}"#, hexadecimal(&data));
        prop_assert_eq!(&asked, &calculate("signal.transmission_frame", &number));
        match (frame, asked) {
            (Ok(frame), Ok(asked)) => {
                for reading in [frame.temperature, frame.level, frame.departure, frame.countdown] {
                    let kept = matches!(reading.state, State::Valid | State::Implausible);
                    prop_assert_eq!(reading.value.is_some(), kept);
                }
                prop_assert_eq!(asked, serde_json::to_string(&frame).unwrap());
            }
            (Err(error), Err(asked)) => prop_assert_eq!(error, asked),
            both => prop_assert!(false, "{:?}", both),
        }
    }

    #[test]
    fn any_layout_is_read_or_refused(
        data in prop::collection::vec(any::<u8>(), 0..70),
        (start, length) in (prop_oneof![0..600_u32, any::<u32>()], prop_oneof![0..70_u32, any::<u32>()]),
        (big, signed) in (any::<bool>(), any::<bool>()),
        unit in prop::sample::select(Unit::ALL),
        (scale, offset) in (any_amount(), prop::option::of(any_amount())),
        (min, max) in (prop::option::of(any_amount()), prop::option::of(any_amount())),
    ) {
        let order = if big { ByteOrder::Big } else { ByteOrder::Little };
        let free = Linear { start, length, order, signed, unit, scale, offset, min, max };
        if let Ok(reading) = linear(&data, &free) {
            prop_assert_eq!(reading.value.unwrap().unit(), unit);
        }
        // The same, of one kind throughout.
        let own = |amount: Amount| Amount::new(amount.mantissa(), amount.decimals(), unit).unwrap();
        let alike = Linear {
            scale: own(scale), offset: offset.map(own), min: min.map(own), max: max.map(own), ..free
        };
        let _ = linear(&data, &alike);
    }

    #[test]
    fn a_reply_is_read_as_it_was_written(
        identifier in any::<[u8; 2]>(), data in prop::collection::vec(any::<u8>(), 1..40), code in any::<u8>(),
    ) {
        for (service, identifier) in [(0x22_u8, &identifier[..]), (0x01, &identifier[..1])] {
            let request = [&[service], identifier].concat();
            let bytes = [&[service + 0x40], identifier, &data].concat();
            let reply = diagnostic_reply(&request, &bytes).unwrap();
            prop_assert_eq!(reply.state, ReplyState::Positive);
            prop_assert_eq!((reply.identifier, reply.data), (Some(identifier), Some(&data[..])));
            let bytes = [0x7F, service, code];
            let reply = diagnostic_reply(&request, &bytes).unwrap();
            let pending = reply.state == ReplyState::Pending;
            prop_assert_eq!((pending, reply.code), (code == 0x78, Some(code)));
        }
    }

    #[test]
    fn any_bytes_are_read_or_refused(
        request in prop::collection::vec(any::<u8>(), 0..5),
        reply in prop::collection::vec(any::<u8>(), 0..12),
        text in ".{0,40}",
    ) {
        let _ = diagnostic_reply(&request, &reply);
        let _ = diagnostic_reply(&[0x22, 0xF1, 0x90], &reply);
        for (name, _) in brimline::calculate::functions().filter(|(name, _)| name.starts_with("signal.")) {
            let _ = calculate(name, &text);
        }
        let text = serde_json::to_string(&text).unwrap();
        let _ = calculate("signal.transmission_frame", &format!(r#"{{"id": {text}, "data": {text}}}"#));
    }
}

#[test]
fn asked_by_name() {
    for (name, arguments, expected) in [
        (
            // SAE J1939-71, PGN 65272; decoded by cantools 45.1.0 as well.
            "signal.transmission_frame",
            r#"{"id": "0x18FEF8FE", "data": "FF FF FF FF 20 28 7A 20"}"#,
            r#"{"temperature":{"state":"valid","value":"48 °C"},"level":{"state":"not_available"},"departure":{"state":"valid","value":"-1.5 L"},"status":"in_gear","countdown":{"state":"valid","value":"0 min"}}"#,
        ),
        (
            // SAE J1979, service 01, parameter 05: A − 40.
            "signal.diagnostic_reply",
            r#"{"request": "01 05", "reply": "41 05 7B", "layout":
                {"start": 0, "length": 8, "order": "little", "unit": "°C", "scale": "1 °C", "offset": "-40 °C"}}"#,
            r#"{"state":"positive","identifier":"05","data":"7B","reading":{"state":"valid","value":"83 °C"}}"#,
        ),
        (
            // ISO 14229-1, annex A.
            "signal.diagnostic_reply",
            r#"{"request": "22FFFF", "reply": "7F2231"}"#,
            r#"{"state":"negative","code":49,"reason":"out_of_range"}"#,
        ),
        (
            // SAE J1979, service 01, parameter 0C: (256·A + B) / 4, here as litres.
            "signal.linear",
            r#"{"data": "1AF8", "layout": {"start": 7, "length": 16, "order": "big", "unit": "L", "scale": "0.25 L", "max": "1700 L"}}"#,
            r#"{"state":"implausible","value":"1726 L"}"#,
        ),
    ] {
        assert_eq!(calculate(name, arguments).unwrap(), expected);
    }
    let error = calculate(
        "signal.transmission_frame",
        r#"{"id": "engine", "data": "FFF"}"#,
    );
    let paths: Vec<_> = error
        .unwrap_err()
        .faults()
        .map(|fault| fault.path.clone())
        .collect();
    assert_eq!(paths, ["id", "data"]);
    let error = calculate(
        "signal.linear",
        r#"{"data": "00", "layout": {"start": 0, "length": 9, "order": "little", "unit": "L", "scale": "1 L"}}"#,
    );
    assert_eq!(error.unwrap_err().first().path, "layout.start");
}
