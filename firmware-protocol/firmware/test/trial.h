/* The trip rules alone, on counts that a test makes up: limits and zeros in, the conversion of the trip out. */
#ifndef TEST_TRIAL_H
#define TEST_TRIAL_H

#include <stdint.h>

#include "core/trip.h"

struct trial {
    struct limits limits;
    struct zeros zeros;
    struct trip_levels levels;
    struct trip_watch watch;
};

extern struct trial trial;

/* What the converter gives for a channel in conversion n since closing. */
typedef uint16_t (*counts_at)(uint32_t n, uint8_t channel);

/* Limits that watch nothing, zeros at 0, rows of 3, 2, 3 and 3. */
void trial_given(void);
/* The switch closes with these limits and zeros. */
void trial_closed(void);
/* Runs until a trip; returns the conversion's number since closing, UINT32_MAX if none came. */
uint32_t trial_run(counts_at counts, uint32_t conversions, enum trip_cause *cause);
/* No current, no volts, rails at mid-scale. */
uint16_t trial_quiet(uint32_t n, uint8_t channel);

#endif
