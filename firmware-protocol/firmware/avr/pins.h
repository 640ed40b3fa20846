/* The pins by role. All inputs have their resistors on the board. */
#ifndef AVR_PINS_H
#define AVR_PINS_H

/* Port B, outputs */
#define PIN_RUN 0          /* high = the switch may be on; low or floating = off */
#define PIN_LOOK_PATH 2    /* high = closed */
#define PIN_BEEPER 3
#define PIN_TRIPPED_LAMP 4
#define PIN_READ_BACK 5    /* low; floating = all clips are moved by a step. Never high */
/* Port B, inputs */
#define PIN_SUPPLY_REVERSED 1 /* low: while PIN_RUN is low the supply is reversed, while it is high the gate has its volts */

/* Port D: 0 and 1 are the serial line. Outputs, in opposite phase while the gate is to have volts, else both low */
#define PIN_PUMP_A 2
#define PIN_PUMP_B 3
/* Port D, inputs */
#define PIN_BUTTON 4 /* low = pressed */
#define PIN_PEDAL 5  /* low = pressed */
#define PIN_CHASSIS_CLIP 6 /* low = both jaws on the same metal */
#define PIN_ACROSS 7 /* low = more than 3.4 V across the module: while on the limiter holds, while off a supply is there */

/* Converter inputs 0..7 are the channels I J V R1 R2 R3 H M in this order. */
#define MUX_INTERNAL_1V1 14

#endif
