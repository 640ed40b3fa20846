/* The chip's pins in its circuit: outputs are told to the netlist, nodes drive inputs and comparator. */
#ifndef SIM_PINS_H
#define SIM_PINS_H

#include "circuit.h"

/* Notes what each output drives now; the netlist is given it at its next step. */
void pins_follow_outputs(struct circuit *circuit);

/* Gives the inputs the levels of their nodes: those that have changed, or all. */
void pins_drive_inputs(struct circuit *circuit, bool all);

void pins_drive_comparator(struct circuit *circuit);

#endif
