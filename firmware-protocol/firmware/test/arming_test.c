/* Between the request and the closing: zeros, limiter, clips and look, each of which may refuse. */
#include <string.h>

#include "check.h"
#include "core/bytes.h"
#include "hal_fake.h"
#include "talk.h"

static struct probe probe;
static struct heard heard;

static void refuses(enum look_outcome outcome)
{
    talk_run_ms(1500);
    CHECK(talk_hear_type(MESSAGE_LOOK, &heard));
    CHECK_IS(heard.payload[0], outcome);
    CHECK_IS(heard.payload[1], 0);
    CHECK_IS(probe.state, STATE_OFF);
    CHECK_IS(fake.path, HAL_PATH_NONE);
    CHECK(!fake.pump);
    CHECK_IS(fake.closings, 0);
}

/* ---- zeros ---- */

static void zeros_outside_their_band_are_refused(void)
{
    struct limits limits = talk_no_limits();
    for (int channel = CHANNEL_I; channel <= CHANNEL_V; channel++) {
        talk_fresh(&probe);
        fake.counts[channel] = 0; /* the lead is broken, or its amplifier dead */
        talk_ask_on(talk_no_look, &limits);
        refuses(LOOK_NO_ZERO);
        CHECK_IS(bytes_u16(heard.payload + 4 + 2 * channel), 0);
    }
    talk_fresh(&probe);
    fake.counts[CHANNEL_I] = 30;
    talk_ask_on(talk_no_look, &limits);
    refuses(LOOK_NO_ZERO);
    static const uint16_t ends[][3] = {{13, 11, 7}, {27, 31, 13}}; /* of what the parts of a new box allow */
    for (unsigned end = 0; end < 2; end++) {
        talk_fresh(&probe);
        memcpy(fake.counts, ends[end], sizeof ends[end]);
        talk_ask_on(talk_no_look, &limits);
        talk_run_ms(400);
        CHECK_IS(probe.state, STATE_ON);
        /* A count beyond it. Volts above it may still be in the set: those wait until they have fallen. */
        for (int channel = CHANNEL_I; channel <= (end == 0 ? CHANNEL_V : CHANNEL_J); channel++) {
            talk_fresh(&probe);
            memcpy(fake.counts, ends[end], sizeof ends[end]);
            fake.counts[channel] = (uint16_t)(end == 0 ? ends[end][channel] - 1 : ends[end][channel] + 1);
            talk_ask_on(talk_no_look, &limits);
            refuses(end == 1 && channel == CHANNEL_J ? LOOK_CURRENT_WHILE_OFF : LOOK_NO_ZERO);
        }
    }
}

static void calibrated_zero_may_move_by_three_counts(void)
{
    struct limits limits = talk_no_limits();
    uint8_t payload[CALIBRATION_BYTES];
    for (int moved = -4; moved <= 4; moved += 1) {
        memset(payload, 0, sizeof payload);
        for (int channel = 0; channel < CHANNELS; channel++) {
            bytes_put_u32(payload + SCALE_AT + 8 * channel, (uint32_t)-20000); /* 20 counts of 1000 */
            bytes_put_u32(payload + SCALE_AT + 8 * channel + 4, 1004000);
        }
        talk_fresh(&probe);
        for (int channel = CHANNEL_I; channel <= CHANNEL_V; channel++)
            fake.counts[channel] = 20;
        fake.counts[CHANNEL_I] = (uint16_t)(20 + moved);
        fake_run_ms(5);
        talk_send(HOST_CALIBRATION_WRITE, payload, sizeof payload);
        fake_run_ms(300);
        talk_run_ms(300);
        CHECK_IS(probe.calibration.state, STORE_VALID);
        talk_ask_on(talk_no_look, &limits);
        if (moved < -3 || moved > 3) {
            refuses(LOOK_NO_ZERO);
        } else {
            talk_run_ms(400);
            CHECK_IS(probe.state, STATE_ON);
        }
    }
}

/* ---- limiter and clips ---- */

static void limiter_that_does_not_hold_is_found_before_anything_is_joined(void)
{
    struct limits limits = talk_no_limits();
    static const struct {
        uint8_t channel;
        uint16_t counts;
    } lit[] = {{CHANNEL_I, 29}, {CHANNEL_J, 25}, {CHANNEL_V, 14}};
    for (unsigned one = 0; one < sizeof lit / sizeof lit[0]; one++) {
        talk_fresh(&probe);
        memcpy(fake.on_counts, fake.counts, sizeof fake.on_counts);
        fake.on_counts[lit[one].channel] = lit[one].counts;
        fake.test_lights = true;
        talk_ask_on(talk_look, &limits);
        refuses(LOOK_LIMITER);
        CHECK_IS(fake.looks, 0);
        CHECK(!(probe_inputs(&probe) & INPUT_LIMITER_TESTED));
    }
    talk_fresh(&probe); /* the supply is seen across the open switch, and no more once the gate has its volts */
    talk_ask_on(talk_no_look, &limits);
    for (int i = 0; i < 16 * 400 && !fake.pump; i++)
        fake_run(1);
    CHECK(fake.pump);
    fake.across_blind = true;
    refuses(LOOK_LIMITER);
}

static void limiter_that_gives_way_behind_the_look_is_found(void)
{
    struct limits limits = talk_no_limits();
    talk_fresh(&probe);
    fake.look_counts[CHANNEL_I] = 20;
    fake.look_counts[CHANNEL_V] = 90;
    fake.look_counts[CHANNEL_J] = 77;
    fake.on_counts[CHANNEL_V] = 210;
    talk_ask_on(talk_look, &limits);
    for (int i = 0; i < 16 * 1000 && probe.state != STATE_LOOK; i++)
        fake_run(1);
    CHECK(probe_inputs(&probe) & INPUT_LIMITER_TESTED);
    fake.test_lights = true;
    refuses(LOOK_LIMITER);
    CHECK(!(probe_inputs(&probe) & INPUT_LIMITER_TESTED));
}

/* A dead sense of the volts across the switch would not see a surge or a short. */
static void supply_that_is_not_seen_across_the_switch_is_refused(void)
{
    struct limits limits = talk_no_limits();
    talk_fresh(&probe);
    fake.across_blind = true;
    fake.look_counts[CHANNEL_I] = 20;
    fake.look_counts[CHANNEL_V] = 90; /* 4.7 V and 22 mA: 12 V */
    fake.look_counts[CHANNEL_J] = 77;
    talk_ask_on(talk_look, &limits);
    refuses(LOOK_LIMITER);
    talk_fresh(&probe);
    fake.across_blind = true; /* under 6 V nothing need be seen */
    fake.look_counts[CHANNEL_I] = 20;
    fake.look_counts[CHANNEL_V] = 50;
    fake.look_counts[CHANNEL_J] = 45;
    talk_ask_on(talk_look, &limits);
    talk_run_ms(1000);
    CHECK_IS(probe.state, STATE_ON);
}

static void clips_are_read_back(void)
{
    struct limits limits = talk_no_limits();
    talk_fresh(&probe);
    fake.counts[CHANNEL_R1] = 573; /* open, narrow */
    fake.read_back_counts[CHANNEL_R1] = 1023;
    fake.counts[CHANNEL_R2] = 573; /* joined to 2.4 V: moves a little */
    fake.read_back_counts[CHANNEL_R2] = 600;
    fake.counts[CHANNEL_R3] = 700; /* goes to the end, but no open clip reads this */
    fake.read_back_counts[CHANNEL_R3] = 1023;
    fake.read_back_counts[CHANNEL_H] = 640; /* open: leaves its rest */
    fake.read_back_counts[CHANNEL_M] = 520; /* joined */
    talk_ask_on(talk_no_look, &limits);
    talk_run_ms(400);
    CHECK(talk_hear_type(MESSAGE_LOOK, &heard));
    CHECK_IS(heard.payload[24], CLIPS_READ_BACK | CLIP_RAIL_2 | CLIP_RAIL_3 | CLIP_METER);
    CHECK_IS(fake.read_backs, 1);
    CHECK(!fake.moved);
    talk_fresh(&probe); /* and on their own, when asked */
    fake.counts[CHANNEL_R3] = 1023;
    fake_run_ms(5);
    talk_forget();
    talk_send(HOST_CLIPS, NULL, 0);
    fake_run_ms(30);
    CHECK(talk_hear_type(MESSAGE_STATUS, &heard));
    CHECK_IS(heard.payload[28], CLIPS_READ_BACK | CLIP_RAIL_1 | CLIP_RAIL_2 | CLIP_HEAD | CLIP_METER);
    CHECK_IS(probe.state, STATE_OFF);
    CHECK(!fake.moved);
}

/* ---- the look ---- */

/* A capacitor behind the look resistor, taken step by step; shares: what the current input reads of it. */
static void look_at_capacitor(double volts, double farad, double ohm, double share, const uint8_t *look)
{
    struct limits limits = talk_no_limits();
    double at = 0;
    talk_fresh(&probe);
    talk_ask_on(look, &limits);
    for (int i = 0; i < 16 * 4500 && fake.closings == 0; i++) {
        if (i % 1600 == 0)
            talk_send(HOST_HEARTBEAT, NULL, 0);
        double ampere = (volts - at) / 330;
        if (fake.path == HAL_PATH_LOOK)
            at += (ampere - at / ohm) / farad * 62.5e-6;
        fake.look_counts[CHANNEL_I] = (uint16_t)(ampere / 12.5 * 1024 + 5.5);
        fake.look_counts[CHANNEL_J] = (uint16_t)(share * ampere / 0.400 * 1024 + 5.5);
        fake.look_counts[CHANNEL_V] = (uint16_t)(at / 60 * 1024 + 5.5);
        fake_run(1);
        if (i > 16 * 1000 && probe.state == STATE_OFF)
            break;
    }
    fake_run_ms(10);
    CHECK(talk_hear_type(MESSAGE_LOOK, &heard));
}

static void current_and_volts_of_the_look_must_fit(void)
{
    look_at_capacitor(12, 470e-6, 1000, 1, talk_look);
    CHECK_IS(heard.payload[0], LOOK_CLEAR);
    look_at_capacitor(12, 470e-6, 1000, 0.5, talk_look); /* half a shunt bridged, or J has lost half its gain */
    CHECK_IS(heard.payload[0], LOOK_SHUNT);
    CHECK_IS(fake.closings, 0);
    look_at_capacitor(12, 470e-6, 1000, 0, talk_look); /* the shunt is bridged: nothing flows, volts come */
    CHECK_IS(heard.payload[0], LOOK_SHUNT);
    look_at_capacitor(12, 1e-6, 1000, 0, talk_look); /* the same without a capacitor: 9 V and no current */
    CHECK_IS(heard.payload[0], LOOK_SHUNT);
}

static void charge_beyond_the_limiter_is_refused(void)
{
    uint8_t look[LOOK_PARAMETER_BYTES];
    memcpy(look, talk_look, sizeof look);
    bytes_put_u16(look + 2, 3000);
    bytes_put_u16(look + 10, 246); /* 48 V */
    bytes_put_u16(look + 12, 942);
    bytes_put_u32(look + 14, 87381333); /* 2 J: half of 0.390625 mA * 2 ms * 58.59375 mV each */
    look_at_capacitor(48, 1000e-6, 600, 1, look); /* 31 V in it: half C 17^2 is 0.14 J */
    CHECK_IS(heard.payload[0], LOOK_CLEAR);
    CHECK_IS(fake.closings, 1);
    look_at_capacitor(48, 22000e-6, 600, 1, look); /* after 3 s about 15 V: 12 J */
    CHECK_IS(heard.payload[0], LOOK_TOO_MUCH_CHARGE);
    CHECK_IS(fake.closings, 0);
    bytes_put_u32(look + 14, 0);
    look_at_capacitor(48, 22000e-6, 600, 1, look);
    CHECK_IS(heard.payload[0], LOOK_CLEAR);
}

void arming_tests(void)
{
    zeros_outside_their_band_are_refused();
    calibrated_zero_may_move_by_three_counts();
    limiter_that_does_not_hold_is_found_before_anything_is_joined();
    limiter_that_gives_way_behind_the_look_is_found();
    supply_that_is_not_seen_across_the_switch_is_refused();
    clips_are_read_back();
    current_and_volts_of_the_look_must_fit();
    charge_beyond_the_limiter_is_refused();
}
