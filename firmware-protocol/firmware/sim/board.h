/* The simulated chip on its board: pins, converter, comparator, EEPROM and serial line joined to the set model. */
#ifndef SIM_BOARD_H
#define SIM_BOARD_H

#include <sim_avr.h>

#include <avr_adc.h>
#include <avr_eeprom.h>
#include <avr_timer.h>
#include <avr_uart.h>

#include "bridge.h"
#include "events.h"
#include "fed.h"
#include "noise.h"
#include "setmodel.h"
#include "stream.h"

enum { BOARD_HZ = 16000000, BOARD_VCC_MV = 5000, BOARD_AREF_MV = 4096, MAX_CROSSINGS = 8, VECTORS = 26 };

enum reset_kind { RESET_POWER_ON, RESET_EXTERNAL, RESET_BROWN_OUT };

/* Watches one column of the waveform for the level it passes; times from the waveform alone. */
struct crossing {
    enum wave_column column;
    double level; /* positive: passed upwards; negative: passed downwards */
    bool above;
    struct board *board;
};

struct board {
    avr_t *avr;
    avr_adc_t *adc;
    avr_uart_t *uart;
    avr_eeprom_t *eeprom;
    avr_timer_t *timer1;
    uint16_t data_end; /* first address above the program's variables */
    avr_io_t reset_watch;
    bool was_reset; /* the chip has been reset since the last look: pins and timers have to be set again */

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
    size_t next_change; /* of the front-end's list */
    struct crossing hard_short;
    bool comparator_high;
    size_t crossings;
    struct crossing crossing[MAX_CROSSINGS];

    struct {
        uint64_t start_cycle;
        uint8_t channel;
        uint32_t clock_cycles;
        uint16_t counts;
        bool sampled;
        bool first;
    } conversion;

    bool waking;                     /* the chip has slept since the last handler began */
    uint64_t asleep_cycles;
    uint64_t entered_cycle[VECTORS]; /* when the handler last began, before the cycles of its entry */
    uint64_t interrupts;

    bool receiver_full;
    bool pump_running;
    uint64_t receive_overruns; /* bytes which the chip's two-byte buffer would have lost */
    uint64_t resets;
    uint64_t crossed_cycle;              /* of the last crossing asked for */
    uint64_t longest_reaction_cycles;    /* from such a crossing to the switch pin low */
};

bool board_init(struct board *board, const char *elf_path, struct failure *failure);
void board_power_on(struct board *board);
void board_reset(struct board *board, enum reset_kind kind);

/*
 * One step of the chip, then what comes after it: registers that change without an event, changes that are due,
 * resets by the watchdog. False when the program has stopped for good.
 */
bool board_step(struct board *board);

/* Cycle of the next change of the front-end's list; UINT64_MAX when there is none. */
uint64_t board_next_change(const struct board *board);

/* Lets the bytes of the host go to the chip's receiver at the speed of the line. */
void board_pump_receiver(struct board *board);

/* The main program stops doing anything, interrupts go on: a hang, for the watchdog. */
void board_hang(struct board *board);

double board_seconds(uint64_t cycle);

#endif
