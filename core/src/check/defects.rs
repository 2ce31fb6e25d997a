//! What is wrong with the circumstances of a look: a temperature that is not fresh, conditions that are unmet.

use super::entry::Toward;
use super::evidence::State;
use super::look::{Outcome, Sample};
use super::sheet::Sheet;
use crate::procedure::{Defect, EngineState};
use crate::quantity::Amount;
use alloc::vec::Vec;
use core::cmp::Ordering;

impl State {
    /// The newest temperature that proves something, if it is fresh at a moment.
    pub(super) fn freshness(&self, sheet: &Sheet<'_>, at: i128) -> Result<Option<Sample>, Outcome> {
        if sheet
            .conditions()
            .is_none_or(|conditions| conditions.temperature.is_none())
        {
            return Ok(None);
        }
        match self.sample {
            None => Err(Outcome::NoTemperature),
            Some(sample) if at.saturating_sub(sample.at) > sheet.max_age => Err(Outcome::Stale),
            Some(sample) => Ok(Some(sample)),
        }
    }

    /// Every condition of the sheet that is unmet, or was never stated, for a look that began and ended then.
    pub(super) fn defects(
        &self,
        sheet: &Sheet<'_>,
        sample: Option<Sample>,
        began: i128,
    ) -> Vec<Defect> {
        let mut defects = Vec::new();
        let Some(conditions) = sheet.conditions() else {
            self.settle_defects(sheet, began, &mut defects);
            return defects;
        };
        if let (Some(window), Some(sample)) = (&conditions.temperature, sample) {
            let order =
                |limit: Option<Amount>| limit.and_then(|limit| sample.reading.compare(&limit).ok());
            if order(window.min) == Some(Ordering::Less) {
                defects.push(Defect::BelowWindow);
            }
            if order(window.max) == Some(Ordering::Greater) {
                defects.push(Defect::AboveWindow);
            }
        }
        match conditions.engine {
            Some(EngineState::Off) if self.engine != Some(EngineState::Off) => {
                defects.push(Defect::EngineRunning)
            }
            Some(wanted)
                if wanted.is_running() && !self.engine.is_some_and(EngineState::is_running) =>
            {
                defects.push(Defect::EngineOff);
            }
            _ => {}
        }
        if conditions.selector.is_some() && self.selector != conditions.selector {
            defects.push(Defect::Selector);
        }
        if conditions.ranges.is_some() && self.ranges.is_none() {
            defects.push(Defect::Ranges);
        }
        if conditions.cooler.is_some() && self.cooler_open {
            defects.push(Defect::Cooler);
        }
        if let Some(limit) = &conditions.tilt {
            match self.tilt {
                None => defects.push(Defect::TiltUnknown),
                Some((tilt, toward)) if tilt.compare(&limit.max) == Ok(Ordering::Greater) => {
                    defects.push(match toward {
                        Toward::Plug => Defect::TiltToward,
                        Toward::Away => Defect::TiltAway,
                        Toward::Unknown => Defect::TiltUnknown,
                    })
                }
                Some(_) => {}
            }
        }
        self.settle_defects(sheet, began, &mut defects);
        defects
    }

    fn settle_defects(&self, sheet: &Sheet<'_>, began: i128, defects: &mut Vec<Defect>) {
        let unsettled = |since: i128| began.saturating_sub(since) < sheet.settle;
        if self.last_pour.is_some_and(|(_, poured)| unsettled(poured)) {
            defects.push(Defect::PourSettle);
        }
        let wants_off = sheet.engine_wanted() == Some(EngineState::Off);
        let stops_count = sheet
            .procedure
            .is_some_and(|sheet| sheet.method.kind.waits_after_stop());
        if wants_off
            && stops_count
            && self.engine == Some(EngineState::Off)
            && self.engine_stopped_at.is_some_and(unsettled)
        {
            defects.push(Defect::StopSettle);
        }
    }
}
