/* The limits message: checked, compared. */
#ifndef CORE_LIMITS_H
#define CORE_LIMITS_H

#include <stdint.h>

#include "compiler.h"
#include "wire.h"

enum { RAILS = 3 };

/* In the order and with the widths of the message. */
struct limits {
    uint16_t inrush_ms;
    uint16_t inrush_i_counts;
    uint16_t running_i_counts;
    uint16_t running_j_counts;
    uint16_t peak_i_counts;
    uint16_t mean_i_16ths;
    uint16_t mean_j_16ths;
    uint8_t confirm_i;
    uint8_t confirm_j;
    uint8_t confirm_rail;
    uint8_t confirm_v;
    uint32_t i2t_budget_counts2;
    uint16_t i2t_running_counts;
    uint16_t rail_low_counts[RAILS];
    uint16_t rail_high_counts[RAILS];
    uint16_t over_v_counts;
    uint16_t silence_ms;
    uint16_t look_over_j_counts;
    uint16_t start_i_counts;
    uint16_t start_ms;
} CORE_PACKED;

/* Of LIMITS_BYTES bytes: REFUSAL_NONE, or the reason and the first wrong field. What passes begins with the struct. */
enum refusal limits_check(const uint8_t *payload, uint8_t *field);

/* Number of the first field that is wider in the payload, 0 = none. */
uint8_t limits_wider(const struct limits *now, const uint8_t *payload);

#endif
