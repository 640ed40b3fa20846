/* Button or pedal: settled over two looks, told apart in down, tap and held. */
#ifndef CORE_PRESS_H
#define CORE_PRESS_H

#include <stdbool.h>
#include <stdint.h>

#include "wire.h"

enum { PRESS_HELD_PLANS = 300 }; /* 600 ms */

struct press {
    bool last;
    bool down;
    bool held;
    uint16_t since_plans; /* modulo 65536 */
};

/* A look at the input, every 2 ms. */
enum press_kind press_look(struct press *press, bool is_down, uint16_t now_plans);

#endif
