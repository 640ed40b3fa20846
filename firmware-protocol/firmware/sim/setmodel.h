/* What the probe's inputs see of the set: open, joined through the look resistor, or on the waveform. */
#ifndef SIM_SETMODEL_H
#define SIM_SETMODEL_H

#include "frontend.h"
#include "waveform.h"

enum supply_state { SUPPLY_OFF, SUPPLY_LOOK, SUPPLY_ON };

struct set_model {
    const struct waveform *wave;
    const struct frontend *frontend;
    enum supply_state state;
    double since_s;      /* when the state began */
    double from[CHANNELS]; /* V and rails at that moment */
};

void set_model_init(struct set_model *model, const struct waveform *wave, const struct frontend *frontend);
void set_model_change(struct set_model *model, enum supply_state state, double now_s);

/* Volts or amperes at the channel's clip; NAN when a rail's clip is open. */
double set_model_value(const struct set_model *model, enum channel channel, double now_s);

#endif
