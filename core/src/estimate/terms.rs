//! What every price of a list is held to: its currency, its unit, and taxes that have rates.

use crate::document::{Node, Object, Reader};
use crate::error::{ErrorKind, Fault};
use crate::money::{Currency, Place, Price, TaxRounding, check_rate, mixed};
use crate::quantity::{Amount, Kind, Rounding};
use alloc::string::{String, ToString};
use alloc::vec::Vec;
use serde::Serialize;

/// A tax, by a name of the shop's.
#[derive(Debug, Clone, PartialEq, Serialize)]
#[non_exhaustive]
pub struct Tax {
    /// Its name, which lines bear.
    pub id: String,
    /// Its rate (ratio, 0 to 100 %).
    pub rate: Amount,
}

/// The members of an object of a price list.
pub(super) type Fields = &'static [&'static str];

/// What prices are held to: the currency of the list, and the taxes that have rates.
pub(super) struct Terms<'n> {
    pub(super) currency: Option<Currency>,
    pub(super) taxes: Vec<&'n str>,
}

pub(super) fn rounding(reader: &mut Reader<'_>, node: &Node<'_>) -> Option<TaxRounding> {
    let object = reader.object(node, &["mode", "place"])?;
    let mode = reader.required(&object, "mode", |reader, node| {
        reader.word(node, Rounding::WORDS)
    });
    let place = reader.required(&object, "place", |reader, node| {
        reader.word(node, Place::WORDS)
    });
    Some(TaxRounding {
        mode: mode?,
        place: place?,
    })
}

pub(super) fn tax(reader: &mut Reader<'_>, node: &Node<'_>) -> Option<Tax> {
    let object = reader.object(node, &["id", "rate"])?;
    let id = reader.required(&object, "id", Reader::text);
    let rate = reader.required(&object, "rate", |reader, node| {
        let rate = reader.amount(node, Kind::Ratio)?;
        let checked = check_rate(&rate).map_err(|fault| reader.note(fault));
        checked.ok().map(|()| rate)
    });
    Some(Tax {
        id: id?,
        rate: rate?,
    })
}

/// A list that may be absent.
pub(super) fn many<'n, 'a, T>(
    reader: &mut Reader<'_>,
    object: &Object<'n, 'a>,
    name: &'static str,
    read: impl FnMut(&mut Reader<'_>, &'n Node<'a>) -> Option<T>,
) -> Vec<T> {
    let mut read = read;
    let items = reader.optional(object, name, |reader, node| {
        reader.list(node, |reader, node| read(reader, node))
    });
    items.unwrap_or_default()
}

pub(super) fn taxes(
    reader: &mut Reader<'_>,
    object: &Object<'_, '_>,
    terms: &Terms<'_>,
) -> Vec<String> {
    let mut seen: Vec<String> = Vec::new();
    many(reader, object, "taxes", |reader, node| {
        let id = reader.text(node)?;
        if !terms.taxes.contains(&id.as_str()) {
            let known = terms.taxes.iter().map(ToString::to_string);
            let fault = Fault::new(ErrorKind::Unresolved).got(&id).allowed(known);
            reader.note(fault.hint("give the tax its rate under taxes"));
            return None;
        }
        if seen.contains(&id) {
            reader.note(Fault::new(ErrorKind::DuplicateId).got(&id));
            return None;
        }
        seen.push(id.clone());
        Some(id)
    })
}

/// Notes a step that cannot be billed in the unit of its price.
pub(super) fn step_fits(reader: &mut Reader<'_>, step: Option<Amount>, price: Option<Price>) {
    if let (Some(step), Some(unit)) = (step, price.and_then(Price::per))
        && step.to_exact(unit).is_none()
    {
        let fault = Fault::new(ErrorKind::Conflict).got(&step.to_string());
        reader.note_at("step", fault.hint("state it in the unit of the price"));
    }
}

/// A price in the currency of the list: of one, or of a unit of a kind.
pub(super) fn price(
    reader: &mut Reader<'_>,
    node: &Node<'_>,
    terms: &Terms<'_>,
    per: Option<Kind>,
) -> Option<Price> {
    let price = reader.price(node)?;
    let currency = terms.currency.unwrap_or(price.currency());
    let fault = match (price.per().map(|unit| unit.kind()), per) {
        _ if price.currency() != currency => Some(mixed(currency, price.currency())),
        (given, wanted) if given == wanted => None,
        (None, Some(kind)) => {
            let example = match kind {
                Kind::Time => "say of which time, as in 96.00 EUR/h",
                _ => "say of which volume, as in 18.40 EUR/L",
            };
            Some(Fault::new(ErrorKind::UnitMissing).hint(example))
        }
        (_, None) => {
            let hint = "this is the price of one: leave the unit out, as in 18.40 EUR";
            Some(Fault::new(ErrorKind::WrongKind).hint(hint))
        }
        (Some(_), Some(kind)) => Some(Fault::new(ErrorKind::WrongKind).allowed([kind.slug()])),
    };
    let Some(fault) = fault else {
        return Some(price);
    };
    reader.note(fault.got(&price.to_string()));
    None
}
