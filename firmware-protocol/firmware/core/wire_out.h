/*
 * Frames to the host: bytes go through the checksum and COBS straight into the ring that the line empties, so no
 * frame is held twice. A frame becomes visible to the line as a whole.
 */
#ifndef CORE_WIRE_OUT_H
#define CORE_WIRE_OUT_H

#include <stdbool.h>
#include <stdint.h>

/* Starts as all zero. The ring has 256 places, so that an index of one byte wraps by itself; one place stays empty. */
struct wire_out {
    volatile uint8_t head; /* written by the main loop alone */
    volatile uint8_t tail; /* written by whoever empties the ring alone */
    uint8_t write;
    uint8_t code_at;
    uint8_t run;
    uint16_t crc;
    uint16_t sequence;
    uint8_t ring[256];
};

/* Bytes on the line for a payload: header, checksum, one code byte, delimiter (frames are under 255 bytes). */
#define WIRE_OUT_BYTES(payload) ((payload) + 8u + 2u + 1u + 1u)

/* Ends what a start may have cut off on the line, so that the first frame after it is whole. */
void wire_out_delimit(struct wire_out *out);
uint8_t wire_out_free(const struct wire_out *out);
uint8_t wire_out_used(const struct wire_out *out);
/* Begins a frame; false when a payload of this length does not fit now (nothing is changed then). */
bool wire_out_begin(struct wire_out *out, uint8_t type, uint32_t tick_us, uint8_t payload_bytes);
void wire_out_u8(struct wire_out *out, uint8_t value);
void wire_out_u16(struct wire_out *out, uint16_t value);
void wire_out_u32(struct wire_out *out, uint32_t value);
void wire_out_bytes(struct wire_out *out, const uint8_t *bytes, uint8_t length);
void wire_out_end(struct wire_out *out);

/* For the line's interrupt: takes the next byte, false = empty. */
static inline bool wire_out_take(struct wire_out *out, uint8_t *byte)
{
    uint8_t tail = out->tail;
    if (tail == out->head)
        return false;
    *byte = out->ring[tail];
    out->tail = (uint8_t)(tail + 1);
    return true;
}

/* The COBS encoder alone, for the published examples; begin, bytes, end. */
void wire_out_cobs_begin(struct wire_out *out);
void wire_out_cobs_byte(struct wire_out *out, uint8_t byte);
void wire_out_cobs_end(struct wire_out *out);

#endif
