//! Pages and pictures of a job.

use crate::document::{Document, PackGiven};
use crate::error::answer;
use crate::teller::Teller;
use crate::word::Word;
use brimline::report::{Medium, Particulars, Picture};
use brimline::{Error, LevelCheck, Limits, Pack};
use pyo3::prelude::*;

/// What a page is made of.
struct Given {
    pack: PackGiven,
    journal: Document,
    particulars: Option<Document>,
    teller: brimline::report::Teller,
}

impl Given {
    fn new(
        pack: PackGiven,
        journal: Document,
        particulars: Option<Document>,
        teller: Option<PyRef<'_, Teller>>,
    ) -> Self {
        Given {
            pack,
            journal,
            particulars,
            teller: teller.map_or_else(brimline::report::Teller::english, |own| own.core().clone()),
        }
    }

    /// Reads all of it, and tells with it.
    fn tell<R: Send>(
        self,
        py: Python<'_>,
        tell: impl Send
        + FnOnce(&brimline::report::Teller, &Pack, &str, &Particulars<'_>) -> Result<R, Error>,
    ) -> PyResult<R> {
        let read = || {
            let pack = self.pack.read(&Limits::default())?;
            let journal = self.journal.journal()?;
            let particulars = match &self.particulars {
                Some(given) => given.text("particulars")?,
                None => "{}",
            };
            Particulars::read(particulars, |particulars| {
                tell(&self.teller, &pack, &journal, particulars)
            })?
        };
        py.detach(|| answer(read))
    }
}

/// The work sheet of a job, on one printed page: what was found and done, what it means and what comes next, the leak reading,
/// the lines of money, what is not proven, three pictures, every caution in full.
///
/// The pack and the journal are those of `evaluate`. `particulars` is a mapping or JSON with `shop` (a list of lines), `tool` (as for
/// `torque.tool_suits`), `adapter` and `angle` of it, `record` (the digest of the sealed record), `prices` (a price list) and `estimate`
/// (the document of an estimate), each of which may be left out. `medium` is `html`, one document that needs nothing from
/// elsewhere, `markdown` or `text`. A `Teller` tells in its language and units.
///
/// Raises `DocumentError` with every fault of the pack, or else of the journal, or else of the particulars, each with its path;
/// `LimitError`; what the tool and the prices are refused for.
///
/// >>> from brimline import Pack, work_sheet
/// >>> journal = {"format": "brimline-journal/1", "procedure": "pipit-level", "job": "check", "entries": []}
/// >>> page = work_sheet(Pack.embedded(), journal, {"shop": ["Fernhollow Gear & Drive"]})
/// >>> page.startswith("<!DOCTYPE html>"), "<script" in page
/// (True, False)
#[pyfunction]
#[pyo3(signature = (pack, journal, particulars=None, *, medium=Word(Medium::Html), teller=None))]
pub(crate) fn work_sheet(
    py: Python<'_>,
    pack: PackGiven,
    journal: Document,
    particulars: Option<Document>,
    medium: Word<Medium>,
    teller: Option<PyRef<'_, Teller>>,
) -> PyResult<String> {
    let medium = medium.0;
    let given = Given::new(pack, journal, particulars, teller);
    given.tell(py, move |teller, pack, journal, particulars| {
        teller.work_sheet(pack, journal, particulars, medium)
    })
}

/// The bay card of a job that is to begin: the window as the scan tool shows it, what must be met before the plug comes out, the acts
/// in their order, what the pours add up to, how many containers that is, what the wrench is set to, every caution in full.
///
/// The arguments are those of `work_sheet`; of the journal only the header counts, and of the particulars `shop`, `tool`, `adapter`,
/// `angle`, `scan_unit` (`°C`, `°F` or `K`) and `container` (the size of one).
///
/// Raises what `work_sheet` raises.
///
/// >>> from brimline import Pack, bay_card
/// >>> journal = {"format": "brimline-journal/1", "procedure": "pipit-level", "job": "check", "entries": []}
/// >>> "107.6 °F" in bay_card(Pack.embedded(), journal, {"scan_unit": "°F"}, medium="text")
/// True
#[pyfunction]
#[pyo3(signature = (pack, journal, particulars=None, *, medium=Word(Medium::Html), teller=None))]
pub(crate) fn bay_card(
    py: Python<'_>,
    pack: PackGiven,
    journal: Document,
    particulars: Option<Document>,
    medium: Word<Medium>,
    teller: Option<PyRef<'_, Teller>>,
) -> PyResult<String> {
    let medium = medium.0;
    let given = Given::new(pack, journal, particulars, teller);
    given.tell(py, move |teller, pack, journal, particulars| {
        teller.bay_card(pack, journal, particulars, medium)
    })
}

/// A picture of a check as SVG that stands alone, light or dark as the reader's screen is; `None` where there is nothing to draw.
///
/// `which` is `warm_up`, `narrowing` or `closing`. The other arguments are those of `work_sheet`; of the particulars the tool counts.
///
/// Raises what `work_sheet` raises.
///
/// >>> from brimline import Pack, picture
/// >>> journal = {"format": "brimline-journal/1", "procedure": "pipit-level", "job": "check", "entries": [
/// ...     {"seq": 1, "at": "2026-03-02T09:00:00Z", "kind": "temperature", "reading": "31 °C", "source": "scan"}]}
/// >>> picture(Pack.embedded(), journal, "warm_up").startswith("<svg ")
/// True
/// >>> picture(Pack.embedded(), journal, "narrowing") is None
/// True
#[pyfunction]
#[pyo3(signature = (pack, journal, which, particulars=None, *, teller=None))]
pub(crate) fn picture(
    py: Python<'_>,
    pack: PackGiven,
    journal: Document,
    which: Word<Picture>,
    particulars: Option<Document>,
    teller: Option<PyRef<'_, Teller>>,
) -> PyResult<Option<String>> {
    let which = which.0;
    let given = Given::new(pack, journal, particulars, teller);
    given.tell(py, move |teller, pack, journal, particulars| {
        let check = LevelCheck::replay(pack, journal)?;
        teller.picture(&check, which, particulars.rig.as_ref())
    })
}
