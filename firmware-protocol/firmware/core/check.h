/*
 * The first part of an arming: nothing may flow while the switch is open and volts must fall, then the zeros are taken.
 * Runs in the main loop, on the stream of conversions. Rules in wire-format.md section 4.
 */
#ifndef CORE_CHECK_H
#define CORE_CHECK_H

#include <stdbool.h>
#include <stdint.h>

#include "levels.h"
#include "queue.h"

enum check_result { CHECK_GOES_ON, CHECK_DONE, CHECK_CURRENT, CHECK_VOLTS_STAY };

enum { ZEROS = CHANNEL_V + 1 }; /* of the first three channels: I, J, V */

/* Plans modulo 65536: a check lasts 30 s at most. */
struct check {
    uint16_t from_plans;
    uint16_t window_plans; /* start of the 2 s in which V must fall by a tenth */
    uint16_t over_j_counts; /* above it J is a current */
    uint16_t quiet_v_counts;
    uint16_t window_v_counts;
    uint8_t current_in_row;
    bool window_open;
    bool current_now;
    bool taking;
    bool taking_begun;
    uint16_t left[ZEROS];
    uint32_t sum[ZEROS]; /* of I 800 conversions: at most 818 400 */
};

/* over_j: above it J is a current; rest_v: counts of 0 V by the calibration. */
void check_start(struct check *check, uint16_t plans, uint16_t over_j_counts, uint16_t rest_v_counts);
enum check_result check_conversion(struct check *check, const struct conversion *conversion);
/* Valid after CHECK_DONE. */
void check_zeros(const struct check *check, struct zeros *zeros);

#endif
