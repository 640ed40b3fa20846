#include "crc16.h"

uint16_t crc16_of(const uint8_t *bytes, uint16_t length)
{
    uint16_t crc = CRC16_START;
    for (uint16_t at = 0; at < length; at++)
        crc = crc16_add(crc, bytes[at]);
    return crc;
}
