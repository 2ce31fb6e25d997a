//! Functions as the header declares them, and a good value for each of their arguments.

/// Pointers that may be NULL, as the header says of each.
const LEFT_OUT: &[(&str, &str)] = &[
    ("*", "length"),
    ("*", "options"),
    ("*", "user"),
    ("brim_audit_json", "billed"),
    ("brim_check_estimate", "asked"),
    ("brim_check_gate", "at"),
    ("brim_check_gate", "planned"),
    ("brim_check_invoice", "estimated"),
    ("brim_check_record", "findings"),
    ("brim_comebacks_of", "rules"),
    ("brim_evaluate_json", "pack"),
    ("brim_follow_up_of", "history"),
    ("brim_follow_up_of", "rules"),
    ("brim_forecast_new", "held"),
    ("brim_forecast_new", "max"),
    ("brim_forecast_new", "min"),
    ("brim_forecast_new", "scatter"),
    ("brim_kept_journal_append", "findings"),
    ("brim_pack_select_json", "day"),
    ("brim_pack_select_json", "unit"),
    ("brim_pack_select_json", "vehicle"),
    ("brim_teller_new", "messages"),
    ("brim_teller_new", "profile"),
    // English, without a teller.
    ("brim_answered_text", "teller"),
    ("brim_audit_text", "billed"),
    ("brim_audit_text", "teller"),
    ("brim_bay_card", "particulars"),
    ("brim_bay_card", "teller"),
    ("brim_departure_text", "teller"),
    ("brim_estimate_text", "teller"),
    ("brim_evaluation_reasons_text", "teller"),
    ("brim_invoice_text", "teller"),
    ("brim_pack_lint_text", "teller"),
    ("brim_picture", "particulars"),
    ("brim_picture", "teller"),
    ("brim_shadow_text", "teller"),
    ("brim_verdict_text", "teller"),
    ("brim_work_sheet", "particulars"),
    ("brim_work_sheet", "teller"),
];

/// What stands for an argument where its name says it: in one function, or in all.
const VALUES: &[(&str, &str, &str)] = &[
    ("brim_pack_from_json", "json", "pack_json"),
    ("brim_price_list_from_json", "json", "prices_json"),
    ("brim_record_reopen", "json", "record_json"),
    ("brim_lacks_entry", "index", "lack"),
    ("brim_lines_entry", "index", "line"),
    ("brim_convert", "from", "\"L\""),
    ("brim_convert", "to", "\"mL\""),
    ("brim_calculate", "function", "\"torque.applied_torque\""),
    (
        "brim_calculate",
        "arguments",
        r#""{\"setting\":\"60 lbf.in\",\"lever\":\"12 in\",\"adapter\":\"2 in\"}""#,
    ),
    ("brim_pack_select_json", "vehicle", "NULL"),
    ("brim_pack_select_json", "unit", "\"Pipit transaxle\""),
    ("brim_pack_compare_json", "from", "1"),
    ("brim_pack_compare_json", "to", "2"),
    ("brim_unit_parse", "name", "\"L\""),
    ("brim_word", "list", "BRIM_LIST_VERDICT"),
    ("brim_word_number", "list", "BRIM_LIST_VERDICT"),
    ("brim_answered_text", "id", "\"report\""),
    ("brim_evaluate_json", "pack", "NULL"),
    (
        "brim_kept_journal_recover",
        "kept",
        "(const uint8_t *)\"{\\\"format\\\":\\\"brimline-journal/1\\\",\\\"procedure\\\":\\\"p\\\",\\\"job\\\":\\\"check\\\"}\\n\"",
    ),
    ("brim_kept_journal_recover", "kept_length", "62"),
    (
        "brim_kept_journal_append",
        "entry",
        r#""{\"seq\":1,\"at\":\"2026-03-02T09:09:00Z\",\"kind\":\"engine\",\"state\":\"idling\"}""#,
    ),
    ("brim_options_limit", "value", "1000000"),
    ("*", "append", "append"),
    ("*", "asked", "\"{}\""),
    ("*", "at", "\"2026-03-02T09:10:00Z\""),
    ("*", "day", "\"2026-03-02\""),
    (
        "*",
        "entry",
        r#""{\"seq\":5,\"at\":\"2026-03-02T09:09:00Z\",\"kind\":\"engine\",\"state\":\"idling\"}""#,
    ),
    ("*", "estimated", "NULL"),
    (
        "*",
        "header",
        r#""{\"format\":\"brimline-journal/1\",\"procedure\":\"p\",\"job\":\"check\"}""#,
    ),
    ("*", "id", "\"hot_fluid\""),
    ("*", "interval", "\"[-2 L, -1.5 L]\""),
    ("*", "a", "\"[-2 L, -1.5 L]\""),
    ("*", "b", "\"[-2 L, -1.5 L]\""),
    (
        "*",
        "jobs",
        r#""{\"id\":\"1\",\"journal\":{\"format\":\"brimline-journal/1\",\"procedure\":\"p\",\"job\":\"check\",\"entries\":[]}}""#,
    ),
    ("*", "journal", "visit"),
    ("*", "messages", "NULL"),
    ("*", "name", "\"what\""),
    ("*", "of_list", "\"response\""),
    ("*", "of_room", "\"leak\""),
    ("*", "onto", "\"sedge-thin\""),
    ("*", "particulars", "\"{}\""),
    ("*", "planned", "\"0.25 L\""),
    ("*", "poured", "\"sedge-thin\""),
    ("*", "procedure", "\"pipit-level\""),
    ("*", "profile", "NULL"),
    ("*", "required", "\"sedge-thin\""),
    ("*", "rules", "\"{}\""),
    ("*", "truncate", "cut_to"),
    ("*", "user", "NULL"),
    ("*", "word", "\"low\""),
    ("*", "written", "\"1 L\""),
];

/// Amounts, by the names of arguments; any other is a volume.
pub const AMOUNTS: &[(&str, &str)] = &[
    ("at", "{10, 0, BRIM_UNIT_MINUTE}"),
    ("max", "{60, 0, BRIM_UNIT_DEGREE_CELSIUS}"),
    ("min", "{50, 0, BRIM_UNIT_DEGREE_CELSIUS}"),
    ("reading", "{40, 0, BRIM_UNIT_DEGREE_CELSIUS}"),
    ("scatter", "{1, 0, BRIM_UNIT_CELSIUS_DIFFERENCE}"),
    ("temperature", "{20, 0, BRIM_UNIT_DEGREE_CELSIUS}"),
    ("volume", "{25, -2, BRIM_UNIT_LITRE}"),
];

/// One argument.
#[derive(Debug)]
pub struct Param {
    pub declared: String,
    pub name: String,
}

impl Param {
    pub fn is_pointer(&self) -> bool {
        self.declared.ends_with('*') || self.declared.starts_with("brim_storage_")
    }

    /// The type of handle that goes in.
    pub fn handle(&self) -> Option<&str> {
        let of = self
            .declared
            .trim_start_matches("const ")
            .strip_prefix("struct brim_")?;
        let of = of.strip_suffix(" *")?;
        let is_value = ["amount", "money"].contains(&of) || of.contains(' ');
        (!is_value && self.name != "error").then_some(of)
    }

    /// A handle of another type in its place.
    pub fn stranger(&self) -> Option<String> {
        let declared = &self.declared;
        match self.handle() {
            Some("options") => Some(format!("({declared})(void *)pack")),
            Some(_) => Some(format!("({declared})other")),
            None => (declared == "const struct brim_error *").then(|| format!("({declared})other")),
        }
    }

    /// The type of handle that comes out.
    pub fn made(&self) -> Option<&str> {
        self.declared.strip_prefix("struct ")?.strip_suffix(" **")
    }

    pub fn is_word(&self) -> bool {
        let of = self.declared.strip_prefix("brim_");
        of.is_some_and(|of| of != "unit" && !of.starts_with("storage_") && !of.ends_with('*'))
    }

    pub fn is_place(&self) -> bool {
        self.declared == "size_t"
            && ["index", "item", "notice", "unit"].contains(&self.name.as_str())
    }
}

/// A function as the header declares it.
pub struct Function {
    pub name: String,
    pub params: Vec<Param>,
}

impl Function {
    /// From the code of the header, without its comments.
    pub fn read(code: &str, name: &str) -> Self {
        let declared = code.find(&format!("{name}(")).map(|place| &code[place..]);
        let (params, _) = declared
            .and_then(|text| text.split_once(");"))
            .expect("it is declared");
        let params = params.split_once('(').expect("arguments").1.split(',');
        let params = params.map(|param| param.split_whitespace().collect::<Vec<_>>().join(" "));
        let param = |param: String| {
            let place = param.rfind(|letter: char| !letter.is_alphanumeric() && letter != '_');
            let (declared, name) = param.split_at(place? + 1);
            Some(Param {
                declared: declared.trim().into(),
                name: name.trim_end_matches('_').into(),
            })
        };
        Function {
            name: name.into(),
            params: params.filter_map(param).collect(),
        }
    }

    /// Whether an argument is a text with its length after it.
    pub fn is_measured(&self, place: usize) -> bool {
        let next = self.params.get(place + 1);
        self.params[place].declared == "const char *"
            && next.is_some_and(|next| next.name.ends_with("_length"))
    }

    pub fn may_lack(&self, param: &Param) -> bool {
        let own = |(function, name): &(&str, &str)| {
            ["*", &self.name].contains(function) && *name == param.name
        };
        match param.declared.as_str() {
            "struct brim_error *" => true,
            // Options that are set are no options that are taken.
            "struct brim_options *" => false,
            _ => LEFT_OUT.iter().any(own),
        }
    }

    /// A good value for an argument.
    pub fn value(&self, place: usize) -> String {
        let param = &self.params[place];
        let name = param.name.as_str();
        let is_const = param.declared.starts_with("const ");
        if let Some(of) = param.handle() {
            return of.into();
        }
        if param.declared == "const struct brim_error *" {
            return "failed".into();
        }
        if param.declared == "const struct brim_amount *" {
            return format!(
                "&amount_{}",
                if AMOUNTS.iter().any(|(own, _)| *own == name) {
                    name
                } else {
                    "volume"
                }
            );
        }
        let row = VALUES.iter().find(|(function, own, _)| {
            ["*", &self.name].contains(function)
                && *own == name
                && (is_const
                    || !param.is_pointer()
                    || param.declared.starts_with("brim_storage_")
                    || name == "user")
        });
        match (row, param.declared.as_str()) {
            (Some((.., value)), _) if !param.is_word() || name == "list" => (*value).into(),
            _ if name == "error" => "error".into(),
            (_, "const struct brim_record *const *") => "records".into(),
            (_, "const char *const *") => name.into(),
            (_, "brim_unit") => "BRIM_UNIT_LITRE".into(),
            (_, "size_t") if name.ends_with("_length") => "BRIM_TERMINATED".into(),
            (_, "size_t") if name == "capacity" => "SIZE".into(),
            (_, "size_t") if param.is_place() => "0".into(),
            (_, declared) if declared.ends_with('*') => {
                format!("({declared})(void *)outputs[{place}]")
            }
            _ => "1".into(),
        }
    }
}
