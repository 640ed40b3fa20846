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

/* In the order and with the widths of the message. */
struct look_parameters {
    uint8_t skip;
    uint8_t reserved;
    uint16_t max_ms;
    uint16_t v_per_j_256ths;
    uint16_t short_v_per_j_256ths;
    uint16_t low_v_per_j_256ths;
    uint16_t supply_lowest_counts;
    uint16_t supply_highest_counts;
    uint32_t charge_limit; /* J counts x pairs x V counts, 0 = none */
} CORE_PACKED;

/* Of LOOK_PARAMETER_BYTES bytes, which are the struct: REFUSAL_NONE, or bad-value and the first wrong field. */
enum refusal look_parameters_check(const uint8_t *payload, uint8_t *field);

/* ---- check and zeros ---- */

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

/* ---- the look ---- */

enum { LOOK_WINDOW = 50, LOOK_PAIR_MS = 2 };

/* The look result as it goes over the wire. */
struct look_result {
    uint8_t outcome;
    uint8_t closes;
    uint16_t duration_ms;
    struct zeros zeros;
    uint16_t pairs;
    uint16_t end_v_16ths;
    uint16_t end_j_16ths;
    uint32_t sum_v;
    uint32_t sum_j;
    uint8_t clips;
    uint8_t reserved;
} CORE_PACKED;

struct look {
    struct look_result result; /* pairs and sums count from the start on */
    uint16_t *window_v;
    uint16_t *window_j;
    uint16_t last_v;
    uint16_t before; /* sum of V over the 100 ms before, LOOK_NO_SUM = none */
    uint16_t over_j_counts;
    uint16_t first_supply_16ths; /* by the first 100 ms, 0 = none yet */
    uint16_t supply_16ths;       /* by its end; valid after look_outcome */
    uint8_t at;
    bool have_v;
    bool over;
    bool settled;
};

/* The caller lends 2 * LOOK_WINDOW places for the time of the look. */
void look_start(struct look *look, uint16_t *windows, const struct zeros *zeros, uint16_t over_j_counts);
/* True when the look is over. */
bool look_conversion(struct look *look, const struct look_parameters *parameters, const struct zeros *zeros,
                     const struct conversion *conversion);
/* What V may have come to by the closing, when the set's capacitors are still filling: 1/16 count. */
uint16_t look_volts_soon(const struct look *look);
/* Fills in the ends and says what they mean. */
enum look_outcome look_outcome(struct look *look, const struct look_parameters *parameters, const struct zeros *zeros,
                               bool reversed);

#endif
