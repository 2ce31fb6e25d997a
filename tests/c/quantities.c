/* Versions, conversions, units, amounts and intervals. */

#include "request.h"

#include <inttypes.h>
#include <stdio.h>
#include <stdlib.h>
#include <string.h>

/* {"text": what the room holds} */
static brim_status text_of_room(brim_status status) {
    TRY(status);
    put(&out, "{");
    put_room("text");
    put(&out, "}");
    return BRIM_OK;
}

static brim_status text_of_amount(const brim_amount *amount) {
    brim_status status;
    FILL(brim_amount_text(amount, ROOM, detail));
    return text_of_room(status);
}

brim_status answer_versions(const request *of) {
    brim_status status;
    (void)of;
    FILL(brim_versions(ROOM, detail));
    TRY(status);
    put_bytes(&out, room.bytes, room.length);
    return BRIM_OK;
}

/* {"bits": the double in hexadecimal} */
static void put_double(double number) {
    uint64_t bits;
    char text[40];
    memcpy(&bits, &number, sizeof bits);
    snprintf(text, sizeof text, "{\"bits\":\"%016" PRIx64 "\"}", bits);
    put(&out, text);
}

brim_status answer_convert(const request *of) {
    double result;
    TRY(brim_convert(strtod(of->args[0].bytes, NULL), ARG(1), ARG(2), &result, detail));
    put_double(result);
    return BRIM_OK;
}

/* Units by number. */
brim_status answer_convert_units(const request *of) {
    brim_unit from = (brim_unit)whole(of->args[1]), to = (brim_unit)whole(of->args[2]);
    double result;
    TRY(brim_convert_units(strtod(of->args[0].bytes, NULL), from, to, &result, detail));
    put_double(result);
    return BRIM_OK;
}

brim_status answer_unit(const request *of) {
    brim_status status;
    brim_unit unit = 0;
    brim_kind kind = 0;
    TRY(brim_unit_parse(ARG(0), number_of(BRIM_LIST_KIND, of->args[1]), number_of(BRIM_LIST_MEASURES, of->args[2]),
                        &unit, detail));
    put(&out, "{");
    put_member(&out, "code");
    put_number(&out, unit);
    must(brim_unit_kind(unit, &kind, NULL), "brim_unit_kind");
    FILL(brim_word(BRIM_LIST_KIND, kind, ROOM, detail));
    must(status, "brim_word");
    put_room("kind");
    FILL(brim_unit_rec20(unit, ROOM, detail));
    must(status, "brim_unit_rec20");
    if (room.length > 0) {
        put_room("rec20");
    } else {
        put_member(&out, "rec20");
        put(&out, "null");
    }
    FILL(brim_unit_symbol(unit, ROOM, detail));
    must(status, "brim_unit_symbol");
    put_room("symbol");
    FILL(brim_unit_ucum(unit, ROOM, detail));
    must(status, "brim_unit_ucum");
    put_room("ucum");
    put(&out, "}");
    return BRIM_OK;
}

brim_status answer_amount(const request *of) {
    brim_status status;
    brim_amount amount;
    TRY(brim_amount_parse(ARG(0), number_of(BRIM_LIST_KIND, of->args[1]), number_of(BRIM_LIST_MEASURES, of->args[2]),
                          &amount, detail));
    put(&out, "{");
    put_member(&out, "decimals");
    put_number(&out, -amount.exponent);
    put_member(&out, "mantissa");
    put_number(&out, amount.mantissa);
    FILL(brim_amount_text(&amount, ROOM, detail));
    must(status, "brim_amount_text");
    put_room("text");
    FILL(brim_unit_symbol(amount.unit, ROOM, detail));
    must(status, "brim_unit_symbol");
    put_room("unit");
    put(&out, "}");
    return BRIM_OK;
}

brim_status answer_amount_to(const request *of) {
    brim_amount amount;
    brim_unit unit = 0;
    TRY(brim_amount_parse(ARG(0), 0, 0, &amount, detail));
    TRY(brim_unit_parse(ARG(1), 0, 0, &unit, detail));
    TRY(brim_amount_to(&amount, unit, (int32_t)whole(of->args[2]), number_of(BRIM_LIST_ROUNDING, of->args[3]), &amount,
                       detail));
    return text_of_amount(&amount);
}

static brim_status two_amounts(const request *of, brim_amount *a, brim_amount *b) {
    TRY(brim_amount_parse(ARG(0), 0, 0, a, detail));
    return brim_amount_parse(ARG(1), 0, 0, b, detail);
}

brim_status answer_amount_add(const request *of) {
    brim_amount a, b;
    TRY(two_amounts(of, &a, &b));
    TRY(brim_amount_add(&a, &b, &a, detail));
    return text_of_amount(&a);
}

brim_status answer_amount_sub(const request *of) {
    brim_amount a, b;
    TRY(two_amounts(of, &a, &b));
    TRY(brim_amount_subtract(&a, &b, &a, detail));
    return text_of_amount(&a);
}

brim_status answer_amount_times(const request *of) {
    brim_amount amount;
    TRY(brim_amount_parse(ARG(0), 0, 0, &amount, detail));
    TRY(brim_amount_times(&amount, whole(of->args[1]), &amount, detail));
    return text_of_amount(&amount);
}

brim_status answer_amount_compare(const request *of) {
    static const char *const orders[] = {"less", "equal", "greater"};
    brim_amount a, b;
    int32_t order = 0;
    TRY(two_amounts(of, &a, &b));
    TRY(brim_amount_compare(&a, &b, &order, detail));
    put(&out, "{");
    put_member(&out, "order");
    put_string(&out, orders[order + 1], strlen(orders[order + 1]));
    put(&out, "}");
    return BRIM_OK;
}

brim_status answer_interval_intersect(const request *of) {
    brim_status status;
    FILL(brim_interval_intersect(ARG(0), ARG(1), ROOM, detail));
    if (status == BRIM_OK && room.length == 0) {
        put(&out, "{\"text\":null}");
        return BRIM_OK;
    }
    return text_of_room(status);
}
