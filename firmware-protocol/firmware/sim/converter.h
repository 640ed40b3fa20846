/* The simulated chip's converter: takes its input and shows its result when the real one does. */
#ifndef SIM_CONVERTER_H
#define SIM_CONVERTER_H

#include "chip.h"

/* From now on each conversion that the program starts asks chip->surroundings for its counts. */
void converter_listen(struct chip *chip);

#endif
