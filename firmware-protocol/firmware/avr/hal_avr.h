/* What the files of avr/ share. */
#ifndef AVR_HAL_AVR_H
#define AVR_HAL_AVR_H

#include <avr/io.h>
#include <stdint.h>

#include "avr/timing.h"

#define BIT(n) ((uint8_t)(1u << (n)))
#define ADC_RUN (BIT(ADEN) | BIT(ADIE) | ADC_PRESCALER_BITS)

extern struct probe probe;

/* Bits of GPIOR0, set and cleared by single instructions. */
enum {
    LENT_BIT,   /* the converter does something else than the plan */
    CLOSE_LOOK_BIT,
    CLOSE_SWITCH_BIT /* at the next boundary */
};

/* First of all: switch, look path, beeper and lamp off. */
void hal_outputs_off(void);
/* Reset cause saved, watchdog on, RAM tested, converter and line set up; interrupts still off. */
void hal_start(void);
/* Part of it: the clock stands before plan 0. */
void ticks_start(void);
/* Interrupts on, conversions running. */
void hal_run(void);
/* Sleeps until there is something to do. */
void hal_sleep_unless_busy(void);

#endif
