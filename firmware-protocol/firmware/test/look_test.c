/* What the first look finds, worked out by hand from volts and amperes at nominal scale. */
#include <string.h>

#include "check.h"
#include "core/bytes.h"
#include "hal_fake.h"
#include "talk.h"

static struct probe probe;

/* Counts of a resistance behind 330 ohm: J 0.390625 mA, V 58.59375 mV a count, from 20 and 10 on. */
static void set_behind_the_look(double ohm, double volts)
{
    double ampere = volts / (330 + ohm);
    fake.look_counts[CHANNEL_J] = (uint16_t)(ampere / 0.400 * 1024 + 20.5);
    fake.look_counts[CHANNEL_V] = (uint16_t)(ampere * ohm / 60 * 1024 + 10.5);
}

static struct heard result;

/* Asks for a look alone and hears its result. */
static void hear_result(const uint8_t parameters[LOOK_PARAMETER_BYTES], uint16_t over_j)
{
    uint8_t payload[48];
    struct limits limits = talk_no_limits();
    limits.look_over_j_counts = over_j;
    talk_limits(&limits, payload);
    CHECK_IS(talk_command(HOST_LIMITS, payload, sizeof payload), 0);
    talk_forget();
    talk_send(HOST_LOOK, parameters, LOOK_PARAMETER_BYTES);
    talk_run_ms(1500);
    CHECK(talk_hear_type(MESSAGE_LOOK, &result));
    CHECK_IS(probe.state, STATE_OFF);
    CHECK_IS(fake.path, HAL_PATH_NONE);
    CHECK_IS(fake.closings, 0);
}

static void finds(double ohm, double volts, enum look_outcome outcome)
{
    talk_fresh(&probe);
    fake_run_ms(5);
    set_behind_the_look(ohm, volts);
    hear_result(talk_look, 0);
    CHECK_IS(result.payload[0], outcome);
    CHECK_IS(result.payload[1], 0);
}

static void resistances_are_told_apart(void)
{
    finds(210, 12, LOOK_CLEAR);
    finds(35, 12, LOOK_CLEAR);
    finds(25, 12, LOOK_LOW);
    finds(4, 12, LOOK_LOW);
    finds(1, 12, LOOK_SHORT);
    finds(0, 12, LOOK_SHORT);
    finds(1e6, 12, LOOK_NOTHING_JOINED);
    finds(210, 3, LOOK_NO_SUPPLY);
    finds(210, 15, LOOK_TOO_HIGH);
}

static void ends_and_sums_are_sent(void)
{
    talk_fresh(&probe);
    fake_run_ms(5);
    fake.look_counts[CHANNEL_V] = 80;
    fake.look_counts[CHANNEL_J] = 57;
    hear_result(talk_look, 0);
    CHECK_IS(bytes_u16(result.payload + 2), 300); /* settled at the first end */
    CHECK_IS(bytes_u16(result.payload + 10), 150);
    CHECK_IS(bytes_u16(result.payload + 12), 80 * 16);
    CHECK_IS(bytes_u16(result.payload + 14), 57 * 16);
    CHECK_IS(bytes_u32(result.payload + 16), 80 * 150);
    CHECK_IS(bytes_u32(result.payload + 20), 57 * 150);
}

static void short_is_watched_longer_before_it_is_believed(void)
{
    talk_fresh(&probe);
    fake_run_ms(5);
    set_behind_the_look(0, 12);
    hear_result(talk_look, 0);
    CHECK_IS(bytes_u16(result.payload + 2), 1000);
}

static void skip_looks_at_nothing(void)
{
    talk_fresh(&probe);
    fake_run_ms(5);
    hear_result(talk_no_look, 0);
    CHECK_IS(result.payload[0], LOOK_SKIPPED);
    CHECK_IS(fake.looks, 0);
}

static void reversed_supply_is_not_joined(void)
{
    talk_fresh(&probe);
    fake.inputs |= INPUT_SUPPLY_REVERSED;
    fake_run_ms(5);
    set_behind_the_look(210, 12);
    hear_result(talk_look, 0);
    CHECK_IS(result.payload[0], LOOK_REVERSED);
    CHECK_IS(fake.looks, 0);
}

static void look_opens_at_once_above_its_own_limit(void)
{
    talk_fresh(&probe);
    fake_run_ms(5);
    set_behind_the_look(210, 12);
    hear_result(talk_look, 40);
    CHECK_IS(result.payload[0], LOOK_SHORT);
    CHECK_IS(bytes_u16(result.payload + 10), 1);
}

static void current_with_all_open_is_refused(void)
{
    talk_fresh(&probe);
    fake.counts[CHANNEL_J] = 32;
    fake_run_ms(5);
    hear_result(talk_look, 0);
    CHECK_IS(result.payload[0], LOOK_CURRENT_WHILE_OFF);
    CHECK_IS(fake.looks, 0);
}

static void only_volts_that_fall_are_waited_for(void)
{
    uint8_t payload[48];
    struct limits limits = talk_no_limits();
    talk_fresh(&probe);
    fake.counts[CHANNEL_V] = 400;
    fake_run_ms(5);
    talk_limits(&limits, payload);
    CHECK_IS(talk_command(HOST_LIMITS, payload, sizeof payload), 0);
    CHECK_IS(talk_command(HOST_SWITCH_ON, talk_no_look, sizeof talk_no_look), 0);
    for (int i = 0; i < 10; i++) {
        CHECK_IS(probe.state, STATE_CHECK);
        talk_run_ms(1000);
        fake.counts[CHANNEL_V] = (uint16_t)(fake.counts[CHANNEL_V] * 85 / 100);
    }
    fake.counts[CHANNEL_V] = 17;
    talk_run_ms(400);
    CHECK_IS(probe.state, STATE_ON);
    talk_fresh(&probe);
    fake.counts[CHANNEL_V] = 400;
    fake_run_ms(5);
    CHECK_IS(talk_command(HOST_LIMITS, payload, sizeof payload), 0);
    talk_forget();
    talk_send(HOST_SWITCH_ON, talk_no_look, sizeof talk_no_look);
    talk_run_ms(2100);
    CHECK(talk_hear_type(MESSAGE_LOOK, &result));
    CHECK_IS(result.payload[0], LOOK_VOLTS_STAY);
    CHECK_IS(probe.state, STATE_OFF);
    CHECK_IS(fake.closings, 0);
}

static void zero_is_taken_off(void)
{
    talk_fresh(&probe);
    fake.counts[CHANNEL_I] = 14;
    fake.counts[CHANNEL_J] = 12;
    fake.counts[CHANNEL_V] = 10;
    fake.look_counts[CHANNEL_J] = 12; /* nothing flows */
    fake.look_counts[CHANNEL_V] = 215;
    fake_run_ms(5);
    hear_result(talk_look, 0);
    CHECK_IS(result.payload[0], LOOK_NOTHING_JOINED);
    CHECK_IS(bytes_u16(result.payload + 4), 224);
    CHECK_IS(bytes_u16(result.payload + 6), 192);
    CHECK_IS(bytes_u16(result.payload + 8), 160);
}

/* ---- what the look foretold, behind the closed switch ---- */

/*
 * Half a shunt, 12 V, 1 kohm without a capacitor: the look sees 9.02 V and 4.51 mA, so a supply of 10.51 V. Over it by a
 * 16th (0.66 V) and 3/8 of the 1.49 V across the look resistor it may be 11.73 V, 200 counts and the zero of 10.
 */
static void closed_with_half_a_shunt(uint16_t v_counts, const struct limits *limits)
{
    talk_fresh(&probe);
    fake.look_counts[CHANNEL_I] = 20;
    fake.look_counts[CHANNEL_J] = 32;
    fake.look_counts[CHANNEL_V] = 164;
    memcpy(fake.on_counts, fake.look_counts, sizeof fake.on_counts);
    fake.on_counts[CHANNEL_V] = v_counts;
    uint8_t payload[48];
    talk_limits(limits, payload);
    fake_run_ms(5);
    CHECK_IS(talk_command(HOST_LIMITS, payload, sizeof payload), 0);
    talk_send(HOST_SWITCH_ON, talk_look, LOOK_PARAMETER_BYTES);
    for (int i = 0; i < 16 * 1500 && fake.path != HAL_PATH_SWITCH; i++) {
        if (i % 1600 == 0)
            talk_send(HOST_HEARTBEAT, NULL, 0);
        fake_run(1);
    }
    CHECK_IS(fake.path, HAL_PATH_SWITCH);
    talk_forget();
}

static void more_volts_than_the_look_foretold_open_the_switch(void)
{
    struct limits limits = talk_no_limits();
    closed_with_half_a_shunt(215, &limits); /* 12 V */
    fake_run_ms(9);
    CHECK_IS(fake.path, HAL_PATH_NONE);
    CHECK(!fake.pump);
    CHECK(talk_hear_type(MESSAGE_TRIP, &result));
    CHECK_IS(result.payload[2], TRIP_SELF_TEST);
    CHECK_IS(result.payload[3], CHANNEL_NONE);
    CHECK_IS(bytes_u16(result.payload + 14), SELF_TEST_SHUNT);
    CHECK(probe_self_test_bits(&probe) & SELF_TEST_SHUNT);
    closed_with_half_a_shunt(210, &limits); /* at it, not over */
    talk_run_ms(100);
    CHECK_IS(fake.path, HAL_PATH_SWITCH);
    closed_with_half_a_shunt(164, &limits); /* it rings in the first plan, and comes too high twice, not three times */
    for (int plan = 0; plan < 3; plan++) {
        fake.on_counts[CHANNEL_V] = 400;
        fake_run_ms(4);
        fake.on_counts[CHANNEL_V] = 164;
        fake_run_ms(2);
    }
    CHECK_IS(fake.path, HAL_PATH_SWITCH);
    closed_with_half_a_shunt(164, &limits); /* turned up by hand: 32 ms after the closing it is over */
    fake_run_ms(32);
    fake.on_counts[CHANNEL_V] = 215;
    talk_run_ms(100);
    CHECK_IS(fake.path, HAL_PATH_SWITCH);
    limits.mean_i_16ths = 1000; /* a pulsed current */
    closed_with_half_a_shunt(215, &limits);
    talk_run_ms(100);
    CHECK_IS(fake.path, HAL_PATH_SWITCH);
}

void look_tests(void)
{
    resistances_are_told_apart();
    ends_and_sums_are_sent();
    short_is_watched_longer_before_it_is_believed();
    skip_looks_at_nothing();
    reversed_supply_is_not_joined();
    look_opens_at_once_above_its_own_limit();
    current_with_all_open_is_refused();
    only_volts_that_fall_are_waited_for();
    zero_is_taken_off();
    more_volts_than_the_look_foretold_open_the_switch();
}
