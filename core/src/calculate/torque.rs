//! The calculators of `torque`, by name.

use super::arguments::{Arguments, told, value};
use super::{Answer, Function};
use crate::document::{Node, Reader};
use crate::error::{ErrorKind, Fault};
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

fn tool<'n>(reader: &mut Reader<'_>, node: &'n Node<'_>) -> Option<Tool<'n>> {
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
    let printed = given.list("printed", |reader, node| reader.amount_of(node, Kind::ALL))?;
    told(torque::equivalents(&printed))
}

fn friction(given: &mut Arguments<'_, '_, '_>) -> Option<Friction> {
    let k = given.amount_if("k", Kind::Ratio);
    let condition = given.word_if("condition", ThreadCondition::WORDS);
    let is_given = |name| given.object.get(name).is_some();
    match (is_given("k"), is_given("condition")) {
        (true, false) => k.map(Friction::K),
        (false, true) => condition.map(Friction::Condition),
        (both, _) => {
            let fault = Fault::new(ErrorKind::Conflict).got(if both { "both" } else { "neither" });
            let hint = "give k, or the condition of the threads to take its range from";
            given
                .reader
                .note_at("k", fault.allowed(["k", "condition"]).hint(hint));
            None
        }
    }
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
