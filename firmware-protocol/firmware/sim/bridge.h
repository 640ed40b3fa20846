/* The probe's serial line as a pseudo-terminal, with dials for a bad line. */
#ifndef SIM_BRIDGE_H
#define SIM_BRIDGE_H

#include "failure.h"
#include "queue.h"

struct bridge_dials {
    uint64_t drop_byte_every; /* every Nth byte to the host is left out; 0 = none */
    uint64_t flip_bit_every;  /* one bit of every Nth byte to the host is turned over; 0 = none */
    double stall_from_ms;     /* nothing passes to the host from here ... */
    double stall_to_ms;       /* ... to here, then all that was kept */
    double close_at_ms;       /* the cable is pulled; negative = never */
};

struct bridge {
    int master; /* -1: closed */
    int slave;  /* held open, so that a client's leaving is no hang-up */
    char path[64];
    struct bridge_dials dials;
    struct queue to_host;
    struct queue from_host;
    uint64_t passed;     /* bytes the probe sent, for the dials */
    uint64_t bytes_lost; /* since the last reset of the count: the queue was full, or the cable was pulled */
};

extern const struct bridge_dials BRIDGE_NO_FAULTS;

bool bridge_open(struct bridge *bridge, const struct bridge_dials *dials, struct failure *failure);

/* One byte from the probe's transmitter. */
void bridge_put(struct bridge *bridge, uint8_t byte);

/* Moves what can be moved both ways without waiting; now in simulated milliseconds. */
void bridge_move(struct bridge *bridge, double now_ms);

/* One byte for the probe's receiver; false when there is none. */
bool bridge_get(struct bridge *bridge, uint8_t *byte);

/* Waits in real time until the client takes something, at most for the given time. */
void bridge_wait_for_client(struct bridge *bridge, int timeout_ms);

/* Waits until the client has taken what was sent; gives up when it takes nothing for so long. */
void bridge_drain(struct bridge *bridge, int patience_ms);

void bridge_close(struct bridge *bridge);

#endif
