/* The start of a motor: allowed once, for its time, under a limit of its own. */
#include "check.h"
#include "trial.h"

/* From conversion 8000 on 1.5 A for 300 ms, then 0.3 A; again where the test says so. */
static uint32_t second_start;

static uint16_t motor(uint32_t n, uint8_t channel)
{
    bool starts = (n >= 8000 && n < 12800) || (second_start != 0 && n >= second_start && n < second_start + 4800);
    if (channel == CHANNEL_J)
        return n < 8000 ? 77 : 768; /* 30 mA idle, 300 mA running */
    return channel == CHANNEL_I ? (starts ? 123 : n < 8000 ? 2 : 25) : trial_quiet(n, channel);
}

static void start_given(uint16_t start_ms)
{
    trial_given();
    trial.limits.inrush_ms = 60;
    trial.limits.inrush_i_counts = 400;
    trial.limits.running_i_counts = 41; /* 0.5 A */
    trial.limits.start_i_counts = 164;  /* 2 A */
    trial.limits.start_ms = start_ms;
    second_start = 0;
}

static void one_start_is_allowed_whenever_it_comes(void)
{
    enum trip_cause cause;
    start_given(400);
    trial_closed();
    CHECK_IS(trial_run(motor, 160000, &cause), UINT32_MAX);
    start_given(0); /* none without its time, and none without its amperes: unknown is no */
    trial_closed();
    CHECK_IS(trial_run(motor, 160000, &cause), 8008);
    CHECK_IS(cause, TRIP_RUNNING);
    start_given(400);
    trial.limits.start_i_counts = 0;
    trial_closed();
    CHECK_IS(trial_run(motor, 160000, &cause), 8008);
}

static void start_that_lasts_too_long_trips_on_running(void)
{
    enum trip_cause cause;
    start_given(200); /* it needs 300 ms */
    trial_closed();
    /* Begins at 8008, 800 conversions of I behind it are the start's; then three in a row. */
    CHECK_IS(trial_run(motor, 160000, &cause), 8008 + 4 * (800 + 1) + 8);
    CHECK_IS(cause, TRIP_RUNNING);
    CHECK_IS(trip_limit(&trial.levels, &trial.limits, &trial.zeros, cause, CHANNEL_I, 123), 41);
}

static void start_over_its_own_limit_trips(void)
{
    enum trip_cause cause;
    start_given(400);
    trial.limits.start_i_counts = 122;
    trial_closed();
    CHECK_IS(trial_run(motor, 160000, &cause), 8008 + 12);
    CHECK_IS(cause, TRIP_START);
    CHECK_IS(trip_limit(&trial.levels, &trial.limits, &trial.zeros, cause, CHANNEL_I, 123), 122);
}

static void second_start_within_5_s_trips(void)
{
    enum trip_cause cause;
    start_given(400);
    uint32_t over = 8008 + 4 * 1601; /* the first conversion of I that the running limit has again */
    trial_closed();
    second_start = over + 4 * 19000; /* 4.75 s later */
    CHECK_IS(trial_run(motor, 160000, &cause), second_start + (4 - second_start % 4) % 4 + 8);
    CHECK_IS(cause, TRIP_RUNNING);
    trial_closed();
    second_start = over + 4 * 20100;
    CHECK_IS(trial_run(motor, 240000, &cause), UINT32_MAX);
}

static void fine_limit_lets_a_start_begin_too(void)
{
    enum trip_cause cause;
    start_given(2);
    trial.limits.running_i_counts = 0;
    trial.limits.running_j_counts = 700; /* 273 mA: 300 mA running is over it, after the start too */
    trial_closed();
    /* J at 8019 and 8051 begins it; 8 conversions of I are the start's, 8084 is not; J again at 8115 and 8147. */
    CHECK_IS(trial_run(motor, 160000, &cause), 8147);
    CHECK_IS(cause, TRIP_RUNNING);
    CHECK_IS(trial.watch.channel, CHANNEL_J);
}

static void heat_counts_through_a_start(void)
{
    enum trip_cause cause;
    start_given(400);
    trial.limits.i2t_running_counts = 41;
    trial.limits.i2t_budget_counts2 = 100 * 13448; /* 123^2 - 41^2 = 13 448 a conversion */
    trial_closed();
    CHECK_IS(trial_run(motor, 160000, &cause), 8000 + 4 * 100);
    CHECK_IS(cause, TRIP_I2T);
}

void trip_start_tests(void)
{
    one_start_is_allowed_whenever_it_comes();
    start_that_lasts_too_long_trips_on_running();
    start_over_its_own_limit_trips();
    second_start_within_5_s_trips();
    fine_limit_lets_a_start_begin_too();
    heat_counts_through_a_start();
}
