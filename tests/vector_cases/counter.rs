//! What a counter is asked.

use super::{Request, pack};
use brimline::document::canonical;
use brimline::estimate::{Asked, Quote, waste};
use brimline::{Error, LevelCheck, Limits, PriceList, estimate, invoice};
use serde_json::json;

/// A price list; an empty text names the embedded one.
fn prices(text: &str) -> Result<PriceList, Error> {
    if text.is_empty() {
        PriceList::embedded()
    } else {
        PriceList::from_json(text)
    }
}

fn check(text: &str, journal: &str) -> Result<LevelCheck, Error> {
    LevelCheck::replay(&pack(text, &Limits::default())?, journal)
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
        "estimate" => {
            let list = prices(arg(0))?;
            let check = check(arg(1), arg(2))?;
            let asked = match arg(3) {
                "" => Asked::default(),
                text => Asked::from_json(text)?,
            };
            estimate(&list, &check, &asked)?.to_json()
        }
        "invoice" => {
            let list = prices(arg(0))?;
            let check = check(arg(1), arg(2))?;
            let quote = Some(arg(3)).filter(|text| !text.is_empty());
            let quote = quote.map(Quote::from_json).transpose()?;
            invoice(&list, &check, quote.as_ref())?.to_json()
        }
        _ => canonical(&waste(&check(arg(0), arg(1))?)?),
    })
}
