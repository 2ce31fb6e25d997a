//! Volume and temperature, the shape of a sump, exchanging a fluid, which containers to open.
