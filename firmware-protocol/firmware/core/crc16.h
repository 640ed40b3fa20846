/* CRC-16, polynomial 1021, not reflected, no final xor. */
#ifndef CORE_CRC16_H
#define CORE_CRC16_H

#include <stdint.h>

#define CRC16_START 0xFFFFu

/*
 * Without a table: the eight shifts through x^12 + x^5 + 1 taken together, crc << 8 ^ x << 12 ^ x << 5 ^ x, written in
 * bytes because the chip shifts those best.
 */
static inline uint16_t crc16_add(uint16_t crc, uint8_t byte)
{
    uint8_t x = (uint8_t)((uint8_t)(crc >> 8) ^ byte);
    x ^= (uint8_t)(x >> 4);
    uint8_t high = (uint8_t)((uint8_t)crc ^ (uint8_t)(x << 4) ^ (uint8_t)(x >> 3));
    uint8_t low = (uint8_t)((uint8_t)(x << 5) ^ x);
    return (uint16_t)((uint16_t)high << 8 | low);
}

uint16_t crc16_of(const uint8_t *bytes, uint16_t length);

#endif
