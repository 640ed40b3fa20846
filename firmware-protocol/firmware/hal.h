/*
 * What the core asks of the hardware. avr/ answers on the chip, test/hal_fake.c on the computer that runs the tests.
 * "Any context" = main loop or interrupt handler; everything else is for the main loop alone.
 */
#ifndef HAL_H
#define HAL_H

#include <stdbool.h>
#include <stdint.h>

#include "core/plan.h"

enum hal_path { HAL_PATH_NONE, HAL_PATH_LOOK, HAL_PATH_SWITCH };

/* ---- switch and look path ---- */

/* Both pins low at once, the pump stands, and nothing is closed later. Any context. */
void hal_paths_open(void);
/* At the next slot 0 on a 10 ms boundary this path closes and the other opens. */
void hal_path_at_boundary(enum hal_path path);
/* The path that is closed now. Any context. */
enum hal_path hal_path_now(void);
/* The plan in whose slot 0 the path closed last, also when it was opened again before that slot was over. */
uint32_t hal_path_since_plan(void);

/*
 * The switch needs two things at once: gate volts, which the tick keeps up by pulses while this is on, and its pin.
 * Opening ends both. Any context.
 */
void hal_pump(bool on);
/* The limiter holds the current now. Any context. */
bool hal_limiting_now(void);
/* The gate has all its volts (over 5.5 V); holds while the switch is closed. Any context. */
bool hal_gate_seen(void);

/* ---- inputs and outputs ---- */

/* Input bits as in wire-format.md section 5, except those the core knows itself. */
uint8_t hal_inputs(void);
/* Moves all rails, head and meter by a step, for the read-back of open clips. */
void hal_read_back(bool on);
void hal_tripped_lamp(bool on);
void hal_beeper(bool on);

/* ---- time ---- */

/* Any context. */
struct instant hal_now(void);
/* Plan now, modulo 65536; any context. */
uint16_t hal_plans(void);
/* Low byte of the plan now, and its slot; any context. */
uint8_t hal_plan_low(void);
uint8_t hal_slot(void);
/* Plan of the conversion that has just ended; for its interrupt. */
uint32_t hal_conversion_plans(void);
/* Keep interrupts out of a few instructions of the main loop: between the two stands no call and no loop. */
uint8_t hal_interrupts_hold(void);
void hal_interrupts_release(uint8_t held);

/* ---- serial line ---- */

enum hal_speed { HAL_SPEED_500K, HAL_SPEED_250K };

/* Takes a received byte; false = none there. */
bool hal_uart_take(uint8_t *byte);
/* There is something to send in the ring of wire_out. */
void hal_uart_kick(void);
/* The last byte has left the chip. */
bool hal_uart_idle(void);
void hal_uart_speed(enum hal_speed speed);
/* How often bytes were lost on reception since the start. */
uint16_t hal_uart_overruns(void);

/* ---- EEPROM ---- */

enum { HAL_EEPROM_BYTES = 1024 };

bool hal_eeprom_ready(void);
uint8_t hal_eeprom_read(uint16_t address);
/* Starts writing one byte; only when ready. */
void hal_eeprom_write(uint16_t address, uint8_t byte);

/* ---- the chip itself ---- */

/* Tests that need the hardware; bits of enum self_test. Conversions stop meanwhile, the counting of slots continues. */
uint16_t hal_self_test(void);
/* Bit 0 power-on, 1 external, 2 brown-out, 3 watchdog. */
uint8_t hal_reset_cause(void);
/* As read from the chip: low, high, extended. */
void hal_fuses(uint8_t fuses[3]);
/* Bytes never touched between data and stack. */
uint16_t hal_stack_free(void);
/* Conversion starts that found the converter busy. */
uint16_t hal_late_starts(void);
/* Share of the time since the last call that was not slept away, in percent. */
uint8_t hal_busy_percent(void);
/* Only probe_run calls it, after all its tasks have run. */
void hal_watchdog_feed(void);

#endif
