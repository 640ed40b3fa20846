/* Repeatable Gaussian noise. */
#ifndef SIM_NOISE_H
#define SIM_NOISE_H

#include <stdbool.h>
#include <stdint.h>

struct noise {
    double rms_counts; /* 0 = none */
    uint64_t state;
    double spare;
    bool has_spare;
};

void noise_init(struct noise *noise, double rms_counts, uint64_t seed);
double noise_next(struct noise *noise);

#endif
