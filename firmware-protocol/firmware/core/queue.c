#include "queue.h"

void queue_start(struct queue *queue)
{
    queue->head = 0;
    queue->tail = 0;
    queue->broken = false;
    queue->afresh = true;
    queue->highest = 0;
    queue->started = false;
    queue->number_unknown = true;
    queue->next_slot = 0;
    queue->next_plans = 0;
    queue->lost = 0;
}

bool queue_empty(const struct queue *queue)
{
    return queue->head == queue->tail && !queue->broken;
}

bool queue_take(struct queue *queue, struct conversion *conversion)
{
    uint8_t tail = queue->tail;
    uint8_t waiting = (uint8_t)((uint8_t)(queue->head - tail) % QUEUE_PLACES);
    if (waiting == 0) {
        if (queue->broken) {
            /* In this order: once the interrupt puts again it also says the number. */
            queue->number_unknown = true;
            queue->afresh = true;
            queue->broken = false;
        }
        return false;
    }
    if (waiting > queue->highest)
        queue->highest = waiting;
    uint16_t entry = queue->entry[tail];
    conversion->counts = entry & COUNTS_HIGHEST;
    conversion->slot = (uint8_t)(entry >> 10 & (PLAN_SLOTS - 1));
    conversion->channel = plan_channel[conversion->slot];
    uint32_t plans = queue->next_plans;
    if (queue->number_unknown)
        plans = queue->first_plans;
    else if (conversion->slot < queue->next_slot)
        plans++;
    conversion->plans = plans;
    uint16_t hole = 0;
    if (queue->started) /* modulo 65536, like the count it goes into */
        hole = (uint16_t)((uint16_t)(plans - queue->next_plans) * PLAN_SLOTS + conversion->slot - queue->next_slot);
    queue->lost = (uint16_t)(queue->lost + hole);
    conversion->after_hole = hole != 0;
    queue->started = true;
    queue->number_unknown = false;
    queue->next_slot = (uint8_t)((conversion->slot + 1) % PLAN_SLOTS);
    queue->next_plans = queue->next_slot == 0 ? plans + 1 : plans;
    queue->tail = (uint8_t)((tail + 1) % QUEUE_PLACES);
    return true;
}
