#include "plan.h"

#include "compiler.h"

const uint8_t plan_channel[PLAN_SLOTS] = PLAN_CHANNELS;

CORE_RARE uint32_t instant_us(const struct instant *at)
{
    uint16_t cycles = (uint16_t)((uint16_t)at->slot * CYCLES_PER_SLOT + at->cycles);
    return at->plans * (uint32_t)PLAN_US + cycles / CYCLES_PER_US;
}

uint32_t plan_us(uint32_t plans, uint8_t slot)
{
    struct instant at = {plans, 0, slot};
    return instant_us(&at);
}
