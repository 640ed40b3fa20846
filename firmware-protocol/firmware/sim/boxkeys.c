#include "boxkeys.h"

#include <math.h>
#include <string.h>

#include "fields.h"

enum { GAIN_U = 50, OFFSET_U = 30 }; /* what a calibration states that the file does not give */

bool boxkeys_has(const char *key)
{
    return strcmp(key, "channels") == 0 || strcmp(key, "kept") == 0 || strcmp(key, "calibrated") == 0
           || strcmp(key, "clockPercent") == 0;
}

/* How many volts or amperes the unit is; 0 when it does not fit the channel. */
static double unit_factor(enum channel channel, const char *unit)
{
    static const struct {
        const char *prefix;
        double factor;
    } PREFIXES[] = {{"", 1}, {"m", 1e-3}, {"u", 1e-6}, {"n", 1e-9}};
    const char *base = channel == CHANNEL_I || channel == CHANNEL_J ? "A" : "V";
    for (size_t i = 0; i < sizeof PREFIXES / sizeof PREFIXES[0]; i++) {
        size_t length = strlen(PREFIXES[i].prefix);
        if (strncmp(unit, PREFIXES[i].prefix, length) == 0 && strcmp(unit + length, base) == 0)
            return PREFIXES[i].factor;
    }
    return 0;
}

/* Takes a further key of a channel. */
typedef bool take_further(struct frontend *frontend, enum channel channel, const char *name, const char *key,
                          const char *field, const struct json *value, struct failure *failure);

static bool take_error(struct frontend *frontend, enum channel channel, const char *name, const char *key,
                       const char *field, const struct json *value, struct failure *failure)
{
    struct input_error *error = &frontend->input_error[channel];
    if (strcmp(key, "bowCounts") == 0)
        return field_number(name, value, field, -20, 20, &error->bow_counts, failure);
    if (strcmp(key, "lowestCounts") == 0)
        return field_number(name, value, field, 0, HIGHEST_COUNT, &error->lowest_counts, failure);
    return fail(failure, "%s:%d: unknown key %s; expected unit, atZero, atFull, bowCounts, lowestCounts", name,
                value->line, field);
}

static bool take_uncertainty(struct frontend *frontend, enum channel channel, const char *name, const char *key,
                             const char *field, const struct json *value, struct failure *failure)
{
    double expanded = 0;
    bool gain = strcmp(key, "gainPercentPlusMinus") == 0;
    if (!gain && strcmp(key, "zeroCountsPlusMinus") != 0)
        return fail(failure,
                    "%s:%d: unknown key %s; expected unit, atZero, atFull, gainPercentPlusMinus, zeroCountsPlusMinus",
                    name, value->line, field);
    if (!field_number(name, value, field, 0, gain ? 100 : 1000, &expanded, failure))
        return false;
    if (gain)
        frontend->kept[channel].gain_e5 = (uint16_t)lround(expanded * 500);
    else
        frontend->kept[channel].zero_hundredths = (uint16_t)lround(expanded * 50);
    return true;
}

static bool take_scale(struct frontend *frontend, enum channel channel, const char *name, const char *field,
                       const struct json *object, take_further *further, struct scale *scale,
                       struct failure *failure)
{
    char inner[80];
    if (!field_object(name, object, field, failure))
        return false;
    double factor = 1, zero = NAN, full = NAN;
    for (size_t i = 0; i < object->count; i++) {
        const struct json *value = &object->items[i];
        const char *key = object->keys[i];
        snprintf(inner, sizeof inner, "%s.%.24s", field, key);
        if (strcmp(key, "unit") == 0) {
            factor = value->kind == JSON_STRING ? unit_factor(channel, value->text) : 0;
            if (factor == 0)
                return field_bad(name, value, inner,
                                 channel <= CHANNEL_J ? "one of A, mA, uA, nA" : "one of V, mV, uV, nV", failure);
        } else if (strcmp(key, "atZero") == 0 || strcmp(key, "atFull") == 0) {
            if (!field_number(name, value, inner, -1e10, 1e10, key[2] == 'Z' ? &zero : &full, failure))
                return false;
        } else if (!further(frontend, channel, name, key, inner, value, failure)) {
            return false;
        }
    }
    if (isnan(zero) || isnan(full) || zero == full)
        return fail(failure, "%s:%d: %s: expected both atZero and atFull, and not the same", name, object->line, field);
    double limit = 2147483647.0 / frontend_base_per_unit(channel);
    if (fabs(zero * factor) > limit || fabs(full * factor) > limit)
        return fail(failure, "%s:%d: %s: out of the range of the calibration record; expected at most %g %s either sign",
                    name, object->line, field, limit, channel <= CHANNEL_J ? "A" : "V");
    *scale = (struct scale){zero * factor, full * factor};
    return true;
}

static bool take_channels(struct frontend *frontend, const char *name, const char *where, const struct json *object,
                          struct failure *failure)
{
    bool kept = strcmp(where, "kept") == 0;
    if (!field_object(name, object, where, failure))
        return false;
    for (size_t i = 0; i < object->count; i++) {
        char field[48];
        int channel = 0;
        while (channel < CHANNELS && strcmp(object->keys[i], frontend_channel_name((enum channel)channel)) != 0)
            channel++;
        if (channel == CHANNELS)
            return fail(failure, "%s:%d: unknown channel %s.%s; expected I J V R1 R2 R3 H M", name,
                        object->items[i].line, where, object->keys[i]);
        snprintf(field, sizeof field, "%s.%s", where, object->keys[i]);
        frontend->kept_given[channel] |= kept;
        if (!take_scale(frontend, (enum channel)channel, name, field, &object->items[i], kept ? take_uncertainty : take_error,
                        kept ? &frontend->kept[channel].scale : &frontend->scale[channel], failure))
            return false;
    }
    return true;
}

bool boxkeys_take(struct frontend *frontend, const char *name, const char *key, const struct json *value,
                  struct failure *failure)
{
    if (strcmp(key, "channels") == 0) {
        frontend->channels_given = true;
        return take_channels(frontend, name, key, value, failure);
    }
    if (strcmp(key, "kept") == 0) {
        return take_channels(frontend, name, key, value, failure);
    }
    if (strcmp(key, "calibrated") == 0) {
        frontend->calibrated_given = true;
        return field_bool(name, value, key, &frontend->calibrated, failure);
    }
    double percent = 0;
    bool ok = field_number(name, value, key, -2, 2, &percent, failure);
    frontend->clock_share = percent / 100;
    return ok;
}

void boxkeys_finish(struct frontend *frontend)
{
    if (!frontend->calibrated_given)
        frontend->calibrated = true;
    for (int c = 0; c < CHANNELS; c++) {
        if (frontend->kept_given[c])
            continue;
        frontend->kept[c] = (struct kept){frontend->scale[c], GAIN_U, OFFSET_U};
    }
}
