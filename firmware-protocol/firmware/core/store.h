/* Writes to the EEPROM byte by byte from the main loop, so that nothing waits for it. */
#ifndef CORE_STORE_H
#define CORE_STORE_H

#include <stdbool.h>
#include <stdint.h>

enum {
    STORE_BOOT_AT = 0,         /* u32 */
    STORE_LATCH_AT = 16,       /* latch.h */
    STORE_CALIBRATION_AT = 64, /* calibration.h */
    STORE_CRC_BYTES = 2
};

struct store_job {
    const uint8_t *bytes;
    uint16_t address;
    uint8_t length;
    uint8_t at;
    uint8_t tries;
};

/* Starts writing, or starts again when the bytes have changed meanwhile. The bytes must stay until it is done. */
void store_write(struct store_job *job, uint16_t address, const uint8_t *bytes, uint8_t length);
bool store_busy(const struct store_job *job);
/*
 * At most one byte a call; bytes that already have the value are skipped. A cell that does not hold is written four
 * times, then passed over: whoever needs to know checks the record afterwards.
 */
void store_run(struct store_job *job);

enum store_record { STORE_BLANK, STORE_VALID, STORE_DAMAGED };

/* A record ends with its CRC-16; `length` counts it. Blank: all FF. */
enum store_record store_check(uint16_t address, uint8_t length);

void store_read(uint16_t address, uint8_t *bytes, uint8_t length);

/* Adds one to the count of starts and returns it; for the start only, waits for the EEPROM. */
uint32_t store_count_boot(void);

#endif
