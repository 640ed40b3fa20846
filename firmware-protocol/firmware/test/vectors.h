/* The text vectors shared with the host: fields separated by " | ", "#" begins a comment line. */
#ifndef TEST_VECTORS_H
#define TEST_VECTORS_H

#include <stddef.h>
#include <stdint.h>

enum { VECTOR_FIELDS = 4, VECTOR_BYTES = 1024 };

struct vector {
    char line[8192];
    char *field[VECTOR_FIELDS];
    int fields;
};

/* Calls `take` for each vector of vectors/name; returns how many there were. A file that is not there fails. */
int vectors_each(const char *folder, const char *name, void (*take)(const struct vector *vector));
/* Bytes of a hex field; "-" gives SIZE_MAX. */
size_t vector_hex(const char *hex, uint8_t bytes[VECTOR_BYTES]);

#endif
