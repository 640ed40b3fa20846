/* Button or pedal: settled over two looks, told apart in down, tap and held. */
#ifndef CORE_PRESS_H
#define CORE_PRESS_H

#include <stdbool.h>
#include <stdint.h>

#include "wire.h"

enum { PRESS_HELD_MS = 600 };

struct press {
    bool last;
    bool down;
    bool held;
    uint32_t since_ms;
};

/* A look at the input, every 2 ms. */
enum press_kind press_look(struct press *press, bool is_down, uint32_t now_ms);

#endif
