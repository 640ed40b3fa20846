#include "check.h"

#include <string.h>

#include "compiler.h"

enum {
    CURRENT_COUNTS = 4,
    CURRENT_CONVERSIONS = 100,  /* of J: 200 ms */
    FALL_PLANS = 1000,          /* 2 s */
    LONGEST_PLANS = 15000,      /* 30 s */
    LOWEST_QUIET_V = 17,        /* 1 V */
    ZERO_I = 800,
    ZERO_JV = 100
};

void check_start(struct check *check, uint16_t plans, uint16_t over_j_counts, uint16_t rest_v_counts)
{
    uint16_t above = (uint16_t)(rest_v_counts + CURRENT_COUNTS);
    memset(check, 0, sizeof *check);
    check->from_plans = plans;
    check->over_j_counts = over_j_counts;
    check->quiet_v_counts = above > LOWEST_QUIET_V ? above : LOWEST_QUIET_V;
    check->left[CHANNEL_I] = ZERO_I;
    check->left[CHANNEL_J] = ZERO_JV;
    check->left[CHANNEL_V] = ZERO_JV;
}

static enum check_result check_volts(struct check *check, uint16_t counts, uint16_t plans)
{
    if (counts <= check->quiet_v_counts) {
        /* Once begun, the zeros are taken to their end. */
        if (!check->current_now)
            check->taking = true;
        return CHECK_GOES_ON;
    }
    bool window_over = check->window_open && (uint16_t)(plans - check->window_plans) >= FALL_PLANS;
    if (window_over && counts * 10u > check->window_v_counts * 9u)
        return CHECK_VOLTS_STAY;
    if (window_over || !check->window_open) {
        check->window_open = true;
        check->window_v_counts = counts;
        check->window_plans = plans;
    }
    return (uint16_t)(plans - check->from_plans) >= LONGEST_PLANS ? CHECK_VOLTS_STAY : CHECK_GOES_ON;
}

enum check_result check_conversion(struct check *check, const struct conversion *conversion)
{
    uint8_t channel = conversion_channel(conversion);
    uint16_t counts = conversion->counts;
    if (channel == CHANNEL_J) {
        check->current_now = counts > check->over_j_counts;
        check->current_in_row = check->current_now ? (uint8_t)(check->current_in_row + 1) : 0;
        if (check->current_in_row >= CURRENT_CONVERSIONS)
            return CHECK_CURRENT;
    } else if (channel == CHANNEL_V) {
        enum check_result volts = check_volts(check, counts, (uint16_t)conversion->plans);
        if (volts != CHECK_GOES_ON)
            return volts;
    }
    if (check->taking && conversion->slot == 0)
        check->taking_begun = true;
    if (check->taking_begun && channel < ZEROS && check->left[channel] > 0) {
        check->left[channel]--;
        check->sum[channel] += counts;
        if ((check->left[CHANNEL_I] | check->left[CHANNEL_J] | check->left[CHANNEL_V]) == 0)
            return CHECK_DONE;
    }
    return CHECK_GOES_ON;
}

void check_zeros(const struct check *check, struct zeros *zeros)
{
    zeros->i_16ths = levels_mean_16ths(check->sum[CHANNEL_I], ZERO_I);
    zeros->j_16ths = levels_mean_16ths(check->sum[CHANNEL_J], ZERO_JV);
    zeros->v_16ths = levels_mean_16ths(check->sum[CHANNEL_V], ZERO_JV);
}
