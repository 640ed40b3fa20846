/* What the EEPROM keeps: starts, the last trip, the calibration. */
#include <string.h>

#include "check.h"
#include "core/bytes.h"
#include "core/crc16.h"
#include "hal_fake.h"
#include "talk.h"

static struct probe probe;

static struct limits running_100(void)
{
    struct limits limits = talk_no_limits();
    limits.running_i_counts = 100;
    return limits;
}

static void trip_once(void)
{
    struct limits limits = running_100();
    talk_switch_on(&limits);
    fake.on_counts[CHANNEL_I] = 300;
    fake_run_ms(2);
    CHECK_IS(probe.state, STATE_TRIPPED);
    CHECK_IS(fake.path, HAL_PATH_NONE);
    fake.on_counts[CHANNEL_I] = 0;
}

static void starts_are_counted(void)
{
    talk_fresh(&probe);
    CHECK_IS(probe.boot_id, 1);
    fake_reset_chip();
    CHECK_IS(probe.boot_id, 2);
    memset(fake.eeprom, 0xFF, 4);
    fake.eeprom[0] = 0xFE;
    fake_reset_chip();
    CHECK_IS(probe.boot_id, 0xFFFFFFFF);
    fake_reset_chip();
    CHECK_IS(probe.boot_id, 1); /* 0 is passed over */
}

static void latch_survives_a_reset(void)
{
    talk_fresh(&probe);
    fake_run_ms(5);
    trip_once();
    talk_run_ms(200); /* the record is on its way, a byte each round */
    CHECK(!store_busy(&probe.latch.job));
    uint8_t before[LATCH_BYTES];
    memcpy(before, probe.latch.record, LATCH_BYTES);
    fake_reset_chip();
    fake_run_ms(5);
    CHECK_IS(probe.state, STATE_TRIPPED);
    CHECK(fake.lamp);
    CHECK_IS(latch_number(&probe.latch), 1);
    CHECK_BYTES(probe.latch.record, LATCH_BYTES, before, LATCH_BYTES);
    CHECK_IS(talk_command(HOST_SWITCH_ON, talk_no_look, sizeof talk_no_look), REFUSAL_TRIP_LATCHED);
    CHECK_IS(talk_detail(), 1);
    const uint8_t wrong[2] = {2, 0};
    const uint8_t right[2] = {1, 0};
    CHECK_IS(talk_command(HOST_CLEAR_TRIP, wrong, 2), REFUSAL_WRONG_NUMBER);
    CHECK_IS(probe.state, STATE_TRIPPED);
    CHECK_IS(talk_command(HOST_CLEAR_TRIP, right, 2), 0);
    CHECK_IS(probe.state, STATE_OFF);
    CHECK(!fake.lamp);
    talk_run_ms(200);
    fake_reset_chip();
    fake_run_ms(5);
    CHECK_IS(probe.state, STATE_OFF);
    trip_once(); /* numbers go on over resets */
    CHECK_IS(latch_number(&probe.latch), 2);
}

/* A reset at any byte of the writing: latched, or the trip was not begun to be written. */
static void record_cut_off_by_a_reset_reads_as_latched(void)
{
    for (unsigned writes = 0; writes <= 40; writes++) {
        talk_fresh(&probe);
        fake_run_ms(5);
        struct limits limits = running_100();
        talk_switch_on(&limits);
        fake.on_counts[CHANNEL_I] = 300;
        unsigned from = fake.eeprom_writes;
        for (int i = 0; i < 3000 && fake.eeprom_writes - from < writes; i++)
            fake_run(1);
        CHECK(probe.state == STATE_TRIPPED || writes == 0);
        unsigned written = fake.eeprom_writes - from;
        fake.on_counts[CHANNEL_I] = 0;
        fake_reset_chip();
        fake_run_ms(5);
        CHECK_IS(probe.state, written == 0 ? STATE_OFF : STATE_TRIPPED);
        CHECK_IS(fake.path, HAL_PATH_NONE);
        if (!probe.latch.damaged)
            continue;
        CHECK(probe_self_test_bits(&probe) & SELF_TEST_LATCH);
        uint8_t restore[2 + LOOK_PARAMETER_BYTES] = {0};
        bytes_put_u16(restore, latch_number(&probe.latch));
        memcpy(restore + 2, talk_no_look, sizeof talk_no_look);
        uint8_t payload[48];
        talk_limits(&limits, payload);
        CHECK_IS(talk_command(HOST_LIMITS, payload, 48), 0);
        CHECK_IS(talk_command(HOST_RESTORE, restore, sizeof restore), REFUSAL_SELF_TEST);
        CHECK_IS(talk_command(HOST_CLEAR_TRIP, restore, 2), 0);
        talk_run_ms(200);
        CHECK_IS(talk_command(HOST_SWITCH_ON, talk_no_look, sizeof talk_no_look), 0);
    }
}

static void worn_eeprom_is_found_after_a_trip(void)
{
    talk_fresh(&probe);
    fake_run_ms(5);
    trip_once();
    fake.eeprom_worn = true;
    latch_clear(&probe.latch);
    talk_run_ms(500);
    CHECK(!store_busy(&probe.latch.job));
    CHECK(probe_self_test_bits(&probe) & SELF_TEST_LATCH);
}

static void make_calibration(uint8_t payload[CALIBRATION_BYTES])
{
    for (unsigned i = 0; i < CALIBRATION_BYTES; i++)
        payload[i] = (uint8_t)(i * 7);
    bytes_put_u32(payload + SCALE_AT + 8, (uint32_t)-4000); /* J: zero -4000 uA, full 396 000: 10.24 counts at 0 */
    bytes_put_u32(payload + SCALE_AT + 12, 396000);
    bytes_put_u32(payload + SCALE_AT + 16, 60000000); /* V: falling, 0 V at 1023.5, held */
    bytes_put_u32(payload + SCALE_AT + 20, (uint32_t)-30000);
}

static void calibration_is_written_kept_and_checked(void)
{
    struct heard heard;
    uint8_t payload[CALIBRATION_BYTES];
    make_calibration(payload);
    talk_fresh(&probe);
    fake_run_ms(5);
    CHECK_IS(probe.calibration.state, STORE_BLANK);
    CHECK_IS(calibration_rest_counts(&probe.calibration, CHANNEL_J), 20);
    CHECK_IS(calibration_rest_counts(&probe.calibration, CHANNEL_R1), 512);
    talk_forget();
    talk_send(HOST_CALIBRATION_WRITE, payload, sizeof payload);
    fake_run_ms(10);
    CHECK(!talk_hear_type(MESSAGE_ACCEPTED, &heard)); /* answered when it is in the EEPROM */
    talk_run_ms(500);
    CHECK(talk_hear_type(MESSAGE_ACCEPTED, &heard));
    CHECK(talk_hear_type(MESSAGE_CALIBRATION, &heard));
    CHECK_BYTES(heard.payload, heard.payload_bytes, payload, sizeof payload);
    CHECK_BYTES(fake.eeprom + STORE_CALIBRATION_AT, sizeof payload, payload, sizeof payload);
    CHECK_IS(calibration_rest_counts(&probe.calibration, CHANNEL_J), 10);
    CHECK_IS(calibration_rest_counts(&probe.calibration, CHANNEL_V), 1023);
    fake_reset_chip();
    CHECK_IS(probe.calibration.state, STORE_VALID);
    fake.eeprom[STORE_CALIBRATION_AT + 50] ^= 1;
    fake_reset_chip();
    fake_run_ms(5);
    CHECK_IS(probe.calibration.state, STORE_DAMAGED);
    CHECK(probe_self_test_bits(&probe) & SELF_TEST_CALIBRATION);
    struct limits limits = talk_no_limits();
    uint8_t wire[48];
    talk_limits(&limits, wire);
    CHECK_IS(talk_command(HOST_LIMITS, wire, 48), 0);
    CHECK_IS(talk_command(HOST_SWITCH_ON, talk_no_look, sizeof talk_no_look), REFUSAL_CALIBRATION_DAMAGED);
}

static void calibration_that_does_not_hold_is_refused(void)
{
    struct heard heard;
    uint8_t payload[CALIBRATION_BYTES];
    make_calibration(payload);
    talk_fresh(&probe);
    fake_run_ms(5);
    fake.eeprom_worn = true;
    talk_forget();
    talk_send(HOST_CALIBRATION_WRITE, payload, sizeof payload);
    talk_run_ms(2000);
    CHECK(talk_hear_type(MESSAGE_REFUSED, &heard));
    CHECK_IS(heard.payload[3], REFUSAL_EEPROM);
}

static void blank_calibration_is_nominal(void)
{
    struct heard heard;
    talk_fresh(&probe);
    fake_run_ms(5);
    talk_forget();
    talk_send(HOST_CALIBRATION_READ, NULL, 0);
    fake_run_ms(5);
    CHECK(talk_hear_type(MESSAGE_CALIBRATION, &heard));
    CHECK_IS(bytes_u32(heard.payload), 0);
    CHECK_IS(bytes_u32(heard.payload + 8), 12255859);
    CHECK_IS((int32_t)bytes_u32(heard.payload + 4 + 8 * CHANNEL_R2), -20000000);
    CHECK_IS(bytes_u32(heard.payload + 8 + 8 * CHANNEL_V), 60992496);
    CHECK_IS(bytes_u16(heard.payload + 68), 2500); /* 5 % with k = 2 */
}

void store_tests(void)
{
    starts_are_counted();
    latch_survives_a_reset();
    record_cut_off_by_a_reset_reads_as_latched();
    worn_eeprom_is_found_after_a_trip();
    calibration_is_written_kept_and_checked();
    calibration_that_does_not_hold_is_refused();
    blank_calibration_is_nominal();
}
