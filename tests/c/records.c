/* Records: sealed, reopened, and what they say. */

#include "request.h"
#include "tellings.h"

#include <string.h>

static brim_status sealed(const request *of, const brim_options *options, brim_record **record) {
    brim_pack *pack = NULL;
    brim_status status = pack_of(of->args[0], options, &pack);
    if (status == BRIM_OK) {
        status = brim_record_seal(pack, ARG(1), options, record, detail);
    }
    brim_pack_free(pack);
    return status;
}

brim_status answer_seal(const request *of) {
    brim_options *options = brim_options_new();
    brim_record *record = NULL;
    brim_status status;
    set_limits(options, of->args[2]);
    status = sealed(of, options, &record);
    if (status == BRIM_OK) {
        FILL(brim_record_json(record, ROOM, detail));
        put_bytes(&out, room.bytes, room.length);
    }
    brim_record_free(record);
    brim_options_free(options);
    return status;
}

/* A member of a text; null where it is empty. */
static void put_told(const char *name, brim_status status) {
    must(status, name);
    if (room.length > 0) {
        put_room(name);
    } else {
        put_member(&out, name);
        put(&out, "null");
    }
}

#define MEMBER(name, call)                                                                                             \
    FILL(call);                                                                                                        \
    put_told(name, status)

static void put_listed(const char *name, brim_list list, int32_t number) {
    brim_status status;
    MEMBER(name, brim_word(list, number, ROOM, NULL));
}

static brim_status put_record(const brim_record *record) {
    brim_status status;
    brim_verdict verdict = 0;
    brim_by_sheet by_sheet = 0;
    brim_certainty certainty = 0;
    must(brim_record_verdict(record, &verdict, detail), "brim_record_verdict");
    must(brim_record_by_sheet(record, &by_sheet, detail), "brim_record_by_sheet");
    must(brim_record_certainty(record, &certainty, detail), "brim_record_certainty");
    put(&out, "{");
    MEMBER("as_found", brim_record_interval(record, BRIM_INTERVAL_AS_FOUND, ROOM, detail));
    MEMBER("began", brim_record_began(record, ROOM, detail));
    put_listed("by_sheet", BRIM_LIST_BY_SHEET, by_sheet);
    put_listed("certainty", BRIM_LIST_CERTAINTY, certainty);
    MEMBER("digest", brim_record_digest(record, ROOM, detail));
    MEMBER("ended", brim_record_ended(record, ROOM, detail));
    MEMBER("net_added", brim_record_interval(record, BRIM_INTERVAL_NET_ADDED, ROOM, detail));
    MEMBER("now", brim_record_interval(record, BRIM_INTERVAL_NOW, ROOM, detail));
    put_member(&out, "pack");
    put(&out, "{");
    MEMBER("digest", brim_record_pack_digest(record, ROOM, detail));
    MEMBER("id", brim_record_pack_id(record, ROOM, detail));
    MEMBER("version", brim_record_pack_version(record, ROOM, detail));
    put(&out, "}");
    MEMBER("procedure", brim_record_procedure(record, ROOM, detail));
    MEMBER("rules", brim_record_rules(record, ROOM, detail));
    put_listed("verdict", BRIM_LIST_VERDICT, verdict);
    put(&out, "}");
    return BRIM_OK;
}

/* The room holds a part of this text. */
static void is_part(text whole, brim_status status) {
    must(status, "a part of the record");
    if (strstr(whole.bytes, room.bytes) == NULL) {
        fail("a part of the record is not in it");
    }
}

brim_status answer_reopen(const request *of) {
    brim_options *options = brim_options_new();
    brim_record *record = NULL;
    brim_record *copy = NULL;
    brim_status status;
    set_limits(options, of->args[1]);
    status = brim_record_reopen(ARG(0), options, &record, detail);
    brim_options_free(options);
    TRY(status);
    FILL(brim_record_journal_json(record, ROOM, detail));
    is_part(of->args[0], status);
    FILL(brim_record_result_json(record, ROOM, detail));
    is_part(of->args[0], status);
    must(brim_record_copy(record, &copy, detail), "brim_record_copy");
    brim_record_free(record);
    status = put_record(copy);
    brim_record_free(copy);
    return status;
}

/* What is lacking by index, in the form of the JSON of all. */
static void put_lacks(const brim_lacks *lacks) {
    brim_teller *teller = english();
    brim_status status;
    size_t index;
    size_t count = 0;
    must(brim_lacks_count(lacks, &count, detail), "brim_lacks_count");
    put(&out, "[");
    for (index = 0; index < count; index++) {
        brim_severity severity = 0;
        size_t entries = 0;
        size_t item;
        must(brim_lacks_severity(lacks, index, &severity, detail), "brim_lacks_severity");
        must(brim_lacks_entry_count(lacks, index, &entries, detail), "brim_lacks_entry_count");
        put_comma(&out);
        put(&out, "{");
        MEMBER("id", brim_lacks_id(lacks, index, ROOM, detail));
        put_listed("severity", BRIM_LIST_SEVERITY, severity);
        put_member(&out, "entries");
        put(&out, "[");
        for (item = 0; item < entries; item++) {
            uint64_t seq = 0;
            must(brim_lacks_entry(lacks, index, item, &seq, detail), "brim_lacks_entry");
            put_comma(&out);
            put_number(&out, (long long)seq);
        }
        put(&out, "]}");
        FILL(brim_lacks_text_with(lacks, index, teller, ROOM, detail));
        must(status, "brim_lacks_text_with");
        keep_room();
        FILL(brim_lacks_text(lacks, index, ROOM, detail));
        must(status, "brim_lacks_text");
        compare_room();
        if (room.length < 10) {
            fail("what is lacking has no sentence");
        }
    }
    put(&out, "]");
    brim_teller_free(teller);
}

brim_status answer_evidence(const request *of) {
    brim_record *record = NULL;
    brim_lacks *lacks = NULL;
    brim_status status;
    size_t begin;
    TRY(sealed(of, NULL, &record));
    must(brim_record_evidence(record, &lacks, detail), "brim_record_evidence");
    brim_record_free(record);
    put(&out, "{\"lacks\":");
    begin = out.length;
    put_lacks(lacks);
    FILL(brim_lacks_json(lacks, ROOM, detail));
    must(status, "brim_lacks_json");
    if (room.length != out.length - begin || memcmp(room.bytes, out.bytes + begin, room.length) != 0) {
        fail("brim_lacks_json differs from the getters");
    }
    put(&out, "}");
    brim_lacks_free(lacks);
    return BRIM_OK;
}

brim_status answer_reevaluate(const request *of) {
    brim_record *record = NULL;
    brim_pack *given = NULL;
    brim_status status;
    TRY(sealed(of, NULL, &record));
    status = pack_of(of->args[2], NULL, &given);
    if (status == BRIM_OK) {
        brim_rules rules = number_of(BRIM_LIST_RULES, of->args[3]);
        FILL(brim_record_reevaluate_json(record, given, rules, ROOM, detail));
    }
    brim_pack_free(given);
    brim_record_free(record);
    TRY(status);
    put(&out, "{\"differences\":");
    put_bytes(&out, room.bytes, room.length);
    put(&out, "}");
    return BRIM_OK;
}
