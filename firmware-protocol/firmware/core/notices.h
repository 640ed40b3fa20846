/* Switch and press messages that wait for room on the line, in order. */
#ifndef CORE_NOTICES_H
#define CORE_NOTICES_H

#include <stdint.h>

#include "wire.h"
#include "wire_out.h"

struct notice {
    uint8_t type; /* MESSAGE_SWITCH, MESSAGE_PRESS */
    uint8_t first;
    uint8_t second;
    uint32_t tick_us;
};

enum { NOTICES = 5 };

/* Starts as all zero. */
struct notices {
    struct notice waiting[NOTICES];
    uint8_t count;
};

void notices_put(struct notices *notices, enum probe_message type, uint8_t first, uint8_t second, uint32_t tick_us);
/* As many as there is room for. */
void notices_send(struct notices *notices, struct wire_out *out);

#endif
