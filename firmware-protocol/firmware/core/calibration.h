/* Scales of the channels: from the EEPROM when valid, else nominal. The record is message 0x0C and its CRC. */
#ifndef CORE_CALIBRATION_H
#define CORE_CALIBRATION_H

#include <stdbool.h>
#include <stdint.h>

#include "plan.h"
#include "store.h"
#include "wire.h"
#include "wire_out.h"

enum { CALIBRATION_RECORD_BYTES = CALIBRATION_BYTES + STORE_CRC_BYTES, SCALE_AT = 4, SCALE_BYTES = 8 };

struct calibration {
    uint8_t state; /* enum store_record: 0 blank, 1 valid, 2 damaged, as in hello */
};

void calibration_load(struct calibration *calibration);
/* Refuses a scale whose full equals its zero. */
enum refusal calibration_check(const uint8_t *payload, uint8_t *field);
/* Counts at which the channel reads nothing. */
uint16_t calibration_rest_counts(const struct calibration *calibration, uint8_t channel);
/* Counts at which the channel reads a value, in its base units; held to 0..1023. */
uint16_t calibration_counts(const struct calibration *calibration, uint8_t channel, int32_t value);

/* Where the zero of I, J or V may lie: round the calibrated one, or what the parts of a new box allow. */
struct zero_band {
    uint16_t lowest_counts;
    uint16_t highest_counts;
};
void calibration_zero_band(const struct calibration *calibration, uint8_t channel, struct zero_band *band);
/* So many bytes of message 0x0C, into a frame that was begun. */
void calibration_put(const struct calibration *calibration, uint8_t from, uint8_t length, struct wire_out *out);

#endif
