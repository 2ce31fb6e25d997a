/* Frames, signals and replies, by their typed functions. */

#include "calculators.h"

#include <stdlib.h>

static void put_reading(const brim_reading *reading) {
    put_word("state", BRIM_LIST_SIGNAL_STATE, reading->state);
    put_amount("value", &reading->value);
}

static void put_reading_as(const char *name, const brim_reading *reading) {
    put_member(&out, name);
    put(&out, "{");
    put_reading(reading);
    put(&out, "}");
}

static brim_status transmission_frame(const request *of) {
    uint8_t data[64];
    uint32_t id = count(of, 1);
    size_t length = bytes(of, 2, data, sizeof data);
    brim_reading temperature, level, departure, countdown;
    brim_level_status level_status = 0;
    brim_status status;
    ASK(brim_transmission_frame(id, data, length, &temperature, &level, &departure, &level_status, &countdown, detail));
    put_reading_as("temperature", &temperature);
    put_reading_as("level", &level);
    put_reading_as("departure", &departure);
    put_word("status", BRIM_LIST_LEVEL_STATUS, level_status);
    put_reading_as("countdown", &countdown);
    return BRIM_OK;
}

/* The nine members of a layout, from an argument on; NULL where it is left out. */
static const brim_layout *layout(const request *of, size_t first, brim_layout *into) {
    static const brim_amount nothing = {0, 0, 0};
    const brim_amount *scale, *offset, *min, *max;
    brim_kind kind = 0;
    if (of->args[first].length == 0) {
        return NULL;
    }
    into->start = count(of, first);
    into->length = count(of, first + 1);
    into->order = word(of, first + 2, BRIM_LIST_BYTE_ORDER);
    into->is_signed = is(of->args[first + 3], "true");
    if (brim_unit_parse(ARG(first + 4), 0, 0, &into->unit, NULL) != BRIM_OK) {
        unread = 1;
        return NULL;
    }
    must(brim_unit_kind(into->unit, &kind, NULL), "brim_unit_kind");
    scale = any(of, first + 5, kind == BRIM_KIND_TEMPERATURE ? BRIM_KIND_TEMPERATURE_DIFFERENCE : kind);
    offset = any(of, first + 6, kind);
    min = any(of, first + 7, kind);
    max = any(of, first + 8, kind);
    into->scale = scale != NULL ? *scale : nothing;
    into->offset = offset != NULL ? *offset : nothing;
    into->min = min != NULL ? *min : nothing;
    into->max = max != NULL ? *max : nothing;
    return into;
}

static brim_status linear(const request *of) {
    uint8_t data[64];
    brim_layout record;
    size_t length = bytes(of, 1, data, sizeof data);
    const brim_layout *place = layout(of, 2, &record);
    brim_reading reading;
    brim_status status;
    ASK(brim_linear(data, length, place, &reading, detail));
    put_reading(&reading);
    return BRIM_OK;
}

static void put_hexadecimal(const char *name, const uint8_t *from, size_t length) {
    static const char digits[] = "0123456789ABCDEF";
    grown text = {NULL, 0, 0};
    size_t index;
    put_bytes(&text, "", 0);
    for (index = 0; index < length; index++) {
        put_bytes(&text, &digits[from[index] >> 4], 1);
        put_bytes(&text, &digits[from[index] & 15], 1);
    }
    put_member(&out, name);
    put_string(&out, text.bytes, text.length);
    free(text.bytes);
}

static brim_status diagnostic_reply(const request *of) {
    uint8_t asked[64], reply[64];
    brim_layout record;
    size_t asked_length = bytes(of, 1, asked, sizeof asked), reply_length = bytes(of, 2, reply, sizeof reply);
    const brim_layout *place = layout(of, 3, &record);
    size_t start = 0, data_count = 0;
    uint32_t code = 0;
    brim_reply state = 0;
    brim_refusal reason = 0;
    brim_status status;
    ASK(brim_diagnostic_reply(asked, asked_length, reply, reply_length, &state, &start, &data_count, &code, &reason,
                              detail));
    put_word("state", BRIM_LIST_REPLY, state);
    if (state == BRIM_REPLY_POSITIVE) {
        put_hexadecimal("identifier", reply + 1, start - 1);
        put_hexadecimal("data", reply + start, data_count);
        if (place != NULL) {
            brim_reading reading;
            TRY(brim_linear(reply + start, data_count, place, &reading, detail));
            put_reading_as("reading", &reading);
        }
    } else {
        put_whole("code", code);
        put_word("reason", BRIM_LIST_REFUSAL, reason);
    }
    return BRIM_OK;
}

const calculator CALCULATORS_OF_SIGNAL[] = {
    {"signal.transmission_frame", transmission_frame},
    {"signal.linear", linear},
    {"signal.diagnostic_reply", diagnostic_reply},
    {NULL, NULL},
};
