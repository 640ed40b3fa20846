/* The simulated chip: the program in it, its pins, comparator, fuses, interrupts and resets, put right where the simulator is not. */
#ifndef SIM_CHIP_H
#define SIM_CHIP_H

#include <stdbool.h>
#include <stdint.h>

#include <sim_avr.h>

#include <avr_adc.h>
#include <avr_eeprom.h>
#include <avr_timer.h>
#include <avr_uart.h>

#include "failure.h"

enum { CHIP_HZ = 16000000, CHIP_VCC_MV = 5000, CHIP_AREF_MV = 4096, CHIP_VECTORS = 26, CHIP_CONVERTER_INPUTS = 8 };

enum reset_kind { RESET_POWER_ON, RESET_EXTERNAL, RESET_BROWN_OUT };

struct chip;

/* What is round the chip. Called in simulated time. */
struct chip_surroundings {
    /* The counts that the converter latches for one of its inputs in this cycle; chip->conversion.start_cycle is when it was started. */
    uint16_t (*counts)(struct chip *chip, uint8_t channel, uint64_t cycle);
    /* A register of port B or D was written, or a reset cleared it. */
    void (*ports_changed)(struct chip *chip);
    /* One byte has left the transmitter. */
    void (*byte_sent)(struct chip *chip, uint8_t byte);
    /* The next byte for the receiver; false when there is none. */
    bool (*next_byte)(struct chip *chip, uint8_t *byte);
    /* After every reset, before the program runs: drive all inputs again. */
    void (*after_reset)(struct chip *chip);
};

struct chip {
    avr_t *avr;
    avr_adc_t *adc;
    avr_uart_t *uart;
    avr_eeprom_t *eeprom;
    const struct chip_surroundings *surroundings;
    uint16_t data_end; /* first address above the program's variables */
    uint8_t fuses[3];  /* low, high, extended, as the program reads them */
    uint8_t hidden[4]; /* program bytes behind which a fuse stands for a moment */
    avr_io_t reset_watch;
    bool was_reset; /* the chip has been reset since the last look: pins and timers have to be set again */

    struct {
        uint64_t start_cycle;
        uint8_t channel;
        uint32_t clock_cycles;
        uint16_t counts;
        bool sampled;
        bool first;
    } conversion;

    bool waking; /* the chip has slept since the last handler began */
    uint64_t asleep_cycles;
    uint64_t entered_cycle[CHIP_VECTORS]; /* when the handler last began, before the cycles of its entry */
    uint64_t interrupts;

    bool receiver_full;
    bool pump_running;
    uint64_t receive_overruns; /* bytes which the chip's two-byte buffer would have lost */
    uint64_t resets;
};

bool chip_init(struct chip *chip, const char *elf_path, const struct chip_surroundings *surroundings, struct failure *failure);
void chip_power_on(struct chip *chip);
void chip_reset(struct chip *chip, enum reset_kind kind);

/* One step of the program and what follows from it, resets by the watchdog too. False when it has stopped for good. */
bool chip_step(struct chip *chip);

/* Whether the program drives a pin of port B or D high. A pin that is not an output counts as low. */
bool chip_pin_high(const struct chip *chip, char port, uint8_t bit);

/* Whether the program has made a pin of port B or D an output. */
bool chip_pin_driven(const struct chip *chip, char port, uint8_t bit);

/* The level of an input pin. */
void chip_drive(struct chip *chip, char port, uint8_t bit, bool level);

/* Which pins of a port are driven from outside, and with what: their level wins over internal pull-ups. */
void chip_declare_driven(struct chip *chip, char port, uint8_t mask, uint8_t levels);

/* Levels of the comparator's inputs. With ACIC its rising output is timer 1's capture. */
void chip_compare(struct chip *chip, uint32_t plus_mv, uint32_t minus_mv);

/* A sleeping chip steps no further than this cycle. Asked again, the older wish is off. */
void chip_wake_at(struct chip *chip, uint64_t cycle);

/* The main program stops doing anything, interrupts go on: a hang, for the watchdog. */
void chip_hang(struct chip *chip);

double chip_seconds(uint64_t cycle);

#endif
