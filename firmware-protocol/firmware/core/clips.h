/*
 * Which clips are joined to something: all inputs are moved by a known step for a few plans, and an open one goes
 * along. Runs in the main loop on the stream of conversions, with switch and look path open. 14 ms.
 */
#ifndef CORE_CLIPS_H
#define CORE_CLIPS_H

#include <stdbool.h>
#include <stdint.h>

#include "queue.h"
#include "wire.h"

enum { CLIP_CHANNELS = CHANNELS - CHANNEL_R1 }; /* R1 R2 R3 H M */

struct clips {
    uint8_t plan; /* of the read-back, begins with 0 */
    bool begun;
    bool head_moved;
    uint8_t count[CLIP_CHANNELS];
    uint16_t sum[CLIP_CHANNELS];
    uint16_t normal[CLIP_CHANNELS]; /* means, counts */
};

void clips_start(struct clips *clips);
/* True when it is over. */
bool clips_conversion(struct clips *clips, const struct conversion *conversion);
/* Bits of enum clip_bit, valid after that. */
uint8_t clips_joined(const struct clips *clips);

#endif
