/* Rows, inrush, I2t, means, voltages: on which conversion they trip. */
#include <stdio.h>
#include <string.h>

#include "check.h"
#include "core/trip.h"

static struct limits limits;
static struct zeros zeros;
static struct trip_levels levels;
static struct trip_watch watch;

static void given(void)
{
    memset(&limits, 0, sizeof limits);
    memset(&zeros, 0, sizeof zeros);
    limits.confirm_i = 3;
    limits.confirm_j = 2;
    limits.confirm_rail = 3;
    limits.confirm_v = 3;
    for (int rail = 0; rail < RAILS; rail++)
        limits.rail_high_counts[rail] = 1023;
}

static void closed(void)
{
    trip_levels_set(&levels, &limits, &zeros);
    trip_start(&watch, &levels);
}

typedef uint16_t (*counts_at)(uint32_t n, uint8_t channel);

/* Runs until a trip; returns the conversion's number since closing, UINT32_MAX if none came. */
static uint32_t run(counts_at counts, uint32_t conversions, enum trip_cause *cause)
{
    for (uint32_t n = 0; n < conversions; n++) {
        uint8_t slot = (uint8_t)(n % PLAN_SLOTS);
        uint8_t plan = (uint8_t)(n / PLAN_SLOTS % PLANS_PER_READING);
        *cause = trip_conversion(&watch, slot, plan, counts(n, plan_channel[slot]));
        if (*cause != TRIP_NONE)
            return n;
    }
    *cause = TRIP_NONE;
    return UINT32_MAX;
}

static uint16_t quiet(uint32_t n, uint8_t channel)
{
    (void)n;
    return channel >= CHANNEL_R1 ? 512 : 0;
}

static uint16_t i_200_from_800(uint32_t n, uint8_t channel)
{
    return channel == CHANNEL_I ? (n >= 800 ? 200 : 10) : quiet(n, channel);
}

static void row_of_i_trips_on_its_last(void)
{
    enum trip_cause cause;
    for (uint8_t confirm = 1; confirm <= 8; confirm++) {
        given();
        limits.running_i_counts = 100;
        limits.confirm_i = confirm;
        closed();
        CHECK_IS(run(i_200_from_800, 3200, &cause), 800 + 4 * (confirm - 1));
        CHECK_IS(cause, TRIP_RUNNING);
        CHECK_IS(watch.confirmed, confirm);
        CHECK_IS(watch.value, 200);
        CHECK_IS(watch.channel, CHANNEL_I);
    }
}

static uint16_t i_two_of_three(uint32_t n, uint8_t channel)
{
    return channel == CHANNEL_I && n / 4 % 3 != 2 ? 200 : quiet(n, channel);
}

static void broken_row_does_not_trip(void)
{
    enum trip_cause cause;
    given();
    limits.running_i_counts = 100;
    closed();
    CHECK_IS(run(i_two_of_three, 16000, &cause), UINT32_MAX);
}

static uint16_t i_at_limit(uint32_t n, uint8_t channel)
{
    return channel == CHANNEL_I ? 107 : quiet(n, channel);
}

static void limit_counts_from_zero_and_only_above(void)
{
    enum trip_cause cause;
    given();
    zeros.i_16ths = 16 * 7 + 7; /* 7.44 counts: zero 7 */
    limits.running_i_counts = 100;
    closed();
    CHECK_IS(run(i_at_limit, 3200, &cause), UINT32_MAX);
    zeros.i_16ths = 16 * 6 + 7;
    closed();
    CHECK_IS(run(i_at_limit, 3200, &cause), 8);
    CHECK_IS(trip_limit(&levels, &limits, &zeros, cause, CHANNEL_I, 107), 106);
}

static uint16_t i_full(uint32_t n, uint8_t channel)
{
    return channel == CHANNEL_I ? 1023 : quiet(n, channel);
}

static void converter_at_its_end_is_over(void)
{
    enum trip_cause cause;
    given();
    zeros.i_16ths = 16 * 30;
    limits.running_i_counts = 1020;
    closed();
    CHECK_IS(run(i_full, 3200, &cause), 8);
}

static uint16_t i_200(uint32_t n, uint8_t channel)
{
    return channel == CHANNEL_I ? 200 : quiet(n, channel);
}

static void inrush_time_ends_with_conversion_4_a_ms(void)
{
    enum trip_cause cause;
    given();
    limits.inrush_ms = 60;
    limits.inrush_i_counts = 300;
    limits.running_i_counts = 100;
    closed();
    CHECK_IS(run(i_200, 16000, &cause), 60 * 16 + 8);
    CHECK_IS(cause, TRIP_RUNNING);
    limits.inrush_i_counts = 150;
    closed();
    CHECK_IS(run(i_200, 16000, &cause), 8);
    CHECK_IS(cause, TRIP_INRUSH);
}

static uint16_t j_500(uint32_t n, uint8_t channel)
{
    return channel == CHANNEL_J ? 500 : quiet(n, channel);
}

static void j_acts_after_the_inrush_time(void)
{
    enum trip_cause cause;
    given();
    limits.inrush_ms = 10;
    limits.running_j_counts = 400;
    closed();
    CHECK_IS(run(j_500, 16000, &cause), 160 + 19 + 32); /* two in a row */
    CHECK_IS(cause, TRIP_RUNNING);
    CHECK_IS(watch.channel, CHANNEL_J);
}

static void peak_has_a_row_of_its_own(void)
{
    enum trip_cause cause;
    given();
    limits.peak_i_counts = 150;
    closed();
    CHECK_IS(run(i_200_from_800, 3200, &cause), 808);
    CHECK_IS(cause, TRIP_PEAK);
}

/* I2t against the integral of (i^2 - r^2) dt, one conversion of I each 250 us. */
static void i2t_trips_within_one_interval_of_the_integral(void)
{
    enum trip_cause cause;
    for (uint32_t ms = 1; ms <= 400; ms += 7) {
        given();
        limits.i2t_running_counts = 100;
        limits.i2t_budget_counts2 = (200u * 200u - 100u * 100u) * 4u * ms; /* reached after exactly ms */
        closed();
        uint32_t n = run(i_200, 16 * 500, &cause);
        CHECK_IS(cause, TRIP_I2T);
        CHECK_IS(n, ms * 16); /* the first conversion stands for the interval before it */
    }
}

static uint16_t i_300(uint32_t n, uint8_t channel)
{
    (void)n;
    return channel == CHANNEL_I ? 300 : quiet(n, channel);
}

static uint16_t i_50(uint32_t n, uint8_t channel)
{
    (void)n;
    return channel == CHANNEL_I ? 50 : quiet(n, channel);
}

static void i2t_lets_a_motor_start_and_falls_again(void)
{
    enum trip_cause cause;
    given();
    limits.i2t_running_counts = 100;
    limits.i2t_budget_counts2 = 40000000; /* 300 would take 125 ms */
    closed();
    CHECK_IS(run(i_300, 100 * 16, &cause), UINT32_MAX);
    CHECK_IS(watch.i2t_counts2, 400u * (90000 - 10000));
    CHECK_IS(run(i_50, 100 * 16, &cause), UINT32_MAX);
    CHECK_IS(watch.i2t_counts2, 400u * (80000 - 7500));
    CHECK_IS(run(i_300, 100 * 16, &cause), (40000000u - 29000000u) / 80000u * 4); /* the motor sticks: 34 ms */
    CHECK_IS(cause, TRIP_I2T);
}

static void i2t_is_never_under_zero(void)
{
    enum trip_cause cause;
    given();
    limits.i2t_running_counts = 100;
    limits.i2t_budget_counts2 = 1000000;
    closed();
    CHECK_IS(run(quiet, 16000, &cause), UINT32_MAX);
    CHECK_IS(watch.i2t_counts2, 0);
}

static uint16_t i_pulsed(uint32_t n, uint8_t channel)
{
    return channel == CHANNEL_I ? (n % 160 < 32 ? 400 : 0) : quiet(n, channel); /* mean 80, 100 Hz */
}

static void mean_limit_waits_for_ten_readings(void)
{
    enum trip_cause cause;
    given();
    limits.mean_i_16ths = 79 * 16;
    closed();
    CHECK_IS(run(i_pulsed, 32000, &cause), 1599);
    CHECK_IS(cause, TRIP_MEAN);
    CHECK_IS(means_16ths(&watch.means, CHANNEL_I), 80 * 16);
    CHECK_IS(watch.channel, CHANNEL_I);
    limits.inrush_ms = 15; /* readings that begin after it: the third */
    closed();
    CHECK_IS(run(i_pulsed, 32000, &cause), 320 + 1599);
    limits.mean_i_16ths = 80 * 16;
    closed();
    CHECK_IS(run(i_pulsed, 32000, &cause), UINT32_MAX);
}

static uint16_t j_1001_once_a_second(uint32_t n, uint8_t channel)
{
    return channel == CHANNEL_J ? (n % 16000 < 32 ? 1001 : 900) : quiet(n, channel);
}

static void mean_of_j_is_void_while_one_was_over_1000(void)
{
    enum trip_cause cause;
    given();
    limits.mean_j_16ths = 899 * 16;
    closed();
    /* The first reading holds 1001; the first ten without it end with the eleventh. */
    CHECK_IS(run(j_1001_once_a_second, 16000, &cause), 160 * 11 - 1);
    CHECK_IS(cause, TRIP_MEAN);
    CHECK_IS(watch.channel, CHANNEL_J);
    CHECK_IS(means_16ths(&watch.means, CHANNEL_J), 900 * 16);
}

static uint16_t rail_2_low(uint32_t n, uint8_t channel)
{
    return channel == CHANNEL_R2 && n >= 1600 ? 100 : quiet(n, channel);
}

static uint16_t volts_high(uint32_t n, uint8_t channel)
{
    return channel == CHANNEL_V && n >= 1600 ? 301 : quiet(n, channel);
}

static void voltages_trip_either_way(void)
{
    enum trip_cause cause;
    given();
    limits.rail_low_counts[1] = 101;
    closed();
    CHECK_IS(run(rail_2_low, 16000, &cause), 1600 + 11 + 2 * 16);
    CHECK_IS(cause, TRIP_OVER_VOLTAGE);
    CHECK_IS(watch.channel, CHANNEL_R2);
    CHECK_IS(trip_limit(&levels, &limits, &zeros, cause, CHANNEL_R2, 100), 101);
    given();
    limits.over_v_counts = 300;
    limits.confirm_v = 1;
    closed();
    CHECK_IS(run(volts_high, 16000, &cause), 1603);
    CHECK_IS(watch.channel, CHANNEL_V);
}

static uint16_t volts_ring(uint32_t n, uint8_t channel)
{
    return channel == CHANNEL_V && n < 16 ? 900 : quiet(n, channel);
}

/* The leads ring when the switch closes: the first millisecond of V is not judged, the second is. */
static void volts_rest_in_the_first_millisecond(void)
{
    enum trip_cause cause;
    given();
    limits.over_v_counts = 300;
    limits.confirm_v = 1;
    closed();
    CHECK_IS(run(volts_ring, 1600, &cause), UINT32_MAX);
}

/* ---- the start of a motor ---- */

/* From conversion 8000 on 1.5 A for 300 ms, then 0.3 A; again where the test says so. */
static uint32_t second_start;

static uint16_t motor(uint32_t n, uint8_t channel)
{
    bool starts = (n >= 8000 && n < 12800) || (second_start != 0 && n >= second_start && n < second_start + 4800);
    if (channel == CHANNEL_J)
        return n < 8000 ? 77 : 768; /* 30 mA idle, 300 mA running */
    return channel == CHANNEL_I ? (starts ? 123 : n < 8000 ? 2 : 25) : quiet(n, channel);
}

static void start_given(uint16_t start_ms)
{
    given();
    limits.inrush_ms = 60;
    limits.inrush_i_counts = 400;
    limits.running_i_counts = 41; /* 0.5 A */
    limits.start_i_counts = 164;  /* 2 A */
    limits.start_ms = start_ms;
    second_start = 0;
}

static void one_start_is_allowed_whenever_it_comes(void)
{
    enum trip_cause cause;
    start_given(400);
    closed();
    CHECK_IS(run(motor, 160000, &cause), UINT32_MAX);
    start_given(0); /* none without its time, and none without its amperes: unknown is no */
    closed();
    CHECK_IS(run(motor, 160000, &cause), 8008);
    CHECK_IS(cause, TRIP_RUNNING);
    start_given(400);
    limits.start_i_counts = 0;
    closed();
    CHECK_IS(run(motor, 160000, &cause), 8008);
}

static void start_that_lasts_too_long_trips_on_running(void)
{
    enum trip_cause cause;
    start_given(200); /* it needs 300 ms */
    closed();
    /* Begins at 8008, 800 conversions of I behind it are the start's; then three in a row. */
    CHECK_IS(run(motor, 160000, &cause), 8008 + 4 * (800 + 1) + 8);
    CHECK_IS(cause, TRIP_RUNNING);
    CHECK_IS(trip_limit(&levels, &limits, &zeros, cause, CHANNEL_I, 123), 41);
}

static void start_over_its_own_limit_trips(void)
{
    enum trip_cause cause;
    start_given(400);
    limits.start_i_counts = 122;
    closed();
    CHECK_IS(run(motor, 160000, &cause), 8008 + 12);
    CHECK_IS(cause, TRIP_START);
    CHECK_IS(trip_limit(&levels, &limits, &zeros, cause, CHANNEL_I, 123), 122);
}

static void second_start_within_5_s_trips(void)
{
    enum trip_cause cause;
    start_given(400);
    uint32_t over = 8008 + 4 * 1601; /* the first conversion of I that the running limit has again */
    closed();
    second_start = over + 4 * 19000; /* 4.75 s later */
    CHECK_IS(run(motor, 160000, &cause), second_start + (4 - second_start % 4) % 4 + 8);
    CHECK_IS(cause, TRIP_RUNNING);
    closed();
    second_start = over + 4 * 20100;
    CHECK_IS(run(motor, 240000, &cause), UINT32_MAX);
}

static void fine_limit_lets_a_start_begin_too(void)
{
    enum trip_cause cause;
    start_given(2);
    limits.running_i_counts = 0;
    limits.running_j_counts = 700; /* 273 mA: 300 mA running is over it, after the start too */
    closed();
    /* J at 8019 and 8051 begins it; 8 conversions of I are the start's, 8084 is not; J again at 8115 and 8147. */
    CHECK_IS(run(motor, 160000, &cause), 8147);
    CHECK_IS(cause, TRIP_RUNNING);
    CHECK_IS(watch.channel, CHANNEL_J);
}

static void heat_counts_through_a_start(void)
{
    enum trip_cause cause;
    start_given(400);
    limits.i2t_running_counts = 41;
    limits.i2t_budget_counts2 = 100 * 13448; /* 123^2 - 41^2 = 13 448 a conversion */
    closed();
    CHECK_IS(run(motor, 160000, &cause), 8000 + 4 * 100);
    CHECK_IS(cause, TRIP_I2T);
}

/* ---- a current input that has died ---- */

static uint16_t j_up_i_dead(uint32_t n, uint8_t channel)
{
    if (channel == CHANNEL_J)
        return n >= 1600 ? 1023 : 100;
    return channel == CHANNEL_I ? 19 : quiet(n, channel);
}

static uint16_t j_up_i_up(uint32_t n, uint8_t channel)
{
    return channel == CHANNEL_I && n >= 1600 ? 20 : j_up_i_dead(n, channel);
}

static void j_far_up_with_i_at_rest_trips(void)
{
    enum trip_cause cause;
    given();
    closed();
    CHECK_IS(run(j_up_i_dead, 16000, &cause), 1600 + 19 + 2 * 32);
    CHECK_IS(cause, TRIP_SELF_TEST);
    CHECK_IS(watch.channel, CHANNEL_J);
    closed();
    CHECK_IS(run(j_up_i_up, 16000, &cause), UINT32_MAX);
}

static void nothing_watched_never_trips(void)
{
    enum trip_cause cause;
    given();
    closed();
    CHECK_IS(run(i_full, 160000, &cause), UINT32_MAX);
}

void trip_tests(void)
{
    row_of_i_trips_on_its_last();
    broken_row_does_not_trip();
    limit_counts_from_zero_and_only_above();
    converter_at_its_end_is_over();
    inrush_time_ends_with_conversion_4_a_ms();
    j_acts_after_the_inrush_time();
    peak_has_a_row_of_its_own();
    i2t_trips_within_one_interval_of_the_integral();
    i2t_lets_a_motor_start_and_falls_again();
    i2t_is_never_under_zero();
    mean_limit_waits_for_ten_readings();
    mean_of_j_is_void_while_one_was_over_1000();
    voltages_trip_either_way();
    volts_rest_in_the_first_millisecond();
    one_start_is_allowed_whenever_it_comes();
    start_that_lasts_too_long_trips_on_running();
    start_over_its_own_limit_trips();
    second_start_within_5_s_trips();
    fine_limit_lets_a_start_begin_too();
    heat_counts_through_a_start();
    j_far_up_with_i_at_rest_trips();
    nothing_watched_never_trips();
}
