/* What only main needs of the chip. */
#ifndef AVR_HAL_AVR_H
#define AVR_HAL_AVR_H

/* First of all: switch, look path, beeper and lamp off. */
void hal_outputs_off(void);
/* Reset cause saved, watchdog on, RAM tested, converter and line set up; interrupts still off. */
void hal_start(void);
/* Interrupts on, conversions running. */
void hal_run(void);
/* Sleeps until the next interrupt when there is nothing to do. */
void hal_sleep_unless_busy(void);

#endif
