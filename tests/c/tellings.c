/* Tellings by a teller of the host's: its messages, its profile, what it tells. */

#include "tellings.h"
#include "request.h"

#include <stdlib.h>
#include <string.h>

static grown kept;

brim_teller *english(void) {
    brim_teller *teller = NULL;
    must(brim_teller_new(NULL, 0, NULL, 0, NULL, &teller, NULL), "brim_teller_new");
    return teller;
}

void keep_room(void) {
    put_bytes(&kept, room.bytes, room.length);
}

void compare_room(void) {
    if (kept.length != room.length || memcmp(kept.bytes, room.bytes, room.length) != 0) {
        fail("an English teller tells something else");
    }
    free(kept.bytes);
    memset(&kept, 0, sizeof kept);
}

/* The document of a teller, which is freed here. */
static brim_status told_teller(brim_teller *teller, brim_status status) {
    brim_teller_free(teller);
    TRY(status);
    put_bytes(&out, room.bytes, room.length);
    return BRIM_OK;
}

brim_status answer_messages(const request *of) {
    brim_options *options = brim_options_new();
    brim_teller *teller = NULL;
    brim_status status;
    set_limits(options, of->args[1]);
    status = brim_teller_new(ARG(0), NULL, 0, options, &teller, detail);
    brim_options_free(options);
    TRY(status);
    FILL(brim_teller_messages_json(teller, ROOM, detail));
    return told_teller(teller, status);
}

brim_status answer_profile(const request *of) {
    brim_teller *teller = NULL;
    brim_status status;
    TRY(brim_teller_new(NULL, 0, ARG(0), NULL, &teller, detail));
    FILL(brim_teller_profile_json(teller, ROOM, detail));
    return told_teller(teller, status);
}

/* What the room holds, as a list of lines, the last of which may lack its end. */
static void put_lines(const char *name) {
    size_t from = 0, index;
    put_member(&out, name);
    put(&out, "[");
    for (index = 0; index <= room.length; index++) {
        if (index == room.length ? from < index : room.bytes[index] == '\n') {
            put_comma(&out);
            put_string(&out, room.bytes + from, index - from);
            from = index + 1;
        }
    }
    put(&out, "]");
}

/* The teller of messages and a profile. */
static brim_status teller_of(const request *of, brim_teller **teller) {
    return brim_teller_new(given(of, 0), of->args[0].length, given(of, 1), of->args[1].length, NULL, teller, detail);
}

/* What the record of a journal lacks, a sentence each. */
static void put_lacks(const brim_pack *pack, text journal, const brim_teller *teller) {
    brim_status status;
    brim_record *record = NULL;
    brim_lacks *lacks = NULL;
    size_t count = 0, index;
    must(brim_record_seal(pack, journal.bytes, journal.length, NULL, &record, detail), "brim_record_seal");
    must(brim_record_evidence(record, &lacks, detail), "brim_record_evidence");
    must(brim_lacks_count(lacks, &count, detail), "brim_lacks_count");
    put_member(&out, "lacks");
    put(&out, "[");
    for (index = 0; index < count; index++) {
        FILL(brim_lacks_text_with(lacks, index, teller, ROOM, detail));
        must(status, "brim_lacks_text_with");
        put_comma(&out);
        put_string(&out, room.bytes, room.length);
    }
    put(&out, "]");
    brim_lacks_free(lacks);
    brim_record_free(record);
}

/* What is told of an evaluation, in the order of its members. */
static void put_told(const brim_pack *pack, const brim_evaluation *evaluation, text journal, const brim_teller *teller) {
    brim_status status;
    brim_verdict verdict = 0;
    grown found = {NULL, 0, 0};
    put(&out, "{");
    FILL(brim_answered_text("leak", 4, "response", 8, "report", BRIM_TERMINATED, teller, ROOM, detail));
    must(status, "brim_answered_text");
    put_room("answered");
    FILL(brim_caution_text_with("hot_fluid", BRIM_TERMINATED, teller, ROOM, detail));
    must(status, "brim_caution_text_with");
    put_room("caution");
    FILL(brim_evaluation_interval(evaluation, BRIM_INTERVAL_AS_FOUND, ROOM, detail));
    must(status, "brim_evaluation_interval");
    put_bytes(&found, room.bytes, room.length);
    FILL(brim_departure_text(found.bytes, found.length, teller, ROOM, detail));
    must(status, "brim_departure_text");
    put_room("departure");
    free(found.bytes);
    put_lacks(pack, journal, teller);
    FILL(brim_pack_lint_text(pack, teller, ROOM, detail));
    must(status, "brim_pack_lint_text");
    put_lines("lint");
    FILL(brim_evaluation_reasons_text(evaluation, teller, ROOM, detail));
    must(status, "brim_evaluation_reasons_text");
    put_lines("reasons");
    FILL(brim_story_with(pack, journal.bytes, journal.length, teller, ROOM, detail));
    must(status, "brim_story_with");
    put_lines("story");
    FILL(brim_evaluation_text_with(evaluation, teller, ROOM, detail));
    must(status, "brim_evaluation_text_with");
    put_lines("text");
    must(brim_evaluation_verdict(evaluation, &verdict, detail), "brim_evaluation_verdict");
    FILL(brim_verdict_text(verdict, teller, ROOM, detail));
    must(status, "brim_verdict_text");
    put_room("verdict");
    put(&out, "}");
}

/* Messages, profile, pack and journal. */
brim_status answer_told(const request *of) {
    brim_options *options = brim_options_new();
    brim_teller *made = NULL, *teller = NULL;
    brim_pack *pack = NULL;
    brim_evaluation *evaluation = NULL;
    brim_status status;
    must(brim_options_flip(options, 1, NULL), "brim_options_flip");
    status = teller_of(of, &made);
    if (status == BRIM_OK) {
        must(brim_teller_copy(made, &teller, NULL), "brim_teller_copy");
        status = pack_of(of->args[2], NULL, &pack);
    }
    brim_teller_free(made);
    if (status == BRIM_OK) {
        status = brim_evaluate(pack, ARG(3), options, &evaluation, detail);
    }
    if (status == BRIM_OK) {
        put_told(pack, evaluation, of->args[3], teller);
    }
    brim_options_free(options);
    brim_evaluation_free(evaluation);
    brim_pack_free(pack);
    brim_teller_free(teller);
    return status;
}

/* What the operation of the same name without `told_` is about, told: the request without messages and profile. */
typedef brim_status (*telling)(const request *rest, const brim_teller *teller);

static brim_status answer_by(const request *of, telling tell) {
    brim_teller *teller = NULL;
    request rest = *of;
    brim_status status;
    rest.args += 2;
    rest.count -= 2;
    TRY(teller_of(of, &teller));
    status = tell(&rest, teller);
    brim_teller_free(teller);
    TRY(status);
    put(&out, "{");
    put_lines("text");
    put(&out, "}");
    return BRIM_OK;
}

static brim_status estimate_told(const request *rest, const brim_teller *teller) {
    brim_check *check = NULL;
    brim_estimate *estimate = NULL;
    brim_status status = estimate_of(rest, &check, &estimate);
    if (status == BRIM_OK) {
        FILL(brim_estimate_text(estimate, check, teller, ROOM, detail));
    }
    brim_check_free(check);
    brim_estimate_free(estimate);
    return status;
}

static brim_status invoice_told(const request *rest, const brim_teller *teller) {
    brim_check *check = NULL;
    brim_invoice *invoice = NULL;
    brim_status status = invoice_of(rest, &check, &invoice);
    if (status == BRIM_OK) {
        FILL(brim_invoice_text(invoice, check, teller, ROOM, detail));
    }
    brim_check_free(check);
    brim_invoice_free(invoice);
    return status;
}

static brim_status history_told(const request *rest, const brim_teller *teller) {
    brim_history *history = NULL;
    brim_status status;
    TRY(history_of(rest, &history));
    FILL(brim_history_text_with(history, teller, ROOM, detail));
    brim_history_free(history);
    return status;
}

static brim_status comebacks_told(const request *rest, const brim_teller *teller) {
    brim_comebacks *found = NULL;
    brim_status status;
    TRY(comebacks_of(rest, &found));
    FILL(brim_comebacks_text_with(found, teller, ROOM, detail));
    brim_comebacks_free(found);
    return status;
}

static brim_status follow_up_told(const request *rest, const brim_teller *teller) {
    brim_follow_up *due = NULL;
    brim_status status;
    TRY(follow_up_of(rest, &due));
    FILL(brim_follow_up_text_with(due, teller, ROOM, detail));
    brim_follow_up_free(due);
    return status;
}

brim_status answer_told_estimate(const request *of) {
    return answer_by(of, estimate_told);
}

brim_status answer_told_invoice(const request *of) {
    return answer_by(of, invoice_told);
}

brim_status answer_told_history(const request *of) {
    return answer_by(of, history_told);
}

brim_status answer_told_comebacks(const request *of) {
    return answer_by(of, comebacks_told);
}

brim_status answer_told_follow_up(const request *of) {
    return answer_by(of, follow_up_told);
}

brim_status answer_told_shadow(const request *of) {
    return answer_by(of, shadow_told);
}

brim_status answer_told_audit(const request *of) {
    return answer_by(of, audit_told);
}
