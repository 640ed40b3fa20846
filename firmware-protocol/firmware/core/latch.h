/*
 * The last trip, kept in the EEPROM: the trip message's payload as it goes over the wire, the tick of the pin, whether
 * it is latched, CRC. A record cut off by a reset reads as damaged, and damaged counts as latched.
 */
#ifndef CORE_LATCH_H
#define CORE_LATCH_H

#include <stdbool.h>
#include <stdint.h>

#include "store.h"
#include "wire.h"

enum {
    LATCH_NUMBER = 0,
    LATCH_CAUSE = 2,
    LATCH_CHANNEL = 3,
    LATCH_CONFIRMED = 4,
    LATCH_RESERVED = 5,
    LATCH_CROSSED = 6,
    LATCH_DECIDED = 10,
    LATCH_VALUE = 14,
    LATCH_LIMIT = 16,
    LATCH_I2T = 18,
    LATCH_I2T_LIMIT = 22,
    LATCH_BOOT = 26,
    LATCH_LIMITED = 28,
    LATCH_LAST_V = 30,
    LATCH_TICK = TRIP_BYTES,
    LATCH_STATE = TRIP_BYTES + 4,
    LATCH_BYTES = TRIP_BYTES + 5 + STORE_CRC_BYTES
};

struct latch {
    uint8_t record[LATCH_BYTES];
    struct store_job job;
    bool damaged;
    bool to_verify; /* written, not read back yet */
};

/* Reads what was kept, into a struct that is all zero. */
void latch_load(struct latch *latch);
bool latch_is_set(const struct latch *latch);
/* Number of the latched trip, 0 = none. */
uint16_t latch_number(const struct latch *latch);
uint8_t latch_cause(const struct latch *latch);
/* Number of the last trip, latched or not, 0 = none. */
uint16_t latch_last_number(const struct latch *latch);
uint32_t latch_tick(const struct latch *latch);

/* The number that the next trip gets. */
uint16_t latch_next_number(const struct latch *latch);
/* After the fields of the record were filled: latched, and on its way into the EEPROM. */
void latch_set(struct latch *latch);
void latch_clear(struct latch *latch);
/* Continues writing, then reads back; true while there is something to do. */
bool latch_run(struct latch *latch);

#endif
