//! The calculators of `fluid`, by name.

use super::arguments::{Arguments, told, value};
use super::{Answer, Function};
use crate::document::{Node, Reader};
use crate::fluid::{self, BlendRule, Component, Walther};
use crate::quantity::{Amount, Kind};

pub(super) const FUNCTIONS: &[Function] = &[
    Function {
        name: "fluid.viscosity_at",
        takes: &[
            "viscosity_1",
            "temperature_1",
            "viscosity_2",
            "temperature_2",
            "temperature",
        ],
        ask: viscosity_at,
    },
    Function {
        name: "fluid.temperature_for",
        takes: &[
            "viscosity_1",
            "temperature_1",
            "viscosity_2",
            "temperature_2",
            "viscosity",
        ],
        ask: temperature_for,
    },
    Function {
        name: "fluid.viscosity_index",
        takes: &["viscosity_40", "viscosity_100"],
        ask: viscosity_index,
    },
    Function {
        name: "fluid.blend",
        takes: &["parts", "rule"],
        ask: blend,
    },
    Function {
        name: "fluid.grade",
        takes: &["viscosity_40"],
        ask: grade,
    },
    Function {
        name: "fluid.grade_limits",
        takes: &["grade"],
        ask: grade_limits,
    },
];

/// An oil by two measured viscosities, and one quantity more.
fn oil(
    given: &mut Arguments<'_, '_, '_>,
    more: &'static str,
    kind: Kind,
) -> Option<(Result<Walther, crate::error::Error>, Amount)> {
    let viscosity_1 = given.amount("viscosity_1", Kind::KinematicViscosity);
    let temperature_1 = given.amount("temperature_1", Kind::Temperature);
    let viscosity_2 = given.amount("viscosity_2", Kind::KinematicViscosity);
    let temperature_2 = given.amount("temperature_2", Kind::Temperature);
    let more = given.amount(more, kind);
    let oil = Walther::new(viscosity_1?, temperature_1?, viscosity_2?, temperature_2?);
    Some((oil, more?))
}

fn viscosity_at(given: &mut Arguments<'_, '_, '_>) -> Option<Answer> {
    let (oil, temperature) = oil(given, "temperature", Kind::Temperature)?;
    value(oil.and_then(|oil| oil.viscosity_at(temperature)))
}

fn temperature_for(given: &mut Arguments<'_, '_, '_>) -> Option<Answer> {
    let (oil, viscosity) = oil(given, "viscosity", Kind::KinematicViscosity)?;
    value(oil.and_then(|oil| oil.temperature_for(viscosity)))
}

fn viscosity_index(given: &mut Arguments<'_, '_, '_>) -> Option<Answer> {
    let viscosity_40 = given.amount("viscosity_40", Kind::KinematicViscosity);
    let viscosity_100 = given.amount("viscosity_100", Kind::KinematicViscosity);
    told(fluid::viscosity_index(viscosity_40?, viscosity_100?))
}

fn blend(given: &mut Arguments<'_, '_, '_>) -> Option<Answer> {
    let parts = given.list("parts", component);
    let rule = given.word("rule", BlendRule::WORDS);
    value(fluid::blend(&parts?, rule?))
}

fn component<'t>(reader: &mut Reader<'t>, node: &Node<'t>) -> Option<Component> {
    let object = reader.object(node, &["viscosity", "share"])?;
    let mut read =
        |name, kind| reader.required(&object, name, |reader, node| reader.amount(node, kind));
    let (viscosity, share) = (
        read("viscosity", Kind::KinematicViscosity),
        read("share", Kind::Ratio),
    );
    Some(Component {
        viscosity: viscosity?,
        share: share?,
    })
}

fn grade(given: &mut Arguments<'_, '_, '_>) -> Option<Answer> {
    told(fluid::grade(
        given.amount("viscosity_40", Kind::KinematicViscosity)?,
    ))
}

fn grade_limits(given: &mut Arguments<'_, '_, '_>) -> Option<Answer> {
    let grade = given.read("grade", |reader, node| reader.whole(node, 0))?;
    // A number past the type is past the series as well.
    value(fluid::grade_limits(
        u32::try_from(grade).unwrap_or(u32::MAX),
    ))
}
