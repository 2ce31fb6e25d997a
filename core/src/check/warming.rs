//! The warm-up as it runs: what was read and poured since the engine started, and when the window opens by it. It stands beside
//! the verdict and decides nothing.

use super::entry::Measured;
use super::evidence::State;
use super::gate::seconds;
use super::sheet::Sheet;
use crate::procedure::EngineState;
use crate::quantity::{Amount, Kind, Rounding, Unit};
use crate::warm_up::{Asked, Forecast, Outlook, Reason, Span, mixed_temperature};

/// A moment of the warm-up, in nanoseconds.
#[derive(Debug, Clone, Copy)]
pub(super) enum Heat {
    /// The fluid was read.
    Read(i128, Amount),
    /// So much was poured in, that warm.
    Poured(i128, Amount, Amount),
}

impl Heat {
    const fn at(&self) -> i128 {
        match self {
            Heat::Read(at, _) | Heat::Poured(at, ..) => *at,
        }
    }
}

/// The newest moments a forecast is made from.
const MOMENTS: usize = 64;

impl State {
    /// Takes a reading of the fluid in, while the engine runs.
    pub(super) fn warm(&mut self, reading: Amount, at: i128) {
        if self.engine.is_some_and(EngineState::is_running) {
            self.heat.push(Heat::Read(at, reading));
        }
    }

    /// Takes a pour in. Fluid that stood in the shop is as warm as the shop.
    pub(super) fn chill(&mut self, measured: &Measured, at: i128) {
        if let Some(shop) = self.ambient
            && measured.amount.kind() == Kind::Volume
            && !measured.amount.is_negative()
        {
            self.heat.push(Heat::Poured(at, measured.amount, shop));
        }
    }

    /// What the fluid in the unit will be at after a pour of fluid that stood in the shop, where the sheet says how much the
    /// unit holds and both temperatures were read.
    pub(super) fn mixed(&self, sheet: &Sheet<'_>, poured: Amount) -> Option<Amount> {
        let held = sheet.procedure?.capacity.as_ref()?.total?;
        let sample = self.sample?;
        let mixed = mixed_temperature(held, sample.reading, poured, self.ambient?).ok()?;
        let places = sample.reading.decimals().max(1);
        mixed
            .to(sample.reading.unit(), places, Rounding::HalfEven)
            .ok()
    }

    /// When the window opens and closes, where the engine runs, the level has not been found and there is something to wait
    /// for.
    pub(super) fn outlook(&self, sheet: &Sheet<'_>) -> Option<Outlook> {
        let window = sheet.conditions()?.temperature.as_ref()?;
        let runs = self.engine.is_some_and(EngineState::is_running);
        if !runs || self.found.is_some() {
            return None;
        }
        let asked = Asked {
            min: window.min,
            max: window.max,
            held: sheet
                .procedure
                .and_then(|sheet| sheet.capacity.as_ref()?.total),
            ..Asked::default()
        };
        let mut forecast = Forecast::new(asked).ok()?;
        let skipped = self.heat.len().saturating_sub(MOMENTS);
        let first = self.heat.iter().nth(skipped)?.at();
        for heat in self.heat.iter().skip(skipped) {
            let Some(at) = clock(heat.at().saturating_sub(first)) else {
                continue;
            };
            // What is out of order in time tells nothing of a rate.
            let _ = match heat {
                Heat::Read(_, reading) => forecast.sample(at, *reading),
                Heat::Poured(_, volume, temperature) => forecast.poured(at, *volume, *temperature),
            };
        }
        let outlook = forecast.answer();
        let waits = |span: Option<Span>| span.as_ref().is_some_and(Span::is_ahead);
        let says_why = outlook
            .reason
            .is_some_and(|reason| !matches!(reason, Reason::TooFew));
        (waits(outlook.opens) || waits(outlook.closes) || says_why).then_some(outlook)
    }

    /// How long the window is likely to stay shut from a moment on.
    pub(super) fn opens_in(&self, sheet: &Sheet<'_>, at: i128) -> Option<Amount> {
        let opens = self.outlook(sheet)?.opens?;
        let told = self.heat.last()?.at();
        let wait = opens.likely.unwrap_or(opens.earliest).count()?;
        let left = told.saturating_add(wait).saturating_sub(at);
        if left > 0 { seconds(left) } else { None }
    }
}

/// A time on the clock of the forecast, to the millisecond.
fn clock(nanoseconds: i128) -> Option<Amount> {
    let milliseconds = i64::try_from(nanoseconds.checked_div(1_000_000)?).ok()?;
    Amount::new(milliseconds, 3, Unit::Second).ok()
}
