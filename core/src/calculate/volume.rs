//! The calculators of `volume`, by name.

use super::arguments::{Arguments, count, told, value};
use super::{Answer, Function};
use crate::document::{Node, Reader};
use crate::error::{Error, ErrorKind, Fault};
use crate::quantity::{Amount, Kind};
use crate::volume::{self, Base, Container, Expansion, Opened, Sump};
use alloc::format;

pub(super) const FUNCTIONS: &[Function] = &[
    Function {
        name: "volume.correction_factor",
        takes: &["density", "temperature", "base"],
        ask: correction_factor,
    },
    Function {
        name: "volume.at_temperature",
        takes: &["volume", "from", "to", "density", "base", "coefficient"],
        ask: at_temperature,
    },
    Function {
        name: "volume.temperature_error",
        takes: &[
            "volume",
            "read_at",
            "reference",
            "density",
            "base",
            "coefficient",
        ],
        ask: temperature_error,
    },
    Function {
        name: "volume.base_density",
        takes: &["density", "temperature", "base"],
        ask: base_density,
    },
    Function {
        name: "volume.density_at",
        takes: &["density", "temperature", "base"],
        ask: density_at,
    },
    Function {
        name: "volume.mass",
        takes: &["volume", "temperature", "density", "base"],
        ask: mass,
    },
    Function {
        name: "volume.volume_of_mass",
        takes: &["mass", "temperature", "density", "base"],
        ask: volume_of_mass,
    },
    Function {
        name: "volume.tilt_error",
        takes: &["surface", "offset", "tilt"],
        ask: tilt_error,
    },
    Function {
        name: "volume.volume_below",
        takes: &["sump", "level"],
        ask: volume_below,
    },
    Function {
        name: "volume.level_for",
        takes: &["sump", "volume"],
        ask: level_for,
    },
    Function {
        name: "volume.segment_share",
        takes: &["level", "diameter"],
        ask: segment_share,
    },
    Function {
        name: "volume.exchange",
        takes: &["capacity", "drained", "cycles"],
        ask: exchange,
    },
    Function {
        name: "volume.flush",
        takes: &["capacity", "flowed"],
        ask: flush,
    },
    Function {
        name: "volume.flush_needed",
        takes: &["capacity", "fresh"],
        ask: flush_needed,
    },
    Function {
        name: "volume.cycles_needed",
        takes: &["capacity", "drained", "fresh"],
        ask: cycles_needed,
    },
    Function {
        name: "volume.wrong_left",
        takes: &["capacity", "wrong", "drained", "cycles"],
        ask: wrong_left,
    },
    Function {
        name: "volume.containers",
        takes: &["need", "sizes", "opened", "bulk"],
        ask: containers,
    },
];

fn correction_factor(given: &mut Arguments<'_, '_, '_>) -> Option<Answer> {
    let (density, temperature, base) = density_and_temperature(given)?;
    value(volume::correction_factor(density, temperature, base))
}

fn base_density(given: &mut Arguments<'_, '_, '_>) -> Option<Answer> {
    let (density, temperature, base) = density_and_temperature(given)?;
    value(volume::base_density(density, temperature, base))
}

fn density_at(given: &mut Arguments<'_, '_, '_>) -> Option<Answer> {
    let (density, temperature, base) = density_and_temperature(given)?;
    value(volume::density_at(density, temperature, base))
}

fn mass(given: &mut Arguments<'_, '_, '_>) -> Option<Answer> {
    let held = given.amount("volume", Kind::Volume);
    let (density, temperature, base) = density_and_temperature(given)?;
    value(volume::mass(held?, temperature, density, base))
}

fn volume_of_mass(given: &mut Arguments<'_, '_, '_>) -> Option<Answer> {
    let held = given.amount("mass", Kind::Mass);
    let (density, temperature, base) = density_and_temperature(given)?;
    value(volume::volume_of_mass(held?, temperature, density, base))
}

fn density_and_temperature(given: &mut Arguments<'_, '_, '_>) -> Option<(Amount, Amount, Base)> {
    let density = given.amount("density", Kind::Density);
    let temperature = given.amount("temperature", Kind::Temperature);
    let base = given.word_if("base", Base::WORDS).unwrap_or_default();
    Some((density?, temperature?, base))
}

fn at_temperature(given: &mut Arguments<'_, '_, '_>) -> Option<Answer> {
    let held = given.amount("volume", Kind::Volume);
    let from = given.amount("from", Kind::Temperature);
    let to = given.amount("to", Kind::Temperature);
    let expansion = expansion(given);
    value(volume::at_temperature(held?, from?, to?, expansion?))
}

fn temperature_error(given: &mut Arguments<'_, '_, '_>) -> Option<Answer> {
    let held = given.amount("volume", Kind::Volume);
    let read_at = given.amount("read_at", Kind::Temperature);
    let reference = given.amount("reference", Kind::Temperature);
    let expansion = expansion(given);
    value(volume::temperature_error(
        held?, read_at?, reference?, expansion?,
    ))
}

fn expansion(given: &mut Arguments<'_, '_, '_>) -> Option<Expansion> {
    let density = given.amount_if("density", Kind::Density);
    let base = given.word_if("base", Base::WORDS);
    let coefficient = given.amount_if("coefficient", Kind::Expansion);
    let read = [
        ("density", density.is_some()),
        ("base", base.is_some()),
        ("coefficient", coefficient.is_some()),
    ];
    given.settled(&read, Expansion::of(density, base, coefficient))
}

fn tilt_error(given: &mut Arguments<'_, '_, '_>) -> Option<Answer> {
    let surface = given.amount("surface", Kind::Area);
    let offset = given.amount("offset", Kind::Length);
    let tilt = given.amount("tilt", Kind::Angle);
    told(volume::tilt_error(surface?, offset?, tilt?))
}

fn volume_below(given: &mut Arguments<'_, '_, '_>) -> Option<Answer> {
    let sump = given.read("sump", sump);
    let level = given.amount("level", Kind::Length);
    let level = level?;
    value(sump?.and_then(|sump| volume::volume_below(&sump, level)))
}

fn level_for(given: &mut Arguments<'_, '_, '_>) -> Option<Answer> {
    let sump = given.read("sump", sump);
    let held = given.amount("volume", Kind::Volume);
    let held = held?;
    value(sump?.and_then(|sump| volume::level_for(&sump, held)))
}

/// The shapes of a sump, each with members of its own.
#[derive(Clone, Copy)]
enum Shape {
    Prismoid,
    LyingCylinder,
    Strapping,
}

const SHAPES: &[(&str, (Shape, &[&str]))] = &[
    (
        "prismoid",
        (
            Shape::Prismoid,
            &["shape", "height", "bottom", "middle", "top"],
        ),
    ),
    (
        "lying_cylinder",
        (Shape::LyingCylinder, &["shape", "diameter", "length"]),
    ),
    ("strapping", (Shape::Strapping, &["shape", "rows"])),
];

/// A sump as it reads, or why there is no such sump.
fn sump(reader: &mut Reader<'_>, node: &Node<'_>) -> Option<Result<Sump, Error>> {
    let any = reader.any_object(node)?;
    let (shape, fields) =
        reader.required(&any, "shape", |reader, node| reader.word(node, SHAPES))?;
    let object = &reader.object(node, fields)?;
    let mut amount =
        |name, kind| reader.required(object, name, |reader, node| reader.amount(node, kind));
    let sump = match shape {
        Shape::Prismoid => {
            let height = amount("height", Kind::Length);
            let [bottom, middle, top] =
                ["bottom", "middle", "top"].map(|name| amount(name, Kind::Area));
            Sump::prismoid(height?, bottom?, middle?, top?)
        }
        Shape::LyingCylinder => {
            let diameter = amount("diameter", Kind::Length);
            let length = amount("length", Kind::Length);
            Sump::lying_cylinder(diameter?, length?)
        }
        Shape::Strapping => {
            let rows = |reader: &mut Reader<'_>, node| reader.list(node, row);
            Sump::strapping(&reader.required(object, "rows", rows)?)
        }
    };
    Some(sump.map_err(|error| {
        let mut fault = error.first().clone();
        fault.path = format!("sump.{}", fault.path);
        fault.into()
    }))
}

fn row(reader: &mut Reader<'_>, node: &Node<'_>) -> Option<(Amount, Amount)> {
    let object = &reader.object(node, &["level", "volume"])?;
    let mut amount =
        |name, kind| reader.required(object, name, |reader, node| reader.amount(node, kind));
    let level = amount("level", Kind::Length);
    let held = amount("volume", Kind::Volume);
    Some((level?, held?))
}

fn segment_share(given: &mut Arguments<'_, '_, '_>) -> Option<Answer> {
    let level = given.amount("level", Kind::Length);
    let diameter = given.amount("diameter", Kind::Length);
    value(volume::segment_share(level?, diameter?))
}

fn exchange(given: &mut Arguments<'_, '_, '_>) -> Option<Answer> {
    let capacity = given.amount("capacity", Kind::Volume);
    let drained = given.amount("drained", Kind::Volume);
    let cycles = given.read("cycles", |reader, node| count(reader, node, 0));
    told(volume::exchange(capacity?, drained?, cycles?))
}

fn flush(given: &mut Arguments<'_, '_, '_>) -> Option<Answer> {
    let capacity = given.amount("capacity", Kind::Volume);
    let flowed = given.amount("flowed", Kind::Volume);
    told(volume::flush(capacity?, flowed?))
}

fn flush_needed(given: &mut Arguments<'_, '_, '_>) -> Option<Answer> {
    let capacity = given.amount("capacity", Kind::Volume);
    let fresh = given.amount("fresh", Kind::Ratio);
    told(volume::flush_needed(capacity?, fresh?))
}

fn cycles_needed(given: &mut Arguments<'_, '_, '_>) -> Option<Answer> {
    let capacity = given.amount("capacity", Kind::Volume);
    let drained = given.amount("drained", Kind::Volume);
    let fresh = given.amount("fresh", Kind::Ratio);
    told(volume::cycles_needed(capacity?, drained?, fresh?))
}

fn wrong_left(given: &mut Arguments<'_, '_, '_>) -> Option<Answer> {
    let capacity = given.amount("capacity", Kind::Volume);
    let wrong = given.amount("wrong", Kind::Volume);
    let drained = given.amount("drained", Kind::Volume);
    let cycles = given.read("cycles", |reader, node| count(reader, node, 0));
    value(volume::wrong_left(capacity?, wrong?, drained?, cycles?))
}

fn containers(given: &mut Arguments<'_, '_, '_>) -> Option<Answer> {
    let need = given.amount("need", Kind::Volume);
    let sizes = given.list("sizes", container);
    let opened = given.read_if("opened", |reader, node| reader.list(node, opened));
    let bulk = given.read_if("bulk", |reader, node| {
        let object = &reader.object(node, &["available"])?;
        reader.required(object, "available", |reader, node| {
            reader.amount(node, Kind::Volume)
        })
    });
    let opened = opened.unwrap_or_default();
    told(volume::containers(need?, &sizes?, &opened, bulk))
}

fn container<'n>(reader: &mut Reader<'_>, node: &'n Node<'_>) -> Option<Container<'n>> {
    let object = &reader.object(node, &["name", "volume", "price", "stock"])?;
    let name = reader.required(object, "name", |reader, node| reader.str(node));
    let held = reader.required(object, "volume", |reader, node| {
        reader.amount(node, Kind::Volume)
    });
    let price = reader.optional(object, "price", price);
    let stock = reader.optional(object, "stock", |reader, node| reader.whole(node, 0));
    Some(Container {
        name: name?,
        volume: held?,
        price,
        stock,
    })
}

/// A price, in whole minor units of whatever currency.
fn price(reader: &mut Reader<'_>, node: &Node<'_>) -> Option<u64> {
    let got = match node {
        Node::Number => "a number that is not whole",
        Node::Text(text) => text,
        _ => return reader.whole(node, 0),
    };
    let fault = Fault::new(ErrorKind::WrongType).got(got);
    let fault = fault.allowed(["a whole number"]);
    reader.note(fault.hint("give the price in whole minor units, such as cents"));
    None
}

fn opened<'n>(reader: &mut Reader<'_>, node: &'n Node<'_>) -> Option<Opened<'n>> {
    const FIELDS: &[&str] = &[
        "name",
        "volume",
        "same_fluid",
        "sealed",
        "clean",
        "dated",
        "within_date",
    ];
    let object = &reader.object(node, FIELDS)?;
    let name = reader.required(object, "name", |reader, node| reader.str(node));
    let held = reader.required(object, "volume", |reader, node| {
        reader.amount(node, Kind::Volume)
    });
    let mut flag = |name| reader.required(object, name, |reader, node| reader.flag(node));
    let [same_fluid, sealed, clean, dated] =
        ["same_fluid", "sealed", "clean", "dated"].map(&mut flag);
    let within_date = reader.optional(object, "within_date", Reader::flag);
    Some(Opened {
        name: name?,
        volume: held?,
        same_fluid: same_fluid?,
        sealed: sealed?,
        clean: clean?,
        dated: dated?,
        within_date,
    })
}

#[cfg(test)]
mod tests {
    #![allow(clippy::unwrap_used)]

    use crate::calculate::calculate;
    use crate::error::ErrorKind;
    use alloc::format;
    use alloc::string::{String, ToString};

    fn ask(name: &str, arguments: &str) -> String {
        calculate(&format!("volume.{name}"), arguments).unwrap()
    }

    fn refused(name: &str, arguments: &str) -> (ErrorKind, String) {
        let error = calculate(&format!("volume.{name}"), arguments).unwrap_err();
        (error.kind(), error.first().path.clone())
    }

    #[test]
    fn answers_have_their_members() {
        // ASTM D1250-80, table 54D form: 0.981437; an engineering reference page: 1.4 L more.
        let factor = ask(
            "correction_factor",
            r#"{"density":"850 kg/m³","temperature":"40 °C"}"#,
        );
        assert!(
            factor.starts_with(r#"{"value":"0.98143"#) && factor.ends_with(r#" ratio"}"#),
            "{factor}"
        );
        let warm = r#"{"volume":"100 L","from":"20 °C","to":"40 °C","coefficient":"0.0007 /K"}"#;
        assert_eq!(ask("at_temperature", warm), r#"{"value":"101.4 L"}"#);
        // A square frustum: 28 m³.
        let frustum =
            r#"{"shape":"prismoid","height":"3 m","bottom":"16 m²","middle":"9 m²","top":"4 m²"}"#;
        let full = format!(r#"{{"sump":{frustum},"level":"3 m"}}"#);
        assert_eq!(ask("volume_below", &full), r#"{"value":"28000 L"}"#);
        let rows = r#"[{"level":"0 mm","volume":"0 L"},{"level":"10 mm","volume":"1 L"}]"#;
        let half = format!(r#"{{"sump":{{"shape":"strapping","rows":{rows}}},"volume":"0.5 L"}}"#);
        assert_eq!(ask("level_for", &half), r#"{"value":"5 mm"}"#);
        // Mass balance: 0.6 · 0.6.
        let twice = r#"{"capacity":"10 L","drained":"4 L","cycles":2}"#;
        let cautions = r#""cautions":["mix_between","hot_fluid","no_dry_start","disposal"]}"#;
        let told = r#"{"old":"0.36 ratio","fresh":"0.64 ratio","used":"8 L","#;
        assert_eq!(ask("exchange", twice), told.to_string() + cautions);
        let needed = ask(
            "cycles_needed",
            r#"{"capacity":"10 L","drained":"4 L","fresh":"0.64"}"#,
        );
        assert!(
            needed.starts_with(r#"{"cycles":2,"old":"0.36 ratio""#),
            "{needed}"
        );
    }

    #[test]
    fn plans_have_their_members() {
        let plans = ask(
            "containers",
            r#"{"need":"2 L","sizes":[{"name":"bottle","volume":"1 L","price":900}],"bulk":{"available":"0.5 L"},
                "opened":[{"name":"left","volume":"0.25 L","same_fluid":true,"sealed":true,"clean":true,"dated":true,
                    "within_date":false}]}"#,
        );
        let plan = r#"{"containers":[{"name":"bottle","count":2}],"opened":[],"total":"2 L","left":"0 L","price":1800}"#;
        let opened = r#"[{"name":"left","usable":false,"reasons":["out_of_date"]}]"#;
        let told = format!(
            r#"{{"fewest":{plan},"least_waste":{plan},"opened":{opened},"cautions":["fluid_by_name"]}}"#
        );
        assert_eq!(plans, told);
        let short = ask(
            "containers",
            r#"{"need":"2 L","sizes":[{"name":"bottle","volume":"1 L","stock":1}]}"#,
        );
        assert_eq!(
            short,
            r#"{"opened":[],"short":"1 L","cautions":["no_dry_start"]}"#
        );
    }

    #[test]
    fn a_price_is_in_whole_minor_units() {
        for price in ["9.5", "\"9.50\""] {
            let sizes = format!(r#"[{{"name":"bottle","volume":"1 L","price":{price}}}]"#);
            let asked = format!(r#"{{"need":"2 L","sizes":{sizes}}}"#);
            let error = calculate("volume.containers", &asked).unwrap_err();
            assert_eq!(error.first().path, "sizes[0].price");
            assert!(error.first().hint.as_ref().unwrap().contains("cents"));
        }
    }

    #[test]
    fn refusals_name_the_argument() {
        for (name, arguments, kind, path) in [
            (
                "at_temperature",
                r#"{"volume":"7 L","from":"20 °C","to":"40 °C"}"#,
                ErrorKind::Conflict,
                "density",
            ),
            (
                "at_temperature",
                r#"{"volume":"7 L","from":"20 °C","to":"40 °C","coefficient":"0.0007 /K","base":"base_15c"}"#,
                ErrorKind::Conflict,
                "density",
            ),
            (
                "volume_below",
                r#"{"sump":{"shape":"egg"},"level":"30 mm"}"#,
                ErrorKind::UnknownValue,
                "sump.shape",
            ),
            (
                "volume_below",
                r#"{"sump":{"shape":"lying_cylinder","diameter":"0 m","length":"1 m"},"level":"30 mm"}"#,
                ErrorKind::OutOfRange,
                "sump.diameter",
            ),
            (
                "exchange",
                r#"{"capacity":"10 L","drained":"4 L","cycles":4294967296}"#,
                ErrorKind::OutOfRange,
                "cycles",
            ),
            (
                "containers",
                r#"{"need":"2 L","sizes":[],"bulk":{"available":"-1 L"}}"#,
                ErrorKind::OutOfRange,
                "bulk.available",
            ),
        ] {
            assert_eq!(
                refused(name, arguments),
                (kind, path.to_string()),
                "{name} {arguments}"
            );
        }
    }
}
