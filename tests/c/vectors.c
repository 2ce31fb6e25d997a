/* Answers the requests of a file through the C library: vectors REQUESTS ANSWERS.

   The formats are those of tests/vector_cases: a request is its operation, the number of its arguments, and each
   argument after its length; an answer comes after its length. Every item ends in a line feed. */

#include "getters.h"
#include "request.h"

#include <stdio.h>
#include <stdlib.h>
#include <string.h>

grown out;

int is(text one, const char *other) {
    return one.length == strlen(other) && memcmp(one.bytes, other, one.length) == 0;
}

const char *given(const request *of, size_t index) {
    return of->args[index].length > 0 ? of->args[index].bytes : NULL;
}

int32_t number_of(brim_list list, text word) {
    int32_t number = 0;
    (void)brim_word_number(list, word.bytes, word.length, &number, NULL);
    return number;
}

long long whole(text digits) {
    return strtoll(digits.bytes, NULL, 10);
}

void put_room(const char *name) {
    put_member(&out, name);
    put_string(&out, room.bytes, room.length);
}

typedef struct operation {
    const char *name;
    brim_status (*answer)(const request *of);
} operation;

static const operation OPERATIONS[] = {
    {"versions", answer_versions},
    {"convert", answer_convert},
    {"convert_units", answer_convert_units},
    {"unit", answer_unit},
    {"amount", answer_amount},
    {"amount_to", answer_amount_to},
    {"amount_add", answer_amount_add},
    {"amount_sub", answer_amount_sub},
    {"amount_times", answer_amount_times},
    {"amount_compare", answer_amount_compare},
    {"interval_intersect", answer_interval_intersect},
    {"evaluate", answer_evaluate},
    {"live", answer_live},
    {"asked", answer_asked},
    {"start", answer_start},
    {"lines", answer_lines},
    {"advice", answer_advice},
    {"gate", answer_gate},
    {"recorded", answer_recorded},
    {"pack", answer_pack},
    {"pack_json", answer_pack_json},
    {"pack_lint", answer_pack_lint},
    {"pack_compare", answer_pack_compare},
    {"pack_select", answer_pack_select},
    {"seal", answer_seal},
    {"reopen", answer_reopen},
    {"evidence", answer_evidence},
    {"reevaluate", answer_reevaluate},
    {"history", answer_history},
    {"comebacks", answer_comebacks},
    {"follow_up", answer_follow_up},
    {"shadow", answer_shadow},
    {"price_list", answer_price_list},
    {"estimate", answer_estimate},
    {"invoice", answer_invoice},
    {"waste", answer_waste},
    {"audit", answer_audit},
    {"calculate", answer_calculate},
    {"page", answer_page},
    {"typed", answer_typed},
    {"forecast", answer_forecast},
    {"may_mix", answer_may_mix},
    {"resolve", answer_resolve},
    {"story", answer_story},
    {"messages", answer_messages},
    {"profile", answer_profile},
    {"told", answer_told},
    {"told_estimate", answer_told_estimate},
    {"told_invoice", answer_told_invoice},
    {"told_history", answer_told_history},
    {"told_comebacks", answer_told_comebacks},
    {"told_follow_up", answer_told_follow_up},
    {"told_shadow", answer_told_shadow},
    {"told_audit", answer_told_audit},
    {"getters", answer_getters},
};

/* The request that is meant: `faults` stands before the operation whose error is put together from the getters. */
static request meant(const request *of) {
    request inner = *of;
    if (is(of->op, "faults")) {
        inner.op = of->args[0];
        inner.args++;
        inner.count--;
    }
    return inner;
}

static void answer(const request *of) {
    request inner = meant(of);
    size_t index;
    out.length = 0;
    for (index = 0; index < sizeof OPERATIONS / sizeof *OPERATIONS; index++) {
        if (is(inner.op, OPERATIONS[index].name)) {
            brim_status status = OPERATIONS[index].answer(&inner);
            if (status == BRIM_OK) {
                return;
            }
            out.length = 0;
            put(&out, "{\"error\":");
            if (is(of->op, "faults")) {
                put_error(&out, detail);
            } else {
                FILL(brim_error_json(detail, ROOM));
                must(status, "brim_error_json");
                put_bytes(&out, room.bytes, room.length);
            }
            put(&out, "}");
            return;
        }
    }
    fail("an operation is not known");
}

/* A line of the file as a text, NUL-terminated in place. */
static text next_line(char **place) {
    text line;
    char *end = strchr(*place, '\n');
    if (end == NULL) {
        fail("the file of requests ends early");
    }
    line.bytes = *place;
    line.length = (size_t)(end - *place);
    *end = 0;
    *place = end + 1;
    return line;
}

int main(int count, char **names) {
    grown file;
    char *place;
    long long requests;
    FILE *answers;
    if (count != 3) {
        fail("usage: vectors REQUESTS ANSWERS");
    }
    file = read_file(names[1]);
    place = file.bytes;
    answers = fopen(names[2], "wb");
    if (answers == NULL) {
        fail("the file of answers does not open");
    }
    detail = brim_error_new();
    grow(&room, 16);
    for (requests = whole(next_line(&place)); requests > 0; requests--) {
        request of;
        size_t index;
        of.op = next_line(&place);
        of.count = (size_t)whole(next_line(&place));
        of.args = (text *)calloc(of.count + 1, sizeof *of.args);
        for (index = 0; index < of.count; index++) {
            size_t length = (size_t)whole(next_line(&place));
            of.args[index].bytes = place;
            of.args[index].length = length;
            place[length] = 0;
            place += length + 1;
        }
        answer(&of);
        fprintf(answers, "%lu\n", (unsigned long)out.length);
        fwrite(out.bytes, 1, out.length, answers);
        fputc('\n', answers);
        free(of.args);
    }
    fclose(answers);
    brim_error_free(detail);
    free(file.bytes);
    free(out.bytes);
    free(room.bytes);
    return 0;
}
