#include "trial.h"

#include <string.h>

struct trial trial;

void trial_given(void)
{
    memset(&trial.limits, 0, sizeof trial.limits);
    memset(&trial.zeros, 0, sizeof trial.zeros);
    trial.limits.confirm_i = 3;
    trial.limits.confirm_j = 2;
    trial.limits.confirm_rail = 3;
    trial.limits.confirm_v = 3;
    for (int rail = 0; rail < RAILS; rail++)
        trial.limits.rail_high_counts[rail] = 1023;
}

void trial_closed(void)
{
    trip_levels_set(&trial.levels, &trial.limits, &trial.zeros);
    trip_start(&trial.watch, &trial.levels);
}

uint32_t trial_run(counts_at counts, uint32_t conversions, enum trip_cause *cause)
{
    for (uint32_t n = 0; n < conversions; n++) {
        uint8_t slot = (uint8_t)(n % PLAN_SLOTS);
        uint8_t plan = (uint8_t)(n / PLAN_SLOTS % PLANS_PER_READING);
        *cause = trip_conversion(&trial.watch, slot, plan, counts(n, plan_channel[slot]));
        if (*cause != TRIP_NONE)
            return n;
    }
    *cause = TRIP_NONE;
    return UINT32_MAX;
}

uint16_t trial_quiet(uint32_t n, uint8_t channel)
{
    (void)n;
    return channel >= CHANNEL_R1 ? 512 : 0;
}
