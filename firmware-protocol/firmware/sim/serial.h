/* The simulated chip's serial line, at the speed of the real one. */
#ifndef SIM_SERIAL_H
#define SIM_SERIAL_H

#include "chip.h"

/* From now on each byte that the program sends goes to chip->surroundings. */
void serial_listen(struct chip *chip);

/* Bytes are waiting: lets them go to the receiver at the speed of the line. */
void serial_pump_receiver(struct chip *chip);

#endif
