//! What must hold of wrenches, prints, joints and threads, whatever the numbers are.

use brimline::torque::{
    Friction, PlugKind, PrintClass, Thread, ThreadCondition, Tool, ToolJob, ToolType, Wrench,
    applied_torque, equivalents, plausible, preload, tool_suits, torque_for_preload,
    wrench_setting,
};
use brimline::{Amount, Interval, Kind, Rounding, Unit};
use proptest::prelude::*;

const TORQUES: [Unit; 4] = [
    Unit::NewtonMetre,
    Unit::PoundForceFoot,
    Unit::PoundForceInch,
    Unit::KilogramForceMetre,
];

/// A quantity somebody might enter: 1 to 9999 with up to two decimals.
fn usual(units: &'static [Unit]) -> impl Strategy<Value = Amount> {
    (100..=999_900_i64, 0..=2_u8, prop::sample::select(units))
        .prop_map(|(mantissa, decimals, unit)| Amount::new(mantissa, decimals, unit).unwrap())
}

/// Any amount there can be, of any kind.
fn any_amount() -> impl Strategy<Value = Amount> {
    let mantissa = prop_oneof![-999_999_999_999_999..=999_999_999_999_999_i64, -20..=20_i64,];
    (mantissa, 0..=9_u8, prop::sample::select(Unit::ALL))
        .prop_map(|(mantissa, decimals, unit)| Amount::new(mantissa, decimals, unit).unwrap())
}

/// Any amount, mostly of one kind.
fn mostly(kind: Kind) -> impl Strategy<Value = Amount> {
    let own: Vec<Unit> = Unit::ALL
        .iter()
        .copied()
        .filter(|unit| unit.kind() == kind)
        .collect();
    (any_amount(), prop::sample::select(own), 0..20_u8).prop_map(|(amount, unit, dice)| {
        if dice == 0 {
            amount
        } else {
            Amount::new(amount.mantissa(), amount.decimals(), unit).unwrap()
        }
    })
}

fn lengths() -> impl Strategy<Value = (Amount, Amount, Amount)> {
    // The lever is more than twice as long, so the adapter may point back.
    (200..=600_i64, 1..=99_i64, 0..=1800_i64).prop_map(|(lever, adapter, angle)| {
        let mm = |length| Amount::new(length, 0, Unit::Millimetre).unwrap();
        (
            mm(lever),
            mm(adapter),
            Amount::new(angle, 1, Unit::Degree).unwrap(),
        )
    })
}

/// Relative difference of two amounts of one kind.
fn apart(one: Amount, other: Amount) -> f64 {
    (one.si() / other.si() - 1.0).abs()
}

const THREADS: [&str; 8] = [
    "M5", "M6x0.75", "M10x1", "M14x1.5", "M18", "1/4-28", "7/16-20", "1 1/2-6",
];

proptest! {
    #[test]
    fn setting_and_applied_are_inverse(target in usual(&TORQUES), (lever, adapter, angle) in lengths()) {
        let wrench = Wrench { adapter: Some(adapter), angle: Some(angle), ..Wrench::new(lever) };
        let setting = wrench_setting(target, &wrench, None).unwrap().setting;
        let applied = applied_torque(setting, lever, adapter, angle).unwrap();
        prop_assert!(apart(applied, target) < 1e-8, "{target} {setting} {applied}");
    }

    #[test]
    fn turning_the_adapter_back_raises_the_setting(target in usual(&TORQUES), (lever, adapter, angle) in lengths()) {
        let setting = |angle| {
            let wrench = Wrench { adapter: Some(adapter), angle: Some(angle), ..Wrench::new(lever) };
            wrench_setting(target, &wrench, None).unwrap().setting
        };
        let zero = Amount::new(0, 0, Unit::Degree).unwrap();
        let half = Amount::new(180, 0, Unit::Degree).unwrap();
        prop_assert!(setting(zero) <= setting(angle) && setting(angle) <= setting(half));
        prop_assert!(setting(zero) < target && target < setting(half));
    }

    #[test]
    fn a_graduated_setting_is_the_nearest_step(
        target in usual(&TORQUES),
        step in 1..=100_i64,
        (lever, adapter, angle) in lengths(),
    ) {
        let step = Amount::new(step, 2, target.unit()).unwrap();
        let free = Wrench { adapter: Some(adapter), angle: Some(angle), ..Wrench::new(lever) };
        let stepped = Wrench { graduation: Some(step), ..free };
        let wanted = wrench_setting(target, &free, None).unwrap().setting;
        let Ok(told) = wrench_setting(target, &stepped, None) else {
            prop_assert!(step > wanted);
            return Ok(());
        };
        let steps = told.setting.mantissa() / step.mantissa();
        prop_assert_eq!(told.setting, step.times(steps).unwrap());
        let off = (told.setting.to_f64() - wanted.to_f64()).abs();
        prop_assert!(off <= step.to_f64() * 0.500_001);
        // What is told of the error is what the setting applies.
        let applied = applied_torque(told.setting, lever, adapter, angle).unwrap();
        prop_assert!(apart(applied, told.applied) < 1e-8);
        let error = applied.si() / target.si() - 1.0;
        prop_assert!((error - told.error.si()).abs() < 1e-8);
        prop_assert_eq!(told.cautions.contains(&"graduation_coarse"), told.error.to_f64().abs() > 4.0);
    }

    #[test]
    fn a_set_point_is_never_taken_for_the_target(target in usual(&TORQUES), (lever, adapter, _) in lengths()) {
        let wrench = Wrench { adapter: Some(adapter), ..Wrench::new(lever) };
        let set_point = wrench_setting(target, &wrench, target).unwrap().setting;
        // An adapter of 1 mm on 600 mm moves the torque by 0.17 %.
        prop_assert!(wrench_setting(set_point, &wrench, target).is_err());
    }

    #[test]
    fn preload_and_torque_are_inverse(
        torque in usual(&TORQUES),
        diameter in usual(&[Unit::Millimetre]),
        k in 1..=1000_i64,
    ) {
        let k = Friction::K(Amount::new(k, 3, Unit::One).unwrap());
        let held = preload(torque, diameter, k).unwrap().preload;
        prop_assert_eq!(held.lo(), held.hi());
        let Some(force) = held.lo().filter(|force| force.to_f64() > 1.0) else { return Ok(()) };
        let back = torque_for_preload(force, diameter, k).unwrap().torque.lo().unwrap();
        prop_assert!(apart(back, torque) < 1e-6, "{torque} {force} {back}");
    }

    #[test]
    fn the_scatter_of_k_is_a_wider_range(torque in usual(&TORQUES), diameter in usual(&[Unit::Millimetre])) {
        for (_, condition) in ThreadCondition::WORDS {
            let Ok(told) = preload(torque, diameter, Friction::Condition(*condition)) else { continue };
            let (lo, hi) = (told.preload.lo().unwrap(), told.preload.hi().unwrap());
            let spread = told.k.hi().unwrap().si() / told.k.lo().unwrap().si();
            prop_assert!(lo <= hi);
            prop_assert!(lo.to_f64() < 1.0 || (hi.si() / lo.si() / spread - 1.0).abs() < 1e-6);
        }
    }

    #[test]
    fn a_correct_print_is_never_called_wrong(
        first in usual(&TORQUES),
        unit in prop::sample::select(&TORQUES[..]),
        places in 0..=3_u8,
    ) {
        let rounded = first.to(unit, places, Rounding::HalfEven).unwrap();
        let told = equivalents(&[first, rounded]).unwrap();
        prop_assert!(matches!(told.prints[1].class, PrintClass::Exact | PrintClass::Agrees));
        // And what was converted from it agrees, or is named as converted from it.
        let chained = rounded.to(Unit::NewtonCentimetre, 0, Rounding::HalfEven).unwrap();
        let told = equivalents(&[first, rounded, chained]).unwrap();
        match told.prints[2].class {
            PrintClass::Exact | PrintClass::Agrees => {}
            PrintClass::ChainRounded => prop_assert_eq!(told.prints[2].through, Some(rounded)),
            class => prop_assert!(false, "{first} {rounded} {chained} {class:?}"),
        }
    }

    #[test]
    fn twelve_times_too_much_is_a_slip(first in usual(&TORQUES)) {
        let told = equivalents(&[first, first.times(12).unwrap()]).unwrap();
        prop_assert_eq!(told.prints[1].class, PrintClass::UnitSlip);
        prop_assert_eq!(told.prints[1].factor.unwrap().slug(), "times_12");
    }

    #[test]
    fn what_fits_lies_in_the_band(torque in usual(&TORQUES), thread in prop::sample::select(&THREADS[..])) {
        let thread = Thread::parse(thread).unwrap();
        let told = plausible(torque, &thread, PlugKind::Steel).unwrap();
        let (least, most) = (told.band.lo().unwrap(), told.band.hi().unwrap());
        let fits = match torque {
            torque if torque > most => "no",
            torque if torque < least => "not_judged",
            _ => "yes",
        };
        prop_assert_eq!(told.fits.slug(), fits);
        prop_assert!(fits != "yes" || told.slip.is_none());
        if let Some(slip) = told.slip {
            prop_assert!(told.band.contains(&slip.torque).unwrap());
            prop_assert_eq!(slip.torque.number(), torque.number());
            prop_assert_ne!(slip.unit, torque.unit());
            // Nothing is judged wrong for being low, and a higher torque is a question only.
            prop_assert!(slip.torque < torque || (fits == "not_judged" && torque.si() * 5.9 < least.si()));
        }
        for plug in [PlugKind::LightAlloy, PlugKind::Hollow, PlugKind::Unknown] {
            prop_assert_eq!(plausible(torque, &thread, plug).unwrap().fits.slug(), "not_judged");
        }
    }

    #[test]
    fn tools_that_suit_keep_the_tolerance(
        target in usual(&TORQUES),
        per_cent in 1..=20_i64,
        tools in prop::collection::vec((usual(&TORQUES), 1..=200_i64), 0..6),
    ) {
        let tolerance = Amount::from_computed(target.to_f64() * per_cent as f64 / 100.0, target.unit()).unwrap();
        let job = ToolJob { target, tolerance: Some(tolerance), adapter: None, angle: None };
        let tools: Vec<Tool> = tools
            .iter()
            .map(|(max, step)| Tool {
                name: "tool",
                tool_type: ToolType::SettingAdjustable,
                max: *max,
                min: None,
                graduation: Some(Amount::new(*step, 1, max.unit()).unwrap()),
                permissible: None,
                lever: None,
            })
            .collect();
        let told = tool_suits(&job, &tools).unwrap();
        prop_assert_eq!(told.tools.len(), tools.len());
        let suited = told.tools.iter().take_while(|fit| fit.suits).count();
        prop_assert!(told.tools[suited..].iter().all(|fit| !fit.suits && fit.rank == 0));
        for (rank, fit) in (1..).zip(&told.tools[..suited]) {
            prop_assert_eq!(fit.rank, rank);
            let off = fit.error.unwrap().si().abs() + fit.permissible.si();
            prop_assert!(off * target.si() <= tolerance.si() * (1.0 + 1e-6));
        }
    }

    /// Any arguments at all: an answer or an error, which names an argument.
    #[test]
    fn nothing_panics(
        torques in [mostly(Kind::Torque), mostly(Kind::Torque), mostly(Kind::Torque)],
        lengths in [mostly(Kind::Length), mostly(Kind::Length)],
        angle in mostly(Kind::Angle),
        force in mostly(Kind::Force),
        k in mostly(Kind::Ratio),
        prints in prop::collection::vec(mostly(Kind::Temperature), 0..4),
        text in "[M#]?[0-9./ x×-]{0,8}( UNC| UNF|\\PC)?",
    ) {
        let [target, graduation, printed] = torques;
        let [lever, adapter] = lengths;
        let wrench = Wrench { lever, adapter: Some(adapter), angle: Some(angle), graduation: Some(graduation) };
        let mut errors = vec![
            wrench_setting(target, &wrench, printed).err(),
            applied_torque(target, lever, adapter, angle).err(),
            preload(target, lever, Friction::K(k)).err(),
            torque_for_preload(force, lever, Friction::K(k)).err(),
            plausible(target, &Thread::parse("M10x1").unwrap(), PlugKind::Steel).err(),
            equivalents(&prints).err(),
            equivalents(&torques).err(),
        ];
        if let Ok(between) = Interval::new(Some(k), Some(k)) {
            errors.push(preload(target, lever, Friction::Between(between)).err());
        }
        let tool = Tool {
            name: "tool",
            tool_type: ToolType::IndicatingBeam,
            max: printed,
            min: Some(target),
            graduation: Some(graduation),
            permissible: Some(k),
            lever: Some(lever),
        };
        let job = ToolJob { target, tolerance: Some(graduation), adapter: Some(adapter), angle: Some(angle) };
        errors.push(tool_suits(&job, &[tool]).err());
        for error in errors.into_iter().flatten() {
            prop_assert!(!error.first().path.is_empty(), "{error}");
        }
        if let Ok(thread) = Thread::parse(&text) {
            prop_assert_eq!(Thread::parse(&thread.designation).unwrap(), thread);
        }
    }
}
