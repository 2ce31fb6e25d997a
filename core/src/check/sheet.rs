//! The sheet as the evidence needs it: its values as exact counts.

use super::entry::Measured;
use super::header::{Header, Job};
use super::measured::{Booking, HalfWidths};
use crate::fluid::Relation;
use crate::procedure::{Conditions, EngineState, LeakLimit, Pack, Procedure, RangesCondition};
use crate::quantity::{Amount, Unit};

/// What an evaluation goes by: the header, and the sheet if one applies.
#[derive(Debug, Clone, Copy)]
pub(super) struct Sheet<'a> {
    pub(super) pack: &'a Pack,
    pub(super) job: Job,
    pub(super) procedure: Option<&'a Procedure>,
    pub(super) booking: Booking<'a>,
    pub(super) standing: &'a [alloc::string::String],
    /// How long a flow must be watched, in nanoseconds.
    pub(super) watch: i128,
    /// How long a pour must settle, in nanoseconds.
    pub(super) settle: i128,
    /// What runs out of the opening itself, in counts of volume.
    pub(super) hold_up: i128,
    /// How far above the correct level a drip can mean, in counts of volume.
    pub(super) lip_band: i128,
    /// How old a temperature may be, in nanoseconds.
    pub(super) max_age: i128,
}

/// 30 s.
const MAX_AGE: i128 = 30_000_000_000;

impl<'a> Sheet<'a> {
    /// The sheet at a place of the pack, or none.
    pub(super) fn of(pack: &'a Pack, header: &'a Header, place: Option<usize>) -> Self {
        let procedure = place.and_then(|place| pack.procedures().nth(place));
        let profile = header.profile.as_ref();
        let widths: Option<&HalfWidths> = profile.and_then(|profile| profile.half_width.as_ref());
        let method = procedure.map(|sheet| &sheet.method);
        let count = |amount: Option<Amount>| amount.and_then(|amount| amount.count()).unwrap_or(0);
        let temperature =
            procedure.and_then(|sheet| sheet.conditions.as_ref()?.temperature.as_ref());
        Sheet {
            pack,
            job: header.job,
            procedure,
            booking: Booking::on(procedure, widths),
            standing: profile.map_or(&[], |profile| profile.standing.as_slice()),
            watch: count(method.and_then(|method| method.watch)),
            settle: count(method.and_then(|method| method.settle)),
            hold_up: count(method.and_then(|method| method.hold_up)),
            lip_band: count(method.and_then(|method| method.lip_band)),
            max_age: temperature
                .and_then(|window| window.max_age?.count())
                .unwrap_or(MAX_AGE),
        }
    }

    pub(super) fn conditions(&self) -> Option<&'a Conditions> {
        self.procedure?.conditions.as_ref()
    }

    pub(super) fn engine_wanted(&self) -> Option<EngineState> {
        self.conditions()?.engine
    }

    pub(super) fn wants_running(&self) -> bool {
        self.engine_wanted().is_some_and(EngineState::is_running)
    }

    pub(super) fn ranges(&self) -> Option<&'a RangesCondition> {
        self.conditions()?.ranges.as_ref()
    }

    pub(super) fn leak_limit(&self) -> Option<&'a LeakLimit> {
        self.procedure?.leak_limit.as_ref()
    }

    pub(super) fn step(&self) -> Option<Amount> {
        self.procedure?.refill.as_ref()?.step
    }

    /// The density of the fluid named, or else of the fluid the sheet takes.
    pub(super) fn density(&self, fluid: Option<&str>) -> Option<Amount> {
        let own = || self.procedure.and_then(|sheet| sheet.fluid.as_deref());
        let name = fluid.or_else(own)?;
        self.pack.fluid(name)?.density_15
    }

    /// Whether a volume that came out can be booked.
    pub(super) fn books_drained(&self, measured: &Measured) -> bool {
        let density = self.density(None);
        self.booking.book(measured, true, density).is_ok()
    }

    /// Whether the fluid the sheet names, if it names one, is known to the pack.
    pub(super) fn fluid_is_resolved(&self) -> bool {
        let name = self.procedure.and_then(|sheet| sheet.fluid.as_deref());
        name.is_none_or(|name| self.pack.fluid(name).is_some())
    }

    /// What pouring this fluid onto the sheet's means.
    pub(super) fn relation(&self, poured: &str) -> Relation {
        let Some(own) = self.procedure.and_then(|sheet| sheet.fluid.as_deref()) else {
            return Relation::Unknown;
        };
        self.pack.relation(poured, own)
    }

    /// The unit the answer is told in.
    pub(super) fn unit(&self) -> Unit {
        let sheet = self.procedure;
        let limit = self.leak_limit().and_then(LeakLimit::limit);
        let refill = || sheet?.capacity.as_ref()?.refill;
        limit
            .or_else(|| self.step())
            .or_else(refill)
            .map_or(Unit::Litre, |amount| amount.unit())
    }

    /// Whether a thing is confirmed in this shop on every job.
    pub(super) fn stands(&self, what: &str) -> bool {
        self.standing.iter().any(|own| own == what)
    }
}
