/* What programs that misuse the library share: a count of what is not as expected, and documents to begin with. */
#ifndef EXPECT_H
#define EXPECT_H

#include "brimline.h"

#include <stdio.h>

static int failures;

#define EXPECT(expected, call)                                                                                         \
    do {                                                                                                               \
        brim_status status = (call);                                                                                   \
        if (status != (expected)) {                                                                                    \
            fprintf(stderr, "line %d: %s: got %d, not %s\n", __LINE__, #call, (int)status, #expected);                 \
            failures++;                                                                                                \
        }                                                                                                              \
    } while (0)

#define CHECK(truth)                                                                                                   \
    do {                                                                                                               \
        if (!(truth)) {                                                                                                \
            fprintf(stderr, "line %d: not so: %s\n", __LINE__, #truth);                                                \
            failures++;                                                                                                \
        }                                                                                                              \
    } while (0)

#define TERMINATED(text) text, BRIM_TERMINATED
#define NO_TEXT NULL, 0
#define NO_ROOM NULL, 0, NULL

static const char HEADER[] = "{\"format\":\"brimline-journal/1\",\"procedure\":\"pipit-level\",\"job\":\"check\"}";
static const char JOURNAL[] = "{\"format\":\"brimline-journal/1\",\"procedure\":\"pipit-level\",\"job\":\"check\","
                              "\"entries\":[{\"seq\":1,\"at\":\"2026-03-02T09:00:00Z\",\"kind\":\"added\","
                              "\"volume\":\"0.5 L\"}]}";
static const char ENTRY[] = "{\"seq\":1,\"at\":\"2026-03-02T09:00:00Z\",\"kind\":\"engine\",\"state\":\"idling\"}";

/* What outputs hold before a call, and must hold after one that fails. */
static const brim_amount UNTOUCHED = {123, -4, 5};

static inline int same(const brim_amount *one, const brim_amount *other) {
    return one->mantissa == other->mantissa && one->exponent == other->exponent && one->unit == other->unit;
}

#endif
