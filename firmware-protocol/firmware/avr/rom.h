/* Tables that stay in the chip's program memory. */
#ifndef ROM_H
#define ROM_H

#include <avr/pgmspace.h>

#define ROM PROGMEM
#define ROM_READ(to, from, bytes) memcpy_P((to), (from), (bytes))

#endif
