#include "trip.h"

#include <string.h>

#include "compiler.h"

void trip_start(struct trip_watch *watch, const struct trip_levels *levels)
{
    memset(watch, 0, sizeof *watch);
    watch->levels = levels;
    watch->volts_rest = true;
}

/*
 * Half of the conversions are of H and M and nearly all others are under their limits, so each channel is a function
 * of its own that saves no more than it needs, and what is seldom done is called.
 */

static CORE_RARE enum trip_cause decided(struct trip_watch *watch, enum trip_cause cause, uint8_t channel,
                                         uint8_t confirmed, uint16_t value)
{
    CORE_NEAR(watch);
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

/* 5 s without a start, so that a motor that does not turn is not started for ever. */
#define START_RESTS_CONVERSIONS 20000u
enum { J_FAR_UP = 1000, I_AT_REST = 20, DEAD_IN_ROW = 3 };

/* What the running limit has found begins the start instead, if one is allowed now. */
static CORE_RARE bool start_begins(struct trip_watch *watch)
{
    if (watch->levels->start_conversions == 0 || watch->start_rests)
        return false;
    watch->phase = PHASE_START;
    watch->i_conversions = 0;
    watch->row_i = 0;
    watch->row_j = 0;
    memset(&watch->means, 0, sizeof watch->means);
    return true;
}

static CORE_RARE enum trip_cause running_over(struct trip_watch *watch, uint8_t channel, uint8_t row, uint16_t counts)
{
    if (start_begins(watch))
        return TRIP_NONE;
    return decided(watch, TRIP_RUNNING, channel, row, counts);
}

static CORE_RARE enum trip_cause i_over(struct trip_watch *watch, uint16_t counts)
{
    if (++watch->row_i < watch->levels->as_given.confirm_i)
        return TRIP_NONE;
    if (watch->phase == PHASE_RUNNING)
        return running_over(watch, CHANNEL_I, watch->row_i, counts);
    return decided(watch, watch->phase == PHASE_START ? TRIP_START : TRIP_INRUSH, CHANNEL_I, watch->row_i, counts);
}

static CORE_RARE enum trip_cause peak_over(struct trip_watch *watch, uint16_t counts)
{
    if (++watch->row_peak < watch->levels->as_given.confirm_i)
        return TRIP_NONE;
    return decided(watch, TRIP_PEAK, CHANNEL_I, watch->row_peak, counts);
}

static CORE_RARE enum trip_cause i2t_over(struct trip_watch *watch, uint16_t counts)
{
    if (watch->i2t_counts2 <= watch->levels->as_given.i2t_budget)
        return TRIP_NONE;
    return decided(watch, TRIP_I2T, CHANNEL_I, 1, counts);
}

/* Counted: the inrush time, then the start, then the time until another start is allowed. */
static CORE_RARE void time_goes_on(struct trip_watch *watch)
{
    uint16_t passed = watch->i_conversions++;
    if (watch->phase == PHASE_INRUSH) {
        if (passed >= watch->levels->inrush_conversions)
            watch->phase = PHASE_RUNNING;
    } else if (watch->phase == PHASE_START) {
        if (passed < watch->levels->start_conversions)
            return;
        watch->phase = PHASE_RUNNING;
        watch->start_rests = true;
        watch->i_conversions = 0;
    } else if (passed >= START_RESTS_CONVERSIONS) {
        watch->start_rests = false;
    }
}

static CORE_RARE enum trip_cause on_i(struct trip_watch *watch, uint16_t counts)
{
    if (watch->phase != PHASE_RUNNING || watch->start_rests)
        time_goes_on(watch);
    watch->last_i = counts;
    const struct trip_levels *levels = watch->levels;
    uint16_t above = counts > levels->zero_i ? (uint16_t)(counts - levels->zero_i) : 0;
    if (above > levels->as_given.i2t_running || watch->i2t_any) /* else the sum is 0 and stays it */
        i2t_add(watch, above);
    levels = watch->levels;
    enum trip_cause cause = TRIP_NONE;
    uint8_t phase = watch->phase;
    if (counts > levels->i[phase] && !watch->held)
        cause = i_over(watch, counts);
    else
        watch->row_i = 0;
    if (cause == TRIP_NONE && phase != PHASE_INRUSH) {
        if (counts > watch->levels->peak_i && !watch->held)
            cause = peak_over(watch, counts);
        else
            watch->row_peak = 0;
    }
    if (cause == TRIP_NONE && watch->i2t_any)
        cause = i2t_over(watch, counts);
    return cause;
}

/* All limits above the fine range hang on I: when J cannot go on and I has not begun, I is dead. */
static CORE_RARE enum trip_cause j_far_up(struct trip_watch *watch, uint16_t counts)
{
    if (watch->last_i >= watch->levels->zero_i + I_AT_REST) {
        watch->row_dead = 0;
        return TRIP_NONE;
    }
    if (++watch->row_dead < DEAD_IN_ROW)
        return TRIP_NONE;
    return decided(watch, TRIP_SELF_TEST, CHANNEL_J, DEAD_IN_ROW, counts);
}

static CORE_RARE enum trip_cause on_j(struct trip_watch *watch, uint16_t counts)
{
    enum trip_cause cause = TRIP_NONE;
    means_add_j(&watch->means, counts);
    if (counts > J_FAR_UP)
        cause = j_far_up(watch, counts);
    else
        watch->row_dead = 0;
    const struct trip_levels *levels = watch->levels;
    if (watch->phase != PHASE_RUNNING || watch->held || counts <= levels->running_j) {
        watch->row_j = 0;
        return cause;
    }
    if (++watch->row_j < levels->as_given.confirm_j || cause != TRIP_NONE)
        return cause;
    return running_over(watch, CHANNEL_J, watch->row_j, counts);
}

static CORE_RARE enum trip_cause on_v(struct trip_watch *watch, uint16_t counts)
{
    const struct trip_levels *levels = watch->levels;
    watch->last_v = counts;
    if (counts <= levels->over_v || watch->volts_rest) {
        watch->volts_rest = false; /* the next one is 2 ms later */
        watch->row_v = 0;
        return TRIP_NONE;
    }
    if (++watch->row_v < levels->as_given.confirm_v)
        return TRIP_NONE;
    return decided(watch, TRIP_OVER_VOLTAGE, CHANNEL_V, watch->row_v, counts);
}

static CORE_RARE enum trip_cause on_rail(struct trip_watch *watch, uint8_t channel, uint16_t counts)
{
    const struct trip_levels *levels = watch->levels;
    uint8_t rail = (uint8_t)(channel - CHANNEL_R1);
    if (counts >= levels->as_given.low[rail] && counts <= levels->as_given.high[rail]) {
        watch->row_rail[rail] = 0;
        return TRIP_NONE;
    }
    if (++watch->row_rail[rail] < levels->as_given.confirm_rail)
        return TRIP_NONE;
    return decided(watch, TRIP_OVER_VOLTAGE, channel, watch->row_rail[rail], counts);
}

static CORE_RARE enum trip_cause close_reading(struct trip_watch *watch)
{
    const struct trip_levels *levels = watch->levels;
    uint8_t channel = means_close_reading(&watch->means, levels->mean_i_sum, levels->mean_j_sum);
    if (channel == CHANNEL_NONE || start_begins(watch))
        return TRIP_NONE;
    return decided(watch, TRIP_MEAN, channel, 1, 0);
}

enum trip_cause trip_conversion(struct trip_watch *watch, uint8_t slot, uint8_t plan_of_reading, uint16_t counts)
{
    uint8_t channel = plan_channel[slot];
    enum trip_cause cause;
    if (channel >= CHANNEL_H)
        return TRIP_NONE;
    if (channel == CHANNEL_I) {
        cause = on_i(watch, counts);
        if (cause != TRIP_NONE) /* the means can wait, the pin cannot */
            return cause;
        if (slot == 0 && plan_of_reading == 0 && watch->phase == PHASE_RUNNING)
            means_begin_reading(&watch->means);
        means_add_i(&watch->means, counts);
        return TRIP_NONE;
    }
    if (channel == CHANNEL_J)
        return on_j(watch, counts);
    if (channel == CHANNEL_V)
        return on_v(watch, counts);
    cause = on_rail(watch, channel, counts);
    if (cause == TRIP_NONE && slot == PLAN_SLOTS - 1 && plan_of_reading == PLANS_PER_READING - 1 && watch->means.begun)
        cause = close_reading(watch);
    return cause;
}
