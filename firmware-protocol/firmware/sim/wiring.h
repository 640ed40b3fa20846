/* Which node of a circuit each pin of the chip is joined to. */
#ifndef SIM_WIRING_H
#define SIM_WIRING_H

#include <stddef.h>
#include <stdint.h>

#include "failure.h"

enum { WIRING_MAX_PINS = 20, WIRING_INPUTS = 8, WIRING_NAME_BYTES = 24 };

struct wired_pin {
    char port; /* B or D */
    uint8_t bit;
    bool closes; /* while it is high the circuit is followed in shorter steps */
    bool pulses; /* it toggles all the time: shorter steps while it does, but no fine ones and no events */
    char node[WIRING_NAME_BYTES];
};

struct wiring {
    size_t pins;
    struct wired_pin pin[WIRING_MAX_PINS];
    char converter[WIRING_INPUTS][WIRING_NAME_BYTES]; /* empty: not joined, reads 0 */
    char reference[WIRING_NAME_BYTES];
    char supply[WIRING_NAME_BYTES];
    char ground[WIRING_NAME_BYTES];
    char comparator_plus[WIRING_NAME_BYTES]; /* empty: not joined */
    char comparator_minus[WIRING_NAME_BYTES];
};

/*
 * Reads a file of lines "PD2 SWP": PB0..PB5, PD2..PD7, ADC0..ADC7, AIN0, AIN1, AREF, VCC, GND, then a node.
 * "PB0 RUN closes" names the pin that closes the switch, "PD2 PUMPA pulses" one that keeps toggling meanwhile. Lines that begin with '#' are passed over. AREF, VCC and GND have to be there.
 */
bool wiring_read(struct wiring *wiring, const char *path, struct failure *failure);

#endif
