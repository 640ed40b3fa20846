#include "state.h"

#include <string.h>

#include "compiler.h"

CORE_RARE void state_enter(struct probe *p, enum probe_state state, enum switch_by by, uint32_t tick_us)
{
    uint16_t now = hal_plans();
    if (p->state == STATE_ON && state != STATE_ON) {
        p->opened_lately = true;
        p->opened_plans = now;
        p->current_in_row = 0;
    }
    p->state = (uint8_t)state;
    p->state_from_plans = now;
    hal_tripped_lamp(state == STATE_TRIPPED);
    notices_put(&p->notices, MESSAGE_SWITCH, (uint8_t)state, (uint8_t)by, tick_us);
}

CORE_RARE void state_enter_now(struct probe *p, enum probe_state state, enum switch_by by)
{
    state_enter(p, state, by, probe_now_us());
}

void state_off(struct probe *p, enum switch_by by)
{
    guard_open(&p->guard);
    if (p->guard.claimed)
        return; /* a trip was first; it is taken in this round */
    if (p->step == ARMING_CLIPS)
        hal_read_back(false);
    p->step = ARMING_NONE;
    enum probe_state rest = latch_is_set(&p->latch) ? STATE_TRIPPED : STATE_OFF;
    if (p->state != rest)
        state_enter_now(p, rest, by);
}

void state_set_limits(struct probe *p, const uint8_t *limits)
{
    memcpy(&p->limits, limits, sizeof p->limits);
    p->limits_given = true;
    if (!p->guard.armed && !p->guard.on)
        return;
    /* The interrupt continues with the old ones until the new ones are whole. */
    struct trip_levels *levels = p->guard.watch.levels == &p->levels ? &p->work.levels : &p->levels;
    trip_levels_set(levels, &p->limits, &p->zeros);
    uint8_t held = hal_interrupts_hold();
    p->guard.watch.levels = levels;
    hal_interrupts_release(held);
}

void state_clear_trip(struct probe *p)
{
    latch_clear(&p->latch);
    state_enter_now(p, STATE_OFF, BY_USER);
}
