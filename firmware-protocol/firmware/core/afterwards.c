#include "afterwards.h"

#include "compiler.h"
#include "tripped.h"

enum {
    SETTLE_AFTER_OPEN_PLANS = 50, /* 100 ms for clamps and catch path */
    WATCH_AFTER_OPEN_PLANS = 550,
    OPEN_CURRENT_IN_ROW = 100, /* 200 ms */
    WATCH_AFTER_CLOSE_PLANS = 15, /* 30 ms; the closing's own plan is left out, leads ring in it */
    HIGHER_V_IN_ROW = 3,
    HIGHER_V_16THS = 160
};

/*
 * The look takes the supply for V and the volts that J says lie across the look resistor. With half a shunt J says
 * half of them, and once the switch is closed V shows the other half. Three eighths are let, for what the parts are
 * apart, and a 16th of the supply or 10 counts, for a supply that moves. A pulsed current (a mean is its limit) is left
 * out: there the mean of the look says nothing about the peak that the set's capacitor is charged to.
 */
void afterwards_start(struct probe *p)
{
    p->shunt_over_v = 0;
    p->shunt_row = 0;
    if (p->state != STATE_LOOK || p->limits.mean_i_16ths != 0)
        return;
    const struct look *look = &p->work.look;
    uint16_t supply = (uint16_t)(look->supply_16ths + p->zeros.v_16ths); /* at most 1.15 of 60 V: 2^14 */
    uint16_t set = look->result.end_v_16ths;
    uint16_t moves = (uint16_t)(look->supply_16ths / 16u);
    uint16_t level = (uint16_t)(supply + (moves > HIGHER_V_16THS ? moves : HIGHER_V_16THS));
    if (supply > set)
        level = (uint16_t)(level + (supply - set) * 3u / 8u);
    p->shunt_over_v = (uint16_t)(level / 16u);
}

static CORE_RARE void after_closing(struct probe *p, const struct conversion *conversion)
{
    if (p->state != STATE_LOOK && p->state != STATE_ON) {
        p->shunt_over_v = 0;
        return;
    }
    if (!p->guard.on || conversion_channel(conversion) != CHANNEL_V)
        return;
    uint16_t plans = conversion_plans_since(conversion, (uint16_t)hal_path_since_plan());
    if (plans == UINT16_MAX || plans == 0)
        return;
    p->shunt_row = conversion->counts > p->shunt_over_v ? (uint8_t)(p->shunt_row + 1) : 0;
    if (p->shunt_row >= HIGHER_V_IN_ROW) {
        p->self_test |= SELF_TEST_SHUNT;
        tripped_lost(p, TRIP_SELF_TEST, BY_LOOK, probe_self_test_bits(p));
    }
    if (p->shunt_row >= HIGHER_V_IN_ROW || plans >= WATCH_AFTER_CLOSE_PLANS)
        p->shunt_over_v = 0;
}

/* "Off" is believed only when nothing flows: looked at for a second after each opening. */
static CORE_RARE void after_opening(struct probe *p, const struct conversion *conversion)
{
    uint16_t plans = conversion_plans_since(conversion, p->opened_plans);
    if (plans == UINT16_MAX)
        return;
    if (p->state == STATE_LOOK || p->state == STATE_ON || plans > WATCH_AFTER_OPEN_PLANS) {
        p->opened_lately = false;
        return;
    }
    if (conversion_channel(conversion) != CHANNEL_J || plans < SETTLE_AFTER_OPEN_PLANS)
        return;
    bool flows = conversion->counts > p->over_j_counts;
    p->current_in_row = flows ? (uint8_t)(p->current_in_row + 1) : 0;
    if (p->current_in_row >= OPEN_CURRENT_IN_ROW) {
        p->self_test |= SELF_TEST_SWITCH_PATH;
        p->opened_lately = false;
        p->status_waiting = true;
    }
}

bool afterwards_listens(const struct probe *p)
{
    return p->opened_lately || p->shunt_over_v != 0;
}

void afterwards_conversion(struct probe *p, const struct conversion *conversion)
{
    if (p->opened_lately)
        after_opening(p, conversion);
    if (p->shunt_over_v != 0)
        after_closing(p, conversion);
}
