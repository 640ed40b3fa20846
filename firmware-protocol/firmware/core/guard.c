#include "guard.h"

#include "compiler.h"
#include "hal.h"

void guard_start(struct guard *guard)
{
    queue_start(&guard->queue);
}

void guard_arm(struct guard *guard, const struct trip_levels *levels, const struct surge *surge)
{
    trip_start(&guard->watch, levels);
    limiting_start(&guard->limiting, surge);
    guard->claimed = false;
    guard->armed = true;
    hal_path_at_boundary(HAL_PATH_SWITCH);
}

/* Ends the watch if it was on; the pins are low before anything else is done. */
static CORE_RARE bool cut(struct guard *guard, bool closed)
{
    uint8_t held = hal_interrupts_hold();
    /* The second half: closed, but its first conversion has not ended yet. */
    bool was_on = guard->on || (guard->armed && closed);
    hal_paths_open();
    guard->armed = false;
    guard->on = false;
    if (was_on)
        capture_trip(&guard->capture);
    hal_interrupts_release(held);
    return was_on;
}

void guard_open(struct guard *guard)
{
    uint8_t held = hal_interrupts_hold();
    hal_paths_open();
    guard->armed = false;
    guard->on = false;
    hal_interrupts_release(held);
}

static CORE_RARE void claim(struct guard *guard, enum trip_cause cause, uint8_t channel, uint8_t confirmed, uint16_t value)
{
    struct guard_finding *finding = &guard->finding;
    finding->pin_low = hal_now();
    finding->decided_slot = finding->pin_low.slot;
    finding->cause = (uint8_t)cause;
    finding->channel = channel;
    finding->confirmed = confirmed;
    finding->value = value;
    finding->limited = guard->limiting.count;
    finding->limited_span = guard->limiting.span;
    guard->claimed = true;
}

bool guard_trip(struct guard *guard, enum trip_cause cause, uint16_t value)
{
    if (!cut(guard, hal_path_now() == HAL_PATH_SWITCH))
        return false;
    claim(guard, cause, CHANNEL_NONE, 1, value);
    return true;
}

static CORE_RARE void found(struct guard *guard, enum trip_cause cause, uint8_t slot)
{
    if (!cut(guard, true))
        return;
    claim(guard, cause, guard->watch.channel, guard->watch.confirmed, guard->watch.value);
    guard->finding.decided_slot = slot;
}

/* Called last, so that a handler without limits to watch has little to save. */
static CORE_RARE void watch_limits(struct guard *guard, uint8_t slot, uint8_t plan_of_reading, uint16_t counts)
{
    enum trip_cause cause = trip_conversion(&guard->watch, slot, plan_of_reading, counts);
    if (cause != TRIP_NONE)
        found(guard, cause, slot);
}

/* The switch may have been opened again before its first conversion was over. */
static CORE_RARE void limits_begin(struct guard *guard)
{
    uint8_t held = hal_interrupts_hold();
    if (guard->armed && hal_path_now() == HAL_PATH_SWITCH)
        guard->on = true;
    hal_interrupts_release(held);
}

/*
 * The surge into the set's capacitors is held by the limiter: meanwhile, and until the time for it is over, it is not
 * the limits' business how large it is.
 */
static CORE_RARE void limiter_holds(struct guard *guard, uint8_t slot, uint16_t counts)
{
    struct limiting *limiting = &guard->limiting;
    uint8_t channel = plan_channel[slot];
    guard->watch.held = limiting->surge_plans != 0;
    if (!limiting_seen(limiting, channel == CHANNEL_V, counts))
        return;
    guard->watch.channel = CHANNEL_NONE;
    guard->watch.confirmed = limiting->count;
    guard->watch.value = channel == CHANNEL_I ? counts : guard->watch.last_i;
    found(guard, TRIP_HARD_SHORT, slot);
}

static CORE_RARE void surge_goes_on(struct guard *guard)
{
    limiting_plan(&guard->limiting);
    if (guard->limiting.surge_plans == 0)
        guard->watch.held = false;
}

void guard_conversion(struct guard *guard, uint8_t slot, uint8_t plan_of_reading, uint16_t counts)
{
    queue_put(&guard->queue, slot, counts);
    uint8_t channel = plan_channel[slot];
    if (channel == CHANNEL_I)
        capture_put(&guard->capture, slot, counts);
    if (slot == 0 && guard->armed)
        limits_begin(guard);
    if (!guard->on)
        return;
    if (slot == 0 && guard->limiting.surge_plans != 0)
        surge_goes_on(guard);
    if (hal_limiting_now())
        limiter_holds(guard, slot, counts);
    else if (guard->limiting.count != 0)
        limiting_not_seen(&guard->limiting);
    if (guard->on && channel < CHANNEL_H) /* H and M have no limits, and are half of all */
        watch_limits(guard, slot, plan_of_reading, counts);
}
