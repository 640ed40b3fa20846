#include "press.h"

enum press_kind press_look(struct press *press, bool is_down, uint32_t now_ms)
{
    bool settled = is_down == press->last;
    press->last = is_down;
    if (!settled)
        return PRESS_NOTHING;
    if (is_down && !press->down) {
        press->down = true;
        press->held = false;
        press->since_ms = now_ms;
        return PRESS_DOWN;
    }
    if (is_down && !press->held && now_ms - press->since_ms >= PRESS_HELD_MS) {
        press->held = true;
        return PRESS_HELD;
    }
    if (!is_down && press->down) {
        press->down = false;
        return press->held ? PRESS_NOTHING : PRESS_TAP;
    }
    return PRESS_NOTHING;
}
