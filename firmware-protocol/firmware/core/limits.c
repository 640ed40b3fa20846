#include "limits.h"

#include "bytes.h"

enum { FINEST_COUNTS = 4, FINEST_16THS = 64, RESERVED_FIELD = 19, RESERVED_AT = 42 };
#define I2T_HIGHEST 2000000000uL

static enum refusal range(uint16_t value, uint16_t lowest, uint16_t highest)
{
    return value < lowest || value > highest ? REFUSAL_BAD_VALUE : REFUSAL_NONE;
}

static enum refusal current(uint16_t value, uint16_t finest, uint16_t highest)
{
    if (value > highest)
        return REFUSAL_BAD_VALUE;
    return value != 0 && value < finest ? REFUSAL_LIMIT_TOO_FINE : REFUSAL_NONE;
}

static enum refusal check(const struct limits *l, uint8_t field)
{
    switch (field) {
    case 1:
        return range(l->inrush_ms, 0, 10000);
    case 2:
        return current(l->inrush_i_counts, FINEST_COUNTS, 1020);
    case 3:
        return current(l->running_i_counts, FINEST_COUNTS, 1020);
    case 4:
        return current(l->running_j_counts, FINEST_COUNTS, 1000);
    case 5:
        return current(l->peak_i_counts, FINEST_COUNTS, 1020);
    case 6:
        return current(l->mean_i_16ths, FINEST_16THS, 16320);
    case 7:
        return current(l->mean_j_16ths, FINEST_16THS, 16000);
    case 8:
        return range(l->confirm_i, 1, 8);
    case 9:
        return range(l->confirm_j, 1, 8);
    case 10:
        return range(l->confirm_rail, 1, 8);
    case 11:
        return range(l->confirm_v, 1, 8);
    case 12:
        return l->i2t_budget_counts2 > I2T_HIGHEST ? REFUSAL_BAD_VALUE : REFUSAL_NONE;
    case 13:
        return range(l->i2t_running_counts, 0, 1020);
    case 16:
        return range(l->over_v_counts, 0, 1022);
    case 17:
        return range(l->silence_ms, 200, 10000);
    case 18:
        return range(l->look_over_j_counts, 0, 1000);
    default:
        break;
    }
    for (uint8_t rail = 0; rail < RAILS; rail++) {
        uint16_t value = field == 14 ? l->rail_low_counts[rail] : l->rail_high_counts[rail];
        if (value > 1023)
            return REFUSAL_BAD_VALUE;
    }
    return REFUSAL_NONE;
}

enum refusal limits_read(const uint8_t *payload, struct limits *l, uint8_t *field)
{
    l->inrush_ms = bytes_u16(payload);
    l->inrush_i_counts = bytes_u16(payload + 2);
    l->running_i_counts = bytes_u16(payload + 4);
    l->running_j_counts = bytes_u16(payload + 6);
    l->peak_i_counts = bytes_u16(payload + 8);
    l->mean_i_16ths = bytes_u16(payload + 10);
    l->mean_j_16ths = bytes_u16(payload + 12);
    l->confirm_i = payload[14];
    l->confirm_j = payload[15];
    l->confirm_rail = payload[16];
    l->confirm_v = payload[17];
    l->i2t_budget_counts2 = bytes_u32(payload + 18);
    l->i2t_running_counts = bytes_u16(payload + 22);
    for (uint8_t rail = 0; rail < RAILS; rail++) {
        l->rail_low_counts[rail] = bytes_u16(payload + 24 + 2 * rail);
        l->rail_high_counts[rail] = bytes_u16(payload + 30 + 2 * rail);
    }
    l->over_v_counts = bytes_u16(payload + 36);
    l->silence_ms = bytes_u16(payload + 38);
    l->look_over_j_counts = bytes_u16(payload + 40);
    for (*field = 1; *field < RESERVED_FIELD; (*field)++) {
        enum refusal refusal = check(l, *field);
        if (refusal != REFUSAL_NONE)
            return refusal;
    }
    for (uint8_t at = RESERVED_AT; at < LIMITS_BYTES; at++)
        if (payload[at] != 0)
            return REFUSAL_BAD_VALUE;
    *field = 0;
    return REFUSAL_NONE;
}

/* 0 is not watched, the widest there is. */
static bool wider(uint32_t now, uint32_t next)
{
    return now != 0 && (next == 0 || next > now);
}

static bool wider_field(const struct limits *now, const struct limits *next, uint8_t field)
{
    switch (field) {
    case 1:
        return next->inrush_ms > now->inrush_ms;
    case 2:
        return wider(now->inrush_i_counts, next->inrush_i_counts);
    case 3:
        return wider(now->running_i_counts, next->running_i_counts);
    case 4:
        return wider(now->running_j_counts, next->running_j_counts);
    case 5:
        return wider(now->peak_i_counts, next->peak_i_counts);
    case 6:
        return wider(now->mean_i_16ths, next->mean_i_16ths);
    case 7:
        return wider(now->mean_j_16ths, next->mean_j_16ths);
    case 8:
        return next->confirm_i > now->confirm_i;
    case 9:
        return next->confirm_j > now->confirm_j;
    case 10:
        return next->confirm_rail > now->confirm_rail;
    case 11:
        return next->confirm_v > now->confirm_v;
    case 12:
        return wider(now->i2t_budget_counts2, next->i2t_budget_counts2);
    case 13:
        return next->i2t_running_counts > now->i2t_running_counts;
    case 16:
        return wider(now->over_v_counts, next->over_v_counts);
    case 17:
        return next->silence_ms > now->silence_ms;
    case 18:
        return wider(now->look_over_j_counts, next->look_over_j_counts);
    default:
        break;
    }
    for (uint8_t rail = 0; rail < RAILS; rail++) {
        if (field == 14 && next->rail_low_counts[rail] < now->rail_low_counts[rail])
            return true;
        if (field == 15 && next->rail_high_counts[rail] > now->rail_high_counts[rail])
            return true;
    }
    return false;
}

uint8_t limits_wider(const struct limits *now, const struct limits *next)
{
    for (uint8_t field = 1; field < RESERVED_FIELD; field++)
        if (wider_field(now, next, field))
            return field;
    return 0;
}
