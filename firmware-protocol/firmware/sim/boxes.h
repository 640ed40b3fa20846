/* The drawn boxes that come with the simulator: firmware-protocol/vectors/boxes.txt, written by the host's drawing. */
#ifndef SIM_BOXES_H
#define SIM_BOXES_H

#include "frontend.h"

/* Which of them a seed means: those after the last begin again with the first. */
unsigned boxes_of_seed(uint64_t seed);
bool boxes_take(struct frontend *frontend, uint64_t seed, struct failure *failure);

#endif
