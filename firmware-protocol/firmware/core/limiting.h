/*
 * How long the limiter may hold the current. Asked at each conversion while the switch is closed, in the converter's
 * interrupt. Rules: trip-rules.md, "Hard short".
 */
#ifndef CORE_LIMITING_H
#define CORE_LIMITING_H

#include <stdbool.h>
#include <stdint.h>

enum {
    LIMITING_ALLOWED = 16,      /* conversions: 1 ms */
    LIMITING_SURGE = 240,       /* after a look that lets: 15 ms */
    LIMITING_SURGE_HIGH = 160,  /* the same over 15 V: 10 ms */
    LIMITING_SURGE_PLANS = 10,  /* that holds for the first 20 ms */
    LIMITING_FORGETS = 4,       /* conversions without it take one back */
    LIMITING_MUST_FALL = 48     /* from 3 ms on the volts across the switch must have fallen */
};

struct limiting {
    volatile uint8_t count; /* up with each conversion that saw it, down with every fourth that did not; held at 255 */
    uint8_t not_seen;       /* of these four */
    uint16_t span;          /* conversions since it was 0 */
    uint8_t allowed;      /* so many are let pass */
    uint8_t surge_plans;  /* the closing's own plan counted; 0 = the surge is over */
    uint16_t supply_v;    /* of the look, counts */
    uint16_t across_6;    /* 5/6 of the volts across the switch at closing, times 6 */
};

/* What the look says of the surge that follows; surge false: there was no look. */
struct surge {
    bool allowed;
    bool over_15v;
    uint16_t supply_v; /* counts as V would show the supply */
    uint16_t set_v;    /* counts of V at the end of the look */
};

void limiting_start(struct limiting *limiting, const struct surge *surge);
/* The first conversion of a plan. */
void limiting_plan(struct limiting *limiting);
/* Limiting was not seen at this conversion, and has been before: a bouncing short must not restart the count. */
void limiting_not_seen(struct limiting *limiting);
/* Limiting was seen at this conversion; v: its counts are of V. True: it has lasted too long, or is no surge. */
bool limiting_seen(struct limiting *limiting, bool of_v, uint16_t counts);

#endif
