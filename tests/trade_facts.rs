//! Facts of the trade as checks. Where no published source carries one, it says so: common practice, no source.

mod trade_facts {
    mod bay;
    mod conditions;
    mod looks;
    mod print;
    mod prohibitions;
    mod shortage;
}
