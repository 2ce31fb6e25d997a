//! An evaluation sentence by sentence.

use brimline::Evaluation;
use brimline::document::canonical;
use brimline::procedure::Act;
use brimline::report::Teller;
use serde::Serialize;
use std::collections::BTreeMap;

#[derive(Serialize)]
struct Sentences<'a> {
    verdict: String,
    findings: Vec<String>,
    because: Vec<String>,
    next: Vec<String>,
    gates: Gates,
    cautions: BTreeMap<&'a str, &'a str>,
}

#[derive(Serialize)]
struct Gates {
    open: Vec<String>,
    pour: Vec<String>,
    close: Vec<String>,
    stop_engine: Vec<String>,
}

/// The sentences of an evaluation as JSON: lists in the order of the result document, every caution by its id.
pub(crate) fn sentences(teller: &Teller, evaluation: &Evaluation) -> String {
    let unmet = |act| {
        let unmet = &evaluation.gate(act).unmet;
        unmet.iter().map(|unmet| teller.unmet(unmet)).collect()
    };
    let of_sheet = evaluation
        .sheet()
        .map_or(&[][..], |sheet| &sheet.cautions)
        .iter()
        .map(|own| (own.id.as_str(), own.text.as_str()));
    let of_acts = evaluation.next().iter().flat_map(|act| act.cautions.iter());
    let named = evaluation.cautions().iter().map(|id| id.as_ref());
    let of_library = of_acts
        .map(|id| &**id)
        .chain(named)
        .filter_map(|id: &str| Some((id, teller.caution(id)?)));
    let (findings, reasons) = (evaluation.findings().iter(), evaluation.because().iter());
    let acts = evaluation.next().iter();
    canonical(&Sentences {
        verdict: teller.verdict(evaluation.verdict()),
        findings: findings.map(|finding| teller.finding(finding)).collect(),
        because: reasons.map(|reason| teller.reason(reason)).collect(),
        next: acts.map(|act| teller.next_act(act)).collect(),
        gates: Gates {
            open: unmet(Act::Open),
            pour: unmet(Act::Pour),
            close: unmet(Act::Close),
            stop_engine: unmet(Act::StopEngine),
        },
        cautions: of_sheet.chain(of_library).collect(),
    })
}
