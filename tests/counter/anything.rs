//! Whatever is poured, drained and priced: lines add up, cases keep their order, and what was assumed costs what was said.

use super::jobs::{CLOSED, OPEN, TIGHT, asked, job, pour, prices, told};
use brimline::estimate::{Asked, Line, Total};
use brimline::money::Money;
use brimline::{PriceList, estimate, invoice};
use proptest::prelude::*;

const SHEETS: [&str; 4] = [
    "pipit-level",
    "siskin-side",
    "dunlin-pipe",
    "whimbrel-level",
];

/// The embedded list with another policy for the first fluid, and taxes by line.
fn list(policy: usize, by_line: bool) -> PriceList {
    let text = prices().to_json();
    let own = r#""billing":{"policy":"used","least":"0.1 L","step":"0.05 L"}"#;
    let other = [
        own,
        r#""billing":{"policy":"whole_container"}"#,
        r#""billing":{"policy":"bulk"}"#,
    ];
    let text = text.replace(own, other[policy]);
    let text = if by_line {
        text.replace(r#""place":"document""#, r#""place":"line""#)
    } else {
        text
    };
    PriceList::from_json(&text).expect("it reads")
}

/// The digits of a number before a unit, as a whole, and how many of them are decimals.
fn digits(text: &str) -> (u128, u32) {
    let number = text.split(' ').next().expect("a number");
    let (whole, decimals) = number.split_once('.').unwrap_or((number, ""));
    let digits = format!("{whole}{decimals}").parse().expect("digits");
    (digits, u32::try_from(decimals.len()).expect("few"))
}

/// The sums of a set of lines, in cents, by way of plain integers.
fn adds_up(lines: &[Line], total: &Total) -> Result<(), TestCaseError> {
    let net: u64 = lines.iter().map(|line| line.net.minor_units()).sum();
    prop_assert_eq!(net, total.net.minor_units());
    let taxes: u64 = total.taxes.iter().map(|tax| tax.tax.minor_units()).sum();
    prop_assert_eq!(net + taxes, total.total.minor_units());
    for line in lines {
        let (price, quantity) = (line.price.to_string(), line.quantity_text());
        let ((price, of_price), (quantity, of_quantity)) = (digits(&price), digits(&quantity));
        // In cents, the half up.
        let one = 10_u128.pow(of_price + of_quantity);
        let cents = (price * quantity * 200 + one) / (2 * one);
        prop_assert_eq!(cents, u128::from(line.net.minor_units()));
    }
    Ok(())
}

fn nets(lines: &[Line]) -> Vec<(String, Money)> {
    lines
        .iter()
        .map(|line| (told(std::slice::from_ref(line)).concat(), line.net))
        .collect()
}

proptest! {
    #![proptest_config(ProptestConfig { cases: 96, failure_persistence: None, ..ProptestConfig::default() })]

    #[test]
    fn cases_add_up_and_keep_their_order(
        sheet in 0..4_usize, policy in 0..3_usize, by_line: bool, pours in proptest::collection::vec(1..900_u32, 0..4),
        likely in proptest::option::of(0..2500_u32),
    ) {
        let mut entries = vec![OPEN.to_string()];
        entries.extend(pours.iter().map(|millilitres| pour(&format!("{millilitres} mL"))));
        let check = job(SHEETS[sheet], "check", &entries);
        let asked = likely.map_or_else(Asked::default, |own| asked(&format!(r#"{{"likely":"{own} mL"}}"#)));
        let told = estimate(&list(policy, by_line), &check, &asked).expect("it can be estimated");
        let [best, likely, worst] = told.cases();
        for case in [best, likely, worst] {
            adds_up(&case.lines, &case.total)?;
            let order: Vec<_> = case.lines.iter().map(|line| line.id).collect();
            prop_assert!(order.is_sorted());
        }
        prop_assert!(best.volume <= likely.volume && likely.volume <= worst.volume);
        let sums = [best, likely, worst].map(|case| case.total.total.minor_units());
        prop_assert!(sums.is_sorted(), "{sums:?}");
        // Whoever reads the document again finds the same promise.
        let again = brimline::estimate::Quote::from_json(&told.to_json());
        prop_assert_eq!(again.ok(), Some(told.quote()));
    }

    #[test]
    fn what_happened_as_assumed_costs_what_was_estimated(sheet in 0..4_usize, policy in 0..3_usize, by_line: bool) {
        let list = list(policy, by_line);
        let before = job(SHEETS[sheet], "check", &[]);
        let estimated = estimate(&list, &before, &Asked::default()).expect("it can be estimated");
        let likely = estimated.cases()[1];
        let entries = [
            OPEN.to_string(),
            pour(&likely.volume.to_string()),
            CLOSED.to_string(),
            TIGHT.to_string(),
        ];
        let billed = invoice(&list, &job(SHEETS[sheet], "check", &entries), Some(&estimated.quote()));
        let billed = billed.expect("it can be billed");
        prop_assert_eq!(nets(billed.lines()), nets(&likely.lines));
        prop_assert_eq!(billed.total(), &likely.total);
        let against = billed.against().expect("an estimate was given");
        prop_assert_eq!((against.more, against.less, against.lines.len()), (None, None, 0));
    }

    #[test]
    fn an_invoice_bills_what_was_poured_whatever_came_out(
        sheet in 0..4_usize, pours in proptest::collection::vec(1..500_u32, 1..5), out in 0..400_u32,
    ) {
        let mut entries = vec![OPEN.to_string()];
        entries.extend(pours.iter().map(|millilitres| pour(&format!("{millilitres} mL"))));
        let billed = |entries: &[String]| {
            invoice(&prices(), &job(SHEETS[sheet], "check", entries), None).expect("it can be billed")
        };
        let before = billed(&entries);
        entries.push(format!(r#""kind":"drained","volume":"{out} mL","measured_by":"jug","why":"excess""#));
        let after = billed(&entries);
        adds_up(after.lines(), after.total())?;
        let fluid = |lines: &[Line]| -> Vec<String> {
            told(lines).into_iter().filter(|line| line.starts_with("fluid")).collect()
        };
        prop_assert_eq!(fluid(before.lines()), fluid(after.lines()));
        // To the millionth of the unit the sheet is told in.
        let told_in = after.waste().volume.unit();
        let out = brimline::Amount::parse(&format!("{out} mL")).expect("a volume");
        prop_assert_eq!(Ok(after.waste().volume), out.to(told_in, 6, brimline::Rounding::HalfUp));
        // Every pour is the cause of what is billed.
        let causes: Vec<u64> = (2..=u64::try_from(pours.len()).expect("few") + 1).collect();
        let line = after.lines().iter().find(|line| line.id.slug() == "fluid").expect("fluid is billed");
        prop_assert_eq!(&line.cause.entries, &causes);
    }
}
