//! The calculators of `leak`, by name.

use super::arguments::{Arguments, count, told, value};
use super::{Answer, Function};
use crate::document::{Node, Reader};
use crate::error::{ErrorKind, Fault};
use crate::leak::{self, Rule, SeepageClass, Visit};
use crate::quantity::{Amount, Interval, Kind};

pub(super) const FUNCTIONS: &[Function] = &[
    Function {
        name: "leak.against_limit",
        takes: &["estimate", "uncertainty", "limit", "rule", "probability"],
        ask: against_limit,
    },
    Function {
        name: "leak.conformance",
        takes: &["value", "uncertainty", "lower", "upper"],
        ask: conformance,
    },
    Function {
        name: "leak.guard_band",
        takes: &["uncertainty", "probability"],
        ask: guard_band,
    },
    Function {
        name: "leak.quantile",
        takes: &["probability"],
        ask: quantile,
    },
    Function {
        name: "leak.combined_uncertainty",
        takes: &["parts"],
        ask: combined_uncertainty,
    },
    Function {
        name: "leak.expanded_uncertainty",
        takes: &["uncertainty", "factor"],
        ask: expanded_uncertainty,
    },
    Function {
        name: "leak.risks",
        takes: &["mean", "spread", "uncertainty", "tolerance", "acceptance"],
        ask: risks,
    },
    Function {
        name: "leak.consumption",
        takes: &["visits", "shortage"],
        ask: consumption,
    },
    Function {
        name: "leak.seepage",
        takes: &["class"],
        ask: seepage,
    },
    Function {
        name: "leak.drip_rate",
        takes: &["drops", "in_time", "drop"],
        ask: drip_rate,
    },
    Function {
        name: "leak.drops_for",
        takes: &["volume", "over", "drop"],
        ask: drops_for,
    },
];

fn against_limit(given: &mut Arguments<'_, '_, '_>) -> Option<Answer> {
    let estimate = given.read("estimate", Reader::any_amount);
    let uncertainty = given.read("uncertainty", of(estimate.map(kind_of_difference)));
    let limit = given.read("limit", of(estimate.map(|estimate| estimate.kind())));
    // Which doubt may stay in a decision is nobody's to choose but the caller's.
    let rule = given.word("rule", Rule::WORDS);
    let probability = given.amount_if("probability", Kind::Ratio);
    told(leak::against_limit(
        estimate?,
        uncertainty?,
        limit?,
        rule?,
        probability,
    ))
}

fn conformance(given: &mut Arguments<'_, '_, '_>) -> Option<Answer> {
    let at = given.read("value", Reader::any_amount);
    let uncertainty = given.read("uncertainty", of(at.map(kind_of_difference)));
    let kind = at.map(|at| at.kind());
    let lower = given.read_if("lower", of(kind));
    let upper = given.read_if("upper", of(kind));
    value(leak::conformance(at?, uncertainty?, lower, upper))
}

fn guard_band(given: &mut Arguments<'_, '_, '_>) -> Option<Answer> {
    let uncertainty = given.read("uncertainty", Reader::any_amount);
    let probability = given.amount("probability", Kind::Ratio);
    value(leak::guard_band(uncertainty?, probability?))
}

fn quantile(given: &mut Arguments<'_, '_, '_>) -> Option<Answer> {
    value(leak::quantile(given.amount("probability", Kind::Ratio)?))
}

fn combined_uncertainty(given: &mut Arguments<'_, '_, '_>) -> Option<Answer> {
    value(leak::combined_uncertainty(
        &given.list("parts", Reader::any_amount)?,
    ))
}

fn expanded_uncertainty(given: &mut Arguments<'_, '_, '_>) -> Option<Answer> {
    let uncertainty = given.read("uncertainty", Reader::any_amount);
    let factor = given.amount_if("factor", Kind::Ratio);
    value(leak::expanded_uncertainty(uncertainty?, factor))
}

fn risks(given: &mut Arguments<'_, '_, '_>) -> Option<Answer> {
    let mean = given.read("mean", Reader::any_amount);
    let difference = mean.map(kind_of_difference);
    let spread = given.read("spread", of(difference));
    let uncertainty = given.read("uncertainty", of(difference));
    let kind = mean.map(|mean| mean.kind());
    let tolerance = given.read("tolerance", range(kind));
    let acceptance = given.read("acceptance", range(kind));
    told(leak::risks(
        mean?,
        spread?,
        uncertainty?,
        tolerance?,
        acceptance?,
    ))
}

fn consumption(given: &mut Arguments<'_, '_, '_>) -> Option<Answer> {
    let visits = given.list("visits", visit);
    let shortage = given.amount_if("shortage", Kind::Volume);
    told(leak::consumption(&visits?, shortage))
}

fn visit(reader: &mut Reader<'_>, node: &Node<'_>) -> Option<Visit> {
    const FIELDS: &[&str] = &[
        "odometer",
        "date",
        "net",
        "uncertainty",
        "odometer_uncertainty",
    ];
    let object = &reader.object(node, FIELDS)?;
    let odometer = reader.optional(object, "odometer", of(Some(Kind::Length)));
    let date = reader.optional(object, "date", |reader, node| reader.date(node));
    let net = reader.required(object, "net", of(Some(Kind::Volume)));
    let uncertainty = reader.optional(object, "uncertainty", of(Some(Kind::Volume)));
    let odometer_uncertainty =
        reader.optional(object, "odometer_uncertainty", of(Some(Kind::Length)));
    Some(Visit {
        odometer,
        date,
        net: net?,
        uncertainty,
        odometer_uncertainty,
    })
}

fn seepage(given: &mut Arguments<'_, '_, '_>) -> Option<Answer> {
    let class = given.word("class", SeepageClass::WORDS)?;
    told(Ok(leak::seepage(class)))
}

fn drip_rate(given: &mut Arguments<'_, '_, '_>) -> Option<Answer> {
    let drops = given.read("drops", |reader, node| count(reader, node, 1));
    let in_time = given.amount("in_time", Kind::Time);
    let drop = given.amount("drop", Kind::Volume);
    told(leak::drip_rate(drops?, in_time?, drop?))
}

fn drops_for(given: &mut Arguments<'_, '_, '_>) -> Option<Answer> {
    let volume = given.amount("volume", Kind::Volume);
    let over = given.amount("over", Kind::Time);
    let drop = given.amount("drop", Kind::Volume);
    value(leak::drops_for(volume?, over?, drop?))
}

/// A quantity of a kind, or of any where the one that says which could not be read.
fn of(kind: Option<Kind>) -> impl Fn(&mut Reader<'_>, &Node<'_>) -> Option<Amount> {
    move |reader, node| match kind {
        Some(kind) => reader.amount(node, kind),
        None => reader.any_amount(node),
    }
}

/// The kind of a difference of two such quantities.
fn kind_of_difference(amount: Amount) -> Kind {
    amount.resolution().kind()
}

/// The two ends of a range, `null` where it has none.
fn range(kind: Option<Kind>) -> impl Fn(&mut Reader<'_>, &Node<'_>) -> Option<Interval> {
    move |reader, node| {
        let end = |reader: &mut Reader<'_>, node: &Node<'_>| match node {
            Node::Null => Some(None),
            _ => of(kind)(reader, node).map(Some),
        };
        let [lo, hi] = reader.list(node, end)?[..] else {
            // An end that could not be read is named already.
            if node.items().len() != 2 {
                let fault = Fault::new(ErrorKind::WrongType).allowed(["two ends, the lower first"]);
                reader.note(fault.hint("write null for an end that is not there"));
            }
            return None;
        };
        match Interval::new(lo, hi) {
            Ok(range) => Some(range),
            Err(error) => {
                reader.note(error.first().clone());
                None
            }
        }
    }
}
