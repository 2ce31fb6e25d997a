#include "writer.h"

#include <stdio.h>
#include <stdlib.h>
#include <string.h>

grown room;
brim_error *detail;

void fail(const char *what) {
    fprintf(stderr, "failed: %s\n", what);
    exit(1);
}

void must(brim_status status, const char *what) {
    if (status != BRIM_OK) {
        fprintf(stderr, "status %d of ", (int)status);
        fail(what);
    }
}

void grow(grown *text, size_t capacity) {
    if (capacity <= text->capacity) {
        return;
    }
    text->bytes = (char *)realloc(text->bytes, capacity);
    if (text->bytes == NULL) {
        fail("no memory");
    }
    text->capacity = capacity;
}

void put_bytes(grown *out, const char *bytes, size_t length) {
    if (out->length + length + 1 > out->capacity) {
        grow(out, 2 * (out->length + length + 1));
    }
    if (length > 0) {
        memcpy(out->bytes + out->length, bytes, length);
    }
    out->length += length;
    out->bytes[out->length] = 0;
}

void put(grown *out, const char *text) {
    put_bytes(out, text, strlen(text));
}

void put_number(grown *out, long long number) {
    char digits[32];
    snprintf(digits, sizeof digits, "%lld", number);
    put(out, digits);
}

void put_string(grown *out, const char *bytes, size_t length) {
    static const char letters[] = "btn\0fr";
    size_t index;
    put(out, "\"");
    for (index = 0; index < length; index++) {
        unsigned char byte = (unsigned char)bytes[index];
        char escaped[8];
        if (byte == '"' || byte == '\\') {
            snprintf(escaped, sizeof escaped, "\\%c", byte);
        } else if (byte >= 8 && byte <= 13 && byte != 11) {
            snprintf(escaped, sizeof escaped, "\\%c", letters[byte - 8]);
        } else if (byte < 0x20) {
            snprintf(escaped, sizeof escaped, "\\u%04x", byte);
        } else {
            snprintf(escaped, sizeof escaped, "%c", byte);
        }
        put(out, escaped);
    }
    put(out, "\"");
}

void put_comma(grown *out) {
    char last = out->length > 0 ? out->bytes[out->length - 1] : '{';
    if (last != '{' && last != '[') {
        put(out, ",");
    }
}

void put_member(grown *out, const char *name) {
    put_comma(out);
    put_string(out, name, strlen(name));
    put(out, ":");
}

grown read_file(const char *name) {
    grown text = {NULL, 0, 0};
    char part[4096];
    size_t count;
    FILE *file = fopen(name, "rb");
    if (file == NULL) {
        fail("a file does not open");
    }
    while ((count = fread(part, 1, sizeof part, file)) > 0) {
        put_bytes(&text, part, count);
    }
    fclose(file);
    put_bytes(&text, "", 0);
    return text;
}
