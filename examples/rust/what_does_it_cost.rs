//! What will it cost, when must the customer be called, and what did it cost in the end?

use brimline::estimate::Asked;
use brimline::{LevelCheck, Pack, PriceList, estimate, invoice};

const HEADER: &str =
    r#"{"format":"brimline-journal/1","procedure":"pipit-level","edition":2,"job":"check"}"#;
const ASKED: &str = r#"{"ceiling":"75.00 EUR","planned":"0.75 L"}"#;

fn main() -> Result<(), Box<dyn std::error::Error>> {
    let (pack, prices) = (Pack::embedded()?, PriceList::embedded()?);

    let before = LevelCheck::start(&pack, HEADER)?;
    let told = estimate(&prices, &before, &Asked::from_json(ASKED)?)?;
    for (name, case) in ["best", "likely", "worst"].into_iter().zip(told.cases()) {
        println!("{name}: {} in, {}", case.volume, case.total.total);
    }
    if let Some(affordable) = told.approval().and_then(|approval| approval.affordable) {
        println!("call the customer before more than {affordable} goes in");
    }

    let journal = std::fs::read_to_string("examples/journals/short_unit.json")?;
    let after = LevelCheck::replay(&pack, &journal)?;
    let billed = invoice(&prices, &after, Some(&told.quote()))?;
    for line in billed.lines() {
        let (quantity, net) = (line.quantity_text(), line.net);
        println!("{}: {quantity} at {}, {net}", line.item, line.price);
    }
    println!("total: {}", billed.total().total);
    for line in billed
        .against()
        .into_iter()
        .flat_map(|against| &against.lines)
    {
        let why: Vec<&str> = line.why.iter().map(|why| why.slug()).collect();
        let (why, entries) = (why.join(", "), &line.entries);
        println!("not as estimated: {}, {why}, {entries:?}", line.id.slug());
    }
    Ok(())
}
