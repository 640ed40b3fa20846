/* What a trip says and what is sent of it, and what trips besides the limits. */
#include "check.h"
#include "core/bytes.h"
#include "hal_fake.h"
#include "talk.h"

static struct probe probe;

static struct heard trip;

/* Runs until the trip is reported; checks what all trips have in common. */
static void told_trip(enum trip_cause cause, uint8_t channel)
{
    struct heard heard;
    talk_forget();
    for (int i = 0; i < 160 * 1000 && probe.state == STATE_ON; i++)
        fake_run(1);
    fake_run_ms(4);
    CHECK_IS(probe.state, STATE_TRIPPED);
    CHECK_IS(fake.path, HAL_PATH_NONE);
    CHECK(fake.lamp);
    CHECK(talk_hear_type(MESSAGE_SWITCH, &heard));
    CHECK_IS(heard.payload[0], STATE_TRIPPED);
    CHECK_IS(heard.payload[1], BY_TRIP);
    CHECK(talk_hear_type(MESSAGE_TRIP, &trip));
    CHECK_IS(heard.tick_us, trip.tick_us);
    CHECK_IS(trip.payload[2], cause);
    CHECK_IS(trip.payload[3], channel);
}

static void current_trip_says_when_and_how_much(void)
{
    struct limits limits = talk_no_limits();
    limits.running_i_counts = 100;
    limits.i2t_budget_counts2 = 1000000000;
    talk_switched_on(&probe, &limits);
    while ((fake.slot + 1) % 4 != 0)
        fake_run(1);
    uint32_t next = fake.plans * 32 + fake.slot + 1u;
    fake.on_counts[CHANNEL_I] = 300;
    told_trip(TRIP_RUNNING, CHANNEL_I);
    CHECK_IS(bytes_u16(trip.payload), 1);
    CHECK_IS(trip.payload[4], 3);
    CHECK_IS(bytes_u32(trip.payload + 6), next * 125 / 2);
    CHECK_IS(bytes_u32(trip.payload + 10), (next + 8) * 125 / 2);
    CHECK_IS(trip.tick_us, (next + 8) * 125 / 2 + 450 / 16);
    CHECK_IS(bytes_u16(trip.payload + 14), 300);
    CHECK_IS(bytes_u16(trip.payload + 16), 120);
    CHECK_IS(bytes_u32(trip.payload + 18), 3 * 280 * 280);
    CHECK_IS(bytes_u32(trip.payload + 22), 1000000000);
    CHECK_IS(bytes_u16(trip.payload + 26), 1);
}

static void trip_is_sent_three_times_and_again(void)
{
    struct limits limits = talk_no_limits();
    struct heard heard;
    limits.running_i_counts = 100;
    talk_switched_on(&probe, &limits);
    fake.on_counts[CHANNEL_I] = 300;
    talk_forget();
    fake_run_ms(40);
    unsigned first = 0;
    while (talk_hear_type(MESSAGE_TRIP, &heard))
        first++;
    fake_run_ms(300);
    unsigned later = 0;
    while (talk_hear_type(MESSAGE_TRIP, &heard))
        later++;
    CHECK_IS(first, 1);
    CHECK_IS(later, 2);
    const uint8_t again[3] = {MESSAGE_TRIP, 1, 0};
    const uint8_t other[3] = {MESSAGE_TRIP, 2, 0};
    CHECK_IS(talk_command(HOST_SEND_AGAIN, again, 3), 0);
    fake_run_ms(4);
    CHECK(talk_hear_type(MESSAGE_TRIP, &heard));
    CHECK_IS(talk_command(HOST_SEND_AGAIN, other, 3), REFUSAL_NOTHING_THERE);
    CHECK_IS(talk_detail(), 2);
}

static void captures_128_before_and_128_after(void)
{
    struct limits limits = talk_no_limits();
    struct heard heard;
    limits.running_i_counts = 900;
    limits.confirm_i = 1;
    talk_switched_on(&probe, &limits);
    for (uint16_t i = 0; i < 300; i++) { /* a ramp, so that each value says its place */
        fake.on_counts[CHANNEL_I] = i;
        fake_run(4);
    }
    while ((fake.slot + 1) % 4 != 0)
        fake_run(1);
    fake.on_counts[CHANNEL_I] = 1000;
    talk_forget();
    fake_run(1);
    CHECK_IS(fake.path, HAL_PATH_NONE);
    for (uint16_t i = 1; i <= 140; i++) {
        fake_run(3);
        fake.counts[CHANNEL_I] = (uint16_t)(500 + i);
        fake_run(1);
    }
    fake_run_ms(60);
    for (unsigned pass = 0; pass < 2; pass++) {
        unsigned blocks = 0;
        uint32_t decided_us = bytes_u32(probe.latch.record + LATCH_DECIDED);
        while (talk_hear_type(MESSAGE_CAPTURE, &heard)) {
            int first = (int16_t)bytes_u16(heard.payload + 2);
            CHECK_IS(first, -127 + 16 * (int)blocks);
            CHECK_IS(bytes_u16(heard.payload), 1);
            CHECK_IS(heard.payload[5], 0);
            CHECK_IS(heard.tick_us, (uint32_t)((int)decided_us + first * 250));
            for (int i = 0; i < 16; i++) {
                int place = first + i;
                int counts = bytes_u16(heard.payload + 8 + 2 * i);
                CHECK_IS(counts, place == 0 ? 1000 : place < 0 ? 300 + place : 500 + place);
            }
            blocks++;
        }
        CHECK_IS(blocks, 16);
        const uint8_t again[3] = {MESSAGE_CAPTURE, 1, 0};
        talk_forget();
        talk_send(HOST_SEND_AGAIN, again, 3);
        fake_run_ms(60);
    }
}

static void early_capture_says_what_is_void(void)
{
    struct limits limits = talk_no_limits();
    struct heard heard;
    limits.inrush_i_counts = 100;
    limits.inrush_ms = 50;
    talk_fresh(&probe);
    fake_run_ms(5);
    fake.on_counts[CHANNEL_I] = 300;
    uint8_t payload[48];
    talk_limits(&limits, payload);
    CHECK_IS(talk_command(HOST_LIMITS, payload, 48), 0);
    CHECK_IS(talk_command(HOST_SWITCH_ON, talk_no_look, sizeof talk_no_look), 0);
    talk_forget();
    talk_run_ms(400);
    unsigned values = 0;
    unsigned before = 0;
    while (talk_hear_type(MESSAGE_CAPTURE, &heard)) {
        before += 16u - heard.payload[5];
        values += 16;
    }
    CHECK_IS(values, 256);
    CHECK_IS(before - 128, probe.guard.capture.before);
    CHECK(before - 128 >= 3);
}

static void silence_counts_from_the_last_valid_frame(void)
{
    struct limits limits = talk_no_limits();
    limits.silence_ms = 500;
    talk_switched_on(&probe, &limits);
    talk_send(HOST_HEARTBEAT, NULL, 0);
    fake_run_ms(4);
    uint32_t heard_us = probe.host_heard_us;
    for (int i = 0; i < 480; i++) { /* a line full of rubbish is no host */
        static const uint8_t rubbish[] = {3, 1, 2, 0, 0x45, 0};
        fake_receive(rubbish, sizeof rubbish);
        fake_run_ms(1);
    }
    told_trip(TRIP_HOST_SILENCE, CHANNEL_NONE);
    CHECK_IS(bytes_u32(trip.payload + 6), heard_us);
    uint32_t silent_us = trip.tick_us - heard_us;
    CHECK(silent_us >= 500000 && silent_us <= 503000);
    CHECK(probe.in.rejected > 400); /* and each was counted */
}

static void lost_clip_is_a_trip_only_while_on(void)
{
    struct limits limits = talk_no_limits();
    talk_switched_on(&probe, &limits);
    fake.inputs &= (uint8_t)~INPUT_CHASSIS_CLIP;
    uint32_t from = fake.plans;
    told_trip(TRIP_CHASSIS_CLIP, CHANNEL_NONE);
    CHECK(fake.plans - from <= 12);
    talk_fresh(&probe);
    fake_run_ms(5);
    uint8_t payload[48];
    talk_limits(&limits, payload);
    CHECK_IS(talk_command(HOST_LIMITS, payload, 48), 0);
    CHECK_IS(talk_command(HOST_SWITCH_ON, talk_look, sizeof talk_look), 0);
    fake.inputs &= (uint8_t)~INPUT_CHASSIS_CLIP;
    talk_run_ms(100);
    CHECK_IS(probe.state, STATE_OFF);
    CHECK_IS(latch_number(&probe.latch), 0);
    CHECK_IS(talk_command(HOST_SWITCH_ON, talk_look, sizeof talk_look), REFUSAL_NO_CHASSIS_CLIP);
}

static void converter_that_stands_opens_the_switch(void)
{
    struct limits limits = talk_no_limits();
    talk_switched_on(&probe, &limits);
    fake.converter_stands = true;
    told_trip(TRIP_SELF_TEST, CHANNEL_NONE);
    CHECK(probe_self_test_bits(&probe) & SELF_TEST_CONVERTER);
}

static void half_a_pump_opens_the_switch(void)
{
    struct limits limits = talk_no_limits();
    talk_switched_on(&probe, &limits);
    fake.gate_starved = true;
    fake.limiting = true; /* what the limiter takes from the gate is its own business */
    fake_run(8);
    fake.limiting = false;
    fake_run_ms(16);
    fake.gate_starved = false;
    fake_run_ms(4);
    CHECK_IS(fake.path, HAL_PATH_SWITCH);
    fake.gate_starved = true;
    fake_run_ms(16);
    CHECK_IS(fake.path, HAL_PATH_SWITCH);
    told_trip(TRIP_SELF_TEST, CHANNEL_NONE);
    CHECK(probe_self_test_bits(&probe) & SELF_TEST_GATE);
    CHECK(!fake.pump);
}

void tripped_tests(void)
{
    current_trip_says_when_and_how_much();
    trip_is_sent_three_times_and_again();
    captures_128_before_and_128_after();
    early_capture_says_what_is_void();
    silence_counts_from_the_last_valid_frame();
    lost_clip_is_a_trip_only_while_on();
    converter_that_stands_opens_the_switch();
    half_a_pump_opens_the_switch();
}
