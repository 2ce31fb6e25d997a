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

/* What the room holds, as a list of lines. */
static void put_lines(const char *name) {
    size_t from = 0, index;
    put_member(&out, name);
    put(&out, "[");
    for (index = 0; index < room.length; index++) {
        if (room.bytes[index] == '\n') {
            put_comma(&out);
            put_string(&out, room.bytes + from, index - from);
            from = index + 1;
        }
    }
    put(&out, "]");
}

/* Messages, profile, pack and journal. */
brim_status answer_told(const request *of) {
    brim_options *options = brim_options_new();
    brim_teller *made = NULL, *teller = NULL;
    brim_pack *pack = NULL;
    brim_evaluation *evaluation = NULL;
    brim_status status;
    must(brim_options_flip(options, 1, NULL), "brim_options_flip");
    status = brim_teller_new(given(of, 0), of->args[0].length, given(of, 1), of->args[1].length, NULL, &made, detail);
    if (status == BRIM_OK) {
        must(brim_teller_copy(made, &teller, NULL), "brim_teller_copy");
        status = of->args[2].length == 0 ? brim_pack_embedded(&pack, detail)
                                         : brim_pack_from_json(ARG(2), NULL, &pack, detail);
    }
    brim_teller_free(made);
    if (status == BRIM_OK) {
        status = brim_evaluate(pack, ARG(3), options, &evaluation, detail);
    }
    if (status == BRIM_OK) {
        put(&out, "{");
        FILL(brim_caution_text_with("hot_fluid", BRIM_TERMINATED, teller, ROOM, detail));
        must(status, "brim_caution_text_with");
        put_room("caution");
        FILL(brim_story_with(pack, ARG(3), teller, ROOM, detail));
        must(status, "brim_story_with");
        put_lines("story");
        FILL(brim_evaluation_text_with(evaluation, teller, ROOM, detail));
        must(status, "brim_evaluation_text_with");
        put_lines("text");
        put(&out, "}");
    }
    brim_options_free(options);
    brim_evaluation_free(evaluation);
    brim_pack_free(pack);
    brim_teller_free(teller);
    return status;
}
