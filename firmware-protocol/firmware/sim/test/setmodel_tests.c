#include "setmodel.h"

#include <math.h>

#include "check.h"

void setmodel_tests(void)
{
    struct waveform wave;
    struct failure failure = {.text = ""};
    CHECK(waveform_read(&wave, test_file("t_s,supply_V,supply_A,rail1_V,meter_V\n0,10,1,0,0\n1,12,0.5,8,0.25\n"),
                        &failure));
    struct frontend frontend;
    frontend_defaults(&frontend);
    frontend.look_load_ohm = 330; /* half of the supply's 12 V, tau = 1000 uF * 165 ohm = 0.165 s */
    struct set_model set;
    set_model_init(&set, &wave, &frontend);

    /* open, before the first closing */
    CHECK_NUMBER(set_model_value(&set, CHANNEL_I, 1), 0, 0);
    CHECK_NUMBER(set_model_value(&set, CHANNEL_V, 1), 0, 0);
    CHECK_NUMBER(set_model_value(&set, CHANNEL_R1, 1), 0, 0);
    CHECK(isnan(set_model_value(&set, CHANNEL_R2, 1))); /* no column: open clip */
    CHECK_NUMBER(set_model_value(&set, CHANNEL_H, 1), 0, 0);

    /* look from 2 s on: V rises to 6 V by 1 - 1/e in 0.165 s, the rest drops over 330 ohm */
    set_model_change(&set, SUPPLY_LOOK, 2);
    CHECK_NUMBER(set_model_value(&set, CHANNEL_V, 2), 0, 1e-12);
    CHECK_NUMBER(set_model_value(&set, CHANNEL_J, 2), 12.0 / 330, 1e-12);
    CHECK_NUMBER(set_model_value(&set, CHANNEL_V, 2.165), 3.7927233529713, 1e-9); /* 6 * (1 - exp(-1)) */
    CHECK_NUMBER(set_model_value(&set, CHANNEL_V, 4), 6, 1e-4);
    CHECK_NUMBER(set_model_value(&set, CHANNEL_I, 4), 6.0 / 330, 1e-6);
    CHECK_NUMBER(set_model_value(&set, CHANNEL_R1, 4), 0, 0);

    /* on: the waveform from its beginning */
    set_model_change(&set, SUPPLY_ON, 5);
    CHECK_NUMBER(set_model_value(&set, CHANNEL_V, 5.5), 11, 1e-12);
    CHECK_NUMBER(set_model_value(&set, CHANNEL_I, 5.5), 0.75, 1e-12);
    CHECK_NUMBER(set_model_value(&set, CHANNEL_J, 5.5), 0.75, 1e-12);
    CHECK_NUMBER(set_model_value(&set, CHANNEL_R1, 5.5), 4, 1e-12);
    CHECK_NUMBER(set_model_value(&set, CHANNEL_M, 5.5), 0.125, 1e-12);
    CHECK_NUMBER(set_model_value(&set, CHANNEL_H, 5.5), 0, 0);

    /* off: current gone at once, V and rails fall with 200 ms */
    set_model_change(&set, SUPPLY_OFF, 6);
    CHECK_NUMBER(set_model_value(&set, CHANNEL_I, 6), 0, 0);
    CHECK_NUMBER(set_model_value(&set, CHANNEL_M, 6), 0, 0);
    CHECK_NUMBER(set_model_value(&set, CHANNEL_V, 6), 12, 1e-12);
    CHECK_NUMBER(set_model_value(&set, CHANNEL_V, 6.2), 4.4145532940573, 1e-9); /* 12 / e */
    CHECK_NUMBER(set_model_value(&set, CHANNEL_R1, 6.2), 2.9430355293715, 1e-9);

    /* the next look begins from what is left, and the next closing at the waveform's beginning */
    set_model_change(&set, SUPPLY_LOOK, 6.2);
    CHECK_NUMBER(set_model_value(&set, CHANNEL_V, 6.2), 4.4145532940573, 1e-9);
    set_model_change(&set, SUPPLY_ON, 7);
    CHECK_NUMBER(set_model_value(&set, CHANNEL_V, 7), 10, 1e-12);

    /* a short across the look: all of the supply over 330 ohm, at once */
    frontend.look_load_ohm = 0;
    set_model_change(&set, SUPPLY_LOOK, 8);
    CHECK_NUMBER(set_model_value(&set, CHANNEL_V, 8), 0, 0);
    CHECK_NUMBER(set_model_value(&set, CHANNEL_J, 8), 12.0 / 330, 1e-12);
    waveform_free(&wave);
}
