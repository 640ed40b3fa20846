/*
 * The look at the set through the look resistor, behind the check and before the switch closes. Runs in the main loop,
 * on the stream of conversions, so it does not depend on when they are read. Rules in wire-format.md section 4.
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
