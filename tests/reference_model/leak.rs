//! The leak reading: what was used against the sheet's limit, and how surely.

use crate::ledger::Interval;
use crate::sheet::{LeakLimit, Sheet};
use crate::words::{Exact, Toward, volume_text};
use num_traits::{Signed, Zero};
use serde_json::{Map, Value, json};

/// Nominal volumes counted, in mL.
pub struct Counted {
    pub added: Exact,
    pub captured: Exact,
    pub drained: Exact,
}

/// The leak block of the result. `applies`: the job asks the question and the sheet is known.
pub fn reading(
    sheet: Option<&Sheet>,
    applies: bool,
    counted: &Counted,
    found: &Interval,
    level_was_found: bool,
    unit: &str,
) -> Value {
    let gross = counted.added.clone();
    let net = (&counted.added - &counted.captured - &counted.drained).max(Exact::zero());
    let limit = sheet.and_then(|sheet| sheet.leak_limit.as_ref());
    let used = if limit.is_some_and(|limit| limit.gross) {
        &gross
    } else {
        &net
    };
    let shortage = found.negated();
    let nearest = |volume: &Exact| volume_text(volume, unit, Toward::Nearest);

    let mut block = Map::new();
    block.insert(
        "counted".into(),
        json!({"gross": nearest(&gross), "net": nearest(&net), "used": nearest(used)}),
    );
    block.insert("shortage".into(), interval_value(&shortage, unit));
    let Some(limit) = limit.filter(|_| applies) else {
        block.insert("by_sheet".into(), json!("not_applicable"));
        block.insert("certainty".into(), json!("not_applicable"));
        return Value::Object(block);
    };

    let passes = |volume: &Exact| match limit.at_least {
        true => *volume >= limit.amount,
        false => *volume > limit.amount,
    };
    let proved_short = shortage.lo.as_ref().filter(|lo| passes(lo));
    let (by_sheet, margin) = match proved_short {
        _ if passes(used) => ("above", (used - &limit.amount).abs()),
        Some(lo) => ("above", lo - &limit.amount),
        None if level_was_found => ("below", (used - &limit.amount).abs()),
        None => ("open", (used - &limit.amount).abs()),
    };
    block.insert("by_sheet".into(), json!(by_sheet));
    block.insert(
        "certainty".into(),
        json!(certainty(by_sheet, limit, &shortage)),
    );
    block.insert("limit".into(), json!(limit.text));
    block.insert("margin".into(), json!(nearest(&margin)));
    Value::Object(block)
}

fn certainty(by_sheet: &str, limit: &LeakLimit, shortage: &Interval) -> &'static str {
    let (amount, about) = (&limit.amount, &limit.about);
    let sharp_at_least = limit.at_least && about.is_zero();
    let clear = match by_sheet {
        "below" => shortage.hi.as_ref().is_some_and(|hi| match sharp_at_least {
            true => hi < amount,
            false => *hi <= amount - about,
        }),
        "above" => shortage.lo.as_ref().is_some_and(|lo| match sharp_at_least {
            true => lo >= amount,
            false => *lo > amount + about,
        }),
        _ => return "open",
    };
    if clear { "clear" } else { "marginal" }
}

/// An interval as the result writes it: ends outward, `null` where unbounded.
pub fn interval_value(interval: &Interval, unit: &str) -> Value {
    let end =
        |end: &Option<Exact>, toward| end.as_ref().map(|volume| volume_text(volume, unit, toward));
    json!([
        end(&interval.lo, Toward::Lower),
        end(&interval.hi, Toward::Upper)
    ])
}
