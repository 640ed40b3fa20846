#include "limits.h"

#include <stddef.h>
#include <string.h>

#include "bytes.h"
#include "compiler.h"
#include "rom.h"

/*
 * How each field is checked and compared. The widths are those of the wire: the struct holds the values in the same
 * order and little-endian, so a field is found by its offset in the message.
 */
enum kind {
    KIND_RANGE = 1 << 0,   /* lowest..highest; wider = more */
    KIND_CURRENT = 1 << 1, /* 0 = not watched, else lowest..highest */
    KIND_BYTE = 1 << 2,
    KIND_LESS_IS_WIDER = 1 << 3
};

struct rule {
    uint8_t field;
    uint8_t at;
    uint8_t kind;
    uint16_t lowest;
    uint16_t highest;
};

enum { RESERVED_FIELD = 19, RESERVED_AT = 42, BUDGET_FIELD = 12, BUDGET_AT = 18 };
#define BUDGET_HIGHEST 2000000000uL

/* The budget, which is wider than 16 bits, is checked between fields 11 and 13. */
static const struct rule rules[] ROM = {
    {1, 0, KIND_RANGE, 0, 10000},
    {2, 2, KIND_CURRENT, 4, 1020},
    {3, 4, KIND_CURRENT, 4, 1020},
    {4, 6, KIND_CURRENT, 4, 1000},
    {5, 8, KIND_CURRENT, 4, 1020},
    {6, 10, KIND_CURRENT, 64, 16320},
    {7, 12, KIND_CURRENT, 64, 16000},
    {8, 14, KIND_RANGE | KIND_BYTE, 1, 8},
    {9, 15, KIND_RANGE | KIND_BYTE, 1, 8},
    {10, 16, KIND_RANGE | KIND_BYTE, 1, 8},
    {11, 17, KIND_RANGE | KIND_BYTE, 1, 8},
    {13, 22, KIND_RANGE, 0, 1020},
    {14, 24, KIND_RANGE | KIND_LESS_IS_WIDER, 0, 1023},
    {14, 26, KIND_RANGE | KIND_LESS_IS_WIDER, 0, 1023},
    {14, 28, KIND_RANGE | KIND_LESS_IS_WIDER, 0, 1023},
    {15, 30, KIND_RANGE, 0, 1023},
    {15, 32, KIND_RANGE, 0, 1023},
    {15, 34, KIND_RANGE, 0, 1023},
    {16, 36, KIND_CURRENT, 0, 1022},
    {17, 38, KIND_RANGE, 200, 10000},
    {18, 40, KIND_CURRENT, 0, 1000},
};
enum { RULES = sizeof rules / sizeof rules[0] };

STATIC_ASSERT(offsetof(struct limits, confirm_i) == 14);
STATIC_ASSERT(offsetof(struct limits, i2t_budget_counts2) == BUDGET_AT);
STATIC_ASSERT(offsetof(struct limits, rail_low_counts) == 24);
STATIC_ASSERT(offsetof(struct limits, look_over_j_counts) == 40);
STATIC_ASSERT(sizeof(struct limits) == RESERVED_AT);

static void rule_of(uint8_t number, struct rule *rule)
{
    ROM_READ(rule, &rules[number], sizeof *rule);
}

static uint16_t value_of(const struct limits *limits, const struct rule *rule)
{
    const uint8_t *at = (const uint8_t *)limits + rule->at;
    return rule->kind & KIND_BYTE ? *at : bytes_u16(at);
}

static enum refusal check(uint16_t value, const struct rule *rule)
{
    if (value > rule->highest)
        return REFUSAL_BAD_VALUE;
    if (value >= rule->lowest || (value == 0 && rule->kind & KIND_CURRENT))
        return REFUSAL_NONE;
    return rule->kind & KIND_CURRENT ? REFUSAL_LIMIT_TOO_FINE : REFUSAL_BAD_VALUE;
}

CORE_RARE enum refusal limits_read(const uint8_t *payload, struct limits *limits, uint8_t *field)
{
    memcpy(limits, payload, sizeof *limits);
    for (uint8_t number = 0; number < RULES; number++) {
        struct rule rule;
        rule_of(number, &rule);
        *field = BUDGET_FIELD;
        if (rule.field > BUDGET_FIELD && limits->i2t_budget_counts2 > BUDGET_HIGHEST)
            return REFUSAL_BAD_VALUE;
        *field = rule.field;
        enum refusal refusal = check(value_of(limits, &rule), &rule);
        if (refusal != REFUSAL_NONE)
            return refusal;
    }
    *field = RESERVED_FIELD;
    for (uint8_t at = RESERVED_AT; at < LIMITS_BYTES; at++)
        if (payload[at] != 0)
            return REFUSAL_BAD_VALUE;
    *field = 0;
    return REFUSAL_NONE;
}

static bool wider(uint32_t now, uint32_t next, bool zero_is_widest)
{
    if (zero_is_widest && now == 0)
        return false;
    return next > now || (zero_is_widest && next == 0);
}

CORE_RARE uint8_t limits_wider(const struct limits *now, const struct limits *next)
{
    for (uint8_t number = 0; number < RULES; number++) {
        struct rule rule;
        rule_of(number, &rule);
        if (rule.field > BUDGET_FIELD && wider(now->i2t_budget_counts2, next->i2t_budget_counts2, true))
            return BUDGET_FIELD;
        uint16_t was = value_of(now, &rule);
        uint16_t is = value_of(next, &rule);
        bool is_wider = rule.kind & KIND_LESS_IS_WIDER ? is < was : wider(was, is, (rule.kind & KIND_CURRENT) != 0);
        if (is_wider)
            return rule.field;
    }
    return 0;
}
