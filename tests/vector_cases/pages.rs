//! Pages and pictures of a job, as the pieces that end in a line feed or a tag.

use super::{Request, pack};
use brimline::report::{Medium, Particulars, Picture, bay_card, picture, work_sheet};
use brimline::{Error, LevelCheck, Limits};
use serde_json::json;

pub fn respond(request: &Request) -> Result<String, Error> {
    let arg = |index: usize| request.args.get(index).map_or("", String::as_str);
    let pack = pack(arg(1), &Limits::default())?;
    let (which, journal, medium) = (arg(0), arg(2), Medium::from_slug(arg(4)));
    let given = Some(arg(3)).filter(|text| !text.is_empty()).unwrap_or("{}");
    let medium = medium.unwrap_or(Medium::Html);
    let told = Particulars::read(given, |particulars| match which {
        "work_sheet" => work_sheet(&pack, journal, particulars, medium),
        "bay_card" => bay_card(&pack, journal, particulars, medium),
        _ => {
            let which = Picture::from_slug(which).expect("a vector names a page or a picture");
            let check = LevelCheck::replay(&pack, journal)?;
            Ok(picture(&check, which, particulars.rig.as_ref())?.unwrap_or_default())
        }
    })??;
    let pieces: Vec<&str> = told.split_terminator(['\n', '>']).collect();
    Ok(json!({"pieces": pieces}).to_string())
}
