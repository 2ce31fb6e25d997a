//! Wrenches, joints, threads and prints.

use crate::given::{amount, time};
use brimline::torque::{
    PlugKind, StrengthClass, Thread, Tool, ToolJob, ToolType, applied_torque, equivalents,
    plausible, preload, proof_load, tool_suits, torque_for_preload, wrench_setting,
};
use criterion::Criterion;
use serde_json::Value;
use std::hint::black_box;

pub fn torque(c: &mut Criterion) {
    time(
        c,
        "torque.wrench_setting",
        |given| (given.any("target"), given.wrench()),
        |(target, wrench)| wrench_setting(*target, wrench, None),
    );
    time(
        c,
        "torque.applied_torque",
        |given| {
            let wrench = given.wrench();
            let adapter = wrench.adapter.expect("it is given");
            (given.any("setting"), wrench.lever, adapter, wrench.angle)
        },
        |(setting, lever, adapter, angle)| applied_torque(*setting, *lever, *adapter, *angle),
    );
    time(
        c,
        "torque.preload",
        |given| (given.any("torque"), given.any("diameter"), given.friction()),
        |(torque, diameter, friction)| preload(*torque, *diameter, *friction),
    );
    time(
        c,
        "torque.torque_for_preload",
        |given| {
            let diameter = given.any("diameter");
            (given.any("preload"), diameter, given.friction())
        },
        |(preload, diameter, friction)| torque_for_preload(*preload, *diameter, *friction),
    );
    let thread = |text: &str| Thread::parse(text).expect("a thread");
    time(
        c,
        "torque.proof_load",
        |given| {
            let class = StrengthClass::from_slug(given.text("class"));
            (thread(given.text("thread")), class.expect("a class"))
        },
        |(thread, class)| proof_load(thread, *class),
    );
    time(
        c,
        "torque.plausible",
        |given| {
            let plug = PlugKind::from_slug(given.text("plug")).expect("a plug");
            (given.any("torque"), thread(given.text("thread")), plug)
        },
        |(torque, thread, plug)| plausible(*torque, thread, *plug),
    );
    time(
        c,
        "torque.thread",
        |given| given.text("designation").to_owned(),
        |text| Thread::parse(text),
    );
    time(
        c,
        "torque.equivalents",
        |given| {
            let prints = given.0["printed"].as_array().expect("a list");
            let prints = prints.iter().filter_map(Value::as_str).map(amount);
            prints.collect::<Vec<_>>()
        },
        |printed| equivalents(printed),
    );
    let tool = |max, tool_type| Tool {
        name: "wrench",
        tool_type,
        max: amount(max),
        min: None,
        graduation: Some(amount("0.5 N·m")),
        permissible: None,
        lever: Some(amount("230 mm")),
    };
    let tools = ["10 N·m", "50 N·m", "200 N·m"].map(|max| tool(max, ToolType::SettingAdjustable));
    let job = ToolJob {
        target: amount("12 N·m"),
        tolerance: Some(amount("1 N·m")),
        adapter: Some(amount("40 mm")),
        angle: None,
    };
    c.bench_function("torque.tool_suits, 3 tools", |bencher| {
        bencher.iter(|| tool_suits(black_box(&job), &tools));
    });
}
