#include "frontend.h"

#include <math.h>
#include <stdlib.h>
#include <string.h>

#include "boxkeys.h"
#include "fields.h"
#include "json.h"

static const char *const CHANNEL_NAMES[CHANNELS] = {"I", "J", "V", "R1", "R2", "R3", "H", "M"};
static const char *const INPUT_KEYS[INPUTS] = {"chassisClip", "supplyPresent", "supplyReversed",
                                               "button",      "pedal",         "isolatedLink"};
enum { REST_COUNTS = 5 };
static const double HARD_SHORT_LOWEST_A = 0.5; /* above anything that flows through the 330 ohm of the look */
static const double HARD_SHORT_HIGHEST_A = 12.5;

const char *frontend_channel_name(enum channel channel)
{
    return CHANNEL_NAMES[channel];
}

/* Current and volts of the supply stand at some counts when nothing is there. */
static struct scale pedestal(double range, double counts)
{
    double rest = range * counts / FULL_COUNTS;
    return (struct scale){-rest, range - rest};
}

void frontend_defaults(struct frontend *frontend)
{
    memset(frontend, 0, sizeof *frontend);
    frontend->scale[CHANNEL_I] = pedestal(12.5, REST_COUNTS);
    frontend->scale[CHANNEL_J] = pedestal(0.4, REST_COUNTS);
    frontend->scale[CHANNEL_V] = pedestal(60, REST_COUNTS);
    for (int c = CHANNEL_R1; c <= CHANNEL_R3; c++)
        frontend->scale[c] = (struct scale){-20, 20};
    frontend->scale[CHANNEL_H] = (struct scale){-0.01, 0.01};
    frontend->scale[CHANNEL_M] = (struct scale){-2.5, 2.5};
    frontend->look_supply_v = 12;
    frontend->look_load_ohm = 1000;
    frontend->look_load_f = 1000e-6;
    frontend->decay_s = 0.2;
    frontend->input[INPUT_CHASSIS_CLIP] = true;
    frontend->input[INPUT_SUPPLY_PRESENT] = true;
    frontend->input[INPUT_ISOLATED_LINK] = true;
    frontend->hard_short_a = 10;
    for (int c = 0; c < CHANNELS; c++)
        frontend->input_error[c] = (struct input_error){0, -1};
}

void frontend_ideal(struct frontend *frontend)
{
    frontend_defaults(frontend);
    frontend->scale[CHANNEL_I] = pedestal(12.5, 20);
    frontend->scale[CHANNEL_J] = pedestal(0.4, 20);
    frontend->scale[CHANNEL_V] = pedestal(61.594, 10);
}

double frontend_base_per_unit(enum channel channel)
{
    return channel == CHANNEL_H ? 1e9 : 1e6;
}

int32_t frontend_base_units(enum channel channel, double value)
{
    return (int32_t)lround(value * frontend_base_per_unit(channel));
}

uint16_t frontend_counts(const struct frontend *frontend, enum channel channel, double value, double noise_counts)
{
    const struct scale *scale = &frontend->scale[channel];
    const struct input_error *error = &frontend->input_error[channel];
    if (isnan(value))
        return HIGHEST_COUNT;
    double share = (value - scale->zero) / (scale->full - scale->zero);
    double straight = share * FULL_COUNTS + 4 * error->bow_counts * share * (1 - share);
    double counts = floor(fmax(error->lowest_counts, straight) + 0.5 + noise_counts);
    if (error->lowest_counts < 0)
        counts = floor(straight + 0.5 + noise_counts);
    if (counts < 0)
        return 0;
    return counts > HIGHEST_COUNT ? HIGHEST_COUNT : (uint16_t)counts;
}

static bool take_look(struct frontend *frontend, const char *name, const struct json *object, struct failure *failure)
{
    if (!field_object(name, object, "look", failure))
        return false;
    for (size_t i = 0; i < object->count; i++) {
        const struct json *value = &object->items[i];
        const char *key = object->keys[i];
        bool ok;
        if (strcmp(key, "supplyV") == 0) {
            ok = field_number(name, value, "look.supplyV", 0, 1000, &frontend->look_supply_v, failure);
        } else if (strcmp(key, "loadOhm") == 0) {
            ok = field_number(name, value, "look.loadOhm", 0, 1e12, &frontend->look_load_ohm, failure);
        } else if (strcmp(key, "loadUf") == 0) {
            double microfarad = 0;
            ok = field_number(name, value, "look.loadUf", 0, 1e9, &microfarad, failure);
            frontend->look_load_f = microfarad * 1e-6;
        } else {
            ok = fail(failure, "%s:%d: unknown key look.%s; expected supplyV, loadOhm, loadUf", name, value->line, key);
        }
        if (!ok)
            return false;
    }
    return true;
}

/* Index of the digital input that the key names, INPUTS when there is none. */
static int input_of(const char *key)
{
    int input = 0;
    while (input < INPUTS && strcmp(key, INPUT_KEYS[input]) != 0)
        input++;
    return input;
}

static bool take_change(struct frontend *frontend, const char *name, const struct json *object, struct failure *failure)
{
    if (!field_object(name, object, "at[]", failure))
        return false;
    double at_ms = NAN;
    for (size_t i = 0; i < object->count; i++)
        if (strcmp(object->keys[i], "ms") == 0
            && !field_number(name, &object->items[i], "at[].ms", 0, 1e9, &at_ms, failure))
            return false;
    if (isnan(at_ms))
        return fail(failure, "%s:%d: at[] without ms; expected the time of the change in milliseconds", name,
                    object->line);
    for (size_t i = 0; i < object->count; i++) {
        const char *key = object->keys[i];
        const struct json *value = &object->items[i];
        if (strcmp(key, "ms") == 0)
            continue;
        if (frontend->changes == MAX_CHANGES)
            return fail(failure, "%s:%d: too many changes in at; expected at most %d", name, value->line, MAX_CHANGES);
        struct input_change change = {.at_ms = at_ms, .is_hard_short = strcmp(key, "hardShortA") == 0};
        int input = input_of(key);
        if (!change.is_hard_short && input == INPUTS)
            return fail(failure,
                        "%s:%d: unknown key at[].%s; expected ms, button, pedal, chassisClip, supplyPresent, "
                        "supplyReversed, isolatedLink, hardShortA",
                        name, value->line, key);
        change.input = (enum digital_input)(input == INPUTS ? 0 : input);
        bool ok = change.is_hard_short ? field_number(name, value, "at[].hardShortA", HARD_SHORT_LOWEST_A,
                                                     HARD_SHORT_HIGHEST_A, &change.hard_short_a, failure)
                                       : field_bool(name, value, key, &change.level, failure);
        if (!ok)
            return false;
        size_t place = frontend->changes++;
        for (; place > 0 && frontend->change[place - 1].at_ms > at_ms; place--)
            frontend->change[place] = frontend->change[place - 1];
        frontend->change[place] = change;
    }
    return true;
}

static bool take_changes(struct frontend *frontend, const char *name, const struct json *array, struct failure *failure)
{
    if (array->kind != JSON_ARRAY)
        return field_bad(name, array, "at", "an array", failure);
    for (size_t i = 0; i < array->count; i++)
        if (!take_change(frontend, name, &array->items[i], failure))
            return false;
    return true;
}

static bool take_member(struct frontend *frontend, const char *name, const char *key, const struct json *value,
                        struct failure *failure)
{
    if (boxkeys_has(key))
        return boxkeys_take(frontend, name, key, value, failure);
    if (strcmp(key, "look") == 0)
        return take_look(frontend, name, value, failure);
    if (strcmp(key, "at") == 0)
        return take_changes(frontend, name, value, failure);
    if (strcmp(key, "decayMs") == 0) {
        double decay_ms = 0;
        bool ok = field_number(name, value, key, 0.001, 1e7, &decay_ms, failure);
        frontend->decay_s = decay_ms / 1000;
        return ok;
    }
    if (strcmp(key, "hardShortA") == 0)
        return field_number(name, value, key, HARD_SHORT_LOWEST_A, HARD_SHORT_HIGHEST_A, &frontend->hard_short_a,
                           failure);
    int input = input_of(key);
    if (input == INPUTS)
        return fail(failure,
                    "%s:%d: unknown key %s; expected channels, kept, calibrated, clockPercent, look, decayMs, chassisClip, supplyPresent, "
                    "supplyReversed, button, pedal, isolatedLink, hardShortA, at",
                    name, value->line, key);
    return field_bool(name, value, key, &frontend->input[input], failure);
}

static bool take_all(struct frontend *frontend, const char *name, struct json *root, struct failure *failure)
{
    frontend_defaults(frontend);
    bool ok = field_object(name, root, "the file", failure);
    for (size_t i = 0; ok && i < root->count; i++)
        ok = take_member(frontend, name, root->keys[i], &root->items[i], failure);
    boxkeys_finish(frontend);
    json_free(root);
    return ok;
}

bool frontend_read(struct frontend *frontend, const char *path, struct failure *failure)
{
    struct json root;
    return json_read_file(&root, path, failure) && take_all(frontend, path, &root, failure);
}

bool frontend_read_text(struct frontend *frontend, const char *name, const char *text, struct failure *failure)
{
    struct json root;
    return json_read_text(&root, name, text, failure) && take_all(frontend, name, &root, failure);
}
