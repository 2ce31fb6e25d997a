//! Types and classes of hand torque tools, and how far off each may be.

use super::above_zero;
use crate::error::Error;
use crate::quantity::{Amount, Kind, Unit};
use crate::word::words;

words! {
    /// The types and classes of hand torque tools, ISO 6789.
    pub enum ToolType {
        /// Type I class A: a wrench with a bending or twisting beam.
        IndicatingBeam = "indicating_beam",
        /// Type I class B: a wrench with a rigid housing and a scale, dial or display.
        IndicatingDial = "indicating_dial",
        /// Type I class C: a wrench with a rigid housing that measures electronically.
        IndicatingElectronic = "indicating_electronic",
        /// Type I class D: a screwdriver with a scale, dial or display.
        IndicatingScrewdriver = "indicating_screwdriver",
        /// Type I class E: a screwdriver that measures electronically.
        IndicatingElectronicScrewdriver = "indicating_electronic_screwdriver",
        /// Type II class A: a wrench that is set on a scale or display.
        SettingAdjustable = "setting_adjustable",
        /// Type II class B: a wrench with one setting.
        SettingFixed = "setting_fixed",
        /// Type II class C: a wrench that is set on a tester, without a scale.
        SettingUnscaled = "setting_unscaled",
        /// Type II class D: a screwdriver that is set on a scale or display.
        SettingScrewdriver = "setting_screwdriver",
        /// Type II class E: a screwdriver with one setting.
        SettingFixedScrewdriver = "setting_fixed_screwdriver",
        /// Type II class F: a screwdriver that is set on a tester, without a scale.
        SettingUnscaledScrewdriver = "setting_unscaled_screwdriver",
        /// Type II class G: a wrench with a bending beam that is set on a scale.
        SettingBeam = "setting_beam",
    }
}

/// Permissible deviation in per cent: of a tool whose maximum is up to 10 N·m, and of a larger one. ISO 6789; seen in
/// print for type II class A only, the others from memory. A tool's own certificate counts before this table.
const DEVIATIONS: &[(ToolType, i64, i64)] = &[
    (ToolType::IndicatingBeam, 6, 4),
    (ToolType::IndicatingDial, 4, 4),
    (ToolType::IndicatingElectronic, 4, 4),
    (ToolType::IndicatingScrewdriver, 6, 4),
    (ToolType::IndicatingElectronicScrewdriver, 4, 4),
    (ToolType::SettingAdjustable, 6, 4),
    (ToolType::SettingFixed, 6, 4),
    (ToolType::SettingUnscaled, 6, 4),
    (ToolType::SettingScrewdriver, 6, 4),
    (ToolType::SettingFixedScrewdriver, 6, 4),
    (ToolType::SettingUnscaledScrewdriver, 6, 4),
    (ToolType::SettingBeam, 6, 4),
];

/// The largest maximum, in newton metres, of the tools in the first column.
const SMALL_N_M: f64 = 10.0;

impl ToolType {
    /// The permissible deviation in per cent, by the maximum of the tool and not by what it is set to.
    ///
    /// # Errors
    ///
    /// [`WrongKind`](crate::ErrorKind::WrongKind), [`OutOfRange`](crate::ErrorKind::OutOfRange) for a maximum that is not above zero.
    ///
    /// ```
    /// use brimline::{Amount, torque::ToolType};
    /// let permissible = ToolType::SettingAdjustable.permissible(Amount::parse("50 N·m")?)?;
    /// assert_eq!(permissible.to_string(), "4 %");
    /// # Ok::<(), brimline::Error>(())
    /// ```
    pub fn permissible(self, max: Amount) -> Result<Amount, Error> {
        let small = above_zero("max", max, Kind::Torque)? <= SMALL_N_M;
        let row = DEVIATIONS.iter().find(|(own, ..)| *own == self);
        let per_cent = row.map_or(
            0,
            |(_, of_small, of_large)| if small { *of_small } else { *of_large },
        );
        Amount::new(per_cent, 0, Unit::Percent)
    }

    pub(super) const fn is_fixed(self) -> bool {
        matches!(
            self,
            ToolType::SettingFixed | ToolType::SettingFixedScrewdriver
        )
    }
}

#[cfg(test)]
mod tests {
    #![allow(clippy::unwrap_used)]

    use super::*;
    use alloc::string::ToString;

    fn amount(text: &str) -> Amount {
        Amount::parse(text).unwrap()
    }

    /// A tool manual that reviews ISO 6789 (2003): type II class A, 4 % above 10 N·m, 6 % up to it, by the maximum.
    #[test]
    fn the_maximum_of_the_tool_decides_its_deviation() {
        let adjustable = ToolType::SettingAdjustable;
        for (max, printed) in [
            ("50 N·m", "4 %"),
            ("10.1 N·m", "4 %"),
            ("10 N·m", "6 %"),
            ("88 lbf·in", "6 %"),
        ] {
            assert_eq!(
                adjustable.permissible(amount(max)).unwrap().to_string(),
                printed
            );
        }
        for (word, tool_type) in ToolType::WORDS {
            let permissible = tool_type.permissible(amount("50 N·m")).unwrap();
            assert_eq!(permissible.to_string(), "4 %", "{word}");
        }
    }
}
