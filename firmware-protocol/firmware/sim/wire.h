/* Frames of wire-format.md section 1, as far as the simulator has to read them. */
#ifndef SIM_WIRE_H
#define SIM_WIRE_H

#include <stdbool.h>
#include <stddef.h>
#include <stdint.h>

enum {
    WIRE_VERSION = 2,
    WIRE_HEADER_BYTES = 8,
    WIRE_CRC_BYTES = 2,
    WIRE_MAX_FRAME = 254,
    WIRE_MAX_CODED = 255,
    WIRE_RAW = 0x02,
    WIRE_READING = 0x03,
    WIRE_ACCEPTED = 0x08,
    WIRE_STREAM = 0x42,
    WIRE_SWITCH_ON = 0x45
};

struct wire_receiver {
    uint8_t coded[WIRE_MAX_CODED];
    size_t length;
    bool too_long;
};

struct wire_frame {
    uint8_t bytes[WIRE_MAX_FRAME];
    size_t length; /* CRC included */
};

uint16_t wire_crc16(const uint8_t *bytes, size_t length);

/* Takes one byte of the line. True when it ended a valid frame of this protocol version, which is then in frame. */
bool wire_receive(struct wire_receiver *receiver, uint8_t byte, struct wire_frame *frame);

static inline uint8_t wire_type(const struct wire_frame *frame)
{
    return frame->bytes[1];
}

static inline const uint8_t *wire_payload(const struct wire_frame *frame)
{
    return frame->bytes + WIRE_HEADER_BYTES;
}

static inline size_t wire_payload_length(const struct wire_frame *frame)
{
    return frame->length - WIRE_HEADER_BYTES - WIRE_CRC_BYTES;
}

static inline uint16_t wire_u16(const uint8_t *bytes)
{
    return (uint16_t)(bytes[0] | bytes[1] << 8);
}

static inline uint32_t wire_u32(const uint8_t *bytes)
{
    return wire_u16(bytes) | (uint32_t)wire_u16(bytes + 2) << 16;
}

#endif
