/* The host's end of the line as a script in probe time, and a record of what the probe answers. */
#ifndef SIM_SCRIPT_H
#define SIM_SCRIPT_H

#include <stddef.h>
#include <stdint.h>

#include "failure.h"

/* Longer than any frame on the line; what is longer is recorded in pieces. */
enum { SCRIPT_LONGEST_FRAME = 512 };

struct script {
    uint8_t *bytes;
    uint64_t *due_cycle; /* of each byte: not before */
    size_t count;
    size_t next;
    uint8_t heard[SCRIPT_LONGEST_FRAME];
    size_t heard_bytes;
    FILE *record; /* NULL: none asked for */
};

/*
 * Reads a script. Each line: milliseconds since the chip's power-on, a space, bytes in hexadecimal; rising times.
 * Empty lines and those that begin with '#' are passed over.
 */
bool script_read(struct script *script, const char *path, struct failure *failure);

/* Opens the record: one JSON object a line with the cycle of a frame's last byte and its bytes as on the line, the zero at its end included. */
bool script_record(struct script *script, const char *path, struct failure *failure);

/* The next byte if it is due. */
bool script_next(struct script *script, uint64_t cycle, uint8_t *byte);

/* Cycle at which the next byte is due; UINT64_MAX when there is none. */
uint64_t script_due(const struct script *script);

/* One byte of the probe. */
void script_heard(struct script *script, uint64_t cycle, uint8_t byte);

bool script_close(struct script *script);

#endif
