/* CRC-16, polynomial 1021, not reflected, no final xor. */
#ifndef CORE_CRC16_H
#define CORE_CRC16_H

#include <stdint.h>

#define CRC16_START 0xFFFFu

/* Without a table: the four steps are the eight shifts of the polynomial x^12 + x^5 + 1 taken together. */
static inline uint16_t crc16_add(uint16_t crc, uint8_t byte)
{
    uint8_t x = (uint8_t)((uint8_t)(crc >> 8) ^ byte);
    x ^= (uint8_t)(x >> 4);
    return (uint16_t)((uint16_t)(crc << 8) ^ (uint16_t)((uint16_t)x << 12) ^ (uint16_t)((uint16_t)x << 5) ^ x);
}

uint16_t crc16_of(const uint8_t *bytes, uint16_t length);

#endif
