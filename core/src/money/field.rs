//! What a field of a document reads as: a sum of money, a price, a currency.

use super::currency::Currency;
use super::price::Price;
use super::sum::Money;
use crate::document::{Node, Reader};
use crate::error::{Error, ErrorKind, Fault};

impl Reader<'_> {
    /// A sum of money.
    pub(crate) fn money(&mut self, node: &Node<'_>) -> Option<Money> {
        self.parsed(node, Money::parse)
    }

    /// A price.
    pub(crate) fn price(&mut self, node: &Node<'_>) -> Option<Price> {
        self.parsed(node, Price::parse)
    }

    /// A currency by its code.
    pub(crate) fn currency(&mut self, node: &Node<'_>) -> Option<Currency> {
        self.parsed(node, Currency::parse)
    }

    /// What a text says, its faults noted where it stands.
    fn parsed<T>(
        &mut self,
        node: &Node<'_>,
        parse: impl Fn(&str) -> Result<T, Error>,
    ) -> Option<T> {
        if matches!(node, Node::Integer(_) | Node::Number) {
            let fault = Fault::new(ErrorKind::WrongType).got("a number");
            let hint = "write money as text with its currency, as in \"12.50 EUR\"";
            self.note(fault.allowed(["a text"]).hint(hint));
            return None;
        }
        let read = parse(self.str(node)?);
        let noted = read.map_err(|error| {
            for fault in error.into_faults() {
                self.note(fault);
            }
        });
        noted.ok()
    }
}
