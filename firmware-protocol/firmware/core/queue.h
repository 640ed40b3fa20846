/*
 * Conversions on their way from the converter's interrupt to the main loop. Numbers come from the producer: a lost
 * conversion leaves a hole and moves nothing. When the queue is full the producer stops until the consumer has
 * emptied it, and then says afresh which conversion is the next.
 */
#ifndef CORE_QUEUE_H
#define CORE_QUEUE_H

#include <stdbool.h>
#include <stdint.h>

#include "plan.h"

enum { QUEUE_PLACES = 64 }; /* 4 ms; one place stays empty */

struct queue {
    uint16_t entry[QUEUE_PLACES]; /* counts | slot << 10 */
    volatile uint8_t head;        /* written by the interrupt alone */
    volatile uint8_t tail;        /* written by the main loop alone */
    volatile bool broken;         /* set by the interrupt, cleared by the main loop */
    volatile bool afresh;         /* set by the main loop, cleared by the interrupt */
    volatile uint32_t first_plans; /* of the first conversion after afresh */
    volatile uint8_t highest;
    /* of the main loop alone */
    bool started;
    bool number_unknown;
    uint8_t next_slot;
    uint32_t plans; /* of the last conversion taken */
    uint16_t lost;
};

struct conversion {
    uint32_t plans;
    uint16_t counts;
    uint8_t slot;
    uint8_t channel;
    bool after_hole;
};

void queue_start(struct queue *queue);

/* For the interrupt alone. */
void queue_say_number(struct queue *queue);
static inline void queue_put(struct queue *queue, uint8_t slot, uint16_t counts)
{
    if (queue->broken)
        return;
    uint8_t head = queue->head;
    uint8_t next = (uint8_t)((head + 1) % QUEUE_PLACES);
    if (next == queue->tail) {
        queue->broken = true;
        return;
    }
    if (queue->afresh)
        queue_say_number(queue);
    queue->entry[head] = (uint16_t)(counts | (uint16_t)slot << 10);
    queue->head = next;
}

/* How many wait. */
static inline uint8_t queue_waiting(const struct queue *queue)
{
    return (uint8_t)((uint8_t)(queue->head - queue->tail) % QUEUE_PLACES);
}

/* For the main loop: the oldest conversion, false = none. */
bool queue_take(struct queue *queue, struct conversion *conversion);
bool queue_empty(const struct queue *queue);

#endif
