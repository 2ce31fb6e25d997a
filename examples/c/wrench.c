/* What do I set this wrench to? 14 N.m at the plug, with a 40 mm adapter straight out on a 230 mm wrench. */

#include "brimline.h"

#include <stdio.h>
#include <string.h>

/* An amount rounded to so many decimals. */
static void tell(const char *name, const brim_amount *amount, int32_t places) {
    char text[64];
    brim_amount rounded;
    brim_amount_to(amount, amount->unit, places, BRIM_ROUNDING_HALF_EVEN, &rounded, NULL);
    brim_amount_text(&rounded, text, sizeof text, NULL, NULL);
    printf("%-12s%s\n", name, text);
}

int main(void) {
    const brim_amount target = {14, 0, BRIM_UNIT_NEWTON_METRE}, lever = {230, 0, BRIM_UNIT_MILLIMETRE},
                      adapter = {40, 0, BRIM_UNIT_MILLIMETRE}, graduation = {5, -1, BRIM_UNIT_NEWTON_METRE};
    brim_error *error = brim_error_new();
    brim_amount setting, applied, difference;
    char cautions[256], text[1024];
    char *id;

    if (brim_wrench_setting(&target, &lever, &adapter, NULL, &graduation, NULL, &setting, &applied, &difference,
                            cautions, sizeof cautions, NULL, error) != BRIM_OK) {
        brim_error_message(error, text, sizeof text, NULL);
        fprintf(stderr, "%s\n", text);
        brim_error_free(error);
        return 1;
    }
    tell("set it to", &setting, 1);
    tell("that gives", &applied, 2);
    tell("off by", &difference, 1);
    /* The cautions belong to the setting. A host translates them by id. */
    for (id = strtok(cautions, "\n"); id != NULL; id = strtok(NULL, "\n")) {
        int known = brim_caution_text(id, BRIM_TERMINATED, text, sizeof text, NULL, NULL) == BRIM_OK;
        printf("%-12s%s\n", "mind", known ? text : id);
    }
    brim_error_free(error);
    return 0;
}
