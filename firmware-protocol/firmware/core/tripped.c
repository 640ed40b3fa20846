#include "tripped.h"

#include "bytes.h"
#include "compiler.h"
#include "state.h"

enum { AGAIN_PLANS = 25, LAST_PLANS = 100 };

static CORE_RARE void closed(struct probe *p)
{
    if (latch_is_set(&p->latch)) /* nothing is written without need: a reset while it is would read as damaged */
        latch_clear(&p->latch);
    state_enter(p, STATE_ON, BY_USER, plan_us(hal_path_since_plan(), 0));
}

/* The plan of the last slot of this number that had begun at an instant. */
static CORE_RARE uint32_t plan_of(uint8_t slot, const struct instant *at)
{
    return slot > at->slot ? at->plans - 1u : at->plans;
}

static void keep_capture(struct capture *capture, const struct guard_finding *finding, uint16_t number)
{
    uint32_t plans = plan_of(capture->last_slot, &finding->pin_low);
    capture->decided_us = plan_us(plans, capture->last_slot);
    capture->number = number;
}

static CORE_RARE void tripped(struct probe *p)
{
    /* Nothing writes there again before the next closing. */
    struct guard_finding *finding = &p->guard.finding;
    CORE_NEAR(finding);
    p->guard.claimed = false;
    struct trip_watch *watch = &p->guard.watch;
    CORE_NEAR(watch);
    if (finding->cause == TRIP_MEAN)
        finding->value = means_16ths(&watch->means, finding->channel);
    if (p->state != STATE_ON)
        closed(p); /* it closed and tripped before the main loop saw the first conversion */
    uint32_t decided_us = plan_us(plan_of(finding->decided_slot, &finding->pin_low), finding->decided_slot);
    uint32_t pin_low_us = instant_us(&finding->pin_low);
    /* A step of the channel back for each conversion of the row but the last; slots times 62.5 us. */
    uint8_t steps = (uint8_t)((finding->confirmed - 1u) * trip_step_slots(finding->channel) / 2u);
    uint32_t crossed_us = decided_us - steps * 125u;
    if (finding->cause == TRIP_HOST_SILENCE)
        crossed_us = p->host_heard_us;
    if (finding->cause == TRIP_HARD_SHORT) /* it was asked at each conversion */
        crossed_us = decided_us - (uint32_t)(finding->limited_span - 1u) * 125u / 2u;
    if (finding->cause == TRIP_SELF_TEST && finding->channel == CHANNEL_J)
        p->self_test |= SELF_TEST_CURRENTS;
    uint8_t *record = p->latch.record;
    CORE_NEAR(record);
    uint16_t number = latch_next_number(&p->latch);
    bytes_put_u16(record + LATCH_NUMBER, number);
    record[LATCH_CAUSE] = finding->cause;
    record[LATCH_CHANNEL] = finding->channel;
    record[LATCH_CONFIRMED] = finding->confirmed;
    record[LATCH_RESERVED] = 0;
    bytes_put_u32(record + LATCH_CROSSED, crossed_us);
    bytes_put_u32(record + LATCH_DECIDED, decided_us);
    bytes_put_u16(record + LATCH_VALUE, finding->value);
    bytes_put_u16(record + LATCH_LIMIT,
                  trip_limit(watch->levels, &p->limits, &p->zeros, (enum trip_cause)finding->cause,
                             finding->channel, finding->value));
    bytes_put_u32(record + LATCH_I2T, watch->i2t_counts2);
    bytes_put_u32(record + LATCH_I2T_LIMIT, p->limits.i2t_budget_counts2);
    bytes_put_u16(record + LATCH_BOOT, (uint16_t)p->boot_id);
    bytes_put_u16(record + LATCH_LIMITED, finding->limited);
    bytes_put_u16(record + LATCH_LAST_V, watch->last_v);
    bytes_put_u32(record + LATCH_TICK, pin_low_us);
    latch_set(&p->latch);
    keep_capture(&p->guard.capture, finding, number);
    p->capture_expected = true;
    p->step = ARMING_NONE;
    state_enter(p, STATE_TRIPPED, BY_TRIP, pin_low_us);
    p->trip_waiting = true;
    p->trip_sends = 2;
    p->tripped_plans = hal_plans();
    beeper_sound(&p->beeper, SOUND_TRIP, p->tripped_plans);
}

bool tripped_take(struct probe *p)
{
    if (p->guard.on && p->state != STATE_ON)
        closed(p);
    if (!p->guard.claimed)
        return false;
    tripped(p);
    return true;
}

CORE_RARE void tripped_lost(struct probe *p, enum trip_cause cause, enum switch_by by, uint16_t value)
{
    if (guard_trip(&p->guard, cause, value) || p->guard.claimed)
        return;
    if (p->state == STATE_CHECK || p->state == STATE_LOOK)
        state_off(p, by);
}

void tripped_tell_again(struct probe *p, uint16_t now_plans)
{
    uint16_t after = p->trip_sends == 2 ? AGAIN_PLANS : LAST_PLANS;
    if (p->trip_sends > 0 && (uint16_t)(now_plans - p->tripped_plans) >= after) {
        p->trip_sends--;
        p->trip_waiting = true;
    }
}
