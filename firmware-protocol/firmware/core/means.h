/* Means of I and J over the last 100 ms, for pulsed current: ten readings in a row, each 160 conversions. */
#ifndef CORE_MEANS_H
#define CORE_MEANS_H

#include <stdbool.h>
#include <stdint.h>

#include "plan.h"

enum { MEAN_READINGS = 10 };

/* Starts as all zero. */
struct means {
    uint16_t run_i; /* the reading that is under way */
    uint16_t run_j;
    uint8_t count_i;
    uint8_t count_j;
    bool run_void; /* a conversion of J was over 1000 */
    bool begun;
    uint8_t at;
    uint8_t filled;
    uint8_t sound_j; /* readings in a row, to the last, without a conversion of J over 1000; held at ten */
    uint16_t all_j;  /* of the ten: at most 51 150 */
    uint32_t all_i;
    uint16_t sum_i[MEAN_READINGS]; /* 40 conversions: at most 40 920 */
    uint16_t sum_j[MEAN_READINGS]; /* 5 conversions */
};

void means_begin_reading(struct means *means);
static inline void means_add_i(struct means *means, uint16_t counts)
{
    means->run_i = (uint16_t)(means->run_i + counts);
    means->count_i++;
}
void means_add_j(struct means *means, uint16_t counts);
/*
 * At the last conversion of a reading that was begun: the channel whose sum, of 400 conversions of I or 50 of J, is over;
 * CHANNEL_NONE = neither.
 */
uint8_t means_close_reading(struct means *means, uint32_t over_i_sum, uint16_t over_j_sum);
/* The mean of the last ten readings in 1/16 count. A division, so not before the switch is open. */
uint16_t means_16ths(const struct means *means, uint8_t channel);

#endif
