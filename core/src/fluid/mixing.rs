//! May this be poured onto that, and what may stand in for what a sheet asks for.

use super::relation::{Fluid, Relation, relation};
use crate::word::words;
use alloc::borrow::ToOwned;
use alloc::collections::{BTreeMap, VecDeque};
use alloc::string::String;
use alloc::vec;
use alloc::vec::Vec;
use serde::Serialize;

words! {
    /// Whether one fluid may be poured onto another. Only `yes` is a yes.
    pub enum MayMix {
        /// It may.
        Yes = "yes",
        /// It may follow the other after a full exchange, and not meet it.
        AfterExchange = "after_exchange",
        /// It must not.
        No = "no",
        /// Nothing that counts is said.
        Unknown = "unknown",
    }
}

words! {
    /// What a fluid on offer may do where another is asked for. What it may in detail stands beside it.
    pub enum Offered {
        /// It is what is asked for.
        Same = "same",
        /// It may stand in for what is asked for.
        MayReplace = "may_replace",
        /// It may be poured onto what is asked for, and not stand in for it.
        MayTopUp = "may_top_up",
        /// It may follow what is asked for after a full exchange.
        AfterExchange = "after_exchange",
        /// It must not meet what is asked for.
        Never = "never",
        /// Nothing that counts is said.
        Unknown = "unknown",
    }
}

words! {
    /// Why an answer on two fluids is what it is.
    pub enum Reason {
        /// Both are one specification.
        SameSpecification = "same_specification",
        /// The poured fluid's sheet says that it mixes with the other.
        SaidToMix = "said_to_mix",
        /// The fluid's sheet says that it replaces the other.
        SaidToReplace = "said_to_replace",
        /// The poured fluid's sheet says that it replaces the other, and not that the two may meet.
        ReplacesOnly = "replaces_only",
        /// The poured fluid's sheet asks for a full exchange first.
        ExchangeFirst = "exchange_first",
        /// The poured fluid's sheet says never.
        SaidNever = "said_never",
        /// The poured fluid's sheet lets it meet or follow the other, the other's says never.
        SheetsDisagree = "sheets_disagree",
        /// The other fluid's sheet names this one; a relation goes one way.
        SaidTheOtherWay = "said_the_other_way",
        /// There is a chain over further fluids; a chain counts only where its ends are related themselves.
        ChainNotDeclared = "chain_not_declared",
        /// The poured fluid is not in the list.
        FluidUnknown = "fluid_unknown",
        /// No sheet relates the two.
        NotSaid = "not_said",
    }
}

/// One relation, as the sheet of `from` states it.
#[derive(Debug, Clone, PartialEq, Eq, Serialize)]
#[non_exhaustive]
pub struct Statement {
    /// The fluid whose sheet says so.
    pub from: String,
    /// The fluid it is said of.
    pub to: String,
    /// What is said.
    pub relation: Relation,
}

impl Statement {
    fn new(from: &str, to: &str, relation: Relation) -> Self {
        Statement {
            from: from.to_owned(),
            to: to.to_owned(),
            relation,
        }
    }
}

/// Whether one fluid may be poured onto another, and by what.
#[derive(Debug, Clone, PartialEq, Eq, Serialize)]
#[non_exhaustive]
pub struct Mixing {
    /// The answer.
    pub answer: MayMix,
    /// What the poured fluid's own sheet says of the other.
    pub relation: Relation,
    /// The statements the answer rests on; where it is unknown, those that exist and do not count.
    pub path: Vec<Statement>,
    /// Why.
    pub reason: Reason,
}

/// What one fluid on offer may do where another is asked for, and by what.
#[derive(Debug, Clone, PartialEq, Eq, Serialize)]
#[non_exhaustive]
pub struct Offer {
    /// The fluid on offer.
    pub id: String,
    /// The answer.
    pub answer: Offered,
    /// Whether a unit emptied by a full exchange may be filled with it.
    pub fill: bool,
    /// Whether it may be poured onto the fluid that is asked for.
    pub top_up: bool,
    /// The statements the answer rests on; where it is unknown, those that exist and do not count.
    pub path: Vec<Statement>,
    /// Why.
    pub reason: Reason,
}

/// Whether `poured` may be poured onto `onto`, by the sheets of these fluids.
///
/// The poured fluid's own sheet decides, and its strictest statement wins. A relation goes one way and does not carry on
/// to a third fluid: a chain is shown and does not count. Where the other fluid's sheet says never, nothing the poured
/// one's sheet allows counts, not even after a full exchange. Nothing said is `unknown`, which is never a yes. Common practice, no source.
///
/// ```
/// use brimline::{Pack, fluid::{MayMix, Reason, may_mix}};
/// let fluids: Vec<_> = Pack::embedded()?.fluids().cloned().collect();
/// let mixing = may_mix(&fluids, "burdock-axle", "sedge-thin");
/// assert_eq!((mixing.answer, mixing.reason), (MayMix::No, Reason::SaidNever));
/// # Ok::<(), brimline::Error>(())
/// ```
#[must_use]
pub fn may_mix(fluids: &[Fluid], poured: &str, onto: &str) -> Mixing {
    let relation = relation(fluids, poured, onto);
    let mut path = match relation {
        Relation::Same | Relation::Unknown => Vec::new(),
        _ => vec![Statement::new(poured, onto, relation)],
    };
    let (answer, reason) = match relation {
        Relation::Same => (MayMix::Yes, Reason::SameSpecification),
        Relation::Mixes => (MayMix::Yes, Reason::SaidToMix),
        Relation::Replaces => (MayMix::AfterExchange, Reason::ReplacesOnly),
        Relation::FullExchangeOnly => (MayMix::AfterExchange, Reason::ExchangeFirst),
        Relation::Never => (MayMix::No, Reason::SaidNever),
        Relation::Unknown => {
            let (reason, not_counted) = not_counted(fluids, poured, onto);
            path = not_counted;
            (MayMix::Unknown, reason)
        }
    };
    let allows = matches!(answer, MayMix::Yes | MayMix::AfterExchange);
    let never = if allows {
        says_never(fluids, onto, poured)
    } else {
        None
    };
    let (answer, reason) = match never {
        Some(never) => {
            path.push(never);
            (MayMix::Unknown, Reason::SheetsDisagree)
        }
        None => (answer, reason),
    };
    Mixing {
        answer,
        relation,
        path,
        reason,
    }
}

/// What each of these fluids may do where `required` is asked for, in the order offered.
///
/// The rules are those of [`may_mix`]; a fluid that replaces another may fill a unit in its place, and tops it up only if
/// it mixes with it as well. Common practice, no source.
///
/// ```
/// use brimline::{Pack, fluid::{Offered, resolve}};
/// let fluids: Vec<_> = Pack::embedded()?.fluids().cloned().collect();
/// let offers = resolve(&fluids, "sedge-thin", &["sedge-thin", "sorrel-light"]);
/// assert_eq!(offers[0].answer, Offered::Same);
/// assert_eq!((offers[1].answer, offers[1].top_up), (Offered::AfterExchange, false));
/// // The sheet of one asks for a full exchange, that of the other says never.
/// let offers = resolve(&fluids, "sedge-mid", &["teasel-wet"]);
/// assert_eq!((offers[0].answer, offers[0].fill), (Offered::Unknown, false));
/// # Ok::<(), brimline::Error>(())
/// ```
#[must_use]
pub fn resolve(fluids: &[Fluid], required: &str, offered: &[&str]) -> Vec<Offer> {
    let offer = |id: &&str| {
        let mixing = may_mix(fluids, id, required);
        let top_up = mixing.answer == MayMix::Yes;
        let mut own = fluids.iter().filter(|fluid| fluid.id == **id);
        let replaces = own.any(|fluid| fluid.replaces.iter().any(|name| name == required));
        let (mut path, mut reason) = (mixing.path, mixing.reason);
        let answer = match mixing.relation {
            _ if reason == Reason::SheetsDisagree => Offered::Unknown,
            Relation::Same => Offered::Same,
            Relation::FullExchangeOnly => Offered::AfterExchange,
            Relation::Never => Offered::Never,
            Relation::Unknown => Offered::Unknown,
            Relation::Mixes | Relation::Replaces if replaces => {
                if mixing.relation == Relation::Mixes {
                    path.insert(0, Statement::new(id, required, Relation::Replaces));
                }
                reason = Reason::SaidToReplace;
                Offered::MayReplace
            }
            _ if top_up => Offered::MayTopUp,
            _ => Offered::Unknown,
        };
        Offer {
            id: (*id).to_owned(),
            answer,
            fill: matches!(
                answer,
                Offered::Same | Offered::MayReplace | Offered::AfterExchange
            ),
            top_up,
            path,
            reason,
        }
    };
    offered.iter().map(offer).collect()
}

/// That one fluid's sheet says never of another.
fn says_never(fluids: &[Fluid], from: &str, to: &str) -> Option<Statement> {
    let said = relation(fluids, from, to);
    (said == Relation::Never).then(|| Statement::new(from, to, said))
}

/// Why nothing that counts is said of two fluids, with what is said and does not count.
fn not_counted(fluids: &[Fluid], poured: &str, onto: &str) -> (Reason, Vec<Statement>) {
    let back = relation(fluids, onto, poured);
    if back != Relation::Unknown {
        let said = Statement::new(onto, poured, back);
        return (Reason::SaidTheOtherWay, vec![said]);
    }
    if !fluids.iter().any(|fluid| fluid.id == poured) {
        return (Reason::FluidUnknown, Vec::new());
    }
    match chain(fluids, poured, onto) {
        chain if chain.is_empty() => (Reason::NotSaid, chain),
        chain => (Reason::ChainNotDeclared, chain),
    }
}

/// The shortest chain of `mixes_with` and `replaces` from one fluid to another; empty where there is none.
fn chain(fluids: &[Fluid], poured: &str, onto: &str) -> Vec<Statement> {
    let sheets: BTreeMap<&str, &Fluid> = fluids
        .iter()
        .rev()
        .map(|fluid| (fluid.id.as_str(), fluid))
        .collect();
    // Each fluid reached, with the one it was reached from.
    let mut reached: BTreeMap<&str, (&str, Relation)> = BTreeMap::new();
    let mut open = VecDeque::from([poured]);
    while let Some(at) = open.pop_front() {
        if at == onto {
            break;
        }
        let Some(sheet) = sheets.get(at) else {
            continue;
        };
        for next in sheet.mixes_with.iter().chain(&sheet.replaces) {
            let said = sheet.onto(next);
            let counts = matches!(said, Relation::Mixes | Relation::Replaces);
            if counts && next != poured && !reached.contains_key(next.as_str()) {
                reached.insert(next, (at, said));
                open.push_back(next);
            }
        }
    }
    let mut path = Vec::new();
    let mut to = onto;
    while let Some((from, said)) = reached.get(to) {
        path.push(Statement::new(from, to, *said));
        to = from;
    }
    path.reverse();
    path
}

#[cfg(test)]
mod tests {
    #![allow(clippy::indexing_slicing)]

    use super::*;

    fn fluid(
        id: &str,
        mixes: &[&str],
        replaces: &[&str],
        exchange: &[&str],
        never: &[&str],
    ) -> Fluid {
        let names = |list: &[&str]| list.iter().map(|name| (*name).to_owned()).collect();
        Fluid {
            id: id.to_owned(),
            replaces: names(replaces),
            mixes_with: names(mixes),
            full_exchange_only: names(exchange),
            never: names(never),
            density_15: None,
            viscosity_40: None,
            viscosity_100: None,
        }
    }

    fn shelf() -> [Fluid; 6] {
        [
            fluid("new", &["old"], &["old"], &[], &[]),
            fluid("old", &[], &["oldest"], &[], &[]),
            fluid("oldest", &[], &[], &[], &[]),
            fluid("thin", &["new", "wet"], &[], &["oldest"], &[]),
            fluid("wet", &[], &[], &["new"], &["old", "thin"]),
            fluid("odd", &["loop"], &["odd"], &[], &[]),
        ]
    }

    fn answer(poured: &str, onto: &str) -> (MayMix, Reason) {
        let mixing = may_mix(&shelf(), poured, onto);
        (mixing.answer, mixing.reason)
    }

    // Common practice, no source: relations go one way, are not handed on, and nothing said is not a yes.
    #[test]
    fn every_reason() {
        for (poured, onto, expected, reason) in [
            ("old", "old", MayMix::Yes, Reason::SameSpecification),
            ("new", "old", MayMix::Yes, Reason::SaidToMix),
            ("old", "new", MayMix::Unknown, Reason::SaidTheOtherWay),
            ("old", "oldest", MayMix::AfterExchange, Reason::ReplacesOnly),
            (
                "thin",
                "oldest",
                MayMix::AfterExchange,
                Reason::ExchangeFirst,
            ),
            ("wet", "old", MayMix::No, Reason::SaidNever),
            ("thin", "wet", MayMix::Unknown, Reason::SheetsDisagree),
            ("new", "oldest", MayMix::Unknown, Reason::ChainNotDeclared),
            ("stray", "new", MayMix::Unknown, Reason::FluidUnknown),
            ("odd", "new", MayMix::Unknown, Reason::NotSaid),
        ] {
            assert_eq!(
                answer(poured, onto),
                (expected, reason),
                "{poured} onto {onto}"
            );
        }
        let reasons = [Reason::SaidToReplace, Reason::FluidUnknown];
        let known = resolve(&shelf(), "old", &["new", "stray"]);
        assert_eq!([known[0].reason, known[1].reason], reasons);
    }

    #[test]
    fn the_path_shows_what_is_said() {
        let shelf = shelf();
        let chain = may_mix(&shelf, "thin", "old");
        assert_eq!(
            (chain.answer, chain.relation),
            (MayMix::Unknown, Relation::Unknown)
        );
        let expected = [
            Statement::new("thin", "new", Relation::Mixes),
            Statement::new("new", "old", Relation::Mixes),
        ];
        assert_eq!(chain.path, expected);
        let back = may_mix(&shelf, "old", "new");
        assert_eq!(back.path, [Statement::new("new", "old", Relation::Mixes)]);
        let both = may_mix(&shelf, "thin", "wet");
        assert_eq!(both.path.len(), 2);
        assert!(may_mix(&shelf, "old", "old").path.is_empty());
    }

    #[test]
    fn what_may_be_filled_and_what_topped_up() {
        let offers = resolve(
            &shelf(),
            "old",
            &["old", "new", "thin", "wet", "oldest", "stray"],
        );
        let told: Vec<_> = offers
            .iter()
            .map(|offer| (offer.answer, offer.fill, offer.top_up))
            .collect();
        let expected = [
            (Offered::Same, true, true),
            (Offered::MayReplace, true, true),
            (Offered::Unknown, false, false),
            (Offered::Never, false, false),
            (Offered::Unknown, false, false),
            (Offered::Unknown, false, false),
        ];
        assert_eq!(told, expected);
        let of = |required: &str, offered: &str| resolve(&shelf(), required, &[offered]).remove(0);
        let only = of("oldest", "old");
        assert_eq!(
            (only.answer, only.fill, only.top_up),
            (Offered::MayReplace, true, false)
        );
        let exchange = of("oldest", "thin");
        assert_eq!(
            (exchange.answer, exchange.fill, exchange.top_up),
            (Offered::AfterExchange, true, false)
        );
        let mixes = of("new", "thin");
        assert_eq!(
            (mixes.answer, mixes.fill, mixes.top_up),
            (Offered::MayTopUp, false, true)
        );
        let disagree = of("wet", "thin");
        assert_eq!(
            (disagree.answer, disagree.top_up),
            (Offered::Unknown, false)
        );
    }

    // Common practice, no source: one never among two sheets is enough to ask first.
    #[test]
    fn the_other_sheets_never_counts_against_whatever_is_allowed() {
        let other = fluid(
            "other",
            &[],
            &[],
            &[],
            &["mixes", "replaces", "both", "exchange"],
        );
        let shelf = [
            other,
            fluid("mixes", &["other"], &[], &[], &[]),
            fluid("replaces", &[], &["other"], &[], &[]),
            fluid("both", &["other"], &["other"], &[], &[]),
            fluid("exchange", &[], &[], &["other"], &[]),
        ];
        for offer in resolve(&shelf, "other", &["mixes", "replaces", "both", "exchange"]) {
            let id = offer.id.as_str();
            let told = (offer.answer, offer.fill, offer.top_up, offer.reason);
            let disagree = (Offered::Unknown, false, false, Reason::SheetsDisagree);
            assert_eq!(told, disagree, "{id}");
            let said = &offer.path[offer.path.len() - 1];
            assert_eq!(said, &Statement::new("other", id, Relation::Never));
            let mixing = may_mix(&shelf, id, "other");
            let told = (mixing.answer, mixing.reason);
            assert_eq!(told, (MayMix::Unknown, Reason::SheetsDisagree), "{id}");
        }
    }
}
