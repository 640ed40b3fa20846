#include "limiting.h"

#include "compiler.h"

void limiting_start(struct limiting *limiting, const struct surge *surge)
{
    limiting->count = 0;
    limiting->not_seen = 0;
    limiting->span = 0;
    limiting->allowed = LIMITING_ALLOWED;
    limiting->surge_plans = 0;
    limiting->supply_v = surge->supply_v;
    limiting->across_6 = 0;
    if (!surge->allowed)
        return;
    limiting->allowed = surge->over_15v ? LIMITING_SURGE_HIGH : LIMITING_SURGE;
    limiting->surge_plans = LIMITING_SURGE_PLANS + 1;
    if (surge->supply_v > surge->set_v)
        limiting->across_6 = (uint16_t)((surge->supply_v - surge->set_v) * 5u); /* under 5120 */
}

CORE_RARE void limiting_plan(struct limiting *limiting)
{
    if (--limiting->surge_plans == 0)
        limiting->allowed = LIMITING_ALLOWED;
}

/* A capacitor that is being charged lets the volts across the switch fall; a short does not. */
static bool falls(const struct limiting *limiting, uint16_t counts)
{
    uint16_t across = limiting->supply_v > counts ? (uint16_t)(limiting->supply_v - counts) : 0;
    return across * 6u < limiting->across_6;
}

CORE_RARE void limiting_not_seen(struct limiting *limiting)
{
    limiting->span++; /* a thousand at the most: four for each of 255 */
    if (++limiting->not_seen < LIMITING_FORGETS)
        return;
    limiting->not_seen = 0;
    if (--limiting->count == 0)
        limiting->span = 0;
}

CORE_RARE bool limiting_seen(struct limiting *limiting, bool of_v, uint16_t counts)
{
    uint8_t count = limiting->count;
    if (count < UINT8_MAX)
        limiting->count = ++count;
    if (limiting->span < UINT16_MAX)
        limiting->span++;
    if (count > limiting->allowed)
        return true;
    return of_v && limiting->surge_plans != 0 && count > LIMITING_MUST_FALL && !falls(limiting, counts);
}
