/* The fields of a message that holds numbers: one table says how each is checked and what makes it wider. */
#ifndef CORE_FIELDS_H
#define CORE_FIELDS_H

#include <stdint.h>

#include "wire.h"

enum {
    FIELD_BYTE = 1 << 0,         /* else two bytes */
    FIELD_LONG = 1 << 1,         /* four bytes; its highest is FIELD_LONG_HIGHEST */
    FIELD_ZERO_IS_NONE = 1 << 2, /* 0 = not watched, or lowest..highest; else lowest..highest */
    FIELD_LESS_IS_WIDER = 1 << 3,
    FIELD_ZERO_IS_NARROW = 1 << 4 /* with zero-is-none: none there is allows nothing */
};
#define FIELD_LONG_HIGHEST 2000000000uL

/* Tables are in ROM, in the order of the numbers. */
struct field {
    uint8_t number;
    uint8_t at;
    uint8_t kind;
    uint8_t lowest;
    uint16_t highest;
};

/* REFUSAL_NONE, or the reason and in `wrong` the number of the first wrong field (0 = none). */
enum refusal fields_check(const uint8_t *payload, const struct field *table, uint8_t count, uint8_t *wrong);
/* Number of the first field that is wider in `next`, 0 = none. */
uint8_t fields_wider(const uint8_t *now, const uint8_t *next, const struct field *table, uint8_t count);

#endif
