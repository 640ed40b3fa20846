/* Front-end file: scales of the eight channels, the set during the look, digital inputs and their changes. */
#ifndef SIM_FRONTEND_H
#define SIM_FRONTEND_H

#include <stddef.h>
#include <stdint.h>

#include "failure.h"

/* Numbers as in wire-format.md section 2; they are the converter's inputs too. */
enum channel { CHANNEL_I, CHANNEL_J, CHANNEL_V, CHANNEL_R1, CHANNEL_R2, CHANNEL_R3, CHANNEL_H, CHANNEL_M, CHANNELS };

enum { FULL_COUNTS = 1024, HIGHEST_COUNT = 1023 };

struct scale {
    double zero; /* volts or amperes */
    double full;
};

/* An input apart from its scale: counts += 4 bow x (1 - x); its amplifier gives no less than lowest (negative: any). */
struct input_error {
    double bow_counts;
    double lowest_counts;
};

/* What a calibration holds of one channel; standard uncertainties in 1e-5 of the gain and 1/100 count. */
struct kept {
    struct scale scale;
    uint16_t gain_e5;
    uint16_t zero_hundredths;
};

enum digital_input {
    INPUT_CHASSIS_CLIP,
    INPUT_SUPPLY_PRESENT,
    INPUT_SUPPLY_REVERSED,
    INPUT_BUTTON,
    INPUT_PEDAL,
    INPUT_ISOLATED_LINK,
    INPUTS
};

struct input_change {
    double at_ms; /* since the chip's power-on */
    bool is_hard_short;
    enum digital_input input;
    bool level;
    double hard_short_a;
};

enum { MAX_CHANGES = 256 };

struct frontend {
    struct scale scale[CHANNELS];
    struct input_error input_error[CHANNELS];
    bool channels_given;
    bool calibrated; /* the simulated EEPROM holds what is in kept */
    bool calibrated_given;
    bool kept_given[CHANNELS];
    struct kept kept[CHANNELS];
    double clock_share; /* by how much the chip's clock is fast */
    double look_supply_v;
    double look_load_ohm;
    double look_load_f;
    double decay_s;
    bool input[INPUTS];
    double hard_short_a;
    size_t changes; /* in order of time */
    struct input_change change[MAX_CHANGES];
};

double frontend_base_per_unit(enum channel channel);
void frontend_defaults(struct frontend *frontend);
/* The box as a blank EEPROM takes it to be: what the circuit gives, without tolerances. */
void frontend_ideal(struct frontend *frontend);
bool frontend_read(struct frontend *frontend, const char *path, struct failure *failure);
bool frontend_read_text(struct frontend *frontend, const char *name, const char *text, struct failure *failure);

/*
 * Counts of a physical value: floor((value - zero) / (full - zero) * 1024 + 0.5 + noise) with the input's errors, held to
 * 0..1023. NAN means an open clip: the input stands at its upper end, a value that no rail in range has.
 */
uint16_t frontend_counts(const struct frontend *frontend, enum channel channel, double value, double noise_counts);

/* Zero or full of a channel in the base units of wire-format.md (microampere, microvolt, H nanovolt). */
int32_t frontend_base_units(enum channel channel, double value);

const char *frontend_channel_name(enum channel channel);

#endif
