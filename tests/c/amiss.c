/* Calculators asked amiss: what is needed is missing, or none of what there is, and nothing is written then. */

#include "expect.h"

#include <stddef.h>
#include <string.h>

static const brim_amount TORQUE = {14, 0, BRIM_UNIT_NEWTON_METRE};
static const brim_amount LENGTH = {230, 0, BRIM_UNIT_MILLIMETRE};
static const brim_amount FORCE = {1000, 0, BRIM_UNIT_NEWTON};
static const brim_amount SHARE = {95, 0, BRIM_UNIT_PERCENT};
static const brim_amount VOLUME = {15, -1, BRIM_UNIT_LITRE};
static const brim_amount SMALLER = {1, -1, BRIM_UNIT_LITRE};
static const brim_amount TIME = {10, 0, BRIM_UNIT_MINUTE};
static const brim_amount HOT = {100, 0, BRIM_UNIT_DEGREE_CELSIUS};
static const brim_amount WARM = {40, 0, BRIM_UNIT_DEGREE_CELSIUS};
static const brim_amount DENSITY = {850, 0, BRIM_UNIT_KILOGRAM_PER_CUBIC_METRE};
static const brim_amount GROWTH = {75, -5, BRIM_UNIT_PER_KELVIN};
static const brim_amount MASS = {1, 0, BRIM_UNIT_KILOGRAM};
static const brim_amount AREA = {6, -2, BRIM_UNIT_SQUARE_METRE};
static const brim_amount ANGLE = {1, 0, BRIM_UNIT_DEGREE};
static const brim_amount COLD = {20, 0, BRIM_UNIT_DEGREE_CELSIUS};
static const brim_amount DEGREE = {1, 0, BRIM_UNIT_CELSIUS_DIFFERENCE};
static const brim_amount THICK = {34, 0, BRIM_UNIT_SQUARE_MILLIMETRE_PER_SECOND};
static const brim_amount THIN = {74, -1, BRIM_UNIT_SQUARE_MILLIMETRE_PER_SECOND};
static const brim_amount NO_AMOUNT = {1, 0, 65535};
static const uint8_t FRAME[8] = {0xFF, 0xFF, 0xFF, 0xFF, 0x20, 0x28, 0x7A, 0x20};
static const uint8_t REQUEST[2] = {0x01, 0x05}, REPLY[3] = {0x41, 0x05, 0x7B};

/* Outputs, and whether one of them was written. */
static brim_amount a, b, c, d;
static brim_reading r, s, t, u;
static int32_t one, two;
static uint32_t count;
static int64_t whole;
static size_t first, second;
static brim_unit unit;
static char buffer[256];

static void reset(void) {
    a = b = c = d = UNTOUCHED;
    r.state = 7;
    r.value = UNTOUCHED;
    s = t = u = r;
    one = two = 7;
    count = 7;
    whole = 7;
    first = second = 7;
    unit = 7;
    strcpy(buffer, "untouched");
}

static int untouched(void) {
    const brim_reading *readings[4];
    size_t index;
    readings[0] = &r;
    readings[1] = &s;
    readings[2] = &t;
    readings[3] = &u;
    for (index = 0; index < 4; index++) {
        if (readings[index]->state != 7 || !same(&readings[index]->value, &UNTOUCHED)) {
            return 0;
        }
    }
    return same(&a, &UNTOUCHED) && same(&b, &UNTOUCHED) && same(&c, &UNTOUCHED) && same(&d, &UNTOUCHED) && one == 7 &&
           two == 7 && count == 7 && whole == 7 && first == 7 && second == 7 && unit == 7 &&
           strcmp(buffer, "untouched") == 0;
}

/* A call that is refused and writes nothing. */
#define REFUSED(expected, call)                                                                                        \
    do {                                                                                                               \
        EXPECT(BRIM_ERROR_##expected, call);                                                                           \
        CHECK(untouched());                                                                                            \
    } while (0)

#define CAUTIONS buffer, sizeof buffer, NULL

static void null_is_noticed(brim_error *e) {
    REFUSED(NULL_POINTER, brim_wrench_setting(NULL, &LENGTH, NULL, NULL, NULL, NULL, &a, &b, &c, CAUTIONS, e));
    REFUSED(NULL_POINTER, brim_wrench_setting(&TORQUE, NULL, NULL, NULL, NULL, NULL, &a, &b, &c, CAUTIONS, NULL));
    REFUSED(NULL_POINTER, brim_wrench_setting(&TORQUE, &LENGTH, NULL, NULL, NULL, NULL, &a, &b, NULL, CAUTIONS, e));
    REFUSED(NULL_POINTER, brim_wrench_setting(&TORQUE, &LENGTH, NULL, NULL, NULL, NULL, &a, &b, &c, NO_ROOM, e));
    REFUSED(NULL_POINTER, brim_applied_torque(&TORQUE, &LENGTH, NULL, NULL, &a, e));
    REFUSED(NULL_POINTER, brim_applied_torque(&TORQUE, &LENGTH, &LENGTH, NULL, NULL, e));
    REFUSED(NULL_POINTER, brim_preload(&TORQUE, NULL, &SHARE, 0, &a, &b, &c, &d, e));
    REFUSED(NULL_POINTER, brim_preload(&TORQUE, &LENGTH, &SHARE, 0, &a, &b, &c, NULL, e));
    REFUSED(NULL_POINTER, brim_torque_for_preload(NULL, &LENGTH, &SHARE, 0, &a, &b, &c, &d, CAUTIONS, e));
    REFUSED(NULL_POINTER, brim_torque_for_preload(&FORCE, &LENGTH, &SHARE, 0, &a, &b, &c, &d, NO_ROOM, e));
    REFUSED(NULL_POINTER, brim_proof_load(NO_TEXT, BRIM_STRENGTH_CLASS_8_8, &a, e));
    REFUSED(NULL_POINTER, brim_proof_load(TERMINATED("M10"), BRIM_STRENGTH_CLASS_8_8, NULL, e));
    REFUSED(NULL_POINTER, brim_plausible(NULL, TERMINATED("M10"), BRIM_PLUG_STEEL, &one, &a, &b, &unit, &c, CAUTIONS, e));
    REFUSED(NULL_POINTER, brim_plausible(&TORQUE, NO_TEXT, BRIM_PLUG_STEEL, &one, &a, &b, &unit, &c, CAUTIONS, e));
    REFUSED(NULL_POINTER,
            brim_plausible(&TORQUE, TERMINATED("M10"), BRIM_PLUG_STEEL, NULL, &a, &b, &unit, &c, CAUTIONS, e));
    REFUSED(NULL_POINTER, brim_correction_factor(NULL, &WARM, 0, &a, e));
    REFUSED(NULL_POINTER, brim_at_temperature(&VOLUME, &WARM, NULL, &DENSITY, 0, NULL, &a, e));
    REFUSED(NULL_POINTER, brim_temperature_error(&VOLUME, &WARM, &HOT, &DENSITY, 0, NULL, NULL, e));
    REFUSED(NULL_POINTER, brim_base_density(&DENSITY, NULL, 0, &a, e));
    REFUSED(NULL_POINTER, brim_density_at(&DENSITY, &WARM, 0, NULL, e));
    REFUSED(NULL_POINTER, brim_mass(NULL, &WARM, &DENSITY, 0, &a, e));
    REFUSED(NULL_POINTER, brim_volume_of_mass(&MASS, &WARM, &DENSITY, 0, NULL, e));
    REFUSED(NULL_POINTER, brim_tilt_error(&AREA, &LENGTH, &ANGLE, &a, NULL, e));
    REFUSED(NULL_POINTER, brim_segment_share(NULL, &LENGTH, &a, e));
    REFUSED(NULL_POINTER, brim_exchange(&VOLUME, &SMALLER, 2, NULL, &b, &c, CAUTIONS, e));
    REFUSED(NULL_POINTER, brim_cycles_needed(&VOLUME, &SMALLER, &SHARE, NULL, &a, &b, &c, CAUTIONS, e));
    REFUSED(NULL_POINTER, brim_cycles_needed(&VOLUME, &SMALLER, &SHARE, &count, &a, &b, &c, NO_ROOM, e));
    REFUSED(NULL_POINTER, brim_flush(&VOLUME, NULL, &a, &b, CAUTIONS, e));
    REFUSED(NULL_POINTER, brim_flush_needed(&VOLUME, &SHARE, NULL, CAUTIONS, e));
    REFUSED(NULL_POINTER, brim_wrong_left(&VOLUME, NULL, &SMALLER, 2, &a, e));
    REFUSED(NULL_POINTER, brim_mixed_temperature(&VOLUME, &HOT, NULL, &WARM, &a, e));
    REFUSED(NULL_POINTER, brim_cool_down(&HOT, &WARM, &TIME, NULL, &WARM, &DEGREE, &TIME, &a, &b, &a, &b, &c, CAUTIONS, e));
    REFUSED(NULL_POINTER, brim_cool_down(&HOT, &WARM, &TIME, &COLD, &WARM, &DEGREE, &TIME, &a, &b, &a, &b, &c, NO_ROOM, e));
    REFUSED(NULL_POINTER, brim_response_time(&TIME, &SHARE, NULL, e));
    REFUSED(NULL_POINTER, brim_viscosity_at(&THICK, &WARM, &THIN, &HOT, NULL, &a, e));
    REFUSED(NULL_POINTER, brim_viscosity_at(&THICK, &WARM, &THIN, &HOT, &WARM, NULL, e));
    REFUSED(NULL_POINTER, brim_temperature_for(NULL, &WARM, &THIN, &HOT, &THICK, &a, e));
    REFUSED(NULL_POINTER, brim_viscosity_index(&THICK, NULL, &whole, &one, &a, &b, &c, e));
    REFUSED(NULL_POINTER, brim_viscosity_index(&THICK, &THIN, NULL, &one, &a, &b, &c, e));
    REFUSED(NULL_POINTER, brim_grade(NULL, &count, &a, &b, e));
    REFUSED(NULL_POINTER, brim_grade(&THICK, NULL, &a, &b, e));
    REFUSED(NULL_POINTER, brim_grade_limits(46, &a, NULL, e));
    REFUSED(NULL_POINTER, brim_transmission_frame(0x18FEF8FE, NULL, 8, &r, &s, &t, &one, &u, e));
    REFUSED(NULL_POINTER, brim_transmission_frame(0x18FEF8FE, FRAME, 8, &r, &s, &t, NULL, &u, e));
    REFUSED(NULL_POINTER, brim_linear(FRAME, 8, NULL, &r, e));
    REFUSED(NULL_POINTER, brim_diagnostic_reply(NULL, 0, REPLY, 3, &one, &first, &second, &count, &two, e));
    REFUSED(NULL_POINTER, brim_diagnostic_reply(REQUEST, 2, NULL, 0, &one, &first, &second, &count, &two, e));
    REFUSED(NULL_POINTER, brim_diagnostic_reply(REQUEST, 2, REPLY, 3, &one, &first, NULL, &count, &two, e));
    REFUSED(NULL_POINTER, brim_against_limit(&VOLUME, NULL, &VOLUME, BRIM_RULE_SIMPLE_ACCEPTANCE, NULL, &a, &b, &one, e));
    REFUSED(NULL_POINTER,
            brim_against_limit(&VOLUME, &VOLUME, &VOLUME, BRIM_RULE_SIMPLE_ACCEPTANCE, NULL, &a, &b, NULL, e));
    REFUSED(NULL_POINTER, brim_conformance(NULL, &VOLUME, &VOLUME, NULL, &a, e));
    REFUSED(NULL_POINTER, brim_guard_band(&VOLUME, NULL, &a, e));
    REFUSED(NULL_POINTER, brim_quantile(&SHARE, NULL, e));
    REFUSED(NULL_POINTER, brim_expanded_uncertainty(NULL, NULL, &a, e));
    REFUSED(NULL_POINTER, brim_drip_rate(1, NULL, &VOLUME, &a, &b, &c, e));
    REFUSED(NULL_POINTER, brim_drops_for(&VOLUME, &TIME, NULL, &a, e));
    REFUSED(NULL_POINTER, brim_caution_text(NO_TEXT, CAUTIONS, e));
}

static brim_layout byte_of_temperature(void) {
    brim_layout layout;
    memset(&layout, 0, sizeof layout);
    layout.length = 8;
    layout.order = BRIM_BYTE_ORDER_LITTLE;
    layout.scale.mantissa = 1;
    layout.scale.unit = BRIM_UNIT_CELSIUS_DIFFERENCE;
    layout.offset.mantissa = -40;
    layout.offset.unit = BRIM_UNIT_DEGREE_CELSIUS;
    layout.unit = BRIM_UNIT_DEGREE_CELSIUS;
    return layout;
}

static void unknown_numbers_are_errors(brim_error *e) {
    static const int32_t odd[] = {-1, 99, INT32_MIN, INT32_MAX, 0};
    size_t index;
    for (index = 0; index < sizeof odd / sizeof *odd; index++) {
        int32_t number = odd[index];
        brim_layout layout = byte_of_temperature();
        layout.order = number;
        REFUSED(UNKNOWN_VALUE, brim_linear(FRAME, 8, &layout, &r, e));
        REFUSED(UNKNOWN_VALUE, brim_proof_load(TERMINATED("M10"), number, &a, e));
        REFUSED(UNKNOWN_VALUE, brim_plausible(&TORQUE, TERMINATED("M10"), number, &one, &a, &b, &unit, &c, CAUTIONS, e));
        REFUSED(UNKNOWN_VALUE, brim_against_limit(&VOLUME, &VOLUME, &VOLUME, number, NULL, &a, &b, &one, e));
        if (number != 0) {
            REFUSED(UNKNOWN_VALUE, brim_correction_factor(&DENSITY, &WARM, number, &a, e));
            REFUSED(UNKNOWN_VALUE, brim_at_temperature(&VOLUME, &WARM, &HOT, &DENSITY, number, NULL, &a, e));
            REFUSED(UNKNOWN_VALUE, brim_preload(&TORQUE, &LENGTH, NULL, number, &a, &b, &c, &d, e));
        }
    }
    REFUSED(CONFLICT, brim_preload(&TORQUE, &LENGTH, NULL, 0, &a, &b, &c, &d, e));
    REFUSED(CONFLICT, brim_preload(&TORQUE, &LENGTH, &SHARE, BRIM_THREAD_CONDITION_ZINC, &a, &b, &c, &d, e));
    REFUSED(CONFLICT, brim_at_temperature(&VOLUME, &WARM, &HOT, NULL, 0, NULL, &a, e));
    REFUSED(CONFLICT, brim_at_temperature(&VOLUME, &WARM, &HOT, &DENSITY, 0, &GROWTH, &a, e));
    REFUSED(CONFLICT, brim_temperature_error(&VOLUME, &WARM, &HOT, NULL, BRIM_BASE_15C, &GROWTH, &a, e));
    REFUSED(UNKNOWN_VALUE, brim_caution_text(TERMINATED("mind_the_gap"), CAUTIONS, e));
    REFUSED(UNKNOWN_VALUE, brim_grade_limits(47, &a, &b, e));
}

static void amounts_that_are_none_are_errors(brim_error *e) {
    static const char *const members[] = {"layout.scale", "layout.offset", "layout.min", "layout.max"};
    size_t index;
    REFUSED(UNIT_UNKNOWN, brim_applied_torque(&TORQUE, &LENGTH, &NO_AMOUNT, NULL, &a, e));
    REFUSED(UNIT_UNKNOWN, brim_applied_torque(&TORQUE, &LENGTH, &LENGTH, &NO_AMOUNT, &a, e));
    REFUSED(WRONG_KIND, brim_applied_torque(&LENGTH, &LENGTH, &LENGTH, NULL, &a, e));
    REFUSED(WRONG_KIND, brim_viscosity_at(&THICK, &WARM, &THIN, &HOT, &THICK, &a, e));
    REFUSED(WRONG_KIND, brim_drip_rate(1, &VOLUME, &VOLUME, &a, &b, &c, e));
    REFUSED(OUT_OF_RANGE, brim_drip_rate(0, &TIME, &SMALLER, &a, &b, &c, e));
    REFUSED(OUT_OF_RANGE, brim_transmission_frame(0x18FEF8FE, FRAME, 7, &r, &s, &t, &one, &u, e));
    REFUSED(OUT_OF_RANGE, brim_transmission_frame(0x18FEF8FE, FRAME, (size_t)-1, &r, &s, &t, &one, &u, e));
    REFUSED(OUT_OF_RANGE, brim_diagnostic_reply(REQUEST, 2, REPLY, 2, &one, &first, &second, &count, &two, e));
    for (index = 0; index < sizeof members / sizeof *members; index++) {
        brim_layout layout = byte_of_temperature();
        char path[16] = "";
        brim_amount *const places[] = {&layout.scale, &layout.offset, &layout.min, &layout.max};
        *places[index] = NO_AMOUNT;
        REFUSED(UNIT_UNKNOWN, brim_linear(FRAME, 8, &layout, &r, e));
        EXPECT(BRIM_OK, brim_error_fault_path(e, 0, path, sizeof path, NULL));
        CHECK(strcmp(path, members[index]) == 0);
    }
}

/* The cautions go with the answer: without room for them there is none. */
static void small_buffers_get_nothing(brim_error *e) {
    size_t length = 0, capacity;
    EXPECT(BRIM_OK, brim_wrench_setting(&TORQUE, &LENGTH, NULL, NULL, NULL, NULL, &a, &b, &c, NULL, 0, &length, e));
    CHECK(length > 0 && length < sizeof buffer && same(&a, &TORQUE));
    reset();
    for (capacity = 0; capacity <= length; capacity++) {
        REFUSED(BUFFER_TOO_SMALL,
                brim_wrench_setting(&TORQUE, &LENGTH, NULL, NULL, NULL, NULL, &a, &b, &c, buffer, capacity, NULL, e));
    }
    EXPECT(BRIM_OK, brim_wrench_setting(&TORQUE, &LENGTH, NULL, NULL, NULL, NULL, &a, &b, &c, buffer, capacity, NULL, e));
    CHECK(strlen(buffer) == length && strstr(buffer, "torque_unit") != NULL);
    reset();
}

/* Hosts that lay out their records themselves; and an output may be where an input was. */
static void records_lie_anywhere(brim_error *e) {
    static unsigned char bytes[256];
    void *odd = bytes + 1, *further = bytes + 129;
    brim_layout layout = byte_of_temperature();
    brim_reading reading;
    CHECK(sizeof(brim_reading) == 24 && offsetof(brim_reading, value) == 8);
    CHECK(sizeof(brim_layout) == 88 && offsetof(brim_layout, order) == 8 && offsetof(brim_layout, scale) == 16);
    CHECK(offsetof(brim_layout, offset) == 32 && offsetof(brim_layout, min) == 48);
    CHECK(offsetof(brim_layout, max) == 64 && offsetof(brim_layout, unit) == 80);
    memcpy(odd, &layout, sizeof layout);
    EXPECT(BRIM_OK, brim_linear(REPLY + 2, 1, (const brim_layout *)odd, (brim_reading *)further, e));
    memcpy(&reading, further, sizeof reading);
    CHECK(reading.state == BRIM_SIGNAL_STATE_VALID && reading.value.mantissa == 83);
    CHECK(reading.value.unit == BRIM_UNIT_DEGREE_CELSIUS);
    a = TORQUE;
    EXPECT(BRIM_OK, brim_applied_torque(&a, &LENGTH, &LENGTH, NULL, &a, e));
    CHECK(a.mantissa == 28 && a.exponent == 0);
    reset();
}

/* A power cut may come within a character as well. */
static void a_torn_journal_is_read(brim_error *e) {
    static const char header[] = "{\"format\":\"brimline-journal/1\",\"procedure\":\"pipit-level\",\"job\":\"check\"}\n";
    static const char torn[] = "{\"seq\":1,\"at\":\"2026-03-02T09:00:00Z\",\"kind\":\"temperature\",\"reading\":\"36 \xc2";
    static const char whole_entry[] = "{\"seq\":1,\"at\":\"2026-03-02T09:00:00Z\",\"kind\":\"engine\",\"state\":\"idling\"}\xe2\x82";
    static const char *const lines[] = {torn, whole_entry};
    brim_pack *pack = NULL;
    brim_evaluation *evaluation = NULL;
    brim_check *check = NULL;
    char text[512], number[16], wanted[16];
    size_t index, length = 0;
    EXPECT(BRIM_OK, brim_pack_embedded(&pack, e));
    for (index = 0; index < 2; index++) {
        brim_findings *findings = NULL;
        strcpy(text, header);
        strcat(text, lines[index]);
        EXPECT(BRIM_OK, brim_evaluate(pack, TERMINATED(text), NULL, &evaluation, e));
        EXPECT(BRIM_OK, brim_evaluation_findings(evaluation, &findings, e));
        EXPECT(BRIM_OK, brim_findings_id(findings, 0, buffer, sizeof buffer, NULL, e));
        CHECK(strcmp(buffer, "torn_line") == 0);
        EXPECT(BRIM_OK, brim_findings_arg(findings, 0, TERMINATED("bytes"), number, sizeof number, NULL, e));
        sprintf(wanted, "%d", (int)strlen(lines[index]));
        CHECK(strcmp(number, wanted) == 0);
        brim_findings_free(findings);
        brim_evaluation_free(evaluation);
        evaluation = NULL;
        EXPECT(BRIM_OK, brim_check_replay(pack, text, strlen(text), &check, e));
        brim_check_free(check);
        check = NULL;
        EXPECT(BRIM_OK, brim_story(pack, TERMINATED(text), NULL, 0, &length, e));
        EXPECT(BRIM_OK, brim_evaluate_json(NO_TEXT, TERMINATED(text), NULL, 0, &length, e));
        /* Not at the end, it is no power cut; nor is it in a text that is no lines. */
        strcat(text, "\n");
        EXPECT(BRIM_ERROR_NOT_UTF8, brim_evaluate(pack, TERMINATED(text), NULL, &evaluation, e));
        EXPECT(BRIM_ERROR_NOT_UTF8, brim_evaluate(pack, TERMINATED(lines[index]), NULL, &evaluation, e));
        strcpy(text, header);
        strcat(text, "{\"seq\":1\xff");
        EXPECT(BRIM_ERROR_NOT_UTF8, brim_check_replay(pack, TERMINATED(text), &check, e));
    }
    CHECK(evaluation == NULL && check == NULL);
    brim_pack_free(pack);
    reset();
}

static void fluids_asked_amiss(brim_error *e) {
    const char *offered[2] = {"sedge-thin", NULL};
    brim_pack *pack = NULL;
    EXPECT(BRIM_OK, brim_pack_embedded(&pack, e));
    REFUSED(NULL_POINTER, brim_pack_may_mix_json(NULL, TERMINATED("a"), TERMINATED("b"), CAUTIONS, e));
    REFUSED(NULL_POINTER, brim_pack_may_mix_json(pack, NO_TEXT, TERMINATED("b"), CAUTIONS, e));
    REFUSED(NULL_POINTER, brim_pack_may_mix_json(pack, TERMINATED("a"), NO_TEXT, CAUTIONS, e));
    REFUSED(NULL_POINTER, brim_pack_resolve_json(pack, TERMINATED("sedge-mid"), NULL, 0, CAUTIONS, e));
    REFUSED(NULL_POINTER, brim_pack_resolve_json(pack, TERMINATED("sedge-mid"), offered, 2, CAUTIONS, e));
    REFUSED(OUT_OF_RANGE, brim_pack_resolve_json(pack, TERMINATED("sedge-mid"), offered, (size_t)-1, CAUTIONS, e));
    offered[1] = "\xff";
    REFUSED(NOT_UTF8, brim_pack_resolve_json(pack, TERMINATED("sedge-mid"), offered, 2, CAUTIONS, e));
    brim_pack_free(pack);
}

static void forecasts_asked_amiss(brim_error *e) {
    static const brim_amount early = {1, 0, BRIM_UNIT_MINUTE};
    brim_forecast *forecast = NULL, *none = NULL;
    brim_pack *pack = NULL;
    EXPECT(BRIM_OK, brim_pack_embedded(&pack, e));
    brim_forecast_free(NULL);
    REFUSED(NULL_POINTER, brim_forecast_new(&WARM, NULL, NULL, NULL, NULL, e));
    REFUSED(WRONG_KIND, brim_forecast_new(&TIME, NULL, NULL, NULL, &none, e));
    REFUSED(OUT_OF_RANGE, brim_forecast_new(&HOT, &WARM, NULL, NULL, &none, e));
    EXPECT(BRIM_OK, brim_forecast_new(NULL, NULL, NULL, NULL, &forecast, e));
    EXPECT(BRIM_OK, brim_forecast_sample(forecast, &TIME, &WARM, e));
    REFUSED(NULL_POINTER, brim_forecast_sample(NULL, &TIME, &WARM, e));
    REFUSED(NULL_POINTER, brim_forecast_sample(forecast, NULL, &WARM, e));
    REFUSED(NULL_POINTER, brim_forecast_poured(forecast, &TIME, &VOLUME, NULL, e));
    REFUSED(WRONG_KIND, brim_forecast_sample(forecast, &TIME, &VOLUME, e));
    REFUSED(OUT_OF_RANGE, brim_forecast_sample(forecast, &early, &WARM, e));
    REFUSED(OUT_OF_RANGE, brim_forecast_poured(forecast, &early, &VOLUME, &WARM, e));
    REFUSED(NULL_POINTER, brim_forecast_now(forecast, &one, &two, &a, NULL, e));
    REFUSED(NULL_POINTER, brim_forecast_now(NULL, &one, &two, &a, &b, e));
    REFUSED(NULL_POINTER, brim_forecast_opens(forecast, &a, NULL, &b, e));
    REFUSED(NULL_POINTER, brim_forecast_closes(NULL, &a, &b, &c, e));
    REFUSED(NULL_POINTER, brim_forecast_json(forecast, NO_ROOM, e));
    REFUSED(UNRESOLVED, brim_forecast_opens((const brim_forecast *)pack, &a, &b, &c, e));
    CHECK(none == NULL);
    brim_forecast_free((brim_forecast *)pack);
    EXPECT(BRIM_OK, brim_forecast_opens(forecast, &a, &b, &c, e));
    CHECK(a.unit == 0 && b.unit == 0 && c.unit == 0);
    reset();
    brim_forecast_free(forecast);
    brim_pack_free(pack);
}

int main(void) {
    brim_error *error = brim_error_new();
    reset();
    null_is_noticed(error);
    unknown_numbers_are_errors(error);
    amounts_that_are_none_are_errors(error);
    small_buffers_get_nothing(error);
    records_lie_anywhere(error);
    a_torn_journal_is_read(error);
    fluids_asked_amiss(error);
    forecasts_asked_amiss(error);
    brim_error_free(error);
    return failures == 0 ? 0 : 1;
}
