//! What the calculators must hold whatever is put in: inverse functions invert, what physics makes rise rises, branches meet,
//! and nothing but an error comes of what makes no sense.

mod calculators {
    mod fluid;
    mod leak;
    mod money;
    mod signal;
    mod torque;
    mod volume {
        mod anything;
        mod containers;
        mod exchange;
        mod given;
        mod oil;
        mod sump;
    }
    mod warm_up {
        mod by_name;
        mod cooling;
        mod forecast;
        mod response;
        mod sensors;
    }
}
