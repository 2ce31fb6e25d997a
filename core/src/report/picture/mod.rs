//! Three pictures of a check, as SVG text: the warm-up, the narrowing of what is known, the closing torque on the tool.
//!
//! Every number that is drawn stands in the picture twice: by its place, with the axes telling what their ends mean
//! (`data-from` at `data-first` to `data-to` at `data-last`), and exactly as it was entered or answered, in a `data-` attribute.

mod axis;
mod clock;
mod closing;
mod drawing;
mod legend;
mod narrowing;
mod sign;
mod warming;

pub(super) use closing::Tightening;
pub(super) use narrowing::Narrowing;
pub(super) use warming::WarmUp;

use super::teller::Teller;
use crate::check::LevelCheck;
use crate::error::Error;
use crate::quantity::Amount;
use crate::torque::Tool;
use crate::word::words;
use alloc::string::String;

words! {
    /// What a picture shows.
    pub enum Picture {
        /// The temperatures by time, the window, the forecast, the plug and the pours.
        WarmUp = "warm_up",
        /// What is known of the departure, entry by entry.
        Narrowing = "narrowing",
        /// The closing torque: what the sheet asks, what the tool is set to, what was entered.
        Closing = "closing",
    }
}

/// A torque tool as it is put on the plug.
///
/// ```
/// use brimline::{Amount, report::Rig, torque::{Tool, ToolType}};
/// let (tool_type, max) = (ToolType::SettingAdjustable, Amount::parse("25 N·m")?);
/// let tool = Tool { name: "short", tool_type, max, min: None, graduation: None, permissible: None, lever: None };
/// let rig = Rig::new(tool);
/// assert_eq!(rig.adapter, None);
/// # Ok::<(), brimline::Error>(())
/// ```
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub struct Rig<'a> {
    /// The tool.
    pub tool: Tool<'a>,
    /// The adapter, from the drive to the plug; `None` where none is used.
    pub adapter: Option<Amount>,
    /// Between lever and adapter, 0° to 180°.
    pub angle: Option<Amount>,
}

impl<'a> Rig<'a> {
    /// A tool without an adapter.
    #[must_use]
    pub const fn new(tool: Tool<'a>) -> Self {
        Rig {
            tool,
            adapter: None,
            angle: None,
        }
    }
}

/// The style of pictures: colours as variables that a host's own style may set, light and dark.
pub(super) const STYLE: &str = include_str!("style.css");

/// A picture of a check as SVG text that stands alone; `None` where there is nothing to draw. It is 360 wide, so it reads at the
/// width of a phone, and takes the width it is given.
///
/// The colours are the variables `--brim-ink`, `--brim-paper` and others of the style inside; text is text, title and
/// description are there for readers aloud, and the same check gives the same bytes.
///
/// # Errors
/// Those of [`tool_suits`](crate::torque::tool_suits), for the tool of the third picture.
///
/// ```
/// use brimline::{LevelCheck, Pack, report::{Picture, picture}};
/// let pack = Pack::embedded()?;
/// let journal = r#"{"format":"brimline-journal/1","procedure":"pipit-level","job":"check","entries":[
///     {"seq":1,"at":"2026-03-02T09:00:00Z","kind":"temperature","reading":"31 °C","source":"scan"}]}"#;
/// let check = LevelCheck::replay(&pack, journal)?;
/// let svg = picture(&check, Picture::WarmUp, None)?.unwrap_or_default();
/// assert!(svg.starts_with("<svg ") && svg.contains("data-reading=\"31 °C\""));
/// assert_eq!(picture(&check, Picture::Narrowing, None)?, None);
/// # Ok::<(), brimline::Error>(())
/// ```
pub fn picture(
    check: &LevelCheck,
    which: Picture,
    rig: Option<&Rig<'_>>,
) -> Result<Option<String>, Error> {
    Teller::english().picture(check, which, rig)
}

impl Teller {
    /// A picture of a check as SVG text that stands alone; `None` where there is nothing to draw. It is drawn in the units of the
    /// sheet; its words are this teller's.
    ///
    /// # Errors
    /// Those of [`tool_suits`](crate::torque::tool_suits), for the tool of the third picture.
    pub fn picture(
        &self,
        check: &LevelCheck,
        which: Picture,
        rig: Option<&Rig<'_>>,
    ) -> Result<Option<String>, Error> {
        let course = check.course();
        let drawn = match which {
            Picture::WarmUp => WarmUp::of(self, check, &course).map(|picture| picture.draw()),
            Picture::Narrowing => Narrowing::of(self, check, &course).map(|picture| picture.draw()),
            Picture::Closing => {
                Tightening::of(self, check, &course, rig)?.map(|picture| picture.draw())
            }
        };
        // The style goes in right behind the opening tag.
        Ok(drawn.and_then(|svg| {
            let (head, rest) = svg.split_once('>')?;
            Some(alloc::format!("{head}><style>{STYLE}</style>{rest}"))
        }))
    }
}
