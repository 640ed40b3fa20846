#include "latch.h"

#include "compiler.h"

#include "bytes.h"
#include "crc16.h"
#include "hal.h"

enum { CRC_AT = LATCH_BYTES - STORE_CRC_BYTES };

void latch_load(struct latch *latch)
{
    CORE_NEAR(latch);
    enum store_record record = store_check(STORE_LATCH_AT, LATCH_BYTES);
    latch->damaged = record == STORE_DAMAGED;
    if (record == STORE_VALID)
        store_read(STORE_LATCH_AT, latch->record, LATCH_BYTES);
    if (!latch->damaged)
        return;
    /* What it was is lost, that there was one is not. */
    store_read(STORE_LATCH_AT, latch->record, LATCH_CAUSE);
    if ((uint16_t)(latch_last_number(latch) + 1u) <= 1) /* 0 or all ones */
        bytes_put_u16(latch->record + LATCH_NUMBER, 1);
    latch->record[LATCH_CAUSE] = TRIP_SELF_TEST;
    latch->record[LATCH_CHANNEL] = 255;
    latch->record[LATCH_STATE] = 1;
}

bool latch_is_set(const struct latch *latch)
{
    return latch->record[LATCH_STATE] != 0;
}

uint16_t latch_last_number(const struct latch *latch)
{
    return bytes_u16(latch->record + LATCH_NUMBER);
}

uint16_t latch_number(const struct latch *latch)
{
    return latch_is_set(latch) ? latch_last_number(latch) : 0;
}

uint8_t latch_cause(const struct latch *latch)
{
    return latch_is_set(latch) ? latch->record[LATCH_CAUSE] : (uint8_t)TRIP_NONE;
}

uint32_t latch_tick(const struct latch *latch)
{
    return bytes_u32(latch->record + LATCH_TICK);
}

uint16_t latch_next_number(const struct latch *latch)
{
    uint16_t last = latch_last_number(latch);
    return last == UINT16_MAX ? 1 : (uint16_t)(last + 1);
}

static void keep(struct latch *latch)
{
    bytes_put_u16(latch->record + CRC_AT, crc16_of(latch->record, CRC_AT));
    store_write(&latch->job, STORE_LATCH_AT, latch->record, LATCH_BYTES);
    latch->damaged = false;
    latch->to_verify = true;
}

bool latch_run(struct latch *latch)
{
    if (store_busy(&latch->job)) {
        store_run(&latch->job);
        return true;
    }
    if (latch->to_verify && hal_eeprom_ready()) {
        latch->to_verify = false;
        latch->damaged = store_check(STORE_LATCH_AT, LATCH_BYTES) != STORE_VALID;
    }
    return latch->to_verify;
}

void latch_set(struct latch *latch)
{
    latch->record[LATCH_STATE] = 1;
    keep(latch);
}

void latch_clear(struct latch *latch)
{
    latch->record[LATCH_STATE] = 0;
    keep(latch);
}
