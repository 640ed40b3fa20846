/* A netlist in the shared circuit simulator, stepped by it and followed point by point. One in a process: the simulator allows no more. */
#ifndef SIM_SPICE_H
#define SIM_SPICE_H

#include <stdbool.h>
#include <stddef.h>

#include "failure.h"

enum { SPICE_MAX_NODES = 128 };

struct spice_follower {
    void *self;
    /* Volts of an external source (by its name in small letters) for the step that ends at the time. */
    double (*source_volts)(void *self, const char *name, double seconds);
    /* How long the next step may be. */
    double (*longest_step)(void *self, double seconds);
    /* A point was accepted; the nodes are in spice.volts. False ends the run. */
    bool (*accepted)(void *self, double seconds);
};

struct spice {
    size_t nodes;
    const char *node[SPICE_MAX_NODES]; /* their names; what is followed has to be asked for before the run */
    double volts[SPICE_MAX_NODES];
    bool quiet;
};

/* Adds a node to those that are followed; its index in spice.volts. The name must outlive the run. */
size_t spice_follow(struct spice *spice, const char *node);

/*
 * Runs a netlist to the end, or until the follower has had enough.
 *
 * @param lines of the netlist, the first one its title, without analysis and end; ended by NULL
 * @param seconds to simulate, in steps of at most longest_s
 */
bool spice_run(struct spice *spice, const struct spice_follower *follower, const char *const *lines, double seconds, double longest_s,
               struct failure *failure);

#endif
