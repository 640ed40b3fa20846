/* The events file: one JSON object a line, flushed at once. */
#ifndef SIM_EVENTS_H
#define SIM_EVENTS_H

#include "setmodel.h"

struct events {
    FILE *file; /* NULL: none asked for */
};

bool events_open(struct events *events, const char *path, struct failure *failure);
void events_supply(struct events *events, uint64_t cycle, enum supply_state state);
void events_crossed(struct events *events, uint64_t cycle, enum wave_column column);
/* A reset, brown-out or hang was injected. */
void events_fault(struct events *events, uint64_t cycle, const char *kind);
void events_sent(struct events *events, uint64_t conversions, uint64_t bytes_lost);
bool events_close(struct events *events);

#endif
