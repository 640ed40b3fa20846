/* The pins by role. Inputs with "low" have the chip's pull-up on. */
#ifndef AVR_PINS_H
#define AVR_PINS_H

/* Port B, inputs */
#define PIN_SUPPLY_PRESENT 0  /* high = present */
#define PIN_SUPPLY_REVERSED 1 /* high = reversed */
#define PIN_CHASSIS_CLIP 2    /* low = clip on */
#define PIN_ISOLATED_LINK 5   /* low = isolated link fitted */
/* Port B, outputs */
#define PIN_BEEPER 3
#define PIN_TRIPPED_LAMP 4

/* Port D: 0 and 1 are the serial line, 6 (supply current) and 7 (10 A level) the comparator. */
#define PIN_SWITCH 2    /* out, high = closed; the board has a pull-down */
#define PIN_LOOK_PATH 3 /* out, high = closed */
#define PIN_BUTTON 4    /* low = pressed */
#define PIN_PEDAL 5     /* low = pressed */

/* Converter inputs 0..7 are the channels I J V R1 R2 R3 H M in this order. */
#define MUX_INTERNAL_1V1 14

#endif
