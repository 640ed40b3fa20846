/* Little-endian integers in byte arrays. The caller has checked the length. */
#ifndef CORE_BYTES_H
#define CORE_BYTES_H

#include <stdint.h>
#include <string.h>

#if __BYTE_ORDER__ != __ORDER_LITTLE_ENDIAN__
#error "The chip and the computers that test are little-endian, as the wire is; elsewhere the bytes must be turned."
#endif

static inline uint16_t bytes_u16(const uint8_t *at)
{
    uint16_t value;
    memcpy(&value, at, sizeof value);
    return value;
}

static inline uint32_t bytes_u32(const uint8_t *at)
{
    uint32_t value;
    memcpy(&value, at, sizeof value);
    return value;
}

static inline void bytes_put_u16(uint8_t *at, uint16_t value)
{
    memcpy(at, &value, sizeof value);
}

static inline void bytes_put_u32(uint8_t *at, uint32_t value)
{
    memcpy(at, &value, sizeof value);
}

#endif
