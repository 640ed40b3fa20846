#include "calibration.h"

#include "bytes.h"
#include "hal.h"

/* Of a probe that was never calibrated: 5 % expanded (k = 2), so half of it, in 1e-5; half a count. */
enum { NOMINAL_GAIN_U = 2500, NOMINAL_OFFSET_U = 50, GAIN_U_AT = 68 };

static int32_t nominal_zero(uint8_t channel)
{
    switch (channel) {
    case CHANNEL_R1:
    case CHANNEL_R2:
    case CHANNEL_R3:
        return -20000000;
    case CHANNEL_H:
        return -10000000;
    case CHANNEL_M:
        return -2500000;
    default:
        return 0;
    }
}

static int32_t nominal_full(uint8_t channel)
{
    switch (channel) {
    case CHANNEL_I:
        return 12500000;
    case CHANNEL_J:
        return 400000;
    case CHANNEL_V:
        return 60000000;
    default:
        return -nominal_zero(channel);
    }
}

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

static uint8_t kept(uint8_t at)
{
    return hal_eeprom_read((uint16_t)(STORE_CALIBRATION_AT + at));
}

static uint16_t kept_u16(uint8_t at)
{
    uint8_t bytes[2] = {kept(at), kept((uint8_t)(at + 1))};
    return bytes_u16(bytes);
}

static uint32_t kept_u32(uint8_t at)
{
    uint8_t bytes[4];
    for (uint8_t i = 0; i < 4; i++)
        bytes[i] = kept((uint8_t)(at + i));
    return bytes_u32(bytes);
}

static void scale(const struct calibration *calibration, uint8_t channel, int32_t *zero, int32_t *full)
{
    if (calibration->state == STORE_VALID) {
        uint8_t at = (uint8_t)(SCALE_AT + SCALE_BYTES * channel);
        *zero = (int32_t)kept_u32(at);
        *full = (int32_t)kept_u32((uint8_t)(at + 4));
    } else {
        *zero = nominal_zero(channel);
        *full = nominal_full(channel);
    }
}

/*
 * floor((0 - zero) / (full - zero) * 1024 + 0.5), held to 0..1023. Both differences fit 33 bits, so they are taken as
 * unsigned 32 bits of their size; long division bit by bit, because it is needed once an arming.
 */
uint16_t calibration_rest_counts(const struct calibration *calibration, uint8_t channel)
{
    int32_t zero;
    int32_t full;
    scale(calibration, channel, &zero, &full);
    bool rising = full > zero;
    if ((rising && zero >= 0) || (!rising && zero <= 0))
        return 0;
    uint32_t span = rising ? (uint32_t)full - (uint32_t)zero : (uint32_t)zero - (uint32_t)full;
    uint32_t rest = rising ? 0u - (uint32_t)zero : (uint32_t)zero;
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

uint32_t calibration_made_s(const struct calibration *calibration)
{
    return calibration->state == STORE_VALID ? kept_u32(0) : 0;
}

void calibration_put_scales(const struct calibration *calibration, struct wire_out *out)
{
    for (uint8_t channel = 0; channel < CHANNELS; channel++) {
        int32_t zero;
        int32_t full;
        scale(calibration, channel, &zero, &full);
        wire_out_u32(out, (uint32_t)zero);
        wire_out_u32(out, (uint32_t)full);
    }
}

void calibration_put(const struct calibration *calibration, struct wire_out *out)
{
    wire_out_u32(out, calibration_made_s(calibration));
    calibration_put_scales(calibration, out);
    for (uint8_t i = 0; i < 2 * CHANNELS; i++) {
        uint16_t nominal = i < CHANNELS ? NOMINAL_GAIN_U : NOMINAL_OFFSET_U;
        uint8_t at = (uint8_t)(GAIN_U_AT + 2 * i);
        uint16_t value = calibration->state == STORE_VALID ? kept_u16(at) : nominal;
        wire_out_u16(out, value);
    }
}
