#include "levels.h"

#include <stddef.h>
#include <string.h>

STATIC_ASSERT(offsetof(struct limits, confirm_i) + sizeof(struct trip_copied) == offsetof(struct limits, over_v_counts));

static CORE_RARE uint16_t zero_counts(uint16_t zero_16ths)
{
    return (uint16_t)((zero_16ths + 8u) >> 4);
}

uint16_t trip_level(uint16_t limit, uint16_t zero_16ths)
{
    if (limit == 0)
        return TRIP_NO_LEVEL;
    uint16_t sum = (uint16_t)(limit + zero_counts(zero_16ths));
    return sum > COUNTS_HIGHEST - 1 ? COUNTS_HIGHEST - 1 : sum;
}

void trip_levels_set(struct trip_levels *levels, const struct limits *limits, const struct zeros *zeros)
{
    CORE_NEAR(levels);
    CORE_NEAR(limits);
    levels->inrush_conversions = (uint16_t)(limits->inrush_ms * 4u); /* at most 40 000 */
    levels->start_conversions = limits->start_i_counts == 0 ? 0 : (uint16_t)(limits->start_ms * 4u);
    levels->i[PHASE_INRUSH] = trip_level(limits->inrush_i_counts, zeros->i_16ths);
    levels->i[PHASE_RUNNING] = trip_level(limits->running_i_counts, zeros->i_16ths);
    levels->i[PHASE_START] = trip_level(limits->start_i_counts, zeros->i_16ths);
    levels->peak_i = trip_level(limits->peak_i_counts, zeros->i_16ths);
    levels->running_j = trip_level(limits->running_j_counts, zeros->j_16ths);
    levels->over_v = trip_level(limits->over_v_counts, zeros->v_16ths);
    levels->zero_i = zero_counts(zeros->i_16ths);
    memcpy(&levels->as_given, (const uint8_t *)limits + offsetof(struct limits, confirm_i), sizeof levels->as_given);
    if (levels->as_given.i2t_budget == 0)
        levels->as_given.i2t_budget = UINT32_MAX;
    levels->i2t_running2 = (uint32_t)limits->i2t_running_counts * limits->i2t_running_counts;
    /*
     * The mean of 400 in 1/16 count is sum / 25, of 50 it is sum * 8 / 25, rounded down; over the limit L when the sum
     * is over 25 (L + 1) - 1, or over an eighth of that. L is at most 32 704, times 25 under 2^20.
     */
    uint32_t mean_i = ((uint32_t)zeros->i_16ths + limits->mean_i_16ths + 1u) * 25u - 1u;
    levels->mean_i_sum = limits->mean_i_16ths == 0 ? UINT32_MAX : mean_i;
    uint32_t mean_j = (((uint32_t)zeros->j_16ths + limits->mean_j_16ths + 1u) * 25u - 1u) / 8u;
    levels->mean_j_sum = limits->mean_j_16ths == 0 || mean_j > UINT16_MAX ? UINT16_MAX : (uint16_t)mean_j;
}

CORE_RARE uint16_t levels_mean_16ths(uint32_t sum, uint16_t count)
{
    return (uint16_t)((sum * 16u + count / 2u) / count);
}

uint16_t trip_limit(const struct trip_levels *levels, const struct limits *limits, const struct zeros *zeros,
                    enum trip_cause cause, uint8_t channel, uint16_t counts)
{
    switch (cause) {
    case TRIP_INRUSH:
        return levels->i[PHASE_INRUSH];
    case TRIP_START:
        return levels->i[PHASE_START];
    case TRIP_RUNNING:
        return channel == CHANNEL_J ? levels->running_j : levels->i[PHASE_RUNNING];
    case TRIP_PEAK:
        return levels->peak_i;
    case TRIP_MEAN:
        return channel == CHANNEL_J ? (uint16_t)(zeros->j_16ths + limits->mean_j_16ths)
                                    : (uint16_t)(zeros->i_16ths + limits->mean_i_16ths);
    case TRIP_OVER_VOLTAGE: {
        if (channel == CHANNEL_V)
            return levels->over_v;
        uint8_t rail = (uint8_t)(channel - CHANNEL_R1);
        const struct trip_copied *given = &levels->as_given;
        return counts < given->low[rail] ? given->low[rail] : given->high[rail];
    }
    default:
        return 0;
    }
}

uint8_t trip_step_slots(uint8_t channel)
{
    if (channel == CHANNEL_I)
        return 4;
    return channel >= CHANNEL_R1 && channel <= CHANNEL_R3 ? 16 : PLAN_SLOTS;
}
