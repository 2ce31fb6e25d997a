/* A journal that is kept entry by entry, in a storage that runs out of room. */

#include "expect.h"

#include <string.h>

static const char SECOND[] = "{\"seq\":2,\"at\":\"2026-03-02T09:00:10Z\",\"kind\":\"note\",\"text\":\"21 \xc2\xb0""C outside\"}";

/* A storage of so many bytes, which answers with a number of its own where it is closed. */
typedef struct memory {
    char bytes[1024];
    size_t length;
    size_t room;
    int cuts;
    int32_t closed;
} memory;

static int32_t append(void *user, const uint8_t *bytes, size_t length) {
    memory *kept = (memory *)user;
    size_t fits = kept->room - kept->length;
    size_t taken = length < fits ? length : fits;
    if (kept->closed != 0) {
        return kept->closed;
    }
    memcpy(kept->bytes + kept->length, bytes, taken);
    kept->length += taken;
    return taken == length ? 0 : 28;
}

static int32_t cut(void *user, size_t length) {
    memory *kept = (memory *)user;
    if (kept->closed != 0) {
        return kept->closed;
    }
    kept->length = length;
    kept->cuts++;
    return 0;
}

#define STORAGE append, cut, &kept

static void is_journal(const memory *kept, const brim_kept_journal *journal, brim_error *error) {
    char lines[1024];
    size_t length = 0;
    brim_check *check = NULL;
    EXPECT(BRIM_OK, brim_kept_journal_check(journal, &check, error));
    EXPECT(BRIM_OK, brim_check_journal_lines(check, lines, sizeof lines, &length, error));
    CHECK(length == kept->length && memcmp(lines, kept->bytes, length) == 0);
    brim_check_free(check);
}

static void what_is_not_kept_is_not_recorded(const brim_pack *pack, brim_error *error) {
    memory kept = {"", 0, sizeof kept.bytes, 0, 0};
    brim_kept_journal *journal = NULL;
    brim_findings *findings = NULL;
    size_t dropped = 7;
    size_t whole;
    char said[64];
    EXPECT(BRIM_OK, brim_kept_journal_start(pack, TERMINATED(HEADER), STORAGE, NULL, &journal, error));
    EXPECT(BRIM_OK, brim_kept_journal_append(journal, TERMINATED(ENTRY), &findings, error));
    brim_findings_free(findings);
    is_journal(&kept, journal, error);

    whole = kept.length;
    kept.room = whole + 63;
    EXPECT(BRIM_ERROR_STORAGE, brim_kept_journal_append(journal, TERMINATED(SECOND), NULL, error));
    EXPECT(BRIM_OK, brim_error_fault_got(error, 0, said, sizeof said, NULL));
    CHECK(strcmp(said, "the storage answered 28") == 0);
    CHECK(kept.length == whole + 63 && kept.cuts == 0);
    brim_kept_journal_free(journal);

    /* It was cut within the degree sign, and is taken up again. */
    kept.room = sizeof kept.bytes;
    EXPECT(BRIM_OK, brim_kept_journal_recover(pack, (const uint8_t *)kept.bytes, kept.length, STORAGE, NULL, &journal,
                                              error));
    EXPECT(BRIM_OK, brim_kept_journal_dropped_bytes(journal, &dropped, error));
    CHECK(dropped == 63 && kept.cuts == 0);
    EXPECT(BRIM_OK, brim_kept_journal_append(journal, TERMINATED(SECOND), NULL, error));
    CHECK(kept.cuts == 1);
    is_journal(&kept, journal, error);
    EXPECT(BRIM_ERROR_SEQUENCE, brim_kept_journal_append(journal, TERMINATED(SECOND), NULL, error));
    is_journal(&kept, journal, error);
    brim_kept_journal_free(journal);
}

/* A call that the storage refused, with what it answered. */
static void is_closed(brim_status told, brim_error *error) {
    char said[64] = "";
    EXPECT(BRIM_ERROR_STORAGE, told);
    EXPECT(BRIM_OK, brim_error_fault_got(error, 0, said, sizeof said, NULL));
    CHECK(strcmp(said, "the storage answered -5") == 0);
}

static void a_closed_storage_keeps_nothing(const brim_pack *pack, brim_error *error) {
    memory kept = {"", 0, sizeof kept.bytes, 0, -5};
    brim_kept_journal *journal = NULL;
    brim_findings *findings = NULL;
    is_closed(brim_kept_journal_start(pack, TERMINATED(HEADER), STORAGE, NULL, &journal, error), error);
    CHECK(journal == NULL && kept.length == 0);
    kept.closed = 0;
    EXPECT(BRIM_OK, brim_kept_journal_start(pack, TERMINATED(HEADER), STORAGE, NULL, &journal, error));
    kept.closed = -5;
    is_closed(brim_kept_journal_append(journal, TERMINATED(ENTRY), &findings, error), error);
    is_closed(brim_kept_journal_append(journal, TERMINATED(ENTRY), &findings, error), error);
    CHECK(findings == NULL && kept.length == sizeof HEADER);
    kept.closed = 0;
    EXPECT(BRIM_OK, brim_kept_journal_append(journal, TERMINATED(ENTRY), NULL, error));
    is_journal(&kept, journal, error);
    brim_kept_journal_free(journal);
    journal = NULL;

    /* What was torn must be cut off before the next entry, and cannot be. */
    memcpy(kept.bytes + kept.length, "{\"seq\"", 6);
    kept.length += 6;
    kept.closed = -5;
    EXPECT(BRIM_OK, brim_kept_journal_recover(pack, (const uint8_t *)kept.bytes, kept.length, STORAGE, NULL, &journal,
                                              error));
    is_closed(brim_kept_journal_append(journal, TERMINATED(SECOND), &findings, error), error);
    CHECK(findings == NULL && kept.cuts == 1);
    kept.closed = 0;
    EXPECT(BRIM_OK, brim_kept_journal_append(journal, TERMINATED(SECOND), NULL, error));
    is_journal(&kept, journal, error);
    brim_kept_journal_free(journal);
}

static void what_is_missing_is_noticed(const brim_pack *pack, brim_error *error) {
    memory kept = {"", 0, 10, 0, 0};
    brim_kept_journal *journal = NULL;
    brim_check *check = NULL;
    size_t dropped = 7;
    EXPECT(BRIM_ERROR_STORAGE, brim_kept_journal_start(pack, TERMINATED(HEADER), STORAGE, NULL, &journal, error));
    EXPECT(BRIM_ERROR_UNRESOLVED, brim_kept_journal_recover(pack, (const uint8_t *)kept.bytes, kept.length, STORAGE, NULL,
                                                            &journal, error));
    EXPECT(BRIM_ERROR_NULL_POINTER,
           brim_kept_journal_start(pack, TERMINATED(HEADER), NULL, cut, &kept, NULL, &journal, error));
    EXPECT(BRIM_ERROR_NULL_POINTER,
           brim_kept_journal_start(pack, TERMINATED(HEADER), append, NULL, &kept, NULL, &journal, error));
    EXPECT(BRIM_ERROR_NULL_POINTER, brim_kept_journal_start(pack, NO_TEXT, STORAGE, NULL, &journal, error));
    EXPECT(BRIM_ERROR_NULL_POINTER, brim_kept_journal_recover(pack, NULL, 0, STORAGE, NULL, &journal, error));
    EXPECT(BRIM_ERROR_NULL_POINTER, brim_kept_journal_append(NULL, TERMINATED(ENTRY), NULL, error));
    EXPECT(BRIM_ERROR_NULL_POINTER, brim_kept_journal_check(NULL, &check, error));
    EXPECT(BRIM_ERROR_NULL_POINTER, brim_kept_journal_dropped_bytes(NULL, &dropped, error));
    brim_kept_journal_free(NULL);
    CHECK(journal == NULL && check == NULL && dropped == 7);
}

int main(void) {
    brim_error *error = brim_error_new();
    brim_pack *pack = NULL;
    EXPECT(BRIM_OK, brim_pack_embedded(&pack, error));
    what_is_not_kept_is_not_recorded(pack, error);
    a_closed_storage_keeps_nothing(pack, error);
    what_is_missing_is_noticed(pack, error);
    brim_pack_free(pack);
    brim_error_free(error);
    return failures == 0 ? 0 : 1;
}
