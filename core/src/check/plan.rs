//! A check before it begins: the acts of the whole job in their order, and what the pours add up to.

use super::advice::act;
use super::evidence::State;
use super::finding::NextAct;
use super::level_check::LevelCheck;
use crate::procedure::LeakLimit;
use crate::quantity::{Amount, Rounding};
use alloc::vec::Vec;

/// One pour of a check in which nothing comes out.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub(crate) struct PourMark {
    /// What is poured.
    pub(crate) pour: Amount,
    /// What was poured by then.
    pub(crate) total: Amount,
    /// Whether that is past the leak limit.
    pub(crate) is_past: bool,
    /// Whether the opening is to be doubted from here on.
    pub(crate) is_doubted: bool,
}

/// More pours than this are not told.
const MOST: usize = 24;

impl LevelCheck {
    /// The acts that every check of this sheet has, from the plug out to the last look for drips.
    pub(crate) fn whole_job(&self) -> Vec<NextAct> {
        let sheet = self.sheet_now();
        let closing = sheet.procedure.and_then(|sheet| sheet.closing.as_ref());
        let mut pour = act("pour");
        if let Some(step) = sheet.step() {
            pour = pour.with("volume", step);
        }
        if let Some(fluid) = sheet.procedure.and_then(|sheet| sheet.fluid.as_deref()) {
            pour = pour.with("fluid", fluid);
        }
        let mut tighten = act("tighten");
        if let Some(torque) = closing.and_then(|closing| closing.torque) {
            tighten = tighten.with("torque", torque);
        }
        if let Some(tolerance) = closing.and_then(|closing| closing.tolerance) {
            tighten = tighten.with("tolerance", tolerance);
        }
        let stops_first = closing.is_some_and(|closing| closing.close_before_stop == Some(false));
        let mut acts = Vec::from([act("open_plug"), pour, act("look_again")]);
        if sheet.wants_running() && stops_first {
            acts.extend([act("stop_engine"), act("close_plug"), tighten]);
        } else if sheet.wants_running() {
            acts.extend([act("close_plug"), tighten, act("stop_engine")]);
        } else {
            acts.extend([act("close_plug"), tighten]);
        }
        acts.push(act("look_for_drips"));
        acts
    }

    /// The pours as they are advised while nothing comes out, up to the first that is past the leak limit, or where the sheet
    /// has none, to the volume at which the opening is doubted.
    pub(crate) fn pour_marks(&self) -> Vec<PourMark> {
        let sheet = self.sheet_now();
        let limit = sheet.leak_limit().filter(|_| sheet.job.counts_for_leak());
        let is_past = |total: &Amount| {
            limit.is_some_and(|leak: &LeakLimit| {
                let place = leak.limit().map(|limit| total.compare(&limit));
                matches!(place, Some(Ok(place)) if leak.passed_at(place))
            })
        };
        let mut state = State::new();
        let mut marks: Vec<PourMark> = Vec::new();
        while marks.len() < MOST {
            let Some(pour) = state.next_pour(&sheet).filter(|pour| !pour.is_zero()) else {
                break;
            };
            let Some(poured) = pour.count() else {
                break;
            };
            state.poured_dry = state.poured_dry.saturating_add(poured);
            let Ok(total) = Amount::from_count(state.poured_dry, pour.unit(), 6, Rounding::HalfUp)
            else {
                break;
            };
            let mark = PourMark {
                pour,
                total,
                is_past: is_past(&total),
                is_doubted: state.opening_is_doubted(&sheet),
            };
            marks.push(mark);
            if mark.is_past || (limit.is_none() && mark.is_doubted) {
                break;
            }
        }
        marks
    }
}

#[cfg(test)]
mod tests {
    #![allow(clippy::unwrap_used)]

    use crate::check::LevelCheck;
    use crate::procedure::Pack;
    use alloc::format;
    use alloc::string::String;
    use alloc::vec::Vec;

    fn marks(sheet: &str, job: &str) -> Vec<String> {
        let header = format!(
            r#"{{"format":"brimline-journal/1","procedure":"{sheet}","edition":1,"job":"{job}"}}"#
        );
        let check = LevelCheck::start(&Pack::embedded().unwrap(), &header).unwrap();
        let marks = check.pour_marks();
        marks
            .iter()
            .map(|mark| {
                let past = if mark.is_past { " past" } else { "" };
                let doubted = if mark.is_doubted { " doubted" } else { "" };
                format!("{} {}{past}{doubted}", mark.pour, mark.total)
            })
            .collect()
    }

    /// Steps of 0.25 L to a limit of more than 1.1 L, least pour 0.1 L: the fifth pour ends at the limit, the next is past
    /// it. The opening is doubted from a quarter of 3.1 L, 0.775 L, on. Worked by hand from the sheet.
    #[test]
    fn the_pour_before_the_limit_ends_at_it() {
        let told = marks("pipit-level", "check");
        let wanted = [
            "0.25 L 0.25 L",
            "0.25 L 0.5 L",
            "0.25 L 0.75 L",
            "0.25 L 1 L doubted",
            "0.1 L 1.1 L doubted",
            "0.25 L 1.35 L past doubted",
        ];
        assert_eq!(told, wanted);
    }

    /// A new fill is not counted against the limit, and fills by measure: pours are the sheet's steps.
    #[test]
    fn a_new_fill_has_no_limit() {
        let told = marks("pipit-level", "new_fill");
        assert!(told.iter().all(|mark| !mark.contains("past")));
    }
}
