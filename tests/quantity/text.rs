//! Amounts and intervals as text, printed and read back.

use super::any::{any_amount, any_two, parts};
use brimline::{Amount, Interval};
use proptest::prelude::*;

proptest! {
    #![proptest_config(ProptestConfig { cases: 1_000, failure_persistence: None, ..ProptestConfig::default() })]

    #[test]
    fn what_is_printed_reads_back(amount in any_amount()) {
        let text = amount.to_string();
        let read = Amount::parse(&text).unwrap();
        prop_assert_eq!(parts(&read), parts(&amount));
        prop_assert_eq!(read.to_string(), text.clone());
        prop_assert_eq!(format!("{} {}", amount.number(), amount.unit()), text.clone());
        let json = serde_json::to_string(&amount).unwrap();
        prop_assert_eq!(parts(&serde_json::from_str(&json).unwrap()), parts(&amount));
    }

    #[test]
    fn any_text_is_read_or_refused(text in "\\PC{0,24}", number in "[-+−]?[0-9]{0,17}[.,]?[0-9]{0,11}", unit in "[ a-zA-Z0-9./°·³²^*()-]{0,12}") {
        for text in [text, format!("{number} {unit}"), format!("{number}{unit}")] {
            if let Ok(amount) = Amount::parse(&text) {
                let again = Amount::parse(&amount.to_string()).unwrap();
                prop_assert_eq!(parts(&again), parts(&amount));
            }
            let _ = Interval::parse(&text);
        }
    }

    #[test]
    fn intervals_print_and_intersect((a, b) in any_two(), (c, d) in any_two(), open in 0..4_u8) {
        let interval = |a: Amount, b: Amount, open: u8| {
            let (lo, hi) = if a <= b { (a, b) } else { (b, a) };
            Interval::new((open & 1 == 0).then_some(lo), (open & 2 == 0).then_some(hi)).unwrap()
        };
        let one = interval(a, b, open);
        let read: Interval = one.to_string().parse().unwrap();
        prop_assert_eq!(read, one);
        prop_assert_eq!(read.to_string(), one.to_string());
        let json = serde_json::to_string(&one).unwrap();
        prop_assert_eq!(serde_json::from_str::<Interval>(&json).unwrap(), one);
        if a.kind() != c.kind() {
            return Ok(());
        }
        let other = interval(c, d, 0);
        let both = one.intersect(&other).unwrap();
        for amount in [a, b, c, d] {
            let in_both = one.contains(&amount).unwrap() && other.contains(&amount).unwrap();
            prop_assert_eq!(both.is_some_and(|both| both.contains(&amount).unwrap()), in_both);
        }
    }
}
