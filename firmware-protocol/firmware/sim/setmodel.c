#include "setmodel.h"

#include <math.h>
#include <string.h>

static const double LOOK_OHM = 330;

static const enum wave_column COLUMN_OF[CHANNELS] = {WAVE_SUPPLY_A, WAVE_SUPPLY_A, WAVE_SUPPLY_V, WAVE_RAIL1_V,
                                                     WAVE_RAIL2_V,  WAVE_RAIL3_V,  WAVE_HEAD_V,   WAVE_METER_V};

void set_model_init(struct set_model *model, const struct waveform *wave, const struct frontend *frontend)
{
    memset(model, 0, sizeof *model);
    model->wave = wave;
    model->frontend = frontend;
}

static bool is_rail(enum channel channel)
{
    return channel >= CHANNEL_R1 && channel <= CHANNEL_R3;
}

/* Resistance and capacitance behind the look resistor, charged from what was left on them. */
static double look_volts(const struct set_model *model, double elapsed_s)
{
    double load_ohm = model->frontend->look_load_ohm;
    double end_v = model->frontend->look_supply_v * load_ohm / (load_ohm + LOOK_OHM);
    double tau_s = model->frontend->look_load_f * load_ohm * LOOK_OHM / (load_ohm + LOOK_OHM);
    return tau_s > 0 ? end_v + (model->from[CHANNEL_V] - end_v) * exp(-elapsed_s / tau_s) : end_v;
}

double set_model_value(const struct set_model *model, enum channel channel, double now_s)
{
    bool connected = model->wave->value[COLUMN_OF[channel]] != NULL;
    double elapsed_s = now_s - model->since_s;
    if (is_rail(channel) && !connected)
        return NAN;
    if (model->state == SUPPLY_ON)
        return connected ? waveform_at(model->wave, COLUMN_OF[channel], elapsed_s) : 0;
    if (model->state == SUPPLY_LOOK) {
        double volts = look_volts(model, elapsed_s);
        if (channel == CHANNEL_V)
            return volts;
        return channel <= CHANNEL_J ? (model->frontend->look_supply_v - volts) / LOOK_OHM : 0;
    }
    if (channel == CHANNEL_V || is_rail(channel))
        return model->from[channel] * exp(-elapsed_s / model->frontend->decay_s);
    return 0;
}

void set_model_change(struct set_model *model, enum supply_state state, double now_s)
{
    for (int c = CHANNEL_V; c <= CHANNEL_R3; c++) {
        double value = set_model_value(model, (enum channel)c, now_s);
        model->from[c] = isnan(value) ? 0 : value;
    }
    model->state = state;
    model->since_s = now_s;
}
