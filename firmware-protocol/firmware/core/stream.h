/* Conversions to the host: all of them (raw), or sums, lowest, highest and squares of 10 ms (reduced). */
#ifndef CORE_STREAM_H
#define CORE_STREAM_H

#include <stdbool.h>
#include <stdint.h>

#include "queue.h"
#include "wire.h"
#include "wire_out.h"

enum { RAW_BLOCK = 128, RAW_PACKED_BYTES = RAW_BLOCK * 10 / 8, READING_HOLE = 1 };

struct stream_channel {
    uint32_t squares; /* 40 * 1023^2 fits */
    uint16_t sum;     /* 40 * 1023 fits */
    uint16_t lowest;
    uint16_t highest;
};

struct stream {
    uint8_t kind;
    bool running; /* raw: slot 0 has come */
    bool full; /* a block or reading waits for room on the line */
    bool hole; /* in this reading */
    bool begun; /* this reading began with its first conversion */
    uint8_t count;
    uint8_t first_slot;
    uint8_t plan; /* 0..4 of the reading */
    const uint16_t *dropped; /* the queue's count */
    uint32_t first_plans;
    uint32_t sent;
    union {
        uint8_t packed[RAW_PACKED_BYTES];
        struct stream_channel channel[CHANNELS];
    } taken;
};

/* Of a struct that is all zero. */
void stream_start(struct stream *stream, const uint16_t *dropped);
/* Follows a new choice; what was taken must have been flushed before. */
void stream_choose(struct stream *stream, enum stream_kind kind);
/* Sends what was taken; false = no room on the line yet. */
bool stream_flush(struct stream *stream, struct wire_out *out);
/* Whether a conversion can be taken now; tries to send what waits. */
bool stream_ready(struct stream *stream, struct wire_out *out);
/* The raw stream can take four at once, in a third of the time; false = take one by one. */
bool stream_wants_fours(const struct stream *stream);
/* Only then; false = not four in a row. */
bool stream_raw_four(struct stream *stream, struct queue *queue);
void stream_conversion(struct stream *stream, struct wire_out *out, const struct conversion *conversion);

#endif
