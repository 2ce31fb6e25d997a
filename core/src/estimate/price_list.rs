//! The price list of a counter: what fluid, parts, work and disposal cost, and what of it is billed.

use super::fluid_prices::{ContainerPrice, FluidPrices, OpenedPolicy};
use super::goods::{DisposalPrice, PartPrice, Stream, SupplyPrice, ThreadlockerPrice};
use super::labour::{LabourPrice, WaitPolicy};
use super::read;
use super::terms::Tax;
use crate::check::Job;
use crate::document::{Ext, Limits, Node, Reader, canonical, digest};
use crate::error::{Error, ErrorKind, Fault};
use crate::money::{Currency, TaxRounding};
use crate::procedure::Threadlocker;
use crate::quantity::Rounding;
use alloc::string::String;
use alloc::sync::Arc;
use alloc::vec::Vec;
use serde::{Serialize, Serializer};

/// The price list of a counter, read and checked. Copies are cheap and share the same data.
///
/// ```
/// use brimline::PriceList;
/// let prices = PriceList::embedded()?;
/// assert_eq!(prices.currency().code(), "EUR");
/// let thin = prices.fluid("sedge-thin").unwrap();
/// assert_eq!(thin.billing.policy.slug(), "used");
/// # Ok::<(), brimline::Error>(())
/// ```
#[derive(Debug, Clone)]
pub struct PriceList(Arc<Parts>);

#[derive(Debug, Serialize)]
pub(super) struct Parts {
    pub(super) format: &'static str,
    pub(super) id: String,
    pub(super) version: String,
    pub(super) currency: Currency,
    #[serde(serialize_with = "rounding")]
    pub(super) rounding: TaxRounding,
    #[serde(skip_serializing_if = "Vec::is_empty")]
    pub(super) taxes: Vec<Tax>,
    pub(super) fluids: Vec<FluidPrices>,
    #[serde(skip_serializing_if = "Vec::is_empty")]
    pub(super) plugs: Vec<PartPrice>,
    #[serde(skip_serializing_if = "Vec::is_empty")]
    pub(super) seals: Vec<PartPrice>,
    #[serde(skip_serializing_if = "Vec::is_empty")]
    pub(super) threadlocker: Vec<ThreadlockerPrice>,
    #[serde(skip_serializing_if = "Vec::is_empty")]
    pub(super) supplies: Vec<SupplyPrice>,
    pub(super) labour: Vec<LabourPrice>,
    #[serde(skip_serializing_if = "Option::is_none")]
    pub(super) leak_search: Option<LabourPrice>,
    #[serde(skip_serializing_if = "Option::is_none")]
    pub(super) wait: Option<WaitPolicy>,
    #[serde(skip_serializing_if = "Option::is_none")]
    pub(super) opened: Option<OpenedPolicy>,
    #[serde(skip_serializing_if = "Vec::is_empty")]
    pub(super) disposal: Vec<DisposalPrice>,
    #[serde(skip_serializing_if = "Option::is_none")]
    pub(super) ext: Option<Ext>,
    #[serde(skip)]
    pub(super) digest: String,
}

fn rounding<S: Serializer>(rounding: &TaxRounding, serializer: S) -> Result<S::Ok, S::Error> {
    serializer.collect_map([
        ("mode", rounding.mode.slug()),
        ("place", rounding.place.slug()),
    ])
}

impl PriceList {
    /// The embedded demonstration list: invented prices of an invented shop, for the fluids and jobs of the embedded pack.
    ///
    /// # Errors
    /// None as shipped.
    pub fn embedded() -> Result<Self, Error> {
        Self::from_json(include_str!("../../packs/fernhollow-prices.json"))
    }

    /// Reads a price list from its JSON text, under the default [`Limits`].
    ///
    /// # Errors
    ///
    /// Every fault of the document, with path and position; among them [`Conflict`](ErrorKind::Conflict) for a price of
    /// another currency, [`OutOfRange`](ErrorKind::OutOfRange) for one below zero and a tax over 100 %,
    /// [`MissingField`](ErrorKind::MissingField) for a container without its size and a policy that has no price,
    /// [`Unresolved`](ErrorKind::Unresolved) for a tax without its rate, [`DuplicateId`](ErrorKind::DuplicateId) for what
    /// stands twice.
    ///
    /// ```
    /// use brimline::{ErrorKind, PriceList};
    /// let text = PriceList::embedded()?.to_json().replace("\"19 %\"", "\"119 %\"");
    /// let error = PriceList::from_json(&text).unwrap_err();
    /// let fault = error.faults().next().unwrap();
    /// assert_eq!((fault.kind, fault.path.as_str()), (ErrorKind::OutOfRange, "taxes[0].rate"));
    /// # Ok::<(), brimline::Error>(())
    /// ```
    pub fn from_json(text: &str) -> Result<Self, Error> {
        Self::from_json_with(text, &Limits::default())
    }

    /// Reads a price list from its JSON text.
    ///
    /// # Errors
    ///
    /// As for [`from_json`](Self::from_json).
    pub fn from_json_with(text: &str, limits: &Limits) -> Result<Self, Error> {
        let mut reader = Reader::new(text, limits)?;
        let node = reader.parse();
        let read = node.and_then(|node| Self::read(&mut reader, &node));
        reader.finish()?;
        // A document that read without a fault is there.
        read.ok_or_else(|| Fault::new(ErrorKind::Internal).into())
    }

    /// Reads a price list that stands in another document.
    pub(crate) fn read(reader: &mut Reader<'_>, node: &Node<'_>) -> Option<Self> {
        let mut parts = read::price_list(reader, node)?;
        parts.digest = digest(&canonical(&parts));
        Some(PriceList(Arc::new(parts)))
    }

    /// The canonical form.
    #[must_use]
    pub fn to_json(&self) -> String {
        canonical(&*self.0)
    }

    /// The list's own name.
    #[must_use]
    pub fn id(&self) -> &str {
        &self.0.id
    }

    /// The shop's version of it.
    #[must_use]
    pub fn version(&self) -> &str {
        &self.0.version
    }

    /// SHA-256 of the canonical form.
    #[must_use]
    pub fn digest(&self) -> &str {
        &self.0.digest
    }

    /// The currency of every price in it.
    #[must_use]
    pub fn currency(&self) -> Currency {
        self.0.currency
    }

    /// How lines and taxes are rounded, and where taxes are.
    #[must_use]
    pub fn rounding(&self) -> TaxRounding {
        self.0.rounding
    }

    /// The taxes by name, with their rates.
    #[must_use]
    pub fn taxes(&self) -> &[Tax] {
        &self.0.taxes
    }

    /// The fluids that have prices, in the order of the document.
    #[must_use]
    pub fn fluids(&self) -> &[FluidPrices] {
        &self.0.fluids
    }

    /// The prices of a fluid, by the pack's name for it.
    #[must_use]
    pub fn fluid(&self, fluid: &str) -> Option<&FluidPrices> {
        self.0.fluids.iter().find(|prices| prices.fluid == fluid)
    }

    /// A container by its id, with the fluid in it.
    #[must_use]
    pub fn container(&self, id: &str) -> Option<(&FluidPrices, &ContainerPrice)> {
        let mut all = self.0.fluids.iter().flat_map(|fluid| {
            let containers = fluid.containers.iter();
            containers.map(move |container| (fluid, container))
        });
        all.find(|(_, container)| container.id == id)
    }

    /// The labour of a job.
    #[must_use]
    pub fn labour(&self, job: Job) -> Option<&LabourPrice> {
        self.0
            .labour
            .iter()
            .find(|labour| labour.jobs.contains(&job))
    }

    /// The labour of looking for a leak.
    #[must_use]
    pub fn leak_search(&self) -> Option<&LabourPrice> {
        self.0.leak_search.as_ref()
    }

    /// Who pays for the time the bay is occupied and nobody works.
    #[must_use]
    pub fn wait(&self) -> Option<&WaitPolicy> {
        self.0.wait.as_ref()
    }

    /// Whether opened containers are used.
    #[must_use]
    pub fn opened(&self) -> Option<&OpenedPolicy> {
        self.0.opened.as_ref()
    }

    /// A plug for a thread: of that thread, or else one that fits any.
    #[must_use]
    pub fn plug(&self, thread: Option<&str>) -> Option<&PartPrice> {
        fitting(&self.0.plugs, thread)
    }

    /// A seal for a thread: of that thread, or else one that fits any.
    #[must_use]
    pub fn seal(&self, thread: Option<&str>) -> Option<&PartPrice> {
        fitting(&self.0.seals, thread)
    }

    /// Threadlocker of a strength.
    #[must_use]
    pub fn threadlocker(&self, strength: Threadlocker) -> Option<&ThreadlockerPrice> {
        let mut all = self.0.threadlocker.iter();
        all.find(|price| price.strength == strength)
    }

    /// What is billed on every job of a kind.
    pub fn supplies(&self, job: Job) -> impl Iterator<Item = &SupplyPrice> {
        let all = self.0.supplies.iter();
        all.filter(move |supply| supply.jobs.is_empty() || supply.jobs.contains(&job))
    }

    /// What it costs to dispose of what came out, by the stream it goes to.
    #[must_use]
    pub fn disposal(&self, stream: Stream) -> Option<&DisposalPrice> {
        self.0.disposal.iter().find(|price| price.stream == stream)
    }

    /// How the net of a line is rounded.
    pub(super) fn mode(&self) -> Rounding {
        self.0.rounding.mode
    }
}

fn fitting<'p>(parts: &'p [PartPrice], thread: Option<&str>) -> Option<&'p PartPrice> {
    let own = |part: &&PartPrice| part.thread.is_some() && part.thread.as_deref() == thread;
    let any = || parts.iter().find(|part| part.thread.is_none());
    parts.iter().find(own).or_else(any)
}

#[cfg(test)]
mod tests {
    #![allow(clippy::unwrap_used)]

    use super::*;
    use alloc::format;
    use alloc::string::ToString;

    fn faults(text: &str) -> Vec<(String, &'static str)> {
        let error = PriceList::from_json(text).unwrap_err();
        let told = error.faults();
        told.map(|fault| (fault.path.clone(), fault.kind.slug()))
            .collect()
    }

    fn told(pairs: &[(&str, &'static str)]) -> Vec<(String, &'static str)> {
        pairs
            .iter()
            .map(|(path, kind)| (path.to_string(), *kind))
            .collect()
    }

    #[test]
    fn the_embedded_list_has_a_price_for_each_sheet_of_the_embedded_pack() {
        let prices = PriceList::embedded().unwrap();
        let pack = crate::procedure::Pack::embedded().unwrap();
        for sheet in pack.procedures() {
            let fluid = sheet.fluid.as_deref().unwrap();
            assert!(prices.fluid(fluid).is_some(), "{fluid}");
            let closing = sheet.closing.as_ref().unwrap();
            assert!(prices.seal(closing.thread.as_deref()).is_some());
            assert!(prices.plug(closing.thread.as_deref()).is_some());
            if let Some(strength) = closing.threadlocker {
                assert!(prices.threadlocker(strength).is_some());
            }
        }
        for (_, job) in Job::WORDS {
            assert!(prices.labour(*job).is_some());
        }
        // What a list says of itself reads back to the same bytes.
        let again = PriceList::from_json(&prices.to_json()).unwrap();
        assert_eq!(again.to_json(), prices.to_json());
        assert_eq!(again.digest(), prices.digest());
        // Of its own thread, or else for any.
        let seal = |thread| prices.seal(thread).unwrap().id.as_str();
        assert_eq!(
            [seal(Some("M8x1")), seal(Some("M12x1.5")), seal(None)],
            ["seal-small", "seal-ring", "seal-ring"]
        );
    }

    #[test]
    fn every_fault_of_a_list_is_told_at_once() {
        let text = r#"{"format":"brimline-prices/1","id":"x","version":"1","currency":"EUR",
            "rounding":{"mode":"half_up","place":"line"},
            "taxes":[{"id":"a","rate":"100.1 %"},{"id":"a","rate":"7 %"}],
            "fluids":[{"fluid":"f","containers":[{"id":"b","price":"18 USD"},{"id":"b","size":"1 L","price":"-1 EUR"}],
                       "bulk":"9 EUR","billing":{"policy":"used","step":"1 L"},"taxes":["a","a","c"],"colour":"red"},
                      {"fluid":"f","containers":[],"billing":{"policy":"whole_container","step":"1 L"}},
                      {"fluid":"g","bulk":"9 EUR/US qt","billing":{"policy":"bulk","least":"0.1 L"}}],
            "seals":[{"id":"s","price":"1 EUR/L"},{"id":"t","thread":"M8x1","price":"1 EUR"},{"id":"u","thread":"M8x1","price":"1 EUR"}],
            "threadlocker":[{"id":"l","strength":"none","price":"1 EUR"}],
            "labour":[{"id":"w","jobs":["check","check"],"billed":"bay","rate":"92 EUR/L"},
                      {"id":"v","jobs":["check"],"billed":"fixed"}],
            "leak_search":{"id":"k","billed":"hands_on","rate":"92 EUR/h"},
            "wait":{"paid_by":"customer"},"opened":{"usable":true,"max_age_days":-1},
            "disposal":[{"stream":"oil","price":2},{"stream":"oil","price":"1 EUR/US qt","step":"0.1 L"}]}"#;
        // Worked by hand: one fault for each thing that is wrong above.
        let mut got = faults(text);
        let mut wanted = told(&[
            ("taxes[0].rate", "out_of_range"),
            ("taxes[1].id", "duplicate_id"),
            ("fluids[0].containers[0].size", "missing_field"),
            ("fluids[0].containers[0].price", "conflict"),
            ("fluids[0].containers[1].id", "duplicate_id"),
            ("fluids[0].containers[1].price", "out_of_range"),
            ("fluids[0].bulk", "unit_missing"),
            ("fluids[0].used", "missing_field"),
            ("fluids[0].taxes[1]", "duplicate_id"),
            ("fluids[0].taxes[2]", "unresolved"),
            ("fluids[0].colour", "unknown_field"),
            ("fluids[1].fluid", "duplicate_id"),
            ("fluids[1].containers", "missing_field"),
            ("fluids[1].billing.step", "conflict"),
            ("fluids[2].billing.least", "conflict"),
            ("seals[0].price", "wrong_kind"),
            ("seals[2].thread", "duplicate_id"),
            ("threadlocker[0].strength", "unknown_value"),
            ("labour[0].billed", "conflict"),
            ("labour[0].jobs[1]", "duplicate_id"),
            ("labour[0].rate", "wrong_kind"),
            ("labour[1].jobs[0]", "duplicate_id"),
            ("labour[1].price", "missing_field"),
            ("leak_search.hands_on", "missing_field"),
            ("wait.rate", "missing_field"),
            ("opened.max_age_days", "out_of_range"),
            ("disposal[0].price", "wrong_type"),
            ("disposal[1].step", "conflict"),
            ("disposal[1].stream", "duplicate_id"),
        ]);
        got.sort();
        wanted.sort();
        assert_eq!(got, wanted);
    }

    #[test]
    fn bay_time_that_is_billed_leaves_no_wait_to_pay_for() {
        let text = PriceList::embedded().unwrap().to_json();
        let text = text.replace(
            "\"billed\":\"fixed\"",
            "\"billed\":\"bay\",\"rate\":\"30 EUR/h\"",
        );
        assert_eq!(faults(&text), told(&[("labour[2].billed", "conflict")]));
        assert_eq!(faults(&format!("{text}x")).len(), 1);
    }
}
