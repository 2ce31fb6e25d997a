//! Wrenches and what they are set to, prints of one torque in several units, threads and what they bear.

mod adapter;

pub use adapter::applied_torque;
