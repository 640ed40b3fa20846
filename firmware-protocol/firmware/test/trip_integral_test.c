/* What adds up over many conversions: I2t and means. */
#include "check.h"
#include "trial.h"

static uint16_t i_200(uint32_t n, uint8_t channel)
{
    return channel == CHANNEL_I ? 200 : trial_quiet(n, channel);
}

/* I2t against the integral of (i^2 - r^2) dt, one conversion of I each 250 us. */
static void i2t_trips_within_one_interval_of_the_integral(void)
{
    enum trip_cause cause;
    for (uint32_t ms = 1; ms <= 400; ms += 7) {
        trial_given();
        trial.limits.i2t_running_counts = 100;
        trial.limits.i2t_budget_counts2 = (200u * 200u - 100u * 100u) * 4u * ms; /* reached after exactly ms */
        trial_closed();
        uint32_t n = trial_run(i_200, 16 * 500, &cause);
        CHECK_IS(cause, TRIP_I2T);
        CHECK_IS(n, ms * 16); /* the first conversion stands for the interval before it */
    }
}

static uint16_t i_300(uint32_t n, uint8_t channel)
{
    (void)n;
    return channel == CHANNEL_I ? 300 : trial_quiet(n, channel);
}

static uint16_t i_50(uint32_t n, uint8_t channel)
{
    (void)n;
    return channel == CHANNEL_I ? 50 : trial_quiet(n, channel);
}

static void i2t_lets_a_motor_start_and_falls_again(void)
{
    enum trip_cause cause;
    trial_given();
    trial.limits.i2t_running_counts = 100;
    trial.limits.i2t_budget_counts2 = 40000000; /* 300 would take 125 ms */
    trial_closed();
    CHECK_IS(trial_run(i_300, 100 * 16, &cause), UINT32_MAX);
    CHECK_IS(trial.watch.i2t_counts2, 400u * (90000 - 10000));
    CHECK_IS(trial_run(i_50, 100 * 16, &cause), UINT32_MAX);
    CHECK_IS(trial.watch.i2t_counts2, 400u * (80000 - 7500));
    CHECK_IS(trial_run(i_300, 100 * 16, &cause), (40000000u - 29000000u) / 80000u * 4); /* the motor sticks: 34 ms */
    CHECK_IS(cause, TRIP_I2T);
}

static void i2t_is_never_under_zero(void)
{
    enum trip_cause cause;
    trial_given();
    trial.limits.i2t_running_counts = 100;
    trial.limits.i2t_budget_counts2 = 1000000;
    trial_closed();
    CHECK_IS(trial_run(trial_quiet, 16000, &cause), UINT32_MAX);
    CHECK_IS(trial.watch.i2t_counts2, 0);
}

static uint16_t i_pulsed(uint32_t n, uint8_t channel)
{
    return channel == CHANNEL_I ? (n % 160 < 32 ? 400 : 0) : trial_quiet(n, channel); /* mean 80, 100 Hz */
}

static void mean_limit_waits_for_ten_readings(void)
{
    enum trip_cause cause;
    trial_given();
    trial.limits.mean_i_16ths = 79 * 16;
    trial_closed();
    CHECK_IS(trial_run(i_pulsed, 32000, &cause), 1599);
    CHECK_IS(cause, TRIP_MEAN);
    CHECK_IS(means_16ths(&trial.watch.means, CHANNEL_I), 80 * 16);
    CHECK_IS(trial.watch.channel, CHANNEL_I);
    trial.limits.inrush_ms = 15; /* readings that begin after it: the third */
    trial_closed();
    CHECK_IS(trial_run(i_pulsed, 32000, &cause), 320 + 1599);
    trial.limits.mean_i_16ths = 80 * 16;
    trial_closed();
    CHECK_IS(trial_run(i_pulsed, 32000, &cause), UINT32_MAX);
}

static uint16_t j_1001_once_a_second(uint32_t n, uint8_t channel)
{
    return channel == CHANNEL_J ? (n % 16000 < 32 ? 1001 : 900) : trial_quiet(n, channel);
}

static void mean_of_j_is_void_while_one_was_over_1000(void)
{
    enum trip_cause cause;
    trial_given();
    trial.limits.mean_j_16ths = 899 * 16;
    trial_closed();
    /* The first reading holds 1001; the first ten without it end with the eleventh. */
    CHECK_IS(trial_run(j_1001_once_a_second, 16000, &cause), 160 * 11 - 1);
    CHECK_IS(cause, TRIP_MEAN);
    CHECK_IS(trial.watch.channel, CHANNEL_J);
    CHECK_IS(means_16ths(&trial.watch.means, CHANNEL_J), 900 * 16);
}

void trip_integral_tests(void)
{
    i2t_trips_within_one_interval_of_the_integral();
    i2t_lets_a_motor_start_and_falls_again();
    i2t_is_never_under_zero();
    mean_limit_waits_for_ten_readings();
    mean_of_j_is_void_while_one_was_over_1000();
}
