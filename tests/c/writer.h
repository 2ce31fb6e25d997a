/* What the test programs write with: a growing text, a growing buffer for the library to fill, and JSON. */
#ifndef WRITER_H
#define WRITER_H

#include "brimline.h"

/* A text that grows. */
typedef struct grown {
    char *bytes;
    size_t length;
    size_t capacity;
} grown;

void grow(grown *text, size_t capacity);
void put_bytes(grown *out, const char *bytes, size_t length);
void put(grown *out, const char *text);
void put_number(grown *out, long long number);
/* A JSON string, escaped as the library escapes. */
void put_string(grown *out, const char *bytes, size_t length);
/* A member of an object or an item of a list, after a comma where one is needed. */
void put_member(grown *out, const char *name);
void put_comma(grown *out);

/* Where the library fills in texts; begin it with a few bytes, so that longer texts take two calls. */
extern grown room;
extern brim_error *detail;

#define ROOM room.bytes, room.capacity, &room.length

/* Runs a call that fills ROOM, again with a larger one if it asks for that, and leaves its status in `status`. */
#define FILL(call)                                                                                                     \
    do {                                                                                                               \
        status = (call);                                                                                               \
        if (status == BRIM_ERROR_BUFFER_TOO_SMALL) {                                                                   \
            grow(&room, room.length + 1);                                                                              \
            status = (call);                                                                                           \
        }                                                                                                              \
    } while (0)

/* Leaves a function that answers a status where a call did not do well. */
#define TRY(call)                                                                                                      \
    do {                                                                                                               \
        brim_status tried = (call);                                                                                    \
        if (tried != BRIM_OK) {                                                                                        \
            return tried;                                                                                              \
        }                                                                                                              \
    } while (0)

/* Ends the program with a line that says what is wrong. */
void fail(const char *what);
/* Ends it where a call did not do well that must. */
void must(brim_status status, const char *what);

/* The content of a file, NUL-terminated. */
grown read_file(const char *name);

#endif
