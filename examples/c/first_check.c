#include "brimline.h"

#include <stdio.h>

int main(void) {
    static char journal[65536], text[65536];
    FILE *file = fopen("examples/journals/short_unit.json", "rb");
    size_t length = file != NULL ? fread(journal, 1, sizeof journal, file) : 0;
    brim_pack *pack = NULL;
    brim_evaluation *answer = NULL;
    brim_verdict verdict = 0;
    brim_by_sheet by_sheet = 0;

    if (brim_pack_embedded(&pack, NULL) != BRIM_OK ||
        brim_evaluate(pack, journal, length, NULL, &answer, NULL) != BRIM_OK) {
        return 1;
    }
    brim_evaluation_verdict(answer, &verdict, NULL);
    brim_word(BRIM_LIST_VERDICT, verdict, text, sizeof text, NULL, NULL);
    printf("verdict   %s\n", text);
    brim_evaluation_interval(answer, BRIM_INTERVAL_AS_FOUND, text, sizeof text, NULL, NULL);
    printf("as found  %s\n", text);
    brim_evaluation_by_sheet(answer, &by_sheet, NULL);
    brim_word(BRIM_LIST_BY_SHEET, by_sheet, text, sizeof text, NULL, NULL);
    printf("leak      %s\n", text);
    /* The whole answer in English, with the cautions that belong to it. */
    brim_evaluation_text(answer, text, sizeof text, NULL, NULL);
    printf("\n%s\n", text);

    brim_evaluation_free(answer);
    brim_pack_free(pack);
    if (file != NULL) {
        fclose(file);
    }
    return 0;
}
