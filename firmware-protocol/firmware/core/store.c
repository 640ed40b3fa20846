#include "store.h"

#include "crc16.h"
#include "hal.h"

enum { MOST_TRIES = 4 };

void store_write(struct store_job *job, uint16_t address, const uint8_t *bytes, uint8_t length)
{
    job->bytes = bytes;
    job->address = address;
    job->length = length;
    job->at = 0;
    job->tries = 0;
}

bool store_busy(const struct store_job *job)
{
    return job->at < job->length;
}

void store_run(struct store_job *job)
{
    if (!store_busy(job) || !hal_eeprom_ready())
        return;
    uint16_t address = (uint16_t)(job->address + job->at);
    uint8_t byte = job->bytes[job->at];
    if (hal_eeprom_read(address) == byte || job->tries == MOST_TRIES) {
        job->at++;
        job->tries = 0;
    } else {
        job->tries++;
        hal_eeprom_write(address, byte);
    }
}

enum store_record store_check(uint16_t address, uint8_t length)
{
    uint16_t crc = CRC16_START;
    bool blank = true;
    for (uint8_t at = 0; at < length; at++)
        blank = blank && hal_eeprom_read((uint16_t)(address + at)) == 0xFF;
    if (blank)
        return STORE_BLANK;
    for (uint8_t at = 0; at < length - STORE_CRC_BYTES; at++)
        crc = crc16_add(crc, hal_eeprom_read((uint16_t)(address + at)));
    uint16_t crc_at = (uint16_t)(address + length - STORE_CRC_BYTES);
    uint16_t stored = (uint16_t)(hal_eeprom_read(crc_at) | hal_eeprom_read((uint16_t)(crc_at + 1)) << 8);
    return crc == stored ? STORE_VALID : STORE_DAMAGED;
}

uint32_t store_count_boot(void)
{
    uint32_t boot = 0;
    for (uint8_t at = 4; at > 0; at--)
        boot = boot << 8 | hal_eeprom_read((uint16_t)(STORE_BOOT_AT + at - 1));
    boot++; /* a blank one starts at 0, which is passed over */
    if (boot == 0)
        boot = 1;
    for (uint8_t at = 0; at < 4; at++) {
        uint8_t byte = (uint8_t)(boot >> (8 * at));
        while (!hal_eeprom_ready())
            continue;
        if (hal_eeprom_read((uint16_t)(STORE_BOOT_AT + at)) != byte)
            hal_eeprom_write((uint16_t)(STORE_BOOT_AT + at), byte);
    }
    return boot;
}
