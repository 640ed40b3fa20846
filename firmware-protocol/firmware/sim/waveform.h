/* Waveform file: physical values at the set over the time since the switch closed. */
#ifndef SIM_WAVEFORM_H
#define SIM_WAVEFORM_H

#include <stddef.h>

#include "failure.h"

enum wave_column {
    WAVE_SUPPLY_V,
    WAVE_SUPPLY_A,
    WAVE_RAIL1_V,
    WAVE_RAIL2_V,
    WAVE_RAIL3_V,
    WAVE_HEAD_V,
    WAVE_METER_V,
    WAVE_COLUMNS
};

struct waveform {
    size_t rows;
    double *t_s;
    double *value[WAVE_COLUMNS]; /* NULL: the column is absent, nothing is connected there */
};

/* Reads RFC 4180 text with a header line. On failure says file, line, field and what was expected. */
bool waveform_read(struct waveform *wave, const char *path, struct failure *failure);
void waveform_free(struct waveform *wave);

/* Column by its header name; WAVE_COLUMNS when there is none of that name. */
enum wave_column waveform_column(const char *name);
const char *waveform_column_name(enum wave_column column);

/* Linear between rows, the last row held. The column must be present. */
double waveform_at(const struct waveform *wave, enum wave_column column, double t_s);

/*
 * Earliest time from after_s on at which sign * value passes sign * level: upwards when above is false, downwards
 * (or back to the level) when it is true. Returns a negative number when that never happens.
 */
double waveform_next_crossing(const struct waveform *wave, enum wave_column column, double level, int sign, bool above,
                              double after_s);

#endif
