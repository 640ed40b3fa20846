#include "options.h"

#include <errno.h>
#include <math.h>
#include <stdio.h>
#include <stdlib.h>
#include <string.h>

const char OPTIONS_USAGE[] =
    "usage: probe-sim --elf ELF --waveform CSV [--front-end FILE] [--events FILE]\n"
    "  --seed N                      of the drawn box (as soldered and calibrated) and of the noise; default 1\n"
    "  --new-box, --ideal            a box never calibrated; an exactly nominal one. --front-end FILE says all of it\n"
    "  --noise-counts X              Gaussian noise on every conversion, repeatable\n"
    "  --cross COLUMN=LEVEL          event when the waveform passes the level (negative: downwards); repeatable\n"
    "  --flat-out                    as fast as it goes instead of real time\n"
    "  --eeprom FILE                 EEPROM contents, read if there, saved at the end\n"
    "  --fuses LOW,HIGH,EXTENDED     what the chip reads as its fuses (FF,C7,FC)\n"
    "  --for-ms N                    end after so much simulated time\n"
    "  --from-switch-on              resets, brown-outs, hangs and the end count from the host's first \"switch on\"\n"
    "  --measure FILE --fed FILE     cycle statistics (JSON); record of every conversion (u16 each)\n"
    "  --profile FILE                cycles awake by address (hex), one line each\n"
    "  --reset-at-ms LIST --brownout-at-ms LIST --hang-at-ms LIST\n"
    "  --drop-byte-every N --flip-bit-every N --stall-at-ms FROM:TO --close-at-ms N\n"
    "Prints \"pty PATH\" first. SIGTERM ends it.\n";

static bool number(const char *option, const char *text, double lowest, double highest, double *value,
                   struct failure *failure)
{
    char *end;
    errno = 0;
    *value = strtod(text, &end);
    if (end == text || *end != '\0' || errno != 0 || !isfinite(*value) || *value < lowest || *value > highest)
        return fail(failure, "%s %s: expected a number from %g to %g", option, text, lowest, highest);
    return true;
}

static bool whole_number(const char *option, const char *text, uint64_t *value, struct failure *failure)
{
    char *end;
    errno = 0;
    *value = strtoull(text, &end, 10);
    if (*text < '0' || *text > '9' || *end != '\0' || errno != 0)
        return fail(failure, "%s %s: expected a whole number, not negative", option, text);
    return true;
}

static bool moments(const char *option, const char *text, struct moments *list, struct failure *failure)
{
    const char *at = text;
    list->count = 0;
    for (;;) {
        char *end;
        double at_ms = strtod(at, &end);
        if (end == at || (*end != ',' && *end != '\0') || !(at_ms >= 0 && at_ms < 1e9)
            || (list->count > 0 && at_ms < list->at_ms[list->count - 1]) || list->count == MAX_MOMENTS)
            return fail(failure, "%s %s: expected at most %d times in milliseconds, rising, with commas between", option,
                        text, MAX_MOMENTS);
        list->at_ms[list->count++] = at_ms;
        if (*end == '\0')
            return true;
        at = end + 1;
    }
}

static bool fuses(struct options *options, const char *text, struct failure *failure)
{
    unsigned low, high, extended;
    char behind;
    if (sscanf(text, "%x,%x,%x%c", &low, &high, &extended, &behind) != 3 || low > 255 || high > 255 || extended > 255)
        return fail(failure, "--fuses %s: expected LOW,HIGH,EXTENDED as hexadecimal bytes, such as FF,C7,FC", text);
    options->fuses[0] = (uint8_t)low;
    options->fuses[1] = (uint8_t)high;
    options->fuses[2] = (uint8_t)extended;
    options->fuses_given = true;
    return true;
}

static bool crossing(struct options *options, const char *text, struct failure *failure)
{
    char name[16];
    const char *equals = strchr(text, '=');
    size_t length = equals == NULL ? sizeof name : (size_t)(equals - text);
    if (length >= sizeof name)
        return fail(failure, "--cross %s: expected COLUMN=LEVEL, such as supply_A=1.0", text);
    memcpy(name, text, length);
    name[length] = '\0';
    enum wave_column column = waveform_column(name);
    if (column == WAVE_COLUMNS)
        return fail(failure, "--cross %s: unknown column %s; expected one of the waveform's", text, name);
    if (options->crossings == MAX_CROSSINGS)
        return fail(failure, "--cross %s: expected at most %d of them", text, MAX_CROSSINGS);
    options->crossing[options->crossings].column = column;
    return number("--cross", equals + 1, -1e6, 1e6, &options->crossing[options->crossings++].level, failure);
}

static bool stall(struct options *options, const char *text, struct failure *failure)
{
    char *end;
    options->dials.stall_from_ms = strtod(text, &end);
    if (end == text || *end != ':')
        return fail(failure, "--stall-at-ms %s: expected FROM:TO in milliseconds", text);
    return number("--stall-at-ms", end + 1, options->dials.stall_from_ms, 1e9, &options->dials.stall_to_ms, failure);
}

static bool with_argument(struct options *options, const char *option, const char *text, struct failure *failure)
{
    const struct {
        const char *name;
        const char **path;
    } PATHS[] = {{"--elf", &options->elf},       {"--waveform", &options->waveform}, {"--front-end", &options->front_end},
                 {"--events", &options->events}, {"--eeprom", &options->eeprom},     {"--measure", &options->measure},
                 {"--fed", &options->fed},         {"--profile", &options->profile}};
    for (size_t i = 0; i < sizeof PATHS / sizeof PATHS[0]; i++) {
        if (strcmp(option, PATHS[i].name) == 0) {
            *PATHS[i].path = text;
            return true;
        }
    }
    if (strcmp(option, "--noise-counts") == 0)
        return number(option, text, 0, 100, &options->noise_counts, failure);
    if (strcmp(option, "--seed") == 0)
        return whole_number(option, text, &options->seed, failure);
    if (strcmp(option, "--fuses") == 0)
        return fuses(options, text, failure);
    if (strcmp(option, "--cross") == 0)
        return crossing(options, text, failure);
    if (strcmp(option, "--for-ms") == 0)
        return number(option, text, 0, 1e9, &options->for_ms, failure);
    if (strcmp(option, "--reset-at-ms") == 0)
        return moments(option, text, &options->reset, failure);
    if (strcmp(option, "--brownout-at-ms") == 0)
        return moments(option, text, &options->brown_out, failure);
    if (strcmp(option, "--hang-at-ms") == 0)
        return moments(option, text, &options->hang, failure);
    if (strcmp(option, "--drop-byte-every") == 0)
        return whole_number(option, text, &options->dials.drop_byte_every, failure);
    if (strcmp(option, "--flip-bit-every") == 0)
        return whole_number(option, text, &options->dials.flip_bit_every, failure);
    if (strcmp(option, "--stall-at-ms") == 0)
        return stall(options, text, failure);
    if (strcmp(option, "--close-at-ms") == 0)
        return number(option, text, 0, 1e9, &options->dials.close_at_ms, failure);
    return fail(failure, "unknown option %s; expected one of those below", option);
}

bool options_read(struct options *options, int count, char **arguments, struct failure *failure)
{
    memset(options, 0, sizeof *options);
    options->dials = BRIDGE_NO_FAULTS;
    options->for_ms = -1;
    options->seed = 1;
    for (int i = 1; i < count; i++) {
        if (strcmp(arguments[i], "--flat-out") == 0) {
            options->flat_out = true;
            continue;
        }
        if (strcmp(arguments[i], "--from-switch-on") == 0) {
            options->from_switch_on = true;
            continue;
        }
        if (strcmp(arguments[i], "--new-box") == 0 || strcmp(arguments[i], "--ideal") == 0) {
            *(arguments[i][2] == 'n' ? &options->new_box : &options->ideal) = true;
            continue;
        }
        if (i + 1 == count)
            return fail(failure, "%s: unknown option, or one without its value", arguments[i]);
        if (!with_argument(options, arguments[i], arguments[i + 1], failure))
            return false;
        i++;
    }
    if (options->elf == NULL || options->waveform == NULL)
        return fail(failure, "--elf and --waveform are missing; expected both");
    if (options->new_box + options->ideal + (options->front_end != NULL) > 1)
        return fail(failure, "expected at most one of --front-end, --new-box and --ideal");
    return true;
}
