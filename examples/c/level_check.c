/* Tells what a journal file proves, on the embedded pack: level_check JOURNAL

   Linux:  cc level_check.c -Ibindings-c/include -Ltarget/release -lbrimline
   C99 and C++11. How to link statically, and every rule of the library, stands in brimline.h. */

#include "brimline.h"

#include <stdio.h>

static char text[4096];

/* The word of a number, until the next call that writes to `text`. */
static const char *word(brim_list list, int32_t number) {
    return brim_word(list, number, text, sizeof text, NULL, NULL) == BRIM_OK ? text : "?";
}

static void tell_interval(const brim_evaluation *evaluation, const char *name, brim_interval interval) {
    if (brim_evaluation_interval(evaluation, interval, text, sizeof text, NULL, NULL) == BRIM_OK) {
        printf("%-12s%s\n", name, text);
    }
}

static void tell_leak(const brim_evaluation *evaluation) {
    brim_by_sheet by_sheet = 0;
    brim_certainty certainty = 0;
    brim_amount margin;
    int32_t present = 0;
    brim_evaluation_by_sheet(evaluation, &by_sheet, NULL);
    brim_evaluation_certainty(evaluation, &certainty, NULL);
    brim_evaluation_volume(evaluation, BRIM_VOLUME_MARGIN, &present, &margin, NULL);
    printf("%-12s%s", "leak limit", word(BRIM_LIST_BY_SHEET, by_sheet));
    printf(", %s", word(BRIM_LIST_CERTAINTY, certainty));
    if (present && brim_amount_text(&margin, text, sizeof text, NULL, NULL) == BRIM_OK) {
        printf(", margin %s", text);
    }
    printf("\n");
}

static void tell_findings(const brim_evaluation *evaluation) {
    brim_findings *findings = NULL;
    brim_severity severity = 0;
    size_t count = 0, index;
    brim_evaluation_findings(evaluation, &findings, NULL);
    brim_findings_count(findings, &count, NULL);
    for (index = 0; index < count; index++) {
        brim_findings_severity(findings, index, &severity, NULL);
        printf("%-12s", word(BRIM_LIST_SEVERITY, severity));
        brim_findings_id(findings, index, text, sizeof text, NULL, NULL);
        printf("%s\n", text);
    }
    brim_findings_free(findings);
}

/* The first thing to do, with the cautions that go with it. */
static void tell_next(const brim_evaluation *evaluation) {
    brim_acts *acts = NULL;
    size_t count = 0, index;
    brim_evaluation_next(evaluation, &acts, NULL);
    if (brim_acts_id(acts, 0, text, sizeof text, NULL, NULL) == BRIM_OK) {
        printf("%-12s%s\n", "next", text);
        brim_acts_caution_count(acts, 0, &count, NULL);
    }
    for (index = 0; index < count; index++) {
        brim_acts_caution(acts, 0, index, text, sizeof text, NULL, NULL);
        printf("%-12s%s\n", "  mind", text);
    }
    brim_acts_free(acts);
}

/* The cautions that go with the state of the job. */
static void tell_cautions(const brim_evaluation *evaluation) {
    size_t count = 0, index;
    brim_evaluation_caution_count(evaluation, &count, NULL);
    for (index = 0; index < count; index++) {
        brim_evaluation_caution(evaluation, index, text, sizeof text, NULL, NULL);
        printf("%-12s%s\n", "caution", text);
    }
}

int main(int count, char **names) {
    static char journal[1024 * 1024];
    brim_error *error = brim_error_new();
    brim_pack *pack = NULL;
    brim_evaluation *evaluation = NULL;
    brim_verdict verdict = 0;
    size_t length;
    FILE *file = count == 2 ? fopen(names[1], "rb") : NULL;
    if (file == NULL) {
        fprintf(stderr, "usage: level_check JOURNAL\n");
        return 2;
    }
    length = fread(journal, 1, sizeof journal, file);
    fclose(file);

    if (brim_pack_embedded(&pack, error) != BRIM_OK ||
        brim_evaluate(pack, journal, length, NULL, &evaluation, error) != BRIM_OK) {
        static char message[64 * 1024];
        brim_error_message(error, message, sizeof message, NULL);
        fprintf(stderr, "%s\n", message);
        brim_pack_free(pack);
        brim_error_free(error);
        return 1;
    }
    brim_evaluation_verdict(evaluation, &verdict, error);
    printf("%-12s%s\n", "verdict", word(BRIM_LIST_VERDICT, verdict));
    tell_interval(evaluation, "as found", BRIM_INTERVAL_AS_FOUND);
    tell_interval(evaluation, "net added", BRIM_INTERVAL_NET_ADDED);
    tell_interval(evaluation, "now", BRIM_INTERVAL_NOW);
    tell_leak(evaluation);
    tell_findings(evaluation);
    tell_next(evaluation);
    tell_cautions(evaluation);

    brim_evaluation_free(evaluation);
    brim_pack_free(pack);
    brim_error_free(error);
    return 0;
}
