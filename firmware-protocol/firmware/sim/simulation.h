/* The simulated chip on its board, run in real time or flat out, with the faults that were asked for. */
#ifndef SIM_SIMULATION_H
#define SIM_SIMULATION_H

#include "measure.h"
#include "options.h"

struct simulation {
    struct options options;
    struct waveform wave;
    struct frontend frontend;
    struct events events;
    struct bridge bridge;
    struct board board;
    struct measure measure;
    size_t next_reset, next_brown_out, next_hang;
    uint64_t origin; /* cycle that the times of faults and the end count from; UINT64_MAX while it is not known */
    bool client_gone; /* nobody took anything for a while: waiting again would stop the simulation */
    uint64_t slipped_ns; /* by how much the simulation fell behind real time for good */
};

/* Runs to the end asked for. False when the program has stopped for good. */
bool simulation_run(struct simulation *simulation);

/* Signal handler: the run ends with its next slice. */
void simulation_ask_end(int signal_number);

bool simulation_end_asked(void);

#endif
