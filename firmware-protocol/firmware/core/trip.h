/*
 * The limits on conversions while the switch is closed. Runs in the converter's interrupt, one call a conversion.
 *
 * Exact rules (an emulated probe must do the same in the same order):
 *  - "Zero" below is (zero in 1/16 count + 8) / 16, rounded down; the mean limits take the 1/16 counts themselves.
 *  - A level is zero + limit, held to at most 1022 so that a converter at its end is always over it; "over" is
 *    counts > level. A limit of 0 has no level. Rails: over is counts < low or counts > high, absolute.
 *  - All that is counted starts at 0 when the switch closes, with the conversion of slot 0 as the first: rows, I2t,
 *    mean, number of I conversions. Rows are not reset when the inrush time ends or when limits are tightened.
 *  - The inrush time is over from the I conversion with number 4 * inrush_ms on (the first has number 0). Until then
 *    I has the inrush limit alone; from then on I has running and peak limit, and J and the means are watched.
 *  - A row counts conversions of its channel in a row that were over; one that is not sets it to 0, a lost one does
 *    nothing. A row of `confirm` trips. Rows: I (inrush and running are one row), peak, J, V, R1, R2, R3.
 *  - I2t: at each I conversion, i = counts - zero, not under 0; sum = sum + i * i - running^2, not under 0; a sum
 *    over the budget trips (budget 0: summed, never trips). The sum is brought forward before anything can trip.
 *  - Means: readings (160 conversions from a multiple of 10 ms) that begin after the inrush time; after each, when ten
 *    have come in a row, the mean of I in 1/16 count (sum of the 400 / 25, rounded down) > zero_i16 + mean_i; if not,
 *    the mean of J (sum of the 50 * 8 / 25, rounded down) > zero_j16 + mean_j while none of the 50 is over 1000. A
 *    reading with a lost conversion of I or J makes the ten start anew. From then on every 10 ms.
 *  - Order in one conversion: I: row of inrush or running, peak, I2t; then, in slot 31, the means. The first that
 *    trips is the cause.
 *  - The tick "crossed" of a row is the start of its first conversion, counted back in steps of the channel.
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
    uint16_t value;
    struct means means;
};

void trip_start(struct trip_watch *watch, const struct trip_levels *levels);

/* One conversion; TRIP_NONE or why the switch must open. plan_of_reading is 0..4. */
enum trip_cause trip_conversion(struct trip_watch *watch, uint8_t slot, uint8_t plan_of_reading, uint16_t counts);

#endif
