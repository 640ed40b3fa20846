#include "trip.h"

#include "compiler.h"

#define MEAN_VOID 0xFFFFu
enum { J_HIGHEST_FOR_MEAN = 1000, I_PER_READING = 40, J_PER_READING = 5 };

static uint16_t zero_counts(uint16_t zero_16ths)
{
    return (uint16_t)((zero_16ths + 8u) >> 4);
}

static uint16_t level(uint16_t limit, uint16_t zero_16ths)
{
    if (limit == 0)
        return TRIP_NO_LEVEL;
    uint16_t sum = (uint16_t)(limit + zero_counts(zero_16ths));
    return sum > COUNTS_HIGHEST - 1 ? COUNTS_HIGHEST - 1 : sum;
}

void trip_levels_set(struct trip_levels *levels, const struct limits *limits, const struct zeros *zeros)
{
    levels->inrush_conversions = (uint16_t)(limits->inrush_ms * 4u); /* at most 40 000 */
    levels->inrush_i = level(limits->inrush_i_counts, zeros->i_16ths);
    levels->running_i = level(limits->running_i_counts, zeros->i_16ths);
    levels->peak_i = level(limits->peak_i_counts, zeros->i_16ths);
    levels->running_j = level(limits->running_j_counts, zeros->j_16ths);
    levels->over_v = level(limits->over_v_counts, zeros->v_16ths);
    for (uint8_t rail = 0; rail < RAILS; rail++) {
        levels->low[rail] = limits->rail_low_counts[rail];
        levels->high[rail] = limits->rail_high_counts[rail];
    }
    levels->zero_i = zero_counts(zeros->i_16ths);
    levels->confirm_i = limits->confirm_i;
    levels->confirm_j = limits->confirm_j;
    levels->confirm_rail = limits->confirm_rail;
    levels->confirm_v = limits->confirm_v;
    levels->i2t_budget = limits->i2t_budget_counts2 == 0 ? UINT32_MAX : limits->i2t_budget_counts2;
    levels->i2t_running = limits->i2t_running_counts;
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

static CORE_RARE void means_start(struct trip_means *means)
{
    means->all_i = 0;
    means->all_j = 0;
    means->at = 0;
    means->filled = 0;
    means->voids = 0;
    means->begun = false;
    for (uint8_t at = 0; at < MEAN_READINGS; at++) {
        means->sum_i[at] = 0;
        means->sum_j[at] = 0;
    }
}

void trip_start(struct trip_watch *watch, const struct trip_levels *levels)
{
    watch->levels = levels;
    watch->i_conversions = 0;
    watch->running = false;
    watch->row_i = 0;
    watch->row_peak = 0;
    watch->row_j = 0;
    watch->row_v = 0;
    for (uint8_t rail = 0; rail < RAILS; rail++)
        watch->row_rail[rail] = 0;
    watch->i2t_counts2 = 0;
    watch->i2t_any = false;
    watch->confirmed = 0;
    watch->value = 0;
    watch->channel = CHANNEL_NONE;
    means_start(&watch->means);
}

/*
 * Half of the conversions are of H and M and nearly all others are under their limits, so each channel is a function
 * of its own that saves no more than it needs, and what is seldom done is called.
 */

static CORE_RARE enum trip_cause decided(struct trip_watch *watch, enum trip_cause cause, uint8_t channel,
                                         uint8_t confirmed, uint16_t value)
{
    watch->channel = channel;
    watch->confirmed = confirmed;
    watch->value = value;
    return cause;
}

static CORE_RARE void i2t_add(struct trip_watch *watch, uint16_t above)
{
    const struct trip_levels *levels = watch->levels;
    uint32_t square = (uint32_t)above * above;
    /* The sum trips above 2e9 at the latest when watched; unwatched it is held, so it never wraps. */
    uint32_t sum = watch->i2t_counts2 + square;
    if (sum < square)
        sum = UINT32_MAX;
    sum = sum > levels->i2t_running2 ? sum - levels->i2t_running2 : 0;
    watch->i2t_counts2 = sum;
    watch->i2t_any = sum != 0;
}

static CORE_RARE void means_begin_reading(struct trip_means *means)
{
    means->begun = true;
    means->run_i = 0;
    means->run_j = 0;
    means->count_i = 0;
    means->count_j = 0;
    means->run_void = false;
}

static CORE_RARE enum trip_cause i_over(struct trip_watch *watch, uint16_t counts)
{
    enum trip_cause cause = watch->running ? TRIP_RUNNING : TRIP_INRUSH;
    if (++watch->row_i < watch->levels->confirm_i)
        return TRIP_NONE;
    return decided(watch, cause, CHANNEL_I, watch->row_i, counts);
}

static CORE_RARE enum trip_cause peak_over(struct trip_watch *watch, uint16_t counts)
{
    if (++watch->row_peak < watch->levels->confirm_i)
        return TRIP_NONE;
    return decided(watch, TRIP_PEAK, CHANNEL_I, watch->row_peak, counts);
}

static CORE_RARE enum trip_cause i2t_over(struct trip_watch *watch, uint16_t counts)
{
    if (watch->i2t_counts2 <= watch->levels->i2t_budget)
        return TRIP_NONE;
    return decided(watch, TRIP_I2T, CHANNEL_I, 1, counts);
}

static CORE_RARE void inrush_goes_on(struct trip_watch *watch)
{
    if (watch->i_conversions++ >= watch->levels->inrush_conversions)
        watch->running = true;
}

static CORE_RARE enum trip_cause on_i(struct trip_watch *watch, uint16_t counts)
{
    if (!watch->running)
        inrush_goes_on(watch);
    const struct trip_levels *levels = watch->levels;
    uint16_t above = counts > levels->zero_i ? (uint16_t)(counts - levels->zero_i) : 0;
    if (above > levels->i2t_running || watch->i2t_any) /* else the sum is 0 and stays it */
        i2t_add(watch, above);
    levels = watch->levels;
    enum trip_cause cause = TRIP_NONE;
    if (counts > (watch->running ? levels->running_i : levels->inrush_i))
        cause = i_over(watch, counts);
    else
        watch->row_i = 0;
    if (cause == TRIP_NONE && watch->running) {
        if (counts > watch->levels->peak_i)
            cause = peak_over(watch, counts);
        else
            watch->row_peak = 0;
    }
    if (cause == TRIP_NONE && watch->i2t_any)
        cause = i2t_over(watch, counts);
    return cause;
}

static CORE_RARE enum trip_cause on_j(struct trip_watch *watch, uint16_t counts)
{
    const struct trip_levels *levels = watch->levels;
    struct trip_means *means = &watch->means;
    means->run_j = (uint16_t)(means->run_j + counts);
    means->count_j++;
    if (counts > J_HIGHEST_FOR_MEAN)
        means->run_void = true;
    if (!watch->running || counts <= levels->running_j) {
        watch->row_j = 0;
        return TRIP_NONE;
    }
    if (++watch->row_j < levels->confirm_j)
        return TRIP_NONE;
    return decided(watch, TRIP_RUNNING, CHANNEL_J, watch->row_j, counts);
}

static CORE_RARE enum trip_cause on_v(struct trip_watch *watch, uint16_t counts)
{
    const struct trip_levels *levels = watch->levels;
    if (counts <= levels->over_v) {
        watch->row_v = 0;
        return TRIP_NONE;
    }
    if (++watch->row_v < levels->confirm_v)
        return TRIP_NONE;
    return decided(watch, TRIP_OVER_VOLTAGE, CHANNEL_V, watch->row_v, counts);
}

static CORE_RARE enum trip_cause on_rail(struct trip_watch *watch, uint8_t channel, uint16_t counts)
{
    const struct trip_levels *levels = watch->levels;
    uint8_t rail = (uint8_t)(channel - CHANNEL_R1);
    if (counts >= levels->low[rail] && counts <= levels->high[rail]) {
        watch->row_rail[rail] = 0;
        return TRIP_NONE;
    }
    if (++watch->row_rail[rail] < levels->confirm_rail)
        return TRIP_NONE;
    return decided(watch, TRIP_OVER_VOLTAGE, channel, watch->row_rail[rail], counts);
}

static CORE_RARE enum trip_cause means_close_reading(struct trip_watch *watch)
{
    const struct trip_levels *levels = watch->levels;
    struct trip_means *means = &watch->means;
    if (means->count_i != I_PER_READING || means->count_j != J_PER_READING) {
        means_start(means);
        return TRIP_NONE;
    }
    means->begun = false; /* until the next reading has begun; a lost first conversion must not join two readings */
    uint8_t at = means->at;
    if (means->filled == MEAN_READINGS) {
        means->all_i -= means->sum_i[at];
        if (means->sum_j[at] == MEAN_VOID)
            means->voids--;
        else
            means->all_j = (uint16_t)(means->all_j - means->sum_j[at]);
    } else {
        means->filled++;
    }
    means->sum_i[at] = means->run_i;
    means->all_i += means->run_i;
    means->sum_j[at] = means->run_void ? MEAN_VOID : means->run_j;
    if (means->run_void)
        means->voids++;
    else /* ten times five conversions of at most 1000: 50 000 */
        means->all_j = (uint16_t)(means->all_j + means->run_j);
    means->at = (uint8_t)(at + 1 == MEAN_READINGS ? 0 : at + 1);
    if (means->filled < MEAN_READINGS)
        return TRIP_NONE;
    if (means->all_i > levels->mean_i_sum) {
        return decided(watch, TRIP_MEAN, CHANNEL_I, 1, (uint16_t)(means->all_i / 25u));
    }
    if (means->voids == 0 && means->all_j > levels->mean_j_sum) {
        return decided(watch, TRIP_MEAN, CHANNEL_J, 1, (uint16_t)((uint32_t)means->all_j * 8u / 25u));
    }
    return TRIP_NONE;
}

enum trip_cause trip_conversion(struct trip_watch *watch, uint8_t slot, uint8_t plan_of_reading, uint16_t counts)
{
    uint8_t channel = plan_channel[slot];
    enum trip_cause cause;
    if (channel >= CHANNEL_H)
        return TRIP_NONE;
    if (channel == CHANNEL_I) {
        cause = on_i(watch, counts);
        if (slot == 0 && plan_of_reading == 0 && watch->running)
            means_begin_reading(&watch->means);
        watch->means.run_i = (uint16_t)(watch->means.run_i + counts);
        watch->means.count_i++;
        return cause;
    }
    if (channel == CHANNEL_J)
        return on_j(watch, counts);
    if (channel == CHANNEL_V)
        return on_v(watch, counts);
    cause = on_rail(watch, channel, counts);
    if (cause == TRIP_NONE && slot == PLAN_SLOTS - 1 && plan_of_reading == PLANS_PER_READING - 1 && watch->means.begun)
        cause = means_close_reading(watch);
    return cause;
}

uint16_t trip_limit(const struct trip_levels *levels, const struct limits *limits, const struct zeros *zeros,
                    enum trip_cause cause, uint8_t channel, uint16_t counts)
{
    switch (cause) {
    case TRIP_INRUSH:
        return levels->inrush_i;
    case TRIP_RUNNING:
        return channel == CHANNEL_J ? levels->running_j : levels->running_i;
    case TRIP_PEAK:
        return levels->peak_i;
    case TRIP_MEAN:
        return channel == CHANNEL_J ? (uint16_t)(zeros->j_16ths + limits->mean_j_16ths)
                                    : (uint16_t)(zeros->i_16ths + limits->mean_i_16ths);
    case TRIP_OVER_VOLTAGE:
        if (channel == CHANNEL_V)
            return levels->over_v;
        if (channel >= CHANNEL_R1 && channel <= CHANNEL_R3) {
            uint8_t rail = (uint8_t)(channel - CHANNEL_R1);
            return counts < levels->low[rail] ? levels->low[rail] : levels->high[rail];
        }
        return 0;
    default:
        return 0;
    }
}

uint8_t trip_step_slots(uint8_t channel)
{
    switch (channel) {
    case CHANNEL_I:
    case CHANNEL_H:
    case CHANNEL_M:
        return 4;
    case CHANNEL_R1:
    case CHANNEL_R2:
    case CHANNEL_R3:
        return 16;
    default:
        return PLAN_SLOTS;
    }
}
