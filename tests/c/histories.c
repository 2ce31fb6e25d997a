/* Histories, comebacks and follow-ups: many records together. */

#include "request.h"
#include "tellings.h"

#include <stdlib.h>
#include <string.h>

/* The records of journals, one a line. */
typedef struct kept {
    brim_record **records;
    size_t count;
} kept;

static void drop(kept *all) {
    size_t index;
    for (index = 0; index < all->count; index++) {
        brim_record_free(all->records[index]);
    }
    free(all->records);
}

static brim_status seal_all(text pack_json, text journals, kept *all) {
    const char *line = journals.bytes;
    const char *end = line + journals.length;
    brim_pack *pack = NULL;
    brim_status status;
    all->records = (brim_record **)malloc((journals.length + 1) * sizeof *all->records);
    all->count = 0;
    if (all->records == NULL) {
        fail("no memory");
    }
    status = pack_of(pack_json, NULL, &pack);
    while (status == BRIM_OK && line < end) {
        const char *stop = (const char *)memchr(line, '\n', (size_t)(end - line));
        stop = stop == NULL ? end : stop;
        status = brim_record_seal(pack, line, (size_t)(stop - line), NULL, &all->records[all->count], detail);
        all->count += status == BRIM_OK;
        line = stop + 1;
    }
    brim_pack_free(pack);
    if (status != BRIM_OK) {
        drop(all);
    }
    return status;
}

/* The text of the room stands in the answer. */
static void is_told(const char *what) {
    if (out.length < room.length || strstr(out.bytes, room.bytes) == NULL) {
        fail(what);
    }
}

/* What is there stands in the answer as text; what is not there is all zero. */
static void amount_told(int32_t present, brim_amount amount, const char *what) {
    brim_status status;
    if (present == 0) {
        if (amount.mantissa != 0) {
            fail(what);
        }
        return;
    }
    FILL(brim_amount_text(&amount, ROOM, detail));
    must(status, what);
    is_told(what);
}

static brim_status put_whole(brim_status status) {
    TRY(status);
    put_bytes(&out, room.bytes, room.length);
    return BRIM_OK;
}

/* The getters say what the JSON says. */
static void check_unit(const brim_history *history, size_t unit) {
    brim_status status;
    size_t visits = 0;
    size_t losses = 0;
    size_t notices = 0;
    size_t notice;
    brim_end end;
    FILL(brim_history_vehicle(history, unit, ROOM, detail));
    must(status, "brim_history_vehicle");
    is_told("brim_history_vehicle");
    FILL(brim_history_unit(history, unit, ROOM, detail));
    must(status, "brim_history_unit");
    is_told("brim_history_unit");
    FILL(brim_history_trend(history, unit, ROOM, detail));
    must(status, "brim_history_trend");
    is_told("brim_history_trend");
    must(brim_history_visit_count(history, unit, &visits, detail), "brim_history_visit_count");
    must(brim_history_loss_count(history, unit, &losses, detail), "brim_history_loss_count");
    if (visits == 0 || losses >= visits) {
        fail("more losses than there is between the visits");
    }
    for (end = BRIM_END_LO; end <= BRIM_END_HI; end++) {
        int32_t present = 0;
        brim_amount amount;
        must(brim_history_lost(history, unit, end, &present, &amount, detail), "brim_history_lost");
        amount_told(present, amount, "brim_history_lost");
        must(brim_history_to_limit(history, unit, end, &present, &amount, detail), "brim_history_to_limit");
        amount_told(present, amount, "brim_history_to_limit");
    }
    must(brim_history_notice_count(history, unit, &notices, detail), "brim_history_notice_count");
    for (notice = 0; notice < notices; notice++) {
        FILL(brim_history_notice_id(history, unit, notice, ROOM, detail));
        must(status, "brim_history_notice_id");
        is_told("brim_history_notice_id");
    }
}

static brim_status history_of_all(const kept *all, brim_history **history) {
    return brim_history_of((const brim_record *const *)all->records, all->count, history, detail);
}

brim_status history_of(const request *of, brim_history **history) {
    kept all;
    brim_status status;
    TRY(seal_all(of->args[0], of->args[1], &all));
    status = history_of_all(&all, history);
    drop(&all);
    return status;
}

brim_status answer_history(const request *of) {
    brim_history *history = NULL;
    brim_status status;
    size_t units = 0;
    size_t unit;
    TRY(history_of(of, &history));
    FILL(brim_history_json(history, ROOM, detail));
    TRY(put_whole(status));
    must(brim_history_vehicle_count(history, &units, detail), "brim_history_vehicle_count");
    for (unit = 0; unit < units; unit++) {
        check_unit(history, unit);
    }
    TOLD(brim_history_text(history, ROOM, detail), brim_history_text_with(history, teller, ROOM, detail));
    brim_history_free(history);
    return BRIM_OK;
}

brim_status comebacks_of(const request *of, brim_comebacks **found) {
    kept all;
    brim_status status;
    TRY(seal_all(of->args[0], of->args[1], &all));
    status = brim_comebacks_of((const brim_record *const *)all.records, all.count, given(of, 2), of->args[2].length,
                               found, detail);
    drop(&all);
    return status;
}

brim_status answer_comebacks(const request *of) {
    brim_comebacks *found = NULL;
    brim_status status;
    size_t count = 0;
    size_t index;
    TRY(comebacks_of(of, &found));
    FILL(brim_comebacks_json(found, ROOM, detail));
    TRY(put_whole(status));
    must(brim_comebacks_count(found, &count, detail), "brim_comebacks_count");
    for (index = 0; index < count; index++) {
        brim_severity severity = 0;
        size_t records = 0;
        FILL(brim_comebacks_id(found, index, ROOM, detail));
        must(status, "brim_comebacks_id");
        is_told("brim_comebacks_id");
        must(brim_comebacks_severity(found, index, &severity, detail), "brim_comebacks_severity");
        FILL(brim_word(BRIM_LIST_SEVERITY, severity, ROOM, detail));
        must(status, "brim_word");
        is_told("brim_comebacks_severity");
        must(brim_comebacks_record_count(found, index, &records, detail), "brim_comebacks_record_count");
        FILL(brim_comebacks_digest(found, index, records - 1, ROOM, detail));
        must(status, "brim_comebacks_digest");
        is_told("brim_comebacks_digest");
    }
    TOLD(brim_comebacks_text(found, ROOM, detail), brim_comebacks_text_with(found, teller, ROOM, detail));
    brim_comebacks_free(found);
    return BRIM_OK;
}

/* The follow-up of the last record. */
brim_status follow_up_of(const request *of, brim_follow_up **told) {
    kept all;
    brim_history *history = NULL;
    brim_status status;
    TRY(seal_all(of->args[0], of->args[1], &all));
    must(history_of_all(&all, &history), "brim_history_of");
    status = brim_follow_up_of(all.records[all.count - 1], history, given(of, 2), of->args[2].length, told, detail);
    brim_history_free(history);
    drop(&all);
    return status;
}

brim_status answer_follow_up(const request *of) {
    brim_follow_up *told = NULL;
    brim_status status;
    brim_amount distance;
    int32_t present = 0;
    int32_t now = 0;
    int32_t hot = 0;
    int64_t days = 0;
    TRY(follow_up_of(of, &told));
    FILL(brim_follow_up_json(told, ROOM, detail));
    TRY(put_whole(status));
    must(brim_follow_up_is_now(told, &now, detail), "brim_follow_up_is_now");
    must(brim_follow_up_after_hot_drive(told, &hot, detail), "brim_follow_up_after_hot_drive");
    if (strstr(out.bytes, now ? "\"now\":true" : "\"now\":false") == NULL ||
        strstr(out.bytes, hot ? "\"hot_drive\":true" : "\"hot_drive\":false") == NULL) {
        fail("brim_follow_up_is_now or brim_follow_up_after_hot_drive");
    }
    must(brim_follow_up_distance(told, &present, &distance, detail), "brim_follow_up_distance");
    amount_told(present, distance, "brim_follow_up_distance");
    must(brim_follow_up_days(told, &days, detail), "brim_follow_up_days");
    FILL(brim_follow_up_date(told, ROOM, detail));
    must(status, "brim_follow_up_date");
    is_told("brim_follow_up_date");
    if (days < 0 && room.length > 0) {
        fail("a date without days");
    }
    FILL(brim_follow_up_job(told, ROOM, detail));
    must(status, "brim_follow_up_job");
    is_told("brim_follow_up_job");
    TOLD(brim_follow_up_text(told, ROOM, detail), brim_follow_up_text_with(told, teller, ROOM, detail));
    brim_follow_up_free(told);
    return BRIM_OK;
}

brim_status shadow_told(const request *of, const brim_teller *teller) {
    brim_pack *pack = NULL;
    brim_status status;
    TRY(pack_of(of->args[0], NULL, &pack));
    FILL(brim_shadow_text(pack, ARG(1), teller, ROOM, detail));
    brim_pack_free(pack);
    return status;
}

brim_status answer_shadow(const request *of) {
    brim_pack *pack = NULL;
    brim_status status;
    TRY(pack_of(of->args[0], NULL, &pack));
    FILL(brim_shadow_json(pack, ARG(1), ROOM, detail));
    brim_pack_free(pack);
    TRY(put_whole(status));
    TOLD(shadow_told(of, NULL), shadow_told(of, teller));
    return BRIM_OK;
}

/* What an audit takes: what was billed is one line a record, empty where it is not known. */
typedef struct audited {
    kept all;
    brim_price_list *prices;
    brim_pack *pack;
    char *stated;
    const char **billed;
} audited;

static brim_status audited_of(const request *of, audited *given) {
    char *line;
    size_t index;
    memset(given, 0, sizeof *given);
    TRY(seal_all(of->args[1], of->args[2], &given->all));
    must(prices_of(of->args[0], &given->prices), "the prices of an audit");
    must(pack_of(of->args[1], NULL, &given->pack), "the pack of an audit");
    given->stated = (char *)malloc(of->args[3].length + 1);
    given->billed = (const char **)malloc((given->all.count + 1) * sizeof *given->billed);
    if (given->stated == NULL || given->billed == NULL) {
        fail("no memory");
    }
    memcpy(given->stated, of->args[3].bytes, of->args[3].length);
    given->stated[of->args[3].length] = '\0';
    line = given->stated;
    for (index = 0; index < given->all.count; index++) {
        char *stop = strchr(line, '\n');
        given->billed[index] = line;
        if (stop != NULL) {
            *stop = '\0';
        }
        if (*line == '\0') {
            given->billed[index] = NULL;
        }
        line = stop == NULL ? line + strlen(line) : stop + 1;
    }
    return BRIM_OK;
}

static void drop_audited(audited *given) {
    free(given->stated);
    free((void *)given->billed);
    brim_price_list_free(given->prices);
    brim_pack_free(given->pack);
    drop(&given->all);
}

brim_status audit_told(const request *of, const brim_teller *teller) {
    audited given;
    brim_status status;
    TRY(audited_of(of, &given));
    FILL(brim_audit_text(given.prices, given.pack, (const brim_record *const *)given.all.records, given.billed,
                         given.all.count, teller, ROOM, detail));
    drop_audited(&given);
    return status;
}

brim_status answer_audit(const request *of) {
    audited given;
    brim_status status;
    TRY(audited_of(of, &given));
    FILL(brim_audit_json(given.prices, given.pack, (const brim_record *const *)given.all.records, given.billed,
                         given.all.count, ROOM, detail));
    drop_audited(&given);
    TRY(put_whole(status));
    TOLD(audit_told(of, NULL), audit_told(of, teller));
    return BRIM_OK;
}
