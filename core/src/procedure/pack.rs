//! A pack: the sheets and fluids that one publisher puts out together.

use super::agreement::agreement;
use super::edition::Procedure;
use super::read;
use crate::document::{Ext, Limits, Reader, canonical, digest};
use crate::error::{Error, ErrorKind, Fault};
use crate::fluid::{self, Fluid, Mixing, Offer, Relation};
use crate::quantity::Measures;
use alloc::string::String;
use alloc::sync::Arc;
use alloc::vec::Vec;
use serde::Serialize;

/// The sheets and fluids of one publisher, read and checked. Copies are cheap and share the same data.
///
/// ```
/// let pack = brimline::Pack::embedded()?;
/// assert!(pack.procedures().count() >= 3);
/// # Ok::<(), brimline::Error>(())
/// ```
#[derive(Debug, Clone)]
pub struct Pack(Arc<Parts>);

#[derive(Debug, Serialize)]
struct Parts {
    format: &'static str,
    id: String,
    version: String,
    title: String,
    #[serde(skip_serializing_if = "Option::is_none")]
    measures: Option<Measures>,
    fluids: Vec<Fluid>,
    procedures: Vec<Procedure>,
    #[serde(skip_serializing_if = "Option::is_none")]
    ext: Option<Ext>,
    #[serde(skip)]
    digest: String,
}

impl Pack {
    /// The embedded demonstration pack: invented units, fluids and numbers of an invented shop.
    ///
    /// # Errors
    /// None as shipped.
    pub fn embedded() -> Result<Self, Error> {
        Self::from_json(include_str!("../../packs/fernhollow.json"))
    }

    /// Reads a pack from its JSON text, under the default [`Limits`].
    ///
    /// # Errors
    /// Every fault of the document, with path and position.
    pub fn from_json(text: &str) -> Result<Self, Error> {
        Self::from_json_with(text, &Limits::default())
    }

    /// Reads a pack from its JSON text.
    ///
    /// # Errors
    /// Every fault of the document, with path and position.
    pub fn from_json_with(text: &str, limits: &Limits) -> Result<Self, Error> {
        let mut reader = Reader::new(text, limits)?;
        let document = reader.parse().and_then(|node| {
            agreement(&mut reader, &node);
            read::pack(&mut reader, &node)
        });
        reader.finish()?;
        // A document that read without a fault is there.
        let Some(document) = document else {
            return Err(Fault::new(ErrorKind::Internal).into());
        };
        let mut parts = Parts {
            format: read::FORMAT,
            id: document.id,
            version: document.version,
            title: document.title,
            measures: document.measures,
            fluids: document.fluids,
            procedures: document.procedures,
            ext: document.ext,
            digest: String::new(),
        };
        for sheet in &mut parts.procedures {
            sheet.digest = digest(&canonical(sheet));
        }
        parts.digest = digest(&canonical(&parts));
        Ok(Pack(Arc::new(parts)))
    }

    /// The pack's own name.
    #[must_use]
    pub fn id(&self) -> &str {
        &self.0.id
    }

    /// The publisher's version of it.
    #[must_use]
    pub fn version(&self) -> &str {
        &self.0.version
    }

    /// What it is called.
    #[must_use]
    pub fn title(&self) -> &str {
        &self.0.title
    }

    /// What bare `qt`, `pt`, `gal` and `fl oz` mean in it and in journals on it.
    #[must_use]
    pub fn measures(&self) -> Option<Measures> {
        self.0.measures
    }

    /// SHA-256 of the canonical form.
    #[must_use]
    pub fn digest(&self) -> &str {
        &self.0.digest
    }

    /// The canonical form.
    #[must_use]
    pub fn to_json(&self) -> String {
        canonical(&*self.0)
    }

    /// The fluids, in the order of the document.
    pub fn fluids(&self) -> impl ExactSizeIterator<Item = &Fluid> {
        self.0.fluids.iter()
    }

    /// A fluid by name.
    #[must_use]
    pub fn fluid(&self, id: &str) -> Option<&Fluid> {
        self.fluids().find(|fluid| fluid.id == id)
    }

    /// What pouring one fluid onto another means, by what the poured fluid's own sheet says.
    pub(crate) fn relation(&self, poured: &str, onto: &str) -> Relation {
        fluid::relation(&self.0.fluids, poured, onto)
    }

    /// Whether one of its fluids may be poured onto another: see [`may_mix`](fluid::may_mix).
    ///
    /// ```
    /// use brimline::fluid::MayMix;
    /// let pack = brimline::Pack::embedded()?;
    /// assert_eq!(pack.may_mix("sedge-thin", "sedge-mid").answer, MayMix::Yes);
    /// // It goes one way.
    /// assert_eq!(pack.may_mix("sedge-mid", "sedge-thin").answer, MayMix::Unknown);
    /// # Ok::<(), brimline::Error>(())
    /// ```
    #[must_use]
    pub fn may_mix(&self, poured: &str, onto: &str) -> Mixing {
        fluid::may_mix(&self.0.fluids, poured, onto)
    }

    /// What each fluid on offer may do where one of its fluids is asked for: see [`resolve`](fluid::resolve).
    ///
    /// ```
    /// use brimline::fluid::Offered;
    /// let pack = brimline::Pack::embedded()?;
    /// let offers = pack.resolve("sedge-mid", &["sedge-thin", "burdock-axle"]);
    /// assert_eq!(offers[0].answer, Offered::MayReplace);
    /// assert_eq!(offers[1].answer, Offered::Never);
    /// # Ok::<(), brimline::Error>(())
    /// ```
    #[must_use]
    pub fn resolve(&self, required: &str, offered: &[&str]) -> Vec<Offer> {
        fluid::resolve(&self.0.fluids, required, offered)
    }

    /// Every edition of every procedure, in the order of the document.
    pub fn procedures(&self) -> impl ExactSizeIterator<Item = &Procedure> {
        self.0.procedures.iter()
    }

    /// One edition of one procedure.
    #[must_use]
    pub fn procedure(&self, id: &str, edition: u32) -> Option<&Procedure> {
        self.procedures()
            .find(|sheet| sheet.id == id && sheet.edition == edition)
    }
}
