/* Handles of the counter and of records live longer than what they were made of; lists of handles and texts that are none. */

#include "expect.h"

#include <string.h>

static const char VISIT[] = "{\"format\":\"brimline-journal/1\",\"procedure\":\"pipit-level\",\"edition\":2,\"job\":\"check\","
                            "\"subject\":{\"vehicle\":\"Oddry Fen 7\"},\"entries\":["
                            "{\"seq\":1,\"at\":\"2026-03-02T09:00:00Z\",\"kind\":\"plug\",\"state\":\"open\"},"
                            "{\"seq\":2,\"at\":\"2026-03-02T09:01:00Z\",\"kind\":\"added\",\"volume\":\"0.5 L\"}]}";

static char told[16384];

/* A call that tells something. */
#define TELLS(call)                                                                                                    \
    do {                                                                                                               \
        told[0] = 0;                                                                                                   \
        EXPECT(BRIM_OK, call);                                                                                         \
        CHECK(strlen(told) > 0);                                                                                       \
    } while (0)

#define ROOM told, sizeof told, NULL

static void bills_live_by_themselves(brim_error *error) {
    brim_pack *pack = NULL;
    brim_price_list *made = NULL, *prices = NULL;
    brim_check *check = NULL;
    brim_estimate *estimate = NULL;
    brim_invoice *invoice = NULL;
    brim_lines *lines = NULL, *billed = NULL;
    brim_findings *findings = NULL;
    size_t count = 0;
    EXPECT(BRIM_OK, brim_pack_embedded(&pack, error));
    EXPECT(BRIM_OK, brim_check_replay(pack, TERMINATED(VISIT), &check, error));
    brim_pack_free(pack);
    EXPECT(BRIM_OK, brim_price_list_embedded(&made, error));
    EXPECT(BRIM_OK, brim_price_list_copy(made, &prices, error));
    brim_price_list_free(made);
    EXPECT(BRIM_OK, brim_check_estimate(check, prices, NO_TEXT, &estimate, error));
    EXPECT(BRIM_OK, brim_check_invoice(check, prices, NO_TEXT, &invoice, error));
    brim_price_list_free(prices);
    TELLS(brim_estimate_text(estimate, check, NULL, ROOM, error));
    TELLS(brim_invoice_text(invoice, check, NULL, ROOM, error));
    brim_check_free(check);
    TELLS(brim_estimate_json(estimate, ROOM, error));
    EXPECT(BRIM_OK, brim_estimate_lines(estimate, BRIM_CASE_WORST, &lines, error));
    brim_estimate_free(estimate);
    EXPECT(BRIM_OK, brim_invoice_lines(invoice, &billed, error));
    EXPECT(BRIM_OK, brim_invoice_findings(invoice, &findings, error));
    brim_invoice_free(invoice);
    TELLS(brim_lines_item(lines, 0, ROOM, error));
    TELLS(brim_lines_json(billed, ROOM, error));
    EXPECT(BRIM_OK, brim_findings_count(findings, &count, error));
    CHECK(count > 0);
    brim_lines_free(lines);
    brim_lines_free(billed);
    brim_findings_free(findings);
}

static void records_live_by_themselves(brim_error *error) {
    brim_pack *pack = NULL;
    brim_record *made = NULL, *record = NULL;
    brim_lacks *lacks = NULL;
    brim_history *history = NULL;
    brim_comebacks *comebacks = NULL;
    brim_follow_up *follow_up = NULL;
    EXPECT(BRIM_OK, brim_pack_embedded(&pack, error));
    EXPECT(BRIM_OK, brim_record_seal(pack, TERMINATED(VISIT), NULL, &made, error));
    brim_pack_free(pack);
    EXPECT(BRIM_OK, brim_record_copy(made, &record, error));
    brim_record_free(made);
    EXPECT(BRIM_OK, brim_record_evidence(record, &lacks, error));
    EXPECT(BRIM_OK, brim_history_of((const brim_record *const *)&record, 1, &history, error));
    EXPECT(BRIM_OK, brim_comebacks_of((const brim_record *const *)&record, 1, NO_TEXT, &comebacks, error));
    EXPECT(BRIM_OK, brim_follow_up_of(record, history, NO_TEXT, &follow_up, error));
    brim_record_free(record);
    TELLS(brim_history_text(history, ROOM, error));
    brim_history_free(history);
    TELLS(brim_lacks_text(lacks, 0, ROOM, error));
    TELLS(brim_comebacks_text(comebacks, ROOM, error));
    TELLS(brim_follow_up_text(follow_up, ROOM, error));
    brim_lacks_free(lacks);
    brim_comebacks_free(comebacks);
    brim_follow_up_free(follow_up);
}

static void tellers_live_by_themselves(brim_error *error) {
    static const char shop[] = "{\"format\":\"brimline-profile/1\",\"units\":{\"volume\":{\"unit\":\"US qt\",\"decimals\":2}}}";
    brim_teller *made = NULL, *teller = NULL;
    EXPECT(BRIM_OK, brim_teller_new(NO_TEXT, TERMINATED(shop), NULL, &made, error));
    EXPECT(BRIM_OK, brim_teller_copy(made, &teller, error));
    brim_teller_free(made);
    TELLS(brim_departure_text(TERMINATED("[-2.0 L, -1.5 L]"), teller, ROOM, error));
    CHECK(strcmp(told, "between 1.58 US qt and 2.12 US qt short") == 0);
    brim_teller_free(teller);
}

/* Lists of which one item is none, and lists that no memory holds. */
static void lists_that_are_none_are_errors(brim_error *error) {
    enum { NO_LIST = 2 };
    const size_t endless = (size_t)-1;
    brim_pack *pack = NULL;
    brim_price_list *prices = NULL;
    brim_record *record = NULL;
    brim_history *history = NULL;
    brim_comebacks *comebacks = NULL;
    const brim_record *lacking[NO_LIST], *mixed[NO_LIST];
    const brim_record *const *none = NULL;
    const char *bad[NO_LIST] = {NULL, "\xff"};
    const char *mass[NO_LIST] = {NULL, "1 kg"};
    EXPECT(BRIM_OK, brim_pack_embedded(&pack, error));
    EXPECT(BRIM_OK, brim_price_list_embedded(&prices, error));
    EXPECT(BRIM_OK, brim_record_seal(pack, TERMINATED(VISIT), NULL, &record, error));
    lacking[0] = mixed[0] = record;
    lacking[1] = NULL;
    mixed[1] = (const brim_record *)(const void *)pack;
    strcpy(told, "untouched");
    EXPECT(BRIM_ERROR_NULL_POINTER, brim_history_of(lacking, NO_LIST, &history, error));
    EXPECT(BRIM_ERROR_UNRESOLVED, brim_history_of(mixed, NO_LIST, &history, error));
    EXPECT(BRIM_ERROR_OUT_OF_RANGE, brim_history_of(lacking, endless, &history, error));
    EXPECT(BRIM_ERROR_NULL_POINTER, brim_comebacks_of(lacking, NO_LIST, NO_TEXT, &comebacks, error));
    EXPECT(BRIM_ERROR_UNRESOLVED, brim_comebacks_of(mixed, NO_LIST, NO_TEXT, &comebacks, error));
    EXPECT(BRIM_ERROR_OUT_OF_RANGE, brim_comebacks_of(lacking, endless, NO_TEXT, &comebacks, error));
    EXPECT(BRIM_ERROR_NULL_POINTER, brim_audit_json(prices, pack, lacking, NULL, NO_LIST, ROOM, error));
    EXPECT(BRIM_ERROR_UNRESOLVED, brim_audit_text(prices, pack, mixed, NULL, NO_LIST, NULL, ROOM, error));
    EXPECT(BRIM_ERROR_OUT_OF_RANGE, brim_audit_text(prices, pack, lacking, NULL, endless, NULL, ROOM, error));
    mixed[1] = record;
    EXPECT(BRIM_ERROR_NOT_UTF8, brim_audit_json(prices, pack, mixed, bad, NO_LIST, ROOM, error));
    EXPECT(BRIM_ERROR_NOT_UTF8, brim_audit_text(prices, pack, mixed, bad, NO_LIST, NULL, ROOM, error));
    EXPECT(BRIM_ERROR_WRONG_KIND, brim_audit_text(prices, pack, mixed, mass, NO_LIST, NULL, ROOM, error));
    CHECK(history == NULL && comebacks == NULL && strcmp(told, "untouched") == 0);
    /* Nothing at all is a list. */
    EXPECT(BRIM_OK, brim_history_of(none, 0, &history, error));
    EXPECT(BRIM_OK, brim_comebacks_of(none, 0, NO_TEXT, &comebacks, error));
    TELLS(brim_audit_text(prices, pack, none, NULL, 0, NULL, ROOM, error));
    brim_history_free(history);
    brim_comebacks_free(comebacks);
    brim_record_free(record);
    brim_price_list_free(prices);
    brim_pack_free(pack);
}

int main(void) {
    brim_error *error = brim_error_new();
    bills_live_by_themselves(error);
    records_live_by_themselves(error);
    tellers_live_by_themselves(error);
    lists_that_are_none_are_errors(error);
    brim_error_free(error);
    return failures == 0 ? 0 : 1;
}
