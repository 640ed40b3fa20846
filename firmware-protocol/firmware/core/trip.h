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
    uint16_t i_conversions; /* since closing, held when the inrush time is over */
    bool running;
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
