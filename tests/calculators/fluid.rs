//! What must hold of `fluid` whatever is put in.

use brimline::calculate::calculate;
use brimline::fluid::{
    BlendRule, Component, MayMix, Offered, Procedure, Reason, Walther, blend, grade, grade_limits,
    may_mix, resolve, temperature_for, viscosity_at, viscosity_index,
};
use brimline::{Amount, Pack, Unit};
use proptest::prelude::*;

const MM2_S: Unit = Unit::SquareMillimetrePerSecond;

/// A number to nine decimals, in a unit.
fn amount(number: f64, unit: Unit) -> Amount {
    Amount::from_computed(number, unit).unwrap()
}

/// Anything that is an amount at all.
fn any_amount() -> impl Strategy<Value = Amount> {
    let unit = prop::sample::select(Unit::ALL);
    let number = prop_oneof![
        -999_999_999_999_999_i64..=999_999_999_999_999,
        -100_i64..=100,
        Just(0)
    ];
    (number, 0_u8..=9, unit)
        .prop_map(|(number, decimals, unit)| Amount::new(number, decimals, unit).unwrap())
}

/// More often of the kind that is asked for, and of a size that is met.
fn nearly(unit: Unit) -> impl Strategy<Value = Amount> {
    prop_oneof![
        any_amount(),
        (-1_000_000_i64..=50_000_000_000, 0_u8..=9)
            .prop_map(move |(number, decimals)| Amount::new(number, decimals, unit).unwrap())
    ]
}

/// The viscosities of an oil at 40 °C and 100 °C.
fn oil() -> impl Strategy<Value = (f64, f64)> {
    (2.0..5000.0_f64, 0.05..0.9_f64).prop_map(|(cold, share)| (cold, (cold * share).max(0.5)))
}

fn walther((cold, hot): (f64, f64)) -> Walther {
    let [at_40, at_100] = [cold, hot].map(|number| amount(number, MM2_S));
    let [low, high] = [40.0, 100.0].map(|number| amount(number, Unit::DegreeCelsius));
    Walther::new(at_40, low, at_100, high).unwrap()
}

fn near(one: f64, other: f64, part: f64) -> bool {
    (one - other).abs() <= part * one.abs().max(other.abs()) + 1e-9
}

proptest! {
    #[test]
    fn an_oil_has_the_viscosities_it_was_made_from((cold, hot) in oil()) {
        let oil = walther((cold, hot));
        for (number, at) in [(cold, 40.0), (hot, 100.0)] {
            let at = amount(at, Unit::DegreeCelsius);
            let got = oil.viscosity_at(at).unwrap().to_f64();
            prop_assert!(near(got, number, 1e-9), "{} for {}", got, number);
        }
    }

    #[test]
    fn temperature_and_viscosity_invert(two in oil(), at in -20.0..150.0_f64) {
        let oil = walther(two);
        if let Ok(viscosity) = oil.viscosity_at(amount(at, Unit::DegreeCelsius)) {
            let back = oil.temperature_for(viscosity).unwrap().to_f64();
            prop_assert!((back - at).abs() < 1e-4, "{} for {}", back, at);
        }
    }

    #[test]
    fn an_oil_thins_as_it_warms(two in oil(), at in -20.0..149.0_f64, more in 0.01..1.0_f64) {
        let oil = walther(two);
        let [cooler, warmer] = [at, at + more]
            .map(|at| oil.viscosity_at(amount(at, Unit::DegreeCelsius)));
        if let (Ok(cooler), Ok(warmer)) = (cooler, warmer) {
            prop_assert!(warmer < cooler);
        }
    }

    #[test]
    fn the_order_of_the_points_does_not_matter((cold, hot) in oil(), at in 0.0..150.0_f64) {
        let [v1, v2] = [cold, hot].map(|number| amount(number, MM2_S));
        let [t1, t2, at] = [40.0, 100.0, at].map(|number| amount(number, Unit::DegreeCelsius));
        let there = viscosity_at(v1, t1, v2, t2, at).map(|got| got.to_f64());
        let back = viscosity_at(v2, t2, v1, t1, at).map(|got| got.to_f64());
        match (there, back) {
            (Ok(there), Ok(back)) => prop_assert!(near(there, back, 1e-9)),
            (there, back) => prop_assert_eq!(there.is_err(), back.is_err()),
        }
    }

    #[test]
    fn an_index_falls_as_the_oil_thickens_at_40(
        y in 2.0..200.0_f64, times in 1.01..60.0_f64, more in 1.0001..2.0_f64,
    ) {
        let index = |u: f64| viscosity_index(amount(u, MM2_S), amount(y, MM2_S)).unwrap();
        let (thin, thick) = (index(y * times), index(y * times * more));
        prop_assert!(thick.unrounded < thin.unrounded);
        prop_assert!(thick.index <= thin.index);
        prop_assert_eq!((thin.l, thin.h), (thick.l, thick.h));
        for found in [thin, thick] {
            let off = found.unrounded.to_f64() - found.index as f64;
            prop_assert!(off.abs() <= 0.5);
            prop_assert_eq!(found.procedure == Procedure::B, found.unrounded.to_f64() > 100.0);
        }
    }

    #[test]
    fn the_two_procedures_meet_at_100(y in 2.0..200.0_f64) {
        let y = amount(y, MM2_S);
        let h = viscosity_index(amount(9999.0, MM2_S), y).unwrap().h.to_f64();
        let [below, above] = [h - 1e-8, h + 1e-8].map(|u| viscosity_index(amount(u, MM2_S), y).unwrap());
        prop_assert_eq!((below.procedure, above.procedure), (Procedure::B, Procedure::A));
        for found in [below, above] {
            prop_assert!((found.unrounded.to_f64() - 100.0).abs() < 1e-4);
        }
    }

    #[test]
    fn a_blend_lies_between_its_parts(
        (one, other) in (0.21..1e6_f64, 0.21..1e6_f64),
        (share, more) in (0_i64..=1000, 0_i64..=1000),
        rule in prop::sample::select(BlendRule::WORDS),
    ) {
        let ratio = |parts: i64| Amount::new(parts, 3, Unit::One).unwrap();
        let blended = |share: i64| {
            let parts = [(one, share), (other, 1000 - share)]
                .map(|(number, share)| Component { viscosity: amount(number, MM2_S), share: ratio(share) });
            let turned = [parts[1], parts[0]];
            let [there, back] = [&parts, &turned].map(|parts| blend(parts, rule.1).unwrap().to_f64());
            assert!(near(there, back, 1e-9));
            there
        };
        let (here, there) = (blended(share), blended(more));
        let (least, most) = (one.min(other), one.max(other));
        prop_assert!(here >= least * (1.0 - 1e-9) - 1e-8 && here <= most * (1.0 + 1e-9) + 1e-8);
        // More of the thinner thins it.
        if (share < more) == (one < other) {
            prop_assert!(there <= here * (1.0 + 1e-9) + 1e-8 || share == more);
        }
    }

    #[test]
    fn a_grade_holds_what_is_in_its_limits(number in 0.1..5000.0_f64) {
        let viscosity = amount(number, MM2_S);
        let found = grade(viscosity).unwrap();
        match found.grade {
            Some(number) => {
                let limits = grade_limits(number).unwrap();
                prop_assert!(limits.contains(&viscosity).unwrap());
                prop_assert_eq!((found.low, found.high), (limits.lo(), limits.hi()));
            }
            None => {
                prop_assert!(found.low.is_none_or(|low| low < viscosity));
                prop_assert!(found.high.is_none_or(|high| high > viscosity));
            }
        }
    }

    #[test]
    fn anything_is_answered_or_refused(
        (v1, v2, v3) in (nearly(MM2_S), nearly(MM2_S), nearly(MM2_S)),
        (t1, t2, t3) in (
            nearly(Unit::DegreeCelsius), nearly(Unit::DegreeFahrenheit), nearly(Unit::Kelvin)
        ),
        shares in prop::collection::vec(nearly(Unit::One), 0..4),
        (number, text) in (any::<u32>(), ".{0,20}"),
    ) {
        let _ = viscosity_at(v1, t1, v2, t2, t3);
        let _ = temperature_for(v1, t1, v2, t2, v3);
        let _ = viscosity_index(v1, v2);
        let _ = grade(v1);
        let _ = grade_limits(number);
        let parts: Vec<_> = shares.iter().map(|share| Component { viscosity: v1, share: *share }).collect();
        for (_, rule) in BlendRule::WORDS {
            let _ = blend(&parts, *rule);
        }
        for (name, _) in brimline::calculate::functions().filter(|(name, _)| name.starts_with("fluid.")) {
            let _ = calculate(name, &text);
        }
    }

    #[test]
    fn a_yes_is_always_said(lists in prop::collection::vec(prop::collection::vec(0..4_u8, 6), 6)) {
        let name = |place: usize| format!("fluid-{place}");
        let fluids: Vec<String> = lists.iter().enumerate().map(|(own, says)| {
            let of = |word: u8| {
                let named = says.iter().enumerate().filter(|(other, said)| {
                    // A ring of replacements is refused.
                    **said == word && *other != own && (word != 1 || *other < own)
                });
                named.map(|(other, _)| format!("\"{}\"", name(other))).collect::<Vec<_>>().join(",")
            };
            format!(
                r#"{{"id":"{}","replaces":[{}],"mixes_with":[{}],"full_exchange_only":[],"never":[{}]}}"#,
                name(own), of(1), of(2), of(3),
            )
        }).collect();
        let pack = format!(
            r#"{{"format":"brimline-pack/1","id":"p","version":"1","title":"t","fluids":[{}],"procedures":[]}}"#,
            fluids.join(","),
        );
        let pack = Pack::from_json(&pack).unwrap();
        let fluids: Vec<_> = pack.fluids().cloned().collect();
        for (own, says) in lists.iter().enumerate() {
            for other in 0..=lists.len() {
                let mixing = may_mix(&fluids, &name(own), &name(other));
                let said = says.get(other).copied().filter(|said| *said != 1 || other < own);
                let back = lists.get(other).map(|says| says[own]);
                let expected = match (said, back) {
                    _ if own == other => MayMix::Yes,
                    (Some(1 | 2), Some(3)) => MayMix::Unknown,
                    (Some(2), _) => MayMix::Yes,
                    (Some(1), _) => MayMix::AfterExchange,
                    (Some(3), _) => MayMix::No,
                    _ => MayMix::Unknown,
                };
                prop_assert_eq!(mixing.answer, expected, "{:?}", mixing);
                if mixing.reason == Reason::ChainNotDeclared {
                    prop_assert!(mixing.path.len() > 1);
                    prop_assert_eq!(&mixing.path[0].from, &name(own));
                    prop_assert_eq!(&mixing.path[mixing.path.len() - 1].to, &name(other));
                    for pair in mixing.path.windows(2) {
                        prop_assert_eq!(&pair[0].to, &pair[1].from);
                    }
                }
                let offer = &resolve(&fluids, &name(other), &[&name(own)])[0];
                prop_assert_eq!(offer.top_up, mixing.answer == MayMix::Yes);
                prop_assert_eq!(offer.answer == Offered::Never, mixing.answer == MayMix::No);
                prop_assert!(!offer.fill || mixing.answer != MayMix::Unknown);
                let disagree = mixing.reason == Reason::SheetsDisagree;
                prop_assert_eq!(offer.reason == Reason::SheetsDisagree, disagree);
                prop_assert!(!disagree || (!offer.fill && offer.answer == Offered::Unknown));
            }
        }
    }
}

#[test]
fn asked_by_name() {
    for (name, arguments, expected) in [
        (
            // ASTM D2270, example of procedure A; unrounded (119.94 − 73.30) / (119.94 − 69.48) by hand.
            "fluid.viscosity_index",
            r#"{"viscosity_40": "73.30 mm²/s", "viscosity_100": "8.86 mm²/s"}"#,
            r#"{"index":92,"procedure":"a","l":"119.94 mm²/s","h":"69.48 mm²/s","unrounded":"92.429647245 ratio"}"#,
        ),
        (
            "fluid.grade",
            r#"{"viscosity_40": "46 cSt"}"#,
            r#"{"grade":46,"low":"41.4 mm²/s","high":"50.6 mm²/s"}"#,
        ),
        (
            "fluid.grade",
            r#"{"viscosity_40": "1 cSt"}"#,
            r#"{"high":"1.98 mm²/s"}"#,
        ),
        (
            // ISO 3448:1992, table 1.
            "fluid.grade_limits",
            r#"{"grade": 32}"#,
            r#"{"value":["28.8 mm²/s","35.2 mm²/s"]}"#,
        ),
        (
            "fluid.temperature_for",
            r#"{"viscosity_1": "32 mm²/s", "temperature_1": "104 °F", "viscosity_2": "5.4 mm²/s", "temperature_2": "100 °C",
                "viscosity": "5.4 mm²/s"}"#,
            r#"{"value":"100 °C"}"#,
        ),
        (
            "fluid.viscosity_at",
            r#"{"viscosity_1": "32 mm²/s", "temperature_1": "104 °F", "viscosity_2": "5.4 mm²/s", "temperature_2": "100 °C",
                "temperature": "40 °C"}"#,
            r#"{"value":"32 mm²/s"}"#,
        ),
        (
            "fluid.blend",
            r#"{"parts": [{"viscosity": "5 cSt", "share": "60 %"}, {"viscosity": "5 cSt", "share": "0.4"}], "rule": "refutas_mass"}"#,
            r#"{"value":"5 mm²/s"}"#,
        ),
    ] {
        assert_eq!(calculate(name, arguments).unwrap(), expected);
    }
    let error = calculate(
        "fluid.blend",
        r#"{"parts": [{"viscosity": "5 cSt"}], "rule": "log"}"#,
    );
    let paths: Vec<_> = error
        .unwrap_err()
        .faults()
        .map(|fault| fault.path.clone())
        .collect();
    assert_eq!(paths, ["parts[0].share", "rule"]);
}
