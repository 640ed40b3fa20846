/* The beeper's patterns. */
#ifndef CORE_BEEPER_H
#define CORE_BEEPER_H

#include <stdint.h>

#include "wire.h"

struct beeper {
    uint8_t pattern;
    uint32_t since_ms;
};

void beeper_sound(struct beeper *beeper, enum sound_pattern pattern, uint32_t now_ms);
/* Every 2 ms. */
void beeper_run(struct beeper *beeper, uint32_t now_ms);

#endif
