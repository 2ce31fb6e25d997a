//! Tells what a journal file proves, on the embedded pack: `level_check JOURNAL`

fn main() -> Result<(), Box<dyn std::error::Error>> {
    let file = std::env::args()
        .nth(1)
        .ok_or("usage: level_check JOURNAL")?;
    let journal = std::fs::read_to_string(file)?;
    let result = brimline::evaluate(&brimline::Pack::embedded()?, journal.as_str())?;
    let tell = |name: &str, text: &str| println!("{name:<12}{text}");

    tell("verdict", result.verdict().slug());
    tell("as found", &result.as_found().to_string());
    tell("net added", &result.net_added().to_string());
    tell("now", &result.now().to_string());
    let leak = result.leak();
    let margin = leak.margin.map(|margin| format!(", margin {margin}"));
    let reading = format!("{}, {}", leak.by_sheet.slug(), leak.certainty.slug());
    tell("leak limit", &(reading + &margin.unwrap_or_default()));
    for finding in result.findings() {
        tell(finding.severity.slug(), finding.id);
    }
    if let Some(act) = result.next().first() {
        tell("next", act.id);
        for caution in &act.cautions {
            tell("  mind", caution);
        }
    }
    for caution in result.cautions() {
        tell("caution", caution);
    }
    Ok(())
}
