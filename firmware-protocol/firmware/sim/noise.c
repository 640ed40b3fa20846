#include "noise.h"

#include <math.h>

void noise_init(struct noise *noise, double rms_counts, uint64_t seed)
{
    *noise = (struct noise){.rms_counts = rms_counts, .state = seed};
}

/* splitmix64 (Steele, Lea, Flood, "Fast splittable pseudorandom number generators", 2014), to 0 < u <= 1. */
static double uniform(struct noise *noise)
{
    uint64_t z = noise->state += 0x9E3779B97F4A7C15u;
    z = (z ^ z >> 30) * 0xBF58476D1CE4E5B9u;
    z = (z ^ z >> 27) * 0x94D049BB133111EBu;
    z ^= z >> 31;
    return (double)((z >> 11) + 1) / 9007199254740992.0;
}

/* Box-Muller: two independent normal values from two uniform ones. */
double noise_next(struct noise *noise)
{
    if (noise->rms_counts == 0)
        return 0;
    if (noise->has_spare) {
        noise->has_spare = false;
        return noise->spare;
    }
    double radius = noise->rms_counts * sqrt(-2 * log(uniform(noise)));
    double angle = 2 * 3.14159265358979323846 * uniform(noise);
    noise->spare = radius * sin(angle);
    noise->has_spare = true;
    return radius * cos(angle);
}
