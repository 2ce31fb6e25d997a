/* A hostile host: everything a caller can get wrong that the library can notice, and that nothing is written then. */

#include "expect.h"

#include <math.h>
#include <pthread.h>
#include <stdlib.h>
#include <string.h>

static const char BAD_UTF8[] = "L\xff\xfe";

static void unknown_numbers_are_errors(brim_evaluation *evaluation, brim_check *check, brim_error *error) {
    static const int32_t odd[] = {-1, 99, INT32_MIN, INT32_MAX, 0};
    char buffer[64];
    size_t index;
    brim_options *options = brim_options_new();
    for (index = 0; index < sizeof odd / sizeof *odd; index++) {
        int32_t number = odd[index], whole = 7;
        size_t length = 7;
        brim_unit unit = 7;
        brim_gate *gate = NULL;
        brim_amount amount = {15, -1, BRIM_UNIT_LITRE}, result = UNTOUCHED;
        if (number != 0) {
            EXPECT(BRIM_ERROR_UNKNOWN_VALUE, brim_unit_parse(TERMINATED("L"), number, 0, &unit, error));
            EXPECT(BRIM_ERROR_UNKNOWN_VALUE, brim_unit_parse(TERMINATED("L"), 0, number, &unit, error));
            EXPECT(BRIM_ERROR_UNKNOWN_VALUE, brim_amount_parse(TERMINATED("1 L"), number, 0, &result, error));
            EXPECT(BRIM_ERROR_UNKNOWN_VALUE, brim_options_why_not(options, number, error));
        }
        EXPECT(BRIM_ERROR_UNKNOWN_VALUE, brim_amount_to(&amount, BRIM_UNIT_LITRE, 1, number, &result, error));
        EXPECT(BRIM_ERROR_UNKNOWN_VALUE, brim_options_limit(options, number, 1, error));
        EXPECT(BRIM_ERROR_UNKNOWN_VALUE, brim_word(number, 1, buffer, sizeof buffer, &length, error));
        EXPECT(BRIM_ERROR_UNKNOWN_VALUE, brim_word_number(number, TERMINATED("low"), &whole, error));
        EXPECT(BRIM_ERROR_UNKNOWN_VALUE, brim_evaluation_end(evaluation, number, BRIM_END_LO, &whole, &result, error));
        EXPECT(BRIM_ERROR_UNKNOWN_VALUE,
               brim_evaluation_end(evaluation, BRIM_INTERVAL_NOW, number, &whole, &result, error));
        EXPECT(BRIM_ERROR_UNKNOWN_VALUE,
               brim_evaluation_interval(evaluation, number, buffer, sizeof buffer, &length, error));
        EXPECT(BRIM_ERROR_UNKNOWN_VALUE, brim_evaluation_volume(evaluation, number, &whole, &result, error));
        EXPECT(BRIM_ERROR_UNKNOWN_VALUE, brim_evaluation_gate(evaluation, number, &gate, error));
        EXPECT(BRIM_ERROR_UNKNOWN_VALUE, brim_check_gate(check, number, NO_TEXT, NO_TEXT, &gate, error));
        CHECK(whole == 7 && length == 7 && unit == 7 && gate == NULL && same(&result, &UNTOUCHED));
    }
    brim_options_free(options);
    for (index = 0; index <= 65535; index++) {
        brim_unit code = (brim_unit)index;
        double result = 7;
        int known = index >= BRIM_UNIT_LITRE && index <= BRIM_UNIT_SQUARE_MILLIMETRE;
        EXPECT(known ? BRIM_OK : BRIM_ERROR_UNIT_UNKNOWN, brim_convert_units(1, code, code, &result, NULL));
        CHECK(result == (known ? 1.0 : 7.0));
    }
    EXPECT(BRIM_ERROR_UNKNOWN_VALUE, brim_word_number(BRIM_LIST_VERDICT, TERMINATED("full"), &failures, error));
    EXPECT(BRIM_ERROR_UNKNOWN_VALUE, brim_word(BRIM_LIST_STATUS, 17, NULL, 0, &index, error));
}

static void texts_that_are_none_are_errors(brim_pack *pack, brim_check *check, brim_error *error) {
    double number = 7;
    brim_unit unit = 7;
    brim_amount amount = UNTOUCHED;
    brim_pack *no_pack = NULL;
    brim_evaluation *evaluation = NULL;
    brim_check *no_check = NULL;
    brim_gate *gate = NULL;
    uint32_t line = 0, column = 0, offset = 0;
    char path[16];

    EXPECT(BRIM_ERROR_NOT_UTF8, brim_unit_parse(TERMINATED(BAD_UTF8), 0, 0, &unit, error));
    EXPECT(BRIM_ERROR_NOT_UTF8, brim_convert(1, BAD_UTF8, 2, TERMINATED("L"), &number, error));
    EXPECT(BRIM_ERROR_NOT_UTF8, brim_convert(1, TERMINATED("L"), BAD_UTF8, 2, &number, error));
    EXPECT(BRIM_ERROR_NOT_UTF8, brim_amount_parse(TERMINATED("1 \xc3"), 0, 0, &amount, error));
    EXPECT(BRIM_ERROR_NOT_UTF8, brim_pack_from_json(TERMINATED(BAD_UTF8), NULL, &no_pack, error));
    EXPECT(BRIM_ERROR_NOT_UTF8, brim_evaluate(pack, TERMINATED(BAD_UTF8), NULL, &evaluation, error));
    EXPECT(BRIM_ERROR_NOT_UTF8, brim_check_start(pack, TERMINATED(BAD_UTF8), NULL, &no_check, error));
    EXPECT(BRIM_ERROR_NOT_UTF8, brim_check_record(check, TERMINATED("{\n \"k\xff"), NULL, error));
    EXPECT(BRIM_OK, brim_error_fault_position(error, 0, &line, &column, &offset));
    EXPECT(BRIM_OK, brim_error_fault_path(error, 0, path, sizeof path, NULL));
    CHECK(line == 2 && column == 4 && offset == 5 && strcmp(path, "entry") == 0);
    EXPECT(BRIM_ERROR_NOT_UTF8, brim_check_gate(check, BRIM_ACT_POUR, TERMINATED("\xff"), NO_TEXT, &gate, error));
    EXPECT(BRIM_ERROR_NOT_UTF8, brim_check_gate(check, BRIM_ACT_POUR, NO_TEXT, TERMINATED("\xff"), &gate, error));
    EXPECT(BRIM_ERROR_WRONG_KIND, brim_check_gate(check, BRIM_ACT_POUR, TERMINATED("1 N.m"), NO_TEXT, &gate, error));
    EXPECT(BRIM_ERROR_NOT_A_TIME, brim_check_gate(check, BRIM_ACT_POUR, NO_TEXT, TERMINATED("noon"), &gate, error));
    EXPECT(BRIM_ERROR_OUT_OF_RANGE, brim_unit_parse("L", BRIM_TERMINATED - 1, 0, 0, &unit, error));
    EXPECT(BRIM_ERROR_OUT_OF_RANGE, brim_unit_parse("L", BRIM_TERMINATED / 2 + 1, 0, 0, &unit, error));
    EXPECT(BRIM_ERROR_UNIT_MISSING, brim_unit_parse("", 0, 0, 0, &unit, error));
    EXPECT(BRIM_ERROR_UNIT_UNKNOWN, brim_unit_parse("L\0", 2, 0, 0, &unit, error));
    EXPECT(BRIM_ERROR_NOT_A_NUMBER, brim_convert(NAN, TERMINATED("L"), TERMINATED("mL"), &number, error));
    EXPECT(BRIM_ERROR_NOT_A_NUMBER, brim_convert(-INFINITY, TERMINATED("L"), TERMINATED("mL"), &number, error));
    EXPECT(BRIM_ERROR_OUT_OF_RANGE, brim_convert(1e308, TERMINATED("m3"), TERMINATED("mL"), &number, error));
    CHECK(number == 7 && unit == 7 && same(&amount, &UNTOUCHED));
    CHECK(no_pack == NULL && evaluation == NULL && no_check == NULL && gate == NULL);
}

static void amounts_that_are_none_are_errors(brim_error *error) {
    static const struct {
        brim_amount amount;
        brim_status status;
    } odd[] = {
        {{1, 1, BRIM_UNIT_LITRE}, BRIM_ERROR_OUT_OF_RANGE},
        {{1, INT32_MIN, BRIM_UNIT_LITRE}, BRIM_ERROR_OUT_OF_RANGE},
        {{1, INT32_MAX, BRIM_UNIT_LITRE}, BRIM_ERROR_OUT_OF_RANGE},
        {{1, -256, BRIM_UNIT_LITRE}, BRIM_ERROR_OUT_OF_RANGE},
        {{1, -10, BRIM_UNIT_LITRE}, BRIM_ERROR_TOO_MANY_DIGITS},
        {{INT64_MIN, 0, BRIM_UNIT_LITRE}, BRIM_ERROR_TOO_MANY_DIGITS},
        {{INT64_MAX, -9, BRIM_UNIT_LITRE}, BRIM_ERROR_TOO_MANY_DIGITS},
        {{1, 0, 0}, BRIM_ERROR_UNIT_UNKNOWN},
        {{1, 0, 65535}, BRIM_ERROR_UNIT_UNKNOWN},
    };
    brim_amount one = {1, 0, BRIM_UNIT_LITRE}, result = UNTOUCHED;
    char buffer[32];
    size_t index;
    for (index = 0; index < sizeof odd / sizeof *odd; index++) {
        EXPECT(odd[index].status, brim_amount_text(&odd[index].amount, buffer, sizeof buffer, NULL, error));
        EXPECT(odd[index].status, brim_amount_add(&one, &odd[index].amount, &result, error));
        EXPECT(odd[index].status, brim_amount_times(&odd[index].amount, 1, &result, error));
    }
    EXPECT(BRIM_ERROR_OUT_OF_RANGE, brim_amount_times(&one, INT64_MIN, &result, error));
    EXPECT(BRIM_ERROR_TOO_MANY_DIGITS, brim_amount_to(&one, BRIM_UNIT_LITRE, -1, BRIM_ROUNDING_UP, &result, error));
    EXPECT(BRIM_ERROR_TOO_MANY_DIGITS, brim_amount_to(&one, BRIM_UNIT_LITRE, 1000, BRIM_ROUNDING_UP, &result, error));
    EXPECT(BRIM_ERROR_NOT_A_NUMBER, brim_amount_from_double(NAN, BRIM_UNIT_LITRE, &result, error));
    CHECK(same(&result, &UNTOUCHED));
    EXPECT(BRIM_OK, brim_amount_from_double(0.1, BRIM_UNIT_LITRE, &result, error));
    CHECK(result.mantissa == 1 && result.exponent == -1 && result.unit == BRIM_UNIT_LITRE);
}

/* Every capacity from none to enough: the whole text and a NUL, or an untouched buffer and the length. */
static void small_buffers_stay_untouched(brim_error *error) {
    static const char symbol[] = "imp fl oz";
    char buffer[32];
    size_t capacity, index, length;
    for (capacity = 0; capacity < sizeof buffer; capacity++) {
        memset(buffer, '#', sizeof buffer);
        length = 0;
        if (capacity < sizeof symbol) {
            EXPECT(BRIM_ERROR_BUFFER_TOO_SMALL,
                   brim_unit_symbol(BRIM_UNIT_IMPERIAL_FLUID_OUNCE, buffer, capacity, &length, error));
            for (index = 0; index < sizeof buffer; index++) {
                CHECK(buffer[index] == '#');
            }
        } else {
            EXPECT(BRIM_OK, brim_unit_symbol(BRIM_UNIT_IMPERIAL_FLUID_OUNCE, buffer, capacity, &length, error));
            CHECK(strcmp(buffer, symbol) == 0 && buffer[sizeof symbol] == '#');
        }
        CHECK(length == strlen(symbol));
    }
    length = 0;
    EXPECT(BRIM_OK, brim_unit_symbol(BRIM_UNIT_IMPERIAL_FLUID_OUNCE, NULL, 0, &length, error));
    CHECK(length == strlen(symbol));
    EXPECT(BRIM_OK, brim_unit_symbol(BRIM_UNIT_IMPERIAL_FLUID_OUNCE, buffer, sizeof buffer, NULL, error));
}

static void other_handles_are_noticed(brim_pack *pack, brim_evaluation *evaluation, brim_error *error) {
    size_t size = 7;
    int32_t whole = 7;
    double number = 7;
    brim_evaluation *no_evaluation = NULL;
    EXPECT(BRIM_ERROR_UNRESOLVED, brim_evaluation_verdict((const brim_evaluation *)pack, &whole, error));
    EXPECT(BRIM_ERROR_UNRESOLVED, brim_findings_count((const brim_findings *)evaluation, &size, error));
    EXPECT(BRIM_ERROR_UNRESOLVED, brim_check_record((brim_check *)pack, TERMINATED(ENTRY), NULL, error));
    EXPECT(BRIM_ERROR_UNRESOLVED,
           brim_evaluate(pack, TERMINATED(JOURNAL), (const brim_options *)pack, &no_evaluation, error));
    EXPECT(BRIM_ERROR_UNRESOLVED,
           brim_evaluation_verdict((const brim_evaluation *)((const char *)evaluation + 1), &whole, error));
    EXPECT(BRIM_ERROR_UNRESOLVED,
           brim_convert(1, TERMINATED("L"), TERMINATED("mL"), &number, (brim_error *)evaluation));
    CHECK(size == 7 && whole == 7 && number == 7 && no_evaluation == NULL);
    /* The wrong free leaves it alone. */
    brim_check_free((brim_check *)pack);
    brim_error_free((brim_error *)evaluation);
    EXPECT(BRIM_OK, brim_pack_id(pack, NULL, 0, &size, error));
    EXPECT(BRIM_OK, brim_evaluation_verdict(evaluation, &whole, error));
}

static void an_error_tells_of_the_last_call_only(brim_error *error) {
    char text[256];
    size_t count = 7, length = 7;
    brim_unit unit = 0;
    brim_status kind = 7;
    EXPECT(BRIM_ERROR_UNIT_AMBIGUOUS, brim_unit_parse(TERMINATED("oz"), 0, 0, &unit, error));
    EXPECT(BRIM_OK, brim_error_fault_count(error, &count));
    EXPECT(BRIM_OK, brim_error_fault_kind(error, 0, &kind));
    CHECK(count == 1 && kind == BRIM_ERROR_UNIT_AMBIGUOUS);
    EXPECT(BRIM_ERROR_OUT_OF_RANGE, brim_error_fault_kind(error, 1, &kind));
    EXPECT(BRIM_ERROR_OUT_OF_RANGE, brim_error_allowed(error, 0, 99, text, sizeof text, NULL));
    EXPECT(BRIM_ERROR_OUT_OF_RANGE, brim_error_fault_path(error, (size_t)-1, text, sizeof text, NULL));
    EXPECT(BRIM_OK, brim_unit_parse(TERMINATED("L"), 0, 0, &unit, error));
    EXPECT(BRIM_OK, brim_error_fault_count(error, &count));
    EXPECT(BRIM_OK, brim_error_message(error, text, sizeof text, &length));
    CHECK(count == 0 && length == 0 && text[0] == 0);
    EXPECT(BRIM_OK, brim_error_json(error, text, sizeof text, &length));
    CHECK(length == 0);
}

static void a_refused_entry_changes_nothing(brim_pack *pack, brim_error *error) {
    char before[1024], after[1024];
    brim_check *check = NULL;
    brim_findings *findings = NULL;
    size_t count = 7;
    EXPECT(BRIM_OK, brim_check_start(pack, TERMINATED(HEADER), NULL, &check, error));
    EXPECT(BRIM_OK, brim_check_record(check, TERMINATED(ENTRY), &findings, error));
    EXPECT(BRIM_OK, brim_findings_count(findings, &count, error));
    CHECK(count == 0);
    brim_findings_free(findings);
    findings = NULL;
    EXPECT(BRIM_OK, brim_check_journal_lines(check, before, sizeof before, NULL, error));
    EXPECT(BRIM_ERROR_SEQUENCE, brim_check_record(check, TERMINATED(ENTRY), &findings, error));
    EXPECT(BRIM_ERROR_SYNTAX, brim_check_record(check, TERMINATED("{"), &findings, error));
    EXPECT(BRIM_ERROR_SYNTAX, brim_check_record(check, "", 0, &findings, error));
    EXPECT(BRIM_OK, brim_check_journal_lines(check, after, sizeof after, NULL, error));
    CHECK(findings == NULL && strcmp(before, after) == 0);
    brim_check_free(check);
}

/* Cut short, nested deeply, very long, or nothing but noise: a document is refused, never more than that. */
static void hostile_documents_are_refused(brim_pack *pack, brim_error *error) {
    enum { LONG = 10 * 1024 * 1024, DEEP = 200 * 1000 };
    char *text = (char *)malloc(LONG);
    size_t length, count = 0;
    brim_evaluation *evaluation = NULL;
    for (length = 0; length + 1 < strlen(JOURNAL); length++) {
        CHECK(brim_evaluate(pack, JOURNAL, length, NULL, &evaluation, error) != BRIM_OK && evaluation == NULL);
    }
    memset(text, '[', DEEP);
    CHECK(brim_evaluate(pack, text, DEEP, NULL, &evaluation, error) != BRIM_OK);
    for (length = 0; length < LONG; length++) {
        text[length] = (char)(' ' + (length * length / 7) % 95);
    }
    CHECK(brim_evaluate(pack, text, LONG, NULL, &evaluation, error) != BRIM_OK);
    EXPECT(BRIM_OK, brim_error_fault_count(error, &count));
    CHECK(count >= 1 && evaluation == NULL);
    free(text);
}

static void handles_do_not_depend_on_each_other(brim_error *error) {
    brim_pack *pack = NULL, *copy = NULL;
    brim_evaluation *evaluation = NULL;
    brim_verdict verdict = 0;
    size_t length = 0;
    EXPECT(BRIM_OK, brim_pack_embedded(&pack, error));
    EXPECT(BRIM_OK, brim_pack_copy(pack, &copy, error));
    EXPECT(BRIM_OK, brim_evaluate(pack, TERMINATED(JOURNAL), NULL, &evaluation, error));
    brim_pack_free(pack);
    EXPECT(BRIM_OK, brim_pack_title(copy, NULL, 0, &length, error));
    brim_pack_free(copy);
    EXPECT(BRIM_OK, brim_evaluation_verdict(evaluation, &verdict, error));
    CHECK(length > 0 && verdict == BRIM_VERDICT_INCOMPLETE);
    brim_evaluation_free(evaluation);
}

/* Hosts that lay out their records themselves. */
static void outputs_need_no_alignment(void) {
    unsigned char bytes[64];
    void *odd = bytes + 1;
    double number = 0;
    EXPECT(BRIM_OK, brim_convert(104, TERMINATED("deg F"), TERMINATED("deg C"), (double *)odd, NULL));
    memcpy(&number, odd, sizeof number);
    CHECK(number == 40.0);
    EXPECT(BRIM_OK, brim_amount_parse(TERMINATED("1.50 L"), 0, 0, (brim_amount *)odd, NULL));
    EXPECT(BRIM_OK, brim_amount_to_double((const brim_amount *)odd, &number, NULL));
    CHECK(number == 1.5);
}

static void *of_a_thread(void *given) {
    brim_pack *pack = (brim_pack *)given;
    brim_error *error = brim_error_new();
    int round;
    for (round = 0; round < 50; round++) {
        brim_evaluation *evaluation = NULL;
        size_t count = 0;
        brim_unit unit = 0;
        if (brim_evaluate(pack, TERMINATED(JOURNAL), NULL, &evaluation, error) != BRIM_OK ||
            brim_unit_parse(TERMINATED("oz"), 0, 0, &unit, error) != BRIM_ERROR_UNIT_AMBIGUOUS ||
            brim_error_fault_count(error, &count) != BRIM_OK || count != 1) {
            abort();
        }
        brim_evaluation_free(evaluation);
    }
    brim_error_free(error);
    brim_pack_free(pack);
    return NULL;
}

static void threads_have_copies_of_their_own(const brim_pack *pack) {
    pthread_t threads[4];
    size_t index;
    for (index = 0; index < 4; index++) {
        brim_pack *copy = NULL;
        EXPECT(BRIM_OK, brim_pack_copy(pack, &copy, NULL));
        CHECK(pthread_create(&threads[index], NULL, of_a_thread, copy) == 0);
    }
    for (index = 0; index < 4; index++) {
        pthread_join(threads[index], NULL);
    }
}

int main(void) {
    brim_error *error = brim_error_new();
    brim_pack *pack = NULL;
    brim_check *check = NULL;
    brim_evaluation *evaluation = NULL;
    CHECK(brim_abi_version() == BRIM_ABI_VERSION);
    CHECK(sizeof(brim_amount) == 16 && offsetof(brim_amount, exponent) == 8 && offsetof(brim_amount, unit) == 12);
    EXPECT(BRIM_OK, brim_pack_embedded(&pack, error));
    EXPECT(BRIM_OK, brim_check_start(pack, TERMINATED(HEADER), NULL, &check, error));
    EXPECT(BRIM_OK, brim_evaluate(pack, TERMINATED(JOURNAL), NULL, &evaluation, error));
    unknown_numbers_are_errors(evaluation, check, error);
    texts_that_are_none_are_errors(pack, check, error);
    amounts_that_are_none_are_errors(error);
    small_buffers_stay_untouched(error);
    other_handles_are_noticed(pack, evaluation, error);
    an_error_tells_of_the_last_call_only(error);
    a_refused_entry_changes_nothing(pack, error);
    hostile_documents_are_refused(pack, error);
    handles_do_not_depend_on_each_other(error);
    outputs_need_no_alignment();
    threads_have_copies_of_their_own(pack);
    brim_evaluation_free(evaluation);
    brim_check_free(check);
    brim_pack_free(pack);
    brim_error_free(error);
    return failures == 0 ? 0 : 1;
}
