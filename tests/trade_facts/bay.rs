//! A sheet and a journal, as they are written for a plug low on the case.

use brimline::{Evaluation, Pack, evaluate};
use serde_json::{Value, json};

/// A sheet for a plug low on the case, checked running and warm; `changed` replaces members by path.
pub fn sheet(changed: &[(&str, Value)]) -> Value {
    let mut sheet = json!({
        "id": "brook-level", "edition": 1, "unit": "Brook transaxle", "fluid": "sedge",
        "capacity": {"total": "7 L", "refill": "6 L"},
        "method": {"kind": "overflow_plug", "warming": "expands", "watch": "15 s", "settle": "60 s"},
        "conditions": {
            "engine": "idling", "selector": "park",
            "temperature": {"min": "45 °C", "max": "55 °C"},
            "tilt": {"max": "0.5 deg"}, "ranges": {"dwell": "3 s"},
        },
        "refill": {"step": "0.5 L"},
        "closing": {"torque": "12 N·m", "close_before_stop": true},
    });
    for (path, value) in changed {
        let (parent, last) = path.rsplit_once('/').expect("a path begins with a slash");
        let parent = sheet.pointer_mut(parent).expect("the block is there");
        let members = parent.as_object_mut().expect("a block");
        if value.is_null() {
            members.remove(last);
        } else {
            members.insert(last.into(), value.clone());
        }
    }
    sheet
}

pub fn pack(sheet: Value) -> Pack {
    let document = json!({
        "format": "brimline-pack/1", "id": "brook", "version": "1", "title": "Brook sheets (invented)",
        "fluids": [{"id": "sedge", "density_15": "838 kg/m³"}], "procedures": [sheet],
    });
    Pack::from_json(&document.to_string()).expect("the sheet reads")
}

/// A journal as it is written down in the bay, ten seconds an entry unless time is let pass.
pub struct Bay {
    job: &'static str,
    pub entries: Vec<Value>,
    seconds: usize,
}

impl Bay {
    /// A job with nothing said yet.
    pub fn quiet(job: &'static str) -> Self {
        Bay {
            job,
            entries: Vec::new(),
            seconds: 0,
        }
    }

    /// A job with all the conditions stated, warm, and the plug open.
    pub fn ready() -> Self {
        Bay::quiet("check")
            .says("level", json!({"tilt": "0.1 deg", "toward": "away"}))
            .says("engine", json!({"state": "idling"}))
            .says("selector", json!({"position": "park"}))
            .says("ranges", json!({"dwell": "3 s"}))
            .says("plug", json!({"state": "open"}))
            .warm("50 °C")
    }

    pub fn says(mut self, kind: &str, fields: Value) -> Self {
        self.seconds += 10;
        let seq = self.entries.len() + 1;
        let (minutes, seconds) = (self.seconds / 60, self.seconds % 60);
        let at = format!("2026-03-02T09:{minutes:02}:{seconds:02}Z");
        let mut entry = json!({"seq": seq, "at": at, "kind": kind});
        for (name, value) in fields.as_object().expect("fields") {
            entry[name] = value.clone();
        }
        self.entries.push(entry);
        self
    }

    pub fn waits(mut self, seconds: usize) -> Self {
        self.seconds += seconds;
        self
    }

    pub fn warm(self, reading: &str) -> Self {
        self.says("temperature", json!({"reading": reading, "source": "scan"}))
    }

    pub fn flow(self, grade: &str) -> Self {
        self.waits(10)
            .says("flow", json!({"grade": grade, "for": "15 s"}))
    }

    /// A pour, settled, and the temperature read again.
    pub fn pours(self, volume: &str) -> Self {
        self.says("added", json!({"volume": volume}))
            .waits(70)
            .warm("50 °C")
    }

    pub fn evaluated(&self, pack: &Pack) -> Evaluation {
        let journal = json!({
            "format": "brimline-journal/1", "procedure": "brook-level", "job": self.job, "entries": self.entries,
        });
        evaluate(pack, journal.to_string().as_str()).expect("the journal reads")
    }
}
