//! The four relations between fluid specifications: each one-way, none assumed to carry on to a third.

use crate::quantity::Amount;
use crate::word::words;
use alloc::string::String;
use alloc::vec::Vec;
use serde::Serialize;

/// A fluid specification and what its own sheet says of others.
#[derive(Debug, Clone, Serialize)]
#[non_exhaustive]
pub struct Fluid {
    /// The name others refer to it by.
    pub id: String,
    /// Specifications it may stand in for.
    #[serde(skip_serializing_if = "Vec::is_empty")]
    pub replaces: Vec<String>,
    /// Specifications it may be poured onto.
    #[serde(skip_serializing_if = "Vec::is_empty")]
    pub mixes_with: Vec<String>,
    /// Specifications it may follow only after a full exchange.
    #[serde(skip_serializing_if = "Vec::is_empty")]
    pub full_exchange_only: Vec<String>,
    /// Specifications it must not meet.
    #[serde(skip_serializing_if = "Vec::is_empty")]
    pub never: Vec<String>,
    /// Density at 15 °C.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub density_15: Option<Amount>,
    /// Kinematic viscosity at 40 °C.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub viscosity_40: Option<Amount>,
    /// Kinematic viscosity at 100 °C.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub viscosity_100: Option<Amount>,
}

words! {
    /// What a fluid's own lists say of pouring it onto another.
    pub enum Relation {
        /// It is the same specification.
        Same = "same",
        /// It may be poured onto the other.
        Mixes = "mixes_with",
        /// It may stand in for the other; whether it may meet it is not said.
        Replaces = "replaces",
        /// It may follow the other only after a full exchange.
        FullExchangeOnly = "full_exchange_only",
        /// It must not meet the other.
        Never = "never",
        /// Nothing is said, which is never a yes.
        Unknown = "unknown",
    }
}

impl Fluid {
    /// What this fluid's own lists say of pouring it onto `other`. The strictest statement wins.
    #[must_use]
    pub fn onto(&self, other: &str) -> Relation {
        let lists = [
            (&self.never, Relation::Never),
            (&self.full_exchange_only, Relation::FullExchangeOnly),
            (&self.mixes_with, Relation::Mixes),
            (&self.replaces, Relation::Replaces),
        ];
        if self.id == other {
            return Relation::Same;
        }
        lists
            .into_iter()
            .find(|(list, _)| list.iter().any(|named| named == other))
            .map_or(Relation::Unknown, |(_, relation)| relation)
    }
}

/// What pouring one fluid onto another means, by the poured fluid's own lists.
pub(crate) fn relation(fluids: &[Fluid], poured: &str, onto: &str) -> Relation {
    if poured == onto {
        return Relation::Same;
    }
    let own = fluids.iter().find(|fluid| fluid.id == poured);
    own.map_or(Relation::Unknown, |own| own.onto(onto))
}

#[cfg(test)]
mod tests {
    use super::*;
    use alloc::borrow::ToOwned;

    fn fluid(id: &str, replaces: &[&str]) -> Fluid {
        Fluid {
            id: id.to_owned(),
            replaces: replaces.iter().map(|name| (*name).to_owned()).collect(),
            mixes_with: Vec::new(),
            full_exchange_only: Vec::new(),
            never: Vec::new(),
            density_15: None,
            viscosity_40: None,
            viscosity_100: None,
        }
    }

    // Common practice, no source: a substitution is one-way and says nothing of a third fluid.
    #[test]
    fn relations_are_one_way_and_do_not_chain() {
        let (light, heavy) = (fluid("light", &["heavy"]), fluid("heavy", &["old"]));
        assert_eq!(light.onto("heavy"), Relation::Replaces);
        assert_eq!(heavy.onto("light"), Relation::Unknown);
        assert_eq!(light.onto("old"), Relation::Unknown);
    }
}
