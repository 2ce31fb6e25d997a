//! How much is lost, and whether a limit is passed, with the uncertainty of the measurement.
