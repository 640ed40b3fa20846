/* CRC-16 of the program, without these two bytes; put in by the second link (see Makefile). */
#ifndef AVR_PROGRAM_CRC_H
#define AVR_PROGRAM_CRC_H

#include <stdint.h>

struct program_crc {
    char mark[8];
    uint16_t crc;
};

extern const struct program_crc program_crc;

#endif
