use brimline::{Pack, evaluate, report};

fn main() -> Result<(), Box<dyn std::error::Error>> {
    let journal = std::fs::read_to_string("examples/journals/short_unit.json")?;
    let answer = evaluate(&Pack::embedded()?, journal.as_str())?;

    println!("verdict   {}", answer.verdict().slug());
    println!("as found  {}", answer.as_found());
    println!("leak      {}", answer.leak().by_sheet.slug());
    // The whole answer in English, with the cautions that belong to it.
    println!("\n{}", report::text(&answer));
    Ok(())
}
