/*
 * Before the switch closes: nothing may flow while it is open, then the zeros are taken, then the set is looked at
 * through the look resistor. Runs in the main loop, on the stream of conversions, so it does not depend on when they
 * are read. Rules in wire-format.md section 4.
 */
#ifndef CORE_LOOK_H
#define CORE_LOOK_H

#include <stdbool.h>
#include <stdint.h>

#include "queue.h"
#include "trip.h"
#include "wire.h"

struct look_parameters {
    bool skip;
    uint16_t max_ms;
    uint16_t v_per_j_256ths;
    uint16_t short_v_per_j_256ths;
    uint16_t low_v_per_j_256ths;
    uint16_t supply_lowest_counts;
    uint16_t supply_highest_counts;
};

/* Reads LOOK_PARAMETER_BYTES bytes; REFUSAL_NONE, or bad-value and the first wrong field. */
enum refusal look_parameters_read(const uint8_t *payload, struct look_parameters *parameters, uint8_t *field);

/* ---- check and zeros ---- */

enum check_result { CHECK_GOES_ON, CHECK_DONE, CHECK_CURRENT, CHECK_VOLTS_STAY };

struct check {
    uint32_t from_plans;
    uint32_t window_plans; /* start of the 2 s in which V must fall by a tenth */
    uint32_t sum_i;        /* 800 conversions: at most 818 400 */
    uint32_t sum_j;
    uint32_t sum_v;
    uint16_t rest_j_counts;
    uint16_t quiet_v_counts;
    uint16_t window_v_counts;
    uint16_t count_i;
    uint8_t count_j;
    uint8_t count_v;
    uint8_t current_in_row;
    bool window_open;
    bool current_now;
    bool taking;
    bool taking_begun;
};

/* rest_j and rest_v: counts of 0 A and 0 V by the calibration. */
void check_start(struct check *check, uint32_t plans, uint16_t rest_j_counts, uint16_t rest_v_counts);
enum check_result check_conversion(struct check *check, const struct conversion *conversion);
/* Valid after CHECK_DONE. */
void check_zeros(const struct check *check, struct zeros *zeros);

/* ---- the look ---- */

enum { LOOK_WINDOW = 50, LOOK_PAIR_MS = 2 };

struct look {
    uint16_t *window_v;
    uint16_t *window_j;
    uint32_t sum_v;
    uint32_t sum_j;
    uint16_t pairs;
    uint16_t last_v;
    uint16_t before; /* sum of V over the 100 ms before, LOOK_NO_SUM = none */
    uint16_t over_j_counts;
    uint8_t at;
    bool have_v;
    bool over;
};

/* The caller lends 2 * LOOK_WINDOW places for the time of the look. */
void look_start(struct look *look, uint16_t *windows, const struct zeros *zeros, uint16_t over_j_counts);
/* True when the look is over. */
bool look_conversion(struct look *look, const struct look_parameters *parameters, const struct zeros *zeros,
                     const struct conversion *conversion);
uint16_t look_end_v_16ths(const struct look *look);
uint16_t look_end_j_16ths(const struct look *look);
enum look_outcome look_outcome(const struct look *look, const struct look_parameters *parameters,
                               const struct zeros *zeros, bool reversed);

#endif
