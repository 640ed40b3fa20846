/* The beeper's patterns. */
#ifndef CORE_BEEPER_H
#define CORE_BEEPER_H

#include <stdint.h>

#include "wire.h"

struct beeper {
    uint8_t pattern;
    uint16_t since_plans; /* modulo 65536; a pattern ends long before that */
};

void beeper_sound(struct beeper *beeper, enum sound_pattern pattern, uint16_t now_plans);
/* Every 2 ms. */
void beeper_run(struct beeper *beeper, uint16_t now_plans);

#endif
