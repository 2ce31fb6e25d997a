/* Calculators by their typed functions: the answer is put together as brim_calculate gives it.

   The arguments of a request are the name of the calculator and its arguments in the order it takes them, a layout as
   its nine members; what is left out is empty. */

#include "request.h"

#include <stdlib.h>
#include <string.h>

/* Set where an argument is none that the typed function could be given. */
static int unread;

/* Amounts to point to, for one request. */
static brim_amount slots[16];
static size_t used;

static const brim_amount *any(const request *of, size_t index, brim_kind kind) {
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

#define GIVEN(index, kind) any(of, index, BRIM_KIND_##kind)

/* The kind of an amount, or of its differences. */
static brim_kind kind_of(const brim_amount *amount, int difference) {
    brim_kind kind = 0;
    if (amount != NULL) {
        must(brim_unit_kind(amount->unit, &kind, NULL), "brim_unit_kind");
    }
    return difference && kind == BRIM_KIND_TEMPERATURE ? BRIM_KIND_TEMPERATURE_DIFFERENCE : kind;
}

static int32_t word(const request *of, size_t index, brim_list list) {
    int32_t number = of->args[index].length > 0 ? number_of(list, of->args[index]) : 0;
    unread |= number == 0 && of->args[index].length > 0;
    return number;
}

static uint32_t count(const request *of, size_t index) {
    char *end;
    unsigned long long number = strtoull(of->args[index].bytes, &end, 10);
    unread |= of->args[index].length == 0 || *end != 0 || number > UINT32_MAX;
    return (uint32_t)number;
}

/* Bytes as pairs of hexadecimal digits, with or without spaces between them. */
static size_t bytes(const request *of, size_t index, uint8_t *into, size_t capacity) {
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

static void put_range(const char *name, const brim_amount *low, const brim_amount *high) {
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

static void put_whole(const char *name, long long whole) {
    put_member(&out, name);
    put_number(&out, whole);
}

/* The lines that the room holds. */
static void put_cautions(void) {
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

/* Answers one amount. */
static brim_status told(brim_status status, const brim_amount *value) {
    TRY(status);
    put_amount("value", value);
    return BRIM_OK;
}

/* Asks once all arguments are read; what is not is told by the one who asked. */
#define ASK(call)                                                                                                      \
    do {                                                                                                               \
        if (unread) {                                                                                                  \
            return BRIM_OK;                                                                                            \
        }                                                                                                              \
        status = (call);                                                                                               \
        if (status == BRIM_ERROR_BUFFER_TOO_SMALL) {                                                                   \
            grow(&room, room.length + 1);                                                                              \
            status = (call);                                                                                           \
        }                                                                                                              \
        TRY(status);                                                                                                   \
    } while (0)

/* torque */

static brim_status wrench_setting(const request *of) {
    const brim_amount *target = GIVEN(1, TORQUE), *lever = GIVEN(2, LENGTH), *adapter = GIVEN(3, LENGTH),
                      *angle = GIVEN(4, ANGLE), *graduation = GIVEN(5, TORQUE), *printed = GIVEN(6, TORQUE);
    brim_amount setting, applied, difference;
    brim_status status;
    ASK(brim_wrench_setting(target, lever, adapter, angle, graduation, printed, &setting, &applied, &difference, ROOM,
                            detail));
    put_cautions();
    put_amount("setting", &setting);
    put_amount("applied", &applied);
    put_amount("error", &difference);
    return BRIM_OK;
}

static brim_status applied_torque(const request *of) {
    const brim_amount *setting = GIVEN(1, TORQUE), *lever = GIVEN(2, LENGTH), *adapter = GIVEN(3, LENGTH),
                      *angle = GIVEN(4, ANGLE);
    brim_amount applied;
    brim_status status;
    ASK(brim_applied_torque(setting, lever, adapter, angle, &applied, detail));
    return told(status, &applied);
}

static brim_status preload(const request *of) {
    const brim_amount *torque = GIVEN(1, TORQUE), *diameter = GIVEN(2, LENGTH), *k = GIVEN(3, RATIO);
    int32_t condition = word(of, 4, BRIM_LIST_THREAD_CONDITION);
    brim_amount low, high, k_low, k_high;
    brim_status status;
    ASK(brim_preload(torque, diameter, k, condition, &low, &high, &k_low, &k_high, detail));
    put_range("preload", &low, &high);
    put_range("k", &k_low, &k_high);
    return BRIM_OK;
}

static brim_status torque_for_preload(const request *of) {
    const brim_amount *force = GIVEN(1, FORCE), *diameter = GIVEN(2, LENGTH), *k = GIVEN(3, RATIO);
    int32_t condition = word(of, 4, BRIM_LIST_THREAD_CONDITION);
    brim_amount low, high, k_low, k_high;
    brim_status status;
    ASK(brim_torque_for_preload(force, diameter, k, condition, &low, &high, &k_low, &k_high, ROOM, detail));
    put_cautions();
    put_range("torque", &low, &high);
    put_range("k", &k_low, &k_high);
    return BRIM_OK;
}

static brim_status proof_load(const request *of) {
    int32_t strength_class = word(of, 2, BRIM_LIST_STRENGTH_CLASS);
    brim_amount load;
    brim_status status;
    ASK(brim_proof_load(ARG(1), strength_class, &load, detail));
    return told(status, &load);
}

static brim_status plausible(const request *of) {
    const brim_amount *torque = GIVEN(1, TORQUE);
    int32_t plug = word(of, 3, BRIM_LIST_PLUG);
    brim_fits fits = 0;
    brim_unit unit = 0;
    brim_amount low, high, slip;
    brim_status status;
    ASK(brim_plausible(torque, ARG(2), plug, &fits, &low, &high, &unit, &slip, ROOM, detail));
    put_cautions();
    put_word("fits", BRIM_LIST_FITS, fits);
    put_range("band", &low, &high);
    put_member(&out, "basis");
    put(&out, "\"steel_bolt\"");
    if (unit != 0) {
        put_member(&out, "slip");
        put(&out, "{");
        FILL(brim_unit_symbol(unit, ROOM, detail));
        must(status, "brim_unit_symbol");
        put_room("unit");
        put_amount("torque", &slip);
        put(&out, "}");
    }
    return BRIM_OK;
}

/* volume */

static brim_status at_base(const request *of,
                           brim_status (*ask)(const brim_amount *, const brim_amount *, brim_base, brim_amount *,
                                              brim_error *)) {
    const brim_amount *density = GIVEN(1, DENSITY), *temperature = GIVEN(2, TEMPERATURE);
    int32_t base = word(of, 3, BRIM_LIST_BASE);
    brim_amount value;
    brim_status status;
    ASK(ask(density, temperature, base, &value, detail));
    return told(status, &value);
}

static brim_status correction_factor(const request *of) {
    return at_base(of, brim_correction_factor);
}

static brim_status base_density(const request *of) {
    return at_base(of, brim_base_density);
}

static brim_status density_at(const request *of) {
    return at_base(of, brim_density_at);
}

static brim_status between(const request *of,
                           brim_status (*ask)(const brim_amount *, const brim_amount *, const brim_amount *,
                                              const brim_amount *, brim_base, const brim_amount *, brim_amount *,
                                              brim_error *)) {
    const brim_amount *volume = GIVEN(1, VOLUME), *one = GIVEN(2, TEMPERATURE), *other = GIVEN(3, TEMPERATURE),
                      *density = GIVEN(4, DENSITY), *coefficient = GIVEN(6, EXPANSION);
    int32_t base = word(of, 5, BRIM_LIST_BASE);
    brim_amount value;
    brim_status status;
    ASK(ask(volume, one, other, density, base, coefficient, &value, detail));
    return told(status, &value);
}

static brim_status at_temperature(const request *of) {
    return between(of, brim_at_temperature);
}

static brim_status temperature_error(const request *of) {
    return between(of, brim_temperature_error);
}

static brim_status mass(const request *of) {
    const brim_amount *volume = GIVEN(1, VOLUME), *temperature = GIVEN(2, TEMPERATURE), *density = GIVEN(3, DENSITY);
    int32_t base = word(of, 4, BRIM_LIST_BASE);
    brim_amount kilograms;
    brim_status status;
    ASK(brim_mass(volume, temperature, density, base, &kilograms, detail));
    return told(status, &kilograms);
}

static brim_status volume_of_mass(const request *of) {
    const brim_amount *kilograms = GIVEN(1, MASS), *temperature = GIVEN(2, TEMPERATURE), *density = GIVEN(3, DENSITY);
    int32_t base = word(of, 4, BRIM_LIST_BASE);
    brim_amount volume;
    brim_status status;
    ASK(brim_volume_of_mass(kilograms, temperature, density, base, &volume, detail));
    return told(status, &volume);
}

static brim_status tilt_error(const request *of) {
    const brim_amount *surface = GIVEN(1, AREA), *offset = GIVEN(2, LENGTH), *tilt = GIVEN(3, ANGLE);
    brim_amount height, volume;
    brim_status status;
    ASK(brim_tilt_error(surface, offset, tilt, &height, &volume, detail));
    put_amount("height", &height);
    put_amount("volume", &volume);
    return BRIM_OK;
}

static brim_status segment_share(const request *of) {
    const brim_amount *level = GIVEN(1, LENGTH), *diameter = GIVEN(2, LENGTH);
    brim_amount share;
    brim_status status;
    ASK(brim_segment_share(level, diameter, &share, detail));
    return told(status, &share);
}

static brim_status exchange(const request *of) {
    const brim_amount *capacity = GIVEN(1, VOLUME), *drained = GIVEN(2, VOLUME);
    uint32_t cycles = count(of, 3);
    brim_amount old, fresh, spent;
    brim_status status;
    ASK(brim_exchange(capacity, drained, cycles, &old, &fresh, &spent, detail));
    put_amount("old", &old);
    put_amount("fresh", &fresh);
    put_amount("used", &spent);
    return BRIM_OK;
}

static brim_status cycles_needed(const request *of) {
    const brim_amount *capacity = GIVEN(1, VOLUME), *drained = GIVEN(2, VOLUME), *wanted = GIVEN(3, RATIO);
    uint32_t cycles = 0;
    brim_amount old, fresh, spent;
    brim_status status;
    ASK(brim_cycles_needed(capacity, drained, wanted, &cycles, &old, &fresh, &spent, ROOM, detail));
    put_cautions();
    put_whole("cycles", cycles);
    put_amount("old", &old);
    put_amount("fresh", &fresh);
    put_amount("used", &spent);
    return BRIM_OK;
}

static brim_status flush(const request *of) {
    const brim_amount *capacity = GIVEN(1, VOLUME), *flowed = GIVEN(2, VOLUME);
    brim_amount old, fresh;
    brim_status status;
    ASK(brim_flush(capacity, flowed, &old, &fresh, detail));
    put_amount("old", &old);
    put_amount("fresh", &fresh);
    return BRIM_OK;
}

static brim_status flush_needed(const request *of) {
    const brim_amount *capacity = GIVEN(1, VOLUME), *fresh = GIVEN(2, RATIO);
    brim_amount needed;
    brim_status status;
    ASK(brim_flush_needed(capacity, fresh, &needed, detail));
    return told(status, &needed);
}

static brim_status wrong_left(const request *of) {
    const brim_amount *capacity = GIVEN(1, VOLUME), *wrong = GIVEN(2, VOLUME), *drained = GIVEN(3, VOLUME);
    uint32_t cycles = count(of, 4);
    brim_amount left;
    brim_status status;
    ASK(brim_wrong_left(capacity, wrong, drained, cycles, &left, detail));
    return told(status, &left);
}

/* warm_up */

static brim_status mixed_temperature(const request *of) {
    const brim_amount *volume = GIVEN(1, VOLUME), *temperature = GIVEN(2, TEMPERATURE), *added = GIVEN(3, VOLUME),
                      *added_temperature = GIVEN(4, TEMPERATURE);
    brim_amount mixed;
    brim_status status;
    ASK(brim_mixed_temperature(volume, temperature, added, added_temperature, &mixed, detail));
    return told(status, &mixed);
}

static brim_status cool_down(const request *of) {
    const brim_amount *first = GIVEN(1, TEMPERATURE), *second = GIVEN(2, TEMPERATURE), *elapsed = GIVEN(3, TIME),
                      *ambient = GIVEN(4, TEMPERATURE), *max = GIVEN(5, TEMPERATURE),
                      *rate = GIVEN(6, TEMPERATURE_DIFFERENCE), *time = GIVEN(7, TIME);
    brim_amount start_at, wait, time_constant;
    brim_status status;
    ASK(brim_cool_down(first, second, elapsed, ambient, max, rate, time, &start_at, &wait, &time_constant, ROOM, detail));
    put_cautions();
    put_amount("target", &start_at);
    put_amount("wait", &wait);
    put_amount("time_constant", &time_constant);
    return BRIM_OK;
}

static brim_status response_time(const request *of) {
    const brim_amount *time_constant = GIVEN(1, TIME), *share = GIVEN(2, RATIO);
    brim_amount time;
    brim_status status;
    ASK(brim_response_time(time_constant, share, &time, detail));
    return told(status, &time);
}

/* fluid */

static brim_status viscosity_at(const request *of) {
    const brim_amount *v1 = GIVEN(1, KINEMATIC_VISCOSITY), *t1 = GIVEN(2, TEMPERATURE),
                      *v2 = GIVEN(3, KINEMATIC_VISCOSITY), *t2 = GIVEN(4, TEMPERATURE), *at = GIVEN(5, TEMPERATURE);
    brim_amount viscosity;
    brim_status status;
    ASK(brim_viscosity_at(v1, t1, v2, t2, at, &viscosity, detail));
    return told(status, &viscosity);
}

static brim_status temperature_for(const request *of) {
    const brim_amount *v1 = GIVEN(1, KINEMATIC_VISCOSITY), *t1 = GIVEN(2, TEMPERATURE),
                      *v2 = GIVEN(3, KINEMATIC_VISCOSITY), *t2 = GIVEN(4, TEMPERATURE),
                      *viscosity = GIVEN(5, KINEMATIC_VISCOSITY);
    brim_amount temperature;
    brim_status status;
    ASK(brim_temperature_for(v1, t1, v2, t2, viscosity, &temperature, detail));
    return told(status, &temperature);
}

static brim_status viscosity_index(const request *of) {
    const brim_amount *at_40 = GIVEN(1, KINEMATIC_VISCOSITY), *at_100 = GIVEN(2, KINEMATIC_VISCOSITY);
    int64_t index = 0;
    brim_index_procedure procedure = 0;
    brim_amount l, h, unrounded;
    brim_status status;
    ASK(brim_viscosity_index(at_40, at_100, &index, &procedure, &l, &h, &unrounded, detail));
    put_whole("index", index);
    put_word("procedure", BRIM_LIST_INDEX_PROCEDURE, procedure);
    put_amount("l", &l);
    put_amount("h", &h);
    put_amount("unrounded", &unrounded);
    return BRIM_OK;
}

static brim_status grade(const request *of) {
    const brim_amount *at_40 = GIVEN(1, KINEMATIC_VISCOSITY);
    uint32_t number = 0;
    brim_amount low, high;
    brim_status status;
    ASK(brim_grade(at_40, &number, &low, &high, detail));
    if (number != 0) {
        put_whole("grade", number);
    }
    put_amount("low", &low);
    put_amount("high", &high);
    return BRIM_OK;
}

static brim_status grade_limits(const request *of) {
    uint32_t number = count(of, 1);
    brim_amount low, high;
    brim_status status;
    ASK(brim_grade_limits(number, &low, &high, detail));
    put_range("value", &low, &high);
    return BRIM_OK;
}

/* signal */

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

/* leak */

static brim_status against_limit(const request *of) {
    const brim_amount *estimate = any(of, 1, 0), *uncertainty = any(of, 2, kind_of(estimate, 1)),
                      *limit = any(of, 3, kind_of(estimate, 0)), *probability = GIVEN(5, RATIO);
    int32_t rule = word(of, 4, BRIM_LIST_RULE);
    brim_decision decision = 0;
    brim_amount exceeds, guard_band;
    brim_status status;
    ASK(brim_against_limit(estimate, uncertainty, limit, rule != 0 ? rule : BRIM_RULE_SIMPLE_ACCEPTANCE, probability,
                           &exceeds, &guard_band, &decision, detail));
    put_amount("exceeds", &exceeds);
    put_amount("guard_band", &guard_band);
    put_word("decision", BRIM_LIST_DECISION, decision);
    return BRIM_OK;
}

static brim_status conformance(const request *of) {
    const brim_amount *value = any(of, 1, 0), *uncertainty = any(of, 2, kind_of(value, 1)),
                      *lower = any(of, 3, kind_of(value, 0)), *upper = any(of, 4, kind_of(value, 0));
    brim_amount conforms;
    brim_status status;
    ASK(brim_conformance(value, uncertainty, lower, upper, &conforms, detail));
    return told(status, &conforms);
}

static brim_status guard_band(const request *of) {
    const brim_amount *uncertainty = any(of, 1, 0), *probability = GIVEN(2, RATIO);
    brim_amount band;
    brim_status status;
    ASK(brim_guard_band(uncertainty, probability, &band, detail));
    return told(status, &band);
}

static brim_status quantile(const request *of) {
    const brim_amount *probability = GIVEN(1, RATIO);
    brim_amount z;
    brim_status status;
    ASK(brim_quantile(probability, &z, detail));
    return told(status, &z);
}

static brim_status expanded_uncertainty(const request *of) {
    const brim_amount *uncertainty = any(of, 1, 0), *factor = GIVEN(2, RATIO);
    brim_amount expanded;
    brim_status status;
    ASK(brim_expanded_uncertainty(uncertainty, factor, &expanded, detail));
    return told(status, &expanded);
}

static brim_status drip_rate(const request *of) {
    uint32_t drops = count(of, 1);
    const brim_amount *in_time = GIVEN(2, TIME), *drop = GIVEN(3, VOLUME);
    brim_amount per_day, per_year, every;
    brim_status status;
    ASK(brim_drip_rate(drops, in_time, drop, &per_day, &per_year, &every, detail));
    put_amount("per_day", &per_day);
    put_amount("per_year", &per_year);
    put_amount("one_drop_every", &every);
    return BRIM_OK;
}

static brim_status drops_for(const request *of) {
    const brim_amount *volume = GIVEN(1, VOLUME), *over = GIVEN(2, TIME), *drop = GIVEN(3, VOLUME);
    brim_amount every;
    brim_status status;
    ASK(brim_drops_for(volume, over, drop, &every, detail));
    return told(status, &every);
}

static const struct {
    const char *name;
    brim_status (*answer)(const request *of);
} CALCULATORS[] = {
    {"torque.wrench_setting", wrench_setting},
    {"torque.applied_torque", applied_torque},
    {"torque.preload", preload},
    {"torque.torque_for_preload", torque_for_preload},
    {"torque.proof_load", proof_load},
    {"torque.plausible", plausible},
    {"volume.correction_factor", correction_factor},
    {"volume.at_temperature", at_temperature},
    {"volume.temperature_error", temperature_error},
    {"volume.base_density", base_density},
    {"volume.density_at", density_at},
    {"volume.mass", mass},
    {"volume.volume_of_mass", volume_of_mass},
    {"volume.tilt_error", tilt_error},
    {"volume.segment_share", segment_share},
    {"volume.exchange", exchange},
    {"volume.cycles_needed", cycles_needed},
    {"volume.flush", flush},
    {"volume.flush_needed", flush_needed},
    {"volume.wrong_left", wrong_left},
    {"warm_up.mixed_temperature", mixed_temperature},
    {"warm_up.cool_down", cool_down},
    {"warm_up.response_time", response_time},
    {"fluid.viscosity_at", viscosity_at},
    {"fluid.temperature_for", temperature_for},
    {"fluid.viscosity_index", viscosity_index},
    {"fluid.grade", grade},
    {"fluid.grade_limits", grade_limits},
    {"signal.transmission_frame", transmission_frame},
    {"signal.linear", linear},
    {"signal.diagnostic_reply", diagnostic_reply},
    {"leak.against_limit", against_limit},
    {"leak.conformance", conformance},
    {"leak.guard_band", guard_band},
    {"leak.quantile", quantile},
    {"leak.expanded_uncertainty", expanded_uncertainty},
    {"leak.drip_rate", drip_rate},
    {"leak.drops_for", drops_for},
};

/* The answer of the typed function; "unread" where it cannot be given these arguments, "by_name" where there is none. */
brim_status answer_typed(const request *of) {
    size_t index;
    unread = 0;
    used = 0;
    for (index = 0; index < sizeof CALCULATORS / sizeof *CALCULATORS; index++) {
        if (is(of->args[0], CALCULATORS[index].name)) {
            put(&out, "{");
            TRY(CALCULATORS[index].answer(of));
            put(&out, "}");
            if (unread) {
                out.length = 0;
                put(&out, "\"unread\"");
            }
            return BRIM_OK;
        }
    }
    put(&out, "\"by_name\"");
    return BRIM_OK;
}
