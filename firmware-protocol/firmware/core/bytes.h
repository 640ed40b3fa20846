/* Little-endian integers in byte arrays. The caller has checked the length. */
#ifndef CORE_BYTES_H
#define CORE_BYTES_H

#include <stdint.h>

static inline uint16_t bytes_u16(const uint8_t *at)
{
    return (uint16_t)(at[0] | (uint16_t)at[1] << 8);
}

static inline uint32_t bytes_u32(const uint8_t *at)
{
    return (uint32_t)bytes_u16(at) | (uint32_t)bytes_u16(at + 2) << 16;
}

static inline void bytes_put_u16(uint8_t *at, uint16_t value)
{
    at[0] = (uint8_t)value;
    at[1] = (uint8_t)(value >> 8);
}

static inline void bytes_put_u32(uint8_t *at, uint32_t value)
{
    bytes_put_u16(at, (uint16_t)value);
    bytes_put_u16(at + 2, (uint16_t)(value >> 16));
}

#endif
