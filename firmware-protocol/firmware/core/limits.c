#include "limits.h"

#include <stddef.h>

#include "fields.h"
#include "rom.h"

static const struct field fields[] ROM = {
    {1, 0, 0, 0, 10000},
    {2, 2, FIELD_ZERO_IS_NONE, 4, 1020},
    {3, 4, FIELD_ZERO_IS_NONE, 4, 1020},
    {4, 6, FIELD_ZERO_IS_NONE, 4, 1000},
    {5, 8, FIELD_ZERO_IS_NONE, 4, 1020},
    {6, 10, FIELD_ZERO_IS_NONE, 64, 16320},
    {7, 12, FIELD_ZERO_IS_NONE, 64, 16000},
    {8, 14, FIELD_BYTE, 1, 8},
    {9, 15, FIELD_BYTE, 1, 8},
    {10, 16, FIELD_BYTE, 1, 8},
    {11, 17, FIELD_BYTE, 1, 8},
    {12, 18, FIELD_LONG | FIELD_ZERO_IS_NONE, 0, 0},
    {13, 22, 0, 0, 1020},
    {14, 24, FIELD_LESS_IS_WIDER, 0, 1023},
    {14, 26, FIELD_LESS_IS_WIDER, 0, 1023},
    {14, 28, FIELD_LESS_IS_WIDER, 0, 1023},
    {15, 30, 0, 0, 1023},
    {15, 32, 0, 0, 1023},
    {15, 34, 0, 0, 1023},
    {16, 36, FIELD_ZERO_IS_NONE, 0, 1022},
    {17, 38, 0, 200, 10000},
    {18, 40, FIELD_ZERO_IS_NONE, 0, 1000},
    {19, 42, FIELD_ZERO_IS_NONE | FIELD_ZERO_IS_NARROW, 4, 1020},
    {20, 44, 0, 0, 1000},
    {21, 46, 0, 0, 0}, /* reserved */
};
enum { FIELDS = sizeof fields / sizeof fields[0] };

STATIC_ASSERT(offsetof(struct limits, confirm_i) == 14);
STATIC_ASSERT(offsetof(struct limits, i2t_budget_counts2) == 18);
STATIC_ASSERT(offsetof(struct limits, rail_low_counts) == 24);
STATIC_ASSERT(offsetof(struct limits, look_over_j_counts) == 40);
STATIC_ASSERT(offsetof(struct limits, start_i_counts) == 42);
STATIC_ASSERT(sizeof(struct limits) == 46 && LIMITS_BYTES == 48);

enum refusal limits_check(const uint8_t *payload, uint8_t *field)
{
    return fields_check(payload, fields, FIELDS, field);
}

uint8_t limits_wider(const struct limits *now, const uint8_t *payload)
{
    /* The reserved bytes stand behind the struct; they are 0 in whatever passed the check, so they are left out. */
    return fields_wider((const uint8_t *)now, payload, fields, FIELDS - 1);
}
