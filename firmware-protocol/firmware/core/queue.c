#include "queue.h"

#include "compiler.h"

void queue_start(struct queue *queue)
{
    queue->unusual = QUEUE_AFRESH;
    queue->number_unknown = true;
}

bool queue_empty(const struct queue *queue)
{
    return queue->head == queue->tail && queue->unusual != QUEUE_BROKEN;
}

CORE_RARE bool queue_unusual(struct queue *queue)
{
    if (queue->unusual == QUEUE_BROKEN)
        return false;
    queue->first_plans = hal_conversion_plans();
    queue->unusual = 0;
    return true;
}

/* The slot is not the expected one, or the producer counts afresh: returns how many are missing, modulo 65536. */
static CORE_RARE uint16_t find_number(struct queue *queue, uint8_t slot)
{
    uint32_t last_plans = queue->taken.plans;
    uint8_t last_slot = (uint8_t)((queue->next_slot - 1) & (PLAN_SLOTS - 1));
    if (queue->number_unknown)
        queue->taken.plans = queue->first_plans;
    else if (slot <= last_slot)
        queue->taken.plans++;
    uint16_t plans_apart = (uint16_t)(queue->taken.plans - last_plans);
    uint16_t missing = (uint16_t)((uint16_t)(plans_apart * PLAN_SLOTS) + slot - last_slot - 1);
    queue->number_unknown = false;
    if (!queue->started) {
        queue->started = true;
        return 0;
    }
    queue->lost = (uint16_t)(queue->lost + missing);
    return missing;
}

/* In this order: once the interrupt puts again it also says the number. */
static CORE_RARE void go_on_afresh(struct queue *queue)
{
    queue->number_unknown = true;
    queue->unusual = QUEUE_AFRESH;
}

static inline bool is_slot(uint16_t entry, uint8_t slot)
{
    return (uint8_t)((uint8_t)(entry >> 8) & (uint8_t)~3) == (uint8_t)(slot << 2);
}

bool queue_take_four(struct queue *queue, uint16_t four[4])
{
    uint8_t tail = queue->tail;
    uint8_t slot = queue->next_slot;
    four[0] = queue->entry[tail];
    four[1] = queue->entry[(tail + 1) & (QUEUE_PLACES - 1)];
    four[2] = queue->entry[(tail + 2) & (QUEUE_PLACES - 1)];
    four[3] = queue->entry[(tail + 3) & (QUEUE_PLACES - 1)];
    if (!is_slot(four[0], slot) || !is_slot(four[1], (uint8_t)(slot + 1)) || !is_slot(four[2], (uint8_t)(slot + 2)) ||
        !is_slot(four[3], (uint8_t)(slot + 3)))
        return false;
    if (slot == 0)
        queue->taken.plans++;
    queue->taken.slot = slot;
    queue->next_slot = (slot + 4) & (PLAN_SLOTS - 1);
    queue->tail = (tail + 4) & (QUEUE_PLACES - 1);
    return true;
}

bool queue_take(struct queue *queue)
{
    struct conversion *taken = &queue->taken;
    uint8_t tail = queue->tail;
    uint8_t waiting = queue_waiting(queue);
    if (waiting == 0) {
        if (queue->unusual == QUEUE_BROKEN)
            go_on_afresh(queue);
        return false;
    }
    uint16_t entry = queue->entry[tail];
    uint8_t slot = (uint8_t)(entry >> 8) >> 2 & (PLAN_SLOTS - 1);
    taken->after_hole = false;
    if (slot != queue->next_slot || queue->number_unknown)
        taken->after_hole = find_number(queue, slot) != 0;
    else if (slot == 0)
        taken->plans++;
    taken->counts = entry & COUNTS_HIGHEST;
    taken->slot = slot;
    queue->next_slot = (slot + 1) & (PLAN_SLOTS - 1);
    queue->tail = (tail + 1) & (QUEUE_PLACES - 1);
    return true;
}
