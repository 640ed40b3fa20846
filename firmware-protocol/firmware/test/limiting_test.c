/* How long the limiter may hold the current: a hard short, and the surge of the set's capacitors. */
#include <string.h>

#include "check.h"
#include "core/bytes.h"
#include "hal_fake.h"
#include "talk.h"

static struct probe probe;
static struct heard heard;

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
    talk_ask_on(look, limits);
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
    talk_ask_on(talk_no_look, &limits);
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

void limiting_tests(void)
{
    limiting_of_a_millisecond_is_a_hard_short();
    short_that_bounces_is_a_hard_short_too();
    surge_is_let_pass_while_the_volts_come();
    surge_may_last_15_ms_and_10_above_15_volts();
    volts_that_stay_end_the_surge_after_3_ms();
    without_a_look_no_surge_is_let_pass();
    after_20_ms_a_surge_is_none_any_more();
}
