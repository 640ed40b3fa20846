/* The limits as the interrupt compares with them: zeros added, worked out once in the main loop. Rules: trip-rules.md. */
#ifndef CORE_LEVELS_H
#define CORE_LEVELS_H

#include <stdint.h>

#include "limits.h"
#include "plan.h"

#define TRIP_NO_LEVEL 0xFFFFu

/* Which limit acts on I. */
enum trip_phase { PHASE_INRUSH, PHASE_RUNNING, PHASE_START, PHASES };

struct zeros {
    uint16_t i_16ths;
    uint16_t j_16ths;
    uint16_t v_16ths;
};

struct trip_levels {
    uint16_t inrush_conversions;
    uint16_t start_conversions; /* 0 = no start is allowed */
    uint16_t i[PHASES];         /* by trip_phase */
    uint16_t peak_i;
    uint16_t running_j;
    uint16_t over_v;
    uint16_t zero_i;
    struct trip_copied { /* from the limits as given there, but a budget of 0 is UINT32_MAX */
        uint8_t confirm_i;
        uint8_t confirm_j;
        uint8_t confirm_rail;
        uint8_t confirm_v;
        uint32_t i2t_budget;
        uint16_t i2t_running;
        uint16_t low[RAILS];
        uint16_t high[RAILS];
    } CORE_PACKED as_given;
    uint32_t i2t_running2;
    uint32_t mean_i_sum; /* of 400 */
    uint16_t mean_j_sum; /* of 50 */
};

/* Counts that are over the limit when passed, TRIP_NO_LEVEL for a limit of 0. */
uint16_t trip_level(uint16_t limit, uint16_t zero_16ths);
void trip_levels_set(struct trip_levels *levels, const struct limits *limits, const struct zeros *zeros);

/* Rounded; the sum is of at most 800 * 1023, times 16 under 2^24. */
uint16_t levels_mean_16ths(uint32_t sum, uint16_t count);

/* The limit that stood behind a cause, absolute counts (mean: 1/16 count); `counts` tells low from high on rails. */
uint16_t trip_limit(const struct trip_levels *levels, const struct limits *limits, const struct zeros *zeros,
                    enum trip_cause cause, uint8_t channel, uint16_t counts);

/* Slots between two conversions of a channel that has limits. */
uint8_t trip_step_slots(uint8_t channel);

#endif
