/* Packs, evaluations and checks. */

#include "getters.h"
#include "request.h"

#include <stdlib.h>
#include <string.h>

void set_limits(brim_options *options, text stated) {
    static const char *const names[] = {"\"bytes\":", "\"depth\":", "\"entries\":", "\"text\":", "\"faults\":"};
    brim_limit limit;
    grown copy = {NULL, 0, 0};
    put_bytes(&copy, stated.bytes, stated.length);
    for (limit = BRIM_LIMIT_BYTES; limit <= BRIM_LIMIT_FAULTS; limit++) {
        const char *name = names[limit - 1];
        const char *found = strstr(copy.bytes, name);
        if (found != NULL) {
            size_t value = (size_t)strtoull(found + strlen(name), NULL, 10);
            must(brim_options_limit(options, limit, value, NULL), "brim_options_limit");
        }
    }
    free(copy.bytes);
}

brim_status pack_of(text json, const brim_options *options, brim_pack **pack) {
    if (json.length == 0) {
        return brim_pack_embedded(pack, detail);
    }
    return brim_pack_from_json(json.bytes, json.length, options, pack, detail);
}

/* Where a call has no options, the flat call must give the same bytes. */
static void compare_flat(const request *of, const grown *told) {
    brim_status status;
    FILL(brim_evaluate_json(given(of, 0), of->args[0].length, ARG(1), ROOM, NULL));
    must(status, "brim_evaluate_json");
    if (room.length != told->length || memcmp(room.bytes, told->bytes, room.length) != 0) {
        fail("brim_evaluate_json differs from brim_evaluate");
    }
}

brim_status answer_evaluate(const request *of) {
    brim_options *options = brim_options_new();
    brim_pack *pack = NULL;
    brim_evaluation *evaluation = NULL;
    brim_status status;
    int plain = of->args[2].length == 0 && of->args[3].length == 0 && of->args[4].length == 0;
    set_limits(options, of->args[4]);
    must(brim_options_flip(options, is(of->args[2], "true"), NULL), "brim_options_flip");
    must(brim_options_why_not(options, number_of(BRIM_LIST_VERDICT, of->args[3]), NULL), "brim_options_why_not");
    status = pack_of(of->args[0], options, &pack);
    if (status == BRIM_OK) {
        status = brim_evaluate(pack, ARG(1), options, &evaluation, detail);
    }
    if (status == BRIM_OK) {
        FILL(brim_evaluation_json(evaluation, ROOM, detail));
        put_bytes(&out, room.bytes, room.length);
    }
    brim_evaluation_free(evaluation);
    brim_pack_free(pack);
    brim_options_free(options);
    if (status == BRIM_OK && plain) {
        compare_flat(of, &out);
    }
    return status;
}

/* The result of a check, which is freed here. */
static brim_status told_check(brim_check *check, const brim_options *options) {
    brim_evaluation *evaluation = NULL;
    brim_status status = brim_check_evaluation(check, options, &evaluation, detail);
    brim_check_free(check);
    TRY(status);
    FILL(brim_evaluation_json(evaluation, ROOM, detail));
    must(status, "brim_evaluation_json");
    put_bytes(&out, room.bytes, room.length);
    brim_evaluation_free(evaluation);
    return BRIM_OK;
}

static brim_status replay(const request *of, brim_check **check) {
    brim_pack *pack = NULL;
    brim_status status = pack_of(of->args[0], NULL, &pack);
    if (status == BRIM_OK) {
        status = brim_check_replay(pack, ARG(1), check, detail);
    }
    brim_pack_free(pack);
    return status;
}

brim_status answer_live(const request *of) {
    brim_check *check = NULL;
    TRY(replay(of, &check));
    return told_check(check, NULL);
}

/* A check asked for more: the third argument is the verdict whose absence is to be explained. */
brim_status answer_asked(const request *of) {
    brim_options *options = brim_options_new();
    brim_check *check = NULL;
    brim_status status = replay(of, &check);
    must(brim_options_flip(options, 1, NULL), "brim_options_flip");
    must(brim_options_why_not(options, number_of(BRIM_LIST_VERDICT, of->args[2]), NULL), "brim_options_why_not");
    if (status == BRIM_OK) {
        status = told_check(check, options);
    }
    brim_options_free(options);
    return status;
}

/* A check whose limits are the third argument is started with the header that is the second. */
brim_status answer_start(const request *of) {
    brim_options *options = brim_options_new();
    brim_pack *pack = NULL;
    brim_check *check = NULL;
    brim_status status = pack_of(of->args[0], NULL, &pack);
    set_limits(options, of->args[2]);
    if (status == BRIM_OK) {
        status = brim_check_start(pack, ARG(1), options, &check, detail);
    }
    brim_options_free(options);
    brim_pack_free(pack);
    TRY(status);
    return told_check(check, NULL);
}

brim_status answer_lines(const request *of) {
    brim_check *check = NULL;
    brim_status status;
    TRY(replay(of, &check));
    FILL(brim_check_journal_lines(check, ROOM, detail));
    brim_check_free(check);
    TRY(status);
    put_bytes(&out, room.bytes, room.length);
    return BRIM_OK;
}

brim_status answer_advice(const request *of) {
    brim_check *check = NULL;
    brim_acts *acts = NULL;
    brim_status status;
    TRY(replay(of, &check));
    must(brim_check_advice(check, &acts, detail), "brim_check_advice");
    brim_check_free(check);
    FILL(brim_acts_json(acts, ROOM, detail));
    brim_acts_free(acts);
    TRY(status);
    put_bytes(&out, room.bytes, room.length);
    return BRIM_OK;
}

/* The act is the third argument, then the planned volume and the moment. */
brim_status answer_gate(const request *of) {
    brim_check *check = NULL;
    brim_gate *gate = NULL;
    brim_status status;
    TRY(replay(of, &check));
    status = brim_check_gate(check, number_of(BRIM_LIST_ACT, of->args[2]), given(of, 3), of->args[3].length,
                             given(of, 4), of->args[4].length, &gate, detail);
    brim_check_free(check);
    TRY(status);
    FILL(brim_gate_json(gate, ROOM, detail));
    brim_gate_free(gate);
    TRY(status);
    put_bytes(&out, room.bytes, room.length);
    return BRIM_OK;
}

/* The header is the second argument, and every further one an entry. Each is recorded in a copy, which goes on. */
brim_status answer_recorded(const request *of) {
    brim_pack *pack = NULL;
    brim_check *check = NULL;
    brim_status status = pack_of(of->args[0], NULL, &pack);
    size_t index;
    if (status == BRIM_OK) {
        status = brim_check_start(pack, ARG(1), NULL, &check, detail);
    }
    brim_pack_free(pack);
    for (index = 2; status == BRIM_OK && index < of->count; index++) {
        brim_check *copy = NULL;
        brim_findings *findings = NULL;
        must(brim_check_copy(check, &copy, NULL), "brim_check_copy");
        status = brim_check_record(copy, ARG(index), index % 2 == 0 ? &findings : NULL, detail);
        brim_findings_free(findings);
        brim_check_free(check);
        check = copy;
    }
    if (status != BRIM_OK) {
        brim_check_free(check);
        return status;
    }
    return told_check(check, NULL);
}

brim_status answer_pack(const request *of) {
    brim_options *options = brim_options_new();
    brim_pack *pack = NULL;
    brim_status status;
    set_limits(options, of->args[1]);
    status = pack_of(of->args[0], options, &pack);
    brim_options_free(options);
    TRY(status);
    put(&out, "{");
    FILL(brim_pack_digest(pack, ROOM, detail));
    put_room("digest");
    FILL(brim_pack_id(pack, ROOM, detail));
    put_room("id");
    FILL(brim_pack_title(pack, ROOM, detail));
    put_room("title");
    FILL(brim_pack_version(pack, ROOM, detail));
    put_room("version");
    put(&out, "}");
    brim_pack_free(pack);
    return status;
}

/* {"name": the JSON that the room holds}, after which the pack is freed */
static brim_status told_pack(brim_pack *pack, const char *name, brim_status status) {
    brim_pack_free(pack);
    TRY(status);
    if (name != NULL) {
        put(&out, "{");
        put_member(&out, name);
    }
    put_bytes(&out, room.bytes, room.length);
    put(&out, name != NULL ? "}" : "");
    return BRIM_OK;
}

brim_status answer_pack_json(const request *of) {
    brim_pack *pack = NULL;
    brim_status status;
    TRY(pack_of(of->args[0], NULL, &pack));
    FILL(brim_pack_json(pack, ROOM, detail));
    return told_pack(pack, NULL, status);
}

brim_status answer_pack_lint(const request *of) {
    brim_pack *pack = NULL;
    brim_status status;
    TRY(pack_of(of->args[0], NULL, &pack));
    FILL(brim_pack_lint_json(pack, ROOM, detail));
    return told_pack(pack, "findings", status);
}

brim_status answer_pack_compare(const request *of) {
    brim_pack *pack = NULL;
    brim_status status;
    uint32_t from = (uint32_t)whole(of->args[2]), to = (uint32_t)whole(of->args[3]);
    TRY(pack_of(of->args[0], NULL, &pack));
    FILL(brim_pack_compare_json(pack, ARG(1), from, to, ROOM, detail));
    return told_pack(pack, "differences", status);
}

brim_status answer_pack_select(const request *of) {
    brim_pack *pack = NULL;
    brim_status status;
    TRY(pack_of(of->args[0], NULL, &pack));
    FILL(brim_pack_select_json(pack, given(of, 1), of->args[1].length, given(of, 2), of->args[2].length, given(of, 3),
                               of->args[3].length, ROOM, detail));
    return told_pack(pack, NULL, status);
}

brim_status answer_may_mix(const request *of) {
    brim_pack *pack = NULL;
    brim_status status;
    TRY(pack_of(of->args[0], NULL, &pack));
    FILL(brim_pack_may_mix_json(pack, ARG(1), ARG(2), ROOM, detail));
    return told_pack(pack, NULL, status);
}

/* Every argument after the second is a fluid on offer. */
brim_status answer_resolve(const request *of) {
    const char *offered[8];
    brim_pack *pack = NULL;
    brim_status status;
    size_t index;
    for (index = 2; index < of->count; index++) {
        offered[index - 2] = of->args[index].bytes;
    }
    TRY(pack_of(of->args[0], NULL, &pack));
    FILL(brim_pack_resolve_json(pack, ARG(1), offered, of->count - 2, ROOM, detail));
    return told_pack(pack, NULL, status);
}

brim_status answer_calculate(const request *of) {
    brim_status status;
    FILL(brim_calculate(ARG(0), ARG(1), NULL, ROOM, detail));
    return told_pack(NULL, NULL, status);
}

brim_status answer_story(const request *of) {
    brim_pack *pack = NULL;
    brim_status status;
    TRY(pack_of(of->args[0], NULL, &pack));
    FILL(brim_story(pack, ARG(1), ROOM, detail));
    return told_pack(pack, NULL, status);
}

/* The result, put together from the getters. */
brim_status answer_getters(const request *of) {
    brim_pack *pack = NULL;
    brim_evaluation *evaluation = NULL;
    brim_status status = pack_of(of->args[0], NULL, &pack);
    if (status == BRIM_OK) {
        status = brim_evaluate(pack, ARG(1), NULL, &evaluation, detail);
    }
    brim_pack_free(pack);
    TRY(status);
    put_evaluation(&out, evaluation);
    brim_evaluation_free(evaluation);
    return BRIM_OK;
}
