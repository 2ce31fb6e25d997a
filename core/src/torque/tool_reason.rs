//! Why a tool does not suit, and what is to be known of one that does.

use crate::quantity::Amount;
use crate::word::words;
use alloc::collections::BTreeMap;
use alloc::vec::Vec;
use serde::Serialize;

/// One reason.
#[derive(Debug, Clone, PartialEq, Serialize)]
#[non_exhaustive]
pub struct ToolReason {
    /// Which.
    pub id: ToolReasonId,
    /// The quantities it is about.
    pub args: BTreeMap<&'static str, Amount>,
}

words! {
    /// Why a tool does not suit; the last two are to be known only.
    pub enum ToolReasonId {
        /// The setting is below the range: `setting`, `min`.
        BelowRange = "below_range",
        /// The setting is above the range: `setting`, `max`.
        AboveRange = "above_range",
        /// The tool may be off by more than the joint: `permissible` as a torque, `tolerance`.
        ToleranceTooWide = "tolerance_too_wide",
        /// The nearest step of the scale is too far off: `graduation`, and `applied` where there is a step.
        GraduationCoarse = "graduation_coarse",
        /// The one setting of the tool is another: `setting`, `applied`.
        FixedElsewhere = "fixed_elsewhere",
        /// An adapter is used, and the lever of the tool is not known: `adapter`.
        LeverUnknown = "lever_unknown",
        /// The adapter is longer than the lever, or points back over more than half of it: `lever`, `adapter`.
        LeverTooShort = "lever_too_short",
        /// The setting is within the range but below where tools are tested: `setting`, `tested_from`.
        LowInRange = "low_in_range",
        /// The permissible deviation is that of the type, not of the tool: `permissible`.
        PermissibleAssumed = "permissible_assumed",
    }
}

impl ToolReasonId {
    /// Whether it is to be known only, and does not speak against the tool.
    #[must_use]
    pub const fn is_note(self) -> bool {
        matches!(
            self,
            ToolReasonId::LowInRange | ToolReasonId::PermissibleAssumed
        )
    }
}

/// The reasons found so far.
#[derive(Default)]
pub(super) struct Reasons(pub(super) Vec<ToolReason>);

impl Reasons {
    pub(super) fn add<const N: usize>(
        &mut self,
        id: ToolReasonId,
        args: [(&'static str, Amount); N],
    ) {
        self.0.push(ToolReason {
            id,
            args: args.into(),
        });
    }
}
