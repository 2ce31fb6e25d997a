//! What a counter is asked.

use super::{Request, pack};
use brimline::document::canonical;
use brimline::estimate::{Asked, Quote, waste};
use brimline::{Error, Estimate, Invoice, LevelCheck, Limits, PriceList, estimate, invoice};
use serde_json::json;

/// A price list; an empty text names the embedded one.
pub fn prices(text: &str) -> Result<PriceList, Error> {
    if text.is_empty() {
        PriceList::embedded()
    } else {
        PriceList::from_json(text)
    }
}

fn check(text: &str, journal: &str) -> Result<LevelCheck, Error> {
    LevelCheck::replay(&pack(text, &Limits::default())?, journal)
}

/// The check of prices, pack, journal and what is asked, and its estimate.
pub fn estimated(args: &[String]) -> Result<(LevelCheck, Estimate), Error> {
    let list = prices(&args[0])?;
    let check = check(&args[1], &args[2])?;
    let asked = match args[3].as_str() {
        "" => Asked::default(),
        text => Asked::from_json(text)?,
    };
    let told = estimate(&list, &check, &asked)?;
    Ok((check, told))
}

/// The check of prices, pack, journal and an estimate, and its invoice.
pub fn billed(args: &[String]) -> Result<(LevelCheck, Invoice), Error> {
    let list = prices(&args[0])?;
    let check = check(&args[1], &args[2])?;
    let quote = Some(args[3].as_str()).filter(|text| !text.is_empty());
    let quote = quote.map(Quote::from_json).transpose()?;
    let told = invoice(&list, &check, quote.as_ref())?;
    Ok((check, told))
}

pub fn respond(request: &Request) -> Result<String, Error> {
    let arg = |index: usize| request.args.get(index).map_or("", String::as_str);
    Ok(match request.op.as_str() {
        "price_list" => {
            let list = prices(arg(0))?;
            let currency = list.currency().code();
            json!({"currency": currency, "digest": list.digest(), "id": list.id(), "version": list.version()})
                .to_string()
        }
        "estimate" => estimated(&request.args)?.1.to_json(),
        "invoice" => billed(&request.args)?.1.to_json(),
        _ => canonical(&waste(&check(arg(0), arg(1))?)?),
    })
}
