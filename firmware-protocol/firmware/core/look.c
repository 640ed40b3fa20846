#include "look.h"

#include "bytes.h"

enum {
    CURRENT_COUNTS = 4,
    CURRENT_CONVERSIONS = 100,  /* of J: 200 ms */
    FALL_PLANS = 1000,          /* 2 s */
    LONGEST_PLANS = 15000,      /* 30 s */
    LOWEST_QUIET_V = 17,        /* 1 V */
    ZERO_I = 800,
    ZERO_JV = 100,
    FIRST_END_PAIRS = 150,      /* 300 ms */
    FIRST_END_SHORT_PAIRS = 500, /* 1000 ms */
    NEAR_SUM_COUNTS = LOOK_WINDOW / 2, /* half a count in the mean */
    TWO_COUNTS_16THS = 32,
    ONE_COUNT_16THS = 16
};

#define LOOK_NO_SUM 0xFFFFu

enum refusal look_parameters_read(const uint8_t *payload, struct look_parameters *p, uint8_t *field)
{
    p->skip = payload[0] != 0;
    p->max_ms = bytes_u16(payload + 2);
    p->v_per_j_256ths = bytes_u16(payload + 4);
    p->short_v_per_j_256ths = bytes_u16(payload + 6);
    p->low_v_per_j_256ths = bytes_u16(payload + 8);
    p->supply_lowest_counts = bytes_u16(payload + 10);
    p->supply_highest_counts = bytes_u16(payload + 12);
    *field = 0;
    if (payload[0] > 1)
        *field = 1;
    else if (payload[1] != 0)
        *field = 2;
    else if (p->max_ms < 100 || p->max_ms > 3000)
        *field = 3;
    else if (p->v_per_j_256ths == 0)
        *field = 4;
    else if (p->short_v_per_j_256ths == 0)
        *field = 5;
    else if (p->low_v_per_j_256ths == 0)
        *field = 6;
    else if (p->supply_lowest_counts > COUNTS_HIGHEST)
        *field = 7;
    else if (p->supply_highest_counts > COUNTS_HIGHEST)
        *field = 8;
    return *field == 0 ? REFUSAL_NONE : REFUSAL_BAD_VALUE;
}

void check_start(struct check *check, uint32_t plans, uint16_t rest_j_counts, uint16_t rest_v_counts)
{
    uint16_t above = (uint16_t)(rest_v_counts + CURRENT_COUNTS);
    check->from_plans = plans;
    check->rest_j_counts = rest_j_counts;
    check->quiet_v_counts = above > LOWEST_QUIET_V ? above : LOWEST_QUIET_V;
    check->sum_i = 0;
    check->sum_j = 0;
    check->sum_v = 0;
    check->count_i = 0;
    check->count_j = 0;
    check->count_v = 0;
    check->current_in_row = 0;
    check->window_open = false;
    check->current_now = false;
    check->taking = false;
    check->taking_begun = false;
}

static enum check_result check_volts(struct check *check, const struct conversion *conversion)
{
    uint16_t counts = conversion->counts;
    if (counts <= check->quiet_v_counts) {
        /* Once begun, the zeros are taken to their end. */
        if (!check->current_now)
            check->taking = true;
        return CHECK_GOES_ON;
    }
    if (!check->window_open) {
        check->window_open = true;
        check->window_v_counts = counts;
        check->window_plans = conversion->plans;
    } else if (conversion->plans - check->window_plans >= FALL_PLANS) {
        if (counts * 10u > check->window_v_counts * 9u)
            return CHECK_VOLTS_STAY;
        check->window_v_counts = counts;
        check->window_plans = conversion->plans;
    }
    return conversion->plans - check->from_plans >= LONGEST_PLANS ? CHECK_VOLTS_STAY : CHECK_GOES_ON;
}

static void take_zero(struct check *check, uint8_t channel, uint16_t counts)
{
    if (channel == CHANNEL_I && check->count_i < ZERO_I) {
        check->sum_i += counts;
        check->count_i++;
    } else if (channel == CHANNEL_J && check->count_j < ZERO_JV) {
        check->sum_j += counts;
        check->count_j++;
    } else if (channel == CHANNEL_V && check->count_v < ZERO_JV) {
        check->sum_v += counts;
        check->count_v++;
    }
}

enum check_result check_conversion(struct check *check, const struct conversion *conversion)
{
    uint8_t channel = conversion_channel(conversion);
    if (channel == CHANNEL_J) {
        check->current_now = conversion->counts >= check->rest_j_counts + CURRENT_COUNTS;
        check->current_in_row = check->current_now ? (uint8_t)(check->current_in_row + 1) : 0;
        if (check->current_in_row >= CURRENT_CONVERSIONS)
            return CHECK_CURRENT;
    } else if (channel == CHANNEL_V) {
        enum check_result volts = check_volts(check, conversion);
        if (volts != CHECK_GOES_ON)
            return volts;
    }
    if (!check->taking)
        return CHECK_GOES_ON;
    if (conversion->slot == 0)
        check->taking_begun = true;
    if (check->taking_begun)
        take_zero(check, channel, conversion->counts);
    bool done = check->count_i == ZERO_I && check->count_j == ZERO_JV && check->count_v == ZERO_JV;
    return done ? CHECK_DONE : CHECK_GOES_ON;
}

/* Sums of at most 800 * 1023, times 16 under 2^24. */
static uint16_t mean_16ths(uint32_t sum, uint16_t count)
{
    return (uint16_t)((sum * 16u + count / 2u) / count);
}

void check_zeros(const struct check *check, struct zeros *zeros)
{
    zeros->i_16ths = mean_16ths(check->sum_i, ZERO_I);
    zeros->j_16ths = mean_16ths(check->sum_j, ZERO_JV);
    zeros->v_16ths = mean_16ths(check->sum_v, ZERO_JV);
}

void look_start(struct look *look, uint16_t *windows, const struct zeros *zeros, uint16_t over_j_counts)
{
    look->window_v = windows;
    look->window_j = windows + LOOK_WINDOW;
    look->sum_v = 0;
    look->sum_j = 0;
    look->pairs = 0;
    look->last_v = 0;
    look->before = LOOK_NO_SUM;
    look->over_j_counts = over_j_counts == 0 ? TRIP_NO_LEVEL : (uint16_t)(over_j_counts + ((zeros->j_16ths + 8u) >> 4));
    if (look->over_j_counts >= COUNTS_HIGHEST && look->over_j_counts != TRIP_NO_LEVEL)
        look->over_j_counts = COUNTS_HIGHEST - 1;
    look->at = 0;
    look->have_v = false;
    look->over = false;
}

static uint16_t filled(const struct look *look)
{
    return look->pairs < LOOK_WINDOW ? look->pairs : LOOK_WINDOW;
}

static uint16_t window_sum(const uint16_t *window, uint16_t count)
{
    uint16_t sum = 0; /* 50 * 1023 fits */
    for (uint16_t at = 0; at < count; at++)
        sum = (uint16_t)(sum + window[at]);
    return sum;
}

uint16_t look_end_v_16ths(const struct look *look)
{
    return look->pairs == 0 ? 0 : mean_16ths(window_sum(look->window_v, filled(look)), filled(look));
}

uint16_t look_end_j_16ths(const struct look *look)
{
    return look->pairs == 0 ? 0 : mean_16ths(window_sum(look->window_j, filled(look)), filled(look));
}

static uint16_t above(uint16_t value, uint16_t zero)
{
    return value > zero ? (uint16_t)(value - zero) : 0;
}

/* j is at most 16 368 and the factor 65 535: under 2^31. */
static uint32_t times_256ths(uint16_t j_16ths, uint16_t factor_256ths)
{
    return (uint32_t)j_16ths * factor_256ths / 256u;
}

static uint32_t short_level(uint16_t j_16ths, const struct look_parameters *parameters)
{
    uint32_t level = times_256ths(j_16ths, parameters->short_v_per_j_256ths);
    return level > TWO_COUNTS_16THS ? level : TWO_COUNTS_16THS;
}

/* Called at multiples of 100 ms. */
static bool settled(struct look *look, const struct look_parameters *parameters, const struct zeros *zeros)
{
    uint16_t sum = window_sum(look->window_v, LOOK_WINDOW);
    uint16_t apart = sum > look->before ? (uint16_t)(sum - look->before) : (uint16_t)(look->before - sum);
    bool near = look->before != LOOK_NO_SUM && apart <= NEAR_SUM_COUNTS;
    look->before = sum;
    uint16_t v = above(look_end_v_16ths(look), zeros->v_16ths);
    uint16_t j = above(look_end_j_16ths(look), zeros->j_16ths);
    uint16_t first_end = v < short_level(j, parameters) ? FIRST_END_SHORT_PAIRS : FIRST_END_PAIRS;
    return near && look->pairs >= first_end;
}

bool look_conversion(struct look *look, const struct look_parameters *parameters, const struct zeros *zeros,
                     const struct conversion *conversion)
{
    if (conversion_channel(conversion) == CHANNEL_V) {
        look->last_v = conversion->counts;
        look->have_v = true;
        return false;
    }
    if (conversion_channel(conversion) != CHANNEL_J || !look->have_v)
        return false;
    look->window_v[look->at] = look->last_v;
    look->window_j[look->at] = conversion->counts;
    look->at = (uint8_t)(look->at + 1 == LOOK_WINDOW ? 0 : look->at + 1);
    look->sum_v += look->last_v;
    look->sum_j += conversion->counts;
    look->pairs++;
    if (conversion->counts > look->over_j_counts) {
        look->over = true;
        return true;
    }
    if (look->pairs * LOOK_PAIR_MS >= parameters->max_ms)
        return true;
    return look->at == 0 && settled(look, parameters, zeros);
}

enum look_outcome look_outcome(const struct look *look, const struct look_parameters *parameters,
                               const struct zeros *zeros, bool reversed)
{
    uint16_t v = above(look_end_v_16ths(look), zeros->v_16ths);
    uint16_t j = above(look_end_j_16ths(look), zeros->j_16ths);
    uint32_t supply = v + times_256ths(j, parameters->v_per_j_256ths);
    if (reversed)
        return LOOK_REVERSED;
    if (look->over)
        return LOOK_SHORT;
    if (supply < 16u * parameters->supply_lowest_counts)
        return LOOK_NO_SUPPLY;
    if (supply > 16u * (uint32_t)parameters->supply_highest_counts)
        return LOOK_TOO_HIGH;
    if (v < short_level(j, parameters))
        return LOOK_SHORT;
    if (v < times_256ths(j, parameters->low_v_per_j_256ths))
        return LOOK_LOW;
    return j < ONE_COUNT_16THS ? LOOK_NOTHING_JOINED : LOOK_CLEAR;
}
