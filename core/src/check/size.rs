//! What a defect amounts to in fluid. It is told beside the verdict and decides nothing.

use super::evidence::State;
use super::look::Observation;
use super::sheet::Sheet;
use crate::procedure::{Defect, Warming};
use crate::quantity::{Amount, Rounding, Unit};
use crate::volume::{Base, Expansion, temperature_error, tilt_error};

impl State {
    /// How much fluid a defect hides or feigns, where the sheet says what that takes: of a temperature outside the window what
    /// the unit holds and how dense the fluid is, of a tilt the free surface and how far the opening is from its middle.
    pub(super) fn size_of(
        &self,
        sheet: &Sheet<'_>,
        look: &Observation,
        defect: Defect,
        limit: Option<Amount>,
    ) -> Option<Amount> {
        let procedure = sheet.procedure?;
        let size = match defect {
            // Where fluid is held back above as it warms, swelling is the lesser part.
            Defect::BelowWindow | Defect::AboveWindow
                if procedure.method.warming == Some(Warming::Expands) =>
            {
                let held = procedure.capacity.as_ref()?.total?;
                let density = sheet.density(None)?;
                let base = Base::At15C;
                let oil = Expansion::Oil { density, base };
                let (low, high) = match defect {
                    Defect::BelowWindow => (look.sample?.reading, limit?),
                    _ => (limit?, look.sample?.reading),
                };
                temperature_error(held, high, low, oil).ok()?
            }
            Defect::TiltToward | Defect::TiltAway => {
                let method = &procedure.method;
                tilt_error(method.surface?, method.offset?, look.tilt?)
                    .ok()?
                    .volume
            }
            _ => return None,
        };
        about(size, sheet.unit())
    }
}

/// A volume to the hundredth of its unit; nothing where that is none.
fn about(volume: Amount, unit: Unit) -> Option<Amount> {
    let told = volume.to(unit, 2, Rounding::HalfEven).ok()?;
    (!told.is_zero()).then_some(told)
}
