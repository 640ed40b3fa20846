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
    watch->confirmed = 0;
    watch->value = 0;
    watch->channel = CHANNEL_NONE;
    means_start(&watch->means);
}

static inline bool row(uint8_t *in_row, bool over, uint8_t confirm)
{
    if (!over) {
        *in_row = 0;
        return false;
    }
    return ++*in_row >= confirm;
}

static void i2t_add(struct trip_watch *watch, const struct trip_levels *levels, uint16_t counts)
{
    uint16_t above = counts > levels->zero_i ? (uint16_t)(counts - levels->zero_i) : 0;
    uint32_t square = (uint32_t)above * above;
    /* The sum trips above 2e9 at the latest when watched; unwatched it is held, so it never wraps. */
    uint32_t sum = watch->i2t_counts2 + square;
    if (sum < square)
        sum = UINT32_MAX;
    watch->i2t_counts2 = sum > levels->i2t_running2 ? sum - levels->i2t_running2 : 0;
}

static enum trip_cause on_i(struct trip_watch *watch, const struct trip_levels *levels, uint16_t counts)
{
    if (!watch->running && watch->i_conversions++ >= levels->inrush_conversions)
        watch->running = true;
    i2t_add(watch, levels, counts);
    uint16_t over = watch->running ? levels->running_i : levels->inrush_i;
    if (row(&watch->row_i, counts > over, levels->confirm_i)) {
        watch->confirmed = watch->row_i;
        return watch->running ? TRIP_RUNNING : TRIP_INRUSH;
    }
    if (watch->running && row(&watch->row_peak, counts > levels->peak_i, levels->confirm_i)) {
        watch->confirmed = watch->row_peak;
        return TRIP_PEAK;
    }
    if (watch->i2t_counts2 > levels->i2t_budget) {
        watch->confirmed = 1;
        return TRIP_I2T;
    }
    return TRIP_NONE;
}

static enum trip_cause voltage(struct trip_watch *watch, uint8_t *in_row, bool over, uint8_t confirm)
{
    if (!row(in_row, over, confirm))
        return TRIP_NONE;
    watch->confirmed = *in_row;
    return TRIP_OVER_VOLTAGE;
}

static CORE_RARE void means_add(struct trip_watch *watch, uint8_t channel, uint8_t slot, uint8_t plan, uint16_t counts)
{
    struct trip_means *means = &watch->means;
    if (slot == 0 && plan == 0 && watch->running) {
        means->begun = true;
        means->run_i = 0;
        means->run_j = 0;
        means->count_i = 0;
        means->count_j = 0;
        means->run_void = false;
    }
    if (channel == CHANNEL_I) {
        means->run_i = (uint16_t)(means->run_i + counts);
        means->count_i++;
    } else if (channel == CHANNEL_J) {
        means->run_j = (uint16_t)(means->run_j + counts);
        means->count_j++;
        means->run_void |= counts > J_HIGHEST_FOR_MEAN;
    }
}

static CORE_RARE enum trip_cause means_close_reading(struct trip_watch *watch, const struct trip_levels *levels)
{
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
        watch->value = (uint16_t)(means->all_i / 25u);
        watch->channel = CHANNEL_I;
        return TRIP_MEAN;
    }
    if (means->voids == 0 && means->all_j > levels->mean_j_sum) {
        watch->value = (uint16_t)((uint32_t)means->all_j * 8u / 25u);
        watch->channel = CHANNEL_J;
        return TRIP_MEAN;
    }
    return TRIP_NONE;
}

CORE_RARE enum trip_cause trip_conversion(struct trip_watch *watch, uint8_t channel, uint8_t slot, uint8_t plan_of_reading,
                                uint16_t counts)
{
    const struct trip_levels *levels = watch->levels;
    enum trip_cause cause = TRIP_NONE;
    switch (channel) {
    case CHANNEL_I:
        cause = on_i(watch, levels, counts);
        means_add(watch, channel, slot, plan_of_reading, counts);
        break;
    case CHANNEL_J:
        if (watch->running && row(&watch->row_j, counts > levels->running_j, levels->confirm_j)) {
            watch->confirmed = watch->row_j;
            cause = TRIP_RUNNING;
        }
        means_add(watch, channel, slot, plan_of_reading, counts);
        break;
    case CHANNEL_V:
        cause = voltage(watch, &watch->row_v, counts > levels->over_v, levels->confirm_v);
        break;
    case CHANNEL_R1:
    case CHANNEL_R2:
    case CHANNEL_R3: {
        uint8_t rail = (uint8_t)(channel - CHANNEL_R1);
        bool over = counts < levels->low[rail] || counts > levels->high[rail];
        cause = voltage(watch, &watch->row_rail[rail], over, levels->confirm_rail);
        break;
    }
    default:
        break;
    }
    if (cause != TRIP_NONE) {
        watch->value = counts;
        watch->channel = channel;
        return cause;
    }
    if (slot == PLAN_SLOTS - 1 && plan_of_reading == PLANS_PER_READING - 1 && watch->means.begun) {
        watch->confirmed = 1;
        return means_close_reading(watch, levels);
    }
    return TRIP_NONE;
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
