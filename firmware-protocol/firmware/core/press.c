#include "press.h"

enum press_kind press_look(struct press *press, bool is_down, uint16_t now_plans)
{
    bool settled = is_down == press->last;
    press->last = is_down;
    if (!settled)
        return PRESS_NOTHING;
    if (is_down && !press->down) {
        press->down = true;
        press->held = false;
        press->since_plans = now_plans;
        return PRESS_DOWN;
    }
    if (is_down && !press->held && (uint16_t)(now_plans - press->since_plans) >= PRESS_HELD_PLANS) {
        press->held = true;
        return PRESS_HELD;
    }
    if (!is_down && press->down) {
        press->down = false;
        return press->held ? PRESS_NOTHING : PRESS_TAP;
    }
    return PRESS_NOTHING;
}
