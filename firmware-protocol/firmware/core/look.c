#include "look.h"

#include <string.h>

#include "compiler.h"
#include "fields.h"
#include "rom.h"

enum {
    FIRST_END_PAIRS = 150,      /* 300 ms */
    FIRST_END_SHORT_PAIRS = 500, /* 1000 ms */
    NEAR_SUM_COUNTS = LOOK_WINDOW / 2, /* half a count in the mean */
    TWO_COUNTS_16THS = 32,
    ONE_COUNT_16THS = 16,
    SUPPLY_APART_16THS = 32 /* and a quarter */
};

#define LOOK_NO_SUM 0xFFFFu

static const struct field fields[] ROM = {
    {1, 0, FIELD_BYTE, 0, 1},
    {2, 1, FIELD_BYTE, 0, 0}, /* reserved */
    {3, 2, 0, 100, 3000},
    {4, 4, 0, 1, 65535},
    {5, 6, 0, 1, 65535},
    {6, 8, 0, 1, 65535},
    {7, 10, 0, 0, COUNTS_HIGHEST},
    {8, 12, 0, 0, COUNTS_HIGHEST},
    {9, 14, FIELD_LONG, 0, 0},
};

STATIC_ASSERT(sizeof(struct look_parameters) == LOOK_PARAMETER_BYTES);
STATIC_ASSERT(sizeof(struct look_result) == LOOK_BYTES);

enum refusal look_parameters_check(const uint8_t *payload, uint8_t *field)
{
    return fields_check(payload, fields, sizeof fields / sizeof fields[0], field);
}

void look_start(struct look *look, uint16_t *windows, const struct zeros *zeros, uint16_t over_j_counts)
{
    memset(look, 0, sizeof *look);
    look->window_v = windows;
    look->window_j = windows + LOOK_WINDOW;
    look->before = LOOK_NO_SUM;
    look->over_j_counts = trip_level(over_j_counts, zeros->j_16ths);
}

static CORE_RARE uint16_t window_sum(const uint16_t *window, uint8_t count)
{
    uint16_t sum = 0; /* 50 * 1023 fits */
    for (; count > 0; count--)
        sum = (uint16_t)(sum + *window++);
    return sum;
}

static CORE_RARE void ends(struct look *look)
{
    uint8_t filled = LOOK_WINDOW;
    if (look->result.pairs < LOOK_WINDOW)
        filled = (uint8_t)look->result.pairs;
    if (filled == 0)
        return;
    look->result.end_v_16ths = levels_mean_16ths(window_sum(look->window_v, filled), filled);
    look->result.end_j_16ths = levels_mean_16ths(window_sum(look->window_j, filled), filled);
}

static CORE_RARE uint16_t above(uint16_t value, uint16_t zero)
{
    return value > zero ? (uint16_t)(value - zero) : 0;
}

/* j is at most 16 368 and the factor 65 535: under 2^31. */
static CORE_RARE uint32_t times_256ths(uint16_t j_16ths, uint16_t factor_256ths)
{
    return (uint32_t)j_16ths * factor_256ths / 256u;
}

static CORE_RARE bool is_short(uint16_t v_16ths, uint16_t j_16ths, const struct look_parameters *parameters)
{
    return v_16ths < TWO_COUNTS_16THS || v_16ths < times_256ths(j_16ths, parameters->short_v_per_j_256ths);
}

/* What the supply must stand at for the current through the look resistor and the volts behind it. */
static CORE_RARE uint16_t supply(const struct look *look, const struct look_parameters *parameters,
                                 const struct zeros *zeros)
{
    uint32_t sum = above(look->result.end_v_16ths, zeros->v_16ths) +
                   times_256ths(above(look->result.end_j_16ths, zeros->j_16ths), parameters->v_per_j_256ths);
    return sum > UINT16_MAX ? UINT16_MAX : (uint16_t)sum;
}

/* Called at multiples of 100 ms. */
static bool settled(struct look *look, const struct look_parameters *parameters, const struct zeros *zeros)
{
    uint16_t before = look->before;
    uint16_t sum = window_sum(look->window_v, LOOK_WINDOW);
    look->before = sum;
    ends(look);
    if (look->first_supply_16ths == 0)
        look->first_supply_16ths = supply(look, parameters, zeros);
    uint16_t apart = sum > before ? (uint16_t)(sum - before) : (uint16_t)(before - sum);
    if (before == LOOK_NO_SUM || apart > NEAR_SUM_COUNTS)
        return false;
    bool shorted = is_short(above(look->result.end_v_16ths, zeros->v_16ths),
                            above(look->result.end_j_16ths, zeros->j_16ths), parameters);
    return look->result.pairs >= (shorted ? FIRST_END_SHORT_PAIRS : FIRST_END_PAIRS);
}

bool look_conversion(struct look *look, const struct look_parameters *parameters, const struct zeros *zeros,
                     const struct conversion *conversion)
{
    uint16_t counts = conversion->counts;
    if (conversion_channel(conversion) == CHANNEL_V) {
        look->last_v = counts;
        look->have_v = true;
        return false;
    }
    if (conversion_channel(conversion) != CHANNEL_J || !look->have_v)
        return false;
    look->window_v[look->at] = look->last_v;
    look->window_j[look->at] = counts;
    look->at = (uint8_t)(look->at + 1 == LOOK_WINDOW ? 0 : look->at + 1);
    look->result.sum_v += look->last_v;
    look->result.sum_j += counts;
    look->result.pairs++;
    look->over = counts > look->over_j_counts;
    if (look->over || look->result.pairs * LOOK_PAIR_MS >= parameters->max_ms)
        return true;
    look->settled = look->at == 0 && settled(look, parameters, zeros);
    return look->settled;
}

/*
 * The supply does not move while a capacitor behind the look resistor fills: volts and current that say something else
 * at the end than in the first 100 ms do not fit, nor do volts that stand far under the supply though nothing flows.
 */
static CORE_RARE bool fits(const struct look *look, const struct look_parameters *parameters, uint16_t j_16ths)
{
    uint16_t now = look->supply_16ths;
    uint16_t first = look->first_supply_16ths;
    uint16_t apart = now > first ? (uint16_t)(now - first) : (uint16_t)(first - now);
    if (first != 0 && apart > now / 4u + SUPPLY_APART_16THS)
        return false;
    /* 0.3 of nominal times 8/3 is 0.8 of nominal. */
    return j_16ths >= ONE_COUNT_16THS || now * 3uL >= parameters->supply_lowest_counts * 16uL * 8u;
}

/*
 * Half C (supply - V)^2, the heat that the surge leaves in the switch, in counts: C = charge / V. A settled look has a
 * resistance, whose share of the charge is taken off; without one all of it counts, which is never too little. Charge
 * at most 1500 * 1023, times 1023 under 2^31.
 */
static CORE_RARE bool too_much_charge(const struct look *look, const struct look_parameters *parameters,
                                      const struct zeros *zeros, uint16_t v_16ths, uint16_t j_16ths)
{
    const struct look_result *result = &look->result;
    if (parameters->charge_limit == 0)
        return false;
    uint32_t zero_j = (uint32_t)result->pairs * zeros->j_16ths / 16u;
    uint32_t zero_v = (uint32_t)result->pairs * zeros->v_16ths / 16u;
    uint32_t charge = result->sum_j > zero_j ? result->sum_j - zero_j : 0;
    uint32_t volts = result->sum_v > zero_v ? result->sum_v - zero_v : 0;
    if (look->settled) {
        uint32_t pairs_16ths = volts * 256u / v_16ths;
        uint32_t through = (pairs_16ths > UINT16_MAX ? UINT16_MAX : pairs_16ths) * j_16ths / 256u;
        charge = charge > through ? charge - through : 0;
    }
    uint16_t across = (uint16_t)((look->supply_16ths > v_16ths ? look->supply_16ths - v_16ths : 0) / 16u);
    if (across > COUNTS_HIGHEST)
        across = COUNTS_HIGHEST;
    return across != 0 && charge * across / (v_16ths / 16u) > parameters->charge_limit / across;
}

/* The mean of the last 100 ms lies 50 ms behind; the switch closes at most 16 ms after the look. */
uint16_t look_volts_soon(const struct look *look)
{
    uint16_t last = (uint16_t)(look->last_v * 16u);
    uint16_t mean = look->result.end_v_16ths;
    return last > mean ? (uint16_t)(last + (last - mean) / 2u) : mean;
}

enum look_outcome look_outcome(struct look *look, const struct look_parameters *parameters, const struct zeros *zeros,
                               bool reversed)
{
    ends(look);
    uint16_t v = above(look->result.end_v_16ths, zeros->v_16ths);
    uint16_t j = above(look->result.end_j_16ths, zeros->j_16ths);
    look->supply_16ths = supply(look, parameters, zeros);
    if (reversed)
        return LOOK_REVERSED;
    if (look->over)
        return LOOK_SHORT;
    if (look->supply_16ths < 16u * parameters->supply_lowest_counts)
        return LOOK_NO_SUPPLY;
    if (look->supply_16ths > 16u * parameters->supply_highest_counts)
        return LOOK_TOO_HIGH;
    if (is_short(v, j, parameters))
        return LOOK_SHORT;
    if (!fits(look, parameters, j))
        return LOOK_SHUNT;
    if (too_much_charge(look, parameters, zeros, v, j))
        return LOOK_TOO_MUCH_CHARGE;
    if (v < times_256ths(j, parameters->low_v_per_j_256ths))
        return LOOK_LOW;
    return j < ONE_COUNT_16THS ? LOOK_NOTHING_JOINED : LOOK_CLEAR;
}
