#include "arming.h"

#include <string.h>

#include "compiler.h"

enum {
    SETTLE_AFTER_OPEN_PLANS = 50, /* 100 ms for clamps and catch path */
    WATCH_AFTER_OPEN_PLANS = 550,
    OPEN_CURRENT_COUNTS = 4,
    OPEN_CURRENT_IN_ROW = 100 /* 200 ms */
};

void probe_arm(struct probe *p, const uint8_t *look_parameters, bool close)
{
    memcpy(&p->look_parameters, look_parameters, sizeof p->look_parameters);
    p->close_after_look = close;
    p->zeros_wait_for_look = false;
    p->capture_block = CAPTURE_BLOCKS;
    p->capture_expected = false;
    capture_lend(&p->guard.capture);
    p->look_waiting = false;
    check_start(&p->work.check, hal_plans(), p->rest_j_counts, calibration_rest_counts(&p->calibration, CHANNEL_V));
    probe_enter_now(p, STATE_CHECK, BY_USER);
}

/* Plans modulo 65536: some conversions in the queue are older than the state that they meet, by a few. */
static uint16_t plans_since(const struct conversion *conversion, uint16_t plans)
{
    uint16_t since = (uint16_t)((uint16_t)conversion->plans - plans);
    return since > UINT16_MAX / 2 ? UINT16_MAX : since;
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
            result->duration_ms = (uint16_t)(plans_since(conversion, p->state_from_plans) * 2u);
    }
    result->outcome = (uint8_t)outcome;
    result->closes = closes;
    result->zeros = p->zeros;
    p->look_us = plan_us(conversion->plans, conversion->slot);
    p->look_waiting = true;
    if (!closes) {
        probe_off(p, BY_LOOK);
        return;
    }
    capture_start(&p->guard.capture);
    trip_levels_set(&p->levels, &p->limits, &p->zeros);
    guard_arm(&p->guard, &p->levels);
}

static void await_look(struct probe *p, const struct conversion *conversion)
{
    bool begins = conversion->slot == 0 && hal_path_now() == HAL_PATH_LOOK &&
                  conversion->plans == hal_path_since_plan();
    if (!begins)
        return;
    p->zeros_wait_for_look = false;
    look_start(&p->work.look, capture_lend(&p->guard.capture), &p->zeros, p->limits.look_over_j_counts);
    probe_enter(p, STATE_LOOK, BY_USER, plan_us(conversion->plans, 0));
}

static void zeros_taken(struct probe *p, const struct conversion *conversion)
{
    check_zeros(&p->work.check, &p->zeros);
    p->zeros_taken = true;
    if (p->inputs & INPUT_SUPPLY_REVERSED) {
        end_look(p, LOOK_REVERSED, conversion);
    } else if (p->look_parameters.skip) {
        end_look(p, LOOK_SKIPPED, conversion);
    } else {
        p->zeros_wait_for_look = true;
        hal_path_at_boundary(HAL_PATH_LOOK);
    }
}

static void in_check(struct probe *p, const struct conversion *conversion)
{
    if (p->zeros_wait_for_look) {
        await_look(p, conversion);
        return;
    }
    struct check *check = &p->work.check;
    CORE_NEAR(check);
    enum check_result result = check_conversion(check, conversion);
    if (result == CHECK_DONE)
        zeros_taken(p, conversion);
    else if (result != CHECK_GOES_ON)
        end_look(p, result == CHECK_CURRENT ? LOOK_CURRENT_WHILE_OFF : LOOK_VOLTS_STAY, conversion);
}

static void in_look(struct probe *p, const struct conversion *conversion)
{
    struct look *look = &p->work.look;
    CORE_NEAR(look);
    if (!look_conversion(look, &p->look_parameters, &p->zeros, conversion))
        return;
    bool reversed = (p->inputs & INPUT_SUPPLY_REVERSED) != 0;
    end_look(p, look_outcome(look, &p->look_parameters, &p->zeros, reversed), conversion);
}

/* "Off" is believed only when nothing flows: looked at for a second after each opening. */
static void after_opening(struct probe *p, const struct conversion *conversion)
{
    uint16_t plans = plans_since(conversion, p->opened_plans);
    if (plans == UINT16_MAX)
        return;
    if (p->state == STATE_LOOK || p->state == STATE_ON || plans > WATCH_AFTER_OPEN_PLANS) {
        p->opened_lately = false;
        return;
    }
    if (conversion_channel(conversion) != CHANNEL_J || plans < SETTLE_AFTER_OPEN_PLANS)
        return;
    bool flows = conversion->counts >= p->rest_j_counts + OPEN_CURRENT_COUNTS;
    p->current_in_row = flows ? (uint8_t)(p->current_in_row + 1) : 0;
    if (p->current_in_row >= OPEN_CURRENT_IN_ROW) {
        p->self_test |= SELF_TEST_SWITCH_PATH;
        p->opened_lately = false;
        p->status_waiting = true;
    }
}

bool arming_listens(const struct probe *p)
{
    return p->state == STATE_CHECK || p->state == STATE_LOOK || p->opened_lately;
}

CORE_RARE void arming_conversion(struct probe *p, const struct conversion *conversion)
{
    /* Closed and tripped at once: conversions still queued belong to the check, and must not arm again. */
    if (!p->guard.armed && !p->guard.claimed) {
        if (p->state == STATE_CHECK) {
            if (plans_since(conversion, p->state_from_plans) != UINT16_MAX)
                in_check(p, conversion);
        } else if (p->state == STATE_LOOK) {
            in_look(p, conversion);
        }
    }
    if (p->opened_lately)
        after_opening(p, conversion);
}
