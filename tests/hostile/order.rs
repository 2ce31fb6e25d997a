//! Entries out of their order.

use super::documents::{HEADER, journal_of, note, read, told};
use proptest::prelude::*;
use proptest::test_runner::TestRunner;

#[test]
fn every_break_of_the_order_is_told() {
    let mut runner = TestRunner::deterministic();
    let orders = Just((1..=12_usize).collect::<Vec<_>>()).prop_shuffle();
    runner
        .run(&(orders, any::<bool>()), |(order, spoilt)| {
            // A fault in an entry does not hide that it is out of its order.
            let text = if spoilt { "" } else { "said" };
            let entries: Vec<String> = order.iter().map(|seq| note(*seq, text)).collect();
            let mut wanted = Vec::new();
            for (index, seq) in order.iter().enumerate() {
                if index > 0 && order[index - 1] > *seq {
                    wanted.push(("sequence", format!("entries[{index}].seq")));
                }
                if spoilt {
                    wanted.push(("out_of_range", format!("entries[{index}].text")));
                }
            }
            let as_lines = format!("{HEADER}\n{}\n", entries.join("\n"));
            for text in [journal_of(&entries.join(",")), as_lines] {
                let found: Vec<(&str, String)> = read(&text).err().map_or_else(Vec::new, |error| {
                    let told = told(&error).into_iter();
                    told.map(|(kind, path)| (kind, path.to_string())).collect()
                });
                prop_assert_eq!(&found, &wanted);
            }
            Ok(())
        })
        .expect("every order is told");
}
