/*
 * Conversions on their way from the converter's interrupt to the main loop. Numbers come from the producer: a lost
 * conversion leaves a hole and moves nothing. When the queue is full the producer stops until the consumer has
 * emptied it, and then says afresh which conversion is the next.
 */
#ifndef CORE_QUEUE_H
#define CORE_QUEUE_H

#include <stdbool.h>
#include <stdint.h>

#include "hal.h"
#include "plan.h"

enum { QUEUE_BROKEN = 1, QUEUE_AFRESH };
enum { QUEUE_PLACES = 64 }; /* 4 ms; one place stays empty */

/* The conversion taken last. */
struct conversion {
    uint32_t plans;
    uint16_t counts;
    uint8_t slot;
    bool after_hole;
};

struct queue {
    volatile uint8_t head;        /* written by the interrupt alone */
    volatile uint8_t tail;        /* written by the main loop alone */
    volatile uint8_t unusual;     /* set to broken by the interrupt, to afresh by the main loop, to 0 by the interrupt */
    volatile uint32_t first_plans; /* of the first conversion after afresh */
    volatile uint8_t highest;
    /* of the main loop alone */
    bool started;
    bool number_unknown;
    uint8_t next_slot;
    struct conversion taken;
    uint16_t lost;
    uint16_t entry[QUEUE_PLACES]; /* counts | slot << 10 */
};

static inline uint8_t conversion_channel(const struct conversion *conversion)
{
    return plan_channel[conversion->slot];
}

/* Plans modulo 65536, UINT16_MAX = before: what comes out of the queue may be older than a change, by a few. */
static inline uint16_t conversion_plans_since(const struct conversion *conversion, uint16_t plans)
{
    uint16_t since = (uint16_t)((uint16_t)conversion->plans - plans);
    return since > UINT16_MAX / 2 ? UINT16_MAX : since;
}

/* Of a struct that is all zero. */
void queue_start(struct queue *queue);

/* For the interrupt alone; the first handles what is unusual, false = nothing may be put. */
bool queue_unusual(struct queue *queue);
static inline void queue_put(struct queue *queue, uint8_t slot, uint16_t counts)
{
    if (queue->unusual && !queue_unusual(queue))
        return;
    uint8_t head = queue->head;
    uint8_t next = (head + 1) & (QUEUE_PLACES - 1);
    if (next == queue->tail) {
        queue->unusual = QUEUE_BROKEN;
        return;
    }
    queue->entry[head] = (uint16_t)(counts | (uint16_t)(uint8_t)(slot << 2) << 8);
    queue->head = next;
}

/* How many wait. */
static inline uint8_t queue_waiting(const struct queue *queue)
{
    return (uint8_t)(queue->head - queue->tail) & (QUEUE_PLACES - 1);
}

/* Whether the next one expected begins four slots; then it is worth while to wait for all four. */
static inline bool queue_at_four(const struct queue *queue)
{
    return (queue->next_slot & 3) == 0 && !queue->number_unknown && queue->unusual == 0;
}
/*
 * For the main loop: four in a row from there, the ordinary case. They are as in the queue, counts | slot
 * << 10; `taken` names the first of them. False = not four in a row.
 */
bool queue_take_four(struct queue *queue, uint16_t four[4]);
/* For the main loop: takes the oldest conversion into `taken`; false = none. */
bool queue_take(struct queue *queue);
bool queue_empty(const struct queue *queue);

#endif
