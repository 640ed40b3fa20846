/* Digital inputs of the chip: what the front-end file and the state of the switch put on its pins. */
#ifndef SIM_INPUTS_H
#define SIM_INPUTS_H

#include "frontend.h"

struct board;

/* The two pins whose meaning goes with the switch, after it or the current has moved. */
void inputs_of_switch(struct board *board);

/* One input after a change. */
void inputs_drive(struct board *board, enum digital_input input);

/* All of them, after a reset. */
void inputs_drive_all(struct board *board);

#endif
