/* Bounded byte queue; what does not fit is counted by the caller. */
#ifndef SIM_QUEUE_H
#define SIM_QUEUE_H

#include <stdbool.h>
#include <stddef.h>
#include <stdint.h>

enum { QUEUE_BYTES = 65536 };

struct queue {
    uint8_t bytes[QUEUE_BYTES];
    size_t head;
    size_t count;
};

static inline bool queue_put(struct queue *queue, uint8_t byte)
{
    if (queue->count == QUEUE_BYTES)
        return false;
    queue->bytes[(queue->head + queue->count++) % QUEUE_BYTES] = byte;
    return true;
}

/* Longest run from the head that lies in one piece. */
static inline size_t queue_run(const struct queue *queue)
{
    size_t to_end = QUEUE_BYTES - queue->head;
    return queue->count < to_end ? queue->count : to_end;
}

static inline void queue_take(struct queue *queue, size_t bytes)
{
    queue->head = (queue->head + bytes) % QUEUE_BYTES;
    queue->count -= bytes;
}

#endif
