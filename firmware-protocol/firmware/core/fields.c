#include "fields.h"

#include <stdbool.h>

#include "bytes.h"
#include "compiler.h"
#include "rom.h"

static CORE_RARE uint32_t value_of(const uint8_t *payload, const struct field *field)
{
    const uint8_t *at = payload + field->at;
    if (field->kind & FIELD_LONG)
        return bytes_u32(at);
    return field->kind & FIELD_BYTE ? *at : bytes_u16(at);
}

enum refusal fields_check(const uint8_t *payload, const struct field *table, uint8_t count, uint8_t *wrong)
{
    for (; count > 0; count--, table++) {
        struct field field;
        ROM_READ(&field, table, sizeof field);
        uint32_t value = value_of(payload, &field);
        uint32_t highest = field.kind & FIELD_LONG ? FIELD_LONG_HIGHEST : field.highest;
        *wrong = field.number;
        if (value > highest)
            return REFUSAL_BAD_VALUE;
        if (value >= field.lowest)
            continue;
        if (!(field.kind & FIELD_ZERO_IS_NONE))
            return REFUSAL_BAD_VALUE;
        if (value != 0)
            return REFUSAL_LIMIT_TOO_FINE;
    }
    *wrong = 0;
    return REFUSAL_NONE;
}

uint8_t fields_wider(const uint8_t *now, const uint8_t *next, const struct field *table, uint8_t count)
{
    for (; count > 0; count--, table++) {
        struct field field;
        ROM_READ(&field, table, sizeof field);
        uint32_t was = value_of(now, &field);
        uint32_t is = value_of(next, &field);
        if (was == is)
            continue;
        bool wider = is > was;
        if (field.kind & FIELD_LESS_IS_WIDER)
            wider = !wider;
        if ((field.kind & (FIELD_ZERO_IS_NONE | FIELD_ZERO_IS_NARROW)) == FIELD_ZERO_IS_NONE)
            wider = was != 0 && (wider || is == 0);
        if (wider)
            return field.number;
    }
    return 0;
}
