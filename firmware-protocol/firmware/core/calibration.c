#include "calibration.h"

#include <stddef.h>

#include "bytes.h"
#include "compiler.h"
#include "hal.h"
#include "rom.h"

/* A probe that was never calibrated: 5 % expanded (k = 2), so half of it, in 1e-5; half a count. */
#define NOMINAL_GAIN_U 2500
#define NOMINAL_OFFSET_U 50
#define FOR_EACH_CHANNEL(x) {x, x, x, x, x, x, x, x}

struct record {
    uint32_t made_s;
    int32_t scale[CHANNELS][2];
    uint16_t gain_u[CHANNELS];
    uint16_t offset_u[CHANNELS];
};
STATIC_ASSERT(sizeof(struct record) == CALIBRATION_BYTES);
STATIC_ASSERT(offsetof(struct record, scale) == SCALE_AT);

static const struct record nominal ROM = {
    0,
    {{-244141, 12255859}, /* what the circuit gives when nothing flows: 20 counts, 20, and 10 of V */
     {-7813, 392188},
     {-601504, 60992496},
     {-20000000, 20000000},
     {-20000000, 20000000},
     {-20000000, 20000000},
     {-10000000, 10000000},
     {-2500000, 2500000}},
    FOR_EACH_CHANNEL(NOMINAL_GAIN_U),
    FOR_EACH_CHANNEL(NOMINAL_OFFSET_U)};

void calibration_load(struct calibration *calibration)
{
    calibration->state = (uint8_t)store_check(STORE_CALIBRATION_AT, CALIBRATION_RECORD_BYTES);
}

enum refusal calibration_check(const uint8_t *payload, uint8_t *field)
{
    *field = 0;
    for (uint8_t channel = 0; channel < CHANNELS; channel++) {
        const uint8_t *scale = payload + SCALE_AT + SCALE_BYTES * channel;
        if (bytes_u32(scale) == bytes_u32(scale + 4)) {
            *field = 2;
            return REFUSAL_BAD_VALUE;
        }
    }
    return REFUSAL_NONE;
}

static uint8_t in_force(const struct calibration *calibration, uint8_t at)
{
    if (calibration->state == STORE_VALID)
        return hal_eeprom_read((uint16_t)(STORE_CALIBRATION_AT + at));
    uint8_t byte;
    ROM_READ(&byte, (const uint8_t *)&nominal + at, 1);
    return byte;
}

/*
 * floor((value - zero) / (full - zero) * 1024 + 0.5), held to 0..1023. Both differences fit 33 bits, so they are taken
 * as unsigned 32 bits of their size; long division bit by bit, because it is needed a few times an arming.
 */
uint16_t calibration_counts(const struct calibration *calibration, uint8_t channel, int32_t value)
{
    uint8_t scale[SCALE_BYTES];
    for (uint8_t at = 0; at < SCALE_BYTES; at++)
        scale[at] = in_force(calibration, (uint8_t)(SCALE_AT + SCALE_BYTES * channel + at));
    int32_t zero = (int32_t)bytes_u32(scale);
    int32_t full = (int32_t)bytes_u32(scale + 4);
    bool rising = full > zero;
    if (rising ? zero >= value : zero <= value)
        return 0;
    uint32_t span = rising ? (uint32_t)full - (uint32_t)zero : (uint32_t)zero - (uint32_t)full;
    uint32_t rest = rising ? (uint32_t)value - (uint32_t)zero : (uint32_t)zero - (uint32_t)value;
    if (rest >= span)
        return COUNTS_HIGHEST;
    uint16_t twice = 0; /* counts in halves: 11 bits of the quotient */
    for (uint8_t bit = 0; bit < 11; bit++) {
        bool carry = (rest & 0x80000000u) != 0;
        rest <<= 1;
        twice = (uint16_t)(twice << 1);
        if (carry || rest >= span) {
            rest -= span;
            twice |= 1;
        }
    }
    uint16_t counts = (uint16_t)((twice + 1u) >> 1);
    return counts > COUNTS_HIGHEST ? COUNTS_HIGHEST : counts;
}

uint16_t calibration_rest_counts(const struct calibration *calibration, uint8_t channel)
{
    return calibration_counts(calibration, channel, 0);
}

/*
 * Of a box that was never calibrated: pedestal and offsets at the ends of their tolerances, 10 to 40 C, a year old, and
 * up to a count more (14.0 to 25.8, 12.1 to 29.7, 7.7 to 12.3). A lead that broke or a dead amplifier reads 0 to 3.
 */
static const struct zero_band new_box[] ROM = {{13, 27}, {11, 31}, {7, 13}};
enum { ZERO_MOVES = 3 };

void calibration_zero_band(const struct calibration *calibration, uint8_t channel, struct zero_band *band)
{
    if (calibration->state != STORE_VALID) {
        ROM_READ(band, &new_box[channel], sizeof *band);
        return;
    }
    uint16_t rest = calibration_rest_counts(calibration, channel);
    band->lowest_counts = rest > ZERO_MOVES ? (uint16_t)(rest - ZERO_MOVES) : 0;
    band->highest_counts = (uint16_t)(rest + ZERO_MOVES);
}

void calibration_put(const struct calibration *calibration, uint8_t from, uint8_t length, struct wire_out *out)
{
    for (; length > 0; length--)
        wire_out_u8(out, in_force(calibration, from++));
}
