//! The calculators of `torque`, by name.

use super::arguments::{Arguments, told, value};
use super::{Answer, Function};
use crate::document::{Node, Reader};
use crate::quantity::Kind;
use crate::torque::{
    self, Friction, PlugKind, StrengthClass, Thread, ThreadCondition, Tool, ToolJob, ToolType,
    Wrench,
};

pub(super) const FUNCTIONS: &[Function] = &[
    Function {
        name: "torque.wrench_setting",
        takes: &[
            "target",
            "lever",
            "adapter",
            "angle",
            "graduation",
            "printed",
        ],
        ask: wrench_setting,
    },
    Function {
        name: "torque.applied_torque",
        takes: &["setting", "lever", "adapter", "angle"],
        ask: applied_torque,
    },
    Function {
        name: "torque.tool_suits",
        takes: &["target", "tolerance", "adapter", "angle", "tools"],
        ask: tool_suits,
    },
    Function {
        name: "torque.equivalents",
        takes: &["printed"],
        ask: equivalents,
    },
    Function {
        name: "torque.preload",
        takes: &["torque", "diameter", "k", "condition"],
        ask: preload,
    },
    Function {
        name: "torque.torque_for_preload",
        takes: &["preload", "diameter", "k", "condition"],
        ask: torque_for_preload,
    },
    Function {
        name: "torque.thread",
        takes: &["designation"],
        ask: thread,
    },
    Function {
        name: "torque.proof_load",
        takes: &["thread", "class"],
        ask: proof_load,
    },
    Function {
        name: "torque.plausible",
        takes: &["torque", "thread", "plug"],
        ask: plausible,
    },
];

fn wrench_setting(given: &mut Arguments<'_, '_, '_>) -> Option<Answer> {
    let target = given.amount("target", Kind::Torque);
    let lever = given.amount("lever", Kind::Length);
    let adapter = given.amount_if("adapter", Kind::Length);
    let angle = given.amount_if("angle", Kind::Angle);
    let graduation = given.amount_if("graduation", Kind::Torque);
    let printed = given.amount_if("printed", Kind::Torque);
    let lever = lever?;
    let wrench = Wrench {
        lever,
        adapter,
        angle,
        graduation,
    };
    told(torque::wrench_setting(target?, &wrench, printed))
}

fn applied_torque(given: &mut Arguments<'_, '_, '_>) -> Option<Answer> {
    let setting = given.amount("setting", Kind::Torque);
    let lever = given.amount("lever", Kind::Length);
    let adapter = given.amount("adapter", Kind::Length);
    let angle = given.amount_if("angle", Kind::Angle);
    value(torque::applied_torque(setting?, lever?, adapter?, angle))
}

fn tool_suits(given: &mut Arguments<'_, '_, '_>) -> Option<Answer> {
    let target = given.amount("target", Kind::Torque);
    let tolerance = given.amount_if("tolerance", Kind::Torque);
    let adapter = given.amount_if("adapter", Kind::Length);
    let angle = given.amount_if("angle", Kind::Angle);
    let tools = given.list("tools", tool)?;
    let target = target?;
    let job = ToolJob {
        target,
        tolerance,
        adapter,
        angle,
    };
    told(torque::tool_suits(&job, &tools))
}

/// A torque tool in a document.
pub(crate) fn tool<'n>(reader: &mut Reader<'_>, node: &'n Node<'_>) -> Option<Tool<'n>> {
    const FIELDS: &[&str] = &[
        "name",
        "type",
        "max",
        "min",
        "graduation",
        "permissible",
        "lever",
    ];
    let tool = reader.object(node, FIELDS)?;
    let name = reader.required(&tool, "name", |reader, node| reader.str(node));
    let tool_type = reader.required(&tool, "type", |reader, node| {
        reader.word(node, ToolType::WORDS)
    });
    let max = reader.required(&tool, "max", |reader, node| {
        reader.amount(node, Kind::Torque)
    });
    let mut amount =
        |name, kind| reader.optional(&tool, name, |reader, node| reader.amount(node, kind));
    let min = amount("min", Kind::Torque);
    let graduation = amount("graduation", Kind::Torque);
    let permissible = amount("permissible", Kind::Ratio);
    let lever = amount("lever", Kind::Length);
    Some(Tool {
        name: name?,
        tool_type: tool_type?,
        max: max?,
        min,
        graduation,
        permissible,
        lever,
    })
}

fn equivalents(given: &mut Arguments<'_, '_, '_>) -> Option<Answer> {
    let printed = given.list("printed", Reader::any_amount)?;
    told(torque::equivalents(&printed))
}

fn friction(given: &mut Arguments<'_, '_, '_>) -> Option<Friction> {
    let k = given.amount_if("k", Kind::Ratio);
    let condition = given.word_if("condition", ThreadCondition::WORDS);
    let read = [("k", k.is_some()), ("condition", condition.is_some())];
    given.settled(&read, Friction::of(k, condition))
}

fn preload(given: &mut Arguments<'_, '_, '_>) -> Option<Answer> {
    let torque = given.amount("torque", Kind::Torque);
    let diameter = given.amount("diameter", Kind::Length);
    let friction = friction(given);
    told(torque::preload(torque?, diameter?, friction?))
}

fn torque_for_preload(given: &mut Arguments<'_, '_, '_>) -> Option<Answer> {
    let preload = given.amount("preload", Kind::Force);
    let diameter = given.amount("diameter", Kind::Length);
    let friction = friction(given);
    told(torque::torque_for_preload(preload?, diameter?, friction?))
}

/// A thread by its designation.
fn designated(given: &mut Arguments<'_, '_, '_>, name: &'static str) -> Option<Thread> {
    given.read(name, |reader, node| {
        let read = Thread::parse(reader.str(node)?);
        read.map_err(|error| {
            error
                .into_faults()
                .into_iter()
                .for_each(|fault| reader.note(fault))
        })
        .ok()
    })
}

fn thread(given: &mut Arguments<'_, '_, '_>) -> Option<Answer> {
    let thread = designated(given, "designation")?;
    told(Ok(thread))
}

fn proof_load(given: &mut Arguments<'_, '_, '_>) -> Option<Answer> {
    let thread = designated(given, "thread");
    let class = given.word("class", StrengthClass::WORDS);
    value(torque::proof_load(&thread?, class?))
}

fn plausible(given: &mut Arguments<'_, '_, '_>) -> Option<Answer> {
    let torque = given.amount("torque", Kind::Torque);
    let thread = designated(given, "thread");
    let plug = given.word("plug", PlugKind::WORDS);
    told(torque::plausible(torque?, &thread?, plug?))
}

#[cfg(test)]
mod tests {
    #![allow(clippy::unwrap_used)]

    use crate::calculate::calculate;
    use crate::error::ErrorKind;
    use alloc::string::{String, ToString};

    fn ask(name: &str, arguments: &str) -> String {
        calculate(name, arguments).unwrap()
    }

    fn refused(name: &str, arguments: &str) -> (ErrorKind, String) {
        let error = calculate(name, arguments).unwrap_err();
        (error.kind(), error.first().path.clone())
    }

    #[test]
    fn answers_have_their_members() {
        // TM 9-2350-261-20-1, page 2-29.
        let answer = ask(
            "torque.wrench_setting",
            r#"{"target":"40 lbf·ft","lever":"12 in","adapter":"4 in","printed":"40 ft-lb"}"#,
        );
        let said = r#"{"setting":"30 lbf·ft","applied":"40 lbf·ft","error":"0 %","cautions":"#;
        let cautions = r#"["grip_at_mark","torque_unit","threads_as_printed"]}"#;
        assert_eq!(answer, said.to_string() + cautions);
        // TM 5-3805-274-13&P, WP 0051, figure 4: 17 lbf·ft is 1.675 % over 16.72.
        let answer = ask(
            "torque.equivalents",
            r#"{"printed":["16.72 lbf·ft","17 lbf·ft","23.0 N·m"]}"#,
        );
        assert!(
            answer.starts_with(
                r#"{"prints":[{"print":"16.72 lbf·ft","class":"governing","gap":"0 %"}"#
            )
        );
        assert!(
            answer.contains(r#""class":"chain_rounded""#)
                && answer.contains(r#""through":"17 lbf·ft""#)
        );
        // 10 kN · 10 mm · 0.2.
        let answer = ask(
            "torque.torque_for_preload",
            r#"{"preload":"10 kN","diameter":"10 mm","k":"0.2"}"#,
        );
        assert!(
            answer.contains(r#""torque":["20 N·m","20 N·m"]"#),
            "{answer}"
        );
        let answer = ask(
            "torque.preload",
            r#"{"torque":"12 N·m","diameter":"10 mm","condition":"zinc"}"#,
        );
        assert!(
            answer.contains(r#""k":["0.17 ratio","0.35 ratio"]"#),
            "{answer}"
        );
        let answer = ask("torque.thread", r#"{"designation":"M10×1"}"#);
        assert!(
            answer.contains(r#""designation":"M10x1","diameter":"10 mm""#),
            "{answer}"
        );
        // 20.1 mm² · 580 MPa; ISO 898-1 prints 11 600 N.
        let answer = ask("torque.proof_load", r#"{"thread":"M6","class":"8.8"}"#);
        assert_eq!(answer, r#"{"value":"11658 N"}"#);
        let answer = ask(
            "torque.plausible",
            r#"{"torque":"124 lbf·ft","thread":"M10x1","plug":"steel"}"#,
        );
        assert!(
            answer.contains(r#""slip":{"unit":"lbf·in","torque":"124 lbf·in"}"#),
            "{answer}"
        );
        let answer = ask(
            "torque.tool_suits",
            r#"{"target":"12 N·m","tools":[{"name":"long","type":"setting_adjustable","max":"200 N·m"},
                {"name":"short","type":"setting_adjustable","max":"50 N·m","permissible":"3 %"}]}"#,
        );
        assert!(
            answer.contains(r#""name":"short","suits":true,"rank":1,"setting":"12 N·m""#),
            "{answer}"
        );
        assert!(
            answer.contains(r#"{"id":"below_range","args":{"min":"40 N·m","setting":"12 N·m"}}"#),
            "{answer}"
        );
    }

    #[test]
    fn refusals_name_the_argument() {
        for (name, arguments, kind, path) in [
            (
                "preload",
                r#"{"torque":"12 N·m","diameter":"10 mm"}"#,
                ErrorKind::Conflict,
                "k",
            ),
            (
                "preload",
                r#"{"torque":"12 N·m","diameter":"10 mm","k":"0.2","condition":"zinc"}"#,
                ErrorKind::Conflict,
                "k",
            ),
            (
                "preload",
                r#"{"torque":"12 N·m","diameter":"10 mm","condition":"threadlocker"}"#,
                ErrorKind::UnknownValue,
                "condition",
            ),
            (
                "thread",
                r#"{"designation":"M10x15"}"#,
                ErrorKind::UnknownValue,
                "designation",
            ),
            (
                "proof_load",
                r#"{"thread":"M10","class":"8.9"}"#,
                ErrorKind::UnknownValue,
                "class",
            ),
            (
                "proof_load",
                r#"{"thread":"1/4-20","class":"8.8"}"#,
                ErrorKind::UnknownValue,
                "thread",
            ),
            (
                "equivalents",
                r#"{"printed":["12 N·m","1 L"]}"#,
                ErrorKind::WrongKind,
                "printed[1]",
            ),
            (
                "equivalents",
                r#"{"printed":[]}"#,
                ErrorKind::OutOfRange,
                "printed",
            ),
            (
                "wrench_setting",
                r#"{"target":"12 N·m"}"#,
                ErrorKind::MissingField,
                "lever",
            ),
            (
                "tool_suits",
                r#"{"target":"12 N·m","tools":[{"name":"a","type":"click","max":"50 N·m"}]}"#,
                ErrorKind::UnknownValue,
                "tools[0].type",
            ),
            (
                "tool_suits",
                r#"{"target":"12 N·m","tools":[{"name":"a","type":"setting_fixed","max":"0 N·m"}]}"#,
                ErrorKind::OutOfRange,
                "tools[0].max",
            ),
        ] {
            let name = "torque.".to_string() + name;
            assert_eq!(
                refused(&name, arguments),
                (kind, path.to_string()),
                "{name} {arguments}"
            );
        }
    }
}
