//! Volumes: what an entry's amount books, as a nominal volume and the interval it stands for, in mL.

use crate::ledger::Interval;
use crate::record::Entry;
use crate::sheet::{Pack, Sheet};
use crate::words::{Exact, Kind, Toward, quantity, ratio, whole_microlitres};
use num_traits::{One, Signed};
use serde_json::Value;

/// A booked volume.
#[derive(Clone, Debug, PartialEq)]
pub struct Booked {
    pub nominal: Exact,
    pub within: Interval,
}

/// How amounts are read in one journal: by its pack, its sheet and its profile.
pub struct Measures<'a> {
    pub pack: &'a Pack,
    pub sheet: Option<&'a Sheet>,
    pub half_width: &'a Value,
}

impl Measures<'_> {
    /// The volume of an `added` entry, or nothing if it cannot be booked.
    pub fn added(&self, entry: &Entry) -> Option<Booked> {
        let amount = entry
            .says("volume")
            .or(entry.says("mass"))
            .expect("an amount");
        self.booked(
            amount,
            entry.says("measured_by"),
            entry.says("fluid"),
            "eye",
        )
    }

    /// The volume of a `drained` entry, or nothing if it cannot be booked.
    pub fn drained(&self, entry: &Entry) -> Option<Booked> {
        let amount = entry
            .says("volume")
            .or(entry.says("mass"))
            .expect("an amount");
        self.booked(amount, entry.says("measured_by"), None, "eye_drained")
    }

    /// The volume a `flow` entry says was captured, or nothing if none was or it cannot be booked.
    pub fn captured(&self, flow: &Entry) -> Option<Booked> {
        self.booked(
            flow.says("captured")?,
            flow.says("captured_by"),
            None,
            "eye_drained",
        )
    }

    fn booked(
        &self,
        amount: &str,
        measured_by: Option<&str>,
        fluid: Option<&str>,
        eye: &str,
    ) -> Option<Booked> {
        let density = self.density(fluid);
        let read = quantity(amount);
        let volume = match read.kind {
            Kind::Mass => read.value / density.as_ref()?,
            _ => read.value,
        };
        let (nominal, lo, hi) = match read.kind {
            Kind::Mass => (
                whole_microlitres(&volume, Toward::Nearest),
                whole_microlitres(&volume, Toward::Lower),
                whole_microlitres(&volume, Toward::Upper),
            ),
            _ => (volume.clone(), volume.clone(), volume.clone()),
        };
        if nominal.is_negative() || nominal > self.largest() {
            return None;
        }
        let within = match (measured_by, density) {
            (None, _) | (Some("scale"), None) => Interval::between(lo, hi),
            (Some("scale"), Some(density)) => {
                let mass = volume * &density;
                let (grams, fraction) = (self.width("scale"), self.width("scale_density"));
                let least = (&mass - &grams) / ((Exact::one() + &fraction) * &density);
                let most = (&mass + &grams) / ((Exact::one() - &fraction) * &density);
                Interval::between(
                    whole_microlitres(&least, Toward::Lower),
                    whole_microlitres(&most, Toward::Upper),
                )
            }
            (Some(means), _) => {
                let key = if means == "eye" { eye } else { means };
                let half_width = match self.width_kind(key) {
                    Kind::Percent => self.width(key) * &nominal,
                    _ => self.width(key),
                };
                Interval::between(lo - &half_width, hi + &half_width)
            }
        };
        Some(Booked { nominal, within })
    }

    /// The density of the fluid the entry names, else of the sheet's fluid, in g/mL.
    fn density(&self, named: Option<&str>) -> Option<Exact> {
        let fluid = named.or(self.sheet.and_then(|sheet| sheet.fluid.as_deref()))?;
        self.pack.fluids.get(fluid)?.density.clone()
    }

    /// No single amount of a real job is larger.
    fn largest(&self) -> Exact {
        let capacity = self.sheet.and_then(|sheet| sheet.capacity.clone());
        capacity.unwrap_or(ratio(1_000_000, 1)) * ratio(3, 2)
    }

    fn width_text<'t>(&'t self, key: &str) -> &'t str {
        self.half_width[key].as_str().unwrap_or(match key {
            "sealed" => "1 %",
            "meter" => "2 %",
            "jug" => "20 mL",
            "scale" => "5 g",
            "scale_density" => "2.5 %",
            "eye" => "60 mL",
            "eye_drained" => "100 mL",
            other => panic!("no such means of measuring: {other}"),
        })
    }

    fn width(&self, key: &str) -> Exact {
        quantity(self.width_text(key)).value
    }

    fn width_kind(&self, key: &str) -> Kind {
        quantity(self.width_text(key)).kind
    }
}

#[cfg(test)]
mod tests {
    use super::*;
    use serde_json::json;

    fn with_measures<T>(half_width: Value, ask: impl Fn(&Measures) -> T) -> T {
        let pack = Pack::read(
            &json!({"id": "p", "fluids": [{"id": "light", "density_15": "800 kg/m³"}],
            "procedures": [{"id": "s", "edition": 1, "fluid": "light", "method": {"kind": "overflow_plug"},
                "capacity": {"total": "4 L"}}]}),
        );
        let sheet = pack.sheets.first();
        ask(&Measures {
            pack: &pack,
            sheet,
            half_width: &half_width,
        })
    }

    fn millilitres(numerator: i64, lo: i64, hi: i64, denominator: i64) -> Option<Booked> {
        let end = |end| ratio(end, denominator);
        Some(Booked {
            nominal: end(numerator),
            within: Interval::between(end(lo), end(hi)),
        })
    }

    #[test]
    fn half_widths_by_the_means_of_measuring() {
        with_measures(json!({}), |measures| {
            let of = |by| measures.booked("0.5 L", by, None, "eye");
            assert_eq!(of(None), millilitres(500, 500, 500, 1));
            assert_eq!(of(Some("sealed")), millilitres(500, 495, 505, 1));
            assert_eq!(of(Some("meter")), millilitres(500, 490, 510, 1));
            assert_eq!(of(Some("jug")), millilitres(500, 480, 520, 1));
            assert_eq!(of(Some("eye")), millilitres(500, 440, 560, 1));
            let drained = measures.booked("50 mL", Some("eye"), None, "eye_drained");
            assert_eq!(drained, millilitres(50, -50, 150, 1));
        });
    }

    #[test]
    fn a_mass_on_a_scale_is_divided_by_the_density_and_widened() {
        // 410 g of 0.8 g/mL: nominal 512.5 mL; (410 - 5)/(1.025 x 0.8) = 493.9024..., (410 + 5)/(0.975 x 0.8) =
        // 532.0512...; outward to the microlitre.
        with_measures(json!({}), |measures| {
            let weighed = measures.booked("410 g", Some("scale"), None, "eye");
            assert_eq!(weighed, millilitres(512_500, 493_902, 532_052, 1_000));
            // The same fluid read as a volume: 512.5 mL x 0.8 g/mL = 410 g.
            assert_eq!(
                measures.booked("512.5 mL", Some("scale"), None, "eye"),
                weighed
            );
            // No measured_by: 1 g / 0.8 = 1.25 mL exactly; 1/3 lb would not end, 0.1 lb = 56.69904625 mL.
            assert_eq!(
                measures.booked("1 g", None, None, "eye"),
                millilitres(125, 125, 125, 100)
            );
            let rounded = measures.booked("0.1 lb", None, None, "eye");
            assert_eq!(rounded, millilitres(56_699, 56_699, 56_700, 1_000));
        });
    }

    #[test]
    fn a_profile_may_state_its_own_half_widths() {
        let own = json!({"jug": "1.5 %", "sealed": "10 mL", "eye_drained": "0.2 L", "scale": "0 g",
            "scale_density": "0 %"});
        with_measures(own, |measures| {
            let of = |by, eye| measures.booked("1 L", Some(by), None, eye);
            assert_eq!(of("jug", "eye"), millilitres(1_000, 985, 1_015, 1));
            assert_eq!(of("sealed", "eye"), millilitres(1_000, 990, 1_010, 1));
            assert_eq!(of("eye", "eye_drained"), millilitres(1_000, 800, 1_200, 1));
            assert_eq!(of("scale", "eye"), millilitres(1_000, 1_000, 1_000, 1));
        });
    }

    #[test]
    fn negative_and_impossible_volumes_and_masses_of_unknown_density_are_not_booked() {
        with_measures(json!({}), |measures| {
            assert_eq!(measures.booked("-0.1 L", Some("jug"), None, "eye"), None);
            assert_eq!(
                measures.booked("6 L", None, None, "eye"),
                millilitres(6_000, 6_000, 6_000, 1)
            );
            assert_eq!(measures.booked("6.001 L", None, None, "eye"), None);
            assert_eq!(
                measures.booked("400 g", Some("scale"), Some("unheard-of"), "eye"),
                None
            );
        });
    }
}
