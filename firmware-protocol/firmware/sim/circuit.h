/* The chip in a circuit: its pins drive nodes of a netlist, nodes drive converter, comparator and inputs. */
#ifndef SIM_CIRCUIT_H
#define SIM_CIRCUIT_H

#include "chip.h"
#include "script.h"
#include "spice.h"
#include "wiring.h"

/* So long fine steps are taken after a change of a pin, and from a moment asked for on. */
#define CIRCUIT_FINE_FOR_S 2e-3

enum { CIRCUIT_MAX_WATCHED = 48, CIRCUIT_MAX_FINE = 64 };

/* A node whose course is summed up. */
struct watched {
    char name[WIRING_NAME_BYTES];
    size_t node;
    double highest, highest_at_s, lowest, lowest_at_s, integral, last;
};

struct circuit {
    struct chip chip;
    struct spice spice;
    struct script script;
    struct wiring wiring;
    const char *netlist;
    double for_s;

    /* Of the follower: volts at the last two accepted points. */
    double before_s, now_s;
    double before_volts[SPICE_MAX_NODES];
    size_t converter[WIRING_INPUTS];
    bool converter_joined[WIRING_INPUTS];
    size_t reference, supply, ground, plus, minus;
    size_t pin_node[WIRING_MAX_PINS];
    bool pin_level[WIRING_MAX_PINS];   /* last level of an input */
    uint8_t pin_output[WIRING_MAX_PINS]; /* 0 not an output, 1 low, 2 high: what the netlist is given */

    bool held_in_reset; /* by the brown-out detector */
    bool stopped;       /* the program slept with interrupts off, or crashed */
    double clock_stops_s, hangs_s; /* negative: never */
    bool hung;

    size_t fine_moments;
    double fine_at_s[CIRCUIT_MAX_FINE];
    double fine_until_s, pulsing_until_s, on_since_s;

    size_t watched_count;
    struct watched watched[CIRCUIT_MAX_WATCHED];
    FILE *events; /* NULL: none asked for */
    FILE *trace;  /* NULL: none asked for */
};

/* A node against the ground of the chip, at the last accepted point. */
double circuit_volts(const struct circuit *circuit, size_t node);

/* Puts the program into the chip; after it the EEPROM may be filled. */
bool circuit_prepare(struct circuit *circuit, const char *elf_path, struct failure *failure);

/* Switches the chip on and runs program and circuit to the end. */
bool circuit_run(struct circuit *circuit, struct failure *failure);

#endif
