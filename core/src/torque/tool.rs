//! Which of the tools at hand can tighten a plug, and why another cannot.

use super::adapter::{Adapter, cautions, on_graduation};
use super::tool_reason::{Reasons, ToolReason, ToolReasonId};
use super::tool_type::ToolType;
use super::{above_zero, number, out_of_range};
use crate::error::{Error, ErrorKind, Fault};
use crate::quantity::{Amount, Kind, Unit};
use alloc::format;
use alloc::vec::Vec;
use serde::Serialize;

/// Where tools are tested from, as a share of their maximum; ISO 6789 of 2003.
const TESTED_FROM: f64 = 0.2;

/// What binary fractions lose in a share of the target.
const ROUNDING: f64 = 1e-12;

/// What is to be tightened, and through what.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub struct ToolJob {
    /// The torque at the plug, above zero.
    pub target: Amount,
    /// How far off it may be to either side, a torque above zero; `None` where nobody says.
    pub tolerance: Option<Amount>,
    /// The adapter, from the drive to the plug; `None` where none is used.
    pub adapter: Option<Amount>,
    /// Between lever and adapter, 0° to 180°.
    pub angle: Option<Amount>,
}

/// One tool at hand.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub struct Tool<'a> {
    /// What it is called.
    pub name: &'a str,
    /// Its type and class.
    pub tool_type: ToolType,
    /// The largest torque it is for; of a tool with one setting, that setting.
    pub max: Amount,
    /// The lowest marked value; 20 % of the maximum where it is `None`.
    pub min: Option<Amount>,
    /// The step of its scale.
    pub graduation: Option<Amount>,
    /// Its own permissible deviation, as a ratio; that of its type where it is `None`.
    pub permissible: Option<Amount>,
    /// From the mark of the grip to the drive; needed with an adapter.
    pub lever: Option<Amount>,
}

/// The tools, those that suit first.
#[derive(Debug, Clone, PartialEq, Serialize)]
#[non_exhaustive]
pub struct ToolChoice<'a> {
    /// Every tool: by rank, then those that do not suit, as they were listed.
    pub tools: Vec<ToolFit<'a>>,
    /// What to mind, as caution ids.
    pub cautions: &'static [&'static str],
}

/// How one tool suits.
#[derive(Debug, Clone, PartialEq, Serialize)]
#[non_exhaustive]
pub struct ToolFit<'a> {
    /// What it is called.
    pub name: &'a str,
    /// Whether it suits.
    pub suits: bool,
    /// 1 is the best; 0 for one that does not suit.
    pub rank: u32,
    /// What it is set to, on its graduation, else in the unit of its maximum.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub setting: Option<Amount>,
    /// The torque at the plug with that setting, in the unit of the target.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub applied: Option<Amount>,
    /// How far that is from the target, in per cent of it.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub error: Option<Amount>,
    /// How far the tool itself may be off.
    pub permissible: Amount,
    /// Why it does not suit, and what is to be known of it.
    pub reasons: Vec<ToolReason>,
}

/// Which tools can tighten the plug, the best first.
///
/// A tool suits where its setting lies from its lowest marked value (20 % of its maximum where none is given) to its
/// maximum, and where its permissible deviation, and what its graduation adds, stay within the tolerance of the joint;
/// without one, where the graduation alone adds no more than the tool may be off. Best is the one that is used where it is
/// tested, then the one with the least deviation, then the first in the list.
///
/// Source: ISO 6789 for types, deviations and the range that is tested (2003; since ISO 6789-1:2017 the range begins at
/// the lowest marked value).
///
/// # Errors
///
/// [`WrongKind`](ErrorKind::WrongKind); [`OutOfRange`](ErrorKind::OutOfRange) for what is not above zero, a permissible
/// deviation of 100 % or more, an angle outside 0° to 180°; [`Conflict`](ErrorKind::Conflict) for an angle without an
/// adapter and a lowest value above the maximum. Faults of a tool have paths such as `tools[1].max`.
///
/// ```
/// use brimline::{Amount, torque::{Tool, ToolJob, ToolType, tool_suits}};
/// let wrench = |name, max| -> Result<Tool, brimline::Error> {
///     let (tool_type, max) = (ToolType::SettingAdjustable, Amount::parse(max)?);
///     Ok(Tool { name, tool_type, max, min: None, graduation: None, permissible: None, lever: None })
/// };
/// let job = ToolJob { target: Amount::parse("12 N·m")?, tolerance: None, adapter: None, angle: None };
/// let told = tool_suits(&job, &[wrench("long", "200 N·m")?, wrench("short", "50 N·m")?])?;
/// assert_eq!((told.tools[0].name, told.tools[0].suits), ("short", true));
/// assert_eq!((told.tools[1].name, told.tools[1].suits), ("long", false));
/// # Ok::<(), brimline::Error>(())
/// ```
pub fn tool_suits<'a>(job: &ToolJob, tools: &[Tool<'a>]) -> Result<ToolChoice<'a>, Error> {
    above_zero("target", job.target, Kind::Torque)?;
    if let Some(tolerance) = job.tolerance {
        above_zero("tolerance", tolerance, Kind::Torque)?;
    }
    let adapter = Adapter::of(job.adapter, job.angle)?;
    let mut fits = Vec::with_capacity(tools.len());
    for (index, tool) in tools.iter().enumerate() {
        let judged = judge(job, adapter, tool).map_err(|error| {
            let mut fault = error.first().clone();
            let within = if fault.path.is_empty() { "" } else { "." };
            fault.path = format!("tools[{index}]{within}{}", fault.path);
            Error::from(fault)
        })?;
        fits.push(judged);
    }
    // Stable, so what is equally good stays in the order of the list.
    fits.sort_by(|(one, a), (other, b)| {
        let order = other.suits.cmp(&one.suits);
        if one.suits && other.suits {
            order
                .then(is_low(one).cmp(&is_low(other)))
                .then(a.total_cmp(b))
        } else {
            order
        }
    });
    let mut ranks = 1..;
    let tools = fits.into_iter().map(|(fit, _)| ToolFit {
        rank: if fit.suits {
            ranks.next().unwrap_or_default()
        } else {
            0
        },
        ..fit
    });
    Ok(ToolChoice {
        tools: tools.collect(),
        // What a graduation adds is judged tool by tool.
        cautions: cautions(adapter.is_some(), 0.0),
    })
}

fn is_low(fit: &ToolFit<'_>) -> bool {
    fit.reasons
        .iter()
        .any(|reason| reason.id == ToolReasonId::LowInRange)
}

/// How one tool suits, and how far off the plug may come out with it, as a share of the target.
fn judge<'a>(
    job: &ToolJob,
    adapter: Option<Adapter>,
    tool: &Tool<'a>,
) -> Result<(ToolFit<'a>, f64), Error> {
    let lowest = check(tool)?;
    let permissible = match tool.permissible {
        Some(own) => own,
        None => tool.tool_type.permissible(tool.max)?,
    };
    let mut reasons = Reasons::default();
    let set = match gain(job, adapter, tool, &mut reasons) {
        Some(gain) => set(job, gain, tool, &mut reasons)?,
        None => None,
    };
    if let Some(set) = &set {
        in_range(set.setting, lowest, tool, &mut reasons)?;
    }
    let share = number(permissible, Unit::One);
    let off = set.as_ref().map_or(0.0, |set| set.off.abs());
    let room = match job.tolerance {
        // As printed, so that 4 % of 12 N·m is 0.48 N·m and no more.
        Some(tolerance) => {
            let target = number(job.target, tolerance.unit());
            let own = Amount::from_computed(share * target, tolerance.unit())?;
            let args = [("permissible", own), ("tolerance", tolerance)];
            if own > tolerance {
                reasons.add(ToolReasonId::ToleranceTooWide, args);
            }
            (own <= tolerance).then(|| tolerance.to_f64() / target - share)
        }
        None => Some(share),
    };
    if let (Some(set), Some(room)) = (&set, room)
        && off > room.max(0.0) + ROUNDING
    {
        let (id, name, step) = match tool.graduation {
            Some(step) if !tool.tool_type.is_fixed() => {
                (ToolReasonId::GraduationCoarse, "graduation", step)
            }
            _ => (ToolReasonId::FixedElsewhere, "setting", set.setting),
        };
        reasons.add(id, [(name, step), ("applied", set.applied)]);
    }
    if tool.permissible.is_none() {
        let args = [("permissible", permissible)];
        reasons.add(ToolReasonId::PermissibleAssumed, args);
    }
    let error = set
        .as_ref()
        .map(|set| Amount::from_computed(set.off * 100.0, Unit::Percent));
    let fit = ToolFit {
        name: tool.name,
        suits: reasons.0.iter().all(|reason| reason.id.is_note()),
        rank: 0,
        setting: set.as_ref().map(|set| set.setting),
        applied: set.as_ref().map(|set| set.applied),
        error: error.transpose()?,
        permissible,
        reasons: reasons.0,
    };
    Ok((fit, share + off))
}

/// Refuses a tool that does not exist; its lowest torque.
fn check(tool: &Tool<'_>) -> Result<Amount, Error> {
    above_zero("max", tool.max, Kind::Torque)?;
    if let Some(graduation) = tool.graduation {
        above_zero("graduation", graduation, Kind::Torque)?;
    }
    if let Some(lever) = tool.lever {
        above_zero("lever", lever, Kind::Length)?;
    }
    if let Some(own) = tool.permissible {
        above_zero("permissible", own, Kind::Ratio)?;
        if number(own, Unit::One) >= 1.0 {
            let fault = out_of_range("permissible", own);
            return Err(fault.allowed(["below 100 %"]).into());
        }
    }
    let Some(min) = tool.min else {
        return tested_from(tool);
    };
    above_zero("min", min, Kind::Torque)?;
    if min > tool.max {
        let fault = Fault::new(ErrorKind::Conflict)
            .at("min")
            .got(&format!("{min}"));
        let hint = format!("the lowest value is not above the largest, {}", tool.max);
        return Err(fault.hint(hint).into());
    }
    Ok(min)
}

fn tested_from(tool: &Tool<'_>) -> Result<Amount, Error> {
    Amount::from_computed(tool.max.to_f64() * TESTED_FROM, tool.max.unit())
}

/// What the plug gets for one of the setting.
fn gain(
    job: &ToolJob,
    adapter: Option<Adapter>,
    tool: &Tool<'_>,
    reasons: &mut Reasons,
) -> Option<f64> {
    let (Some(adapter), Some(length)) = (adapter, job.adapter) else {
        return Some(1.0);
    };
    let Some(lever) = tool.lever else {
        reasons.add(ToolReasonId::LeverUnknown, [("adapter", length)]);
        return None;
    };
    let gain = adapter.settable(lever);
    if gain.is_none() {
        reasons.add(
            ToolReasonId::LeverTooShort,
            [("lever", lever), ("adapter", length)],
        );
    }
    gain
}

/// What a tool is set to, what that gives, and how far off it is as a share of the target.
struct Set {
    setting: Amount,
    applied: Amount,
    off: f64,
}

/// What the tool is set to; `None` where its graduation is coarser than that.
fn set(
    job: &ToolJob,
    gain: f64,
    tool: &Tool<'_>,
    reasons: &mut Reasons,
) -> Result<Option<Set>, Error> {
    let setting = match tool.graduation {
        _ if tool.tool_type.is_fixed() => tool.max,
        Some(graduation) => {
            let unit = graduation.unit();
            let wanted = Amount::from_computed(number(job.target, unit) / gain, unit)?;
            let Some(setting) = on_graduation(wanted, graduation)? else {
                let args = [("graduation", graduation)];
                reasons.add(ToolReasonId::GraduationCoarse, args);
                return Ok(None);
            };
            setting
        }
        None => {
            let unit = tool.max.unit();
            return Ok(Some(Set {
                setting: Amount::from_computed(number(job.target, unit) / gain, unit)?,
                applied: job.target,
                off: 0.0,
            }));
        }
    };
    let applied = number(setting, job.target.unit()) * gain;
    Ok(Some(Set {
        setting,
        applied: Amount::from_computed(applied, job.target.unit())?,
        off: applied / job.target.to_f64() - 1.0,
    }))
}

fn in_range(
    setting: Amount,
    lowest: Amount,
    tool: &Tool<'_>,
    reasons: &mut Reasons,
) -> Result<(), Error> {
    let tested_from = tested_from(tool)?;
    if setting < lowest {
        reasons.add(
            ToolReasonId::BelowRange,
            [("setting", setting), ("min", lowest)],
        );
    } else if setting > tool.max {
        reasons.add(
            ToolReasonId::AboveRange,
            [("setting", setting), ("max", tool.max)],
        );
    } else if setting < tested_from {
        reasons.add(
            ToolReasonId::LowInRange,
            [("setting", setting), ("tested_from", tested_from)],
        );
    }
    Ok(())
}

#[cfg(test)]
mod tests {
    #![allow(clippy::unwrap_used, clippy::indexing_slicing)]

    use super::*;
    use alloc::string::ToString;

    fn amount(text: &str) -> Amount {
        Amount::parse(text).unwrap()
    }

    fn job(target: &str) -> ToolJob {
        ToolJob {
            target: amount(target),
            tolerance: None,
            adapter: None,
            angle: None,
        }
    }

    fn tool<'a>(name: &'a str, max: &str) -> Tool<'a> {
        Tool {
            name,
            tool_type: ToolType::SettingAdjustable,
            max: amount(max),
            min: None,
            graduation: None,
            permissible: None,
            lever: None,
        }
    }

    /// The tools in order, each with its rank and the reasons that are no mere statement of the type's deviation.
    fn told(job: &ToolJob, tools: &[Tool<'_>]) -> Vec<(u32, alloc::string::String)> {
        let told = tool_suits(job, tools).unwrap();
        told.tools
            .iter()
            .map(|fit| {
                assert_eq!(fit.suits, fit.rank > 0);
                let reasons = fit.reasons.iter().map(|reason| reason.id.slug());
                let said: Vec<_> = reasons.filter(|id| *id != "permissible_assumed").collect();
                (fit.rank, format!("{}: {}", fit.name, said.join(" ")))
            })
            .collect()
    }

    #[test]
    fn four_per_cent_of_twelve_is_within_half() {
        // 4 % of 12 N·m is 0.48 N·m, whatever 12 N·m itself would class as.
        let tools = [tool("wrench", "50 N·m")];
        for (tolerance, suits) in [("0.48 N·m", true), ("0.5 N·m", true), ("0.47 N·m", false)] {
            let job = ToolJob {
                tolerance: Some(amount(tolerance)),
                ..job("12 N·m")
            };
            let fit = &tool_suits(&job, &tools).unwrap().tools[0];
            assert_eq!(fit.suits, suits, "{tolerance}");
            let reason = &fit.reasons[0];
            if !suits {
                assert_eq!(reason.id, ToolReasonId::ToleranceTooWide);
                assert_eq!(reason.args["permissible"].to_string(), "0.48 N·m");
            }
        }
    }

    #[test]
    fn the_range_decides() {
        let long = Tool {
            min: Some(amount("40 N·m")),
            ..tool("long", "200 N·m")
        };
        let marked = Tool {
            min: Some(amount("5 N·m")),
            ..tool("marked", "100 N·m")
        };
        let tools = [
            long,
            tool("small", "10 N·m"),
            marked,
            tool("right", "50 N·m"),
            tool("at the fifth", "60 N·m"),
        ];
        let expected = [
            (1, "right: "),
            (2, "at the fifth: "),
            (3, "marked: low_in_range"),
            (0, "long: below_range"),
            (0, "small: above_range"),
        ];
        let found = told(&job("12 N·m"), &tools);
        assert_eq!(found, expected.map(|(rank, text)| (rank, text.to_string())));
    }

    #[test]
    fn the_least_deviation_ranks_first() {
        let own = |name, permissible| Tool {
            permissible: Some(amount(permissible)),
            ..tool(name, "50 N·m")
        };
        let stepped = Tool {
            graduation: Some(amount("5 N·m")),
            ..own("stepped", "1 %")
        };
        let tools = [
            own("three", "3 %"),
            stepped,
            own("two", "2 %"),
            own("also two", "2 %"),
        ];
        let found = told(&job("12 N·m"), &tools);
        // 10 N·m is 16.7 % below 12 N·m.
        let expected = [
            (1, "two: "),
            (2, "also two: "),
            (3, "three: "),
            (0, "stepped: graduation_coarse"),
        ];
        assert_eq!(found, expected.map(|(rank, text)| (rank, text.to_string())));
    }

    #[test]
    fn graduation_and_deviation_share_the_tolerance() {
        // 12.5 N·m for 12.3 N·m is 1.63 % over; with 4 % that is 0.69 N·m.
        let stepped = Tool {
            graduation: Some(amount("0.5 N·m")),
            ..tool("stepped", "50 N·m")
        };
        for (tolerance, reasons) in [("0.7 N·m", ""), ("0.69 N·m", "graduation_coarse")] {
            let job = ToolJob {
                tolerance: Some(amount(tolerance)),
                ..job("12.3 N·m")
            };
            assert_eq!(told(&job, &[stepped])[0].1, format!("stepped: {reasons}"));
        }
        let coarse = Tool {
            graduation: Some(amount("20 N·m")),
            ..stepped
        };
        assert_eq!(
            told(&job("12 N·m"), &[coarse])[0].1,
            "stepped: graduation_coarse"
        );
    }

    #[test]
    fn an_adapter_needs_a_lever() {
        let job = ToolJob {
            adapter: Some(amount("40 mm")),
            ..job("14 N·m")
        };
        let levered = |name, lever| Tool {
            lever: Some(amount(lever)),
            ..tool(name, "50 N·m")
        };
        let tools = [
            tool("unknown", "50 N·m"),
            levered("stub", "30 mm"),
            levered("good", "230 mm"),
        ];
        let expected = [
            (1, "good: "),
            (0, "unknown: lever_unknown"),
            (0, "stub: lever_too_short"),
        ];
        assert_eq!(
            told(&job, &tools),
            expected.map(|(rank, text)| (rank, text.to_string()))
        );
        let choice = tool_suits(&job, &tools).unwrap();
        // 14 · 230 / 270.
        assert!((choice.tools[0].setting.unwrap().to_f64() - 11.926).abs() < 0.000_5);
        assert_eq!(choice.tools[0].applied, Some(job.target));
        assert_eq!(
            choice.cautions,
            ["grip_at_mark", "torque_unit", "threads_as_printed"]
        );
        assert_eq!(choice.tools[1].setting, None);
    }

    #[test]
    fn a_fixed_tool_has_one_setting() {
        let fixed = |name, max| Tool {
            tool_type: ToolType::SettingFixed,
            ..tool(name, max)
        };
        let found = told(
            &job("12 N·m"),
            &[fixed("fixed", "12 N·m"), fixed("other", "20 N·m")],
        );
        let expected = [(1, "fixed: "), (0, "other: fixed_elsewhere")];
        assert_eq!(found, expected.map(|(rank, text)| (rank, text.to_string())));
    }

    #[test]
    fn the_setting_is_in_the_unit_of_the_tool() {
        // 12 N·m is 106.2 lbf·in, 106 on the scale, which gives 11.976 N·m.
        let inch = Tool {
            graduation: Some(amount("1 lbf·in")),
            ..tool("inch", "250 lbf·in")
        };
        let fit = &tool_suits(&job("12 N·m"), &[inch]).unwrap().tools[0];
        assert_eq!(fit.setting.unwrap().to_string(), "106 lbf·in");
        assert!((fit.applied.unwrap().to_f64() - 11.976).abs() < 0.000_5);
        assert!((fit.error.unwrap().to_f64() + 0.197).abs() < 0.000_5);
    }

    #[test]
    fn what_is_no_tool_is_refused() {
        let good = tool("wrench", "50 N·m");
        let refused = |tool: Tool<'_>| {
            let error = tool_suits(&job("12 N·m"), &[good, tool]).unwrap_err();
            (error.kind(), error.first().path.clone())
        };
        let out = |name: &str| (ErrorKind::OutOfRange, format!("tools[1].{name}"));
        assert_eq!(refused(tool("none", "0 N·m")), out("max"));
        assert_eq!(
            refused(Tool {
                min: Some(amount("0 N·m")),
                ..good
            }),
            out("min")
        );
        assert_eq!(
            refused(Tool {
                graduation: Some(amount("-1 N·m")),
                ..good
            }),
            out("graduation")
        );
        assert_eq!(
            refused(Tool {
                permissible: Some(amount("100 %")),
                ..good
            }),
            out("permissible")
        );
        assert_eq!(
            refused(Tool {
                lever: Some(amount("0 mm")),
                ..good
            }),
            out("lever")
        );
        let conflict = refused(Tool {
            min: Some(amount("60 N·m")),
            ..good
        });
        assert_eq!(conflict, (ErrorKind::Conflict, "tools[1].min".to_string()));
        let kind = refused(Tool {
            max: amount("50 mm"),
            ..good
        });
        assert_eq!(kind, (ErrorKind::WrongKind, "tools[1].max".to_string()));
        assert!(tool_suits(&job("12 N·m"), &[]).unwrap().tools.is_empty());
    }
}
