/* Rows of conversions over a limit: on which one they trip. */
#include "check.h"
#include "trial.h"

static uint16_t i_200_from_800(uint32_t n, uint8_t channel)
{
    return channel == CHANNEL_I ? (n >= 800 ? 200 : 10) : trial_quiet(n, channel);
}

static void row_of_i_trips_on_its_last(void)
{
    enum trip_cause cause;
    for (uint8_t confirm = 1; confirm <= 8; confirm++) {
        trial_given();
        trial.limits.running_i_counts = 100;
        trial.limits.confirm_i = confirm;
        trial_closed();
        CHECK_IS(trial_run(i_200_from_800, 3200, &cause), 800 + 4 * (confirm - 1));
        CHECK_IS(cause, TRIP_RUNNING);
        CHECK_IS(trial.watch.confirmed, confirm);
        CHECK_IS(trial.watch.value, 200);
        CHECK_IS(trial.watch.channel, CHANNEL_I);
    }
}

static uint16_t i_two_of_three(uint32_t n, uint8_t channel)
{
    return channel == CHANNEL_I && n / 4 % 3 != 2 ? 200 : trial_quiet(n, channel);
}

static void broken_row_does_not_trip(void)
{
    enum trip_cause cause;
    trial_given();
    trial.limits.running_i_counts = 100;
    trial_closed();
    CHECK_IS(trial_run(i_two_of_three, 16000, &cause), UINT32_MAX);
}

static uint16_t i_at_limit(uint32_t n, uint8_t channel)
{
    return channel == CHANNEL_I ? 107 : trial_quiet(n, channel);
}

static void limit_counts_from_zero_and_only_above(void)
{
    enum trip_cause cause;
    trial_given();
    trial.zeros.i_16ths = 16 * 7 + 7; /* 7.44 counts: zero 7 */
    trial.limits.running_i_counts = 100;
    trial_closed();
    CHECK_IS(trial_run(i_at_limit, 3200, &cause), UINT32_MAX);
    trial.zeros.i_16ths = 16 * 6 + 7;
    trial_closed();
    CHECK_IS(trial_run(i_at_limit, 3200, &cause), 8);
    CHECK_IS(trip_limit(&trial.levels, &trial.limits, &trial.zeros, cause, CHANNEL_I, 107), 106);
}

static uint16_t i_full(uint32_t n, uint8_t channel)
{
    return channel == CHANNEL_I ? 1023 : trial_quiet(n, channel);
}

static void converter_at_its_end_is_over(void)
{
    enum trip_cause cause;
    trial_given();
    trial.zeros.i_16ths = 16 * 30;
    trial.limits.running_i_counts = 1020;
    trial_closed();
    CHECK_IS(trial_run(i_full, 3200, &cause), 8);
}

static uint16_t i_200(uint32_t n, uint8_t channel)
{
    return channel == CHANNEL_I ? 200 : trial_quiet(n, channel);
}

static void inrush_time_ends_with_conversion_4_a_ms(void)
{
    enum trip_cause cause;
    trial_given();
    trial.limits.inrush_ms = 60;
    trial.limits.inrush_i_counts = 300;
    trial.limits.running_i_counts = 100;
    trial_closed();
    CHECK_IS(trial_run(i_200, 16000, &cause), 60 * 16 + 8);
    CHECK_IS(cause, TRIP_RUNNING);
    trial.limits.inrush_i_counts = 150;
    trial_closed();
    CHECK_IS(trial_run(i_200, 16000, &cause), 8);
    CHECK_IS(cause, TRIP_INRUSH);
}

static uint16_t j_500(uint32_t n, uint8_t channel)
{
    return channel == CHANNEL_J ? 500 : trial_quiet(n, channel);
}

static void j_acts_after_the_inrush_time(void)
{
    enum trip_cause cause;
    trial_given();
    trial.limits.inrush_ms = 10;
    trial.limits.running_j_counts = 400;
    trial_closed();
    CHECK_IS(trial_run(j_500, 16000, &cause), 160 + 19 + 32); /* two in a row */
    CHECK_IS(cause, TRIP_RUNNING);
    CHECK_IS(trial.watch.channel, CHANNEL_J);
}

static void peak_has_a_row_of_its_own(void)
{
    enum trip_cause cause;
    trial_given();
    trial.limits.peak_i_counts = 150;
    trial_closed();
    CHECK_IS(trial_run(i_200_from_800, 3200, &cause), 808);
    CHECK_IS(cause, TRIP_PEAK);
}

static uint16_t rail_2_low(uint32_t n, uint8_t channel)
{
    return channel == CHANNEL_R2 && n >= 1600 ? 100 : trial_quiet(n, channel);
}

static uint16_t volts_high(uint32_t n, uint8_t channel)
{
    return channel == CHANNEL_V && n >= 1600 ? 301 : trial_quiet(n, channel);
}

static void voltages_trip_either_way(void)
{
    enum trip_cause cause;
    trial_given();
    trial.limits.rail_low_counts[1] = 101;
    trial_closed();
    CHECK_IS(trial_run(rail_2_low, 16000, &cause), 1600 + 11 + 2 * 16);
    CHECK_IS(cause, TRIP_OVER_VOLTAGE);
    CHECK_IS(trial.watch.channel, CHANNEL_R2);
    CHECK_IS(trip_limit(&trial.levels, &trial.limits, &trial.zeros, cause, CHANNEL_R2, 100), 101);
    trial_given();
    trial.limits.over_v_counts = 300;
    trial.limits.confirm_v = 1;
    trial_closed();
    CHECK_IS(trial_run(volts_high, 16000, &cause), 1603);
    CHECK_IS(trial.watch.channel, CHANNEL_V);
}

static uint16_t volts_ring(uint32_t n, uint8_t channel)
{
    return channel == CHANNEL_V && n < 16 ? 900 : trial_quiet(n, channel);
}

/* The leads ring when the switch closes: the first millisecond of V is not judged, the second is. */
static void volts_rest_in_the_first_millisecond(void)
{
    enum trip_cause cause;
    trial_given();
    trial.limits.over_v_counts = 300;
    trial.limits.confirm_v = 1;
    trial_closed();
    CHECK_IS(trial_run(volts_ring, 1600, &cause), UINT32_MAX);
}

/* ---- a current input that has died ---- */

static uint16_t j_up_i_dead(uint32_t n, uint8_t channel)
{
    if (channel == CHANNEL_J)
        return n >= 1600 ? 1023 : 100;
    return channel == CHANNEL_I ? 19 : trial_quiet(n, channel);
}

static uint16_t j_up_i_up(uint32_t n, uint8_t channel)
{
    return channel == CHANNEL_I && n >= 1600 ? 20 : j_up_i_dead(n, channel);
}

static void j_far_up_with_i_at_rest_trips(void)
{
    enum trip_cause cause;
    trial_given();
    trial_closed();
    CHECK_IS(trial_run(j_up_i_dead, 16000, &cause), 1600 + 19 + 2 * 32);
    CHECK_IS(cause, TRIP_SELF_TEST);
    CHECK_IS(trial.watch.channel, CHANNEL_J);
    trial_closed();
    CHECK_IS(trial_run(j_up_i_up, 16000, &cause), UINT32_MAX);
}

static void nothing_watched_never_trips(void)
{
    enum trip_cause cause;
    trial_given();
    trial_closed();
    CHECK_IS(trial_run(i_full, 160000, &cause), UINT32_MAX);
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
    voltages_trip_either_way();
    volts_rest_in_the_first_millisecond();
    j_far_up_with_i_at_rest_trips();
    nothing_watched_never_trips();
}
