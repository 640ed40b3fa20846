/*
 * The last 256 conversions of I: recording continues until 128 have come after a trip, then it rests until the next
 * arming. Ten bits each, packed as 256 low bytes and 64 bytes of four high pairs, because memory is short.
 */
#ifndef CORE_CAPTURE_H
#define CORE_CAPTURE_H

#include <stdbool.h>
#include <stdint.h>

enum { CAPTURE_BEFORE = 128, CAPTURE_AFTER = 128, CAPTURE_BLOCK = 16, CAPTURE_BLOCKS = 16, CAPTURE_STEP_US = 250 };

struct capture {
    volatile uint8_t next;
    volatile uint8_t before; /* taken so far, held at 128 */
    volatile uint8_t after;  /* still to take after a trip */
    volatile bool tripped;
    volatile bool resting;
    uint8_t last_slot;
    uint8_t decided; /* place of the conversion that decided, or the last before */
    uint16_t number; /* of the trip it belongs to, 0 = none */
    uint32_t decided_us;
    uint8_t high[64]; /* place p in byte p % 64, bits 2 * (p / 64) */
    union {
        uint8_t low[256];
        uint16_t lent_words[128]; /* see capture_lend */
    } kept;
};

/* Restarts recording; what was kept is gone. */
void capture_start(struct capture *capture);

/*
 * Memory is short: while nothing is recorded, the look keeps its windows here, and a calibration waits here for the
 * EEPROM. What was recorded is gone then. 256 bytes.
 */
uint16_t *capture_lend(struct capture *capture);

/* For the interrupt. */
void capture_put(struct capture *capture, uint8_t slot, uint16_t counts);
/* At the trip, where no interrupt can come between: the conversion put last decided. */
void capture_trip(struct capture *capture);

/* Whether all of trip `number` is there. */
bool capture_whole(const struct capture *capture, uint16_t number);
uint16_t capture_at(const struct capture *capture, int16_t place);
/* How many values of block 0..15 are from before the start. */
uint8_t capture_missing(const struct capture *capture, uint8_t block);

#endif
