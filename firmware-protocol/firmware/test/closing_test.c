/* From the request to the closing, and the surge after it: what is tested before the switch closes, and what it holds. */
#include <string.h>

#include "check.h"
#include "core/bytes.h"
#include "hal_fake.h"
#include "talk.h"

static struct probe probe;
static struct heard heard;

static void ask_on(const uint8_t *look, const struct limits *limits)
{
    uint8_t payload[48];
    talk_limits(limits, payload);
    fake_run_ms(5);
    CHECK_IS(talk_command(HOST_LIMITS, payload, sizeof payload), 0);
    talk_forget();
    talk_send(HOST_SWITCH_ON, look, LOOK_PARAMETER_BYTES);
}

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
        ask_on(talk_no_look, &limits);
        refuses(LOOK_NO_ZERO);
        CHECK_IS(bytes_u16(heard.payload + 4 + 2 * channel), 0);
    }
    talk_fresh(&probe);
    fake.counts[CHANNEL_I] = 30;
    ask_on(talk_no_look, &limits);
    refuses(LOOK_NO_ZERO);
    static const uint16_t ends[][3] = {{13, 11, 7}, {27, 31, 13}}; /* of what the parts of a new box allow */
    for (unsigned end = 0; end < 2; end++) {
        talk_fresh(&probe);
        memcpy(fake.counts, ends[end], sizeof ends[end]);
        ask_on(talk_no_look, &limits);
        talk_run_ms(400);
        CHECK_IS(probe.state, STATE_ON);
        /* A count beyond it. Volts above it may still be in the set: those wait until they have fallen. */
        for (int channel = CHANNEL_I; channel <= (end == 0 ? CHANNEL_V : CHANNEL_J); channel++) {
            talk_fresh(&probe);
            memcpy(fake.counts, ends[end], sizeof ends[end]);
            fake.counts[channel] = (uint16_t)(end == 0 ? ends[end][channel] - 1 : ends[end][channel] + 1);
            ask_on(talk_no_look, &limits);
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
        ask_on(talk_no_look, &limits);
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
        ask_on(talk_look, &limits);
        refuses(LOOK_LIMITER);
        CHECK_IS(fake.looks, 0);
        CHECK(!(probe_inputs(&probe) & INPUT_LIMITER_TESTED));
    }
    talk_fresh(&probe); /* the supply is seen across the open switch, and no more once the gate has its volts */
    ask_on(talk_no_look, &limits);
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
    ask_on(talk_look, &limits);
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
    ask_on(talk_look, &limits);
    refuses(LOOK_LIMITER);
    talk_fresh(&probe);
    fake.across_blind = true; /* under 6 V nothing need be seen */
    fake.look_counts[CHANNEL_I] = 20;
    fake.look_counts[CHANNEL_V] = 50;
    fake.look_counts[CHANNEL_J] = 45;
    ask_on(talk_look, &limits);
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
    ask_on(talk_no_look, &limits);
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
    ask_on(look, &limits);
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

/* ---- the limiter holds ---- */

static void closed_after_a_look(double volts, const struct limits *limits)
{
    talk_fresh(&probe);
    fake.look_counts[CHANNEL_I] = 21;
    fake.look_counts[CHANNEL_J] = (uint16_t)(volts / 660 / 0.400 * 1024 + 20.5); /* 330 ohm: half the volts */
    fake.look_counts[CHANNEL_V] = (uint16_t)(volts / 2 / 60 * 1024 + 10.5);
    uint8_t look[LOOK_PARAMETER_BYTES];
    memcpy(look, talk_look, sizeof look);
    bytes_put_u16(look + 12, 1000);
    memcpy(fake.on_counts, fake.look_counts, sizeof fake.on_counts);
    ask_on(look, limits);
    for (int i = 0; i < 16 * 1500 && fake.path != HAL_PATH_SWITCH; i++) {
        if (i % 1600 == 0)
            talk_send(HOST_HEARTBEAT, NULL, 0);
        fake.limiting = probe.guard.armed;
        fake_run(1);
    }
    CHECK_IS(fake.path, HAL_PATH_SWITCH);
}

/* Conversions from closing on until the switch is open; the one that closed counted. */
static unsigned held_for(unsigned most)
{
    unsigned n = 1;
    while (n < most && fake.path == HAL_PATH_SWITCH) {
        fake_run(1);
        n++;
    }
    return n;
}

static void limiting_of_a_millisecond_is_a_hard_short(void)
{
    struct limits limits = talk_no_limits();
    talk_fresh(&probe);
    fake_run_ms(5);
    talk_switch_on(&limits);
    fake.on_counts[CHANNEL_I] = 900;
    for (int turn = 0; turn < 3; turn++) {
        fake.limiting = true;
        fake_run(16);
        fake.limiting = false;
        fake_run(64); /* four take one back */
    }
    CHECK_IS(fake.path, HAL_PATH_SWITCH);
    CHECK_IS(probe.guard.limiting.count, 0);
    uint32_t began = fake.plans * 32 + fake.slot + 1u;
    fake.limiting = true;
    talk_forget();
    fake_run(17);
    CHECK_IS(fake.path, HAL_PATH_NONE);
    fake_run_ms(4);
    CHECK(talk_hear_type(MESSAGE_TRIP, &heard));
    CHECK_IS(heard.payload[2], TRIP_HARD_SHORT);
    CHECK_IS(heard.payload[3], CHANNEL_NONE);
    CHECK_IS(heard.payload[4], 17);
    CHECK_IS(bytes_u32(heard.payload + 6), began * 125 / 2);
    CHECK_IS(bytes_u16(heard.payload + 14), 900);
    CHECK_IS(bytes_u16(heard.payload + 28), 17);
}

/* A wire that bounces: half a millisecond on, half a millisecond off. */
static void short_that_bounces_is_a_hard_short_too(void)
{
    struct limits limits = talk_no_limits();
    talk_fresh(&probe);
    fake_run_ms(5);
    talk_switch_on(&limits);
    uint32_t began = fake.plans * 32 + fake.slot + 1u;
    talk_forget();
    unsigned n = 0;
    while (n < 1000 && fake.path == HAL_PATH_SWITCH) {
        fake.limiting = n % 16 < 8;
        fake_run(1);
        n++;
    }
    CHECK_IS(n, 32 + 5); /* 8, less 2: 6, 14, less 2: 12, and the fifth of the third turn */
    fake_run_ms(4);
    CHECK(talk_hear_type(MESSAGE_TRIP, &heard));
    CHECK_IS(heard.payload[2], TRIP_HARD_SHORT);
    CHECK_IS(bytes_u32(heard.payload + 6), began * 125 / 2);
    CHECK_IS(bytes_u16(heard.payload + 28), 17);
}

static void surge_is_let_pass_while_the_volts_come(void)
{
    struct limits limits = talk_no_limits();
    limits.inrush_i_counts = 100; /* rests meanwhile */
    limits.inrush_ms = 60;
    closed_after_a_look(12, &limits);
    for (unsigned n = 1; n < 230; n++) { /* half a volt a ms: after 6 ms the volts are there */
        fake.on_counts[CHANNEL_I] = 900;
        fake.on_counts[CHANNEL_V] = (uint16_t)(fake.look_counts[CHANNEL_V] + (n < 160 ? n * 5 / 8 : 100));
        fake_run(1);
        CHECK_IS(fake.path, HAL_PATH_SWITCH);
    }
    fake.limiting = false;
    fake.on_counts[CHANNEL_I] = 20;
    fake_run_ms(30);
    CHECK_IS(fake.path, HAL_PATH_SWITCH);
    fake.on_counts[CHANNEL_I] = 300; /* the surge limit acts again */
    fake_run_ms(1);
    CHECK_IS(fake.path, HAL_PATH_NONE);
    CHECK_IS(latch_cause(&probe.latch), TRIP_INRUSH);
}

static void surge_may_last_15_ms_and_10_above_15_volts(void)
{
    struct limits limits = talk_no_limits();
    closed_after_a_look(12, &limits);
    fake.on_counts[CHANNEL_V] = 190; /* fallen far enough, but it does not end */
    CHECK_IS(held_for(1000), 241);
    closed_after_a_look(16, &limits);
    fake.on_counts[CHANNEL_V] = 250;
    CHECK_IS(held_for(1000), 161);
}

/* A short that is there at closing: V stays where it was. The first conversion of V behind 3 ms is that of plan 2. */
static void volts_that_stay_end_the_surge_after_3_ms(void)
{
    struct limits limits = talk_no_limits();
    closed_after_a_look(12, &limits);
    CHECK_IS(held_for(1000), 2 * 32 + 3 + 1);
    fake_run_ms(4);
    CHECK(talk_hear_type(MESSAGE_TRIP, &heard));
    CHECK_IS(heard.payload[2], TRIP_HARD_SHORT);
    CHECK_IS(bytes_u32(heard.payload + 6), fake.path_plans * 2000); /* dated at closing */
    CHECK_IS(bytes_u16(heard.payload + 28), 2 * 32 + 3 + 1);
    CHECK_IS(bytes_u16(heard.payload + 30), fake.look_counts[CHANNEL_V]);
    closed_after_a_look(12, &limits);
    fake.on_counts[CHANNEL_V] = 113 + 16; /* 205 + 10 - 129 = 86 of 102 counts: over 5/6 */
    CHECK_IS(held_for(1000), 2 * 32 + 3 + 1);
    closed_after_a_look(12, &limits);
    fake.on_counts[CHANNEL_V] = 113 + 20; /* 82 of 102: under */
    CHECK_IS(held_for(1000), 241);
}

static void without_a_look_no_surge_is_let_pass(void)
{
    struct limits limits = talk_no_limits();
    talk_fresh(&probe);
    ask_on(talk_no_look, &limits);
    for (int i = 0; i < 16 * 500 && fake.path != HAL_PATH_SWITCH; i++) {
        fake.limiting = probe.guard.armed;
        fake_run(1);
    }
    CHECK_IS(held_for(1000), 17);
}

static void after_20_ms_a_surge_is_none_any_more(void)
{
    struct limits limits = talk_no_limits();
    closed_after_a_look(12, &limits);
    fake.on_counts[CHANNEL_V] = 190;
    fake.limiting = false;
    fake_run(200);
    fake.limiting = true;
    CHECK_IS(held_for(1000), 121); /* at 20 ms it has lasted longer than 1 ms */
}

/* ---- the pedal ---- */

static void pedal_does_its_job_by_itself(void)
{
    struct limits limits = talk_no_limits();
    static const uint8_t hold = PEDAL_HOLD_TO_RUN;
    static const uint8_t mark = PEDAL_MARK;
    static const uint8_t none = 3;
    talk_fresh(&probe); /* off, unless commanded otherwise */
    fake_run_ms(5);
    talk_switch_on(&limits);
    fake.inputs |= INPUT_PEDAL;
    fake_run_ms(6);
    CHECK_IS(fake.path, HAL_PATH_NONE);
    CHECK_IS(probe.state, STATE_OFF);
    talk_fresh(&probe);
    fake_run_ms(5);
    CHECK_IS(talk_command(HOST_PEDAL, &none, 1), REFUSAL_BAD_VALUE);
    CHECK_IS(talk_command(HOST_PEDAL, &hold, 1), 0);
    uint8_t payload[48];
    talk_limits(&limits, payload);
    CHECK_IS(talk_command(HOST_LIMITS, payload, 48), 0);
    CHECK_IS(talk_command(HOST_SWITCH_ON, talk_no_look, sizeof talk_no_look), REFUSAL_FOOT_NOT_DOWN);
    fake.inputs |= INPUT_PEDAL;
    fake_run_ms(10);
    talk_switch_on(&limits);
    talk_run_ms(2000);
    CHECK_IS(probe.state, STATE_ON);
    CHECK_IS(talk_command(HOST_PEDAL, &mark, 1), REFUSAL_WRONG_STATE);
    fake.inputs &= (uint8_t)~INPUT_PEDAL;
    fake_run_ms(6);
    CHECK_IS(fake.path, HAL_PATH_NONE);
    CHECK_IS(talk_command(HOST_PEDAL, &mark, 1), 0);
    talk_switch_on(&limits);
    fake.inputs |= INPUT_PEDAL; /* a tap */
    talk_run_ms(300);
    fake.inputs &= (uint8_t)~INPUT_PEDAL;
    talk_run_ms(100);
    CHECK_IS(probe.state, STATE_ON);
    fake.inputs |= INPUT_PEDAL; /* held still */
    talk_run_ms(620);
    CHECK_IS(probe.state, STATE_OFF);
}

static void hello_of_any_version_is_answered(void)
{
    /* As host and probe of version 1 said it: bytes of a recorded line. */
    static const uint8_t version_1[] = {0x03, 0x01, 0x41, 0x01, 0x01, 0x01, 0x01, 0x01, 0x01, 0x03, 0x52, 0x42, 0x00};
    static const uint8_t heartbeat_1[] = {0x03, 0x01, 0x48, 0x01, 0x01, 0x01, 0x01, 0x01, 0x03, 0xAC, 0x38, 0x00};
    talk_fresh(&probe);
    fake_run_ms(20);
    talk_forget();
    fake_receive(version_1, sizeof version_1);
    fake_run_ms(10);
    CHECK(talk_hear_type(MESSAGE_HELLO, &heard));
    CHECK_IS(heard.payload_bytes, HELLO_BYTES);
    uint16_t rejected = probe.in.rejected;
    fake_receive(heartbeat_1, sizeof heartbeat_1);
    fake_run_ms(10);
    CHECK_IS(probe.in.rejected, rejected + 1);
}

void closing_tests(void)
{
    zeros_outside_their_band_are_refused();
    calibrated_zero_may_move_by_three_counts();
    limiter_that_does_not_hold_is_found_before_anything_is_joined();
    limiter_that_gives_way_behind_the_look_is_found();
    supply_that_is_not_seen_across_the_switch_is_refused();
    clips_are_read_back();
    current_and_volts_of_the_look_must_fit();
    charge_beyond_the_limiter_is_refused();
    limiting_of_a_millisecond_is_a_hard_short();
    short_that_bounces_is_a_hard_short_too();
    surge_is_let_pass_while_the_volts_come();
    surge_may_last_15_ms_and_10_above_15_volts();
    volts_that_stay_end_the_surge_after_3_ms();
    without_a_look_no_surge_is_let_pass();
    after_20_ms_a_surge_is_none_any_more();
    pedal_does_its_job_by_itself();
    hello_of_any_version_is_answered();
}
