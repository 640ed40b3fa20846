/* Record of every conversion that was fed in, and its comparison with what the firmware put into its streams. */
#ifndef SIM_FED_H
#define SIM_FED_H

#include <stdio.h>

#include "frontend.h"
#include "wire.h"

enum { CYCLES_PER_CONVERSION = 1000, PLAN_SLOTS = 32, FED_RING = 65536 };

extern const uint8_t FED_PLAN[PLAN_SLOTS];

struct fed_entry {
    uint64_t number; /* of the conversion since the plan began */
    uint16_t counts;
    uint8_t channel;
    bool started;
};

struct fed {
    bool locked; /* the plan was recognised: numbers are known */
    uint64_t first_cycle;
    uint64_t next;
    struct {
        uint64_t cycle;
        uint16_t counts;
        uint8_t channel;
    } recent[PLAN_SLOTS];
    size_t recent_count;
    struct fed_entry ring[FED_RING];
    FILE *file; /* NULL: no record file */

    uint64_t started;
    uint64_t missed_starts; /* numbers that have no conversion */
    uint64_t off_plan;      /* the converter stood on another channel than the plan says */
    uint64_t longest_jitter_cycles;
    uint64_t compared;
    uint64_t wrong;      /* sent value is not the one fed in */
    uint64_t mislabelled; /* sent under a slot of another channel */
    uint64_t not_found;  /* sent, but never converted (or older than the record) */
    uint64_t readings_compared;
    uint64_t readings_wrong;
};

/* After power-on and every reset: the firmware counts from zero again. */
void fed_restart(struct fed *fed);

/* One conversion: the cycle of its start, the channel the converter stood on, the counts latched for it. */
void fed_conversion(struct fed *fed, uint64_t cycle, uint8_t channel, uint16_t counts);

/* One frame which the firmware sent. */
void fed_compare(struct fed *fed, const struct wire_frame *frame);

#endif
