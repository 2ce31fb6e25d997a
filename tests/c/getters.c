#include "getters.h"
#include "tellings.h"

#include <stdlib.h>
#include <string.h>

/* Every call here must do well, and every text goes through the room. */
static void filled(brim_status status) {
    must(status, "a getter");
}

static void put_room(grown *out, const char *name) {
    put_member(out, name);
    put_string(out, room.bytes, room.length);
}

static void put_room_if(grown *out, const char *name) {
    if (room.length > 0) {
        put_room(out, name);
    }
}

static void put_word(grown *out, const char *name, brim_list list, int32_t number) {
    brim_status status;
    FILL(brim_word(list, number, ROOM, NULL));
    filled(status);
    put_room(out, name);
}

/* JSON that the room holds, as a member. */
static void put_json(grown *out, const char *name) {
    put_member(out, name);
    put_bytes(out, room.bytes, room.length);
}

/* An amount as text, or null. */
static void put_amount(grown *out, int32_t present, const brim_amount *amount) {
    brim_status status;
    if (!present) {
        if (amount->mantissa != 0 || amount->exponent != 0 || amount->unit != 0) {
            fail("an absent amount is not zero");
        }
        put(out, "null");
        return;
    }
    FILL(brim_amount_text(amount, ROOM, NULL));
    filled(status);
    put_string(out, room.bytes, room.length);
}

static void put_interval(grown *out, const char *name, const brim_evaluation *evaluation, brim_interval interval) {
    brim_end end;
    put_member(out, name);
    put(out, "[");
    for (end = BRIM_END_LO; end <= BRIM_END_HI; end++) {
        int32_t present = -1;
        brim_amount amount;
        filled(brim_evaluation_end(evaluation, interval, end, &present, &amount, NULL));
        put_comma(out);
        put_amount(out, present, &amount);
    }
    put(out, "]");
}

static void put_volume(grown *out, const char *name, const brim_evaluation *evaluation, brim_volume volume) {
    int32_t present = -1;
    brim_amount amount;
    filled(brim_evaluation_volume(evaluation, volume, &present, &amount, NULL));
    put_member(out, name);
    put_amount(out, present, &amount);
}

static void put_leak(grown *out, const brim_evaluation *evaluation) {
    brim_by_sheet by_sheet = 0;
    brim_certainty certainty = 0;
    filled(brim_evaluation_by_sheet(evaluation, &by_sheet, NULL));
    filled(brim_evaluation_certainty(evaluation, &certainty, NULL));
    put_member(out, "leak");
    put(out, "{");
    put_word(out, "by_sheet", BRIM_LIST_BY_SHEET, by_sheet);
    put_member(out, "counted");
    put(out, "{");
    put_volume(out, "gross", evaluation, BRIM_VOLUME_GROSS);
    put_volume(out, "net", evaluation, BRIM_VOLUME_NET);
    put_volume(out, "used", evaluation, BRIM_VOLUME_USED);
    put(out, "}");
    put_volume(out, "limit", evaluation, BRIM_VOLUME_LIMIT);
    put_interval(out, "shortage", evaluation, BRIM_INTERVAL_SHORTAGE);
    put_word(out, "certainty", BRIM_LIST_CERTAINTY, certainty);
    put_volume(out, "margin", evaluation, BRIM_VOLUME_MARGIN);
    put(out, "}");
}

static void put_findings(grown *out, const brim_evaluation *evaluation) {
    brim_findings *findings = NULL;
    brim_status status;
    size_t count = 0, index;
    filled(brim_evaluation_findings(evaluation, &findings, NULL));
    filled(brim_findings_count(findings, &count, NULL));
    put_member(out, "findings");
    put(out, "[");
    for (index = 0; index < count; index++) {
        brim_severity severity = 0;
        size_t entries = 0, item;
        put_comma(out);
        put(out, "{");
        FILL(brim_findings_id(findings, index, ROOM, NULL));
        filled(status);
        put_room(out, "id");
        filled(brim_findings_severity(findings, index, &severity, NULL));
        put_word(out, "severity", BRIM_LIST_SEVERITY, severity);
        filled(brim_findings_entry_count(findings, index, &entries, NULL));
        put_member(out, "entries");
        put(out, "[");
        for (item = 0; item < entries; item++) {
            uint64_t seq = 0;
            filled(brim_findings_entry(findings, index, item, &seq, NULL));
            put_comma(out);
            put_number(out, (long long)seq);
        }
        put(out, "]");
        FILL(brim_findings_field(findings, index, ROOM, NULL));
        filled(status);
        put_room_if(out, "field");
        TOLD(brim_findings_text(findings, index, ROOM, NULL),
             brim_findings_text_with(findings, index, teller, ROOM, NULL));
        filled(status);
        put_room(out, "text");
        FILL(brim_findings_arg(findings, index, "limit", BRIM_TERMINATED, ROOM, NULL));
        filled(status);
        put_room_if(out, "limit");
        put(out, "}");
    }
    put(out, "]");
    FILL(brim_findings_json(findings, ROOM, NULL));
    filled(status);
    put_json(out, "findings_json");
    brim_findings_free(findings);
}

static void put_wait(grown *out, int32_t present, const brim_amount *wait) {
    if (present) {
        put_member(out, "wait");
        put_amount(out, present, wait);
    }
}

static void put_next(grown *out, const brim_evaluation *evaluation) {
    brim_acts *acts = NULL;
    brim_status status;
    size_t count = 0, index;
    filled(brim_evaluation_next(evaluation, &acts, NULL));
    filled(brim_acts_count(acts, &count, NULL));
    put_member(out, "next");
    put(out, "[");
    for (index = 0; index < count; index++) {
        int32_t present = -1;
        brim_amount wait;
        size_t cautions = 0, item;
        put_comma(out);
        put(out, "{");
        FILL(brim_acts_id(acts, index, ROOM, NULL));
        filled(status);
        put_room(out, "id");
        TOLD(brim_acts_text(acts, index, ROOM, NULL),
             brim_acts_text_with(acts, index, teller, ROOM, NULL));
        filled(status);
        put_room(out, "text");
        FILL(brim_acts_arg(acts, index, "volume", BRIM_TERMINATED, ROOM, NULL));
        filled(status);
        put_room_if(out, "volume");
        filled(brim_acts_wait(acts, index, &present, &wait, NULL));
        put_wait(out, present, &wait);
        filled(brim_acts_caution_count(acts, index, &cautions, NULL));
        put_member(out, "cautions");
        put(out, "[");
        for (item = 0; item < cautions; item++) {
            FILL(brim_acts_caution(acts, index, item, ROOM, NULL));
            filled(status);
            put_comma(out);
            put_string(out, room.bytes, room.length);
            TOLD(brim_acts_caution_text(acts, index, item, ROOM, NULL),
                 brim_acts_caution_text_with(acts, index, item, teller, ROOM, NULL));
            filled(status);
            put_comma(out);
            put_string(out, room.bytes, room.length);
        }
        put(out, "]}");
    }
    put(out, "]");
    FILL(brim_acts_json(acts, ROOM, NULL));
    filled(status);
    put_json(out, "next_json");
    brim_acts_free(acts);
}

static void put_gate(grown *out, const brim_evaluation *evaluation, brim_act act) {
    brim_gate *gate = NULL;
    brim_status status;
    int32_t allowed = -1;
    size_t count = 0, index;
    filled(brim_evaluation_gate(evaluation, act, &gate, NULL));
    filled(brim_gate_allowed(gate, &allowed, NULL));
    filled(brim_gate_unmet_count(gate, &count, NULL));
    FILL(brim_word(BRIM_LIST_ACT, act, ROOM, NULL));
    filled(status);
    put_member(out, room.bytes);
    put(out, "{");
    put_member(out, "allowed");
    put(out, allowed == 1 ? "true" : "false");
    put_member(out, "unmet");
    put(out, "[");
    for (index = 0; index < count; index++) {
        int32_t present = -1;
        brim_amount wait;
        put_comma(out);
        put(out, "{");
        FILL(brim_gate_unmet_id(gate, index, ROOM, NULL));
        filled(status);
        put_room(out, "id");
        filled(brim_gate_unmet_wait(gate, index, &present, &wait, NULL));
        put_wait(out, present, &wait);
        TOLD(brim_gate_unmet_text(gate, index, ROOM, NULL),
             brim_gate_unmet_text_with(gate, index, teller, ROOM, NULL));
        filled(status);
        put_room(out, "text");
        FILL(brim_gate_unmet_arg(gate, index, "verdict", BRIM_TERMINATED, ROOM, NULL));
        filled(status);
        put_room_if(out, "verdict");
        put(out, "}");
    }
    put(out, "]");
    FILL(brim_gate_json(gate, ROOM, NULL));
    filled(status);
    put_json(out, "json");
    put(out, "}");
    brim_gate_free(gate);
}

void put_evaluation(grown *out, const brim_evaluation *evaluation) {
    brim_status status;
    brim_verdict verdict = 0;
    brim_act act;
    uint32_t edition = 0;
    size_t count = 0, index;
    put(out, "{");
    put_member(out, "procedure");
    put(out, "{");
    FILL(brim_evaluation_procedure(evaluation, ROOM, NULL));
    filled(status);
    put_room(out, "id");
    filled(brim_evaluation_edition(evaluation, &edition, NULL));
    if (edition != 0) {
        put_member(out, "edition");
        put_number(out, edition);
    }
    FILL(brim_evaluation_digest(evaluation, ROOM, NULL));
    filled(status);
    put_room_if(out, "digest");
    put(out, "}");
    filled(brim_evaluation_verdict(evaluation, &verdict, NULL));
    put_word(out, "verdict", BRIM_LIST_VERDICT, verdict);
    put_interval(out, "as_found", evaluation, BRIM_INTERVAL_AS_FOUND);
    put_interval(out, "net_added", evaluation, BRIM_INTERVAL_NET_ADDED);
    put_interval(out, "now", evaluation, BRIM_INTERVAL_NOW);
    put_leak(out, evaluation);
    put_findings(out, evaluation);
    put_next(out, evaluation);
    put_member(out, "gates");
    put(out, "{");
    for (act = BRIM_ACT_OPEN; act <= BRIM_ACT_STOP_ENGINE; act++) {
        put_gate(out, evaluation, act);
    }
    put(out, "}");
    filled(brim_evaluation_caution_count(evaluation, &count, NULL));
    put_member(out, "cautions");
    put(out, "[");
    for (index = 0; index < count; index++) {
        FILL(brim_evaluation_caution(evaluation, index, ROOM, NULL));
        filled(status);
        put_comma(out);
        put_string(out, room.bytes, room.length);
        TOLD(brim_evaluation_caution_text(evaluation, index, ROOM, NULL),
             brim_evaluation_caution_text_with(evaluation, index, teller, ROOM, NULL));
        filled(status);
        put_comma(out);
        put_string(out, room.bytes, room.length);
    }
    put(out, "]");
    TOLD(brim_evaluation_text(evaluation, ROOM, NULL),
         brim_evaluation_text_with(evaluation, teller, ROOM, NULL));
    filled(status);
    put_room(out, "text");
    put(out, "}");
}

static void put_place(grown *out, const brim_error *error, size_t index) {
    uint32_t line = 0, column = 0, offset = 0;
    filled(brim_error_fault_position(error, index, &line, &column, &offset));
    if (line != 0) {
        put_member(out, "line");
        put_number(out, line);
        put_member(out, "column");
        put_number(out, column);
        put_member(out, "offset");
        put_number(out, offset);
    }
}

static void put_allowed(grown *out, const brim_error *error, size_t index) {
    brim_status status;
    size_t count = 0, item;
    filled(brim_error_allowed_count(error, index, &count));
    if (count == 0) {
        return;
    }
    put_member(out, "allowed");
    put(out, "[");
    for (item = 0; item < count; item++) {
        FILL(brim_error_allowed(error, index, item, ROOM));
        filled(status);
        put_comma(out);
        put_string(out, room.bytes, room.length);
    }
    put(out, "]");
}

static void put_kind(grown *out, const brim_error *error, size_t index) {
    brim_status kind = 0;
    filled(brim_error_fault_kind(error, index, &kind));
    put_word(out, "kind", BRIM_LIST_STATUS, kind);
    put_member(out, "code");
    put_number(out, kind);
}

void put_error(grown *out, const brim_error *error) {
    brim_status status;
    size_t count = 0, index;
    filled(brim_error_fault_count(error, &count));
    put(out, "{");
    put_kind(out, error, 0);
    FILL(brim_error_message(error, ROOM));
    filled(status);
    put_room(out, "message");
    put_member(out, "faults");
    put(out, "[");
    for (index = 0; index < count; index++) {
        put_comma(out);
        put(out, "{");
        put_kind(out, error, index);
        FILL(brim_error_fault_path(error, index, ROOM));
        filled(status);
        put_room_if(out, "path");
        put_place(out, error, index);
        FILL(brim_error_fault_got(error, index, ROOM));
        filled(status);
        put_room_if(out, "got");
        put_allowed(out, error, index);
        FILL(brim_error_fault_hint(error, index, ROOM));
        filled(status);
        put_room_if(out, "hint");
        put(out, "}");
    }
    put(out, "]}");
}
