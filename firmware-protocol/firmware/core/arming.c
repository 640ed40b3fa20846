#include "arming.h"

#include <string.h>

#include "afterwards.h"
#include "compiler.h"
#include "state.h"

enum {
    PUMP_PLANS = 3,            /* until the gate has its volts, and V came three times */
    DARK_I = 8,                /* counts that the test of the limiter may move them */
    DARK_J = 4,
    DARK_V = 3
};
#define FIFTEEN_VOLTS_UV 15000000L /* an enum holds 16 bits on the chip */
#define SEEN_VOLTS_UV 6000000L     /* a supply of so much is seen across the open switch */

void probe_arm(struct probe *p, const uint8_t *look_parameters, bool close)
{
    memcpy(&p->look_parameters, look_parameters, sizeof p->look_parameters);
    p->close_after_look = close;
    p->step = ARMING_CHECK;
    p->limiter_tested = false;
    p->capture_block = CAPTURE_BLOCKS;
    p->capture_expected = false;
    capture_lend(&p->guard.capture);
    p->look_waiting = false;
    check_start(&p->work.check, hal_plans(), p->over_j_counts, calibration_rest_counts(&p->calibration, CHANNEL_V));
    state_enter_now(p, STATE_CHECK, BY_USER);
}

static void begin(struct probe *p, enum arming_step step, const struct conversion *conversion)
{
    p->step = (uint8_t)step;
    p->step_plans = (uint16_t)conversion->plans;
}

static CORE_RARE void end_look(struct probe *p, enum look_outcome outcome, const struct conversion *conversion)
{
    bool closes = outcome <= LOOK_SKIPPED && p->close_after_look;
    struct look_result *result = &p->work.look.result; /* of a check nothing is needed any more */
    if (p->state == STATE_LOOK) {
        result->duration_ms = (uint16_t)(result->pairs * LOOK_PAIR_MS);
    } else {
        memset(result, 0, sizeof *result);
        if (outcome >= LOOK_CURRENT_WHILE_OFF)
            result->duration_ms = (uint16_t)(conversion_plans_since(conversion, p->state_from_plans) * 2u);
    }
    result->outcome = (uint8_t)outcome;
    result->closes = closes;
    result->zeros = p->zeros;
    result->clips = p->clips;
    result->reserved = 0;
    p->look_us = plan_us(conversion->plans, conversion->slot);
    p->look_waiting = true;
    if (!closes)
        state_off(p, BY_LOOK);
}

/* As V would show the supply, so with its zero. */
static CORE_RARE uint16_t supply_counts(const struct probe *p)
{
    return (uint16_t)((p->work.look.supply_16ths + p->zeros.v_16ths) / 16u);
}

/* What does not see the supply across the open switch would not see the limiter hold either. */
static CORE_RARE bool supply_unseen(const struct probe *p)
{
    return !p->supply_seen && supply_counts(p) > calibration_counts(&p->calibration, CHANNEL_V, SEEN_VOLTS_UV);
}

static CORE_RARE void close_switch(struct probe *p)
{
    const struct look *look = &p->work.look;
    struct surge surge;
    memset(&surge, 0, sizeof surge);
    if (p->state == STATE_LOOK) {
        surge.supply_v = supply_counts(p);
        surge.set_v = (uint16_t)(look->result.end_v_16ths / 16u);
        surge.over_15v = surge.supply_v > calibration_counts(&p->calibration, CHANNEL_V, FIFTEEN_VOLTS_UV);
        surge.allowed = true;
    }
    p->step = ARMING_NONE;
    afterwards_start(p);
    capture_start(&p->guard.capture);
    trip_levels_set(&p->levels, &p->limits, &p->zeros);
    guard_arm(&p->guard, &p->levels, &surge);
}

/* ---- the steps; each conversion goes to the one that stands ---- */

/*
 * Volts that are still in the set are no fault of V: its zero then is the highest that it may have.
 */
static CORE_RARE bool zeros_within_bands(struct probe *p)
{
    uint16_t *zero = &p->zeros.i_16ths;
    for (uint8_t channel = CHANNEL_I; channel <= CHANNEL_V; channel++, zero++) {
        struct zero_band band;
        calibration_zero_band(&p->calibration, channel, &band);
        uint16_t highest = (uint16_t)(band.highest_counts * 16u);
        if (channel == CHANNEL_V)
            p->dark_v_16ths = *zero;
        if (channel == CHANNEL_V && *zero > highest)
            *zero = highest;
        if (*zero < band.lowest_counts * 16u || *zero > highest)
            return false;
    }
    return true;
}

static void zeros_taken(struct probe *p, const struct conversion *conversion)
{
    check_zeros(&p->work.check, &p->zeros);
    p->zeros_taken = true;
    if (!zeros_within_bands(p)) {
        end_look(p, LOOK_NO_ZERO, conversion);
        return;
    }
    clips_start(&p->work.clips);
    begin(p, ARMING_CLIPS, conversion);
}

static void in_check(struct probe *p, const struct conversion *conversion)
{
    struct check *check = &p->work.check;
    CORE_NEAR(check);
    enum check_result result = check_conversion(check, conversion);
    if (result == CHECK_DONE)
        zeros_taken(p, conversion);
    else if (result != CHECK_GOES_ON)
        end_look(p, result == CHECK_CURRENT ? LOOK_CURRENT_WHILE_OFF : LOOK_VOLTS_STAY, conversion);
}

static void in_clips(struct probe *p, const struct conversion *conversion)
{
    if (!clips_conversion(&p->work.clips, conversion))
        return;
    p->clips = clips_joined(&p->work.clips);
    if (p->state != STATE_CHECK) {
        p->step = ARMING_NONE;
        p->status_waiting = true;
        return;
    }
    if (p->inputs & INPUT_SUPPLY_REVERSED) {
        end_look(p, LOOK_REVERSED, conversion);
        return;
    }
    p->supply_seen = hal_limiting_now();
    hal_pump(true);
    begin(p, ARMING_LIMITER, conversion);
}

static bool is_over(uint16_t counts, uint16_t rest_16ths, uint8_t by)
{
    uint16_t rest = (uint16_t)((rest_16ths + 8u) / 16u);
    return counts > rest + by;
}

/* Whether a conversion shows that something has come on although the pin of the switch is low. */
static CORE_RARE bool lights_up(const struct conversion *conversion, uint16_t i_16ths, uint16_t j_16ths, uint16_t v_16ths)
{
    uint8_t channel = conversion_channel(conversion);
    uint16_t counts = conversion->counts;
    if (channel == CHANNEL_I)
        return is_over(counts, i_16ths, DARK_I);
    if (channel == CHANNEL_J)
        return is_over(counts, j_16ths, DARK_J);
    return channel == CHANNEL_V && is_over(counts, v_16ths, DARK_V);
}

static CORE_RARE bool pumped(const struct probe *p, const struct conversion *conversion)
{
    uint16_t plans = conversion_plans_since(conversion, p->step_plans);
    return plans != UINT16_MAX && plans > PUMP_PLANS;
}

/* The limiter's transistor holds the switch off against its gate volts, or it would not hold a surge either. */
static void in_limiter(struct probe *p, const struct conversion *conversion)
{
    bool supply_gone = p->supply_seen && !hal_limiting_now();
    if (supply_gone || lights_up(conversion, p->zeros.i_16ths, p->zeros.j_16ths, p->dark_v_16ths)) {
        end_look(p, LOOK_LIMITER, conversion);
        return;
    }
    if (!pumped(p, conversion))
        return;
    p->limiter_tested = true;
    if (p->look_parameters.skip) {
        end_look(p, LOOK_SKIPPED, conversion);
        if (p->close_after_look)
            close_switch(p);
        return;
    }
    hal_pump(false);
    p->step = ARMING_AWAIT_LOOK;
    hal_path_at_boundary(HAL_PATH_LOOK);
}

static void await_look(struct probe *p, const struct conversion *conversion)
{
    bool begins = conversion->slot == 0 && hal_path_now() == HAL_PATH_LOOK &&
                  conversion->plans == hal_path_since_plan();
    if (!begins)
        return;
    p->step = ARMING_LOOK;
    look_start(&p->work.look, capture_lend(&p->guard.capture), &p->zeros, p->limits.look_over_j_counts);
    state_enter(p, STATE_LOOK, BY_USER, plan_us(conversion->plans, 0));
}

static void in_look(struct probe *p, const struct conversion *conversion)
{
    struct look *look = &p->work.look;
    CORE_NEAR(look);
    if (!look_conversion(look, &p->look_parameters, &p->zeros, conversion))
        return;
    bool reversed = (p->inputs & INPUT_SUPPLY_REVERSED) != 0;
    enum look_outcome outcome = look_outcome(look, &p->look_parameters, &p->zeros, reversed);
    if (outcome <= LOOK_SKIPPED && supply_unseen(p))
        outcome = LOOK_LIMITER;
    if (outcome > LOOK_SKIPPED || !p->close_after_look) {
        end_look(p, outcome, conversion);
        return;
    }
    look->result.outcome = (uint8_t)outcome;
    p->dark_v_16ths = look_volts_soon(look);
    hal_pump(true);
    begin(p, ARMING_READY, conversion);
}

/* The gate has its volts again, and nothing may jump while the pin is low. */
static void in_ready(struct probe *p, const struct conversion *conversion)
{
    const struct look_result *result = &p->work.look.result;
    /* What flows through the look resistor is on I too, a 32nd of the counts. */
    uint16_t look_j = result->end_j_16ths > p->zeros.j_16ths ? (uint16_t)(result->end_j_16ths - p->zeros.j_16ths) : 0;
    uint16_t look_i = (uint16_t)(p->zeros.i_16ths + look_j / 32u);
    if (lights_up(conversion, look_i, result->end_j_16ths, p->dark_v_16ths)) {
        p->limiter_tested = false;
        end_look(p, LOOK_LIMITER, conversion);
        return;
    }
    if (!pumped(p, conversion))
        return;
    end_look(p, (enum look_outcome)result->outcome, conversion);
    close_switch(p);
}

static void at_step(struct probe *p, const struct conversion *conversion)
{
    switch (p->step) {
    case ARMING_CHECK:
        if (conversion_plans_since(conversion, p->state_from_plans) != UINT16_MAX)
            in_check(p, conversion);
        break;
    case ARMING_CLIPS:
        in_clips(p, conversion);
        break;
    case ARMING_LIMITER:
        in_limiter(p, conversion);
        break;
    case ARMING_AWAIT_LOOK:
        await_look(p, conversion);
        break;
    case ARMING_LOOK:
        in_look(p, conversion);
        break;
    case ARMING_READY:
        in_ready(p, conversion);
        break;
    default: /* closing: conversions still queued belong to the look */
        break;
    }
}

void arming_read_back(struct probe *p)
{
    clips_start(&p->work.clips);
    p->step = ARMING_CLIPS;
}

bool arming_listens(const struct probe *p)
{
    return p->step != ARMING_NONE || afterwards_listens(p);
}

CORE_RARE void arming_conversion(struct probe *p, const struct conversion *conversion)
{
    /* Closed and tripped at once: conversions still queued belong to the check, and must not arm again. */
    if (!p->guard.armed && !p->guard.claimed)
        at_step(p, conversion);
    afterwards_conversion(p, conversion);
}
