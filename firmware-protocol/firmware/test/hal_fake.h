/* A strict stand-in for the hardware: time, inputs and conversions are turned by the test. */
#ifndef TEST_HAL_FAKE_H
#define TEST_HAL_FAKE_H

#include <stdbool.h>
#include <stddef.h>
#include <stdint.h>

#include "core/probe.h"

struct fake {
    struct probe *probe;
    /* dials */
    uint16_t counts[CHANNELS];      /* with nothing closed: I, J, V stand at 5 */
    uint16_t look_counts[CHANNELS]; /* with the look path closed */
    uint16_t on_counts[CHANNELS];   /* with the switch closed */
    uint8_t inputs;
    uint16_t self_test;
    uint8_t reset_cause;
    bool converter_stands;
    bool eeprom_worn; /* writes do not hold */
    bool line_stands; /* nothing leaves */
    bool limiting;     /* while the switch is on */
    bool gate_starved; /* the gate has too few volts */
    bool across_blind; /* the supply across the open switch is not seen */
    bool test_lights; /* the limiter does not hold: gate volts close the switch whatever its pin says */
    uint16_t read_back_counts[CHANNELS]; /* 0 = the clip is joined, nothing moves */
    uint8_t fuses[3];
    /* seen */
    bool pump;
    bool moved;
    unsigned read_backs;
    enum hal_path path;
    enum hal_path path_wanted;
    uint32_t path_plans;
    unsigned closings;
    unsigned looks;
    bool lamp;
    bool beeper;
    unsigned watchdog_fed;
    unsigned eeprom_writes;
    enum hal_speed speed;
    /* workings */
    uint32_t plans;
    uint8_t slot;
    uint16_t cycles;
    uint8_t eeprom[HAL_EEPROM_BYTES];
    uint8_t to_probe[4096];
    size_t to_probe_head, to_probe_tail;
    uint8_t from_probe[1 << 18];
    size_t from_probe_length;
};

extern struct fake fake;

/* Blank EEPROM, clip on, supply present, everything at rest. */
void fake_reset_all(struct probe *probe);
/* The chip is reset: memory is gone, EEPROM and dials stay. */
void fake_reset_chip(void);
/* So many conversions, the main loop running after each; bytes leave the line meanwhile. */
void fake_run(uint32_t conversions);
void fake_run_ms(uint32_t ms);
/* One conversion without the main loop. */
void fake_conversion(void);
void fake_receive(const uint8_t *bytes, size_t length);
/* Empties the transmit ring into from_probe. */
void fake_drain_line(void);

#endif
