//! The calculators of `money`, by name.

use super::arguments::{Arguments, told, value};
use super::{Answer, Function};
use crate::document::{Node, Reader};
use crate::money::{Money, Place, TaxRate, TaxRounding, Taxable, totals};
use crate::quantity::{Kind, Rounding};
use alloc::vec::Vec;

pub(super) const FUNCTIONS: &[Function] = &[
    Function {
        name: "money.cost",
        takes: &["price", "quantity", "rounding"],
        ask: cost,
    },
    Function {
        name: "money.totals",
        takes: &["currency", "lines", "rates", "rounding", "place"],
        ask: all_totals,
    },
];

fn cost(given: &mut Arguments<'_, '_, '_>) -> Option<Answer> {
    let price = given.read("price", Reader::price);
    let quantity = given.read("quantity", Reader::any_amount);
    let rounding = given.word("rounding", Rounding::WORDS);
    value(price?.of(&quantity?, rounding?))
}

fn all_totals(given: &mut Arguments<'_, '_, '_>) -> Option<Answer> {
    let currency = given.read("currency", Reader::currency);
    let lines = given.list("lines", line);
    let rates = given.list("rates", rate);
    let mode = given.word("rounding", Rounding::WORDS);
    let place = given.word("place", Place::WORDS);
    let lines = lines?;
    let lines: Vec<Taxable<'_>> = lines
        .iter()
        .map(|(net, taxes)| Taxable { net: *net, taxes })
        .collect();
    let rounding = TaxRounding {
        mode: mode?,
        place: place?,
    };
    told(totals(currency?, &lines, &rates?, rounding))
}

fn line<'n>(reader: &mut Reader<'_>, node: &'n Node<'_>) -> Option<(Money, Vec<&'n str>)> {
    let object = &reader.object(node, &["net", "taxes"])?;
    let net = reader.required(object, "net", Reader::money);
    let taxes = reader.optional(object, "taxes", |reader, node| {
        reader.list(node, |reader, node| reader.str(node))
    });
    Some((net?, taxes.unwrap_or_default()))
}

fn rate<'n>(reader: &mut Reader<'_>, node: &'n Node<'_>) -> Option<TaxRate<'n>> {
    let object = &reader.object(node, &["id", "rate"])?;
    let id = reader.required(object, "id", |reader, node| reader.str(node));
    let rate = reader.required(object, "rate", |reader, node| {
        reader.amount(node, Kind::Ratio)
    });
    Some(TaxRate {
        id: id?,
        rate: rate?,
    })
}
