/* What every call needs, for the calls that tests/c_library/nulls.rs writes from the header: each of them with one argument
   amiss. They are in a file of their own, whose function `rows` makes them. */

#include "expect.h"

#include <stdlib.h>
#include <string.h>

/* The calls. */
void rows(void);

/* A handle of each type, and one that is of none of them where it is handed in. */
brim_pack *pack;
brim_evaluation *evaluation;
brim_findings *findings;
brim_gate *gate;
brim_acts *acts;
brim_check *check;
brim_record *record;
brim_lacks *lacks;
brim_history *history;
brim_comebacks *comebacks;
brim_follow_up *follow_up;
brim_price_list *price_list;
brim_lines *lines;
brim_estimate *estimate;
brim_invoice *invoice;
brim_kept_journal *kept_journal;
brim_forecast *forecast;
brim_teller *teller;
brim_options *options;
brim_error *failed;
brim_error *error;
void *other;

/* Texts, lists, and the places of what has entries. */
char *pack_json, *prices_json, *record_json;
const brim_record *records[1];
const char *billed[1] = {"0.25 L"};
const char *offered[1] = {"sedge-thin"};
size_t lack, line;

/* Where outputs go, 64 bytes each, and what these hold before a call. */
enum { OUTPUTS = 24, SIZE = 64 };
unsigned char outputs[OUTPUTS][SIZE];
static unsigned char untouched[SIZE];

void fresh(void) {
    memset(untouched, 0x5A, sizeof untouched);
    memset(outputs, 0x5A, sizeof outputs);
}

static void amiss(brim_status told, const char *call, const char *what) {
    fprintf(stderr, "%s: %s, status %d\n", call, what, (int)told);
    failures++;
}

/* A call that is refused, for this reason, and writes nothing. */
void refused(brim_status expected, brim_status told, const char *call) {
    size_t index;
    if (told != expected) {
        amiss(told, call, "not refused so");
    }
    for (index = 0; index < OUTPUTS; index++) {
        if (memcmp(outputs[index], untouched, SIZE) != 0) {
            amiss(told, call, "an output was written");
        }
    }
}

/* A call that lacks nothing it needs. */
void taken(brim_status told, const char *call) {
    if (told == BRIM_ERROR_NULL_POINTER) {
        amiss(told, call, "what may be left out is asked for");
    }
}

/* A call that does well, but for a text that is longer than its buffer. */
void well(brim_status told, const char *call) {
    if (told != BRIM_OK && told != BRIM_ERROR_BUFFER_TOO_SMALL) {
        amiss(told, call, "not done");
    }
}

/* The handle that a call gave, if it gave one. */
void *given(size_t index) {
    void *handle = NULL;
    if (memcmp(outputs[index], untouched, sizeof handle) != 0) {
        memcpy(&handle, outputs[index], sizeof handle);
    }
    return handle;
}

int32_t append(void *user, const uint8_t *bytes, size_t length) {
    return user == NULL && (bytes != NULL || length == 0) ? 0 : 1;
}

int32_t cut_to(void *user, size_t length) {
    return user == NULL && length < 1024 ? 0 : 1;
}

#define VISIT(job, odometer)                                                                                           \
    "{\"format\":\"brimline-journal/1\",\"job_id\":\"" job "\",\"procedure\":\"pipit-level\",\"edition\":2,"             \
    "\"job\":\"check\",\"subject\":{\"vehicle\":\"Oddry Fen 7\",\"odometer\":\"" odometer "\"},\"entries\":["             \
    "{\"seq\":1,\"at\":\"2026-03-02T09:00:00Z\",\"kind\":\"confirmed\",\"what\":\"moon_risen\"},"                       \
    "{\"seq\":2,\"at\":\"2026-03-02T09:01:00Z\",\"kind\":\"plug\",\"state\":\"open\"},"                                 \
    "{\"seq\":3,\"at\":\"2026-03-02T09:02:00Z\",\"kind\":\"added\",\"volume\":\"0.5 L\"},"                              \
    "{\"seq\":4,\"at\":\"2026-03-02T09:05:00Z\",\"kind\":\"plug\",\"state\":\"closed\"}]}"

extern const char visit[];
const char visit[] = VISIT("one", "40000 km");
static const char EARLIER_ON_THE_CLOCK[] = VISIT("two", "39000 km");

/* The whole text of a handle, freed at the end. */
#define WHOLE(text, call, handle)                                                                                      \
    do {                                                                                                               \
        size_t length = 0;                                                                                             \
        EXPECT(BRIM_OK, call(handle, NULL, 0, &length, error));                                                        \
        text = (char *)malloc(length + 1);                                                                             \
        EXPECT(BRIM_OK, call(handle, text, length + 1, NULL, error));                                                  \
    } while (0)

static void begin_documents(void) {
    EXPECT(BRIM_OK, brim_pack_embedded(&pack, error));
    EXPECT(BRIM_OK, brim_price_list_embedded(&price_list, error));
    EXPECT(BRIM_OK, brim_teller_new(NULL, 0, NULL, 0, NULL, &teller, error));
    EXPECT(BRIM_OK, brim_evaluate(pack, TERMINATED(visit), NULL, &evaluation, error));
    EXPECT(BRIM_OK, brim_evaluation_findings(evaluation, &findings, error));
    EXPECT(BRIM_OK, brim_evaluation_gate(evaluation, BRIM_ACT_OPEN, &gate, error));
    EXPECT(BRIM_OK, brim_evaluation_next(evaluation, &acts, error));
    EXPECT(BRIM_OK, brim_check_replay(pack, TERMINATED(visit), &check, error));
    EXPECT(BRIM_OK, brim_kept_journal_start(pack, TERMINATED(HEADER), append, cut_to, NULL, NULL, &kept_journal, error));
    EXPECT(BRIM_OK, brim_forecast_new(NULL, NULL, NULL, NULL, &forecast, error));
    WHOLE(pack_json, brim_pack_json, pack);
    WHOLE(prices_json, brim_price_list_json, price_list);
}

static void begin_records(void) {
    brim_record *both[2] = {NULL, NULL};
    EXPECT(BRIM_OK, brim_record_seal(pack, TERMINATED(visit), NULL, &record, error));
    EXPECT(BRIM_OK, brim_record_seal(pack, TERMINATED(EARLIER_ON_THE_CLOCK), NULL, &both[1], error));
    both[0] = record;
    records[0] = record;
    EXPECT(BRIM_OK, brim_record_evidence(record, &lacks, error));
    EXPECT(BRIM_OK, brim_history_of((const brim_record *const *)both, 2, &history, error));
    EXPECT(BRIM_OK, brim_comebacks_of((const brim_record *const *)both, 2, NO_TEXT, &comebacks, error));
    EXPECT(BRIM_OK, brim_follow_up_of(record, history, NO_TEXT, &follow_up, error));
    brim_record_free(both[1]);
    WHOLE(record_json, brim_record_json, record);
}

/* The first of so many that has entries. */
#define WITH_ENTRIES(place, list, of_count, of_entries)                                                                \
    do {                                                                                                               \
        size_t count = 0, entries = 0;                                                                                 \
        EXPECT(BRIM_OK, of_count(list, &count, error));                                                                \
        for (place = 0; place < count; place++) {                                                                      \
            EXPECT(BRIM_OK, of_entries(list, place, &entries, error));                                                 \
            if (entries > 0) {                                                                                         \
                break;                                                                                                 \
            }                                                                                                          \
        }                                                                                                              \
        CHECK(place < count);                                                                                          \
    } while (0)

static void begin_counter(void) {
    EXPECT(BRIM_OK, brim_check_estimate(check, price_list, NO_TEXT, &estimate, error));
    EXPECT(BRIM_OK, brim_check_invoice(check, price_list, NO_TEXT, &invoice, error));
    EXPECT(BRIM_OK, brim_invoice_lines(invoice, &lines, error));
    WITH_ENTRIES(line, lines, brim_lines_count, brim_lines_entry_count);
    WITH_ENTRIES(lack, lacks, brim_lacks_count, brim_lacks_entry_count);
}

static void end(void) {
    free(pack_json);
    free(prices_json);
    free(record_json);
    brim_lines_free(lines);
    brim_invoice_free(invoice);
    brim_estimate_free(estimate);
    brim_follow_up_free(follow_up);
    brim_comebacks_free(comebacks);
    brim_history_free(history);
    brim_lacks_free(lacks);
    brim_record_free(record);
    brim_forecast_free(forecast);
    brim_kept_journal_free(kept_journal);
    brim_check_free(check);
    brim_acts_free(acts);
    brim_gate_free(gate);
    brim_findings_free(findings);
    brim_evaluation_free(evaluation);
    brim_teller_free(teller);
    brim_price_list_free(price_list);
    brim_pack_free(pack);
    brim_options_free(options);
    brim_options_free((brim_options *)other);
    brim_error_free(failed);
    brim_error_free(error);
}

int main(void) {
    brim_unit unit = 0;
    error = brim_error_new();
    failed = brim_error_new();
    options = brim_options_new();
    other = brim_options_new();
    EXPECT(BRIM_ERROR_UNIT_AMBIGUOUS, brim_unit_parse(TERMINATED("oz"), 0, 0, &unit, failed));
    begin_documents();
    begin_records();
    begin_counter();
    rows();
    end();
    return failures == 0 ? 0 : 1;
}
