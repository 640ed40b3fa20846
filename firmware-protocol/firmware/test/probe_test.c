/* The states: who opens the switch, that nothing closes it without a request, and what the probe says unasked. */
#include <string.h>

#include "check.h"
#include "core/bytes.h"
#include "hal_fake.h"
#include "talk.h"

static struct probe probe;

static void host_off_ends_everything(void)
{
    const uint8_t rule = BY_RULE;
    struct limits limits = talk_no_limits();
    talk_switched_on(&probe, &limits);
    CHECK_IS(talk_command(HOST_SWITCH_OFF, &rule, 1), 0);
    CHECK_IS(probe.state, STATE_OFF);
    CHECK_IS(fake.path, HAL_PATH_NONE);
    CHECK_IS(talk_command(HOST_SWITCH_ON, talk_no_look, sizeof talk_no_look), 0);
    CHECK_IS(probe.state, STATE_CHECK);
    CHECK_IS(talk_command(HOST_SWITCH_OFF, &rule, 1), 0);
    talk_run_ms(1000);
    CHECK_IS(probe.state, STATE_OFF);
    CHECK_IS(fake.closings, 1);
}

static void restore_needs_the_number_and_clears_only_at_closing(void)
{
    struct limits limits = talk_no_limits();
    const uint8_t off = BY_USER;
    uint8_t restore[2 + LOOK_PARAMETER_BYTES] = {2, 0};
    limits.running_i_counts = 100;
    talk_switched_on(&probe, &limits);
    fake.on_counts[CHANNEL_I] = 300;
    fake_run_ms(100);
    fake.on_counts[CHANNEL_I] = 0;
    memcpy(restore + 2, talk_no_look, sizeof talk_no_look);
    CHECK_IS(talk_command(HOST_RESTORE, restore, sizeof restore), REFUSAL_WRONG_NUMBER);
    CHECK_IS(talk_detail(), 1);
    restore[0] = 1;
    CHECK_IS(talk_command(HOST_RESTORE, restore, sizeof restore), 0);
    CHECK_IS(probe.state, STATE_CHECK);
    CHECK_IS(latch_number(&probe.latch), 1);
    CHECK_IS(talk_command(HOST_SWITCH_OFF, &off, 1), 0);
    CHECK_IS(probe.state, STATE_TRIPPED);
    CHECK_IS(talk_command(HOST_RESTORE, restore, sizeof restore), 0);
    talk_run_ms(500);
    CHECK_IS(probe.state, STATE_ON);
    CHECK_IS(latch_number(&probe.latch), 0);
    CHECK_IS(talk_command(HOST_RESTORE, restore, sizeof restore), REFUSAL_WRONG_STATE);
}

static void closes_on_a_10_ms_boundary_at_slot_0(void)
{
    struct limits limits = talk_no_limits();
    struct heard heard;
    talk_fresh(&probe);
    fake_run(77);
    uint8_t payload[48];
    talk_limits(&limits, payload);
    CHECK_IS(talk_command(HOST_LIMITS, payload, 48), 0);
    talk_forget();
    talk_send(HOST_SWITCH_ON, talk_no_look, sizeof talk_no_look);
    talk_run_ms(500);
    while (talk_hear_type(MESSAGE_SWITCH, &heard) && heard.payload[0] != STATE_ON)
        continue;
    CHECK_IS(heard.payload[0], STATE_ON);
    CHECK_IS(heard.tick_us % 10000, 0);
    CHECK_IS(heard.tick_us, fake.path_plans * 2000);
}

static void limits_act_from_the_first_conversion(void)
{
    struct limits limits = talk_no_limits();
    limits.inrush_i_counts = 100;
    limits.inrush_ms = 50;
    talk_fresh(&probe);
    fake_run_ms(5);
    fake.on_counts[CHANNEL_I] = 300;
    uint8_t payload[48];
    talk_limits(&limits, payload);
    CHECK_IS(talk_command(HOST_LIMITS, payload, 48), 0);
    CHECK_IS(talk_command(HOST_SWITCH_ON, talk_no_look, sizeof talk_no_look), 0);
    for (int i = 0; i < 10000 && fake.path != HAL_PATH_SWITCH; i++)
        fake_run(1);
    for (int i = 0; i < 8; i++)
        fake_conversion(); /* the main loop is not needed */
    CHECK_IS(fake.path, HAL_PATH_NONE);
    fake_run_ms(4);
    CHECK_IS(probe.state, STATE_TRIPPED);
    CHECK_IS(probe.latch.record[LATCH_CAUSE], TRIP_INRUSH);
}

static void tighter_limits_act_at_once_and_wider_are_refused(void)
{
    struct limits limits = talk_no_limits();
    uint8_t payload[48];
    limits.running_i_counts = 500;
    talk_switched_on(&probe, &limits);
    fake.on_counts[CHANNEL_I] = 300;
    talk_run_ms(50);
    CHECK_IS(probe.state, STATE_ON);
    limits.running_i_counts = 501;
    talk_limits(&limits, payload);
    CHECK_IS(talk_command(HOST_LIMITS, payload, 48), REFUSAL_LIMIT_GETS_WIDER);
    CHECK_IS(talk_detail(), 3);
    CHECK_IS(probe.limits.running_i_counts, 500);
    limits.running_i_counts = 279;
    talk_limits(&limits, payload);
    CHECK_IS(talk_command(HOST_LIMITS, payload, 48), 0);
    CHECK_IS(probe.state, STATE_TRIPPED);
}

static void current_after_an_opening_is_found(void)
{
    const uint8_t user = BY_USER;
    struct limits limits = talk_no_limits();
    talk_switched_on(&probe, &limits);
    fake.counts[CHANNEL_J] = 50; /* the switch does not open */
    CHECK_IS(talk_command(HOST_SWITCH_OFF, &user, 1), 0);
    talk_run_ms(400);
    CHECK(probe_self_test_bits(&probe) & SELF_TEST_SWITCH_PATH);
    CHECK_IS(talk_command(HOST_SWITCH_ON, talk_look, sizeof talk_look), REFUSAL_SELF_TEST);
}

static void failed_self_test_refuses_but_watchdog_only_tells(void)
{
    struct limits limits = talk_no_limits();
    uint8_t payload[48];
    talk_limits(&limits, payload);
    for (unsigned bit = 0; bit <= 13; bit++) {
        talk_fresh(&probe);
        fake.self_test = (uint16_t)(1u << bit);
        fake_reset_chip();
        fake_run_ms(5);
        CHECK_IS(talk_command(HOST_LIMITS, payload, 48), 0);
        int expected = bit == 8 ? 0 : REFUSAL_SELF_TEST;
        CHECK_IS(talk_command(HOST_SWITCH_ON, talk_look, sizeof talk_look), expected);
    }
    talk_fresh(&probe);
    fake.reset_cause = 8;
    CHECK_IS(probe_self_test_bits(&probe), SELF_TEST_WATCHDOG);
}

static void line_speed_is_tried_until_a_host_is_there(void)
{
    const uint8_t slow = HAL_SPEED_250K;
    const uint8_t raw = STREAM_RAW;
    talk_fresh(&probe);
    fake_run_ms(2900);
    CHECK_IS(fake.speed, HAL_SPEED_500K);
    fake_run_ms(900);
    CHECK_IS(fake.speed, HAL_SPEED_250K);
    fake_run_ms(700);
    CHECK_IS(fake.speed, HAL_SPEED_500K);
    fake_run_ms(700);
    CHECK_IS(fake.speed, HAL_SPEED_250K);
    talk_send(HOST_HELLO, &slow, 1);
    talk_run_ms(3000);
    CHECK_IS(fake.speed, HAL_SPEED_250K);
    CHECK_IS(talk_command(HOST_STREAM, &raw, 1), REFUSAL_TOO_FAST_FOR_LINE);
}

static void status_comes_five_times_a_second_while_a_host_is_there(void)
{
    struct heard heard;
    talk_fresh(&probe);
    talk_run_ms(1000);
    unsigned count = 0;
    while (talk_hear_type(MESSAGE_STATUS, &heard))
        count++;
    CHECK(count >= 4 && count <= 6);
    fake_run_ms(3100);
    talk_forget();
    fake_run_ms(1000);
    CHECK(!talk_hear_type(MESSAGE_STATUS, &heard));
}

static void reset_at_any_moment_leaves_it_open(void)
{
    struct limits limits = talk_no_limits();
    for (uint32_t moment = 0; moment < 4000; moment += 37) {
        talk_fresh(&probe);
        fake_run_ms(5);
        uint8_t payload[48];
        talk_limits(&limits, payload);
        CHECK_IS(talk_command(HOST_LIMITS, payload, 48), 0);
        CHECK_IS(talk_command(HOST_SWITCH_ON, talk_no_look, sizeof talk_no_look), 0);
        fake_run(moment);
        fake_reset_chip();
        fake_run_ms(50);
        CHECK_IS(fake.path, HAL_PATH_NONE);
        CHECK_IS(probe.state, STATE_OFF);
    }
}

/* Else the hello would be taken for the rest of the frame that the reset cut off, and be dropped with it. */
static void start_ends_a_frame_that_a_reset_cut_off(void)
{
    talk_fresh(&probe);
    fake_run_ms(5);
    fake.from_probe[fake.from_probe_length++] = 7;
    size_t cut = fake.from_probe_length;
    fake_reset_chip();
    fake_run_ms(5);
    CHECK(fake.from_probe_length > cut + 1);
    CHECK_IS(fake.from_probe[cut], 0);
    CHECK(fake.from_probe[cut + 1] != 0);
}

static void hello_of_any_version_is_answered(void)
{
    /* As host and probe of version 1 said it: bytes of a recorded line. */
    static const uint8_t version_1[] = {0x03, 0x01, 0x41, 0x01, 0x01, 0x01, 0x01, 0x01, 0x01, 0x03, 0x52, 0x42, 0x00};
    static const uint8_t heartbeat_1[] = {0x03, 0x01, 0x48, 0x01, 0x01, 0x01, 0x01, 0x01, 0x03, 0xAC, 0x38, 0x00};
    struct heard heard;
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

void probe_tests(void)
{
    host_off_ends_everything();
    restore_needs_the_number_and_clears_only_at_closing();
    closes_on_a_10_ms_boundary_at_slot_0();
    limits_act_from_the_first_conversion();
    tighter_limits_act_at_once_and_wider_are_refused();
    current_after_an_opening_is_found();
    failed_self_test_refuses_but_watchdog_only_tells();
    line_speed_is_tried_until_a_host_is_there();
    status_comes_five_times_a_second_while_a_host_is_there();
    reset_at_any_moment_leaves_it_open();
    start_ends_a_frame_that_a_reset_cut_off();
    hello_of_any_version_is_answered();
}
