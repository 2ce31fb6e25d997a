//! What must hold of the calculators of `leak` whatever they are given.

use brimline::calculate::calculate;
use brimline::leak::{
    Decision, Rule, SeepageClass, Trend, Visit, against_limit, combined_uncertainty, conformance,
    consumption, drip_rate, drops_for, expanded_uncertainty, guard_band, quantile, risks, seepage,
};
use brimline::{Amount, Error, Interval, Unit};
use proptest::option;
use proptest::prelude::*;
use proptest::sample::select;

/// Any amount there is.
fn amounts() -> impl Strategy<Value = Amount> {
    let mantissas = prop_oneof![
        -999_999_999_999_999_i64..=999_999_999_999_999,
        -1000_i64..=1000
    ];
    (mantissas, 0_u8..=9, select(Unit::ALL)).prop_map(|(mantissa, decimals, unit)| {
        Amount::new(mantissa, decimals, unit).expect("within the digits of an amount")
    })
}

/// Any two amounts in units of one kind, and the unit of their differences.
fn alike() -> impl Strategy<Value = [Amount; 4]> {
    let sizes = [any::<u16>(), any::<u16>(), any::<u16>(), any::<u16>()];
    (sizes, select(Unit::ALL)).prop_map(|(sizes, unit)| {
        let [one, other, more, doubt] = sizes.map(i64::from);
        let difference = Amount::new(0, 0, unit).expect("zero").resolution().unit();
        let of = |size, unit| Amount::new(size, 2, unit).expect("few digits");
        [
            of(one, unit),
            of(other, unit),
            of(more, unit),
            of(doubt + 1, difference),
        ]
    })
}

/// A positive number of litres, kilometres, … in thousandths.
fn sized(thousandths: impl Strategy<Value = i64>, unit: Unit) -> impl Strategy<Value = Amount> {
    thousandths.prop_map(move |size| Amount::new(size, 3, unit).expect("few digits"))
}

fn ratio(number: f64) -> Amount {
    Amount::from_computed(number, Unit::One).expect("a ratio")
}

fn number(answer: Result<Amount, Error>) -> f64 {
    answer.expect("an answer").to_f64()
}

/// The range of two amounts of one kind.
fn between(one: Amount, other: Amount) -> Interval {
    let (lo, hi) = if one <= other {
        (one, other)
    } else {
        (other, one)
    };
    Interval::new(Some(lo), Some(hi)).expect("in order")
}

proptest! {
    #![proptest_config(ProptestConfig { failure_persistence: None, ..ProptestConfig::default() })]

    #[test]
    fn anything_is_answered_or_refused(
        [a, b, c, d] in [amounts(), amounts(), amounts(), amounts()],
        drops: u32,
        rule in select(vec![Rule::SimpleAcceptance, Rule::GuardedAcceptance, Rule::GuardedRejection]),
        probability in option::of(amounts()),
    ) {
        let share = |answer: Result<Amount, Error>| {
            answer.map_or(true, |share| (0.0..=1.0).contains(&share.to_f64()))
        };
        prop_assert!(share(against_limit(a, b, c, rule, probability).map(|told| told.exceeds)));
        prop_assert!(share(conformance(a, b, c, d)));
        if let (Ok(tolerance), Ok(acceptance)) = (
            Interval::new(Some(a), Some(b)).or(Interval::new(Some(b), Some(a))),
            Interval::new(Some(c), None),
        ) {
            for (mean, spread, doubt) in [(a, d, d), (c, a, d), (d, d, d)] {
                let risks = risks(mean, spread, doubt, tolerance, acceptance);
                prop_assert!(share(risks.map(|risks| risks.consumer)));
            }
        }
        // No panic is what is asked of these: an amount cannot hold a NaN.
        let _ = (quantile(a), guard_band(a, b), combined_uncertainty(&[a, b]), expanded_uncertainty(a, b));
        let _ = (drip_rate(drops, a, b), drops_for(a, b, c));
    }

    #[test]
    fn any_visits_are_answered_or_refused(
        visits in prop::collection::vec(
            (amounts(), amounts(), option::of(amounts()), option::of(amounts())), 0..4),
        same_kinds: bool,
        shortage in option::of(amounts()),
    ) {
        let as_of = |amount: Amount, unit: Unit| {
            if !same_kinds {
                return amount;
            }
            Amount::new(amount.mantissa(), amount.decimals(), unit).expect("the same digits")
        };
        let mut visits: Vec<Visit> = visits.into_iter().map(|(odometer, net, off, far)| Visit {
            uncertainty: off.map(|off| as_of(off, Unit::Millilitre)),
            odometer_uncertainty: far.map(|far| as_of(far, Unit::Metre)),
            ..Visit::new(as_of(odometer, Unit::Kilometre), as_of(net, Unit::Litre))
        }).collect();
        if same_kinds {
            visits.sort_by(|one, other| one.odometer.partial_cmp(&other.odometer).expect("lengths"));
        }
        if let Ok(told) = consumption(&visits, shortage) {
            prop_assert_eq!(told.rates.len(), visits.len().saturating_sub(1));
        }
    }

    #[test]
    fn the_chances_of_both_sides_make_one([estimate, limit, further, doubt] in alike()) {
        let exceeds = |limit| {
            let told = against_limit(estimate, doubt, limit, Rule::SimpleAcceptance, None);
            told.expect("an answer").exceeds.to_f64()
        };
        let within = number(conformance(estimate, doubt, None, limit));
        prop_assert!((exceeds(limit) + within - 1.0).abs() <= 2e-9);
        // The higher the limit, the less is above it.
        let (low, high) = if limit <= further { (limit, further) } else { (further, limit) };
        prop_assert!(exceeds(low) >= exceeds(high));
        // More likely than not on the side the estimate is on.
        let told = against_limit(estimate, doubt, limit, Rule::SimpleAcceptance, None).expect("an answer");
        let is_above = told.decision == Decision::Above;
        let likely = if is_above { exceeds(limit) } else { within };
        prop_assert!(likely >= 0.5);
    }

    #[test]
    fn a_guarded_rule_withholds_and_never_turns_round(
        [estimate, limit, _, doubt] in alike(),
        percent in 50_i64..100,
    ) {
        let probability = Amount::new(percent, 0, Unit::Percent).expect("few digits");
        let decide = |rule, probability: Option<Amount>| {
            let told = against_limit(estimate, doubt, limit, rule, probability);
            told.expect("an answer")
        };
        let simple = decide(Rule::SimpleAcceptance, None);
        for (rule, side) in [
            (Rule::GuardedAcceptance, Decision::Below),
            (Rule::GuardedRejection, Decision::Above),
        ] {
            let guarded = decide(rule, Some(probability));
            prop_assert_eq!(guarded.guard_band, guard_band(doubt, probability).ok());
            if guarded.decision != simple.decision {
                prop_assert_eq!((simple.decision, guarded.decision), (side, Decision::Undecided));
            }
            // What is called is right with that probability at least.
            let exceeds = guarded.exceeds.to_f64();
            let right = if side == Decision::Above { exceeds } else { 1.0 - exceeds };
            if guarded.decision == side {
                prop_assert!(right >= probability.si() - 1e-8);
            }
        }
    }

    #[test]
    fn quantiles_invert_probabilities(billionths in 1_i64..=999_999_999, more in 1_i64..1000) {
        let share = |billionths| Amount::new(billionths, 9, Unit::One).expect("few digits");
        let z = quantile(share(billionths)).expect("a quantile");
        let back = number(conformance(ratio(0.0), ratio(1.0), None, z));
        prop_assert!((back - share(billionths).to_f64()).abs() <= 2e-9);
        let higher = (billionths + more).min(999_999_999);
        prop_assert!(quantile(share(higher)).expect("a quantile") >= z);
        let mirrored = number(quantile(share(1_000_000_000 - billionths)));
        prop_assert!((mirrored + z.to_f64()).abs() <= 1e-8 * (1.0 + z.to_f64().powi(8)));
    }

    #[test]
    fn risks_add_up_to_what_is_accepted(
        [a, b, c, d, mean] in [-4000_i64..4000, -4000..4000, -4000..4000, -4000..4000, -2000..2000],
        [spread, doubt] in [1_i64..3000, 1..3000],
    ) {
        let of = |size: i64| Amount::new(size, 3, Unit::Litre).expect("few digits");
        let (tolerance, acceptance) = (between(of(a), of(b)), between(of(c), of(d)));
        let (mean, spread, doubt) = (of(mean), of(spread), of(doubt));
        let risks = risks(mean, spread, doubt, tolerance, acceptance).expect("risks");
        // What is measured is spread by both: accepted are those within tolerance that are not rejected, and the others
        // that are not either.
        let good = number(conformance(mean, spread, tolerance.lo(), tolerance.hi()));
        let both = combined_uncertainty(&[spread, doubt]).expect("a sum");
        let accepted = number(conformance(mean, both, acceptance.lo(), acceptance.hi()));
        let told = good - risks.producer.to_f64() + risks.consumer.to_f64();
        prop_assert!((told - accepted).abs() <= 1e-7, "{told} and {accepted}");
        prop_assert!(risks.producer.to_f64() <= good + 1e-7);
        prop_assert!(risks.consumer.to_f64() <= 1.0 - good + 1e-7);
    }

    #[test]
    fn a_rate_holds_the_one_that_was_measured(
        distances in prop::collection::vec(1_i64..50_000_000, 1..6),
        nets in prop::collection::vec(-2000_i64..5000, 6),
        off in sized(0_i64..1000, Unit::Litre),
        far in sized(0_i64..100_000, Unit::Kilometre),
        shortage in sized(1_i64..2000, Unit::Litre),
    ) {
        let odometers = distances.iter().scan(0_i64, |at, distance| {
            *at += distance;
            Some(Amount::new(*at, 3, Unit::Kilometre).expect("few digits"))
        });
        let visits: Vec<Visit> = odometers.zip(&nets).map(|(odometer, net)| Visit {
            uncertainty: Some(off),
            odometer_uncertainty: Some(far),
            ..Visit::new(odometer, Amount::new(*net, 3, Unit::Litre).expect("few digits"))
        }).collect();
        let told = consumption(&visits, shortage).expect("visits in order");
        for rate in &told.rates {
            let [from, to] = [visits[rate.from], visits[rate.to]];
            let [start, end] = [from, to].map(|visit| visit.odometer.expect("it was read").to_f64());
            let lost = to.net.to_f64() / (end - start) * 1000.0;
            let measured = Amount::from_computed(lost, Unit::Litre).expect("a rate");
            let Some(all) = rate.per_1000_km else {
                // Only where the odometers may stand for the same place.
                prop_assert!(end - start <= 2.001 * far.to_f64());
                continue;
            };
            // To the twelve digits of a computed amount.
            let [lo, hi] = [all.lo(), all.hi()].map(|end| end.expect("bounded").to_f64());
            let slack = 1e-9 + lost.abs() * 1e-11;
            prop_assert!(lo <= lost + slack && lost - slack <= hi, "{all} and {measured}");
        }
        // A trend is told of the first rate and the last, where they have nothing in common.
        let ends = told.rates.first().zip(told.rates.last()).filter(|_| told.rates.len() > 1);
        let ends = ends.and_then(|(first, last)| first.per_1000_km.zip(last.per_1000_km));
        match ends {
            None => prop_assert_eq!(told.trend, Trend::NotTold),
            Some((first, last)) => {
                let overlap = first.intersect(&last).expect("volumes").is_some();
                prop_assert_eq!(told.trend == Trend::NotShown, overlap);
            }
        }
        if let Some(distance) = told.distance {
            prop_assert!(!distance.lo().expect("a lower end").is_negative());
            let least = told.rates.last().and_then(|last| last.per_1000_km?.lo());
            let may_be_nothing = least.is_none_or(|lo| lo.is_negative() || lo.is_zero());
            let is_open = may_be_nothing || told.trend == Trend::Rising;
            prop_assert_eq!(distance.hi().is_none(), is_open);
            let last = visits.last().expect("a rate has visits").net;
            prop_assert!(!last.is_negative() && !last.is_zero());
            prop_assert!(told.cautions.contains(&"leak_on_hot") && told.cautions.contains(&"no_dry_start"));
            prop_assert_eq!(told.cautions.contains(&"sooner_if_rising"), told.trend == Trend::Rising);
        }
    }

    #[test]
    fn drops_counted_are_drops_expected(
        drops in 1_u32..1000,
        seconds in sized(1000_i64..3_600_000, Unit::Second),
        drop in sized(10_i64..500, Unit::Millilitre),
    ) {
        let rate = drip_rate(drops, seconds, drop).expect("a rate");
        let every = rate.one_drop_every.to_f64();
        let day = Amount::new(24, 0, Unit::Hour).expect("few digits");
        if rate.per_day >= drop {
            let expected = number(drops_for(rate.per_day, day, drop));
            prop_assert!((expected / every - 1.0).abs() < 1e-6 + 1e-9 / rate.per_day.to_f64());
        }
        let year = rate.per_day.to_f64() * 365.0;
        prop_assert!((rate.per_year.to_f64() - year).abs() <= 1e-6 + year * 1e-9);
        let more = drip_rate(drops + 1, seconds, drop).expect("a rate");
        prop_assert!(more.per_day >= rate.per_day && more.one_drop_every <= rate.one_drop_every);
    }
}

#[test]
fn by_name_as_in_rust() {
    let ask = |function: &str, arguments: &str| calculate(function, arguments).expect("an answer");
    let amount = |text| Amount::parse(text).expect("an amount");
    let told = against_limit(
        amount("1.5 L"),
        amount("100 mL"),
        amount("1.4 L"),
        Rule::GuardedRejection,
        amount("95 %"),
    );
    let told = serde_json::to_value(told.expect("an answer")).expect("JSON");
    let by_name = ask(
        "leak.against_limit",
        r#"{"estimate": "1.5 L", "uncertainty": "100 mL", "limit": "1.4 L", "rule": "guarded_rejection",
            "probability": "0.95"}"#,
    );
    assert_eq!(
        serde_json::from_str::<serde_json::Value>(&by_name).expect("JSON"),
        told
    );
    // A difference is read as one where the estimate is a temperature.
    let warm = ask(
        "leak.conformance",
        r#"{"value": "41.64 °C", "uncertainty": "1 °C", "lower": "40 °C"}"#,
    );
    assert_eq!(warm, r#"{"value":"0.949497417 ratio"}"#);
    let one_sided = ask(
        "leak.risks",
        r#"{"mean": "5 L", "spread": "2 L", "uncertainty": "0.5 L", "tolerance": [null, "6 L"],
            "acceptance": [null, "5.2 L"]}"#,
    );
    assert_eq!(
        one_sided,
        r#"{"consumer":"0.001938169 ratio","producer":"0.154758169 ratio"}"#
    );
    for (class, slug) in SeepageClass::WORDS
        .iter()
        .map(|(slug, class)| (class, slug))
    {
        let by_name = ask("leak.seepage", &format!(r#"{{"class": "{slug}"}}"#));
        let told = serde_json::to_value(seepage(*class)).expect("JSON");
        assert_eq!(
            serde_json::from_str::<serde_json::Value>(&by_name).expect("JSON"),
            told
        );
    }
}

#[test]
fn every_fault_of_the_visits_is_named_at_once() {
    let error = calculate(
        "leak.consumption",
        r#"{"visits": [{"odometer": "1 L", "net": "1 L"}, {"date": "2024-13-01", "net": "1"}], "shortage": "1 km"}"#,
    )
    .expect_err("nothing of it reads");
    let paths: Vec<&str> = error.faults().map(|fault| fault.path.as_str()).collect();
    assert_eq!(
        paths,
        [
            "visits[0].odometer",
            "visits[1].date",
            "visits[1].net",
            "shortage"
        ]
    );
    let error = calculate(
        "leak.consumption",
        r#"{"visits": [{"odometer": "2 km", "net": "1 L", "date": "2024-05-02"},
            {"odometer": "3 km", "net": "1 L", "date": "2024-05-01"}]}"#,
    );
    assert_eq!(
        error.expect_err("a date goes back").first().path,
        "visits[1].date"
    );
}

#[test]
fn a_range_has_two_ends() {
    for (tolerance, path) in [
        (r#"["1 L", "2 kg"]"#, "tolerance[1]"),
        (r#"["1 L"]"#, "tolerance"),
        (r#"["2 L", "1 L"]"#, "tolerance"),
        ("[null, null]", "tolerance"),
    ] {
        let error = calculate(
            "leak.risks",
            &format!(
                r#"{{"mean": "1 L", "spread": "1 L", "uncertainty": "1 L", "tolerance": {tolerance},
                    "acceptance": ["0 L", null]}}"#
            ),
        );
        let error = error.expect_err("not a range");
        let paths: Vec<&str> = error.faults().map(|fault| fault.path.as_str()).collect();
        assert_eq!(paths, [path]);
    }
}
