/* What is told by a teller, held against what is told without one. */
#ifndef TELLINGS_H
#define TELLINGS_H

#include "writer.h"

/* What tells English in the units that were entered, and must tell the same as the calls without a teller. */
brim_teller *english(void);
void keep_room(void);
void compare_room(void);
#define TOLD(plain, by_teller)                                                                                         \
    do {                                                                                                               \
        brim_teller *teller = english();                                                                               \
        FILL(by_teller);                                                                                               \
        must(status, #by_teller);                                                                                      \
        brim_teller_free(teller);                                                                                      \
        keep_room();                                                                                                   \
        FILL(plain);                                                                                                   \
        must(status, #plain);                                                                                          \
        compare_room();                                                                                                \
    } while (0)

#endif
