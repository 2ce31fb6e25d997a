//! When the fluid will be warm enough, and when no longer; what a temperature reading is worth.
