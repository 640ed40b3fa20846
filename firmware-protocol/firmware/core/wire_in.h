/*
 * Frames from the host. All input is hostile: whatever comes, reception continues at the next zero byte. The caller
 * gives the buffer; a frame longer than it is counted as too long (no frame of the host is longer than 110 bytes).
 */
#ifndef CORE_WIRE_IN_H
#define CORE_WIRE_IN_H

#include <stdbool.h>
#include <stdint.h>

/* Longest frame of the host on the line, delimiter not counted: calibration write. */
enum { WIRE_IN_BYTES = 8 + 100 + 2 + 1 };

enum wire_fault {
    WIRE_FINE,
    WIRE_TOO_LONG,
    WIRE_BAD_COBS,
    WIRE_TOO_SHORT,
    WIRE_BAD_CRC,
    WIRE_WRONG_VERSION,
    WIRE_UNKNOWN_TYPE,
    WIRE_WRONG_LENGTH,
    WIRE_FAULTS
};

struct wire_in {
    uint8_t *buffer;
    uint8_t capacity;
    uint8_t held;
    bool skipping;
    uint16_t rejected; /* frames dropped, modulo 65536 */
    uint8_t last_fault; /* of the last frame dropped */
};

/* A whole frame; points into the buffer and holds until the next byte is given. */
struct wire_frame {
    const uint8_t *payload;
    uint8_t payload_bytes;
    uint8_t type;
    uint16_t sequence;
};

/* Of a struct that is all zero. */
void wire_in_start(struct wire_in *in, uint8_t *buffer, uint8_t capacity);
/* Takes a byte; true when it completed a good frame. */
bool wire_in_byte(struct wire_in *in, uint8_t byte, struct wire_frame *frame);

/* Payload length of a host message; 255 = unknown type. */
uint8_t wire_in_payload_bytes(uint8_t type);

/* Decodes in place; returns the length, or -1 when a code byte points past the end or a zero stands inside. */
int16_t wire_in_cobs(uint8_t *bytes, uint8_t length);

#endif
