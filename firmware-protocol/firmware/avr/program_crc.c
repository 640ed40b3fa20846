#include "avr/program_crc.h"

#include <avr/pgmspace.h>

#ifndef PROGRAM_CRC
#define PROGRAM_CRC 0
#endif

const struct program_crc program_crc PROGMEM = {{'p', 'r', 'o', 'g', 'C', 'R', 'C', ':'}, PROGRAM_CRC};
