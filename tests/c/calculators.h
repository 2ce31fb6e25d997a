/* Calculators by their typed functions: what one file a room shares. */
#ifndef CALCULATORS_H
#define CALCULATORS_H

#include "request.h"

/* A calculator, and how its typed function is asked. */
typedef struct calculator {
    const char *name;
    brim_status (*answer)(const request *of);
} calculator;

/* The end of each has no name. */
extern const calculator CALCULATORS_OF_TORQUE[];
extern const calculator CALCULATORS_OF_VOLUME[];
extern const calculator CALCULATORS_OF_WARM_UP[];
extern const calculator CALCULATORS_OF_FLUID[];
extern const calculator CALCULATORS_OF_SIGNAL[];
extern const calculator CALCULATORS_OF_LEAK[];

/* Set where an argument is none that the typed function could be given. */
extern int unread;

/* A quantity; NULL where it is left out. */
const brim_amount *any(const request *of, size_t index, brim_kind kind);
#define GIVEN(index, kind) any(of, index, BRIM_KIND_##kind)
/* The kind of an amount, or of its differences. */
brim_kind kind_of(const brim_amount *amount, int difference);
int32_t word(const request *of, size_t index, brim_list list);
uint32_t count(const request *of, size_t index);
/* Bytes as pairs of hexadecimal digits, with or without spaces between them. */
size_t bytes(const request *of, size_t index, uint8_t *into, size_t capacity);

void put_range(const char *name, const brim_amount *low, const brim_amount *high);
void put_whole(const char *name, long long whole);
/* The lines that the room holds. */
void put_cautions(void);
/* Answers one amount. */
brim_status told(brim_status status, const brim_amount *value);

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

#endif
