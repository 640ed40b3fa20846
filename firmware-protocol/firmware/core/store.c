#include "store.h"

#include "bytes.h"
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
    uint8_t all = 0xFF;
    bool wrong = false;
    for (; length > 0; length--) {
        uint8_t byte = hal_eeprom_read(address++);
        all &= byte;
        if (length > STORE_CRC_BYTES) {
            crc = crc16_add(crc, byte);
        } else { /* the CRC, low byte first */
            wrong = wrong || byte != (uint8_t)crc;
            crc >>= 8;
        }
    }
    if (all == 0xFF)
        return STORE_BLANK;
    return wrong ? STORE_DAMAGED : STORE_VALID;
}

void store_read(uint16_t address, uint8_t *bytes, uint8_t length)
{
    for (; length > 0; length--)
        *bytes++ = hal_eeprom_read(address++);
}

uint32_t store_count_boot(void)
{
    uint8_t kept[4];
    struct store_job job;
    store_read(STORE_BOOT_AT, kept, sizeof kept);
    uint32_t boot = bytes_u32(kept) + 1; /* a blank one gives 0, which is passed over */
    if (boot == 0)
        boot = 1;
    bytes_put_u32(kept, boot);
    store_write(&job, STORE_BOOT_AT, kept, sizeof kept);
    while (store_busy(&job))
        store_run(&job);
    return boot;
}
