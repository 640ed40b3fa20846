#include "means.h"

#include "compiler.h"

#include <string.h>

enum { J_HIGHEST = 1000, I_PER_READING = 40, J_PER_READING = 5 };

void means_begin_reading(struct means *means)
{
    means->begun = true;
    means->run_i = 0;
    means->run_j = 0;
    means->count_i = 0;
    means->count_j = 0;
    means->run_void = false;
}

void means_add_j(struct means *means, uint16_t counts)
{
    means->run_j = (uint16_t)(means->run_j + counts);
    means->count_j++;
    if (counts > J_HIGHEST)
        means->run_void = true;
}

uint8_t means_close_reading(struct means *means, uint32_t over_i_sum, uint16_t over_j_sum)
{
    CORE_NEAR(means);
    if (means->count_i != I_PER_READING || means->count_j != J_PER_READING) {
        memset(means, 0, sizeof *means);
        return CHANNEL_NONE;
    }
    means->begun = false; /* until the next reading has begun; a lost first conversion must not join two readings */
    uint8_t at = means->at;
    means->all_i = means->all_i - means->sum_i[at] + means->run_i; /* the ring begins as all zero */
    means->all_j = (uint16_t)(means->all_j - means->sum_j[at] + means->run_j);
    means->sum_i[at] = means->run_i;
    means->sum_j[at] = means->run_j;
    means->at = at + 1 == MEAN_READINGS ? 0 : (uint8_t)(at + 1);
    means->sound_j = means->run_void ? 0 : (uint8_t)(means->sound_j + (means->sound_j < MEAN_READINGS));
    if (means->filled < MEAN_READINGS && ++means->filled < MEAN_READINGS)
        return CHANNEL_NONE;
    if (means->all_i > over_i_sum)
        return CHANNEL_I;
    return means->sound_j == MEAN_READINGS && means->all_j > over_j_sum ? CHANNEL_J : CHANNEL_NONE;
}

uint16_t means_16ths(const struct means *means, uint8_t channel)
{
    uint32_t sum = channel == CHANNEL_I ? means->all_i : (uint32_t)means->all_j * 8u;
    return (uint16_t)(sum / 25u);
}
