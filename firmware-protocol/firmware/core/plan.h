/* The plan of 32 slots, and the probe's time. */
#ifndef CORE_PLAN_H
#define CORE_PLAN_H

#include <stdint.h>

enum channel { CHANNEL_I, CHANNEL_J, CHANNEL_V, CHANNEL_R1, CHANNEL_R2, CHANNEL_R3, CHANNEL_H, CHANNEL_M, CHANNELS };
enum { CHANNEL_NONE = 255 };

enum {
    PLAN_SLOTS = 32,
    PLAN_US = 2000,
    PLANS_PER_READING = 5,
    CONVERSIONS_PER_READING = PLAN_SLOTS * PLANS_PER_READING,
    CYCLES_PER_SLOT = 1000, /* 62.5 us at 16 MHz */
    CYCLES_PER_US = 16,
    COUNTS_HIGHEST = 1023
};

/* The channel of each slot: I H M V  I H M R1  I H M R2  I H M R3  I H M J  I H M R1  I H M R2  I H M R3. */
#define PLAN_CHANNELS                                                                                             \
    { CHANNEL_I, CHANNEL_H, CHANNEL_M, CHANNEL_V,  CHANNEL_I, CHANNEL_H, CHANNEL_M, CHANNEL_R1,                   \
      CHANNEL_I, CHANNEL_H, CHANNEL_M, CHANNEL_R2, CHANNEL_I, CHANNEL_H, CHANNEL_M, CHANNEL_R3,                   \
      CHANNEL_I, CHANNEL_H, CHANNEL_M, CHANNEL_J,  CHANNEL_I, CHANNEL_H, CHANNEL_M, CHANNEL_R1,                   \
      CHANNEL_I, CHANNEL_H, CHANNEL_M, CHANNEL_R2, CHANNEL_I, CHANNEL_H, CHANNEL_M, CHANNEL_R3 }

extern const uint8_t plan_channel[PLAN_SLOTS];

/* A moment: plans since the start, slot of the plan, cycles of the slot (0..999). */
struct instant {
    uint32_t plans;
    uint16_t cycles;
    uint8_t slot;
};

/*
 * The tick of a moment, microseconds modulo 2^32. A plan is a whole 2000 us, so nothing is lost when plans * 2000
 * wraps; slot * 1000 + cycles is under 32 000.
 */
uint32_t instant_us(const struct instant *at);

/* The tick of the start of a conversion: floor(62.5 n). */
uint32_t plan_us(uint32_t plans, uint8_t slot);

#endif
