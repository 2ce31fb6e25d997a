/* Calculators by their typed functions: the answer is put together as brim_calculate gives it.

   The arguments of a request are the name of the calculator and its arguments in the order it takes them, a layout as
   its nine members; what is left out is empty. */

#include "calculators.h"

#include <stdlib.h>
#include <string.h>

int unread;

/* Amounts to point to, for one request. */
static brim_amount slots[16];
static size_t used;

const brim_amount *any(const request *of, size_t index, brim_kind kind) {
    brim_amount *slot = &slots[used++];
    if (of->args[index].length == 0) {
        return NULL;
    }
    if (brim_amount_parse(ARG(index), kind, 0, slot, NULL) != BRIM_OK) {
        unread = 1;
        return NULL;
    }
    return slot;
}

brim_kind kind_of(const brim_amount *amount, int difference) {
    brim_kind kind = 0;
    if (amount != NULL) {
        must(brim_unit_kind(amount->unit, &kind, NULL), "brim_unit_kind");
    }
    return difference && kind == BRIM_KIND_TEMPERATURE ? BRIM_KIND_TEMPERATURE_DIFFERENCE : kind;
}

int32_t word(const request *of, size_t index, brim_list list) {
    int32_t number = of->args[index].length > 0 ? number_of(list, of->args[index]) : 0;
    unread |= number == 0 && of->args[index].length > 0;
    return number;
}

uint32_t count(const request *of, size_t index) {
    char *end;
    unsigned long long number = strtoull(of->args[index].bytes, &end, 10);
    unread |= of->args[index].length == 0 || *end != 0 || number > UINT32_MAX;
    return (uint32_t)number;
}

size_t bytes(const request *of, size_t index, uint8_t *into, size_t capacity) {
    const char *at = of->args[index].bytes;
    size_t length = 0;
    while (*at != 0) {
        char pair[3] = {0, 0, 0};
        char *end;
        if (*at == ' ') {
            at++;
            continue;
        }
        memcpy(pair, at, at[1] != 0 ? 2 : 1);
        if (length == capacity) {
            fail("more bytes than a test has");
        }
        into[length++] = (uint8_t)strtoul(pair, &end, 16);
        if (end != pair + 2) {
            unread = 1;
            return 0;
        }
        at += 2;
    }
    return length;
}

void put_amount(const char *name, const brim_amount *amount) {
    brim_status status;
    if (amount->unit != 0) {
        FILL(brim_amount_text(amount, ROOM, detail));
        must(status, "brim_amount_text");
        put_room(name);
    }
}

void put_range(const char *name, const brim_amount *low, const brim_amount *high) {
    const brim_amount *ends[2];
    size_t index;
    ends[0] = low;
    ends[1] = high;
    put_member(&out, name);
    put(&out, "[");
    for (index = 0; index < 2; index++) {
        brim_status status;
        put_comma(&out);
        if (ends[index]->unit == 0) {
            put(&out, "null");
            continue;
        }
        FILL(brim_amount_text(ends[index], ROOM, detail));
        must(status, "brim_amount_text");
        put_string(&out, room.bytes, room.length);
    }
    put(&out, "]");
}

void put_word(const char *name, brim_list list, int32_t number) {
    brim_status status;
    if (number != 0) {
        FILL(brim_word(list, number, ROOM, detail));
        must(status, "brim_word");
        put_room(name);
    }
}

void put_whole(const char *name, long long whole) {
    put_member(&out, name);
    put_number(&out, whole);
}

void put_cautions(void) {
    grown lines = {NULL, 0, 0};
    char *line;
    put_bytes(&lines, room.bytes, room.length);
    put_member(&out, "cautions");
    put(&out, "[");
    for (line = strtok(lines.bytes, "\n"); line != NULL; line = strtok(NULL, "\n")) {
        put_comma(&out);
        put_string(&out, line, strlen(line));
    }
    put(&out, "]");
    free(lines.bytes);
}

brim_status told(brim_status status, const brim_amount *value) {
    TRY(status);
    put_amount("value", value);
    return BRIM_OK;
}

static const calculator *const ROOMS[] = {
    CALCULATORS_OF_TORQUE,
    CALCULATORS_OF_VOLUME,
    CALCULATORS_OF_WARM_UP,
    CALCULATORS_OF_FLUID,
    CALCULATORS_OF_SIGNAL,
    CALCULATORS_OF_LEAK,
};

/* The answer of the typed function; "unread" where it cannot be given these arguments, "by_name" where there is none. */
brim_status answer_typed(const request *of) {
    const calculator *one;
    size_t index;
    unread = 0;
    used = 0;
    for (index = 0; index < sizeof ROOMS / sizeof *ROOMS; index++) {
        for (one = ROOMS[index]; one->name != NULL; one++) {
            if (is(of->args[0], one->name)) {
                put(&out, "{");
                TRY(one->answer(of));
                put(&out, "}");
                if (unread) {
                    out.length = 0;
                    put(&out, "\"unread\"");
                }
                return BRIM_OK;
            }
        }
    }
    put(&out, "\"by_name\"");
    return BRIM_OK;
}
