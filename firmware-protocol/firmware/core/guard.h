/*
 * What runs in interrupts: every conversion goes into the queue and the capture and, while the switch is on, past the
 * limits and the limiter. Whoever finds a cause first opens the switch and claims the trip; the main loop then does
 * the rest, and the guard stays quiet until the next closing.
 */
#ifndef CORE_GUARD_H
#define CORE_GUARD_H

#include <stdbool.h>
#include <stdint.h>

#include "capture.h"
#include "limiting.h"
#include "plan.h"
#include "queue.h"
#include "trip.h"

/* Why, when and where; whole once `claimed` is seen by the main loop. */
struct guard_finding {
    uint8_t cause;
    uint8_t channel;
    uint8_t confirmed;
    uint8_t decided_slot; /* the last of this number before the pin was low */
    uint16_t value;
    uint8_t limited;       /* conversions that saw the limiter hold, as limiting.h counts them */
    uint16_t limited_span; /* since the first of them, both ends counted */
    struct instant pin_low;
};

struct guard {
    volatile bool armed;   /* the switch is about to close */
    volatile bool on;      /* the limits act */
    volatile bool claimed; /* a trip waits for the main loop */
    struct guard_finding finding;
    struct limiting limiting;
    struct trip_watch watch;
    struct queue queue;
    struct capture capture;
};

/* Of a struct that is all zero: the capture rests. */
void guard_start(struct guard *guard);

/* Main loop: the switch closes at the next boundary; limits act from its first conversion on. */
void guard_arm(struct guard *guard, const struct trip_levels *levels, const struct surge *surge);
/* Main loop: opens both paths; nothing is watched any more. A trip that was claimed before stays claimed. */
void guard_open(struct guard *guard);
/* Main loop: opens for a cause that the main loop has found. False when the switch was off or a trip was claimed. */
bool guard_trip(struct guard *guard, enum trip_cause cause, uint16_t value);

/* The converter's interrupt. */
void guard_conversion(struct guard *guard, uint8_t slot, uint8_t plan_of_reading, uint16_t counts);

#endif
