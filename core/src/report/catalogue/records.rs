//! What a record lacks.

use super::{Part, table};

pub(super) static RECORDS: &[Part] = table! {
    lack {
        sheet: "No sheet applied, so nothing shows that the unit was checked by one.",
        hold_release: "The job was on hold, and nobody lifted the hold.",
        vehicle: "The vehicle is not named.",
        unit: "The unit is not named.",
        odometer: "The odometer reading is not stated.",
        edition: "The journal does not name the edition of the sheet.",
        pack: "The journal does not name the pack it was written by.",
        pack_digest: "The journal names its pack without the digest.",
        technician: "Nobody is named who did this.",
        look: "The plug was opened, and nobody says what was seen.",
        temperature: "The temperature of the fluid is not known for the moment of this look.",
        tilt: "How the unit leaned is not known for this look.",
        ranges: "The ranges were not cycled before this look, or nobody says so.",
        captured: "How much ran out was not measured.",
        residue_cleaned: "Whether the wetness was cleaned off is not stated; the next look cannot tell old from new.",
        fluid: "Which fluid was poured is not stated.",
        batch: "The batch of the fluid is not stated.",
        container: "The container the fluid came from is not stated.",
        measured_by: "How this volume was measured is not stated.",
        closing: "Nobody says that the plug was closed again.",
        torque: "The torque of the plug is not stated.",
        tool: "The tool the plug was tightened with is not stated.",
        adapter: "Whether an adapter was on the tool is not stated.",
        drips_checked: "Nobody looked for drips after the plug was closed, or nobody says so.",
        cleaned_dry: "Nobody says that it was left clean and dry underneath, which a recheck goes by.",
    }
};
