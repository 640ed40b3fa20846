/* The simulated chip on a board: pins, converter, comparator and serial line joined to the model of a set. */
#ifndef SIM_BOARD_H
#define SIM_BOARD_H

#include "bridge.h"
#include "chip.h"
#include "events.h"
#include "fed.h"
#include "noise.h"
#include "setmodel.h"
#include "stream.h"

enum { MAX_CROSSINGS = 8 };

/* Watches one column of the waveform for the level it passes; times from the waveform alone. */
struct crossing {
    enum wave_column column;
    double level; /* positive: passed upwards; negative: passed downwards */
    bool above;
    struct board *board;
};

struct board {
    struct chip chip;

    const struct waveform *wave;
    struct frontend *frontend;
    struct set_model set;
    struct noise noise;
    struct events *events;
    struct bridge *bridge;
    struct stream stream;
    struct wire_receiver from_probe;
    struct fed fed;

    enum supply_state supply;
    uint64_t closed_cycle; /* of the last closing of the switch */
    uint64_t opened_cycle;
    bool pump_level;
    uint64_t pump_edge_cycle; /* of the pump's last edge, 0 = none yet */
    uint64_t pump_from_cycle; /* of the first edge after a pause */
    size_t next_change; /* of the front-end's list */
    struct crossing hard_short;
    size_t crossings;
    struct crossing crossing[MAX_CROSSINGS];

    uint64_t crossed_cycle;              /* of the last crossing asked for */
    uint64_t longest_reaction_cycles;    /* from such a crossing to the switch pin low */
};

bool board_init(struct board *board, const char *elf_path, struct failure *failure);
void board_power_on(struct board *board);

/*
 * One step of the chip, then what comes after it: registers that change without an event, changes that are due,
 * resets by the watchdog. False when the program has stopped for good.
 */
bool board_step(struct board *board);

/* Cycle of the next change of the front-end's list; UINT64_MAX when there is none. */
uint64_t board_next_change(const struct board *board);

/* Lets the bytes of the host go to the chip's receiver at the speed of the line. */
void board_pump_receiver(struct board *board);

#endif
