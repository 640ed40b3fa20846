/*
 * The limits on conversions while the switch is closed. Runs in the converter's interrupt, one call a conversion.
 * The exact rules (order, rounding, what resets a row, lost conversions): firmware-protocol/trip-rules.md.
 */
#ifndef CORE_TRIP_H
#define CORE_TRIP_H

#include <stdbool.h>
#include <stdint.h>

#include "levels.h"
#include "means.h"
#include "plan.h"

struct trip_watch {
    const struct trip_levels *volatile levels;
    uint16_t i_conversions; /* in the inrush time, of the start, or since a start until the next is allowed */
    uint8_t phase;
    bool start_rests;    /* a start is over, and the next not allowed yet */
    bool held;           /* the limiter holds a surge: the limits on I and J rest */
    bool volts_rest;     /* the first ms after closing, where leads ring */
    uint8_t row_dead;    /* J far up with I at rest */
    uint16_t last_i;
    uint16_t last_v;
    uint8_t row_i;
    uint8_t row_peak;
    uint8_t row_j;
    uint8_t row_v;
    uint8_t row_rail[RAILS];
    bool i2t_any; /* the sum is not 0 */
    uint32_t i2t_counts2;
    /* valid after a cause was returned */
    uint8_t channel;
    uint8_t confirmed;
    uint16_t value; /* not of a mean: means_16ths works it out once the switch is open */
    struct means means;
};

void trip_start(struct trip_watch *watch, const struct trip_levels *levels);

/* One conversion; TRIP_NONE or why the switch must open. plan_of_reading is 0..4. */
enum trip_cause trip_conversion(struct trip_watch *watch, uint8_t slot, uint8_t plan_of_reading, uint16_t counts);

#endif
